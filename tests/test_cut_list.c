/* SPDX-License-Identifier: MIT */
/* The cut list by stop and fence, and what set-ups are for: over the sample kitchen, held against
 * the parts of its doors one by one. */
#include "report/words/cut_list.h"
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

static int64_t all_pieces(const struct estimate *e) {
    const struct quantities *const q = &e->quantities;
    int64_t pieces = 0;
    for (size_t r = 0; r < q->count; r++) {
        const struct door *const door = q->leaves[r].door;
        for (size_t i = 0; i < door->part_count; i++) {
            const bool cut = door->parts[i].material_kind != MATERIAL_GLASS;
            pieces +=
                cut ? (int64_t)door->parts[i].count * door->leaves * door->row->count.amount : 0;
        }
    }
    return pieces;
}

static void check_gangs(const struct cut_run *run) {
    for (size_t i = 0; i < run->gang_count; i++) {
        const struct cut_gang *const g = &run->gangs[i];
        const struct cut_gang *const before = i == 0 ? NULL : &run->gangs[i - 1];
        assert_true(g->pieces > 0 && g->parts[0] != '\0' && g->doors[0] != '\0');
        assert_true(before == NULL || g->length <= before->length);
        if (before == NULL || g->length != before->length) {
            assert_true(g->stop);
        } else {
            assert_true(g->stop ? g->rough_length < before->rough_length
                                : g->width <= before->width);
        }
    }
    for (size_t i = 1; i < run->fence_count; i++) {
        assert_true(run->fences[i].width < run->fences[i - 1].width);
    }
}

static void every_part_is_cut_once(void **state) {
    struct bench bench;
    struct cut_list list;
    struct pool pool;
    int64_t pieces = 0;
    (void)state;
    bench_open_job(&bench, "samples/kitchen/kitchen.ini");
    pool_init(&pool);
    assert_true(cut_list_make(&list, &pool, &bench.estimate));
    for (size_t i = 0; i < list.count; i++) {
        check_gangs(&list.stocks[i]);
        for (size_t g = 0; g < list.stocks[i].gang_count; g++) {
            pieces += list.stocks[i].gangs[g].pieces;
        }
    }
    assert_int_equal(pieces, all_pieces(&bench.estimate));
    /* by hand: P01 is two doors and P02 a pair, 63 5/8 high, each leaf with two stiles 2 1/4 wide
     */
    const struct cut_gang *const first = &list.stocks[0].gangs[0];
    assert_int_equal(first->length, (63 * 64 + 40) * NM_PER_64TH);
    assert_int_equal(first->width, (2 * 64 + 16) * NM_PER_64TH);
    assert_int_equal(first->pieces, 8);
    assert_string_equal(first->parts, "stile");
    assert_string_equal(first->doors, "P01 4, P02 4");
    pool_clear(&pool);
    assert_int_equal(bench_close(&bench), 0);
}

/* As many as are charged, each another, the largest first. */
static void setups_say_what_for(void **state) {
    struct bench bench;
    size_t with = 0;
    (void)state;
    bench_open_job(&bench, "samples/kitchen/kitchen.ini");
    const struct labor *const labor = &bench.estimate.labor;
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        for (size_t k = 1; k < o->setup_at_count; k++) {
            assert_true(o->setup_at[k] < o->setup_at[k - 1]);
        }
        if (o->setup_at_count > 0) {
            with++;
            assert_int_equal(tape_amount(&bench.estimate.tape, o->setups), o->setup_at_count);
        }
    }
    assert_true(with > 10);
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_part_is_cut_once),
        cmocka_unit_test(setups_say_what_for),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
