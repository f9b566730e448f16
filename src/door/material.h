/* SPDX-License-Identifier: MIT */
/* Facts of materials that many parts share, each put on the tape once, when a part first asks. */
#ifndef DOORCOST_DOOR_MATERIAL_H
#define DOORCOST_DOOR_MATERIAL_H

#include "door/door.h"
#include "model/calc.h"

struct area_weight;

struct glass_rates {
    fig price, minimum, step, stops;
};

struct materials {
    const struct calc *calc;
    fig *thickness;            /* a lumber of the rates each: the thickness that is counted */
    struct glass_rates *glass; /* a glass of the rates each; none until a pane asks */
    struct area_weight *weights;
    size_t weight_count, weight_room;
};

/* Borrows calc. false: out of memory; materials_clear must be called all the same. */
bool materials_init(struct materials *materials, const struct calc *calc)
    __attribute__((warn_unused_result));
/* Frees what materials holds. */
void materials_clear(struct materials *materials);

/* The thickness by which a lumber is counted, in the job's unit: nominal, and at least 1 in where
 * it is sold by the board foot (docs/method.md, "Lumber"). lumber: index into rates.lumber. */
fig material_thickness(struct materials *materials, int32_t lumber);

/* Weight of an area (lb/sq ft, kg/m2) of what a part is made of, at its weight_thickness; none when
 * the density is not known. */
fig material_weight(struct materials *materials, const struct part *part);

/* What a pane of glass of width x height (the job's unit) is charged, money. *area: the area
 * charged (sq ft, m2); *stops: what holds the pane, money within the result, none without stops.
 * glass: index into rates.glass. Method: docs/method.md, "Glass". */
fig material_pane(struct materials *materials, int32_t glass, fig width, fig height, fig *area,
                  fig *stops);

#endif
