/* SPDX-License-Identifier: MIT */
/* The base job and its options side by side.  The base's figures are live; an option was estimated
 * on a tape of its own, so its column holds plain values: to be made again when a rate changes. */
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"
#include "report/words/compared.h"
#include "report/words/difference.h"

#include <stdio.h>

#define BASE_COLUMN 1

static const struct estimate *shown(const struct paper *paper, size_t i) {
    return i == 0 ? paper->base : &paper->options[i - 1];
}

/* Writes a figure of estimate i: the base's live, an option's plain; less: with the other sign. */
static void put(const struct paper *paper, uint16_t sheet, uint32_t row, size_t i, fig figure,
                bool less) {
    const uint16_t column = (uint16_t)(BASE_COLUMN + i);
    const struct tape *const tape = &shown(paper, i)->tape;
    const int64_t amount = tape_amount(tape, figure);
    if (fig_none(figure)) {
        return;
    }
    if (i > 0) {
        book_number(paper->book, sheet, row, column, LOOK_PLAIN, tape_unit(tape, figure),
                    tape_decimals(tape, figure), less ? -amount : amount);
    } else if (less) {
        book_negated(paper->book, sheet, row, column, LOOK_PLAIN, figure);
    } else {
        book_mention(paper->book, sheet, row, column, LOOK_PLAIN, figure);
    }
}

/* Difference to the base in money and percent. */
static void put_difference(const struct paper *paper, uint16_t sheet, uint32_t row, size_t i,
                           const struct compared_line *line) {
    const int64_t sign = line->less ? -1 : 1;
    const int64_t from = sign * tape_amount(&paper->base->tape, line->figures[0]);
    const int64_t to = sign * tape_amount(&shown(paper, i)->tape, line->figures[i]);
    const uint16_t money = (uint16_t)(BASE_COLUMN + paper->option_count + 1 + 2 * (i - 1));
    const char letter = (char)('A' + BASE_COLUMN + (int)i);
    const uint8_t decimals = paper->base->rates->shop.money_decimals;
    char formula[96];
    if (BASE_COLUMN + (int)i > 25 || money + 1 >= BOOK_MOST_COLUMNS) {
        return; /* more options than a page could show */
    }
    (void)snprintf(formula, sizeof formula, "ROUND(%c%u-B%u,%u)", letter, row + 1, row + 1,
                   (unsigned)decimals);
    book_formula(paper->book, sheet, row, money, LOOK_DIFFERENCE, UNIT_MONEY, decimals, to - from,
                 formula);
    if (from != 0) {
        (void)snprintf(formula, sizeof formula, "IF(B%u=0,0,ROUND((%c%u-B%u)*100/ABS(B%u),2))",
                       row + 1, letter, row + 1, row + 1, row + 1);
        book_formula(paper->book, sheet, row, (uint16_t)(money + 1), LOOK_DIFFERENCE, UNIT_PERCENT,
                     2, difference_percent(from, to), formula);
    }
}

static void put_line(const struct paper *paper, uint16_t sheet, uint32_t row,
                     const struct compared_line *line) {
    const char *unit = "";
    bool money = false;
    for (size_t i = paper->option_count + 1; i-- > 0;) {
        const fig figure = line->figures[i];
        unit = fig_none(figure) ? unit : paper_unit_of(shown(paper, i), figure);
        money = money || tape_unit(&shown(paper, i)->tape, figure) == UNIT_MONEY;
    }
    book_format(paper->book, sheet, row, 0, line->total ? LOOK_LABEL : LOOK_PLAIN, "%s%s%s",
                line->label, unit[0] == '\0' ? "" : ", ", unit);
    for (size_t i = 0; i <= paper->option_count; i++) {
        put(paper, sheet, row, i, line->figures[i], line->less);
        if (i > 0 && money) {
            put_difference(paper, sheet, row, i, line);
        }
    }
}

static uint32_t put_lines(const struct paper *paper, uint16_t sheet, uint32_t row) {
    struct pool *const pool = &paper->book->pool;
    const size_t count = paper->option_count + 1;
    const struct estimate **const estimates =
        pool_take(pool, count, sizeof(const struct estimate *));
    for (size_t i = 0; estimates != NULL && i < count; i++) {
        estimates[i] = shown(paper, i);
    }
    if (estimates == NULL) {
        return row;
    }
    const struct compared all = compared_make(pool, estimates, count, true);
    for (size_t i = 0; i < all.count; i++) {
        put_line(paper, sheet, row++, &all.lines[i]);
    }
    return row;
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
                    put(paper, sheet, row, i, list->buys[b].priced.bought, false);
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
                    put(paper, sheet, row, i, list->buys[b].priced.whole, false);
                    put(paper, sheet, row + 1, i, list->buys[b].priced.half, false);
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
                    put(paper, sheet, row, i, list->products[p].need, false);
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
                        rates->coatings[c].name.s, unit_name(paper->base->units.volume));
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

bool compare_any(const struct paper *paper) {
    return paper->option_count > 0;
}

void sheet_compare(const struct paper *paper, uint16_t sheet) {
    uint32_t row = paper_title(
        paper, sheet, 0,
        "The columns of the options are plain values: run the program again when a rate changes.");
    book_width(paper->book, sheet, 0, 36);
    put_heads(paper, sheet, row);
    paper_headings(paper, sheet, row++, 1);
    row = put_lines(paper, sheet, row);
    row = put_lumber(paper, sheet, row + 1);
    row = put_sheets(paper, sheet, row);
    row = put_finish(paper, sheet, row);
    check_options(paper, sheet, row + 1, 0);
}
