/* SPDX-License-Identifier: MIT */
#include "report/shop/check_cell.h"

#include "door/movement.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <xlsxwriter.h>

/* A cell and the number that it had are the same when they differ by less than any figure can:
 * programs don't read 0.07 to the same last bit. */
#define SAME "<0.0000001"
/* Of the check of a plan: one for the price of each size of board, and a few more. */
#define LONGEST_CONDITION 80
/* What the marks of changed inputs say. */
#define CHANGED "changed"
#define SMALL   "changed: under 1 %"
/* Sheets of materials and rates have no more rows than the larger of this and the four that the
 * most spacious takes for a given of the files; a sheet ends at the last. */
#define USUAL_ROWS ((uint32_t)20000)
#define SHEET_ROWS ((uint32_t)1048576)

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

bool check_is_input(const struct tape *tape, fig figure) {
    if (!unit_is_input(tape_unit(tape, figure))) {
        return false;
    }
    for (uint32_t id = 1; id < tape->count; id++) {
        if (is_moisture(tape, (fig){id}) && tape_operand(tape, (fig){id}, 0).f.id == figure.id) {
            return false;
        }
    }
    return true;
}

/* The least need that has the same choice, at 4 decimals as needs are kept. */
static int64_t holds_from(const struct tape *tape, const struct product *product) {
    struct container_size sizes[MOST_CONTAINER_SIZES];
    for (size_t i = 0; i < product->size_count; i++) {
        sizes[i] = (struct container_size){.volume = tape_scaled(tape, product->volumes[i], 6),
                                           .price = tape_scaled(tape, product->prices[i], 6)};
    }
    return containers_hold_from(tape_scaled(tape, product->need, 6), 100, sizes,
                                product->size_count) /
           100;
}

void check_containers(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t need,
                      uint16_t price, const struct product *product) {
    const struct tape *const tape = &paper->base->tape;
    char text[1024];
    char cell[LXW_MAX_CELL_NAME_LENGTH];
    char least[32];
    char most[32];
    char value[32];
    size_t used = 0;
    lxw_rowcol_to_cell(cell, row, need);
    /* half a last digit aside, for the same reason */
    (void)figure_text(holds_from(tape, product) * 10 - 5, 5, least, sizeof least);
    (void)figure_text(tape_scaled(tape, product->bought, 4) * 10 + 5, 5, most, sizeof most);
    used += (size_t)snprintf(text, sizeof text, "IF(AND(%s>%s,%s<%s", cell, least, cell, most);
    for (size_t i = 0; i < product->size_count; i++) {
        lxw_rowcol_to_cell(cell, row + (uint32_t)i, (lxw_col_t)(price - 1));
        used += (size_t)snprintf(text + used, sizeof text - used, ",ABS(%s-%s)" SAME, cell,
                                 tape_text(tape, product->volumes[i], value, sizeof value));
        lxw_rowcol_to_cell(cell, row + (uint32_t)i, price);
        used += (size_t)snprintf(text + used, sizeof text - used, ",ABS(%s-%s)" SAME, cell,
                                 tape_text(tape, product->prices[i], value, sizeof value));
    }
    (void)snprintf(text + used, sizeof text - used, "),\"ok\",\"run again\")");
    book_check(paper->book, sheet, row, CHECK_COLUMN, LOOK_CHECK, text, "ok");
}

/* --- plans
 * ----------------------------------------------------------------------------------------------------------------
 */

/* Which figures are made from a given of the rates that may be changed, by their ids; NULL: out of
 * memory. Figures are made only from figures before them: one pass marks them all. */
static bool *mark_inputs(const struct tape *tape) {
    bool *const marks = calloc(tape->count, sizeof *marks);
    bool *const humidity = calloc(tape->count, sizeof *humidity);
    for (uint32_t id = 1; humidity != NULL && id < tape->count; id++) {
        if (is_moisture(tape, (fig){id})) {
            humidity[tape_operand(tape, (fig){id}, 0).f.id] = true;
        }
    }
    for (uint32_t id = 1; marks != NULL && humidity != NULL && id < tape->count; id++) {
        const enum figure_op op = tape_op(tape, (fig){id});
        if (op == OP_GIVEN) {
            marks[id] = tape_origin(tape, (fig){id}).place.file != 0 && !humidity[id] &&
                        unit_is_input(tape_unit(tape, (fig){id}));
        } else if (op != OP_CHOSEN) {
            for (size_t i = 0; !marks[id] && i < tape_operands(tape, (fig){id}); i++) {
                marks[id] = marks[tape_operand(tape, (fig){id}, i).f.id];
            }
        }
    }
    if (humidity == NULL) {
        free(marks);
        return NULL;
    }
    free(humidity);
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
    char text[LONGEST_CONDITION * (LUMBER_PLAN_SIZES + 8)];
    char value[32];
    bool *const from_input = mark_inputs(tape);
    if (from_input == NULL) {
        paper->book->failed = true;
        return;
    }
    size_t used = (size_t)snprintf(text, sizeof text, "IF(AND(TRUE");
    for (size_t i = 0; i < tape_operands(tape, chosen); i++) {
        const fig operand = tape_operand(tape, chosen, i).f;
        if (from_input[operand.id]) {
            assert(used + 2 * (size_t)LONGEST_CONDITION < sizeof text);
            used += (size_t)snprintf(text + used, sizeof text - used, ",ABS({%u}-%s)" SAME,
                                     operand.id, tape_text(tape, operand, value, sizeof value));
        }
    }
    free(from_input);
    (void)snprintf(text + used, sizeof text - used, "),\"ok\",\"%srun again\")",
                   total_hangs_on(paper, chosen) ? "" : "plan: ");
    book_check(paper->book, sheet, row, CHECK_PLAN_COLUMN, LOOK_CHECK, text, "ok");
}

/* --- the rest
 * ----------------------------------------------------------------------------------------------------------------
 */

void check_changed(const struct paper *paper, uint16_t sheet, uint32_t row, fig figure) {
    const struct tape *const tape = &paper->base->tape;
    const int64_t was = tape_scaled(tape, figure, 6);
    char other[120] = "\"" CHANGED "\"";
    char text[240];
    char value[32];
    /* 0.05 where 5 was meant is seen, unless such a percent stood there before */
    if (tape_unit(tape, figure) == UNIT_PERCENT && (was <= 0 || was >= 1000000)) {
        (void)snprintf(other, sizeof other, "IF(AND({%u}>0,{%u}<1),\"%s\",\"" CHANGED "\")",
                       figure.id, figure.id, SMALL);
    }
    (void)snprintf(text, sizeof text, "IF(ABS({%u}-%s)" SAME ",\"as read\",%s)", figure.id,
                   tape_text(tape, figure, value, sizeof value), other);
    book_check(paper->book, sheet, row, CHANGED_COLUMN, LOOK_NOTE, text, "as read");
}

/* A row below all that the checks of these sheets stand in. */
static uint32_t last_row(const struct tape *tape) {
    const uint64_t rows = 4 * (uint64_t)tape->origin_count;
    const uint64_t most = rows > USUAL_ROWS ? rows : USUAL_ROWS;
    return most > SHEET_ROWS ? SHEET_ROWS : (uint32_t)most;
}

/* Whether any input was changed: how many marks say so. */
static void count_changed(char *text, size_t size, uint32_t last) {
    const int c = 'A' + CHANGED_COLUMN;
    (void)snprintf(text, size, "COUNTIF(Rates!%c1:%c%u,\"%s\")+COUNTIF(Rates!%c1:%c%u,\"%s\")>0", c,
                   c, last, CHANGED, c, c, last, SMALL);
}

void check_all(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column) {
    const struct tape *const tape = &paper->base->tape;
    const fig total = paper->base->sale.total;
    const uint32_t last = last_row(tape);
    const int finish = 'A' + CHECK_COLUMN;
    const int plan = 'A' + CHECK_PLAN_COLUMN;
    char value[32];
    char changed[120];
    char text[480];
    count_changed(changed, sizeof changed, last);
    (void)snprintf(text, sizeof text,
                   "IF(COUNTIF(Finish!%c1:%c%u,\"run again\")+COUNTIF(Lumber!%c1:%c%u,\"run "
                   "again\")+COUNTIF(Sheets!%c1:%c%u,\"run again\")>0,\"figures were changed: run "
                   "again\",IF(OR(%s,ABS({%u}-%s)>0.004),\"changed since it was made\",\"as the "
                   "program made it\"))",
                   finish, finish, last, plan, plan, last, plan, plan, last, changed, total.id,
                   tape_text(tape, total, value, sizeof value));
    book_check(paper->book, sheet, row, column, LOOK_NOTE, text, "as the program made it");
}

void check_options(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column) {
    const uint32_t last = last_row(&paper->base->tape);
    char changed[120];
    char text[280];
    count_changed(changed, sizeof changed, last);
    (void)snprintf(text, sizeof text,
                   "IF(%s,\"figures were changed, options were not: run again\",\"options are as "
                   "the program made them\")",
                   changed);
    book_check(paper->book, sheet, row, column, LOOK_NOTE, text,
               "options are as the program made them");
}
