/* SPDX-License-Identifier: MIT */
/* The cut list: every part with finished and rough size, pieces, and what a piece takes. */
#include "model/name.h"
#include "report/shop/paper.h"

#define FIRST_ROW (PAPER_FIRST_ROW + 2)

#define WORDS 5

static void part_row(const struct paper *paper, uint16_t sheet, uint32_t at,
                     const struct leaf_figures *leaf, size_t i, const struct field_table *fields) {
    const struct part *const part = &leaf->door->parts[i];
    struct book *const book = paper->book;
    const struct units *const units = &paper->base->units;
    book_text(book, sheet, at, 0, LOOK_LABEL, leaf->door->name);
    book_text(book, sheet, at, 1, LOOK_PLAIN, part_full_name(part));
    book_text(book, sheet, at, 2, LOOK_PLAIN, leaf->door->row->room.s);
    book_text(book, sheet, at, 3, LOOK_PLAIN,
              material_name(paper->base->rates, part->material_kind, part->material));
    book_number(book, sheet, at, 4, LOOK_PLAIN, units->length, 6,
                length_millionths(part->thickness, units->lengths));
    paper_cells(paper, sheet, at, WORDS, fields, FIELD_SHEET, &leaf->parts[i]);
}

/* What some part has: without short parts the columns of their blanks would be empty, and without
 * glass that of its cost.  Returns whether any is milled in a blank. */
static bool fill(struct field_filled *filled, const struct quantities *q) {
    bool blanks = false;
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            field_fill(filled, &q->leaves[r].parts[i]);
            blanks = blanks || !fig_none(q->leaves[r].parts[i].blank[0]);
        }
    }
    return blanks;
}

void sheet_parts(const struct paper *paper, uint16_t sheet) {
    static const char *const words[WORDS] = {"door", "part", "room", "material", "thick"};
    struct book *const book = paper->book;
    const struct quantities *const q = &paper->base->quantities;
    const struct units *const m = &paper->base->units;
    struct field_filled filled = {.from = &fields_part};
    const bool blanks = fill(&filled, q);
    const struct field_table fields = field_only(&filled);
    (void)paper_title(
        paper, sheet, 0,
        pool_words(&book->pool,
                   "Sizes in %s; length runs along the grain. Lumber is cut to the rough size, "
                   "machined, then trimmed to the finished one.",
                   paper_lengths(paper)));
    book_format(book, sheet, PAPER_FIRST_ROW - 1, 0, LOOK_NOTE,
                "Net and rough in the unit lumber is sold by, areas in %s, weight in %s.",
                unit_name(m->area), unit_name(m->weight));
    if (blanks) {
        book_text(book, sheet, PAPER_FIRST_ROW, 0, LOOK_NOTE,
                  "A part of lumber without a rough length is milled in a blank, that of the first "
                  "such part.");
    }
    paper_heads(paper, sheet, FIRST_ROW - 1, 0, LOOK_HEAD, words, WORDS);
    paper_columns(paper, sheet, FIRST_ROW - 1, WORDS, LOOK_HEAD, &fields, FIELD_SHEET);
    paper_headings(paper, sheet, FIRST_ROW - 1, 2);
    uint32_t at = FIRST_ROW;
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            part_row(paper, sheet, at++, &q->leaves[r], i, &fields);
        }
    }
}
