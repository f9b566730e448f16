/* SPDX-License-Identifier: MIT */
/* Shared by the files that draw the pages of cutting plans, and by nobody else.
 *
 * A page is made of blocks: lines of words in columns, boards, sheets.  Which block stands where is
 * found once (plan_flow.c), with the same measures by which it is drawn.  All sizes on paper are
 * points. */
#ifndef DOORCOST_REPORT_PLAN_PLAN_DRAW_H
#define DOORCOST_REPORT_PLAN_PLAN_DRAW_H

#include "report/plan/plan_pages.h"
#include "report/type/text_style.h"

/* No letter is smaller: what hangs at the saw is read from a step away. */
#define SMALLEST     7.0
#define MOST_COLUMNS ((size_t)4)
/* Of words in lines. */
#define LINE_SIZE 8.0

/* A rectangle of the page. */
struct patch {
    double x, y, width, height;
};

/* What is planned of one lumber, or of one kind of sheet. */
struct plan_stack {
    bool sheet;
    size_t buy; /* in the estimate's list of lumber, or of sheets */
    const struct alike *groups;
    size_t group_count;
    const size_t *numbers; /* one an item of the planner's job: what the part is called on paper */
};

/* --- lines --- */

/* A line of a list: `lead` in a column of its own, the text beside it, broken where it is long. */
struct plan_line {
    const char *lead, *text;
    bool heading; /* bold; it does not stand at the foot of a column */
    bool box;     /* a box to tick before it */
};

/* Lines from ... to - 1 of a list in columns of equal width. */
struct plan_columns {
    const struct plan_line *lines;
    size_t from, to;
    bool rows; /* not in columns: along rows */
    size_t columns;
    double width, lead; /* of a column and of its leads */
    double height;      /* of the highest column */
};

/* How lines from `from` on stand best in `width`: in so many columns, `most` at most, that they are
 * lowest, none higher than `height`; to: the first that has no room. pool: for its work. */
struct plan_columns plan_columns_make(cairo_t *cr, struct pool *pool, const struct plan_line *lines,
                                      size_t from, size_t count, size_t most, double width,
                                      double height);
/* The same in rows, which headings begin: they stand in a column of their own, and what they head
 * beside them, as much a row as there is room for. */
struct plan_columns plan_rows_make(cairo_t *cr, const struct plan_line *lines, size_t from,
                                   size_t count, double width, double height);
/* Draws them with their upper left corner at x, y. */
void plan_columns_draw(cairo_t *cr, const struct plan_columns *columns, double x, double y);
/* A box to tick, its upper left corner at x, y. */
void plan_box(cairo_t *cr, double x, double y);

/* --- drawings --- */

/* A drawing in the making, and what its labels have to keep clear of. */
struct sketch {
    cairo_t *cr;
    const struct estimate *e;
    struct pool *pool;
    struct patch *marks; /* the numbers of cuts */
    size_t mark_count, mark_room;
    size_t unnamed; /* parts that had no room for their number */
};

enum tone {
    TONE_PART,    /* white, full line */
    TONE_OFFCUT,  /* light gray, dashed line */
    TONE_RESERVE, /* hatched */
    TONE_TRIM,    /* cross hatched */
    TONE_KERF     /* black, never too thin to be seen */
};
/* Fills a patch so. */
void sketch_fill(const struct sketch *sketch, struct patch patch, enum tone tone);

/* The number of a cut in a ring around the middle x, y; labels keep clear of it. */
void sketch_mark(struct sketch *sketch, double x, double y, size_t number);
/* The same on a cut from x, y on: `run` long, along or upright, as near to its beginning as is
 * clear of other numbers. */
void sketch_mark_on(struct sketch *sketch, double x, double y, double run, bool upright,
                    size_t number);

/* A part: its number with name and size as far as there is room, turned where that shows more. */
void sketch_part(struct sketch *sketch, struct patch patch, size_t number, const char *name,
                 const char *size);
/* Two words, or one, or none, in the same way. */
void sketch_words(struct sketch *sketch, struct patch patch, const char *top, const char *low);
/* The least room of a part that shows its number, beside the number of a cut. */
struct patch sketch_least(const struct sketch *sketch, size_t number);

/* A line with arrows at both ends and words at its middle, along or upright. */
void sketch_dimension(const struct sketch *sketch, double x, double y, double run, bool upright,
                      const char *words);
/* An arrow along the grain behind the word, from x on, y its middle; grain false: `no grain`. */
void sketch_grain(const struct sketch *sketch, double x, double y, bool grain);

/* --- boards and sheets --- */

/* How high a board is drawn. */
double board_picture_height(struct sketch *sketch, const struct plan_stack *stack, size_t group,
                            double width);
/* Draws it into the patch, of that height. false: out of memory. */
bool board_picture(struct sketch *sketch, const struct plan_stack *stack, size_t group,
                   struct patch patch) __attribute__((warn_unused_result));
/* Its cuts in words, in sketch's pool; *count: how many lines. NULL: out of memory. */
const struct plan_line *board_steps(const struct sketch *sketch, const struct plan_stack *stack,
                                    size_t group, size_t *count)
    __attribute__((warn_unused_result));

/* How large a sheet is drawn, its margins in, at most `most`. */
struct patch sheet_picture_size(struct sketch *sketch, const struct plan_stack *stack, size_t group,
                                struct patch most);
/* These two as of a board. */
bool sheet_picture(struct sketch *sketch, const struct plan_stack *stack, size_t group,
                   struct patch patch) __attribute__((warn_unused_result));
/* The cuts of a sheet in words. */
const struct plan_line *sheet_steps(const struct sketch *sketch, const struct plan_stack *stack,
                                    size_t group, size_t *count)
    __attribute__((warn_unused_result));

/* --- the whole plan --- */

/* Finds what is planned and numbers its parts, longest first. In pool; NULL: out of memory. */
struct plan_stack *plan_stacks_make(struct pool *pool, const struct estimate *e, size_t *count)
    __attribute__((warn_unused_result));

/* What the cover lists, one list after the other: what to fetch, strips, stops, what to keep. */
struct plan_cover {
    struct plan_list {
        const char *title;
        struct plan_line *lines;
        size_t count;
    } lists[4];
};
/* Makes it, in pool. false: out of memory. */
bool plan_cover_make(struct plan_cover *cover, struct pool *pool, const struct estimate *e,
                     const struct plan_stack *stacks, size_t count)
    __attribute__((warn_unused_result));

/* `0031, 2026-03-02, as listed`: which job and which of its estimates, and what the client took. In
 * pool; empty when memory is out. */
const char *plan_job_words(struct pool *pool, const struct estimate *e);
/* What drawings of these stacks, one or more, mean. In pool; empty when memory is out. */
const char *plan_legend(struct pool *pool, const struct estimate *e,
                        const struct plan_stack *stacks);

/* `poplar 4/4 boards 2 to 4`, `mdf-panel half sheet 1`. In pool; empty when memory is out. */
const char *plan_group_words(struct pool *pool, const struct estimate *e,
                             const struct plan_stack *stack, size_t group);
/* `#14 G08 stile`, for several `2 x #14 G08 stile`. In pool; empty when memory is out. */
const char *plan_part_words(struct pool *pool, const struct estimate *e,
                            const struct plan_stack *stack, size_t item, size_t pieces);

#endif
