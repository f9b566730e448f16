/* SPDX-License-Identifier: MIT */
/* The job file and the door list: what is to be made and sold. docs/formats.md describes every key
 * and column. */
#ifndef DOORCOST_MODEL_JOB_H
#define DOORCOST_MODEL_JOB_H

#include "base/date.h"
#include "model/rates.h"

enum measure { MEASURE_OPENING, MEASURE_DOOR };
enum use { USE_DOOR, USE_DRAWER_FRONT, USE_FALSE_FRONT, USE_END_PANEL };
enum tax_on { TAX_ON_SELLING_PRICE, TAX_ON_MATERIALS_SOLD, TAX_ON_MATERIALS_COST, TAX_ON_NOTHING };
/* Of what a card fee is a percent: of the total without it, or of all that the card takes. */
enum card_fee_of { CARD_FEE_ADDED, CARD_FEE_OF_PAID };
enum side { SIDE_LEFT, SIDE_RIGHT, SIDE_TOP, SIDE_BOTTOM, SIDE_COUNT };
enum fit { FIT_OVERLAY, FIT_INSET };
enum hinge_side { HINGE_SIDE_OPEN, HINGE_SIDE_LEFT, HINGE_SIDE_RIGHT, HINGE_SIDE_PAIR };
/* How what closes an opening opens: at a side; at its upper or lower edge; or folding, of two
 * leaves (bi-fold: also twice two) of which one hangs on the cabinet and carries the other. */
enum opens {
    OPENS_HINGED,
    OPENS_LIFT_UP,
    OPENS_TILT_OUT,
    OPENS_DROP_DOWN,
    OPENS_BI_FOLD,
    OPENS_PIE_CUT /* round an inner corner: a leaf on each face of it */
};

/* What the client's papers are called, how much detail of the price they show, and what an option's
 * price does to the base price. The first of each is the default. */
enum paper_kind { PAPER_QUOTE, PAPER_ESTIMATE };
enum price_detail { PRICES_SUM, PRICES_ROOMS, PRICES_EACH };
enum option_price { OPTION_REPLACES, OPTION_ADDS };

/* A material by name: lumber, sheet or glass. */
enum material_kind { MATERIAL_NONE, MATERIAL_LUMBER, MATERIAL_SHEET, MATERIAL_GLASS };
struct material_reference {
    struct text name;
    enum material_kind kind;
    int32_t index; /* into that kind's array of the rates, -1: absent */
};

/* So many pieces of a [hardware NAME], `2 knob` on each leaf, `1 lock per opening`. */
struct hardware_item {
    struct reference hardware;
    struct value count;
    bool per_opening; /* shared by the leaves of a pair */
};
struct hardware_items {
    struct text written; /* 'none': no items; s NULL: not said */
    struct hardware_item *list;
    size_t count;
};

/* How a door is made: [make], then what an [option] changes, then what a row says. */
struct construction {
    struct reference style;          /* [door NAME] */
    struct material_reference frame; /* lumber */
    struct material_reference panel; /* sheet; lumber for solid panels */
    struct material_reference solid; /* lumber for solid panels, in place of panel */
    struct material_reference slab;  /* sheet or lumber */
    struct material_reference glass; /* glass */
    struct reference finish;         /* [finish NAME]; index -1 with name 'none': left bare */
    struct reference hinge, pull;    /* [hardware NAME]; 'none' likewise */
    struct reference fold_hinge;     /* likewise: between leaves that fold */
    struct hardware_items hardware;  /* beside these */
    struct text color;
    struct choice grain;              /* enum panel_grain; unset: as the style has it */
    struct choice size_is;            /* enum measure */
    struct value overlay[SIDE_COUNT]; /* nm, 0 allowed */
    struct value reveal;              /* nm, each side; set: the door is inset */
    struct value gap;                 /* nm between the leaves of a pair */
    struct value corner;              /* nm that each leaf of a pie-cut pair ends before the corner
                                         of its openings, 0 allowed */
    struct choice
        fit; /* enum fit, from which of overlay and reveal was said last; set false: neither was */
};

/* What is charged beside the doors: `120.00 for delivery by deliver`. */
struct charge {
    struct text name;           /* for what; absent: delivery */
    struct value value;         /* money, or percent of the doors as sold; unset: what it costs,
                                   marked up as the doors are */
    struct reference operation; /* that does it, and is paid by it alone; index -1: none */
    bool given;
};

struct sale {
    struct text tax_name;       /* what tax is called here: 'VAT'; absent: tax */
    struct value tax;           /* percent */
    struct choice tax_on;       /* enum tax_on */
    struct choice tax_delivery; /* 1: yes */
    struct text exempt;         /* certificate number; set: no tax */
    struct value discount;      /* percent */
    struct steps discounts;     /* limit: doors and fronts from which it holds; value: percent; in
                                   place of discount */
    struct charge delivery;
    struct charge *charges; /* `charges = 80.00 for samples, 45.00 for templates`: not
                               discounted, taxed like the doors */
    size_t charge_count;
    struct value card_fee;      /* percent, for payment by card; shown apart */
    struct choice card_fee_of;  /* enum card_fee_of */
    struct value deposit;       /* percent of the total, on order */
    struct named_value *stages; /* `stages = 40 % when sprayed`: percent of the total; what then
                                   remains is due on delivery */
    size_t stage_count;
};

/* What rows that say the same of how they are made share. Of what they say the place is that of the
 * first row; what is wrong in it was told before. */
struct make {
    size_t number;             /* among the makes of the job, from 0 as rows come */
    bool end_panel;            /* they are end panels, which measure themselves */
    struct construction own;   /* only what such a row itself says */
    struct construction whole; /* for the base job; row_construction gives it for an option */
};

struct row { /* a row of the door list */
    struct place place;
    struct text id, room;
    struct text note, remark;           /* for all who read it; for the shop alone */
    struct choice use;                  /* enum use */
    struct value count;                 /* openings or doors, 1 to 9999 */
    struct value width, height;         /* nm, as measured */
    struct value second_width;          /* nm, of the right face of an inner corner */
    struct value leaves;                /* 1 or 2; of a bi-fold 2 or 4 */
    struct value mid_rails, mid_stiles; /* counts */
    struct values heights; /* given row heights between the rails, top first (column `rows`: `10 |
                              12 1/2`); else none */
    struct value arch;     /* nm: rise of the arches of the top rail; unset or 0: it is straight */
    struct value lights_wide, lights_high; /* counts, into which bars on the glass divide each
                                              pane; unset: there are none */
    struct choice opens;                   /* enum opens */
    struct choice hinge_side;              /* enum hinge_side */
    struct value hinges;                   /* on each leaf that hangs on one; unset: by [hinges] */
    struct values hinge_at;    /* nm, ascending: of each, from the upper end of the hinged edge, of
                                  one that is level from the left, to its middle; count 0: by
                                  [hinges] */
    struct value pulls;        /* pulls or knobs on each leaf, of two that fold on one, where the
                                  make names one */
    struct value extra_charge; /* money a row's door (per leaf) */
    struct references also;  /* operations that the row has besides those of its style and finish */
    struct text extra_words; /* what the extra charge is for, `15.00 arched top`; may be absent */
    const struct make *make;
};

struct option {
    struct text name;
    struct construction changes; /* only what the option says */
    struct choice price;         /* enum option_price */
};

/* A question that the job answers beforehand, `leaf-wide D01`: its id, and what it is about. */
struct acceptance {
    struct text written; /* all of it */
    const char *id;
    const char *about; /* id of a row, name of a section; NULL: whatever it is about */
};

/* What the client took. */
#define AGREED_AS_LISTED "as listed"
struct agreed {
    struct text written; /* all of it */
    struct text to;      /* an option, or AGREED_AS_LISTED; s NULL: nothing yet */
    int32_t option;      /* -1: as listed, or nothing yet */
    struct date date;
};

/* `ready = planned from 2026-03-16`: the day comes of the plan by day. */
struct ready_plan {
    bool asked;
    bool dated; /* it says when work may begin; else that is when the client took the job */
    struct date from;
};

/* Of a job that was put together of several, what does not follow from its rows. */
struct joined_jobs {
    size_t count;
    const size_t *job_of; /* of each row */
    struct value hours;   /* person-hours of all, each by itself: set-ups are not shared */
};

struct job {
    struct pool pool;
    const char *path;
    const struct joined_jobs *joined; /* NULL: it is one job */
    struct settings settings;         /* of this file */
    struct rate_numbers numbers;      /* likewise */
    struct text title, number, client, address, deliver_to, measured_by, note;
    struct text date; /* as written, YYYY-MM-DD */
    int32_t year, month, day;
    struct value valid;        /* days */
    struct text ready;         /* when the doors will be, in words; may be absent */
    struct ready_plan planned; /* or by a plan */
    struct choice paper;       /* enum paper_kind */
    struct value revision;     /* count; unset: none */
    struct text replaces;      /* another paper, in words; may be absent */
    struct agreed agreed;
    struct choice detail;   /* enum price_detail */
    struct references also; /* operations that this job has besides */
    enum length_unit unit;
    struct text rates_path, doors_path; /* resolved against the job file's folder */
    const char *doors_file;             /* doors_path without the name of a sheet */
    struct text own_columns; /* of the list, with commas between, not read; may be absent */
    struct text terms; /* `terms = ...` free text lines for the foot of the quote; may be absent */
    struct acceptance *accepts; /* `accept = leaf-wide D01, film-thick` */
    size_t accept_count;
    struct construction construction;
    struct sale sale;
    struct option *options;
    size_t option_count;
    struct row *rows;
    size_t row_count;
    size_t make_count; /* of its rows */
};

/* The day of its quote, of date_number. */
static inline int32_t job_quoted(const struct job *job) {
    return date_number((struct date){job->year, job->month, job->day});
}

#endif
