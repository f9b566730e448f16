/* SPDX-License-Identifier: MIT */
#include "finish/finish.h"

#include "base/text.h"
#include "finish/coat.h"

#include <stdlib.h>
#include <string.h>

struct shelf {
    struct finish_list *list;
    struct pool *pool;
    struct tape *tape;
    const struct measures *m;
    const struct rates *rates;
    const struct quantities *quantities;
    fig *pieces, *each; /* room for totals over the rows */
};

static bool same_color(const char *a, const char *b) {
    if (a == NULL || b == NULL) {
        return a == b;
    }
    return text_same(a, b);
}

/* --- batches
 * ----------------------------------------------------------------------------------------------------------
 */

/* The color by which a row's finish is mixed: none where no coat of it is mixed to a color. Others
 * (a finish that is put out) see the color that is asked for. */
static const char *batch_color(const struct shelf *s, const struct construction *construction) {
    if (construction->finish.index < 0) {
        return NULL;
    }
    const struct finish *const finish = &s->rates->finishes[construction->finish.index];
    bool tinted = finish->coat_count == 0;
    for (size_t i = 0; i < finish->coat_count; i++) {
        tinted = tinted || s->rates->coatings[finish->coats[i].coating].tinted;
    }
    return tinted ? construction->color.s : NULL;
}

/* Sorts the rows into batches by finish and color, in the order of their first rows. */
static void sort_rows(const struct shelf *s) {
    struct finish_list *const list = s->list;
    for (size_t r = 0; r < s->quantities->count; r++) {
        const struct construction *const construction =
            &s->quantities->leaves[r].door->construction;
        const char *const color = batch_color(s, construction);
        list->batch_of[r] = SIZE_MAX;
        if (fig_none(s->quantities->leaves[r].sprayed)) {
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

static fig batch_area(const struct shelf *s, size_t b) {
    size_t n = 0;
    for (size_t r = 0; r < s->quantities->count; r++) {
        if (s->list->batch_of[r] == b) {
            s->pieces[n] = s->quantities->leaves[r].pieces;
            s->each[n++] = s->quantities->leaves[r].sprayed;
        }
    }
    return fig_total(s->tape, "sprayed area, batch", s->m->area, s->pieces, s->each, n);
}

static size_t product_of(const struct shelf *s, int32_t coating, int32_t additive,
                         const char *color) {
    struct finish_list *const list = s->list;
    for (size_t i = 0; i < list->product_count; i++) {
        const struct product *const p = &list->products[i];
        if (p->coating == coating && p->additive == additive && same_color(p->color, color)) {
            return i;
        }
    }
    struct product *const p = &list->products[list->product_count];
    *p = (struct product){.coating = coating, .additive = additive, .color = color};
    p->name =
        coating >= 0 ? s->rates->coatings[coating].name.s : s->rates->additives[additive].name.s;
    p->sizes =
        coating >= 0 ? &s->rates->coatings[coating].sizes : &s->rates->additives[additive].sizes;
    return list->product_count++;
}

static void coat_products(const struct shelf *s, const struct batch *b, struct coat_figures *c) {
    const struct coating *const coating = &s->rates->coatings[c->coating];
    c->product = product_of(s, c->coating, -1, coating->tinted ? b->color : NULL);
    c->reducer_product = c->catalyst_product = SIZE_MAX;
    if (!fig_none(c->reducer) && coating->reducer_product.index >= 0) {
        c->reducer_product = product_of(s, -1, coating->reducer_product.index, NULL);
    }
    if (!fig_none(c->catalyst) && coating->catalyst_product.index >= 0) {
        c->catalyst_product = product_of(s, -1, coating->catalyst_product.index, NULL);
    }
}

static void dry_batch(const struct shelf *s, struct batch *b, const struct finish *finish) {
    fig films[MOST_COATS];
    fig times[MOST_COATS];
    fig hours[MOST_COATS];
    bool whole = true;
    size_t n = 0;
    for (; n < b->coat_count; n++) {
        films[n] = b->coats[n].dry_film;
        whole = whole && !fig_none(films[n]);
        times[n] = b->coats[n].times;
        hours[n] = measures_given(s->tape, s->m, "drying, a coat",
                                  &s->rates->coatings[finish->coats[n].coating].dry);
    }
    if (whole && n > 0) {
        b->dry_film = fig_sum(s->tape, "dry film, whole finish", s->m->film, films, n);
    }
    if (n == 0) {
        return;
    }
    b->dry_hours = fig_total(s->tape, "drying, all coats", UNIT_HOUR, times, hours, n);
}

static bool spray_batch(const struct shelf *s, size_t index) {
    struct batch *const b = &s->list->batches[index];
    const struct finish *const finish = &s->rates->finishes[b->finish];
    const char *const name = b->color == NULL
                                 ? finish->name.s
                                 : pool_format(s->pool, "%s, %s", finish->name.s, b->color);
    b->coats = pool_take(s->pool, finish->coat_count, sizeof *b->coats);
    if (name == NULL || b->coats == NULL) {
        return false;
    }
    b->subject = tape_about(s->tape, name);
    b->area = batch_area(s, index);
    b->coat_count = finish->coat_count; /* none where the finish is put out */
    for (size_t i = 0; i < finish->coat_count; i++) {
        struct coat_figures *const c = &b->coats[i];
        c->coating = finish->coats[i].coating;
        coat_spray(c, s->tape, s->m, s->rates, &s->rates->sprays[finish->spray], b->area,
                   &finish->coats[i].times);
    }
    return true;
}

/* What coat i of a batch is mixed with: an untinted product once for all colors of its finish. */
static struct coat_pool pool_of(const struct shelf *s, const struct batch *b, size_t i) {
    const struct finish *const finish = &s->rates->finishes[b->finish];
    struct coat_pool pool = {.area = b->area};
    size_t n = 0;
    if (s->rates->coatings[b->coats[i].coating].tinted) {
        if (b->color == NULL && finish->colors.set && finish->colors.amount > 1) {
            pool.colors = measures_given(s->tape, s->m, "colors", &finish->colors);
        }
        return pool;
    }
    for (size_t k = 0; k < s->list->batch_count; k++) {
        if (s->list->batches[k].finish == b->finish) {
            s->pieces[n] = s->list->batches[k].coats[i].sprayed;
            s->each[n++] = s->list->batches[k].area;
        }
    }
    if (n > 1) {
        pool.sprayed = fig_sum(s->tape, "sprayed, all colors", s->m->volume, s->pieces, n);
        pool.all_area = fig_sum(s->tape, "sprayed area, all colors", s->m->area, s->each, n);
    }
    return pool;
}

static void mix_batch(const struct shelf *s, struct batch *b) {
    const struct finish *const finish = &s->rates->finishes[b->finish];
    tape_about_again(s->tape, b->subject);
    for (size_t i = 0; i < b->coat_count; i++) {
        const struct coat_pool pool = pool_of(s, b, i);
        coat_mix(&b->coats[i], s->tape, s->m, s->rates, &s->rates->sprays[finish->spray], &pool);
        coat_products(s, b, &b->coats[i]);
    }
    dry_batch(s, b, finish);
}

/* --- products
 * -----------------------------------------------------------------------------------------------------------
 */

/* The volume of product p that a coat line takes; none when it takes none. */
static fig coat_part(const struct coat_figures *c, size_t p) {
    if (c->product == p) {
        return c->coating_volume;
    }
    if (c->reducer_product == p) {
        return c->reducer;
    }
    return c->catalyst_product == p ? c->catalyst : (fig){0};
}

static fig product_need(const struct shelf *s, size_t p, fig *terms) {
    size_t n = 0;
    for (size_t b = 0; b < s->list->batch_count; b++) {
        const struct batch *const batch = &s->list->batches[b];
        for (size_t i = 0; i < batch->coat_count; i++) {
            const fig part = coat_part(&batch->coats[i], p);
            if (!fig_none(part)) {
                terms[n++] = part;
            }
        }
    }
    return fig_sum(s->tape, "needed", s->m->volume, terms, n);
}

static void buy_product(const struct shelf *s, struct product *p) {
    fig operands[1 + 2 * MOST_CONTAINER_SIZES] = {p->need};
    p->size_count = p->sizes->count;
    for (size_t i = 0; i < p->size_count; i++) {
        p->volumes[i] = measures_given(s->tape, s->m, "container", &p->sizes->s[i].limit);
        p->prices[i] = measures_given(s->tape, s->m, "container price", &p->sizes->s[i].value);
        operands[1 + 2 * i] = p->volumes[i];
        operands[2 + 2 * i] = p->prices[i];
    }
    fig_chosen(s->tape, "containers to buy", UNIT_COUNT, &containers_chooser, operands,
               1 + 2 * p->size_count, p->counts, p->size_count);
    p->bought = fig_total(s->tape, "bought", s->m->volume, p->counts, p->volumes, p->size_count);
    p->left_over = fig_plus(s->tape, "left over", p->bought, fig_minus(p->need));
    p->cost =
        fig_total(s->tape, "cost of containers", UNIT_MONEY, p->counts, p->prices, p->size_count);
    const bool used =
        s->rates->shop.charge_finish.choice == CHARGED_USED && tape_amount(s->tape, p->bought) > 0;
    p->charged = used ? fig_ratio(s->tape, "charged for what is used", UNIT_MONEY,
                                  (figs){{p->cost, p->need}}, (figs){{p->bought}})
                      : p->cost;
}

/* --- cost of the batches
 * --------------------------------------------------------------------------------------------------
 */

/* The part of product p's charge that falls on a volume of it. */
static fig charge_part(const struct shelf *s, const char *what, size_t p, fig volume) {
    if (p == SIZE_MAX || fig_none(volume) || tape_amount(s->tape, s->list->products[p].need) == 0) {
        return (fig){0};
    }
    const struct product *const product = &s->list->products[p];
    return fig_ratio(s->tape, what, UNIT_MONEY, (figs){{product->charged, volume}},
                     (figs){{product->need}});
}

static void charge_batch(const struct shelf *s, struct batch *b, fig *terms) {
    if (b->coat_count == 0) {
        return;
    }
    tape_about_again(s->tape, b->subject);
    for (size_t i = 0; i < b->coat_count; i++) {
        struct coat_figures *const c = &b->coats[i];
        const fig parts[] = {
            charge_part(s, "coating cost", c->product, c->coating_volume),
            charge_part(s, "reducer cost", c->reducer_product, c->reducer),
            charge_part(s, "catalyst cost", c->catalyst_product, c->catalyst),
        };
        c->cost = fig_sum(s->tape, "cost of the coats", UNIT_MONEY, parts, 3);
        terms[i] = c->cost;
    }
    b->cost = fig_sum(s->tape, "cost of the batch", UNIT_MONEY, terms, b->coat_count);
}

static size_t most_coats(const struct rates *rates, const struct finish_list *list) {
    size_t coats = 0;
    for (size_t b = 0; b < list->batch_count; b++) {
        coats += rates->finishes[list->batches[b].finish].coat_count;
    }
    return coats;
}

static bool make_products(const struct shelf *s, fig *terms) {
    struct finish_list *const list = s->list;
    for (size_t p = 0; p < list->product_count; p++) {
        struct product *const product = &list->products[p];
        const char *const name =
            product->color == NULL ? product->name
                                   : pool_format(s->pool, "%s, %s", product->name, product->color);
        if (name == NULL) {
            return false;
        }
        tape_about(s->tape, name);
        product->need = product_need(s, p, terms);
        buy_product(s, product);
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        charge_batch(s, &list->batches[b], terms);
    }
    return true;
}

bool finish_make(struct finish_list *list, struct pool *pool, struct tape *tape,
                 const struct measures *measures, const struct rates *rates,
                 const struct quantities *quantities) {
    *list = (struct finish_list){0};
    const size_t rows = quantities->count;
    struct shelf shelf = {.list = list,
                          .pool = pool,
                          .tape = tape,
                          .m = measures,
                          .rates = rates,
                          .quantities = quantities};
    list->batches = pool_take(pool, rows, sizeof *list->batches);
    list->batch_of = pool_take(pool, rows, sizeof *list->batch_of);
    shelf.pieces = pool_take(pool, rows, sizeof *shelf.pieces);
    shelf.each = pool_take(pool, rows, sizeof *shelf.each);
    if (pool_failed(pool)) {
        return false;
    }
    sort_rows(&shelf);
    const size_t coats = most_coats(rates, list);
    list->products = pool_take(pool, 3 * coats, sizeof *list->products);
    fig *const terms = pool_take(pool, coats, sizeof *terms);
    if (pool_failed(pool)) {
        return false;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        if (!spray_batch(&shelf, b)) {
            return false;
        }
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        mix_batch(&shelf, &list->batches[b]);
    }
    const bool held = make_products(&shelf, terms);
    tape_about_again(tape, 0);
    return held;
}
