/* SPDX-License-Identifier: MIT */
#include "report/words/show.h"

#include "base/date.h"
#include "model/coat_way.h"
#include "report/words/difference.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

struct shown show_number(int64_t value, uint8_t decimals) {
    struct shown s;
    figure_text(value, decimals, s.text, sizeof s.text);
    return s;
}

struct shown show_more(int64_t value, uint8_t decimals) {
    struct shown s;
    (void)snprintf(s.text, sizeof s.text, "%s%.64s", value > 0 ? "+" : "",
                   show_number(value, decimals).text);
    return s;
}

struct shown show(const struct estimate *e, fig f) {
    const uint8_t decimals = tape_read_decimals(&e->tape, f);
    return decimals < tape_decimals(&e->tape, f)
               ? show_number(tape_scaled(&e->tape, f, decimals), decimals)
               : show_exact(e, f);
}

struct shown show_exact(const struct estimate *e, fig f) {
    struct shown s = {"-"};
    if (!fig_none(f)) {
        tape_text(&e->tape, f, s.text, sizeof s.text);
    }
    return s;
}

static struct shown without_noughts(struct shown s) {
    size_t size = strlen(s.text);
    if (strchr(s.text, '.') == NULL) {
        return s;
    }
    while (s.text[size - 1] == '0') {
        size--;
    }
    s.text[s.text[size - 1] == '.' ? size - 1 : size] = '\0';
    return s;
}

struct shown show_short(const struct estimate *e, fig f) {
    return without_noughts(show_exact(e, f));
}

struct shown show_few(const struct estimate *e, fig f) {
    const uint8_t decimals = tape_decimals(&e->tape, f);
    const uint8_t most = tape_unit(&e->tape, f) == UNIT_M3 ? 4 : 2;
    return decimals <= most ? show_short(e, f)
                            : without_noughts(show_number(tape_scaled(&e->tape, f, most), most));
}

static struct shown join(const char *number, const char *unit) {
    struct shown s;
    (void)snprintf(s.text, sizeof s.text, "%.64s%s%.24s", number, unit[0] == '\0' ? "" : " ", unit);
    return s;
}

struct shown show_unit(const struct estimate *e, fig f) {
    const struct shown number = show(e, f);
    return fig_none(f) ? number : join(number.text, unit_name(tape_unit(&e->tape, f)));
}

struct shown show_money(const struct estimate *e, fig f) {
    const uint8_t decimals = tape_decimals(&e->tape, f);
    const uint8_t least = e->rates->shop.money_decimals;
    if (fig_none(f) || decimals >= least) {
        return show(e, f);
    }
    return show_number(tape_scaled(&e->tape, f, least), least);
}

struct shown show_amount(const struct estimate *e, fig f) {
    return tape_unit(&e->tape, f) == UNIT_MONEY ? show_money(e, f) : show_unit(e, f);
}

const char *show_unit_name(const struct estimate *e, fig f) {
    const enum unit unit = tape_unit(&e->tape, f);
    return unit == UNIT_MONEY ? e->rates->shop.currency.s : unit_name(unit);
}

const struct settings *show_settings(const struct estimate *e, struct place place) {
    const struct settings *const rates = &e->rates->settings;
    const struct settings *const job = &e->job->settings;
    if (place.file == 0) {
        return NULL;
    }
    return place.file == rates->file ? rates : (place.file == job->file ? job : NULL);
}

const struct setting *show_setting(const struct estimate *e, fig f) {
    const struct place place = tape_origin(&e->tape, f).place;
    const struct settings *const settings = show_settings(e, place);
    return settings == NULL ? NULL : setting_at(settings, place);
}

struct shown show_learned(const struct estimate *e, fig f) {
    struct shown s = {""};
    const struct place place = tape_origin(&e->tape, f).place;
    const struct rate_number *const number =
        place.file != 0 && place.file == e->rates->settings.file
            ? rate_number_at(&e->rates->numbers, place)
            : NULL;
    if (number != NULL && number->on.set) {
        (void)date_text(date_of_number((int32_t)number->on.amount), s.text, sizeof s.text);
    }
    return s;
}

struct shown show_doors(int64_t count) {
    struct shown s;
    (void)snprintf(s.text, sizeof s.text, "%" PRId64 " %s", count,
                   count == 1 ? "door or front" : "doors and fronts");
    return s;
}

struct shown show_count(size_t count, const char *noun) {
    struct shown s;
    if (count == 0) {
        (void)snprintf(s.text, sizeof s.text, "no %.64ss", noun);
    } else {
        (void)snprintf(s.text, sizeof s.text, "%zu %.64s%s", count, noun, count == 1 ? "" : "s");
    }
    return s;
}

struct shown show_value(const struct value *value, enum length_unit lengths) {
    if (!value->set) {
        return (struct shown){""};
    }
    if (value->unit == UNIT_NM) {
        struct shown size;
        length_show(value->amount, lengths, size.text, sizeof size.text);
        return size;
    }
    return join(show_number(value->amount, value->decimals).text,
                unit_name((enum unit)value->unit));
}

char *show_unbroken(length value, enum length_unit lengths, char *text, size_t size) {
    static const char blank[] = "\xC2\xA0"; /* U+00A0 */
    char plain[32];
    (void)length_show(value, lengths, plain, sizeof plain);
    const size_t first = strcspn(plain, " ");
    (void)snprintf(text, size, "%.*s%s%s", (int)first, plain, plain[first] == '\0' ? "" : blank,
                   plain[first] == '\0' ? "" : plain + first + 1);
    return text;
}

struct shown show_size(length width, length height, enum length_unit lengths) {
    char across[32];
    char up[32];
    struct shown s;
    (void)snprintf(s.text, sizeof s.text, "%s x %s",
                   length_show(width, lengths, across, sizeof across),
                   length_show(height, lengths, up, sizeof up));
    return s;
}

/* 45 % is 0.45, exactly: the point moves by two. */
struct shown show_waste(const struct value *waste, enum waste_as as) {
    int64_t whole = 100;
    for (uint8_t d = 0; d < waste->decimals; d++) {
        whole *= 10;
    }
    const bool added = as == WASTE_ADDED;
    const struct shown percent = show_number(waste->amount, waste->decimals);
    const struct shown factor = show_number(added ? whole + waste->amount : whole - waste->amount,
                                            (uint8_t)(waste->decimals + 2));
    struct shown s;
    (void)snprintf(s.text, sizeof s.text,
                   added ? "%s %% added to net (x %s)" : "%s %% lost of what is bought (/ %s)",
                   percent.text, factor.text);
    return s;
}

bool value_is(const struct tape *tape, fig f, const struct value *value) {
    return value->set && tape_scaled(tape, f, 6) == value_at(value, 6);
}

struct shown show_sheets(const struct estimate *e, const struct sheet_purchase_by *bought) {
    const bool half = !fig_none(bought->half) && tape_amount(&e->tape, bought->half) > 0;
    const int64_t whole = tape_scaled(&e->tape, bought->whole, 0);
    const bool rack = !fig_none(bought->from_rack) && tape_amount(&e->tape, bought->from_rack) > 0;
    char more[48] = "";
    struct shown s;
    if (rack) {
        (void)snprintf(more, sizeof more, "%.20s from the rack", show(e, bought->from_rack).text);
    }
    if (rack && whole == 0 && !half) {
        (void)snprintf(s.text, sizeof s.text, "%s", more);
    } else if (whole == 0 && half) {
        (void)snprintf(s.text, sizeof s.text, "a half sheet%s%s", rack ? ", " : "", more);
    } else {
        (void)snprintf(s.text, sizeof s.text, "%lld sheet%s%s%s%s", (long long)whole,
                       whole == 1 ? "" : "s", half ? " and a half" : "", rack ? ", " : "", more);
    }
    return s;
}

struct shown show_valid_until(const struct job *job) {
    struct shown s = {""};
    if (job->valid.set) {
        const struct date of_job = {.year = job->year, .month = job->month, .day = job->day};
        date_text(date_after(of_job, (int32_t)job->valid.amount), s.text, sizeof s.text);
    }
    return s;
}

static struct shown with_sign(int64_t value, uint8_t decimals, const char *unit) {
    struct shown s;
    (void)snprintf(s.text, sizeof s.text, "%.64s%s", show_more(value, decimals).text, unit);
    return s;
}

struct shown_difference show_difference(const struct estimate *first,
                                        const struct estimate *other) {
    const uint8_t a = tape_decimals(&first->tape, first->sale.total);
    const uint8_t b = tape_decimals(&other->tape, other->sale.total);
    const uint8_t decimals = a > b ? a : b;
    const int64_t from = tape_scaled(&first->tape, first->sale.total, decimals);
    const int64_t to = tape_scaled(&other->tape, other->sale.total, decimals);
    struct shown_difference d = {.money = with_sign(to - from, decimals, ""), .percent = {"-"}};
    if (from != 0) {
        d.percent = with_sign(difference_percent(from, to), 2, " %");
    }
    return d;
}

const char *show_color(const struct rates *rates, const struct construction *construction) {
    if (construction->color.s == NULL || construction->finish.index < 0) {
        return "";
    }
    return finish_shows_color(rates, &rates->finishes[construction->finish.index])
               ? construction->color.s
               : "";
}

const char *show_ready(struct pool *pool, const struct estimate *e) {
    char day[16];
    return e->ready == 0
               ? e->job->ready.s
               : pool_words(pool, "%s, %s", date_text(date_of_number(e->ready), day, sizeof day),
                            e->job->ready.s);
}

const char *show_agreed(struct pool *pool, const struct estimate *e) {
    const struct agreed *const agreed = &e->job->agreed;
    char day[16];
    if (agreed->to.s == NULL) {
        return NULL;
    }
    return pool_words(pool, "%s, %s%s%s", agreed->to.s, date_text(agreed->date, day, sizeof day),
                      agreed->option == e->option ? "" : "; this is made ",
                      agreed->option == e->option ? "" : estimate_name(e));
}

const char *show_paper(const struct job *job) {
    return job->paper.choice == PAPER_ESTIMATE ? "Estimate" : "Quote";
}

const char *show_batch_color(const struct estimate *e, const struct batch *batch) {
    const struct construction construction = {.finish = {.index = batch->finish},
                                              .color = {.s = batch->color}};
    const char *const shown = show_color(e->rates, &construction);
    return shown[0] == '\0' && batch->several && batch->color != NULL ? batch->color : shown;
}

bool show_on_letter(const struct estimate *e) {
    return paper_is_letter(e->rates->shop.paper_size.choice, e->rates->shop.unit);
}

const char *show_grain(const struct rates *rates, const struct door *door) {
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if (part_is_field(part->kind) &&
            (part->material_kind == MATERIAL_LUMBER ||
             (part->material_kind == MATERIAL_SHEET && rates->sheets[part->material].grain))) {
            return door_grain(door) == PANEL_GRAIN_VERTICAL ? "vertical" : "horizontal";
        }
    }
    return NULL;
}

const char *show_role(enum hardware_role role) {
    static const char *const names[ROLE_COUNT] = {
        [ROLE_HINGE] = "hinge", [ROLE_PULL] = "pull", [ROLE_OTHER] = "other"};
    assert(role < ROLE_COUNT);
    return names[role];
}

const char *show_style(const struct door *door) {
    return door->style->name.s;
}
