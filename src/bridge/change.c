/* SPDX-License-Identifier: MIT */
#include "bridge/change.h"

#include "base/text.h"
#include "bridge/mix.h"

#include <stdlib.h>
#include <string.h>

struct listing {
    struct bridge_changes *changes;
    size_t room;
    struct pool *pool;
    bool failed;
};

static void add(struct listing *l, struct bridge_change change) {
    struct bridge_changes *const c = l->changes;
    c->list = array_grow(c->list, &l->room, c->count + 1, sizeof *c->list, &l->failed);
    if (!l->failed) {
        c->list[c->count++] = change;
    }
}

static bool same(const char *a, const char *b) {
    return a == b || (a != NULL && b != NULL && strcmp(a, b) == 0);
}

/* --- keys --- */

static const char *title_of(struct listing *l, const struct ini_section *s) {
    return pool_words(l->pool, "[%s%s%s]", s->kind, s->name[0] == '\0' ? "" : " ", s->name);
}

/* Whether a key names a file whose contents are compared by themselves. */
static bool names_inputs(const struct ini_section *s, const char *key) {
    return text_same(s->kind, "job")
               ? text_same(key, "rates") || text_same(key, "doors")
               : text_same(s->kind, "shop") && (text_same(key, "woods") || text_same(key, "stock"));
}

static void list_key(struct listing *l, const struct ini_section *section,
                     const struct ini_key *older, const struct ini_key *newer) {
    const char *const name = older == NULL ? newer->name : older->name;
    const char *const before = older == NULL ? NULL : older->value;
    const char *const after = newer == NULL ? NULL : newer->value;
    if (!same(before, after) && !names_inputs(section, name)) {
        add(l, (struct bridge_change){.group = bridge_group_of(section->kind, name),
                                      .where = title_of(l, section),
                                      .what = name,
                                      .older = before,
                                      .newer = after});
    }
}

/* Sections of a name that one file alone has are one change. */
static bool list_alone(struct listing *l, const struct ini_section *s, bool gone) {
    if (s->name[0] == '\0') {
        return false;
    }
    add(l, (struct bridge_change){.group = bridge_group_of_section(s->kind, gone),
                                  .where = title_of(l, s),
                                  .older = gone ? "" : NULL,
                                  .newer = gone ? NULL : ""});
    return true;
}

static void list_ini(struct listing *l, const struct ini *older, const struct ini *newer) {
    for (size_t i = 0; i < older->count; i++) {
        const struct ini_section *const s = &older->sections[i];
        const struct ini_section *const other = mix_section(newer, s);
        if (other == NULL && list_alone(l, s, true)) {
            continue;
        }
        for (size_t k = 0; k < s->count; k++) {
            list_key(l, s, &s->keys[k], mix_key(other, s->keys[k].name));
        }
    }
    for (size_t i = 0; i < newer->count; i++) {
        const struct ini_section *const s = &newer->sections[i];
        const struct ini_section *const other = mix_section(older, s);
        if (other == NULL && list_alone(l, s, false)) {
            continue;
        }
        for (size_t k = 0; k < s->count; k++) {
            if (mix_key(other, s->keys[k].name) == NULL) {
                list_key(l, s, NULL, &s->keys[k]);
            }
        }
    }
}

/* --- rows --- */

/* `2 of 17 1/4 x 22 3/4`. */
static const char *row_words(struct listing *l, const struct table *list,
                             const struct table_row *row) {
    const char *const count = mix_cell(row, mix_column(list, "count"));
    return pool_words(l->pool, "%s of %s x %s", count[0] == '\0' ? "1" : count,
                      mix_cell(row, mix_column(list, "width")),
                      mix_cell(row, mix_column(list, "height")));
}

/* A cell of the same row in both lists; NULL where nothing stands. */
static void list_cell(struct listing *l, const char *id, const char *heading, const char *older,
                      const char *newer) {
    if (strcmp(older, newer) != 0) {
        add(l, (struct bridge_change){.group = BRIDGE_ROWS_CHANGED,
                                      .where = id,
                                      .what = heading,
                                      .older = older[0] == '\0' ? NULL : older,
                                      .newer = newer[0] == '\0' ? NULL : newer,
                                      .row = true});
    }
}

static void list_row(struct listing *l, const struct job_pair *pair, const struct table_row *older,
                     const struct table_row *newer) {
    const struct table *const was = &pair->older->list;
    const struct table *const is = &pair->newer->list;
    const char *const id = mix_cell(newer, mix_column(is, "id"));
    for (size_t i = 0; i < was->columns; i++) {
        const char *const heading = was->heading[i].text;
        if (heading[0] != '\0') {
            list_cell(l, id, heading, mix_cell(older, (long)i),
                      mix_cell(newer, mix_column(is, heading)));
        }
    }
    for (size_t i = 0; i < is->columns; i++) {
        const char *const heading = is->heading[i].text;
        if (heading[0] != '\0' && mix_column(was, heading) < 0) {
            list_cell(l, id, heading, "", mix_cell(newer, (long)i));
        }
    }
}

static void list_rows(struct listing *l, const struct job_pair *pair) {
    const struct table *const older = &pair->older->list;
    const struct table *const newer = &pair->newer->list;
    for (size_t i = 0; i < older->count; i++) {
        const struct table_row *const row = &older->rows[i];
        if (pair->newer_of[i] != NO_ROW) {
            list_row(l, pair, row, &newer->rows[pair->newer_of[i]]);
        } else {
            add(l, (struct bridge_change){.group = BRIDGE_ROWS_OFF,
                                          .where = mix_cell(row, mix_column(older, "id")),
                                          .older = row_words(l, older, row),
                                          .row = true});
        }
    }
    for (size_t i = 0; i < newer->count; i++) {
        const struct table_row *const row = &newer->rows[i];
        if (pair->older_of[i] == NO_ROW) {
            add(l, (struct bridge_change){.group = BRIDGE_ROWS_ADDED,
                                          .where = mix_cell(row, mix_column(newer, "id")),
                                          .newer = row_words(l, newer, row),
                                          .row = true});
        }
    }
}

/* --- tables of the rates --- */

static bool same_cells(const struct cell *a, const struct cell *b, size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (strcmp(a[i].text, b[i].text) != 0) {
            return false;
        }
    }
    return true;
}

static bool same_table(const struct table *a, const struct table *b) {
    bool same = a->open == b->open && a->columns == b->columns && a->count == b->count &&
                same_cells(a->heading, b->heading, a->columns);
    for (size_t i = 0; same && i < a->count; i++) {
        same = same_cells(a->rows[i].cells, b->rows[i].cells, a->columns);
    }
    return same;
}

static const char *table_words(struct listing *l, const struct table *table, const char *rows) {
    return table->open ? pool_words(l->pool, "%zu %s", table->count, rows) : NULL;
}

/* A table that the rates name is one change, by what stands in it. */
static void list_table(struct listing *l, const char *key, const char *rows,
                       const struct table *older, const struct table *newer) {
    if (!same_table(older, newer)) {
        const char *const after = table_words(l, newer, rows);
        add(l, (struct bridge_change){
                   .group = bridge_group_of("shop", key),
                   .where = "[shop]",
                   .what = key,
                   .older = table_words(l, older, rows),
                   .newer = after == NULL ? NULL : pool_words(l->pool, "%s, edited", after)});
    }
}

static void list_tables(struct listing *l, const struct job_texts *older,
                        const struct job_texts *newer) {
    list_table(l, "woods", "woods", &older->woods, &newer->woods);
    list_table(l, "stock", "rows of the rack", &older->rack, &newer->rack);
}

/* Puts the changes of each group together, in the pool. */
static void sort_changes(struct listing *l) {
    struct bridge_changes *const c = l->changes;
    struct bridge_change *const sorted = pool_take(l->pool, c->count, sizeof *sorted);
    size_t used = 0;
    for (size_t g = 0; g < BRIDGE_GROUP_COUNT; g++) {
        c->first[g] = used;
        for (size_t i = 0; sorted != NULL && i < c->count; i++) {
            if (c->list[i].group == g) {
                sorted[used++] = c->list[i];
            }
        }
    }
    c->first[BRIDGE_GROUP_COUNT] = used;
    free(c->list);
    c->list = sorted;
}

bool changes_make(struct bridge_changes *changes, const struct job_pair *pair, struct pool *pool) {
    struct listing l = {.changes = changes, .pool = pool};
    *changes = (struct bridge_changes){0};
    list_ini(&l, &pair->older->job, &pair->newer->job);
    list_ini(&l, &pair->older->rates, &pair->newer->rates);
    list_tables(&l, pair->older, pair->newer);
    list_rows(&l, pair);
    sort_changes(&l);
    return !l.failed && !pool_failed(pool);
}

bool rates_changes_make(struct bridge_changes *changes, const struct job_texts *older,
                        const struct job_texts *newer, struct pool *pool) {
    struct listing l = {.changes = changes, .pool = pool};
    *changes = (struct bridge_changes){0};
    list_ini(&l, &older->rates, &newer->rates);
    list_tables(&l, older, newer);
    sort_changes(&l);
    return !l.failed && !pool_failed(pool);
}
