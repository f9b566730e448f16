/* SPDX-License-Identifier: MIT */
/* The doors as made: one row of the list a row, with sizes, surfaces and weight of a leaf. */
#include "report/paper.h"

#define FIRST_ROW 4

/* Columns of figures after the words. */
static const struct {
    const char *head;
    size_t offset;
} columns[] = {
    {"count", offsetof(struct leaf_figures, openings)},
    {"leaves", offsetof(struct leaf_figures, leaves)},
    {"doors in all", offsetof(struct leaf_figures, pieces)},
    {"width", offsetof(struct leaf_figures, width)},
    {"height", offsetof(struct leaf_figures, height)},
    {"thick", offsetof(struct leaf_figures, thickness)},
    {"face area", offsetof(struct leaf_figures, face)},
    {"perimeter", offsetof(struct leaf_figures, perimeter)},
    {"faces sprayed", offsetof(struct leaf_figures, faces)},
    {"outer edges", offsetof(struct leaf_figures, edges)},
    {"open area", offsetof(struct leaf_figures, see_through)},
    {"inner edges", offsetof(struct leaf_figures, inner_edges)},
    {"profile", offsetof(struct leaf_figures, profile)},
    {"sprayed, in all", offsetof(struct leaf_figures, sprayed)},
    {"hinges", offsetof(struct leaf_figures, hinges)},
    {"weight", offsetof(struct leaf_figures, weight)},
};
#define WORDS 5

static void door_row(const struct paper *paper, uint16_t sheet, uint32_t at,
                     const struct leaf_figures *leaf) {
    const struct row *const row = leaf->door->row;
    struct book *const book = paper->book;
    book_text(book, sheet, at, 0, LOOK_LABEL, row->id.s);
    book_text(book, sheet, at, 1, LOOK_PLAIN, row->room.s);
    book_text(book, sheet, at, 2, LOOK_PLAIN, use_name((enum use)row->use.word));
    book_text(book, sheet, at, 3, LOOK_PLAIN,
              leaf->door->form == FORM_SLAB ? "slab" : leaf->door->style->name.s);
    book_text(book, sheet, at, 4, LOOK_PLAIN,
              leaf->door->make.finish.index < 0 ? "bare" : leaf->door->make.finish.name.s);
    for (size_t c = 0; c < sizeof columns / sizeof *columns; c++) {
        book_figure(book, sheet, at, (uint16_t)(WORDS + c), LOOK_PLAIN,
                    paper_at(leaf, columns[c].offset));
    }
}

void sheet_doors(struct paper *paper) {
    static const char *const words[WORDS] = {"id", "room", "use", "style", "finish"};
    struct book *const book = paper->book;
    const struct quantities *const q = &paper->base->quantities;
    const struct measures *const m = &paper->base->measures;
    const uint16_t sheet = book_sheet(book, "Doors", "Doors as made", true);
    paper_title(paper, sheet, "Doors as made", NULL);
    book_format(book, sheet, 1, 0, LOOK_NOTE,
                "Sizes of one leaf in %s, areas in %s, weight in %s; areas, hinges and weight are "
                "of one leaf.",
                unit_name(m->length), unit_name(m->area), unit_name(m->weight));
    paper_heads(paper, sheet, FIRST_ROW - 1, 0, LOOK_HEAD, words, WORDS);
    for (size_t c = 0; c < sizeof columns / sizeof *columns; c++) {
        book_text(book, sheet, FIRST_ROW - 1, (uint16_t)(WORDS + c), LOOK_HEAD, columns[c].head);
    }
    book_headings(book, sheet, FIRST_ROW - 1, FIRST_ROW - 1, 1);
    for (size_t r = 0; r < q->count; r++) {
        door_row(paper, sheet, FIRST_ROW + (uint32_t)r, &q->leaves[r]);
    }
    const uint32_t last = FIRST_ROW + (uint32_t)q->count;
    book_text(book, sheet, last, 0, LOOK_LABEL, "in all");
    book_figure(book, sheet, last, WORDS + 2, LOOK_TOTAL, q->all_leaves);
    book_figure(book, sheet, last, WORDS + 15, LOOK_TOTAL, q->weight);
}
