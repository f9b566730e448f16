/* SPDX-License-Identifier: MIT */
/* The doors as made, and their surfaces: one row of the list a row. */
#include "report/paper.h"

#define FIRST_ROW 4

/* Columns of figures after the words. */
struct column {
    const char *head;
    size_t offset;
};

static const struct column size_columns[] = {
    {"count", offsetof(struct leaf_figures, openings)},
    {"leaves", offsetof(struct leaf_figures, leaves)},
    {"doors in all", offsetof(struct leaf_figures, pieces)},
    {"width", offsetof(struct leaf_figures, width)},
    {"height", offsetof(struct leaf_figures, height)},
    {"thick", offsetof(struct leaf_figures, thickness)},
    {"hinges", offsetof(struct leaf_figures, hinges)},
    {"weight", offsetof(struct leaf_figures, weight)},
};

static const struct column surface_columns[] = {
    {"doors in all", offsetof(struct leaf_figures, pieces)},
    {"face area", offsetof(struct leaf_figures, face)},
    {"perimeter", offsetof(struct leaf_figures, perimeter)},
    {"faces sprayed", offsetof(struct leaf_figures, faces)},
    {"outer edges", offsetof(struct leaf_figures, edges)},
    {"open area", offsetof(struct leaf_figures, see_through)},
    {"inner edges", offsetof(struct leaf_figures, inner_edges)},
    {"profile", offsetof(struct leaf_figures, profile)},
    {"sprayed, in all", offsetof(struct leaf_figures, sprayed)},
};
#define WORDS 5

static void door_row(const struct paper *paper, uint16_t sheet, uint32_t at,
                     const struct leaf_figures *leaf, const struct column *columns, size_t count) {
    const struct row *const row = leaf->door->row;
    struct book *const book = paper->book;
    book_text(book, sheet, at, 0, LOOK_LABEL, row->id.s);
    book_text(book, sheet, at, 1, LOOK_PLAIN, row->room.s);
    book_text(book, sheet, at, 2, LOOK_PLAIN, use_name((enum use)row->use.word));
    book_text(book, sheet, at, 3, LOOK_PLAIN,
              leaf->door->form == FORM_SLAB ? "slab" : leaf->door->style->name.s);
    book_text(book, sheet, at, 4, LOOK_PLAIN,
              leaf->door->make.finish.index < 0 ? "bare" : leaf->door->make.finish.name.s);
    for (size_t c = 0; c < count; c++) {
        book_figure(book, sheet, at, (uint16_t)(WORDS + c), LOOK_PLAIN,
                    paper_at(leaf, columns[c].offset));
    }
}

/* Lays out a table of doors with these columns; returns the row after it. */
static uint32_t door_table(const struct paper *paper, uint16_t sheet, const struct column *columns,
                           size_t count) {
    static const char *const words[WORDS] = {"id", "room", "use", "style", "finish"};
    struct book *const book = paper->book;
    const struct quantities *const q = &paper->base->quantities;
    paper_heads(paper, sheet, FIRST_ROW - 1, 0, LOOK_HEAD, words, WORDS);
    for (size_t c = 0; c < count; c++) {
        book_text(book, sheet, FIRST_ROW - 1, (uint16_t)(WORDS + c), LOOK_HEAD, columns[c].head);
    }
    book_headings(book, sheet, FIRST_ROW - 1, FIRST_ROW - 1, 1);
    for (size_t r = 0; r < q->count; r++) {
        door_row(paper, sheet, FIRST_ROW + (uint32_t)r, &q->leaves[r], columns, count);
    }
    return FIRST_ROW + (uint32_t)q->count;
}

void sheet_doors(struct paper *paper) {
    const struct measures *const m = &paper->base->measures;
    const struct quantities *const q = &paper->base->quantities;
    const uint16_t sheet = book_sheet(paper->book, "Doors", "Doors as made", true);
    paper_title(paper, sheet, "Doors as made", NULL);
    book_format(paper->book, sheet, 1, 0, LOOK_NOTE,
                "Sizes of one leaf in %s; hinges and weight (in %s) are of one leaf.",
                paper_lengths(paper), unit_name(m->weight));
    const uint32_t last =
        door_table(paper, sheet, size_columns, sizeof size_columns / sizeof *size_columns);
    book_text(paper->book, sheet, last, 0, LOOK_LABEL, "in all");
    book_figure(paper->book, sheet, last, WORDS + 2, LOOK_TOTAL, q->all_leaves);
    book_figure(paper->book, sheet, last, WORDS + 7, LOOK_TOTAL, q->weight);
}

void sheet_surfaces(struct paper *paper) {
    const struct measures *const m = &paper->base->measures;
    const uint16_t sheet = book_sheet(paper->book, "Surfaces", "Surfaces of each door", true);
    paper_title(paper, sheet, "Surfaces of each door", NULL);
    book_format(paper->book, sheet, 1, 0, LOOK_NOTE,
                "Of one leaf; areas in %s, the perimeter in %s. Sprayed: faces, edges and what the "
                "profile adds.",
                unit_name(m->area), paper_lengths(paper));
    door_table(paper, sheet, surface_columns, sizeof surface_columns / sizeof *surface_columns);
}
