/* SPDX-License-Identifier: MIT */
/* Drawings of the doors, and the cutting plans. */
#include "report/doors/door_looks.h"
#include "report/page/page_parts.h"
#include "report/plan/plan_pages.h"

#include <stdlib.h>

/* A page of more pictures is slow to open; `doorcost draw` and `doorcost plan` have no such limit.
 */
#define MOST_DRAWINGS ((size_t)96)
#define MOST_PAGES    ((size_t)40)

static void put_looks(struct view *v, const struct door_looks *looks) {
    html_put(&v->html, "<div class=\"looks\">\n");
    for (size_t i = 0; i < looks->count && i < MOST_DRAWINGS; i++) {
        const struct door_look *const look = &looks->list[i];
        html_put(&v->html, "<figure>");
        html_drawing(&v->html, &look->elevation.drawing, true, look->alt);
        html_put(&v->html, "<figcaption>");
        html_element(&v->html, "b", look->ids);
        html_text(&v->html, look->words);
        html_put(&v->html, "</figcaption></figure>\n");
    }
    html_put(&v->html, "</div>\n");
    if (looks->count > MOST_DRAWINGS) {
        html_put(&v->html, "<p class=\"note\">");
        html_words(&v->html, "%zu more are not drawn here: 'doorcost draw' draws every row.",
                   looks->count - MOST_DRAWINGS);
        html_put(&v->html, "</p>\n");
    }
}

void page_doors(struct view *v) {
    struct door_looks looks;
    view_section(v, "doors", "Doors");
    html_element(&v->html, "p class=\"note\"",
                 "Finished sizes, seen from the front; hinge marks show side and number, not their "
                 "place; dashed lines meet at the hinged edge. Rows that look alike share a "
                 "drawing.");
    if (door_looks_make(&looks, v->e, MOST_DRAWINGS, &v->html.pool)) {
        put_looks(v, &looks);
    } else {
        v->html.failed = true;
    }
    view_section_end(v);
}

/* --- plans --- */

static bool put_page(struct view *v, struct plan_pages *pages, size_t at, struct image *image) {
    const char *const words = plan_pages_words(pages, at);
    unsigned char *png = NULL;
    size_t bytes = 0;
    if (!plan_pages_png(pages, at, image, &png, &bytes)) {
        return false;
    }
    html_put(&v->html, "<figure><figcaption>");
    html_text(&v->html, words);
    html_put(&v->html, "</figcaption><div class=\"plan\">");
    html_picture(&v->html, png, bytes, "plan",
                 pool_words(&v->html.pool, "Cutting plan of %s with its parts and cuts", words));
    html_put(&v->html, "</div></figure>\n");
    free(png);
    return true;
}

static bool put_pages(struct view *v, struct plan_pages *pages) {
    struct image image;
    bool held = true;
    image_open(&image, pages->width, pages->height, PLAN_PAGES_DOTS);
    html_put(&v->html, "<div class=\"plans\">\n");
    for (size_t i = 0; held && i < pages->count; i++) {
        held = !stop_asked(v->stop) && put_page(v, pages, i, &image);
    }
    html_put(&v->html, "</div>\n");
    image_close(&image);
    return held;
}

void page_plans(struct view *v) {
    struct plan_pages pages;
    bool held = plan_pages_make(&pages, v->e, MOST_PAGES);
    view_section(v, "plans", "Cutting plans");
    if (held && pages.count == 0) {
        html_element(&v->html, "p", "Nothing is cut by plan.");
    } else if (held) {
        html_element(&v->html, "p class=\"note\"",
                     "Chosen by the program for the sizes and rates of this run. Guards on; the "
                     "machine's manual comes first. See a board before you cut it: defects move "
                     "the cuts.");
        html_element(&v->html, "p class=\"again-plan\" hidden",
                     "A rate that the plans go by was changed: run again before you cut.");
        held = put_pages(v, &pages);
    }
    if (pages.more) {
        html_element(&v->html, "p class=\"note\"",
                     "The rest is not drawn here: 'doorcost plan' draws all of it.");
    }
    view_section_end(v);
    v->html.failed = v->html.failed || !held;
    plan_pages_clear(&pages);
}
