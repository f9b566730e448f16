/* SPDX-License-Identifier: MIT */
#include "report/words/field.h"

#include <assert.h>
#include <string.h>

fig field_figure(const struct field *field, const void *thing) {
    fig figure;
    memcpy(&figure, (const char *)thing + field->offset, sizeof figure);
    return figure;
}

static_assert(offsetof(struct build_up, group) == 0, "groups stand at the head of a build-up");

enum cost_group field_group(const struct field *field) {
    const size_t place = field->offset / sizeof(fig);
    return place < COST_GROUP_COUNT ? (enum cost_group)place : COST_GROUP_COUNT;
}

const char *field_label(const struct field *field) {
    if (field->label == NULL && field->key == NULL) {
        return cost_group_name(field_group(field));
    }
    return field->label == NULL ? field->key : field->label;
}

const struct field *field_at(const struct field_table *table, size_t offset) {
    size_t i = 0;
    while (i < table->count && table->fields[i].offset != offset) {
        i++;
    }
    assert(i < table->count);
    return &table->fields[i];
}

size_t field_count(const struct field_table *table, unsigned views) {
    size_t count = 0;
    for (size_t i = 0; i < table->count; i++) {
        count += (table->fields[i].views & views) != 0;
    }
    return count;
}

void field_fill(struct field_filled *filled, const void *thing) {
    assert(filled->from->count <= FIELD_MOST);
    for (size_t i = 0; i < filled->from->count; i++) {
        filled->has[i] = filled->has[i] || !fig_none(field_figure(&filled->from->fields[i], thing));
    }
}

struct field_table field_only(struct field_filled *filled) {
    struct field_table only = {filled->fields, 0};
    for (size_t i = 0; i < filled->from->count; i++) {
        if (filled->has[i]) {
            filled->fields[only.count++] = filled->from->fields[i];
        }
    }
    return only;
}

size_t field_place(const struct field_table *table, unsigned views, size_t offset) {
    const struct field *const field = field_at(table, offset);
    const struct field_table before = {table->fields, (size_t)(field - table->fields)};
    assert((field->views & views) != 0);
    return field_count(&before, views);
}
