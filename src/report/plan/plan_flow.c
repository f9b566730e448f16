/* SPDX-License-Identifier: MIT */
/* Where everything stands: the lists of the cover, then board by board and sheet by sheet down the
 * pages.  A board stays with its cuts on a page; the cuts of a sheet that fill more than one go on
 * overleaf. */
#include "report/plan/plan_flow.h"

#include "base/array.h"
#include "base/text.h"

#define TITLE       16.0
#define LIST_HEAD   11.0
#define GAP         10.0 /* between boards */
#define CLOSE       4.0  /* from a drawing to its cuts */
#define LEAST       60.0 /* of a list at the foot of a page */
#define BESIDE      175.0
#define DRAWN       0.62          /* of a page that a sheet takes at most */
#define BOOK_LINES  ((size_t)400) /* of a list in a workbook, which has so many pictures at most */
#define DRAWN_LEAST 0.4
#define SQUEEZED    0.85 /* of its height, for what is left of a page */
#define MOST_TICKS  6

struct flow_down {
    struct plan_pages *pages;
    struct sketch sketch; /* to measure with */
    double y;
    size_t page;
    bool held;
};

static struct plan_block *add(struct flow_down *f, struct plan_block block) {
    struct plan_pages *const p = f->pages;
    bool failed = false;
    p->blocks =
        array_grow(p->blocks, &p->block_room, p->block_count + 1, sizeof *p->blocks, &failed);
    if (failed) {
        f->held = false;
        return NULL;
    }
    block.page = f->page;
    block.y = f->y;
    p->blocks[p->block_count] = block;
    return &p->blocks[p->block_count++];
}

static void next_page(struct flow_down *f) {
    f->page++;
    f->y = f->pages->top;
}

static double left(const struct flow_down *f) {
    return f->pages->foot - f->y;
}

static bool at_top(const struct flow_down *f) {
    return f->y <= f->pages->top;
}

static void add_words(struct flow_down *f, const char *text, struct text_style style) {
    style.width = f->pages->inner_width;
    add(f, (struct plan_block){.kind = BLOCK_WORDS, .text = text, .style = style});
    f->y += text_measure(f->sketch.cr, text, &style).height;
}

/* Lines down the page and on the next ones, there below a heading. */
static void add_lines(struct flow_down *f, const char *title, const struct plan_line *lines,
                      size_t count, bool rows) {
    const struct text_style head = {.size = LIST_HEAD, .bold = true};
    size_t from = 0;
    while (f->held && from < count) {
        if (!at_top(f) && left(f) < LEAST) {
            next_page(f);
        }
        if (from > 0) {
            add_words(f, pool_words(&f->pages->pool, "%s (continued)", title), head);
            f->y += 2;
        }
        struct pool work;
        pool_init(&work);
        const struct plan_columns c =
            rows ? plan_rows_make(f->sketch.cr, lines, from, count, f->pages->inner_width, left(f))
                 : plan_columns_make(f->sketch.cr, &work, lines, from, count, MOST_COLUMNS,
                                     f->pages->inner_width, left(f));
        f->held = f->held && !pool_failed(&work);
        pool_clear(&work);
        add(f, (struct plan_block){.kind = BLOCK_LINES, .columns = c});
        f->y += c.height;
        from = c.to;
        if (from < count) {
            next_page(f);
        }
    }
}

/* --- the cover --- */

static void add_list(struct flow_down *f, const struct plan_list *list) {
    if (list->count == 0) {
        return;
    }
    if (!at_top(f) && left(f) < LEAST + 2 * LIST_HEAD) {
        next_page(f);
    }
    add_words(f, list->title, (struct text_style){.size = LIST_HEAD, .bold = true});
    f->y += 2;
    if (f->pages->book && list->count > BOOK_LINES) {
        add_words(
            f,
            pool_words(&f->pages->pool, "%zu lines, which 'doorcost plan -o' prints", list->count),
            (struct text_style){.size = LINE_SIZE});
        return;
    }
    add_lines(f, list->title, list->lines, list->count, false);
}

static void add_cover(struct flow_down *f) {
    struct plan_pages *const p = f->pages;
    struct pool *const pool = &p->pool;
    const struct job *const job = p->e->job;
    struct plan_cover cover;
    f->held = f->held && plan_cover_make(&cover, pool, p->e, p->stacks, p->stack_count);
    if (!f->held) {
        return;
    }
    const struct text_style title = {.size = TITLE, .bold = true};
    const struct text_style plain = {.size = LINE_SIZE + 1};
    const char *const sizes = job->unit == LENGTH_MM ? "mm" : "inches";
    if (!p->book) {
        add_words(f, pool_words(pool, "Cutting plan: %s", job->title.s), title);
    }
    add_words(f,
              pool_words(pool, "%s. Sizes in %s as they are sawn, width x length.",
                         plan_job_words(pool, p->e), sizes),
              plain);
    f->y += CLOSE;
    add_words(f, plan_legend(pool, p->e, p->stacks), (struct text_style){.size = LINE_SIZE});
    for (size_t i = 0; i < COUNT_OF(cover.lists); i++) {
        f->y += 9;
        add_list(f, &cover.lists[i]);
    }
    f->y += GAP;
}

/* --- boards and sheets --- */

static const char *head_words(const struct flow_down *f, const struct plan_stack *stack,
                              size_t group) {
    const struct estimate *const e = f->pages->e;
    struct pool *const pool = &f->pages->pool;
    const struct alike *const alike = &stack->groups[group];
    const struct cut_stock *stock = NULL;
    size_t all = 0;
    if (stack->sheet) {
        const struct sheets_plan *const p = &e->sheets.buys[stack->buy].plan;
        stock = &p->job.stocks[p->plan->sheets[alike->first].stock];
        all = p->plan->sheet_count;
    } else {
        const struct lumber_plan *const p = &e->lumber.buys[stack->buy].plan;
        stock = &p->job.stocks[p->plan->boards[alike->first].stock];
        all = p->plan->board_count;
    }
    const char *const times =
        alike->copies == 1 ? "" : pool_words(pool, ", %zu alike", alike->copies);
    return pool_words(pool, "%s of %zu, %s%s", plan_group_words(pool, e, stack, group), all,
                      plan_show_size(e, stock->width, stock->length).text, times);
}

double plan_head_indent(const struct plan_block *block) {
    const size_t copies = block->stack->groups[block->group].copies;
    return (copies <= MOST_TICKS ? (double)copies : 1) * HEAD_TICK + 2;
}

struct piece_of_stock {
    const struct plan_stack *stack;
    size_t group;
    const struct plan_line *lines;
    size_t count;
    struct patch drawn;         /* its size */
    struct plan_columns beside; /* none: the cuts stand below */
    struct plan_columns below;
};

static void add_head(struct flow_down *f, const struct piece_of_stock *u) {
    struct plan_block head = {.kind = BLOCK_HEAD, .stack = u->stack, .group = u->group};
    head.text = head_words(f, u->stack, u->group);
    head.style = (struct text_style){.size = HEAD_SIZE, .bold = true};
    head.style.width = f->pages->inner_width - plan_head_indent(&head) - GRAIN_ROOM;
    add(f, head);
    f->y += text_measure(f->sketch.cr, head.text, &head.style).height;
}

static double head_height(const struct flow_down *f, const struct piece_of_stock *u) {
    const struct plan_block head = {.stack = u->stack, .group = u->group};
    const struct text_style style = {.size = HEAD_SIZE,
                                     .bold = true,
                                     .width = f->pages->inner_width - plan_head_indent(&head) -
                                              GRAIN_ROOM};
    return text_measure(f->sketch.cr, head_words(f, u->stack, u->group), &style).height;
}

/* The height of all of it. */
static double all_height(const struct flow_down *f, const struct piece_of_stock *u) {
    const double lines = u->beside.to > 0 ? 0 : CLOSE + u->below.height;
    return head_height(f, u) + u->drawn.height + lines;
}

static void measure_sheet(struct flow_down *f, struct piece_of_stock *u, struct pool *work,
                          double most) {
    struct sketch *const s = &f->sketch;
    const double width = f->pages->inner_width;
    u->drawn =
        sheet_picture_size(s, u->stack, u->group, (struct patch){.width = width, .height = most});
    const double room = width - u->drawn.width - GAP;
    u->beside.to = 0;
    if (room >= BESIDE) {
        u->beside = plan_columns_make(s->cr, work, u->lines, 0, u->count, 1, room, u->drawn.height);
    }
    u->beside.to = u->beside.to < u->count ? 0 : u->count;
    u->below = plan_columns_make(s->cr, work, u->lines, 0, u->count, MOST_COLUMNS, width, 1e6);
}

/* A sheet is drawn smaller where that brings its cuts to the same page. */
static void measure_unit(struct flow_down *f, struct piece_of_stock *u, struct pool *work) {
    struct sketch *const s = &f->sketch;
    const double width = f->pages->inner_width;
    const double high = f->pages->foot - f->pages->top;
    if (!u->stack->sheet) {
        u->drawn.width = width;
        u->drawn.height = board_picture_height(s, u->stack, u->group, width);
        u->below = plan_rows_make(s->cr, u->lines, 0, u->count, width, 1e6);
        return;
    }
    measure_sheet(f, u, work, high * DRAWN);
    const double lower = u->drawn.height - (all_height(f, u) - high);
    if (lower < u->drawn.height && lower >= high * DRAWN_LEAST) {
        measure_sheet(f, u, work, lower);
    }
}

/* The drawing; its cuts beside it where they have room there. */
static void add_drawing(struct flow_down *f, const struct piece_of_stock *u) {
    add(f, (struct plan_block){.kind = u->stack->sheet ? BLOCK_SHEET : BLOCK_BOARD,
                               .stack = u->stack,
                               .group = u->group,
                               .patch = u->drawn});
    if (u->beside.to > 0) {
        add(f, (struct plan_block){
                   .kind = BLOCK_LINES, .columns = u->beside, .x = u->drawn.width + GAP});
    }
    f->y += u->drawn.height;
}

/* Measures a board or a sheet with its cuts; to be cleared with work. */
static bool begin_unit(struct flow_down *f, struct piece_of_stock *u, struct pool *work) {
    f->sketch.pool = &f->pages->pool;
    u->lines = u->stack->sheet ? sheet_steps(&f->sketch, u->stack, u->group, &u->count)
                               : board_steps(&f->sketch, u->stack, u->group, &u->count);
    f->sketch.pool = work;
    f->held = f->held && u->lines != NULL;
    if (f->held) {
        measure_unit(f, u, work);
    }
    return f->held;
}

static void end_unit(struct flow_down *f, struct pool *work) {
    f->held = f->held && !pool_failed(work);
    f->sketch.pool = &f->pages->pool;
    pool_clear(work);
}

/* How high the unit is; 0: out of memory. */
static double unit_height(struct flow_down *f, const struct plan_stack *stack, size_t group) {
    struct pool work;
    struct piece_of_stock u = {.stack = stack, .group = group};
    pool_init(&work);
    const double height = begin_unit(f, &u, &work) ? all_height(f, &u) : 0;
    end_unit(f, &work);
    return height;
}

/* The last but one goes to the next page where the last would stand there alone. last: how high
 * that is; 0: this is another one. */
static bool leaves_last_alone(const struct flow_down *f, double all, double last) {
    const double both = all + GAP + last;
    return last > 0 && both > left(f) && both <= f->pages->foot - f->pages->top;
}

/* Draws a sheet a little smaller where what is left of the page then has room for it; false: it
 * has not. */
static bool squeeze(struct flow_down *f, struct piece_of_stock *u, struct pool *work) {
    const struct piece_of_stock whole = *u;
    const double lower = u->drawn.height - (all_height(f, u) - left(f));
    if (!u->stack->sheet || lower < SQUEEZED * whole.drawn.height) {
        return false;
    }
    measure_sheet(f, u, work, lower);
    const bool fits = all_height(f, u) <= left(f);
    *u = fits ? *u : whole;
    return fits;
}

/* Takes a page for the unit. last: as of leaves_last_alone. */
static void take_page(struct flow_down *f, struct piece_of_stock *u, struct pool *work,
                      double last) {
    const double all = all_height(f, u);
    if (!at_top(f) &&
        (leaves_last_alone(f, all, last) || (all > left(f) && !squeeze(f, u, work)))) {
        next_page(f);
    }
}

static void add_unit(struct flow_down *f, const struct plan_stack *stack, size_t group,
                     double last) {
    struct pool work;
    struct piece_of_stock u = {.stack = stack, .group = group};
    pool_init(&work);
    if (begin_unit(f, &u, &work)) {
        take_page(f, &u, &work, last);
        const bool whole = all_height(f, &u) <= left(f);
        add_head(f, &u);
        add_drawing(f, &u);
        if (u.beside.to == 0 && whole) {
            f->y += CLOSE;
            add(f, (struct plan_block){.kind = BLOCK_LINES, .columns = u.below});
            f->y += u.below.height;
        } else if (u.beside.to == 0) {
            f->y += CLOSE;
            add_lines(f, head_words(f, stack, group), u.lines, u.count, !stack->sheet);
        }
        f->y += GAP;
    }
    end_unit(f, &work);
}

/* How high the last unit of all is where a unit is the last but one; else 0. */
static double last_height(struct flow_down *f, size_t stack, size_t group) {
    const struct plan_pages *const p = f->pages;
    const size_t rest = p->stacks[stack].group_count - group - 1;
    const struct plan_stack *const next =
        &p->stacks[stack + 1 < p->stack_count ? stack + 1 : stack];
    if (rest == 1 && stack + 1 == p->stack_count) {
        return unit_height(f, &p->stacks[stack], group + 1);
    }
    return rest == 0 && stack + 2 == p->stack_count && next->group_count == 1
               ? unit_height(f, next, 0)
               : 0;
}

/* Whether more pages were begun than are wanted. */
static bool is_full(const struct flow_down *f) {
    return f->pages->most > 0 && f->page >= f->pages->most;
}

bool plan_flow(struct plan_pages *pages, cairo_t *cr) {
    struct flow_down f = {.pages = pages, .y = pages->top, .held = true};
    f.sketch = (struct sketch){.cr = cr, .e = pages->e};
    add_cover(&f);
    for (size_t i = 0; f.held && i < pages->stack_count; i++) {
        for (size_t g = 0; f.held && !is_full(&f) && g < pages->stacks[i].group_count; g++) {
            add_unit(&f, &pages->stacks[i], g, last_height(&f, i, g));
        }
    }
    pages->more = is_full(&f);
    pages->count = pages->block_count == 0 ? 0 : pages->blocks[pages->block_count - 1].page + 1;
    if (pages->more) {
        pages->count = pages->most;
    }
    return f.held && !pool_failed(&pages->pool);
}
