/* SPDX-License-Identifier: MIT */
#include "draft/defaults.h"

#include "base/array.h"
#include "base/text.h"
#include "model/name.h"

#include <stdlib.h>
#include <string.h>

/* --- of [job] --- */

/* `smith-kitchen.ini`: Smith kitchen. */
const char *default_title(const struct draft *draft) {
    const char *const slash = strrchr(draft->path, '/');
    const char *const name = slash == NULL ? draft->path : slash + 1;
    const char *const dot = strrchr(name, '.');
    char *const title =
        pool_text(draft->pool, name, dot == NULL ? strlen(name) : (size_t)(dot - name));
    for (char *c = title; c != NULL && *c != '\0'; c++) {
        if (*c == '-' || *c == '_') {
            *c = ' ';
        }
    }
    static const char small[] = "abcdefghijklmnopqrstuvwxyz";
    static const char large[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    const char *const at = title == NULL || title[0] == '\0' ? NULL : strchr(small, title[0]);
    if (at != NULL) {
        title[0] = large[at - small];
    }
    return title;
}

static bool number_is_taken(const struct draft *draft, const char *number) {
    for (size_t i = 0; i < draft->folder->job_count; i++) {
        const char *const other = ini_given(&draft->folder->jobs[i].ini, "job", "number");
        if (other != NULL && text_same(other, number)) {
            return true;
        }
    }
    return false;
}

/* The next number: the digits at the end of text counted up, which keep their places. NULL: it ends
 * in no digits, or in more than a number has. */
static const char *next_number(const char *text, struct pool *pool) {
    const char *digits = text + strlen(text);
    while (digits > text && digits[-1] >= '0' && digits[-1] <= '9') {
        digits--;
    }
    const size_t size = strlen(digits);
    return size == 0 || size > 12 ? NULL
                                  : pool_words(pool, "%.*s%0*lld", (int)(digits - text), text,
                                               (int)size, strtoll(digits, NULL, 10) + 1);
}

const char *default_number(const struct draft *draft) {
    const struct folder_job *const last = folder_last(draft->folder);
    const char *number = last == NULL ? NULL : ini_given(&last->ini, "job", "number");
    if (last == NULL) {
        return "0001";
    }
    /* one of the numbers that follow is free: there are fewer jobs */
    for (size_t i = 0; number != NULL && i <= draft->folder->job_count; i++) {
        number = next_number(number, draft->pool);
        if (number != NULL && !number_is_taken(draft, number)) {
            return number;
        }
    }
    return NULL;
}

const char *default_date(const struct draft *draft) {
    char text[16];
    return pool_words(draft->pool, "%s", date_text(draft->date, text, sizeof text));
}

const char *default_valid(const struct draft *draft) {
    (void)draft;
    return "30 days";
}

const char *default_unit(const struct draft *draft) {
    return draft->rates->shop.unit == LENGTH_MM ? "mm" : "in";
}

const char *default_rates(const struct draft *draft) {
    const struct folder_rates *const rates = folder_rates(draft->folder, draft_unit(draft));
    if (rates != NULL) {
        return rates->name;
    }
    return draft_unit(draft) == LENGTH_MM ? "rates/metric-shop.ini" : "rates/small-shop.ini";
}

const char *default_doors(const struct draft *draft) {
    const char *const old = draft->from ? ini_given(draft->old, "job", "doors") : NULL;
    return draft->folder->list_count > 0 ? draft->folder->lists[0].name
           : old == NULL                 ? NULL
                         : draft_renamed(old, draft->old_path, draft->path, draft->pool);
}

/* --- of [make] --- */

static const struct style *style_of(const struct draft *draft) {
    const char *const name = draft_value(draft, "make", "style");
    const int32_t at = name == NULL ? -1 : name_find(draft->rates, NAME_STYLE, name);
    return at < 0 ? NULL : &draft->rates->styles[at];
}

static bool is_made(const struct style *style) {
    return style != NULL && !style->bought_in.set;
}

const char *default_style(const struct draft *draft) {
    const struct rates *const rates = draft->rates;
    for (size_t i = 0; i < rates->style_count; i++) {
        if (is_made(&rates->styles[i])) {
            return rates->styles[i].name.s;
        }
    }
    return rates->style_count == 0 ? NULL : rates->styles[0].name.s;
}

/* That of the frame, where one was named. */
const char *default_lumber(const struct draft *draft) {
    const char *const frame = draft_value(draft, "make", "frame");
    return frame != NULL                     ? frame
           : draft->rates->lumber_count == 0 ? NULL
                                             : draft->rates->lumber[0].name.s;
}

/* The first sheet that goes into the groove of a door, or, with as_door, is as thick as one. */
static const char *sheet_for(const struct draft *draft, bool as_door) {
    const struct rates *const rates = draft->rates;
    const struct style *const style = style_of(draft);
    const length thick =
        style != NULL && style->thickness.set ? style->thickness.amount : 3 * NM_PER_INCH / 4;
    for (size_t i = 0; i < rates->sheet_count; i++) {
        const length sheet = rates->sheets[i].thickness.amount;
        if (as_door ? sheet == thick : sheet < thick * 2 / 3) {
            return rates->sheets[i].name.s;
        }
    }
    return NULL;
}

const char *default_panel(const struct draft *draft) {
    const struct style *const style = style_of(draft);
    const char *const sheet = sheet_for(draft, false);
    return sheet == NULL || (style != NULL && style->form.choice == FORM_SOLID)
               ? default_lumber(draft)
               : sheet;
}

const char *default_slab(const struct draft *draft) {
    const char *const sheet = sheet_for(draft, true);
    return sheet == NULL ? default_lumber(draft) : sheet;
}

const char *default_glass(const struct draft *draft) {
    return draft->rates->glass_count == 0 ? NULL : draft->rates->glass[0].name.s;
}

const char *default_finish(const struct draft *draft) {
    return draft->rates->finish_count == 0 ? "none" : draft->rates->finishes[0].name.s;
}

/* The first piece of hardware that tells which overlays it fits. */
static const struct hardware *first_hinge(const struct rates *rates) {
    for (size_t i = 0; i < rates->hardware_count; i++) {
        if (rates->hardware[i].overlay.set || rates->hardware[i].inset) {
            return &rates->hardware[i];
        }
    }
    return NULL;
}

const char *default_hinge(const struct draft *draft) {
    const struct hardware *const hinge = first_hinge(draft->rates);
    return hinge == NULL ? "none" : hinge->name.s;
}

/* The first that is called a pull, a knob or a handle. */
const char *default_pull(const struct draft *draft) {
    static const char *const words[] = {"pull", "knob", "handle"};
    const struct rates *const rates = draft->rates;
    for (size_t i = 0; i < rates->hardware_count; i++) {
        const struct hardware *const piece = &rates->hardware[i];
        for (size_t w = 0; w < COUNT_OF(words); w++) {
            if (text_holds_word(piece->name.s, words[w], strlen(words[w])) ||
                text_holds_word(piece->client_name.s, words[w], strlen(words[w]))) {
                return piece->name.s;
            }
        }
    }
    return "none";
}

/* The list that the job names, where it is one of the folder. */
static const struct folder_list *list_of(const struct draft *draft) {
    const char *const doors = draft_value(draft, "job", "doors");
    for (size_t i = 0; doors != NULL && i < draft->folder->list_count; i++) {
        if (strcmp(draft->folder->lists[i].name, doors) == 0) {
            return &draft->folder->lists[i];
        }
    }
    return NULL;
}

const char *default_own_columns(const struct draft *draft) {
    const struct folder_list *const list = list_of(draft);
    return list == NULL ? NULL : list->strange;
}

const char *default_measure(const struct draft *draft) {
    const struct folder_list *const list = list_of(draft);
    return list == NULL || list->measure == NULL ? "opening" : list->measure;
}

/* The hinge that the job names. */
static const struct hardware *hinge_of(const struct draft *draft) {
    const char *const name = draft_value(draft, "make", "hinge");
    const int32_t at = name == NULL ? -1 : name_find(draft->rates, NAME_HARDWARE, name);
    return at < 0 ? NULL : &draft->rates->hardware[at];
}

static const char *length_words(const struct draft *draft, length value) {
    const enum length_unit unit = draft_unit(draft);
    char text[32];
    return pool_words(draft->pool, "%s %s", length_show(value, unit, text, sizeof text),
                      unit == LENGTH_MM ? "mm" : "in");
}

/* Half an inch or 15 mm, where the hinge takes it; else the least that it takes. Common practice,
 * no source. */
const char *default_overlay(const struct draft *draft) {
    const struct hardware *const hinge = hinge_of(draft);
    const length usual = draft_unit(draft) == LENGTH_MM ? 15 * NM_PER_MM : NM_PER_INCH / 2;
    if (hinge != NULL && hinge->inset) {
        return NULL;
    }
    const bool told = hinge != NULL && hinge->overlay.set;
    return length_words(
        draft, told && (usual < hinge->overlay.low.amount || usual > hinge->overlay.high.amount)
                   ? hinge->overlay.low.amount
                   : usual);
}

/* Common practice, no source; so is the gap. */
const char *default_reveal(const struct draft *draft) {
    return length_words(draft,
                        draft_unit(draft) == LENGTH_MM ? 2 * NM_PER_MM : 3 * NM_PER_INCH / 32);
}

const char *default_gap(const struct draft *draft) {
    return length_words(draft, draft_unit(draft) == LENGTH_MM ? 3 * NM_PER_MM : NM_PER_INCH / 8);
}

/* --- what is asked --- */

bool lacks_rates(const struct draft *draft) {
    return draft->folder->rates_count == 0 && draft_value(draft, "job", "rates") == NULL &&
           (draft->old == NULL || ini_given(draft->old, "job", "rates") == NULL);
}

bool wants_rates(const struct draft *draft) {
    return draft->folder->rates_count > 1;
}

bool wants_own_columns(const struct draft *draft) {
    return default_own_columns(draft) != NULL;
}

bool wants_color(const struct draft *draft) {
    const char *const name = draft_value(draft, "make", "finish");
    const int32_t at = name == NULL ? -1 : name_find(draft->rates, NAME_FINISH, name);
    const struct finish *const finish = at < 0 ? NULL : &draft->rates->finishes[at];
    for (size_t i = 0; finish != NULL && i < finish->coat_count; i++) {
        if (draft->rates->coatings[finish->coats[i].coating].tinted) {
            return true;
        }
    }
    return false;
}

bool wants_overlay(const struct draft *draft) {
    const char *const measure = draft_value(draft, "make", "measure");
    return measure == NULL || text_same(measure, "opening");
}

bool wants_reveal(const struct draft *draft) {
    return wants_overlay(draft) && draft_value(draft, "make", "overlay") == NULL;
}
