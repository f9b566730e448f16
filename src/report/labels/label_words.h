/* SPDX-License-Identifier: MIT */
/* What stands on a label, in lines. For src/report/labels only. */
#ifndef DOORCOST_REPORT_LABELS_LABEL_WORDS_H
#define DOORCOST_REPORT_LABELS_LABEL_WORDS_H

#include "report/labels/label_list.h"

struct label_line {
    const char *text;
    double size; /* to that of a plain line */
    bool bold;
};

#define MOST_LABEL_LINES 10

/* How the grain of a part runs as it stands in its door. */
enum grain_way { GRAIN_NONE, GRAIN_UPRIGHT, GRAIN_LEVEL };
enum grain_way label_grain(const struct estimate *estimate, const struct door *door,
                           const struct part *part);

/* Whether a part has an edge or end that must be up: a bar on a pane has not. */
bool label_has_top(const struct part *part);

/* The lines of a label, those that have words; returns how many. Memory of pool, whose failure
 * tells of want of memory. */
size_t label_words(struct label_line lines[MOST_LABEL_LINES], struct pool *pool,
                   const struct estimate *estimate, const struct label *label);

#endif
