/* SPDX-License-Identifier: MIT */
#include "report/shop/check_list.h"

#include <stdlib.h>

void check_add_choice(struct check_list *list, const struct check_choice *choice) {
    list->choices = array_grow(list->choices, &list->choice_room, list->choice_count + 1,
                               sizeof *list->choices, &list->failed);
    if (!list->failed) {
        list->choices[list->choice_count] = *choice;
        list->choices[list->choice_count].first = list->condition_count;
        list->choices[list->choice_count++].count = 0;
    }
}

void check_add_condition(struct check_list *list, const struct check_condition *condition) {
    list->conditions =
        array_grow(list->conditions, &list->condition_room, list->condition_count + 1,
                   sizeof *list->conditions, &list->failed);
    if (!list->failed && list->choice_count > 0) {
        list->conditions[list->condition_count++] = *condition;
        list->choices[list->choice_count - 1].count++;
    }
}

void check_add_sum(struct check_list *list, const struct check_sum *sum) {
    list->sums = array_grow(list->sums, &list->sum_room, list->sum_count + 1, sizeof *list->sums,
                            &list->failed);
    if (!list->failed) {
        list->sums[list->sum_count++] = *sum;
    }
}

void check_list_clear(struct check_list *list) {
    free(list->choices);
    free(list->conditions);
    free(list->sums);
    *list = (struct check_list){0};
}
