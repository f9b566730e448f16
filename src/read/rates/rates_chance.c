/* SPDX-License-Identifier: MIT */
/* How the ranges behind the numbers of the rates are drawn from. */
#include "model/rate_group.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

static const struct spelling shapes[] = {{"pert", CHANCE_PERT}, {"triangle", CHANCE_TRIANGLE}, {0}};

static const struct key chance_keys[] = {
    {"ranges", AS_CHOICE(shapes), FIELD(chance_rules, shape), "pert", "triangle",
     .help = "how likely what lies within a range is; left out: pert, which puts less on its ends"},
    {"confidence", AS_PERCENT(50, 99), FIELD(chance_rules, confidence), "80 %",
     .help = "how sure the cost is to be borne with the contingency that is told; left out: 80 %"},
    {"together", AS_OWN(read_groups, .forms = FORM("", UNIT_NUMBER, 0, 1)),
     FIELDS(chance_rules, together, together_count), "operation minutes at 0.6",
     "lumber price at 0.8, all at 0.2",
     .help =
         "ranges that share a cause: a section, a kind of section, either with a key behind it, "
         "a key of `[shop]`, or all; and their correlation, 0 to 1. A range moves with the "
         "first that names it; left out: each moves by itself"},
};

const struct section_kind section_chance = {"chance", chance_keys, COUNT_OF(chance_keys),
                                            SECTION(rates, chance),
                                            .help = "How the ranges of the rates are drawn from."};

/* Ranges that move with that group. */
static size_t members_of(const struct rates *rates, size_t group) {
    size_t members = 0;
    for (size_t i = 0; i < rates->numbers.count; i++) {
        const struct rate_number *const number = &rates->numbers.list[i];
        members += rate_number_ranged(number) && rate_group_of(rates, number) == (int32_t)group;
    }
    return members;
}

void together_check(struct reader *reader, const struct rates *rates) {
    for (size_t g = 0; g < rates->chance.together_count; g++) {
        const struct text *const name = &rates->chance.together[g].name;
        const size_t members = name->s == NULL ? 2 : members_of(rates, g);
        if (members < 2) {
            problem_add(reader->problems, SEVERITY_ERROR, "together-alone", name->place,
                        "together: '%s' moves %s; expected a section, a kind of section or a key "
                        "of at least two ranges like '4.10 per bf (3.80 to 4.60)'",
                        problem_quote(reader->problems, name->s),
                        members == 0 ? "no range" : "one range alone");
        }
    }
}
