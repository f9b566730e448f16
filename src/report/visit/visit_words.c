/* SPDX-License-Identifier: MIT */
#include "report/visit/visit_parts.h"

#include "model/list_column.h"
#include "model/name.h"
#include "model/size_step.h"

#define BLANK "________"

/* `1/2`, or a line to write on. */
static const char *known(struct pool *pool, const struct value *value, enum length_unit unit) {
    char text[32];
    return value == NULL || !value->set
               ? BLANK
               : pool_words(pool, "%s", length_show(value->amount, unit, text, sizeof text));
}

static bool overlays_equal(const struct construction *c) {
    for (size_t i = 1; i < SIDE_COUNT; i++) {
        if (c->overlay[i].set != c->overlay[0].set ||
            c->overlay[i].amount != c->overlay[0].amount) {
            return false;
        }
    }
    return true;
}

const char *visit_fit_words(const struct visit *v, struct pool *pool) {
    const enum length_unit unit = v->unit;
    const struct construction *const c = v->job == NULL ? NULL : &v->job->construction;
    const char *const gap = known(pool, c == NULL ? NULL : &c->gap, unit);
    if (c == NULL || !c->fit.set) {
        return pool_words(pool,
                          "Overlay, each side: " BLANK "   or inset, reveal each side: " BLANK
                          "   gap between the leaves of a pair: %s",
                          gap);
    }
    if (c->fit.choice == FIT_INSET) {
        return pool_words(pool,
                          "Inset, reveal each side: %s   gap between the leaves of a pair: %s",
                          known(pool, &c->reveal, unit), gap);
    }
    if (overlays_equal(c)) {
        return pool_words(pool, "Overlay, each side: %s   gap between the leaves of a pair: %s",
                          known(pool, &c->overlay[0], unit), gap);
    }
    return pool_words(
        pool, "Overlay left: %s   right: %s   top: %s   bottom: %s   gap between the leaves: %s",
        known(pool, &c->overlay[SIDE_LEFT], unit), known(pool, &c->overlay[SIDE_RIGHT], unit),
        known(pool, &c->overlay[SIDE_TOP], unit), known(pool, &c->overlay[SIDE_BOTTOM], unit), gap);
}

const char *visit_size_words(const struct visit *v, struct pool *pool) {
    const char *const unit = v->unit == LENGTH_MM ? "millimeters" : "inches";
    const length step = v->rates == NULL ? 0 : size_step_of(&v->rates->saw, v->unit).step;
    char text[32];
    const char *const to =
        step == 0 ? "" : pool_words(pool, ", to %s", length_show(step, v->unit, text, sizeof text));
    if (v->job == NULL) {
        return pool_words(pool,
                          "All sizes in %s%s. Width and height are of   [   ] the openings   "
                          "[   ] the finished doors",
                          unit, to);
    }
    return pool_words(pool, "All sizes in %s%s. Width and height are of %s.", unit, to,
                      v->job->construction.size_is.choice == MEASURE_DOOR ? "the finished doors"
                                                                          : "the openings");
}

/* --- names --- */

/* `finish: painted, clear, none`. */
static const char *names_of(const struct rates *rates, enum name_kind kind, const char *column,
                            const char *more, struct pool *pool) {
    const char *line = pool_words(pool, "%s:", column);
    const size_t count = name_count(rates, kind);
    for (size_t i = 0; i < count; i++) {
        line = pool_words(pool, "%s%s %s", line, i == 0 ? "" : ",", name_at(rates, kind, i));
    }
    return pool_words(pool, "%s%s", line, more);
}

size_t visit_names(const struct visit *v, struct pool *pool, const char *lines[VISIT_NAMES]) {
    size_t count = 0;
    lines[count++] = "use: door (or nothing), drawer front, false front, end panel";
    lines[count++] = "hinge side, seen from the front: left, right, pair; lift up, tilt out, drop "
                     "down, bi-fold, pie cut: in the note";
    if (v->rates == NULL) {
        return count;
    }
    if (list_has_style(v->rates)) {
        lines[count++] = names_of(v->rates, NAME_STYLE, "style", "", pool);
    }
    if (list_has_finish(v->rates)) {
        lines[count++] = names_of(v->rates, NAME_FINISH, "finish", ", none", pool);
    }
    if (list_has_glass(v->rates)) {
        lines[count++] = names_of(v->rates, NAME_GLASS, "glass", "", pool);
    }
    return count;
}
