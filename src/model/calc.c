/* SPDX-License-Identifier: MIT */
#include "model/calc.h"

#include <assert.h>

fig calc_given(const struct calc *c, const char *what, const struct value *value) {
    return units_given(c->tape, c->units, what, value);
}

fig calc_length(const struct calc *c, const char *what, length value, struct place place) {
    return tape_worked(c->tape, what, c->units->length, 6,
                       length_millionths(value, c->units->lengths), place);
}

fig calc_size(const struct calc *c, const char *what, length size, const struct value *from) {
    return from->set && from->amount == size ? calc_given(c, what, from)
                                             : calc_length(c, what, size, from->place);
}

fig calc_count(const struct calc *c, const char *what, int64_t count, struct place place) {
    assert(count >= 0);
    return count == 0 ? (fig){0} : tape_worked(c->tape, what, UNIT_COUNT, 0, count, place);
}

fig calc_product(const struct calc *c, const char *what, enum unit unit, fig a, fig b) {
    return fig_ratio(c->tape, what, unit, (figs){{a, b}}, (figs){{{0}}});
}

fig calc_percent(const struct calc *c, const char *what, enum unit unit, fig base, fig percent) {
    return fig_ratio(c->tape, what, unit, (figs){{base, percent}}, (figs){{c->units->hundred}});
}

fig calc_area(const struct calc *c, const char *what, fig a, fig b) {
    return fig_ratio(c->tape, what, c->units->area, (figs){{a, b}},
                     (figs){{c->units->length2_per_area}});
}

fig calc_run(const struct calc *c, const char *what, fig along) {
    return fig_ratio(c->tape, what, c->units->run, (figs){{along}},
                     (figs){{c->units->length_per_run}});
}

fig calc_sum(const struct calc *c, const char *what, enum unit unit, const fig *terms,
             size_t count) {
    return count == 0 ? (fig){0} : fig_sum(c->tape, what, unit, terms, count);
}

fig calc_total(const struct calc *c, const char *what, enum unit unit, const fig *counts,
               const fig *each, size_t count) {
    return count == 0 ? (fig){0} : fig_total(c->tape, what, unit, counts, each, count);
}
