/* SPDX-License-Identifier: MIT */
/* Neighbors are joined where that changes the least length in all, until few sizes are left. */
#include "cut/board/board_coarse.h"

#include "base/order.h"

#include <stdlib.h>
#include <string.h>

/* The relaxation of so many sizes takes a fifth of a second, and grows faster than their square. */
#define MOST_SIZES 100

/* Parts of one width, from the shortest to the longest. */
struct group {
    int64_t width, least, greatest, demand;
};

static int by_size(const void *left, const void *right) {
    const struct group *const a = left;
    const struct group *const b = right;
    const int across = order_by_number(a->width, b->width);
    return across != 0 ? across : order_by_number(a->least, b->least);
}

/* The sizes that are wanted, each once, by width and length. */
static size_t list_sizes(const struct board_job *job, struct group *groups) {
    size_t count = 0;
    size_t kept = 0;
    for (size_t i = 0; i < job->item_count; i++) {
        const struct cut_item *const item = &job->items[i];
        if (item->demand > 0) {
            groups[count++] = (struct group){item->width, item->length, item->length, item->demand};
        }
    }
    if (count > 0) {
        qsort(groups, count, sizeof *groups, by_size);
    }
    for (size_t i = 0; i < count; i++) {
        if (kept > 0 && by_size(&groups[kept - 1], &groups[i]) == 0) {
            groups[kept - 1].demand += groups[i].demand;
        } else {
            groups[kept++] = groups[i];
        }
    }
    return kept;
}

/* How much length changes when the two become one; negative: they can't. */
static double cost_of(const struct group *a, const struct group *b) {
    return a->width != b->width ? -1.0
                                : (double)(b->greatest - a->greatest) * (double)a->demand +
                                      (double)(b->least - a->least) * (double)b->demand;
}

/* Joins the two neighbors that cost least; false: all differ in width. */
static bool join_nearest(struct group *groups, size_t *count) {
    size_t best = SIZE_MAX;
    double best_cost = 0;
    for (size_t i = 0; i + 1 < *count; i++) {
        const double cost = cost_of(&groups[i], &groups[i + 1]);
        if (cost >= 0 && (best == SIZE_MAX || cost < best_cost)) {
            best = i;
            best_cost = cost;
        }
    }
    if (best == SIZE_MAX) {
        return false;
    }
    groups[best].greatest = groups[best + 1].greatest;
    groups[best].demand += groups[best + 1].demand;
    memmove(&groups[best + 1], &groups[best + 2], (*count - best - 2) * sizeof *groups);
    (*count)--;
    return true;
}

static const struct group *group_of(const struct group *groups, const struct cut_item *item) {
    while (groups->width != item->width || groups->greatest < item->length) {
        groups++;
    }
    return groups;
}

bool board_coarse_make(struct board_coarse *coarse, const struct board_job *job) {
    struct group *const groups = calloc(job->item_count + 1, sizeof *groups);
    coarse->least = calloc(job->item_count + 1, sizeof *coarse->least);
    coarse->greatest = calloc(job->item_count + 1, sizeof *coarse->greatest);
    coarse->simpler = false;
    if (groups == NULL || coarse->least == NULL || coarse->greatest == NULL) {
        free(groups);
        return false;
    }
    size_t count = list_sizes(job, groups);
    while (count > MOST_SIZES && join_nearest(groups, &count)) {
        coarse->simpler = true;
    }
    for (size_t i = 0; i < job->item_count; i++) {
        coarse->least[i] = coarse->greatest[i] = job->items[i];
        if (job->items[i].demand > 0) {
            const struct group *const group = group_of(groups, &job->items[i]);
            coarse->least[i].length = group->least;
            coarse->greatest[i].length = group->greatest;
        }
    }
    free(groups);
    return true;
}

void board_coarse_clear(struct board_coarse *coarse) {
    free(coarse->least);
    free(coarse->greatest);
    *coarse = (struct board_coarse){0};
}
