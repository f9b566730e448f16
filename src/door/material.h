/* SPDX-License-Identifier: MIT */
/* Facts of materials that many parts share, each put on the tape once, when a part first asks. */
#ifndef DOORCOST_DOOR_MATERIAL_H
#define DOORCOST_DOOR_MATERIAL_H

#include "door/door.h"
#include "model/measures.h"

struct area_weight;

struct materials {
    struct tape *tape;
    const struct measures *measures;
    const struct rates *rates;
    fig *thickness; /* a lumber of the rates each: the thickness that is counted */
    struct {
        fig price, minimum, step, stops;
    } * glass;
    struct area_weight *weights;
    size_t weight_count, weight_room;
};

/* materials: always left so that materials_clear may be called; borrows the rest. true: memory
 * held. */
bool materials_init(struct materials *materials, struct tape *tape, const struct measures *measures,
                    const struct rates *rates) __attribute__((warn_unused_result));
void materials_clear(struct materials *materials);

/* The thickness by which a lumber is counted: nominal, and at least 1 in where it is sold by the
 * board foot. */
fig material_thickness(struct materials *materials, int32_t lumber);

/* Weight of an area (lb/sq ft, kg/m2) of a material at a thickness (nm); none when its density is
 * not known. */
fig material_weight(struct materials *materials, enum material_kind material_kind, int32_t material,
                    length thickness);

/* What a pane of glass of width x height is charged, money. *area: the area charged; *stops: what
 * holds the pane, money within the result, none without stops. */
fig material_pane(struct materials *materials, int32_t glass, fig width, fig height, fig *area,
                  fig *stops);

#endif
