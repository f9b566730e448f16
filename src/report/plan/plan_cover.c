/* SPDX-License-Identifier: MIT */
/* What the first page lists: what to fetch, the strips by width, the parts with their stops, the
 * offcuts to keep; and how parts are numbered. */
#include "base/order.h"
#include "base/text.h"
#include "report/plan/plan_draw.h"

#include <stdlib.h>

/* --- stacks --- */

struct ranked {
    int64_t length, width;
    size_t item;
};

/* Longest first, of these the widest, as the plan lists them. */
static int by_length(const void *a, const void *b) {
    const struct ranked *const x = a;
    const struct ranked *const y = b;
    const int along = order_by_number(y->length, x->length);
    const int across = order_by_number(y->width, x->width);
    return along != 0    ? along
           : across != 0 ? across
                         : order_by_number((int64_t)x->item, (int64_t)y->item);
}

/* The items of a planner's job in the order of their numbers. In pool; NULL: out of memory. */
static struct ranked *rank(struct pool *pool, const struct cut_item *items, size_t count) {
    struct ranked *const list = pool_take(pool, count + 1, sizeof *list);
    for (size_t i = 0; list != NULL && i < count; i++) {
        list[i] = (struct ranked){items[i].length, items[i].width, i};
    }
    if (list != NULL) {
        qsort(list, count, sizeof *list, by_length);
    }
    return list;
}

static const struct cut_item *items_of(const struct estimate *e, const struct plan_stack *stack,
                                       size_t *count) {
    const struct board_job *const boards = &e->lumber.buys[stack->sheet ? 0 : stack->buy].plan.job;
    const struct cut_job *const sheets = &e->sheets.buys[stack->sheet ? stack->buy : 0].plan.job;
    *count = stack->sheet ? sheets->item_count : boards->item_count;
    return stack->sheet ? sheets->items : boards->items;
}

/* Numbers the parts of a stack from *next on. */
static bool number_parts(struct pool *pool, const struct estimate *e, struct plan_stack *stack,
                         size_t *next) {
    size_t count = 0;
    const struct cut_item *const items = items_of(e, stack, &count);
    const struct ranked *const list = rank(pool, items, count);
    size_t *const numbers = pool_take(pool, count + 1, sizeof *numbers);
    for (size_t i = 0; list != NULL && numbers != NULL && i < count; i++) {
        numbers[list[i].item] = *next;
        *next += items[list[i].item].demand > 0 ? 1 : 0;
    }
    stack->numbers = numbers;
    return list != NULL && numbers != NULL && stack->groups != NULL;
}

struct plan_stack *plan_stacks_make(struct pool *pool, const struct estimate *e, size_t *count) {
    struct plan_stack *const stacks =
        pool_take(pool, e->lumber.count + e->sheets.count + 1, sizeof *stacks);
    size_t next = 1;
    bool held = stacks != NULL;
    *count = 0;
    for (size_t i = 0; held && i < e->lumber.count; i++) {
        const struct lumber_plan *const p = &e->lumber.buys[i].plan;
        if (p->plan != NULL && p->no_plan_reason == NULL) {
            struct plan_stack *const stack = &stacks[(*count)++];
            stack->buy = i;
            stack->groups = plan_alike_boards(pool, p->plan, &stack->group_count);
            held = number_parts(pool, e, stack, &next);
        }
    }
    for (size_t i = 0; held && i < e->sheets.count; i++) {
        const struct sheets_plan *const p = &e->sheets.buys[i].plan;
        if (p->plan != NULL && p->no_plan_reason == NULL) {
            struct plan_stack *const stack = &stacks[(*count)++];
            stack->sheet = true;
            stack->buy = i;
            stack->groups = plan_alike_sheets(pool, p->plan, &stack->group_count);
            held = number_parts(pool, e, stack, &next);
        }
    }
    return held ? stacks : NULL;
}

/* `poplar 4/4`: what a stack is made of. Borrowed, or in pool. */
static const char *plan_stack_name(struct pool *pool, const struct estimate *e,
                                   const struct plan_stack *stack) {
    if (stack->sheet) {
        return e->rates->sheets[e->sheets.buys[stack->buy].material].name.s;
    }
    const struct lumber *const l = &e->rates->lumber[e->lumber.buys[stack->buy].material];
    const bool thick = l->thickness_text.s != NULL;
    return pool_words(pool, "%s%s%s", l->name.s, thick ? " " : "",
                      text_or_empty(l->thickness_text.s));
}

/* The stock that a group is cut from. */
static size_t stock_of(const struct estimate *e, const struct plan_stack *stack, size_t group) {
    const size_t first = stack->groups[group].first;
    return stack->sheet ? e->sheets.buys[stack->buy].plan.plan->sheets[first].stock
                        : e->lumber.buys[stack->buy].plan.plan->boards[first].stock;
}

static const char *noun_of(const struct estimate *e, const struct plan_stack *stack, size_t stock) {
    return stack->sheet ? plan_sheet_noun(&e->sheets.buys[stack->buy].plan, stock)
                        : plan_board_noun(&e->lumber.buys[stack->buy].plan, stock);
}

const char *plan_group_words(struct pool *pool, const struct estimate *e,
                             const struct plan_stack *stack, size_t group) {
    const struct alike *const alike = &stack->groups[group];
    const char *const noun = noun_of(e, stack, stock_of(e, stack, group));
    return pool_words(pool, "%s %s", plan_stack_name(pool, e, stack),
                      plan_numbers(alike, noun).text);
}

const char *plan_part_words(struct pool *pool, const struct estimate *e,
                            const struct plan_stack *stack, size_t item, size_t pieces) {
    const struct plan_part *const parts = stack->sheet ? e->sheets.buys[stack->buy].plan.parts
                                                       : e->lumber.buys[stack->buy].plan.parts;
    const char *const name = plan_part_name(pool, &parts[item]);
    return pieces == 1 ? pool_words(pool, "#%zu %s", stack->numbers[item], name)
                       : pool_words(pool, "%zu x #%zu %s", pieces, stack->numbers[item], name);
}

/* --- lists --- */

struct maker {
    struct pool *pool;
    const struct estimate *e;
    struct plan_list *list; /* in the making */
    size_t room;
};

static bool open_list(struct maker *m, struct plan_list *list, const char *title, size_t room) {
    *list = (struct plan_list){.title = title,
                               .lines = pool_take(m->pool, room + 1, sizeof *list->lines)};
    m->list = list;
    m->room = list->lines == NULL ? 0 : room;
    return list->lines != NULL;
}

static void add(struct maker *m, const char *lead, const char *text, bool heading) {
    if (m->list->count < m->room) {
        m->list->lines[m->list->count++] =
            (struct plan_line){.lead = lead, .text = text, .heading = heading, .box = !heading};
    }
}

static const struct lumber_plan *boards_of(const struct maker *m, const struct plan_stack *stack) {
    return &m->e->lumber.buys[stack->buy].plan;
}

static const struct sheets_plan *sheets_of(const struct maker *m, const struct plan_stack *stack) {
    return &m->e->sheets.buys[stack->buy].plan;
}

static void list_fetch(struct maker *m, const struct plan_stack *stack) {
    const size_t stocks =
        stack->sheet ? sheets_of(m, stack)->job.stock_count : boards_of(m, stack)->job.stock_count;
    const struct cut_stock *const sizes =
        stack->sheet ? sheets_of(m, stack)->job.stocks : boards_of(m, stack)->job.stocks;
    for (size_t s = 0; s < stocks; s++) {
        size_t count = 0;
        for (size_t g = 0; g < stack->group_count; g++) {
            count += stock_of(m->e, stack, g) == s ? stack->groups[g].copies : 0;
        }
        const char *const noun = noun_of(m->e, stack, s);
        if (count > 0) {
            add(m, pool_words(m->pool, "%zu", count),
                pool_words(m->pool, "%s%s of %s, %s", noun, count == 1 ? "" : "s",
                           plan_stack_name(m->pool, m->e, stack),
                           plan_show_size(m->e, sizes[s].width, sizes[s].length).text),
                false);
        }
    }
}

/* Boards first to last, which are behind each other, as the next of a list of them. */
static const char *join_boards(const struct maker *m, const char *words, size_t first,
                               size_t last) {
    const char *const comma = words[0] == '\0' ? "" : ", ";
    return first == last ? pool_words(m->pool, "%s%s%zu", words, comma, first)
                         : pool_words(m->pool, "%s%s%zu%s%zu", words, comma, first,
                                      last == first + 1 ? ", " : " to ", last);
}

struct strip {
    int64_t width;
    size_t group;
};

static int by_width(const void *a, const void *b) {
    const struct strip *const x = a;
    const struct strip *const y = b;
    const int across = order_by_number(y->width, x->width);
    return across != 0 ? across : order_by_number((int64_t)x->group, (int64_t)y->group);
}

/* The boards that strips from `from` to `end` - 1, all of a width, are in; *all: how many strips.
 */
static const char *boards_with(const struct maker *m, const struct plan_stack *stack,
                               const struct strip *strips, size_t count, size_t *all) {
    const char *words = "";
    size_t first = 0;
    size_t last = 0;
    *all = 0;
    for (size_t i = 0; i < count; i++) {
        const struct alike *const group = &stack->groups[strips[i].group];
        *all += group->copies;
        if (group->number > last + 1 && last > 0) {
            words = join_boards(m, words, first, last);
        }
        first = last == 0 || group->number > last + 1 ? group->number : first;
        last = group->number + group->copies - 1;
    }
    return join_boards(m, words, first, last);
}

static void list_strips(struct maker *m, const struct plan_stack *stack) {
    const struct lumber_plan *const p = boards_of(m, stack);
    struct strip *const strips = pool_take(m->pool, p->plan->strip_count + 1, sizeof *strips);
    const char *const noun = p->job.crosscut_first ? "segment" : "strip";
    size_t count = 0;
    for (size_t g = 0; strips != NULL && g < stack->group_count; g++) {
        const struct board_use *const use = &p->plan->boards[stack->groups[g].first];
        for (size_t i = 0; i < use->count; i++) {
            strips[count++] = (struct strip){p->plan->strips[use->first + i].width, g};
        }
    }
    if (strips == NULL) {
        return;
    }
    qsort(strips, count, sizeof *strips, by_width);
    add(m, "", plan_stack_name(m->pool, m->e, stack), true);
    for (size_t i = 0, end; i < count; i = end) {
        size_t all = 0;
        for (end = i; end < count && strips[end].width == strips[i].width; end++) {
        }
        const char *const boards = boards_with(m, stack, &strips[i], end - i, &all);
        const bool one =
            strips[i].group == strips[end - 1].group && stack->groups[strips[i].group].copies == 1;
        add(m, pool_words(m->pool, "%s", plan_show(m->e, strips[i].width).text),
            pool_words(m->pool, "%zu %s%s: board%s %s", all, noun, all == 1 ? "" : "s",
                       one ? "" : "s", boards),
            false);
    }
}

static void list_parts(struct maker *m, const struct plan_stack *stack) {
    size_t count = 0;
    const struct cut_item *const items = items_of(m->e, stack, &count);
    const struct ranked *const list = rank(m->pool, items, count);
    add(m, "", plan_stack_name(m->pool, m->e, stack), true);
    for (size_t i = 0; list != NULL && i < count; i++) {
        const struct cut_item *const item = &items[list[i].item];
        if (item->demand > 0) {
            add(m, pool_words(m->pool, "%s", plan_show(m->e, item->length).text),
                pool_words(
                    m->pool, "%s wide: %s", plan_show(m->e, item->width).text,
                    plan_part_words(m->pool, m->e, stack, list[i].item, (size_t)item->demand)),
                false);
        }
    }
}

static void add_kept(struct maker *m, const struct plan_stack *stack, size_t group, int64_t across,
                     int64_t along) {
    const struct alike *const alike = &stack->groups[group];
    const char *const times =
        alike->copies == 1 ? "" : pool_words(m->pool, "%zu x ", alike->copies);
    add(m, pool_words(m->pool, "%s%s", times, plan_show_left(m->e, across, along).text),
        plan_group_words(m->pool, m->e, stack, group), false);
}

static bool list_kept(struct maker *m, const struct plan_stack *stack) {
    bool held = true;
    for (size_t g = 0; held && g < stack->group_count; g++) {
        const size_t first = stack->groups[g].first;
        if (stack->sheet) {
            const struct sheets_plan *const p = sheets_of(m, stack);
            const struct sheet_sheet *const sheet = &p->plan->sheets[first];
            for (size_t i = 0; i < sheet->node_count; i++) {
                const struct sheet_node *const n = &p->plan->nodes[sheet->first_node + i];
                if (n->use == SHEET_OFFCUT && sheet_keeps(p->keep, n->length, n->width)) {
                    add_kept(m, stack, g, n->width, n->length);
                }
            }
            continue;
        }
        const struct lumber_plan *const p = boards_of(m, stack);
        struct board_layout l = {0};
        held = board_layout_make(&l, &p->job, p->plan, first, p->keep);
        for (size_t i = 0; held && i < l.offcut_count; i++) {
            if (l.offcuts[i].keep) {
                add_kept(m, stack, g, l.offcuts[i].box.width, l.offcuts[i].box.length);
            }
        }
        board_layout_clear(&l);
    }
    return held;
}

/* Offcuts of all plans, at most: one a strip or part of a board and one more, one a node of a
 * sheet. */
static size_t most_kept(const struct maker *m, const struct plan_stack *stack) {
    if (stack->sheet) {
        return sheets_of(m, stack)->plan->node_count;
    }
    const struct board_plan *const plan = boards_of(m, stack)->plan;
    return plan->strip_count + plan->piece_count + 2 * plan->board_count;
}

bool plan_cover_make(struct plan_cover *cover, struct pool *pool, const struct estimate *e,
                     const struct plan_stack *stacks, size_t count) {
    struct maker m = {.pool = pool, .e = e};
    size_t fetch = 0;
    size_t strips = 0;
    size_t parts = 0;
    size_t kept = 0;
    bool segments = false;
    bool held = true;
    for (size_t i = 0; i < count; i++) {
        size_t items = 0;
        (void)items_of(e, &stacks[i], &items);
        const bool sheet = stacks[i].sheet;
        fetch += sheet ? sheets_of(&m, &stacks[i])->job.stock_count
                       : boards_of(&m, &stacks[i])->job.stock_count;
        strips += sheet ? 0 : boards_of(&m, &stacks[i])->plan->strip_count + 1;
        parts += items + 1;
        kept += most_kept(&m, &stacks[i]);
        segments = segments || (!sheet && boards_of(&m, &stacks[i])->job.crosscut_first);
    }
    *cover = (struct plan_cover){0};
    held = open_list(&m, &cover->lists[0], "To fetch", fetch);
    for (size_t i = 0; held && i < count; i++) {
        list_fetch(&m, &stacks[i]);
    }
    held =
        held &&
        open_list(&m, &cover->lists[1],
                  segments ? "Segments to crosscut, by length" : "Strips to rip, by width", strips);
    for (size_t i = 0; held && i < count; i++) {
        if (!stacks[i].sheet) {
            list_strips(&m, &stacks[i]);
        }
    }
    held = held && open_list(&m, &cover->lists[2], "Parts by number, longest stop first", parts);
    for (size_t i = 0; held && i < count; i++) {
        list_parts(&m, &stacks[i]);
    }
    held = held && open_list(&m, &cover->lists[3], "Offcuts to keep", kept);
    for (size_t i = 0; held && i < count; i++) {
        held = list_kept(&m, &stacks[i]);
    }
    return held && !pool_failed(pool);
}

const char *plan_job_words(struct pool *pool, const struct estimate *e) {
    const struct job *const job = e->job;
    const char *const agreed = show_agreed(pool, e);
    return pool_words(pool, "%s%s%s, %s%s%s", text_or_empty(job->number.s),
                      job->number.s == NULL ? "" : ", ", job->date.s, estimate_name(e),
                      agreed == NULL ? "" : "; agreed: ", text_or_empty(agreed));
}

const char *plan_legend(struct pool *pool, const struct estimate *e,
                        const struct plan_stack *stacks) {
    const int64_t kerf = stacks[0].sheet ? e->sheets.buys[stacks[0].buy].plan.job.kerf
                                         : e->lumber.buys[stacks[0].buy].plan.job.kerf;
    return pool_words(
        pool,
        "In the drawings, numbers in rings are cuts, in their order; numbers with # are parts, as "
        "in the list of parts. Black: kerf of %s. Gray and dashed: left over. Crossed: trimmed "
        "off. Hatched: kept for defects, wherever they are. Boards are drawn wider than they are "
        "long, with the grain along them; small parts are drawn larger.",
        plan_show(e, kerf).text);
}
