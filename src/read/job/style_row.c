/* SPDX-License-Identifier: MIT */
#include "read/job/style_row.h"

#include "model/construction.h"
#include "model/limits.h"
#include "read/job/job_keys.h"

#include <string.h>

bool style_row_side_fits(length side) {
    const struct length_range *const range = key_find(row_keys, row_key_count, "width")->kind.range;
    return side >= range->low && side <= range->high;
}

bool style_row_count_fits(int64_t count) {
    return count >= 1 && count <= MOST_OF_ROW;
}

struct make style_make(const struct rates *rates, const struct job *job, int32_t style) {
    struct make make = {.number = job->make_count};
    construction_init(&make.own);
    make.own.style = (struct reference){.name = rates->styles[style].name, .index = style};
    for (size_t r = 0; r < job->row_count; r++) {
        const struct make *const old = job->rows[r].make;
        if (!old->end_panel && construction_same(&old->own, &make.own)) {
            make.number = old->number;
            break;
        }
    }
    const struct row row = {.make = &make};
    make.whole = row_construction(job, &row, -1);
    return make;
}

struct row style_row(const struct make *make, length width, length height) {
    struct row row = {0};
    for (size_t k = 0; k < row_key_count; k++) {
        key_preset(&row_keys[k], (struct place){0}, &row);
    }
    row.id.s = "one more";
    row.width = (struct value){.amount = width, .unit = UNIT_NM, .set = true};
    row.height = (struct value){.amount = height, .unit = UNIT_NM, .set = true};
    row.make = make;
    return row;
}

bool style_row_can_be_made(const struct rates *rates, const struct job *job, const struct row *row,
                           int option, struct problems *problems) {
    struct reader reader = {.pool = &problems->pool,
                            .problems = problems,
                            .path = job->path,
                            .rates = rates,
                            .unit = job->unit,
                            .money_decimals = rates->shop.money_decimals,
                            .names_known = true,
                            .lacks_known = true};
    const struct construction construction = row_construction(job, row, option);
    return row_can_be_made(&reader, row, &construction, NULL);
}
