/* SPDX-License-Identifier: MIT */
/* The cut list for the saw, by width and by length; and what machines are set up for, in the order
 * of the work. */
#include "base/length.h"
#include "model/name.h"
#include "report/shop/paper.h"
#include "report/words/cut_list.h"
#include "report/words/show.h"

enum {
    COLUMN_STOP,
    COLUMN_LENGTH,
    COLUMN_WIDTH,
    COLUMN_PIECES,
    COLUMN_ROUGH_LENGTH,
    COLUMN_ROUGH_WIDTH,
    COLUMN_GAP,
    COLUMN_PART,
    COLUMN_DOORS
};

static void put_length(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                       enum look look, length value) {
    const struct units *const units = &paper->base->units;
    book_number(paper->book, sheet, row, column, look, units->length, 6,
                length_millionths(value, units->lengths));
}

static void put_count(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                      enum look look, int64_t count) {
    book_number(paper->book, sheet, row, column, look, UNIT_COUNT, 0, count);
}

/* Lists of sizes are broken over lines, a size is not. */
static const char *show_nm(const struct paper *paper, length value, char *text, size_t size) {
    return show_unbroken(value, paper->base->units.lengths, text, size);
}

/* The fence, widest strips first: `2 3/8 (80 strips, 163 ft)`. */
static uint32_t put_fences(const struct paper *paper, uint16_t sheet, uint32_t row,
                           const struct cut_run *stock) {
    struct book *const book = paper->book;
    const bool mm = paper->base->units.lengths == LENGTH_MM;
    const int64_t unit = mm ? (int64_t)1000 * NM_PER_MM : (int64_t)12 * 64 * NM_PER_64TH;
    const char *words = stock->kind == MATERIAL_LUMBER ? "Rip to" : "Fence";
    for (size_t i = 0; i < stock->fence_count; i++) {
        const struct cut_fence *const f = &stock->fences[i];
        char width[64];
        words = pool_words(&book->pool, "%s%s %s (%lld x, %lld %s)", words, i == 0 ? "" : ",",
                           show_nm(paper, f->width, width, sizeof width), (long long)f->strips,
                           (long long)((f->run + unit - 1) / unit), mm ? "m" : "ft");
    }
    book_span(book, sheet, row, 0, COLUMN_DOORS, LOOK_WRAP, words);
    return row + 1;
}

static void put_gang(const struct paper *paper, uint16_t sheet, uint32_t row, int64_t stop,
                     const struct cut_gang *gang, bool rough) {
    struct book *const book = paper->book;
    if (gang->stop) {
        put_count(paper, sheet, row, COLUMN_STOP, LOOK_PLAIN, stop);
        put_length(paper, sheet, row, COLUMN_LENGTH, LOOK_LABEL, gang->length);
        if (rough) {
            put_length(paper, sheet, row, COLUMN_ROUGH_LENGTH, LOOK_PLAIN, gang->rough_length);
        }
    }
    put_length(paper, sheet, row, COLUMN_WIDTH, LOOK_PLAIN, gang->width);
    put_count(paper, sheet, row, COLUMN_PIECES, LOOK_LABEL, gang->pieces);
    if (rough) {
        put_length(paper, sheet, row, COLUMN_ROUGH_WIDTH, LOOK_PLAIN, gang->rough_width);
    }
    book_text(book, sheet, row, COLUMN_PART, LOOK_WRAP, gang->parts);
    book_text(book, sheet, row, COLUMN_DOORS, LOOK_WRAP, gang->doors);
}

static uint32_t put_stock(const struct paper *paper, uint16_t sheet, uint32_t row,
                          const struct cut_run *stock) {
    struct book *const book = paper->book;
    const uint32_t first = row;
    char thick[64];
    int64_t stop = 0;
    book_format(book, sheet, row++, 0, LOOK_PART, "%s, %s thick",
                material_name(paper->base->rates, stock->kind, stock->material),
                show_nm(paper, stock->thickness, thick, sizeof thick));
    row = put_fences(paper, sheet, row, stock);
    book_keep(book, sheet, first, row + 1);
    for (size_t i = 0; i < stock->gang_count; i++) {
        stop += stock->gangs[i].stop ? 1 : 0;
        put_gang(paper, sheet, row++, stop, &stock->gangs[i], stock->kind == MATERIAL_LUMBER);
    }
    return row + 1;
}

void sheet_cut(const struct paper *paper, uint16_t sheet) {
    static const char *const heads[] = {"stop",        "length", "width", "pieces", "rough length",
                                        "rough width", "",       "part",  "for"};
    static const double widths[] = {5, 9, 9, 7, 9, 9, 1.5, 24, 32};
    struct book *const book = paper->book;
    struct cut_list list;
    uint32_t row = paper_title(
        paper, sheet, 0,
        pool_words(&book->pool,
                   "Sizes in %s, along the grain first. A gang is a line: cut together. Strips and "
                   "runs have no kerf.",
                   paper_lengths(paper)));
    row = paper_table(paper, sheet, row, heads, widths, sizeof heads / sizeof *heads);
    if (!cut_list_make(&list, &book->pool, paper->base)) {
        book->failed = true;
        return;
    }
    for (size_t i = 0; i < list.count; i++) {
        row = put_stock(paper, sheet, row, &list.stocks[i]);
    }
    if (list.count == 0) {
        book_text(book, sheet, row, 0, LOOK_PLAIN, "nothing is cut in this job");
    }
}

/* --- set-ups --- */

enum {
    SETUP_ORDER,
    SETUP_OPERATION,
    SETUP_MACHINE,
    SETUP_COUNT_,
    SETUP_MINUTES,
    SETUP_GAP,
    SETUP_AT
};

static const char *setup_words(const struct paper *paper, const struct operation_figures *o) {
    static const char *const per[SETUP_PER_COUNT] = {
        [SETUP_PER_JOB] = "once",
        [SETUP_PER_MATERIAL] = "each material",
        [SETUP_PER_THICKNESS] = "thickness",
        [SETUP_PER_WIDTH] = "width",
        [SETUP_PER_LENGTH] = "length",
        [SETUP_PER_STYLE] = "each style",
        [SETUP_PER_COAT] = "each coat's mix",
        [SETUP_PER_COLOR] = "each color",
    };
    const struct operation *const op = &paper->base->rates->operations[o->operation];
    const char *words = per[op->setup_per.choice];
    for (size_t i = 0; i < o->setup_at_count; i++) {
        char at[64];
        words = pool_words(&paper->book->pool, "%s%s %s", words, i == 0 ? "" : ",",
                           show_nm(paper, o->setup_at[i], at, sizeof at));
    }
    return words;
}

void sheet_setups(const struct paper *paper, uint16_t sheet) {
    static const char *const heads[] = {"no.",     "operation", "machine", "set-ups",
                                        "minutes", "",          "for"};
    struct book *const book = paper->book;
    const struct labor *const labor = &paper->base->labor;
    const struct rates *const rates = paper->base->rates;
    uint32_t row = paper_title(
        paper, sheet, 0,
        pool_words(&book->pool, "In the order of the work; sizes in %s, finished, largest first.",
                   paper_lengths(paper)));
    int64_t order = 0;
    book_width(book, sheet, SETUP_ORDER, 4);
    book_width(book, sheet, SETUP_OPERATION, 16);
    book_width(book, sheet, SETUP_MACHINE, 16);
    book_width(book, sheet, SETUP_GAP, 1.5);
    book_width(book, sheet, SETUP_AT, 54);
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    paper_headings(paper, sheet, row++, 0);
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        if (fig_none(o->setups)) {
            continue;
        }
        const struct operation *const op = &rates->operations[o->operation];
        put_count(paper, sheet, row, SETUP_ORDER, LOOK_PLAIN, ++order);
        book_text(book, sheet, row, SETUP_OPERATION, LOOK_UNIT, op->name.s);
        book_text(book, sheet, row, SETUP_MACHINE, LOOK_PLAIN,
                  op->machine < 0 ? "by hand" : rates->machines[op->machine].name.s);
        book_mention(book, sheet, row, SETUP_COUNT_, LOOK_PLAIN, o->setups);
        book_mention(book, sheet, row, SETUP_MINUTES, LOOK_PLAIN, o->setup_minutes);
        book_text(book, sheet, row++, SETUP_AT, LOOK_WRAP, setup_words(paper, o));
    }
    (void)paper_cautions(paper, sheet, row + 1, SETUP_AT, CAUTION_SHOP);
}
