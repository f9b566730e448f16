/* SPDX-License-Identifier: MIT */
/* What rows that are alike keep together, so that a long list takes little: what they say of how
 * they are made, and the parts of their leaves. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

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

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(rows_share)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
