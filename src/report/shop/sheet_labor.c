/* SPDX-License-Identifier: MIT */
/* Labor by operation and by machine, and the matrix of what each operation takes of each door. */
#include "report/shop/paper.h"

#define WORDS       2
#define LAST_COLUMN 6 /* that cautions run over */

static const char *machine_name(const struct rates *rates, int32_t machine) {
    return machine < 0 ? "by hand" : rates->machines[machine].name.s;
}

static uint32_t operation_table(const struct paper *paper, uint16_t sheet, uint32_t row) {
    struct book *const book = paper->book;
    const struct labor *const labor = &paper->base->labor;
    const struct rates *const rates = paper->base->rates;
    book_text(book, sheet, row, 0, LOOK_HEAD, "operation");
    book_text(book, sheet, row, 1, LOOK_HEAD, "machine");
    paper_columns(paper, sheet, row++, WORDS, LOOK_HEAD, &fields_operation, FIELD_SHEET);
    for (size_t i = 0; i < labor->operation_count; i++, row++) {
        const struct operation_figures *const o = &labor->operations[i];
        book_text(book, sheet, row, 0, LOOK_PLAIN, rates->operations[o->operation].name.s);
        book_text(book, sheet, row, 1, LOOK_PLAIN,
                  machine_name(rates, rates->operations[o->operation].machine));
        paper_cells(paper, sheet, row, WORDS, &fields_operation, FIELD_SHEET, o);
    }
    book_text(book, sheet, row, 0, LOOK_LABEL, "in all");
    paper_total(paper, sheet, row, WORDS, &fields_operation,
                offsetof(struct operation_figures, person_minutes), labor->person_minutes);
    paper_total(paper, sheet, row, WORDS, &fields_operation,
                offsetof(struct operation_figures, labor), labor->labor);
    paper_total(paper, sheet, row, WORDS, &fields_operation,
                offsetof(struct operation_figures, machine), labor->machine);
    return row + 2;
}

static uint32_t machine_table(const struct paper *paper, uint16_t sheet, uint32_t row) {
    static const char *const heads[] = {"machine", "", "minutes", "machine cost"};
    struct book *const book = paper->book;
    const struct labor *const labor = &paper->base->labor;
    const uint32_t head = row;
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    row++;
    for (size_t i = 0; i < labor->machine_count; i++, row++) {
        book_text(book, sheet, row, 0, LOOK_PLAIN,
                  machine_name(paper->base->rates, labor->machines[i].machine));
        book_figure(book, sheet, row, 2, LOOK_PLAIN, labor->machines[i].minutes);
        book_figure(book, sheet, row, 3, LOOK_PLAIN, labor->machines[i].cost);
    }
    book_text(book, sheet, row, 0, LOOK_NOTE, PAPER_MACHINE_TIME);
    book_keep(book, sheet, head, row);
    return row + 2;
}

void sheet_labor(const struct paper *paper, uint16_t sheet) {
    struct book *const book = paper->book;
    uint32_t row = paper_title(paper, sheet, 0,
                               "Machine minutes = run + set-ups. Person-minutes = machine minutes "
                               "x hands, with the allowance.");
    book_width(book, sheet, 0, 28);
    book_width(book, sheet, 1, 18);
    row = operation_table(paper, sheet, row);
    row = machine_table(paper, sheet, row);
    struct paper_list list = {.sheet = sheet, .figure = 2, .note = 4, .row = row};
    paper_lines(paper, &list, &fields_labor, FIELD_SHEET, &paper->base->labor);
    book_keep(book, sheet, row, list.row);
    (void)paper_cautions(paper, sheet, list.row + 1, LAST_COLUMN, CAUTION_SHOP);
}

/* --- the matrix: doors down, operations across, one block a kind of figure
 * ------------------------------------------------------ */

static const struct field blocks[] = {
    {NULL, "Counted by: what the operation does to one leaf", NULL,
     offsetof(struct operation_share, count), 0},
    {NULL, "Run minutes of one leaf", NULL, offsetof(struct operation_share, run), 0},
    {NULL, "Person-minutes of one leaf: its share, set-ups and allowance included", NULL,
     offsetof(struct operation_share, person), 0},
    {NULL, "Cost of one leaf: its share of labor and machine", NULL,
     offsetof(struct operation_share, cost), 0},
};

/* The unit that an operation is counted in; empty for pieces and doors. */
static const char *counted_in(const struct paper *paper, const struct operation_figures *o) {
    for (size_t r = 0; r < paper->base->quantities.count; r++) {
        if (!fig_none(o->shares[r].count)) {
            return paper_unit(paper, o->shares[r].count);
        }
    }
    return "";
}

static uint32_t block(const struct paper *paper, uint16_t sheet, uint32_t row, size_t kind) {
    struct book *const book = paper->book;
    const struct labor *const labor = &paper->base->labor;
    const struct quantities *const q = &paper->base->quantities;
    const bool count = blocks[kind].offset == offsetof(struct operation_share, count);
    const bool person = blocks[kind].offset == offsetof(struct operation_share, person);
    const bool cost = blocks[kind].offset == offsetof(struct operation_share, cost);
    const uint16_t last = (uint16_t)(1 + labor->operation_count);
    book_text(book, sheet, row, 1, LOOK_SECTION, blocks[kind].label);
    row++;
    book_text(book, sheet, row, 0, LOOK_HEAD, "door");
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        const char *const unit = count ? counted_in(paper, o) : "";
        book_format(book, sheet, row, (uint16_t)(1 + i), LOOK_TALL, "%s%s%s",
                    paper->base->rates->operations[o->operation].name.s,
                    unit[0] == '\0' ? "" : ", ", unit);
    }
    if (person || cost) {
        book_text(book, sheet, row, last, LOOK_TALL, "in all");
    }
    row++;
    for (size_t r = 0; r < q->count; r++, row++) {
        book_text(book, sheet, row, 0, LOOK_LABEL, q->leaves[r].door->name);
        for (size_t i = 0; i < labor->operation_count; i++) {
            book_figure(book, sheet, row, (uint16_t)(1 + i), LOOK_PLAIN,
                        field_figure(&blocks[kind], &labor->operations[i].shares[r]));
        }
        if (person || cost) {
            book_figure(book, sheet, row, last, LOOK_LABEL,
                        person ? labor->leaf_minutes[r] : labor->leaf_cost[r]);
        }
    }
    return row + 1;
}

void sheet_operations(const struct paper *paper, uint16_t sheet) {
    /* right of the column that is printed on every page */
    uint32_t row = paper_title(paper, sheet, 1,
                               "Four tables: counts, run minutes, person-minutes, cost; all of one "
                               "leaf. Counts without a unit are pieces, doors or times.");
    for (size_t kind = 0; kind < sizeof blocks / sizeof *blocks; kind++) {
        if (kind > 0) {
            book_break(paper->book, sheet, row);
        }
        row = block(paper, sheet, row, kind);
    }
}
