/* SPDX-License-Identifier: MIT */
/* The cut list: every part with finished and rough size, pieces, and what a piece takes. */
#include "model/name.h"
#include "report/shop/paper.h"

#define FIRST_ROW 4

#define WORDS 5

static void part_row(const struct paper *paper, uint16_t sheet, uint32_t at,
                     const struct leaf_figures *leaf, size_t i) {
    const struct part *const part = &leaf->door->parts[i];
    struct book *const book = paper->book;
    const bool mm = paper->base->units.lengths == LENGTH_MM;
    book_text(book, sheet, at, 0, LOOK_LABEL, leaf->door->name);
    book_text(book, sheet, at, 1, LOOK_PLAIN, leaf->door->row->room.s);
    book_text(book, sheet, at, 2, LOOK_PLAIN, part_full_name(part));
    book_text(book, sheet, at, 3, LOOK_PLAIN,
              material_name(paper->base->rates, part->material_kind, part->material));
    /* nm are millionths of a mm; 64ths of an inch are exact in millionths */
    const int64_t thick = mm ? part->thickness : part->thickness * 10 / 254;
    book_number(book, sheet, at, 4, LOOK_PLAIN, mm ? UNIT_MM : UNIT_IN, 6, thick);
    paper_cells(paper, sheet, at, WORDS, &fields_part, FIELD_SHEET, &leaf->parts[i]);
}

void sheet_parts(struct paper *paper) {
    static const char *const words[WORDS] = {"door", "room", "part", "material", "thick"};
    struct book *const book = paper->book;
    const struct quantities *const q = &paper->base->quantities;
    const struct units *const m = &paper->base->units;
    const uint16_t sheet = book_sheet(book, "Parts", "Parts: cut list", true);
    paper_title(paper, sheet, "Parts: cut list", NULL);
    book_format(book, sheet, 1, 0, LOOK_NOTE,
                "Sizes in %s; length runs along the grain. Lumber is cut to the rough size, "
                "machined, then trimmed to the finished one.",
                paper_lengths(paper));
    book_format(book, sheet, 2, 0, LOOK_NOTE,
                "Net and rough in the unit lumber is sold by, areas in %s, weight in %s. A part "
                "without a rough length is milled in a blank, that of the first such part.",
                unit_name(m->area), unit_name(m->weight));
    paper_heads(paper, sheet, FIRST_ROW - 1, 0, LOOK_HEAD, words, WORDS);
    paper_columns(paper, sheet, FIRST_ROW - 1, WORDS, LOOK_HEAD, &fields_part, FIELD_SHEET);
    book_headings(book, sheet, FIRST_ROW - 1, FIRST_ROW - 1, 1);
    uint32_t at = FIRST_ROW;
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            part_row(paper, sheet, at++, &q->leaves[r], i);
        }
    }
}
