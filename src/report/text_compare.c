/* SPDX-License-Identifier: MIT */
/* The estimates of a job side by side: up to four a table, the first in each. */
#include "report/print.h"
#include "report/show.h"

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

/* One row. Left out where no estimate has it. */
static void put_row(struct grid *grid, const struct spread *s, const char *label, figure_pick pick,
                    bool money) {
    bool any = false;
    for (size_t i = 0; i <= s->count; i++) {
        const size_t c = column_of(s, i);
        any = any || !fig_none(pick(&s->estimates[c], &s->purchases[c]));
    }
    if (!any) {
        return;
    }
    grid_put(grid, "%s", label);
    for (size_t i = 0; i <= s->count; i++) {
        const size_t c = column_of(s, i);
        const struct estimate *const e = &s->estimates[c];
        const fig f = pick(e, &s->purchases[c]);
        grid_put(grid, "%s", money ? show_money(e, f).text : show_unit(e, f).text);
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
    return e->sale.discount;
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

struct compared {
    const char *label;
    figure_pick pick;
    bool money, rule; /* rule: a line above */
};

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
        put_row(grid, s, rows[i].label, rows[i].pick, rows[i].money);
    }
}

static void put_all(struct grid *grid, const struct spread *s) {
    static const struct compared price[] = {
        {"direct cost", pick_direct, true, true},
        {"contingency", pick_contingency, true, false},
        {"overhead", pick_overhead, true, false},
        {"cost with overhead", pick_full, true, false},
        {"profit", pick_profit, true, false},
        {"price by cost", pick_price, true, true},
        {"doors as quoted", pick_doors, true, false},
        {"discount", pick_discount, true, false},
        {"before tax", pick_subtotal, true, false},
        {"tax", pick_tax, true, false},
        {"card fee", pick_fee, true, false},
        {"total", pick_total, true, true},
    };
    static const struct compared amounts[] = {
        {"left after discount", pick_left, true, false},
        {"margin left", pick_margin, false, false},
        {"spent on what is bought", pick_spent, true, false},
        {"lumber to buy", pick_board_feet, false, false},
        {"lumber to buy", pick_cubic_meters, false, false},
        {"whole sheets to buy", pick_sheets, false, false},
        {"half sheets to buy", pick_half_sheets, false, false},
        {"finish needed", pick_finish, false, false},
        {"hours of work", pick_hours, false, false},
        {"minutes a door", pick_minutes, false, false},
        {"weight", pick_weight, false, false},
    };
    put_groups(grid, s);
    put_rows(grid, s, price, sizeof price / sizeof *price);
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
