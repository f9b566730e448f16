/* SPDX-License-Identifier: MIT */
/* What a bridge goes by: each key is in one group, rows meet by their ids, and files put together
 * of two hold what they should. That the steps add up is tests/outside/bridge.py's. */
#include "bridge/bridge.h"
#include "cmocka_all.h"

#include "base/text.h"
#include "bridge/mix.h"
#include "read/job/job_keys.h"
#include "read/rates/rates_keys.h"

#include <stdio.h>
#include <string.h>

/* --- the table of groups --- */

/* How often a list with ", " between its items has that one. */
static size_t times_in(const char *list, const char *item) {
    const size_t size = strlen(item);
    size_t times = 0;
    for (const char *at = list; *at != '\0'; at += strspn(at, ", ")) {
        const size_t part = strcspn(at, ",");
        times += part == size && memcmp(at, item, size) == 0 ? 1 : 0;
        at += part;
    }
    return times;
}

static size_t times_grouped(const char *kind, const char *key) {
    size_t count;
    size_t times = 0;
    const struct bridge_keys *const rows = bridge_keys(&count);
    for (size_t i = 0; i < count; i++) {
        times += strcmp(rows[i].kind, kind) == 0 ? times_in(rows[i].keys, key) : 0;
    }
    return times;
}

static size_t wrong_keys(const char *kind, const struct key *keys, size_t count) {
    size_t wrong = 0;
    for (size_t i = 0; i < count; i++) {
        const size_t times = times_grouped(kind, keys[i].name);
        if (times != 1) {
            (void)fprintf(stderr,
                          "[%s] %s is in %zu groups of src/bridge/group.c; it should be in "
                          "one\n",
                          kind, keys[i].name, times);
            wrong++;
        }
    }
    return wrong;
}

static size_t wrong_kinds(const struct section_kind *const *kinds, size_t count, size_t *keys) {
    size_t wrong = 0;
    for (size_t i = 0; i < count; i++) {
        const struct section_kind *const k = kinds[i];
        wrong += wrong_keys(k->name, k->keys, k->key_count);
        wrong += wrong_keys(k->name, k->more_keys, k->more_key_count);
        *keys += k->key_count + k->more_key_count;
    }
    return wrong;
}

static void test_groups(void **state) {
    size_t keys = 0;
    size_t listed = 0;
    size_t count;
    (void)state;
    assert_int_equal(wrong_kinds(rates_sections, rates_section_count, &keys), 0);
    assert_int_equal(wrong_kinds(job_sections, job_section_count, &keys), 0);
    const struct bridge_keys *const rows = bridge_keys(&count);
    for (size_t i = 0; i < count; i++) { /* and there is no key that no reader has */
        for (const char *at = rows[i].keys; at != NULL; at = strchr(at, ',')) {
            listed++;
            at++;
        }
    }
    assert_int_equal(listed, keys);
    assert_int_equal(bridge_group_of("lumber", "price"), BRIDGE_PRICES);
    assert_int_equal(bridge_group_of("Lumber", "WASTE"), BRIDGE_YIELDS);
    assert_int_equal(bridge_group_of("operation", "labor rate"), BRIDGE_LABOR);
    assert_int_equal(bridge_group_of("sale", "tax"), BRIDGE_TAX);
    for (size_t g = 0; g < BRIDGE_GROUP_COUNT; g++) {
        assert_non_null(bridge_group_name((enum bridge_group)g));
    }
}

/* --- two jobs in memory --- */

#define MOST_CELLS 4
#define MOST_LIST  4

struct grid {
    struct cell heading[MOST_CELLS];
    struct cell cells[MOST_LIST][MOST_CELLS];
    struct table_row rows[MOST_LIST];
};

/* A list of lines with '|' between cells, the first its heading. */
static void fill_list(struct table *list, struct grid *grid, struct pool *pool,
                      const char *const *lines) {
    *list = (struct table){.heading = grid->heading, .rows = grid->rows, .open = true};
    for (size_t n = 0; lines[n] != NULL; n++) {
        struct cell *const to = n == 0 ? grid->heading : grid->cells[n - 1];
        size_t used = 0;
        for (const char *at = lines[n]; used < MOST_CELLS; at++) {
            const size_t size = strcspn(at, "|");
            to[used++].text = pool_text(pool, at, size);
            at += size;
            if (*at == '\0') {
                break;
            }
        }
        if (n == 0) {
            list->columns = used;
        } else {
            grid->rows[n - 1].cells = to;
            list->count++;
        }
    }
}

struct two {
    struct pool pool;
    struct grid grids[2];
    struct job_texts texts[2];
    struct job_pair pair;
};

static struct ini_key keys_of[2][2] = {
    {{.name = "price", .value = "4 per bf"}, {.name = "waste", .value = "50 % added"}},
    {{.name = "PRICE", .value = "5 per bf"}, {.name = "words", .value = "tulip"}},
};
static struct ini_section sections_of[2][3] = {
    {{.kind = "lumber", .name = "poplar", .keys = keys_of[0], .count = 2},
     {.kind = "sheet", .name = "old board", .keys = keys_of[0], .count = 1},
     {.kind = "consumable", .name = "glue", .keys = keys_of[0], .count = 1}},
    {{.kind = "lumber", .name = "Poplar", .keys = keys_of[1], .count = 2},
     {.kind = "sheet", .name = "new board", .keys = keys_of[1], .count = 1},
     {.kind = "consumable", .name = "tape", .keys = keys_of[1], .count = 1}},
};

static void make_two(struct two *two) {
    static const char *const older[] = {"id|count|width|height", "D01|2|10|20", "D02||11|21",
                                        "F01|1|12|22", NULL};
    static const char *const newer[] = {"id|height|width|note", "d02|21|11|", "D03|23|13|new",
                                        "D01|20|10|by the sink", NULL};
    *two = (struct two){0};
    pool_init(&two->pool);
    fill_list(&two->texts[0].list, &two->grids[0], &two->pool, older);
    fill_list(&two->texts[1].list, &two->grids[1], &two->pool, newer);
    for (size_t i = 0; i < 2; i++) {
        two->texts[i].rates = (struct ini){.sections = sections_of[i], .count = 3, .open = true};
    }
    assert_true(pair_make(&two->pair, &two->texts[0], &two->texts[1], &two->pool));
}

static void test_pairs(void **state) {
    struct two two;
    (void)state;
    make_two(&two);
    assert_int_equal(two.pair.newer_of[0], 2);
    assert_int_equal(two.pair.newer_of[1], 0); /* D02 and d02 are one name */
    assert_true(two.pair.newer_of[2] == NO_ROW);
    assert_true(two.pair.older_of[1] == NO_ROW);
    pool_clear(&two.pool);
}

/* The list of a mix: `D01 2 10 20 -|D02 ...`, empty cells as `-`. */
static const char *list_text(struct two *two, unsigned taken) {
    struct job_texts mix;
    const char *text = "";
    assert_true(mix_make(&mix, &two->pair, taken, &two->pool));
    for (size_t r = 0; r < mix.list.count; r++) {
        for (size_t c = 0; c < mix.list.columns; c++) {
            const char *const cell = mix.list.rows[r].cells[c].text;
            text = pool_words(&two->pool, "%s%s%s", text, c > 0 ? " " : (r > 0 ? "|" : ""),
                              cell[0] == '\0' ? "-" : cell);
        }
    }
    return text;
}

static void test_rows(void **state) {
    struct two two;
    (void)state;
    make_two(&two);
    assert_string_equal(list_text(&two, 0), "D01 2 10 20 -|D02 - 11 21 -|F01 1 12 22 -");
    assert_string_equal(list_text(&two, 1u << BRIDGE_ROWS_OFF), "D01 2 10 20 -|D02 - 11 21 -");
    assert_string_equal(list_text(&two, 1u << BRIDGE_ROWS_OFF | 1u << BRIDGE_ROWS_CHANGED),
                        "D01 - 10 20 by the sink|d02 - 11 21 -");
    assert_string_equal(list_text(&two, 1u << BRIDGE_ROWS_ADDED),
                        "D01 2 10 20 -|D02 - 11 21 -|F01 1 12 22 -|D03 - 13 23 new");
    pool_clear(&two.pool);
}

/* The rates of a mix: `lumber poplar: price=4 per bf, ...|sheet ...`. */
static const char *rates_text(struct two *two, unsigned taken) {
    struct job_texts mix;
    const char *text = "";
    assert_true(mix_make(&mix, &two->pair, taken, &two->pool));
    for (size_t s = 0; s < mix.rates.count; s++) {
        const struct ini_section *const section = &mix.rates.sections[s];
        text = pool_words(&two->pool, "%s%s%s:", text, s > 0 ? "|" : "", section->name);
        for (size_t k = 0; k < section->count; k++) {
            text = pool_words(&two->pool, "%s %s", text, section->keys[k].value);
        }
    }
    return text;
}

static void test_keys(void **state) {
    struct two two;
    (void)state;
    make_two(&two);
    assert_string_equal(rates_text(&two, 0),
                        "poplar: 4 per bf 50 % added|old board: 4 per bf|glue: 4 per bf");
    assert_string_equal(rates_text(&two, 1u << BRIDGE_NAMED),
                        "poplar: 4 per bf 50 % added|old board: 4 per bf|glue: 4 per bf|"
                        "new board: 5 per bf");
    assert_string_equal(rates_text(&two, 1u << BRIDGE_PRICES),
                        "poplar: 5 per bf 50 % added|old board: 4 per bf|tape: 5 per bf");
    assert_string_equal(rates_text(&two, 1u << BRIDGE_YIELDS),
                        "poplar: 4 per bf|old board: 4 per bf|glue: 4 per bf");
    assert_string_equal(rates_text(&two, (1u << BRIDGE_GROUP_COUNT) - 1),
                        "poplar: 5 per bf tulip|new board: 5 per bf|tape: 5 per bf");
    pool_clear(&two.pool);
}

static void test_changes(void **state) {
    static const struct {
        enum bridge_group group;
        const char *words;
    } wanted[] = {
        {BRIDGE_ROWS_OFF, "F01  (1 of 12 x 22) ()"},
        {BRIDGE_NAMED, "[sheet new board]  () ()"},
        {BRIDGE_ROWS_CHANGED, "D01 count (2) ()"},
        {BRIDGE_ROWS_CHANGED, "D01 note () (by the sink)"},
        {BRIDGE_ROWS_CHANGED, "d02 id (D02) (d02)"},
        {BRIDGE_ROWS_ADDED, "D03  () (1 of 13 x 23)"},
        {BRIDGE_YIELDS, "[lumber poplar] waste (50 % added) ()"},
        {BRIDGE_PRICES, "[lumber poplar] price (4 per bf) (5 per bf)"},
        {BRIDGE_PRICES, "[consumable glue]  () ()"},
        {BRIDGE_PRICES, "[consumable tape]  () ()"},
        {BRIDGE_REST, "[sheet old board]  () ()"},
        {BRIDGE_REST, "[lumber Poplar] words () (tulip)"},
    };
    struct two two;
    struct bridge_changes changes;
    size_t at = 0;
    (void)state;
    make_two(&two);
    assert_true(changes_make(&changes, &two.pair, &two.pool));
    for (size_t i = 0; i < changes.count && at < COUNT(wanted); i++) {
        const struct bridge_change *const c = &changes.list[i];
        const char *const words =
            pool_words(&two.pool, "%s %s (%s) (%s)", c->where, text_or_empty(c->what),
                       text_or_empty(c->older), text_or_empty(c->newer));
        assert_string_equal(words, wanted[at].words);
        assert_int_equal(c->group, wanted[at].group);
        at++;
    }
    assert_int_equal(at, COUNT(wanted));
    assert_int_equal(changes.count, COUNT(wanted));
    pool_clear(&two.pool);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_groups), cmocka_unit_test(test_pairs),   cmocka_unit_test(test_rows),
        cmocka_unit_test(test_keys),   cmocka_unit_test(test_changes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
