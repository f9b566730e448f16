/* SPDX-License-Identifier: MIT */
/* The tape as compact JSON, for replay.js and page.js:
 *   texts    all words once; everything else names them by their place
 *   kinds    [operation, unit, decimals, label], what many figures have alike
 *   figures  a list each, figure 1 first: [kind, subject, value, ...], and behind it
 *            of a given of a file its file, line, and the setting, 0 for none, -1 where it was
 *            worked out from what stands there, and in a sheet the words of its cell;
 *            of a published one its source; of one read off a drawing nothing;
 *            of a choice its chooser and which output it is, then the operands;
 *            of all others the operands: how far before the figure each stands, below 0 where
 *            it is subtracted or below the line. */
#include "base/index.h"
#include "base/text.h"
#include "report/page/page_parts.h"
#include "report/words/show.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

/* Words that were met, in their order; the first is "". */
struct words {
    const char **list;
    size_t count, room;
    struct index index;
    bool failed;
};

static bool same_text(const void *list, size_t number, const void *text) {
    return strcmp(((const char *const *)list)[number], text) == 0;
}

static size_t text_number(struct words *t, const char *text) {
    const char *const words = text_or_empty(text);
    const size_t number = index_add(&t->index, hash_text(HASH_START, words), same_text, t->list,
                                    words, t->count, &t->failed);
    if (number < t->count) {
        return number;
    }
    t->list = array_grow(t->list, &t->room, t->count + 1, sizeof *t->list, &t->failed);
    if (t->failed) {
        return 0;
    }
    t->list[t->count] = words;
    return t->count++;
}

static void put_origin(struct view *v, struct words *t, fig f) {
    const struct origin origin = tape_origin(&v->e->tape, f);
    const struct setting *const setting = show_setting(v->e, f);
    if (origin.source != NULL) {
        html_format(&v->html, ",%zu", text_number(t, origin.source));
    } else if (origin.place.file != 0) {
        const char *const words =
            setting == NULL ? ""
                            : pool_words(&v->html.pool, "%s %s", setting->section, setting->key);
        const struct problems *const problems = v->facts->problems;
        html_format(&v->html, ",%zu,%u,",
                    text_number(t, problems_file_name(problems, origin.place.file)),
                    origin.place.line);
        html_format(&v->html, "%d", origin.worked ? -1 : (int)text_number(t, words));
        if (problems_has_cells(problems, origin.place.file)) {
            const struct place_words spot = problems_spot(problems, origin.place);
            html_format(&v->html, ",%zu",
                        text_number(t, pool_words(&v->html.pool, "%s", spot.text)));
        }
    }
}

/* The number of what a figure has alike with others, of which one of each stands in kinds. */
static size_t kind_number(struct view *v, struct words *kinds, struct words *texts, fig f) {
    const struct tape *const tape = &v->e->tape;
    char kind[64];
    (void)snprintf(kind, sizeof kind, "%d,%zu,%u,%zu", (int)tape_op(tape, f),
                   text_number(texts, show_unit_name(v->e, f)), tape_decimals(tape, f),
                   text_number(texts, tape_label(tape, f)));
    const size_t before = kinds->count;
    const size_t number = text_number(kinds, kind);
    if (kinds->count > before) { /* a new one: what is kept must outlive this call */
        kinds->list[number] = pool_words(&v->html.pool, "%s", kind);
    }
    return number;
}

static void put_figure(struct view *v, struct words *kinds, struct words *texts, fig f) {
    const struct tape *const tape = &v->e->tape;
    html_format(&v->html, "[%zu,%zu,%" PRId64, kind_number(v, kinds, texts, f),
                text_number(texts, tape_subject_name(tape, f)), tape_amount(tape, f));
    if (tape_op(tape, f) == OP_GIVEN) {
        put_origin(v, texts, f);
    } else if (tape_op(tape, f) == OP_CHOSEN) {
        uint32_t output = 0;
        const struct chooser *const chooser = tape_chooser(tape, f, &output);
        html_format(&v->html, ",%zu,%u", text_number(texts, chooser->name), output);
    }
    for (size_t i = 0; i < tape_operands(tape, f); i++) {
        const struct operand o = tape_operand(tape, f, i);
        html_format(&v->html, o.minus ? ",-%u" : ",%u", f.id - o.f.id);
    }
    html_put(&v->html, "]");
}

static void words_clear(struct words *words) {
    index_clear(&words->index);
    free(words->list);
}

/* What a job comes to, by the names that `range --json` has; 0: none. */
static void put_outcome(struct view *v) {
    const struct estimate *const e = v->e;
    const struct {
        const char *name;
        fig figure;
    } outcome[] = {
        {"client pays", e->sale.total}, {"before tax", e->sale.subtotal},
        {"tax", e->sale.tax},           {"to buy", e->purchase.total},
        {"hours", e->labor.hours},      {"bench hours", e->labor.bench_hours},
    };
    html_put(&v->html, "\"outcome\":");
    for (size_t i = 0; i < sizeof outcome / sizeof *outcome; i++) {
        html_format(&v->html, "%s\"%s\":%u", i == 0 ? "{" : ",", outcome[i].name,
                    outcome[i].figure.id);
    }
    html_put(&v->html, "},");
}

void page_tape(struct view *v) {
    struct words texts = {0};
    struct words kinds = {0};
    (void)text_number(&texts, "");
    put_outcome(v);
    html_format(&v->html, "\"money\":%u,\"moneyUnit\":%zu,\"total\":%u,\n\"figures\":[0",
                v->e->tape.money_decimals, text_number(&texts, v->e->rates->shop.currency.s),
                v->e->sale.total.id);
    for (uint32_t id = 1; id < v->e->tape.count; id++) {
        html_put(&v->html, id % 8 == 0 ? ",\n" : ",");
        put_figure(v, &kinds, &texts, (fig){id});
    }
    html_put(&v->html, "],\n\"kinds\":[");
    for (size_t i = 0; i < kinds.count; i++) {
        html_format(&v->html, i == 0 ? "[%s]" : ",[%s]", kinds.list[i]);
    }
    html_put(&v->html, "],\n\"texts\":[");
    for (size_t i = 0; i < texts.count; i++) {
        html_put(&v->html, i == 0 ? "" : ",");
        html_json(&v->html, texts.list[i]);
    }
    html_put(&v->html, "]");
    v->html.failed = v->html.failed || texts.failed || kinds.failed;
    words_clear(&texts);
    words_clear(&kinds);
}
