/* SPDX-License-Identifier: MIT */
/* The base job and its options side by side.  The base's figures are live; an option was estimated
 * on a tape of its own, so its column holds plain values: to be made again when a rate changes. */
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"
#include "report/words/difference.h"

#include <stdio.h>

#define BASE_COLUMN 1

struct line {
    const char *label;
    size_t offset; /* of a fig in struct estimate */
    bool money;    /* shows the differences */
};

static const struct line lines[] = {
    {"lumber", offsetof(struct estimate, costs.job.group[COST_LUMBER]), true},
    {"sheets", offsetof(struct estimate, costs.job.group[COST_SHEETS]), true},
    {"glass", offsetof(struct estimate, costs.job.group[COST_GLASS]), true},
    {"finish", offsetof(struct estimate, costs.job.group[COST_FINISH]), true},
    {"hardware", offsetof(struct estimate, costs.job.group[COST_HARDWARE]), true},
    {"consumables", offsetof(struct estimate, costs.job.group[COST_CONSUMABLES]), true},
    {"bought in", offsetof(struct estimate, costs.job.group[COST_BOUGHT_IN]), true},
    {"tax on purchases", offsetof(struct estimate, costs.job.group[COST_PURCHASE_TAX]), true},
    {"labor", offsetof(struct estimate, costs.job.group[COST_LABOR]), true},
    {"machine", offsetof(struct estimate, costs.job.group[COST_MACHINE]), true},
    {"remakes", offsetof(struct estimate, costs.job.group[COST_REMAKES]), true},
    {"direct cost", offsetof(struct estimate, costs.job.direct), true},
    {"cost with overhead", offsetof(struct estimate, costs.job.full), true},
    {"doors and fronts", offsetof(struct estimate, costs.doors_total), true},
    {"sold, before tax and delivery", offsetof(struct estimate, sale.sold), true},
    {"total to the client", offsetof(struct estimate, sale.total), true},
    {"profit left", offsetof(struct estimate, sale.profit_left), true},
    {"margin left", offsetof(struct estimate, sale.margin_left), false},
    {"person-hours", offsetof(struct estimate, labor.hours), false},
    {"weight", offsetof(struct estimate, quantities.weight), false},
};

static const struct estimate *shown(const struct paper *paper, size_t i) {
    return i == 0 ? paper->base : &paper->options[i - 1];
}

/* Writes a figure of estimate i: the base's live, an option's plain. */
static void put(const struct paper *paper, uint16_t sheet, uint32_t row, size_t i, fig figure) {
    const uint16_t column = (uint16_t)(BASE_COLUMN + i);
    if (fig_none(figure)) {
        return;
    }
    if (i == 0) {
        book_mention(paper->book, sheet, row, column, LOOK_PLAIN, figure);
        return;
    }
    const struct tape *const tape = &shown(paper, i)->tape;
    book_number(paper->book, sheet, row, column, LOOK_PLAIN, tape_unit(tape, figure),
                tape_decimals(tape, figure), tape_amount(tape, figure));
}

/* Difference to the base in money and percent. */
static void put_difference(const struct paper *paper, uint16_t sheet, uint32_t row, size_t i,
                           fig base, fig option) {
    const int64_t from = tape_amount(&paper->base->tape, base);
    const int64_t to = tape_amount(&shown(paper, i)->tape, option);
    const uint16_t money = (uint16_t)(BASE_COLUMN + paper->option_count + 1 + 2 * (i - 1));
    const char letter = (char)('A' + BASE_COLUMN + (int)i);
    const uint8_t decimals = tape_decimals(&paper->base->tape, base);
    char formula[96];
    if (BASE_COLUMN + (int)i > 25 || money + 1 >= BOOK_MOST_COLUMNS) {
        return; /* more options than a page could show */
    }
    (void)snprintf(formula, sizeof formula, "ROUND(%c%u-B%u,%u)", letter, row + 1, row + 1,
                   (unsigned)decimals);
    book_formula(paper->book, sheet, row, money, LOOK_PLAIN, UNIT_MONEY, decimals, to - from,
                 formula);
    if (from != 0) {
        (void)snprintf(formula, sizeof formula, "IF(B%u=0,0,ROUND((%c%u-B%u)*100/ABS(B%u),2))",
                       row + 1, letter, row + 1, row + 1, row + 1);
        book_formula(paper->book, sheet, row, (uint16_t)(money + 1), LOOK_PLAIN, UNIT_PERCENT, 2,
                     difference_percent(from, to), formula);
    }
}

/* The unit of a figure of estimate i; a percent has its sign in the cell. */
static const char *unit_of(const struct paper *paper, size_t i, fig figure) {
    const enum unit unit = tape_unit(&shown(paper, i)->tape, figure);
    if (unit == UNIT_MONEY) {
        return paper->base->rates->shop.currency.s;
    }
    return unit == UNIT_PERCENT ? "" : unit_name(unit);
}

static void put_line(const struct paper *paper, uint16_t sheet, uint32_t row,
                     const struct line *line) {
    const fig base = paper_at(paper->base, line->offset);
    const char *unit = "";
    for (size_t i = paper->option_count + 1; i-- > 0;) {
        const fig figure = paper_at(shown(paper, i), line->offset);
        unit = fig_none(figure) ? unit : unit_of(paper, i, figure);
    }
    book_format(paper->book, sheet, row, 0, LOOK_PLAIN, "%s%s%s", line->label,
                unit[0] == '\0' ? "" : ", ", unit);
    for (size_t i = 0; i <= paper->option_count; i++) {
        const fig figure = paper_at(shown(paper, i), line->offset);
        put(paper, sheet, row, i, figure);
        if (i > 0 && line->money) {
            put_difference(paper, sheet, row, i, base, figure);
        }
    }
}

static bool any_has(const struct paper *paper, const struct line *line) {
    for (size_t i = 0; i <= paper->option_count; i++) {
        if (!fig_none(paper_at(shown(paper, i), line->offset))) {
            return true;
        }
    }
    return false;
}

/* What is bought of each material, by name: one line a material that any option takes. */
static uint32_t put_lumber(const struct paper *paper, uint16_t sheet, uint32_t row) {
    const struct rates *const rates = paper->base->rates;
    for (size_t m = 0; m < rates->lumber_count; m++) {
        bool used = false;
        for (size_t i = 0; i <= paper->option_count; i++) {
            const struct lumber_list *const list = &shown(paper, i)->lumber;
            for (size_t b = 0; b < list->count; b++) {
                if (list->buys[b].material == (int32_t)m) {
                    put(paper, sheet, row, i, list->buys[b].priced.bought);
                    used = true;
                }
            }
        }
        if (used) {
            book_format(paper->book, sheet, row++, 0, LOOK_PLAIN, "%s bought, %s",
                        rates->lumber[m].name.s, unit_name(lumber_unit(&rates->lumber[m])));
        }
    }
    return row;
}

static uint32_t put_sheets(const struct paper *paper, uint16_t sheet, uint32_t row) {
    const struct rates *const rates = paper->base->rates;
    for (size_t m = 0; m < rates->sheet_count; m++) {
        bool used = false;
        for (size_t i = 0; i <= paper->option_count; i++) {
            const struct sheet_list *const list = &shown(paper, i)->sheets;
            for (size_t b = 0; b < list->count; b++) {
                if (list->buys[b].material == (int32_t)m) {
                    put(paper, sheet, row, i, list->buys[b].priced.whole);
                    put(paper, sheet, row + 1, i, list->buys[b].priced.half);
                    used = true;
                }
            }
        }
        if (used) {
            book_format(paper->book, sheet, row++, 0, LOOK_PLAIN, "%s, whole sheets",
                        rates->sheets[m].name.s);
            if (rates->sheets[m].half_price.set) {
                book_format(paper->book, sheet, row++, 0, LOOK_PLAIN, "%s, half sheets",
                            rates->sheets[m].name.s);
            }
        }
    }
    return row;
}

static uint32_t put_finish(const struct paper *paper, uint16_t sheet, uint32_t row) {
    const struct rates *const rates = paper->base->rates;
    for (size_t c = 0; c < rates->coating_count; c++) {
        bool used = false;
        for (size_t i = 0; i <= paper->option_count; i++) {
            const struct finish_list *const list = &shown(paper, i)->finish;
            for (size_t p = 0; p < list->product_count; p++) {
                if (list->products[p].coating == (int32_t)c && !used) {
                    put(paper, sheet, row, i, list->products[p].need);
                }
            }
        }
        for (size_t i = 0; i <= paper->option_count && !used; i++) {
            const struct finish_list *const list = &shown(paper, i)->finish;
            for (size_t p = 0; p < list->product_count; p++) {
                used = used || list->products[p].coating == (int32_t)c;
            }
        }
        if (used) {
            book_format(paper->book, sheet, row++, 0, LOOK_PLAIN, "%s needed, %s",
                        rates->coatings[c].name.s, unit_name(paper->base->measures.volume));
        }
    }
    return row;
}

static void put_heads(const struct paper *paper, uint16_t sheet, uint32_t row) {
    struct book *const book = paper->book;
    book_text(book, sheet, row, 0, LOOK_HEAD, "");
    for (size_t i = 0; i <= paper->option_count; i++) {
        book_text(book, sheet, row, (uint16_t)(BASE_COLUMN + i), LOOK_HEAD,
                  estimate_name(shown(paper, i)));
        if (i > 0) {
            const uint16_t money = (uint16_t)(BASE_COLUMN + paper->option_count + 1 + 2 * (i - 1));
            book_format(book, sheet, row, money, LOOK_HEAD, "%s less the first",
                        estimate_name(shown(paper, i)));
            book_text(book, sheet, row, (uint16_t)(money + 1), LOOK_HEAD, "in percent");
        }
    }
}

void sheet_compare(struct paper *paper) {
    if (paper->option_count == 0) {
        return;
    }
    const uint16_t sheet = book_sheet(paper->book, "Compare", "Options side by side", false);
    uint32_t row = paper_title(
        paper, sheet, "Options side by side",
        "The columns of the options are plain values: run the program again when a rate changes.");
    book_width(paper->book, sheet, 0, 36);
    put_heads(paper, sheet, row++);
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        if (any_has(paper, &lines[i])) {
            put_line(paper, sheet, row++, &lines[i]);
        }
    }
    row = put_lumber(paper, sheet, row + 1);
    row = put_sheets(paper, sheet, row);
    row = put_finish(paper, sheet, row);
    check_options(paper, sheet, row + 1, 0);
}
