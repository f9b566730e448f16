/* SPDX-License-Identifier: MIT */
/* What doors hang on and are opened by, as the rates file has it: pieces of hardware, and the rules
 * of hinges. */
#ifndef DOORCOST_MODEL_HUNG_H
#define DOORCOST_MODEL_HUNG_H

#include "model/value.h"

enum price_by { PRICE_EACH, PRICE_PER_PACK };

struct hardware {
    struct text name, client_name; /* as of a sheet */
    struct value price;            /* money, of what price_by says */
    struct choice price_by;        /* enum price_by; per pack: pack is set */
    struct value pack;             /* pieces in a pack; unset: sold singly */
    struct value spares;           /* percent */
    bool by_others;                /* price = by others: named, not sold */
    struct range overlay;          /* nm: of a hinge, the overlays that it fits; unset: not said */
    bool inset;                    /* of a hinge: it is for inset doors; then overlay is unset */
    struct value cup;        /* nm: of a hinge, the diameter of its bore; unset: none is told */
    struct value cup_center; /* nm: from the hinged edge to the middle of it; set with cup */
};

struct hinge_rules {
    struct steps by_height; /* limit nm, value count; ascending */
    struct steps by_weight; /* limit lb or kg, value count */
    struct value from_ends; /* nm: from each end of the hinged edge to the middle of the first hinge
                               there; unset: the shop has no rule */
};

#endif
