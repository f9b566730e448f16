/* SPDX-License-Identifier: MIT */
#include "bridge/bridge.h"

#include "base/text.h"
#include "bridge/mix.h"
#include "read/job/job_file.h"
#include "read/job/job_keys.h"
#include "read/rates/rates_file.h"

/* What the walk works with. */
struct walk {
    struct bridge *bridge;
    struct job_texts older, newer;
    struct job_pair pair;
    const char *option;
    struct plan_request plans;
    bool failed; /* memory is out */
};

/* What texts come to. */
struct tried {
    struct outcome outcome;
    bool has;        /* else they could not be read or estimated so */
    const char *why; /* the first that is wrong; may be NULL */
    const char *currency;
    uint8_t money_decimals;
};

static bool find_option(const struct job *job, const char *name, int *option) {
    *option = -1;
    for (size_t i = 0; name != NULL && i < job->option_count; i++) {
        if (text_same(job->options[i].name.s, name)) {
            *option = (int)i;
        }
    }
    return name == NULL || *option >= 0;
}

/* Problems of their own, in which the files of the texts have the numbers that their places have.
 */
static void begin_problems(const struct walk *walk, struct problems *problems) {
    problems_init(problems);
    for (size_t i = 0; i < walk->bridge->read.file_count; i++) {
        (void)problems_file(problems, problems_file_name(&walk->bridge->read, (uint16_t)(i + 1)));
    }
}

static const char *first_error(const struct walk *walk, struct problems *problems) {
    problems_sort(problems);
    for (size_t i = 0; i < problems->count; i++) {
        if (problems->list[i].severity == SEVERITY_ERROR) {
            return pool_words(&walk->bridge->pool, "%s", problems->list[i].text);
        }
    }
    return NULL;
}

static struct tried try_texts(struct walk *walk, const struct job_texts *texts) {
    struct tried tried = {.currency = ""};
    struct problems problems;
    struct job job;
    struct rates rates;
    int option;
    begin_problems(walk, &problems);
    if (!job_read_texts(&job, &rates, texts, &problems)) {
        walk->failed = true;
    } else if (problems_count(&problems, SEVERITY_ERROR) > 0) {
        tried.why = first_error(walk, &problems);
    } else if (find_option(&job, walk->option, &option)) {
        const enum estimate_result result =
            outcome_try(&tried.outcome, &rates, &job, option, walk->plans);
        tried.has = result == ESTIMATE_OK;
        walk->failed = walk->failed || result == ESTIMATE_MEMORY;
        tried.currency =
            pool_words(&walk->bridge->pool, "%s", text_or_empty(rates.shop.currency.s));
        tried.money_decimals = rates.shop.money_decimals;
    }
    job_clear(&job);
    rates_clear(&rates);
    problems_clear(&problems);
    return tried;
}

/* What the job comes to with those groups taken from the newer. */
static struct tried try_mix(struct walk *walk, unsigned taken) {
    struct pool pool;
    struct job_texts mix;
    struct tried tried = {0};
    pool_init(&pool);
    if (mix_make(&mix, &walk->pair, taken, &pool)) {
        tried = try_texts(walk, &mix);
    } else {
        walk->failed = true;
    }
    pool_clear(&pool);
    return tried;
}

static void take_steps(struct walk *walk, struct bridge *bridge) {
    const struct bridge_changes *const changes = &bridge->changes;
    struct outcome at = bridge->older;
    struct bridge_step step = {0};
    unsigned taken = 0;
    for (size_t g = 0; g < BRIDGE_GROUP_COUNT && !walk->failed; g++) {
        const size_t count = changes->first[g + 1] - changes->first[g];
        const bool last = g == BRIDGE_REST;
        taken |= 1u << g;
        /* the order of rows and sections is in no list of changes */
        if (count == 0 &&
            !(last && (step.groups != 0 || !outcome_none(outcome_minus(bridge->newer, at))))) {
            continue;
        }
        if (step.groups == 0) {
            step.changes = &changes->list[changes->first[g]];
        }
        step.groups |= 1u << g;
        step.change_count += count;
        const struct tried now =
            last ? (struct tried){.outcome = bridge->newer, .has = true} : try_mix(walk, taken);
        if (now.has) {
            step.adds = outcome_minus(now.outcome, at);
            bridge->steps[bridge->step_count++] = step;
            step = (struct bridge_step){0};
            at = now.outcome;
        } else if (step.why == NULL) {
            step.why = now.why == NULL ? "it cannot be estimated" : now.why;
        }
    }
}

static const char *unit_of(const struct ini *ini, const char *kind) {
    for (size_t i = 0; i < ini->count; i++) {
        if (text_same(ini->sections[i].kind, kind)) {
            const struct ini_key *const key = mix_key(&ini->sections[i], "unit");
            return key == NULL ? "" : key->value;
        }
    }
    return "";
}

static bool same_units(const struct walk *walk) {
    return text_same(unit_of(&walk->older.job, "job"), unit_of(&walk->newer.job, "job")) &&
           text_same(unit_of(&walk->older.rates, "shop"), unit_of(&walk->newer.rates, "shop"));
}

/* A saved quote has neither terms nor picture of the shop; that the other job has is no change. */
static void leave_papers(struct ini *rates) {
    for (size_t i = 0; i < rates->count; i++) {
        struct ini_section *const s = &rates->sections[i];
        size_t kept = 0;
        for (size_t k = 0; k < s->count; k++) {
            if (!text_same(s->kind, "shop") || !job_texts_paper(s->keys[k].name)) {
                s->keys[kept++] = s->keys[k];
            }
        }
        s->count = kept;
    }
}

/* A column is the same in both lists whatever each calls it. */
static bool name_columns(struct job_texts *texts, struct pool *pool) {
    return door_list_name(&texts->list, unit_before(&texts->job, "job"), pool);
}

static enum bridge_result make(struct walk *walk, struct bridge *bridge) {
    struct pool *const pool = &bridge->pool;
    const struct tried older = try_texts(walk, &walk->older);
    const struct tried newer = try_texts(walk, &walk->newer);
    if (walk->failed) {
        return BRIDGE_MEMORY;
    }
    if (!older.has || !newer.has) {
        return BRIDGE_FAULT;
    }
    if (!text_same(older.currency, newer.currency)) {
        return BRIDGE_CURRENCY;
    }
    if (!same_units(walk)) {
        return BRIDGE_UNIT;
    }
    bridge->older = older.outcome;
    bridge->newer = newer.outcome;
    bridge->money_decimals = newer.money_decimals;
    bridge->steps = pool_take(pool, BRIDGE_GROUP_COUNT, sizeof *bridge->steps);
    if (bridge->steps == NULL || !name_columns(&walk->older, pool) ||
        !name_columns(&walk->newer, pool) ||
        !pair_make(&walk->pair, &walk->older, &walk->newer, pool) ||
        !changes_make(&bridge->changes, &walk->pair, pool)) {
        return BRIDGE_MEMORY;
    }
    take_steps(walk, bridge);
    return walk->failed || pool_failed(pool) ? BRIDGE_MEMORY : BRIDGE_OK;
}

enum bridge_result bridge_make(struct bridge *bridge, const char *older, const char *newer,
                               const char *option, struct plan_request plans) {
    struct walk walk = {.bridge = bridge, .option = option, .plans = plans};
    *bridge = (struct bridge){.older_path = older, .newer_path = newer};
    pool_init(&bridge->pool);
    problems_init(&bridge->read);
    if (!job_texts_read(&walk.older, older, &bridge->read) ||
        !job_texts_read(&walk.newer, newer, &bridge->read)) {
        return BRIDGE_MEMORY;
    }
    if (walk.older.saved != walk.newer.saved) {
        leave_papers(walk.older.saved ? &walk.newer.rates : &walk.older.rates);
    }
    return make(&walk, bridge);
}

void bridge_clear(struct bridge *bridge) {
    pool_clear(&bridge->pool);
    problems_clear(&bridge->read);
    *bridge = (struct bridge){0};
}
