/* SPDX-License-Identifier: MIT */
#include "report/labels/label_words.h"

#include "base/text.h"
#include "model/name.h"
#include "report/words/door_words.h"
#include "report/words/show.h"

#include <stdio.h>

#define HEAD 1.6
#define NAME 1.2

/* Lines as they come. */
struct writer {
    struct label_line *lines;
    size_t count;
    struct pool *pool;
    const struct estimate *e;
    const struct label *label;
    const struct door *door;
};

static void add(struct writer *w, const char *text, double size, bool bold) {
    if (text[0] != '\0') {
        w->lines[w->count++] = (struct label_line){.text = text, .size = size, .bold = bold};
    }
}

/* --- which one it is --- */

/* `2 of 3`; "" where there is but one. */
static const char *of_several(struct writer *w, int64_t number, int64_t count) {
    return count < 2 ? ""
                     : pool_words(w->pool, "%lld of %lld", (long long)number, (long long)count);
}

/* `G02: 1 of 2, left leaf`. */
static void add_which(struct writer *w) {
    const struct label *const label = w->label;
    const char *const opening = of_several(w, label->opening, w->door->row->count.amount);
    const char *const side =
        w->door->leaves < 2 ? "" : (label->hung == 1 ? "left leaf" : "right leaf");
    const char *const dash = opening[0] == '\0' && side[0] == '\0' ? "" : ": ";
    const char *const comma = opening[0] == '\0' || side[0] == '\0' ? "" : ", ";
    add(w, pool_words(w->pool, "%s%s%s%s%s", w->door->name, dash, opening, comma, side), HEAD,
        true);
}

/* `painted, lamp white`; NULL: left bare. */
static const char *finish_words(struct writer *w, const struct batch **batch) {
    const struct finish_list *const list = &w->e->finish;
    const size_t at = list->batch_of[w->label->leaf - w->e->quantities.leaves];
    if (at >= list->batch_count) {
        return NULL;
    }
    *batch = &list->batches[at];
    const char *const color = show_batch_color(w->e, *batch);
    return pool_words(w->pool, "%s%s%s", w->e->rates->finishes[(*batch)->finish].name.s,
                      color[0] == '\0' ? "" : ", ", color);
}

/* `job 0031`, or its title where it has no number. */
static const char *job_words(struct writer *w) {
    const struct job *const job = w->e->job;
    return job->number.s == NULL ? text_or_empty(job->title.s)
                                 : pool_words(w->pool, "job %s", job->number.s);
}

/* --- a part --- */

enum grain_way label_grain(const struct estimate *e, const struct door *door,
                           const struct part *part) {
    if (part->kind == PART_BAR || part->material_kind == MATERIAL_GLASS ||
        part->material_kind == MATERIAL_NONE) {
        return GRAIN_NONE;
    }
    if (part->material_kind == MATERIAL_SHEET && !e->rates->sheets[part->material].grain) {
        return GRAIN_NONE;
    }
    if (part_is_field(part->kind)) {
        return door_grain(door) == PANEL_GRAIN_VERTICAL ? GRAIN_UPRIGHT : GRAIN_LEVEL;
    }
    return part_is_rail(part->kind) ? GRAIN_LEVEL : GRAIN_UPRIGHT;
}

bool label_has_top(const struct part *part) {
    return part->kind != PART_BAR;
}

/* Which edge is up, as the bench calls it. */
static const char *up_words(const struct part *part) {
    switch (part->kind) {
    case PART_TOP_RAIL:
        return "outer edge up";
    case PART_BOTTOM_RAIL:
        return "inner edge up";
    case PART_MID_RAIL:
        return "arrow edge up";
    case PART_STILE:
    case PART_MID_STILE:
        return "arrow end up";
    case PART_BAR:
        return "";
    case PART_PANEL:
    case PART_PANE:
    case PART_SLAB:
    case PART_KIND_COUNT:
        break;
    }
    return "arrow edge up";
}

/* `stile, left`, `panel 2 of 4`. */
static const char *part_words(struct writer *w, const struct part *part) {
    if (part->kind == PART_STILE && part->count == 2) {
        return w->label->piece == 1 ? "stile, left" : "stile, right";
    }
    const char *const which = of_several(w, w->label->piece, part->count);
    return pool_words(w->pool, "%s%s%s", part_full_name(part), which[0] == '\0' ? "" : " ", which);
}

/* Finished, as `draw` shows it: what fills an opening as it stands, else along the grain. */
static const char *size_words(struct writer *w, const struct part *part) {
    const enum length_unit unit = w->e->job->unit;
    const bool field = part_is_field(part->kind);
    const length across = field ? part->shown_width : part->length;
    const length down = field ? part->shown_height : part->width;
    char sizes[2][64];
    char thick[64];
    char rise[64];
    const char *const arch =
        part->rise == 0
            ? ""
            : pool_words(w->pool, ", arch %s", show_unbroken(part->rise, unit, rise, sizeof rise));
    return pool_words(w->pool, "%s x %s x %s%s",
                      show_unbroken(across, unit, sizes[0], sizeof sizes[0]),
                      show_unbroken(down, unit, sizes[1], sizeof sizes[1]),
                      show_unbroken(part->thickness, unit, thick, sizeof thick), arch);
}

static void add_part(struct writer *w, const struct part *part) {
    static const char *const ways[] = {
        [GRAIN_NONE] = "", [GRAIN_UPRIGHT] = "grain vertical", [GRAIN_LEVEL] = "grain horizontal"};
    const char *const up = up_words(part);
    const char *const grain = part->kind == PART_BAR ? "grain along"
                              : label_grain(w->e, w->door, part) == GRAIN_NONE
                                  ? "no grain"
                                  : ways[label_grain(w->e, w->door, part)];
    const struct batch *batch = NULL;
    const char *const finish = finish_words(w, &batch);
    add(w, part_words(w, part), NAME, true);
    add(w,
        pool_words(w->pool, "%s  %s", size_words(w, part),
                   material_name(w->e->rates, part->material_kind, part->material)),
        1, false);
    add(w,
        pool_words(w->pool, "%s%s%s", part->material_kind == MATERIAL_GLASS ? "glass" : grain,
                   up[0] == '\0' ? "" : "; ", up),
        1, false);
    if (part->material_kind != MATERIAL_GLASS) {
        add(w,
            finish == NULL ? "left bare"
                           : pool_words(w->pool, "batch %lld: %s",
                                        (long long)(batch - w->e->finish.batches) + 1, finish),
            1, false);
    }
    add(w, job_words(w), 1, false);
}

/* --- a door to pack --- */

static const char *hung_words(struct writer *w) {
    const char *const hung = show_hung(w->door);
    if (hung == NULL) {
        return "";
    }
    if (w->door->leaves > 1 && !row_hangs_level(w->door->row) && w->door->role == LEAF_HUNG) {
        return w->label->hung == 1 ? ", hinges left" : ", hinges right";
    }
    return w->door->role == LEAF_FOLDING ? ", on the hung leaf"
                                         : pool_words(w->pool, ", hinges %s", hung);
}

/* Finish, and weight to a tenth, which is as well as anybody lifts. */
static const char *look_words(struct writer *w) {
    const struct batch *batch = NULL;
    const char *const finish = finish_words(w, &batch);
    const fig weight = w->label->leaf->weight;
    return pool_words(
        w->pool, "%s%s%s%s%s", finish == NULL ? "left bare" : finish, fig_none(weight) ? "" : "; ",
        fig_none(weight) ? "" : show_number(tape_scaled(&w->e->tape, weight, 1), 1).text,
        fig_none(weight) ? "" : " ", fig_none(weight) ? "" : show_unit_name(w->e, weight));
}

static void add_door(struct writer *w) {
    const struct job *const job = w->e->job;
    const struct row *const row = w->door->row;
    const char *const room = text_or_empty(row->room.s);
    const char *const place =
        text_or_empty(job->deliver_to.s != NULL ? job->deliver_to.s : job->address.s);
    add(w, pool_words(w->pool, "%s%s%s", show_door(w->door), room[0] == '\0' ? "" : ", ", room),
        NAME, true);
    add(w,
        pool_words(w->pool, "%s%s", show_size(w->door->width, w->door->height, job->unit).text,
                   hung_words(w)),
        NAME, false);
    add(w, look_words(w), 1, false);
    add(w, show_note(w->door), 1, false);
    add(w, text_or_empty(job->client.s), 1, false);
    add(w, place, 1, false);
    add(w, job->number.s == NULL ? "" : text_or_empty(job->title.s), 1, false);
    add(w,
        pool_words(w->pool, "%s: piece %d of %lld", job_words(w), (int)w->label->number,
                   (long long)tape_amount(&w->e->tape, w->e->quantities.all_leaves)),
        1, false);
}

size_t label_words(struct label_line lines[MOST_LABEL_LINES], struct pool *pool,
                   const struct estimate *e, const struct label *label) {
    struct writer w = {
        .lines = lines, .pool = pool, .e = e, .label = label, .door = label->leaf->door};
    add_which(&w);
    if (label->part != NULL) {
        add_part(&w, label->part);
    } else {
        add_door(&w);
    }
    return w.count;
}
