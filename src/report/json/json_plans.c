/* SPDX-License-Identifier: MIT */
/* The cutting plans: the planner's job, every board with its strips or segments, every sheet with
 * its cuts, and what the plan comes to.  Sizes are texts in the job's unit of length. */
#include "report/json/json_parts.h"
#include "report/words/plan_words.h"

static void put_size(struct json_maker *maker, json_t *object, const char *key, int64_t size) {
    json_put_text(maker, object, key, show_number(size, 6).text);
}

static void put_box(struct json_maker *maker, json_t *object, int64_t x, int64_t y, int64_t along,
                    int64_t across) {
    put_size(maker, object, "x", x);
    put_size(maker, object, "y", y);
    put_size(maker, object, "length", along);
    put_size(maker, object, "width", across);
}

/* The name of a part as all papers have it. */
static void put_name(struct json_maker *maker, json_t *object, const struct plan_part *part) {
    struct pool pool;
    pool_init(&pool);
    json_put_text(maker, object, "name", plan_part_name(&pool, part));
    maker->failed = maker->failed || pool_failed(&pool);
    pool_clear(&pool);
}

static json_t *stock_object(struct json_maker *maker, const struct cut_stock *stock,
                            uint8_t price_decimals) {
    json_t *const object = json_object();
    put_size(maker, object, "length", stock->length);
    put_size(maker, object, "width", stock->width);
    json_put_text(maker, object, "price", show_number(stock->price, price_decimals).text);
    return object;
}

/* Those that are sold. */
static json_t *stock_list(struct json_maker *maker, const struct cut_stock *stocks, size_t count,
                          uint8_t price_decimals, const fig *counts) {
    json_t *const list = json_array();
    for (size_t s = 0; s < count; s++) {
        json_t *const object = stock_object(maker, &stocks[s], price_decimals);
        json_put_figure(maker, object, "to buy", counts[s]);
        json_add(maker, list, object);
    }
    return list;
}

/* Those of the rack, behind them. */
static void add_rack(struct json_maker *maker, json_t *list, const struct rack_stock *rack,
                     const struct cut_stock *stocks, uint8_t price_decimals) {
    for (size_t i = 0; i < rack->count; i++) {
        json_t *const object = stock_object(maker, &stocks[i], price_decimals);
        json_put_count(maker, object, "on the rack", stocks[i].copies);
        json_put(maker, object, "sawn", json_boolean(rack->rows[i].sawn));
        json_put_figure(maker, object, "from the rack", rack->taken[i]);
        json_add(maker, list, object);
    }
}

static json_t *item_list(struct json_maker *maker, const struct cut_item *items,
                         const struct plan_part *parts, size_t count) {
    json_t *const list = json_array();
    for (size_t i = 0; i < count; i++) {
        json_t *const object = json_object();
        json_put_text(maker, object, "door", parts[i].door->name);
        json_put_text(maker, object, "part", part_full_name(parts[i].part));
        put_size(maker, object, "length", items[i].length);
        put_size(maker, object, "width", items[i].width);
        json_put_count(maker, object, "pieces", items[i].demand);
        json_add(maker, list, object);
    }
    return list;
}

/* --- boards --- */

static json_t *strip_object(struct json_maker *maker, const struct lumber_plan *p,
                            const struct board_layout *layout, size_t strip, size_t number) {
    json_t *const object = json_object();
    json_t *const parts = json_array();
    put_size(maker, object, p->job.crosscut_first ? "length" : "width",
             p->plan->strips[strip].width);
    for (size_t i = 0; i < layout->piece_count; i++) {
        const struct board_piece *const piece = &layout->pieces[i];
        if (piece->strip != number) {
            continue;
        }
        json_t *const part = json_object();
        json_put_count(maker, part, "item", (int64_t)piece->item);
        put_name(maker, part, &p->parts[piece->item]);
        put_box(maker, part, piece->box.x, piece->box.y, piece->box.length, piece->box.width);
        json_add(maker, parts, part);
    }
    json_put(maker, object, "parts", parts);
    return object;
}

static json_t *board_cuts(struct json_maker *maker, const struct board_layout *layout) {
    static const char *const kinds[] = {[BOARD_CUT_END] = "trim an end",
                                        [BOARD_CUT_EDGE] = "straighten an edge",
                                        [BOARD_CUT_RIP] = "rip",
                                        [BOARD_CUT_CROSS] = "crosscut"};
    json_t *const list = json_array();
    for (size_t i = 0; i < layout->cut_count; i++) {
        const struct board_box *const box = &layout->cuts[i].box;
        json_t *const object = json_object();
        json_put_text(maker, object, "cut", kinds[layout->cuts[i].kind]);
        put_box(maker, object, box->x, box->y, box->length, box->width);
        json_add(maker, list, object);
    }
    return list;
}

static json_t *board_object(struct json_maker *maker, const struct lumber_plan *p,
                            const struct alike *alike) {
    const struct board_use *const use = &p->plan->boards[alike->first];
    struct board_layout layout = {0};
    if (!board_layout_make(&layout, &p->job, p->plan, alike->first, p->keep)) {
        board_layout_clear(&layout);
        return NULL;
    }
    json_t *const object = json_object();
    json_put_count(maker, object, "number", (int64_t)alike->number);
    json_put_count(maker, object, "copies", (int64_t)alike->copies);
    json_put_count(maker, object, "size", (int64_t)use->stock);
    json_t *const strips = json_array();
    for (size_t s = 0; s < use->count; s++) {
        json_add(maker, strips, strip_object(maker, p, &layout, use->first + s, s));
    }
    json_put(maker, object, p->job.crosscut_first ? "segments" : "strips", strips);
    json_put(maker, object, "cuts", board_cuts(maker, &layout));
    json_t *const offcuts = json_array();
    for (size_t i = 0; i < layout.offcut_count; i++) {
        const struct board_box *const box = &layout.offcuts[i].box;
        json_t *const offcut = json_object();
        put_box(maker, offcut, box->x, box->y, box->length, box->width);
        json_put(maker, offcut, "keep", json_boolean(layout.offcuts[i].keep));
        json_add(maker, offcuts, offcut);
    }
    json_put(maker, object, "offcuts", offcuts);
    board_layout_clear(&layout);
    return object;
}

static void send_boards(struct json_maker *maker, const struct lumber_plan *p) {
    struct pool pool;
    size_t count = 0;
    pool_init(&pool);
    const struct alike *const list = plan_alike_boards(&pool, p->plan, &count);
    maker->failed = maker->failed || list == NULL;
    json_open(&maker->stream, "boards cut", '[');
    for (size_t i = 0; list != NULL && i < count; i++) {
        json_send(&maker->stream, NULL, board_object(maker, p, &list[i]));
    }
    json_close(&maker->stream, ']');
    pool_clear(&pool);
}

static void send_lumber(struct json_maker *maker, const struct lumber_buy *b) {
    const struct lumber_plan *const p = &b->plan;
    const struct lumber *const l = &maker->e->rates->lumber[b->material];
    json_t *const object = json_object();
    json_put_text(maker, object, "name", l->name.s);
    json_put_text(maker, object, "thickness", l->thickness_text.s);
    json_put(maker, object, "prices the job", json_boolean(b->planned));
    json_put_text(maker, object, "missing", p->no_plan_reason);
    if (p->no_plan_reason == NULL) {
        json_put_fields(maker, object, &fields_lumber_plan, b);
        put_size(maker, object, "saw kerf", p->job.kerf);
        json_put_text(maker, object, "first cut", p->job.crosscut_first ? "crosscut" : "rip");
        put_size(maker, object, "end trim", p->job.end_trim);
        put_size(maker, object, "edge straightened", p->job.edge);
        json_put_text(maker, object, "share of defects", show_number(p->job.defects, 6).text);
        json_t *const sizes =
            stock_list(maker, p->job.stocks, p->sold, p->price_decimals, p->counts);
        add_rack(maker, sizes, &p->rack, p->job.stocks + p->sold, p->price_decimals);
        json_put(maker, object, "sizes", sizes);
        json_put(maker, object, "items",
                 item_list(maker, p->job.items, p->parts, p->job.item_count));
    }
    json_open(&maker->stream, NULL, '{');
    json_send_members(&maker->stream, object);
    if (p->no_plan_reason == NULL) {
        send_boards(maker, p);
    }
    json_close(&maker->stream, '}');
}

/* --- sheets --- */

/* A node and what it becomes; nodes of a sheet are numbered from 0, in the order of the cuts.
 * places: the number of each node from the sheet's first on. */
static json_t *node_object(struct json_maker *maker, const struct sheets_plan *p,
                           const struct sheet_node *n, const size_t *places) {
    static const char *const uses[] = {[SHEET_CUT_X] = "crosscut",
                                       [SHEET_CUT_Y] = "rip",
                                       [SHEET_PIECE] = "part",
                                       [SHEET_OFFCUT] = "offcut"};
    json_t *const object = json_object();
    json_put_text(maker, object, "becomes", uses[n->use]);
    put_box(maker, object, n->x, n->y, n->length, n->width);
    if (n->use == SHEET_PIECE) {
        const struct sheet_part *const part = &p->plan->parts[n->part];
        json_put_count(maker, object, "item", (int64_t)part->item);
        put_name(maker, object, &p->parts[part->item]);
        json_put(maker, object, "turned", json_boolean(part->turned));
    } else if (n->use == SHEET_OFFCUT) {
        json_put(maker, object, "keep", json_boolean(sheet_keeps(p->keep, n->length, n->width)));
    } else {
        put_size(maker, object, "at", n->position);
        json_put_count(maker, object, "first", (int64_t)places[n->first]);
        json_put(maker, object, "second",
                 n->second == SHEET_NONE ? json_null()
                                         : json_integer((json_int_t)places[n->second]));
    }
    return object;
}

/* order, places: room for the nodes of all sheets, order for twice as many. */
static json_t *one_sheet(struct json_maker *maker, size_t *order, size_t *places,
                         const struct sheets_plan *p, const struct alike *alike) {
    const struct sheet_sheet *const sheet = &p->plan->sheets[alike->first];
    sheet_order(p->plan, alike->first, order, order + sheet->node_count);
    json_t *const one = json_object();
    json_put_count(maker, one, "number", (int64_t)alike->number);
    json_put_count(maker, one, "copies", (int64_t)alike->copies);
    json_put_count(maker, one, "size", (int64_t)sheet->stock);
    for (size_t n = 0; n < sheet->node_count; n++) {
        places[order[n]] = n;
    }
    json_t *const nodes = json_array();
    for (size_t n = 0; n < sheet->node_count; n++) {
        json_add(maker, nodes, node_object(maker, p, &p->plan->nodes[order[n]], places));
    }
    json_put(maker, one, "nodes", nodes);
    return one;
}

static void send_sheets(struct json_maker *maker, const struct sheets_plan *p) {
    struct pool pool;
    size_t count = 0;
    pool_init(&pool);
    const struct alike *const list = plan_alike_sheets(&pool, p->plan, &count);
    size_t *const order = pool_take(&pool, 2 * p->plan->node_count, sizeof *order);
    size_t *const places = pool_take(&pool, p->plan->node_count, sizeof *places);
    maker->failed = maker->failed || pool_failed(&pool);
    json_open(&maker->stream, "sheets cut", '[');
    for (size_t i = 0; !maker->failed && i < count; i++) {
        json_send(&maker->stream, NULL, one_sheet(maker, order, places, p, &list[i]));
    }
    json_close(&maker->stream, ']');
    pool_clear(&pool);
}

static void send_sheet(struct json_maker *maker, const struct sheet_buy *b) {
    const struct sheets_plan *const p = &b->plan;
    const struct sheet *const s = &maker->e->rates->sheets[b->material];
    json_t *const object = json_object();
    json_put_text(maker, object, "name", s->name.s);
    json_put(maker, object, "prices the job", json_boolean(b->planned));
    json_put_text(maker, object, "missing", p->no_plan_reason);
    if (p->no_plan_reason == NULL) {
        json_put_fields(maker, object, &fields_sheet_plan, b);
        put_size(maker, object, "saw kerf", p->job.kerf);
        put_size(maker, object, "edge trim", p->job.trim);
        json_put(maker, object, "grain", json_boolean(s->grain));
        json_t *const sizes =
            stock_list(maker, p->job.stocks, p->sold, p->price_decimals, p->counts);
        add_rack(maker, sizes, &p->rack, p->job.stocks + p->sold, p->price_decimals);
        json_put(maker, object, "sizes", sizes);
        json_put(maker, object, "items",
                 item_list(maker, p->job.items, p->parts, p->job.item_count));
    }
    json_open(&maker->stream, NULL, '{');
    json_send_members(&maker->stream, object);
    if (p->no_plan_reason == NULL) {
        send_sheets(maker, p);
    }
    json_close(&maker->stream, '}');
}

void json_plans(struct json_maker *maker) {
    const struct estimate *const e = maker->e;
    json_open(&maker->stream, "plans", '{');
    json_open(&maker->stream, "lumber", '[');
    for (size_t i = 0; i < e->lumber.count; i++) {
        send_lumber(maker, &e->lumber.buys[i]);
    }
    json_close(&maker->stream, ']');
    json_open(&maker->stream, "sheets", '[');
    for (size_t i = 0; i < e->sheets.count; i++) {
        send_sheet(maker, &e->sheets.buys[i]);
    }
    json_close(&maker->stream, ']');
    json_close(&maker->stream, '}');
}
