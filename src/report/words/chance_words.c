/* SPDX-License-Identifier: MIT */
#include "report/words/chance_words.h"

#include "report/words/show.h"

#include <assert.h>

static const struct {
    const char *words, *key;
    size_t at;
} risks[CHANCE_RISKS] = {
    {"the price does not cover the direct cost", "below direct cost",
     offsetof(struct chance, under_direct)},
    {"the job loses money: the price does not cover cost with overhead", "loses money",
     offsetof(struct chance, under_full)},
    {"the job earns less than the profit wanted", "earns less than wanted",
     offsetof(struct chance, under_wanted)},
};

const char *chance_risk_words(enum chance_risk risk) {
    assert(risk < CHANCE_RISKS);
    return risks[risk].words;
}

const char *chance_risk_key(enum chance_risk risk) {
    assert(risk < CHANCE_RISKS);
    return risks[risk].key;
}

int32_t chance_risk(enum chance_risk risk, const struct chance *chance) {
    assert(risk < CHANCE_RISKS);
    return *(const int32_t *)(const void *)((const char *)chance + risks[risk].at);
}

const char *chance_input_words(const struct chance_input *input, struct pool *pool) {
    const struct rate_number *const n = input->number;
    return pool_words(pool, "[%s] %s%s%s", n->section, n->key, n->lead[0] == '\0' ? "" : ", ",
                      n->lead);
}

/* `those of operation minutes move together (0.6), all others by themselves`. */
static const char *together_words(const struct chance *c, const struct rates *rates,
                                  struct pool *pool) {
    const struct chance_rules *const rules = &rates->chance;
    const char *words = "";
    size_t groups = 0;
    size_t alone = 0;
    for (size_t g = 0; g < rules->together_count; g++) {
        size_t members = 0;
        for (size_t i = 0; i < c->drawn; i++) {
            members += c->inputs[i].group == (int32_t)g ? 1 : 0;
        }
        if (members > 1) {
            const struct named_value *const group = &rules->together[g];
            words = pool_words(pool, "%s%s%zu of %s at %s", words, groups++ == 0 ? "" : ", ",
                               members, group->name.s,
                               show_number(group->value.amount, group->value.decimals).text);
        }
    }
    for (size_t i = 0; i < c->drawn; i++) {
        alone += c->inputs[i].group < 0 ? 1 : 0;
    }
    if (groups == 0) {
        return "; taken as independent: each moves by itself";
    }
    return pool_words(pool, "; taken to move together: %s%s", words,
                      alone > 0 ? "; each other by itself" : "");
}

const char *chance_drawn_words(const struct chance *c, const struct rates *rates,
                               struct pool *pool) {
    if (c->drawn == 0) {
        return "Nothing is drawn: no range of the rates moves the cost of this job in a way that "
               "can "
               "be drawn.";
    }
    return pool_words(pool, "%zu draws of %s, %s, seed %llu%s.", c->draws,
                      c->drawn == 1 ? "1 range" : pool_words(pool, "%zu ranges at once", c->drawn),
                      c->shape == CHANCE_TRIANGLE ? "as triangles" : "by PERT",
                      (unsigned long long)c->seed,
                      c->drawn == 1 ? "" : together_words(c, rates, pool));
}

const char *chance_contingency_words(const struct chance *c, const struct estimate *e,
                                     struct pool *pool) {
    const uint8_t decimals = e->tape.money_decimals;
    const struct value *const given = &e->rates->shop.contingency;
    struct value sure = {.amount = c->confidence, .decimals = 2};
    value_drop_zeros(&sure, 0);
    const char *const rates =
        given->set ? pool_words(pool, "the rates have %s", show_value(given, LENGTH_INCH).text)
                   : "the rates have none";
    return pool_words(
        pool,
        "Direct cost is at most %s in %s %% of the draws: %s more than with the likely "
        "values, a contingency of %s %% (%s).",
        show_number(c->direct.sure, decimals).text, show_number(sure.amount, sure.decimals).text,
        show_number(c->contingency, decimals).text, show_number(c->contingency_rate, 1).text,
        rates);
}

#define MOST_NOTES 5

static const char *held_names(const struct chance *c, struct pool *pool) {
    const char *words = "";
    for (size_t i = c->drawn, n = 0; i < c->count; i++) {
        if (c->inputs[i].state == CHANCE_HELD) {
            words = pool_words(pool, "%s%s%s", words, n++ == 0 ? "" : ", ",
                               chance_input_words(&c->inputs[i], pool));
        }
    }
    return words;
}

const char *const *chance_notes(const struct chance *c, struct pool *pool) {
    const char **const notes = pool_take(pool, MOST_NOTES + 1, sizeof *notes);
    const size_t idle = c->count - c->drawn - c->held;
    size_t n = 0;

    if (notes == NULL) {
        return NULL;
    }
    if (c->held > 0) {
        notes[n++] =
            pool_words(pool,
                       "Not drawn but held at the likely value, as more than amounts hangs "
                       "on it (sizes, how the job is made, a cutting plan): %s.",
                       held_names(c, pool));
    }
    if (idle > 0) {
        notes[n++] = pool_words(pool, "%s without effect on the cost of this job.",
                                show_count(idle, "range").text);
    }
    if (c->planned > 0) {
        notes[n++] = "Cutting plans are held as planned with the likely values; containers are "
                     "chosen anew in each draw.";
    }
    notes[n++] = "A range is an opinion until it is measured, and so is all that is drawn from it. "
                 "What has no range does not move here.";
    return notes;
}
