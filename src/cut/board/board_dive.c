/* SPDX-License-Identifier: MIT */
/* Plans out of the relaxation: boards that it cuts whole times are taken, else the one it likes
 * best, and it is solved again for what is left.  Later dives choose with some chance. */
#include "cut/board/board_columns.h"

#include "base/pool.h"
#include "cut/common/cut_random.h"

#include <stdlib.h>
#include <string.h>

#define BOARDS_A_CHOICE 4

/* A dive under way: columns taken, each so often, in order. */
struct dive {
    struct board_columns *c;
    int64_t *left;
    size_t *taken; /* columns */
    size_t taken_count, taken_room;
    int64_t cost;
};

static bool any_left(const struct dive *d) {
    for (size_t k = 0; k < d->c->kind_count; k++) {
        if (d->left[k] > 0) {
            return true;
        }
    }
    return false;
}

/* Takes a column off what is left; parts that are no longer wanted are not cut of it. */
static bool take(struct dive *d, size_t column) {
    struct board_columns *const c = d->c;
    const struct column *const col = &c->columns[column];
    if (!array_grow((void **)&d->taken, &d->taken_room, d->taken_count + 1, sizeof *d->taken)) {
        return false;
    }
    d->taken[d->taken_count++] = column;
    for (size_t s = 0; s < col->count; s++) {
        const struct column_strip *const strip = &c->strips[col->first + s];
        for (size_t i = 0; i < strip->count; i++) {
            const struct column_part *const part = &c->parts[strip->first + i];
            const int64_t left = d->left[part->kind];
            d->left[part->kind] -= part->times < left ? part->times : left;
        }
    }
    d->cost += c->job->stocks[col->stock].price;
    return true;
}

/* The share of a column that is still wanted, by area. */
static double use_of(const struct dive *d, size_t column) {
    const struct board_columns *const c = d->c;
    const struct column *const col = &c->columns[column];
    double all = 0;
    double used = 0;
    for (size_t s = 0; s < col->count; s++) {
        const struct column_strip *const strip = &c->strips[col->first + s];
        for (size_t i = 0; i < strip->count; i++) {
            const struct column_part *const part = &c->parts[strip->first + i];
            const int64_t left = d->left[part->kind];
            const double each =
                (double)c->kinds[part->kind].length * (double)c->kinds[part->kind].width;
            all += each * (double)part->times;
            used += each * (double)(part->times < left ? part->times : left);
        }
    }
    return all > 0 ? used / all : 0;
}

/* The column that the relaxation likes best, of those that are of use; SIZE_MAX: none. */
static size_t choose(const struct dive *d, struct cut_random *random, double noise, double least) {
    size_t best = SIZE_MAX;
    double best_score = 0;
    for (size_t i = 0; i < d->c->column_count; i++) {
        const double share = d->c->shares[i];
        if (share < 1e-6) {
            continue;
        }
        const double part = share >= 1 ? 1 : share;
        const double use = use_of(d, i);
        if (use < least) {
            continue;
        }
        const double score =
            (part + noise * cut_random_share(random)) * use * use * (use > 0.999 ? 1.5 : 1);
        if (score > best_score) {
            best_score = score;
            best = i;
        }
    }
    return best;
}

/* Takes every column as often as the relaxation cuts it whole and it is wanted whole. */
static bool take_whole(struct dive *d, bool *some) {
    *some = false;
    for (size_t i = 0; i < d->c->column_count; i++) {
        double share = d->c->shares[i] + 1e-6;
        while (share >= 1 && use_of(d, i) > 0.999) {
            share -= 1;
            if (!take(d, i)) {
                return false;
            }
            *some = true;
        }
    }
    return true;
}

/* Boards that one relaxation decides: of many left more than one, or a dive through a large job
 * would take as many relaxations as boards. */
static int64_t boards_at_once(const struct dive *d) {
    double boards = 0;
    for (size_t i = 0; i < d->c->column_count; i++) {
        boards += d->c->shares[i];
    }
    return 1 + (int64_t)(boards / BOARDS_A_CHOICE);
}

/* Takes the columns that the relaxation likes best, after the first only those of which every part
 * is still wanted. *some: there was one. */
static bool take_best(struct dive *d, struct cut_random *random, double noise, bool *some) {
    *some = false;
    for (int64_t n = boards_at_once(d); n > 0; n--) {
        const size_t best = choose(d, random, noise, *some ? 0.999 : 0);
        if (best == SIZE_MAX) {
            break;
        }
        if (!take(d, best)) {
            return false;
        }
        d->c->shares[best] -= d->c->shares[best] > 1 ? 1 : d->c->shares[best];
        *some = true;
    }
    return true;
}

/* All that is wanted of each kind. */
static void want_all(const struct board_columns *c, int64_t *left) {
    for (size_t k = 0; k < c->kind_count; k++) {
        left[k] = c->kinds[k].demand;
    }
}

/* One dive from the top. stop: a plan that costs as much is of no use. *done: a whole plan. */
static bool dive(struct dive *d, struct cut_random *random, double noise, int64_t limit,
                 int64_t stop, bool *done) {
    struct board_columns *const c = d->c;
    *done = false;
    d->taken_count = 0;
    d->cost = 0;
    want_all(c, d->left);
    while (any_left(d) && d->cost < stop) {
        bool some = false;
        if (!board_columns_relax(c, d->left, d->taken_count == 0, limit) || !take_whole(d, &some)) {
            return false;
        }
        if (!some && !take_best(d, random, noise, &some)) {
            return false;
        }
        if (!some) {
            return true; /* the program is stuck */
        }
        if (c->spent > limit && d->taken_count > 0 && stop < INT64_MAX) {
            return true; /* out of work, and there is a plan already */
        }
    }
    *done = !any_left(d) && d->cost < stop;
    return true;
}

/* --- the plan --- */

struct writer {
    struct board_columns *c;
    struct board_plan *plan;
    int64_t *left, *items; /* parts still wanted, of kinds and of items */
    size_t *next;          /* of a kind: where its items are looked for */
};

static size_t next_item(struct writer *w, size_t kind) {
    while (w->c->kind_of[w->next[kind]] != kind || w->items[w->next[kind]] == 0) {
        w->next[kind]++;
    }
    w->items[w->next[kind]]--;
    w->left[kind]--;
    return w->next[kind];
}

/* A strip's parts, longest first as the kinds come; returns its length, grown; 0: nothing of it is
 * wanted. */
static int64_t write_strip(struct writer *w, const struct column_strip *strip) {
    struct board_columns *const c = w->c;
    struct board_plan *const p = w->plan;
    const size_t first = p->piece_count;
    int64_t along = 0;
    for (size_t i = 0; i < strip->count; i++) {
        const struct column_part *const part = &c->parts[strip->first + i];
        for (int64_t n = 0; n < part->times && w->left[part->kind] > 0; n++) {
            p->pieces[p->piece_count++] = next_item(w, part->kind);
            along += c->kinds[part->kind].length;
        }
    }
    if (along > 0) {
        p->strips[p->strip_count++] =
            (struct board_strip){.width = c->widths[strip->class] - c->job->kerf,
                                 .first = first,
                                 .count = p->piece_count - first};
    }
    return along;
}

/* The cheapest stock that holds strips so long and so wide, both grown. */
static size_t cheapest(const struct board_columns *c, int64_t along, int64_t across, size_t stock) {
    const struct board_job *const job = c->job;
    size_t best = stock;
    for (size_t s = 0; s < job->stock_count; s++) {
        if (c->length_of[s] != SIZE_MAX && c->lengths[c->length_of[s]] >= along &&
            board_usable_width(job, s) + job->kerf >= across &&
            job->stocks[s].price < job->stocks[best].price) {
            best = s;
        }
    }
    return best;
}

static void write_board(struct writer *w, const struct column *col) {
    struct board_plan *const p = w->plan;
    struct board_use use = {.first = p->strip_count};
    int64_t along = 0;
    int64_t across = 0;
    for (size_t s = 0; s < col->count; s++) {
        const struct column_strip *const strip = &w->c->strips[col->first + s];
        const int64_t longest = write_strip(w, strip);
        across += longest > 0 ? w->c->widths[strip->class] : 0;
        along = longest > along ? longest : along;
    }
    use.count = p->strip_count - use.first;
    if (use.count > 0) {
        use.stock = cheapest(w->c, along, across, col->stock);
        p->cost += w->c->job->stocks[use.stock].price;
        p->boards[p->board_count++] = use;
    }
}

static bool write_plan(const struct dive *d, struct board_plan **plan) {
    struct board_columns *const c = d->c;
    struct writer w = {.c = c, .plan = calloc(1, sizeof *w.plan)};
    size_t strips = 1;
    size_t pieces = 1;
    for (size_t i = 0; i < d->taken_count; i++) {
        strips += c->columns[d->taken[i]].count;
    }
    w.items = calloc(c->job->item_count + 1, sizeof *w.items);
    w.left = calloc(c->kind_count + 1, sizeof *w.left);
    w.next = calloc(c->kind_count + 1, sizeof *w.next);
    bool held = w.plan != NULL && w.items != NULL && w.left != NULL && w.next != NULL;
    for (size_t i = 0; held && i < c->job->item_count; i++) {
        w.items[i] = c->job->items[i].demand;
        pieces += (size_t)w.items[i];
        if (c->kind_of[i] != SIZE_MAX) {
            w.left[c->kind_of[i]] += w.items[i];
        }
    }
    if (held) {
        w.plan->boards = calloc(d->taken_count + 1, sizeof *w.plan->boards);
        w.plan->strips = calloc(strips, sizeof *w.plan->strips);
        w.plan->pieces = calloc(pieces, sizeof *w.plan->pieces);
        held = w.plan->boards != NULL && w.plan->strips != NULL && w.plan->pieces != NULL;
    }
    for (size_t i = 0; held && i < d->taken_count; i++) {
        write_board(&w, &c->columns[d->taken[i]]);
    }
    free(w.items);
    free(w.left);
    free(w.next);
    if (!held) {
        board_plan_free(w.plan);
        return false;
    }
    *plan = w.plan;
    return true;
}

/* Keeps the plan of a dive where it is cheaper than what is known. */
static bool keep_better(const struct dive *d, struct board_plan **plan, int64_t *known) {
    struct board_plan *next = NULL;
    if (!write_plan(d, &next)) {
        return false;
    }
    if (next->cost < *known) {
        board_plan_free(*plan);
        *plan = next;
        *known = next->cost;
    } else {
        board_plan_free(next);
    }
    return true;
}

bool board_dive(const struct board_job *job, int64_t effort, int64_t known,
                struct board_plan **plan, int64_t *bound, int64_t *spent) {
    struct board_columns c;
    struct cut_random random = {.state = 1};
    bool held = board_columns_open(&c, job);
    struct dive d = {.c = &c, .left = calloc(c.kind_count + 1, sizeof *d.left)};
    held = held && d.left != NULL;
    *plan = NULL;
    for (int round = 0; held && c.kind_count > 0 && (round == 0 || c.spent < effort); round++) {
        bool done = false;
        held = dive(&d, &random, round == 0 ? 0 : 0.3, effort, known, &done) &&
               (!done || keep_better(&d, plan, &known));
        if (known <= c.bound || c.spent == 0) {
            break;
        }
    }
    *bound = c.bound;
    *spent = c.spent;
    free(d.left);
    free(d.taken);
    board_columns_close(&c);
    if (!held) {
        board_plan_free(*plan);
        *plan = NULL;
    }
    return held;
}

bool board_relaxed_bound(const struct board_job *job, int64_t effort, int64_t *bound,
                         int64_t *spent) {
    struct board_columns c;
    bool held = board_columns_open(&c, job);
    int64_t *const left = calloc(c.kind_count + 1, sizeof *left);
    held = held && left != NULL;
    if (held && c.kind_count > 0) {
        want_all(&c, left);
        held = board_columns_relax(&c, left, true, effort);
    }
    *bound = c.bound;
    *spent = c.spent;
    free(left);
    board_columns_close(&c);
    return held;
}
