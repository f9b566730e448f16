/* SPDX-License-Identifier: MIT */
/* The numbers that must be the shop's own: of [shop] those in which most money is, then what goods
 * cost and how long work takes, of those that the user names. */
#include "base/array.h"
#include "base/text.h"
#include "command/rates_walk.h"
#include "read/rates/change.h"

#include <string.h>

/* What is asked, and what it moves. A number is named in `own`; words are not. Words of the shop
 * that ships are nobody's: the offer is to leave them out, but for the name. */
static const struct {
    const char *key, *moves;
    bool number;
    bool may_lack; /* words that a paper can do without */
    bool source;   /* the comment of its line says where the number comes from */
    bool few;      /* asked with the first job, too */
} of_shop[] = {
    {"name", "Your shop's name; it heads the client's papers.", false, false, false, true},
    {"address", "Below the name; - for none.", false, true, false, true},
    {"contact", "How the client reaches you; - for none.", false, true, false, true},
    {"license", "Your license and tax number, as the client should read them; - for none.", false,
     true, false, false},
    {"payment", "How the client can pay you; - for none.", false, true, false, false},
    {"warranty", "What you stand for, and how long; it may bind you; - for none.", false, true,
     false, false},
    {"currency", "Beside every amount; prices are not converted.", false, false, false, false},
    {"labor rate",
     "What an hour of work costs you, with all that you pay on the wage; overhead and profit come "
     "on top. Mostly it moves a price most.",
     true, false, false, true},
    {"allowance", "Added to all minutes, for rest and what comes between.", true, false, true,
     false},
    {"hours per day", "Working days, not the price.", true, false, false, false},
    {"overhead", "What rent, power and office come to for each hour of a job.", true, false, true,
     false},
    {"contingency", "On all direct cost.", true, false, false, false},
    {"profit", "On all cost.", true, false, false, false},
    {"remakes", "Doors made a second time, as a cost of all.", true, false, false, false},
    {"minimum job", "Small jobs are raised to it.", true, false, false, false},
    {"round price to", "The price of each door is rounded up to it.", true, false, false, false},
};

static const char invented_why[] =
    "Are prices or minutes in the file still those that ship, of lumber, finish, hardware and "
    "machines too? While you say yes, papers are headed 'example prices', and 'quote --all' lists "
    "which those are. Say no when all are yours.";

static const char goods_why[] =
    "Prices of lumber, sheets, finish and hardware, and minutes of work: those of your jobs first, "
    "each with what ships to keep. It takes some minutes, and can be done later.";

/* Sections of a kind: which of them, then keys of each. */
static const struct {
    const char *kind;
    const char *why;
    const char *keys[4];
} of_goods[] = {
    {"lumber",
     "Which woods have prices of your own? Your last bills have them, and the waste: what you "
     "bought over what was in the doors. Each board foot of frames and solid panels costs this.",
     {"price", "price from", "waste"}},
    {"sheet",
     "Which sheets? Panels and slabs are cut from them.",
     {"price", "half sheet", "waste"}},
    {"glass", "Which glass? As the glass shop charges it.", {"price", "minimum"}},
    {"coating",
     "Which coatings? The data sheet has the film and the solids, your store the cans.",
     {"wet film", "coverage", "solids", "sizes"}},
    {"hardware", "Which hardware?", {"price"}},
    {"operation",
     "Which work have you timed? A hand's run with a watch is better than what ships.",
     {"minutes", "feed", "handling", "setup"}},
};

bool rates_walk_number(const char *key) {
    for (size_t i = 0; i < COUNT_OF(of_shop); i++) {
        if (of_shop[i].number && text_same(of_shop[i].key, key)) {
            return true;
        }
    }
    return false;
}

/* --- what there is to ask --- */

/* NULL too where its value was reported. */
static const struct ini_key *key_of(const struct ini_section *section, const char *name) {
    const struct ini_key *const key = ini_key_find(section, name);
    return key == NULL || key->value == NULL ? NULL : key;
}

static bool is_set(struct rates_run *run, const char *section, const char *key) {
    for (size_t i = 0; i < run->request->set.count; i++) {
        struct rate_change change;
        if (change_split(&change, run->request->set.texts[i], "shop", &run->pool) == NULL &&
            !pool_failed(&run->pool) && text_same(change.section, section) &&
            text_same(change.key, key)) {
            return true;
        }
    }
    return false;
}

static void add_step(struct walk *walk, const struct walk_step *step) {
    if (step->key == NULL || !is_set(walk->run, step->section, step->key)) {
        walk->steps[walk->count++] = *step;
    }
}

/* What it moves, and what the number rests on: the comment beside it. */
static const char *why_of(struct walk *walk, const char *moves, const struct ini_key *key) {
    const char *const words = moves == NULL ? "" : moves;
    return key == NULL || key->comment == NULL ? words
           : words[0] == '\0'                  ? pool_words(&walk->run->pool, "%s", key->comment)
                              : pool_words(&walk->run->pool, "%s (%s)", words, key->comment);
}

static void add_shop(struct walk *walk) {
    const struct ini_section *const shop = section_find(&walk->run->ini, "shop");
    const bool few = walk->run->few;
    for (size_t i = 0; i < COUNT_OF(of_shop); i++) {
        if (few && !of_shop[i].few) {
            continue;
        }
        const char *const name = of_shop[i].key;
        const struct ini_key *const key = key_of(shop, name);
        const bool may_lack = of_shop[i].may_lack;
        const bool ships = key != NULL && may_lack &&
                           text_same(text_before(&walk->run->shipped, "shop", name), key->value);
        if (key != NULL || may_lack) {
            add_step(walk, &(struct walk_step){.section = "shop",
                                               .key = name,
                                               .name = name,
                                               .why = why_of(walk, of_shop[i].moves,
                                                             of_shop[i].source ? key : NULL),
                                               .value = key == NULL ? NULL : key->value,
                                               .offer = key == NULL || ships ? NULL : key->value,
                                               .which = few && may_lack ? &walk->steps[0] : NULL,
                                               .needed = !may_lack});
        }
    }
}

/* Whether the job names it, in how doors are made; key: by that alone, NULL: by any. */
static bool job_names(const struct ini *job, const char *key, const char *name) {
    for (size_t s = 0; s < job->count; s++) {
        const struct ini_section *const section = &job->sections[s];
        const bool makes = text_same(section->kind, "make") || text_same(section->kind, "option");
        for (size_t k = 0; k < section->count && makes; k++) {
            if ((key == NULL || text_same(section->keys[k].name, key)) &&
                text_holds_word(section->keys[k].value, name, strlen(name))) {
                return true;
            }
        }
    }
    return false;
}

static bool a_job_names(const struct rates_run *run, const char *key, const char *name) {
    for (size_t p = 0; p < run->place_count; p++) {
        for (size_t i = 0; i < run->places[p].job_count; i++) {
            if (job_names(&run->places[p].jobs[i].ini, key, name)) {
                return true;
            }
        }
    }
    return false;
}

/* Whether the jobs round the file take it, or a finish that they name does. */
static bool is_taken(const struct rates_run *run, const char *kind, const char *name) {
    for (size_t i = 0; text_same(kind, "coating") && i < run->ini.count; i++) {
        const struct ini_section *const finish = &run->ini.sections[i];
        const struct ini_key *const coats =
            text_same(finish->kind, "finish") ? key_of(finish, "coats") : NULL;
        if (coats != NULL && a_job_names(run, "finish", finish->name) &&
            text_holds_word(coats->value, name, strlen(name))) {
            return true;
        }
    }
    return a_job_names(run, text_same(kind, "glass") ? kind : NULL, name);
}

/* The question which sections of a kind are gone through, and those on keys of each. */
static void add_goods(struct walk *walk, size_t group, const struct walk_step *gate) {
    struct rates_run *const run = walk->run;
    const char *const kind = of_goods[group].kind;
    const char *all = NULL;
    const char *taken = NULL;
    for (size_t i = 0; i < run->ini.count; i++) {
        const struct ini_section *const one = &run->ini.sections[i];
        if (text_same(one->kind, kind)) {
            all = pool_words(&run->pool, "%s, %s", all == NULL ? "all" : all, one->name);
            taken = !is_taken(run, kind, one->name) ? taken
                    : taken == NULL                 ? one->name
                                    : pool_words(&run->pool, "%s, %s", taken, one->name);
        }
    }
    if (all == NULL) {
        return;
    }
    const struct walk_step *const which = &walk->steps[walk->count];
    add_step(walk, &(struct walk_step){.section = kind,
                                       .name = kind,
                                       .why = of_goods[group].why,
                                       .choices = all,
                                       .offer = taken,
                                       .which = gate,
                                       .of = "yes"});
    for (size_t i = 0; i < run->ini.count; i++) {
        const struct ini_section *const one = &run->ini.sections[i];
        const char *const section = pool_words(&run->pool, "%s %s", kind, one->name);
        for (size_t k = 0; k < COUNT_OF(of_goods[group].keys) && text_same(one->kind, kind); k++) {
            const char *const name = of_goods[group].keys[k];
            const struct ini_key *const key = name == NULL ? NULL : key_of(one, name);
            if (key != NULL) {
                add_step(walk, &(struct walk_step){
                                   .section = section,
                                   .key = name,
                                   .name = pool_words(&run->pool, "%s, %s", one->name, name),
                                   .why = why_of(walk, NULL, key),
                                   .value = key->value,
                                   .offer = key->value,
                                   .which = which,
                                   .of = one->name,
                                   .needed = true});
            }
        }
    }
}

bool walk_find(struct walk *walk) {
    struct rates_run *const run = walk->run;
    size_t room = COUNT_OF(of_shop) + COUNT_OF(of_goods) + 2;
    for (size_t i = 0; i < run->ini.count; i++) {
        room += run->ini.sections[i].count;
    }
    walk->steps = pool_take(&run->pool, room, sizeof *walk->steps);
    if (walk->steps == NULL) {
        return false;
    }
    add_shop(walk);
    if (run->few) {
        return !pool_failed(&run->pool);
    }
    const struct walk_step *const gate = &walk->steps[walk->count];
    add_step(walk, &(struct walk_step){.section = "answer",
                                       .name = "go through them",
                                       .why = goods_why,
                                       .choices = "yes, no",
                                       .offer = "no",
                                       .needed = true});
    for (size_t i = 0; i < COUNT_OF(of_goods); i++) {
        add_goods(walk, i, gate);
    }
    const struct ini_key *const invented = key_of(section_find(&run->ini, "shop"), "invented");
    if (invented != NULL) {
        add_step(walk, &(struct walk_step){.section = "shop",
                                           .key = "invented",
                                           .name = "still as shipped",
                                           .why = invented_why,
                                           .value = invented->value,
                                           .offer = invented->value,
                                           .needed = true});
    }
    return !pool_failed(&run->pool);
}

bool walk_drop_words(struct rates_run *run) {
    bool held = true;
    for (size_t i = 0; i < COUNT_OF(of_shop) && held; i++) {
        held = !of_shop[i].may_lack || of_shop[i].few ||
               rates_put(run, &(struct rate_change){.section = "shop", .key = of_shop[i].key});
    }
    return held;
}
