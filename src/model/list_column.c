/* SPDX-License-Identifier: MIT */
#include "model/list_column.h"

/* Among so many sections of a kind a row has to choose. */
static bool chooses(size_t count) {
    return count > 1;
}

bool list_has_style(const struct rates *rates) {
    return rates == NULL || chooses(rates->style_count);
}

bool list_has_finish(const struct rates *rates) {
    return rates != NULL && chooses(rates->finish_count);
}

bool list_has_glass(const struct rates *rates) {
    return rates != NULL && chooses(rates->glass_count);
}

static const struct list_column columns[] = {
    {"id", false, NULL},
    {"room", false, NULL},
    {"use", false, NULL},
    {"count", false, NULL},
    {"width", true, NULL},
    {"height", true, NULL},
    {"leaves", false, NULL},
    {"hinge side", false, NULL},
    {"style", false, list_has_style},
    {"finish", false, list_has_finish},
    {"glass", false, list_has_glass},
};

const struct list_column *list_columns(size_t *count) {
    *count = sizeof columns / sizeof *columns;
    return columns;
}
