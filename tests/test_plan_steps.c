/* SPDX-License-Identifier: MIT */
/* What the paper of the cutting plans says, read back: cuts are numbered without a gap, each part
 * is told as often as it is cut and with its own size, the lists of the first page add up to the
 * plans, and pictures stand on their pages side by side. */
#include "json_bench.h"
#include "report/plan/plan_draw.h"
#include "report/plan/plan_flow.h"

#include "cut/board/board_layout.h"
#include "stock/sheets_by_plan.h"

#include "cmocka_all.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const jobs[] = {"samples/kitchen/kitchen.ini", "samples/metric/tea-kitchen.ini",
                                   "samples/old-house/old-house.ini",
                                   "samples/station/station.ini"};

struct paper {
    const struct estimate *e;
    struct pool pool;
    struct plan_stack *stacks;
    size_t count;
};

/* Each job's first estimate, with its stacks; boards crosscut first too, of two of them. */
static void with_each(void (*check)(struct paper *)) {
    for (size_t i = 0; i < COUNT(jobs); i++) {
        for (int first = 0; first < (i < 2 ? 2 : 1); first++) {
            struct json_bench bench;
            struct paper p = {0};
            json_bench_open(&bench, jobs[i]);
            if (first == 1) {
                json_bench_crosscut_first(&bench);
            }
            pool_init(&p.pool);
            p.e = &bench.estimates[0];
            p.stacks = plan_stacks_make(&p.pool, p.e, &p.count);
            assert_non_null(p.stacks);
            assert_true(p.count > 0);
            check(&p);
            pool_clear(&p.pool);
            json_bench_close(&bench);
        }
    }
}

static const struct cut_item *items_of(const struct paper *p, const struct plan_stack *s,
                                       size_t *count) {
    if (s->sheet) {
        *count = p->e->sheets.buys[s->buy].plan.job.item_count;
        return p->e->sheets.buys[s->buy].plan.job.items;
    }
    *count = p->e->lumber.buys[s->buy].plan.job.item_count;
    return p->e->lumber.buys[s->buy].plan.job.items;
}

/* --- numbers of parts --- */

/* From 1 on over all stacks, longest first, then widest, none twice. */
static void check_numbers(struct paper *p) {
    size_t next = 1;
    for (size_t s = 0; s < p->count; s++) {
        size_t count;
        const struct cut_item *const items = items_of(p, &p->stacks[s], &count);
        size_t wanted = 0;
        for (size_t i = 0; i < count; i++) {
            wanted += items[i].demand > 0 ? 1 : 0;
        }
        for (size_t number = next; number < next + wanted; number++) {
            const struct cut_item *found = NULL;
            for (size_t i = 0; i < count; i++) {
                if (items[i].demand > 0 && p->stacks[s].numbers[i] == number) {
                    assert_null(found);
                    found = &items[i];
                }
            }
            if (found == NULL) {
                fail_msg("no part has the number %zu", number);
                return;
            }
            for (size_t i = 0; i < count; i++) {
                if (items[i].demand > 0 &&
                    (items[i].length > found->length ||
                     (items[i].length == found->length && items[i].width > found->width))) {
                    assert_true(p->stacks[s].numbers[i] < number);
                }
            }
        }
        next += wanted;
    }
}

static void test_numbers(void **state) {
    (void)state;
    with_each(check_numbers);
}

/* --- steps --- */

/* How many pieces of parts a text names; each is added to made[item]. */
static size_t pieces_in(const struct paper *p, const struct plan_stack *s, const char *text,
                        int64_t *made, size_t copies, size_t *last_item) {
    size_t count;
    size_t pieces = 0;
    const struct cut_item *const items = items_of(p, s, &count);
    for (const char *at = strchr(text, '#'); at != NULL; at = strchr(at + 1, '#')) {
        const size_t number = strtoul(at + 1, NULL, 10);
        size_t times = 1;
        size_t item = 0;
        if (at - text >= 4 && strncmp(at - 3, " x ", 3) == 0) {
            const char *from = at - 3;
            while (from > text && from[-1] >= '0' && from[-1] <= '9') {
                from--;
            }
            times = strtoul(from, NULL, 10);
            assert_true(times > 1);
        }
        while (item < count && (s->numbers[item] != number || items[item].demand == 0)) {
            item++;
        }
        assert_true(item < count);
        made[item] += (int64_t)(times * copies);
        pieces += times;
        *last_item = item;
    }
    return pieces;
}

/* The cuts of a line, which go on from *next. */
static void check_lead(const char *lead, size_t *next) {
    char *end;
    if (lead[0] < '0' || lead[0] > '9') {
        return;
    }
    const size_t first = strtoul(lead, &end, 10);
    const size_t last = *end == '-' ? strtoul(end + 1, &end, 10) : first;
    assert_int_equal(*end, '\0');
    assert_int_equal(first, *next);
    assert_true(last >= first);
    *next = last + 1;
}

/* `to 30 1/2: parts`, `what is left, 30 1/2: parts`: the size is that of the part. */
static void check_board_size(const struct paper *p, const struct plan_stack *s, const char *text,
                             size_t item) {
    const struct board_job *const job = &p->e->lumber.buys[s->buy].plan.job;
    const char *const left = "what is left, ";
    const char *const from =
        strncmp(text, left, strlen(left)) == 0 ? text + strlen(left) : text + strlen("to ");
    const struct cut_item *const of = &job->items[item];
    const struct shown size = plan_show(p->e, job->crosscut_first ? of->width : of->length);
    assert_true(from == text + strlen(left) || strncmp(text, "to ", 3) == 0);
    if (strncmp(from, size.text, strlen(size.text)) != 0 || from[strlen(size.text)] != ':') {
        fail_msg("'%s' is not of %s", text, size.text);
    }
}

static size_t cuts_of(const struct paper *p, const struct plan_stack *s, size_t group) {
    const size_t first = s->groups[group].first;
    size_t cuts = 0;
    if (!s->sheet) {
        const struct lumber_plan *const plan = &p->e->lumber.buys[s->buy].plan;
        struct board_layout l = {0};
        assert_true(board_layout_make(&l, &plan->job, plan->plan, first, plan->keep));
        cuts = l.cut_count;
        board_layout_clear(&l);
        return cuts;
    }
    const struct sheets_plan *const plan = &p->e->sheets.buys[s->buy].plan;
    const struct sheet_sheet *const sheet = &plan->plan->sheets[first];
    for (size_t i = 0; i < sheet->node_count; i++) {
        const enum sheet_use use = plan->plan->nodes[sheet->first_node + i].use;
        cuts += use == SHEET_CUT_X || use == SHEET_CUT_Y ? 1 : 0;
    }
    /* four edges are trimmed, of a sheet that is trimmed and is no offcut */
    return cuts + (plan->job.trim > 0 && sheet->stock < plan->sold ? 4 : 0);
}

static void check_group(struct paper *p, const struct plan_stack *s, size_t group, int64_t *made) {
    struct sketch sketch = {.e = p->e, .pool = &p->pool};
    size_t count = 0;
    size_t next = 1;
    size_t strips = 0;
    const struct plan_line *const lines =
        s->sheet ? sheet_steps(&sketch, s, group, &count) : board_steps(&sketch, s, group, &count);
    assert_non_null(lines);
    assert_true(count > 1 && lines[0].heading);
    for (size_t i = 0; i < count; i++) {
        size_t item = 0;
        check_lead(lines[i].lead, &next);
        const size_t pieces = pieces_in(p, s, lines[i].text, made, s->groups[group].copies, &item);
        if (!s->sheet && pieces > 0) {
            check_board_size(p, s, lines[i].text, item);
        }
        if (!s->sheet && lines[i].heading && i > 0) {
            char words[100];
            const struct lumber_plan *const plan = &p->e->lumber.buys[s->buy].plan;
            const struct board_use *const use = &plan->plan->boards[s->groups[group].first];
            assert_true(strips < use->count);
            (void)snprintf(words, sizeof words,
                           plan->job.crosscut_first ? "rip segment %zu, %s long"
                                                    : "crosscut strip %zu, %s wide",
                           strips + 1,
                           plan_show(p->e, plan->plan->strips[use->first + strips].width).text);
            assert_string_equal(lines[i].text, words);
            strips++;
        }
        if (strcmp(lines[i].lead, "keep") == 0) {
            assert_int_equal(i, count - 1);
        }
    }
    if (next - 1 != cuts_of(p, s, group)) {
        fail_msg("%zu cuts are told, there are %zu", next - 1, cuts_of(p, s, group));
    }
}

static void check_steps(struct paper *p) {
    for (size_t s = 0; s < p->count; s++) {
        size_t count;
        const struct cut_item *const items = items_of(p, &p->stacks[s], &count);
        int64_t *const made = calloc(count + 1, sizeof *made);
        assert_non_null(made);
        for (size_t g = 0; g < p->stacks[s].group_count; g++) {
            check_group(p, &p->stacks[s], g, made);
        }
        for (size_t i = 0; i < count; i++) {
            assert_int_equal(made[i], items[i].demand);
        }
        free(made);
    }
}

static void test_steps(void **state) {
    (void)state;
    with_each(check_steps);
}

/* --- the first page --- */

/* Adds to in[] each board that words name behind `boards `: `1 to 3, 5`. */
static void boards_in(const char *words, size_t *in, size_t count) {
    const char *at = strstr(words, "board");
    char *end;
    assert_non_null(at);
    at += strcspn(at, " ");
    while (*at != '\0') {
        const size_t first = strtoul(at, &end, 10);
        assert_true(end > at);
        const size_t last = strncmp(end, " to ", 4) == 0 ? strtoul(end + 4, &end, 10) : first;
        assert_true(first >= 1 && first <= last && last <= count);
        for (size_t i = first; i <= last; i++) {
            in[i - 1]++;
        }
        at = *end == ',' ? end + 1 : end;
    }
}

/* The board of the plan that paper calls by a number, counted from 1. */
static size_t board_called(const struct plan_stack *s, size_t number) {
    for (size_t g = 0; g < s->group_count; g++) {
        if (number >= s->groups[g].number && number < s->groups[g].number + s->groups[g].copies) {
            return s->groups[g].first;
        }
    }
    fail_msg("no board %zu", number);
    return 0;
}

/* A line of strips of a width: how many there are, and which boards have any. */
static void check_strips(const struct paper *p, const struct plan_stack *s,
                         const struct plan_line *line, size_t *strips) {
    const struct board_plan *const plan = p->e->lumber.buys[s->buy].plan.plan;
    size_t *const in = calloc(plan->board_count, sizeof *in);
    size_t found = 0;
    assert_non_null(in);
    boards_in(line->text, in, plan->board_count);
    for (size_t b = 0; b < plan->board_count; b++) {
        const struct board_use *const use = &plan->boards[board_called(s, b + 1)];
        bool has = false;
        for (size_t i = 0; i < use->count; i++) {
            const struct shown width = plan_show(p->e, plan->strips[use->first + i].width);
            const bool same = strcmp(width.text, line->lead) == 0;
            found += same ? 1 : 0;
            has = has || same;
        }
        assert_int_equal(in[b], has ? 1 : 0);
    }
    assert_int_equal(strtoul(line->text, NULL, 10), found);
    *strips += found;
    free(in);
}

static size_t kept_of(const struct paper *p, const struct plan_stack *s) {
    size_t kept = 0;
    for (size_t g = 0; g < s->group_count; g++) {
        const size_t first = s->groups[g].first;
        if (s->sheet) {
            const struct sheets_plan *const plan = &p->e->sheets.buys[s->buy].plan;
            const struct sheet_sheet *const sheet = &plan->plan->sheets[first];
            for (size_t i = 0; i < sheet->node_count; i++) {
                const struct sheet_node *const n = &plan->plan->nodes[sheet->first_node + i];
                kept += n->use == SHEET_OFFCUT && sheet_keeps(plan->keep, n->length, n->width)
                            ? s->groups[g].copies
                            : 0;
            }
            continue;
        }
        const struct lumber_plan *const plan = &p->e->lumber.buys[s->buy].plan;
        struct board_layout l = {0};
        assert_true(board_layout_make(&l, &plan->job, plan->plan, first, plan->keep));
        for (size_t i = 0; i < l.offcut_count; i++) {
            kept += l.offcuts[i].keep ? s->groups[g].copies : 0;
        }
        board_layout_clear(&l);
    }
    return kept;
}

/* `2 x 4 x 30` as well as `4 x 30`: a count is before two sizes. */
static size_t times_of(const char *lead) {
    const char *const one = strstr(lead, " x ");
    const char *const two = one == NULL ? NULL : strstr(one + 3, " x ");
    return two == NULL ? 1 : strtoul(lead, NULL, 10);
}

static void check_cover(struct paper *p) {
    struct plan_cover cover;
    size_t sheets = 0;
    size_t strips = 0;
    size_t wanted_strips = 0;
    size_t kept = 0;
    size_t stack = 0;
    size_t number = 1;
    size_t fetched = 0;
    assert_true(plan_cover_make(&cover, &p->pool, p->e, p->stacks, p->count));
    for (size_t s = 0; s < p->count; s++) {
        const struct plan_stack *const of = &p->stacks[s];
        const struct board_plan *const boards =
            of->sheet ? NULL : p->e->lumber.buys[of->buy].plan.plan;
        sheets +=
            of->sheet ? p->e->sheets.buys[of->buy].plan.plan->sheet_count : boards->board_count;
        wanted_strips += of->sheet ? 0 : boards->strip_count;
        kept += kept_of(p, of);
    }
    for (size_t i = 0; i < cover.lists[0].count; i++) {
        fetched += strtoul(cover.lists[0].lines[i].lead, NULL, 10);
    }
    assert_int_equal(fetched, sheets);
    for (size_t i = 0; i < cover.lists[1].count; i++) {
        const struct plan_line *const line = &cover.lists[1].lines[i];
        stack += line->heading && i > 0 ? 1 : 0;
        assert_true(line->box == !line->heading);
        if (!line->heading) {
            check_strips(p, &p->stacks[stack], line, &strips);
        }
    }
    assert_int_equal(strips, wanted_strips);
    for (size_t i = 0; i < cover.lists[2].count; i++) {
        const struct plan_line *const line = &cover.lists[2].lines[i];
        if (!line->heading) {
            assert_int_equal(strtoul(strchr(line->text, '#') + 1, NULL, 10), number++);
        }
    }
    for (size_t i = 0; i < cover.lists[3].count; i++) {
        const size_t times = times_of(cover.lists[3].lines[i].lead);
        assert_true(kept >= times);
        kept -= times;
    }
    assert_int_equal(kept, 0);
}

static void test_cover(void **state) {
    (void)state;
    with_each(check_cover);
}

/* --- pages --- */

static bool meet(const struct plan_block *a, const struct plan_block *b) {
    return a->page == b->page && a->x < b->x + b->patch.width - 0.01 &&
           b->x < a->x + a->patch.width - 0.01 && a->y < b->y + b->patch.height - 0.01 &&
           b->y < a->y + a->patch.height - 0.01;
}

static bool is_picture(const struct plan_block *b) {
    return b->kind == BLOCK_BOARD || b->kind == BLOCK_SHEET;
}

/* Where a block ends, as it is drawn. */
static double foot_of(const struct plan_pages *pages, const struct plan_block *b) {
    const double high = is_picture(b) ? b->patch.height
                        : b->kind == BLOCK_LINES
                            ? b->columns.height
                            : text_measure(pages->cr, b->text, &b->style).height;
    return b->y + high;
}

/* A box to tick for each board that is cut so, where there are few; they stand before the name,
 * which has room beside them. */
static void check_head(const struct plan_pages *pages, const struct plan_block *b) {
    const size_t copies = b->stack->groups[b->group].copies;
    const double in = plan_head_indent(b);
    assert_true(in == HEAD_TICK + 2 || in == (double)copies * HEAD_TICK + 2);
    assert_true(copies > 2 || in == (double)copies * HEAD_TICK + 2);
    assert_true(in + b->style.width + GRAIN_ROOM <= pages->inner_width + 0.01);
}

/* Every group has a name and one drawing, on one page; nothing leaves the page or meets another. */
static void check_blocks(const struct plan_pages *pages, bool all) {
    size_t groups = 0;
    size_t heads = 0;
    size_t pictures = 0;
    size_t page = 0;
    double low = 0;
    for (size_t s = 0; s < pages->stack_count; s++) {
        groups += pages->stacks[s].group_count;
    }
    for (size_t i = 0; i < pages->block_count; i++) {
        const struct plan_block *const b = &pages->blocks[i];
        if (!all && b->page >= pages->count) {
            break; /* laid out, and not wanted */
        }
        assert_true(b->page < pages->count && b->page >= page && b->page <= page + 1);
        if (b->page != page) {
            low = 0;
        }
        page = b->page;
        assert_true(b->x >= -0.01 && b->y >= pages->top - 0.01);
        assert_true(foot_of(pages, b) <= pages->foot + 0.03);
        assert_true(b->x > 0 || b->y >= low - 0.01); /* below what stands before it */
        low = fmax(low, foot_of(pages, b));
        if (b->kind == BLOCK_HEAD) {
            heads++;
            check_head(pages, b);
        }
        if (!is_picture(b)) {
            continue;
        }
        pictures++;
        assert_true(b->x + b->patch.width <= pages->inner_width + 0.01);
        for (size_t k = 0; k < i; k++) {
            assert_false(is_picture(&pages->blocks[k]) && meet(b, &pages->blocks[k]));
        }
    }
    assert_int_equal(page, pages->count - 1);
    if (all) {
        assert_int_equal(pictures, groups);
        assert_true(heads >= groups);
    }
}

static void check_pages(struct paper *p) {
    static const size_t most[] = {0, 1, 2, 100};
    for (size_t i = 0; i < COUNT(most); i++) {
        struct plan_pages pages;
        assert_true(plan_pages_make(&pages, p->e, most[i]));
        assert_true(pages.count > 0 && (most[i] == 0 || pages.count <= most[i]));
        check_blocks(&pages, !pages.more);
        assert_true(most[i] == 1 || most[i] == 2 || !pages.more);
        for (size_t at = 0; at < pages.count; at++) {
            assert_true(plan_pages_words(&pages, at)[0] != '\0');
        }
        assert_int_equal(strncmp(plan_pages_words(&pages, 0), "what to fetch", 13), 0);
        plan_pages_clear(&pages);
    }
}

static void test_pages(void **state) {
    (void)state;
    with_each(check_pages);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_numbers),
        cmocka_unit_test(test_steps),
        cmocka_unit_test(test_cover),
        cmocka_unit_test(test_pages),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
