/* SPDX-License-Identifier: MIT */
#include "price/ways.h"

#include "price/ways_trial.h"
#include "price/ways_within.h"

#include <string.h>

/* What is named in its place; NULL: nothing else. */
static const struct reference *other(const struct reference *named, const void *named_from,
                                     const void *list, size_t size) {
    return named->index < 0 || (const char *)list + (size_t)named->index * size == named_from
               ? NULL
               : named;
}

static void add_way(struct ways_trial *trial, const struct ways *ways, struct ways_row *row,
                    struct way way) {
    const size_t picked = row->count;
    row->ways[picked] = way;
    if (picked == 0) {
        row->ways[picked].whole = ways->job;
        row->count++;
    } else if (ways_trial_run(trial, row, &picked, 1, &row->ways[picked].whole)) {
        row->count++;
    }
}

/* The ways of the row of that leaf; false: one alone, or out of memory. */
static bool take_row(struct ways_trial *trial, const struct ways *ways, struct ways_row *row,
                     const struct leaf_figures *leaf) {
    const struct rates *const rates = trial->base->rates;
    const struct door *const door = leaf->door;
    const int32_t index = door->construction->finish.index;
    const struct finish *const finish = index < 0 ? NULL : &rates->finishes[index];
    const struct reference *const style =
        other(&door->style->bought_as, door->style, rates->styles, sizeof *rates->styles);
    const struct reference *const sent =
        finish == NULL
            ? NULL
            : other(&finish->put_out_as, finish, rates->finishes, sizeof *rates->finishes);
    *row = (struct ways_row){
        .row = door->row,
        .place = (size_t)(door->row - trial->base->job->rows),
        .made_here = !door->bought_in && (finish == NULL || !finish->put_out.set),
    };
    if (style == NULL && sent == NULL) {
        return false;
    }
    add_way(trial, ways, row, (struct way){.kind = WAY_LISTED});
    if (style != NULL) {
        add_way(trial, ways, row, (struct way){.kind = WAY_BOUGHT, .style = style});
    }
    if (sent != NULL) {
        add_way(trial, ways, row, (struct way){.kind = WAY_SENT, .finish = sent});
    }
    if (style != NULL && sent != NULL) {
        add_way(trial, ways, row,
                (struct way){.kind = WAY_BOUGHT_SENT, .style = style, .finish = sent});
    }
    struct outcome without;
    if (row->count < 2 || !ways_trial_without(trial, row->place, &without)) {
        return false;
    }
    for (size_t w = 0; w < row->count; w++) {
        row->ways[w].row = outcome_minus(row->ways[w].whole, without);
    }
    return trial->memory;
}

/* A row of several leaves is met with the first of them. */
static void take_rows(struct ways_trial *trial, struct ways *ways, const size_t *rows,
                      size_t count) {
    const struct quantities *const q = &trial->base->quantities;
    const struct row *last = NULL;
    size_t next = 0;
    for (size_t i = 0; i < q->count && trial->memory; i++) {
        const struct row *const row = q->leaves[i].door->row;
        if (row == last) {
            continue;
        }
        last = row;
        if (count > 0 && (next == count || trial->base->job->rows + rows[next] != row)) {
            continue;
        }
        next++;
        if (take_row(trial, ways, &ways->rows[ways->row_count], &q->leaves[i])) {
            ways->row_count++;
        } else {
            ways->other_rows++;
        }
    }
}

/* --- one choice for all rows --- */

static size_t way_of_kind(const struct ways_row *row, enum way_kind kind) {
    for (size_t w = 0; w < row->count; w++) {
        if (row->ways[w].kind == kind) {
            return w;
        }
    }
    return 0;
}

static size_t pick_of(const struct ways_row *row, enum ways_all all) {
    size_t best = 0;
    switch (all) {
    case WAYS_ALL_BOUGHT:
        return way_of_kind(row, WAY_BOUGHT);
    case WAYS_ALL_SENT:
        return way_of_kind(row, WAY_SENT);
    case WAYS_ALL_OUT:
        return row->count - 1; /* the kinds come in the order in which more goes out */
    default:
        for (size_t w = 1; w < row->count; w++) {
            best = row->ways[w].whole.direct < row->ways[best].whole.direct ? w : best;
        }
        return best;
    }
}

static bool take_choices(struct ways_trial *trial, struct ways *ways, struct pool *pool) {
    for (int a = 0; a < WAYS_ALL_COUNT && trial->memory; a++) {
        struct ways_choice *const choice = &ways->all[a];
        choice->picked = pool_take(pool, ways->row_count, sizeof *choice->picked);
        if (choice->picked == NULL) {
            return false;
        }
        for (size_t i = 0; i < ways->row_count; i++) {
            choice->picked[i] = pick_of(&ways->rows[i], (enum ways_all)a);
        }
        ways_trial_choice(trial, ways, choice);
    }
    return trial->memory;
}

bool ways_choice_new(const struct ways *ways, int all) {
    const struct ways_choice *const choice = &ways->all[all];
    for (int a = 0; a < all; a++) {
        if (memcmp(choice->picked, ways->all[a].picked, ways->row_count * sizeof *choice->picked) ==
            0) {
            return false;
        }
    }
    return choice->changed > 0 && choice->made;
}

enum ways_result ways_make(struct ways *ways, const struct estimate *base,
                           struct plan_request plans, const size_t *rows, size_t count,
                           int64_t limit, struct pool *pool) {
    struct ways_trial trial;
    *ways = (struct ways){.job = outcome_of(base),
                          .within = {.limit = limit},
                          .money_decimals = base->tape.money_decimals};
    ways->rows = pool_take(pool, base->job->row_count, sizeof *ways->rows);
    if (!ways_trial_init(&trial, base, plans, pool) || ways->rows == NULL) {
        return WAYS_MEMORY;
    }
    take_rows(&trial, ways, rows, count);
    if (!trial.memory || !take_choices(&trial, ways, pool)) {
        return WAYS_MEMORY;
    }
    return limit < 0 ? WAYS_OK : ways_within_make(&trial, ways, pool);
}
