/* SPDX-License-Identifier: MIT */
#include "report/visit/visit_pdf.h"

#include "base/text.h"
#include "report/draw/tag.h"
#include "report/visit/visit_parts.h"

#define MARGIN    36.0
#define FOOT      30.0
#define TITLE     "Measuring sheet"
#define MOST_MORE 8.0  /* of a row's height */
#define FIELD     0.48 /* of the width: a field of the head, two beside each other */

/* What to look for. The caution about paint is that of docs/cautions.md. */
static const char *const notes[] = {
    "Measure each width at the top, in the middle and at the bottom, each height left, middle and "
    "right, and write the smallest. Measure both diagonals: where they differ, say so in the note.",
    "Measure twice, with a tape of the shop's, and allow for floors and walls that are still to be "
    "finished.",
    "What would an open door strike: a wall, a lamp, a handle, an appliance? What runs behind the "
    "fronts: pipes, wires, vents? Leave live wires and gas to those licensed for them.",
    "Old paint may hold lead: no scraping or sanding here before it is tested; local rules come "
    "first.",
    "An opening may still change: measure again before the first cut.",
};

struct visit_sheet {
    const struct visit *visit;
    struct flow flow;
    struct pool pool;
    size_t pages; /* in all; 0 while they are counted */
    double more;  /* height of each row, of what the page has left */
};

static void draw_margins(void *what, struct flow *f) {
    struct visit_sheet *const s = what;
    const struct text_style style = {
        .size = VISIT_SMALL, .gray = 0.3, .width = f->width, .align = ALIGN_RIGHT};
    text_draw(f->pdf->cr, f->x, f->pdf->height - FOOT,
              pool_words(&s->pool, "page %zu of %zu; this sheet is number ____ of ____",
                         f->page + 1, s->pages),
              &style);
}

/* --- the head --- */

/* A name and what is known, or a line to write on; its height. */
static double draw_field(const struct flow *f, double x, const char *name, const char *known) {
    const struct text_style gray = {.size = VISIT_TEXT, .gray = 0.3};
    const double width = f->width * FIELD;
    const double room = text_measure(f->pdf->cr, name, &gray).width + 6;
    const struct text_style style = {.size = VISIT_TEXT + 1, .width = width - room};
    double high = tag_text(f->pdf->cr, "P", x, f->y + 1, name, &gray) + 1;
    if (known[0] != '\0') {
        const double taken = tag_text(f->pdf->cr, "P", x + room, f->y, known, &style);
        return taken > high ? taken : high;
    }
    cairo_save(f->pdf->cr);
    cairo_set_line_width(f->pdf->cr, 0.5);
    cairo_move_to(f->pdf->cr, x + room, f->y + high);
    cairo_line_to(f->pdf->cr, x + width, f->y + high);
    cairo_stroke(f->pdf->cr);
    cairo_restore(f->pdf->cr);
    return high;
}

static const char *job_words(struct visit_sheet *s) {
    const struct job *const job = s->visit->job;
    if (job == NULL) {
        return "";
    }
    return pool_words(&s->pool, "%s%s%s", text_or_empty(job->number.s),
                      job->number.s == NULL ? "" : ", ", text_or_empty(job->title.s));
}

static void draw_head(struct visit_sheet *s) {
    struct flow *const f = &s->flow;
    const struct job *const job = s->visit->job;
    const struct rates *const rates = s->visit->rates;
    const char *const fields[][2] = {
        {"Job", job_words(s)},
        {"Client", job == NULL ? "" : text_or_empty(job->client.s)},
        {"At", job == NULL ? "" : text_or_empty(job->address.s)},
        {"Measured by, date", ""},
    };
    const struct text_style shop = {.size = VISIT_TEXT + 1};
    flow_title(f, TITLE, (struct text_style){.size = 15, .bold = true});
    if (rates != NULL && rates->shop.name.s != NULL) {
        flow_text(f, rates->shop.name.s, shop);
    }
    f->y += 5;
    for (size_t i = 0; i < 4; i += 2) {
        const double left = draw_field(f, f->x, fields[i][0], fields[i][1]);
        const double right =
            draw_field(f, f->x + f->width * (1 - FIELD), fields[i + 1][0], fields[i + 1][1]);
        f->y += (left > right ? left : right) + 6;
    }
    f->y += 2;
    flow_text(f, visit_size_words(s->visit, &s->pool), (struct text_style){.size = VISIT_TEXT});
    f->y += 5;
    flow_text(f, visit_fit_words(s->visit, &s->pool), (struct text_style){.size = VISIT_TEXT});
    f->y += 6;
}

static void draw_notes(struct visit_sheet *s) {
    struct flow *const f = &s->flow;
    const char *names[VISIT_NAMES];
    const size_t count = visit_names(s->visit, &s->pool, names);
    f->y += 6;
    for (size_t i = 0; i < count; i++) {
        flow_text(f, names[i], (struct text_style){.size = VISIT_SMALL});
    }
    f->y += 4;
    for (size_t i = 0; i < sizeof notes / sizeof *notes; i++) {
        flow_text(f, pool_words(&s->pool, "- %s", notes[i]),
                  (struct text_style){.size = VISIT_SMALL});
    }
}

static bool draw(struct visit_sheet *s, const char *path, size_t *pages, struct pool *pool,
                 const char **lacking) {
    const struct visit *const v = s->visit;
    const struct job *const job = v->job;
    /* a blank sheet has no date of its own, and is the same bytes on any day */
    const struct pdf_facts facts = {
        .title = TITLE,
        .subject = job == NULL ? "" : text_or_empty(job->number.s),
        .author = v->rates == NULL ? "" : text_or_empty(v->rates->shop.name.s),
        .year = job == NULL ? 2000 : job->year,
        .month = job == NULL ? 1 : job->month,
        .day = job == NULL ? 1 : job->day,
        .letter = v->letter};
    struct pdf pdf;
    const bool open = pdf_open(&pdf, path, &facts);
    s->pages = *pages;
    s->flow = (struct flow){.pdf = &pdf,
                            .x = MARGIN,
                            .width = pdf.width - 2 * MARGIN,
                            .top = MARGIN,
                            .bottom = pdf.height - FOOT - 6,
                            .y = MARGIN,
                            .spread = 1,
                            .margins = draw_margins,
                            .what = s};
    if (open) {
        draw_head(s);
        visit_draw(&s->flow, job != NULL && job->construction.size_is.choice == MEASURE_DOOR);
        visit_table(&s->flow, v, s->more);
        draw_notes(s);
        if (*pages == 0 && s->flow.page == 0) {
            const double left = (s->flow.bottom - s->flow.y - 1) / VISIT_ROWS;
            s->more = left < MOST_MORE ? left : MOST_MORE;
        }
        flow_end(&s->flow);
        *pages = s->flow.page;
    }
    return pdf_close(&pdf, pool, lacking) && open;
}

bool visit_pdf_write(const struct visit *visit, const char *path, struct pool *pool,
                     const char **lacking) {
    struct visit_sheet s = {.visit = visit};
    size_t pages = 0;
    pool_init(&s.pool);
    const bool done = draw(&s, NULL, &pages, pool, lacking) &&
                      draw(&s, path, &pages, pool, lacking) && !pool_failed(&s.pool);
    pool_clear(&s.pool);
    return done;
}
