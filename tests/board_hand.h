/* SPDX-License-Identifier: MIT */
/* A plan of one board that a test lays out by hand, two strips (or segments) with three parts, and
 * what may be broken in it whatever its kind. */
#ifndef DOORCOST_TESTS_BOARD_HAND_H
#define DOORCOST_TESTS_BOARD_HAND_H

#include "cut/board/board_plan.h"

struct by_hand {
    struct cut_stock stocks[1];
    struct cut_item items[2];
    struct board_job job;
    struct board_use boards[2];
    struct board_strip
        strips[3]; /* one and one piece more than the plan has: for one that claims them */
    size_t pieces[4];
    struct board_plan plan;
};

/* Makes the job and the plan of the stocks, items, boards and strips that are set, with a kerf of 1
 * and the cost 9. */
static inline void hand_join(struct by_hand *h, bool crosscut_first) {
    h->job = (struct board_job){.kerf = 1,
                                .crosscut_first = crosscut_first,
                                .stocks = h->stocks,
                                .stock_count = 1,
                                .items = h->items,
                                .item_count = 2};
    h->plan = (struct board_plan){.boards = h->boards,
                                  .board_count = 1,
                                  .strips = h->strips,
                                  .strip_count = 2,
                                  .pieces = h->pieces,
                                  .piece_count = 3,
                                  .cost = 9,
                                  .bound = 9};
}

/* Takes room away that a plan which fills its board does not have. */
static inline void hand_trim(struct by_hand *h) {
    h->job.end_trim = 1;
}
static inline void hand_edge(struct by_hand *h) {
    h->job.edge = 1;
}
static inline void hand_defects(struct by_hand *h) {
    h->job.defects = 20000;
}

#endif
