/* SPDX-License-Identifier: MIT */
/* All values are integers: each function is scaled by its own whole number. Functions are made from
 * the sizes that occur, as only there their steps can matter. */
#include "cut/sheet/sheet_bound.h"

#include "cut/common/cut_cover.h"

#include <stdlib.h>

/* Functions tried for each direction. */
#define FUNCTIONS_MAX ((size_t)120)

enum function_form {
    FORM_PLAIN, /* the size itself */
    FORM_CLEAR, /* below k nothing, above whole - k the whole, between the size */
    FORM_COUNT, /* how many k fit, what is above half as what it leaves */
    FORM_LADDER /* rounded to k + 1 steps, down but for exact ones */
};

struct function {
    enum function_form form;
    int64_t step;
};

/* Value of a size, 0 to whole. */
static int64_t apply(struct function function, int64_t whole, int64_t size) {
    int64_t k = function.step;
    switch (function.form) {
    case FORM_CLEAR:
        if (size > whole - k) {
            return whole;
        }
        return size < k ? 0 : size;
    case FORM_COUNT:
        if (2 * size > whole) {
            return 2 * (whole / k - (whole - size) / k);
        }
        return 2 * size == whole ? whole / k : 2 * (size / k);
    case FORM_LADDER: {
        int128 scaled = (int128)size * (k + 1);
        return scaled % whole == 0 ? size * k : (int64_t)(scaled / whole) * whole;
    }
    default:
        return size;
    }
}

/* The functions worth trying for one direction. */
static size_t list_functions(const struct cut_model *model, int64_t whole, bool along,
                             struct function *functions) {
    size_t count = 0;
    functions[count++] = (struct function){FORM_PLAIN, 0};
    for (int64_t k = 1; k <= 6; k++) {
        functions[count++] = (struct function){FORM_LADDER, k};
    }
    for (size_t i = 0; i < 2 * model->kind_count && count + 3 < FUNCTIONS_MAX; i++) {
        const struct cut_kind *kind = &model->kinds[i / 2];
        if (i % 2 == 1 && !kind->turn) {
            continue;
        }
        int64_t size = along == (i % 2 == 0) ? kind->length : kind->width;
        bool listed = size > whole;
        for (size_t f = 0; f < count && !listed; f++) {
            listed = functions[f].form == FORM_COUNT && functions[f].step == size;
        }
        if (listed) {
            continue;
        }
        functions[count++] = (struct function){FORM_COUNT, size};
        if (2 * size <= whole) {
            functions[count++] = (struct function){FORM_CLEAR, size};
        }
        /* One more than a size: that size itself no longer counts. */
        functions[count++] = (struct function){FORM_COUNT, size + 1};
    }
    return count;
}

/* Values of all kinds, as they lie and turned, for one function. */
static void list_values(const struct cut_model *model, struct function function, int64_t whole,
                        bool along, int64_t *straight, int64_t *turned) {
    for (size_t k = 0; k < model->kind_count; k++) {
        const struct cut_kind *kind = &model->kinds[k];
        int64_t size = along ? kind->length : kind->width;
        int64_t other = along ? kind->width : kind->length;
        straight[k] = size <= whole ? apply(function, whole, size) : -1;
        turned[k] = kind->turn && other <= whole ? apply(function, whole, other) : -1;
    }
}

/* A kind's least value, of the ways it may lie. */
static int128 least_value(int64_t length, int64_t width, int64_t turned_length,
                          int64_t turned_width) {
    int128 value = -1;
    if (length >= 0 && width >= 0) {
        value = (int128)length * width;
    }
    if (turned_length >= 0 && turned_width >= 0) {
        int128 turned = (int128)turned_length * turned_width;
        value = value < 0 || turned < value ? turned : value;
    }
    return value < 0 ? 0 : value;
}

struct bounding {
    const struct cut_model *model;
    int64_t length, width; /* of the largest bin, in each direction by itself */
    struct function along[FUNCTIONS_MAX], across[FUNCTIONS_MAX];
    size_t along_count, across_count;
    int64_t *values; /* for each function, along first: all kinds straight, then turned */
};

/* Values of all kinds for one function. */
static const int64_t *values_of(const struct bounding *bounding, size_t function) {
    return bounding->values + 2 * bounding->model->kind_count * function;
}

static bool list_all_values(struct bounding *bounding) {
    size_t kinds = bounding->model->kind_count;
    size_t functions = bounding->along_count + bounding->across_count;
    bounding->values = calloc(2 * kinds * functions + 1, sizeof *bounding->values);
    if (bounding->values == NULL) {
        return false;
    }
    for (size_t f = 0; f < functions; f++) {
        bool along = f < bounding->along_count;
        int64_t *values = bounding->values + 2 * kinds * f;
        list_values(bounding->model,
                    along ? bounding->along[f] : bounding->across[f - bounding->along_count],
                    along ? bounding->length : bounding->width, along, values, values + kinds);
    }
    return true;
}

/* The bound of one pair of functions, if it is above *bound. */
static bool try_pair(const struct bounding *bounding, size_t i, size_t j, int64_t *bound) {
    const struct cut_model *model = bounding->model;
    size_t kinds = model->kind_count;
    const int64_t *f = values_of(bounding, i);
    const int64_t *g = values_of(bounding, bounding->along_count + j);
    int128 capacity[CUT_STOCKS_MAX];
    int128 need = 0;
    for (size_t k = 0; k < kinds; k++) {
        need += least_value(f[k], g[k], f[kinds + k], g[kinds + k]) * model->kinds[k].demand;
    }
    for (size_t r = 0; r < model->bin_count; r++) {
        const struct cut_bin *bin = &model->bins[r];
        capacity[r] = (int128)apply(bounding->along[i], bounding->length, bin->length) *
                      apply(bounding->across[j], bounding->width, bin->width);
    }
    /* Where the bound already buys more, listing sums is of no use. */
    if ((double)need < cut_cover_most(model, capacity, *bound) * (1.0 - 1e-9)) {
        return true;
    }
    int64_t least = 0;
    if (!cut_cover_least(model, capacity, need, *bound, &least)) {
        return false;
    }
    *bound = least > *bound ? least : *bound;
    return true;
}

static bool try_pairs(struct bounding *bounding, int64_t limit, int64_t *spent, int64_t *bound) {
    int64_t pair_work = 3 * (int64_t)bounding->model->kind_count + 50;
    for (size_t i = 0; i < bounding->along_count; i++) {
        for (size_t j = 0; j < bounding->across_count; j++) {
            if (*spent > limit && i + j > 0) {
                return true;
            }
            cut_spend(spent, pair_work);
            if (!try_pair(bounding, i, j, bound)) {
                return false;
            }
        }
    }
    return true;
}

bool sheet_bound(const struct cut_model *model, int64_t limit, int64_t *spent, int64_t *bound) {
    struct bounding *bounding = calloc(1, sizeof *bounding);
    *bound = 0;
    if (bounding == NULL) {
        return false;
    }
    bounding->model = model;
    for (size_t r = 0; r < model->bin_count; r++) {
        const struct cut_bin *bin = &model->bins[r];
        bounding->length = bin->length > bounding->length ? bin->length : bounding->length;
        bounding->width = bin->width > bounding->width ? bin->width : bounding->width;
    }
    bounding->along_count = list_functions(model, bounding->length, true, bounding->along);
    bounding->across_count = list_functions(model, bounding->width, false, bounding->across);
    bool ok = list_all_values(bounding) && try_pairs(bounding, limit, spent, bound);
    free(bounding->values);
    free(bounding);
    return ok;
}
