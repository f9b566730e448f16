/* SPDX-License-Identifier: MIT */
/* The cut list: every part with finished and rough size, pieces, and what a piece takes. */
#include "model/name.h"
#include "report/shop/paper.h"

#define FIRST_ROW 4

static const struct {
    const char *head;
    size_t offset;
} columns[] = {
    {"pieces a door", offsetof(struct part_figures, count)},
    {"pieces in all", offsetof(struct part_figures, pieces)},
    {"width", offsetof(struct part_figures, width)},
    {"length", offsetof(struct part_figures, length)},
    {"rough width", offsetof(struct part_figures, rough_width)},
    {"rough length", offsetof(struct part_figures, rough_length)},
    {"net, each", offsetof(struct part_figures, net)},
    {"rough, each", offsetof(struct part_figures, rough)},
    {"area, each", offsetof(struct part_figures, area)},
    {"glass cost, each", offsetof(struct part_figures, cost)},
    {"weight, each", offsetof(struct part_figures, weight)},
};
#define WORDS 5

static void part_row(const struct paper *paper, uint16_t sheet, uint32_t at,
                     const struct leaf_figures *leaf, size_t i) {
    const struct part *const part = &leaf->door->parts[i];
    struct book *const book = paper->book;
    const bool mm = paper->base->measures.lengths == LENGTH_MM;
    book_text(book, sheet, at, 0, LOOK_LABEL, leaf->door->row->id.s);
    book_text(book, sheet, at, 1, LOOK_PLAIN, leaf->door->row->room.s);
    book_text(book, sheet, at, 2, LOOK_PLAIN, part_kind_name(part->kind));
    book_text(book, sheet, at, 3, LOOK_PLAIN,
              material_name(paper->base->rates, part->material_kind, part->material));
    /* nm are millionths of a mm; 64ths of an inch are exact in millionths */
    const int64_t thick = mm ? part->thickness : part->thickness * 10 / 254;
    book_number(book, sheet, at, 4, LOOK_PLAIN, mm ? UNIT_MM : UNIT_IN, 6, thick);
    for (size_t c = 0; c < sizeof columns / sizeof *columns; c++) {
        book_figure(book, sheet, at, (uint16_t)(WORDS + c), LOOK_PLAIN,
                    paper_at(&leaf->parts[i], columns[c].offset));
    }
}

void sheet_parts(struct paper *paper) {
    static const char *const words[WORDS] = {"door", "room", "part", "material", "thick"};
    struct book *const book = paper->book;
    const struct quantities *const q = &paper->base->quantities;
    const struct measures *const m = &paper->base->measures;
    const uint16_t sheet = book_sheet(book, "Parts", "Parts: cut list", true);
    paper_title(paper, sheet, "Parts: cut list", NULL);
    book_format(book, sheet, 1, 0, LOOK_NOTE,
                "Sizes in %s; length runs along the grain. Lumber is cut to the rough size, "
                "machined, then trimmed to the finished one.",
                paper_lengths(paper));
    book_format(book, sheet, 2, 0, LOOK_NOTE,
                "Net and rough in the unit lumber is sold by, areas in %s, weight in %s.",
                unit_name(m->area), unit_name(m->weight));
    paper_heads(paper, sheet, FIRST_ROW - 1, 0, LOOK_HEAD, words, WORDS);
    for (size_t c = 0; c < sizeof columns / sizeof *columns; c++) {
        book_text(book, sheet, FIRST_ROW - 1, (uint16_t)(WORDS + c), LOOK_HEAD, columns[c].head);
    }
    book_headings(book, sheet, FIRST_ROW - 1, FIRST_ROW - 1, 1);
    uint32_t at = FIRST_ROW;
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            part_row(paper, sheet, at++, &q->leaves[r], i);
        }
    }
}
