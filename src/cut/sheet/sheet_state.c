/* SPDX-License-Identifier: MIT */
/* Filling: the parts that are out are put in an order, and each goes to the best place on any
 * sheet. */
#include "cut/sheet/sheet_state.h"

#include <stdlib.h>
#include <string.h>

/* A kind and how early its turn is. */
struct turn_key {
    double key;
    size_t kind;
};

bool sheet_state_init(struct sheet_state *state, const struct cut_model *model) {
    *state = (struct sheet_state){.model = model};
    state->out = calloc(model->kind_count + 1, sizeof *state->out);
    state->left = calloc(model->bin_count + 1, sizeof *state->left);
    if (state->out == NULL || state->left == NULL) {
        return false;
    }
    for (size_t k = 0; k < model->kind_count; k++) {
        state->out[k] = model->kinds[k].demand;
    }
    for (size_t r = 0; r < model->bin_count; r++) {
        state->left[r] = model->bins[r].copies;
    }
    return true;
}

void sheet_state_clear(struct sheet_state *state) {
    for (size_t s = 0; s < state->slot_room; s++) {
        sheet_tree_clear(&state->slots[s]);
    }
    free(state->slots);
    free(state->touched);
    free(state->room);
    free(state->out);
    free(state->left);
    *state = (struct sheet_state){0};
}

static bool slots_grow(struct sheet_state *state, size_t wanted) {
    if (wanted <= state->slot_room) {
        return true;
    }
    size_t room = 2 * wanted + 8;
    struct sheet_tree *slots = realloc(state->slots, room * sizeof *slots);
    if (slots == NULL) {
        return false;
    }
    state->slots = slots;
    bool *touched = realloc(state->touched, room * sizeof *touched);
    if (touched == NULL) {
        return false;
    }
    state->touched = touched;
    double *areas = realloc(state->room, room * sizeof *areas);
    if (areas == NULL) {
        return false;
    }
    state->room = areas;
    for (size_t s = state->slot_room; s < room; s++) {
        slots[s] = (struct sheet_tree){0};
        sheet_tree_reset(&slots[s], state->model, 0);
        touched[s] = false;
        areas[s] = -1.0;
    }
    state->slot_room = room;
    return true;
}

/* A sheet is not as it was. */
static void touch(struct sheet_state *state, size_t slot) {
    const struct sheet_tree *const tree = &state->slots[slot];
    state->touched[slot] = true;
    state->room[slot] = tree->parts > 0 ? tree->nodes[tree->root].spare_area : -1.0;
}

bool sheet_state_copy(struct sheet_state *to, const struct sheet_state *from) {
    size_t slots = from->slot_count > to->slot_count ? from->slot_count : to->slot_count;
    if (!slots_grow(to, slots)) {
        return false;
    }
    for (size_t s = 0; s < slots; s++) {
        bool touched =
            to->touched[s] || s >= to->slot_count || s >= from->slot_count || from->touched[s];
        if (touched && s < from->slot_count) {
            if (!sheet_tree_copy(&to->slots[s], &from->slots[s])) {
                return false;
            }
            to->room[s] = from->room[s];
        } else if (touched) {
            to->room[s] = -1.0;
            sheet_tree_reset(&to->slots[s], to->model, 0);
        }
        to->touched[s] = false;
    }
    to->slot_count = from->slot_count;
    memcpy(to->out, from->out, from->model->kind_count * sizeof *to->out);
    memcpy(to->left, from->left, from->model->bin_count * sizeof *to->left);
    to->out_area = from->out_area;
    to->cost = from->cost;
    return true;
}

static void close_if_empty(struct sheet_state *state, size_t slot) {
    struct sheet_tree *tree = &state->slots[slot];
    if (tree->parts == 0) {
        state->cost -= state->model->bins[tree->bin].price;
        state->left[tree->bin]++;
        sheet_tree_reset(tree, state->model, tree->bin);
    }
}

void sheet_state_take_out(struct sheet_state *state, size_t slot, int32_t node) {
    state->out[state->slots[slot].nodes[node].kind]++;
    sheet_tree_remove(&state->slots[slot], node);
    touch(state, slot);
    close_if_empty(state, slot);
}

/* Unused nodes are told from parts by walking the tree, not the array. */
static void count_out(struct sheet_state *state, const struct sheet_tree *tree, int32_t node) {
    if (tree->nodes[node].kind != TREE_GROUP) {
        state->out[tree->nodes[node].kind]++;
        return;
    }
    for (int32_t at = tree->nodes[node].child; at != TREE_NONE; at = tree->nodes[at].next) {
        count_out(state, tree, at);
    }
}

void sheet_state_empty(struct sheet_state *state, size_t slot) {
    struct sheet_tree *tree = &state->slots[slot];
    if (tree->parts > 0) {
        count_out(state, tree, tree->root);
        tree->parts = 0;
        touch(state, slot);
        close_if_empty(state, slot);
    }
}

static int compare_keys(const void *left, const void *right) {
    const struct turn_key *a = left;
    const struct turn_key *b = right;
    if (a->key < b->key || a->key > b->key) {
        return a->key > b->key ? -1 : 1;
    }
    return (a->kind > b->kind) - (a->kind < b->kind);
}

static double order_key(const struct cut_kind *kind, int order) {
    double length = (double)kind->length;
    double width = (double)kind->width;
    switch (order) {
    case 0:
        return length * width;
    case 1:
        return length > width ? length : width;
    case 2:
        return length;
    case 3:
        return width;
    default:
        return length + width;
    }
}

/* What a bin is opened by, the least first: its price for its area; of those that cost nothing the
 * smaller. chance: 1, or a little more. */
static double bin_key(const struct cut_bin *bin, double chance) {
    const double area = (double)bin->length * (double)bin->width;
    return bin->price > 0 ? (double)bin->price / area * chance : -1.0 / (area * chance);
}

/* Where some sizes are few, the cheapest for its area may be one that is better left: so often, of
 * the bins that can be opened, any is. Found by trying. */
#define ANY_SHARE 0.25

static bool any_is_few(const struct cut_model *model) {
    bool few = false;
    for (size_t r = 0; r < model->bin_count; r++) {
        few = few || model->bins[r].limited;
    }
    return few;
}

/* Buys a sheet that can hold the kind: the cheapest for its area, with some chance. */
static bool open_slot(struct sheet_state *state, const struct sheet_fill *fill,
                      const struct cut_kind *kind, struct cut_random *random, size_t *slot) {
    const struct cut_model *model = state->model;
    const bool shuffled = fill->shuffle > 0.0;
    const bool any = shuffled && any_is_few(model) && cut_random_share(random) < ANY_SHARE;
    size_t best = SIZE_MAX;
    double best_price = 0.0;
    for (size_t r = 0; r < model->bin_count; r++) {
        const struct cut_bin *bin = &model->bins[r];
        if ((fill->bin != SIZE_MAX && fill->bin != r) || state->left[r] == 0 ||
            bin->price > fill->budget - state->cost || !cut_model_fits(kind, bin)) {
            continue;
        }
        double share = shuffled ? cut_random_share(random) : 0.0;
        double price = any ? share : bin_key(bin, 1.0 + 0.3 * share);
        if (best == SIZE_MAX || price < best_price) {
            best = r;
            best_price = price;
        }
    }
    *slot = SIZE_MAX;
    if (best == SIZE_MAX) {
        return true;
    }
    for (*slot = 0; *slot < state->slot_count && state->slots[*slot].parts > 0; (*slot)++) {
    }
    if (*slot == state->slot_count) {
        if (!slots_grow(state, state->slot_count + 1)) {
            return false;
        }
        state->slot_count++;
    }
    sheet_tree_reset(&state->slots[*slot], model, best);
    state->cost += model->bins[best].price;
    state->left[best]--;
    return true;
}

/* Puts one part of the kind on a sheet; *placed false: there is no place. */
static bool place_one(struct sheet_state *state, size_t kind, const struct sheet_fill *fill,
                      struct cut_random *random, int64_t *spent, bool *placed) {
    const struct cut_kind *part = &state->model->kinds[kind];
    double area = (double)part->length * (double)part->width;
    const struct cut_kind *const last = &state->model->kinds[state->model->kind_count - 1];
    const double least = (double)last->length * (double)last->width;
    struct tree_place place = {.score = 1e300};
    size_t slot = SIZE_MAX;
    int64_t looked = 5;
    int64_t walked = 0;
    *placed = false;
    for (size_t s = 0; s < state->slot_count; s++) {
        if (state->room[s] < area) {
            continue;
        }
        struct sheet_tree *tree = &state->slots[s];
        if (tree->gap_count == TREE_NONE) {
            state->room[s] = sheet_tree_gaps(tree, least, &walked);
        }
        if (sheet_tree_find(tree, part, &fill->weights, fill->noise, &random->state, &place,
                            &looked) == TREE_BETTER) {
            slot = s;
        }
    }
    cut_spend(spent, 15 * looked + 4 * walked + (int64_t)state->slot_count);
    if (slot == SIZE_MAX) {
        if (!open_slot(state, fill, part, random, &slot)) {
            return false;
        }
        if (slot == SIZE_MAX) {
            return true;
        }
        (void)sheet_tree_find(&state->slots[slot], part, &fill->weights, fill->noise,
                              &random->state, &place, &looked);
    }
    state->out[kind]--;
    *placed = true;
    if (!sheet_tree_insert(&state->slots[slot], part, (int32_t)kind, &place)) {
        return false;
    }
    touch(state, slot);
    return true;
}

/* Whether bin a is rather used up than b: the cheaper; of those at hand in few copies, where they
 * cost the same, the smaller. */
static bool rather(const struct cut_bin *a, const struct cut_bin *b) {
    const double area = (double)a->length * (double)a->width;
    return a->price < b->price || (a->price == b->price && a->limited && b->limited &&
                                   area < (double)b->length * (double)b->width);
}

/* Moves the parts of a changed sheet to the cheapest bin that holds them as they lie. */
static void shrink(struct sheet_state *state, size_t slot) {
    const struct cut_model *model = state->model;
    struct sheet_tree *tree = &state->slots[slot];
    size_t best = tree->bin;
    for (size_t r = 0; r < model->bin_count; r++) {
        const struct cut_bin *bin = &model->bins[r];
        const struct tree_node *root = &tree->nodes[tree->root];
        if (rather(bin, &model->bins[best]) && state->left[r] > 0 && root->length <= bin->length &&
            root->width <= bin->width) {
            best = r;
        }
    }
    if (best != tree->bin) {
        state->cost += model->bins[best].price - model->bins[tree->bin].price;
        state->left[tree->bin]++;
        state->left[best]--;
        sheet_tree_move(tree, model, best);
        touch(state, slot);
    }
}

bool sheet_state_fill(struct sheet_state *state, const struct sheet_fill *fill,
                      struct cut_random *random, int64_t *spent) {
    const struct cut_model *model = state->model;
    struct turn_key *keys = calloc(model->kind_count + 1, sizeof *keys);
    if (keys == NULL) {
        return false;
    }
    size_t count = 0;
    for (size_t k = 0; k < model->kind_count; k++) {
        if (state->out[k] > 0) {
            double key = order_key(&model->kinds[k], fill->order);
            key *= 1.0 + fill->shuffle * cut_random_share(random);
            keys[count++] = (struct turn_key){key, k};
        }
    }
    qsort(keys, count, sizeof *keys, compare_keys);
    bool ok = true;
    for (size_t i = 0; i < count && ok; i++) {
        bool placed = true;
        while (ok && placed && state->out[keys[i].kind] > 0) {
            ok = place_one(state, keys[i].kind, fill, random, spent, &placed);
        }
    }
    for (size_t s = 0; s < state->slot_count && model->bin_count > 1; s++) {
        if (state->touched[s] && state->slots[s].parts > 0) {
            shrink(state, s);
        }
    }
    state->out_area = 0.0;
    for (size_t k = 0; k < model->kind_count; k++) {
        if (state->out[k] > 0) {
            state->out_area += (double)state->out[k] * (double)model->kinds[k].length *
                               (double)model->kinds[k].width;
        }
    }
    free(keys);
    return ok;
}
