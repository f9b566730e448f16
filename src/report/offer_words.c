/* SPDX-License-Identifier: MIT */
/* What an offer says beside the price: to whose sizes, of what, what is part of it and what is not.
 * Each sentence is drawn from the inputs; where they say nothing, the cautious reading is printed.
 */
#include "report/offer_parts.h"
#include "report/show.h"

#include <string.h>

/* --- the sentences at the head --- */

static const char *fact(const struct offer *o, const char *label) {
    for (size_t i = 0; i < o->fact_count; i++) {
        if (strcmp(o->facts[i].label, label) == 0) {
            return o->facts[i].text;
        }
    }
    return NULL;
}

static void state(struct offer *o) {
    const struct job *const job = o->e->job;
    const char *const until = fact(o, "Valid until");
    const char *const by = job->measured_by.s;
    const bool estimate = job->paper.word == PAPER_ESTIMATE;
    const bool terms = o->e->rates->shop.term_count > 0;
    offer_add(
        &o->statements,
        estimate ? "This is an estimate: the final price may differ and is agreed in writing "
                   "before work begins."
        : terms ? "This is a quote: the price holds for what is listed here, under the terms below."
                : "This is a quote: the price holds for what is listed here.");
    offer_add(&o->statements,
              by == NULL
                  ? "Made to the finished sizes below."
                  : pool_format(&o->pool,
                                "Made to the finished sizes below, from measurements by %s.", by));
    offer_add(&o->statements,
              until == NULL
                  ? "The prices hold only if the whole list is ordered."
                  : pool_format(&o->pool,
                                "Valid until %s. The prices hold only if the whole list is "
                                "ordered, and lumber prices not beyond that date.",
                                until));
}

/* --- materials --- */

const char *offer_material(const struct rates *rates, enum stuff stuff, int32_t material) {
    const struct text *words = NULL;
    const struct text *name = NULL;
    if (material < 0) {
        return "";
    }
    switch (stuff) {
    case STUFF_LUMBER: {
        const struct lumber *const lumber = &rates->lumber[material];
        words = &lumber->words;
        name = lumber->wood >= 0 && rates->woods[lumber->wood].common.s != NULL
                   ? &rates->woods[lumber->wood].common
                   : &lumber->name;
        break;
    }
    case STUFF_SHEET:
        words = &rates->sheets[material].words;
        name = &rates->sheets[material].name;
        break;
    case STUFF_GLASS:
        words = &rates->glass[material].words;
        name = &rates->glass[material].name;
        break;
    case STUFF_NONE:
        return "";
    }
    return offer_or_nothing(words->s != NULL ? words->s : name->s);
}

/* Which part of the doors a material is named for. */
static bool is_of(enum part_kind kind, const char *what) {
    switch (kind) {
    case PART_PANEL:
        return strcmp(what, "Panels") == 0;
    case PART_PANE:
        return strcmp(what, "Glass") == 0;
    case PART_SLAB:
        return strcmp(what, "Slab doors and fronts") == 0;
    case PART_STILE:
    case PART_TOP_RAIL:
    case PART_BOTTOM_RAIL:
    case PART_MID_RAIL:
    case PART_MID_STILE:
    case PART_KIND_COUNT:
        break;
    }
    return strcmp(what, "Frames") == 0;
}

/* `Panels: MDF board, maple plywood.`, each material once. */
static void say_material(struct offer *o, const char *what) {
    struct offer_texts seen = {.room = OFFER_MOST_TEXTS};
    const char *text = NULL;
    seen.text = pool_take(&o->pool, seen.room, sizeof *seen.text);
    if (seen.text == NULL) {
        return;
    }
    for (size_t d = 0; d < o->door_count; d++) {
        const struct door *const door = o->doors[d].leaf->door;
        for (size_t i = 0; i < door->part_count; i++) {
            const struct part *const part = &door->parts[i];
            const char *const words = offer_material(o->e->rates, part->stuff, part->material);
            bool known = !is_of(part->kind, what);
            for (size_t s = 0; s < seen.count; s++) {
                known = known || strcmp(seen.text[s], words) == 0;
            }
            if (!known) {
                offer_add(&seen, words);
                text = text == NULL ? pool_format(&o->pool, "%s: %s", what, words)
                                    : pool_format(&o->pool, "%s, %s", text, words);
            }
        }
    }
    offer_add(&o->made, text == NULL ? NULL : pool_format(&o->pool, "%s.", text));
}

/* --- finish --- */

static const char *finish_words(struct offer *o, const struct make *make) {
    static const char *const faces[] = {
        [FACES_BOTH] = "both faces and the edges",
        [FACES_FRONT] = "the front and the edges",
        [FACES_BACK] = "the back and the edges",
        [FACES_NONE] = "the edges",
    };
    if (make->finish.index < 0) {
        return "left bare, without a finish";
    }
    const struct finish *const f = &o->e->rates->finishes[make->finish.index];
    const char *const color = show_color(o->e->rates, make);
    return pool_format(&o->pool, "%s%s%s, on %s", f->words.s != NULL ? f->words.s : f->name.s,
                       color[0] == '\0' ? "" : ", color ", color, faces[f->faces.word]);
}

static bool finish_same(const struct offer *o, size_t a, size_t b) {
    const struct make *const one = &o->doors[a].leaf->door->make;
    const struct make *const other = &o->doors[b].leaf->door->make;
    return one->finish.index == other->finish.index &&
           strcmp(show_color(o->e->rates, one), show_color(o->e->rates, other)) == 0;
}

/* How many doors have the finish of door d; 0: one before it has it too. */
static size_t finish_count(const struct offer *o, size_t d) {
    size_t count = 0;
    for (size_t k = 0; k < o->door_count; k++) {
        if (finish_same(o, d, k)) {
            if (k < d) {
                return 0;
            }
            count++;
        }
    }
    return count;
}

static const char *ids_of_finish(struct offer *o, size_t d) {
    const char *ids = "";
    for (size_t k = d; k < o->door_count; k++) {
        if (finish_same(o, d, k)) {
            ids = offer_or_nothing(pool_format(&o->pool, "%s%s%s", ids, ids[0] == '\0' ? "" : ", ",
                                               o->doors[k].leaf->door->row->id.s));
        }
    }
    return ids;
}

/* Each finish once: the one that most doors have first, then the others with their rows. */
static void say_finish(struct offer *o) {
    size_t most = 0;
    size_t count = 0;
    for (size_t d = 0; d < o->door_count; d++) {
        const size_t have = finish_count(o, d);
        most = have > count ? d : most;
        count = have > count ? have : count;
    }
    if (count > 0) {
        offer_add(&o->made,
                  pool_format(&o->pool, "Finish%s: %s.",
                              count < o->door_count ? ", but for the rows below" : "",
                              offer_or_nothing(finish_words(o, &o->doors[most].leaf->door->make))));
    }
    for (size_t d = 0; count < o->door_count && d < o->door_count; d++) {
        if (d != most && finish_count(o, d) > 0) {
            offer_add(&o->made, pool_format(&o->pool, "Finish of %s: %s.", ids_of_finish(o, d),
                                            offer_or_nothing(
                                                finish_words(o, &o->doors[d].leaf->door->make))));
        }
    }
}

/* --- what is part of it --- */

static bool is_bored(const struct offer *o) {
    const struct labor *const labor = &o->e->labor;
    for (size_t i = 0; i < labor->operation_count; i++) {
        if (o->e->rates->operations[labor->operations[i].operation].per.word == DRIVER_HINGE) {
            return true;
        }
    }
    return false;
}

static const char *hardware_words(const struct rates *rates, const struct hardware_buy *buy) {
    const struct hardware *const h = &rates->hardware[buy->hardware];
    return offer_or_nothing(h->words.s != NULL ? h->words.s : h->name.s);
}

static void say_hardware(struct offer *o, bool *any_hinge) {
    const struct hardware_list *const list = &o->e->hardware;
    *any_hinge = false;
    for (size_t i = 0; i < list->count; i++) {
        const struct hardware_buy *const buy = &list->buys[i];
        const bool hinge = buy->role == ROLE_HINGE;
        *any_hinge = *any_hinge || hinge;
        const char *const text = pool_format(
            &o->pool, "%s: %s, %s %s", hinge ? "Hinges" : "Pulls", hardware_words(o->e->rates, buy),
            show(o->e, buy->needed).text, buy->by_others ? "needed, by others" : "supplied");
        offer_add(buy->by_others ? &o->excluded : &o->included, text);
    }
}

static void say_hinge_work(struct offer *o) {
    const bool bored = is_bored(o);
    const bool fitted = o->e->job->hinges_fitted.word == 1;
    offer_add(bored ? &o->included : &o->excluded, "Boring the doors for their hinges");
    offer_add(fitted ? &o->included : &o->excluded, "Fitting the hinges to the doors");
}

static void say_part(struct offer *o) {
    const struct job *const job = o->e->job;
    const bool delivered = job->sale.delivery.set;
    bool hinges = false;
    offer_add(&o->included,
              pool_format(&o->pool, "The doors and fronts as listed, %s in all, sanded and %s",
                          show(o->e, o->e->quantities.all_leaves).text,
                          o->e->finish.batch_count > 0 ? "finished as said" : "bare"));
    say_hardware(o, &hinges);
    if (hinges) {
        say_hinge_work(o);
    } else {
        offer_add(&o->excluded, "Hinges, boring for them and fitting them");
    }
    for (size_t i = 0; i < job->sale.charge_count; i++) {
        offer_add(&o->included, offer_capital(o, job->sale.charges[i].name.s));
    }
    offer_add(delivered ? &o->included : &o->excluded, delivered && o->client_address[0] != '\0'
                                                           ? "Delivery to the address above"
                                                           : "Delivery");
    offer_add(job->hanging.word == 1 ? &o->included : &o->excluded,
              "Hanging and adjusting the doors on the cabinets");
    offer_add(&o->excluded, "Drilling for pulls and knobs, and fitting them");
    offer_add(&o->excluded, "Cabinet boxes, drawer boxes, hinge plates on the cabinets, and taking "
                            "away old doors");
}

void offer_say(struct offer *o) {
    static const char *const parts[] = {"Frames", "Panels", "Slab doors and fronts", "Glass"};
    const struct job *const job = o->e->job;
    const struct shop *const shop = &o->e->rates->shop;
    state(o);
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
        say_material(o, parts[i]);
    }
    say_finish(o);
    say_part(o);
    offer_add(&o->notes, job->note.s);
    offer_add(&o->notes, job->terms.s);
    for (size_t i = 0; i < shop->term_count; i++) {
        offer_add(&o->terms, shop->terms[i].s);
    }
}
