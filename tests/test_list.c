/* SPDX-License-Identifier: MIT */
/* Lists of a key: lengths, steps, breaks, sizes, stages and names of other sections, each
 * item with its own place; lists that are too long or cannot be read. */
#include "read/key/rows.h"

#include "cmocka_all.h"
#include "file_bench.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What the rows fill. */
struct target {
    struct values values;
    struct steps steps;
    struct named_value *named;
    size_t named_count;
    struct references references;
    struct reference reference;
    struct material_reference material;
    unsigned bits;
};

#define WITH_LUMBER_AND_SHEETS (1U << MATERIAL_LUMBER | 1U << MATERIAL_SHEET)

enum which { LENGTHS, STEPS, BREAKS, SIZES, STAGES, NAMES, NAME, NONE, MATERIAL, BITS };

static const struct spelling kinds[] = {{"dry", 1}, {"wet", 2}, {"loud", 4}, {"none", 8}, {0}};

static const struct key rows[] = {
    [LENGTHS] = {"board lengths", AS_OWN(read_lengths, .range = INCHES(1, 300), .most = 4),
                 FIELD(target, values), "8 ft, 10 ft"},
    [STEPS] = {"by height",
               AS_OWN(read_steps, .range = INCHES(1, 120), .forms = FORM("", UNIT_COUNT, 1, 10),
                      .most = 4),
               FIELD(target, steps), "40 in: 2, 60 in: 3"},
    [BREAKS] = {"price from",
                AS_OWN(read_breaks, .limit_forms = FORM("bf", UNIT_BF, 1, NO_LIMIT),
                       .forms = FORM("per bf", UNIT_MONEY_PER_BF, 0, NO_LIMIT)),
                FIELD(target, steps), "100 bf at 3.75 per bf"},
    [SIZES] = {"containers", AS_OWN(read_sizes, .forms = forms_money, .most = 3),
               FIELD(target, steps), "1 qt at 27.00, 1 gal at 84.00"},
    [STAGES] = {"stages", AS_OWN(read_stages, .forms = FORM("%", UNIT_PERCENT, 0, 100)),
                FIELDS(target, named, named_count), "40 % when sprayed"},
    [NAMES] = {"operations", AS_OWN(read_names, .names = NAME_OPERATION, .most = 3),
               FIELD(target, references), "cut, glue"},
    [NAME] = {"finish", AS_NAME(NAME_FINISH), FIELD(target, reference), "oiled"},
    [NONE] = {"hinge", AS_NAME_OR_NONE(NAME_HARDWARE), FIELD(target, reference), "cup"},
    [MATERIAL] = {"panel", AS_MATERIAL(WITH_LUMBER_AND_SHEETS), FIELD(target, material), "ply"},
    [BITS] = {"kinds", AS_CHOICES(kinds), FIELD(target, bits), "dry, loud"},
};

struct list_case {
    enum which row;
    const char *text, *expected; /* items with a `|` behind each; else problems with columns */
};

/* The text begins at column 10. */
static const struct list_case cases[] = {
    {LENGTHS, "8 ft, 10 ft", "2438400000|3048000000|"},
    {LENGTHS, "96, 120", "2438400000|3048000000|"},
    {LENGTHS, "  96  ", "2438400000|"},
    {LENGTHS, "1, 2, 3, 4", "25400000|50800000|76200000|101600000|"},
    {LENGTHS, "1, 2, 3, 4, 5", " too-many@10+13"},
    {LENGTHS, "96 (95 to 97), 120", "2438400000|3048000000| range-unused@10+13"},
    {LENGTHS, "8 ft, 8 ft", " not-ascending@16+4"},
    {LENGTHS, "10 ft, 8 ft", " not-ascending@17+4"},
    {LENGTHS, "96 in, 2438.4 mm", " not-ascending@17+9"},
    {LENGTHS, "96,120", " comma-in-number@10+6"},
    {LENGTHS, "96, 0", " size-absurd@14+1"},
    {LENGTHS, "96, 301", " size-absurd@14+3"},
    {LENGTHS, "96, 300", "2438400000|7620000000|"},
    {LENGTHS, "96,, 120", " empty-item@10+8"},
    {LENGTHS, ", 96", " empty-item@10+4"},
    {LENGTHS, "96,", " empty-item@10+3"},
    {LENGTHS, "96, wide, 120", " not-a-length@14+4"},

    {STEPS, "40 in: 2, 60 in: 3", "1016000000:2 '40 in'|1524000000:3 '60 in'|"},
    {STEPS, "40:2,60:3", " comma-in-number@10+9"},
    {STEPS, "40:2, 60:3", "1016000000:2 '40'|1524000000:3 '60'|"},
    {STEPS, "40: 2, 40: 3", " not-ascending@17+5"},
    {STEPS, "40 2", " bad-item@10+4"},
    {STEPS, "40:", " bad-item@10+3"},
    {STEPS, ": 2", " bad-item@10+3"},
    {STEPS, "40: 2.5", " not-whole@14+3"},
    {STEPS, "40: 11", " out-of-range@14+2"},
    {STEPS, "40: 10", "1016000000:10 '40'|"},
    {STEPS, "121: 2", " size-absurd@10+3"},
    {STEPS, "40: 2 : 3", " wrong-unit@14+5"},

    {BREAKS, "100 bf at 3.75 per bf, 500 bf at 3 per bf", "100:375 '100 bf'|500:3 '500 bf'|"},
    {BREAKS, "100 bf AT 3.75 per bf", " bad-item@10+21"},
    {BREAKS, "100 bf at 3.75", " missing-unit@20+4"},
    {BREAKS, "100 at 3.75 per bf", " missing-unit@10+3"},
    {BREAKS, "0 bf at 3.75 per bf", " out-of-range@10+4"},
    {BREAKS, "100 bf at 3.75 per bf (3 to 4), 500 bf at 3 per bf",
     "100:375 '100 bf'|500:3 '500 bf'| range-unused@20+20"},
    {BREAKS, "99.5 bf at 4 per bf, 99.50 bf at 3 per bf", " not-ascending@31+20"},
    {BREAKS, "99.5 bf at 4 per bf, 99.51 bf at 3 per bf", "995:4 '99.5 bf'|9951:3 '99.51 bf'|"},

    {SIZES, "1 qt at 27.00, 1 gal at 84.00", "25:2700 '1 qt'|1:8400 '1 gal'|"},
    {SIZES, "1 gal at 84.00, 1 qt at 27.00", " not-ascending@26+13"},
    {SIZES, "1 qt at 27.00, 32 fl oz at 26.00", " not-ascending@25+17"},
    {SIZES, "1 pt at 9, 1 qt at 15, 1 gal at 50, 5 gal at 220", " too-many@10+48"},
    {SIZES, "1 lb at 9", " wrong-unit@10+4"},

    {STAGES, "40 % when sprayed, 60 % when set", "40 sprayed|60 set|"},
    {STAGES, "40 when sprayed", " missing-unit@10+2"},
    {STAGES, "101 % when sprayed", " out-of-range@10+5"},

    {NAMES, "cut, glue", "0 cut|1 glue|"},
    {NAMES, "GLUE,cut", "1 GLUE|0 cut|"},
    {NAMES, "cut, gleu", "0 cut|-1 gleu| unknown-name@15+4"},
    {NAMES, "cut, cut", "0 cut|0 cut| listed-twice@15+3"},
    {NAMES, "cut, glue, Cut", "0 cut|1 glue|0 Cut| listed-twice@21+3"},
    {NAMES, "x, z", "-1 x|-1 z| unknown-name@10+1 unknown-name@13+1"},
    {NAMES, "cut, glue, sand (by hand)", "0 cut|1 glue|2 sand (by hand)|"},
    {NAMES, "cut, glue, sand (by hand), x", " too-many@10+28"},
    {NAMES, "1,2", "-1 1|-1 2| unknown-name@10+1 unknown-name@12+1"},
    {NAMES, "cut;glue", "-1 cut;glue| unknown-name@10+8"},

    {NAME, "Oiled", "0 Oiled"},
    {NAME, "none", "-1 none unknown-name@10+4"},
    {NONE, "none", "-1 none"},
    {NONE, "NONE", "-1 none"},
    {NONE, "cup", "0 cup"},
    {MATERIAL, "poplar", "1 0 poplar"},
    {MATERIAL, "Ply", "2 0 Ply"},
    {MATERIAL, "clear", "-1 clear wrong-material@10+5"},
    {MATERIAL, "poplr", "-1 poplr unknown-material@10+5"},

    {BITS, "dry", "1"},
    {BITS, "loud, Dry", "5"},
    {BITS, "none", "8"},
    {BITS, "dry, wett", "0 unknown-word@15+4"},
    {BITS, "dry, dry", "0 bad-item@10+8"},
    {BITS, "none, none", "0 bad-item@10+10"},
    {BITS, "none, dry", "0 bad-item@10+9"},
    {BITS, "dry, none", "0 bad-item@10+9"},
    {BITS, "dry,", "0 empty-item@10+4"},
};

/* --- the rates that names are of --- */

static struct lumber lumber[] = {{.name.s = "poplar"}};
static struct sheet sheets[] = {{.name.s = "ply"}};
static struct glass glass[] = {{.name.s = "clear"}};
static struct finish finishes[] = {{.name.s = "oiled"}};
static struct hardware hardware[] = {{.name.s = "cup"}};
static struct operation operations[] = {
    {.name.s = "cut"}, {.name.s = "glue"}, {.name.s = "sand (by hand)"}};

static const struct rates shop = {.lumber = lumber,
                                  .lumber_count = 1,
                                  .sheets = sheets,
                                  .sheet_count = 1,
                                  .glass = glass,
                                  .glass_count = 1,
                                  .finishes = finishes,
                                  .finish_count = 1,
                                  .hardware = hardware,
                                  .hardware_count = 1,
                                  .operations = operations,
                                  .operation_count = 3};

static void dump_target(struct dump *dump, enum which row, const struct target *t) {
    for (size_t i = 0; i < t->values.count; i++) {
        dump_add(dump, "%" PRId64 "|", t->values.v[i].amount);
    }
    for (size_t i = 0; i < t->steps.count; i++) {
        const struct step *const step = &t->steps.s[i];
        dump_add(dump, "%" PRId64 ":%" PRId64 " '%s'|", step->limit.amount, step->value.amount,
                 step->words);
    }
    for (size_t i = 0; i < t->named_count; i++) {
        dump_add(dump, "%" PRId64 " %s|", t->named[i].value.amount, t->named[i].name.s);
    }
    for (size_t i = 0; i < t->references.count; i++) {
        dump_add(dump, "%d %s|", (int)t->references.r[i].index, t->references.r[i].name.s);
    }
    if (row == NAME || row == NONE) {
        dump_add(dump, "%d %s", (int)t->reference.index, t->reference.name.s);
    }
    if (row == BITS) {
        dump_add(dump, "%u", t->bits);
    }
    if (row == MATERIAL && t->material.index >= 0) {
        dump_add(dump, "%d %d %s", (int)t->material.kind, (int)t->material.index,
                 t->material.name.s);
    } else if (row == MATERIAL) {
        dump_add(dump, "-1 %s", t->material.name.s);
    }
}

static void read_list(const struct list_case *c, bool names_known, struct dump *dump) {
    struct problems problems;
    struct pool pool;
    struct target target = {.named_count = 0};
    problems_init(&problems);
    pool_init(&pool);
    struct reader reader = {.pool = &pool,
                            .problems = &problems,
                            .rates = &shop,
                            .money_decimals = 2,
                            .names_known = names_known};
    const struct key *const key = &rows[c->row];
    const struct entry entry = {.text = c->text,
                                .place = {.column = 10, .width = (uint16_t)strlen(c->text)}};
    key->kind.read(&reader, key, &entry, &target);
    dump_target(dump, c->row, &target);
    for (size_t i = 0; i < problems.count; i++) {
        const struct problem *const p = &problems.list[i];
        dump_add(dump, " %s@%u+%u", p->id, (unsigned)p->place.column, (unsigned)p->place.width);
    }
    pool_clear(&pool);
    problems_clear(&problems);
}

static void test_lists(void **state) {
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct dump dump = {.used = 0};
        read_list(&cases[i], true, &dump);
        wrong = dump_compare(&dump, cases[i].expected, cases[i].text, wrong);
    }
    assert_int_equal(wrong, 0);
}

/* Where the rates could not be read nothing is said of names. */
static void test_names_unknown(void **state) {
    (void)state;
    static const struct list_case unknown[] = {
        {NAMES, "cut, gleu", "0 cut|-1 gleu|"},
        {NAME, "waxed", "-1 waxed"},
        {MATERIAL, "oak", "-1 oak"},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(unknown); i++) {
        struct dump dump = {.used = 0};
        read_list(&unknown[i], false, &dump);
        wrong = dump_compare(&dump, unknown[i].expected, unknown[i].text, wrong);
    }
    assert_int_equal(wrong, 0);
}

static void test_messages(void **state) {
    (void)state;
    static const struct {
        enum which row;
        const char *text, *message;
    } messages[] = {
        {LENGTHS, "1, 2, 3, 4, 5", "board lengths has 5 items; at most 4 can be counted with"},
        {LENGTHS, "10 ft, 8 ft",
         "board lengths: '8 ft' is not above the one before it; expected a list from small to "
         "large, like '8 ft, 10 ft'"},
        {STEPS, "40 2",
         "by height: '40 2' cannot be read; expected a list like '40 in: 2, 60 in: 3'"},
        {NAMES, "gleu", "operations 'gleu' is not in the rates; did you mean 'glue'?"},
        {NAMES, "varnish",
         "operations 'varnish' is not in the rates; their [operation NAME] are 'cut', 'glue', "
         "'sand "
         "(by hand)'"},
        {MATERIAL, "clear", "panel 'clear' is glass; expected lumber or a sheet"},
        {MATERIAL, "granite",
         "panel 'granite' is not in the rates; their [lumber NAME] are 'poplar', their [sheet "
         "NAME] "
         "are 'ply'"},
        {BITS, "dry, none",
         "kinds 'dry, none' has 'none' beside others; expected a list like 'dry, loud'"},
        {BITS, "dry, dry", "kinds 'dry, dry' says a thing twice; expected a list like 'dry, loud'"},
        {NAMES, "cut, cut",
         "operations names 'cut' twice; it is done once, so take one away, or give it passes"},
    };
    for (size_t i = 0; i < COUNT(messages); i++) {
        struct problems problems;
        struct pool pool;
        struct target target = {.named_count = 0};
        problems_init(&problems);
        pool_init(&pool);
        struct reader reader = {
            .pool = &pool, .problems = &problems, .rates = &shop, .names_known = true};
        const struct key *const key = &rows[messages[i].row];
        key->kind.read(&reader, key, &(struct entry){.text = messages[i].text}, &target);
        assert_int_equal(problems.count, 1);
        assert_string_equal(problems.list[0].text, messages[i].message);
        pool_clear(&pool);
        problems_clear(&problems);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_lists),
        cmocka_unit_test(test_names_unknown),
        cmocka_unit_test(test_messages),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
