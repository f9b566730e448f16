/* SPDX-License-Identifier: MIT */
/* What to buy and what to cut, with boxes to tick. A box is known by the words of its line, so that
 * what was ticked is found again in a page that was written anew, and a line that has changed is
 * not ticked. */
#include "base/array.h"
#include "model/name.h"
#include "report/page/page_parts.h"
#include "report/words/buy_list.h"
#include "report/words/cut_list.h"
#include "report/words/show.h"

/* A box in a cell of its own, and the words that it is of, which are its label. */
static void put_box(struct view *v, const char *list, const char *key, const char *words) {
    struct html *const h = &v->html;
    html_cell_open(&v->table);
    html_put(h, "<label class=\"tick\"><input type=\"checkbox\" data-tick=\"");
    html_words(h, "%s: %s", list, key);
    html_put(h, "\"> <span>");
    html_text(h, words);
    html_put(h, "</span></label>");
    html_cell_end(&v->table);
}

/* --- buying --- */

static void put_buy(struct view *v, const struct buy_line *line) {
    const struct shown count = show(v->e, line->count);
    html_row(&v->table, line->part ? "of" : "");
    if (line->part && line->what[0] == '\0') {
        html_cell_open(&v->table);
        html_element(&v->html, "span class=\"hear\"", "of the line above");
        html_cell_end(&v->table);
    } else if (line->part) {
        html_cell(&v->table, line->what);
    } else {
        put_box(v, "buy",
                pool_words(&v->html.pool, "%s, %s, %s%s", line->what, line->size, count.text,
                           line->how_many),
                line->what[0] == '\0' ? line->size : line->what);
    }
    html_cell(&v->table, line->size);
    if (fig_none(line->count)) {
        html_cell(&v->table, line->how_many);
    } else {
        html_cell_open(&v->table);
        view_figure(v, line->count, 0);
        html_put(&v->html, " ");
        html_text(&v->html, line->unit[0] != '\0' ? line->unit : show_unit_name(v->e, line->count));
        html_cell_end(&v->table);
    }
    view_cell_figure(v, line->price, 0);
    view_cell_figure(v, line->cost, 0);
    html_cell(&v->table, line->note);
    html_row_end(&v->table);
}

static void put_sum(struct view *v, const char *label, fig total, const char *class) {
    html_row(&v->table, class);
    html_cell(&v->table, label);
    html_cell_none(&v->table);
    html_cell_none(&v->table);
    html_cell_none(&v->table);
    view_cell_figure(v, total, 0);
    html_cell_none(&v->table);
    html_row_end(&v->table);
}

void page_buy(struct view *v) {
    static const struct html_head heads[] = {{"what", false}, {"size", false}, {"how many", true},
                                             {"price", true}, {"cost", true},  {"note", false}};
    struct buy_list list;
    view_section(v, "buy", "To buy");
    if (!buy_list_make(&list, &v->html.pool, v->e)) {
        v->html.failed = true;
    }
    html_element(&v->html, "p class=\"note\"",
                 "A cost stands on the line that it is paid for; the lines below it say what it is "
                 "made up of.");
    html_table(&v->table, &v->html, "What to buy, by supplier", heads, COUNT_OF(heads));
    for (size_t g = 0; g < list.group_count; g++) {
        html_row_head(&v->table, list.groups[g].title);
        for (size_t i = 0; i < list.groups[g].count; i++) {
            put_buy(v, &list.lines[list.groups[g].first + i]);
        }
        put_sum(v, "together", list.groups[g].total, "sum");
    }
    put_sum(v, "in all", list.total, "sum grand");
    html_table_end(&v->table);
    view_section_end(v);
    buy_list_clear(&list);
}

/* --- cutting --- */

static void put_gang(struct view *v, const struct cut_run *run, const struct cut_gang *gang) {
    const enum length_unit unit = v->e->job->unit;
    const bool rough = run->kind == MATERIAL_LUMBER;
    const char *const name = material_name(v->e->rates, run->kind, run->material);
    const struct shown size = show_size(gang->width, gang->length, unit);
    html_row(&v->table, "");
    put_box(v, "cut",
            pool_words(&v->html.pool, "%s, %s, %lld, %s", name, size.text, (long long)gang->pieces,
                       gang->doors),
            pool_words(&v->html.pool, "%lld x %s", (long long)gang->pieces, size.text));
    html_cell(&v->table, rough ? show_size(gang->rough_width, gang->rough_length, unit).text : "");
    html_cell(&v->table, gang->parts);
    html_cell(&v->table, gang->doors);
    html_row_end(&v->table);
}

void page_cut(struct view *v) {
    static const struct html_head heads[] = {
        {"pieces, width x length", false}, {"rough", false}, {"part", false}, {"for", false}};
    struct cut_list list;
    view_section(v, "cut", "To cut");
    if (!cut_list_make(&list, &v->html.pool, v->e)) {
        v->html.failed = true;
        list.count = 0;
    }
    if (list.count == 0) {
        html_element(&v->html, "p", "Nothing is cut in this job.");
    } else {
        html_element(&v->html, "p class=\"note\"",
                     v->e->job->unit == LENGTH_MM
                         ? "Sizes in mm, finished; a line is cut together, longest first."
                         : "Sizes in inches, finished; a line is cut together, longest first.");
    }
    for (size_t i = 0; i < list.count; i++) {
        const struct cut_run *const run = &list.stocks[i];
        char thick[32];
        html_table(&v->table, &v->html,
                   pool_words(&v->html.pool, "%s, %s thick",
                              material_name(v->e->rates, run->kind, run->material),
                              length_show(run->thickness, v->e->job->unit, thick, sizeof thick)),
                   heads, COUNT_OF(heads));
        for (size_t g = 0; g < run->gang_count; g++) {
            put_gang(v, run, &run->gangs[g]);
        }
        html_table_end(&v->table);
    }
    view_section_end(v);
}
