/* SPDX-License-Identifier: MIT */
#include "learn/rack_after.h"

#include "learn/learned_parts.h"
#include "model/limits.h"

/* The rack in the making. Amounts that are left have GOODS_DECIMALS. */
struct shelf {
    const struct estimate *e;
    struct pool *pool;
    struct rack *next; /* has room for all rows there may be */
};

/* --- what was there --------------------------------------------------------------------------- */

/* A side as a tape shows it, so that it can be written; one that would not be read any more stays.
 */
static void round_side(const struct shelf *s, struct value *side) {
    const length tape = length_by_tape(side->amount, s->e->rates->shop.unit);
    if (side->set && tape >= NM_PER_INCH) {
        side->amount = tape;
    }
}

static struct rack_item copy_of(const struct shelf *s, const struct rack_item *old) {
    struct rack_item row = *old;
    round_side(s, &row.width);
    round_side(s, &row.length);
    row.left.amount = learned_value(&row.left, GOODS_DECIMALS);
    row.left.decimals = GOODS_DECIMALS;
    row.worth.amount = learned_value(&row.worth, s->e->tape.money_decimals);
    row.worth.decimals = s->e->tape.money_decimals;
    return row;
}

static void copy_rows(const struct shelf *s) {
    const struct rack *const rack = &s->e->rates->rack;
    for (size_t i = 0; i < rack->count; i++) {
        s->next->items[s->next->count++] = copy_of(s, &rack->items[i]);
    }
}

/* A row of the rack as it is in the making. Rows are in the order of the old ones. */
static struct rack_item *row_of(const struct shelf *s, const struct rack_item *old) {
    return &s->next->items[old - s->e->rates->rack.items];
}

/* Takes so much off a row, and its part of the worth. */
static void take_off(struct rack_item *row, int64_t amount) {
    const int64_t was = row->left.amount;
    row->left.amount -= amount;
    if (row->worth.set && was > 0) {
        row->worth.amount = learned_share(row->worth.amount, row->left.amount, was);
        row->worth.set = row->worth.amount > 0;
    }
}

static void take(const struct shelf *s, const struct rack_item *old, fig taken) {
    if (old != NULL && !fig_none(taken)) {
        take_off(row_of(s, old), tape_scaled(&s->e->tape, taken, GOODS_DECIMALS));
    }
}

/* What a plan takes; NULL: there is none. */
static void take_rows(const struct shelf *s, const struct rack_stock *rack) {
    for (size_t i = 0; rack != NULL && i < rack->count; i++) {
        take(s, rack_same(&s->e->rates->rack, &rack->rows[i]), rack->taken[i]);
    }
}

static void take_all(const struct shelf *s) {
    const struct estimate *const e = s->e;
    const struct rack *const rack = &e->rates->rack;
    for (size_t i = 0; i < e->hardware.count; i++) {
        const struct hardware_buy *const b = &e->hardware.buys[i];
        take(s, rack_find(rack, NAME_HARDWARE, b->hardware, NULL), b->from_rack);
    }
    for (size_t i = 0; i < e->finish.product_count; i++) {
        const struct product *const p = &e->finish.products[i];
        take(s,
             p->coating >= 0 ? rack_find(rack, NAME_COATING, p->coating, p->color)
                             : rack_find(rack, NAME_ADDITIVE, p->additive, NULL),
             p->from_rack);
    }
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct sheets_plan *const p = &e->sheets.buys[i].plan;
        take_rows(s, p->no_plan_reason == NULL ? &p->rack : NULL);
    }
    for (size_t i = 0; i < e->lumber.count; i++) {
        const struct lumber_plan *const p = &e->lumber.buys[i].plan;
        take_rows(s, p->no_plan_reason == NULL ? &p->rack : NULL);
    }
}

/* --- what the job leaves ---------------------------------------------------------------------- */

/* The row that is about the same as `like`, or a new one. */
static struct rack_item *row_like(const struct shelf *s, const struct rack_item *like) {
    struct rack_item *row = NULL;
    for (size_t i = 0; row == NULL && i < s->next->count; i++) {
        const struct rack one = {&s->next->items[i], 1};
        row = rack_same(&one, like) != NULL ? &s->next->items[i] : NULL;
    }
    if (row == NULL) {
        row = &s->next->items[s->next->count++];
        *row = *like;
        row->what.s =
            pool_words(s->pool, "%s %s", name_section((enum name_kind)like->kind),
                       name_at(s->e->rates, (enum name_kind)like->kind, (size_t)like->index));
        row->left.amount = 0;
        row->left.decimals = GOODS_DECIMALS;
        row->left.set = true;
    }
    return row;
}

static struct value side_of(const struct estimate *e, int64_t size) {
    const length whole = length_of_millionths(size, e->job->unit);
    return (struct value){
        .amount = length_by_tape(whole, e->rates->shop.unit), .unit = UNIT_NM, .set = true};
}

/* One more offcut of a lumber or sheet; sizes of the planner. */
static void add_offcut(const struct shelf *s, enum name_kind kind, int32_t index, int64_t across,
                       int64_t along) {
    const struct rack_item offcut = {.kind = (int)kind,
                                     .index = index,
                                     .width = side_of(s->e, across),
                                     .length = side_of(s->e, along),
                                     .sawn = true,
                                     .left = {.unit = UNIT_COUNT}};
    row_like(s, &offcut)->left.amount += GOODS_ONE;
}

/* The offcuts of a plan of sheets that are worth a place. */
static void add_sheet_offcuts(const struct shelf *s, const struct sheet_buy *b) {
    const struct sheets_plan *const p = &b->plan;
    for (size_t n = 0; b->planned && n < p->plan->node_count; n++) {
        const struct sheet_node *const node = &p->plan->nodes[n];
        if (node->use == SHEET_OFFCUT && sheet_keeps(p->keep, node->length, node->width)) {
            add_offcut(s, NAME_SHEET, b->material, node->width, node->length);
        }
    }
}

/* Whether the boards are cut as the plan has it: it prices them, or takes of the rack. */
static bool is_cut(const struct lumber_buy *b) {
    return b->plan.no_plan_reason == NULL && (b->planned || b->plan.rack.count > 0);
}

/* The same of boards. One that still has its edges is as wide as it will be without. false: out of
 * memory. */
static bool add_board_offcuts(const struct shelf *s, const struct lumber_buy *b) {
    const struct lumber_plan *const p = &b->plan;
    struct board_layout layout = {0};
    bool held = true;
    for (size_t n = 0; held && n < p->plan->board_count; n++) {
        held = board_layout_make(&layout, &p->job, p->plan, n, p->keep);
        for (size_t i = 0; held && i < layout.offcut_count; i++) {
            const struct board_offcut *const offcut = &layout.offcuts[i];
            const int64_t edges = offcut->rough ? 2 * p->job.edge : 0;
            if (offcut->keep && offcut->box.width - edges >= p->keep.board_width) {
                add_offcut(s, NAME_LUMBER, b->material, offcut->box.width - edges,
                           offcut->box.length);
            }
        }
    }
    board_layout_clear(&layout);
    return held;
}

/* Whether what is left of a coating has one color, or none. *color: that; NULL: none. A tinted one
 * that the estimate does not use has some color, and nothing tells which. */
static bool has_one_color(const struct estimate *e, int32_t coating, const char **color) {
    size_t count = 0;
    for (size_t i = 0; i < e->finish.product_count; i++) {
        if (e->finish.products[i].coating == coating) {
            *color = e->finish.products[i].color;
            count++;
        }
    }
    return count == 1 || (count == 0 && !e->rates->coatings[coating].tinted);
}

/* Puts in a row what is there after the job. What was taken was noted: in place of what the
 * estimate takes, the old row and what was bought less that, and what is left of it; of the old row
 * goes what was used. Else what is left is of what was bought. */
static void settle(const struct shelf *s, const struct rack_item *like,
                   const struct learned_goods *g) {
    const struct rack_item *const old = rack_same(&s->e->rates->rack, like);
    struct rack_item *const row = row_like(s, like);
    if (!g->has_taken) {
        row->left.amount += g->left;
        return;
    }
    int64_t was = 0;
    if (old != NULL) {
        *row = copy_of(s, old);
        was = row->left.amount;
        take_off(row, g->used < was ? g->used : was);
    }
    const int64_t closed = was + g->bought - g->taken; /* below 0: more was there */
    row->left.amount = (closed > 0 ? closed : 0) + g->left;
}

/* What was noted as taken and left, but of boards and sheets: of these the plan knows the sizes. */
static void settle_noted(const struct shelf *s, const struct learned_goods *g,
                         struct problems *problems) {
    const char *color = NULL;
    const bool leaves = g->left > 0 || (g->has_taken && g->bought > g->taken);
    if ((!leaves && !g->has_taken) ||
        (g->kind != NAME_HARDWARE && g->kind != NAME_COATING && g->kind != NAME_ADDITIVE)) {
        return;
    }
    if (g->kind == NAME_COATING && !has_one_color(s->e, g->index, &color)) {
        if (leaves) {
            problem_add(problems, SEVERITY_WARNING, "rack-which-color", g->place,
                        "'%s' is noted as left over, and the job has it in %s; add it to the new "
                        "rack yourself, with its color",
                        problem_quote(problems, g->name),
                        color == NULL ? "no color" : "several colors");
        }
        return;
    }
    const struct rack_item like = {
        .kind = (int)g->kind,
        .index = g->index,
        .color = {.s = color},
        .left = {.unit = (uint8_t)(g->kind == NAME_HARDWARE ? UNIT_COUNT : g->unit)}};
    settle(s, &like, g);
}

/* --- all of it -------------------------------------------------------------------------------- */

/* Leaves out empty rows, and puts rows together whose sides became the same. */
static void tidy(struct rack *rack) {
    struct rack kept = {rack->items, 0};
    for (size_t i = 0; i < rack->count; i++) {
        const struct rack_item *const item = &rack->items[i];
        const struct rack_item *const earlier = rack_same(&kept, item);
        if (item->left.amount <= 0) {
            continue;
        }
        if (earlier == NULL) {
            kept.items[kept.count++] = *item;
            continue;
        }
        struct rack_item *const row = &kept.items[earlier - kept.items];
        row->left.amount += item->left.amount;
        row->worth.amount += item->worth.amount;
        row->worth.set = row->worth.set || item->worth.set;
        row->note = row->note.s == NULL ? item->note : row->note;
    }
    *rack = kept;
}

/* The smallest offcut, of one kind and index or (kind < 0) of any; without one the last row. */
static size_t smallest(const struct rack *rack, int kind, int32_t index) {
    size_t found = rack->count - 1;
    int128 least = -1;
    for (size_t i = 0; i < rack->count; i++) {
        const struct rack_item *const item = &rack->items[i];
        const int128 area = (int128)item->width.amount * item->length.amount;
        if (item->sawn && (kind < 0 || (item->kind == kind && item->index == index)) &&
            (least < 0 || area < least)) {
            least = area;
            found = i;
        }
    }
    return found;
}

/* Leaves out what is beyond `most` of `count` rows, of one thing or of all, and says so. */
static void leave_out(struct rack *rack, int kind, int32_t index, size_t count, size_t most,
                      const char *of, struct problems *problems) {
    if (count <= most) {
        return;
    }
    for (size_t n = most; n < count; n++) {
        for (size_t i = smallest(rack, kind, index) + 1; i < rack->count; i++) {
            rack->items[i - 1] = rack->items[i];
        }
        rack->count--;
    }
    problem_add(problems, SEVERITY_WARNING, "rack-full", (struct place){0},
                "the new rack would have %zu rows%s, of which %zu can be read; the smallest are "
                "left out: see what is worth its place",
                count, of, most);
}

/* No more sizes of each lumber, or sheet, than the reader of the rack takes. */
static void keep_sizes(const struct shelf *s, enum name_kind kind, size_t things,
                       struct problems *problems) {
    struct rack *const rack = s->next;
    for (size_t index = 0; index < things; index++) {
        size_t count = 0;
        for (size_t i = 0; (i = rack_next(rack, (int)kind, (int32_t)index, i)) < rack->count; i++) {
            count++;
        }
        const char *const name = problem_quote(problems, name_at(s->e->rates, kind, index));
        const char *const of = pool_words(s->pool, " of '%s'", name);
        leave_out(rack, (int)kind, (int32_t)index, count, MOST_RACK_SIZES, of, problems);
    }
}

/* No more rows than the reader takes. */
static void keep_room(const struct shelf *s, struct problems *problems) {
    keep_sizes(s, NAME_LUMBER, s->e->rates->lumber_count, problems);
    keep_sizes(s, NAME_SHEET, s->e->rates->sheet_count, problems);
    leave_out(s->next, -1, -1, s->next->count, MOST_RACK, "", problems);
}

/* Rows that may be added for offcuts. */
static size_t most_offcuts(const struct estimate *e) {
    size_t most = 0;
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct sheets_plan *const p = &e->sheets.buys[i].plan;
        most += p->plan == NULL ? 0 : p->plan->node_count;
    }
    for (size_t i = 0; i < e->lumber.count; i++) {
        const struct board_plan *const plan = e->lumber.buys[i].plan.plan;
        /* behind the strips of a board, and behind the parts of a strip */
        most += plan == NULL ? 0 : plan->board_count + plan->strip_count;
    }
    return most;
}

bool rack_after(struct rack *next, const struct estimate *e, const struct learned *learned,
                struct problems *problems, struct pool *pool) {
    const size_t most = e->rates->rack.count + learned->goods_count + most_offcuts(e);
    *next = (struct rack){.items = pool_take(pool, most, sizeof *next->items)};
    if (next->items == NULL) {
        return false;
    }
    const struct shelf shelf = {e, pool, next};
    copy_rows(&shelf);
    take_all(&shelf);
    for (size_t i = 0; i < e->lumber.count; i++) {
        if (is_cut(&e->lumber.buys[i]) && !add_board_offcuts(&shelf, &e->lumber.buys[i])) {
            return false;
        }
    }
    for (size_t i = 0; i < e->sheets.count; i++) {
        if (e->sheets.buys[i].plan.plan != NULL) {
            add_sheet_offcuts(&shelf, &e->sheets.buys[i]);
        }
    }
    for (size_t i = 0; i < learned->goods_count; i++) {
        settle_noted(&shelf, &learned->goods[i], problems);
    }
    tidy(next);
    keep_room(&shelf, problems);
    return !pool_failed(pool) && !problems->failed;
}
