/* SPDX-License-Identifier: MIT */
#include "report/plan/plan_ruler.h"

#include <stdlib.h>

struct ruler ruler_make(struct pool *pool, size_t stretches) {
    struct ruler r = {.marks = pool_take(pool, 2 * stretches + 2, sizeof *r.marks)};
    r.room = r.marks == NULL ? 0 : 2 * stretches + 2;
    return r;
}

/* The order of marks: by size, of equal ones that with room first. */
static int by_size(const void *a, const void *b) {
    const struct ruler_mark *const x = a;
    const struct ruler_mark *const y = b;
    if (x->at != y->at) {
        return x->at < y->at ? -1 : 1;
    }
    return x->least > y->least ? -1 : (x->least < y->least ? 1 : 0);
}

void ruler_add(struct ruler *r, int64_t from, int64_t to, double least) {
    if (r->count + 2 <= r->room && from < to) {
        r->marks[r->count++] = (struct ruler_mark){.at = from, .least = least};
        r->marks[r->count++] = (struct ruler_mark){.at = to};
    }
}

static void order(struct ruler *r) {
    size_t kept = 0;
    if (r->count > 0) {
        qsort(r->marks, r->count, sizeof *r->marks, by_size);
    }
    for (size_t i = 0; i < r->count; i++) {
        if (kept == 0 || r->marks[kept - 1].at != r->marks[i].at) {
            r->marks[kept++] = r->marks[i];
        }
    }
    r->count = kept;
}

double ruler_least(struct ruler *r) {
    double least = 0;
    order(r);
    for (size_t i = 0; i + 1 < r->count; i++) {
        least += r->marks[i].least;
    }
    return least;
}

/* Points by a size for the stretches that need no more than their share; *fixed: what the others
 * take. Those only become more, so that it ends. */
static double share(const struct ruler *r, double room, double squeeze) {
    double scale = 0;
    for (size_t pass = 0; pass <= r->count; pass++) {
        double left = room;
        double sizes = 0;
        for (size_t i = 0; i + 1 < r->count; i++) {
            const double size = (double)(r->marks[i + 1].at - r->marks[i].at);
            const double least = r->marks[i].least * squeeze;
            const bool small = pass > 0 && size * scale < least;
            left -= small ? least : 0;
            sizes += small ? 0 : size;
        }
        const double next = sizes > 0 && left > 0 ? left / sizes : 0;
        if (pass > 0 && next >= scale) {
            break;
        }
        scale = next;
    }
    return scale;
}

void ruler_lay(struct ruler *r, double from, double to) {
    const double needed = ruler_least(r);
    const double squeeze = needed > to - from ? (to - from) / needed : 1;
    const double scale = share(r, to - from, squeeze);
    double place = from;
    for (size_t i = 0; i < r->count; i++) {
        r->marks[i].place = place;
        if (i + 1 < r->count) {
            const double wide = (double)(r->marks[i + 1].at - r->marks[i].at) * scale;
            const double least = r->marks[i].least * squeeze;
            place += wide > least ? wide : least;
        }
    }
}

double ruler_place(const struct ruler *r, int64_t size) {
    if (r->count == 0) {
        return 0;
    }
    size_t i = 0;
    while (i + 2 < r->count && r->marks[i + 1].at <= size) {
        i++;
    }
    if (i + 1 >= r->count) {
        return r->marks[i].place;
    }
    const struct ruler_mark *const a = &r->marks[i];
    const struct ruler_mark *const b = &r->marks[i + 1];
    return a->place + (b->place - a->place) * (double)(size - a->at) / (double)(b->at - a->at);
}
