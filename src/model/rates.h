/* SPDX-License-Identifier: MIT */
/* The rates file: what the shop knows, shared by all its jobs.
 *
 * A rates file keeps to one system: `unit = in` means prices by board foot or cubic meter, square
 * feet, US gallons, feet a minute, pounds; `unit = mm` means cubic meters or board feet, square
 * meters, liters, meters a minute, kilograms.  Lengths may always carry another unit of their own.
 * docs/formats.md describes every key. */
#ifndef DOORCOST_MODEL_RATES_H
#define DOORCOST_MODEL_RATES_H

#include "base/pool.h"
#include "base/problem.h"
#include "model/chance_rules.h"
#include "model/day_rules.h"
#include "model/hung.h"
#include "model/label_sheet.h"
#include "model/rack.h"
#include "model/rate_number.h"
#include "model/setting.h"
#include "model/usual.h"
#include "model/value.h"
#include "model/work.h"

enum allowance_on { ALLOWANCE_ADDED, ALLOWANCE_OF_SHIFT };
enum overhead_on { OVERHEAD_PER_HOUR, OVERHEAD_PER_BENCH_HOUR, OVERHEAD_OF_COST };
enum profit_as { PROFIT_MARKUP, PROFIT_MARGIN };
enum priced_by { PRICED_BY_FACTOR, PRICED_BY_PLAN };
enum charged { CHARGED_USED, CHARGED_BOUGHT };
/* `50 % added` to net (x 1.50) or `33 % lost` of what is bought (/ 0.67). */
enum waste_as { WASTE_ADDED, WASTE_LOST };

/* A PNG picture as its bytes; bytes NULL: none. */
struct picture {
    const unsigned char *bytes;
    size_t size;
    int32_t width, height; /* dots, 1 or more */
};

struct shop {
    struct text name, address, contact, license; /* for the head of the quote; may be absent */
    struct text payment, warranty;               /* to the client; may be absent */
    struct text currency;                        /* 'USD', shown beside money */
    uint8_t money_decimals;                      /* that amounts in it have */
    enum length_unit unit;
    struct text stock;                 /* likewise a file: what is on the rack */
    struct text woods;                 /* a file's name, resolved against the rates file's folder */
    struct text terms_path, logo_path; /* of the client's papers; resolved likewise */
    struct text *terms;                /* paragraphs of the terms file, comments left out */
    size_t term_count;
    struct picture logo;
    struct value labor_rate;          /* money per hour */
    struct value allowance;           /* percent; unset: none */
    struct choice allowance_on;       /* enum allowance_on */
    struct value hours_per_day;       /* hours */
    struct value overhead;            /* money per hour, or percent */
    struct choice overhead_on;        /* enum overhead_on */
    struct value contingency, profit; /* percent */
    struct choice profit_as;          /* enum profit_as */
    struct value remakes;             /* percent of doors */
    struct value purchase_tax;   /* percent of materials, paid by the shop when it buys; a cost */
    struct value minimum_job;    /* money */
    struct value minimum_door;   /* money, or an area (sq ft, m2) */
    struct value round_price_to; /* money */
    struct choice paper_size;    /* enum paper_size */
    struct choice lumber_by, sheets_by; /* enum priced_by */
    struct choice charge_finish, charge_sheets, charge_banding, charge_hardware; /* enum charged */
    struct references operations; /* operations that every job has (quoting, cleaning up) */
    bool spare_rails;             /* are milled with the batch: stock/spares.h */
    bool invented;                /* the numbers of the file are made up, but for those in own */
    struct texts own;             /* keys of [shop], sections, kinds of section: setting_named */
};

struct lumber {
    struct text name, species;  /* species: a name of the woods table */
    struct text client_name;    /* as the client reads it; absent: the wood's common name */
    int32_t wood;               /* index into rates.woods, -1: not known */
    struct value thickness;     /* nm; nominal: 4/4 is 1 in; a length for metric shops */
    struct text thickness_text; /* as written: '4/4', '27 mm' */
    struct value price;         /* money per bf or per m3 */
    struct steps breaks;    /* `price from = 100 bf at 3.75 per bf, ...`: limit in bf or m3, value a
                               price; ascending */
    struct value waste;     /* percent, needed */
    struct choice waste_as; /* enum waste_as */
    struct values board_widths, board_lengths; /* nm, ascending */
    struct value end_trim;                     /* nm, each end */
    struct value defects;                      /* percent of each board */
    struct value minimum;                      /* bf or m3 */
    struct value work; /* percent: how long work by wood takes in it; unset: 100 */
};

struct banding { /* edge banding of slabs */
    struct text name;
    struct value price; /* money per ft or m; of a roll where roll is set */
    struct value roll;  /* nm: sold in rolls of this length; unset: by the length */
    struct value waste; /* percent added to the edges' length */
};

struct sheet {
    struct text name, client_name; /* client_name: as the client reads it; absent: the name */
    struct value thickness, length, width; /* nm; length along the grain */
    struct value price, half_price;        /* money per sheet */
    bool grain;                            /* grain = length */
    struct value edge_trim;                /* nm */
    struct value waste;                    /* percent, needed */
    struct choice waste_as;
    struct value density; /* lb/cu ft, kg/m3 or g/cm3 */
    int32_t banding;      /* index into rates.bandings, round a slab of it; -1: none */
};

struct glass {
    struct text name, client_name; /* as of a sheet */
    struct value thickness;
    struct value price;    /* money per sq ft or m2 */
    struct value minimum;  /* area a pane is charged at least */
    struct value round_up; /* nm: each side is charged rounded up to a multiple; unset: as it is */
    struct value stops;    /* money per ft or m round a pane; unset: no stops */
    struct value density;
    struct choice safety; /* 1: safety glazing; unset: not said */
    bool lead;            /* its panes are held in lead */
};

struct saw {
    struct value kerf, length_allowance, edge_allowance; /* nm */
    struct value size_step;  /* nm: sizes to cut and to buy are rounded to it; see size_step.h */
    struct value straighten; /* nm taken off each side of a board before it is ripped */
    bool crosscut_first;     /* first cut = crosscut: of a board, for the plan */
};
enum door_form { FORM_PANEL, FORM_SOLID, FORM_SLAB, FORM_GLASS, FORM_OPEN };
enum joint { JOINT_COPE_AND_STICK, JOINT_MORTISE_AND_TENON, JOINT_DOWEL, JOINT_MITER };
enum bars_on { BARS_ON_FRONT, BARS_ON_BOTH };
enum panel_grain { PANEL_GRAIN_VERTICAL, PANEL_GRAIN_HORIZONTAL };

struct style {                     /* [door NAME] */
    struct text name, client_name; /* as of a sheet */
    struct choice form;            /* enum door_form, needed */
    struct choice joint;           /* enum joint */
    struct value thickness;
    /* nm; all but stile default to stile */
    struct value stile, top_rail, bottom_rail, mid_rail, mid_stile;
    struct value tongue, groove; /* nm; groove takes the panel, is the rabbet for glass */
    struct value panel_clearance, clearance_across, glass_clearance; /* nm, each edge */
    struct choice panel_grain;                                       /* enum panel_grain */
    struct value bar_width, bar_thickness; /* nm, as seen and off the glass: of bars laid on it */
    struct choice bars_on;                 /* enum bars_on */
    struct value drawer_rail;              /* nm */
    struct value slab_below;               /* nm: a lower front is made as a slab of slab_style */
    struct reference slab_style;           /* [door NAME] of FORM_SLAB; set where slab_below is */
    struct value profile_extra;   /* nm: developed width of the profile, by stuck edge, all faces */
    struct value panel_thickness; /* nm, finished, of a solid panel; unset: as the door */
    struct value mean_thickness;  /* nm, of a raised panel, for its weight; unset: as that */
    struct value stave; /* nm: solid panels are glued up of staves so wide; unset: of one board */
    bool raised;        /* the solid panel's edges are raised: they are a run to be shaped */
    struct value slats; /* nm from one to the next, as they are drawn in a door bought in */
    struct value bought_in;     /* money per sq ft, m2 or door: bought as it is, nothing is made */
    struct reference bought_as; /* [door NAME] bought in, that can be had for it; index -1: none */
    struct references operations;
};

/* What an operation is counted by. */
enum driver {
    DRIVER_JOB,
    DRIVER_DOOR,  /* every leaf, front or panel */
    DRIVER_PART,  /* every piece of wood, sheet or glass */
    DRIVER_STILE, /* stiles and mid stiles */
    DRIVER_RAIL,  /* rails and mid rails */
    DRIVER_PANEL, /* panels, slabs and panes */
    DRIVER_JOINT,
    DRIVER_ARCH, /* arches of top rails */
    DRIVER_HINGE,
    DRIVER_PULL,             /* pulls and knobs */
    DRIVER_HARDWARE,         /* pieces of other hardware */
    DRIVER_FRAME_RUN,        /* ft or m of frame parts */
    DRIVER_EDGE_RUN,         /* ft or m round the door */
    DRIVER_DOOR_RUN,         /* ft or m of door, its longer side */
    DRIVER_AREA,             /* sq ft or m2 of door, one face */
    DRIVER_SPRAYED,          /* sq ft or m2 of sprayed surface */
    DRIVER_SPRAYED_PER_COAT, /* that, times coats */
    DRIVER_SPRAYED_BETWEEN,  /* that, times coats less one: what is sanded between coats */
    DRIVER_SOLID_PANEL,      /* panels and slabs of lumber */
    DRIVER_GLUE_LINE,        /* ft or m of glue line between the staves of solid panels */
    DRIVER_SOLID_AREA,       /* sq ft or m2 of solid panels and slabs, one face */
    DRIVER_RAISED_RUN,       /* ft or m of raised panel edge */
    DRIVER_BANDED_RUN,       /* ft or m of banded edge */
    DRIVER_PANE,             /* panes of glass */
    DRIVER_BAR,              /* bars laid on panes */
    DRIVER_BAR_RUN,          /* ft or m of these */
    DRIVER_LUMBER,           /* bf (or m3) bought */
    DRIVER_SHEET,            /* sheets bought */
    DRIVER_BOARD,            /* boards of the cutting plans */
    DRIVER_CUT,              /* cuts of the plans of boards and sheets */
    DRIVER_COUNT
};

/* What calls for a new set-up: once per distinct value among the parts that are worked on. */
enum setup_per {
    SETUP_PER_JOB,
    SETUP_PER_MATERIAL,
    SETUP_PER_THICKNESS,
    SETUP_PER_WIDTH,
    SETUP_PER_LENGTH,
    SETUP_PER_STYLE,
    SETUP_PER_COAT,
    SETUP_PER_COLOR,
    SETUP_PER_COUNT
};

struct additive { /* reducers and catalysts that are bought */
    struct text name;
    unsigned hazards;   /* of enum hazard; 0: not told */
    struct steps sizes; /* limit: gal or L; value: money */
};

enum spread_by { SPREAD_BY_FILM, SPREAD_BY_THEORETICAL, SPREAD_BY_PRACTICAL };
/* Of what a gallon (liter) of `coverage` is: the product as sold, or mixed with its catalyst. */
enum coverage_of { COVERAGE_OF_PRODUCT, COVERAGE_OF_MIXED };
enum part_of { PART_OF_COATING, PART_OF_MIX };

struct coating {
    struct text name;
    struct choice spread_by;   /* enum spread_by: film, or coverage ... theoretical or practical */
    struct value wet_film;     /* nm */
    struct value coverage;     /* sq ft per gal or m2 per L; wet_film too: for the dry film */
    struct choice coverage_of; /* enum coverage_of */
    struct value solids;       /* percent by volume */
    struct value reducer, catalyst;                     /* percent */
    struct choice reducer_of, catalyst_of;              /* enum part_of */
    struct reference reducer_product, catalyst_product; /* [additive NAME] */
    struct value pot_life, dry;                         /* hours */
    struct reference put_on; /* [spray NAME] in place of the finish's; index -1: the finish's */
    struct value reserve;    /* percent of what is used */
    struct value touch_up;   /* gal or L per color, left with the client */
    struct steps sizes;      /* limit: gal or L; value: money; needed */
    unsigned hazards;        /* of enum hazard; 0: not told */
    bool tinted;             /* mixed to a color: bought for each color by itself */
};

struct spray {
    struct text name;
    struct value transfer; /* percent, needed */
    struct range transfer_range;
    struct value other_loss; /* percent */
    struct value fixed_loss; /* gal or L per mix */
    struct value mix_size; /* gal or L: the most that is mixed at once; unset: a coat is one mix */
    struct value cleaning; /* gal or L per mix, of what pot, gun or brush is washed with */
    struct reference cleaning_product; /* [additive NAME]; index -1: it is not bought for the job */
    bool by_hand;                      /* wiped or brushed: its coats are not sprayed */
    bool pressure;                     /* a pot or pump holds the coating under pressure */
};

struct coat {
    int32_t coating; /* index into rates.coatings */
    struct value times;
};

enum faces { FACES_BOTH, FACES_FRONT, FACES_BACK, FACES_NONE };

struct finish {
    struct text name, client_name; /* as of a sheet */
    int32_t spray;                 /* index into rates.sprays */
    struct coat *coats;            /* in the order of spraying */
    size_t coat_count;
    struct choice faces;         /* enum faces; edges always */
    struct value put_out;        /* money per sq ft or m2 of sprayed surface: sprayed by others */
    struct reference put_out_as; /* [finish NAME] put out, that can be had for it; index -1: none */
    struct value colors;         /* that a job in this finish has where rows name none; default 1 */
    struct references operations;
};

struct consumable {
    struct text name;
    struct value price; /* money per door, hinge, sq ft or m2 of sprayed surface, hour of labor */
};

struct wood { /* a row of the woods table; its other columns are checked and ignored */
    struct text name, common;
    struct value sg_12;           /* specific gravity at 12 % moisture */
    struct value coef_tangential; /* change of size per percent of moisture */
};

/* The groups in which cost is counted. */
enum cost_group {
    COST_LUMBER,
    COST_SHEETS,
    COST_GLASS,
    COST_FINISH,
    COST_HARDWARE,
    COST_CONSUMABLES,
    COST_BOUGHT_IN, /* doors bought as they are, finishing put out */
    COST_PURCHASE_TAX,
    COST_LABOR, /* labor; of a door: labor and machine together */
    COST_MACHINE,
    COST_REMAKES,
    COST_GROUP_COUNT
};

/* What the shop questions in a list; each unset limit is not asked for. */
struct limits {
    struct value widest_leaf, highest_panel; /* nm */
    struct value dry_film;                   /* nm, of a whole finish */
    struct value price_age;                  /* days */
};

/* The air that solid panels live in, to tell how much they move. */
struct climate {
    struct value driest, wettest; /* percent relative humidity, at 70 F */
    struct value moisture;        /* percent moisture of the wood when it is made up */
};

struct rates {
    struct pool pool;
    const char *path;
    struct settings settings;    /* of this file */
    struct rate_numbers numbers; /* all of it, but for limits of steps and what is usual */
    struct shop shop;
    struct saw saw;
    struct hinge_rules hinges;
    struct limits limits;
    struct climate climate;
    struct chance_rules chance;
    struct day_rules days;
    struct bounds usual[USUAL_COUNT];      /* by enum usual */
    struct value markup[COST_GROUP_COUNT]; /* percent; a group named here takes this in place of the
                                              shop's profit */
    struct lumber *lumber;
    struct sheet *sheets;
    struct banding *bandings;
    struct glass *glass;
    struct style *styles;
    struct operation *operations;
    struct machine *machines;
    struct additive *additives;
    struct coating *coatings;
    struct spray *sprays;
    struct finish *finishes;
    struct hardware *hardware;
    struct consumable *consumables;
    struct wood *woods;
    struct rack rack;
    struct label_sheet *labels;
    size_t lumber_count, sheet_count, banding_count, glass_count, style_count, operation_count,
        machine_count, additive_count, coating_count, spray_count, finish_count, hardware_count,
        consumable_count, wood_count, label_count;
};

/* Whether a sheet of labels is of letter paper; else it is of A4. */
static inline bool label_on_letter(const struct label_sheet *sheet, const struct shop *shop) {
    const struct choice *const size =
        sheet->paper_size.set ? &sheet->paper_size : &shop->paper_size;
    return paper_is_letter(size->choice, shop->unit);
}

#endif
