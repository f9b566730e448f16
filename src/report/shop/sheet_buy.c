/* SPDX-License-Identifier: MIT */
/* What to buy, a supplier after the other, with a box to tick. */
#include "report/shop/check_cell.h"
#include "report/words/buy_list.h"

enum { COLUMN_BOX, COLUMN_WHAT, COLUMN_SIZE, COLUMN_COUNT, COLUMN_UNIT, COLUMN_PRICE, COLUMN_COST };
#define TOGETHER "together"

enum { COLUMN_GAP = COLUMN_COST + 1, COLUMN_NOTE };

/* Words that follow when figures are changed. */
static void put_note(const struct paper *paper, uint16_t sheet, uint32_t row,
                     const struct buy_line *line) {
    struct book *const book = paper->book;
    const char *const formula = buy_note_formula(&book->pool, paper->base, &line->why);
    if (formula == NULL) {
        book_text(book, sheet, row, COLUMN_NOTE, LOOK_WRAP, line->note);
    } else {
        book_check(book, sheet, row, COLUMN_NOTE, LOOK_WRAP, formula, line->note);
    }
}

static void put_line(const struct paper *paper, uint16_t sheet, uint32_t row,
                     const struct buy_line *line) {
    struct book *const book = paper->book;
    book_text(book, sheet, row, COLUMN_BOX, LOOK_PLAIN, line->part ? NULL : "[  ]");
    book_text(book, sheet, row, COLUMN_WHAT, line->part ? LOOK_UNIT : LOOK_PLAIN, line->what);
    book_text(book, sheet, row, COLUMN_SIZE, LOOK_PLAIN, line->size);
    book_mention(book, sheet, row, COLUMN_COUNT, LOOK_PLAIN, line->count);
    if (!fig_none(line->count)) {
        book_text(book, sheet, row, COLUMN_UNIT, LOOK_UNIT,
                  line->unit[0] != '\0' ? line->unit : paper_unit(paper, line->count));
    }
    book_mention(book, sheet, row, COLUMN_PRICE, LOOK_PLAIN, line->price);
    book_mention(book, sheet, row, COLUMN_COST, LOOK_PLAIN, line->cost);
    put_note(paper, sheet, row, line);
}

static uint32_t put_group(const struct paper *paper, uint16_t sheet, uint32_t row,
                          const struct buy_list *list, const struct buy_group *group) {
    struct book *const book = paper->book;
    const uint32_t first = row;
    book_text(book, sheet, row++, 0, LOOK_PART, group->title);
    for (size_t i = 0; i < group->count; i++) {
        put_line(paper, sheet, row++, &list->lines[group->first + i]);
    }
    book_text(book, sheet, row, COLUMN_WHAT, LOOK_LABEL, TOGETHER);
    book_figure(book, sheet, row, COLUMN_COST, LOOK_TOTAL, group->total);
    book_keep(book, sheet, first, row);
    return row + 2;
}

void sheet_buy(const struct paper *paper, uint16_t sheet) {
    static const char *const heads[] = {"",      "what", "size", "how many", "unit",
                                        "price", "cost", "",     "note"};
    struct book *const book = paper->book;
    const struct estimate *const e = paper->base;
    struct buy_list list;
    book_few_decimals(book, sheet);
    uint32_t row = paper_title(paper, sheet, 0,
                               "A cost stands on the line that it is paid for; the lines below it "
                               "say what it is made up of.");
    check_all(paper, sheet, row++, COLUMN_WHAT, LOOK_NOTE);
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    paper_headings(paper, sheet, row++, 2);
    const uint32_t first = row;
    if (!buy_list_make(&list, &book->pool, e)) {
        book->failed = true;
    }
    for (size_t g = 0; g < list.group_count; g++) {
        row = put_group(paper, sheet, row, &list, &list.groups[g]);
    }
    check_add_sum(paper->checks,
                  &(struct check_sum){
                      .what = "what suppliers get",
                      /* below the cell that repeats what the checks say: it hangs on this one */
                      .formula = pool_words(&book->pool,
                                            "SUMIF(Buy!%c%u:%c%u,\"" TOGETHER "\",Buy!%c%u:%c%u)",
                                            'A' + COLUMN_WHAT, first + 1, 'A' + COLUMN_WHAT, row,
                                            'A' + COLUMN_COST, first + 1, 'A' + COLUMN_COST, row),
                      .total = list.total});
    book_text(book, sheet, row, COLUMN_WHAT, LOOK_LABEL, "in all");
    book_text(book, sheet, row, COLUMN_UNIT, LOOK_UNIT, e->rates->shop.currency.s);
    book_figure(book, sheet, row, COLUMN_COST, LOOK_GRAND, list.total);
    book_width(book, sheet, COLUMN_GAP, 1.5);
    book_width(book, sheet, COLUMN_NOTE, 30);
    buy_list_clear(&list);
}
