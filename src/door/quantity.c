/* SPDX-License-Identifier: MIT */
#include "door/quantity.h"

#include "door/surface.h"
#include "door/taker.h"
#include "model/limits.h"

#include <assert.h>
#include <stdlib.h>

enum unit lumber_unit(const struct lumber *lumber) {
    return lumber->price.unit == UNIT_MONEY_PER_M3 ? UNIT_M3 : UNIT_BF;
}

static void take_use(const struct taker *t, struct leaf_figures *leaf,
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
        const enum unit unit = lumber_unit(&t->rates->lumber[material]);
        use->net = part_total(t, leaf, "lumber net, a door", unit, chosen,
                              offsetof(struct part_figures, net));
        use->rough = part_total(t, leaf, "lumber rough, a door", unit, chosen,
                                offsetof(struct part_figures, rough));
    } else if (material_kind == MATERIAL_SHEET) {
        use->net = part_total(t, leaf, "sheet area, a door", t->m->area, chosen,
                              offsetof(struct part_figures, area));
    } else {
        use->net = part_total(t, leaf, "glass charged, a door", t->m->area, chosen,
                              offsetof(struct part_figures, area));
        use->cost = part_total(t, leaf, "glass cost, a door", UNIT_MONEY, chosen,
                               offsetof(struct part_figures, cost));
        use->stops = part_total(t, leaf, "stops, a door", UNIT_MONEY, chosen,
                                offsetof(struct part_figures, stops));
    }
}

/* --- weight and hinges
 * ------------------------------------------------------------------------------------------------
 */

static void take_weight(const struct taker *t, struct leaf_figures *leaf) {
    if (leaf->door->part_count == 0) {
        return; /* bought in: not known */
    }
    for (size_t i = 0; i < leaf->door->part_count; i++) {
        if (fig_none(leaf->parts[i].weight)) {
            return; /* a door of which half is weighed would mislead */
        }
    }
    leaf->weight = part_total(t, leaf, "weight, a door", t->m->weight, (struct part_choice){0},
                              offsetof(struct part_figures, weight));
}

static fig pick_hinges(const struct taker *t, const char *what, const struct steps *rule, fig by) {
    fig limits[MOST_HINGE_RULES];
    fig counts[MOST_HINGE_RULES];
    const size_t n = rule->count;
    assert(n <= MOST_HINGE_RULES);
    for (size_t i = 0; i < n; i++) {
        limits[i] = measures_given(t->tape, t->m, "hinge rule, up to", &rule->s[i].limit);
        counts[i] = measures_given(t->tape, t->m, "hinge rule, hinges", &rule->s[i].value);
    }
    return fig_pick_upto(t->tape, what, by, limits, counts, n);
}

/* The larger of what height and weight ask for. */
static void take_hinges(const struct taker *t, struct leaf_figures *leaf) {
    const struct hinge_rules *const rules = &t->rates->hinges;
    if (leaf->door->row->use.choice != USE_DOOR || leaf->door->construction.hinge.index < 0) {
        return;
    }
    fig by_height = {0};
    fig by_weight = {0};
    if (rules->by_height.count > 0) {
        by_height = pick_hinges(t, "hinges by height", &rules->by_height,
                                door_hangs_level(leaf->door) ? leaf->width : leaf->height);
    }
    if (rules->by_weight.count > 0 && !fig_none(leaf->weight)) {
        by_weight = pick_hinges(t, "hinges by weight", &rules->by_weight, leaf->weight);
    }
    if (!fig_none(by_height) && !fig_none(by_weight)) {
        leaf->hinges = fig_larger(t->tape, "hinges", by_height, by_weight);
    } else if (fig_none(by_height) && fig_none(by_weight)) {
        leaf->hinges =
            taker_count(t, "hinges", 2, leaf->door->row->place); /* no rule: a door hangs on two */
    } else {
        leaf->hinges = fig_none(by_height) ? by_weight : by_height;
    }
}

/* --- what labor goes by
 * -------------------------------------------------------------------------------------------------
 */

static void take_drivers(const struct taker *t, struct leaf_figures *leaf) {
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
    driver[DRIVER_DOOR] = taker_count(t, "the door itself", 1, place);
    driver[DRIVER_PART] = taker_count(t, "parts", parts, place);
    driver[DRIVER_STILE] = taker_count(t, "stiles", stiles, place);
    driver[DRIVER_RAIL] = taker_count(t, "rails", rails, place);
    driver[DRIVER_PANEL] = taker_count(t, "panels, panes and slabs", parts - stiles - rails, place);
    driver[DRIVER_JOINT] = taker_count(t, "joints", door->joints, place);
    driver[DRIVER_HINGE] = leaf->hinges;
    const fig frame =
        part_total(t, leaf, "frame parts, length", t->m->length,
                   (struct part_choice){.frame_only = true}, offsetof(struct part_figures, length));
    if (!fig_none(frame)) {
        driver[DRIVER_FRAME_RUN] = fig_ratio(t->tape, "frame parts, run", t->m->run,
                                             (figs){{frame}}, (figs){{t->m->length_per_run}});
    }
    driver[DRIVER_EDGE_RUN] = fig_ratio(t->tape, "edge, run", t->m->run, (figs){{leaf->perimeter}},
                                        (figs){{t->m->length_per_run}});
    const bool upright = door->height >= door->width;
    driver[DRIVER_DOOR_RUN] =
        fig_ratio(t->tape, "door, run", t->m->run, (figs){{upright ? leaf->height : leaf->width}},
                  (figs){{t->m->length_per_run}});
    driver[DRIVER_AREA] = leaf->face;
    driver[DRIVER_SPRAYED] = leaf->sprayed;
    if (!fig_none(leaf->sprayed) &&
        t->rates->finishes[door->construction.finish.index].coat_count > 0) {
        const struct finish *const finish = &t->rates->finishes[door->construction.finish.index];
        fig times[MOST_COATS];
        size_t n = 0;
        assert(finish->coat_count <= MOST_COATS);
        for (; n < finish->coat_count; n++) {
            times[n] = measures_given(t->tape, t->m, "coats", &finish->coats[n].times);
        }
        const fig coats = fig_sum(t->tape, "coats in all", UNIT_COUNT, times, n);
        driver[DRIVER_SPRAYED_PER_COAT] =
            taker_product(t, "sprayed area, all coats", t->m->area, leaf->sprayed, coats);
        const fig between = fig_plus(t->tape, "coats less the first", coats, fig_minus(t->m->one));
        if (tape_amount(t->tape, between) > 0) {
            driver[DRIVER_SPRAYED_BETWEEN] =
                taker_product(t, "sprayed area, between coats", t->m->area, leaf->sprayed, between);
        }
    }
}

/* Pieces of one kind of material that are not of the frame: panes, solid panels and slabs. */
static int64_t pieces_of(const struct door *door, enum material_kind material_kind) {
    int64_t pieces = 0;
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        pieces +=
            part->material_kind == material_kind && !part_is_frame(part->kind) ? part->count : 0;
    }
    return pieces;
}

static void take_more_drivers(const struct taker *t, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    fig *const driver = leaf->driver;
    driver[DRIVER_PANE] =
        taker_count(t, "panes", pieces_of(door, MATERIAL_GLASS), door->row->place);
    driver[DRIVER_SOLID_PANEL] =
        taker_count(t, "solid panels", pieces_of(door, MATERIAL_LUMBER), door->row->place);
    driver[DRIVER_GLUE_LINE] =
        part_total(t, leaf, "glue lines, run", t->m->run, (struct part_choice){0},
                   offsetof(struct part_figures, glue));
    driver[DRIVER_SOLID_AREA] =
        part_total(t, leaf, "solid panels, area", t->m->area, (struct part_choice){0},
                   offsetof(struct part_figures, solid));
    driver[DRIVER_RAISED_RUN] =
        part_total(t, leaf, "raised edge, run", t->m->run, (struct part_choice){0},
                   offsetof(struct part_figures, raised));
    driver[DRIVER_BANDED_RUN] = leaf->banded;
}

/* A slab of a sheet that is banded goes round with its banding. */
static void take_banding(const struct taker *t, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    leaf->banding = -1;
    if (door->part_count == 1 && door->parts[0].kind == PART_SLAB &&
        door->parts[0].material_kind == MATERIAL_SHEET) {
        leaf->banding = t->rates->sheets[door->parts[0].material].banding;
    }
    if (leaf->banding >= 0) {
        leaf->banded = fig_ratio(t->tape, "banded edge, run", t->m->run, (figs){{leaf->perimeter}},
                                 (figs){{t->m->length_per_run}});
    }
}

/* Work that is not the shop's: a door bought as it is, a finish put out. */
static void take_others(const struct taker *t, struct leaf_figures *leaf) {
    const struct construction *const construction = &leaf->door->construction;
    if (leaf->door->bought_in) {
        const struct value *const given = &leaf->door->style->bought_in;
        const fig price = measures_given(t->tape, t->m, "price, bought in", given);
        const fig size = given->unit == UNIT_MONEY_PER_DOOR ? (fig){0} : leaf->face;
        leaf->bought_in =
            fig_ratio(t->tape, "door bought in", UNIT_MONEY, (figs){{price, size}}, (figs){{{0}}});
    }
    if (construction->finish.index >= 0 &&
        t->rates->finishes[construction->finish.index].put_out.set) {
        const fig price = measures_given(t->tape, t->m, "price, finish put out",
                                         &t->rates->finishes[construction->finish.index].put_out);
        leaf->put_out = fig_ratio(t->tape, "finish put out", UNIT_MONEY,
                                  (figs){{price, leaf->sprayed}}, (figs){{{0}}});
    }
}

/* A count of the row, the reader's default of it where its cell is empty: a figure as well. */
static fig count_of(const struct taker *t, const char *what, const struct value *value) {
    return tape_given(t->tape, what, UNIT_COUNT, 0, value->amount, value->place);
}

static bool take_leaf(const struct taker *t, struct pool *pool, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const struct row *const row = door->row;
    leaf->subject = tape_about(t->tape, row->id.s);
    leaf->openings = count_of(t, "count", &row->count);
    leaf->leaves = count_of(t, "leaves", &row->leaves);
    leaf->pieces = taker_product(t, "doors", UNIT_COUNT, leaf->openings, leaf->leaves);
    leaf->width = measures_length(t->tape, t->m, "door width", door->width, row->width.place);
    leaf->height = measures_length(t->tape, t->m, "door height", door->height, row->height.place);
    leaf->thickness = measures_length(t->tape, t->m, "door thickness", door->thickness,
                                      door->style->thickness.place);
    leaf->parts = pool_take(pool, door->part_count, sizeof *leaf->parts);
    if (leaf->parts == NULL) {
        return false;
    }
    for (size_t i = 0; i < door->part_count; i++) {
        part_take(t, leaf, &door->parts[i], &leaf->parts[i]);
    }
    for (size_t i = 0; i < door->part_count; i++) {
        take_use(t, leaf, door->parts[i].material_kind, door->parts[i].material);
    }
    surface_make(leaf, t->tape, t->m, t->rates);
    take_banding(t, leaf);
    take_others(t, leaf);
    take_weight(t, leaf);
    take_hinges(t, leaf);
    const bool pulled = door->construction.pull.index >= 0 && row->use.choice != USE_END_PANEL;
    leaf->pulls = pulled && row->pulls.amount > 0
                      ? taker_count(t, "pulls", row->pulls.amount,
                                    row->pulls.set ? row->pulls.place : row->place)
                      : (fig){0};
    take_drivers(t, leaf);
    take_more_drivers(t, leaf);
    return true;
}

static bool take_job(struct quantities *q, const struct taker *t) {
    fig *const pieces = pool_take(&q->pool, q->count, sizeof *pieces);
    fig *const counts = pool_take(&q->pool, q->count, sizeof *counts);
    fig *const weights = pool_take(&q->pool, q->count, sizeof *weights);
    fig *const hinges = pool_take(&q->pool, q->count, sizeof *hinges);
    if (pool_failed(&q->pool)) {
        return false;
    }
    bool weighed = true;
    size_t made = 0; /* rows that are made here: what is bought in is not weighed */
    tape_about_again(t->tape, 0);
    for (size_t i = 0; i < q->count; i++) {
        pieces[i] = q->leaves[i].pieces;
        weights[made] = q->leaves[i].weight;
        counts[made] = q->leaves[i].pieces;
        if (!q->leaves[i].door->bought_in) {
            weighed = weighed && !fig_none(weights[made]);
            made++;
        }
    }
    q->all_leaves = fig_sum(t->tape, "doors and fronts in all", UNIT_COUNT, pieces, q->count);
    size_t hung = 0;
    for (size_t i = 0; i < q->count; i++) {
        pieces[hung] = q->leaves[i].pieces;
        hinges[hung] = q->leaves[i].hinges;
        hung += fig_none(hinges[hung]) ? 0 : 1;
    }
    if (hung > 0) {
        q->hinges = fig_total(t->tape, "hinges in all", UNIT_COUNT, pieces, hinges, hung);
    }
    if (weighed && made > 0) {
        q->weight = fig_total(t->tape, "weight in all", t->m->weight, counts, weights, made);
    }
    return true;
}

/* Rates that every door asks for go on the tape under their own names, not under the first door
 * that asks. */
static void file_rates(const struct taker *t) {
    const struct hinge_rules *const rules = &t->rates->hinges;
    const struct steps lists[] = {rules->by_height, rules->by_weight};
    tape_about(t->tape, "hinges");
    for (size_t l = 0; l < 2; l++) {
        for (size_t i = 0; i < lists[l].count; i++) {
            measures_given(t->tape, t->m, "hinge rule, up to", &lists[l].s[i].limit);
            measures_given(t->tape, t->m, "hinge rule, hinges", &lists[l].s[i].value);
        }
    }
    for (size_t i = 0; i < t->rates->style_count; i++) {
        tape_about(t->tape, t->rates->styles[i].name.s);
        measures_given(t->tape, t->m, "profile, developed extra",
                       &t->rates->styles[i].profile_extra);
    }
    tape_about_again(t->tape, 0);
}

bool quantities_make(struct quantities *q, struct tape *tape, const struct measures *measures,
                     const struct rates *rates, const struct doors *doors) {
    *q = (struct quantities){.count = doors->count};
    pool_init(&q->pool);
    struct materials materials;
    bool held = materials_init(&materials, tape, measures, rates);
    const struct taker taker = {
        .tape = tape, .m = measures, .rates = rates, .materials = &materials};
    q->leaves = pool_take(&q->pool, doors->count, sizeof *q->leaves);
    held = held && q->leaves != NULL;
    file_rates(&taker);
    for (size_t i = 0; held && i < doors->count; i++) {
        q->leaves[i].door = &doors->doors[i];
        held = take_leaf(&taker, &q->pool, &q->leaves[i]);
    }
    held = held && take_job(q, &taker);
    materials_clear(&materials);
    return held;
}

void quantities_clear(struct quantities *q) {
    pool_clear(&q->pool);
    *q = (struct quantities){0};
}

fig quantities_total(const struct quantities *q, struct tape *tape, const char *what,
                     enum material_kind material_kind, int32_t material, bool rough) {
    fig *const pieces = calloc(2 * q->count + 1, sizeof *pieces);
    if (pieces == NULL) {
        tape->fault = TAPE_MEMORY;
        return (fig){0};
    }
    fig *const each = pieces + q->count;
    size_t n = 0;
    enum unit unit = UNIT_NUMBER;
    for (size_t i = 0; i < q->count; i++) {
        const struct leaf_figures *const leaf = &q->leaves[i];
        for (size_t u = 0; u < leaf->use_count; u++) {
            if (leaf->uses[u].material_kind == material_kind &&
                leaf->uses[u].material == material) {
                pieces[n] = leaf->pieces;
                each[n++] = rough ? leaf->uses[u].rough : leaf->uses[u].net;
                unit = (enum unit)tape_figure(tape, leaf->uses[u].net)->unit;
            }
        }
    }
    const fig total = n == 0 ? (fig){0} : fig_total(tape, what, unit, pieces, each, n);
    free(pieces);
    return total;
}
