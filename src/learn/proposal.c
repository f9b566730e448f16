/* SPDX-License-Identifier: MIT */
#include "learn/proposal.h"

#include "base/text.h"
#include "learn/learned_parts.h"
#include "learn/measured.h"

#include <string.h>

struct maker {
    const struct learned_job *jobs;
    size_t job_count;
    const struct rates *rates;
    struct pool *pool;
    struct proposals *made;
    int64_t shop; /* factor of all hours together, of MEASURED_ONE */
};

/* --- hours --- */

/* Of all that was noted in a job, hours noted over hours estimated; 0: nothing was noted of what
 * was estimated. */
static int64_t job_factor(const struct learned *learned) {
    int64_t noted = 0;
    int64_t estimated = 0;
    for (size_t i = 0; i < learned->work_count; i++) {
        if (learned->work[i].estimated > 0) {
            noted += learned->work[i].noted;
            estimated += learned->work[i].estimated;
        }
    }
    return estimated > 0 ? learned_share(noted, MEASURED_ONE, estimated) : 0;
}

/* How long everything takes in this shop: jobs differ little as a whole, shops do. */
static int64_t shop_factor(const struct maker *m) {
    struct measured shop = measured_start(MEASURED_ONE, MEASURED_ONE * 30 / 100);
    for (size_t i = 0; i < m->job_count; i++) {
        const int64_t factor = job_factor(m->jobs[i].learned);
        if (factor > 0) {
            measured_add(&shop, factor, MEASURED_ONE * 8 / 100);
        }
    }
    return measured_likely(&shop);
}

/* The spread of a rate that the file has: of its range a sixth, as a three-point estimate has it,
 * of what it is; else as usual. */
static int64_t spread_of(const struct rate_number *n, int64_t usual) {
    if (!rate_number_ranged(n)) {
        return usual;
    }
    const int64_t low = learned_value(&n->low, 6);
    const int64_t high = learned_value(&n->high, 6);
    const int64_t value = learned_value(&n->value, 6);
    const int64_t spread = value > 0 ? learned_share(high - low, MEASURED_ONE, 6 * value) : 0;
    return spread > 0 ? spread : usual;
}

/* What headings say of one operation. */
struct evidence {
    struct measured ratio; /* beside the shop's factor */
    int64_t noted, estimated;
    size_t jobs;
    const char *heading; /* the first */
};

/* One operation scatters by a quarter from job to job, and shops differ in it as much. A wider
 * heading says half as much of it. */
#define OPERATION_SPREAD (MEASURED_ONE / 4)

/* Whether a job has any of that operation: else its hours say nothing of it. */
static bool is_in(const struct estimate *e, int32_t operation) {
    for (size_t i = 0; i < e->labor.operation_count; i++) {
        const struct operation_figures *const o = &e->labor.operations[i];
        if (o->operation == operation && tape_amount(&e->tape, o->person_minutes) > 0) {
            return true;
        }
    }
    return false;
}

static struct evidence evidence_of(const struct maker *m, const struct rate_number *n,
                                   int32_t operation) {
    const int64_t spread = spread_of(n, OPERATION_SPREAD);
    struct evidence found = {.ratio = measured_start(MEASURED_ONE, spread)};
    for (size_t i = 0; i < m->job_count; i++) {
        const struct learned_work *const work =
            learned_heading(m->jobs[i].learned, m->rates, operation);
        if (work == NULL || work->estimated <= 0 || work->noted <= 0 || m->shop <= 0 ||
            !is_in(m->jobs[i].estimate, operation)) {
            continue;
        }
        const int64_t factor = learned_share(work->noted, MEASURED_ONE, work->estimated);
        measured_add(&found.ratio, learned_share(factor, MEASURED_ONE, m->shop),
                     OPERATION_SPREAD * (work->about == ACTUAL_OPERATION ? 1 : 2));
        found.noted += work->noted;
        found.estimated += work->estimated;
        found.jobs++;
        found.heading = found.heading == NULL ? work->name : found.heading;
    }
    return found;
}

static const char *jobs_text(const struct maker *m, size_t jobs) {
    return jobs == 1 ? "1 job" : pool_words(m->pool, "%zu jobs", jobs);
}

static const char *hours_text(const struct maker *m, int64_t minutes) {
    char text[32];
    return pool_words(m->pool, "%s h",
                      figure_text(learned_share(minutes, 1, 60), 2, text, sizeof text));
}

/* --- writing a number --- */

/* The number times a factor of MEASURED_ONE, with three digits that count at the least, of which it
 * may have so many decimals. */
static void scale(const struct rate_number *n, int64_t factor, int64_t *amount, uint8_t *decimals) {
    const uint8_t most = n->most_decimals < 4 ? n->most_decimals : 4;
    *decimals = n->value.decimals;
    for (;;) {
        int128 over = (int128)n->value.amount * factor;
        for (uint8_t d = n->value.decimals; d < *decimals; d++) {
            over *= 10;
        }
        *amount = (int64_t)int128_round(over, MEASURED_ONE);
        if (*amount >= 100 || *decimals >= most) {
            return;
        }
        ++*decimals;
    }
}

static const char *plain(const struct maker *m, const struct rate_number *n, int64_t factor,
                         bool with_unit) {
    char text[32];
    struct value value = {0};
    scale(n, factor, &value.amount, &value.decimals);
    value_drop_zeros(&value, n->value.unit == UNIT_MONEY ? 2 : 0);
    return pool_words(m->pool, "%s%s", figure_text(value.amount, value.decimals, text, sizeof text),
                      with_unit ? n->unit : "");
}

/* Proposes the number times likely, from low to high; nothing where it stays as it is written. */
static void propose(struct maker *m, const struct rate_number *n, struct measured_range range,
                    const char *why) {
    const char *const alone = plain(m, n, range.likely, true);
    const char *const low = plain(m, n, range.low, false);
    const char *const high = plain(m, n, range.high, false);
    const char *const as_is = plain(m, n, MEASURED_ONE, true);
    if (strcmp(alone, as_is) == 0 || pool_failed(m->pool)) {
        return;
    }
    m->made->list[m->made->count++] = (struct proposal){
        .number = n,
        .text = pool_words(m->pool, "%s (%s to %s)", alone, low, high),
        .alone = plain(m, n, range.likely, false),
        .low = low,
        .high = high,
        .small = range.likely < MEASURED_ONE * 105 / 100 && range.likely > MEASURED_ONE * 95 / 100,
        .why = why};
}

/* --- each kind of rate --- */

static void propose_operation(struct maker *m, const struct rate_number *n, int32_t operation) {
    const bool feed = text_same(n->key, "feed");
    if (!feed && !text_same(n->key, "minutes") && !text_same(n->key, "handling") &&
        !text_same(n->key, "setup")) {
        return;
    }
    const struct evidence found = evidence_of(m, n, operation);
    if (found.jobs == 0) {
        return;
    }
    struct measured_range range = measured_range(&found.ratio);
    range.likely = learned_share(range.likely, m->shop, MEASURED_ONE);
    range.low = learned_share(range.low, m->shop, MEASURED_ONE);
    range.high = learned_share(range.high, m->shop, MEASURED_ONE);
    if (feed) { /* the faster, the less time */
        range = measured_inverse(range);
    }
    propose(m, n, range,
            pool_words(m->pool, "%s, %s for %s in %s", found.heading, hours_text(m, found.noted),
                       hours_text(m, found.estimated), jobs_text(m, found.jobs)));
}

/* A percent that goods tell: waste, transfer. take: what a job says, in hundredths; 0: nothing. */
static void propose_percent(struct maker *m, const struct rate_number *n, enum name_kind kind,
                            int32_t index, int64_t usual,
                            int64_t (*take)(const struct learned_goods *)) {
    const int64_t was = learned_value(&n->value, 2);
    struct measured ratio = measured_start(MEASURED_ONE, spread_of(n, usual));
    size_t jobs = 0;
    const char *name = "";
    for (size_t i = 0; i < m->job_count; i++) {
        const struct learned *const l = m->jobs[i].learned;
        size_t of_job = 0;
        for (size_t g = 0; g < l->goods_count && was > 0; g++) {
            const struct learned_goods *const goods = &l->goods[g];
            const bool mine =
                kind == NAME_SPRAY
                    ? goods->transfer > 0 &&
                          text_same(goods->way->name.s, name_at(m->rates, kind, (size_t)index))
                    : goods->kind == kind && goods->index == index;
            if (mine && take(goods) > 0) {
                measured_add(&ratio, learned_share(take(goods), MEASURED_ONE, was), usual);
                name = goods->name;
                of_job++;
            }
        }
        jobs += of_job > 0 ? 1 : 0;
    }
    if (jobs > 0) {
        propose(m, n, measured_range(&ratio),
                pool_words(m->pool, "as measured of %s in %s", name, jobs_text(m, jobs)));
    }
}

static int64_t take_waste(const struct learned_goods *goods) {
    return goods->has_waste ? goods->waste : 0;
}
static int64_t take_transfer(const struct learned_goods *goods) {
    return goods->transfer;
}

/* Whether one price tells what any amount of a material costs. */
static bool has_one_price(const struct rates *rates, enum name_kind kind, int32_t index) {
    switch (kind) {
    case NAME_LUMBER:
        return rates->lumber[index].breaks.count == 0;
    case NAME_SHEET:
        return !rates->sheets[index].half_price.set;
    case NAME_GLASS:
        return !rates->glass[index].stops.set && !rates->glass[index].minimum.set;
    case NAME_HARDWARE:
        return rates->hardware[index].price_by.choice == PRICE_EACH;
    default:
        return false;
    }
}

/* A price is known, not estimated: it is what was paid at last. */
static void propose_price(struct maker *m, const struct rate_number *n, enum name_kind kind,
                          int32_t index) {
    const uint8_t money = m->jobs[0].learned->money_decimals;
    const struct learned_goods *paid = NULL;
    int32_t day = 0;
    for (size_t i = 0; i < m->job_count; i++) {
        const struct learned *const l = m->jobs[i].learned;
        for (size_t g = 0; g < l->goods_count; g++) {
            const struct learned_goods *const goods = &l->goods[g];
            if (goods->kind == kind && goods->index == index && goods->paid_for > 0) {
                paid = goods;
                day = job_quoted(m->jobs[i].estimate->job);
            }
        }
    }
    if (paid == NULL || !has_one_price(m->rates, kind, index)) {
        return;
    }
    const int64_t price = learned_share(paid->paid, GOODS_ONE, paid->paid_for);
    const char *const text = rate_number_text(n, price, money, m->pool);
    const bool anew = n->on.set && n->on.amount < day; /* the same, and known of late */
    if (price > 0 && (anew || price != learned_value(&n->value, money)) && !pool_failed(m->pool)) {
        char amounts[2][32];
        m->made->list[m->made->count++] = (struct proposal){
            .number = n,
            .text = text,
            .alone = text,
            .paid_on = day,
            .why = pool_words(m->pool, "%s paid for %s",
                              figure_text(paid->paid, money, amounts[0], sizeof amounts[0]),
                              figure_text(learned_share(paid->paid_for, 100, GOODS_ONE), 2,
                                          amounts[1], sizeof amounts[1]))};
    }
}

/* The index behind `kind ` at the begin of the section's words; -1: another kind. */
static int32_t index_of(const struct maker *m, const struct rate_number *n, enum name_kind kind) {
    const char *const section = name_section(kind);
    const size_t size = strlen(section);
    if (strncmp(n->section, section, size) != 0 || n->section[size] != ' ') {
        return -1;
    }
    return name_find(m->rates, kind, n->section + size + 1);
}

static void propose_number(struct maker *m, const struct rate_number *n) {
    static const enum name_kind priced[] = {NAME_LUMBER, NAME_SHEET, NAME_GLASS, NAME_HARDWARE};
    for (size_t i = 0; i < sizeof priced / sizeof *priced && text_same(n->key, "price"); i++) {
        const int32_t index = index_of(m, n, priced[i]);
        if (index >= 0) {
            propose_price(m, n, priced[i], index);
            return;
        }
    }
    const int32_t operation = index_of(m, n, NAME_OPERATION);
    const int32_t lumber = index_of(m, n, NAME_LUMBER);
    const int32_t sheet = index_of(m, n, NAME_SHEET);
    const int32_t spray = index_of(m, n, NAME_SPRAY);
    if (operation >= 0) {
        propose_operation(m, n, operation);
    } else if (lumber >= 0 && text_same(n->key, "waste")) {
        propose_percent(m, n, NAME_LUMBER, lumber, MEASURED_ONE / 5, take_waste);
    } else if (sheet >= 0 && text_same(n->key, "waste")) {
        propose_percent(m, n, NAME_SHEET, sheet, MEASURED_ONE / 5, take_waste);
    } else if (spray >= 0 && text_same(n->key, "transfer efficiency")) {
        propose_percent(m, n, NAME_SPRAY, spray, MEASURED_ONE * 8 / 100, take_transfer);
    }
}

bool proposals_make(struct proposals *proposals, const struct learned_job *jobs, size_t count,
                    struct pool *pool) {
    const struct rates *const rates = jobs[0].estimate->rates;
    struct maker m = {jobs, count, rates, pool, proposals, 0};
    *proposals = (struct proposals){
        .list = pool_take(pool, rates->numbers.count + 1, sizeof *proposals->list)};
    if (proposals->list == NULL) {
        return false;
    }
    m.shop = shop_factor(&m);
    for (size_t i = 0; i < rates->numbers.count && !pool_failed(pool); i++) {
        propose_number(&m, &rates->numbers.list[i]);
    }
    return !pool_failed(pool);
}
