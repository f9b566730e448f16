/* SPDX-License-Identifier: MIT */
/* What is bought: lumber, sheets, banding, glass, hardware, consumables. */
#include "report/words/field.h"

/* Where a figure of a struct stands. */
#define LUMBER(member)     offsetof(struct lumber_buy, member)
#define WAY(member)        offsetof(struct purchase_by, member)
#define SPARE(member)      offsetof(struct spare_rails, member)
#define SHEET(member)      offsetof(struct sheet_buy, member)
#define SHEET_WAY(member)  offsetof(struct sheet_purchase_by, member)
#define BANDING(member)    offsetof(struct banding_buy, member)
#define GLASS(member)      offsetof(struct glass_buy, member)
#define HARDWARE(member)   offsetof(struct hardware_buy, member)
#define CONSUMABLE(member) offsetof(struct consumable_figures, member)

#define TABLE(rows)                                                                                \
    { rows, sizeof(rows) / sizeof *(rows) }

/* --- lumber --- */

static const struct field lumber[] = {
    {"net", "net, finished parts", NULL, LUMBER(net), FIELD_SHEET},
    {"spare rails", "spare rails, net", "milled with the others, as many as cost least",
     LUMBER(spares), FIELD_SHEET},
    {"rough", "rough, with allowances", NULL, LUMBER(rough), FIELD_SHEET},
    {"allowances", "of the waste: end and edge allowance", "rough less net and spare rails",
     LUMBER(allowances), FIELD_SHEET},
    {"on the rack", "net, of parts cut of the rack", "as the plan has them; not bought by factor",
     LUMBER(on_rack), FIELD_SHEET | FIELD_RACK},
    {"waste, percent", "waste", NULL, LUMBER(waste), FIELD_SHEET},
    {"with waste", "net with waste", NULL, LUMBER(with_waste), FIELD_SHEET},
};
const struct field_table fields_lumber = TABLE(lumber);

static const struct field lumber_way[] = {
    {"needed", "needed, as it is sold", "up to what the yard sells, at least its minimum",
     WAY(needed), FIELD_SHEET},
    {"cost as needed", "cost of that", "at the price for that much", WAY(cost_as_needed),
     FIELD_SHEET},
    {"bought", "to buy", "up to a price break where the whole lot is then cheaper", WAY(bought),
     FIELD_SHEET | FIELD_WAYS | FIELD_TOTAL},
    {"from the rack", NULL, "boards that are there already, by their sizes", WAY(from_rack),
     FIELD_SHEET | FIELD_WAYS | FIELD_TOTAL | FIELD_RACK},
    {"bought and from the rack", NULL, "stands for what is bought in waste and yield", WAY(cut),
     FIELD_SHEET | FIELD_RACK},
    {"price", NULL, NULL, WAY(price), FIELD_SHEET | FIELD_WAYS},
    {"cost", NULL, NULL, WAY(cost), FIELD_SHEET | FIELD_WAYS | FIELD_TOTAL},
    {"bought over net", NULL, NULL, WAY(factor), FIELD_SHEET},
    {"waste added", NULL, "bought / net - 1", WAY(waste_added), FIELD_SHEET | FIELD_WAYS},
    {"yield", NULL, "net / bought", WAY(yield), FIELD_SHEET | FIELD_WAYS},
    {"kerf, defects, offcuts", "of the waste: the rest", "kerf, defects, offcuts, rounding up",
     WAY(rest), FIELD_SHEET},
};
const struct field_table fields_lumber_way = TABLE(lumber_way);

static const struct field lumber_job[] = {
    {"worth from the rack", "worth of the boards from the rack", "as their rows of it say",
     LUMBER(plan.rack.charged), FIELD_SHEET | FIELD_RACK},
    {"charged", "charged to the job", "cost, and that worth", LUMBER(with_rack),
     FIELD_SHEET | FIELD_RACK},
};
const struct field_table fields_lumber_job = TABLE(lumber_job);

#define PLAN (FIELD_SHEET | FIELD_SPLIT)

static const struct field lumber_plan[] = {
    {"boards", NULL, FIELD_CHOSEN, LUMBER(plan.boards), FIELD_SHEET},
    {"cuts", NULL, "ends, straightened edges, rips and crosscuts", LUMBER(plan.cuts), FIELD_SHEET},
    {"at the price of a small lot", NULL, NULL, LUMBER(plan.at_price), FIELD_SHEET},
    {"bound", "no plan costs less than", "proved by the planner at that price: docs/cutting.md",
     LUMBER(plan.bound), FIELD_SHEET},
    {"gap", NULL, NULL, LUMBER(plan.gap), 0},
    {"waste asked for", "waste that the plan asks for",
     "what the percent in the rates would have been, with the offcuts kept for other work",
     LUMBER(implied_waste), FIELD_SHEET | FIELD_TOTAL},
    {"plan more than the factor buys", "plan needs more than the factor buys",
     "more than 0: the factor's amount cannot be cut by the plan; buy by the plan",
     LUMBER(short_of_plan), FIELD_SHEET | FIELD_TOTAL},
    {"waste of the rates", NULL, NULL, LUMBER(waste), 0},
    {"net", "net, finished parts", "this and the lines below add up to what is bought by plan",
     LUMBER(net), PLAN},
    {"spare rails", "spare rails, net", NULL, LUMBER(spares), PLAN},
    {"allowances", "end and edge allowance", NULL, LUMBER(plan.allowances), PLAN},
    {"ends and edges", "ends trimmed, edges straightened", NULL, LUMBER(plan.trim), PLAN},
    {"kerf", NULL, NULL, LUMBER(plan.kerf), PLAN},
    {"defects", "kept for defects", NULL, LUMBER(plan.defects), PLAN},
    {"offcuts", NULL, NULL, LUMBER(plan.offcuts), PLAN},
    {"tallied to whole feet", "tallied to whole feet of surface", "the yard's rounding, down or up",
     LUMBER(plan.tally), PLAN},
    {"beyond the plan", "yard's minimum or price break", NULL, LUMBER(over_plan), PLAN},
    {"less from the rack", "less: from the rack", NULL, LUMBER(less_rack), PLAN | FIELD_RACK},
    {"bought", "bought by plan", NULL, LUMBER(by_plan.bought), PLAN | FIELD_TOTAL},
    {"offcuts worth keeping", "of the offcuts: worth keeping", NULL, LUMBER(plan.keep_worth),
     FIELD_SHEET},
};
const struct field_table fields_lumber_plan = TABLE(lumber_plan);

static const struct field spare[] = {
    {"rails", "rails of that width", NULL, SPARE(pieces), FIELD_SHEET},
    {"spoiled", "spoiled of a hundred", "remakes of the rates", SPARE(spoiled), FIELD_SHEET},
    {"each", "lumber of a spare", "net with waste, at the price below the first break", SPARE(each),
     FIELD_SHEET},
    {"set-up minutes", "minutes to set up once more",
     "of all machines that one more rail goes through", SPARE(setup_minutes), FIELD_SHEET},
    {"set-up", "to set up once more", NULL, SPARE(setup_cost), FIELD_SHEET},
    {"short without spares", "chance of that without spares", NULL, SPARE(short_without),
     FIELD_SHEET},
    {"spares", "spare rails to mill", FIELD_CHOSEN, SPARE(spares), FIELD_SHEET | FIELD_TOTAL},
    {"short", "chance of it with these", NULL, SPARE(short_with), FIELD_SHEET},
};
const struct field_table fields_spare = TABLE(spare);

/* --- sheets --- */

static const struct field sheet[] = {
    {"net", "net, finished parts", NULL, SHEET(net), FIELD_SHEET},
    {"sheet area", "area of a sheet", NULL, SHEET(each), FIELD_SHEET},
    {"weight", "weight of a sheet", "as bought; over 51 lb (23 kg): two people or a cart",
     SHEET(weight), FIELD_SHEET},
    {"price", "price of a sheet", NULL, SHEET(price), FIELD_SHEET},
    {"half price", "price of a half", NULL, SHEET(half_price), FIELD_SHEET},
    {"waste, percent", "waste", NULL, SHEET(waste), FIELD_SHEET},
    {"with waste", "net with waste", NULL, SHEET(needed), FIELD_SHEET},
};
const struct field_table fields_sheet = TABLE(sheet);

static const struct field sheet_way[] = {
    {"whole sheets", "whole sheets to buy", NULL, SHEET_WAY(whole),
     FIELD_SHEET | FIELD_WAYS | FIELD_TOTAL},
    {"half sheets", "half sheets to buy", "where a half is enough for the last", SHEET_WAY(half),
     FIELD_SHEET | FIELD_WAYS | FIELD_TOTAL},
    {"from the rack", NULL, "pieces that are there already", SHEET_WAY(from_rack),
     FIELD_SHEET | FIELD_WAYS | FIELD_TOTAL | FIELD_RACK},
    {"bought", "area bought", NULL, SHEET_WAY(bought), FIELD_SHEET},
    {"bought and from the rack", "area bought and from the rack",
     "stands for what is bought in waste and yield", SHEET_WAY(cut), FIELD_SHEET | FIELD_RACK},
    {"cost", NULL, NULL, SHEET_WAY(cost), FIELD_SHEET | FIELD_WAYS | FIELD_TOTAL},
    {"bought over net", NULL, NULL, SHEET_WAY(factor), FIELD_SHEET},
    {"waste added", NULL, "bought / net - 1", SHEET_WAY(waste_added), FIELD_SHEET | FIELD_WAYS},
    {"yield", NULL, "net / bought", SHEET_WAY(yield), FIELD_SHEET | FIELD_WAYS},
};
const struct field_table fields_sheet_way = TABLE(sheet_way);

static const struct field sheet_job[] = {
    {"worth from the rack", "worth of the pieces from the rack", "as their rows of it say",
     SHEET(plan.rack.charged), FIELD_SHEET | FIELD_RACK},
    {"charged", "charged to the job", NULL, SHEET(charged), FIELD_SHEET},
};
const struct field_table fields_sheet_job = TABLE(sheet_job);

static const struct field sheet_plan[] = {
    {"cuts", NULL, "trims and all others", SHEET(plan.cuts), FIELD_SHEET},
    {"whole sheets", NULL, NULL, SHEET(by_plan.whole), 0},
    {"half sheets", NULL, NULL, SHEET(by_plan.half), 0},
    {"cost", NULL, NULL, SHEET(by_plan.cost), 0},
    {"bound", "no plan costs less than",
     "proved by the planner, pieces of the rack at their worth: docs/cutting.md", SHEET(plan.bound),
     FIELD_SHEET},
    {"gap", NULL, NULL, SHEET(plan.gap), 0},
    {"fewest sheets", NULL, NULL, SHEET(plan.fewest), 0},
    {"waste asked for", "waste that the plan asks for",
     "what the percent in the rates would have been, with the offcuts kept for other work",
     SHEET(implied_waste), FIELD_SHEET | FIELD_TOTAL},
    {"plan more than the factor buys", "plan needs more than the factor buys",
     "more than 0: the factor's amount cannot be cut by the plan; buy by the plan",
     SHEET(short_of_plan), FIELD_SHEET | FIELD_TOTAL},
    {"waste of the rates", NULL, NULL, SHEET(waste), 0},
    {"net", "net, finished parts", "this and the lines below add up to the area bought by plan",
     SHEET(net), PLAN},
    {"edges", "edges trimmed", NULL, SHEET(plan.trim), PLAN},
    {"kerf", NULL, NULL, SHEET(plan.kerf), PLAN},
    {"offcuts", NULL, NULL, SHEET(offcuts), PLAN},
    {"less from the rack", "less: from the rack", NULL, SHEET(less_rack), PLAN | FIELD_RACK},
    {"bought", "bought by plan", NULL, SHEET(by_plan.bought), PLAN | FIELD_TOTAL},
    {"offcuts worth keeping", "of the offcuts: worth keeping", NULL, SHEET(plan.keep_worth),
     FIELD_SHEET},
};
const struct field_table fields_sheet_plan = TABLE(sheet_plan);

/* --- what is bought by the piece --- */

static const struct field banding[] = {
    {"net", "banded edges", "round the slabs", BANDING(net), FIELD_SHEET},
    {"with waste", NULL, NULL, BANDING(needed), FIELD_SHEET},
    {"rolls", "rolls to buy", NULL, BANDING(rolls), FIELD_SHEET | FIELD_TOTAL},
    {"price", NULL, "of a roll, or by the length", BANDING(price), FIELD_SHEET},
    {"cost", NULL, NULL, BANDING(cost), FIELD_SHEET | FIELD_TOTAL},
    {"charged", "charged to the job", NULL, BANDING(charged), FIELD_SHEET},
};
const struct field_table fields_banding = TABLE(banding);

static const struct field glass[] = {
    {"area charged", NULL, "sides rounded up, least area a pane; sizes on the sheet Parts",
     GLASS(area), FIELD_SHEET},
    {"stops", "of the cost: stops", "what holds the panes", GLASS(stops), FIELD_SHEET},
    {"cost", NULL, NULL, GLASS(cost), FIELD_SHEET | FIELD_TOTAL},
};
const struct field_table fields_glass = TABLE(glass);

static const struct field hardware[] = {
    {"needed", "pieces needed", NULL, HARDWARE(needed), FIELD_SHEET},
    {"with spares", NULL, NULL, HARDWARE(with_spares), FIELD_SHEET},
    {"from the rack", NULL, NULL, HARDWARE(from_rack), 0},
    {"packs", NULL, NULL, HARDWARE(packs), FIELD_SHEET},
    {"bought", "pieces to buy", NULL, HARDWARE(bought), FIELD_SHEET},
    {"price", NULL, NULL, HARDWARE(price), FIELD_SHEET},
    {"cost", NULL, NULL, HARDWARE(cost), FIELD_SHEET},
    {"charged", "charged to the job", NULL, HARDWARE(charged), FIELD_SHEET},
};
const struct field_table fields_hardware = TABLE(hardware);

static const struct field consumable[] = {
    {"quantity", NULL, NULL, CONSUMABLE(quantity), FIELD_MORE},
    {"price", NULL, NULL, CONSUMABLE(price), FIELD_SHEET},
    {"cost", NULL, NULL, CONSUMABLE(cost), FIELD_SHEET},
};
const struct field_table fields_consumable = TABLE(consumable);
