/* SPDX-License-Identifier: MIT */
/* What the checks of a workbook are about: the choices of the program, each with the numbers that
 * it was made for, and sums that must agree.  Sheets note them as they are laid out; the sheet
 * Checks lists them, number by number, and the first sheet says how all of them stand. */
#ifndef DOORCOST_REPORT_SHOP_CHECK_LIST_H
#define DOORCOST_REPORT_SHOP_CHECK_LIST_H

#include "report/xlsx/book.h"

enum check_holds { CHECK_SAME, CHECK_LEAST, CHECK_MOST };

/* A number that a choice was made for. */
struct check_condition {
    const char *what;
    fig now;
    int64_t made;     /* what it was, or may be at least or at most */
    uint8_t decimals; /* of made */
    enum check_holds holds;
};

struct check_choice {
    const char *about;
    size_t first, count; /* conditions */
    uint32_t row;        /* of the cell of its own sheet that repeats what the check says */
    uint16_t sheet, column;
    bool prices; /* the job's total hangs on it */
};

/* Cells that are added up again. */
struct check_sum {
    const char *what;
    const char *formula; /* over cells of other sheets */
    fig total;
};

struct check_list {
    struct check_choice *choices;
    size_t choice_count, choice_room;
    struct check_condition *conditions;
    size_t condition_count, condition_room;
    struct check_sum *sums;
    size_t sum_count, sum_room;
    uint32_t rates_last; /* the last row of the sheet Rates that has a mark */
    bool failed;         /* for want of memory */
};

/* Adds a choice; conditions that are added after it are its own. Texts are borrowed. */
void check_add_choice(struct check_list *list, const struct check_choice *choice);
/* Adds a number that the last choice was made for. */
void check_add_condition(struct check_list *list, const struct check_condition *condition);
/* Adds a sum. */
void check_add_sum(struct check_list *list, const struct check_sum *sum);
/* Frees it. */
void check_list_clear(struct check_list *list);

#endif
