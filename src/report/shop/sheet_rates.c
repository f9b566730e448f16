/* SPDX-License-Identifier: MIT */
/* Every given of the files that the estimate used, with the words and the line it came from;
 * constants with their source; and the steps in between that no other sheet shows. */
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"
#include "report/words/show.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

/* The cell's name in formulas: `in_lumber_poplar_price`; a further value of the same line gets its
 * number. */
static const char *cell_name(const struct paper *paper, const struct setting *setting, size_t nth) {
    char name[200] = "in_";
    size_t used = 3;
    const char *const texts[] = {setting->section, setting->key};
    for (size_t t = 0; t < 2; t++) {
        for (size_t i = 0; texts[t][i] != '\0' && used + 8 < sizeof name; i++) {
            const char c = (char)tolower((unsigned char)texts[t][i]);
            const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
            if (plain) {
                name[used++] = c;
            } else if (name[used - 1] != '_') {
                name[used++] = '_';
            }
        }
    }
    while (used > 3 && name[used - 1] == '_') {
        used--;
    }
    name[used] = '\0';
    const char *const all = nth == 0 ? pool_text(&paper->book->pool, name, used)
                                     : pool_format(&paper->book->pool, "%s_%zu", name, nth + 1);
    return all == NULL ? "in_" : all;
}

static void put_given(const struct paper *paper, uint16_t sheet, uint32_t row, fig figure,
                      size_t nth, bool input) {
    struct book *const book = paper->book;
    const struct place place = tape_origin(&paper->base->tape, figure).place;
    const struct setting *const setting = show_setting(paper->base, figure);
    book_text(book, sheet, row, 0, LOOK_PLAIN, setting->section);
    book_text(book, sheet, row, 1, LOOK_PLAIN, setting->key);
    book_text(book, sheet, row, 2, LOOK_PLAIN, tape_label(&paper->base->tape, figure));
    book_set_home(book, sheet, row, VALUE_COLUMN, input ? LOOK_INPUT : LOOK_PLAIN, figure);
    if (input) {
        check_changed(paper, sheet, row, figure);
    }
    book_define(book, sheet, row, 3, cell_name(paper, setting, nth));
    book_text(book, sheet, row, 4, LOOK_UNIT, paper_unit(paper, figure));
    const struct shown learned = show_learned(paper->base, figure);
    book_format(book, sheet, row, 5, LOOK_NOTE, "%s:%u%s%s",
                paper_file(paper, show_settings(paper->base, place)->file_name), place.line,
                *learned.text == '\0' ? "" : ", learned ", learned.text);
    if (show_settings(paper->base, place) == &paper->base->rates->settings &&
        shipped_still(paper->base->rates, setting)) {
        book_text(book, sheet, row, 8, LOOK_NOTE, "as shipped");
    }
}

static int by_place(const struct tape *tape, fig a, fig b) {
    return place_order(tape_origin(tape, a).place, tape_origin(tape, b).place);
}

/* Insertion into an array sorted by place; there are a few hundred. */
static void insert(const struct tape *tape, fig *list, size_t count, fig figure) {
    size_t i = count;
    for (; i > 0 && by_place(tape, list[i - 1], figure) > 0; i--) {
        list[i] = list[i - 1];
    }
    list[i] = figure;
}

static uint32_t put_constants(const struct paper *paper, uint16_t sheet, uint32_t row) {
    const struct tape *const tape = &paper->base->tape;
    struct book *const book = paper->book;
    book_text(book, sheet, row++, 0, LOOK_SECTION, "Constants");
    for (uint32_t id = 1; id < tape->count; id++) {
        const fig figure = {id};
        const struct origin origin = tape_origin(tape, figure);
        if (tape_op(tape, (fig){id}) == OP_GIVEN && origin.source != NULL) {
            book_text(book, sheet, row, 0, LOOK_PLAIN, tape_label(tape, figure));
            book_set_home(book, sheet, row, 3, LOOK_PLAIN, figure);
            book_text(book, sheet, row, 4, LOOK_UNIT, paper_unit(paper, figure));
            book_text(book, sheet, row++, 5, LOOK_NOTE, origin.source);
        }
    }
    return row;
}

void sheet_rates(const struct paper *paper, uint16_t sheet) {
    static const char *const heads[] = {"section", "key",  "what it is here", "value",
                                        "unit",    "from", "changed?",        "as read"};
    const struct tape *const tape = &paper->base->tape;
    struct book *const book = paper->book;
    uint32_t row = paper_title(paper, sheet, 0,
                               "Cells on a light band may be changed, and every figure follows; "
                               "the rest needs another run.");
    book_width(book, sheet, 0, 24);
    book_width(book, sheet, 1, 17);
    book_width(book, sheet, 2, 28);
    book_width(book, sheet, 5, 30);
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    paper_headings(paper, sheet, row, 0);
    row++;
    fig *const list = pool_take(&book->pool, tape->origin_count + 1u, sizeof *list);
    size_t count = 0;
    for (uint32_t id = 1; list != NULL && id < tape->count; id++) {
        if (tape_op(tape, (fig){id}) == OP_GIVEN && show_setting(paper->base, (fig){id}) != NULL) {
            insert(tape, list, count++, (fig){id});
        }
    }
    bool *const inputs = check_inputs(tape);
    book->failed = book->failed || inputs == NULL;
    size_t nth = 0;
    for (size_t i = 0; inputs != NULL && i < count; i++) {
        const struct place place = tape_origin(tape, list[i]).place;
        const struct place before =
            i == 0 ? (struct place){0} : tape_origin(tape, list[i - 1]).place;
        nth = i > 0 && before.file == place.file && before.line == place.line ? nth + 1 : 0;
        put_given(paper, sheet, row++, list[i], nth, inputs[list[i].id]);
    }
    free(inputs);
    put_constants(paper, sheet, row + 1);
}

/* How a figure came about, for who reads no formulas. */
static const char *const how[OP_COUNT] = {
    [OP_GIVEN] = "read or measured",
    [OP_SUM] = "sum or difference",
    [OP_TOTAL] = "sum of count x each",
    [OP_RATIO] = "product or quotient",
    [OP_LARGER] = "the larger of two",
    [OP_SMALLER] = "the smaller of two",
    [OP_UP] = "up to whole steps",
    [OP_PICK_UPTO] = "from a table, up to a limit",
    [OP_PICK_FROM] = "from a table, from a limit on",
    [OP_CHOSEN] = FIELD_CHOSEN,
};

void sheet_workings(const struct paper *paper, uint16_t sheet) {
    static const char *const heads[] = {"about", "what", "value", "unit", "how"};
    const struct tape *const tape = &paper->base->tape;
    struct book *const book = paper->book;
    uint32_t row =
        paper_title(paper, sheet, 0,
                    "Figures that no other sheet shows, so that every formula can be followed.");
    book_width(book, sheet, 0, 26);
    book_width(book, sheet, 1, 38);
    book_width(book, sheet, 3, 12);
    book_width(book, sheet, 4, 26);
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    paper_headings(paper, sheet, row, 0);
    row++;
    book_assign_homes(book);
    for (uint32_t id = 1; !book_failed(book) && id < tape->count; id++) {
        const fig figure = {id};
        if (book_home(book, figure) != NULL) {
            continue;
        }
        book_text(book, sheet, row, 0, LOOK_PLAIN, tape_subject_name(tape, figure));
        book_text(book, sheet, row, 1, LOOK_PLAIN, tape_label(tape, figure));
        book_figure(book, sheet, row, 2, LOOK_PLAIN, figure);
        book_text(book, sheet, row, 3, LOOK_UNIT, paper_unit(paper, figure));
        book_text(book, sheet, row++, 4, LOOK_NOTE, how[tape_op(tape, (fig){id})]);
    }
}
