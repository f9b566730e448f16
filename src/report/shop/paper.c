/* SPDX-License-Identifier: MIT */
#include "report/shop/paper.h"

#include <stdio.h>
#include <string.h>

fig paper_at(const void *thing, size_t offset) {
    fig figure;
    memcpy(&figure, (const char *)thing + offset, sizeof figure);
    return figure;
}

const char *paper_unit(const struct paper *paper, fig figure) {
    const enum unit unit = tape_unit(&paper->base->tape, figure);
    if (unit == UNIT_MONEY) {
        return paper->base->rates->shop.currency.s;
    }
    return unit == UNIT_PERCENT ? "" : unit_name(unit); /* a percent shows its sign in the cell */
}

uint32_t paper_lines(const struct paper *paper, uint16_t sheet, uint32_t row,
                     const struct paper_line *lines, size_t count, const void *thing) {
    for (size_t i = 0; i < count; i++) {
        const fig figure = paper_at(thing, lines[i].offset);
        if (fig_none(figure)) {
            continue;
        }
        const enum look words =
            lines[i].look == LOOK_TOTAL || lines[i].look == LOOK_GRAND ? LOOK_LABEL : LOOK_PLAIN;
        book_text(paper->book, sheet, row, 0, words, lines[i].label);
        book_figure(paper->book, sheet, row, 1, lines[i].look, figure);
        book_text(paper->book, sheet, row, 2, LOOK_UNIT, paper_unit(paper, figure));
        if (lines[i].note != NULL) {
            book_text(paper->book, sheet, row, 3, LOOK_NOTE, lines[i].note);
        }
        row++;
    }
    return row;
}

uint32_t paper_title(const struct paper *paper, uint16_t sheet, const char *title,
                     const char *note) {
    book_text(paper->book, sheet, 0, 0, LOOK_TITLE, title);
    if (note != NULL) {
        book_text(paper->book, sheet, 1, 0, LOOK_NOTE, note);
        return 3;
    }
    return 2;
}

void paper_heads(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 enum look look, const char *const *heads, size_t count) {
    for (size_t i = 0; i < count; i++) {
        book_text(paper->book, sheet, row, (uint16_t)(column + i), look, heads[i]);
    }
}

const char *paper_lengths(const struct paper *paper) {
    return paper->base->measures.lengths == LENGTH_MM ? "mm" : "inches";
}

const char *use_name(enum use use) {
    static const char *const names[] = {"door", "drawer front", "false front", "end panel"};
    return names[use];
}

const char *waste_words(enum waste_as as) {
    return as == WASTE_ADDED ? "of net, added to it" : "of what is bought, lost";
}
