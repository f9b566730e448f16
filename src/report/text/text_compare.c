/* SPDX-License-Identifier: MIT */
/* The estimates of a job side by side: up to four a table, the first in each. */
#include "report/text/print.h"
#include "report/words/show.h"

#include <string.h>

#define MOST_BESIDE  3 /* further tables hold so many more */
#define WIDEST_TITLE 12

/* The estimates of one table: the first, then `count` others from `from` on. */
struct spread {
    const struct estimate *estimates;
    size_t from, count;
};

static size_t column_of(const struct spread *s, size_t place) {
    return place == 0 ? 0 : s->from + place - 1;
}

struct compared {
    const char *label;
    size_t offset;    /* of the figure in struct estimate */
    bool money, rule; /* rule: a line above */
    bool less;        /* taken off: shown with a minus */
    bool some;        /* nothing of it is shown as none */
};

static fig figure_of(const struct estimate *e, const struct compared *row) {
    fig f;
    memcpy(&f, (const char *)e + row->offset, sizeof f);
    return row->some && tape_amount(&e->tape, f) == 0 ? (fig){0} : f;
}

/* One row. Left out where no estimate has it. */
static void put_row(struct grid *grid, const struct spread *s, const struct compared *row) {
    bool any = false;
    for (size_t i = 0; i <= s->count; i++) {
        any = any || !fig_none(figure_of(&s->estimates[column_of(s, i)], row));
    }
    if (!any) {
        return;
    }
    grid_put(grid, "%s", row->label);
    for (size_t i = 0; i <= s->count; i++) {
        const struct estimate *const e = &s->estimates[column_of(s, i)];
        const fig f = figure_of(e, row);
        grid_put(grid, "%s%s", row->less && !fig_none(f) ? "-" : "",
                 row->money ? show_money(e, f).text : show_unit(e, f).text);
    }
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
        {"direct cost", offsetof(struct estimate, costs.job.direct), true, true, false, false},
        {"contingency", offsetof(struct estimate, costs.job.contingency), true, false, false,
         false},
        {"overhead", offsetof(struct estimate, costs.job.overhead), true, false, false, false},
        {"cost with overhead", offsetof(struct estimate, costs.job.full), true, false, false,
         false},
        {"profit", offsetof(struct estimate, costs.job.profit), true, false, false, false},
        {"price by cost", offsetof(struct estimate, costs.job.price), true, true, false, false},
        {"doors as quoted", offsetof(struct estimate, sale.doors), true, false, false, false},
        {"less discount", offsetof(struct estimate, sale.discount), true, false, true, true},
        {"to the least for a job", offsetof(struct estimate, sale.minimum_line), true, false, false,
         true},
    };
    static const struct compared sale[] = {
        {"delivery", offsetof(struct estimate, sale.delivery), true, false, false, false},
        {"before tax", offsetof(struct estimate, sale.subtotal), true, true, false, false},
        {"tax", offsetof(struct estimate, sale.tax), true, false, false, false},
        {"card fee", offsetof(struct estimate, sale.card_fee), true, false, false, false},
        {"total", offsetof(struct estimate, sale.total), true, true, false, false},
    };
    static const struct compared amounts[] = {
        {"left after discount", offsetof(struct estimate, sale.profit_left), true, false, false,
         false},
        {"margin left", offsetof(struct estimate, sale.margin_left), false, false, false, false},
        {"spent on what is bought", offsetof(struct estimate, purchase.total), true, false, false,
         false},
        {"lumber to buy", offsetof(struct estimate, purchase.board_feet), false, false, false,
         false},
        {"lumber to buy", offsetof(struct estimate, purchase.cubic_meters), false, false, false,
         false},
        {"whole sheets to buy", offsetof(struct estimate, purchase.sheets), false, false, false,
         false},
        {"half sheets to buy", offsetof(struct estimate, purchase.half_sheets), false, false, false,
         false},
        {"finish needed", offsetof(struct estimate, purchase.finish), false, false, false, false},
        {"hours of work", offsetof(struct estimate, labor.hours), false, false, false, false},
        {"minutes a door", offsetof(struct estimate, labor.minutes_a_door), false, false, false,
         false},
        {"weight", offsetof(struct estimate, quantities.weight), false, false, false, false},
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

void compare_print(struct page *page, const struct estimate *estimates, size_t count) {
    head_print(page, "Side by side", &estimates[0]);
    size_t from = 1;
    do {
        const size_t left = count - from;
        const struct spread s = {
            .estimates = estimates, .from = from, .count = left > MOST_BESIDE ? MOST_BESIDE : left};
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
