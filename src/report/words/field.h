/* SPDX-License-Identifier: MIT */
/* The figures of a struct, named once for all papers: a table a struct, a row a figure, in the
 * order in which every paper lists them.  JSON takes the key, people's papers the label; a sheet of
 * the workbook has the note beside it. A paper goes over a table and knows no figure by name.
 *
 * Tables and their texts are static. */
#ifndef DOORCOST_REPORT_WORDS_FIELD_H
#define DOORCOST_REPORT_WORDS_FIELD_H

#include "price/estimate.h"

/* Where people see a figure; none: it is for programs alone. */
enum field_view {
    FIELD_SHEET = 1 << 0, /* on the sheet of the workbook that its struct is for */
    FIELD_MORE = 1 << 1,  /* on the second sheet or table of that struct */
    FIELD_SPLIT = 1 << 2, /* on the terminal, where the plan's stock goes */
    FIELD_WAYS = 1 << 3,  /* side by side, by factor and by plan */
    FIELD_LINE = 1 << 4,  /* in the lines from cost to price, or from the doors to the total */
    FIELD_RANGE = 1 << 5, /* what a figure is made of, and is at the ends of a range */
    FIELD_JOB = 1 << 7,   /* on the first sheet, which says how the job stands */
    FIELD_TOTAL = 1 << 6, /* no place: what stands above leads to it */
    FIELD_RACK = 1 << 8,  /* no place: it is left out of JSON where nothing is on the rack */
};

struct field {
    const char *key;   /* in JSON; NULL: it has the figure elsewhere */
    const char *label; /* for people; NULL: the key; without one the name of a group of cost */
    const char *note;  /* how it comes about, in few words; NULL: needs none */
    size_t offset;     /* of a fig in the struct */
    unsigned views;    /* of enum field_view */
};

struct field_table {
    const struct field *fields;
    size_t count;
};

/* The figure of a field. thing: of the struct that the field's table is for. */
fig field_figure(const struct field *field, const void *thing);
/* What people call it; static. */
const char *field_label(const struct field *field);
/* The group of cost that a field of fields_build_up is; COST_GROUP_COUNT: none. */
enum cost_group field_group(const struct field *field);
/* How many fields of the table with any of these views stand before the one at offset, which must
 * be of the table: the column that it has where these are columns. */
size_t field_place(const struct field_table *table, unsigned views, size_t offset);

/* The field at offset, which must be of the table. */
const struct field *field_at(const struct field_table *table, size_t offset);

/* How many fields have any of these views. */
size_t field_count(const struct field_table *table, unsigned views);

/* The most fields that a table has whose columns may be left out. */
#define FIELD_MOST 32

/* The fields of a table that some thing has a figure for: a column of the others would be empty. */
struct field_filled {
    const struct field_table *from;
    bool has[FIELD_MOST];
    struct field fields[FIELD_MOST];
};

/* Notes for which fields a thing has a figure. filled: with `from`, else zero at first. */
void field_fill(struct field_filled *filled, const void *thing);
/* These fields in their order; points into filled. */
struct field_table field_only(struct field_filled *filled);

/* What goes with a mark that a choice was made for the job as it stands. */
#define FIELD_CHOSEN "chosen: run again after a change"

/* Doors. */
extern const struct field_table fields_leaf;       /* struct leaf_figures */
extern const struct field_table fields_part;       /* struct part_figures */
extern const struct field_table fields_door_price; /* struct door_price, behind its build-up */

/* Materials. */
extern const struct field_table fields_lumber;      /* struct lumber_buy */
extern const struct field_table fields_lumber_way;  /* struct purchase_by */
extern const struct field_table fields_lumber_job;  /* struct lumber_buy, behind the way */
extern const struct field_table fields_lumber_plan; /* struct lumber_buy, of its plan */
extern const struct field_table fields_spare;       /* struct spare_rails */
extern const struct field_table fields_sheet;       /* struct sheet_buy */
extern const struct field_table fields_sheet_way;   /* struct sheet_purchase_by */
extern const struct field_table fields_sheet_job;   /* struct sheet_buy, behind the way */
extern const struct field_table fields_sheet_plan;  /* struct sheet_buy, of its plan */
extern const struct field_table fields_banding;     /* struct banding_buy */
extern const struct field_table fields_glass;       /* struct glass_buy */
extern const struct field_table fields_hardware;    /* struct hardware_buy */
extern const struct field_table fields_consumable;  /* struct consumable_figures */

/* Finish and labor. */
extern const struct field_table fields_coat;      /* struct coat_figures */
extern const struct field_table fields_batch;     /* struct batch */
extern const struct field_table fields_product;   /* struct product */
extern const struct field_table fields_operation; /* struct operation_figures */
extern const struct field_table fields_labor;     /* struct labor */

/* Money. */
extern const struct field_table fields_build_up; /* struct build_up; JSON has its groups apart */
extern const struct field_table fields_costs;    /* struct costs, behind its build-up */
extern const struct field_table fields_sale;     /* struct sale_figures */
extern const struct field_table fields_purchase; /* struct purchase, behind its groups */

#endif
