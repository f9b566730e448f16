/* SPDX-License-Identifier: MIT */
/* A price list for the client: what one door is sold for, by its size and by how many of it are
 * ordered. Of the table of sizes only prices are taken over. */
#include "base/text.h"
#include "model/construction.h"
#include "report/offer_make/offer_maker.h"
#include "report/words/show.h"

#include <string.h>

/* --- how the doors of a style are made --- */

static const char *add_words(struct offer_maker *m, const char *text, const char *label,
                             const char *words) {
    return words[0] == '\0'
               ? text
               : pool_words(m->pool, "%s%s%s: %s.", text, text[0] == '\0' ? "" : " ", label, words);
}

static const char *material_words(const struct offer_maker *m,
                                  const struct material_reference *material) {
    return offer_material(m->e->rates, material->kind, material->index);
}

static const char *parts_words(struct offer_maker *m, const struct style *style,
                               const struct construction *construction) {
    const enum door_form form = (enum door_form)style->form.choice;
    if (form == FORM_SLAB) {
        return add_words(m, "", "Slabs", material_words(m, &construction->slab));
    }
    const char *const text = add_words(m, "", "Frames", material_words(m, &construction->frame));
    if (form == FORM_OPEN) {
        return text;
    }
    return form == FORM_GLASS
               ? add_words(m, text, "Glass", material_words(m, &construction->glass))
               : add_words(m, text, "Panels",
                           material_words(m, construction_panel(construction, form)));
}

static const char *made_words(struct offer_maker *m, const struct size_style *style) {
    const struct construction construction =
        row_construction(m->e->job, &style->lines[0].row, m->e->option);
    const struct style *const is = &m->e->rates->styles[style->style];
    const char *const text = is->bought_in.set ? "Ready-made, in the wood of their maker."
                                               : parts_words(m, is, &construction);
    return add_words(m, text, "Finish", offer_finish(m, &construction));
}

/* --- the prices --- */

static struct offer_amount price_of(struct offer_maker *m, const struct size_table *t,
                                    const struct size_price *price) {
    return (struct offer_amount){.value = price->each,
                                 .decimals = t->money_decimals,
                                 .unit = UNIT_MONEY,
                                 .text = offer_sum(m, price->each, false)};
}

/* One way of a style, for the counts from `from` on. false: out of memory. */
static bool make_table(struct offer_maker *m, struct offer_price_table *table,
                       const struct size_table *t, const struct size_style *style,
                       enum size_way way, size_t from) {
    table->count =
        t->count_count - from < OFFER_MOST_COUNTS ? t->count_count - from : OFFER_MOST_COUNTS;
    table->head = way == SIZE_ADDED ? "Price of each, ordered together with this job"
                                    : "Price of each, ordered alone";
    table->sizes = pool_take(m->pool, style->line_count, sizeof *table->sizes);
    if (table->sizes == NULL) {
        return false;
    }
    table->size_count = style->line_count;
    for (size_t c = 0; c < table->count; c++) {
        table->counts[c] = pool_words(m->pool, "of %s", show_number(t->counts[from + c], 0).text);
    }
    for (size_t l = 0; l < style->line_count; l++) {
        const struct size_line *const line = &style->lines[l];
        struct offer_size *const size = &table->sizes[l];
        size->words = pool_words(
            m->pool, "%s",
            show_size(line->row.width.amount, line->row.height.amount, m->e->job->unit).text);
        for (size_t c = 0; c < table->count; c++) {
            const bool has = line->reason == NULL && line->prices[way][from + c].has;
            size->prices[c] = has ? price_of(m, t, &line->prices[way][from + c])
                                  : (struct offer_amount){.text = ""};
            m->offer->list_note =
                has ? m->offer->list_note : "A dash: a door of that size is not made so.";
        }
    }
    return true;
}

static bool make_tables(struct offer_maker *m, const struct size_table *t) {
    const size_t parts = (t->count_count + OFFER_MOST_COUNTS - 1) / OFFER_MOST_COUNTS;
    struct offer_prices *const prices = pool_take(m->pool, 1, sizeof *prices);
    struct offer_price_table *const tables =
        pool_take(m->pool, t->style_count * SIZE_WAY_COUNT * parts, sizeof *tables);
    if (prices == NULL || tables == NULL) {
        return false;
    }
    size_t count = 0;
    for (size_t s = 0; s < t->style_count; s++) {
        const struct size_style *const style = &t->styles[s];
        const struct style *const is = &m->e->rates->styles[style->style];
        const size_t first = count;
        for (int way = 0; way < SIZE_WAY_COUNT; way++) {
            for (size_t from = 0; from < t->count_count; from += OFFER_MOST_COUNTS) {
                tables[count] = (struct offer_price_table){.style = "", .made = ""};
                if (!make_table(m, &tables[count++], t, style, (enum size_way)way, from)) {
                    return false;
                }
            }
        }
        tables[first].style = offer_capital(
            m, text_or_empty(is->client_name.s != NULL ? is->client_name.s : is->name.s));
        tables[first].made = made_words(m, style);
    }
    *prices = (struct offer_prices){.tables = tables, .table_count = count};
    m->offer->prices = prices;
    return true;
}

/* --- the words --- */

static void say_prices(struct offer_maker *m, const struct size_table *table) {
    struct offer *const o = m->offer;
    const bool door =
        row_construction(m->e->job, &table->styles[0].lines[0].row, m->e->option).size_is.choice ==
        MEASURE_DOOR;
    if (o->mark[0] != '\0') {
        offer_add(&o->statements, "Example prices, made up: nothing can be ordered at them.");
    }
    if (o->estimate) {
        offer_add(&o->statements, "These prices are what doors are expected to come to. They bind "
                                  "neither side.");
    }
    offer_add(&o->statements,
              pool_words(m->pool,
                         "What one door comes to, by its size and by how many of that size are "
                         "ordered, in %s. Prices are before tax; discounts are taken off.",
                         o->currency));
    offer_add(&o->statements, pool_words(m->pool, "Sizes are width by height of the %s, in %s.",
                                         door ? "finished door" : "opening",
                                         m->e->job->unit == LENGTH_MM ? "millimeters" : "inches"));
}

/* Of what the head of the offer says when it was made and until when it holds. */
static void keep_dates(struct offer *o) {
    static const char *const kept[] = {"Option", "Date", "Valid until", "Prices until"};
    size_t count = 0;
    for (size_t i = 0; i < o->fact_count; i++) {
        bool keep = false;
        for (size_t k = 0; k < sizeof kept / sizeof *kept; k++) {
            keep = keep || strcmp(o->facts[i].label, kept[k]) == 0;
        }
        if (keep) {
            o->facts[count++] = o->facts[i];
        }
    }
    o->fact_count = count;
}

bool offer_prices_make(struct offer *list, const struct offer *of, const struct estimate *estimate,
                       const struct size_table *table) {
    enum { STATEMENTS = 4 };
    struct offer *const o = list;
    struct offer_maker m = {.offer = o, .pool = &o->pool, .e = estimate};
    *o = (struct offer){
        .paper = "Price list",
        .mark = of->mark,
        .currency = of->currency,
        .title = of->title,
        .shop = of->shop,
        .shop_lines = of->shop_lines,
        .logo = of->logo,
        .client = "",
        .client_address = "",
        .estimate = of->estimate,
        .letter = of->letter,
        .year = of->year,
        .month = of->month,
        .day = of->day,
        .fact_count = of->fact_count,
        .list_note = "",
    };
    memcpy(o->facts, of->facts, sizeof o->facts);
    keep_dates(o);
    pool_init(&o->pool);
    o->reference = pool_words(m.pool, "%s%s%s", o->paper, o->mark[0] == '\0' ? "" : ", ", o->mark);
    o->statements = (struct offer_texts){
        .text = pool_take(m.pool, STATEMENTS, sizeof *o->statements.text), .room = STATEMENTS};
    if (o->statements.text == NULL || !make_tables(&m, table)) {
        return false;
    }
    say_prices(&m, table);
    return !pool_failed(m.pool);
}
