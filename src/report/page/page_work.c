/* SPDX-License-Identifier: MIT */
/* Hours and cost, as tables and as bars beside the numbers that they are drawn from. */
#include "base/array.h"
#include "report/page/page_parts.h"
#include "report/words/build_up_words.h"
#include "report/words/show.h"

/* --- bars --- */

static const struct view_head bar_heads[] = {{"what", false}, {"amount", true}, {"", false}};

/* A line with a bar that is as long, against the longest of its table, as the figure; most: that
 * one. */
static void put_bar(struct view_table *t, const char *label, fig figure, double most) {
    const double part = most > 0 ? tape_real(&t->view->e->tape, figure) / most * 100 : 0;
    view_row(t, "");
    view_cell(t, label);
    view_cell_figure(t, figure, 0);
    html_format(&t->view->html,
                "<td class=\"bar\"><span data-bar=\"%u\" style=\"width:%.1f%%\"></span></td>",
                figure.id, part > 0 ? part : 0);
    view_row_end(t);
}

static double larger(const struct view *v, fig figure, double most) {
    const double value = tape_real(&v->e->tape, figure);
    return value > most ? value : most;
}

/* --- hours --- */

static const char *machine_words(const struct view *v, int32_t machine) {
    return machine < 0 ? "by hand" : v->e->rates->machines[machine].name.s;
}

static void put_operations(struct view *v) {
    static const struct view_head heads[] = {{"operation", false},     {"machine", false},
                                             {"set-ups", true},        {"machine minutes", true},
                                             {"person-minutes", true}, {"cost", true}};
    const struct labor *const labor = &v->e->labor;
    struct view_table t =
        view_table(v, "Hours by operation, in the order of the work", heads, COUNT_OF(heads));
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        const struct operation *const operation = &v->e->rates->operations[o->operation];
        view_row(&t, "");
        view_cell(&t, operation->name.s);
        view_cell(&t, machine_words(v, operation->machine));
        view_cell_figure(&t, o->setups, 0);
        view_cell_figure(&t, o->machine_minutes, 0);
        view_cell_figure(&t, o->person_minutes, 0);
        view_cell_figure(&t, o->cost, 0);
        view_row_end(&t);
    }
    view_table_end(&t);
}

void page_work(struct view *v) {
    const struct labor *const labor = &v->e->labor;
    double most = 0;
    view_section(v, "work", "Hours");
    view_fields(v, "Hours of the job", &fields_labor, FIELD_SHEET, labor);
    for (size_t i = 0; i < labor->machine_count; i++) {
        most = larger(v, labor->machines[i].hours, most);
    }
    struct view_table t = view_table(v, "Hours by machine: the time that each is used", bar_heads,
                                     COUNT_OF(bar_heads));
    for (size_t i = 0; i < labor->machine_count; i++) {
        put_bar(&t, machine_words(v, labor->machines[i].machine), labor->machines[i].hours, most);
    }
    view_table_end(&t);
    put_operations(v);
    view_section_end(v);
}

/* --- cost --- */

static bool is_group(const struct field *field) {
    return (field->views & (FIELD_LINE | FIELD_TOTAL)) == FIELD_LINE;
}

static void put_groups(struct view *v) {
    const struct build_up *const job = &v->e->costs.job;
    const struct field *const fields = fields_build_up.fields;
    double most = 0;
    for (size_t i = 0; fields[i].offset != offsetof(struct build_up, full); i++) {
        most = is_group(&fields[i]) ? larger(v, field_figure(&fields[i], job), most) : most;
    }
    struct view_table t = view_table(v, "Cost by group", bar_heads, COUNT_OF(bar_heads));
    for (size_t i = 0; fields[i].offset != offsetof(struct build_up, full); i++) {
        const fig cost = field_figure(&fields[i], job);
        if (is_group(&fields[i]) && !fig_none(cost)) {
            put_bar(&t, build_up_label(v->e, &fields[i]), cost, most);
        }
    }
    view_table_end(&t);
}

static void put_lines(struct view_table *t, const struct field_table *table, const void *thing) {
    const bool build_up = table == &fields_build_up;
    for (size_t i = 0; i < table->count; i++) {
        const struct field *const field = &table->fields[i];
        const fig money = field_figure(field, thing);
        if ((field->views & FIELD_LINE) == 0 || fig_none(money)) {
            continue;
        }
        view_row(t, (field->views & FIELD_TOTAL) != 0 ? "sum" : "");
        view_cell(t, build_up ? build_up_label(t->view->e, field) : field_label(field));
        view_cell_figure(t, build_up ? build_up_rate(t->view->e, field) : (fig){0}, VIEW_UNIT);
        view_cell_figure(t, money, 0);
        view_row_end(t);
    }
}

static void put_sum(struct view_table *t, const char *label, fig figure) {
    if (!fig_none(figure)) {
        view_row(t, "sum");
        view_cell(t, label);
        view_cell_none(t);
        view_cell_figure(t, figure, VIEW_UNIT);
        view_row_end(t);
    }
}

void page_cost(struct view *v) {
    static const struct view_head heads[] = {{"line", false}, {"of", true}, {"amount", true}};
    view_section(v, "cost", "Cost");
    put_groups(v);
    struct view_table t =
        view_table(v, "From cost to the price of the doors", heads, COUNT_OF(heads));
    put_lines(&t, &fields_build_up, &v->e->costs.job);
    put_lines(&t, &fields_costs, &v->e->costs);
    put_sum(&t, "profit left: what is sold less its cost with overhead", v->e->sale.profit_left);
    put_sum(&t, "margin", v->e->sale.margin_left);
    view_table_end(&t);
    view_section_end(v);
}
