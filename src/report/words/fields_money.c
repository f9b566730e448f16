/* SPDX-License-Identifier: MIT */
/* From cost to price, and from the doors to the total. */
#include "report/words/field.h"

/* Where a figure of a struct stands. */
#define BUILD_UP(member) offsetof(struct build_up, member)
#define COSTS(member)    offsetof(struct costs, member)
#define PRICE(member)    offsetof(struct door_price, member)
#define SALE(member)     offsetof(struct sale_figures, member)
#define PURCHASE(member) offsetof(struct purchase, member)

#define TABLE(rows)                                                                                \
    { rows, sizeof(rows) / sizeof *(rows) }

/* The sheet is Costs, the second Prices, whose doors have labor and machine together. */
#define ALL (FIELD_LINE | FIELD_SHEET | FIELD_MORE)
#define GROUP(group_, views)                                                                       \
    { NULL, NULL, NULL, BUILD_UP(group[group_]), views }

static const struct field build_up[] = {
    GROUP(COST_LUMBER, ALL),
    GROUP(COST_SHEETS, ALL),
    GROUP(COST_GLASS, ALL),
    GROUP(COST_FINISH, ALL),
    GROUP(COST_HARDWARE, ALL),
    GROUP(COST_CONSUMABLES, ALL),
    GROUP(COST_BOUGHT_IN, ALL),
    {"materials", NULL, "without the finishing that others do", BUILD_UP(materials),
     FIELD_SHEET | FIELD_MORE | FIELD_TOTAL | FIELD_JOB},
    GROUP(COST_PURCHASE_TAX, ALL),
    GROUP(COST_LABOR, FIELD_LINE | FIELD_SHEET | FIELD_JOB),
    GROUP(COST_MACHINE, FIELD_LINE | FIELD_SHEET),
    {NULL, "labor and machine", NULL, BUILD_UP(group[COST_LABOR]), FIELD_MORE},
    GROUP(COST_REMAKES, ALL),
    {"direct cost", NULL, NULL, BUILD_UP(direct), ALL | FIELD_TOTAL},
    {"contingency", NULL, NULL, BUILD_UP(contingency), ALL},
    {"overhead", NULL, NULL, BUILD_UP(overhead), ALL},
    {"cost with overhead", NULL, NULL, BUILD_UP(full), ALL | FIELD_TOTAL | FIELD_JOB},
    {"profit", NULL, NULL, BUILD_UP(profit), ALL},
    {"price by cost", NULL, NULL, BUILD_UP(price), ALL | FIELD_TOTAL},
};
const struct field_table fields_build_up = TABLE(build_up);

/* The sheet is Costs, below its sum FIELD_MORE: it is none of what adds up. */
static const struct field costs[] = {
    {"least price of a door", NULL, "the shop's minimum door", COSTS(least), FIELD_MORE},
    {"added by the minimum door", NULL, "small doors are priced at it", COSTS(minimum),
     FIELD_LINE | FIELD_SHEET},
    {"extra charges", NULL, NULL, COSTS(extra), FIELD_LINE | FIELD_SHEET},
    {"rounding", "rounding of shares and prices", "shares to the cent, prices up to the step",
     COSTS(rounding), FIELD_LINE | FIELD_SHEET},
    {"doors as quoted", "doors and fronts", "sum of the amounts on the sheet Prices",
     COSTS(doors_total), FIELD_LINE | FIELD_SHEET | FIELD_TOTAL},
};
const struct field_table fields_costs = TABLE(costs);

static const struct field door_price[] = {
    {"priced", "at least the minimum", NULL, PRICE(priced), FIELD_SHEET},
    {"extra charge", NULL, NULL, PRICE(extra), FIELD_SHEET},
    {"unit price", NULL, NULL, PRICE(unit), FIELD_SHEET | FIELD_TOTAL},
    {"amount", NULL, NULL, PRICE(amount), FIELD_SHEET | FIELD_TOTAL},
};
const struct field_table fields_door_price = TABLE(door_price);

/* Labels that hang on the job are those of sale_line.h. */
static const struct field sale[] = {
    {"doors and fronts", NULL, NULL, SALE(doors), FIELD_LINE},
    {"discount, percent", NULL, NULL, SALE(discount_rate), 0},
    {"discount", "less discount", NULL, SALE(discount), FIELD_LINE},
    {"after discount", NULL, NULL, SALE(after_discount), FIELD_LINE | FIELD_TOTAL},
    {"job minimum", "up to the least that a job is done for", NULL, SALE(minimum_line), FIELD_LINE},
    {"delivery", NULL, NULL, SALE(delivery), FIELD_LINE},
    {"before tax", NULL, NULL, SALE(subtotal), FIELD_LINE | FIELD_TOTAL},
    {"taxable", NULL, NULL, SALE(taxable), FIELD_LINE},
    {"tax, percent", NULL, NULL, SALE(tax_rate), 0},
    {"tax", NULL, NULL, SALE(tax), FIELD_LINE},
    {"total before card fee", SALE_BEFORE_FEE, NULL, SALE(before_fee), FIELD_LINE | FIELD_TOTAL},
    {"card fee, percent", NULL, NULL, SALE(card_rate), 0},
    {"card fee", NULL, NULL, SALE(card_fee), FIELD_LINE},
    {"total", NULL, NULL, SALE(total), FIELD_LINE | FIELD_TOTAL | FIELD_JOB},
    {"deposit, percent", NULL, NULL, SALE(deposit_rate), 0},
    {"deposit", "deposit, on order", NULL, SALE(deposit), FIELD_LINE | FIELD_JOB},
    {"balance", "balance, on delivery", NULL, SALE(balance), FIELD_LINE},
    {"sold", "sold, before tax and delivery", "doors less discount, up to the least for a job",
     SALE(sold), FIELD_SHEET | FIELD_JOB},
    {"sold, with charges worked for", NULL, "those that name the operation that earns them",
     SALE(worked), FIELD_SHEET | FIELD_JOB},
    {"cost of that", NULL, "with overhead", SALE(worked_cost), FIELD_SHEET | FIELD_JOB},
    {"profit left", NULL, "what is sold less its cost with overhead, both with charges worked for",
     SALE(profit_left), FIELD_SHEET | FIELD_TOTAL | FIELD_JOB},
    {"margin left", NULL, "profit left, percent of what is sold, with these charges",
     SALE(margin_left), FIELD_SHEET | FIELD_JOB},
};
const struct field_table fields_sale = TABLE(sale);

static const struct field purchase[] = {
    {"spent in all", "spent on what is bought", NULL, PURCHASE(total), FIELD_SHEET | FIELD_JOB},
    {"charged", "of that charged to the job", "with the finishing that others do",
     PURCHASE(charged), FIELD_JOB},
    {"board feet", "lumber to buy", NULL, PURCHASE(board_feet), FIELD_SHEET | FIELD_JOB},
    {"cubic meters", "lumber to buy", NULL, PURCHASE(cubic_meters), FIELD_SHEET | FIELD_JOB},
    {"sheets", "whole sheets to buy", NULL, PURCHASE(sheets), FIELD_SHEET | FIELD_JOB},
    {"half sheets", "half sheets to buy", NULL, PURCHASE(half_sheets), FIELD_SHEET | FIELD_JOB},
    {"finish", "finish needed", NULL, PURCHASE(finish), FIELD_SHEET | FIELD_JOB},
};
const struct field_table fields_purchase = TABLE(purchase);
