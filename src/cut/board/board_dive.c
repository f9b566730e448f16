/* SPDX-License-Identifier: MIT */
/* Plans out of the relaxation: boards that it cuts whole times are taken, else the one it likes
 * best, and it is solved again for what is left.  Later dives choose with some chance. */
#include "cut/board/board_columns.h"

#include "cut/common/cut_random.h"

#include <stdlib.h>

#define BOARDS_A_CHOICE 4

/* Chance in what later dives choose, beside the share that the relaxation gives a column. */
#define NOISE 1.0

/* Dives without a cheaper plan that end the search: so many, or a few where they are so long that
 * all took so much work; not where boards are few, as dives that cost the same cut up more or less
 * of these. */
#define PATIENCE      100
#define PATIENCE_LONG 10
#define LONG_WORK     (CUT_EFFORT_SECOND / 50)

/* The first dive may take so many times the effort: of a large job it is nearly always the best. */
#define FIRST_SHARE 4

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
    bool failed = false;
    d->taken = array_grow(d->taken, &d->taken_room, d->taken_count + 1, sizeof *d->taken, &failed);
    if (failed) {
        return false;
    }
    d->taken[d->taken_count++] = column;
    for (size_t i = col->first; i < col->first + col->count; i++) {
        int64_t *const left = &d->left[c->parts[i].kind];
        *left -= c->parts[i].times < *left ? c->parts[i].times : *left;
    }
    d->cost += c->job->stocks[col->stock].price;
    c->copies[col->stock] -= c->copies[col->stock] > 0 ? 1 : 0;
    return true;
}

/* Whether the relaxation cuts a column and there is a board for it. */
static bool is_cut(const struct dive *d, size_t column) {
    return d->c->shares[column] >= 1e-6 && d->c->copies[d->c->columns[column].stock] != 0;
}

/* The share of a column that is still wanted, by area. */
static double use_of(const struct dive *d, size_t column) {
    const struct board_columns *const c = d->c;
    const struct column *const col = &c->columns[column];
    double all = 0;
    double used = 0;
    for (size_t i = col->first; i < col->first + col->count; i++) {
        const struct column_part *const part = &c->parts[i];
        const struct board_kind *const kind = &c->kinds[part->kind];
        const int64_t left = d->left[part->kind];
        const double each = (double)kind->length * (double)kind->width;
        all += each * (double)part->times;
        used += each * (double)(part->times < left ? part->times : left);
    }
    return all > 0 ? used / all : 0;
}

/* The column that the relaxation likes best, of those that are of use; SIZE_MAX: none. */
static size_t choose(const struct dive *d, struct cut_random *random, double noise, double least) {
    size_t best = SIZE_MAX;
    double best_score = 0;
    for (size_t i = 0; i < d->c->column_count; i++) {
        const double share = d->c->shares[i];
        if (!is_cut(d, i)) {
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

/* Takes every column as often as the relaxation cuts it whole and it is wanted whole. Where boards
 * are few, later dives leave half of these: of relaxations that cost the same one has them, another
 * has not. */
static bool take_whole(struct dive *d, struct cut_random *random, double noise, bool *some) {
    *some = false;
    for (size_t i = 0; i < d->c->column_count; i++) {
        double share = d->c->shares[i] + 1e-6;
        if (share >= 1 && noise > 0 && d->c->limited > 0 && cut_random_below(random, 2) == 0) {
            continue;
        }
        while (share >= 1 && is_cut(d, i) && use_of(d, i) > 0.999) {
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

/* One dive from the top. stop: a plan that costs as much is of no use. *done: a whole plan. */
static bool dive(struct dive *d, struct cut_random *random, double noise, int64_t limit,
                 int64_t stop, bool *done) {
    struct board_columns *const c = d->c;
    *done = false;
    d->taken_count = 0;
    d->cost = 0;
    board_columns_want_all(c, d->left);
    while (any_left(d) && d->cost < stop) {
        bool some = false;
        if (!board_columns_relax(c, d->left, d->taken_count == 0, limit)) {
            return false;
        }
        if (stop < INT64_MAX && board_columns_least(c) >= stop - d->cost) {
            return true; /* no way down from here is cheaper */
        }
        if (!take_whole(d, random, noise, &some)) {
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

/* Keeps the plan of a dive where it is cheaper than what is known. */
static bool keep_better(const struct dive *d, struct board_plan **plan, int64_t *known) {
    struct board_plan *const next = board_columns_write(d->c, d->taken, d->taken_count, NULL);
    if (next == NULL) {
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

/* Adds a board of a plan as a column. */
static bool add_board(struct board_columns *c, const struct board_plan *plan, size_t board) {
    const struct board_use *const use = &plan->boards[board];
    const size_t first = c->part_count;
    for (size_t s = 0; s < use->count; s++) {
        const struct board_strip *const strip = &plan->strips[use->first + s];
        for (size_t p = strip->first; p < strip->first + strip->count; p++) {
            const size_t kind = c->kind_of[plan->pieces[p]];
            if (p > strip->first && c->parts[c->part_count - 1].kind == kind) {
                c->parts[c->part_count - 1].times++;
            } else if (!board_columns_part(c, (struct column_part){kind, 1, s})) {
                return false;
            }
        }
    }
    return board_columns_add(c, use->stock, first);
}

static bool add_part(struct board_columns *c, const struct board_part *part) {
    bool held = true;
    for (size_t b = 0; held && b < part->count; b++) {
        held = add_board(c, part->plan, part->boards[b]);
    }
    return held;
}

/* Whether another dive is of no use. since: dives without a cheaper plan. */
static bool is_over(const struct board_columns *c, int64_t known, const struct board_part *part,
                    int since) {
    const int64_t least = c->bound > c->least ? c->bound : c->least;
    return known <= least || (part != NULL && part->cost <= least) || since > PATIENCE ||
           (since > PATIENCE_LONG && c->spent > LONG_WORK && c->limited == 0);
}

bool board_dive(const struct board_job *job, int64_t effort, int64_t known,
                const struct board_part *part, struct board_plan **plan, int64_t *bound,
                int64_t *spent) {
    struct board_columns c;
    struct cut_random random = {.state = 1};
    bool held = board_columns_open(&c, job);
    struct dive d = {.c = &c, .left = pool_take(&c.pool, c.kind_count, sizeof *d.left)};
    held = held && d.left != NULL && (part == NULL || add_part(&c, part));
    c.stop = part == NULL ? INT64_MAX : known;
    int since = 0;
    *plan = NULL;
    for (int round = 0; held && c.kind_count > 0 && (round == 0 || c.spent < effort); round++) {
        const int64_t before = known;
        bool done = false;
        held = dive(&d, &random, round == 0 ? 0 : NOISE, round == 0 ? FIRST_SHARE * effort : effort,
                    known, &done) &&
               (!done || keep_better(&d, plan, &known));
        cut_spend(&c.spent, 1000);
        since = known < before ? 0 : since + 1;
        if (is_over(&c, known, part, since)) {
            break;
        }
    }
    *bound = c.bound;
    *spent = c.spent;
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
    int64_t *const left = pool_take(&c.pool, c.kind_count, sizeof *left);
    held = held && left != NULL;
    if (held && c.kind_count > 0) {
        board_columns_want_all(&c, left);
        held = board_columns_relax(&c, left, true, effort);
    }
    *bound = c.bound;
    *spent = c.spent;
    board_columns_close(&c);
    return held;
}
