/* SPDX-License-Identifier: MIT */
/* What an offer says beside the price: to whose sizes, of what, what is part of it and what is not.
 * Each sentence is drawn from the inputs; where they say nothing, the cautious reading is printed.
 */
#include "base/text.h"
#include "model/name.h"
#include "report/offer_make/offer_maker.h"
#include "report/words/caution.h"
#include "report/words/show.h"

/* --- the sentences at the head --- */

static const char *sizes_words(struct offer_maker *m) {
    const char *const by = m->e->job->measured_by.s;
    return by == NULL
               ? "Made to the finished sizes below."
               : pool_words(m->pool, "Made to the finished sizes below, from measurements by %s.",
                            by);
}

static void state_estimate(struct offer_maker *m) {
    struct offer *const o = m->offer;
    offer_add(&o->statements,
              "This is an estimate: what the doors are expected to come to. It binds neither side; "
              "a price that holds is given in a quote, on request.");
    offer_add(&o->statements, sizes_words(m));
    offer_add(&o->statements,
              m->until[0] == '\0'
                  ? "It is worked out for the whole list."
                  : pool_words(m->pool,
                               "It is worked out for the whole list, at prices that are expected "
                               "to last until %s.",
                               m->until));
}

static void state_quote(struct offer_maker *m) {
    struct offer *const o = m->offer;
    const struct shop *const shop = &m->e->rates->shop;
    offer_add(&o->statements,
              pool_words(m->pool, "%s for what is listed here%s.",
                         shop->invented ? "At the shop's own prices this would be a quote: the "
                                          "price would hold"
                                        : "This is a quote: the price holds",
                         shop->term_count > 0 ? ", under the terms below" : ""));
    offer_add(&o->statements, sizes_words(m));
    offer_add(&o->statements,
              m->until[0] == '\0'
                  ? "The prices hold only if the whole list is ordered."
                  : pool_words(m->pool,
                               "The prices hold until %s, and only if the whole list is "
                               "ordered.",
                               m->until));
}

/* What it puts out of force. */
static void state_replaced(struct offer_maker *m) {
    struct offer *const o = m->offer;
    const struct job *const job = m->e->job;
    const char *const other = text_or_empty(job->replaces.s);
    if (job->revision.set || other[0] != '\0') {
        offer_add(&o->statements,
                  pool_words(m->pool, "It replaces %s%s%s%s; what they said no longer holds.",
                             job->revision.set ? "every earlier one of the number " : "",
                             job->revision.set ? text_or_empty(job->number.s) : "",
                             job->revision.set && other[0] != '\0' ? ", and " : "", other));
    }
}

const char *offer_ready(struct offer_maker *m) {
    const struct job *const job = m->e->job;
    const bool metric = m->e->units.metric;
    if (m->e->ready == 0) {
        return job->ready.s;
    }
    const char *const day = offer_date(m->pool, date_of_number(m->e->ready), metric);
    return job->planned.dated ? pool_words(m->pool, "%s, if work begins by %s", day,
                                           offer_date(m->pool, job->planned.from, metric))
                              : day;
}

/* When the doors will be ready stands in the head of a quote; where nothing is said, no date is
 * promised. */
static void state_ready(struct offer_maker *m) {
    struct offer *const o = m->offer;
    const char *const ready = offer_ready(m);
    if (ready == NULL) {
        offer_add(&o->statements, "When the doors will be ready is agreed with the order.");
    } else if (o->estimate) {
        offer_add(&o->statements, pool_words(m->pool, "Expected to be ready: %s.", ready));
    }
}

/* At which side doors hang whose rows do not say. */
static void state_sides(struct offer_maker *m) {
    struct offer *const o = m->offer;
    bool *const in = pool_take(m->pool, o->door_count, sizeof *in);
    bool any = false;
    for (size_t d = 0; d < o->door_count && in != NULL; d++) {
        in[d] = offer_lacks_side(offer_leaf(m, d));
        any = any || in[d];
    }
    if (any) {
        offer_add(&o->statements, pool_words(m->pool, "Hinge side still to be agreed: %s.",
                                             offer_ids(m, in, OFFER_EVERY_ID)));
    }
}

/* --- what is part of it --- */

/* The rows that a piece of hardware is on; "" where it is the only one of its role. */
static const char *rows_of(struct offer_maker *m, const struct hardware_buy *buy) {
    const struct offer *const o = m->offer;
    const struct hardware_list *const list = &m->e->hardware;
    size_t alike = 0;
    for (size_t i = 0; i < list->count; i++) {
        alike += list->buys[i].role == buy->role ? 1 : 0;
    }
    bool *const in = pool_take(m->pool, o->door_count, sizeof *in);
    if (alike < 2 || in == NULL) {
        return "";
    }
    for (size_t d = 0; d < o->door_count; d++) {
        in[d] = !fig_none(hardware_on_leaf(buy, offer_leaf(m, d)));
    }
    return pool_words(m->pool, ", for %s", offer_ids(m, in, OFFER_FEW_IDS));
}

/* any: set for each role that a piece is in. */
static void say_hardware(struct offer_maker *m, bool *any) {
    static const char *const roles[ROLE_COUNT] = {
        [ROLE_HINGE] = "Hinges", [ROLE_PULL] = "Pulls", [ROLE_OTHER] = "Other hardware"};
    struct offer *const o = m->offer;
    const struct hardware_list *const list = &m->e->hardware;
    for (size_t i = 0; i < list->count; i++) {
        const struct hardware_buy *const buy = &list->buys[i];
        any[buy->role] = true;
        const char *const text =
            pool_words(m->pool, "%s: %s, %s %s%s", roles[buy->role],
                       offer_hardware(m->e->rates, buy->hardware), show(m->e, buy->needed).text,
                       buy->by_others ? "needed, by others" : "supplied", rows_of(m, buy));
        offer_add(buy->by_others ? &o->excluded : &o->included, text);
    }
}

/* The rows that alone have an operation, by their own `also`; "" where it is not for them alone. */
static const char *rows_alone(struct offer_maker *m, int32_t operation) {
    const struct offer *const o = m->offer;
    bool *const in = pool_take(m->pool, o->door_count, sizeof *in);
    bool any = false;
    for (size_t d = 0; in != NULL && d < o->door_count; d++) {
        in[d] = references_hold(&offer_leaf(m, d)->door->row->also, operation);
        any = any || in[d];
    }
    return any ? pool_words(m->pool, ", for %s", offer_ids(m, in, OFFER_EVERY_ID)) : "";
}

/* Says of each operation that is done here and that the client has a word for that it is included.
 * done: set for each task that one of them does. */
static void say_operations(struct offer_maker *m, bool *done) {
    static const char *const words[TASK_COUNT] = {
        [TASK_BORING] = "Boring the doors for their hinges",
        [TASK_HINGES] = "Fitting the hinges to the doors",
        [TASK_HANGING] = "Hanging and adjusting the doors on the cabinets",
        [TASK_PULLS] = "Drilling for pulls and knobs, and fitting them",
        [TASK_HARDWARE] = "Fitting the other hardware to the doors",
    };
    const struct labor *const labor = &m->e->labor;
    for (size_t i = 0; i < labor->operation_count; i++) {
        const int32_t index = labor->operations[i].operation;
        const struct operation *const op = &m->e->rates->operations[index];
        const char *const own = op->client_name.s;
        const char *const said = own != NULL ? offer_capital(m, own) : words[op->does.choice];
        done[op->does.choice] = true;
        if (said != NULL && labor->operations[i].charge < 0) { /* a charge says its own name */
            offer_add(&m->offer->included, pool_words(m->pool, "%s%s", said, rows_alone(m, index)));
        }
    }
}

/* What a client may expect and nobody is paid for. */
static void say_not_done(struct offer_maker *m, const bool *any, const bool *done) {
    struct offer_texts *const excluded = &m->offer->excluded;
    const bool any_hinge = any[ROLE_HINGE];
    if (!any_hinge) {
        offer_add(excluded, "Hinges, boring for them and fitting them");
    } else if (!done[TASK_BORING]) {
        offer_add(excluded, "Boring the doors for their hinges");
    }
    if (any_hinge && !done[TASK_HINGES]) {
        offer_add(excluded, "Fitting the hinges to the doors");
    }
    if (any_hinge && !done[TASK_HANGING]) {
        offer_add(excluded, "Fixing the hinge plates to the cabinets");
    }
    if (!done[TASK_HANGING]) {
        offer_add(excluded, "Hanging and adjusting the doors on the cabinets");
    }
    if (!done[TASK_PULLS]) {
        offer_add(excluded, "Drilling for pulls and knobs, and fitting them");
    }
    if (any[ROLE_OTHER] && !done[TASK_HARDWARE]) {
        offer_add(excluded, "Fitting the other hardware to the doors");
    }
}

/* Delivery, where it is charged or its operation is among what the doors pay. */
static void say_delivery(struct offer_maker *m, bool done) {
    struct offer *const o = m->offer;
    const char *const to = m->e->job->deliver_to.s;
    if (!done && fig_none(m->e->sale.delivery)) {
        offer_add(&o->excluded, "Delivery");
    } else if (to != NULL) {
        offer_add(&o->included, pool_words(m->pool, "Delivery to %s", to));
    } else {
        offer_add(&o->included,
                  o->client_address[0] == '\0' ? "Delivery" : "Delivery to the address above");
    }
}

static void say_part(struct offer_maker *m) {
    struct offer *const o = m->offer;
    const struct job *const job = m->e->job;
    bool done[TASK_COUNT] = {false};
    bool any[ROLE_COUNT] = {false};
    offer_add(&o->included,
              pool_words(m->pool, "The doors and fronts as listed, %s in all, sanded and %s",
                         show(m->e, m->e->quantities.all_leaves).text,
                         m->e->finish.batch_count > 0 ? "finished as said" : "bare"));
    say_hardware(m, any);
    say_operations(m, done);
    for (size_t i = 0; i < job->sale.charge_count; i++) {
        if (!fig_none(m->e->sale.charges[i])) {
            offer_add(&o->included, offer_capital(m, job->sale.charges[i].name.s));
        }
    }
    say_delivery(m, done[TASK_DELIVERY]);
    say_not_done(m, any, done);
    if (m->e->rates->shop.warranty.s != NULL) {
        offer_add(&o->included, pool_words(m->pool, "Warranty: %s", m->e->rates->shop.warranty.s));
    }
    offer_add(&o->excluded, "Cabinet boxes, drawer boxes, and taking away old doors");
}

/* What the list does not say of itself. */
static void say_list(struct offer_maker *m) {
    struct offer *const o = m->offer;
    const bool priced = m->e->job->detail.choice == PRICES_EACH;
    bool pairs = false;
    bool hinges = false;
    bool folds = false;
    bool corner = false;
    for (size_t i = 0; i < o->door_count; i++) {
        pairs = pairs || offer_leaf(m, i)->door->leaves > 1;
        folds = folds || offer_leaf(m, i)->door->beside != NULL;
        corner = corner || offer_leaf(m, i)->door->row->opens.choice == OPENS_PIE_CUT;
        hinges = hinges || !fig_none(offer_leaf(m, i)->hinges);
    }
    o->list_note = pool_words(
        m->pool, "Sizes are finished sizes of one door in %s.%s%s%s%s%s",
        m->e->job->unit == LENGTH_MM ? "mm" : "inches",
        hinges ? " Hinge sides are as seen from the front." : "",
        pairs ? " A pair is two doors in one opening" : "",
        pairs ? (priced ? "; its size and price are of one of them."
                        : "; its size is of one of them.")
              : "",
        folds ? " A bi-fold or pie-cut pair is two leaves hinged to each other, a line "
                "each."
              : "",
        corner ? " An angle in a drawing marks the corner that a pie-cut pair closes." : "");
}

/* --- what is signed --- */

/* An estimate is no offer: who signs it says that it was received and what is asked for next. */
static void say_sign(struct offer_maker *m) {
    struct offer *const o = m->offer;
    const char *const with =
        o->option_count > 0 ? ", or\u00a0with\u00a0the\u00a0option:\u00a0______________" : "";
    const bool terms = o->terms.count > 0;
    const bool card = o->other_total[0] != '\0';
    o->terms_head = o->estimate ? "Terms of the quote, should one be asked for" : "Terms";
    o->sign_head = o->estimate ? "Received" : "Agreed";
    o->agreed =
        o->estimate
            ? pool_words(m->pool,
                         "Received; signing this orders nothing. Please send a quote for the "
                         "list%s.",
                         with)
            : pool_words(m->pool, "To the list%s the price of %s%s%s%s%s%s.", terms ? "," : " and",
                         o->total_words, card ? " (" : "", o->other_total, card ? ")" : "",
                         terms ? " and the terms above" : "", with);
}

void offer_say(struct offer_maker *m) {
    struct offer *const o = m->offer;
    const struct job *const job = m->e->job;
    const struct shop *const shop = &m->e->rates->shop;
    if (o->mark[0] != '\0') {
        offer_add(&o->statements,
                  pool_words(m->pool,
                             "Example prices, made up: this paper shows how %s reads, and offers "
                             "nothing.",
                             o->estimate ? "an estimate" : "a quote"));
    }
    if (o->estimate) {
        state_estimate(m);
    } else {
        state_quote(m);
    }
    state_replaced(m);
    state_ready(m);
    state_sides(m);
    offer_say_made(m);
    say_part(m);
    say_list(m);
    offer_add(&o->notes, job->note.s);
    offer_add(&o->notes, job->terms.s);
    const struct caution_list told = cautions_needed(m->e, CAUTION_CLIENT, m->pool);
    for (size_t i = 0; i < told.count; i++) {
        offer_add(&o->notes, told.texts[i]);
    }
    for (size_t i = 0; i < shop->term_count; i++) {
        offer_add(&o->terms, shop->terms[i].s);
    }
    say_sign(m);
}
