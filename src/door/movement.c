/* SPDX-License-Identifier: MIT */
#include "door/movement.h"

#include "base/int128.h"

#define HANDBOOK "Wood Handbook (FPL-GTR-190, 2010), Table 4-2, 70 F"

/* Moisture of wood by relative humidity at 70 F: Wood Handbook, Table 4-2. */
static const struct {
    int64_t humidity, tenths; /* percent; tenths of a percent */
} table[] = {
    {5, 13},   {10, 25},  {15, 35},  {20, 45},  {25, 54},  {30, 62},
    {35, 69},  {40, 77},  {45, 85},  {50, 92},  {55, 101}, {60, 110},
    {65, 120}, {70, 131}, {75, 144}, {80, 160}, {85, 179}, {90, 205},
};
#define ROWS (sizeof table / sizeof *table)

/* in[0]: humidity, 6 decimals. out[0]: moisture, hundredths of a percent. */
static bool choose(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    if (count != 1 || outputs < 1) {
        return false;
    }
    const int64_t million = 1000000;
    size_t row = 1;
    while (row + 1 < ROWS && in[0] > table[row].humidity * million) {
        row++;
    }
    const int64_t span = (table[row].humidity - table[row - 1].humidity) * million;
    const int64_t into = in[0] - table[row - 1].humidity * million;
    const int64_t rise = (table[row].tenths - table[row - 1].tenths) * 10;
    out[0] = table[row - 1].tenths * 10 + (int64_t)int128_round((int128)rise * into, span);
    return true;
}

const struct chooser moisture_chooser = {.name = "moisture", .choose = choose};

/* Moisture that the wood takes on in that air. */
static fig moisture_of(const struct calc *c, const char *what, const struct value *humidity) {
    const fig air = calc_given(c, "relative humidity", humidity);
    fig hundredths;
    fig_chosen(c->tape, "moisture in hundredths", UNIT_COUNT, &moisture_chooser, &air, 1,
               &hundredths, 1);
    return fig_ratio(c->tape, what, UNIT_PERCENT, (figs){{hundredths}},
                     (figs){{c->units->hundred}});
}

static fig twice(const struct calc *c, fig once) {
    return fig_plus(c->tape, "of both edges", once, once);
}

struct movement movement_make(const struct calc *c, const struct door *door,
                              const struct part *part, fig width) {
    const struct climate *const climate = &c->rates->climate;
    struct movement move = {0};
    if (part->kind != PART_PANEL || part->material_kind != MATERIAL_LUMBER ||
        !climate->moisture.set || !climate->driest.set || !climate->wettest.set) {
        return move;
    }
    const int32_t wood = c->rates->lumber[part->material].wood;
    if (wood < 0 || !c->rates->woods[wood].coef_tangential.set) {
        return move;
    }
    const struct style *const style = door->style;
    const enum unit unit = c->units->length;
    const fig coefficient =
        calc_given(c, "movement by percent of moisture", &c->rates->woods[wood].coef_tangential);
    const fig now = calc_given(c, "moisture when made", &climate->moisture);
    const fig wet = moisture_of(c, "moisture, wettest", &climate->wettest);
    const fig dry = moisture_of(c, "moisture, driest", &climate->driest);
    const fig gain = fig_plus(c->tape, "moisture gained", wet, fig_minus(now));
    const fig loss = fig_plus(c->tape, "moisture lost", now, fig_minus(dry));
    move.swell =
        fig_ratio(c->tape, "swells by", unit, (figs){{width, coefficient, gain}}, (figs){{{0}}});
    move.shrink =
        fig_ratio(c->tape, "shrinks by", unit, (figs){{width, coefficient, loss}}, (figs){{{0}}});
    move.room = twice(c, calc_size(c, "clearance across", style->clearance_across.amount,
                                   &style->clearance_across));
    move.hold = twice(c, calc_length(c, "stands in the groove",
                                     style->groove.amount - style->clearance_across.amount,
                                     style->groove.place));
    return move;
}

/* A figure of length in words, to a thousandth of an inch or a tenth of a mm. */
static const char *in_words(const struct calc *c, fig figure, char *text, size_t size) {
    const uint8_t decimals = c->units->lengths == LENGTH_MM ? 1 : 3;
    return figure_text(tape_scaled(c->tape, figure, decimals), decimals, text, size);
}

void movement_warn(const struct calc *c, const struct door *door, const struct part *part,
                   const struct movement *move) {
    char size[32];
    char by[32];
    char room[32];
    if (fig_none(move->swell)) {
        return;
    }
    const char *const id = problem_quote(c->problems, door->name);
    const char *const unit = unit_name(c->units->length);
    (void)length_show(part->width, c->units->lengths, size, sizeof size);
    if (tape_amount(c->tape, move->swell) > tape_amount(c->tape, move->room)) {
        problem_add(c->problems, SEVERITY_WARNING, "panel-no-room", door->row->place,
                    "the solid panel of door '%s', %s %s across the grain, swells by %s %s in the "
                    "wettest air and has %s %s of room; give "
                    "it more clearance across, or a deeper groove",
                    id, size, unit, in_words(c, move->swell, by, sizeof by), unit,
                    in_words(c, move->room, room, sizeof room), unit);
    }
    if (tape_amount(c->tape, move->shrink) >= tape_amount(c->tape, move->hold)) {
        problem_add(c->problems, SEVERITY_WARNING, "panel-comes-out", door->row->place,
                    "the solid panel of door '%s', %s %s across the grain, shrinks by %s %s in the "
                    "driest air and stands %s %s in its "
                    "grooves; make the grooves deeper, or the panel of two",
                    id, size, unit, in_words(c, move->shrink, by, sizeof by), unit,
                    in_words(c, move->hold, room, sizeof room), unit);
    }
}
