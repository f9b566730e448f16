/* SPDX-License-Identifier: MIT */
/* The quote: who, the doors by room, the lines to what is paid and when, the options. */
#include "base/array.h"
#include "base/text.h"
#include "report/page/page_parts.h"
#include "report/words/door_words.h"
#include "report/words/sale_line.h"
#include "report/words/show.h"

static void put_fact(struct view *v, const char *label, const char *text) {
    if (text != NULL && text[0] != '\0') {
        html_element(&v->html, "dt", label);
        html_element(&v->html, "dd", text);
    }
}

static void put_parties(struct view *v) {
    const struct job *const job = v->e->job;
    html_put(&v->html, "<dl class=\"facts\">\n");
    put_fact(v, "From", v->e->rates->shop.name.s);
    put_fact(v, "For", job->client.s);
    put_fact(v, "At", job->address.s);
    put_fact(v, "Number", job->number.s);
    put_fact(v, "Agreed", show_agreed(&v->html.pool, v->e));
    put_fact(v, "Date", job->date.s);
    put_fact(v, "Valid until", show_valid_until(job).text);
    put_fact(v, "Ready", job->ready.s);
    put_fact(v, "Made", estimate_name(v->e));
    put_fact(v, "Money", v->e->rates->shop.currency.s);
    html_put(&v->html, "</dl>\n");
}

/* --- doors --- */

static void put_words(struct view_table *t, const struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const char *const finish = door->construction->finish.index < 0
                                   ? "bare"
                                   : text_or_empty(door->construction->finish.name.s);
    const char *const more[] = {show_note(door), show_remark(door),
                                text_or_empty(door->row->extra_words.s)};
    view_cell_open(t);
    html_words(&t->view->html, "%s, %s, %s", show_door(door), show_style(door), finish);
    for (size_t i = 0; i < COUNT_OF(more); i++) {
        if (more[i][0] != '\0') {
            html_words(&t->view->html, "; %s", more[i]);
        }
    }
    view_cell_end(t);
}

static void put_size(struct view_table *t, fig figure, length value) {
    char text[32];
    view_cell_open(t);
    view_figure_as(t->view, figure, length_show(value, t->view->e->job->unit, text, sizeof text));
    view_cell_end(t);
}

static void put_door(struct view_table *t, size_t row) {
    const struct estimate *const e = t->view->e;
    const struct leaf_figures *const leaf = &e->quantities.leaves[row];
    view_row(t, "");
    view_cell(t, leaf->door->row->id.s);
    put_words(t, leaf);
    put_size(t, leaf->width, leaf->door->width);
    put_size(t, leaf->height, leaf->door->height);
    view_cell_figure(t, leaf->openings, 0);
    view_cell_figure(t, leaf->leaves, 0);
    view_cell_figure(t, e->costs.doors[row].unit, 0);
    view_cell_figure(t, e->costs.doors[row].amount, 0);
    view_row_end(t);
}

static void put_doors(struct view *v) {
    static const struct view_head heads[] = {{"id", false},       {"what", false}, {"width", true},
                                             {"height", true},    {"count", true}, {"leaves", true},
                                             {"each leaf", true}, {"amount", true}};
    const struct sale_figures *const sale = &v->e->sale;
    struct view_table t = view_table(v, "Doors and fronts, by room", heads, COUNT_OF(heads));
    for (size_t i = 0; i < sale->room_count; i++) {
        const struct room_sum *const room = &sale->rooms[i];
        view_row_head(&t, room->room[0] == '\0' ? "no room named" : room->room);
        for (size_t n = 0; n < room->count; n++) {
            put_door(&t, sale->by_room[room->first + n]);
        }
    }
    view_table_end(&t);
}

/* --- the lines to the total --- */

static void put_line(struct view_table *t, const struct sale_line *line) {
    const struct estimate *const e = t->view->e;
    const bool total = sale_line_is(line, offsetof(struct sale_figures, total));
    const bool doors = sale_line_is(line, offsetof(struct sale_figures, doors));
    const bool sum = line->field != NULL && (line->field->views & FIELD_TOTAL) != 0;
    view_row(t, total ? "sum grand" : sum ? "sum" : "");
    view_cell(t, line->label);
    view_cell_figure(t, doors ? e->quantities.all_leaves : line->rate, VIEW_UNIT);
    view_cell_figure(t, line->money, line->less ? VIEW_LESS : 0);
    view_row_end(t);
}

static void put_sale(struct view *v) {
    static const struct view_head heads[] = {{"line", false}, {"of", true}, {"amount", true}};
    const struct sale_lines sale = sale_lines_make(&v->html.pool, v->e);
    struct view_table t =
        view_table(v, "From the doors to the total, and what is due when", heads, COUNT_OF(heads));
    for (size_t i = 0; i < sale.count; i++) {
        const bool total = sale_line_is(&sale.lines[i], offsetof(struct sale_figures, total));
        const char *const exempt = total ? sale_exempt(&v->html.pool, v->e) : NULL;
        if (exempt != NULL) {
            view_row(&t, "");
            view_cell(&t, exempt);
            view_row_end(&t);
        }
        if (sale.lines[i].asked) {
            put_line(&t, &sale.lines[i]);
        }
    }
    view_table_end(&t);
}

/* Each was estimated on a tape of its own, so none follows a change. */
static void put_options(struct view *v) {
    static const struct view_head heads[] = {
        {"the same doors", false}, {"total", true}, {"difference", true}, {"percent", true}};
    if (v->facts->option_count == 0) {
        return;
    }
    struct view_table t =
        view_table(v, "Options, as the program made them", heads, COUNT_OF(heads));
    for (size_t i = 0; i < v->facts->option_count; i++) {
        const struct estimate *const o = &v->facts->options[i];
        const struct shown_difference d = show_difference(v->e, o);
        const char *const cells[] = {show_money(o, o->sale.total).text, d.money.text,
                                     d.percent.text};
        view_row(&t, "option");
        view_cell(&t, estimate_name(o));
        for (size_t c = 0; c < COUNT_OF(cells); c++) {
            view_cell_open(&t);
            html_element(&v->html, "span class=\"fixed\"", cells[c]);
            view_cell_end(&t);
        }
        view_row_end(&t);
    }
    view_table_end(&t);
}

void page_quote(struct view *v) {
    view_section(v, "quote", show_paper(v->e->job));
    put_parties(v);
    put_doors(v);
    put_sale(v);
    put_options(v);
    view_section_end(v);
}
