/* SPDX-License-Identifier: MIT */
/* Lumber, sheets and glass to buy, each material a list down the sheet. */
#include "base/text.h"
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"
#include "report/words/planned.h"
#include "report/words/show.h"

static void set_widths(const struct paper *paper, uint16_t sheet) {
    book_width(paper->book, sheet, 0, 34);
    book_width(paper->book, sheet, 2, 12);
    book_width(paper->book, sheet, 3, 48);
}

/* Both ways side by side; without a plan, why there is none. */
static void put_ways(const struct paper *paper, struct paper_list *list, const struct planned *p) {
    struct book *const book = paper->book;
    const uint16_t sheet = list->sheet;
    if (p->no_plan_reason != NULL) {
        book_format(book, sheet, list->row++, 0, LOOK_NOTE, "no cutting plan: %s",
                    p->no_plan_reason);
        return;
    }
    book_text(book, sheet, list->row, 0, LOOK_LABEL, "side by side");
    book_text(book, sheet, list->row, 1, LOOK_HEAD, "by factor");
    book_text(book, sheet, list->row++, 2, LOOK_HEAD, "by plan");
    for (size_t i = 0; i < p->way->count; i++) {
        const struct field *const field = &p->way->fields[i];
        const fig one = field_figure(field, p->by_factor);
        const fig other = field_figure(field, p->by_plan);
        const bool total = (field->views & FIELD_TOTAL) != 0;
        if ((field->views & FIELD_WAYS) == 0 || (fig_none(one) && fig_none(other))) {
            continue;
        }
        const enum look look = total ? LOOK_TOTAL : LOOK_PLAIN;
        book_text(book, sheet, list->row, 0, total ? LOOK_LABEL : LOOK_PLAIN, field_label(field));
        book_figure(book, sheet, list->row, 1, look, one);
        book_figure(book, sheet, list->row, 2, look, other);
        book_text(book, sheet, list->row++, 3, LOOK_UNIT,
                  paper_unit(paper, fig_none(one) ? other : one));
    }
}

/* Lumber or sheets of one kind: by factor, both ways, by plan. Returns the row after a gap. */
static uint32_t put_planned(const struct paper *paper, uint16_t sheet, uint32_t row,
                            const struct planned *p) {
    struct book *const book = paper->book;
    struct paper_list list = {.sheet = sheet, .figure = 1, .note = 3, .row = row + 1};
    const bool checked = p->no_plan_reason == NULL;
    book_format(book, sheet, row, 0, LOOK_SECTION, "%s%s%s", p->name,
                p->thickness == NULL ? "" : ", ", text_or_empty(p->thickness));
    book_format(book, sheet, row, 3, LOOK_NOTE, "the %s prices the job%s",
                p->planned ? "cutting plan" : "waste factor", checked ? "; the plan:" : "");
    paper_lines(paper, &list, p->needs, FIELD_SHEET, p->buy);
    /* the waste and what it leads to stand last: which of its two readings is meant */
    book_text(book, sheet, list.row - 2, 3, LOOK_NOTE, waste_words(p->waste_as));
    paper_lines(paper, &list, p->way, FIELD_SHEET, p->priced);
    paper_lines(paper, &list, p->job, FIELD_SHEET, p->buy);
    put_ways(paper, &list, p);
    if (checked) {
        check_plan(paper, sheet, row, p->chosen);
        paper_lines(paper, &list, p->plan, FIELD_SHEET, p->buy);
    }
    book_keep(book, sheet, row, list.row - 1);
    return list.row + 1;
}

/* What is bought by the piece: a list under its name. Returns the row after a gap. */
static uint32_t put_buy(const struct paper *paper, uint16_t sheet, uint32_t row, const char *kind,
                        const char *name, const struct field_table *table, const void *buy) {
    struct paper_list list = {.sheet = sheet, .figure = 1, .note = 3, .row = row + 1};
    book_format(paper->book, sheet, row, 0, LOOK_SECTION, "%s: %s", kind, name);
    paper_lines(paper, &list, table, FIELD_SHEET, buy);
    book_keep(paper->book, sheet, row, list.row - 1);
    return list.row + 1;
}

static uint32_t put_spares(const struct paper *paper, uint16_t sheet, uint32_t row,
                           const struct spare_rails *s) {
    const struct part *const part = &s->leaf->door->parts[s->part];
    struct paper_list list = {.sheet = sheet, .figure = 1, .note = 3, .row = row + 1};
    book_format(paper->book, sheet, row, 0, LOOK_SECTION, "spare rails: %s %s",
                paper->base->rates->lumber[part->material].name.s,
                show_size(part->width, part->length, paper->base->job->unit).text);
    check_spares(paper, sheet, row, s);
    paper_lines(paper, &list, &fields_spare, FIELD_SHEET, s);
    book_keep(paper->book, sheet, row, list.row - 1);
    return list.row + 1;
}

void sheet_lumber(const struct paper *paper, uint16_t sheet) {
    const struct lumber_list *const list = &paper->base->lumber;
    uint32_t row =
        paper_title(paper, sheet, 0, "Net, rough and to buy are three different things.");
    set_widths(paper, sheet);
    for (size_t i = 0; i < list->count; i++) {
        const struct planned p = planned_lumber(paper->base, i);
        row = put_planned(paper, sheet, row, &p);
    }
    for (size_t i = 0; i < paper->base->spares.count; i++) {
        row = put_spares(paper, sheet, row, &paper->base->spares.rails[i]);
    }
    if (list->count == 0) {
        book_text(paper->book, sheet, row, 0, LOOK_PLAIN, "no lumber in this job");
    }
}

void sheet_sheets(const struct paper *paper, uint16_t sheet) {
    const struct sheet_list *const list = &paper->base->sheets;
    const struct glass_list *const glass = &paper->base->glass;
    const struct rates *const rates = paper->base->rates;
    uint32_t row =
        paper_title(paper, sheet, 0, "By waste factor, up to whole sheets, and by cutting plan.");
    set_widths(paper, sheet);
    for (size_t i = 0; i < list->count; i++) {
        const struct planned p = planned_sheet(paper->base, i);
        row = put_planned(paper, sheet, row, &p);
    }
    for (size_t i = 0; i < paper->base->banding.count; i++) {
        const struct banding_buy *const b = &paper->base->banding.buys[i];
        row = put_buy(paper, sheet, row, "banding", rates->bandings[b->banding].name.s,
                      &fields_banding, b);
    }
    for (size_t i = 0; i < glass->count; i++) {
        const struct glass_buy *const b = &glass->buys[i];
        row =
            put_buy(paper, sheet, row, "glass", rates->glass[b->material].name.s, &fields_glass, b);
    }
    if (list->count + glass->count == 0) {
        book_text(paper->book, sheet, row, 0, LOOK_PLAIN, "no sheets and no glass in this job");
    }
}
