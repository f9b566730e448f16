/* SPDX-License-Identifier: MIT */
/* How all checks stand, number by number; what the program questions, and the cautions that the job
 * needs. */
#include "base/array.h"
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"

#include <xlsxwriter.h>

enum { COLUMN_ABOUT, COLUMN_WHAT, COLUMN_NOW, COLUMN_MADE, COLUMN_HOLDS, COLUMN_SAYS };

struct checks_page {
    const struct paper *paper;
    struct book *book;
    struct pool *pool;
    uint16_t sheet;
    uint32_t row;
};

static const char *cell_at(const struct checks_page *s, uint32_t row, uint16_t column) {
    char name[LXW_MAX_CELL_NAME_LENGTH];
    lxw_rowcol_to_cell(name, row, column);
    return pool_words(s->pool, "%s", name);
}

static void put_section(struct checks_page *s, const char *title) {
    book_text(s->book, s->sheet, s->row++, COLUMN_ABOUT, LOOK_SECTION, title);
}

/* --- what the choices were made for --- */

static void put_condition(struct checks_page *s, const struct check_condition *c) {
    static const char *const holds[] = {
        [CHECK_SAME] = "IF(ABS(%s-%s)" CHECK_SAME_AS ",\"ok\",\"no\")",
        /* half a last digit aside, for the same reason */
        [CHECK_LEAST] = "IF(%s>%s-limit_within,\"ok\",\"no\")",
        [CHECK_MOST] = "IF(%s<%s+limit_within,\"ok\",\"no\")",
    };
    const char *const now = cell_at(s, s->row, COLUMN_NOW);
    const char *const made = cell_at(s, s->row, COLUMN_MADE);
    book_text(s->book, s->sheet, s->row, COLUMN_WHAT, LOOK_PLAIN, c->what);
    book_mention(s->book, s->sheet, s->row, COLUMN_NOW, LOOK_PLAIN, c->now);
    book_number(s->book, s->sheet, s->row, COLUMN_MADE, LOOK_PLAIN,
                tape_unit(s->book->tape, c->now), c->decimals, c->made);
    book_check(s->book, s->sheet, s->row++, COLUMN_HOLDS, LOOK_CHECK,
               c->holds == CHECK_SAME    ? pool_words(s->pool, holds[CHECK_SAME], now, made)
               : c->holds == CHECK_LEAST ? pool_words(s->pool, holds[CHECK_LEAST], now, made)
                                         : pool_words(s->pool, holds[CHECK_MOST], now, made),
               "ok");
}

static void put_choice(struct checks_page *s, const struct check_choice *choice) {
    const uint32_t head = s->row;
    book_text(s->book, s->sheet, head, COLUMN_ABOUT, LOOK_LABEL, choice->about);
    if (choice->count == 0) {
        book_text(s->book, s->sheet, s->row++, COLUMN_WHAT, LOOK_PLAIN, "hangs on no input");
    }
    for (size_t i = 0; i < choice->count; i++) {
        put_condition(s, &s->paper->checks->conditions[choice->first + i]);
    }
    const char *const formula =
        pool_words(s->pool, "IF(COUNTIF(%s:%s,\"no\")=0,\"ok\",\"%srun again\")",
                   cell_at(s, head, COLUMN_HOLDS), cell_at(s, s->row - 1, COLUMN_HOLDS),
                   choice->prices ? "" : "plan: ");
    book_check(s->book, s->sheet, head, COLUMN_SAYS, LOOK_CHECK, formula, "ok");
    book_check(
        s->book, choice->sheet, choice->row, choice->column, LOOK_CHECK,
        pool_words(s->pool, "%s!%s", s->paper->tabs[s->sheet]->name, cell_at(s, head, COLUMN_SAYS)),
        "ok");
    book_keep(s->book, s->sheet, head, s->row - 1);
}

/* Returns how many of the choices may not hold, as a formula. */
static const char *put_choices(struct checks_page *s) {
    static const char *const heads[] = {"choice", "made for", "now", "when made", "holds", "so"};
    const struct check_list *const list = s->paper->checks;
    put_section(s, "What was chosen, and whether it still holds");
    paper_heads(s->paper, s->sheet, s->row++, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    const uint32_t first = s->row;
    for (size_t i = 0; i < list->choice_count; i++) {
        put_choice(s, &list->choices[i]);
    }
    const char *const range = pool_words(s->pool, "%s:%s", cell_at(s, first, COLUMN_SAYS),
                                         cell_at(s, s->row, COLUMN_SAYS));
    s->row += 2;
    return range;
}

/* --- sums --- */

static void put_sum(struct checks_page *s, const struct check_sum *sum) {
    const struct tape *const tape = s->book->tape;
    book_text(s->book, s->sheet, s->row, COLUMN_ABOUT, LOOK_PLAIN, sum->what);
    book_text(s->book, s->sheet, s->row, COLUMN_WHAT, LOOK_PLAIN, tape_label(tape, sum->total));
    book_formula(s->book, s->sheet, s->row, COLUMN_NOW, LOOK_PLAIN, tape_unit(tape, sum->total),
                 tape_decimals(tape, sum->total), tape_amount(tape, sum->total), sum->formula);
    book_mention(s->book, s->sheet, s->row, COLUMN_MADE, LOOK_PLAIN, sum->total);
    book_check(s->book, s->sheet, s->row, COLUMN_HOLDS, LOOK_CHECK,
               pool_words(s->pool, "IF(ABS(%s-%s)<sum_within,\"ok\",\"no\")",
                          cell_at(s, s->row, COLUMN_NOW), cell_at(s, s->row, COLUMN_MADE)),
               "ok");
    s->row++;
}

static const char *put_sums(struct checks_page *s) {
    static const char *const heads[] = {"added up again", "against", "sum", "stated", "agrees"};
    const struct check_list *const list = s->paper->checks;
    put_section(s, "Sums");
    paper_heads(s->paper, s->sheet, s->row++, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    const uint32_t first = s->row;
    for (size_t i = 0; i < list->sum_count; i++) {
        put_sum(s, &list->sums[i]);
    }
    const char *const range = pool_words(s->pool, "%s:%s", cell_at(s, first, COLUMN_HOLDS),
                                         cell_at(s, s->row, COLUMN_HOLDS));
    s->row += 2;
    return range;
}

/* --- how near is the same --- */

/* Formulas take these by name, here and on the sheet Rates. */
static void put_tolerances(struct checks_page *s) {
    static const struct {
        const char *about, *name;
        uint8_t decimals;
        int64_t value;
    } rows[] = {
        {"a number is as it was", "same_within", 7, 1},
        {"a limit is held", "limit_within", 5, 5},
        {"a sum agrees", "sum_within", 4, 5},
    };
    put_section(s, "How near is near enough");
    for (size_t i = 0; i < COUNT_OF(rows); i++) {
        book_text(s->book, s->sheet, s->row, COLUMN_ABOUT, LOOK_PLAIN, rows[i].about);
        book_number(s->book, s->sheet, s->row, COLUMN_NOW, LOOK_PLAIN, UNIT_COUNT, rows[i].decimals,
                    rows[i].value);
        book_define(s->book, s->sheet, s->row++, COLUMN_NOW, rows[i].name);
    }
}

/* --- all of them --- */

static const char *put_count(struct checks_page *s, const char *what, const char *formula) {
    const char *const at = cell_at(s, s->row, COLUMN_NOW);
    book_text(s->book, s->sheet, s->row, COLUMN_ABOUT, LOOK_PLAIN, what);
    book_formula(s->book, s->sheet, s->row++, COLUMN_NOW, LOOK_PLAIN, UNIT_COUNT, 0, 0, formula);
    return at;
}

static const char *count_if(struct checks_page *s, const char *range, const char *word) {
    return pool_words(s->pool, "COUNTIF(%s,\"%s\")", range, word);
}

/* The numbers that all checks come to; the state stands at `state`. */
static void put_counts(struct checks_page *s, uint32_t state, const char *choices,
                       const char *sums) {
    struct check_counts at;
    const fig total = s->paper->base->sale.total;
    const struct tape *const tape = s->book->tape;
    put_section(s, "All checks");
    at.again = put_count(s, "choices that may not hold", count_if(s, choices, "run again"));
    (void)put_count(s, "plans out of date that price nothing",
                    count_if(s, choices, "plan: run again"));
    at.sums = put_count(s, "sums that do not add up", count_if(s, sums, "no"));
    at.changed = put_count(s, "inputs that were changed", check_changed_count(s->paper));
    at.total = cell_at(s, s->row, COLUMN_HOLDS);
    book_text(s->book, s->sheet, s->row, COLUMN_ABOUT, LOOK_PLAIN, "total");
    put_condition(s, &(struct check_condition){.what = "now, and when it was made",
                                               .now = total,
                                               .made = tape_amount(tape, total),
                                               .decimals = tape_decimals(tape, total)});
    check_state(s->paper, s->sheet, state, COLUMN_ABOUT, &at);
    if (s->paper->option_count > 0) {
        check_options_state(s->paper, s->sheet, s->row++, COLUMN_ABOUT, at.changed);
    }
    s->row++;
}

/* --- what the program asks, and cautions --- */

/* The problems of a severity, a row each; returns the row after. */
static uint32_t put_problems(const struct paper *paper, uint16_t sheet, uint32_t row,
                             enum severity severity) {
    const struct problems *const problems = paper->problems;
    for (size_t i = 0; i < problems->count; i++) {
        const struct problem *const p = &problems->list[i];
        if (p->severity != severity) {
            continue;
        }
        book_format(paper->book, sheet, row, COLUMN_ABOUT, LOOK_NOTE, "%s%s",
                    paper_file(paper, problems_file_name(problems, p->place.file)),
                    problems_place(problems, p->place).text);
        const bool accepted = severity == SEVERITY_ACCEPTED;
        book_span(paper->book, sheet, row++, COLUMN_WHAT, COLUMN_SAYS,
                  accepted ? LOOK_WRAP : LOOK_WARN,
                  accepted ? pool_words(&paper->book->pool, "%s: %s", p->id, p->text) : p->text);
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
    book_text(book, sheet, row++, COLUMN_ABOUT, LOOK_SECTION, "Example prices");
    book_span(book, sheet, row++, COLUMN_ABOUT, COLUMN_SAYS, LOOK_WRAP,
              shipped_words(shipped, &book->pool));
    for (size_t i = 0; i < shipped->group_count; i++) {
        book_text(book, sheet, row, COLUMN_ABOUT, LOOK_PLAIN, shipped->groups[i].kind);
        book_span(book, sheet, row++, COLUMN_WHAT, COLUMN_SAYS, LOOK_WRAP,
                  shipped->groups[i].names);
    }
    return row + 1;
}

static void put_asked(struct checks_page *s) {
    put_section(s, "Questions about the list and the rates");
    const uint32_t first = s->row;
    s->row = put_problems(s->paper, s->sheet, s->row, SEVERITY_WARNING);
    if (s->row == first) {
        book_text(s->book, s->sheet, s->row++, COLUMN_ABOUT, LOOK_PLAIN, "none");
    }
    s->row++;
    if (problems_count(s->paper->problems, SEVERITY_ACCEPTED) > 0) {
        put_section(s, "Questions that the job accepts");
        s->row = put_problems(s->paper, s->sheet, s->row, SEVERITY_ACCEPTED) + 1;
    }
}

/* The rows that the counts take: their section, five lines, that of the options, a gap. */
static uint32_t counts_take(const struct paper *paper) {
    return paper->option_count > 0 ? 8 : 7;
}

void sheet_checks(const struct paper *paper, uint16_t sheet) {
    struct book *const book = paper->book;
    struct checks_page s = {.paper = paper, .book = book, .pool = &book->pool, .sheet = sheet};
    book_width(book, sheet, COLUMN_ABOUT, 34);
    book_width(book, sheet, COLUMN_WHAT, 34);
    book_width(book, sheet, COLUMN_NOW, 11);
    book_width(book, sheet, COLUMN_MADE, 11);
    book_width(book, sheet, COLUMN_SAYS, 14);
    const uint32_t counts = paper_title(paper, sheet, 0, NULL);
    /* questions come first, as they are to be answered; the counts know the rows of all others */
    s.row = counts + counts_take(paper) + 2;
    put_asked(&s);
    s.row = put_shipped(paper, sheet, s.row);
    s.row = paper_cautions(paper, sheet, s.row, COLUMN_SAYS, CAUTION_ALL) + 1;
    const char *const sums = put_sums(&s);
    const char *const choices = put_choices(&s);
    put_tolerances(&s);
    s.row = counts + 2;
    put_counts(&s, counts, choices, sums);
}
