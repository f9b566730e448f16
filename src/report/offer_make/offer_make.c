/* SPDX-License-Identifier: MIT */
#include "report/offer_make/offer_make.h"

#include "base/text.h"
#include "report/offer_make/offer_maker.h"
#include "report/words/shipped.h"
#include "report/words/show.h"

#include <assert.h>
#include <string.h>

void offer_add(struct offer_texts *texts, const char *text) {
    if (text != NULL && text[0] != '\0') {
        assert(texts->count < texts->room);
        texts->text[texts->count++] = text;
    }
}

const char *offer_capital(struct offer_maker *m, const char *text) {
    if (text == NULL) {
        return "";
    }
    char *const copy = pool_text(m->pool, text, strlen(text));
    if (copy != NULL && copy[0] >= 'a' && copy[0] <= 'z') {
        copy[0] = (char)(copy[0] - 'a' + 'A');
    }
    return text_or_empty(copy);
}

const char *offer_date(struct pool *pool, struct date date, bool metric) {
    static const char *const months[] = {"January",   "February", "March",    "April",
                                         "May",       "June",     "July",     "August",
                                         "September", "October",  "November", "December"};
    assert(date.month >= 1 && date.month <= 12);
    const char *const name = months[date.month - 1];
    return metric ? pool_words(pool, "%d %s %d", (int)date.day, name, (int)date.year)
                  : pool_words(pool, "%s %d, %d", name, (int)date.day, (int)date.year);
}

/* --- the head --- */

static void add_fact(struct offer *o, const char *label, const char *text) {
    if (text != NULL && text[0] != '\0') {
        assert(o->fact_count < OFFER_MOST_FACTS);
        o->facts[o->fact_count++] = (struct offer_pair){.label = label, .text = text};
    }
}

/* Who writes to whom. */
static void name_parties(struct offer_maker *m) {
    const struct job *const job = m->e->job;
    const struct shop *const shop = &m->e->rates->shop;
    struct offer *const o = m->offer;
    o->currency = text_or_empty(shop->currency.s);
    o->title = text_or_empty(job->title.s);
    o->shop = text_or_empty(shop->name.s);
    offer_add(&o->shop_lines, shop->address.s);
    offer_add(&o->shop_lines, shop->contact.s);
    offer_add(&o->shop_lines, shop->license.s);
    o->logo = (struct offer_logo){.bytes = shop->logo.bytes,
                                  .size = shop->logo.size,
                                  .width = shop->logo.width,
                                  .height = shop->logo.height};
    o->client = text_or_empty(job->client.s);
    o->client_address = text_or_empty(job->address.s);
}

static void name_paper(struct offer_maker *m) {
    const struct job *const job = m->e->job;
    const struct date date = {.year = job->year, .month = job->month, .day = job->day};
    const char *const number = text_or_empty(job->number.s);
    const bool metric = m->e->units.metric;
    struct offer *const o = m->offer;
    o->estimate = job->paper.choice == PAPER_ESTIMATE;
    o->letter = show_on_letter(m->e);
    o->year = job->year;
    o->month = job->month;
    o->day = job->day;
    o->paper = show_paper(job);
    o->mark = shipped_example(m->e) ? "example prices" : "";
    o->reference = pool_words(m->pool, "%s%s%s", o->paper, number[0] == '\0' ? "" : " ", number);
    if (job->revision.set) {
        o->reference =
            pool_words(m->pool, "%s, revision %d", o->reference, (int)job->revision.amount);
    }
    if (m->e->option >= 0) {
        o->reference = pool_words(m->pool, "%s, %s", o->reference, estimate_name(m->e));
    }
    if (o->mark[0] != '\0') {
        o->reference = pool_words(m->pool, "%s, %s", o->reference, o->mark);
    }
    m->until = job->valid.set
                   ? offer_date(m->pool, date_after(date, (int32_t)job->valid.amount), metric)
                   : "";
    add_fact(o, "Number", number);
    if (job->revision.set) {
        add_fact(o, "Revision", pool_words(m->pool, "%d", (int)job->revision.amount));
    }
    if (m->e->option >= 0) {
        add_fact(o, "Option", offer_capital(m, estimate_name(m->e)));
    }
    add_fact(o, "Replaces", job->replaces.s);
    add_fact(o, "Date", offer_date(m->pool, date, metric));
    if (job->agreed.to.s != NULL) {
        add_fact(o, "Agreed",
                 pool_words(m->pool, "%s, %s", offer_capital(m, job->agreed.to.s),
                            offer_date(m->pool, job->agreed.date, metric)));
    }
    add_fact(o, o->estimate ? "Prices until" : "Valid until", m->until);
    add_fact(o, "Ready", o->estimate ? NULL : offer_ready(m));
}

static void set_detail(struct offer_maker *m) {
    static const enum offer_detail details[] = {
        [PRICES_SUM] = OFFER_SUM,
        [PRICES_ROOMS] = OFFER_ROOMS,
        [PRICES_EACH] = OFFER_EACH,
    };
    m->offer->detail = details[m->e->job->detail.choice];
}

/* So many texts that no list is cut short: each row may be of something of its own. */
static bool make_room(struct offer_maker *m) {
    enum { LISTS = 8, OTHERS = 24 };
    struct offer *const o = m->offer;
    struct offer_texts *const lists[LISTS] = {&o->statements, &o->made,     &o->included,
                                              &o->excluded,   &o->notes,    &o->terms,
                                              &o->shop_lines, &o->pay_notes};
    const size_t room = OTHERS + OFFER_MADE_COUNT * m->e->quantities.count + m->e->hardware.count +
                        m->e->sale.charge_count + m->e->rates->shop.term_count +
                        m->e->labor.operation_count;
    for (size_t i = 0; i < LISTS; i++) {
        lists[i]->text = pool_take(m->pool, room, sizeof *lists[i]->text);
        lists[i]->room = room;
    }
    return !pool_failed(m->pool);
}

bool offer_make(struct offer *o, const struct estimate *estimate, const struct estimate *options,
                size_t option_count) {
    struct offer_maker m = {.offer = o, .pool = &o->pool, .e = estimate};
    *o = (struct offer){0};
    pool_init(&o->pool);
    if (!make_room(&m)) {
        return false;
    }
    name_parties(&m);
    name_paper(&m);
    set_detail(&m);
    if (!offer_doors(&m) || !offer_price(&m) || !offer_options(&m, options, option_count)) {
        return false;
    }
    offer_say(&m);
    return !pool_failed(&o->pool);
}
