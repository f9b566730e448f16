/* SPDX-License-Identifier: MIT */
#include "report/words/compared.h"

#include "report/words/build_up_words.h"

/* The work and the weight: figures of several structs of an estimate. */
static const struct field takes[] = {
    {NULL, "person-hours", NULL, offsetof(struct estimate, labor.hours), FIELD_LINE},
    {NULL, "minutes a door", NULL, offsetof(struct estimate, labor.minutes_a_door), FIELD_LINE},
    {NULL, "weight", NULL, offsetof(struct estimate, quantities.weight), FIELD_LINE},
};
static const struct field_table fields_takes = {takes, sizeof takes / sizeof *takes};

struct maker {
    struct pool *pool;
    const struct estimate *const *estimates;
    size_t count;
    bool zeros;
    struct compared *made;
};

/* Adds a line unless no estimate has its figure, or none has more than nothing of it. */
static void add(struct maker *m, struct compared_line line, const fig *figures) {
    bool any = false;
    for (size_t i = 0; figures != NULL && i < m->count; i++) {
        any = any || (!fig_none(figures[i]) &&
                      (m->zeros || tape_amount(&m->estimates[i]->tape, figures[i]) != 0));
    }
    if (any) {
        line.figures = figures;
        m->made->lines[m->made->count++] = line;
    }
}

/* The fields of a table; offset: of its struct in an estimate. */
static void add_fields(struct maker *m, const struct field_table *table, unsigned views,
                       size_t offset, bool behind) {
    for (size_t i = 0; i < table->count; i++) {
        const struct field *const field = &table->fields[i];
        fig *const figures = pool_take(m->pool, m->count, sizeof *figures);
        for (size_t e = 0; figures != NULL && e < m->count; e++) {
            figures[e] = field_figure(field, (const char *)m->estimates[e] + offset);
        }
        if ((field->views & views) != 0) {
            add(m,
                (struct compared_line){.label = table == &fields_build_up
                                                    ? build_up_label(m->estimates[0], field)
                                                    : field_label(field),
                                       .total = !behind && (field->views & FIELD_TOTAL) != 0,
                                       .behind = behind},
                figures);
        }
    }
}

static void add_sale(struct maker *m) {
    struct sale_lines *const all = pool_take(m->pool, m->count, sizeof *all);
    for (size_t e = 0; all != NULL && e < m->count; e++) {
        all[e] = sale_lines_make(m->pool, m->estimates[e]);
    }
    for (size_t i = 0; all != NULL && !pool_failed(m->pool) && i < all[0].count; i++) {
        const struct sale_line *const line = &all[0].lines[i];
        fig *const figures = pool_take(m->pool, m->count, sizeof *figures);
        for (size_t e = 0; figures != NULL && e < m->count; e++) {
            figures[e] = m->zeros || all[e].lines[i].asked ? all[e].lines[i].money : (fig){0};
        }
        /* money is that of the job throughout */
        const bool total = sale_line_is(line, offsetof(struct sale_figures, total));
        if (!line->payment && !sale_line_is(line, offsetof(struct sale_figures, taxable))) {
            add(m,
                (struct compared_line){.label = total ? field_label(line->field) : line->label,
                                       .less = line->less,
                                       .total = line->field != NULL &&
                                                (line->field->views & FIELD_TOTAL) != 0},
                figures);
        }
    }
}

struct compared compared_make(struct pool *pool, const struct estimate *const *estimates,
                              size_t count, bool zeros) {
    const size_t most = fields_build_up.count + fields_costs.count + 2 * fields_sale.count +
                        estimates[0]->sale.charge_count + estimates[0]->sale.stage_count +
                        fields_purchase.count + fields_takes.count;
    struct compared made = {.lines = pool_take(pool, most, sizeof *made.lines)};
    struct maker m = {
        .pool = pool, .estimates = estimates, .count = count, .zeros = zeros, .made = &made};
    if (made.lines != NULL) {
        add_fields(&m, &fields_build_up, FIELD_LINE, offsetof(struct estimate, costs.job), false);
        add_sale(&m);
        add_fields(&m, &fields_sale, FIELD_SHEET, offsetof(struct estimate, sale), true);
        add_fields(&m, &fields_purchase, FIELD_SHEET, offsetof(struct estimate, purchase), true);
        add_fields(&m, &fields_takes, FIELD_LINE, 0, true);
    }
    if (pool_failed(pool)) {
        made.count = 0;
    }
    return made;
}
