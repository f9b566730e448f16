/* SPDX-License-Identifier: MIT */
#include "report/words/caution_facts.h"

#include "base/text.h"
#include "report/words/show.h"

/* Common practice, no source. */
#define SHORT_PART (12 * NM_PER_INCH)
#define TALL_LEAF  (60 * NM_PER_INCH)
/* What the revised lifting equation of NIOSH sets out from: 51 lb, 23 kg (memory). */
#define LIFTED_LB 51
#define LIFTED_KG 23

/* Adds to what the answer is about; a figure with its unit in parentheses, none: without. */
static void name_it(struct caution_facts *f, const char *name, fig figure) {
    if (++f->named > MOST_NAMED) {
        return;
    }
    joined_add(&f->about, f->named == 1 ? "" : ", ");
    joined_add(&f->about, text_or_empty(name));
    if (!fig_none(figure)) {
        joined_add(&f->about, " (");
        joined_add(&f->about, show_unit(f->e, figure).text);
        joined_add(&f->about, ")");
    }
}

bool always(struct caution_facts *f, const struct caution *caution) {
    (void)f;
    (void)caution;
    return true;
}

/* --- machines --- */

static const struct machine *used_machine(const struct estimate *e, size_t i) {
    const int32_t machine = e->labor.machines[i].machine;
    return machine < 0 ? NULL : &e->rates->machines[machine];
}

bool machine_used(struct caution_facts *f, const struct caution *caution) {
    bool used = false;
    for (size_t i = 0; i < f->e->labor.machine_count; i++) {
        const struct machine *const m = used_machine(f->e, i);
        used = used || (m != NULL && (caution->by & MACHINE_BIT(m->kind.choice)) != 0);
    }
    return used;
}

bool machine_untold(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    for (size_t i = 0; i < f->e->labor.machine_count; i++) {
        const struct machine *const m = used_machine(f->e, i);
        if (m != NULL && !m->kind.set) {
            name_it(f, m->name.s, (fig){0});
        }
    }
    return f->named > 0;
}

bool worked_together(struct caution_facts *f, const struct caution *caution) {
    const struct labor *const labor = &f->e->labor;
    (void)caution;
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation *const op = &f->e->rates->operations[labor->operations[i].operation];
        if (op->machine >= 0 && op->together.amount > 1) {
            name_it(f, op->name.s, (fig){0});
        }
    }
    return f->named > 0;
}

bool wider_than_machine(struct caution_facts *f, const struct caution *caution) {
    const struct labor *const labor = &f->e->labor;
    (void)caution;
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        if (o->wide && f->e->rates->operations[o->operation].machine >= 0) {
            name_it(f, f->e->rates->operations[o->operation].name.s, (fig){0});
        }
    }
    return f->named > 0;
}

/* --- what is made --- */

/* Whether any part of the job is of those. */
static bool any_part(const struct estimate *e, bool (*is)(const struct part *part)) {
    for (size_t d = 0; d < e->doors.count; d++) {
        const struct door *const door = &e->doors.doors[d];
        for (size_t i = 0; i < door->part_count; i++) {
            if (is(&door->parts[i])) {
                return true;
            }
        }
    }
    return false;
}

static bool is_made(const struct part *part) {
    return part->material_kind == MATERIAL_LUMBER || part->material_kind == MATERIAL_SHEET;
}

static bool is_short(const struct part *part) {
    return is_made(part) && part->length < SHORT_PART;
}

static bool is_pane(const struct part *part) {
    return part->kind == PART_PANE;
}

bool parts_made(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return any_part(f->e, is_made);
}

bool short_parts(struct caution_facts *f, const struct caution *caution) {
    return machine_used(f, caution) && any_part(f->e, is_short);
}

bool panes(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return any_part(f->e, is_pane);
}

bool lead_panes(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    for (size_t i = 0; i < f->e->glass.count; i++) {
        const struct glass *const glass = &f->e->rates->glass[f->e->glass.buys[i].material];
        if (glass->lead) {
            name_it(f, glass->client_name.s == NULL ? glass->name.s : glass->client_name.s,
                    (fig){0});
        }
    }
    return f->named > 0;
}

static bool too_heavy(const struct estimate *e, fig weight) {
    const int64_t lifted = e->units.weight == UNIT_KG ? LIFTED_KG : LIFTED_LB;
    return !fig_none(weight) && tape_scaled(&e->tape, weight, 2) > lifted * 100;
}

bool heavy(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    for (size_t i = 0; i < f->e->sheets.count; i++) {
        const struct sheet_buy *const b = &f->e->sheets.buys[i];
        if (too_heavy(f->e, b->weight)) {
            name_it(f, f->e->rates->sheets[b->material].name.s, b->weight);
        }
    }
    for (size_t r = 0; r < f->e->quantities.count; r++) {
        const struct leaf_figures *const leaf = &f->e->quantities.leaves[r];
        if (too_heavy(f->e, leaf->weight)) {
            name_it(f, leaf->door->name, leaf->weight);
        }
    }
    return f->named > 0;
}

bool tall(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    for (size_t d = 0; d < f->e->doors.count; d++) {
        if (f->e->doors.doors[d].height > TALL_LEAF) {
            name_it(f, f->e->doors.doors[d].name, (fig){0});
        }
    }
    return f->named > 0;
}

bool sheets_bought(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return f->e->sheets.count > 0;
}

/* --- what is sprayed --- */

/* Whether any coat of the job is of those. */
static bool any_coat(const struct estimate *e, bool (*is)(const struct coat_figures *coat)) {
    for (size_t b = 0; b < e->finish.batch_count; b++) {
        const struct batch *const batch = &e->finish.batches[b];
        for (size_t i = 0; i < batch->coat_count; i++) {
            if (is(&batch->coats[i])) {
                return true;
            }
        }
    }
    return false;
}

static bool is_sprayed(const struct coat_figures *coat) {
    return !coat->way->by_hand;
}

static bool is_under_pressure(const struct coat_figures *coat) {
    return coat->way->pressure;
}

static bool is_mixed(const struct coat_figures *coat) {
    return coat->reducer_product != SIZE_MAX || coat->catalyst_product != SIZE_MAX;
}

static bool leaves_waste(const struct coat_figures *coat) {
    return coat->cleaning_product != SIZE_MAX || coat->way->fixed_loss.set ||
           coat->way->other_loss.set;
}

bool sprayed(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return any_coat(f->e, is_sprayed);
}

bool under_pressure(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return any_coat(f->e, is_under_pressure);
}

bool mixed(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return any_coat(f->e, is_mixed);
}

bool thrown_away(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return any_coat(f->e, leaves_waste);
}

/* The hazards of a product; of a coating those of the can, its hardener is a product of its own. */
static unsigned hazards_of(const struct rates *rates, const struct product *p) {
    return p->coating >= 0 ? rates->coatings[p->coating].hazards
                           : rates->additives[p->additive].hazards;
}

/* Names the products that any of the hazards is in; 0: those of which none is told. A product of
 * several colors is named once. */
static bool name_products(struct caution_facts *f, unsigned hazards) {
    const struct finish_list *const list = &f->e->finish;
    for (size_t i = 0; i < list->product_count; i++) {
        const struct product *const p = &list->products[i];
        const unsigned held = hazards_of(f->e->rates, p);
        bool named = false;
        for (size_t before = 0; before < i; before++) {
            named = named || (list->products[before].coating == p->coating &&
                              list->products[before].additive == p->additive);
        }
        if (!named && (hazards == 0 ? held == 0 : (held & hazards) != 0)) {
            name_it(f, p->name, (fig){0});
        }
    }
    return f->named > 0;
}

bool hazard_used(struct caution_facts *f, const struct caution *caution) {
    return name_products(f, caution->by);
}

bool hazard_untold(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return name_products(f, 0);
}

/* A coat put on by hand leaves rags; what is not told may hold drying oil. */
bool rags(struct caution_facts *f, const struct caution *caution) {
    for (size_t b = 0; b < f->e->finish.batch_count; b++) {
        const struct batch *const batch = &f->e->finish.batches[b];
        for (size_t i = 0; i < batch->coat_count; i++) {
            const struct coat_figures *const coat = &batch->coats[i];
            if (coat->way->by_hand && f->e->rates->coatings[coat->coating].hazards == 0) {
                return true;
            }
        }
    }
    return name_products(f, caution->by);
}

/* --- the sale --- */

bool taxed(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return f->e->job->sale.tax.set || f->e->job->sale.exempt.s != NULL;
}

bool paid_ahead(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return f->e->job->sale.deposit.set || f->e->job->sale.stage_count > 0;
}

bool paid_by_card(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return f->e->job->sale.card_fee.set;
}

bool held_until(struct caution_facts *f, const struct caution *caution) {
    (void)caution;
    return f->e->job->valid.set && f->e->job->paper.choice == PAPER_QUOTE;
}

bool hung(struct caution_facts *f, const struct caution *caution) {
    const struct labor *const labor = &f->e->labor;
    bool done = false;
    (void)caution;
    for (size_t i = 0; i < labor->operation_count; i++) {
        done = done ||
               f->e->rates->operations[labor->operations[i].operation].does.choice == TASK_HANGING;
    }
    return done;
}
