/* SPDX-License-Identifier: MIT */
/* What a job would come to if rows went another way, for the client to pay another total, and with
 * another door: held against files that are written so, and against all choices that there are.
 * Whole samples: tests/outside/make_or_buy.py, reach.py and sizes.py. */
#include "price/size_table.h"
#include "price/target.h"
#include "price/ways.h"
#include "read/job/style_row.h"
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define MOST_TEXT 1000

static const struct plan_request no_plans = {.effort = CUT_EFFORT_SECOND};

/* What the files come to. */
static struct outcome outcome_with(const char *const *edits, const char *doors) {
    struct bench b;
    bench_open(&b, "edited", BENCH_INCH, edits, doors);
    bench_sound(&b);
    const struct outcome outcome = outcome_of(&b.estimate);
    assert_int_equal(bench_close(&b), 0);
    return outcome;
}

static void same(struct outcome is, struct outcome wanted) {
    assert_int_equal(is.client, wanted.client);
    assert_int_equal(is.bought, wanted.bought);
    assert_int_equal(is.bench, wanted.bench);
    assert_memory_equal(&is, &wanted, sizeof is);
}

static struct outcome plus(struct outcome a, struct outcome b) {
    return outcome_minus(a, outcome_minus((struct outcome){0}, b));
}

/* --- ways --- */

/* Frames take an hour less for each more of a height, slabs are dear to buy; who sends finishes out
 * pays by area, a can is bought whole. */
static const char *const way_edits[BENCH_MOST_EDITS] = {
    "door profiled|bought as = plain\noperations = saw",
    "door plain|bought in = 41.00 per door", /* the first style of the rates */
    "door slab|operations = saw",
    "finish painted|put out as = sent\noperations = mask",
    "finish sent|put out = 9.00 per sqft",
    "operation saw|per = door\nminutes = 20\nsetup = 25 min per length",
    "operation mask|per = door\nminutes = 35"};

static const struct way_row {
    const char *name, *style, *finish, *size;
    size_t ways;
} way_rows[] = {{"D1,1", "profiled", "painted", "1,18,30", 4},
                {"D2,2", "profiled", "none", "1,18,30", 2},
                {"D3,3", "slab", "painted", "1,12,20", 2},
                {"D4,1", "slab", "none", "1,12,20", 1},
                {"D5,1", "profiled", "painted", "2,40,36", 4}};
#define WAY_ROWS COUNT(way_rows)

/* The list with each row the way it is picked, without row `less`. */
static void write_ways(char doors[static MOST_TEXT], const enum way_kind *picked, size_t less) {
    (void)snprintf(doors, MOST_TEXT, "id,count,style,finish,leaves,width,height\n");
    for (size_t i = 0; i < WAY_ROWS; i++) {
        const struct way_row *const r = &way_rows[i];
        const bool bought = picked[i] == WAY_BOUGHT || picked[i] == WAY_BOUGHT_SENT;
        const bool sent = picked[i] == WAY_SENT || picked[i] == WAY_BOUGHT_SENT;
        const size_t at = strlen(doors);
        if (i != less) {
            (void)snprintf(doors + at, MOST_TEXT - at, "%s,%s,%s,%s\n", r->name,
                           bought ? "plain" : r->style, sent ? "sent" : r->finish, r->size);
        }
    }
}

static struct outcome outcome_of_ways(const enum way_kind *picked, size_t less) {
    char doors[MOST_TEXT];
    write_ways(doors, picked, less);
    return outcome_with(way_edits, doors);
}

struct base_bench {
    struct bench bench;
    struct estimate base;
    struct pool pool;
    struct ways ways;
};

static void open_base(struct base_bench *w, const char *const *edits, const char *doors) {
    bench_open(&w->bench, "base", BENCH_INCH, edits, doors);
    bench_sound(&w->bench);
    pool_init(&w->pool);
    assert_int_equal(
        estimate_make(&w->base, &w->bench.rates, &w->bench.job,
                      (struct estimate_request){.option = -1, .plans = no_plans, .purchase = true},
                      &w->bench.problems),
        ESTIMATE_OK);
}

static void close_base(struct base_bench *w) {
    pool_clear(&w->pool);
    estimate_clear(&w->base);
    assert_int_equal(bench_close(&w->bench), 0);
}

/* Kinds of all rows of the list, as listed where the choice says nothing. */
static void kinds_of(const struct ways *ways, const size_t *picked, enum way_kind *kinds) {
    memset(kinds, 0, WAY_ROWS * sizeof *kinds);
    for (size_t i = 0; i < ways->row_count; i++) {
        kinds[ways->rows[i].place] = ways->rows[i].ways[picked[i]].kind;
    }
}

/* Each way of each row, the others as listed. */
static void check_rows(const struct ways *ways) {
    size_t met = 0;
    same(ways->job, outcome_of_ways((enum way_kind[WAY_ROWS]){0}, WAY_ROWS));
    for (size_t i = 0; i < WAY_ROWS; i++) {
        enum way_kind kinds[WAY_ROWS] = {0};
        if (way_rows[i].ways == 1) {
            continue;
        }
        const struct ways_row *const row = &ways->rows[met++];
        const struct outcome without = outcome_of_ways(kinds, i);
        assert_int_equal(row->place, i);
        assert_int_equal(row->count, way_rows[i].ways);
        assert_true(row->made_here);
        for (size_t k = 0; k < row->count; k++) {
            kinds[i] = row->ways[k].kind;
            same(row->ways[k].whole, outcome_of_ways(kinds, WAY_ROWS));
            same(row->ways[k].row, outcome_minus(row->ways[k].whole, without));
            assert_true(k == 0 ? kinds[i] == WAY_LISTED : kinds[i] > row->ways[k - 1].kind);
        }
    }
    assert_int_equal(ways->row_count, met);
    assert_int_equal(ways->other_rows, WAY_ROWS - met);
}

static void check_choice(const struct ways *ways, const struct ways_choice *choice) {
    enum way_kind kinds[WAY_ROWS];
    struct outcome sum = ways->job;
    size_t changed = 0;
    for (size_t i = 0; i < ways->row_count; i++) {
        const struct outcome whole = ways->rows[i].ways[choice->picked[i]].whole;
        sum = plus(sum, outcome_minus(whole, ways->job));
        changed += choice->picked[i] != 0;
    }
    kinds_of(ways, choice->picked, kinds);
    assert_true(choice->made);
    assert_int_equal(choice->changed, changed);
    same(choice->sum, sum);
    same(choice->real, outcome_of_ways(kinds, WAY_ROWS));
}

/* One choice for all: bought where that can be, sent where that can be, as far out as can be, and
 * each row as it alone is the cheapest. */
static void check_all(const struct ways *ways) {
    for (size_t i = 0; i < ways->row_count; i++) {
        const struct ways_row *const row = &ways->rows[i];
        const bool buys = way_rows[row->place].ways != 2 || row->place == 1;
        const bool sends = row->place != 1;
        const size_t cheapest = ways->all[WAYS_LEAST_DIRECT].picked[i];
        assert_int_equal(row->ways[ways->all[WAYS_ALL_BOUGHT].picked[i]].kind,
                         buys ? WAY_BOUGHT : WAY_LISTED);
        assert_int_equal(row->ways[ways->all[WAYS_ALL_SENT].picked[i]].kind,
                         sends ? WAY_SENT : WAY_LISTED);
        assert_int_equal(row->ways[ways->all[WAYS_ALL_OUT].picked[i]].kind, !buys ? WAY_SENT
                                                                            : !sends
                                                                                ? WAY_BOUGHT
                                                                                : WAY_BOUGHT_SENT);
        for (size_t k = 0; k < row->count; k++) {
            assert_true(row->ways[cheapest].whole.direct <= row->ways[k].whole.direct);
        }
    }
    for (int a = 0; a < WAYS_ALL_COUNT; a++) {
        check_choice(ways, &ways->all[a]);
    }
}

/* Whether a is better: within, then less is spent, then fewer hours; fewer hours where neither is
 * within. */
static bool betters(const struct outcome *a, const struct outcome *b, int64_t limit) {
    const int64_t over_a = a->bench > limit ? a->bench : limit;
    const int64_t over_b = b->bench > limit ? b->bench : limit;
    if (over_a != over_b) {
        return over_a < over_b;
    }
    return a->bought != b->bought ? a->bought < b->bought : a->bench < b->bench;
}

#define LIMITS 12

static void check_within(struct base_bench *w) {
    struct outcome all[64] = {0};
    size_t count = 1;
    for (size_t i = 0; i < w->ways.row_count; i++) {
        count *= w->ways.rows[i].count;
    }
    assert_int_equal(count, COUNT(all));
    for (size_t n = 0; n < count; n++) {
        enum way_kind kinds[WAY_ROWS];
        size_t picked[WAY_ROWS];
        size_t rest = n;
        for (size_t i = 0; i < w->ways.row_count; i++) {
            picked[i] = rest % w->ways.rows[i].count;
            rest /= w->ways.rows[i].count;
        }
        kinds_of(&w->ways, picked, kinds);
        all[n] = outcome_of_ways(kinds, WAY_ROWS);
    }
    for (int l = 0; l <= LIMITS; l++) {
        const int64_t limit = w->ways.job.bench * l / LIMITS;
        struct ways with;
        const struct outcome *best = &all[0];
        for (size_t n = 1; n < count; n++) {
            best = betters(&all[n], best, limit) ? &all[n] : best;
        }
        assert_int_equal(ways_make(&with, &w->base, no_plans, NULL, 0, limit, &w->pool), WAYS_OK);
        assert_true(with.within.all);
        assert_int_equal(with.within.tried, count);
        assert_int_equal(with.within.limit, limit);
        assert_int_equal(with.within.within, best->bench <= limit);
        assert_int_equal(with.within.best.real.bought, best->bought);
        assert_int_equal(with.within.best.real.bench, best->bench);
        check_choice(&with, &with.within.best);
    }
}

static void test_ways(void **state) {
    (void)state;
    struct base_bench w;
    char doors[MOST_TEXT];
    write_ways(doors, (enum way_kind[WAY_ROWS]){0}, WAY_ROWS);
    open_base(&w, way_edits, doors);
    assert_int_equal(ways_make(&w.ways, &w.base, no_plans, NULL, 0, -1, &w.pool), WAYS_OK);
    check_rows(&w.ways);
    check_all(&w.ways);
    check_within(&w);
    /* of two that are asked for one has a way: the pair */
    assert_int_equal(ways_make(&w.ways, &w.base, no_plans, (const size_t[]){3, 4}, 2, -1, &w.pool),
                     WAYS_OK);
    assert_int_equal(w.ways.row_count, 1);
    assert_int_equal(w.ways.other_rows, 1);
    assert_int_equal(w.ways.rows[0].place, 4);
    close_base(&w);
}

/* --- a wanted total --- */

#define PROFIT(percent)   "shop|profit = " percent " markup"
#define DISCOUNT(percent) "sale|discount = " percent "\ntax on = selling price"
#define WORK(minutes, setup)                                                                       \
    "operation saw|per = door\nminutes = " minutes "\nsetup = " setup " min per length"
#define REST                                                                                       \
    "make|style = slab", "door slab|operations = saw", "shop|overhead = 20 % of cost",             \
        "sale|tax = 7.5 %"

static const char *const target_rows[] = {"D1,1,18,30\n", "D2,2,16,27\n", "D3,1,12,20\n",
                                          "D4,3,18,24\n", "D5,1,40,50\n", "D6,2,10,12\n"};
#define TARGET_ROWS COUNT(target_rows)
#define SETS        (1U << TARGET_ROWS)
#define MOST_SET    3

/* The list without the rows of the set. */
static void write_without(char doors[static MOST_TEXT], unsigned set) {
    (void)snprintf(doors, MOST_TEXT, "id,count,width,height\n");
    for (size_t i = 0; i < TARGET_ROWS; i++) {
        const size_t at = strlen(doors);
        (void)snprintf(doors + at, MOST_TEXT - at, "%s", (set >> i & 1) != 0 ? "" : target_rows[i]);
    }
}

static struct outcome outcome_without(const char *const *edits, unsigned set) {
    char doors[MOST_TEXT];
    write_without(doors, set);
    return outcome_with(edits, doors);
}

static unsigned size_of(unsigned set) {
    unsigned size = 0;
    for (; set != 0; set &= set - 1) {
        size++;
    }
    return size;
}

static int64_t off(int64_t client, int64_t wanted) {
    return client < wanted ? wanted - client : client - wanted;
}

/* Of the smallest sets that reach it, the nearest; else the nearest of all, which has to be nearer
 * than the job is; 0: none is. */
static unsigned best_set(const struct outcome *without, int64_t wanted) {
    unsigned best = 0;
    for (unsigned size = 1; size <= MOST_SET; size++) {
        for (unsigned set = 1; set < SETS; set++) {
            const bool reaches = without[set].client <= wanted;
            const bool before = best != 0 && without[best].client <= wanted;
            if (size_of(set) == size &&
                (reaches != before
                     ? reaches
                     : off(without[set].client, wanted) < off(without[best].client, wanted))) {
                best = set;
            }
        }
        if (best != 0 && without[best].client <= wanted) {
            break;
        }
    }
    return best;
}

static void check_left_out(const struct target *t, const struct estimate *base,
                           const struct outcome *without) {
    const struct rows_answer *const rows = &t->rows;
    if (t->wanted >= t->job.client) {
        assert_int_equal(rows->count, 0);
        return;
    }
    const unsigned best = best_set(without, t->wanted);
    const bool reaches = best != 0 && without[best].client <= t->wanted;
    unsigned set = 0;
    for (size_t i = 0; i < rows->count; i++) {
        set |= 1U << (rows->rows[i] - base->job->rows);
    }
    assert_int_equal(rows->reaches, reaches);
    assert_int_equal(rows->count, size_of(best));
    assert_int_equal(rows->most_tried, reaches ? size_of(best) : MOST_SET);
    if (best != 0) {
        assert_int_equal(off(rows->outcome.client, t->wanted),
                         off(without[best].client, t->wanted));
        same(rows->outcome, without[set]);
    }
}

/* The files with that lever at so many hundredths of a percent. */
static struct outcome outcome_at(const char *const *edits, enum lever lever, int64_t at) {
    char text[200];
    const char *own[BENCH_MOST_EDITS];
    const double percent = (double)at / 100;
    memcpy(own, edits, sizeof own);
    switch (lever) {
    case LEVER_PROFIT:
        (void)snprintf(text, sizeof text, PROFIT("%.2f %%"), percent);
        break;
    case LEVER_DISCOUNT:
        (void)snprintf(text, sizeof text, DISCOUNT("%.2f %%"), percent);
        break;
    default: /* of 10 and 30 minutes */
        (void)snprintf(text, sizeof text, WORK("%.3f", "%.4f"), percent / 10, percent * 3 / 10);
    }
    own[lever] = text;
    return outcome_without(own, 0);
}

/* What is told comes to that, and one step less of it is short; what is short is at the end. */
static void check_lever(const struct target *t, const char *const *edits, enum lever lever,
                        int64_t now) {
    static const int64_t ends[LEVER_COUNT][2] = {{0, 100000}, {0, 9900}, {1000, 100000}};
    const struct lever_answer *const answer = &t->levers[lever];
    const bool up = t->wanted > t->job.client;
    assert_int_equal(answer->now, now);
    assert_true(answer->has);
    if (t->wanted == t->job.client) {
        assert_true(answer->reaches);
        assert_int_equal(answer->then, now);
        same(answer->outcome, t->job);
        return;
    }
    same(answer->outcome, outcome_at(edits, lever, answer->then));
    if (!answer->reaches) {
        assert_true(up ? answer->outcome.client < t->wanted : answer->outcome.client > t->wanted);
        assert_int_equal(answer->then, ends[lever][up != (lever == LEVER_DISCOUNT) ? 1 : 0]);
        return;
    }
    assert_true(up ? answer->outcome.client >= t->wanted : answer->outcome.client <= t->wanted);
    const int64_t less = answer->then + (up != (lever == LEVER_DISCOUNT) ? -1 : 1);
    const int64_t short_of = outcome_at(edits, lever, less).client;
    assert_true(up ? short_of < t->wanted : short_of > t->wanted);
}

static void check_targets(const char *const *edits, int64_t profit, int64_t discount) {
    static const int64_t wanted[] = {0,   5,    200,  500,  700,  800,  900,
                                     970, 1000, 1010, 1300, 9000, 99000};
    struct outcome without[SETS] = {0};
    for (unsigned set = 0; set < SETS; set++) {
        without[set] = size_of(set) <= MOST_SET ? outcome_without(edits, set) : without[0];
    }
    char doors[MOST_TEXT];
    write_without(doors, 0);
    struct base_bench w;
    open_base(&w, edits, doors);
    for (size_t i = 0; i < COUNT(wanted); i++) {
        struct target t = {.wanted = without[0].client * wanted[i] / 1000};
        assert_true(target_make(&t, &w.base, no_plans, &w.pool));
        same(t.job, without[0]);
        check_left_out(&t, &w.base, without);
        check_lever(&t, edits, LEVER_PROFIT, profit);
        check_lever(&t, edits, LEVER_DISCOUNT, discount);
        check_lever(&t, edits, LEVER_HOURS, 10000);
    }
    close_base(&w);
}

/* Sets of rows are tried as long as their rows are no more than 200,000 in all: of 33 rows the
 * 5,456 sets of three are 180,048, of 34 the 5,984 are 203,456. */
static void most_sets(void **state) {
    (void)state;
    static const char *const edits[BENCH_MOST_EDITS] = {PROFIT("20 %"), DISCOUNT("0 %"),
                                                        WORK("10", "30"), REST};
    for (size_t rows = 33; rows <= 34; rows++) {
        char doors[MOST_TEXT];
        struct base_bench w;
        (void)snprintf(doors, sizeof doors, "id,width,height\n");
        for (size_t i = 0; i < rows; i++) {
            const size_t at = strlen(doors);
            (void)snprintf(doors + at, sizeof doors - at, "D%zu,18,%zu\n", i, i + 10);
        }
        open_base(&w, edits, doors);
        struct target t = {.wanted = 1};
        assert_true(target_make(&t, &w.base, no_plans, &w.pool));
        assert_false(t.rows.reaches);
        assert_int_equal(t.rows.most_tried, rows == 33 ? 3 : 2);
        close_base(&w);
    }
}

static void test_target(void **state) {
    (void)state;
    /* by the places of enum lever */
    static const char *const even[BENCH_MOST_EDITS] = {PROFIT("20 %"), DISCOUNT("0 %"),
                                                       WORK("10", "30"), REST};
    static const char *const between[BENCH_MOST_EDITS] = {PROFIT("12.345 %"), DISCOUNT("3.3333 %"),
                                                          WORK("10", "30"), REST};
    /* no profit is given */
    static const char *const none[BENCH_MOST_EDITS] = {"make|frame = poplar", DISCOUNT("3 %"),
                                                       WORK("10", "30"), REST};
    check_targets(even, 2000, 0);
    check_targets(none, 0, 300);
    check_targets(between, 1235, 333);
}

/* --- prices by size --- */

#define SIZE_HEAD "id,count,style,width,height\n"
/* What a job has besides its doors. */
#define BESIDE "sale|charges = 45.00 for templates\ndelivery = 30.00"
#define SIZE_EDITS                                                                                 \
    "make|style = slab", "door slab|operations = saw", "door plain|operations = saw",              \
        "shop|overhead = 20 % of cost\nprofit = 25 % markup\nminimum job = 90.00",                 \
        "sale|discount = 5 %", WORK("10", "30")

static int64_t rounded(double value) {
    return (int64_t)(value + 0.5);
}

/* So many of a size, beside the flat price of a square foot, 1/100 of money and 1/10000 sq ft. */
static void check_size(const struct size_price *price, struct outcome wanted, int64_t count,
                       double feet, int64_t rate) {
    assert_true(price->has);
    same(price->outcome, wanted);
    assert_int_equal(price->each, rounded((double)wanted.before_tax / (double)count));
    assert_int_equal(price->per_area, rounded((double)wanted.before_tax / (double)count / feet));
    assert_int_equal(price->flat, rounded((double)rate * feet * (double)count));
    assert_int_equal(price->flat_does, price->flat < wanted.direct       ? FLAT_LOSES
                                       : price->flat < wanted.before_tax ? FLAT_LESS
                                                                         : FLAT_BEARS);
}

/* What the doors of the style, or of all where it has none, are sold for: of the price of all their
 * part by what they are listed at. */
static void check_flat(const struct size_flat *flat, const struct estimate *base, int32_t style,
                       double feet, int64_t before_tax) {
    double all = 0;
    double own = 0;
    for (size_t i = 0; i < base->quantities.count; i++) {
        const double listed = (double)estimate_money(base, base->costs.doors[i].amount);
        const bool is = base->quantities.leaves[i].door->construction->style.index == style;
        all += listed;
        own += is || !flat->own ? listed : 0;
    }
    assert_int_equal(flat->area, rounded(feet * 10000));
    assert_int_equal(flat->sold, rounded((double)before_tax * own / all));
    assert_int_equal(flat->rate, rounded((double)flat->sold / feet));
}

/* Doors of a style beside the list: feet of its own of that style, or of all. */
static void check_table(const char *name, const char *list, bool own, double feet, unsigned *met) {
    static const char *const edits[BENCH_MOST_EDITS] = {SIZE_EDITS, BESIDE};
    static const char *const alone[BENCH_MOST_EDITS] = {SIZE_EDITS};
    static const int64_t counts[] = {1, 3, 40};
    static const struct {
        length width, height;
        const char *size;
        double feet;
    } sizes[] = {{12, 24, "12,24", 2}, {18, 30, "18,30", 3.75}, {40, 90, "40,90", 25}};
    struct size_line lines[COUNT(sizes)];
    struct base_bench w;
    open_base(&w, edits, list);
    int32_t index = 0;
    while (strcmp(w.bench.rates.styles[index].name.s, name) != 0) {
        index++;
    }
    struct size_style style = {
        .name = name, .style = index, .lines = lines, .line_count = COUNT(sizes)};
    struct size_table table = {
        .styles = &style, .style_count = 1, .counts = counts, .count_count = COUNT(counts)};
    style.make = style_make(&w.bench.rates, &w.bench.job, index);
    for (size_t i = 0; i < COUNT(sizes); i++) {
        lines[i] = (struct size_line){.row = style_row(&style.make, sizes[i].width * NM_PER_INCH,
                                                       sizes[i].height * NM_PER_INCH)};
    }
    assert_true(size_table_make(&table, &w.base, no_plans, &w.pool));
    const struct outcome job = outcome_with(edits, list);
    same(table.job, job);
    assert_int_equal(style.flat.own, own);
    check_flat(&style.flat, &w.base, index, feet, outcome_with(alone, list).before_tax);
    for (size_t i = 0; i < COUNT(sizes); i++) {
        assert_int_equal(lines[i].area, rounded(sizes[i].feet * 10000));
        for (size_t c = 0; c < COUNT(counts); c++) {
            char row[100];
            char with[MOST_TEXT];
            char only[MOST_TEXT];
            (void)snprintf(row, sizeof row, "N1,%d,%s,%s\n", (int)counts[c], name, sizes[i].size);
            (void)snprintf(with, sizeof with, "%s%s", list, row);
            (void)snprintf(only, sizeof only, SIZE_HEAD "%s", row);
            const struct size_price *const added = &lines[i].prices[SIZE_ADDED][c];
            const struct size_price *const by_itself = &lines[i].prices[SIZE_ALONE][c];
            check_size(added, outcome_minus(outcome_with(edits, with), job), counts[c],
                       sizes[i].feet, style.flat.rate);
            check_size(by_itself, outcome_with(alone, only), counts[c], sizes[i].feet,
                       style.flat.rate);
            *met |= 1U << added->flat_does | 1U << by_itself->flat_does;
        }
    }
    close_base(&w);
}

/* Of doors that cost nothing no part of the price is had. */
static void free_doors(void **state) {
    (void)state;
    static const char *const edits[BENCH_MOST_EDITS] = {"make|style = slab",
                                                        "sheet board|price = 0.00 per sheet",
                                                        "shop|labor rate = 0.00 per hour"};
    static const int64_t once[] = {1};
    struct base_bench w;
    open_base(&w, edits, "D1,18,30\n");
    struct size_style style = {.name = "slab",
                               .style = w.base.doors.doors[0].construction->style.index};
    struct size_table table = {
        .styles = &style, .style_count = 1, .counts = once, .count_count = COUNT(once)};
    style.make = style_make(&w.bench.rates, &w.bench.job, style.style);
    assert_true(size_table_make(&table, &w.base, no_plans, &w.pool));
    assert_int_equal(table.job.client, 0);
    assert_int_equal(style.flat.sold, 0);
    assert_int_equal(style.flat.rate, 0);
    assert_int_equal(style.flat.area, 37500);
    close_base(&w);
}

static void test_sizes(void **state) {
    (void)state;
    unsigned met = 0;
    check_table("slab", SIZE_HEAD "D1,2,slab,18,30\nD2,1,slab,12,24\n", true, 9.5, &met);
    check_table("slab", SIZE_HEAD "D1,2,plain,18,30\nD2,1,plain,24,24\n", false, 11.5, &met);
    check_table("slab", SIZE_HEAD "D1,2,slab,18,30\nD2,1,plain,24,24\nD3,1,slab,12,24\n", true, 9.5,
                &met);
    check_table("plain", SIZE_HEAD "D1,2,slab,18,30\nD2,1,plain,24,24\n", true, 4, &met);
    assert_int_equal(met, 1U << FLAT_BEARS | 1U << FLAT_LESS | 1U << FLAT_LOSES);
}

int main(void) {
    static const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_ways), cmocka_unit_test(test_target), cmocka_unit_test(most_sets),
        cmocka_unit_test(test_sizes), cmocka_unit_test(free_doors)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
