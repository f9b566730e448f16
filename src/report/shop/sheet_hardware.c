/* SPDX-License-Identifier: MIT */
/* Hinges, pulls, consumables and what others make. */
#include "report/shop/paper.h"

static const char *how_sold(const struct hardware_buy *b, const struct hardware *hardware) {
    if (b->by_others) {
        return "by others";
    }
    if (fig_none(b->packs)) {
        return "singly";
    }
    return hardware->price_by.choice == PRICE_PER_PACK ? "in packs, at a price a pack"
                                                       : "in packs, at a price each";
}

static uint32_t hardware_table(const struct paper *paper, uint16_t sheet, uint32_t row) {
    struct book *const book = paper->book;
    const struct hardware_list *const list = &paper->base->hardware;
    book_text(book, sheet, row, 0, LOOK_HEAD, "hardware");
    book_text(book, sheet, row, 1, LOOK_HEAD, "sold");
    paper_columns(paper, sheet, row++, 2, LOOK_HEAD, &fields_hardware, FIELD_SHEET);
    for (size_t i = 0; i < list->count; i++, row++) {
        const struct hardware_buy *const b = &list->buys[i];
        const struct hardware *const hardware = &paper->base->rates->hardware[b->hardware];
        book_text(book, sheet, row, 0, LOOK_PLAIN, hardware->name.s);
        book_text(book, sheet, row, 1, LOOK_PLAIN, how_sold(b, hardware));
        paper_cells(paper, sheet, row, 2, &fields_hardware, FIELD_SHEET, b);
    }
    if (list->count == 0) {
        book_text(book, sheet, row++, 0, LOOK_PLAIN, "no hardware in this job");
    }
    return row + 1;
}

static uint32_t consumable_table(const struct paper *paper, uint16_t sheet, uint32_t row) {
    static const char *const heads[] = {"consumable", "for each"};
    struct book *const book = paper->book;
    const struct costs *const costs = &paper->base->costs;
    if (costs->consumable_count == 0) {
        return row;
    }
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    paper_columns(paper, sheet, row, 2, LOOK_HEAD, &fields_consumable, FIELD_MORE);
    paper_columns(paper, sheet, row++, 3, LOOK_HEAD, &fields_consumable, FIELD_SHEET);
    for (size_t i = 0; i < costs->consumable_count; i++, row++) {
        const struct consumable_figures *const c = &costs->consumables[i];
        book_text(book, sheet, row, 0, LOOK_PLAIN,
                  paper->base->rates->consumables[c->consumable].name.s);
        book_text(book, sheet, row, 1, LOOK_PLAIN,
                  unit_name(tape_unit(&paper->base->tape, c->price)));
        book_mention(book, sheet, row, 2, LOOK_PLAIN, c->quantity);
        paper_cells(paper, sheet, row, 3, &fields_consumable, FIELD_SHEET, c);
    }
    return row + 1;
}

static void bought_in_table(const struct paper *paper, uint16_t sheet, uint32_t row) {
    static const char *const heads[] = {"bought in", "door", "doors", "door, each", "finish, each"};
    struct book *const book = paper->book;
    const struct quantities *const q = &paper->base->quantities;
    if (fig_none(paper->base->costs.job.group[COST_BOUGHT_IN])) {
        return;
    }
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    row++;
    for (size_t r = 0; r < q->count; r++) {
        const struct leaf_figures *const leaf = &q->leaves[r];
        const int32_t finish = leaf->door->construction->finish.index;
        if (fig_none(leaf->bought_in) && fig_none(leaf->put_out)) {
            continue;
        }
        book_format(book, sheet, row, 0, LOOK_PLAIN, "%s%s%s",
                    fig_none(leaf->bought_in) ? "" : leaf->door->style->name.s,
                    fig_none(leaf->bought_in) || fig_none(leaf->put_out) ? "" : ", ",
                    fig_none(leaf->put_out) ? "" : paper->base->rates->finishes[finish].name.s);
        book_text(book, sheet, row, 1, LOOK_LABEL, leaf->door->name);
        book_mention(book, sheet, row, 2, LOOK_PLAIN, leaf->pieces);
        book_figure(book, sheet, row, 3, LOOK_PLAIN, leaf->bought_in);
        book_figure(book, sheet, row++, 4, LOOK_PLAIN, leaf->put_out);
    }
    book_text(book, sheet, row, 0, LOOK_LABEL, "in all");
    book_mention(book, sheet, row, 4, LOOK_TOTAL, paper->base->costs.job.group[COST_BOUGHT_IN]);
}

void sheet_hardware(const struct paper *paper, uint16_t sheet) {
    uint32_t row = paper_title(
        paper, sheet, 0, "A price stands for one piece, or for one pack where the table says so.");
    book_width(paper->book, sheet, 0, 34);
    book_width(paper->book, sheet, 1, 25);
    row = hardware_table(paper, sheet, row);
    row = consumable_table(paper, sheet, row);
    bought_in_table(paper, sheet, row);
}
