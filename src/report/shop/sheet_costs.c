/* SPDX-License-Identifier: MIT */
/* From materials to price: the job as a whole, and each door's share. */
#include "model/charge.h"
#include "report/shop/paper.h"
#include "report/words/build_up_words.h"

/* Columns: words, the job, unit, the rate that makes it, what is not shared, a gap, remarks. */
enum { COLUMN_WORDS, COLUMN_JOB, COLUMN_UNIT, COLUMN_RATE, COLUMN_REST, COLUMN_GAP, COLUMN_REMARK };

/* From the groups of cost to the price: what the doors do not share, and the rate that makes it. */
static void build_up(const struct paper *paper, struct paper_list *list) {
    const struct estimate *const e = paper->base;
    struct book *const book = paper->book;
    for (size_t i = 0; i < fields_build_up.count; i++) {
        struct field field = fields_build_up.fields[i];
        const struct field_table one = {&field, 1};
        const enum cost_group group = field_group(&field);
        const fig rate = build_up_rate(e, &field);
        const uint32_t row = list->row;
        field.label = build_up_label(e, &field);
        paper_lines(paper, list, &one, FIELD_SHEET, &e->costs.job);
        if (list->row == row) {
            continue;
        }
        if (!fig_none(rate)) {
            book_mention(book, list->sheet, row, COLUMN_RATE, LOOK_PLAIN, rate);
            book_text(book, list->sheet, row, COLUMN_REMARK, LOOK_NOTE, tape_label(&e->tape, rate));
        }
        if (group != COST_GROUP_COUNT) {
            book_figure(book, list->sheet, row, COLUMN_REST, LOOK_PLAIN, e->costs.unshared[group]);
        }
        if (group == COST_LABOR && !fig_none(e->costs.unshared[group])) {
            book_text(book, list->sheet, row, COLUMN_REMARK, LOOK_NOTE,
                      "not shared: of labor and machine together");
        }
    }
    list->row++;
}

/* Of each charge that an operation is done for: what it costs, and what it brings. */
static void charges(const struct paper *paper, struct paper_list *list) {
    const struct estimate *const e = paper->base;
    const size_t count = charge_count(e->job);
    for (size_t i = 0; i < count; i++) {
        const struct build_up *const cost = &e->costs.charges[i];
        const uint32_t head = list->row;
        if (fig_none(cost->full)) {
            continue;
        }
        book_text(paper->book, list->sheet, list->row++, COLUMN_WORDS, LOOK_SECTION,
                  "A charge that is worked for");
        book_span(paper->book, list->sheet, list->row++, COLUMN_WORDS, COLUMN_REMARK, LOOK_WRAP,
                  charge_name(e->job, i));
        paper_lines(paper, list, &fields_build_up, FIELD_SHEET, cost);
        book_text(paper->book, list->sheet, list->row, COLUMN_WORDS, LOOK_LABEL, "charged");
        book_mention(paper->book, list->sheet, list->row, COLUMN_JOB, LOOK_TOTAL,
                     sale_charged(&e->sale, i));
        book_text(paper->book, list->sheet, list->row, COLUMN_UNIT, LOOK_UNIT,
                  paper_unit(paper, sale_charged(&e->sale, i)));
        book_keep(paper->book, list->sheet, head, list->row);
        list->row += 2;
    }
}

void sheet_costs(const struct paper *paper, uint16_t sheet) {
    static const char *const heads[] = {"", "the job", "", "rate", "not shared", "", "remarks"};
    struct book *const book = paper->book;
    const uint32_t row =
        paper_title(paper, sheet, 0,
                    "Shared: what the doors carry, each share rounded to the cent; not "
                    "shared: what that leaves.");
    book_width(book, sheet, COLUMN_WORDS, 38);
    book_width(book, sheet, COLUMN_UNIT, 7);
    book_width(book, sheet, COLUMN_GAP, 1.5);
    book_width(book, sheet, COLUMN_REMARK, 38);
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    paper_headings(paper, sheet, row, 1);
    struct paper_list list = {
        .sheet = sheet, .figure = COLUMN_JOB, .note = COLUMN_REMARK, .row = row + 1};
    build_up(paper, &list);
    paper_lines(paper, &list, &fields_costs, FIELD_SHEET, &paper->base->costs);
    list.row++;
    paper_lines(paper, &list, &fields_costs, FIELD_MORE, &paper->base->costs);
    list.row++;
    charges(paper, &list);
    paper_lines(paper, &list, &fields_sale, FIELD_SHEET, &paper->base->sale);
}

void sheet_prices(const struct paper *paper, uint16_t sheet) {
    struct book *const book = paper->book;
    const struct quantities *const q = &paper->base->quantities;
    /* right of the column that is printed on every page */
    uint32_t row =
        paper_title(paper, sheet, 1, "Of one leaf; the amount is for all leaves of the row.");
    book_text(book, sheet, row, 0, LOOK_HEAD, "door");
    book_text(book, sheet, row, 1, LOOK_TALL, "doors in all");
    const uint16_t behind =
        paper_columns(paper, sheet, row, 2, LOOK_TALL, &fields_build_up, FIELD_MORE);
    paper_columns(paper, sheet, row, behind, LOOK_TALL, &fields_door_price, FIELD_SHEET);
    paper_headings(paper, sheet, row, 1);
    row++;
    for (size_t r = 0; r < q->count; r++, row++) {
        const struct door_price *const price = &paper->base->costs.doors[r];
        book_text(book, sheet, row, 0, LOOK_LABEL, q->leaves[r].door->name);
        book_mention(book, sheet, row, 1, LOOK_PLAIN, q->leaves[r].pieces);
        paper_cells(paper, sheet, row, 2, &fields_build_up, FIELD_MORE, &price->cost);
        paper_cells(paper, sheet, row, behind, &fields_door_price, FIELD_SHEET, price);
    }
    book_text(book, sheet, row, 0, LOOK_LABEL, "in all");
    paper_total(paper, sheet, row, behind, &fields_door_price, offsetof(struct door_price, amount),
                paper->base->costs.doors_total);
}
