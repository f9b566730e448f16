/* SPDX-License-Identifier: MIT */
/* The jobs are a list; whoever is free takes the next of it. Threads of POSIX: what looks for races
 * does not know those of C. */
#include "cut/ahead/plan_ahead.h"

#include "base/pool.h"

#include <pthread.h>
#include <signal.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <unistd.h>

/* More threads than any job has materials; what a machine has beyond them would be idle. */
enum { MOST_THREADS = 16 };

/* A job and what came of it. Its stocks and items are copies of its own. */
struct task {
    bool of_sheets;
    struct board_job boards;
    struct cut_job sheets;
    struct offcut_rule keep;
    int64_t effort;
    enum cut_status status;
    bool given; /* its plan has an owner */
    struct board_plan *board_plan;
    struct sheet_plan *sheet_plan;
};

struct plan_ahead {
    struct pool pool;
    struct task *tasks;
    size_t count, room;
    bool made;
    atomic_size_t next; /* the task that is taken next */
};

struct plan_ahead *plan_ahead_new(void) {
    struct plan_ahead *const ahead = calloc(1, sizeof *ahead);
    if (ahead != NULL) {
        pool_init(&ahead->pool);
    }
    return ahead;
}

void plan_ahead_free(struct plan_ahead *ahead) {
    if (ahead == NULL) {
        return;
    }
    for (size_t i = 0; i < ahead->count; i++) {
        if (!ahead->tasks[i].given) {
            board_plan_free(ahead->tasks[i].board_plan);
            sheet_plan_free(ahead->tasks[i].sheet_plan);
        }
    }
    free(ahead->tasks);
    pool_clear(&ahead->pool);
    free(ahead);
}

/* --- making ----------------------------------------------------------------------------------- */

static void make(struct task *t) {
    t->status = t->of_sheets ? sheet_plan_make(&t->sheets, t->keep, t->effort, &t->sheet_plan)
                             : board_plan_make(&t->boards, t->effort, &t->board_plan);
}

static void *make_all(void *argument) {
    struct plan_ahead *const ahead = argument;
    for (size_t i = 0; (i = atomic_fetch_add(&ahead->next, 1)) < ahead->count;) {
        make(&ahead->tasks[i]);
    }
    return NULL;
}

void plan_ahead_make(struct plan_ahead *ahead, size_t threads) {
    pthread_t others[MOST_THREADS];
    size_t begun = 0;
    sigset_t all;
    sigset_t before;
    const size_t least = threads < ahead->count ? threads : ahead->count;
    const size_t wanted = least < MOST_THREADS ? least : MOST_THREADS;
    ahead->made = true;
    (void)sigfillset(&all); /* signals are for the thread that writes the files */
    (void)pthread_sigmask(SIG_SETMASK, &all, &before);
    while (begun + 1 < wanted && pthread_create(&others[begun], NULL, make_all, ahead) == 0) {
        begun++;
    }
    (void)pthread_sigmask(SIG_SETMASK, &before, NULL);
    (void)make_all(ahead);
    for (size_t i = 0; i < begun; i++) {
        (void)pthread_join(others[i], NULL);
    }
}

size_t plan_ahead_threads(void) {
    const long count = sysconf(_SC_NPROCESSORS_ONLN);
    return count > 1 ? (size_t)count : 1;
}

/* --- gathering and giving --------------------------------------------------------------------- */

static enum cut_status gather(struct plan_ahead *ahead, const struct task *task) {
    bool failed = pool_failed(&ahead->pool);
    ahead->tasks =
        array_grow(ahead->tasks, &ahead->room, ahead->count + 1, sizeof *ahead->tasks, &failed);
    if (failed) {
        return CUT_NO_MEMORY;
    }
    ahead->tasks[ahead->count++] = *task;
    return CUT_SHORT;
}

static bool same_stocks(const struct cut_stock *a, const struct cut_stock *b, size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (a[i].length != b[i].length || a[i].width != b[i].width || a[i].price != b[i].price ||
            a[i].copies != b[i].copies) {
            return false;
        }
    }
    return true;
}

static bool same_items(const struct cut_item *a, const struct cut_item *b, size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (a[i].length != b[i].length || a[i].width != b[i].width || a[i].demand != b[i].demand ||
            a[i].turn != b[i].turn) {
            return false;
        }
    }
    return true;
}

static bool same_boards(const struct board_job *a, const struct board_job *b) {
    return a->kerf == b->kerf && a->end_trim == b->end_trim && a->edge == b->edge &&
           a->defects == b->defects && a->crosscut_first == b->crosscut_first &&
           a->stock_count == b->stock_count && a->sawn_count == b->sawn_count &&
           a->item_count == b->item_count && same_stocks(a->stocks, b->stocks, a->stock_count) &&
           same_items(a->items, b->items, a->item_count);
}

static bool same_sheets(const struct task *a, const struct task *b) {
    const struct cut_job *const m = &a->sheets;
    const struct cut_job *const n = &b->sheets;
    return m->kerf == n->kerf && m->trim == n->trim && m->stock_count == n->stock_count &&
           m->sawn_count == n->sawn_count && m->item_count == n->item_count &&
           a->keep.length == b->keep.length && a->keep.board_width == b->keep.board_width &&
           a->keep.sheet_width == b->keep.sheet_width &&
           same_stocks(m->stocks, n->stocks, m->stock_count) &&
           same_items(m->items, n->items, m->item_count);
}

/* The first equal one that has no owner yet; NULL: there is none. */
static struct task *find(struct plan_ahead *ahead, const struct task *task) {
    for (size_t i = 0; ahead != NULL && i < ahead->count; i++) {
        struct task *const t = &ahead->tasks[i];
        if (!t->given && t->of_sheets == task->of_sheets && t->effort == task->effort &&
            (t->of_sheets ? same_sheets(t, task) : same_boards(&t->boards, &task->boards))) {
            return t;
        }
    }
    return NULL;
}

/* Gives away what was made of an equal job, or makes it now. */
static void answer(struct plan_ahead *ahead, struct task *task) {
    struct task *const known = find(ahead, task);
    if (known == NULL) {
        make(task);
        return;
    }
    known->given = true;
    *task = *known;
}

enum cut_status plan_ahead_boards(struct plan_ahead *ahead, const struct board_job *job,
                                  int64_t effort, struct board_plan **plan) {
    struct task task = {.boards = *job, .effort = effort};
    *plan = NULL;
    if (ahead == NULL || ahead->made) {
        answer(ahead, &task);
        *plan = task.board_plan;
        return task.status;
    }
    task.boards.stocks =
        pool_copy(&ahead->pool, job->stocks, job->stock_count * sizeof *job->stocks);
    task.boards.items = pool_copy(&ahead->pool, job->items, job->item_count * sizeof *job->items);
    return gather(ahead, &task);
}

enum cut_status plan_ahead_sheets(struct plan_ahead *ahead, const struct cut_job *job,
                                  struct offcut_rule keep, int64_t effort,
                                  struct sheet_plan **plan) {
    struct task task = {.of_sheets = true, .sheets = *job, .keep = keep, .effort = effort};
    *plan = NULL;
    if (ahead == NULL || ahead->made) {
        answer(ahead, &task);
        *plan = task.sheet_plan;
        return task.status;
    }
    task.sheets.stocks =
        pool_copy(&ahead->pool, job->stocks, job->stock_count * sizeof *job->stocks);
    task.sheets.items = pool_copy(&ahead->pool, job->items, job->item_count * sizeof *job->items);
    return gather(ahead, &task);
}
