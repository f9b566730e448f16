/* SPDX-License-Identifier: MIT */
/* Lines of totals in a list of doors: workbooks have them, and what they say is a check. */
#include "base/array.h"
#include "base/text.h"
#include "read/job/job_keys.h"

#include <stdlib.h>
#include <string.h>

#define DIGITS "0123456789"

static bool is_column(const struct heading *heading, const char *name) {
    return heading->key != NULL && text_same(heading->key->name, name);
}

/* Whether what stands first in a row names totals: common practice, no source. */
static bool names_totals(const struct table *table, const struct table_row *row) {
    static const char *const names[] = {"total",  "totals", "sum",         "subtotal",
                                        "total:", "sum:",   "grand total", "totals:"};
    size_t first = 0;
    while (first + 1 < table->columns && row->cells[first].text[0] == '\0') {
        first++;
    }
    for (size_t i = 0; i < COUNT_OF(names); i++) {
        if (text_same(row->cells[first].text, names[i])) {
            return true;
        }
    }
    return false;
}

/* Which column has the counts; table->columns: none. */
static size_t count_column(const struct table *table, const struct heading *columns) {
    size_t at = 0;
    while (at < table->columns && !is_column(&columns[at], "count")) {
        at++;
    }
    return at;
}

/* Whether it has no size, as every door has. */
static bool lacks_sizes(const struct table *table, const struct heading *columns,
                        const struct table_row *row) {
    for (size_t i = 0; i < table->columns; i++) {
        if (row->cells[i].text[0] != '\0' &&
            (is_column(&columns[i], "width") || is_column(&columns[i], "height"))) {
            return false;
        }
    }
    return true;
}

/* Doors and fronts of a row; *known becomes false where its count is no number. */
static long long count_of(const char *text, bool *known) {
    *known = *known && text[strspn(text, DIGITS)] == '\0';
    return text[0] == '\0' ? 1 : strtoll(text, NULL, 10);
}

void list_totals_drop(struct table *table, const struct heading *columns,
                      struct problems *problems) {
    const size_t counts = count_column(table, columns);
    long long all = 0;
    long long part = 0; /* since the last line of totals */
    bool known = true;
    size_t kept = 0;
    for (size_t i = 0; i < table->count; i++) {
        const struct table_row *const row = &table->rows[i];
        const char *const count = counts < table->columns ? row->cells[counts].text : "";
        if (!names_totals(table, row)) {
            const long long more = count_of(count, &known);
            all += more;
            part += more;
        } else if (lacks_sizes(table, columns, row)) {
            const long long told = count[0] == '\0' ? all : count_of(count, &known);
            if (known && told != all && told != part) {
                problem_add(
                    problems, SEVERITY_ERROR, "totals-differ", row->place,
                    "the line of totals says %s, and the counts above it make %lld; put right "
                    "what is wrong, or take the line away",
                    problem_quote(problems, count), all);
            }
            part = 0;
            continue;
        } else {
            problem_add(problems, SEVERITY_ERROR, "totals-row", row->place,
                        "the row looks like a line of totals, and has a size as a door has; take "
                        "it away, or name the door otherwise");
        }
        table->rows[kept++] = *row;
    }
    table->count = kept;
}
