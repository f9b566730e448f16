/* SPDX-License-Identifier: MIT */
#include "report/shop/check_cell.h"

#include "door/movement.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <xlsxwriter.h>

/* What the marks of changed inputs say. */
#define CHANGED "changed"
#define SMALL   "changed: under 1 %"
/* The cells that say how all checks stand, and how the options do. */
#define STATE         "state_of_checks"
#define OPTIONS_STATE "state_of_options"
#define MADE          "as the program made it"
#define OPTIONS_MADE  "options are as the program made them"

/* Whether a given of that unit may be changed in the workbook. */
static bool unit_is_input(enum unit unit) {
    switch (unit) {
    case UNIT_NUMBER:
    case UNIT_COUNT:
    case UNIT_IN:
    case UNIT_MM:
    case UNIT_FT:
    case UNIT_M:
        return false;
    default:
        return true;
    }
}

/* Whether a figure was chosen by the humidity that is its first operand. */
static bool is_moisture(const struct tape *tape, fig figure) {
    uint32_t output;
    return tape_op(tape, figure) == OP_CHOSEN &&
           tape_chooser(tape, figure, &output) == &moisture_chooser;
}

bool *check_inputs(const struct tape *tape) {
    bool *const inputs = calloc(tape->count, sizeof *inputs);
    for (uint32_t id = 1; inputs != NULL && id < tape->count; id++) {
        if (is_moisture(tape, (fig){id})) {
            inputs[tape_operand(tape, (fig){id}, 0).f.id] = false;
        } else {
            inputs[id] =
                tape_op(tape, (fig){id}) == OP_GIVEN && unit_is_input(tape_unit(tape, (fig){id}));
        }
    }
    return inputs;
}

static void same(const struct paper *paper, const char *what, fig figure) {
    const struct tape *const tape = &paper->base->tape;
    check_add_condition(paper->checks,
                        &(struct check_condition){.what = what,
                                                  .now = figure,
                                                  .made = tape_amount(tape, figure),
                                                  .decimals = tape_decimals(tape, figure)});
}

void check_containers(const struct paper *paper, uint16_t sheet, uint32_t row,
                      const struct product *product) {
    const struct tape *const tape = &paper->base->tape;
    struct pool *const pool = &paper->book->pool;
    check_add_choice(
        paper->checks,
        &(struct check_choice){.about = pool_words(pool, "containers of %s", product->title),
                               .sheet = sheet,
                               .row = row,
                               .column = CHECK_COLUMN,
                               .prices = true});
    check_add_condition(paper->checks,
                        &(struct check_condition){.what = "need, at least",
                                                  .now = product->to_buy,
                                                  .made = product_holds_from(tape, product),
                                                  .decimals = 4,
                                                  .holds = CHECK_LEAST});
    check_add_condition(paper->checks,
                        &(struct check_condition){.what = "need, at most",
                                                  .now = product->to_buy,
                                                  .made = tape_scaled(tape, product->bought, 4),
                                                  .decimals = 4,
                                                  .holds = CHECK_MOST});
    for (size_t i = 0; i < product->size_count; i++) {
        const char *const size = product->sizes->s[i].words;
        same(paper, pool_words(pool, "%s, volume", size), product->volumes[i]);
        same(paper, pool_words(pool, "%s, price", size), product->prices[i]);
    }
}

void check_spares(const struct paper *paper, uint16_t sheet, uint32_t row,
                  const struct spare_rails *rails) {
    const char *const lumber =
        paper->base->rates->lumber[rails->leaf->door->parts[rails->part].material].name.s;
    check_add_choice(
        paper->checks,
        &(struct check_choice){.about = pool_words(&paper->book->pool, "spare rails of %s", lumber),
                               .sheet = sheet,
                               .row = row,
                               .column = CHECK_COLUMN,
                               .prices = true});
    same(paper, "spoiled", rails->spoiled);
    same(paper, "lumber of a spare", rails->each);
    same(paper, "to set up once more", rails->setup_cost);
}

/* --- plans
 * ----------------------------------------------------------------------------------------------------------------
 */

/* Which figures are made from a given of the rates that may be changed, by their ids; NULL: out of
 * memory. Figures are made only from figures before them: one pass marks them all. */
static bool *mark_inputs(const struct tape *tape) {
    bool *const marks = check_inputs(tape);
    for (uint32_t id = 1; marks != NULL && id < tape->count; id++) {
        const enum figure_op op = tape_op(tape, (fig){id});
        if (op == OP_GIVEN) {
            marks[id] = marks[id] && tape_origin(tape, (fig){id}).place.file != 0;
        } else if (op != OP_CHOSEN) {
            for (size_t i = 0; !marks[id] && i < tape_operands(tape, (fig){id}); i++) {
                marks[id] = marks[tape_operand(tape, (fig){id}, i).f.id];
            }
        }
    }
    return marks;
}

/* Whether the job's total is made from what the planner gave with `chosen`. true, too, when memory
 * is out: then the check is the stricter one. */
static bool total_hangs_on(const struct paper *paper, fig chosen) {
    const struct tape *const tape = &paper->base->tape;
    bool *const made_from = calloc(tape->count, sizeof *made_from);
    uint32_t output;
    bool found = made_from == NULL;
    if (made_from != NULL) {
        made_from[paper->base->sale.total.id] = true;
    }
    for (uint32_t id = tape->count; made_from != NULL && id-- > 1;) {
        if (!made_from[id]) {
            continue;
        }
        const fig figure = {id};
        const bool choice = tape_op(tape, (fig){id}) == OP_CHOSEN;
        found =
            found ||
            (choice && tape_chooser(tape, figure, &output) == tape_chooser(tape, chosen, &output) &&
             tape_operand(tape, figure, 0).f.id == tape_operand(tape, chosen, 0).f.id &&
             tape_subject(tape, (fig){id}) == tape_subject(tape, chosen));
        for (size_t i = 0; i < tape_operands(tape, figure); i++) {
            made_from[tape_operand(tape, figure, i).f.id] = true;
        }
    }
    free(made_from);
    return found;
}

void check_plan(const struct paper *paper, uint16_t sheet, uint32_t row, fig chosen) {
    const struct tape *const tape = &paper->base->tape;
    bool *const from_input = mark_inputs(tape);
    if (from_input == NULL) {
        paper->book->failed = true;
        return;
    }
    check_add_choice(
        paper->checks,
        &(struct check_choice){.about = pool_words(&paper->book->pool, "cutting plan of %s",
                                                   tape_subject_name(tape, chosen)),
                               .sheet = sheet,
                               .row = row,
                               .column = CHECK_PLAN_COLUMN,
                               .prices = total_hangs_on(paper, chosen)});
    for (size_t i = 0; i < tape_operands(tape, chosen); i++) {
        const fig operand = tape_operand(tape, chosen, i).f;
        if (from_input[operand.id]) {
            same(paper, tape_label(tape, operand), operand);
        }
    }
    free(from_input);
}

/* --- the rest
 * ----------------------------------------------------------------------------------------------------------------
 */

void check_changed(const struct paper *paper, uint16_t sheet, uint32_t row, fig figure) {
    const struct tape *const tape = &paper->base->tape;
    const int64_t was = tape_scaled(tape, figure, 6);
    char value[LXW_MAX_CELL_NAME_LENGTH];
    char read[LXW_MAX_CELL_NAME_LENGTH];
    char other[120] = "\"" CHANGED "\"";
    lxw_rowcol_to_cell(value, row, VALUE_COLUMN);
    lxw_rowcol_to_cell(read, row, CHANGED_COLUMN + 1);
    /* 0.05 where 5 was meant is seen, unless such a percent stood there before */
    if (tape_unit(tape, figure) == UNIT_PERCENT && (was <= 0 || was >= 1000000)) {
        (void)snprintf(other, sizeof other, "IF(AND(%s>0,%s<1),\"%s\",\"" CHANGED "\")", value,
                       value, SMALL);
    }
    book_check(paper->book, sheet, row, CHANGED_COLUMN, LOOK_NOTE,
               pool_words(&paper->book->pool, "IF(ABS(%s-%s)" CHECK_SAME_AS ",\"as read\",%s)",
                          value, read, other),
               "as read");
    book_number(paper->book, sheet, row, CHANGED_COLUMN + 1, LOOK_NOTE, tape_unit(tape, figure),
                tape_decimals(tape, figure), tape_amount(tape, figure));
    paper->checks->rates_last = row;
}

const char *check_changed_count(const struct paper *paper) {
    const int c = 'A' + CHANGED_COLUMN;
    const uint32_t last = paper->checks->rates_last + 1;
    return pool_words(&paper->book->pool,
                      "COUNTIF(Rates!%c1:%c%u,\"%s\")+COUNTIF(Rates!%c1:%c%u,\"%s\")", c, c, last,
                      CHANGED, c, c, last, SMALL);
}

void check_all(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
               enum look look) {
    book_check(paper->book, sheet, row, column, look, STATE, MADE);
}

void check_options(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column) {
    book_check(paper->book, sheet, row, column, LOOK_NOTE, OPTIONS_STATE, OPTIONS_MADE);
}

void check_state(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 const struct check_counts *at) {
    book_check(paper->book, sheet, row, column, LOOK_STATE,
               pool_words(&paper->book->pool,
                          "IF(%s>0,\"figures were changed: run again\",IF(%s>0,\"sums do not add "
                          "up: run again\",IF(OR(%s>0,%s=\"no\"),\"changed since it was "
                          "made\",\"" MADE "\")))",
                          at->again, at->sums, at->changed, at->total),
               MADE);
    book_define(paper->book, sheet, row, column, STATE);
}

void check_options_state(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                         const char *changed) {
    book_check(paper->book, sheet, row, column, LOOK_CHECK,
               pool_words(&paper->book->pool,
                          "IF(%s>0,\"figures were changed, options were not: run "
                          "again\",\"" OPTIONS_MADE "\")",
                          changed),
               OPTIONS_MADE);
    book_define(paper->book, sheet, row, column, OPTIONS_STATE);
}
