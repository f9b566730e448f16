/* SPDX-License-Identifier: MIT */
#include "finish/finish.h"

#include "base/index.h"
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

static bool same_batch(const void *list, size_t number, const void *wanted) {
    const struct batch *const a = &((const struct batch *)list)[number];
    const struct batch *const b = wanted;
    return a->finish == b->finish && same_color(a->color, b->color);
}

/* Sorts the rows into batches by finish and color, in the order of their first rows. false: out of
 * memory. */
static bool sort_rows(const struct calc *c, struct finish_list *list) {
    struct index index = {0};
    bool failed = false;
    for (size_t r = 0; !failed && r < c->quantities->count; r++) {
        const struct leaf_figures *const leaf = &c->quantities->leaves[r];
        const struct construction *const construction = leaf->door->construction;
        const struct batch wanted = {.finish = construction->finish.index,
                                     .color = batch_color(c, construction)};
        list->batch_of[r] = SIZE_MAX;
        if (fig_none(leaf->sprayed)) {
            continue;
        }
        const uint64_t hash = hash_word(HASH_START, (uint64_t)wanted.finish);
        const size_t b = index_add(&index, hash_name(hash, wanted.color), same_batch, list->batches,
                                   &wanted, list->batch_count, &failed);
        if (b == list->batch_count) {
            list->batches[list->batch_count++] = wanted;
        }
        list->batch_of[r] = b;
        list->batches[b].row_count++;
    }
    index_clear(&index);
    return !failed;
}

/* Gives each batch its rows, and tells which have others of their finish beside them. false: out of
 * memory. */
static bool list_rows(const struct calc *c, struct finish_list *list) {
    size_t *const colors = pool_take(c->pool, c->rates->finish_count, sizeof *colors);
    size_t next = 0;
    if (colors == NULL) {
        return false;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        struct batch *const batch = &list->batches[b];
        colors[batch->finish]++;
        batch->first_row = next;
        next += batch->row_count;
        batch->row_count = 0;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        list->batches[b].several = colors[list->batches[b].finish] > 1;
    }
    for (size_t r = 0; r < c->quantities->count; r++) {
        if (list->batch_of[r] != SIZE_MAX) {
            struct batch *const batch = &list->batches[list->batch_of[r]];
            list->rows[batch->first_row + batch->row_count++] = r;
        }
    }
    return true;
}

/* terms: room for two figures a row. */
static fig batch_area(const struct calc *c, const struct finish_list *list, const struct batch *b,
                      fig *terms) {
    fig *const each = terms + b->row_count;
    for (size_t i = 0; i < b->row_count; i++) {
        const size_t r = list->rows[b->first_row + i];
        terms[i] = c->quantities->pieces[r];
        each[i] = c->quantities->leaves[r].sprayed;
    }
    return fig_total(c->tape, "sprayed area, batch", c->units->area, terms, each, b->row_count);
}

/* Names a batch and gives it its area and its coats, without figures. */
static bool start_batch(const struct calc *c, const struct finish_list *list, struct batch *b,
                        fig *terms) {
    const struct finish *const finish = finish_of(c, b);
    const char *const name = finish_with_color(c, finish->name.s, b->color);
    b->coats = pool_take(c->pool, finish->coat_count, sizeof *b->coats);
    if (name == NULL || b->coats == NULL) {
        return false;
    }
    b->subject = tape_about(c->tape, name);
    b->area = batch_area(c, list, b, terms);
    b->coat_count = finish->coat_count; /* none where the finish is sent out */
    for (size_t i = 0; i < finish->coat_count; i++) {
        b->coats[i] =
            (struct coat_figures){.coating = finish->coats[i].coating,
                                  .way = coat_way(c->rates, finish, finish->coats[i].coating),
                                  .times = calc_given(c, "coats", &finish->coats[i].times)};
    }
    return true;
}

/* What an untinted coat of a finish in several colors is mixed for: all of them at once. */
struct together {
    fig sprayed, area; /* none: not yet asked for */
};

/* Adds up a coat of all batches of a finish. terms: room for two figures a batch. */
static struct together all_colors(const struct calc *c, const struct finish_list *list,
                                  const struct batch *b, size_t coat, fig *terms) {
    fig *const areas = terms + list->batch_count;
    size_t n = 0;
    for (size_t k = 0; k < list->batch_count; k++) {
        if (list->batches[k].finish == b->finish) {
            terms[n] = list->batches[k].coats[coat].sprayed;
            areas[n++] = list->batches[k].area;
        }
    }
    tape_about(c->tape, finish_of(c, b)->name.s);
    const struct together all = {
        .sprayed = fig_sum(c->tape, "sprayed, all colors", c->units->volume, terms, n),
        .area = fig_sum(c->tape, "sprayed area, all colors", c->units->area, areas, n)};
    tape_about_again(c->tape, b->subject);
    return all;
}

/* What coat i of a batch is mixed with: an untinted product once for all colors of its finish.
 * together: of that coat and finish. */
static struct coat_pool pool_of(const struct calc *c, const struct finish_list *list,
                                const struct batch *b, size_t i, struct together *together,
                                fig *terms) {
    const struct finish *const finish = finish_of(c, b);
    struct coat_pool pool = {.area = b->area};
    if (c->rates->coatings[b->coats[i].coating].tinted) {
        if (b->color == NULL && finish->colors.set && finish->colors.amount > 1) {
            pool.colors = calc_given(c, "colors", &finish->colors);
        }
    } else if (b->several) {
        if (fig_none(together->sprayed)) {
            *together = all_colors(c, list, b, i, terms);
        }
        pool.sprayed = together->sprayed;
        pool.all_area = together->area;
    }
    return pool;
}

/* The products as they are found. */
struct products {
    const struct calc *c;
    struct finish_list *list;
    struct index index;
    bool failed;
};

static bool same_product(const void *list, size_t number, const void *wanted) {
    const struct product *const a = &((const struct product *)list)[number];
    const struct product *const b = wanted;
    return a->coating == b->coating && a->additive == b->additive && same_color(a->color, b->color);
}

static size_t product_of(struct products *p, struct product wanted) {
    const struct rates *const rates = p->c->rates;
    struct finish_list *const list = p->list;
    const uint64_t hash =
        hash_word(HASH_START, (uint64_t)wanted.coating << 32 | (uint32_t)wanted.additive);
    const size_t number = index_add(&p->index, hash_name(hash, wanted.color), same_product,
                                    list->products, &wanted, list->product_count, &p->failed);
    if (number < list->product_count) {
        return number;
    }
    if (wanted.coating >= 0) {
        wanted.name = rates->coatings[wanted.coating].name.s;
        wanted.sizes = &rates->coatings[wanted.coating].sizes;
    } else {
        wanted.name = rates->additives[wanted.additive].name.s;
        wanted.sizes = &rates->additives[wanted.additive].sizes;
    }
    list->products[list->product_count] = wanted;
    return list->product_count++;
}

/* The product of a reducer, catalyst or cleaner; SIZE_MAX: none is used, or it is not bought. */
static size_t additive_of(struct products *p, fig amount, const struct reference *additive) {
    if (fig_none(amount) || additive->index < 0) {
        return SIZE_MAX;
    }
    return product_of(p, (struct product){.coating = -1, .additive = additive->index});
}

static void coat_products(struct products *p, const struct batch *b, struct coat_figures *coat) {
    const struct coating *const coating = &p->c->rates->coatings[coat->coating];
    coat->product = product_of(p, (struct product){.coating = coat->coating,
                                                   .additive = -1,
                                                   .color = coating->tinted ? b->color : NULL});
    coat->reducer_product = additive_of(p, coat->reducer, &coating->reducer_product);
    coat->catalyst_product = additive_of(p, coat->catalyst, &coating->catalyst_product);
    coat->cleaning_product = additive_of(p, coat->cleaning, &coat->way->cleaning_product);
}

/* What the coats are made of. false: out of memory. */
static bool find_products(const struct calc *c, struct finish_list *list) {
    struct products products = {.c = c, .list = list};
    for (size_t k = 0; k < list->batch_count; k++) {
        const struct batch *const b = &list->batches[k];
        for (size_t i = 0; i < b->coat_count; i++) {
            coat_products(&products, b, &b->coats[i]);
        }
    }
    index_clear(&products.index);
    return !products.failed;
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
 * terms: room for two figures a batch. false: out of memory. */
static bool put_on_coats(const struct calc *c, const struct finish_list *list, enum transfer_at at,
                         fig *terms) {
    struct together *const together =
        pool_take(c->pool, c->rates->finish_count * MOST_COATS, sizeof *together);
    for (size_t k = 0; k < list->batch_count; k++) {
        const struct batch *const b = &list->batches[k];
        tape_about_again(c->tape, b->subject);
        for (size_t i = 0; i < b->coat_count; i++) {
            coat_spray(&b->coats[i], c, at, b->area);
        }
    }
    for (size_t k = 0; together != NULL && k < list->batch_count; k++) {
        const struct batch *const b = &list->batches[k];
        struct together *const of_finish = &together[(size_t)b->finish * MOST_COATS];
        tape_about_again(c->tape, b->subject);
        for (size_t i = 0; i < b->coat_count; i++) {
            const struct coat_pool pool = pool_of(c, list, b, i, &of_finish[i], terms);
            b->coats[i].all_sprayed = pool.sprayed;
            b->coats[i].all_area = pool.all_area;
            coat_mix(&b->coats[i], c, &pool);
        }
    }
    return together != NULL;
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
            b->coats[i] = (struct coat_figures){.coating = coat->coating,
                                                .way = coat->way,
                                                .times = coat->times,
                                                .product = coat->product,
                                                .reducer_product = coat->reducer_product,
                                                .catalyst_product = coat->catalyst_product,
                                                .cleaning_product = coat->cleaning_product};
        }
    }
    return put_on_coats(c, &other, at, terms) && products_need_at(c, &other, at);
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
    list->rows = pool_take(c->pool, rows, sizeof *list->rows);
    if (pool_failed(c->pool) || !sort_rows(c, list) || !list_rows(c, list)) {
        return false;
    }
    fig *const terms = pool_take(c->pool, 2 * rows, sizeof *terms);
    list->products =
        pool_take(c->pool, most_coats(c, list) * PRODUCTS_OF_COAT, sizeof *list->products);
    if (pool_failed(c->pool)) {
        return false;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        if (!start_batch(c, list, &list->batches[b], terms)) {
            return false;
        }
    }
    if (!put_on_coats(c, list, TRANSFER_LIKELY, terms) || !find_products(c, list)) {
        return false;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        tape_about_again(c->tape, list->batches[b].subject);
        dry_batch(c, &list->batches[b]);
    }
    const bool held =
        products_make(c, list) && (!has_range(list) || (need_at(c, list, TRANSFER_LOW, terms) &&
                                                        need_at(c, list, TRANSFER_HIGH, terms)));
    tape_about_job(c->tape);
    return held;
}
