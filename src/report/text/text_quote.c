/* SPDX-License-Identifier: MIT */
/* The quote as the client reads it. */
#include "base/text.h"
#include "report/text/print.h"
#include "report/words/door_words.h"
#include "report/words/sale_line.h"
#include "report/words/show.h"

/* --- doors, by room --- */

static void put_door(struct grid *grid, const struct estimate *e, size_t row) {
    const struct leaf_figures *const leaf = &e->quantities.leaves[row];
    const struct door *const door = leaf->door;
    const struct door_price *const price = &e->costs.doors[row];
    grid_put(grid, "%s", door->row->id.s);
    grid_put(grid, "%s, %s", show_door(door), show_style(door));
    grid_put(grid, "%s", show_size(door->width, door->height, e->job->unit).text);
    if (door->leaves > 1) {
        grid_put(grid, "%s x %d", show(e, leaf->openings).text, (int)door->leaves);
    } else {
        grid_put(grid, "%s", show(e, leaf->openings).text);
    }
    grid_put(grid, "%s", show_money(e, price->unit).text);
    grid_put(grid, "%s", show_money(e, price->amount).text);
}

static void put_rooms(struct grid *grid, const struct estimate *e) {
    for (size_t i = 0; i < e->sale.room_count; i++) {
        const struct room_sum *const room = &e->sale.rooms[i];
        grid_heading(grid, "%s", room->room[0] == '\0' ? "(no room named)" : room->room);
        for (size_t n = 0; n < room->count; n++) {
            put_door(grid, e, e->sale.by_room[room->first + n]);
        }
    }
}

static void print_doors(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{"", GRID_LEFT, false},
                                                 {"doors and fronts", GRID_LEFT, true},
                                                 {"size", GRID_RIGHT, false},
                                                 {"count", GRID_RIGHT, false},
                                                 {"price each", GRID_RIGHT, false},
                                                 {"amount", GRID_RIGHT, false}};
    struct grid grid;
    grid_init(&grid, columns, 6, 0);
    put_rooms(&grid, e);
    grid_print(&grid, page);
    grid_clear(&grid);
    bool pairs = false;
    for (size_t row = 0; row < e->doors.count; row++) {
        const struct door *const door = &e->doors.doors[row];
        const struct row *const r = door->row;
        pairs = pairs || door->leaves > 1;
        if (!fig_none(e->costs.doors[row].extra) && door_drawn(door) == door) {
            say_wrapped(page, "", 2, "%s: %s of its price each is for: %s", r->id.s,
                        show_money(e, e->costs.doors[row].extra).text,
                        r->extra_words.s == NULL ? "an extra charge" : r->extra_words.s);
        }
    }
    if (pairs) {
        say(page, "  count '1 x 2': one opening with a pair of doors; the price is for one door");
    }
}

/* --- the foot --- */

static void put_line(struct grid *grid, const char *label, const char *rate, const char *money) {
    grid_put(grid, "%s", label);
    grid_put(grid, "%s", rate);
    grid_put(grid, "%s", money);
}

/* The lines to the total, or those of the payments. */
static void put_sale(struct grid *grid, const struct estimate *e, bool payments) {
    const struct sale_lines sale = sale_lines_make(&grid->pool, e);
    for (size_t i = 0; i < sale.count; i++) {
        const struct sale_line *const line = &sale.lines[i];
        if (!line->asked || line->payment != payments) {
            continue;
        }
        const bool total = sale_line_is(line, offsetof(struct sale_figures, total));
        const char *const exempt = total ? sale_exempt(&grid->pool, e) : NULL;
        if (exempt != NULL) {
            grid_put(grid, "%s", exempt);
            grid_end_row(grid);
        }
        if (line->field != NULL && (line->field->views & FIELD_TOTAL) != 0) {
            grid_rule(grid);
        }
        const bool doors = sale_line_is(line, offsetof(struct sale_figures, doors));
        const fig beside = doors ? e->quantities.all_leaves : line->rate;
        grid_put(grid, "%s", line->label);
        grid_put(grid, "%s", fig_none(beside) ? "" : show_unit(e, beside).text);
        grid_put(grid, "%s%s", line->less ? "-" : "", show_money(e, line->money).text);
    }
}

static void say_by_others(struct page *page, const struct estimate *e) {
    for (size_t i = 0; i < e->hardware.count; i++) {
        const struct hardware_buy *const b = &e->hardware.buys[i];
        if (b->by_others) {
            say_wrapped(page, "", 0, "By others, not in the price: %s %s.", show(e, b->needed).text,
                        e->rates->hardware[b->hardware].name.s);
        }
    }
}

static void print_foot(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {
        {NULL, GRID_LEFT, true}, {NULL, GRID_RIGHT, false}, {NULL, GRID_RIGHT, false}};
    struct grid grid;
    grid_init(&grid, columns, 3, 2);
    put_sale(&grid, e, false);
    grid_heading(&grid, "%s", "");
    put_sale(&grid, e, true);
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
    say(page, "%s", "");
    say_by_others(page, e);
    if (e->job->terms.s != NULL) {
        say_wrapped(page, "", 0, "%s", e->job->terms.s);
    }
    if (e->job->note.s != NULL) {
        say_wrapped(page, "", 0, "%s", e->job->note.s);
    }
    struct pool pool;
    pool_init(&pool);
    const struct caution_list told = cautions_needed(e, CAUTION_CLIENT, &pool);
    for (size_t i = 0; i < told.count; i++) {
        say_wrapped(page, "", 0, "%s", told.texts[i]);
    }
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

/* --- options --- */

static void print_options(struct page *page, const struct estimate *base,
                          const struct estimate *options, size_t count) {
    static const struct grid_column columns[] = {{"the same doors", GRID_LEFT, true},
                                                 {"total", GRID_RIGHT, false},
                                                 {"difference", GRID_RIGHT, false},
                                                 {"percent", GRID_RIGHT, false}};
    struct grid grid;
    grid_init(&grid, columns, 4, 2);
    put_line(&grid, estimate_name(base), show_money(base, base->sale.total).text, "");
    grid_end_row(&grid);
    for (size_t i = 0; i < count; i++) {
        const struct estimate *const o = &options[i];
        const struct shown_difference d = show_difference(base, o);
        grid_put(&grid, "%s", estimate_name(o));
        grid_put(&grid, "%s", show_money(o, o->sale.total).text);
        grid_put(&grid, "%s", d.money.text);
        grid_put(&grid, "%s", d.percent.text);
    }
    say(page, "%s", "");
    say(page, "Options");
    grid_print(&grid, page);
    grid_clear(&grid);
}

void quote_print(struct page *page, const struct estimate *base, const struct estimate *options,
                 size_t option_count) {
    head_print(page, show_paper(base->job), base);
    say(page, "%s", "");
    print_doors(page, base);
    print_foot(page, base);
    if (option_count > 0) {
        print_options(page, base, options, option_count);
    }
}
