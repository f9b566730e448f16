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
static void put_box(struct view_table *t, const char *list, const char *key, const char *words) {
    struct html *const h = &t->view->html;
    view_cell_open(t);
    html_put(h, "<label class=\"tick\"><input type=\"checkbox\" data-tick=\"");
    html_words(h, "%s: %s", list, key);
    html_put(h, "\"> <span>");
    html_text(h, words);
    html_put(h, "</span></label>");
    view_cell_end(t);
}

/* --- buying --- */

static void put_buy(struct view_table *t, const struct buy_line *line) {
    struct view *const v = t->view;
    const char *const count = fig_none(line->count) ? "" : show(v->e, line->count).text;
    view_row(t, line->part ? "of" : "");
    if (line->part) {
        view_cell(t, line->what);
    } else {
        put_box(t, "buy",
                pool_words(&v->html.pool, "%s, %s, %s%s", line->what, line->size, count,
                           line->how_many),
                line->what[0] == '\0' ? line->size : line->what);
    }
    view_cell(t, line->size);
    if (fig_none(line->count)) {
        view_cell(t, line->how_many);
    } else {
        view_cell_open(t);
        view_figure(v, line->count, 0);
        html_put(&v->html, " ");
        html_text(&v->html, line->unit[0] != '\0' ? line->unit : show_unit_name(v->e, line->count));
        view_cell_end(t);
    }
    view_cell_figure(t, line->price, 0);
    view_cell_figure(t, line->cost, 0);
    view_cell(t, line->note);
    view_row_end(t);
}

static void put_sum(struct view_table *t, const char *label, fig total, const char *class) {
    view_row(t, class);
    view_cell(t, label);
    view_cell_none(t);
    view_cell_none(t);
    view_cell_none(t);
    view_cell_figure(t, total, 0);
    view_row_end(t);
}

void page_buy(struct view *v) {
    static const struct view_head heads[] = {{"what", false}, {"size", false}, {"how many", true},
                                             {"price", true}, {"cost", true},  {"note", false}};
    struct buy_list list;
    view_section(v, "buy", "To buy");
    if (!buy_list_make(&list, &v->html.pool, v->e)) {
        v->html.failed = true;
    }
    html_element(&v->html, "p class=\"note\"",
                 "A cost stands on the line that it is paid for; the lines below it say what it is "
                 "made up of.");
    struct view_table t = view_table(v, "What to buy, by supplier", heads, COUNT_OF(heads));
    for (size_t g = 0; g < list.group_count; g++) {
        view_row_head(&t, list.groups[g].title);
        for (size_t i = 0; i < list.groups[g].count; i++) {
            put_buy(&t, &list.lines[list.groups[g].first + i]);
        }
        put_sum(&t, "together", list.groups[g].total, "sum");
    }
    put_sum(&t, "in all", list.total, "sum grand");
    view_table_end(&t);
    view_section_end(v);
    buy_list_clear(&list);
}

/* --- cutting --- */

static void put_gang(struct view_table *t, const struct cut_run *run, const struct cut_gang *gang) {
    struct view *const v = t->view;
    const enum length_unit unit = v->e->job->unit;
    const bool rough = run->kind == MATERIAL_LUMBER;
    const char *const name = material_name(v->e->rates, run->kind, run->material);
    const struct shown size = show_size(gang->width, gang->length, unit);
    view_row(t, "");
    put_box(t, "cut",
            pool_words(&v->html.pool, "%s, %s, %lld, %s", name, size.text, (long long)gang->pieces,
                       gang->doors),
            pool_words(&v->html.pool, "%lld x %s", (long long)gang->pieces, size.text));
    view_cell(t, rough ? show_size(gang->rough_width, gang->rough_length, unit).text : "");
    view_cell(t, gang->parts);
    view_cell(t, gang->doors);
    view_row_end(t);
}

void page_cut(struct view *v) {
    static const struct view_head heads[] = {
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
        struct view_table t = view_table(
            v,
            pool_words(&v->html.pool, "%s, %s thick",
                       material_name(v->e->rates, run->kind, run->material),
                       length_show(run->thickness, v->e->job->unit, thick, sizeof thick)),
            heads, COUNT_OF(heads));
        for (size_t g = 0; g < run->gang_count; g++) {
            put_gang(&t, run, &run->gangs[g]);
        }
        view_table_end(&t);
    }
    view_section_end(v);
}
