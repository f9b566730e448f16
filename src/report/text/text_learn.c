/* SPDX-License-Identifier: MIT */
/* What happened, beside what was estimated. */
#include "learn/hours_fit.h"

#include "base/int128.h"
#include "report/text/print.h"
#include "report/words/show.h"

static int64_t hours(int64_t minutes) {
    return (int64_t)int128_round(minutes, 60);
}

static void print_work(struct page *page, const struct learned *l) {
    static const struct grid_column columns[] = {
        {"hours of work", GRID_LEFT, true}, {"estimated", GRID_RIGHT, false},
        {"noted", GRID_RIGHT, false},       {"more", GRID_RIGHT, false},
        {"costs more", GRID_RIGHT, false},
    };
    struct grid grid;
    int64_t estimated = 0;
    int64_t noted = 0;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < l->work_count; i++) {
        const struct learned_work *const w = &l->work[i];
        grid_put(&grid, "%s%s", w->name, w->rest ? ", without what is noted by itself" : "");
        grid_put(&grid, "%s", show_number(hours(w->estimated), 2).text);
        grid_put(&grid, "%s", show_number(hours(w->noted), 2).text);
        grid_put(&grid, "%s", show_more(hours(w->noted) - hours(w->estimated), 2).text);
        grid_put(&grid, "%s", show_more(w->more, l->money_decimals).text);
        grid_end_row(&grid);
        estimated += w->estimated;
        noted += w->noted;
    }
    grid_rule(&grid);
    grid_put(&grid, "noted in all");
    grid_put(&grid, "%s", show_number(hours(estimated), 2).text);
    grid_put(&grid, "%s", show_number(hours(noted), 2).text);
    grid_put(&grid, "%s", show_more(hours(noted) - hours(estimated), 2).text);
    grid_put(&grid, "%s", show_more(l->more_work, l->money_decimals).text);
    grid_end_row(&grid);
    if (l->unnoted > 0) {
        grid_put(&grid, "not noted");
        grid_put(&grid, "%s", show_number(hours(l->unnoted), 2).text);
        grid_end_row(&grid);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* As the unit has them; counts of sheets and pieces may be parts of one. */
static struct shown show_goods(const struct learned_goods *g, int64_t amount) {
    const uint8_t decimals = g->unit == UNIT_NUMBER ? 2 : unit_decimals(g->unit);
    int64_t under = 1;
    for (uint8_t d = decimals; d < GOODS_DECIMALS; d++) {
        under *= 10;
    }
    return show_number((int64_t)int128_round(amount, under), decimals);
}

static const char *unit_of(const struct learned_goods *g) {
    return g->kind == NAME_SHEET ? "sheets" : unit_name(g->unit);
}

static void put_goods(struct grid *grid, const struct learned *l, const struct learned_goods *g) {
    const bool counted = g->kind != NAME_CONSUMABLE;
    const char *const unit = unit_of(g);
    grid_put(grid, "%s%s%s", g->name, unit[0] == '\0' ? "" : ", ", unit);
    if (counted) {
        grid_put(grid, "%s", show_goods(g, g->held).text);
        grid_put(grid, "%s", g->has_used ? show_goods(g, g->used).text : "-");
    } else {
        grid_put(grid, "-");
        grid_put(grid, "-");
    }
    grid_put(grid, "%s", show_more(g->by_price, l->money_decimals).text);
    grid_put(grid, "%s", show_more(g->by_amount, l->money_decimals).text);
    grid_end_row(grid);
}

static void print_goods(struct page *page, const struct learned *l) {
    static const struct grid_column columns[] = {
        {"goods", GRID_LEFT, true},       {"estimated", GRID_RIGHT, false},
        {"used", GRID_RIGHT, false},      {"more by price", GRID_RIGHT, false},
        {"by amount", GRID_RIGHT, false},
    };
    struct grid grid;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < l->goods_count; i++) {
        put_goods(&grid, l, &l->goods[i]);
    }
    grid_rule(&grid);
    grid_put(&grid, "noted in all");
    grid_put(&grid, "%s", "");
    grid_put(&grid, "%s", "");
    grid_put(&grid, "%s", show_more(l->by_price, l->money_decimals).text);
    grid_put(&grid, "%s", show_more(l->by_amount, l->money_decimals).text);
    grid_end_row(&grid);
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* A table below a blank line; nothing where it has no rows. */
static void print_rows(struct page *page, struct grid *grid, size_t rows) {
    if (rows > 0) {
        say(page, "%s", "");
        grid_print(grid, page);
    }
    grid_clear(grid);
}

/* Waste, transfer and remakes as they were. */
static void print_measured(struct page *page, const struct estimate *e, const struct learned *l) {
    static const struct grid_column columns[] = {
        {"measured", GRID_LEFT, true},
        {"in the rates", GRID_RIGHT, false},
        {"as it was", GRID_RIGHT, false},
    };
    const struct value *const remakes = &e->rates->shop.remakes;
    struct grid grid;
    size_t rows = 0;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < l->goods_count; i++) {
        const struct learned_goods *const g = &l->goods[i];
        if (g->has_waste) {
            grid_put(&grid, "%s, waste, %%", g->name);
            grid_put(&grid, "%s", show_number(g->waste_was, 2).text);
            grid_put(&grid, "%s", show_number(g->waste, 2).text);
            grid_end_row(&grid);
            rows++;
        }
        if (g->transfer > 0) {
            grid_put(&grid, "%s by %s, transfer efficiency, %%", g->name, g->way->name.s);
            grid_put(&grid, "%s", show_number(g->transfer_was, 2).text);
            grid_put(&grid, "%s", show_number(g->transfer, 2).text);
            grid_end_row(&grid);
            rows++;
        }
    }
    if (l->has_remade && l->doors > 0) {
        grid_put(&grid, "doors made again, %lld of %lld, %%", (long long)l->remade,
                 (long long)l->doors);
        grid_put(&grid, "%s",
                 remakes->set ? show_number(remakes->amount, remakes->decimals).text : "-");
        grid_put(&grid, "%s",
                 show_number((int64_t)int128_round((int128)l->remade * 10000, l->doors), 2).text);
        grid_end_row(&grid);
        rows++;
    }
    print_rows(page, &grid, rows);
}

static void print_earned(struct page *page, const struct learned *l) {
    static const struct grid_column columns[] = {{NULL, GRID_LEFT, true},
                                                 {NULL, GRID_RIGHT, false}};
    const struct {
        const char *label;
        int64_t amount;
        bool rule;
    } lines[] = {
        {"price before tax", l->income, false},
        {"profit left, as estimated", l->profit_was, false},
        {"work", -l->more_work, false},
        {"goods, by price", -l->by_price, false},
        {"goods, by amount", -l->by_amount, false},
        {"profit left, as it came out", l->profit, true},
    };
    struct grid grid;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        if (lines[i].rule) {
            grid_rule(&grid);
        }
        grid_put(&grid, "%s", lines[i].label);
        grid_put(&grid, "%s", show_number(lines[i].amount, l->money_decimals).text);
        grid_end_row(&grid);
    }
    say(page, "%s", "");
    say(page, "What the job earned");
    grid_print(&grid, page);
    grid_clear(&grid);
}

void learned_print(struct page *page, const struct estimate *e, const struct learned *l) {
    head_print(page, "What happened", e);
    if (l->work_count > 0) {
        say(page, "%s", "");
        print_work(page, l);
    }
    if (l->goods_count > 0) {
        say(page, "%s", "");
        print_goods(page, l);
    }
    print_measured(page, e, l);
    print_earned(page, l);
    say(page, "%s", "");
    say_wrapped(page, "", 0,
                "Above 0 costs more than was estimated. Work is valued at the estimate's wages; "
                "goods by price: what was paid against the estimated price of as much; by amount: "
                "more or less than estimated, at the estimated price. What nobody noted is taken "
                "as estimated; overhead too.");
}

/* What was measured and changes no rate, but rates that stay as they are written. */
static void print_unmoved(struct page *page, const struct proposals *proposals) {
    static const struct grid_column columns[] = {
        {"measured, but changes no rate", GRID_LEFT, false},
        {"why", GRID_LEFT, true},
    };
    struct grid grid;
    size_t rows = 0;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < proposals->unmoved_count; i++) {
        const struct unmoved *const u = &proposals->unmoved[i];
        if (!u->as_is) {
            grid_put(&grid, "%s", u->what);
            grid_put(&grid, "%s", u->why);
            grid_end_row(&grid);
            rows++;
        }
    }
    print_rows(page, &grid, rows);
}

/* The rates that move by 5 % and more; the others are counted. */
static void print_moved(struct page *page, const struct proposals *proposals) {
    static const struct grid_column columns[] = {
        {"rate", GRID_LEFT, true},
        {"is", GRID_RIGHT, false},
        {"should be", GRID_LEFT, false},
    };
    struct grid grid;
    size_t small = 0;
    size_t as_is = 0;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < proposals->count; i++) {
        const struct proposal *const p = &proposals->list[i];
        if (p->small) {
            small++;
            continue;
        }
        grid_put(&grid, "%s %s", p->number->section, p->number->key);
        grid_put(&grid, "%s", p->number->likely);
        if (p->low == NULL) {
            grid_put(&grid, "%s", p->alone);
        } else {
            grid_put(&grid, "%s (%s to %s)", p->alone, p->low, p->high);
        }
        grid_end_row(&grid);
    }
    if (small < proposals->count) {
        grid_print(&grid, page);
    }
    grid_clear(&grid);
    for (size_t i = 0; i < proposals->unmoved_count; i++) {
        as_is += proposals->unmoved[i].as_is;
    }
    if (small + as_is > 0) {
        say_wrapped(page, "  ", 2,
                    "(of %zu rates that were measured %zu move by less than 5 %%, %zu stay as they "
                    "are written)",
                    proposals->count + as_is, small, as_is);
    }
}

void proposals_print(struct page *page, const struct proposals *proposals) {
    print_moved(page, proposals);
    if (proposals->count == 0) {
        say(page, "No rate would change by it.");
    }
    print_unmoved(page, proposals);
    if (proposals->count > 0) {
        say(page, "%s", "");
        say_wrapped(page, "", 0,
                    "In brackets: between which it should lie, nine times out of ten. One job "
                    "moves a rate a part of the way, several move it further. -o FILE writes all "
                    "of them to a new rates file.");
    }
}

void hours_fit_print(struct page *page, const struct hours_fit *fit,
                     const struct learned_job *jobs) {
    static const struct grid_column columns[] = {
        {"hours", GRID_LEFT, true},
        {"noted", GRID_RIGHT, false},
        {"estimated", GRID_RIGHT, false},
        {"by doors, area, coats", GRID_RIGHT, false},
    };
    say(page, "%s", "");
    if (fit->lacks != NULL) {
        say_wrapped(page, "", 0, "(%s)", fit->lacks);
        return;
    }
    const struct estimate *const first = jobs[0].estimate;
    const char *const area = unit_name(tape_unit(&first->tape, first->quantities.leaves[0].face));
    struct grid grid;
    grid_init(&grid, columns, sizeof columns / sizeof *columns, 2);
    for (size_t i = 0; i < fit->count; i++) {
        const struct estimate *const e = jobs[i].estimate;
        grid_put(&grid, "%s", e->job->title.s);
        grid_put(&grid, "%s", show_number(fit->noted[i], 2).text);
        grid_put(&grid, "%s", show(e, e->labor.hours).text);
        grid_put(&grid, "%s", show_number(fit->fitted[i], 2).text);
        grid_end_row(&grid);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
    say(page, "%s", "");
    say_wrapped(
        page, "", 0,
        "By least squares these jobs took %s hours each, %s a door, %s a %s of one face and "
        "%s a %s of a coat, with %s hours left over or short. Where that is far from the "
        "estimate, look at both.",
        show_number(fit->by[0], 6).text, show_number(fit->by[1], 6).text,
        show_number(fit->by[2], 6).text, area, show_number(fit->by[3], 6).text, area,
        show_number(fit->spread, 2).text);
}
