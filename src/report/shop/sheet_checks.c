/* SPDX-License-Identifier: MIT */
/* What the program questions, and the cautions that the job needs. */
#include "report/shop/paper.h"

/* The problems of a severity, a row each; returns the row after. */
static uint32_t put_problems(const struct paper *paper, uint16_t sheet, uint32_t row,
                             enum severity severity) {
    const struct problems *const problems = paper->problems;
    for (size_t i = 0; i < problems->count; i++) {
        const struct problem *const p = &problems->list[i];
        if (p->severity != severity) {
            continue;
        }
        book_format(paper->book, sheet, row, 0, LOOK_NOTE, "%s:%u",
                    paper_file(paper, problems_file_name(problems, p->place.file)), p->place.line);
        if (severity == SEVERITY_ACCEPTED) {
            book_format(paper->book, sheet, row++, 1, LOOK_WRAP, "%s: %s", p->id, p->text);
        } else {
            book_text(paper->book, sheet, row++, 1, LOOK_WARN, p->text);
        }
    }
    return row;
}

/* What of invented rates the job still takes. */
static uint32_t put_shipped(const struct paper *paper, uint16_t sheet, uint32_t row) {
    struct book *const book = paper->book;
    if (!shipped_example(paper->base)) {
        return row;
    }
    const struct shipped *const shipped = &paper->shipped;
    row++;
    book_text(book, sheet, row++, 0, LOOK_SECTION, "Example prices");
    book_span(book, sheet, row++, 0, 1, LOOK_WRAP, shipped_words(shipped, &book->pool));
    for (size_t i = 0; i < shipped->group_count; i++) {
        book_text(book, sheet, row, 0, LOOK_PLAIN, shipped->groups[i].kind);
        book_text(book, sheet, row++, 1, LOOK_WRAP, shipped->groups[i].names);
    }
    return row;
}

void sheet_checks(const struct paper *paper, uint16_t sheet) {
    struct book *const book = paper->book;
    uint32_t row = paper_title(paper, sheet, 0, NULL);
    book_width(book, sheet, 0, 26);
    book_width(book, sheet, 1, 72);
    book_text(book, sheet, row++, 0, LOOK_SECTION, "Questions about the list and the rates");
    const uint32_t first = row;
    row = put_problems(paper, sheet, row, SEVERITY_WARNING);
    if (row == first) {
        book_text(book, sheet, row++, 0, LOOK_PLAIN, "none");
    }
    if (problems_count(paper->problems, SEVERITY_ACCEPTED) > 0) {
        row++;
        book_text(book, sheet, row++, 0, LOOK_SECTION, "Questions that the job accepts");
        row = put_problems(paper, sheet, row, SEVERITY_ACCEPTED);
    }
    row = put_shipped(paper, sheet, row);
    (void)paper_cautions(paper, sheet, row + 1, 1, CAUTION_ALL);
}
