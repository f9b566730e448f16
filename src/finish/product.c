/* SPDX-License-Identifier: MIT */
#include "finish/product.h"

#include "model/name.h"

/* --- need ------------------------------------------------------------------------------------- */

/* What the coats take of each product, a product after another. */
struct uses {
    fig *terms;
    size_t *first; /* of each product among the terms, and behind the last */
};

/* The volume and product that stand at place n of a coat, of PRODUCTS_OF_COAT. */
static fig use_of(const struct coat_figures *coat, size_t n, size_t *product) {
    const fig volumes[PRODUCTS_OF_COAT] = {coat->coating_volume, coat->reducer, coat->catalyst,
                                           coat->cleaning};
    const size_t products[PRODUCTS_OF_COAT] = {coat->product, coat->reducer_product,
                                               coat->catalyst_product, coat->cleaning_product};
    *product = products[n];
    return volumes[n];
}

/* Sorts the uses of all coats by product. false: out of memory. */
static bool find_uses(const struct calc *c, const struct finish_list *list, struct uses *uses) {
    size_t coats = 0;
    for (size_t b = 0; b < list->batch_count; b++) {
        coats += list->batches[b].coat_count;
    }
    size_t *const next = pool_take(c->pool, list->product_count + 2, sizeof *next);
    uses->terms = pool_take(c->pool, coats * PRODUCTS_OF_COAT, sizeof *uses->terms);
    if (pool_failed(c->pool)) {
        return false;
    }
    /* counted two places on, so that what is put there then ends each product one place on */
    for (int pass = 0; pass < 2; pass++) {
        for (size_t b = 0; b < list->batch_count; b++) {
            for (size_t i = 0; i < list->batches[b].coat_count * PRODUCTS_OF_COAT; i++) {
                size_t p;
                const fig volume =
                    use_of(&list->batches[b].coats[i / PRODUCTS_OF_COAT], i % PRODUCTS_OF_COAT, &p);
                if (p != SIZE_MAX && pass == 0) {
                    next[p + 2]++;
                } else if (p != SIZE_MAX) {
                    uses->terms[next[p + 1]++] = volume;
                }
            }
        }
        for (size_t p = 0; pass == 0 && p < list->product_count; p++) {
            next[p + 2] += next[p + 1];
        }
    }
    uses->first = next;
    return true;
}

/* What all coats take of product p. */
static fig product_used(const struct calc *c, const struct uses *uses, size_t p) {
    return fig_sum(c->tape, "used", c->units->volume, &uses->terms[uses->first[p]],
                   uses->first[p + 1] - uses->first[p]);
}

/* How many colors a tinted product without a color stands for: as many as its finish says. */
static fig colors_of(const struct calc *c, const struct finish_list *list, size_t p) {
    const struct product *const product = &list->products[p];
    if (product->color != NULL || !c->rates->coatings[product->coating].tinted) {
        return c->units->one;
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        const struct value *const colors = &c->rates->finishes[list->batches[b].finish].colors;
        for (size_t i = 0; colors->set && i < list->batches[b].coat_count; i++) {
            if (list->batches[b].coats[i].product == p) {
                return calc_given(c, "colors", colors);
            }
        }
    }
    return c->units->one;
}

/* How many of the jobs that were put together take product p: each has its own client, who keeps
 * some of it. */
static size_t clients_of(const struct calc *c, const struct finish_list *list, size_t p) {
    size_t clients = 0;
    for (size_t j = 0; c->job->joined != NULL && j < c->job->joined->count; j++) {
        bool takes = false;
        for (size_t b = 0; b < list->batch_count; b++) {
            const struct batch *const batch = &list->batches[b];
            bool of_product = false;
            for (size_t i = 0; i < batch->coat_count; i++) {
                of_product = of_product || batch->coats[i].product == p;
            }
            for (size_t r = 0; of_product && r < batch->row_count; r++) {
                const size_t leaf = list->rows[batch->first_row + r];
                const struct row *const row = c->quantities->leaves[leaf].door->row;
                takes = takes || c->job->joined->job_of[row - c->job->rows] == j;
            }
        }
        clients += takes ? 1 : 0;
    }
    return clients;
}

/* Colors of product p of which touch-up is kept, of each client. */
static fig kept_colors(const struct calc *c, const struct finish_list *list, size_t p) {
    const fig colors = colors_of(c, list, p);
    const size_t clients = clients_of(c, list, p);
    return clients < 2 ? colors
                       : calc_product(c, "colors of all jobs", UNIT_COUNT, colors,
                                      tape_constant(c->tape, "jobs that take it", UNIT_COUNT, 0,
                                                    (int64_t)clients, "counted"));
}

/* What is needed where the coats take so much: with the reserve and what the client keeps. */
static fig with_reserve(const struct calc *c, const struct finish_list *list, size_t p, fig used,
                        fig *reserve, fig *touch_up) {
    const struct product *const product = &list->products[p];
    const enum unit unit = c->units->volume;
    if (product->coating < 0) {
        return used;
    }
    const struct coating *const coating = &c->rates->coatings[product->coating];
    const fig percent = calc_given(c, "reserve, percent", &coating->reserve);
    const fig each = calc_given(c, "touch-up, a color", &coating->touch_up);
    *reserve = fig_none(percent) ? percent : calc_percent(c, "reserve", unit, used, percent);
    *touch_up =
        fig_none(each) ? each : calc_product(c, "touch-up", unit, kept_colors(c, list, p), each);
    return fig_none(percent) && fig_none(each)
               ? used
               : fig_sum(c->tape, "needed", unit, (fig[]){used, *reserve, *touch_up}, 3);
}

static void need_at(const struct calc *c, const struct finish_list *list, size_t p,
                    enum transfer_at at, fig used) {
    struct product *const product = &list->products[p];
    fig reserve = {0};
    fig touch_up = {0};
    const fig need = with_reserve(c, list, p, used, &reserve, &touch_up);
    if (at == TRANSFER_HIGH) {
        product->need_high = need;
        return;
    }
    product->need_low = need;
    product->left_low = fig_sum(c->tape, "left over at the lowest transfer", c->units->volume,
                                (fig[]){product->bought, product->from_rack, fig_minus(need)}, 3);
}

bool products_need_at(const struct calc *c, const struct finish_list *list, enum transfer_at at) {
    struct uses uses;
    const bool held = find_uses(c, list, &uses);
    for (size_t p = 0; held && p < list->product_count; p++) {
        tape_about_again(c->tape, list->products[p].subject);
        need_at(c, list, p, at, product_used(c, &uses, p));
    }
    return held;
}

/* --- containers ------------------------------------------------------------------------------- */

/* What is on the rack of a product; NULL: nothing. */
static const struct rack_item *on_rack(const struct calc *c, const struct product *p) {
    return p->coating >= 0 ? rack_find(&c->rates->rack, NAME_COATING, p->coating, p->color)
                           : rack_find(&c->rates->rack, NAME_ADDITIVE, p->additive, NULL);
}

static void take_from_rack(const struct calc *c, struct product *p) {
    const struct rack_item *const item = on_rack(c, p);
    p->to_buy = p->need;
    if (item != NULL) {
        const fig left = calc_given(c, "on the rack", &item->left);
        p->from_rack = fig_smaller(c->tape, "from the rack", p->need, left);
        p->to_buy = fig_plus(c->tape, "needed beside the rack", p->need, fig_minus(p->from_rack));
    }
}

/* What the job is charged for the part of the rack that it takes. */
static void charge_rack(const struct calc *c, struct product *p) {
    const struct rack_item *const item = on_rack(c, p);
    if (item != NULL && item->worth.set && item->left.amount > 0) {
        const fig worth = calc_given(c, "worth of what is on the rack", &item->worth);
        const fig left = calc_given(c, "on the rack", &item->left);
        const fig part = fig_ratio(c->tape, "worth of what is taken from the rack", UNIT_MONEY,
                                   (figs){{worth, p->from_rack}}, (figs){{left}});
        p->charged = fig_plus(c->tape, "charged, with the rack", p->charged, part);
    }
}

static void buy_product(const struct calc *c, struct product *p) {
    const size_t n = p->sizes->count;
    fig operands[1 + 2 * MOST_CONTAINER_SIZES] = {0};
    take_from_rack(c, p);
    operands[0] = p->to_buy;
    p->size_count = n;
    for (size_t i = 0; i < n; i++) {
        p->volumes[i] = calc_given(c, "container", &p->sizes->s[i].limit);
        p->prices[i] = calc_given(c, "container price", &p->sizes->s[i].value);
        operands[1 + 2 * i] = p->volumes[i];
        operands[2 + 2 * i] = p->prices[i];
    }
    fig_chosen(c->tape, "containers to buy", UNIT_COUNT, &containers_chooser, operands, 1 + 2 * n,
               p->counts, n);
    p->bought = fig_total(c->tape, "bought", c->units->volume, p->counts, p->volumes, n);
    p->left_over = fig_plus(c->tape, "left over", p->bought, fig_minus(p->to_buy));
    p->cost = fig_total(c->tape, "cost of containers", UNIT_MONEY, p->counts, p->prices, n);
    p->charged = p->cost;
    if (c->rates->shop.charge_finish.choice == CHARGED_USED &&
        tape_amount(c->tape, p->bought) > 0) {
        p->charged = fig_ratio(c->tape, "charged for what is used", UNIT_MONEY,
                               (figs){{p->cost, p->to_buy}}, (figs){{p->bought}});
    }
    charge_rack(c, p);
}

/* --- cost of the batches ---------------------------------------------------------------------- */

/* The part of product p's charge that falls on a volume of it. */
static fig charge_part(const struct calc *c, const struct finish_list *list, const char *what,
                       size_t p, fig volume) {
    if (p == SIZE_MAX || fig_none(volume) || tape_amount(c->tape, list->products[p].used) == 0) {
        return (fig){0};
    }
    const struct product *const product = &list->products[p];
    return fig_ratio(c->tape, what, UNIT_MONEY, (figs){{product->charged, volume}},
                     (figs){{product->used}});
}

static void charge_batch(const struct calc *c, const struct finish_list *list, struct batch *b) {
    static const char *const labels[PRODUCTS_OF_COAT] = {"coating cost", "reducer cost",
                                                         "catalyst cost", "cleaning cost"};
    fig costs[MOST_COATS];
    if (b->coat_count == 0) {
        return;
    }
    tape_about_again(c->tape, b->subject);
    for (size_t i = 0; i < b->coat_count; i++) {
        struct coat_figures *const coat = &b->coats[i];
        fig parts[PRODUCTS_OF_COAT];
        for (size_t n = 0; n < PRODUCTS_OF_COAT; n++) {
            size_t product;
            const fig volume = use_of(coat, n, &product);
            parts[n] = charge_part(c, list, labels[n], product, volume);
        }
        coat->cost = fig_sum(c->tape, "cost of the coats", UNIT_MONEY, parts, PRODUCTS_OF_COAT);
        costs[i] = coat->cost;
    }
    b->cost = fig_sum(c->tape, "cost of the batch", UNIT_MONEY, costs, b->coat_count);
}

const char *finish_with_color(const struct calc *c, const char *name, const char *color) {
    return color == NULL ? name : pool_format(c->pool, "%s, %s", name, color);
}

bool products_make(const struct calc *c, struct finish_list *list) {
    struct uses uses;
    if (!find_uses(c, list, &uses)) {
        return false;
    }
    for (size_t p = 0; p < list->product_count; p++) {
        struct product *const product = &list->products[p];
        product->title = finish_with_color(c, product->name, product->color);
        if (product->title == NULL) {
            return false;
        }
        product->subject = tape_about(c->tape, product->title);
        product->used = product_used(c, &uses, p);
        product->need =
            with_reserve(c, list, p, product->used, &product->reserve, &product->touch_up);
        buy_product(c, product);
    }
    for (size_t b = 0; b < list->batch_count; b++) {
        charge_batch(c, list, &list->batches[b]);
    }
    return true;
}

int64_t product_holds_from(const struct tape *tape, const struct product *product) {
    struct container_size sizes[MOST_CONTAINER_SIZES];
    for (size_t i = 0; i < product->size_count; i++) {
        sizes[i] = (struct container_size){.volume = tape_scaled(tape, product->volumes[i], 6),
                                           .price = tape_scaled(tape, product->prices[i], 6)};
    }
    return containers_hold_from(tape_scaled(tape, product->to_buy, 6), 100, sizes,
                                product->size_count) /
           100;
}
