/* SPDX-License-Identifier: MIT */
/* The quantities of each door as figures: what a leaf takes of lumber, sheets and glass, its
 * surface, weight, hinges, and the counts that labor goes by. All are per leaf unless said
 * otherwise; fig none where a leaf has none.
 *
 * Method: docs/method.md, "Lumber", "Surface", "Weight", "Hinges". */
#ifndef DOORCOST_DOOR_QUANTITY_H
#define DOORCOST_DOOR_QUANTITY_H

#include "door/door.h"
#include "door/movement.h"

struct part_figures {
    fig length, width;             /* finished */
    fig rough_length, rough_width; /* lumber; no rough length of a part that is milled in blanks */
    fig blank[2], blanks[2]; /* rough length of a blank, and how many of them the row takes, of
                                the second maybe none; with the first part that shares them */
    fig blank_holds[2];      /* pieces in one */
    fig count;               /* pieces a leaf */
    fig pieces;              /* pieces of the row: count x leaves of the row */
    fig net, rough;          /* lumber: board feet or m3 a piece, of a blank its part */
    fig stave_width; /* lumber: rough width of what is cut from a board: the part, or a stave of it
                      */
    fig staves;      /* lumber: how many of these the row takes */
    fig area;        /* sheets: area a piece; glass: area charged a piece */
    fig cost;        /* glass: money a piece, its stops included */
    fig stops;       /* glass: money a piece of that; none without */
    fig glue;        /* solid: run of glue lines a piece; none without */
    fig solid;       /* solid: area a piece, one face */
    fig raised;      /* raised: run of edge a piece */
    fig rise;        /* length: of the arch that it is cut to; none without */
    fig weight;      /* a piece; none when a density is not known */
    struct movement movement; /* of a solid panel in its grooves */
};

/* What a leaf takes of one material. */
struct material_use {
    enum material_kind material_kind;
    int32_t material;
    fig net;   /* board feet or m3; area of sheet parts; area of glass charged */
    fig rough; /* lumber only */
    fig cost;  /* glass only: money */
    fig stops; /* glass only: money of that; none without */
};

#define MOST_USES 4

struct leaf_figures {
    const struct door *door;
    uint32_t subject;
    fig openings; /* count of the row */
    fig leaves;   /* such leaves of one */
    fig pieces;   /* leaves of the row: count x leaves */
    fig width, height, thickness;
    fig face;               /* area of one face, width x height */
    fig perimeter;          /* length */
    fig edges;              /* area of the outer edges */
    fig see_through;        /* area of the openings of a see-through frame, one face */
    fig inner_edges;        /* area of the inner edges of such a frame */
    fig profile;            /* area that the profile adds */
    fig bars;               /* length of all bars on its panes; none without */
    fig bar_area;           /* area of these that is sprayed */
    fig faces;              /* area of the faces that are sprayed */
    fig sprayed;            /* area, all in all; none when the row has no finish */
    fig weight;             /* none when a density is not known */
    fig hinges;             /* that it hangs on; none for fronts, panels and rows without hinges */
    fig hinges_by_rule;     /* what [hinges] asks for; none without hinges, and without a rule */
    const length *hinge_at; /* nm: as many as hinges, from the upper end of the hinged edge, of one
                               that is level from the left, to the middle of each, ascending; NULL:
                               nobody says where they are */
    fig pulls;
    const fig *pieces_of;     /* of other hardware: one for each item of row_hardware */
    fig other_hardware;       /* pieces of all of these; none without */
    fig banded;               /* run of banded edge; none */
    int32_t banding;          /* index into rates.bandings; -1 */
    fig bought_in;            /* money: the leaf as it is bought; none when it is made */
    fig put_out;              /* money: its finish, sent out; none */
    fig driver[DRIVER_COUNT]; /* counts that operations go by; none: 0 */
    struct part_figures *parts;
    struct material_use uses[MOST_USES];
    size_t use_count;
    size_t like; /* of the leaves, the first with all figures the same, where the tape keeps no
                    history; else itself */
};

struct quantities {
    struct leaf_figures *leaves; /* one a door, as struct doors has them: of most rows one */
    fig *pieces;                 /* leaves of each: leaves[door].pieces */
    size_t count;
    fig all_leaves; /* leaves of the job */
    fig hinges;     /* of the job; none without */
    fig weight;     /* of the doors made here; none when a density is not known */
};

/* Puts the quantities of all doors on the tape, in the order of the list. Borrows doors; memory of
 * calc's pool. Uses calc without quantities. false: out of memory. */
bool quantities_make(struct quantities *quantities, const struct calc *calc,
                     const struct doors *doors) __attribute__((warn_unused_result));

/* The unit in which a lumber is counted and sold: board feet or m3. */
enum unit lumber_unit(const struct lumber *lumber);

/* Sum over the rows of pieces x each, in unit; each: one a row, those that are none are passed
 * over; none where all are. */
fig quantities_sum(const struct calc *calc, const char *what, enum unit unit, const fig *each);

/* The same of a figure of what the leaves take of one material, in the figure's own unit; offset:
 * where it stands in struct material_use. */
fig quantities_total(const struct calc *calc, const char *what, enum material_kind material_kind,
                     int32_t material, size_t offset);

#endif
