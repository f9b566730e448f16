/* SPDX-License-Identifier: MIT */
#include "door/quantity.h"

#include "base/index.h"
#include "door/leaf_hardware.h"
#include "door/part.h"
#include "door/surface.h"
#include "model/coat_way.h"
#include "model/limits.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

enum unit lumber_unit(const struct lumber *lumber) {
    return lumber->price.unit == UNIT_MONEY_PER_M3 ? UNIT_M3 : UNIT_BF;
}

static void take_use(const struct calc *c, struct leaf_figures *leaf,
                     enum material_kind material_kind, int32_t material) {
    for (size_t i = 0; i < leaf->use_count; i++) {
        if (leaf->uses[i].material_kind == material_kind && leaf->uses[i].material == material) {
            return;
        }
    }
    assert(leaf->use_count < MOST_USES);
    struct material_use *const use = &leaf->uses[leaf->use_count++];
    *use = (struct material_use){.material_kind = material_kind, .material = material};
    const struct part_choice chosen = {.material_kind = material_kind, .material = material};
    if (material_kind == MATERIAL_LUMBER) {
        const enum unit unit = lumber_unit(&c->rates->lumber[material]);
        use->net = part_total(c, leaf, "lumber net, a door", unit, chosen,
                              offsetof(struct part_figures, net));
        use->rough = part_total(c, leaf, "lumber rough, a door", unit, chosen,
                                offsetof(struct part_figures, rough));
    } else if (material_kind == MATERIAL_SHEET) {
        use->net = part_total(c, leaf, "sheet area, a door", c->units->area, chosen,
                              offsetof(struct part_figures, area));
    } else {
        use->net = part_total(c, leaf, "glass charged, a door", c->units->area, chosen,
                              offsetof(struct part_figures, area));
        use->cost = part_total(c, leaf, "glass cost, a door", UNIT_MONEY, chosen,
                               offsetof(struct part_figures, cost));
        use->stops = part_total(c, leaf, "stops, a door", UNIT_MONEY, chosen,
                                offsetof(struct part_figures, stops));
    }
}

static void take_weight(const struct calc *c, struct leaf_figures *leaf) {
    if (leaf->door->part_count == 0) {
        return; /* bought in: not known */
    }
    for (size_t i = 0; i < leaf->door->part_count; i++) {
        if (fig_none(leaf->parts[i].weight)) {
            return; /* a door of which half is weighed would mislead */
        }
    }
    leaf->weight = part_total(c, leaf, "weight, a door", c->units->weight, (struct part_choice){0},
                              offsetof(struct part_figures, weight));
}

/* --- what labor goes by
 * -------------------------------------------------------------------------------------------------
 */

/* Coats that are sprayed: what is wiped or brushed on is work of its own. */
static void take_coats(const struct calc *c, struct leaf_figures *leaf) {
    const int32_t index = leaf->door->construction->finish.index;
    fig times[MOST_COATS];
    size_t n = 0;
    if (fig_none(leaf->sprayed)) {
        return;
    }
    const struct finish *const finish = &c->rates->finishes[index];
    assert(finish->coat_count <= MOST_COATS);
    for (size_t i = 0; i < finish->coat_count; i++) {
        if (!coat_way(c->rates, finish, finish->coats[i].coating)->by_hand) {
            times[n++] = calc_given(c, "coats", &finish->coats[i].times);
        }
    }
    if (n == 0) {
        return;
    }
    const enum unit unit = c->units->area;
    const fig coats = fig_sum(c->tape, "sprayed coats in all", UNIT_COUNT, times, n);
    const fig between = fig_plus(c->tape, "coats less the first", coats, fig_minus(c->units->one));
    leaf->driver[DRIVER_SPRAYED_PER_COAT] =
        calc_product(c, "sprayed area, all coats", unit, leaf->sprayed, coats);
    if (tape_amount(c->tape, between) > 0) {
        leaf->driver[DRIVER_SPRAYED_BETWEEN] =
            calc_product(c, "sprayed area, between coats", unit, leaf->sprayed, between);
    }
}

static void take_drivers(const struct calc *c, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const struct place place = door->row->place;
    int64_t parts = 0;
    for (size_t i = 0; i < door->part_count; i++) {
        parts += door->parts[i].count;
    }
    const int64_t stiles = door_pieces(door, PART_STILE) + door_pieces(door, PART_MID_STILE);
    const int64_t rails = door_pieces(door, PART_TOP_RAIL) + door_pieces(door, PART_BOTTOM_RAIL) +
                          door_pieces(door, PART_MID_RAIL);
    fig *const driver = leaf->driver;
    driver[DRIVER_DOOR] = calc_count(c, "the door itself", 1, place);
    driver[DRIVER_PART] = calc_count(c, "parts", parts, place);
    driver[DRIVER_STILE] = calc_count(c, "stiles", stiles, place);
    driver[DRIVER_RAIL] = calc_count(c, "rails", rails, place);
    const int64_t bars = door_pieces(door, PART_BAR);
    driver[DRIVER_PANEL] =
        calc_count(c, "panels, panes and slabs", parts - stiles - rails - bars, place);
    driver[DRIVER_BAR] = calc_count(c, "bars", bars, place);
    driver[DRIVER_JOINT] = calc_count(c, "joints", door->joints, place);
    driver[DRIVER_ARCH] = calc_count(c, "arches", door->arches, place);
    driver[DRIVER_HINGE] = leaf->hinges;
    driver[DRIVER_PULL] = leaf->pulls;
    driver[DRIVER_HARDWARE] = leaf->other_hardware;
    const fig frame =
        part_total(c, leaf, "frame parts, length", c->units->length,
                   (struct part_choice){.frame_only = true}, offsetof(struct part_figures, length));
    if (!fig_none(frame)) {
        driver[DRIVER_FRAME_RUN] = calc_run(c, "frame parts, run", frame);
    }
    if (!fig_none(leaf->bars)) {
        driver[DRIVER_BAR_RUN] = calc_run(c, "bars, run", leaf->bars);
    }
    driver[DRIVER_EDGE_RUN] = calc_run(c, "edge, run", leaf->perimeter);
    const bool upright = door->height >= door->width;
    driver[DRIVER_DOOR_RUN] = calc_run(c, "door, run", upright ? leaf->height : leaf->width);
    driver[DRIVER_AREA] = leaf->face;
    driver[DRIVER_SPRAYED] = leaf->sprayed;
    take_coats(c, leaf);
}

/* Pieces of one kind of material that fill a door or its frame: panes, solid panels and slabs. */
static int64_t pieces_of(const struct door *door, enum material_kind material_kind) {
    int64_t pieces = 0;
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        pieces +=
            part->material_kind == material_kind && part_is_field(part->kind) ? part->count : 0;
    }
    return pieces;
}

static void take_more_drivers(const struct calc *c, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    fig *const driver = leaf->driver;
    driver[DRIVER_PANE] = calc_count(c, "panes", pieces_of(door, MATERIAL_GLASS), door->row->place);
    driver[DRIVER_SOLID_PANEL] =
        calc_count(c, "solid panels", pieces_of(door, MATERIAL_LUMBER), door->row->place);
    driver[DRIVER_GLUE_LINE] =
        part_total(c, leaf, "glue lines, run", c->units->run, (struct part_choice){0},
                   offsetof(struct part_figures, glue));
    driver[DRIVER_SOLID_AREA] =
        part_total(c, leaf, "solid panels, area", c->units->area, (struct part_choice){0},
                   offsetof(struct part_figures, solid));
    driver[DRIVER_RAISED_RUN] =
        part_total(c, leaf, "raised edge, run", c->units->run, (struct part_choice){0},
                   offsetof(struct part_figures, raised));
    driver[DRIVER_BANDED_RUN] = leaf->banded;
}

/* A slab of a sheet with banding is banded on all four edges. */
static void take_banding(const struct calc *c, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    leaf->banding = -1;
    if (door->part_count == 1 && door->parts[0].kind == PART_SLAB &&
        door->parts[0].material_kind == MATERIAL_SHEET) {
        leaf->banding = c->rates->sheets[door->parts[0].material].banding;
    }
    if (leaf->banding >= 0) {
        leaf->banded = calc_run(c, "banded edge, run", leaf->perimeter);
    }
}

/* Work that is not the shop's: a door bought as it is, a finish sent out. */
static void take_others(const struct calc *c, struct leaf_figures *leaf) {
    const struct construction *const construction = leaf->door->construction;
    if (leaf->door->bought_in) {
        const struct value *const given = &leaf->door->style->bought_in;
        const fig price = calc_given(c, "price, bought in", given);
        const fig size = given->unit == UNIT_MONEY_PER_DOOR ? (fig){0} : leaf->face;
        leaf->bought_in = calc_product(c, "door bought in", UNIT_MONEY, price, size);
    }
    if (construction->finish.index >= 0 &&
        c->rates->finishes[construction->finish.index].put_out.set) {
        const fig price = calc_given(c, "price, finish put out",
                                     &c->rates->finishes[construction->finish.index].put_out);
        leaf->put_out = calc_product(c, "finish put out", UNIT_MONEY, price, leaf->sprayed);
    }
}

/* A count of the row, the reader's default of it where its cell is empty: a figure as well. */
static fig count_of(const struct calc *c, const char *what, int64_t amount, struct place place) {
    return tape_given(c->tape, what, UNIT_COUNT, 0, amount, place);
}

/* A size of a door: the row's own where it was measured on the door, else worked out from it. */
static fig size_of(const struct calc *c, const struct door *door, const char *what, length size,
                   const struct value *measured) {
    return door->construction->size_is.choice == MEASURE_DOOR
               ? calc_size(c, what, size, measured)
               : calc_length(c, what, size, measured->place);
}

static bool take_leaf(struct materials *materials, struct leaf_figures *leaf) {
    const struct calc *const c = materials->calc;
    const struct door *const door = leaf->door;
    const struct row *const row = door->row;
    leaf->subject = tape_about(c->tape, door->name);
    leaf->openings = count_of(c, "count", row->count.amount, row->count.place);
    leaf->leaves = count_of(c, door->beside == NULL ? "leaves" : "such leaves", door->leaves,
                            row->leaves.place);
    leaf->pieces = calc_product(c, "doors", UNIT_COUNT, leaf->openings, leaf->leaves);
    leaf->width = size_of(c, door, "door width", door->width, leaf_measured(row, door->role));
    leaf->height = size_of(c, door, "door height", door->height, &row->height);
    leaf->thickness = calc_size(c, "door thickness", door->thickness, &door->style->thickness);
    leaf->parts = pool_take(c->pool, door->part_count, sizeof *leaf->parts);
    if (leaf->parts == NULL) {
        return false;
    }
    for (size_t i = 0; i < door->part_count; i++) {
        part_figures_make(materials, leaf, &door->parts[i], &leaf->parts[i]);
    }
    for (size_t i = 0; i < door->part_count; i++) {
        take_use(c, leaf, door->parts[i].material_kind, door->parts[i].material);
    }
    leaf->bars =
        part_total(c, leaf, "bars, length", c->units->length,
                   (struct part_choice){.bars_only = true}, offsetof(struct part_figures, length));
    surface_make(leaf, c);
    take_banding(c, leaf);
    take_others(c, leaf);
    take_weight(c, leaf);
    leaf_hardware_make(leaf, c);
    take_drivers(c, leaf);
    take_more_drivers(c, leaf);
    return true;
}

/* --- leaves that are alike --- */

static bool same_value(const struct value *a, const struct value *b) {
    return a->set == b->set && a->amount == b->amount;
}

/* Whether two leaves that are made alike are as many, open alike and have as many hinges and pulls.
 */
static bool same_figures(const void *list, size_t number, const void *thing) {
    const struct door *const x = ((const struct leaf_figures *)list)[number].door;
    const struct door *const y = thing;
    const struct row *const a = x->row;
    const struct row *const b = y->row;
    return x->first == y->first && x->leaves == y->leaves && a->count.amount == b->count.amount &&
           a->opens.choice == b->opens.choice && same_value(&a->hinges, &b->hinges) &&
           same_value(&a->pulls, &b->pulls);
}

/* What the leaves are taken with. */
struct taking {
    struct materials materials;
    struct index known; /* of the leaves that others may be like */
};

/* Takes leaf i. Where nobody asks how a figure came about, one that is like an earlier one has the
 * figures of that; a leaf that folds, or is told where its hinges are, has its own. */
static bool take_or_share(struct taking *t, struct quantities *q, size_t i) {
    struct tape *const tape = t->materials.calc->tape;
    struct leaf_figures *const leaf = &q->leaves[i];
    const struct door *const door = leaf->door;
    bool failed = false;
    leaf->like = i;
    if (!tape->traced && door->beside == NULL && door->row->hinge_at.count == 0) {
        const uint64_t hash = hash_word(HASH_START, door->first);
        leaf->like = index_add(&t->known, hash_word(hash, (uint64_t)door->row->count.amount),
                               same_figures, q->leaves, door, i, &failed);
    }
    if (leaf->like == i) {
        return take_leaf(&t->materials, leaf) && !failed;
    }
    *leaf = q->leaves[leaf->like];
    leaf->door = door;
    leaf->subject = tape_about(tape, door->name);
    return true;
}

/* Sum over the rows of pieces x each, from the row's own figures; none where no row has one. */
static fig rows_sum(const struct calc *c, const struct quantities *q, const char *what,
                    enum unit unit, const fig *each) {
    for (size_t r = 0; r < q->count; r++) {
        if (!fig_none(each[r])) {
            return fig_total(c->tape, what, unit, q->pieces, each, q->count);
        }
    }
    return (fig){0};
}

/* Adds up the job: leaves, hinges, and weight where all that is made here is weighed. */
static bool take_job(const struct calc *c, struct quantities *q) {
    fig *const each = pool_take(c->pool, q->count, sizeof *each);
    q->pieces = pool_take(c->pool, q->count, sizeof *q->pieces);
    if (pool_failed(c->pool)) {
        return false;
    }
    bool weighed = true;
    tape_about_job(c->tape);
    for (size_t r = 0; r < q->count; r++) {
        q->pieces[r] = q->leaves[r].pieces;
        each[r] = q->leaves[r].hinges;
        weighed = weighed && (q->leaves[r].door->bought_in || !fig_none(q->leaves[r].weight));
    }
    q->all_leaves = fig_sum(c->tape, "doors and fronts in all", UNIT_COUNT, q->pieces, q->count);
    q->hinges = rows_sum(c, q, "hinges in all", UNIT_COUNT, each);
    for (size_t r = 0; r < q->count; r++) {
        each[r] = q->leaves[r].weight; /* none of what is bought in: it is not weighed */
    }
    q->weight = weighed ? rows_sum(c, q, "weight in all", c->units->weight, each) : (fig){0};
    return true;
}

/* Rates that every door asks for go on the tape under their own names, not under the first door
 * that asks. */
static void file_rates(const struct calc *c) {
    hinge_rules_file(c);
    for (size_t i = 0; i < c->rates->style_count; i++) {
        tape_about(c->tape, c->rates->styles[i].name.s);
        calc_given(c, "profile, developed extra", &c->rates->styles[i].profile_extra);
    }
    tape_about_job(c->tape);
}

bool quantities_make(struct quantities *q, const struct calc *c, const struct doors *doors) {
    struct taking t = {0};
    bool held = materials_init(&t.materials, c);
    *q = (struct quantities){.count = doors->count};
    q->leaves = pool_take(c->pool, doors->count, sizeof *q->leaves);
    held = held && q->leaves != NULL;
    file_rates(c);
    for (size_t i = 0; i < doors->count && held; i++) {
        q->leaves[i].door = &doors->doors[i];
        if (doors->doors[i].beside != NULL) { /* what is carried comes before what carries it */
            q->leaves[i + 1].door = &doors->doors[i + 1];
            held = take_or_share(&t, q, i + 1) && take_or_share(&t, q, i);
            i++;
        } else {
            held = take_or_share(&t, q, i);
        }
    }
    held = held && take_job(c, q);
    index_clear(&t.known);
    materials_clear(&t.materials);
    return held;
}

fig quantities_sum(const struct calc *c, const char *what, enum unit unit, const fig *each) {
    return rows_sum(c, c->quantities, what, unit, each);
}

fig quantities_total(const struct calc *c, const char *what, enum material_kind material_kind,
                     int32_t material, size_t offset) {
    const struct quantities *const q = c->quantities;
    fig *const each = calloc(q->count + 1, sizeof *each);
    if (each == NULL) {
        c->tape->fault = TAPE_MEMORY;
        return (fig){0};
    }
    enum unit unit = UNIT_NUMBER;
    for (size_t r = 0; r < q->count; r++) {
        const struct leaf_figures *const leaf = &q->leaves[r];
        for (size_t u = 0; u < leaf->use_count; u++) {
            const struct material_use *const use = &leaf->uses[u];
            if (use->material_kind == material_kind && use->material == material) {
                memcpy(&each[r], (const char *)use + offset, sizeof *each);
                unit = fig_none(each[r]) ? unit : tape_unit(c->tape, each[r]);
            }
        }
    }
    const fig total = quantities_sum(c, what, unit, each);
    free(each);
    return total;
}
