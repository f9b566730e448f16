/* SPDX-License-Identifier: MIT */
/* Whole words alone are looked for, and few of them: a note is free text, and what else stands in
 * it means nothing here. */
#include "door/warn_note.h"

#include "base/pool.h"
#include "base/text.h"

#include <string.h>

static bool has_mid_rails(const struct door *door) {
    return door->row->mid_rails.amount > 0 || door->row->heights.count > 1;
}

static bool has_arch(const struct door *door) {
    return door->row->arch.amount > 0;
}

static const struct ordered {
    const char *words[5]; /* up to NULL */
    bool (*has)(const struct door *door);
    bool of_style; /* it is the style that has it */
    const char *mend;
} ordered[] = {
    {{"glass", "pane", "panes", "mirror"},
     door_is_see_through,
     true,
     "name a style with glass under 'style'"},
    {{"mid rail", "mid rails", "mid-rail", "mid-rails"},
     has_mid_rails,
     false,
     "say how many under 'mid rails'"},
    {{"arch", "arched"}, has_arch, false, "give its rise under 'arch'"},
};

static bool holds(const char *text, const char *word) {
    return text_holds_word(text, word, strlen(word));
}

static bool holds_behind(const struct calc *c, const char *text, const char *before,
                         const char *word) {
    return holds(text, pool_words(&c->problems->pool, "%s %s", before, word));
}

/* Whether the note orders it, as far as words can tell. */
static bool is_ordered(const struct calc *c, const struct door *door, const char *word) {
    const struct row *const row = door->row;
    return holds(row->note.s, word) && !holds_behind(c, row->note.s, "no", word) &&
           !holds_behind(c, row->note.s, "without", word) && !holds(door->style->name.s, word) &&
           !holds(door->style->client_name.s, word) &&
           !(row->extra_charge.set &&
             (row->extra_words.s == NULL || holds(row->extra_words.s, word)));
}

void note_warn(const struct calc *c, const struct door *door) {
    for (size_t i = 0; i < sizeof ordered / sizeof *ordered; i++) {
        const char *const *word = ordered[i].words;
        while (*word != NULL && !is_ordered(c, door, *word)) {
            word++;
        }
        if (*word != NULL && !ordered[i].has(door)) {
            problem_add(c->problems, SEVERITY_WARNING, "note-not-priced", door->row->note.place,
                        "the note of door '%s', which the client reads, says '%s', and %s has "
                        "none; %s, or take it out of the note",
                        problem_quote(c->problems, door->row->id.s), *word,
                        ordered[i].of_style
                            ? pool_words(&c->problems->pool, "its style '%s'",
                                         problem_quote(c->problems, door->style->name.s))
                            : "it",
                        ordered[i].mend);
        }
    }
}
