/* SPDX-License-Identifier: MIT */
#include "report/words/sale_line.h"

#include "base/text.h"

#define AT(member) offsetof(struct sale_figures, member)

/* The percent that a line hangs on: without one it comes to nothing. */
static const struct {
    size_t line, rate;
    bool made; /* the percent makes the line, and stands beside it */
} hangs[] = {
    {AT(discount), AT(discount_rate), true}, {AT(after_discount), AT(discount_rate), false},
    {AT(subtotal), AT(tax_rate), false},     {AT(taxable), AT(tax_rate), false},
    {AT(tax), AT(tax_rate), true},           {AT(before_fee), AT(card_rate), false},
    {AT(card_fee), AT(card_rate), true},     {AT(deposit), AT(deposit_rate), true},
};

static fig figure_at(const struct estimate *e, size_t offset) {
    return field_figure(field_at(&fields_sale, offset), &e->sale);
}

bool sale_line_is(const struct sale_line *line, size_t offset) {
    return line->field != NULL && line->field->offset == offset;
}

const char *sale_tax_name(const struct job *job) {
    return job->sale.tax_name.s == NULL ? "tax" : job->sale.tax_name.s;
}

const char *sale_exempt(struct pool *pool, const struct estimate *e) {
    const char *const exempt = text_or_empty(e->job->sale.exempt.s);
    return !fig_none(e->sale.tax) || exempt[0] == '\0'
               ? NULL
               : pool_format(pool, "no %s: exempt, certificate %s", sale_tax_name(e->job), exempt);
}

static const char *taxed_words(struct pool *pool, const struct sale *sale) {
    static const char *const on[] = {[TAX_ON_SELLING_PRICE] = "all but delivery",
                                     [TAX_ON_MATERIALS_SOLD] = "materials at selling price",
                                     [TAX_ON_MATERIALS_COST] = "materials at cost",
                                     [TAX_ON_NOTHING] = "nothing"};
    const bool delivery =
        sale->tax_on.choice != TAX_ON_SELLING_PRICE && sale->tax_delivery.choice != 0;
    return pool_format(pool, "(of this taxed: %s%s)", on[sale->tax_on.choice],
                       delivery ? ", delivery" : "");
}

static const char *label_of(struct pool *pool, const struct estimate *e,
                            const struct field *field) {
    const char *const tax = sale_tax_name(e->job);
    switch (field->offset) {
    case AT(subtotal):
        return pool_format(pool, "before %s", tax);
    case AT(taxable):
        return taxed_words(pool, &e->job->sale);
    case AT(tax):
        return tax;
    case AT(card_fee):
        return e->job->sale.card_fee_of.choice == CARD_FEE_OF_PAID
                   ? "card fee, of what the card takes"
                   : field_label(field);
    case AT(total):
        return pool_format(pool, "total, %s", e->rates->shop.currency.s);
    default:
        return field_label(field);
    }
}

/* The money of a line; none where the paper would say nothing new. */
static fig money_of(const struct estimate *e, const struct field *field) {
    const struct sale_figures *const s = &e->sale;
    const bool untaxed = field->offset == AT(subtotal) && fig_none(s->tax);
    const bool all_taxed = field->offset == AT(taxable) && fig_same(s->taxable, s->subtotal);
    const bool whole = field->offset == AT(balance) && fig_none(s->deposit) && s->stage_count == 0;
    return untaxed || all_taxed || whole ? (fig){0} : field_figure(field, s);
}

static struct sale_line line_of(struct pool *pool, const struct estimate *e,
                                const struct field *field) {
    struct sale_line line = {
        .field = field,
        .label = label_of(pool, e, field),
        .money = money_of(e, field),
        .less = field->offset == AT(discount),
        .payment = field->offset == AT(deposit) || field->offset == AT(balance),
    };
    line.asked = !fig_none(line.money) &&
                 (field->offset != AT(minimum_line) || tape_amount(&e->tape, line.money) > 0);
    for (size_t i = 0; i < sizeof hangs / sizeof *hangs; i++) {
        if (hangs[i].line == field->offset) {
            const fig rate = figure_at(e, hangs[i].rate);
            line.asked = line.asked && sale_asked(&e->tape, rate);
            line.rate = hangs[i].made ? rate : (fig){0};
        }
    }
    return line;
}

static void add_charges(struct sale_lines *l, const struct estimate *e) {
    for (size_t i = 0; i < e->sale.charge_count; i++) {
        l->lines[l->count++] = (struct sale_line){.label = e->job->sale.charges[i].name.s,
                                                  .money = e->sale.charges[i],
                                                  .asked = !fig_none(e->sale.charges[i])};
    }
}

static void add_stages(struct sale_lines *l, struct pool *pool, const struct estimate *e) {
    for (size_t i = 0; i < e->sale.stage_count; i++) {
        const char *const name = e->job->sale.stages[i].name.s;
        l->lines[l->count++] = (struct sale_line){
            .label = name == NULL ? "as work goes on" : pool_format(pool, "when %s", name),
            .rate = e->sale.stage_rates[i],
            .money = e->sale.stages[i],
            .asked = true,
            .payment = true};
    }
}

struct sale_lines sale_lines_make(struct pool *pool, const struct estimate *e) {
    const size_t most = fields_sale.count + e->sale.charge_count + e->sale.stage_count;
    struct sale_lines l = {.lines = pool_take(pool, most, sizeof *l.lines)};
    for (size_t i = 0; l.lines != NULL && i < fields_sale.count; i++) {
        const struct field *const field = &fields_sale.fields[i];
        if ((field->views & FIELD_LINE) == 0) {
            continue;
        }
        if (field->offset == AT(delivery)) {
            add_charges(&l, e);
        } else if (field->offset == AT(balance)) {
            add_stages(&l, pool, e);
        }
        l.lines[l.count++] = line_of(pool, e, field);
    }
    if (pool_failed(pool)) {
        l.count = 0;
    }
    return l;
}
