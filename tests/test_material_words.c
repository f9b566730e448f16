/* SPDX-License-Identifier: MIT */
/* A material that is told by its words and not by its name: taken where one alone has them. */
#include "support.h"

#include "model/name.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* panel: as the job tells it; ply, board: what the client reads of these sheets; taken: the name,
 * or the problem that there is. */
static const struct {
    const char *panel, *ply, *board, *taken;
} cases[] = {
    {"birch plywood", "birch plywood", "MDF board", "ply"},
    {"Plywood, BIRCH", "birch plywood", "MDF board", "ply"},
    {"birch-ply", "birch plywood", "MDF board", "ply"}, /* a word of its name, one of the others */
    {"mdf", "birch plywood", "MDF board", "board"},
    {"ply", "birch plywood", "ply core", "ply"}, /* a name goes before words */
    {"birch plywood", "birch plywood", "birch plywood, thick", "several-materials"},
    {"thick birch plywood", "birch plywood", "birch plywood, thick", "board"},
    {"birch", "birch plywood", "birch board", "several-materials"},
    {"birch plywood 6", "birch plywood 16", "MDF board", "unknown-material"}, /* no part of 16 */
    {"oak plywood", "birch plywood", "MDF board", "unknown-material"},
    {"clear glass", "birch plywood", "MDF board", "unknown-material"}, /* no panel is of glass */
};

static const char *taken(const struct bench *bench) {
    for (size_t i = 0; i < bench->problems.count; i++) {
        if (bench->problems.list[i].severity == SEVERITY_ERROR) {
            return bench->problems.list[i].id;
        }
    }
    const struct material_reference *const panel =
        &bench->estimate.quantities.leaves[0].door->construction->panel;
    return material_name(&bench->rates, panel->kind, panel->index);
}

static void by_words(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        char panel[64];
        char ply[64];
        char board[64];
        struct bench bench;
        (void)snprintf(panel, sizeof panel, "make|panel = %s", cases[i].panel);
        (void)snprintf(ply, sizeof ply, "sheet ply|words = %s", cases[i].ply);
        (void)snprintf(board, sizeof board, "sheet board|words = %s", cases[i].board);
        bench_open(&bench, cases[i].panel, BENCH_INCH,
                   (const char *const[BENCH_MOST_EDITS]){panel, ply, board,
                                                         "glass clear|words = clear glass"},
                   "D1,18,30\n");
        if (strcmp(taken(&bench), cases[i].taken) != 0) {
            bench_wrong(&bench, "%s, expected %s", taken(&bench), cases[i].taken);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(by_words)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
