/* SPDX-License-Identifier: MIT */
/* Figures and tables of the page. */
#include "report/page/page_parts.h"
#include "report/words/show.h"

#include <assert.h>

static void open_figure(struct view *v, fig figure, const char *more) {
    html_format(&v->html, "<button class=\"f\" data-f=\"%u\"%s>", figure.id, more);
}

void view_figure(struct view *v, fig figure, unsigned how) {
    static const char *const marks[] = {
        [0] = "",
        [VIEW_LESS] = " data-less",
        [VIEW_SHORT] = " data-short",
        [VIEW_LESS | VIEW_SHORT] = " data-less data-short",
    };
    if (fig_none(figure)) {
        return;
    }
    const bool money = tape_unit(&v->e->tape, figure) == UNIT_MONEY;
    const struct shown shown = money                     ? show_money(v->e, figure)
                               : (how & VIEW_SHORT) != 0 ? show_short(v->e, figure)
                                                         : show_exact(v->e, figure);
    open_figure(v, figure, marks[how & (VIEW_LESS | VIEW_SHORT)]);
    const bool less = (how & VIEW_LESS) != 0 && tape_amount(&v->e->tape, figure) != 0;
    html_words(&v->html, "%s%s", less ? "-" : "", shown.text);
    html_put(&v->html, "</button>");
    const char *const unit = unit_name(tape_unit(&v->e->tape, figure));
    if ((how & VIEW_UNIT) != 0 && unit[0] != '\0') {
        html_put(&v->html, " ");
        html_element(&v->html, "span class=\"u\"", unit);
    }
}

void view_figure_as(struct view *v, fig figure, const char *words) {
    open_figure(v, figure, " data-as");
    html_text(&v->html, words);
    html_put(&v->html, "</button>");
}

void view_section(struct view *v, const char *id, const char *title) {
    html_format(&v->html, "<section id=\"%s\" aria-labelledby=\"%s-h\">\n<h2 id=\"%s-h\">", id, id,
                id);
    html_text(&v->html, title);
    html_put(&v->html, "</h2>\n");
}

void view_section_end(struct view *v) {
    html_put(&v->html, "</section>\n");
}

void view_cell_figure(struct view *v, fig figure, unsigned how) {
    if (fig_none(figure)) {
        html_cell_none(&v->table);
        return;
    }
    html_cell_open(&v->table);
    view_figure(v, figure, how);
    html_cell_end(&v->table);
}

void view_fields(struct view *v, const char *caption, const struct field_table *fields,
                 unsigned views, const void *thing) {
    static const struct html_head heads[] = {
        {"what", false}, {"amount", true}, {"how it comes about", false}};
    html_table(&v->table, &v->html, caption, heads, 3);
    for (size_t i = 0; i < fields->count; i++) {
        const struct field *const field = &fields->fields[i];
        const fig figure = field_figure(field, thing);
        if ((field->views & views) == 0 || fig_none(figure)) {
            continue;
        }
        html_row(&v->table, (field->views & FIELD_TOTAL) != 0 ? "sum" : "");
        html_cell(&v->table, field_label(field));
        view_cell_figure(v, figure, VIEW_UNIT);
        html_cell(&v->table, field->note);
        html_row_end(&v->table);
    }
    html_table_end(&v->table);
}
