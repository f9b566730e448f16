/* SPDX-License-Identifier: MIT */
/* Whether the woods of a job go together as they are seen: by what the rates call them, as that is
 * all that is known of a sheet. */
#include "base/array.h"
#include "base/text.h"
#include "door/leaf.h"
#include "model/construction.h"
#include "read/job/job_keys.h"

#include <string.h>

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool holds_one(const char *text, const char *const *words, size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (text_holds_word(text, words[i], strlen(words[i]))) {
            return true;
        }
    }
    return false;
}

/* --- clear finish on a board without a face --- */

/* A sheet with grain, or of veneer, has a face of wood. */
static bool is_bare_board(const struct sheet *sheet) {
    static const char *const boards[] = {"mdf",       "hdf",       "fiberboard",
                                         "hardboard", "chipboard", "particleboard"};
    static const char *const faced[] = {"veneer", "veneered", "faced", "laminated", "melamine"};
    const char *const texts[] = {sheet->name.s, sheet->client_name.s};
    bool board = false;
    bool face = sheet->grain;
    for (size_t i = 0; i < COUNT_OF(texts); i++) {
        board = board || holds_one(texts[i], boards, COUNT_OF(boards));
        face = face || holds_one(texts[i], faced, COUNT_OF(faced));
    }
    return board && !face;
}

/* Called clear, and of no coating that is mixed to a color. */
static bool is_clear(const struct rates *rates, const struct finish *finish) {
    static const char *const words[] = {"clear", "varnish", "varnished", "shellac"};
    for (size_t i = 0; i < finish->coat_count; i++) {
        const int32_t coating = finish->coats[i].coating;
        if (coating < 0 || rates->coatings[coating].tinted) {
            return false;
        }
    }
    return holds_one(finish->name.s, words, COUNT_OF(words)) ||
           holds_one(finish->client_name.s, words, COUNT_OF(words));
}

const struct material_reference *row_filling(const struct reader *reader, const struct row *row,
                                             const struct construction *construction,
                                             const char **key) {
    const struct style *style;
    if (construction->style.index < 0) {
        return NULL; /* reported where it is named */
    }
    style = row_style(reader, row, construction);
    if (style->bought_in.set) {
        return NULL;
    }
    if (style->form.choice == FORM_SLAB) {
        *key = "slab";
        return &construction->slab;
    }
    if (style->form.choice != FORM_PANEL && style->form.choice != FORM_SOLID) {
        return NULL;
    }
    const struct material_reference *const panel =
        construction_panel(construction, (enum door_form)style->form.choice);
    *key = panel == &construction->solid ? "solid panel" : "panel";
    return panel;
}

static void ask_clear(struct reader *reader, const struct row *row,
                      const struct construction *construction, const struct option *option) {
    const char *key = NULL;
    const struct material_reference *const given = row_filling(reader, row, construction, &key);
    const struct rates *const rates = reader->rates;
    if (given == NULL || given->kind != MATERIAL_SHEET || construction->finish.index < 0 ||
        !is_bare_board(&rates->sheets[given->index]) ||
        !is_clear(rates, &rates->finishes[construction->finish.index])) {
        return;
    }
    problem_add(reader->problems, SEVERITY_WARNING, "clear-on-board", row->place,
                "finish '%s' is clear and shows the bare board of %s '%s'%s; name a sheet with a "
                "face of wood, or a finish that covers",
                problem_quote(reader->problems, construction->finish.name.s), key,
                problem_quote(reader->problems, given->name.s), option_words(reader, option));
}

void row_warn_clear(struct reader *reader, const struct job *job, const struct row *row) {
    ask_clear(reader, row, &row->make->whole, NULL);
    for (size_t i = 0; i < job->option_count; i++) {
        const struct construction construction = row_construction(job, row, (int)i);
        ask_clear(reader, row, &construction, &job->options[i]);
    }
}

/* --- an option that changes the frames alone --- */

/* Whether one of the words of text, but those that no wood is told by, stands in a or b. */
static bool shares_word(const char *text, const char *a, const char *b) {
    static const char *const loose[] = {"hard",  "soft",   "red",   "white", "black", "yellow",
                                        "sugar", "solid",  "board", "panel", "slab",  "and",
                                        "the",   "rustic", "clear", "grade", "select"};
    for (const char *at = text == NULL ? "" : text; *at != '\0';) {
        size_t size = 0;
        while (is_letter(at[size])) {
            size++;
        }
        bool tells = size > 2;
        for (size_t i = 0; tells && i < COUNT_OF(loose); i++) {
            tells = strlen(loose[i]) != size || !text_holds_word(loose[i], at, size);
        }
        if (tells && (text_holds_word(a, at, size) || text_holds_word(b, at, size))) {
            return true;
        }
        at += size == 0 ? 1 : size;
    }
    return false;
}

/* Whether a material is of the wood of a frame. */
static bool is_of_wood(const struct rates *rates, const struct material_reference *frame,
                       const struct material_reference *given) {
    const struct lumber *const lumber = &rates->lumber[frame->index];
    const char *name = NULL;
    const char *words = NULL;
    if (given->kind == MATERIAL_LUMBER) {
        const struct lumber *const other = &rates->lumber[given->index];
        if (lumber == other || (lumber->wood >= 0 && lumber->wood == other->wood)) {
            return true;
        }
        name = other->name.s;
        words = other->species.s;
    } else if (given->kind == MATERIAL_SHEET) {
        name = rates->sheets[given->index].name.s;
        words = rates->sheets[given->index].client_name.s;
    }
    return shares_word(lumber->name.s, name, words) ||
           shares_word(lumber->species.s, name, words) ||
           shares_word(lumber->client_name.s, name, words);
}

/* Whether a row's frame has left the wood of [make], and what fills its door, named there, has
 * not. */
void row_warn_woods(struct reader *reader, const struct job *job, const struct row *row) {
    const struct material_reference *const before = &job->construction.frame;
    const struct material_reference *const frame = &row->make->own.frame;
    const char *key = NULL;
    const struct material_reference *const given =
        row_filling(reader, row, &row->make->whole, &key);
    const struct construction *const own = &row->make->own;
    if (frame->index < 0 || before->index < 0 || given == NULL || given->index < 0 ||
        given == &row->make->whole.slab || own->panel.name.s != NULL || own->solid.name.s != NULL ||
        !is_of_wood(reader->rates, before, given) || is_of_wood(reader->rates, frame, given)) {
        return;
    }
    problem_add(reader->problems, SEVERITY_WARNING, "woods-mixed", frame->name.place,
                "the row has a frame of '%s' and keeps %s '%s', the wood of the other frames; name "
                "what goes with its frame",
                problem_quote(reader->problems, frame->name.s), key,
                problem_quote(reader->problems, given->name.s));
}

/* What an option leaves of the wood that its frames had before. */
struct left {
    const struct material_reference *slab, *panel, *solid;
};

/* Of [make], by key: what neither the option nor the row names. */
static void look_at_row(const struct reader *reader, const struct job *job, const struct row *row,
                        size_t option, struct left *left) {
    const struct construction *const changes = &job->options[option].changes;
    const struct construction made = row_construction(job, row, (int)option);
    const struct construction *const make = &job->construction;
    const char *key = NULL;
    const struct material_reference *const given = row_filling(reader, row, &made, &key);
    if (given == NULL || row->make->own.frame.name.s != NULL) {
        return;
    }
    if (given == &made.slab && row->make->own.slab.name.s == NULL && changes->slab.name.s == NULL) {
        left->slab = &make->slab;
    } else if (given == &made.panel && row->make->own.panel.name.s == NULL &&
               changes->panel.name.s == NULL) {
        left->panel = &make->panel;
    } else if (given == &made.solid && row->make->own.solid.name.s == NULL &&
               changes->solid.name.s == NULL) {
        left->solid = &make->solid;
    }
}

static void ask_mixed(struct reader *reader, const struct job *job, size_t option,
                      const struct left *left) {
    const struct material_reference *const before = &job->construction.frame;
    const struct material_reference *const frame = &job->options[option].changes.frame;
    const struct {
        const char *key;
        const struct material_reference *given;
    } keys[] = {{"panel", left->panel}, {"solid panel", left->solid}, {"slab", left->slab}};
    const char *list = "";
    for (size_t i = 0; i < COUNT_OF(keys) && list != NULL; i++) {
        const struct material_reference *const given = keys[i].given;
        if (given != NULL && given->index >= 0 && is_of_wood(reader->rates, before, given) &&
            !is_of_wood(reader->rates, frame, given)) {
            list = pool_format(&reader->problems->pool, "%s%s%s '%s'", list,
                               *list == '\0' ? "" : " and ", keys[i].key,
                               problem_quote(reader->problems, given->name.s));
        }
    }
    if (list == NULL || *list == '\0') {
        return;
    }
    problem_add(reader->problems, SEVERITY_WARNING, "woods-mixed", frame->name.place,
                "option '%s' has frames of '%s' and keeps %s, the wood of the frames as listed; "
                "name what goes with its frames",
                problem_quote(reader->problems, job->options[option].name.s),
                problem_quote(reader->problems, frame->name.s), list);
}

void options_warn_woods(struct reader *reader, const struct job *job) {
    for (size_t i = 0; i < job->option_count; i++) {
        struct left left = {0};
        if (job->options[i].changes.frame.index < 0 || job->construction.frame.index < 0) {
            continue;
        }
        for (size_t r = 0; r < job->row_count; r++) {
            look_at_row(reader, job, &job->rows[r], i, &left);
        }
        ask_mixed(reader, job, i, &left);
    }
}

/* --- frames and panels of [make] --- */

/* Whether wood is seen below a finish: its last coat is not mixed to a color, as that over a stain,
 * and it is not called what covers. */
static bool shows_wood(const struct rates *rates, const struct finish *finish) {
    static const char *const words[] = {"paint",  "painted", "enamel", "primer",
                                        "primed", "opaque",  "white"};
    const int32_t last =
        finish->coat_count == 0 ? -1 : finish->coats[finish->coat_count - 1].coating;
    return last >= 0 && !rates->coatings[last].tinted &&
           !holds_one(finish->name.s, words, COUNT_OF(words)) &&
           !holds_one(finish->client_name.s, words, COUNT_OF(words));
}

/* Whether a material is of a wood, and not of the frame's: of a sheet, that of another lumber of
 * the rates. */
static bool is_of_other_wood(const struct rates *rates, const struct material_reference *frame,
                             const struct material_reference *given) {
    bool other = given->kind == MATERIAL_LUMBER;
    for (size_t i = 0; i < rates->lumber_count && !other; i++) {
        const struct material_reference lumber = {.kind = MATERIAL_LUMBER, .index = (int32_t)i};
        other = is_of_wood(rates, &lumber, given);
    }
    return other && !is_of_wood(rates, frame, given);
}

/* Whether [make] names frame and panel of a row, and both are seen. */
static bool is_made_alike(const struct rates *rates, const struct row *row) {
    const struct construction *const own = &row->make->own;
    const int32_t finish = row->make->whole.finish.index;
    return own->frame.name.s == NULL && own->panel.name.s == NULL && own->solid.name.s == NULL &&
           finish >= 0 && shows_wood(rates, &rates->finishes[finish]);
}

void make_warn_woods(struct reader *reader, const struct job *job) {
    const struct material_reference *const frame = &job->construction.frame;
    bool asked_panel = false;
    bool asked_solid = false;
    for (size_t r = 0; r < job->row_count && frame->index >= 0; r++) {
        const struct row *const row = &job->rows[r];
        const struct construction *const whole = &row->make->whole;
        const char *key = NULL;
        const struct material_reference *const given = row_filling(reader, row, whole, &key);
        bool *const asked = given == &whole->solid ? &asked_solid : &asked_panel;
        if (given == NULL || given == &whole->slab || given->index < 0 || *asked ||
            !is_made_alike(reader->rates, row) || !is_of_other_wood(reader->rates, frame, given)) {
            continue;
        }
        *asked = true;
        problem_add(reader->problems, SEVERITY_WARNING, "woods-mixed", given->name.place,
                    "%s '%s' is of another wood than the frames of '%s', and finish '%s' shows "
                    "both; name what goes with the frames",
                    key, problem_quote(reader->problems, given->name.s),
                    problem_quote(reader->problems, frame->name.s),
                    problem_quote(reader->problems, whole->finish.name.s));
    }
}
