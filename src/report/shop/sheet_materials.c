/* SPDX-License-Identifier: MIT */
/* Lumber, sheets and glass to buy, each material a list down the sheet. */
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"

static const struct paper_line lumber_lines[] = {
    {"net, finished parts", offsetof(struct lumber_buy, net), LOOK_PLAIN, NULL},
    {"rough, with allowances", offsetof(struct lumber_buy, rough), LOOK_PLAIN, NULL},
    {"waste", offsetof(struct lumber_buy, waste), LOOK_PLAIN, NULL},
    {"net with waste", offsetof(struct lumber_buy, with_waste), LOOK_PLAIN, NULL},
    {"needed, as it is sold", offsetof(struct lumber_buy, priced.needed), LOOK_PLAIN,
     "up to what the yard sells, at least its minimum"},
    {"cost of that", offsetof(struct lumber_buy, priced.cost_as_needed), LOOK_PLAIN,
     "at the price for that much"},
    {"to buy", offsetof(struct lumber_buy, priced.bought), LOOK_TOTAL,
     "up to a price break where the whole lot is then cheaper"},
    {"price", offsetof(struct lumber_buy, priced.price), LOOK_PLAIN, NULL},
    {"cost", offsetof(struct lumber_buy, priced.cost), LOOK_TOTAL, NULL},
    {"bought over net", offsetof(struct lumber_buy, priced.factor), LOOK_PLAIN, NULL},
    {"waste added: bought / net - 1", offsetof(struct lumber_buy, priced.waste_added), LOOK_PLAIN,
     NULL},
    {"yield: net / bought", offsetof(struct lumber_buy, priced.yield), LOOK_PLAIN, NULL},
    {"of the waste: end and edge allowance", offsetof(struct lumber_buy, allowances), LOOK_PLAIN,
     "rough less net"},
    {"of the waste: the rest", offsetof(struct lumber_buy, priced.rest), LOOK_PLAIN,
     "kerf, defects, offcuts, rounding up"},
};

static const struct paper_line sheet_lines[] = {
    {"area of the parts", offsetof(struct sheet_buy, net), LOOK_PLAIN, NULL},
    {"waste", offsetof(struct sheet_buy, waste), LOOK_PLAIN, NULL},
    {"area with waste", offsetof(struct sheet_buy, needed), LOOK_PLAIN, NULL},
    {"area of a sheet", offsetof(struct sheet_buy, each), LOOK_PLAIN, NULL},
    {"whole sheets to buy", offsetof(struct sheet_buy, priced.whole), LOOK_TOTAL, NULL},
    {"half sheets to buy", offsetof(struct sheet_buy, priced.half), LOOK_TOTAL,
     "where a half is enough for the last"},
    {"price", offsetof(struct sheet_buy, price), LOOK_PLAIN, NULL},
    {"price of a half", offsetof(struct sheet_buy, half_price), LOOK_PLAIN, NULL},
    {"area bought", offsetof(struct sheet_buy, priced.bought), LOOK_PLAIN, NULL},
    {"cost", offsetof(struct sheet_buy, priced.cost), LOOK_TOTAL, NULL},
    {"charged to the job", offsetof(struct sheet_buy, charged), LOOK_PLAIN, NULL},
    {"bought over net", offsetof(struct sheet_buy, priced.factor), LOOK_PLAIN, NULL},
    {"waste added: bought / net - 1", offsetof(struct sheet_buy, priced.waste_added), LOOK_PLAIN,
     NULL},
    {"yield: net / bought", offsetof(struct sheet_buy, priced.yield), LOOK_PLAIN, NULL},
};

static const struct paper_line banding_lines[] = {
    {"banded edges", offsetof(struct banding_buy, net), LOOK_PLAIN, "round the slabs"},
    {"with waste", offsetof(struct banding_buy, needed), LOOK_PLAIN, NULL},
    {"rolls to buy", offsetof(struct banding_buy, rolls), LOOK_TOTAL, NULL},
    {"price", offsetof(struct banding_buy, price), LOOK_PLAIN, "of a roll, or by the length"},
    {"cost", offsetof(struct banding_buy, cost), LOOK_TOTAL, NULL},
};

/* A row of both ways side by side. */
struct way_line {
    const char *label;
    size_t offset; /* into the way */
    enum look look;
};
static const struct way_line lumber_ways[] = {
    {"to buy", offsetof(struct purchase_by, bought), LOOK_TOTAL},
    {"price", offsetof(struct purchase_by, price), LOOK_PLAIN},
    {"cost", offsetof(struct purchase_by, cost), LOOK_TOTAL},
    {"waste added: bought / net - 1", offsetof(struct purchase_by, waste_added), LOOK_PLAIN},
    {"yield: net / bought", offsetof(struct purchase_by, yield), LOOK_PLAIN},
};
static const struct way_line sheet_ways[] = {
    {"whole sheets", offsetof(struct sheet_purchase_by, whole), LOOK_TOTAL},
    {"half sheets", offsetof(struct sheet_purchase_by, half), LOOK_TOTAL},
    {"cost", offsetof(struct sheet_purchase_by, cost), LOOK_TOTAL},
    {"waste added: bought / net - 1", offsetof(struct sheet_purchase_by, waste_added), LOOK_PLAIN},
    {"yield: net / bought", offsetof(struct sheet_purchase_by, yield), LOOK_PLAIN},
};

static const struct paper_line lumber_plan_lines[] = {
    {"waste that the plan asks for", offsetof(struct lumber_buy, implied_waste), LOOK_TOTAL,
     "what the percent of waste in the rates would have been"},
    {"boards", offsetof(struct lumber_buy, plan.boards), LOOK_PLAIN, PAPER_CHOSEN},
    {"cuts", offsetof(struct lumber_buy, plan.cuts), LOOK_PLAIN,
     "ends, straightened edges, rips and crosscuts"},
    {"at the price of a small lot", offsetof(struct lumber_buy, plan.at_price), LOOK_PLAIN, NULL},
    {"no plan costs less than", offsetof(struct lumber_buy, plan.bound), LOOK_PLAIN,
     "proved by the planner at that price: docs/cutting.md"},
    {"net, finished parts", offsetof(struct lumber_buy, net), LOOK_PLAIN,
     "this and the lines below add up to what is bought by plan"},
    {"end and edge allowance", offsetof(struct lumber_buy, plan.allowances), LOOK_PLAIN, NULL},
    {"ends trimmed, edges straightened", offsetof(struct lumber_buy, plan.trim), LOOK_PLAIN, NULL},
    {"kerf", offsetof(struct lumber_buy, plan.kerf), LOOK_PLAIN, NULL},
    {"kept for defects", offsetof(struct lumber_buy, plan.defects), LOOK_PLAIN, NULL},
    {"offcuts", offsetof(struct lumber_buy, plan.offcuts), LOOK_PLAIN, NULL},
    {"tallied to whole feet of surface", offsetof(struct lumber_buy, plan.tally), LOOK_PLAIN,
     "the yard's rounding, down or up"},
    {"yard's minimum or price break", offsetof(struct lumber_buy, over_plan), LOOK_PLAIN, NULL},
    {"of the offcuts: worth keeping", offsetof(struct lumber_buy, plan.keep_worth), LOOK_PLAIN,
     NULL},
};

static const struct paper_line sheet_plan_lines[] = {
    {"waste that the plan asks for", offsetof(struct sheet_buy, implied_waste), LOOK_TOTAL,
     "what the percent of waste in the rates would have been"},
    {"cuts", offsetof(struct sheet_buy, plan.cuts), LOOK_PLAIN, "trims and all others"},
    {"no plan costs less than", offsetof(struct sheet_buy, plan.bound), LOOK_PLAIN,
     "proved by the planner: docs/cutting.md"},
    {"area of the parts", offsetof(struct sheet_buy, net), LOOK_PLAIN,
     "this and the lines below add up to the area bought by plan"},
    {"edges trimmed", offsetof(struct sheet_buy, plan.trim), LOOK_PLAIN, NULL},
    {"kerf", offsetof(struct sheet_buy, plan.kerf), LOOK_PLAIN, NULL},
    {"offcuts", offsetof(struct sheet_buy, offcuts), LOOK_PLAIN, NULL},
    {"of the offcuts: worth keeping", offsetof(struct sheet_buy, plan.keep_worth), LOOK_PLAIN,
     NULL},
};

static const struct paper_line glass_lines[] = {
    {"area charged", offsetof(struct glass_buy, area), LOOK_PLAIN,
     "sides rounded up, least area a pane; sizes on the sheet Parts"},
    {"of the cost: stops", offsetof(struct glass_buy, stops), LOOK_PLAIN, "what holds the panes"},
    {"cost", offsetof(struct glass_buy, cost), LOOK_TOTAL, NULL},
};

#define LINES(lines) lines, sizeof(lines) / sizeof *(lines)

static void set_widths(const struct paper *paper, uint16_t sheet) {
    book_width(paper->book, sheet, 0, 34);
    book_width(paper->book, sheet, 2, 12);
    book_width(paper->book, sheet, 3, 48);
}

/* The line of the waste percent tells which of its two readings is meant. */
static void note_waste(const struct paper *paper, uint16_t sheet, uint32_t row, int as) {
    book_text(paper->book, sheet, row, 3, LOOK_NOTE, waste_words((enum waste_as)as));
}

/* Both ways side by side; without a plan, why there is none. Returns the row after. */
static uint32_t put_ways(const struct paper *paper, uint16_t sheet, uint32_t row,
                         const struct way_line *lines, size_t count, const void *factor,
                         const void *plan, const char *missing) {
    struct book *const book = paper->book;
    if (missing != NULL) {
        book_format(book, sheet, row, 0, LOOK_NOTE, "no cutting plan: %s", missing);
        return row + 1;
    }
    book_text(book, sheet, row, 0, LOOK_LABEL, "side by side");
    book_text(book, sheet, row, 1, LOOK_HEAD, "by factor");
    book_text(book, sheet, row, 2, LOOK_HEAD, "by plan");
    row++;
    for (size_t i = 0; i < count; i++) {
        const fig one = paper_at(factor, lines[i].offset);
        const fig other = paper_at(plan, lines[i].offset);
        if (fig_none(one) && fig_none(other)) {
            continue;
        }
        book_text(book, sheet, row, 0, lines[i].look == LOOK_TOTAL ? LOOK_LABEL : LOOK_PLAIN,
                  lines[i].label);
        book_figure(book, sheet, row, 1, lines[i].look, one);
        book_figure(book, sheet, row, 2, lines[i].look, other);
        book_text(book, sheet, row, 3, LOOK_UNIT, paper_unit(paper, fig_none(one) ? other : one));
        row++;
    }
    return row;
}

/* The way that prices the job, over the lines that it gave. */
static void note_priced(const struct paper *paper, uint16_t sheet, uint32_t row, bool planned,
                        bool checked) {
    book_format(paper->book, sheet, row, 3, LOOK_NOTE, "the %s prices the job%s",
                planned ? "cutting plan" : "waste factor", checked ? "; the plan:" : "");
}

void sheet_lumber(struct paper *paper) {
    const struct lumber_list *const list = &paper->base->lumber;
    const uint16_t sheet = book_sheet(paper->book, "Lumber", "Lumber to buy", false);
    uint32_t row =
        paper_title(paper, sheet, "Lumber to buy",
                    "By waste factor and by cutting plan. Net, rough and to buy are three "
                    "different things.");
    set_widths(paper, sheet);
    for (size_t i = 0; i < list->count; i++) {
        const struct lumber *const lumber = &paper->base->rates->lumber[list->buys[i].material];
        book_format(paper->book, sheet, row, 0, LOOK_SECTION, "%s, %s", lumber->name.s,
                    lumber->thickness_text.s);
        const struct lumber_buy *const b = &list->buys[i];
        const uint32_t head = row;
        note_priced(paper, sheet, row, b->planned, b->plan.no_plan_reason == NULL);
        note_waste(paper, sheet, row + 3, lumber->waste_as.choice);
        row = paper_lines(paper, sheet, row + 1, LINES(lumber_lines), b);
        if (b->plan.no_plan_reason == NULL) {
            check_plan(paper, sheet, head, b->plan.counts[0]);
        }
        row = put_ways(paper, sheet, row, LINES(lumber_ways), &b->by_factor, &b->by_plan,
                       b->plan.no_plan_reason);
        if (b->plan.no_plan_reason == NULL) {
            row = paper_lines(paper, sheet, row, LINES(lumber_plan_lines), b);
        }
        book_keep(paper->book, sheet, head, row - 1);
        row++;
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
                               "By waste factor, up to whole sheets, and by cutting plan.");
    set_widths(paper, sheet);
    for (size_t i = 0; i < list->count; i++) {
        const struct sheet *const kind = &paper->base->rates->sheets[list->buys[i].material];
        book_text(paper->book, sheet, row, 0, LOOK_SECTION, kind->name.s);
        const struct sheet_buy *const b = &list->buys[i];
        const uint32_t head = row;
        note_priced(paper, sheet, row, b->planned, b->plan.no_plan_reason == NULL);
        note_waste(paper, sheet, row + 2, kind->waste_as.choice);
        row = paper_lines(paper, sheet, row + 1, LINES(sheet_lines), b);
        if (b->plan.no_plan_reason == NULL) {
            check_plan(paper, sheet, head, b->plan.counts[SHEET_WHOLE]);
        }
        row = put_ways(paper, sheet, row, LINES(sheet_ways), &b->by_factor, &b->by_plan,
                       b->plan.no_plan_reason);
        if (b->plan.no_plan_reason == NULL) {
            row = paper_lines(paper, sheet, row, LINES(sheet_plan_lines), b);
        }
        book_keep(paper->book, sheet, head, row - 1);
        row++;
    }
    for (size_t i = 0; i < paper->base->banding.count; i++) {
        const struct banding_buy *const b = &paper->base->banding.buys[i];
        book_format(paper->book, sheet, row, 0, LOOK_SECTION, "banding: %s",
                    paper->base->rates->bandings[b->banding].name.s);
        const uint32_t head = row;
        row = paper_lines(paper, sheet, row + 1, LINES(banding_lines), b) + 1;
        book_keep(paper->book, sheet, head, row - 2);
    }
    for (size_t i = 0; i < glass->count; i++) {
        book_format(paper->book, sheet, row, 0, LOOK_SECTION, "glass: %s",
                    paper->base->rates->glass[glass->buys[i].material].name.s);
        const uint32_t head = row;
        row = paper_lines(paper, sheet, row + 1, LINES(glass_lines), &glass->buys[i]) + 1;
        book_keep(paper->book, sheet, head, row - 2);
    }
    if (list->count + glass->count == 0) {
        book_text(paper->book, sheet, row, 0, LOOK_PLAIN, "no sheets and no glass in this job");
    }
}
