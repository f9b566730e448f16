/* SPDX-License-Identifier: MIT */
/* Why as much is bought as is: clauses that hold figures and hang on figures, so that a sheet can
 * have them follow what is changed there. */
#ifndef DOORCOST_REPORT_WORDS_BUY_NOTE_H
#define DOORCOST_REPORT_WORDS_BUY_NOTE_H

#include "report/words/show.h"

/* The limits of a note and of a clause. */
enum { BUY_CLAUSES = 6, BUY_VALUES = 4 };

struct buy_clause {
    const char *words; /* `#` stands for the next of values; none of `"`; "": the clause is none */
    fig values[BUY_VALUES];
    fig more, than; /* said while more > than; than none: 0; more none: always */
    bool or_same;   /* said while they are equal, too */
};

struct buy_note {
    struct buy_clause clauses[BUY_CLAUSES];
    size_t count;
};

/* Adds a clause; one without words, or that can never hold, is left out. */
void buy_note_add(struct buy_note *note, struct buy_clause clause);

/* The clauses that hold now, with `; ` between them; "" where none does. In pool. */
const char *buy_note_words(struct pool *pool, const struct estimate *estimate,
                           const struct buy_note *note);

/* The same as a formula for book_check, in which `{n}` is figure n; NULL where no clause has a
 * figure. In pool. */
const char *buy_note_formula(struct pool *pool, const struct estimate *estimate,
                             const struct buy_note *note);

#endif
