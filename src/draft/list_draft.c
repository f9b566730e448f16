/* SPDX-License-Identifier: MIT */
#include "draft/list_draft.h"

#include "base/text.h"
#include "model/list_column.h"
#include "read/job/job_value.h"
#include "read/key/grammar.h"

#include <assert.h>
#include <string.h>

/* What the row that shows how has beside a choice, which is the first there is. Its id is what the
 * reader knows it by. */
static const char *example_of(const struct list_draft_column *column, enum length_unit unit) {
    static const struct {
        const char *name, *inch, *metric;
    } examples[] = {{"id", LIST_EXAMPLE_ID, LIST_EXAMPLE_ID},
                    {"room", "kitchen", "kitchen"},
                    {"count", "2", "2"},
                    {"width", "15.25", "395"},
                    {"height", "30", "720"},
                    {"leaves", "1", "1"},
                    {"note", LIST_EXAMPLE_NOTE, LIST_EXAMPLE_NOTE}};
    for (size_t i = 0; i < sizeof examples / sizeof *examples; i++) {
        if (text_same(examples[i].name, column->name)) {
            return unit == LENGTH_MM ? examples[i].metric : examples[i].inch;
        }
    }
    return text_same(column->name, "glass") || column->choice_count == 0 ? "" : column->choices[0];
}

static void add(struct list_draft *list, const char *name, const struct rates *rates,
                struct pool *pool) {
    const struct key *const key = list_key(name);
    assert(key != NULL && list->count < LIST_MOST_COLUMNS);
    struct list_draft_column *const column = &list->columns[list->count++];
    *column = (struct list_draft_column){.name = key->name, .help = key->help};
    column->choices = job_value_list(key, rates, pool, &column->choice_count);
    if (column->choice_count > 0) {
        column->kind = LIST_CHOICE;
    } else if (key->kind.read == read_length) {
        column->kind = LIST_SIZE;
        column->low = key->kind.range->low;
        column->high = key->kind.range->high;
    } else if (key->kind.read == read_quantity && key->kind.forms[0].unit == UNIT_COUNT) {
        column->kind = LIST_COUNT;
        column->low = key->kind.forms[0].low;
        column->high = key->kind.forms[0].high;
    }
    column->example = example_of(column, list->unit);
}

bool list_draft_make(struct list_draft *list, const struct rates *rates, enum length_unit unit,
                     struct pool *pool) {
    size_t count;
    const struct list_column *const columns = list_columns(&count);
    *list = (struct list_draft){.unit = unit};
    for (size_t i = 0; i < count; i++) {
        if (columns[i].wanted == NULL || columns[i].wanted(rates)) {
            add(list, columns[i].name, rates, pool);
        }
    }
    add(list, "note", rates, pool);
    return !pool_failed(pool);
}

const char *list_draft_csv(const struct list_draft *list, struct pool *pool) {
    const char *heads = "";
    const char *cells = "";
    for (size_t i = 0; i < list->count; i++) {
        const struct list_draft_column *const column = &list->columns[i];
        const char *const between = i == 0 ? "" : ",";
        const bool quoted = strchr(column->example, ',') != NULL;
        heads = pool_words(pool, "%s%s%s", heads, between, column->name);
        cells = pool_words(pool, "%s%s%s%s%s", cells, between, quoted ? "\"" : "", column->example,
                           quoted ? "\"" : "");
    }
    return pool_failed(pool) ? NULL : pool_format(pool, "%s\n%s\n", heads, cells);
}
