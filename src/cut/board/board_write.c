/* SPDX-License-Identifier: MIT */
/* Columns as a plan: the parts that are wanted on their boards. */
#include "cut/board/board_columns.h"
#include "cut/board/board_limited.h"

struct writer {
    const struct board_columns *c;
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

/* The strip whose first part is parts[at], of the column that ends before parts[end]: its parts,
 * longest first as the kinds come. *along: its length, grown; 0: nothing of it is wanted and it is
 * not cut. Returns the next strip's first part. */
static size_t write_strip(struct writer *w, size_t at, size_t end, int64_t *along) {
    const struct board_columns *const c = w->c;
    struct board_plan *const p = w->plan;
    struct board_strip strip = {.width = c->kinds[c->parts[at].kind].width - c->job->kerf,
                                .first = p->piece_count};
    const size_t number = c->parts[at].strip;
    *along = 0;
    for (; at < end && c->parts[at].strip == number; at++) {
        const struct column_part *const part = &c->parts[at];
        for (int64_t n = 0; n < part->times && w->left[part->kind] > 0; n++) {
            p->pieces[p->piece_count++] = next_item(w, part->kind);
            *along += c->kinds[part->kind].length;
        }
    }
    strip.count = p->piece_count - strip.first;
    if (strip.count > 0) {
        p->strips[p->strip_count++] = strip;
    }
    return at;
}

/* The cheapest stock that holds strips so long and so wide, both grown; of which there are only so
 * many it is none but its own. */
static size_t cheapest(const struct board_columns *c, int64_t along, int64_t across, size_t stock) {
    const struct board_job *const job = c->job;
    size_t best = stock;
    for (size_t s = 0; s < job->stock_count; s++) {
        if (job->stocks[s].copies == CUT_UNLIMITED && c->length_of[s] != SIZE_MAX &&
            c->lengths[c->length_of[s]] >= along &&
            board_usable_width(job, s) + job->kerf >= across &&
            job->stocks[s].price < job->stocks[best].price) {
            best = s;
        }
    }
    return best;
}

static void write_board(struct writer *w, const struct column *col) {
    const struct board_columns *const c = w->c;
    struct board_plan *const p = w->plan;
    struct board_use use = {.first = p->strip_count};
    int64_t along = 0;
    int64_t across = 0;
    for (size_t i = col->first; i < col->first + col->count;) {
        const int64_t width = c->kinds[c->parts[i].kind].width;
        int64_t longest = 0;
        i = write_strip(w, i, col->first + col->count, &longest);
        across += longest > 0 ? width : 0;
        along = longest > along ? longest : along;
    }
    use.count = p->strip_count - use.first;
    if (use.count > 0) {
        use.stock = cheapest(c, along, across, col->stock);
        p->cost += c->job->stocks[use.stock].price;
        p->boards[p->board_count++] = use;
    }
}

struct board_plan *board_columns_write(const struct board_columns *c, const size_t *taken,
                                       size_t count, struct cut_item *rest) {
    struct pool pool;
    pool_init(&pool);
    struct writer w = {.c = c,
                       .plan = board_plan_new(c->job),
                       .left = pool_take(&pool, c->kind_count, sizeof *w.left),
                       .items = pool_take(&pool, c->job->item_count, sizeof *w.items),
                       .next = pool_take(&pool, c->kind_count, sizeof *w.next)};
    if (w.plan != NULL && pool_failed(&pool)) {
        board_plan_free(w.plan);
        w.plan = NULL;
    }
    if (w.plan != NULL) {
        for (size_t k = 0; k < c->kind_count; k++) {
            w.left[k] = c->kinds[k].demand;
        }
        for (size_t i = 0; i < c->job->item_count; i++) {
            w.items[i] = c->job->items[i].demand;
        }
        for (size_t i = 0; i < count; i++) {
            write_board(&w, &c->columns[taken[i]]);
        }
        board_settle(c->job, w.plan);
        for (size_t i = 0; rest != NULL && i < c->job->item_count; i++) {
            rest[i] = c->job->items[i];
            rest[i].demand = w.items[i];
        }
    }
    pool_clear(&pool);
    return w.plan;
}
