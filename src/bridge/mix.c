/* SPDX-License-Identifier: MIT */
#include "bridge/mix.h"

#include "base/index.h"
#include "base/text.h"

#include <string.h>

struct mixing {
    unsigned taken;
    struct pool *pool;
};

static bool takes(const struct mixing *m, enum bridge_group group) {
    return (m->taken & 1u << group) != 0;
}

const struct ini_section *mix_section(const struct ini *ini, const struct ini_section *like) {
    for (size_t i = 0; i < ini->count; i++) {
        const struct ini_section *const s = &ini->sections[i];
        if (text_same(s->kind, like->kind) && text_same(s->name, like->name)) {
            return s;
        }
    }
    return NULL;
}

const struct ini_key *mix_key(const struct ini_section *section, const char *name) {
    for (size_t i = 0; section != NULL && i < section->count; i++) {
        if (text_same(section->keys[i].name, name)) {
            return &section->keys[i];
        }
    }
    return NULL;
}

long mix_column(const struct table *list, const char *heading) {
    for (size_t i = 0; i < list->columns; i++) {
        if (text_same(list->heading[i].text, heading)) {
            return (long)i;
        }
    }
    return -1;
}

const char *mix_cell(const struct table_row *row, long column) {
    return column < 0 ? "" : row->cells[column].text;
}

/* --- pairs of rows --- */

static bool is_id(const void *list, size_t number, const void *thing) {
    return text_same(((const char *const *)list)[number], thing);
}

bool pair_make(struct job_pair *pair, const struct job_texts *older, const struct job_texts *newer,
               struct pool *pool) {
    const struct table *const lists[] = {&older->list, &newer->list};
    const size_t all = lists[0]->count + lists[1]->count;
    const char **const ids = pool_take(pool, all, sizeof *ids);
    struct index index = {0};
    bool failed = false;
    size_t next = 0;
    *pair = (struct job_pair){
        .older = older,
        .newer = newer,
        .newer_of = pool_take(pool, lists[0]->count, sizeof *pair->newer_of),
        .older_of = pool_take(pool, lists[1]->count, sizeof *pair->older_of),
    };
    for (size_t n = 0; n < 2 && !pool_failed(pool); n++) {
        const long column = mix_column(lists[n], "id");
        for (size_t i = 0; i < lists[n]->count; i++, next++) {
            ids[next] = mix_cell(&lists[n]->rows[i], column);
            const size_t found = index_add(&index, hash_name(HASH_START, ids[next]), is_id, ids,
                                           ids[next], next, &failed);
            (n == 0 ? pair->newer_of : pair->older_of)[i] = NO_ROW;
            if (n == 1 && found < lists[0]->count) {
                pair->older_of[i] = found;
                pair->newer_of[found] = i;
            }
        }
    }
    index_clear(&index);
    return !failed && !pool_failed(pool);
}

/* --- sections --- */

/* A section that both files have, or that has no name; one of the two may be NULL. */
static void mix_keys(const struct mixing *m, struct ini_section *to,
                     const struct ini_section *older, const struct ini_section *newer) {
    const size_t most = (older == NULL ? 0 : older->count) + (newer == NULL ? 0 : newer->count);
    *to = older == NULL ? *newer : *older;
    to->count = 0;
    to->keys = pool_take(m->pool, most, sizeof *to->keys);
    if (to->keys == NULL) {
        return;
    }
    for (size_t i = 0; older != NULL && i < older->count; i++) {
        const struct ini_key *key = &older->keys[i];
        if (takes(m, bridge_group_of(to->kind, key->name))) {
            key = mix_key(newer, key->name);
        }
        if (key != NULL) {
            to->keys[to->count++] = *key;
        }
    }
    for (size_t i = 0; newer != NULL && i < newer->count; i++) {
        const struct ini_key *const key = &newer->keys[i];
        if (mix_key(older, key->name) == NULL && takes(m, bridge_group_of(to->kind, key->name))) {
            to->keys[to->count++] = *key;
        }
    }
}

/* Whether a section with a name that only one of the files has stands in the mix. */
static bool keeps_named(const struct mixing *m, const struct ini_section *section, bool gone) {
    return takes(m, bridge_group_of_section(section->kind, gone)) != gone;
}

static bool mix_ini(const struct mixing *m, struct ini *to, const struct ini *older,
                    const struct ini *newer) {
    *to = *older;
    to->count = 0;
    to->sections = pool_take(m->pool, older->count + newer->count, sizeof *to->sections);
    if (to->sections == NULL) {
        return false;
    }
    for (size_t i = 0; i < older->count; i++) {
        const struct ini_section *const s = &older->sections[i];
        const struct ini_section *const other = mix_section(newer, s);
        if (other == NULL && s->name[0] != '\0') {
            to->sections[to->count] = *s;
            to->count += keeps_named(m, s, true) ? 1 : 0;
        } else {
            mix_keys(m, &to->sections[to->count], s, other);
            to->count += to->sections[to->count].count > 0 ? 1 : 0;
        }
    }
    for (size_t i = 0; i < newer->count; i++) {
        const struct ini_section *const s = &newer->sections[i];
        if (mix_section(older, s) != NULL) {
            continue;
        }
        if (s->name[0] != '\0') {
            to->sections[to->count] = *s;
            to->count += keeps_named(m, s, false) ? 1 : 0;
        } else {
            mix_keys(m, &to->sections[to->count], NULL, s);
            to->count += to->sections[to->count].count > 0 ? 1 : 0;
        }
    }
    return !pool_failed(m->pool);
}

/* --- rows --- */

/* The columns of both lists that have a heading. */
static bool mix_heading(const struct mixing *m, struct table *to, const struct job_pair *pair) {
    const struct table *const lists[] = {&pair->older->list, &pair->newer->list};
    *to = *lists[0];
    to->columns = 0;
    to->heading = pool_take(m->pool, lists[0]->columns + lists[1]->columns, sizeof *to->heading);
    for (size_t n = 0; to->heading != NULL && n < 2; n++) {
        for (size_t i = 0; i < lists[n]->columns; i++) {
            const struct cell *const cell = &lists[n]->heading[i];
            if (cell->text[0] != '\0' && mix_column(to, cell->text) < 0) {
                to->heading[to->columns++] = *cell;
            }
        }
    }
    return to->heading != NULL;
}

/* A row of list under the heading of `to`. */
static void put_row(const struct mixing *m, struct table *to, const struct table *list,
                    const struct table_row *row) {
    struct cell *const cells = pool_take(m->pool, to->columns, sizeof *cells);
    if (cells == NULL) {
        return;
    }
    for (size_t i = 0; i < to->columns; i++) {
        const long column = mix_column(list, to->heading[i].text);
        cells[i] = column < 0 ? (struct cell){.text = "", .place = row->place} : row->cells[column];
    }
    to->rows[to->count++] = (struct table_row){.cells = cells, .place = row->place};
}

static bool mix_list(const struct mixing *m, struct table *to, const struct job_pair *pair) {
    const struct table *const older = &pair->older->list;
    const struct table *const newer = &pair->newer->list;
    if (!mix_heading(m, to, pair)) {
        return false;
    }
    to->count = 0;
    to->rows = pool_take(m->pool, older->count + newer->count, sizeof *to->rows);
    for (size_t i = 0; to->rows != NULL && i < older->count; i++) {
        const size_t other = pair->newer_of[i];
        if (other != NO_ROW && takes(m, BRIDGE_ROWS_CHANGED)) {
            put_row(m, to, newer, &newer->rows[other]);
        } else if (other != NO_ROW || !takes(m, BRIDGE_ROWS_OFF)) {
            put_row(m, to, older, &older->rows[i]);
        }
    }
    for (size_t i = 0; to->rows != NULL && i < newer->count && takes(m, BRIDGE_ROWS_ADDED); i++) {
        if (pair->older_of[i] == NO_ROW) {
            put_row(m, to, newer, &newer->rows[i]);
        }
    }
    return !pool_failed(m->pool);
}

bool mix_make(struct job_texts *mix, const struct job_pair *pair, unsigned taken,
              struct pool *pool) {
    const struct mixing m = {.taken = taken, .pool = pool};
    *mix = *pair->older;
    mix->woods =
        takes(&m, bridge_group_of("shop", "woods")) ? pair->newer->woods : pair->older->woods;
    mix->rack = takes(&m, bridge_group_of("shop", "stock")) ? pair->newer->rack : pair->older->rack;
    return mix_ini(&m, &mix->job, &pair->older->job, &pair->newer->job) &&
           mix_ini(&m, &mix->rates, &pair->older->rates, &pair->newer->rates) &&
           mix_list(&m, &mix->list, pair);
}
