/* SPDX-License-Identifier: MIT */
#include "report/page/page.h"

#include "base/array.h"
#include "base/text.h"
#include "report/page/page_files.h"
#include "report/page/page_parts.h"
#include "report/words/caution.h"
#include "report/words/shipped.h"
#include "report/words/show.h"

static const struct {
    const char *id, *name;
    void (*put)(struct view *view);
} parts[] = {
    {"quote", "Quote", page_quote}, {"doors", "Doors", page_doors}, {"plans", "Plans", page_plans},
    {"buy", "Buy", page_buy},       {"cut", "Cut", page_cut},       {"work", "Hours", page_work},
    {"cost", "Cost", page_cost},    {"rates", "Rates", page_rates},
};

static void put_head(struct view *v) {
    struct html *const h = &v->html;
    html_put(h, "<a class=\"skip\" href=\"#quote\">to the quote</a>\n<header>\n");
    html_element(h, "h1", v->e->job->title.s);
    if (shipped_example(v->e)) {
        html_element(h, "p class=\"mark\"", "Example prices: the rates are invented.");
    }
    html_put(h, "<nav aria-label=\"Parts of the page\"><ul>\n");
    for (size_t i = 0; i < COUNT_OF(parts); i++) {
        html_format(h, "<li><a href=\"#%s\">%s</a></li>\n", parts[i].id, parts[i].name);
    }
    html_put(h, "<li><a href=\"#notes\">Notes</a></li>\n</ul></nav>\n</header>\n");
}

/* What stays in sight. */
static void put_state(struct view *v) {
    struct html *const h = &v->html;
    html_put(h, "<div id=\"bar\" role=\"region\" aria-label=\"Total\"><p>Total ");
    view_figure(v, v->e->sale.total, 0);
    html_words(h, " %s", v->e->rates->shop.currency.s);
    html_put(h, "</p><p>profit left ");
    view_figure(v, v->e->sale.profit_left, 0);
    html_put(h, "</p><p>hours ");
    view_figure(v, v->e->labor.hours, 0);
    html_put(h, "</p><p id=\"state\" role=\"status\">as the program made it</p>");
    html_put(h, "</div>\n");
}

static void put_problems(struct view *v, enum severity severity, const char *title) {
    struct html *const h = &v->html;
    const struct problems *const problems = v->facts->problems;
    if (problems_count(problems, severity) == 0) {
        return;
    }
    html_element(h, "h3", title);
    html_put(h, "<ul>\n");
    for (size_t i = 0; i < problems->count; i++) {
        const struct problem *const p = &problems->list[i];
        if (p->severity == severity) {
            html_put(h, "<li>");
            html_words(h, "%s%s: %s", problems_file_name(problems, p->place.file),
                       problems_place(problems, p->place).text, p->text);
            html_put(h, "</li>\n");
        }
    }
    html_put(h, "</ul>\n");
}

static void put_notes(struct view *v) {
    struct html *const h = &v->html;
    const struct caution_list told = cautions_needed(v->e, CAUTION_ALL, &h->pool);
    view_section(v, "notes", "Notes");
    put_problems(v, SEVERITY_WARNING, "Questions about the list and the rates");
    put_problems(v, SEVERITY_ACCEPTED, "Questions that the job accepts");
    html_element(h, "h3", "Cautions");
    html_put(h, "<ul>\n");
    for (size_t i = 0; i < told.count; i++) {
        html_element(h, "li", told.texts[i]);
    }
    html_put(h, "</ul>\n");
    html_element(
        h, "p class=\"note\"",
        "Every number that is underlined opens to how it was made. Each step is rounded to "
        "the decimals that it shows, half away from zero. For the shop alone: it shows "
        "what the job costs.");
    view_section_end(v);
}

static void put_script(struct view *v) {
    struct html *const h = &v->html;
    const struct job *const job = v->e->job;
    html_put(h, "<script type=\"application/json\" id=\"data\">{\"job\":");
    html_json(h, pool_words(&h->pool, "%s, %s, %s", job->title.s, text_or_empty(job->number.s),
                            estimate_name(v->e)));
    html_put(h, ",");
    page_rates_data(v);
    page_tape(v);
    html_put(h, "}</script>\n<script>\n\"use strict\";\n");
    html_put(h, page_replay);
    html_put(h, page_script);
    html_put(h, page_moving);
    html_put(h, "</script>\n");
}

bool page_write(const struct page_facts *facts, const char *path, const struct stop *stop) {
    struct view v = {.facts = facts, .e = facts->base, .stop = stop};
    const struct job *const job = v.e->job;
    struct pool pool;
    pool_init(&pool);
    const char *const title =
        pool_words(&pool, "%s%s%s: %s", show_paper(job), job->number.s == NULL ? "" : " ",
                   text_or_empty(job->number.s), job->title.s);
    bool held = html_open(&v.html, path, title, page_style, true);
    if (held) {
        html_put(&v.html, "<body>\n");
        put_head(&v);
        put_state(&v);
        html_put(&v.html, "<main>\n");
        for (size_t i = 0; i < COUNT_OF(parts) && !stop_asked(stop); i++) {
            parts[i].put(&v);
        }
        put_notes(&v);
        html_put(&v.html, "</main>\n");
        put_script(&v);
        html_put(&v.html, "</body>\n");
    }
    held = html_close(&v.html) && held;
    pool_clear(&pool);
    return held;
}
