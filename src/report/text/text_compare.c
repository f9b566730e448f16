/* SPDX-License-Identifier: MIT */
/* The estimates of a job side by side: up to four a table, the first in each. */
#include "report/text/print.h"
#include "report/words/show.h"

#define MOST_BESIDE  3 /* further tables hold so many more */
#define WIDEST_TITLE 12

/* The estimates of one table: the first, then `count` others from `from` on. */
struct spread {
    const struct estimate *estimates;
    const struct purchase *purchases;
    size_t from, count;
};

static size_t column_of(const struct spread *s, size_t place) {
    return place == 0 ? 0 : s->from + place - 1;
}

typedef fig (*figure_pick)(const struct estimate *e, const struct purchase *p);

struct compared {
    const char *label;
    figure_pick pick;
    bool money, rule; /* rule: a line above */
    bool less;        /* taken off: shown with a minus */
};

/* One row. Left out where no estimate has it. */
static void put_row(struct grid *grid, const struct spread *s, const struct compared *row) {
    bool any = false;
    for (size_t i = 0; i <= s->count; i++) {
        const size_t c = column_of(s, i);
        any = any || !fig_none(row->pick(&s->estimates[c], &s->purchases[c]));
    }
    if (!any) {
        return;
    }
    grid_put(grid, "%s", row->label);
    for (size_t i = 0; i <= s->count; i++) {
        const size_t c = column_of(s, i);
        const struct estimate *const e = &s->estimates[c];
        const fig f = row->pick(e, &s->purchases[c]);
        grid_put(grid, "%s%s", row->less && !fig_none(f) ? "-" : "",
                 row->money ? show_money(e, f).text : show_unit(e, f).text);
    }
}

static fig pick_direct(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->costs.job.direct;
}
static fig pick_contingency(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->costs.job.contingency;
}
static fig pick_overhead(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->costs.job.overhead;
}
static fig pick_full(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->costs.job.full;
}
static fig pick_profit(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->costs.job.profit;
}
static fig pick_price(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->costs.job.price;
}
static fig pick_doors(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->sale.doors;
}
static fig pick_discount(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return sale_asked(&e->tape, e->sale.discount_rate) ? e->sale.discount : (fig){0};
}
static fig pick_minimum(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return tape_amount(&e->tape, e->sale.minimum_line) > 0 ? e->sale.minimum_line : (fig){0};
}
static fig pick_delivery(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->sale.delivery;
}
static fig pick_subtotal(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->sale.subtotal;
}
static fig pick_tax(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->sale.tax;
}
static fig pick_fee(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->sale.card_fee;
}
static fig pick_total(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->sale.total;
}
static fig pick_left(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->sale.profit_left;
}
static fig pick_margin(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->sale.margin_left;
}
static fig pick_hours(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->labor.hours;
}
static fig pick_weight(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->quantities.weight;
}
static fig pick_minutes(const struct estimate *e, const struct purchase *p) {
    (void)p;
    return e->labor.minutes_a_door;
}
static fig pick_board_feet(const struct estimate *e, const struct purchase *p) {
    (void)e;
    return p->board_feet;
}
static fig pick_cubic_meters(const struct estimate *e, const struct purchase *p) {
    (void)e;
    return p->cubic_meters;
}
static fig pick_sheets(const struct estimate *e, const struct purchase *p) {
    (void)e;
    return p->sheets;
}
static fig pick_half_sheets(const struct estimate *e, const struct purchase *p) {
    (void)e;
    return p->half_sheets;
}
static fig pick_finish(const struct estimate *e, const struct purchase *p) {
    (void)e;
    return p->finish;
}
static fig pick_spent(const struct estimate *e, const struct purchase *p) {
    (void)e;
    return p->total;
}

static void put_groups(struct grid *grid, const struct spread *s) {
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        bool any = false;
        for (size_t i = 0; i <= s->count; i++) {
            const struct estimate *const e = &s->estimates[column_of(s, i)];
            any = any || tape_amount(&e->tape, e->costs.job.group[g]) != 0;
        }
        if (!any) {
            continue;
        }
        grid_put(grid, "%s", cost_group_name((enum cost_group)g));
        for (size_t i = 0; i <= s->count; i++) {
            const struct estimate *const e = &s->estimates[column_of(s, i)];
            grid_put(grid, "%s", show_money(e, e->costs.job.group[g]).text);
        }
    }
}

/* The job's own charges, which all its options have. */
static void put_charges(struct grid *grid, const struct spread *s) {
    const struct sale *const sale = &s->estimates[0].job->sale;
    for (size_t c = 0; c < sale->charge_count; c++) {
        const char *const name = sale->charges[c].name.s;
        grid_put(grid, "%s", name == NULL ? "charge" : name);
        for (size_t i = 0; i <= s->count; i++) {
            const struct estimate *const e = &s->estimates[column_of(s, i)];
            grid_put(grid, "%s", show_money(e, e->sale.charges[c]).text);
        }
    }
}

static void put_difference(struct grid *grid, const struct spread *s) {
    grid_put(grid, "difference to the first");
    grid_put(grid, "%s", "");
    for (size_t i = 1; i <= s->count; i++) {
        grid_put(grid, "%s",
                 show_difference(&s->estimates[0], &s->estimates[column_of(s, i)]).money.text);
    }
    grid_put(grid, "in percent");
    grid_put(grid, "%s", "");
    for (size_t i = 1; i <= s->count; i++) {
        grid_put(grid, "%s",
                 show_difference(&s->estimates[0], &s->estimates[column_of(s, i)]).percent.text);
    }
}

static void put_rows(struct grid *grid, const struct spread *s, const struct compared *rows,
                     size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (rows[i].rule) {
            grid_rule(grid);
        }
        put_row(grid, s, &rows[i]);
    }
}

static void put_all(struct grid *grid, const struct spread *s) {
    static const struct compared price[] = {
        {"direct cost", pick_direct, true, true, false},
        {"contingency", pick_contingency, true, false, false},
        {"overhead", pick_overhead, true, false, false},
        {"cost with overhead", pick_full, true, false, false},
        {"profit", pick_profit, true, false, false},
        {"price by cost", pick_price, true, true, false},
        {"doors as quoted", pick_doors, true, false, false},
        {"less discount", pick_discount, true, false, true},
        {"to the least for a job", pick_minimum, true, false, false},
    };
    static const struct compared sale[] = {
        {"delivery", pick_delivery, true, false, false},
        {"before tax", pick_subtotal, true, true, false},
        {"tax", pick_tax, true, false, false},
        {"card fee", pick_fee, true, false, false},
        {"total", pick_total, true, true, false},
    };
    static const struct compared amounts[] = {
        {"left after discount", pick_left, true, false, false},
        {"margin left", pick_margin, false, false, false},
        {"spent on what is bought", pick_spent, true, false, false},
        {"lumber to buy", pick_board_feet, false, false, false},
        {"lumber to buy", pick_cubic_meters, false, false, false},
        {"whole sheets to buy", pick_sheets, false, false, false},
        {"half sheets to buy", pick_half_sheets, false, false, false},
        {"finish needed", pick_finish, false, false, false},
        {"hours of work", pick_hours, false, false, false},
        {"minutes a door", pick_minutes, false, false, false},
        {"weight", pick_weight, false, false, false},
    };
    put_groups(grid, s);
    put_rows(grid, s, price, sizeof price / sizeof *price);
    put_charges(grid, s);
    put_rows(grid, s, sale, sizeof sale / sizeof *sale);
    put_difference(grid, s);
    grid_heading(grid, "%s", "");
    put_rows(grid, s, amounts, sizeof amounts / sizeof *amounts);
}

static void print_spread(struct page *page, const struct spread *s) {
    struct grid_column columns[MOST_BESIDE + 2] = {{"", GRID_LEFT, true}};
    struct pool titles;
    struct grid grid;
    pool_init(&titles);
    for (size_t i = 0; i <= s->count; i++) {
        columns[i + 1] = (struct grid_column){
            .title = grid_cut(&titles, estimate_name(&s->estimates[column_of(s, i)]), WIDEST_TITLE),
            .align = GRID_RIGHT};
    }
    grid_init(&grid, columns, s->count + 2, 0);
    put_all(&grid, s);
    say(page, "%s", "");
    grid_print(&grid, page);
    grid_clear(&grid);
    page->failed = page->failed || pool_failed(&titles);
    pool_clear(&titles);
}

void compare_print(struct page *page, const struct estimate *estimates,
                   const struct purchase *purchases, size_t count) {
    head_print(page, "Side by side", &estimates[0]);
    size_t from = 1;
    do {
        const size_t left = count - from;
        const struct spread s = {.estimates = estimates,
                                 .purchases = purchases,
                                 .from = from,
                                 .count = left > MOST_BESIDE ? MOST_BESIDE : left};
        print_spread(page, &s);
        from += MOST_BESIDE;
    } while (from < count);
    if (count == 1) {
        say(page, "%s", "");
        say_wrapped(page, "", 0,
                    "The job names no other way to make it; an [option NAME] of the "
                    "job file would stand beside this.");
    }
}
