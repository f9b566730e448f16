/* SPDX-License-Identifier: MIT */
/* The keys that a job begins with, in the order of its file; and those that no other goes on with.
 */
#include "base/array.h"
#include "base/text.h"
#include "draft/defaults.h"

static const struct question rows[] = {
    {"job", "title", "What heads the quote?", true, default_title, NULL},
    {"job", "number", "The shop's own number of this job; the next one is offered.", true,
     default_number, NULL},
    {"job", "revision", NULL, true, NULL, NULL},
    {"job", "replaces", NULL, true, NULL, NULL},
    {"job", "client", "Who gets the quote?", true, NULL, NULL},
    {"job", "address", NULL, true, NULL, NULL},
    {"job", "deliver to", NULL, true, NULL, NULL},
    {"job", "measured by", NULL, true, NULL, NULL},
    {"job", "note", NULL, true, NULL, NULL},
    {"job", "date", NULL, true, default_date, NULL},
    {"job", "agreed", NULL, true, NULL, NULL},
    {"job", "valid", NULL, false, default_valid, NULL},
    {"job", "ready", NULL, false, NULL, NULL},
    {"job", "detail", NULL, false, NULL, NULL},
    {"job", "unit", "Inches or millimeters? The list of doors is in them, and so are the rates.",
     false, default_unit, lacks_rates},
    {"job", "rates", "The shop's prices and minutes: which file?", false, default_rates,
     wants_rates},
    {"job", "doors", "The list of doors to make: a workbook or CSV file in this folder.", true,
     default_doors, NULL},
    {"job", "own columns",
     "Columns of the list that are not known. Are they the shop's alone, and not to be read? - "
     "where not: then each is told.",
     true, default_own_columns, wants_own_columns},
    {"job", "terms", NULL, false, NULL, NULL},
    {"job", "accept", NULL, true, NULL, NULL},
    {"make", "style",
     "How doors are made where their row says nothing else; a [door] of the rates.", false,
     default_style, NULL},
    {"make", "frame", "The wood of stiles and rails; its price and waste come from the rates.",
     false, default_lumber, NULL},
    {"make", "panel", "What fills the frame: a sheet, or lumber for a solid panel.", false,
     default_panel, NULL},
    {"make", "solid panel", NULL, false, default_lumber, NULL},
    {"make", "slab", NULL, false, default_slab, NULL},
    {"make", "glass", NULL, false, default_glass, NULL},
    {"make", "finish", "What is sprayed, and so how much of it is bought.", false, default_finish,
     NULL},
    {"make", "color", "Its color; each is bought by itself.", true, NULL, wants_color},
    {"make", "hinge", NULL, false, default_hinge, NULL},
    {"make", "pull", "What doors are opened by; one a door.", false, default_pull, NULL},
    {"make", "measure", "Are the sizes of the list those of openings, or of finished doors?", false,
     default_measure, NULL},
    {"make", "overlay", "How far a door covers the cabinet, each side; - for inset doors.", false,
     default_overlay, wants_overlay},
    {"make", "reveal", "The gap between an inset door and its opening, each side.", false,
     default_reveal, wants_reveal},
    {"make", "gap", NULL, false, default_gap, NULL},
    {"sale", "tax name", NULL, false, NULL, NULL},
    {"sale", "tax", "Sales tax or VAT on the quote; your tax office tells what is taxed.", false,
     NULL, NULL},
    {"sale", "tax on", NULL, false, NULL, NULL},
    {"sale", "tax delivery", NULL, false, NULL, NULL},
    {"sale", "exempt", NULL, true, NULL, NULL},
    {"sale", "discount", NULL, true, NULL, NULL},
    {"sale", "discounts", NULL, false, NULL, NULL},
    {"sale", "card fee", NULL, false, NULL, NULL},
    {"sale", "deposit", "Part of the total that is due on order; some places cap it.", false, NULL,
     NULL},
    {"sale", "stages", NULL, false, NULL, NULL},
};

_Static_assert(COUNT_OF(rows) <= MOST_QUESTIONS, "answers have room");

const struct question *questions(size_t *count) {
    *count = COUNT_OF(rows);
    return rows;
}

size_t question_find(const char *section, const char *key) {
    size_t at = 0;
    while (at < COUNT_OF(rows) &&
           !(text_same(rows[at].section, section) && text_same(rows[at].key, key))) {
        at++;
    }
    return at;
}
