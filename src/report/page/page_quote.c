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
    put_fact(v, "Ready", show_ready(&v->html.pool, v->e));
    put_fact(v, "Made", estimate_name(v->e));
    put_fact(v, "Money", v->e->rates->shop.currency.s);
    html_put(&v->html, "</dl>\n");
}

/* --- doors --- */

static void put_words(struct view *v, const struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const char *const finish = door->construction->finish.index < 0
                                   ? "bare"
                                   : text_or_empty(door->construction->finish.name.s);
    const char *const more[] = {show_note(door), show_remark(door),
                                text_or_empty(door->row->extra_words.s)};
    html_cell_open(&v->table);
    html_words(&v->html, "%s, %s, %s", show_door(door), show_style(door), finish);
    for (size_t i = 0; i < COUNT_OF(more); i++) {
        if (more[i][0] != '\0') {
            html_words(&v->html, "; %s", more[i]);
        }
    }
    html_cell_end(&v->table);
}

static void put_size(struct view *v, fig figure, length value) {
    char text[32];
    html_cell_open(&v->table);
    view_figure_as(v, figure, length_show(value, v->e->job->unit, text, sizeof text));
    html_cell_end(&v->table);
}

static void put_door(struct view *v, size_t row) {
    const struct estimate *const e = v->e;
    const struct leaf_figures *const leaf = &e->quantities.leaves[row];
    html_row(&v->table, "");
    html_cell(&v->table, leaf->door->row->id.s);
    put_words(v, leaf);
    put_size(v, leaf->width, leaf->door->width);
    put_size(v, leaf->height, leaf->door->height);
    view_cell_figure(v, leaf->openings, 0);
    view_cell_figure(v, leaf->leaves, 0);
    view_cell_figure(v, e->costs.doors[row].unit, 0);
    view_cell_figure(v, e->costs.doors[row].amount, 0);
    html_row_end(&v->table);
}

static void put_doors(struct view *v) {
    static const struct html_head heads[] = {{"id", false},       {"what", false}, {"width", true},
                                             {"height", true},    {"count", true}, {"leaves", true},
                                             {"each leaf", true}, {"amount", true}};
    const struct sale_figures *const sale = &v->e->sale;
    html_table(&v->table, &v->html, "Doors and fronts, by room", heads, COUNT_OF(heads));
    for (size_t i = 0; i < sale->room_count; i++) {
        const struct room_sum *const room = &sale->rooms[i];
        html_row_head(&v->table, room->room[0] == '\0' ? "no room named" : room->room);
        for (size_t n = 0; n < room->count; n++) {
            put_door(v, sale->by_room[room->first + n]);
        }
    }
    html_table_end(&v->table);
}

/* --- the lines to the total --- */

static void put_line(struct view *v, const struct sale_line *line) {
    const struct estimate *const e = v->e;
    const bool total = sale_line_is(line, offsetof(struct sale_figures, total));
    const bool doors = sale_line_is(line, offsetof(struct sale_figures, doors));
    const bool sum = line->field != NULL && (line->field->views & FIELD_TOTAL) != 0;
    html_row(&v->table, total ? "sum grand" : sum ? "sum" : "");
    html_cell(&v->table, line->label);
    view_cell_figure(v, doors ? e->quantities.all_leaves : line->rate, VIEW_UNIT);
    view_cell_figure(v, line->money, line->less ? VIEW_LESS : 0);
    html_row_end(&v->table);
}

static void put_sale(struct view *v) {
    static const struct html_head heads[] = {{"line", false}, {"of", true}, {"amount", true}};
    const struct sale_lines sale = sale_lines_make(&v->html.pool, v->e);
    html_table(&v->table, &v->html, "From the doors to the total, and what is due when", heads,
               COUNT_OF(heads));
    for (size_t i = 0; i < sale.count; i++) {
        const bool total = sale_line_is(&sale.lines[i], offsetof(struct sale_figures, total));
        const char *const exempt = total ? sale_exempt(&v->html.pool, v->e) : NULL;
        if (exempt != NULL) {
            html_row(&v->table, "");
            html_cell(&v->table, exempt);
            html_row_end(&v->table);
        }
        if (sale.lines[i].asked) {
            put_line(v, &sale.lines[i]);
        }
    }
    html_table_end(&v->table);
}

/* Each was estimated on a tape of its own, so none follows a change. */
static void put_options(struct view *v) {
    static const struct html_head heads[] = {
        {"the same doors", false}, {"total", true}, {"difference", true}, {"percent", true}};
    if (v->facts->option_count == 0) {
        return;
    }
    html_table(&v->table, &v->html, "Options, as the program made them", heads, COUNT_OF(heads));
    for (size_t i = 0; i < v->facts->option_count; i++) {
        const struct estimate *const o = &v->facts->options[i];
        const struct shown_difference d = show_difference(v->e, o);
        const struct shown total = show_money(o, o->sale.total);
        const char *const cells[] = {total.text, d.money.text, d.percent.text};
        html_row(&v->table, "option");
        html_cell(&v->table, estimate_name(o));
        for (size_t c = 0; c < COUNT_OF(cells); c++) {
            html_cell_open(&v->table);
            html_element(&v->html, "span class=\"fixed\"", cells[c]);
            html_cell_end(&v->table);
        }
        html_row_end(&v->table);
    }
    html_table_end(&v->table);
}

void page_quote(struct view *v) {
    view_section(v, "quote", show_paper(v->e->job));
    put_parties(v);
    put_doors(v);
    put_sale(v);
    put_options(v);
    view_section_end(v);
}
