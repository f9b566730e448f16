/* SPDX-License-Identifier: MIT */
#include "finish/finish.h"

#include "base/text.h"
#include "finish/coat.h"

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

/* The color by which a row's finish is mixed: none where no coat of it is mixed to a color. Others
 * (a finish that is sent out) see the color that is asked for. */
static const char *batch_color(const struct calc *c, const struct construction *construction) {
    if (construction->finish.index < 0) {
        return NULL;
    }
    const struct finish *const finish = &c->rates->finishes[construction->finish.index];
    bool tinted = finish->coat_count == 0;
    for (size_t i = 0; i < finish->coat_count; i++) {
        tinted = tinted || c->rates->coatings[finish->coats[i].coating].tinted;
    }
    return tinted ? construction->color.s : NULL;
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
    return quantities_sum(c, "sprayed area, batch", c->measures->area, terms);
}

/* A name as it stands, or with its color: "NAME, COLOR"; NULL: out of memory. */
static const char *with_color(const struct calc *c, const char *name, const char *color) {
    return color == NULL ? name : pool_format(c->pool, "%s, %s", name, color);
}

static bool spray_batch(const struct calc *c, struct finish_list *list, size_t index, fig *terms) {
    struct batch *const b = &list->batches[index];
    const struct finish *const finish = finish_of(c, b);
    const char *const name = with_color(c, finish->name.s, b->color);
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
                                  .times = calc_given(c, "coats", &finish->coats[i].times)};
        coat_spray(&b->coats[i], c, &c->rates->sprays[finish->spray], b->area);
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
        pool.sprayed = fig_sum(c->tape, "sprayed, all colors", c->measures->volume, terms, n);
        pool.all_area = fig_sum(c->tape, "sprayed area, all colors", c->measures->area, areas, n);
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

/* The product of a reducer or catalyst; SIZE_MAX: none is mixed in, or it is not bought. */
static size_t additive_of(const struct calc *c, struct finish_list *list, fig mixed_in,
                          const struct reference *additive) {
    if (fig_none(mixed_in) || additive->index < 0) {
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
        b->dry_film = fig_sum(c->tape, "dry film, whole finish", c->measures->film, films, n);
    }
    b->dry_hours = calc_total(c, "drying, all coats", UNIT_HOUR, times, hours, n);
}

static void mix_batch(const struct calc *c, struct finish_list *list, struct batch *b, fig *terms) {
    const struct spray *const spray = &c->rates->sprays[finish_of(c, b)->spray];
    tape_about_again(c->tape, b->subject);
    for (size_t i = 0; i < b->coat_count; i++) {
        const struct coat_pool pool = pool_of(c, list, b, i, terms);
        coat_mix(&b->coats[i], c, spray, &pool);
        coat_products(c, list, b, &b->coats[i]);
    }
    dry_batch(c, b);
}

/* --- products --------------------------------------------------------------------------------- */

/* The volume of product p that a coat line takes; none when it takes none. */
static fig coat_part(const struct coat_figures *coat, size_t p) {
    if (coat->product == p) {
        return coat->coating_volume;
    }
    if (coat->reducer_product == p) {
        return coat->reducer;
    }
    return coat->catalyst_product == p ? coat->catalyst : (fig){0};
}

/* terms: room for a figure a coat of the job. */
static fig product_need(const struct calc *c, const struct finish_list *list, size_t p,
                        fig *terms) {
    size_t n = 0;
    for (size_t b = 0; b < list->batch_count; b++) {
        for (size_t i = 0; i < list->batches[b].coat_count; i++) {
            terms[n++] = coat_part(&list->batches[b].coats[i], p);
        }
    }
    return fig_sum(c->tape, "needed", c->measures->volume, terms, n);
}

static void buy_product(const struct calc *c, struct product *p) {
    const size_t n = p->sizes->count;
    fig operands[1 + 2 * MOST_CONTAINER_SIZES] = {p->need};
    p->size_count = n;
    for (size_t i = 0; i < n; i++) {
        p->volumes[i] = calc_given(c, "container", &p->sizes->s[i].limit);
        p->prices[i] = calc_given(c, "container price", &p->sizes->s[i].value);
        operands[1 + 2 * i] = p->volumes[i];
        operands[2 + 2 * i] = p->prices[i];
    }
    fig_chosen(c->tape, "containers to buy", UNIT_COUNT, &containers_chooser, operands, 1 + 2 * n,
               p->counts, n);
    p->bought = fig_total(c->tape, "bought", c->measures->volume, p->counts, p->volumes, n);
    p->left_over = fig_plus(c->tape, "left over", p->bought, fig_minus(p->need));
    p->cost = fig_total(c->tape, "cost of containers", UNIT_MONEY, p->counts, p->prices, n);
    p->charged = p->cost;
    if (c->rates->shop.charge_finish.choice == CHARGED_USED &&
        tape_amount(c->tape, p->bought) > 0) {
        p->charged = fig_ratio(c->tape, "charged for what is used", UNIT_MONEY,
                               (figs){{p->cost, p->need}}, (figs){{p->bought}});
    }
}

/* --- cost of the batches ---------------------------------------------------------------------- */

/* The part of product p's charge that falls on a volume of it. */
static fig charge_part(const struct calc *c, const struct finish_list *list, const char *what,
                       size_t p, fig volume) {
    if (p == SIZE_MAX || fig_none(volume) || tape_amount(c->tape, list->products[p].need) == 0) {
        return (fig){0};
    }
    const struct product *const product = &list->products[p];
    return fig_ratio(c->tape, what, UNIT_MONEY, (figs){{product->charged, volume}},
                     (figs){{product->need}});
}

static void charge_batch(const struct calc *c, const struct finish_list *list, struct batch *b) {
    fig costs[MOST_COATS];
    if (b->coat_count == 0) {
        return;
    }
    tape_about_again(c->tape, b->subject);
    for (size_t i = 0; i < b->coat_count; i++) {
        struct coat_figures *const coat = &b->coats[i];
        const fig parts[] = {
            charge_part(c, list, "coating cost", coat->product, coat->coating_volume),
            charge_part(c, list, "reducer cost", coat->reducer_product, coat->reducer),
            charge_part(c, list, "catalyst cost", coat->catalyst_product, coat->catalyst),
        };
        coat->cost = fig_sum(c->tape, "cost of the coats", UNIT_MONEY, parts, 3);
        costs[i] = coat->cost;
    }
    b->cost = fig_sum(c->tape, "cost of the batch", UNIT_MONEY, costs, b->coat_count);
}

static size_t most_coats(const struct calc *c, const struct finish_list *list) {
    size_t coats = 0;
    for (size_t b = 0; b < list->batch_count; b++) {
        coats += finish_of(c, &list->batches[b])->coat_count;
    }
    return coats;
}

static bool make_products(const struct calc *c, struct finish_list *list, fig *terms) {
    for (size_t p = 0; p < list->product_count; p++) {
        struct product *const product = &list->products[p];
        const char *const name = with_color(c, product->name, product->color);
        if (name == NULL) {
            return false;
        }
        tape_about(c->tape, name);
        product->need = product_need(c, list, p, terms);
        buy_product(c, product);
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        charge_batch(c, list, &list->batches[b]);
    }
    return true;
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
    fig *const terms = pool_take(c->pool, 2 * rows + coats, sizeof *terms);
    list->products = pool_take(c->pool, 3 * coats, sizeof *list->products);
    if (pool_failed(c->pool)) {
        return false;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        if (!spray_batch(c, list, b, terms)) {
            return false;
        }
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        mix_batch(c, list, &list->batches[b], terms);
    }
    const bool held = make_products(c, list, terms);
    tape_about_again(c->tape, 0);
    return held;
}
