/* SPDX-License-Identifier: MIT */
#include "read/actuals/actuals_file.h"

#include "model/limits.h"
#include "read/actuals/actuals_row.h"
#include "read/key/columns.h"

static void read_rows(struct reader *reader, struct actuals *actuals, const struct table *table,
                      const struct heading *columns, const struct column_set *set) {
    for (size_t i = 0; i < table->count && !pool_failed(reader->pool); i++) {
        struct actual_said said = {0};
        columns_read(reader, columns, table, &table->rows[i], set, 1, &said);
        said.row.place = table->rows[i].place;
        if (said.row.what.s != NULL) { /* else it lacks, which was reported */
            actual_complete(reader, &said);
        }
        actuals->rows[actuals->count++] = said.row;
    }
}

bool actuals_read(struct actuals *actuals, const struct rates *rates, const char *path,
                  struct problems *problems) {
    const struct column_set set = {actual_keys, actual_key_count, 0, "noted"};
    struct reader reader = {.pool = &actuals->pool,
                            .problems = problems,
                            .path = path,
                            .rates = rates,
                            .unit = rates->shop.unit,
                            .money_decimals = rates->shop.money_decimals,
                            .names_known = true,
                            .lacks_known = true};
    struct table table;

    *actuals = (struct actuals){0};
    pool_init(&actuals->pool);
    if (!columns_table(&table, path, (struct place){0}, MOST_ACTUALS, &set, 1, problems)) {
        return false;
    }
    if (!table.open || table.columns == 0 || table.over) {
        return !problems->failed;
    }
    const struct heading *const columns = columns_find(&reader, &table, &set, 1);
    actuals->rows = pool_take(reader.pool, table.count, sizeof *actuals->rows);
    if (columns == NULL || actuals->rows == NULL) {
        return false;
    }
    read_rows(&reader, actuals, &table, columns, &set);
    if (table.count == 0) {
        problem_add(problems, SEVERITY_ERROR, "empty-table",
                    (struct place){.file = table.file, .line = 1},
                    "the table has a heading but no rows; expected a row for each thing noted");
    }
    return !pool_failed(reader.pool) && !problems->failed;
}

void actuals_clear(struct actuals *actuals) {
    pool_clear(&actuals->pool);
    *actuals = (struct actuals){0};
}
