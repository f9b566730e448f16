/* SPDX-License-Identifier: MIT */
/* Hours and cost, as tables and as bars beside the numbers that they are drawn from. */
#include "base/array.h"
#include "report/page/page_parts.h"
#include "report/words/build_up_words.h"
#include "report/words/show.h"

/* --- bars --- */

static const struct html_head bar_heads[] = {{"what", false}, {"amount", true}, {"", false}};

/* A line with a bar that is as long, against the longest of its table, as the figure; most: that
 * one. */
static void put_bar(struct view *v, const char *label, fig figure, double most) {
    const double part = most > 0 ? tape_real(&v->e->tape, figure) / most * 100 : 0;
    html_row(&v->table, "");
    html_cell(&v->table, label);
    view_cell_figure(v, figure, 0);
    html_format(&v->html,
                "<td class=\"bar\"><span data-bar=\"%u\" style=\"width:%.1f%%\"></span></td>",
                figure.id, part > 0 ? part : 0);
    html_row_end(&v->table);
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
    static const struct html_head heads[] = {{"operation", false},     {"machine", false},
                                             {"set-ups", true},        {"machine minutes", true},
                                             {"person-minutes", true}, {"cost", true}};
    const struct labor *const labor = &v->e->labor;
    html_table(&v->table, &v->html, "Hours by operation, in the order of the work", heads,
               COUNT_OF(heads));
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        const struct operation *const operation = &v->e->rates->operations[o->operation];
        html_row(&v->table, "");
        html_cell(&v->table, operation->name.s);
        html_cell(&v->table, machine_words(v, operation->machine));
        view_cell_figure(v, o->setups, 0);
        view_cell_figure(v, o->machine_minutes, 0);
        view_cell_figure(v, o->person_minutes, 0);
        view_cell_figure(v, o->cost, 0);
        html_row_end(&v->table);
    }
    html_table_end(&v->table);
}

void page_work(struct view *v) {
    const struct labor *const labor = &v->e->labor;
    double most = 0;
    view_section(v, "work", "Hours");
    view_fields(v, "Hours of the job", &fields_labor, FIELD_SHEET, labor);
    for (size_t i = 0; i < labor->machine_count; i++) {
        most = larger(v, labor->machines[i].hours, most);
    }
    html_table(&v->table, &v->html, "Hours by machine: the time that each is used", bar_heads,
               COUNT_OF(bar_heads));
    for (size_t i = 0; i < labor->machine_count; i++) {
        put_bar(v, machine_words(v, labor->machines[i].machine), labor->machines[i].hours, most);
    }
    html_table_end(&v->table);
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
    html_table(&v->table, &v->html, "Cost by group", bar_heads, COUNT_OF(bar_heads));
    for (size_t i = 0; fields[i].offset != offsetof(struct build_up, full); i++) {
        const fig cost = field_figure(&fields[i], job);
        if (is_group(&fields[i]) && !fig_none(cost)) {
            put_bar(v, build_up_label(v->e, &fields[i]), cost, most);
        }
    }
    html_table_end(&v->table);
}

static void put_lines(struct view *v, const struct field_table *table, const void *thing) {
    const bool build_up = table == &fields_build_up;
    for (size_t i = 0; i < table->count; i++) {
        const struct field *const field = &table->fields[i];
        const fig money = field_figure(field, thing);
        if ((field->views & FIELD_LINE) == 0 || fig_none(money)) {
            continue;
        }
        html_row(&v->table, (field->views & FIELD_TOTAL) != 0 ? "sum" : "");
        html_cell(&v->table, build_up ? build_up_label(v->e, field) : field_label(field));
        view_cell_figure(v, build_up ? build_up_rate(v->e, field) : (fig){0}, VIEW_UNIT);
        view_cell_figure(v, money, 0);
        html_row_end(&v->table);
    }
}

static void put_sum(struct view *v, const char *label, fig figure) {
    if (!fig_none(figure)) {
        html_row(&v->table, "sum");
        html_cell(&v->table, label);
        html_cell_none(&v->table);
        view_cell_figure(v, figure, VIEW_UNIT);
        html_row_end(&v->table);
    }
}

void page_cost(struct view *v) {
    static const struct html_head heads[] = {{"line", false}, {"of", true}, {"amount", true}};
    view_section(v, "cost", "Cost");
    put_groups(v);
    html_table(&v->table, &v->html, "From cost to the price of the doors", heads, COUNT_OF(heads));
    put_lines(v, &fields_build_up, &v->e->costs.job);
    put_lines(v, &fields_costs, &v->e->costs);
    put_sum(v, "profit left: what is sold less its cost with overhead", v->e->sale.profit_left);
    put_sum(v, "margin", v->e->sale.margin_left);
    html_table_end(&v->table);
    view_section_end(v);
}
