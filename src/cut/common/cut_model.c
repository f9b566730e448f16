/* SPDX-License-Identifier: MIT */
/* From a job to the plain problem behind it. */
#include "cut/common/cut_model.h"

#include <assert.h>
#include <stdlib.h>

static bool in_range(int64_t value, int64_t least, int64_t most) {
    return value >= least && value <= most;
}

static bool stocks_valid(const struct cut_job *job, bool flat) {
    if (job->stock_count > CUT_STOCKS_MAX) {
        return false;
    }
    for (size_t i = 0; i < job->stock_count; i++) {
        const struct cut_stock *stock = &job->stocks[i];
        if (!in_range(stock->length, 1, CUT_SIZE_MAX) ||
            (!flat && !in_range(stock->width, 1, CUT_SIZE_MAX)) ||
            !in_range(stock->price, 0, CUT_PRICE_MAX) ||
            !in_range(stock->copies, CUT_UNLIMITED, INT64_MAX)) {
            return false;
        }
    }
    return true;
}

static bool job_valid(const struct cut_job *job, bool flat) {
    int64_t pieces = 0;
    if (!in_range(job->kerf, 0, CUT_SIZE_MAX) || !in_range(job->trim, 0, CUT_SIZE_MAX) ||
        !stocks_valid(job, flat)) {
        return false;
    }
    for (size_t i = 0; i < job->item_count; i++) {
        const struct cut_item *item = &job->items[i];
        if (!in_range(item->length, 1, CUT_SIZE_MAX) ||
            (!flat && !in_range(item->width, 1, CUT_SIZE_MAX)) ||
            !in_range(item->demand, 0, CUT_PIECES_MAX - pieces)) {
            return false;
        }
        pieces += item->demand;
    }
    return true;
}

int64_t cut_common_divisor(int64_t a, int64_t b) {
    while (b != 0) {
        int64_t rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

bool cut_model_fits(const struct cut_kind *kind, const struct cut_bin *bin) {
    return (kind->length <= bin->length && kind->width <= bin->width) ||
           (kind->turn && kind->width <= bin->length && kind->length <= bin->width);
}

/* Largest first; equal kinds keep the order of the job, so that the sort is total. */
static int compare_kinds(const void *left, const void *right) {
    const struct cut_kind *a = left;
    const struct cut_kind *b = right;
    double area_a = (double)a->length * (double)a->width;
    double area_b = (double)b->length * (double)b->width;
    if (area_a < area_b || area_a > area_b) {
        return area_a > area_b ? -1 : 1;
    }
    if (a->length != b->length) {
        return a->length > b->length ? -1 : 1;
    }
    if (a->width != b->width) {
        return a->width > b->width ? -1 : 1;
    }
    if (a->turn != b->turn) {
        return a->turn ? 1 : -1;
    }
    return (a->first > b->first) - (a->first < b->first);
}

/* One kind for each wanted item, sizes grown by the kerf, `first` the item. */
static void list_items(struct cut_model *model, const struct cut_job *job, bool flat) {
    for (size_t i = 0; i < job->item_count; i++) {
        const struct cut_item *item = &job->items[i];
        if (item->demand > 0) {
            model->kinds[model->kind_count++] = (struct cut_kind){
                .length = item->length + job->kerf,
                .width = flat ? 1 : item->width + job->kerf,
                .demand = item->demand,
                .turn = !flat && item->turn && item->length != item->width,
                .first = i,
            };
            model->pieces += item->demand;
        }
    }
}

static void divide_sizes(struct cut_model *model, bool flat) {
    int64_t along = 0;
    int64_t across = 0;
    bool turns = false;
    for (size_t i = 0; i < model->kind_count; i++) {
        along = cut_common_divisor(model->kinds[i].length, along);
        across = cut_common_divisor(model->kinds[i].width, across);
        turns = turns || model->kinds[i].turn;
    }
    if (turns) {
        along = cut_common_divisor(along, across);
        across = along;
    }
    model->length_unit = along > 0 ? along : 1;
    model->width_unit = across > 0 && !flat ? across : 1;
    for (size_t i = 0; i < model->kind_count; i++) {
        model->kinds[i].length /= model->length_unit;
        model->kinds[i].width /= model->width_unit;
    }
}

/* Sorted kinds of equal size become one that knows its items. */
static void merge_kinds(struct cut_model *model) {
    size_t kept = 0;
    for (size_t i = 0; i < model->kind_count; i++) {
        struct cut_kind kind = model->kinds[i];
        struct cut_kind *last = kept > 0 ? &model->kinds[kept - 1] : NULL;
        model->items[model->item_count] = kind.first;
        if (last != NULL && last->length == kind.length && last->width == kind.width &&
            last->turn == kind.turn) {
            last->demand += kind.demand;
            last->items++;
        } else {
            kind.first = model->item_count;
            kind.items = 1;
            model->kinds[kept++] = kind;
        }
        model->item_count++;
    }
    model->kind_count = kept;
}

static void list_rooms(struct cut_model *model, const struct cut_job *job, bool flat) {
    for (size_t i = 0; i < job->stock_count; i++) {
        const struct cut_stock *stock = &job->stocks[i];
        int64_t less = 2 * (flat ? job->trim : cut_sheet_trim(job, i)) - job->kerf;
        struct cut_bin bin = {
            .length = (stock->length - less) / model->length_unit,
            .width = flat ? 1 : (stock->width - less) / model->width_unit,
            .price = stock->price,
            .copies = stock->copies,
            .limited = stock->copies != CUT_UNLIMITED && stock->copies < model->pieces,
            .stock = i,
        };
        bin.copies = bin.limited ? bin.copies : model->pieces;
        bool used = false;
        for (size_t k = 0; k < model->kind_count && bin.copies > 0 && !used; k++) {
            used = cut_model_fits(&model->kinds[k], &bin);
        }
        if (used) {
            model->bins[model->bin_count++] = bin;
        }
    }
}

static bool every_kind_fits(const struct cut_model *model) {
    for (size_t k = 0; k < model->kind_count; k++) {
        bool fits = false;
        for (size_t r = 0; r < model->bin_count && !fits; r++) {
            fits = cut_model_fits(&model->kinds[k], &model->bins[r]);
        }
        if (!fits) {
            return false;
        }
    }
    return true;
}

enum cut_status cut_model_init(struct cut_model *model, const struct cut_job *job, bool flat) {
    *model = (struct cut_model){0};
    if (!job_valid(job, flat)) {
        return CUT_BAD_INPUT;
    }
    model->kinds = calloc(job->item_count + 1, sizeof *model->kinds);
    model->items = calloc(job->item_count + 1, sizeof *model->items);
    model->bins = calloc(job->stock_count + 1, sizeof *model->bins);
    if (model->kinds == NULL || model->items == NULL || model->bins == NULL) {
        cut_model_clear(model);
        return CUT_NO_MEMORY;
    }
    list_items(model, job, flat);
    divide_sizes(model, flat);
    qsort(model->kinds, model->kind_count, sizeof *model->kinds, compare_kinds);
    merge_kinds(model);
    list_rooms(model, job, flat);
    if (!every_kind_fits(model)) {
        cut_model_clear(model);
        return CUT_NO_ROOM;
    }
    return CUT_DONE;
}

void cut_model_clear(struct cut_model *model) {
    free(model->kinds);
    free(model->items);
    free(model->bins);
    *model = (struct cut_model){0};
}

bool cut_handout_init(struct cut_handout *handout, const struct cut_model *model,
                      const struct cut_job *job) {
    *handout = (struct cut_handout){.model = model,
                                    .job = job,
                                    .at = calloc(model->kind_count + 1, sizeof(size_t)),
                                    .left = calloc(model->kind_count + 1, sizeof(int64_t))};
    if (handout->at == NULL || handout->left == NULL) {
        return false;
    }
    for (size_t k = 0; k < model->kind_count; k++) {
        handout->at[k] = model->kinds[k].first;
        handout->left[k] = job->items[model->items[handout->at[k]]].demand;
    }
    return true;
}

size_t cut_handout_next(struct cut_handout *handout, size_t kind) {
    const struct cut_model *const model = handout->model;
    while (handout->left[kind] == 0) {
        handout->at[kind]++;
        assert(handout->at[kind] < model->kinds[kind].first + model->kinds[kind].items);
        handout->left[kind] = handout->job->items[model->items[handout->at[kind]]].demand;
    }
    handout->left[kind]--;
    return model->items[handout->at[kind]];
}

void cut_handout_clear(struct cut_handout *handout) {
    free(handout->at);
    free(handout->left);
}
