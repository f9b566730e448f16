/* SPDX-License-Identifier: MIT */
/* From materials to price: the job as a whole, and each door's share. */
#include "report/shop/paper.h"

static const struct paper_line build_lines[] = {
    {"direct cost", offsetof(struct build_up, direct), LOOK_TOTAL, NULL},
    {"contingency", offsetof(struct build_up, contingency), LOOK_PLAIN, NULL},
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

/* Columns: words, the job, unit, the rate that makes it, what is not shared, a gap, remarks. */
enum { COLUMN_WORDS, COLUMN_JOB, COLUMN_UNIT, COLUMN_RATE, COLUMN_REST, COLUMN_GAP, COLUMN_REMARK };

/* The rate of the files that a figure is made with: a percent, or money an hour; none. */
static fig rate_of(const struct tape *tape, fig figure) {
    for (size_t i = 0; i < tape_operands(tape, figure); i++) {
        const fig operand = tape_operand(tape, figure, i).f;
        if (!fig_none(operand) && tape_op(tape, operand) == OP_GIVEN &&
            tape_origin(tape, operand).place.file != 0) {
            return operand;
        }
    }
    return (fig){0};
}

static void put_rate(const struct paper *paper, uint16_t sheet, uint32_t row, fig figure) {
    const fig rate = rate_of(&paper->base->tape, figure);
    if (!fig_none(rate)) {
        book_mention(paper->book, sheet, row, COLUMN_RATE, LOOK_PLAIN, rate);
        book_text(paper->book, sheet, row, COLUMN_REMARK, LOOK_NOTE,
                  tape_label(&paper->base->tape, rate));
    }
}

static uint32_t groups(const struct paper *paper, uint16_t sheet, uint32_t row) {
    static const char *const heads[] = {"", "the job", "", "rate", "not shared", "", "remarks"};
    struct book *const book = paper->book;
    const struct costs *const costs = &paper->base->costs;
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    row++;
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        if (fig_none(costs->job.group[g])) {
            continue;
        }
        book_text(book, sheet, row, COLUMN_WORDS, LOOK_PLAIN, cost_group_name((enum cost_group)g));
        book_figure(book, sheet, row, COLUMN_JOB, LOOK_PLAIN, costs->job.group[g]);
        book_text(book, sheet, row, COLUMN_UNIT, LOOK_UNIT, paper_unit(paper, costs->job.group[g]));
        book_figure(book, sheet, row, COLUMN_REST, LOOK_PLAIN, costs->unshared[g]);
        if (g == COST_LABOR && !fig_none(costs->unshared[g])) {
            book_text(book, sheet, row, COLUMN_REMARK, LOOK_NOTE,
                      "not shared: of labor and machine together");
        } else if (g == COST_REMAKES) {
            put_rate(paper, sheet, row, costs->job.group[g]);
        }
        row++;
        if (g == COST_CONSUMABLES ||
            (g < COST_CONSUMABLES && fig_none(costs->job.group[COST_CONSUMABLES]) &&
             g == COST_HARDWARE)) {
            book_text(book, sheet, row, COLUMN_WORDS, LOOK_LABEL, "materials");
            book_figure(book, sheet, row, COLUMN_JOB, LOOK_TOTAL, costs->job.materials);
            row++;
        }
    }
    return row;
}

/* Lines with their rates, remarks in their own column. */
static uint32_t put_lines(const struct paper *paper, uint16_t sheet, uint32_t row,
                          const struct paper_line *lines, size_t count, const void *thing) {
    struct book *const book = paper->book;
    for (size_t i = 0; i < count; i++) {
        const fig figure = paper_at(thing, lines[i].offset);
        if (fig_none(figure)) {
            continue;
        }
        const bool plain = lines[i].look == LOOK_PLAIN;
        book_text(book, sheet, row, COLUMN_WORDS, plain ? LOOK_PLAIN : LOOK_LABEL, lines[i].label);
        book_figure(book, sheet, row, COLUMN_JOB, lines[i].look, figure);
        book_text(book, sheet, row, COLUMN_UNIT, LOOK_UNIT, paper_unit(paper, figure));
        if (lines == build_lines && plain) {
            put_rate(paper, sheet, row, figure);
        }
        book_text(book, sheet, row++, COLUMN_REMARK, LOOK_NOTE, lines[i].note);
    }
    return row;
}

void sheet_costs(struct paper *paper) {
    struct book *const book = paper->book;
    const uint16_t sheet = book_sheet(book, "Costs", "From materials to price", false);
    uint32_t row = paper_title(paper, sheet, "From materials to price",
                               "Shared: what the doors carry, each share rounded to the cent; not "
                               "shared: what that leaves.");
    book_width(book, sheet, COLUMN_WORDS, 38);
    book_width(book, sheet, COLUMN_UNIT, 7);
    book_width(book, sheet, COLUMN_GAP, 1.5);
    book_width(book, sheet, COLUMN_REMARK, 38);
    row = groups(paper, sheet, row);
    row = put_lines(paper, sheet, row, LINES(build_lines), &paper->base->costs.job) + 1;
    row = put_lines(paper, sheet, row, LINES(price_lines), &paper->base->costs) + 1;
    put_lines(paper, sheet, row, LINES(sale_lines), &paper->base->sale);
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
    /* right of the column that is printed on every page */
    book_text(book, sheet, 0, 1, LOOK_TITLE, "Cost and price of each door");
    book_text(book, sheet, 1, 1, LOOK_NOTE,
              "Of one leaf; the amount is for all leaves of the row.");
    uint32_t row = 3;
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
