/* SPDX-License-Identifier: MIT */
/* Figures and tables of the page. */
#include "report/page/page_parts.h"
#include "report/words/show.h"

#include <assert.h>

static void open_figure(struct view *v, fig figure, const char *more) {
    html_format(&v->html, "<button type=\"button\" class=\"f\" data-f=\"%u\"%s>", figure.id, more);
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
                                                         : show(v->e, figure);
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

struct view_table view_table(struct view *v, const char *caption, const struct view_head *heads,
                             size_t count) {
    html_put(&v->html, "<table>\n");
    html_element(&v->html, "caption", caption);
    html_put(&v->html, "<thead><tr>");
    for (size_t i = 0; i < count; i++) {
        html_element(&v->html,
                     heads[i].name[0] == '\0' ? "td"
                     : heads[i].number        ? "th scope=\"col\" class=\"n\""
                                              : "th scope=\"col\"",
                     heads[i].name);
    }
    html_put(&v->html, "</tr></thead>\n<tbody>\n");
    return (struct view_table){.view = v, .heads = heads, .count = count};
}

void view_table_end(struct view_table *t) {
    html_put(&t->view->html, "</tbody></table>\n");
}

void view_row_head(struct view_table *t, const char *words) {
    html_format(&t->view->html, "<tr class=\"part\"><th colspan=\"%zu\">", t->count);
    html_text(&t->view->html, words);
    html_put(&t->view->html, "</th></tr>\n");
}

void view_row(struct view_table *t, const char *class) {
    t->column = 0;
    html_format(&t->view->html, class[0] == '\0' ? "<tr%s>" : "<tr class=\"%s\">", class);
}

void view_row_end(struct view_table *t) {
    html_put(&t->view->html, "</tr>\n");
}

void view_cell_open(struct view_table *t) {
    struct html *const h = &t->view->html;
    const size_t at = t->column++;
    assert(at < t->count);
    if (at == 0) {
        html_put(h, "<th scope=\"row\">");
        return;
    }
    html_put(h, t->heads[at].number ? "<td class=\"n\"" : "<td");
    if (t->heads[at].name[0] != '\0') {
        html_put(h, " data-l=\"");
        html_text(h, t->heads[at].name);
        html_put(h, "\"");
    }
    html_put(h, ">");
}

void view_cell_end(struct view_table *t) {
    html_put(&t->view->html, t->column == 1 ? "</th>" : "</td>");
}

void view_cell(struct view_table *t, const char *words) {
    if (words == NULL || words[0] == '\0') {
        view_cell_none(t);
        return;
    }
    view_cell_open(t);
    html_text(&t->view->html, words);
    view_cell_end(t);
}

void view_cell_none(struct view_table *t) {
    t->column++;
    html_put(&t->view->html, t->column == 1 ? "<th></th>" : "<td class=\"none\"></td>");
}

void view_cell_figure(struct view_table *t, fig figure, unsigned how) {
    if (fig_none(figure)) {
        view_cell_none(t);
        return;
    }
    view_cell_open(t);
    view_figure(t->view, figure, how);
    view_cell_end(t);
}

void view_fields(struct view *v, const char *caption, const struct field_table *fields,
                 unsigned views, const void *thing) {
    static const struct view_head heads[] = {
        {"what", false}, {"amount", true}, {"how it comes about", false}};
    struct view_table t = view_table(v, caption, heads, 3);
    for (size_t i = 0; i < fields->count; i++) {
        const struct field *const field = &fields->fields[i];
        const fig figure = field_figure(field, thing);
        if ((field->views & views) == 0 || fig_none(figure)) {
            continue;
        }
        view_row(&t, (field->views & FIELD_TOTAL) != 0 ? "sum" : "");
        view_cell(&t, field_label(field));
        view_cell_figure(&t, figure, VIEW_UNIT);
        view_cell(&t, field->note);
        view_row_end(&t);
    }
    view_table_end(&t);
}
