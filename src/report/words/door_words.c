/* SPDX-License-Identifier: MIT */
#include "report/words/door_words.h"

#include "base/text.h"
#include "report/words/show.h"

#include <assert.h>

const char *show_use(enum use use) {
    static const char *const names[] = {[USE_DOOR] = "door",
                                        [USE_DRAWER_FRONT] = "drawer front",
                                        [USE_FALSE_FRONT] = "false front",
                                        [USE_END_PANEL] = "end panel"};
    assert(use <= USE_END_PANEL);
    return names[use];
}

const char *show_door(const struct door *door) {
    static const char *const level[][2] = {
        [OPENS_LIFT_UP] = {"lift-up door", "lift-up front"},
        [OPENS_TILT_OUT] = {"tilt-out door", "tilt-out front"},
        [OPENS_DROP_DOWN] = {"drop-down door", "drop-down front"},
    };
    static const char *const folding[][2] = {
        [OPENS_BI_FOLD] = {"bi-fold pair, hung leaf", "bi-fold pair, folding leaf"},
        [OPENS_PIE_CUT] = {"pie-cut pair, hung leaf", "pie-cut pair, folding leaf"},
    };
    const struct row *const row = door->row;
    const int opens = row->opens.choice;
    if (row_folds(row)) {
        return folding[opens][door->role];
    }
    return row_hangs_level(row) ? level[opens][row->use.choice == USE_DOOR ? 0 : 1]
                                : show_use((enum use)row->use.choice);
}

const char *show_opening(struct pool *pool, const struct door *door) {
    const int opens = door->row->opens.choice;
    const char *const pair = door->leaves > 1 ? "pair of " : "";
    const char *const several = door->leaves > 1 ? "s" : "";
    if (opens == OPENS_PIE_CUT) {
        return "pie-cut pair of doors";
    }
    if (opens == OPENS_BI_FOLD) {
        return door->leaves > 1 ? "two bi-fold pairs of doors" : "bi-fold pair of doors";
    }
    return text_or_empty(pool_format(pool, "%s%s%s", pair, show_door(door), several));
}

const char *show_leaf_sizes(struct pool *pool, const struct door *door, enum length_unit unit) {
    const struct door *const left =
        door->row->hinge_side.choice == HINGE_SIDE_RIGHT ? door->beside : door;
    char width[32];
    if (door->beside == NULL || door->beside->width == door->width) {
        return pool_format(pool, "%s", show_size(door->width, door->height, unit).text);
    }
    return pool_format(pool, "%s and %s", length_show(left->width, unit, width, sizeof width),
                       show_size(left->beside->width, door->height, unit).text);
}

const char *show_note(const struct door *door) {
    return door->role == LEAF_FOLDING ? "" : text_or_empty(door->row->note.s);
}

const char *show_remark(const struct door *door) {
    return door->role == LEAF_FOLDING ? "" : text_or_empty(door->row->remark.s);
}

const char *show_opens(enum opens opens) {
    static const char *const names[] = {
        [OPENS_HINGED] = "hinged",       [OPENS_LIFT_UP] = "lift up", [OPENS_TILT_OUT] = "tilt out",
        [OPENS_DROP_DOWN] = "drop down", [OPENS_BI_FOLD] = "bi-fold", [OPENS_PIE_CUT] = "pie cut"};
    assert(opens <= OPENS_PIE_CUT);
    return names[opens];
}

const char *show_leaf(const struct door *door) {
    if (door->beside == NULL) {
        return NULL;
    }
    return door->role == LEAF_HUNG ? "hung leaf" : "folding leaf";
}

const char *show_hung(const struct door *door) {
    static const char *const sides[] = {
        [HINGE_SIDE_OPEN] = NULL,
        [HINGE_SIDE_LEFT] = "left",
        [HINGE_SIDE_RIGHT] = "right",
        [HINGE_SIDE_PAIR] = "pair",
    };
    const struct row *const row = door->row;
    if (!row_is_hinged(row)) {
        return NULL;
    }
    if (row_hangs_level(row)) {
        return row->opens.choice == OPENS_LIFT_UP ? "top" : "bottom";
    }
    if (door->role == LEAF_FOLDING) {
        return "hung leaf";
    }
    return sides[door->leaves > 1 ? HINGE_SIDE_PAIR : row->hinge_side.choice];
}
