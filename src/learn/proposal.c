/* SPDX-License-Identifier: MIT */
#include "learn/proposal.h"

#include "base/text.h"
#include "learn/proposal_parts.h"

#include <string.h>

/* --- what all kinds of rates have --- */

int64_t proposal_spread(const struct rate_number *n, int64_t usual) {
    if (!rate_number_ranged(n)) {
        return usual;
    }
    const int64_t low = learned_value(&n->low, 6);
    const int64_t high = learned_value(&n->high, 6);
    const int64_t value = learned_value(&n->value, 6);
    const int64_t spread = value > 0 ? learned_share(high - low, MEASURED_ONE, 6 * value) : 0;
    return spread > 0 ? spread : usual;
}

void proposal_none(struct maker *m, const char *what, const char *why, bool as_is) {
    struct proposals *const made = m->made;
    for (size_t i = 0; i < made->unmoved_count; i++) {
        if (text_same(made->unmoved[i].what, what)) {
            return; /* further jobs say the same of it */
        }
    }
    if (!pool_failed(m->pool)) {
        made->unmoved[made->unmoved_count++] = (struct unmoved){what, why, as_is};
    }
}

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
    const int64_t spread = proposal_spread(n, OPERATION_SPREAD);
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

const char *proposal_jobs(const struct maker *m, size_t jobs) {
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

/* What a limit of the number's key is of it. */
static int128 limit_factor(const struct rate_number *n, int32_t limit) {
    int128 over = (int128)limit * MEASURED_ONE;
    for (uint8_t d = 0; d < n->value.decimals; d++) {
        over *= 10;
    }
    return over / n->value.amount;
}

/* A factor that leads no further than the number's key takes, up or down. */
static int64_t within(const struct rate_number *n, int64_t factor) {
    if (n->value.amount <= 0) {
        return factor;
    }
    if (n->most != RATE_NO_LIMIT && factor > limit_factor(n, n->most)) {
        return (int64_t)limit_factor(n, n->most);
    }
    /* rounded up, so that no digit lies below it */
    return n->least > 0 && factor < limit_factor(n, n->least)
               ? (int64_t)limit_factor(n, n->least) + 1
               : factor;
}

void proposal_add(struct maker *m, const struct rate_number *n, struct measured_range range,
                  const char *why) {
    range.likely = within(n, range.likely);
    range.low = within(n, range.low < range.likely ? range.low : range.likely);
    range.high = within(n, range.high);
    const char *const alone = plain(m, n, range.likely, true);
    const char *const low = plain(m, n, range.low, false);
    const char *const high = plain(m, n, range.high, false);
    const char *const as_is = plain(m, n, MEASURED_ONE, true);
    if (pool_failed(m->pool)) {
        return;
    }
    if (strcmp(alone, as_is) == 0) {
        proposal_none(m, pool_words(m->pool, "%s %s", n->section, n->key),
                      pool_words(m->pool, "%s: it would be written as it is", why), true);
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
    proposal_add(m, n, range,
                 pool_words(m->pool, "%s, %s for %s in %s", found.heading,
                            hours_text(m, found.noted), hours_text(m, found.estimated),
                            proposal_jobs(m, found.jobs)));
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
    static const enum name_kind kinds[] = {NAME_LUMBER,  NAME_SHEET,    NAME_GLASS,
                                           NAME_BANDING, NAME_HARDWARE, NAME_SPRAY};
    const int32_t operation = index_of(m, n, NAME_OPERATION);
    if (operation >= 0) {
        propose_operation(m, n, operation);
    } else if (text_same(n->section, "shop") && text_same(n->key, "remakes")) {
        propose_remakes(m, n);
    }
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        const int32_t index = index_of(m, n, kinds[i]);
        if (index >= 0) {
            propose_of_goods(m, n, kinds[i], index);
        }
    }
}

bool proposals_make(struct proposals *proposals, const struct learned_job *jobs, size_t count,
                    struct pool *pool) {
    const struct rates *const rates = jobs[0].estimate->rates;
    struct maker m = {jobs, count, rates, pool, proposals, 0};
    size_t room = rates->numbers.count + 1; /* remakes that no rate holds */
    for (size_t i = 0; i < count; i++) {    /* of goods price, and waste or transfer */
        room += jobs[i].learned->work_count + 2 * jobs[i].learned->goods_count;
    }
    *proposals = (struct proposals){
        .list = pool_take(pool, rates->numbers.count + 1, sizeof *proposals->list),
        .unmoved = pool_take(pool, room, sizeof *proposals->unmoved)};
    if (proposals->list == NULL || proposals->unmoved == NULL) {
        return false;
    }
    m.shop = shop_factor(&m);
    for (size_t i = 0; i < rates->numbers.count && !pool_failed(pool); i++) {
        propose_number(&m, &rates->numbers.list[i]);
    }
    proposals_explain(&m);
    return !pool_failed(pool);
}
