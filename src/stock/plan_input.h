/* SPDX-License-Identifier: MIT */
/* What a planner is given: the parts of a material as they are cut, and the operands of the chooser
 * that a replay asks. For src/stock and the papers that show plans. */
#ifndef DOORCOST_STOCK_PLAN_INPUT_H
#define DOORCOST_STOCK_PLAN_INPUT_H

#include "cut/common/cut_stock.h"
#include "cut/common/offcut_rule.h"
#include "door/quantity.h"

/* Which parts of which doors an item of a planner's job stands for. */
struct plan_part {
    const struct door *door;
    const struct part *part;
    int64_t pieces; /* of the job; of blanks: blanks */
    bool spare;     /* spare ones among them */
    int64_t holds;  /* parts in a blank that short ones are milled in; 0: no blank */
};

/* A part as it is cut: lumber with allowances, a glued-up panel stave by stave; of the job. */
struct plan_cut {
    fig length, width, pieces;
};

struct plan_input {
    const struct calc *calc;
    struct plan_part *parts; /* these three: one an item */
    struct plan_cut *cuts;
    struct cut_item *items; /* sizes in millionths of the job's unit */
    size_t item_count;
    fig *operands;
    size_t operand_count, operand_most;
};

/* Gathers the parts made of a material of that kind; turn: they may be turned on the stock. Takes
 * room for `more` operands beside three an item. Memory of calc's pool; false: out of memory. */
bool plan_input_init(struct plan_input *input, const struct calc *calc, enum material_kind kind,
                     int32_t material, bool turn, size_t more) __attribute__((warn_unused_result));

/* Adds an operand. */
void plan_input_add(struct plan_input *input, fig operand);
/* Adds the least size of an offcut worth keeping, in millionths of the job's unit. */
void plan_input_least(struct plan_input *input, const char *what, int64_t least);
/* Adds the two sizes and the price of a stock. */
void plan_input_stock(struct plan_input *input, fig along, fig across, fig price);
/* Adds the two sizes and the count of every item. */
void plan_input_items(struct plan_input *input);

/* Operands of the choosers of plans: the planner's own, the last of which tells how many stocks are
 * sold; with the rack how many are of it, and how many of these, the last ones, are sawn. Then the
 * stocks, with length, width and price, one of the rack also with pieces; then the items, with
 * length, width and pieces. All at 6 decimals. */
#define PLAN_RACK_COUNTS   2
#define PLAN_SIZE_OPERANDS 3
#define PLAN_RACK_OPERANDS 4

/* What a replay has of them. */
struct plan_operands {
    size_t sold, rack, sawn;
    struct cut_stock *stocks; /* those sold, then those of the rack */
    struct cut_item *items;
    size_t item_count;
};

/* Reads count operands, `own` of them the planner's. with_rack: as above. most_sold: stocks sold at
 * most. turn: of all items. false: they are none of a plan, or out of memory. To be freed by
 * plan_operands_free either way. */
bool plan_operands_read(struct plan_operands *operands, const int64_t *in, size_t count, size_t own,
                        bool with_rack, size_t most_sold, bool turn)
    __attribute__((warn_unused_result));
/* Frees what was read; what was not holds nothing. */
void plan_operands_free(struct plan_operands *operands);

/* A length of the rates as a figure in the job's unit, 0 where it is not set. */
fig plan_input_length(const struct calc *calc, const char *what, const struct value *value);

/* Planners count in whole numbers: makes such of the prices of stocks, given at 6 decimals, in
 * hundredths or as fine as the finest of them. Returns the decimals that they then have, 2 to 6. */
uint8_t plan_input_prices(struct cut_stock *stocks, size_t count);

/* What a shop that counts in the unit keeps, in millionths of it: 12 in long, of a board 1 1/2 in
 * wide, of a sheet 6 in; 300, 40 and 150 mm. Common practice, no source. */
struct offcut_rule plan_input_keep(enum length_unit unit);

/* The planner's effort as a figure. */
fig plan_input_effort(const struct calc *calc, int64_t effort);

#endif
