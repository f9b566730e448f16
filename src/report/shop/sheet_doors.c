/* SPDX-License-Identifier: MIT */
/* The doors as made, and their surfaces: one row of the list a row, of leaves that fold one each.
 */
#include "report/shop/paper.h"
#include "report/words/door_words.h"
#include "report/words/show.h"

#define FIRST_ROW (PAPER_FIRST_ROW + 1)

/* Words at the left, and further ones right of the figures of the sizes. */
#define WORDS 5

static void door_row(const struct paper *paper, uint16_t sheet, uint32_t at,
                     const struct leaf_figures *leaf, const struct field_table *fields,
                     unsigned view) {
    const struct row *const row = leaf->door->row;
    struct book *const book = paper->book;
    book_text(book, sheet, at, 0, LOOK_LABEL, leaf->door->name);
    book_text(book, sheet, at, 1, LOOK_PLAIN, row->room.s);
    book_text(book, sheet, at, 2, LOOK_PLAIN, show_door(leaf->door));
    book_text(book, sheet, at, 3, LOOK_PLAIN, show_style(leaf->door));
    book_text(book, sheet, at, 4, LOOK_PLAIN,
              leaf->door->construction->finish.index < 0 ? "bare"
                                                         : leaf->door->construction->finish.name.s);
    paper_cells(paper, sheet, at, WORDS, fields, view, leaf);
}

/* Lays out a table of doors with those of the fields that have a view; returns the row after it. */
static uint32_t door_table(const struct paper *paper, uint16_t sheet,
                           const struct field_table *fields, unsigned view) {
    static const char *const words[WORDS] = {"id", "room", "use", "style", "finish"};
    const struct quantities *const q = &paper->base->quantities;
    paper_heads(paper, sheet, FIRST_ROW - 1, 0, LOOK_HEAD, words, WORDS);
    paper_columns(paper, sheet, FIRST_ROW - 1, WORDS, LOOK_HEAD, fields, view);
    paper_headings(paper, sheet, FIRST_ROW - 1, 1);
    for (size_t r = 0; r < q->count; r++) {
        door_row(paper, sheet, FIRST_ROW + (uint32_t)r, &q->leaves[r], fields, view);
    }
    return FIRST_ROW + (uint32_t)q->count;
}

/* What stands in the list: the size as it was measured and of what, where the hinges go, and what
 * the shop remarks, which no paper of the client's has. */
static void put_measured(const struct paper *paper, uint16_t sheet, uint32_t at, uint16_t column,
                         const struct door *door) {
    const struct row *const row = door->row;
    book_text(paper->book, sheet, at, column, LOOK_UNIT,
              show_size(leaf_measured(row, door->role)->amount, row->height.amount,
                        paper->base->job->unit)
                  .text);
    book_text(paper->book, sheet, at, (uint16_t)(column + 1), LOOK_PLAIN,
              door->construction->size_is.choice == MEASURE_OPENING ? "opening" : "door");
    book_text(paper->book, sheet, at, (uint16_t)(column + 2), LOOK_PLAIN, show_hung(door));
    book_text(paper->book, sheet, at, (uint16_t)(column + 3), LOOK_PLAIN, show_remark(door));
}

void sheet_doors(const struct paper *paper, uint16_t sheet) {
    static const char *const heads[] = {"as measured", "of the", "hinge side", "remark"};
    const struct units *const m = &paper->base->units;
    const struct quantities *const q = &paper->base->quantities;
    (void)paper_title(
        paper, sheet, 0,
        pool_words(
            &paper->book->pool,
            "Sizes in %s. Made sizes, hinges, face area (%s) and weight (%s) are of one leaf; "
            "as measured: width x height of the list, of the opening or of the door. In all: of "
            "all leaves.",
            paper_lengths(paper), unit_name(m->area), unit_name(m->weight)));
    const uint32_t last = door_table(paper, sheet, &fields_leaf, FIELD_SHEET);
    const uint16_t column = WORDS + (uint16_t)field_count(&fields_leaf, FIELD_SHEET);
    paper_heads(paper, sheet, FIRST_ROW - 1, column, LOOK_HEAD, heads,
                sizeof heads / sizeof *heads);
    for (size_t i = 0; i < q->count; i++) {
        put_measured(paper, sheet, FIRST_ROW + (uint32_t)i, column, q->leaves[i].door);
    }
    book_text(paper->book, sheet, last, 0, LOOK_LABEL, "in all");
    paper_total(paper, sheet, last, WORDS, &fields_leaf, offsetof(struct leaf_figures, pieces),
                q->all_leaves);
    paper_total(paper, sheet, last, WORDS, &fields_leaf, offsetof(struct leaf_figures, weight),
                q->weight);
}

void sheet_surfaces(const struct paper *paper, uint16_t sheet) {
    const struct units *const m = &paper->base->units;
    (void)paper_title(
        paper, sheet, 0,
        pool_words(&paper->book->pool,
                   "Areas in %s, the perimeter in %s. Sprayed: faces, edges and what the "
                   "profile adds.",
                   unit_name(m->area), paper_lengths(paper)));
    struct field_filled filled = {.from = &fields_leaf};
    for (size_t r = 0; r < paper->base->quantities.count; r++) {
        field_fill(&filled, &paper->base->quantities.leaves[r]);
    }
    const struct field_table fields = field_only(&filled); /* glass and bars only where some are */
    door_table(paper, sheet, &fields, FIELD_MORE);
}
