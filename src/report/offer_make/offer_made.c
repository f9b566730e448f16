/* SPDX-License-Identifier: MIT */
/* What doors are made of, in words, with the rows that differ named: so that a client of a job in
 * two woods can tell which row is of which. */
#include "base/index.h"
#include "base/text.h"
#include "model/construction.h"
#include "report/offer_make/offer_maker.h"
#include "report/words/show.h"

#include <string.h>

const char *offer_material(const struct rates *rates, enum material_kind material_kind,
                           int32_t material) {
    const struct text *words = NULL;
    const struct text *name = NULL;
    if (material < 0) {
        return "";
    }
    switch (material_kind) {
    case MATERIAL_LUMBER: {
        const struct lumber *const lumber = &rates->lumber[material];
        words = &lumber->client_name;
        name = lumber->wood >= 0 && rates->woods[lumber->wood].common.s != NULL
                   ? &rates->woods[lumber->wood].common
                   : &lumber->name;
        break;
    }
    case MATERIAL_SHEET:
        words = &rates->sheets[material].client_name;
        name = &rates->sheets[material].name;
        break;
    case MATERIAL_GLASS:
        words = &rates->glass[material].client_name;
        name = &rates->glass[material].name;
        break;
    case MATERIAL_NONE:
        return "";
    }
    return text_or_empty(words->s != NULL ? words->s : name->s);
}

const char *offer_style(const struct door *door) {
    return door->style->client_name.s != NULL ? door->style->client_name.s : door->style->name.s;
}

const char *offer_hardware(const struct rates *rates, int32_t hardware) {
    const struct hardware *const h = &rates->hardware[hardware];
    return text_or_empty(h->client_name.s != NULL ? h->client_name.s : h->name.s);
}

/* --- what one door is of --- */

static const char *const names[OFFER_MADE_COUNT] = {
    [OFFER_STYLE] = "Style",
    [OFFER_FRAMES] = "Frames",
    [OFFER_PANELS] = "Panels",
    [OFFER_SLABS] = "Slab doors and fronts",
    [OFFER_GLASS] = "Glass",
    [OFFER_FINISH] = "Finish",
    [OFFER_HINGES] = "Hinges",
    [OFFER_PULLS] = "Pulls",
    [OFFER_HARDWARE] = "Other hardware",
    [OFFER_SIZES] = "Finished size",
};

static enum offer_made made_of(enum part_kind kind) {
    switch (kind) {
    case PART_PANEL:
        return OFFER_PANELS;
    case PART_PANE:
        return OFFER_GLASS;
    case PART_SLAB:
        return OFFER_SLABS;
    case PART_STILE:
    case PART_TOP_RAIL:
    case PART_BOTTOM_RAIL:
    case PART_MID_RAIL:
    case PART_MID_STILE:
    case PART_BAR:
    case PART_KIND_COUNT:
        break;
    }
    return OFFER_FRAMES;
}

/* Whether a pane is safety glazing, where the rates say. */
static const char *safety_words(const struct estimate *e, const struct part *part) {
    if (part->material_kind != MATERIAL_GLASS || !e->rates->glass[part->material].safety.set) {
        return "";
    }
    return e->rates->glass[part->material].safety.choice == 1 ? ", safety glazing"
                                                              : ", not safety glazing";
}

/* The grain is told where it does not run as on most doors. */
static const char *part_words(struct offer_maker *m, const struct estimate *e,
                              const struct door *door, enum offer_made what) {
    const char *const grain = show_grain(e->rates, door);
    const bool level = grain != NULL && strcmp(grain, "horizontal") == 0 &&
                       (what == OFFER_PANELS || what == OFFER_SLABS);
    if (door->bought_in && what == OFFER_FRAMES) {
        return "ready-made, in the wood of their maker";
    }
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if (made_of(part->kind) == what) {
            const char *const words = offer_material(e->rates, part->material_kind, part->material);
            return words[0] == '\0' ? NULL
                   : level          ? pool_words(m->pool, "%s, grain horizontal", words)
                                    : pool_words(m->pool, "%s%s", words, safety_words(e, part));
        }
    }
    return NULL;
}

const char *offer_finish(struct offer_maker *m, const struct construction *construction) {
    static const char *const faces[] = {
        [FACES_BOTH] = "both faces and the edges",
        [FACES_FRONT] = "the front and the edges",
        [FACES_BACK] = "the back and the edges",
        [FACES_NONE] = "the edges",
    };
    if (construction->finish.index < 0) {
        return "left bare, without a finish";
    }
    const struct finish *const f = &m->e->rates->finishes[construction->finish.index];
    const char *const color = show_color(m->e->rates, construction);
    return pool_words(m->pool, "%s%s%s, on %s",
                      f->client_name.s != NULL ? f->client_name.s : f->name.s,
                      color[0] == '\0' ? "" : ", color ", color, faces[f->faces.choice]);
}

static const char *hardware_words(const struct estimate *e, fig pieces,
                                  const struct reference *named) {
    return fig_none(pieces) || named->index < 0 ? NULL : offer_hardware(e->rates, named->index);
}

/* `magnetic catch, 2 x felt bumper`; NULL: none. */
static const char *other_hardware_words(struct offer_maker *m, const struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const struct hardware_items *const items = row_hardware(door->row, door->construction);
    const char *text = NULL;
    for (size_t i = 0; !fig_none(leaf->other_hardware) && i < items->count; i++) {
        const struct hardware_item *const item = &items->list[i];
        const char *const name = offer_hardware(m->e->rates, item->hardware.index);
        const char *const shared = item->per_opening && door->leaves > 1 ? " for the opening" : "";
        const char *const many =
            item->count.amount > 1 ? pool_words(m->pool, "%d x ", (int)item->count.amount) : "";
        text = pool_words(m->pool, "%s%s%s%s%s", text_or_empty(text), i == 0 ? "" : ", ", many,
                          name, shared);
    }
    return text;
}

/* What a door of an estimate is of; NULL: it has nothing of the kind. */
static const char *words_of(struct offer_maker *m, const struct estimate *e, size_t d,
                            enum offer_made what) {
    const struct leaf_figures *const leaf = &e->quantities.leaves[m->rows[d]];
    const struct door *const door = leaf->door;
    switch (what) {
    case OFFER_STYLE:
        return offer_style(door);
    case OFFER_FRAMES:
    case OFFER_PANELS:
    case OFFER_SLABS:
    case OFFER_GLASS:
        return part_words(m, e, door, what);
    case OFFER_FINISH:
        return offer_finish(m, door->construction);
    case OFFER_HINGES:
        return hardware_words(e, leaf->hinges, door_hinge(door));
    case OFFER_PULLS:
        return hardware_words(e, leaf->pulls, &door->construction->pull);
    case OFFER_HARDWARE:
        return other_hardware_words(m, leaf);
    case OFFER_SIZES:
        return pool_words(m->pool, "%s", show_size(door->width, door->height, e->job->unit).text);
    case OFFER_MADE_COUNT:
        break;
    }
    return NULL;
}

/* --- rows that are of the same --- */

/* Words by door; doors whose words agree are a group. */
struct groups {
    const char **words;
    size_t *first; /* the first door of each door's group; of one without words itself */
    size_t *count; /* how many doors a group has, by its first */
    bool *in;      /* the doors of one group */
    size_t most;   /* the first door of the largest group */
    size_t some;   /* doors that have any */
};

static bool same(const char *a, const char *b) {
    return a == NULL || b == NULL ? a == b : strcmp(a, b) == 0;
}

static bool same_words(const void *list, size_t number, const void *words) {
    return strcmp(((const char *const *)list)[number], words) == 0;
}

/* Finds the group of every door. false: out of memory. */
static bool find_groups(struct groups *g, size_t doors) {
    struct index index = {0};
    bool failed = false;
    for (size_t d = 0; d < doors && !failed; d++) {
        g->first[d] = d;
        if (g->words[d] != NULL) {
            g->first[d] = index_add(&index, hash_text(HASH_START, g->words[d]), same_words,
                                    g->words, g->words[d], d, &failed);
            g->count[g->first[d]]++;
            g->some++;
        }
    }
    index_clear(&index);
    return !failed;
}

static bool make_groups(struct offer_maker *m, const struct estimate *e, enum offer_made what,
                        struct groups *g) {
    const size_t doors = m->offer->door_count;
    *g = (struct groups){.words = pool_take(m->pool, doors, sizeof *g->words),
                         .first = pool_take(m->pool, doors, sizeof *g->first),
                         .count = pool_take(m->pool, doors, sizeof *g->count),
                         .in = pool_take(m->pool, doors, sizeof *g->in)};
    if (pool_failed(m->pool)) {
        return false;
    }
    for (size_t d = 0; d < doors; d++) {
        g->words[d] = words_of(m, e, d, what);
    }
    if (!find_groups(g, doors)) {
        m->pool->failed = true;
        return false;
    }
    for (size_t d = 0; d < doors; d++) {
        g->most = g->count[d] > g->count[g->most] ? d : g->most;
    }
    return g->some > 0;
}

/* The rows of the group that begins with door d. */
static const char *group_ids(struct offer_maker *m, const struct groups *g, size_t d) {
    for (size_t k = 0; k < m->offer->door_count; k++) {
        g->in[k] = g->first[k] == d;
    }
    return offer_ids(m, g->in, OFFER_EVERY_ID);
}

/* What most doors are of, then the others with their rows: `Panels: MDF board; for G08, W05:
 * poplar.`  NULL: none has any. */
static const char *made_sentence(struct offer_maker *m, const struct estimate *e,
                                 enum offer_made what) {
    struct groups g;
    if (!make_groups(m, e, what, &g)) {
        return NULL;
    }
    const char *text = pool_words(m->pool, "%s: %s", names[what], g.words[g.most]);
    for (size_t d = 0; d < m->offer->door_count; d++) {
        if (d != g.most && g.count[d] > 0) {
            text = pool_words(m->pool, "%s; for %s: %s", text, group_ids(m, &g, d), g.words[d]);
        }
    }
    return pool_words(m->pool, "%s.", text);
}

void offer_say_made(struct offer_maker *m) {
    for (int what = OFFER_FRAMES; what <= OFFER_FINISH; what++) {
        offer_add(&m->offer->made, made_sentence(m, m->e, (enum offer_made)what));
    }
}

/* --- what an option changes --- */

static bool made_same(struct offer_maker *m, const struct estimate *option, enum offer_made what) {
    for (size_t d = 0; d < m->offer->door_count; d++) {
        if (!same(words_of(m, m->e, d, what), words_of(m, option, d, what))) {
            return false;
        }
    }
    return true;
}

/* What a row may have and be without; NULL: any row has it, or its form has not. */
static const char *const nouns[OFFER_MADE_COUNT] = {
    [OFFER_HINGES] = "hinges", [OFFER_PULLS] = "pulls", [OFFER_HARDWARE] = "other hardware"};

/* The rows that have hinges, a pull or other hardware, and none with the option; "": there are no
 * such rows. */
static const char *rows_without(struct offer_maker *m, const struct estimate *option,
                                enum offer_made what) {
    bool *const in = pool_take(m->pool, m->offer->door_count, sizeof *in);
    if (in == NULL || nouns[what] == NULL) {
        return "";
    }
    for (size_t d = 0; d < m->offer->door_count; d++) {
        in[d] = words_of(m, m->e, d, what) != NULL && words_of(m, option, d, what) == NULL;
    }
    return offer_ids(m, in, OFFER_EVERY_ID);
}

static const char *change_words(struct offer_maker *m, const struct estimate *option,
                                enum offer_made what) {
    if (what == OFFER_SIZES) {
        return "Finished sizes differ from those listed.";
    }
    const char *const text = made_sentence(m, option, what);
    const char *const without = rows_without(m, option, what);
    if (text == NULL) {
        return pool_words(m->pool, "%s: none.", names[what]);
    }
    return without[0] == '\0' ? text
                              : pool_words(m->pool, "%s No %s for %s.", text, nouns[what], without);
}

const char *offer_changes(struct offer_maker *m, const struct estimate *option) {
    const char *text = "";
    for (int what = 0; what < OFFER_MADE_COUNT; what++) {
        if (!made_same(m, option, (enum offer_made)what)) {
            text = pool_words(m->pool, "%s%s%s", text, text[0] == '\0' ? "" : " ",
                              change_words(m, option, (enum offer_made)what));
        }
    }
    return text;
}
