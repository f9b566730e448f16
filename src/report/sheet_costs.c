/* SPDX-License-Identifier: MIT */
/* From materials to price: the job as a whole, and each door's share. */
#include "report/paper.h"

static const struct paper_line build_lines[] = {
    {"direct cost", offsetof(struct build_up, direct), LOOK_TOTAL, NULL},
    {"contingency", offsetof(struct build_up, contingency), LOOK_PLAIN, "percent of direct cost"},
    {"overhead", offsetof(struct build_up, overhead), LOOK_PLAIN, NULL},
    {"cost with overhead", offsetof(struct build_up, full), LOOK_TOTAL, NULL},
    {"profit", offsetof(struct build_up, profit), LOOK_PLAIN, NULL},
    {"price by cost", offsetof(struct build_up, price), LOOK_TOTAL, NULL},
};

static const struct paper_line price_lines[] = {
    {"doors and fronts as priced", offsetof(struct costs, doors_total), LOOK_TOTAL,
     "sum of the amounts on the sheet Prices"},
    {"of that: price by cost", offsetof(struct costs, job.price), LOOK_PLAIN, "as above"},
    {"least price of a door", offsetof(struct costs, least), LOOK_PLAIN, "the shop's minimum door"},
    {"of that: added by the minimum door", offsetof(struct costs, minimum), LOOK_PLAIN,
     "small doors are priced at it"},
    {"of that: extra charges", offsetof(struct costs, extra), LOOK_PLAIN, NULL},
    {"of that: rounding", offsetof(struct costs, rounding), LOOK_PLAIN,
     "shares to the cent, prices up to the step"},
};

static const struct paper_line sale_lines[] = {
    {"sold: after discount, with the job minimum", offsetof(struct sale_figures, sold), LOOK_PLAIN,
     NULL},
    {"profit left", offsetof(struct sale_figures, profit_left), LOOK_TOTAL,
     "sold less cost with overhead"},
    {"margin left", offsetof(struct sale_figures, margin_left), LOOK_PLAIN,
     "profit left, percent of sold"},
};

#define LINES(lines) lines, sizeof(lines) / sizeof *(lines)

static uint32_t groups(const struct paper *paper, uint16_t sheet, uint32_t row) {
    struct book *const book = paper->book;
    const struct costs *const costs = &paper->base->costs;
    book_text(book, sheet, row, 1, LOOK_HEAD, "the job");
    book_text(book, sheet, row, 3, LOOK_HEAD, "not shared");
    row++;
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        if (fig_none(costs->job.group[g])) {
            continue;
        }
        book_text(book, sheet, row, 0, LOOK_PLAIN, cost_group_name((enum cost_group)g));
        book_figure(book, sheet, row, 1, LOOK_PLAIN, costs->job.group[g]);
        book_text(book, sheet, row, 2, LOOK_PLAIN, paper_unit(paper, costs->job.group[g]));
        book_figure(book, sheet, row, 3, LOOK_PLAIN, costs->unshared[g]);
        if (g == COST_LABOR && !fig_none(costs->unshared[g])) {
            book_text(book, sheet, row, 4, LOOK_NOTE, "of labor and machine together");
        }
        row++;
        if (g == COST_CONSUMABLES ||
            (g < COST_CONSUMABLES && fig_none(costs->job.group[COST_CONSUMABLES]) &&
             g == COST_HARDWARE)) {
            book_text(book, sheet, row, 0, LOOK_LABEL, "materials");
            book_figure(book, sheet, row, 1, LOOK_TOTAL, costs->job.materials);
            row++;
        }
    }
    return row;
}

void sheet_costs(struct paper *paper) {
    struct book *const book = paper->book;
    const uint16_t sheet = book_sheet(book, "Costs", "From materials to price", false);
    uint32_t row = paper_title(paper, sheet, "From materials to price",
                               "Shared: what the doors carry, each share rounded to the cent; not "
                               "shared: what that leaves.");
    book_width(book, sheet, 0, 42);
    book_width(book, sheet, 2, 7);
    book_width(book, sheet, 3, 14);
    row = groups(paper, sheet, row);
    row = paper_lines(paper, sheet, row, LINES(build_lines), &paper->base->costs.job) + 1;
    row = paper_lines(paper, sheet, row, LINES(price_lines), &paper->base->costs) + 1;
    paper_lines(paper, sheet, row, LINES(sale_lines), &paper->base->sale);
}

static const struct {
    const char *head;
    size_t offset;
} columns[] = {
    {"lumber", offsetof(struct door_price, cost.group[COST_LUMBER])},
    {"sheets", offsetof(struct door_price, cost.group[COST_SHEETS])},
    {"glass", offsetof(struct door_price, cost.group[COST_GLASS])},
    {"finish", offsetof(struct door_price, cost.group[COST_FINISH])},
    {"hardware", offsetof(struct door_price, cost.group[COST_HARDWARE])},
    {"consumables", offsetof(struct door_price, cost.group[COST_CONSUMABLES])},
    {"bought in", offsetof(struct door_price, cost.group[COST_BOUGHT_IN])},
    {"materials", offsetof(struct door_price, cost.materials)},
    {"tax on purchases", offsetof(struct door_price, cost.group[COST_PURCHASE_TAX])},
    {"labor and machine", offsetof(struct door_price, cost.group[COST_LABOR])},
    {"remakes", offsetof(struct door_price, cost.group[COST_REMAKES])},
    {"direct cost", offsetof(struct door_price, cost.direct)},
    {"contingency", offsetof(struct door_price, cost.contingency)},
    {"overhead", offsetof(struct door_price, cost.overhead)},
    {"cost with overhead", offsetof(struct door_price, cost.full)},
    {"profit", offsetof(struct door_price, cost.profit)},
    {"price by cost", offsetof(struct door_price, cost.price)},
    {"at least the minimum", offsetof(struct door_price, priced)},
    {"extra charge", offsetof(struct door_price, extra)},
    {"unit price", offsetof(struct door_price, unit)},
    {"amount", offsetof(struct door_price, amount)},
};
#define COLUMNS (sizeof columns / sizeof *columns)

void sheet_prices(struct paper *paper) {
    struct book *const book = paper->book;
    const struct quantities *const q = &paper->base->quantities;
    const uint16_t sheet = book_sheet(book, "Prices", "Cost and price of each door", true);
    uint32_t row = paper_title(paper, sheet, "Cost and price of each door",
                               "Of one leaf; the amount is for all leaves of the row.");
    book_text(book, sheet, row, 0, LOOK_HEAD, "door");
    book_text(book, sheet, row, 1, LOOK_TALL, "doors in all");
    for (size_t c = 0; c < COLUMNS; c++) {
        book_text(book, sheet, row, (uint16_t)(2 + c), LOOK_TALL, columns[c].head);
    }
    book_headings(book, sheet, row, row, 1);
    row++;
    for (size_t r = 0; r < q->count; r++, row++) {
        const struct door_price *const price = &paper->base->costs.doors[r];
        book_text(book, sheet, row, 0, LOOK_LABEL, q->leaves[r].door->row->id.s);
        book_mention(book, sheet, row, 1, LOOK_PLAIN, q->leaves[r].pieces);
        for (size_t c = 0; c < COLUMNS; c++) {
            book_figure(book, sheet, row, (uint16_t)(2 + c),
                        c + 2 >= COLUMNS ? LOOK_LABEL : LOOK_PLAIN,
                        paper_at(price, columns[c].offset));
        }
    }
    book_text(book, sheet, row, 0, LOOK_LABEL, "in all");
    book_mention(book, sheet, row, (uint16_t)(1 + COLUMNS), LOOK_TOTAL,
                 paper->base->costs.doors_total);
}
