/* SPDX-License-Identifier: MIT */
/* The quote: who, what, the doors by room, from their sum to what is to be paid and when. */
#include "base/array.h"
#include "base/text.h"
#include "report/shop/check_cell.h"
#include "report/shop/paper.h"
#include "report/words/difference.h"
#include "report/words/door_words.h"
#include "report/words/sale_line.h"
#include "report/words/show.h"

enum {
    COLUMN_ID,
    COLUMN_WHAT,
    COLUMN_WIDTH,
    COLUMN_HEIGHT,
    COLUMN_COUNT,
    COLUMN_LEAVES,
    COLUMN_UNIT,
    COLUMN_AMOUNT
};

struct page {
    const struct paper *paper;
    struct book *book;
    const struct estimate *e;
    uint16_t sheet;
    uint32_t row;
};

static void pair_line(struct page *p, const char *label, const char *text) {
    if (text == NULL || text[0] == '\0') {
        return;
    }
    book_text(p->book, p->sheet, p->row, COLUMN_ID, LOOK_LABEL, label);
    book_text(p->book, p->sheet, p->row++, COLUMN_WHAT, LOOK_PLAIN, text);
}

/* Who it is from and for. */
static void put_parties(struct page *p) {
    const struct job *const job = p->e->job;
    const struct shop *const shop = &p->e->rates->shop;
    const uint32_t first = p->row;
    pair_line(p, "From", shop->name.s);
    pair_line(p, "", shop->address.s);
    pair_line(p, "", shop->contact.s);
    pair_line(p, "For", job->client.s);
    pair_line(p, "", job->address.s);
    pair_line(p, "Number", job->number.s);
    pair_line(p, "Agreed", show_agreed(&p->book->pool, p->e));
    pair_line(p, "Date", job->date.s);
    if (job->valid.set) {
        pair_line(p, "Valid until", show_valid_until(job).text);
    }
    pair_line(p, "Ready", show_ready(&p->book->pool, p->e));
    pair_line(p, "Measured by", job->measured_by.s);
    book_keep(p->book, p->sheet, first, p->row);
    p->row++;
}

static void put_words(struct page *p, const struct leaf_figures *leaf) {
    const struct row *const row = leaf->door->row;
    const char *const finish = leaf->door->construction->finish.index < 0
                                   ? "bare"
                                   : leaf->door->construction->finish.name.s;
    const char *const more[] = {show_note(leaf->door), text_or_empty(row->extra_words.s)};
    const char *text = pool_words(&p->book->pool, "%s, %s, %s", show_door(leaf->door),
                                  show_style(leaf->door), finish);
    for (size_t i = 0; i < COUNT_OF(more); i++) {
        text = more[i][0] == '\0' ? text : pool_words(&p->book->pool, "%s; %s", text, more[i]);
    }
    book_text(p->book, p->sheet, p->row, COLUMN_WHAT, LOOK_WRAP, text);
}

static void put_door(struct page *p, size_t r) {
    const struct leaf_figures *const leaf = &p->e->quantities.leaves[r];
    const struct door_price *const price = &p->e->costs.doors[r];
    book_text(p->book, p->sheet, p->row, COLUMN_ID, LOOK_LABEL, leaf->door->row->id.s);
    put_words(p, leaf);
    book_mention(p->book, p->sheet, p->row, COLUMN_WIDTH, LOOK_PLAIN, leaf->width);
    book_mention(p->book, p->sheet, p->row, COLUMN_HEIGHT, LOOK_PLAIN, leaf->height);
    book_mention(p->book, p->sheet, p->row, COLUMN_COUNT, LOOK_PLAIN, leaf->openings);
    book_mention(p->book, p->sheet, p->row, COLUMN_LEAVES, LOOK_PLAIN, leaf->leaves);
    book_mention(p->book, p->sheet, p->row, COLUMN_UNIT, LOOK_PLAIN, price->unit);
    book_mention(p->book, p->sheet, p->row++, COLUMN_AMOUNT, LOOK_PLAIN, price->amount);
}

/* The amounts from a row on are to come to a figure. */
static void add_up(struct page *p, const char *what, uint32_t first, fig total) {
    const int column = 'A' + COLUMN_AMOUNT;
    check_add_sum(p->paper->checks,
                  &(struct check_sum){.what = what,
                                      .formula = pool_words(&p->book->pool, "SUM(%s!%c%u:%c%u)",
                                                            p->book->sheets[p->sheet].name, column,
                                                            first + 1, column, p->row),
                                      .total = total});
}

static void put_doors(struct page *p) {
    static const char *const heads[] = {"id",    "what",   "width",     "height",
                                        "count", "leaves", "each leaf", "amount"};
    const struct sale_figures *const sale = &p->e->sale;
    paper_heads(p->paper, p->sheet, p->row, 0, LOOK_HEAD, heads, sizeof heads / sizeof *heads);
    paper_headings(p->paper, p->sheet, p->row++, 0);
    const uint32_t first = p->row;
    for (size_t i = 0; i < sale->room_count; i++) {
        const struct room_sum *const room = &sale->rooms[i];
        if (room->room[0] != '\0') {
            book_keep(p->book, p->sheet, p->row, p->row + 1);
            book_text(p->book, p->sheet, p->row++, COLUMN_ID, LOOK_PART, room->room);
        }
        for (size_t n = 0; n < room->count; n++) {
            put_door(p, sale->by_room[room->first + n]);
        }
    }
    add_up(p, "amounts of the doors", first, sale->doors);
    p->row++;
}

/* A line of the sale: sums under a line, the total as what the sheet is for. */
static void sale_line(struct page *p, const struct sale_line *line) {
    const bool grand = sale_line_is(line, offsetof(struct sale_figures, total));
    const bool sum = line->field != NULL && (line->field->views & FIELD_TOTAL) != 0;
    const enum look look = grand ? LOOK_GRAND : sum ? LOOK_TOTAL : LOOK_PLAIN;
    book_text(p->book, p->sheet, p->row, COLUMN_WHAT, sum ? LOOK_LABEL : LOOK_PLAIN, line->label);
    if (!fig_none(line->rate)) {
        book_mention(p->book, p->sheet, p->row, COLUMN_UNIT, LOOK_PLAIN, line->rate);
    }
    if (line->less) {
        book_negated(p->book, p->sheet, p->row++, COLUMN_AMOUNT, look, line->money);
    } else {
        book_figure(p->book, p->sheet, p->row++, COLUMN_AMOUNT, look, line->money);
    }
}

static void put_sums(struct page *p) {
    const uint32_t first = p->row;
    uint32_t behind = p->row; /* the total: payments */
    const struct sale_lines sale = sale_lines_make(&p->book->pool, p->e);
    for (size_t i = 0; i < sale.count; i++) {
        const bool total = sale_line_is(&sale.lines[i], offsetof(struct sale_figures, total));
        const char *const exempt = total ? sale_exempt(&p->book->pool, p->e) : NULL;
        if (exempt != NULL) {
            book_text(p->book, p->sheet, p->row++, COLUMN_WHAT, LOOK_PLAIN, exempt);
        }
        if (!fig_none(sale.lines[i].money)) {
            sale_line(p, &sale.lines[i]);
        }
        if (total) {
            check_all(p->paper, p->sheet, p->row++, COLUMN_WHAT, LOOK_NOTE);
            behind = p->row;
        }
    }
    if (p->row > behind) {
        add_up(p, "payments", behind, p->e->sale.total);
    }
    book_keep(p->book, p->sheet, first, p->row - 1);
    p->row++;
}

/* One text behind another. */
static const char *joined(struct page *p, const char *first, const char *second) {
    const char *const text = pool_format(&p->book->pool, "%s%s", first, second);
    return text == NULL ? "" : text;
}

/* ", oak": what an option makes of another wood or finish; empty where its name says so already. */
static const char *changed_to(struct page *p, const char *name, const char *to) {
    if (to == NULL || text_same(name, to)) {
        return "";
    }
    return joined(p, ", ", to);
}

/* What an option would cost, and how it differs. Plain values: estimated on a tape of their own. */
static void put_options(struct page *p) {
    const int64_t base = tape_amount(&p->e->tape, p->e->sale.total);
    const uint8_t decimals = tape_decimals(&p->e->tape, p->e->sale.total);
    if (p->paper->option_count == 0) {
        return;
    }
    book_keep(p->book, p->sheet, p->row, p->row + (uint32_t)p->paper->option_count + 1);
    book_text(p->book, p->sheet, p->row, COLUMN_ID, LOOK_SECTION, "Options");
    book_text(p->book, p->sheet, p->row, COLUMN_UNIT, LOOK_HEAD, "difference");
    book_text(p->book, p->sheet, p->row++, COLUMN_AMOUNT, LOOK_HEAD, "total");
    for (size_t i = 0; i < p->paper->option_count; i++) {
        const struct estimate *const o = &p->paper->options[i];
        const struct construction *const changes = &o->job->options[o->option].changes;
        const int64_t total = tape_amount(&o->tape, o->sale.total);
        const char *const name = estimate_name(o);
        const char *const wood = changed_to(p, name, changes->frame.name.s);
        const char *const finish = changed_to(p, name, changes->finish.name.s);
        const bool adds = o->job->options[o->option].price.choice == OPTION_ADDS;
        book_format(p->book, p->sheet, p->row, COLUMN_WHAT, LOOK_WRAP, "%s%s%s; %s the total above",
                    name, wood, finish, adds ? "adds to" : "in place of");
        book_number(p->book, p->sheet, p->row, COLUMN_UNIT, LOOK_DIFFERENCE, UNIT_MONEY, decimals,
                    total - base);
        book_number(p->book, p->sheet, p->row++, COLUMN_AMOUNT, LOOK_PLAIN, UNIT_MONEY, decimals,
                    total);
    }
    check_options(p->paper, p->sheet, p->row++, COLUMN_WHAT);
    p->row++;
}

static void put_by_others(struct page *p) {
    const struct hardware_list *const list = &p->e->hardware;
    for (size_t i = 0; i < list->count; i++) {
        if (list->buys[i].by_others) {
            char count[32];
            book_format(p->book, p->sheet, p->row++, COLUMN_WHAT, LOOK_PLAIN,
                        "by others, not in the price: %s %s",
                        tape_text(&p->e->tape, list->buys[i].needed, count, sizeof count),
                        p->e->rates->hardware[list->buys[i].hardware].name.s);
        }
    }
}

static void put_terms(struct page *p) {
    const struct job *const job = p->e->job;
    const uint32_t first = p->row;
    put_by_others(p);
    if (job->note.s != NULL) {
        book_span(p->book, p->sheet, p->row++, COLUMN_WHAT, COLUMN_AMOUNT, LOOK_WRAP, job->note.s);
    }
    if (job->terms.s != NULL) {
        book_span(p->book, p->sheet, p->row++, COLUMN_WHAT, COLUMN_AMOUNT, LOOK_WRAP, job->terms.s);
    }
    book_span(p->book, p->sheet, p->row++, COLUMN_WHAT, COLUMN_AMOUNT, LOOK_WRAP,
              "Made to the sizes above. Wood moves and its color and grain vary. Prices hold for "
              "the whole list, until the date above.");
    const struct caution_list told =
        cautions_needed(p->e, CAUTION_QUOTE | CAUTION_CLIENT, &p->book->pool);
    for (size_t i = 0; i < told.count; i++) {
        book_span(p->book, p->sheet, p->row++, COLUMN_WHAT, COLUMN_AMOUNT, LOOK_WRAP,
                  told.texts[i]);
    }
    book_text(p->book, p->sheet, first, COLUMN_ID, LOOK_LABEL, "Terms");
    book_keep(p->book, p->sheet, first, p->row - 1);
}

void sheet_quote(const struct paper *paper, uint16_t sheet) {
    struct page p = {.paper = paper, .book = paper->book, .e = paper->base, .sheet = sheet};
    const struct job *const job = paper->base->job;
    book_width(paper->book, sheet, COLUMN_ID, 13);
    book_width(paper->book, sheet, COLUMN_WHAT, 46);
    p.row = paper_title(paper, sheet, 0,
                        pool_words(&paper->book->pool, "%s: %s%s.", show_paper(job), job->title.s,
                                   shipped_example(paper->base) ? "; example prices" : ""));
    put_doors(&p);
    put_sums(&p);
    put_options(&p);
    book_heads_end(p.book, sheet, p.row);
    put_parties(&p);
    put_terms(&p);
}
