/* SPDX-License-Identifier: MIT */
/* Lumber, sheets and glass to buy, each material a list down the sheet. */
#include "report/paper.h"

static const struct paper_line lumber_lines[] = {
    {"net, finished parts", offsetof(struct lumber_buy, net), LOOK_PLAIN, NULL},
    {"rough, with allowances", offsetof(struct lumber_buy, rough), LOOK_PLAIN, NULL},
    {"waste", offsetof(struct lumber_buy, waste), LOOK_PLAIN, NULL},
    {"net with waste", offsetof(struct lumber_buy, with_waste), LOOK_PLAIN, NULL},
    {"needed, as it is sold", offsetof(struct lumber_buy, needed), LOOK_PLAIN,
     "up to what the yard sells, at least its minimum"},
    {"cost of that", offsetof(struct lumber_buy, cost_as_needed), LOOK_PLAIN,
     "at the price for that much"},
    {"to buy", offsetof(struct lumber_buy, bought), LOOK_TOTAL,
     "up to a price break where the whole lot is then cheaper"},
    {"price", offsetof(struct lumber_buy, price), LOOK_PLAIN, NULL},
    {"cost", offsetof(struct lumber_buy, cost), LOOK_TOTAL, NULL},
    {"bought over net", offsetof(struct lumber_buy, factor), LOOK_PLAIN, NULL},
    {"waste added: bought / net - 1", offsetof(struct lumber_buy, waste_added), LOOK_PLAIN, NULL},
    {"yield: net / bought", offsetof(struct lumber_buy, yield), LOOK_PLAIN, NULL},
    {"of the waste: end and edge allowance", offsetof(struct lumber_buy, allowances), LOOK_PLAIN,
     "rough less net"},
    {"of the waste: the rest", offsetof(struct lumber_buy, rest), LOOK_PLAIN,
     "kerf, defects, offcuts, rounding up"},
};

static const struct paper_line sheet_lines[] = {
    {"area of the parts", offsetof(struct sheet_buy, net), LOOK_PLAIN, NULL},
    {"waste", offsetof(struct sheet_buy, waste), LOOK_PLAIN, NULL},
    {"area with waste", offsetof(struct sheet_buy, needed), LOOK_PLAIN, NULL},
    {"area of a sheet", offsetof(struct sheet_buy, each), LOOK_PLAIN, NULL},
    {"whole sheets to buy", offsetof(struct sheet_buy, whole), LOOK_TOTAL, NULL},
    {"half sheets to buy", offsetof(struct sheet_buy, half), LOOK_TOTAL,
     "where a half is enough for the last"},
    {"price", offsetof(struct sheet_buy, price), LOOK_PLAIN, NULL},
    {"price of a half", offsetof(struct sheet_buy, half_price), LOOK_PLAIN, NULL},
    {"area bought", offsetof(struct sheet_buy, bought), LOOK_PLAIN, NULL},
    {"cost", offsetof(struct sheet_buy, cost), LOOK_TOTAL, NULL},
    {"charged to the job", offsetof(struct sheet_buy, charged), LOOK_PLAIN, NULL},
    {"bought over net", offsetof(struct sheet_buy, factor), LOOK_PLAIN, NULL},
    {"waste added: bought / net - 1", offsetof(struct sheet_buy, waste_added), LOOK_PLAIN, NULL},
    {"yield: net / bought", offsetof(struct sheet_buy, yield), LOOK_PLAIN, NULL},
};

static const struct paper_line banding_lines[] = {
    {"banded edges", offsetof(struct banding_buy, net), LOOK_PLAIN, "round the slabs"},
    {"with waste", offsetof(struct banding_buy, needed), LOOK_PLAIN, NULL},
    {"rolls to buy", offsetof(struct banding_buy, rolls), LOOK_TOTAL, NULL},
    {"price", offsetof(struct banding_buy, price), LOOK_PLAIN, "of a roll, or by the length"},
    {"cost", offsetof(struct banding_buy, cost), LOOK_TOTAL, NULL},
};

static const struct paper_line glass_lines[] = {
    {"area charged", offsetof(struct glass_buy, area), LOOK_PLAIN,
     "sides rounded up, least area a pane; sizes on the sheet Parts"},
    {"of the cost: stops", offsetof(struct glass_buy, stops), LOOK_PLAIN, "what holds the panes"},
    {"cost", offsetof(struct glass_buy, cost), LOOK_TOTAL, NULL},
};

#define LINES(lines) lines, sizeof(lines) / sizeof *(lines)

static void set_widths(const struct paper *paper, uint16_t sheet) {
    book_width(paper->book, sheet, 0, 38);
    book_width(paper->book, sheet, 2, 12);
    book_width(paper->book, sheet, 3, 52);
}

/* The line of the waste percent tells which of its two readings is meant. */
static void note_waste(const struct paper *paper, uint16_t sheet, uint32_t row,
                       const struct value *waste, int as) {
    char words[64];
    waste_words(waste, (enum waste_as)as, words, sizeof words);
    book_text(paper->book, sheet, row, 3, LOOK_NOTE, words);
}

void sheet_lumber(struct paper *paper) {
    const struct lumber_list *const list = &paper->base->lumber;
    const uint16_t sheet = book_sheet(paper->book, "Lumber", "Lumber to buy", false);
    uint32_t row =
        paper_title(paper, sheet, "Lumber to buy",
                    "By waste factor. Net, rough and to buy are three different things.");
    set_widths(paper, sheet);
    for (size_t i = 0; i < list->count; i++) {
        const struct lumber *const lumber = &paper->base->rates->lumber[list->buys[i].material];
        book_format(paper->book, sheet, row, 0, LOOK_SECTION, "%s, %s", lumber->name.s,
                    lumber->thickness_text.s);
        note_waste(paper, sheet, row + 3, &lumber->waste, lumber->waste_as.word);
        row = paper_lines(paper, sheet, row + 1, LINES(lumber_lines), &list->buys[i]) + 1;
    }
    if (list->count == 0) {
        book_text(paper->book, sheet, row, 0, LOOK_PLAIN, "no lumber in this job");
    }
}

void sheet_sheets(struct paper *paper) {
    const struct sheet_list *const list = &paper->base->sheets;
    const struct glass_list *const glass = &paper->base->glass;
    const uint16_t sheet =
        book_sheet(paper->book, "Sheets", "Sheets, banding and glass to buy", false);
    uint32_t row = paper_title(paper, sheet, "Sheets, banding and glass to buy",
                               "By waste factor, up to whole sheets.");
    set_widths(paper, sheet);
    for (size_t i = 0; i < list->count; i++) {
        const struct sheet *const kind = &paper->base->rates->sheets[list->buys[i].material];
        book_text(paper->book, sheet, row, 0, LOOK_SECTION, kind->name.s);
        note_waste(paper, sheet, row + 2, &kind->waste, kind->waste_as.word);
        row = paper_lines(paper, sheet, row + 1, LINES(sheet_lines), &list->buys[i]) + 1;
    }
    for (size_t i = 0; i < paper->base->banding.count; i++) {
        const struct banding_buy *const b = &paper->base->banding.buys[i];
        book_format(paper->book, sheet, row, 0, LOOK_SECTION, "banding: %s",
                    paper->base->rates->bandings[b->banding].name.s);
        row = paper_lines(paper, sheet, row + 1, LINES(banding_lines), b) + 1;
    }
    for (size_t i = 0; i < glass->count; i++) {
        book_format(paper->book, sheet, row, 0, LOOK_SECTION, "glass: %s",
                    paper->base->rates->glass[glass->buys[i].material].name.s);
        row = paper_lines(paper, sheet, row + 1, LINES(glass_lines), &glass->buys[i]) + 1;
    }
    if (list->count + glass->count == 0) {
        book_text(paper->book, sheet, row, 0, LOOK_PLAIN, "no sheets and no glass in this job");
    }
}
