/* SPDX-License-Identifier: MIT */
/* Doors and their parts; finish and labor. */
#include "report/words/field.h"

/* Where a figure of a struct stands. */
#define LEAF(member)      offsetof(struct leaf_figures, member)
#define PART(member)      offsetof(struct part_figures, member)
#define COAT(member)      offsetof(struct coat_figures, member)
#define BATCH(member)     offsetof(struct batch, member)
#define PRODUCT(member)   offsetof(struct product, member)
#define OPERATION(member) offsetof(struct operation_figures, member)
#define LABOR(member)     offsetof(struct labor, member)

#define TABLE(rows)                                                                                \
    { rows, sizeof(rows) / sizeof *(rows) }

/* --- doors: the sheet is Doors, the second Surfaces --- */

#define BOTH (FIELD_SHEET | FIELD_MORE)

static const struct field leaf[] = {
    {"openings", "count", NULL, LEAF(openings), FIELD_SHEET},
    {"leaves", NULL, NULL, LEAF(leaves), FIELD_SHEET},
    {"pieces", "doors in all", NULL, LEAF(pieces), BOTH},
    {"width", "made width", NULL, LEAF(width), FIELD_SHEET},
    {"height", "made height", NULL, LEAF(height), FIELD_SHEET},
    {"thickness", "thick", NULL, LEAF(thickness), FIELD_SHEET},
    {"hinges", NULL, NULL, LEAF(hinges), FIELD_SHEET},
    {"pulls", NULL, NULL, LEAF(pulls), 0},
    {"other hardware", NULL, NULL, LEAF(other_hardware), 0},
    {"face area", NULL, NULL, LEAF(face), BOTH},
    {"perimeter", NULL, NULL, LEAF(perimeter), FIELD_MORE},
    {"faces sprayed", NULL, NULL, LEAF(faces), FIELD_MORE},
    {"outer edges", NULL, NULL, LEAF(edges), FIELD_MORE},
    {"see through", "open area", NULL, LEAF(see_through), FIELD_MORE},
    {"inner edges", NULL, NULL, LEAF(inner_edges), FIELD_MORE},
    {"profile area", "profile", NULL, LEAF(profile), FIELD_MORE},
    {"bars area", "bars", NULL, LEAF(bar_area), FIELD_MORE},
    {"sprayed", "sprayed, in all", NULL, LEAF(sprayed), FIELD_MORE},
    {"weight", NULL, NULL, LEAF(weight), FIELD_SHEET},
    {"banded edge", NULL, NULL, LEAF(banded), 0},
    {"bought in", NULL, NULL, LEAF(bought_in), 0},
    {"finish put out", NULL, NULL, LEAF(put_out), 0},
};
const struct field_table fields_leaf = TABLE(leaf);

/* The sheet is Parts, the second Panels. */
static const struct field part[] = {
    {"each door", "pieces a door", NULL, PART(count), FIELD_SHEET},
    {"pieces", "pieces in all", NULL, PART(pieces), FIELD_SHEET},
    {"width", NULL, NULL, PART(width), BOTH},
    {"length", NULL, NULL, PART(length), FIELD_SHEET},
    {"rough width", NULL, NULL, PART(rough_width), FIELD_SHEET},
    {"rough length", NULL, NULL, PART(rough_length), FIELD_SHEET},
    {"blank", "blank, rough length", NULL, PART(blank[0]), FIELD_SHEET},
    {"blanks", NULL, NULL, PART(blanks[0]), FIELD_SHEET},
    {"blank for", "parts in a blank", NULL, PART(blank_holds[0]), FIELD_SHEET},
    {"second blank", "other blank, rough length", NULL, PART(blank[1]), FIELD_SHEET},
    {"second blanks", "other blanks", NULL, PART(blanks[1]), FIELD_SHEET},
    {"second blank for", "parts in one", NULL, PART(blank_holds[1]), FIELD_SHEET},
    {"net", "net, each", NULL, PART(net), FIELD_SHEET},
    {"rough", "rough, each", NULL, PART(rough), FIELD_SHEET},
    {"area", "area, each", NULL, PART(area), FIELD_SHEET},
    {"cost", "glass cost, each", NULL, PART(cost), FIELD_SHEET},
    {"stops", NULL, NULL, PART(stops), 0},
    {"glue lines", "glue lines, each", NULL, PART(glue), FIELD_MORE},
    {"raised edge", "raised edge, each", NULL, PART(raised), FIELD_MORE},
    {"rise", NULL, NULL, PART(rise), 0},
    {"swells by", NULL, NULL, PART(movement.swell), FIELD_MORE},
    {"room", "room to swell", NULL, PART(movement.room), FIELD_MORE},
    {"shrinks by", NULL, NULL, PART(movement.shrink), FIELD_MORE},
    {"hold", "stands in the grooves", NULL, PART(movement.hold), FIELD_MORE},
    {"weight", "weight, each", NULL, PART(weight), FIELD_SHEET},
};
const struct field_table fields_part = TABLE(part);

/* --- finish --- */

static const struct field coat[] = {
    {"coats", NULL, NULL, COAT(times), FIELD_SHEET},
    {"wet film", NULL, NULL, COAT(film), FIELD_SHEET},
    {"theoretical", "one coat, nothing lost", NULL, COAT(theoretical), FIELD_SHEET},
    {"sprayed", "all coats, sprayed", NULL, COAT(sprayed), FIELD_SHEET},
    {"mixes", NULL, NULL, COAT(mixes), FIELD_SHEET},
    {"mix", "mix, with fixed loss", NULL, COAT(mix), FIELD_SHEET},
    {"coating volume", "coating", NULL, COAT(coating_volume), FIELD_SHEET},
    {"reducer", NULL, NULL, COAT(reducer), FIELD_SHEET},
    {"catalyst", NULL, NULL, COAT(catalyst), FIELD_SHEET},
    {"cleaning", NULL, NULL, COAT(cleaning), FIELD_SHEET},
    {"dry film", NULL, NULL, COAT(dry_film), FIELD_SHEET},
    {"cost", NULL, NULL, COAT(cost), FIELD_SHEET},
};
const struct field_table fields_coat = TABLE(coat);

static const struct field batch[] = {
    {"sprayed area", NULL, NULL, BATCH(area), FIELD_SHEET},
    {"dry film", NULL, NULL, BATCH(dry_film), 0},
    {"drying", "drying, one coat after another", NULL, BATCH(dry_hours), FIELD_MORE},
    {"cost", NULL, NULL, BATCH(cost), 0},
};
const struct field_table fields_batch = TABLE(batch);

static const struct field product[] = {
    {"used", "for the coats", NULL, PRODUCT(used), FIELD_RANGE},
    {"reserve", NULL, NULL, PRODUCT(reserve), FIELD_RANGE},
    {"touch-up", NULL, NULL, PRODUCT(touch_up), FIELD_RANGE},
    {"need", "needed", NULL, PRODUCT(need), FIELD_SHEET | FIELD_RANGE},
    {"from the rack", NULL, NULL, PRODUCT(from_rack), 0},
    {"need at the highest transfer", "at the highest transfer", NULL, PRODUCT(need_high),
     FIELD_RANGE},
    {"need at the lowest transfer", "at the lowest transfer", NULL, PRODUCT(need_low), FIELD_RANGE},
    {"left over at the lowest transfer", "then left over", NULL, PRODUCT(left_low), FIELD_RANGE},
    {"bought", "to buy", NULL, PRODUCT(bought), FIELD_MORE},
    {"left over", NULL, NULL, PRODUCT(left_over), FIELD_MORE},
    {"cost", NULL, NULL, PRODUCT(cost), FIELD_MORE | FIELD_TOTAL},
    {"charged", "charged to the job", NULL, PRODUCT(charged), FIELD_MORE},
};
const struct field_table fields_product = TABLE(product);

/* --- labor --- */

static const struct field operation[] = {
    {"job count", NULL, NULL, OPERATION(job_count), 0},
    {"run minutes", NULL, NULL, OPERATION(run), FIELD_SHEET},
    {"set-ups", NULL, NULL, OPERATION(setups), FIELD_SHEET},
    {"set-up minutes", NULL, NULL, OPERATION(setup_minutes), FIELD_SHEET},
    {"machine minutes", NULL, NULL, OPERATION(machine_minutes), FIELD_SHEET},
    {"person-minutes", NULL, NULL, OPERATION(person_minutes), FIELD_SHEET},
    {"labor", NULL, NULL, OPERATION(labor), FIELD_SHEET},
    {"machine", "machine cost", NULL, OPERATION(machine), FIELD_SHEET},
    {"cost", NULL, NULL, OPERATION(cost), FIELD_SHEET},
};
const struct field_table fields_operation = TABLE(operation);

static const struct field labor[] = {
    {"person-minutes", "person-minutes in all", "allowance for rest and delay included",
     LABOR(person_minutes), FIELD_SHEET | FIELD_TOTAL},
    {"hours", "person-hours", NULL, LABOR(hours), FIELD_SHEET | FIELD_TOTAL | FIELD_JOB},
    {"bench hours", "of that: at the bench", "all but the operations off the bench",
     LABOR(bench_hours), FIELD_SHEET | FIELD_JOB},
    {"labor", NULL, NULL, LABOR(labor), 0},
    {"machine", NULL, NULL, LABOR(machine), 0},
    {"minutes a door", "person-minutes by door or front", "all work", LABOR(minutes_a_door),
     FIELD_SHEET},
    {"making, minutes a door", "of that: making it", "shops report 18 to 35 min a door, unfinished",
     LABOR(making), FIELD_SHEET},
    {"finishing, minutes a door", "of that: finishing it", "shops report 23 to 25 min a door",
     LABOR(finishing), FIELD_SHEET},
    {"around it, minutes a door", "of that: around it", "measuring, quoting, packing, cleaning up",
     LABOR(general_minutes), FIELD_SHEET},
    {"working days", "working days, one person", "hours at the bench; drying not counted",
     LABOR(work_days), FIELD_SHEET | FIELD_JOB},
    {"drying", "drying, slowest batch", "coats one after another", LABOR(dry_hours),
     FIELD_SHEET | FIELD_JOB},
};
const struct field_table fields_labor = TABLE(labor);
