/* SPDX-License-Identifier: MIT */
/* Solid panels: glued up of what, and how they move against their room in the grooves. */
#include "report/shop/paper.h"

#define WORDS 6

static const char *panel_note(const struct paper *paper, const struct movement *move) {
    const struct tape *const tape = &paper->base->tape;
    if (fig_none(move->swell)) {
        return "movement not known: no climate in the rates, or no such wood in the table";
    }
    if (tape_amount(tape, move->swell) > tape_amount(tape, move->room)) {
        return "no room: give more clearance across, or deeper grooves";
    }
    return tape_amount(tape, move->shrink) >= tape_amount(tape, move->hold)
               ? "comes out of its grooves: make them deeper, or the panel of two"
               : "";
}

static void panel_row(const struct paper *paper, uint16_t sheet, uint32_t at,
                      const struct leaf_figures *leaf, size_t i) {
    const struct part *const part = &leaf->door->parts[i];
    const struct part_figures *const f = &leaf->parts[i];
    struct book *const book = paper->book;
    book_text(book, sheet, at, 0, LOOK_LABEL, leaf->door->name);
    book_text(book, sheet, at, 1, LOOK_PLAIN, part_full_name(part));
    book_text(book, sheet, at, 2, LOOK_PLAIN, paper->base->rates->lumber[part->material].species.s);
    book_text(book, sheet, at, 3, LOOK_PLAIN, part->raised ? "raised" : "flat");
    book_mention(book, sheet, at, 4, LOOK_PLAIN, f->pieces);
    book_number(book, sheet, at, 5, LOOK_PLAIN, UNIT_COUNT, 0, part->staves);
    paper_cells(paper, sheet, at, WORDS, &fields_part, FIELD_MORE, f);
    const char *const note = part->kind == PART_PANEL ? panel_note(paper, &f->movement) : "";
    if (note[0] != '\0') {
        book_text(book, sheet, at, WORDS + (uint16_t)field_count(&fields_part, FIELD_MORE),
                  LOOK_WARN, note);
    }
}

static const char *climate_words(const struct paper *paper) {
    const struct climate *const climate = &paper->base->rates->climate;
    char air[2][32];
    char wood[32];
    if (!climate->driest.set || !climate->wettest.set || !climate->moisture.set) {
        return "The rates have no [climate]: how panels move is not known.";
    }
    return pool_words(
        &paper->book->pool,
        "Sizes in %s. Made up at %s %% moisture; air of %s to %s %% humidity at %s, from the "
        "[climate] of the rates. Boards taken as flat-sawn.",
        paper_lengths(paper),
        figure_text(climate->moisture.amount, climate->moisture.decimals, wood, sizeof wood),
        figure_text(climate->driest.amount, climate->driest.decimals, air[0], sizeof air[0]),
        figure_text(climate->wettest.amount, climate->wettest.decimals, air[1], sizeof air[1]),
        paper->base->units.lengths == LENGTH_MM ? "21 C" : "70 F");
}

static bool is_solid(const struct part *part) {
    return part->material_kind == MATERIAL_LUMBER && part_is_field(part->kind);
}

bool panels_any(const struct paper *paper) {
    const struct quantities *const q = &paper->base->quantities;
    bool any = false;
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            any = any || is_solid(&q->leaves[r].door->parts[i]);
        }
    }
    return any;
}

void sheet_panels(const struct paper *paper, uint16_t sheet) {
    static const char *const words[WORDS] = {"door",  "part",   "species",
                                             "edges", "pieces", "staves"};
    const struct quantities *const q = &paper->base->quantities;
    uint32_t row = paper_title(paper, sheet, 0, climate_words(paper));
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, words, WORDS);
    paper_columns(paper, sheet, row, WORDS, LOOK_HEAD, &fields_part, FIELD_MORE);
    paper_headings(paper, sheet, row++, 1);
    for (size_t r = 0; r < q->count; r++) {
        for (size_t i = 0; i < q->leaves[r].door->part_count; i++) {
            if (is_solid(&q->leaves[r].door->parts[i])) {
                panel_row(paper, sheet, row++, &q->leaves[r], i);
            }
        }
    }
}
