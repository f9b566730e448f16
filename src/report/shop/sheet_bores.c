/* SPDX-License-Identifier: MIT */
/* Where doors are bored for their hinges, as the stops of a boring machine are set: only where that
 * is said. */
#include "report/shop/paper.h"
#include "report/words/bore_list.h"
#include "report/words/show.h"

enum { COLUMN_EDGE, COLUMN_AT, COLUMN_HINGES, COLUMN_GAP, COLUMN_DOORS };

bool bores_any(const struct paper *paper) {
    const struct quantities *const q = &paper->base->quantities;
    for (size_t r = 0; r < q->count; r++) {
        if (q->leaves[r].hinge_at != NULL) {
            return true;
        }
    }
    return false;
}

static void put_group(const struct paper *paper, uint16_t sheet, uint32_t row,
                      const struct bore_group *group) {
    struct book *const book = paper->book;
    char edge[64];
    book_text(book, sheet, row, COLUMN_EDGE, LOOK_UNIT,
              pool_words(&book->pool, "%s %s",
                         show_unbroken(group->edge, paper->base->units.lengths, edge, sizeof edge),
                         group->level ? "wide" : "high"));
    book_text(book, sheet, row, COLUMN_AT, LOOK_WRAP, group->places);
    book_number(book, sheet, row, COLUMN_HINGES, LOOK_PLAIN, UNIT_COUNT, 0, group->hinges);
    book_text(book, sheet, row, COLUMN_DOORS, LOOK_WRAP, group->doors);
}

void sheet_bores(const struct paper *paper, uint16_t sheet) {
    static const char *const heads[] = {"leaf", "hinges at", "hinges", "", "for"};
    static const double widths[] = {14, 40, 8, 1.5, 40};
    struct book *const book = paper->book;
    struct bore_list list;
    uint32_t row = paper_title(
        paper, sheet, 0,
        pool_words(&book->pool,
                   "Middle of each, in %s from the upper end of the finished leaf; where it hangs "
                   "level (wide), from its left end, as seen from the front.",
                   paper_lengths(paper)));
    row = paper_table(paper, sheet, row, heads, widths, sizeof heads / sizeof *heads);
    if (!bore_list_make(&list, &book->pool, paper->base)) {
        book->failed = true;
        return;
    }
    for (size_t i = 0; i < list.count; i++) {
        const struct hardware *const hinge = &paper->base->rates->hardware[list.groups[i].hinge];
        if (i == 0 || list.groups[i - 1].hinge != list.groups[i].hinge) {
            const char *const cup = bore_cup(&book->pool, hinge);
            row += i == 0 ? 0 : 1;
            book_keep(book, sheet, row, row + 1);
            book_text(
                book, sheet, row++, 0, LOOK_PART,
                pool_words(&book->pool, "%s%s%s", hinge->name.s, cup[0] == '\0' ? "" : ": ", cup));
        }
        put_group(paper, sheet, row++, &list.groups[i]);
    }
}
