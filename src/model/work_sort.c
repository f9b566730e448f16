/* SPDX-License-Identifier: MIT */
#include "model/work_sort.h"

#include "model/name.h"

static bool of_making(const struct rates *rates, int32_t operation) {
    for (size_t i = 0; i < rates->style_count; i++) {
        if (references_hold(&rates->styles[i].operations, operation)) {
            return true;
        }
    }
    return false;
}

static bool of_finishing(const struct rates *rates, int32_t operation) {
    for (size_t i = 0; i < rates->finish_count; i++) {
        if (references_hold(&rates->finishes[i].operations, operation)) {
            return true;
        }
    }
    return false;
}

enum work_sort work_sort_of(const struct rates *rates, int32_t operation) {
    if (references_hold(&rates->shop.operations, operation)) {
        return WORK_AROUND;
    }
    if (of_finishing(rates, operation)) {
        return WORK_FINISHING;
    }
    return of_making(rates, operation) ? WORK_MAKING : WORK_AROUND;
}

const char *work_sort_name(enum work_sort sort) {
    static const char *const names[] = {
        [WORK_MAKING] = "making", [WORK_FINISHING] = "finishing", [WORK_AROUND] = "around it"};
    return names[sort];
}
