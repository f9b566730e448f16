/* SPDX-License-Identifier: MIT */
#include "read/rates/woods.h"

#include "base/text.h"
#include "read/file/source.h"
#include "read/key/columns.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <string.h>
#include <unistd.h>

static const struct unit_form gravity[] = {{"", UNIT_NUMBER, 0, 0, 2}, {0}};
static const struct unit_form shrinkage[] = {{"", UNIT_PERCENT, 0, 0, 30}, {0}};
static const struct unit_form coefficient[] = {{"", UNIT_NUMBER, 0, 0, 1}, {0}};

/* Accepted and ignored: columns of the published table that no stage uses. */
static void skip(struct reader *reader, const struct key *key, const struct entry *entry,
                 void *target) {
    (void)reader;
    (void)key;
    (void)entry;
    (void)target;
}

/* Accepted, held against its range, and ignored likewise. */
static void check_number(struct reader *reader, const struct key *key, const struct entry *entry,
                         void *target) {
    struct value ignored = {0};
    (void)target;
    read_quantity(reader, key, entry, &ignored);
}
#define CHECKED(allowed) AS_OWN(check_number, .forms = (allowed))

const struct key wood_columns[] = {
    {"name", AS_TEXT, FIELD(wood, name), "yellow-poplar", .needed = true,
     .help = "as `species` gives it"},
    {"common_name", AS_TEXT, FIELD(wood, common), "maple, sugar (hard maple)",
     .help = "as its source gives it"},
    {"botanical_name", AS(skip), .example = "Acer saccharum", .help = "in Latin"},
    {"sg_green_volume", CHECKED(gravity), .example = "0.56",
     .help = "specific gravity on green volume"},
    {"sg_12pct_volume", AS_QUANTITY(gravity), FIELD(wood, sg_12), "0.63",
     .help = "specific gravity at 12 % moisture"},
    {"shrink_radial_pct", CHECKED(shrinkage), .example = "4.8",
     .help = "from green to oven dry, radial"},
    {"shrink_tangential_pct", CHECKED(shrinkage), .example = "9.9",
     .help = "from green to oven dry, tangential"},
    {"shrink_volumetric_pct", CHECKED(shrinkage), .example = "14.7",
     .help = "from green to oven dry, by volume"},
    {"coef_radial_CR_per_pct", CHECKED(coefficient), .example = "0.00165",
     .help = "change of size per percent of moisture, radial"},
    {"coef_tangential_CT_per_pct", AS_QUANTITY(coefficient), FIELD(wood, coef_tangential),
     "0.00353", .help = "change of size per percent of moisture, tangential"},
    {"source_sg", AS(skip), .example = "WH", .help = "not read"},
    {"source_shrinkage", AS(skip), .example = "WH", .help = "not read"},
    {"source_coefficient", AS(skip), .example = "WH", .help = "not read"},
    {"note", AS(skip), .example = "", .help = "not read"},
    {"source", AS(skip), .example = "Wood Handbook, table 4-3",
     .help = "where the values are published"},
};
const size_t wood_column_count = COUNT_OF(wood_columns);

static const struct column_set wood_set = {wood_columns, COUNT_OF(wood_columns), 0, "rates"};

/* The one wood in whose names the word stands; -1: none, or several, which are warned of. */
static int32_t find_by_word(struct reader *reader, const struct rates *rates,
                            const struct lumber *lumber) {
    int32_t found[3] = {-1, -1, -1};
    size_t count = 0;
    const size_t size = strlen(lumber->species.s);

    for (size_t i = 0; i < rates->wood_count && count < 3; i++) {
        if (text_holds_word(rates->woods[i].name.s, lumber->species.s, size) ||
            text_holds_word(rates->woods[i].common.s, lumber->species.s, size)) {
            found[count++] = (int32_t)i;
        }
    }
    if (count == 1) {
        return found[0];
    }
    if (count > 1) {
        problem_add(
            reader->problems, SEVERITY_WARNING, "loose-wood", lumber->species.place,
            "species '%s' may be several woods, '%s' or '%s'%s; its weight and movement are "
            "not known until one is named",
            problem_quote(reader->problems, lumber->species.s), rates->woods[found[0]].name.s,
            rates->woods[found[1]].name.s, count > 2 ? " or another" : "");
        return -1;
    }
    return -2;
}

static void find_wood(struct reader *reader, struct rates *rates, struct lumber *lumber,
                      bool table) {
    const char *nearest;

    lumber->wood = -1;
    if (lumber->species.s == NULL) {
        return;
    }
    if (!table) {
        problem_add(reader->problems, SEVERITY_WARNING, "no-woods", lumber->species.place,
                    "species cannot be looked up without a table of woods; add 'woods = woods.csv' "
                    "to [shop]");
        return;
    }
    lumber->wood = name_find(rates, NAME_WOOD, lumber->species.s);
    if (lumber->wood < 0) {
        lumber->wood = find_by_word(reader, rates, lumber);
    }
    if (lumber->wood == -2) {
        lumber->wood = -1;
        nearest = name_nearest(rates, 1U << NAME_WOOD, lumber->species.s, &reader->problems->pool);
        problem_add(reader->problems, SEVERITY_ERROR, "unknown-wood", lumber->species.place,
                    "species '%s' is not in the table of woods; %s%s%s",
                    problem_quote(reader->problems, lumber->species.s),
                    nearest == NULL ? "expected a name that stands there" : "did you mean '",
                    nearest == NULL ? "" : nearest, nearest == NULL ? "" : "'?");
    }
}

static void read_rows(struct reader *reader, struct rates *rates, const struct table *table) {
    struct heading *columns = columns_find(reader, table, &wood_set, 1);

    rates->woods = pool_take(reader->pool, table->count, sizeof(*rates->woods));
    if (columns == NULL || rates->woods == NULL) {
        return;
    }
    for (size_t i = 0; i < table->count; i++) {
        struct wood *wood = &rates->woods[rates->wood_count];
        int32_t earlier;

        columns_read(reader, columns, table, &table->rows[i], &wood_set, 1, wood);
        if (wood->name.s == NULL) {
            continue;
        }
        earlier = name_find(rates, NAME_WOOD, wood->name.s);
        if (earlier >= 0) {
            problem_add(reader->problems, SEVERITY_ERROR, "duplicate-wood", wood->name.place,
                        "wood '%s' stands in %s already; give each name once",
                        problem_quote(reader->problems, wood->name.s),
                        problems_spot(reader->problems, rates->woods[earlier].name.place).text);
        }
        rates->wood_count++;
    }
}

bool woods_table(struct table *table, const char *named, struct place asked, const char *rates,
                 struct problems *problems) {
    *table = (struct table){0};
    if (named == NULL) {
        named = source_beside(&problems->pool, rates, "woods.csv");
        if (named == NULL || access(named, R_OK) != 0) {
            return named != NULL;
        }
    }
    return columns_table(table, named, asked, MOST_WOODS, &wood_set, 1, problems);
}

bool woods_read(struct reader *reader, struct rates *rates, const struct table *table) {
    struct reader own = *reader; /* the table has numbers without units */
    const bool has = rates->shop.woods.s != NULL || table->file != 0;

    own.rates = rates;
    if (table->open && table->columns > 0) {
        read_rows(&own, rates, table);
    }
    for (size_t i = 0; i < rates->lumber_count; i++) {
        /* a table that was named and could not be read has been reported */
        if (rates->wood_count > 0 || !has) {
            find_wood(&own, rates, &rates->lumber[i], has);
        } else {
            rates->lumber[i].wood = -1;
        }
    }
    return !pool_failed(reader->pool) && !reader->problems->failed;
}
