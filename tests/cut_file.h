/* SPDX-License-Identifier: MIT */
/* Reads cutting instances and the list of best known results: the format is in
 * tests/cutting/README.md. Used by tests and the benchmark. */
#ifndef CUT_FILE_H
#define CUT_FILE_H

#include "cut/common/cut_stock.h"

#include <stdbool.h>

/* An instance and the arrays that its job points to. Empty when all zero. */
struct cut_file {
    struct cut_job job;
    struct cut_stock *stocks;
    struct cut_item *items;
};

/* Reads an instance. flat: a 1-D one. turn: every part may be turned. false: it cannot be opened
 * or understood; *line is the line at fault, 0: the file. The file is cleared by its owner. */
__attribute__((warn_unused_result)) bool cut_file_read(struct cut_file *file, const char *path,
                                                       bool flat, bool turn, int *line);
void cut_file_clear(struct cut_file *file);

/* A row of best-known.csv; bounds for classes of patterns other than `any` are left out. */
struct cut_known {
    char name[64];
    int rotation; /* -1: a 1-D instance */
    int64_t lower_bound, best_known;
    int64_t bar;       /* what no plan may cost more than; 0: none */
    int64_t bound_bar; /* what no bound may be less than; 0: none */
};

struct cut_known_list {
    size_t count, room;
    struct cut_known *rows;
};

/* Reads FOLDER/best-known.csv; a missing file is an empty list. false: not understood. */
__attribute__((warn_unused_result)) bool cut_known_read(struct cut_known_list *list,
                                                        const char *folder);
void cut_known_clear(struct cut_known_list *list);

/* The row of an instance, or NULL. */
const struct cut_known *cut_known_find(const struct cut_known_list *list, const char *name,
                                       int rotation);

#endif
