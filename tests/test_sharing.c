/* SPDX-License-Identifier: MIT */
/* What rows that are alike keep together, so that a long list takes little: what they say of how
 * they are made, and the parts of their leaves. */
#include "report/words/field.h"

#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <string.h>

#include <cmocka.h>

#define HEAD "id,width,height,leaves,use,style,frame,color,mid rails,rows\n"

static const struct sharing_case {
    const char *name;
    const char *other; /* beside a door of 18 x 30 of two rows */
    bool make, leaf;   /* what they share */
} cases[] = {
    {"the same", "D2,18,30,1,door,,,,1,\n", true, true},
    {"of another size", "D2,18,31,1,door,,,,1,\n", true, false},
    {"a pair of it", "D2,18,30,2,door,,,,1,\n", true, true},
    {"of three rows", "D2,18,30,1,door,,,,2,\n", true, false},
    {"of rows that differ", "D2,18,30,1,door,,,,1,10 | 13 1/4\n", true, false},
    {"of another use", "D2,18,30,1,false front,,,,1,\n", true, false},
    {"an end panel, which measures itself", "D2,18,30,1,end panel,,,,1,\n", false, false},
    {"of another color", "D2,18,30,1,door,,,blue,1,\n", false, false},
};

static void rows_share(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const struct sharing_case *const c = &cases[i];
        char doors[256];
        struct bench bench;
        (void)snprintf(doors, sizeof doors, HEAD "D1,18,30,1,door,,,,1,\n%s", c->other);
        bench_open(&bench, c->name, BENCH_INCH, NULL, doors);
        bench_sound(&bench);
        const struct row *const rows = bench.job.rows;
        const struct door *const made = bench.estimate.doors.doors;
        if (bench.result == ESTIMATE_OK &&
            ((rows[0].make == rows[1].make) != c->make ||
             (made[0].parts == made[1].parts) != c->leaf || made[1].row != &rows[1])) {
            bench_wrong(&bench, "make %d, leaf %d", rows[0].make == rows[1].make,
                        made[0].parts == made[1].parts);
        }
        if (bench.result == ESTIMATE_OK && made[1].leaves != (int)rows[1].leaves.amount) {
            bench_wrong(&bench, "%d leaves", (int)made[1].leaves);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* --- figures, where nobody asks how they came about --- */

#define ROW_HEAD                                                                                   \
    "id,count,width,height,leaves,use,style,mid rails,opens,hinge side,hinges,hinges at,pulls,"    \
    "also,color\n"
#define MOST_WORDS 5
/* The words of a column, of which each row has one; the first the likeliest. */
static const char *const columns[][MOST_WORDS] = {
    {"1", "2", "7"},        /* count */
    {"18", "22", "37 1/8"}, /* width */
    {"30", "62"},           /* height */
    {"", "2"},              /* leaves */
    {"", "", "false front", "drawer front", "end panel"},
    {"", "glazed", "slab"},         /* style */
    {"", "1"},                      /* mid rails */
    {"", "", "lift up", "bi-fold"}, /* opens */
    {"", "left", "right"},          /* hinge side */
    {"", "3"},                      /* hinges */
    {"", "4 | 9 | 15"},             /* hinges at */
    {"", "2", "0"},                 /* pulls */
    {"", "hang"},                   /* also */
    {"", "", "blue"},
};

static uint32_t draw(uint32_t *state, uint32_t below) {
    *state = *state * 1664525u + 1013904223u;
    return (*state >> 8) % below;
}

/* A word of a column, `words` of which it has: mostly the first. */
static const char *draw_word(uint32_t *state, const char *const *words) {
    size_t count = 0;
    while (count < MOST_WORDS && words[count] != NULL) {
        count++;
    }
    return words[draw(state, 3) == 0 ? draw(state, (uint32_t)count) : 0];
}

/* Rows that are alike in all but a column or two; what no door can be is left out. */
static void draw_rows(uint32_t *state, char *text, size_t size) {
    (void)snprintf(text, size, ROW_HEAD);
    for (int r = 0; r < 40; r++) {
        const char *word[sizeof columns / sizeof *columns];
        size_t at = strlen(text);
        for (size_t i = 0; i < sizeof columns / sizeof *columns; i++) {
            word[i] = draw_word(state, columns[i]);
        }
        const bool door = word[4][0] == '\0';
        const bool folds = strcmp(word[7], "bi-fold") == 0;
        (void)snprintf(text + at, size - at, "D%d", r);
        for (size_t i = 0; i < sizeof columns / sizeof *columns; i++) {
            const bool of_door = i == 3 || (i >= 7 && i <= 10);
            const bool not_so = (of_door && !door) || (i == 3 && (folds || word[7][0] != '\0')) ||
                                (i == 8 && word[7][0] == 'l') || (i == 8 && word[3][0] == '2') ||
                                (i == 10 && (word[9][0] != '3' || folds));
            at = strlen(text);
            (void)snprintf(text + at, size - at, ",%s", not_so ? "" : word[i]);
        }
        (void)strncat(text, "\n", size - strlen(text) - 1);
    }
}

struct pair {
    struct bench *bench;
    const struct estimate *plain; /* the same without history */
};

static void same_figure(const struct pair *p, const char *what, size_t row, fig kept, fig plain) {
    const struct tape *const a = &p->bench->estimate.tape;
    const struct tape *const b = &p->plain->tape;
    if (fig_none(kept) != fig_none(plain) || tape_amount(a, kept) != tape_amount(b, plain) ||
        (!fig_none(kept) && tape_decimals(a, kept) != tape_decimals(b, plain))) {
        bench_wrong(p->bench, "row %zu: %s is %lld, without history %lld", row, what,
                    (long long)tape_amount(a, kept), (long long)tape_amount(b, plain));
    }
}

static void same_fields(const struct pair *p, const struct field_table *table, size_t row,
                        const void *kept, const void *plain) {
    for (size_t i = 0; i < table->count; i++) {
        same_figure(p, table->fields[i].key, row, field_figure(&table->fields[i], kept),
                    field_figure(&table->fields[i], plain));
    }
}

static void same_leaf(const struct pair *p, size_t row, const struct leaf_figures *kept,
                      const struct leaf_figures *plain) {
    same_fields(p, &fields_leaf, row, kept, plain);
    for (size_t d = 0; d < DRIVER_COUNT; d++) {
        same_figure(p, "a driver", row, kept->driver[d], plain->driver[d]);
    }
    for (size_t i = 0; i < kept->door->part_count; i++) {
        same_fields(p, &fields_part, row, &kept->parts[i], &plain->parts[i]);
    }
    if ((kept->hinge_at == NULL) != (plain->hinge_at == NULL)) {
        bench_wrong(p->bench, "row %zu: hinges are placed or not", row);
    }
    for (int64_t i = 0;
         kept->hinge_at != NULL && i < tape_amount(&p->bench->estimate.tape, kept->hinges); i++) {
        if (kept->hinge_at[i] != plain->hinge_at[i]) {
            bench_wrong(p->bench, "row %zu: hinge %d is elsewhere", row, (int)i);
        }
    }
}

/* How many leaves have the figures of an earlier one. */
static size_t compare(const struct pair *p) {
    const struct estimate *const kept = &p->bench->estimate;
    const struct quantities *const q = &kept->quantities;
    size_t shared = 0;
    for (size_t r = 0; r < q->count; r++) {
        const struct leaf_figures *const plain = &p->plain->quantities.leaves[r];
        same_leaf(p, r, &q->leaves[r], plain);
        same_figure(p, "price", r, kept->costs.doors[r].amount, p->plain->costs.doors[r].amount);
        shared += plain->like != r ? 1 : 0;
        if (q->leaves[r].like != r || plain->door->row != q->leaves[r].door->row) {
            bench_wrong(p->bench, "row %zu is told of another", r);
        }
    }
    for (size_t i = 0; i < kept->labor.operation_count; i++) {
        const struct operation_figures *const a = &kept->labor.operations[i];
        const struct operation_figures *const b = &p->plain->labor.operations[i];
        same_fields(p, &fields_operation, i, a, b);
        for (size_t r = 0; r < q->count; r++) {
            same_figure(p, "run", r, a->shares[r].run, b->shares[r].run);
            same_figure(p, "person-minutes", r, a->shares[r].person, b->shares[r].person);
            same_figure(p, "cost", r, a->shares[r].cost, b->shares[r].cost);
        }
    }
    return shared;
}

/* Figures of rows that are alike are taken from the first, where no history is kept: they are those
 * that each row comes to by itself, in drawn lists. */
static void figures_are_the_same_without_history(void **state) {
    (void)state;
    static const char *const edits[BENCH_MOST_EDITS] = {
        "make|measure = opening\noverlay = 1/2\ngap = 1/8",
        "make|hinge = hinge\nfold hinge = hinge\npull = pull\nfinish = painted",
        "hinges|from the ends = 3 1/2",
        "shop|operations = saw, plane, sand",
        "operation saw|per = part\nminutes = 1.3\nsetup = 7 min per width",
        "operation plane|per = sqft of door\nminutes = 0.7\ncapacity = 20 in",
        "operation sand|per = job\nminutes = 11",
        "operation hang|per = hinge\nminutes = 2.5",
    };
    uint32_t seed = 1;
    size_t shared = 0;
    int wrong = 0;
    for (int n = 0; n < 30; n++) {
        char doors[8192];
        char name[32];
        struct bench bench;
        (void)snprintf(name, sizeof name, "list %d", n);
        draw_rows(&seed, doors, sizeof doors);
        bench_open(&bench, name, BENCH_INCH, edits, doors);
        if (bench.result != ESTIMATE_OK) {
            bench_wrong(&bench, "has errors");
        } else {
            struct estimate_request request = bench_request(-1);
            struct estimate plain;
            request.traced = false;
            assert_int_equal(
                estimate_make(&plain, &bench.rates, &bench.job, request, &bench.problems),
                ESTIMATE_OK);
            shared += compare(&(struct pair){&bench, &plain});
            estimate_clear(&plain);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
    assert_true(shared > 100);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(rows_share),
                                       cmocka_unit_test(figures_are_the_same_without_history)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
