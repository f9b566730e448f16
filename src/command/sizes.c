/* SPDX-License-Identifier: MIT */
#include "command/sizes.h"

#include "base/order.h"
#include "base/text.h"
#include "command/work.h"
#include "read/job/style_row.h"

#include <stdlib.h>
#include <string.h>

/* So many multiples are taken of the job's own sizes. */
#define MOST_OWN 4

/* --- styles --- */

static enum status no_such_style(const struct work *work, const char *word, struct pool *pool,
                                 struct streams streams) {
    const struct rates *const rates = &work->rates;
    const char **const names = pool_take(pool, rates->style_count, sizeof *names);
    const char *all = "";
    if (names == NULL) {
        return command_out_of_memory(streams);
    }
    for (size_t i = 0; i < rates->style_count; i++) {
        names[i] = rates->styles[i].name.s;
        all = pool_words(pool, "%s%s'%s'", all, i == 0 ? "" : ", ", names[i]);
    }
    const char *const near = text_nearest(word, names, rates->style_count);
    if (near != NULL) {
        text_print(streams.err, "doorcost: the rates have no [door %s]; did you mean '%s'?\n", word,
                   near);
    } else {
        text_print(streams.err, "doorcost: the rates have no [door %s]; they have %s\n", word, all);
    }
    return STATUS_USE;
}

static enum status read_styles(struct sizes *sizes, const struct request *request,
                               const struct work *work, struct pool *pool, struct streams streams) {
    for (size_t w = 0; w < request->word_count; w++) {
        size_t at = 0;
        while (at < work->rates.style_count &&
               !text_same(work->rates.styles[at].name.s, request->words[w])) {
            at++;
        }
        if (at == work->rates.style_count) {
            return no_such_style(work, request->words[w], pool, streams);
        }
        bool old = false;
        for (size_t s = 0; s < sizes->style_count; s++) {
            old = old || sizes->styles[s] == (int32_t)at;
        }
        if (!old) {
            sizes->styles[sizes->style_count++] = (int32_t)at;
        }
    }
    return STATUS_DONE;
}

/* Doors of a style that the job has, or all that it has of that style: fronts and panels too. */
static int64_t doors_of(const struct estimate *e, int32_t style, bool all) {
    int64_t count = 0;
    for (size_t d = 0; d < e->doors.count; d++) {
        const struct door *const door = &e->doors.doors[d];
        if (door->construction->style.index == style &&
            (all || door->row->use.choice == USE_DOOR)) {
            count += door->leaves * door->row->count.amount;
        }
    }
    return count;
}

/* The style of most doors, the first in the rates of several. */
static int32_t most_used(const struct work *work) {
    int32_t best = 0;
    int64_t most = 0;
    for (int all = 0; all <= 1 && most == 0; all++) {
        for (size_t s = 0; s < work->rates.style_count; s++) {
            const int64_t count = doors_of(&work->estimates[0], (int32_t)s, all == 1);
            if (count > most) {
                most = count;
                best = (int32_t)s;
            }
        }
    }
    return best;
}

/* --- lists --- */

static int ascending(const void *x, const void *y) {
    return order_by_number(*(const int64_t *)x, *(const int64_t *)y);
}

/* Puts them in order, each once; how many there are. */
static size_t put_in_order(int64_t *list, size_t count) {
    size_t kept = 0;
    qsort(list, count, sizeof *list, ascending);
    for (size_t i = 0; i < count; i++) {
        if (i == 0 || list[i] != list[i - 1]) {
            list[kept++] = list[i];
        }
    }
    return kept;
}

/* Where an item of a list goes; false: it is none. */
typedef bool read_item(const char *text, enum length_unit unit, int64_t *value);

static bool read_side(const char *text, enum length_unit unit, int64_t *value) {
    length side;
    if (length_read(text, unit, &side) != LENGTH_OK || !style_row_side_fits(side)) {
        return false;
    }
    *value = side;
    return true;
}

static bool read_count(const char *text, enum length_unit unit, int64_t *value) {
    uint8_t decimals;
    (void)unit;
    return text_decimal(text, strlen(text), value, &decimals) && decimals == 0 &&
           style_row_count_fits(*value);
}

/* A list that an option takes. */
struct list {
    const char *option, *expected;
    read_item *read;
    size_t most;
};

static const struct list sides_in[] = {
    {"--widths", "widths from 1 to 120 in with commas between, as in 12,15 1/2,18", read_side,
     MOST_SIZES},
    {"--heights", "heights from 1 to 120 in with commas between, as in 24,30,36", read_side,
     MOST_SIZES},
};
static const struct list sides_mm[] = {
    {"--widths", "widths from 25.4 to 3048 mm with commas between, as in 300,400,500", read_side,
     MOST_SIZES},
    {"--heights", "heights from 25.4 to 3048 mm with commas between, as in 600,700,900", read_side,
     MOST_SIZES},
};
static const struct list counts_list = {
    "--counts", "counts from 1 to 9999 with commas between, as in 1,5,20", read_count, MOST_COUNTS};

/* Reads `12, 15 1/2,18`. *read_to: room for what the pool holds. */
static enum status read_list(const struct list *list, const char *text, enum length_unit unit,
                             int64_t **items, size_t *count, struct pool *pool,
                             struct streams streams) {
    *items = pool_take(pool, list->most, sizeof **items);
    if (*items == NULL) {
        return command_out_of_memory(streams);
    }
    for (const char *from = text; from != NULL;) {
        const size_t size = strcspn(from, ",");
        const char *const end = text_trim_end(from, from + size);
        const char *const begin = text_skip_blanks(from);
        const char *const item = pool_text(pool, begin, end > begin ? (size_t)(end - begin) : 0);
        if (item == NULL) {
            return command_out_of_memory(streams);
        }
        if (*count == list->most) {
            text_print(streams.err, "doorcost: %s has more than %zu items; take fewer\n",
                       list->option, list->most);
            return STATUS_USE;
        }
        if (!list->read(item, unit, &(*items)[*count])) {
            text_print(streams.err, "doorcost: '%s' is no item of %s; expected %s\n", item,
                       list->option, list->expected);
            return STATUS_USE;
        }
        (*count)++;
        from = from[size] == '\0' ? NULL : from + size + 1;
    }
    *count = put_in_order(*items, *count);
    return STATUS_DONE;
}

/* --- the job's own sizes --- */

/* The least and the largest side of doors of one leaf, as measured: of the styles asked for, or of
 * any where these have none. false: there are none. */
static bool find_ends(const struct sizes *sizes, const struct estimate *e, bool width, bool any,
                      length ends[2]) {
    bool found = false;
    for (size_t d = 0; d < e->doors.count; d++) {
        const struct door *const door = &e->doors.doors[d];
        const length side = width ? door->row->width.amount : door->row->height.amount;
        bool wanted = any;
        for (size_t s = 0; s < sizes->style_count; s++) {
            wanted = wanted || sizes->styles[s] == door->construction->style.index;
        }
        if (!wanted || door->row->use.choice != USE_DOOR || door->row->leaves.amount != 1) {
            continue;
        }
        ends[0] = !found || side < ends[0] ? side : ends[0];
        ends[1] = !found || side > ends[1] ? side : ends[1];
        found = true;
    }
    return found;
}

/* Multiples of the trade's step that hold all of these sizes; of twice the step, three times and so
 * on where there were too many. */
static bool own_sides(const struct sizes *sizes, const struct work *work, bool width,
                      int64_t **items, size_t *count, struct pool *pool) {
    const bool metric = work->job.unit == LENGTH_MM;
    const length step = metric ? 100 * NM_PER_MM : 3 * NM_PER_INCH;
    const struct estimate *const e = &work->estimates[0];
    length ends[2] = {width ? 4 * step : 8 * step, width ? 8 * step : 12 * step};
    if (!find_ends(sizes, e, width, false, ends)) {
        (void)find_ends(sizes, e, width, true, ends);
    }
    const int64_t low = ends[0] < step ? 1 : ends[0] / step;
    const int64_t high = (ends[1] + step - 1) / step;
    int64_t by = 1;
    while (high / by - (low - 1) / by > MOST_OWN) {
        by++;
    }
    *items = pool_take(pool, MOST_OWN, sizeof **items);
    for (int64_t at = (low + by - 1) / by * by; *items != NULL && at <= high; at += by) {
        if (style_row_side_fits(at * step)) {
            (*items)[(*count)++] = at * step;
        }
    }
    return *items != NULL;
}

static enum status read_sides(struct sizes *sizes, const struct request *request,
                              const struct work *work, bool width, struct pool *pool,
                              struct streams streams) {
    int64_t **const items = width ? &sizes->widths : &sizes->heights;
    size_t *const count = width ? &sizes->width_count : &sizes->height_count;
    const char *const text = width ? request->widths : request->heights;
    if (text == NULL) {
        return own_sides(sizes, work, width, items, count, pool) ? STATUS_DONE
                                                                 : command_out_of_memory(streams);
    }
    const struct list *const lists = work->job.unit == LENGTH_MM ? sides_mm : sides_in;
    return read_list(&lists[width ? 0 : 1], text, work->job.unit, items, count, pool, streams);
}

enum status sizes_read(struct sizes *sizes, const struct request *request, const struct work *work,
                       struct pool *pool, struct streams streams) {
    *sizes = (struct sizes){0};
    sizes->styles = pool_take(pool, request->word_count + 1, sizeof *sizes->styles);
    if (sizes->styles == NULL) {
        return command_out_of_memory(streams);
    }
    enum status status = read_styles(sizes, request, work, pool, streams);
    if (status == STATUS_DONE && sizes->style_count == 0) {
        sizes->styles[sizes->style_count++] = most_used(work);
    }
    for (int width = 1; status == STATUS_DONE && width >= 0; width--) {
        status = read_sides(sizes, request, work, width == 1, pool, streams);
    }
    if (status == STATUS_DONE) {
        status = read_list(&counts_list, request->counts == NULL ? "1,2,5,10,50" : request->counts,
                           work->job.unit, &sizes->counts, &sizes->count_count, pool, streams);
    }
    return status;
}
