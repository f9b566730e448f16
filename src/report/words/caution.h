/* SPDX-License-Identifier: MIT */
/* The cautions that go with a job: a table of them, each with when it is needed and on which papers
 * it stands; papers print those that the job needs and no others. The texts are those of
 * docs/cautions.md, "What is printed". */
#ifndef DOORCOST_REPORT_WORDS_CAUTION_H
#define DOORCOST_REPORT_WORDS_CAUTION_H

#include "price/estimate.h"

/* Papers that they stand on, as bits. */
enum caution_paper {
    CAUTION_SHOP = 1 << 0,   /* work and hours: the quote for the shop, the sheet of labor */
    CAUTION_PLAN = 1 << 1,   /* cutting plans */
    CAUTION_FINISH = 1 << 2, /* what is sprayed */
    CAUTION_BUY = 1 << 3,    /* what is bought */
    CAUTION_QUOTE = 1 << 4,  /* the quote, for who sends it */
    CAUTION_CLIENT = 1 << 5  /* what the client must know */
};
#define CAUTION_ALL 0x3F

struct caution_facts;

struct caution {
    const char *subject;
    const char *when; /* a job needs it, as docs/cautions.md says it */
    const char *text;
    bool (*needed)(struct caution_facts *facts, const struct caution *caution);
    unsigned by;     /* what `needed` looks for: bits of machines or of hazards */
    unsigned papers; /* of enum caution_paper */
};

extern const struct caution cautions[];
extern const size_t caution_count;

struct caution_list {
    const char **texts; /* of the pool */
    size_t count;       /* 0 also where memory is out, which the pool tells */
};

/* The texts of those that the estimate needs on any of the papers (bits of enum caution_paper), in
 * the order of the table, with what each is about behind it. All in pool. */
struct caution_list cautions_needed(const struct estimate *estimate, unsigned papers,
                                    struct pool *pool);

#endif
