/* SPDX-License-Identifier: MIT */
/* The door list under the names of its columns' keys. */
#include "base/text.h"
#include "read/job/job_keys.h"

#include <string.h>

/* Lengths of a cell with '|' between them, each bare one with the unit behind it. */
static const char *with_unit(const char *text, enum length_unit unit, struct pool *pool) {
    const char *all = "";
    for (const char *from = text;; from++) {
        const char *const start = text_skip_blanks(from);
        const char *const end = start + strcspn(start, "|");
        const char *const part =
            pool_text(pool, start, (size_t)(text_trim_end(start, end) - start));
        length inches = 0;
        length millimeters = 0;
        const bool bare = part != NULL && length_read(part, LENGTH_INCH, &inches) == LENGTH_OK &&
                          length_read(part, LENGTH_MM, &millimeters) == LENGTH_OK &&
                          inches != millimeters;
        all = pool_words(pool, "%s%s%s%s", all, from == text ? "" : " | ", text_or_empty(part),
                         !bare ? "" : (unit == LENGTH_MM ? " mm" : " in"));
        if (*end == '\0') {
            return all;
        }
        from = end;
    }
}

bool door_list_name(struct table *table, enum length_unit unit, struct pool *pool) {
    const struct heading *const columns = door_list_columns(table, pool);
    for (size_t i = 0; columns != NULL && i < table->columns; i++) {
        if (columns[i].key == NULL || columns[i].advice != NULL) {
            continue;
        }
        table->heading[i].text = columns[i].key->name;
        for (size_t r = 0; columns[i].has_unit && columns[i].unit != unit && r < table->count;
             r++) {
            struct cell *const cell = &table->rows[r].cells[i];
            cell->text = with_unit(cell->text, columns[i].unit, pool);
        }
    }
    table->above_count = 0; /* what they tell is told */
    return columns != NULL && !pool_failed(pool);
}
