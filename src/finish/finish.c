/* SPDX-License-Identifier: MIT */
#include "finish/finish.h"

#include "base/text.h"
#include "finish/coat.h"
#include "finish/product.h"
#include "model/coat_way.h"

#include <string.h>

static bool same_color(const char *a, const char *b) {
    if (a == NULL || b == NULL) {
        return a == b;
    }
    return text_same(a, b);
}

static const struct finish *finish_of(const struct calc *c, const struct batch *b) {
    return &c->rates->finishes[b->finish];
}

/* --- batches ---------------------------------------------------------------------------------- */

/* The color by which a row's finish is mixed; NULL: it shows none. */
static const char *batch_color(const struct calc *c, const struct construction *construction) {
    const int32_t finish = construction->finish.index;
    return finish >= 0 && finish_shows_color(c->rates, &c->rates->finishes[finish])
               ? construction->color.s
               : NULL;
}

/* Sorts the rows into batches by finish and color, in the order of their first rows. */
static void sort_rows(const struct calc *c, struct finish_list *list) {
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct leaf_figures *const leaf = &c->quantities->leaves[r];
        const struct construction *const construction = leaf->door->construction;
        const char *const color = batch_color(c, construction);
        list->batch_of[r] = SIZE_MAX;
        if (fig_none(leaf->sprayed)) {
            continue;
        }
        size_t b = 0;
        while (b < list->batch_count && (list->batches[b].finish != construction->finish.index ||
                                         !same_color(list->batches[b].color, color))) {
            b++;
        }
        if (b == list->batch_count) {
            list->batches[list->batch_count++] =
                (struct batch){.finish = construction->finish.index, .color = color};
        }
        list->batch_of[r] = b;
    }
}

/* terms: room for a figure a row. */
static fig batch_area(const struct calc *c, const struct finish_list *list, size_t b, fig *terms) {
    for (size_t r = 0; r < c->quantities->count; r++) {
        terms[r] = list->batch_of[r] == b ? c->quantities->leaves[r].sprayed : (fig){0};
    }
    return quantities_sum(c, "sprayed area, batch", c->units->area, terms);
}

/* Names a batch and gives it its area and its coats, without figures. */
static bool start_batch(const struct calc *c, struct finish_list *list, size_t index, fig *terms) {
    struct batch *const b = &list->batches[index];
    const struct finish *const finish = finish_of(c, b);
    const char *const name = finish_with_color(c, finish->name.s, b->color);
    b->coats = pool_take(c->pool, finish->coat_count, sizeof *b->coats);
    if (name == NULL || b->coats == NULL) {
        return false;
    }
    b->subject = tape_about(c->tape, name);
    b->area = batch_area(c, list, index, terms);
    b->coat_count = finish->coat_count; /* none where the finish is sent out */
    for (size_t i = 0; i < finish->coat_count; i++) {
        b->coats[i] =
            (struct coat_figures){.coating = finish->coats[i].coating,
                                  .way = coat_way(c->rates, finish, finish->coats[i].coating),
                                  .times = calc_given(c, "coats", &finish->coats[i].times)};
    }
    return true;
}

/* What coat i of a batch is mixed with: an untinted product once for all colors of its finish.
 * terms: room for two figures a batch. */
static struct coat_pool pool_of(const struct calc *c, const struct finish_list *list,
                                const struct batch *b, size_t i, fig *terms) {
    const struct finish *const finish = finish_of(c, b);
    struct coat_pool pool = {.area = b->area};
    fig *const areas = terms + list->batch_count;
    size_t n = 0;
    if (c->rates->coatings[b->coats[i].coating].tinted) {
        if (b->color == NULL && finish->colors.set && finish->colors.amount > 1) {
            pool.colors = calc_given(c, "colors", &finish->colors);
        }
        return pool;
    }
    for (size_t k = 0; k < list->batch_count; k++) {
        if (list->batches[k].finish == b->finish) {
            terms[n] = list->batches[k].coats[i].sprayed;
            areas[n++] = list->batches[k].area;
        }
    }
    if (n > 1) {
        pool.sprayed = fig_sum(c->tape, "sprayed, all colors", c->units->volume, terms, n);
        pool.all_area = fig_sum(c->tape, "sprayed area, all colors", c->units->area, areas, n);
    }
    return pool;
}

static size_t product_of(const struct calc *c, struct finish_list *list, struct product wanted) {
    for (size_t i = 0; i < list->product_count; i++) {
        const struct product *const p = &list->products[i];
        if (p->coating == wanted.coating && p->additive == wanted.additive &&
            same_color(p->color, wanted.color)) {
            return i;
        }
    }
    if (wanted.coating >= 0) {
        wanted.name = c->rates->coatings[wanted.coating].name.s;
        wanted.sizes = &c->rates->coatings[wanted.coating].sizes;
    } else {
        wanted.name = c->rates->additives[wanted.additive].name.s;
        wanted.sizes = &c->rates->additives[wanted.additive].sizes;
    }
    list->products[list->product_count] = wanted;
    return list->product_count++;
}

/* The product of a reducer, catalyst or cleaner; SIZE_MAX: none is used, or it is not bought. */
static size_t additive_of(const struct calc *c, struct finish_list *list, fig amount,
                          const struct reference *additive) {
    if (fig_none(amount) || additive->index < 0) {
        return SIZE_MAX;
    }
    return product_of(c, list, (struct product){.coating = -1, .additive = additive->index});
}

static void coat_products(const struct calc *c, struct finish_list *list, const struct batch *b,
                          struct coat_figures *coat) {
    const struct coating *const coating = &c->rates->coatings[coat->coating];
    coat->product = product_of(c, list,
                               (struct product){.coating = coat->coating,
                                                .additive = -1,
                                                .color = coating->tinted ? b->color : NULL});
    coat->reducer_product = additive_of(c, list, coat->reducer, &coating->reducer_product);
    coat->catalyst_product = additive_of(c, list, coat->catalyst, &coating->catalyst_product);
    coat->cleaning_product = additive_of(c, list, coat->cleaning, &coat->way->cleaning_product);
}

static void dry_batch(const struct calc *c, struct batch *b) {
    fig films[MOST_COATS];
    fig times[MOST_COATS];
    fig hours[MOST_COATS];
    const size_t n = b->coat_count;
    bool whole = n > 0;
    for (size_t i = 0; i < n; i++) {
        films[i] = b->coats[i].dry_film;
        whole = whole && !fig_none(films[i]);
        times[i] = b->coats[i].times;
        hours[i] = calc_given(c, "drying, a coat", &c->rates->coatings[b->coats[i].coating].dry);
    }
    if (whole) {
        b->dry_film = fig_sum(c->tape, "dry film, whole finish", c->units->film, films, n);
    }
    b->dry_hours = calc_total(c, "drying, all coats", UNIT_HOUR, times, hours, n);
}

/* The figures of all coats: what each batch takes first, as some are mixed for several batches.
 * terms: room for two figures a batch. */
static void put_on_coats(const struct calc *c, struct finish_list *list, enum transfer_at at,
                         fig *terms) {
    for (size_t k = 0; k < list->batch_count; k++) {
        struct batch *const b = &list->batches[k];
        tape_about_again(c->tape, b->subject);
        for (size_t i = 0; i < b->coat_count; i++) {
            coat_spray(&b->coats[i], c, at, b->area);
        }
    }
    for (size_t k = 0; k < list->batch_count; k++) {
        struct batch *const b = &list->batches[k];
        tape_about_again(c->tape, b->subject);
        for (size_t i = 0; i < b->coat_count; i++) {
            const struct coat_pool pool = pool_of(c, list, b, i, terms);
            coat_mix(&b->coats[i], c, &pool);
            coat_products(c, list, b, &b->coats[i]);
        }
    }
}

/* Whether the rates give a range to the transfer efficiency of a coat. */
static bool has_range(const struct finish_list *list) {
    for (size_t k = 0; k < list->batch_count; k++) {
        const struct batch *const b = &list->batches[k];
        for (size_t i = 0; i < b->coat_count; i++) {
            if (b->coats[i].way->transfer_range.set) {
                return true;
            }
        }
    }
    return false;
}

/* What the products would be needed for at an end of that range: all coats once more. */
static bool need_at(const struct calc *c, const struct finish_list *list, enum transfer_at at,
                    fig *terms) {
    struct finish_list other = *list;
    other.batches = pool_take(c->pool, list->batch_count, sizeof *other.batches);
    if (other.batches == NULL) {
        return false;
    }
    for (size_t k = 0; k < list->batch_count; k++) {
        struct batch *const b = &other.batches[k];
        *b = list->batches[k];
        b->coats = pool_take(c->pool, b->coat_count, sizeof *b->coats);
        if (b->coats == NULL) {
            return false;
        }
        for (size_t i = 0; i < b->coat_count; i++) {
            const struct coat_figures *const coat = &list->batches[k].coats[i];
            b->coats[i] = (struct coat_figures){
                .coating = coat->coating, .way = coat->way, .times = coat->times};
        }
    }
    put_on_coats(c, &other, at, terms);
    for (size_t p = 0; p < list->product_count; p++) {
        product_need_at(c, &other, p, at, terms);
    }
    return true;
}

static size_t most_coats(const struct calc *c, const struct finish_list *list) {
    size_t coats = 0;
    for (size_t b = 0; b < list->batch_count; b++) {
        coats += finish_of(c, &list->batches[b])->coat_count;
    }
    return coats;
}

bool finish_make(struct finish_list *list, const struct calc *c) {
    const size_t rows = c->quantities->count;
    *list = (struct finish_list){0};
    list->batches = pool_take(c->pool, rows, sizeof *list->batches);
    list->batch_of = pool_take(c->pool, rows, sizeof *list->batch_of);
    if (pool_failed(c->pool)) {
        return false;
    }
    sort_rows(c, list);
    const size_t coats = most_coats(c, list);
    const size_t most_terms = coats * PRODUCTS_OF_COAT;
    fig *const terms = pool_take(c->pool, 2 * rows + most_terms, sizeof *terms);
    list->products = pool_take(c->pool, most_terms, sizeof *list->products);
    if (pool_failed(c->pool)) {
        return false;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        if (!start_batch(c, list, b, terms)) {
            return false;
        }
    }
    put_on_coats(c, list, TRANSFER_LIKELY, terms);
    for (size_t b = 0; b < list->batch_count; b++) {
        tape_about_again(c->tape, list->batches[b].subject);
        dry_batch(c, &list->batches[b]);
    }
    const bool held = products_make(c, list, terms) &&
                      (!has_range(list) || (need_at(c, list, TRANSFER_LOW, terms) &&
                                            need_at(c, list, TRANSFER_HIGH, terms)));
    tape_about_again(c->tape, 0);
    return held;
}
