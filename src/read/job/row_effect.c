/* SPDX-License-Identifier: MIT */
/* What a row says of itself and nothing is made of. Only the row's own cells are looked at: [make]
 * speaks of all doors. A cell that some option has a use for is not asked about. */
#include "base/array.h"
#include "door/leaf.h"
#include "model/coat_way.h"
#include "model/construction.h"
#include "read/job/job_keys.h"

/* What a row, made in one way, has a use for. */
enum takes {
    TAKES_FRAME = 1 << 0,
    TAKES_PANEL = 1 << 1,
    TAKES_SOLID = 1 << 2,
    TAKES_SLAB = 1 << 3,
    TAKES_GLASS = 1 << 4,
    TAKES_MIDS = 1 << 5, /* rails and stiles between the outer ones, an arched rail */
    TAKES_FIT = 1 << 6,  /* overlay or reveal */
    TAKES_GAP = 1 << 7,
    TAKES_PULL = 1 << 8,
    TAKES_GRAIN = 1 << 9,
    TAKES_CORNER = 1 << 10,
    TAKES_HINGE = 1 << 11,
    TAKES_COLOR = 1 << 12,
    TAKES_ALL = (1 << 13) - 1,
};

static unsigned parts_taken(const struct reader *reader, const struct row *row,
                            const struct construction *construction) {
    const struct style *const style = row_style(reader, row, construction);
    if (style->bought_in.set) {
        return style->stile.set ? TAKES_MIDS : 0; /* they are drawn */
    }
    switch ((enum door_form)style->form.choice) {
    case FORM_PANEL:
        return TAKES_FRAME | TAKES_MIDS | TAKES_PANEL;
    case FORM_SOLID:
        return TAKES_FRAME | TAKES_MIDS |
               (construction->solid.name.s == NULL ? TAKES_PANEL : TAKES_SOLID);
    case FORM_GLASS:
        return TAKES_FRAME | TAKES_MIDS | TAKES_GLASS;
    case FORM_SLAB:
        return TAKES_SLAB;
    case FORM_OPEN:
        break;
    }
    return TAKES_FRAME | TAKES_MIDS;
}

/* Whether what fills the door has a grain that lies one way or the other. */
static bool has_grain(const struct reader *reader, const struct row *row,
                      const struct construction *construction) {
    const char *key;
    const struct material_reference *const given = row_filling(reader, row, construction, &key);
    return given != NULL &&
           (given->kind == MATERIAL_LUMBER ||
            (given->kind == MATERIAL_SHEET && reader->rates->sheets[given->index].grain));
}

static unsigned taken(const struct reader *reader, const struct row *row,
                      const struct construction *construction) {
    unsigned all = construction->pull.index >= 0 ? TAKES_PULL : 0;
    all |= construction->hinge.index >= 0 ? TAKES_HINGE : 0U;
    const int32_t finish = construction->finish.index;
    if (construction->style.index < 0) {
        return TAKES_ALL; /* reported where it is named */
    }
    if (finish >= 0 && finish_shows_color(reader->rates, &reader->rates->finishes[finish])) {
        all |= TAKES_COLOR;
    }
    if (construction->size_is.choice == MEASURE_OPENING) {
        all |= TAKES_FIT | (row->opens.choice == OPENS_PIE_CUT ? TAKES_CORNER
                            : row->leaves.amount > 1           ? TAKES_GAP
                                                               : 0U);
    }
    if (has_grain(reader, row, construction)) {
        all |= TAKES_GRAIN;
    }
    return all | parts_taken(reader, row, construction);
}

static void ask(struct reader *reader, struct place place, const char *what, const char *why) {
    problem_add(reader->problems, SEVERITY_WARNING, "without-effect", place,
                "%s has no effect: %s; take it away, or check the row", what, why);
}

static const char *named(struct reader *reader, const char *key, const char *name) {
    const char *text =
        pool_format(&reader->problems->pool, "%s '%s'", key, problem_quote(reader->problems, name));
    return text == NULL ? "" : text;
}

/* Why nothing of the row, made as listed, is made of what `bit` stands for. */
static const char *reason(struct reader *reader, const struct row *row, unsigned bit) {
    const struct style *const style = row_style(reader, row, &row->make->whole);
    const unsigned parts = parts_taken(reader, row, &row->make->whole);
    const char *text;
    if (style->bought_in.set) {
        return "the door is bought in";
    }
    if ((parts & TAKES_SLAB) != 0) {
        return "the row is made as a slab";
    }
    if (bit == TAKES_PANEL && (parts & TAKES_SOLID) != 0) {
        return "the panel is solid, and 'solid panel' names its lumber";
    }
    text = pool_format(&reader->problems->pool, "style '%s' takes none here",
                       problem_quote(reader->problems, style->name.s));
    return text == NULL ? "" : text;
}

static void ask_materials(struct reader *reader, const struct row *row, unsigned all) {
    const struct {
        const char *key;
        const struct material_reference *given;
        unsigned bit;
    } materials[] = {
        {"frame", &row->make->own.frame, TAKES_FRAME},
        {"panel", &row->make->own.panel, TAKES_PANEL},
        {"solid panel", &row->make->own.solid, TAKES_SOLID},
        {"slab", &row->make->own.slab, TAKES_SLAB},
        {"glass", &row->make->own.glass, TAKES_GLASS},
    };
    for (size_t i = 0; i < COUNT_OF(materials); i++) {
        const struct text *const name = &materials[i].given->name;
        if (name->s != NULL && (all & materials[i].bit) == 0) {
            ask(reader, name->place, named(reader, materials[i].key, name->s),
                reason(reader, row, materials[i].bit));
        }
    }
}

static void ask_grain(struct reader *reader, const struct row *row, unsigned all) {
    const struct choice *const grain = &row->make->own.grain;
    const char *key = NULL;
    if (!grain->set || (all & TAKES_GRAIN) != 0) {
        return;
    }
    const struct material_reference *const given =
        row_filling(reader, row, &row->make->whole, &key);
    const char *why = "the door has no panel and is no slab";
    if (given != NULL) {
        why = pool_format(&reader->problems->pool, "%s '%s' has no grain", key,
                          problem_quote(reader->problems, given->name.s));
    } else if (row_style(reader, row, &row->make->whole)->bought_in.set) {
        why = "the door is bought in";
    }
    ask(reader, grain->place, "grain", why == NULL ? "" : why);
}

static void ask_bars(struct reader *reader, const struct row *row, unsigned all) {
    if (row->lights_wide.set && (all & TAKES_GLASS) == 0) {
        ask(reader, row->lights_wide.place, "bars", reason(reader, row, TAKES_GLASS));
    } else if (row->lights_wide.set && row->lights_wide.amount * row->lights_high.amount == 1) {
        ask(reader, row->lights_wide.place, "bars", "one light has none");
    }
}

static void ask_mids(struct reader *reader, const struct row *row, unsigned all) {
    const bool rows = row->heights.count > 0;
    if ((all & TAKES_MIDS) != 0) {
        return;
    }
    if (rows) {
        ask(reader, row->heights.v[0].place, "rows", reason(reader, row, TAKES_MIDS));
    }
    if (row->mid_rails.amount > 0 &&
        !(rows && row->mid_rails.place.column == row->heights.v[0].place.column)) {
        ask(reader, row->mid_rails.place, "mid rails", reason(reader, row, TAKES_MIDS));
    }
    if (row->arch.amount > 0) {
        ask(reader, row->arch.place, "arch", reason(reader, row, TAKES_MIDS));
    }
    if (row->mid_stiles.amount > 0) {
        ask(reader, row->mid_stiles.place, "mid stiles", reason(reader, row, TAKES_MIDS));
    }
}

static void ask_hinges(struct reader *reader, const struct row *row, unsigned all) {
    static const char *const none[] = {
        [USE_DRAWER_FRONT] = "a drawer front has no hinges",
        [USE_FALSE_FRONT] = "a false front has no hinges",
        [USE_END_PANEL] = "an end panel has no hinges",
    };
    const int side = row->hinge_side.choice;
    if (!row_is_hinged(row)) {
        if (row->make->own.hinge.index >= 0) {
            ask(reader, row->make->own.hinge.name.place,
                named(reader, "hinge", row->make->own.hinge.name.s), none[row->use.choice]);
        }
        if (row->hinge_side.set) {
            ask(reader, row->hinge_side.place, "hinge side", none[row->use.choice]);
        }
        if (row->opens.set && row->opens.choice == OPENS_HINGED) {
            ask(reader, row->opens.place, "opens 'hinged'", none[row->use.choice]);
        }
        if (row->hinges.set) {
            ask(reader, row->hinges.place, row->hinge_at.count > 0 ? "hinges at" : "hinges",
                none[row->use.choice]);
        }
    } else if (row->leaves.amount > (row_folds(row) ? 2 : 1) &&
               (side == HINGE_SIDE_LEFT || side == HINGE_SIDE_RIGHT)) {
        ask(reader, row->hinge_side.place, "hinge side",
            "the leaves of a pair hang left and right");
    }
    if (row_is_hinged(row) && row->hinges.set && (all & TAKES_HINGE) == 0) {
        ask(reader, row->hinges.place, row->hinge_at.count > 0 ? "hinges at" : "hinges",
            "no hinge is named");
    }
    if (!row_folds(row) && row->make->own.fold_hinge.index >= 0) {
        ask(reader, row->make->own.fold_hinge.name.place,
            named(reader, "fold hinge", row->make->own.fold_hinge.name.s),
            "no leaf of the row folds");
    }
}

static void ask_pulls(struct reader *reader, const struct row *row, unsigned all) {
    if (row->pulls.set && row->pulls.amount > 0 && (all & TAKES_PULL) == 0) {
        ask(reader, row->pulls.place, "pulls", "no pull is named");
    }
}

static void ask_fit(struct reader *reader, const struct row *row, unsigned all) {
    const bool panel = row->use.choice == USE_END_PANEL;
    const char *const why = panel ? "an end panel is measured as itself"
                                  : "width and height are of the door, not of its opening";
    if (panel && row->make->own.size_is.set && row->make->own.size_is.choice == MEASURE_OPENING) {
        ask(reader, row->make->own.size_is.place, "measure 'opening'", why);
    }
    if (row->make->own.fit.set && (all & TAKES_FIT) == 0) {
        ask(reader, row->make->own.fit.place,
            row->make->own.fit.choice == FIT_INSET ? "reveal" : "overlay", why);
    }
    if (row->make->own.gap.set && (all & TAKES_GAP) == 0) {
        ask(reader, row->make->own.gap.place, "gap",
            row->opens.choice == OPENS_PIE_CUT ? "a pie-cut pair has a corner between its leaves"
            : row->leaves.amount > 1           ? why
                                               : "one leaf closes the opening");
    }
    if (row->make->own.corner.set && (all & TAKES_CORNER) == 0) {
        ask(reader, row->make->own.corner.place, "corner",
            row->opens.choice == OPENS_PIE_CUT ? why : "the row is no pie-cut pair");
    }
}

static void ask_color(struct reader *reader, const struct row *row, unsigned all) {
    const struct text *const color = &row->make->own.color;
    const struct reference *const finish = &row->make->whole.finish;
    const char *why = "the row has no finish";
    if (color->s == NULL || (all & TAKES_COLOR) != 0) {
        return;
    }
    if (finish->index >= 0) {
        why = pool_words(&reader->problems->pool, "no coat of finish '%s' is mixed to a color",
                         problem_quote(reader->problems, finish->name.s));
    }
    ask(reader, color->place, named(reader, "color", color->s), why);
}

void row_warn_effect(struct reader *reader, const struct job *job, const struct row *row) {
    unsigned all = taken(reader, row, &row->make->whole);
    for (size_t i = 0; i < job->option_count; i++) {
        const struct construction construction = row_construction(job, row, (int)i);
        all |= taken(reader, row, &construction);
    }
    if (row->make->whole.style.index < 0 || (!row->use.set && row->use.place.line != 0)) {
        return; /* reported where they are given */
    }
    ask_materials(reader, row, all);
    ask_grain(reader, row, all);
    ask_mids(reader, row, all);
    ask_bars(reader, row, all);
    ask_hinges(reader, row, all);
    ask_pulls(reader, row, all);
    ask_fit(reader, row, all);
    ask_color(reader, row, all);
}

/* --- what an option names --- */

/* What rows take of an option, where they do not name it themselves. */
static unsigned taken_of_option(const struct reader *reader, const struct job *job, size_t option) {
    unsigned all = 0;
    for (size_t r = 0; r < job->row_count; r++) {
        const struct row *const row = &job->rows[r];
        const struct construction *const own = &row->make->own;
        const struct construction made = row_construction(job, row, (int)option);
        const unsigned said = (own->frame.name.s != NULL ? TAKES_FRAME : 0U) |
                              (own->panel.name.s != NULL ? TAKES_PANEL : 0U) |
                              (own->solid.name.s != NULL ? TAKES_SOLID : 0U) |
                              (own->slab.name.s != NULL ? TAKES_SLAB : 0U) |
                              (own->glass.name.s != NULL ? TAKES_GLASS : 0U) |
                              (own->color.s != NULL ? TAKES_COLOR : 0U);
        all |= taken(reader, row, &made) & ~said;
    }
    return all;
}

void option_warn_effect(struct reader *reader, const struct job *job, size_t option) {
    const struct construction *const changes = &job->options[option].changes;
    const struct {
        const char *key;
        const struct text *given;
        unsigned bit;
    } keys[] = {
        {"frame", &changes->frame.name, TAKES_FRAME},
        {"panel", &changes->panel.name, TAKES_PANEL},
        {"solid panel", &changes->solid.name, TAKES_SOLID},
        {"slab", &changes->slab.name, TAKES_SLAB},
        {"glass", &changes->glass.name, TAKES_GLASS},
        {"color", &changes->color, TAKES_COLOR},
    };
    const unsigned all = taken_of_option(reader, job, option);
    for (size_t i = 0; i < COUNT_OF(keys); i++) {
        if (keys[i].given->s != NULL && (all & keys[i].bit) == 0) {
            problem_add(
                reader->problems, SEVERITY_WARNING, "without-effect", keys[i].given->place,
                "%s of option '%s' has no effect: no door takes it from there; take it away",
                named(reader, keys[i].key, keys[i].given->s),
                problem_quote(reader->problems, job->options[option].name.s));
        }
    }
}
