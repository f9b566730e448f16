/* SPDX-License-Identifier: MIT */
#include "model/units.h"

#include "base/int128.h"

#include <assert.h>

#define BY_DEFINITION "by definition: 1 in = 25.4 mm, 1 ft = 12 in (NIST SP 811, App. B)"

static fig constant(struct tape *tape, const char *what, uint8_t decimals, int64_t value,
                    const char *source) {
    return tape_constant(tape, what, UNIT_NUMBER, decimals, value, source);
}

static void set_units(struct units *units, enum length_unit lengths, bool metric) {
    *units = (struct units){
        .lengths = lengths,
        .metric = metric,
        .length = lengths == LENGTH_MM ? UNIT_MM : UNIT_IN,
        .run = metric ? UNIT_M : UNIT_FT,
        .area = metric ? UNIT_M2 : UNIT_SQFT,
        .weight = metric ? UNIT_KG : UNIT_LB,
        .volume = metric ? UNIT_L : UNIT_GAL,
        .film = metric ? UNIT_UM : UNIT_MIL,
        .density = metric ? UNIT_KG_PER_M3 : UNIT_LB_PER_CUFT,
        .area_weight = metric ? UNIT_KG_PER_M2 : UNIT_LB_PER_SQFT,
    };
}

/* The length constants depend on both the job's unit and the rates' system. */
static void set_lengths(struct units *units, struct tape *tape) {
    const bool mm = units->lengths == LENGTH_MM;
    if (units->metric) {
        units->length_per_run = mm ? constant(tape, "mm per m", 0, 1000, BY_DEFINITION)
                                   : constant(tape, "in per m", 6, 39370079, BY_DEFINITION);
        units->length2_per_area = mm ? constant(tape, "sq mm per m2", 0, 1000000, BY_DEFINITION)
                                     : constant(tape, "sq in per m2", 6, 1550003100, BY_DEFINITION);
    } else {
        units->length_per_run = mm ? constant(tape, "mm per ft", 1, 3048, BY_DEFINITION)
                                   : constant(tape, "in per ft", 0, 12, BY_DEFINITION);
        units->length2_per_area = mm ? constant(tape, "sq mm per sq ft", 2, 9290304, BY_DEFINITION)
                                     : constant(tape, "sq in per sq ft", 0, 144, BY_DEFINITION);
    }
    units->length_per_thick = units->length_per_run;
    units->length3_per_bf =
        mm ? constant(tape, "cu mm per board foot", 3, 2359737216, "144 x 25.4^3, exact")
           : constant(tape, "cu in per board foot", 0, 144,
                      "board foot = 1 in x 12 in x 12 in (NIST Handbook 44)");
    units->length3_per_m3 = mm ? constant(tape, "cu mm per m3", 0, 1000000000, BY_DEFINITION)
                               : constant(tape, "cu in per m3", 6, 61023744095, BY_DEFINITION);
    units->inch = tape_constant(tape, "least thickness counted", units->length, mm ? 1 : 0,
                                mm ? 254 : 1, "stock under 1 in counts as 1 in (NHLA practice)");
}

void units_init(struct units *units, struct tape *tape, enum length_unit lengths, bool metric) {
    set_units(units, lengths, metric);
    units->one = tape_constant(tape, "one", UNIT_COUNT, 0, 1, "by definition");
    units->two = tape_constant(tape, "two", UNIT_COUNT, 0, 2, "by definition");
    units->hundred = tape_constant(tape, "hundred percent", UNIT_PERCENT, 0, 100, "by definition");
    units->sixty = constant(tape, "minutes per hour", 0, 60, "by definition");
    set_lengths(units, tape);
    if (metric) {
        units->spread_over = units->one;
        units->spread_under =
            constant(tape, "m2 um per L", 0, 1000, "1 L spread 1 um thick covers 1000 m2, exact");
    } else {
        units->spread_over = constant(tape, "sq in per sq ft of film", 0, 144, BY_DEFINITION);
        units->spread_under = constant(
            tape, "thousandths of cu in per gal", 0, 231000,
            "1 US gal = 231 cu in (NIST Handbook 44), 1 mil = 0.001 in: 1604.17 sq ft mil");
    }
}

fig units_length(struct tape *tape, const struct units *units, const char *what, length value,
                 struct place place) {
    return tape_given(tape, what, units->length, 6, length_millionths(value, units->lengths),
                      place);
}

int64_t units_film_amount(const struct units *units, length film, uint8_t *decimals) {
    *decimals = units->film == UNIT_UM ? 3 : 4;
    return units->film == UNIT_UM ? film : (int64_t)int128_round((int128)film * 100, 254);
}

fig units_film(struct tape *tape, const struct units *units, const char *what,
               const struct value *value) {
    if (!value->set) {
        return (fig){0};
    }
    assert(value->unit == UNIT_NM);
    uint8_t decimals;
    const int64_t amount = units_film_amount(units, value->amount, &decimals);
    return tape_given(tape, what, units->film, decimals, amount, value->place);
}

fig units_given(struct tape *tape, const struct units *units, const char *what,
                const struct value *value) {
    if (!value->set) {
        return (fig){0};
    }
    if (value->unit == UNIT_NM) {
        return units_length(tape, units, what, value->amount, value->place);
    }
    const struct rate_number *const dated = value->dated ? price_age_of(&units->ages, value) : NULL;
    if (dated != NULL && dated->yearly.set) {
        return price_aged(tape, what, dated, price_age_days(&units->ages, dated), units->hundred);
    }
    return tape_given(tape, what, (enum unit)value->unit, value->decimals, value->amount,
                      value->place);
}

fig units_density(struct tape *tape, const struct units *units, const struct value *value) {
    const fig given = units_given(tape, units, "density", value);
    if (fig_none(given) || value->unit == units->density) {
        return given;
    }
    static const char exact[] = "by definition: 1 lb = 0.453 592 37 kg, 1 ft = 0.3048 m";
    fig factor;
    if (units->metric) {
        factor = value->unit == UNIT_G_PER_CM3
                     ? constant(tape, "kg/m3 per g/cm3", 0, 1000, exact)
                     : constant(tape, "kg/m3 per lb/cu ft", 6, 16018463, exact);
    } else {
        factor = value->unit == UNIT_G_PER_CM3
                     ? constant(tape, "lb/cu ft per g/cm3", 6, 62427961, exact)
                     : constant(tape, "lb/cu ft per kg/m3", 6, 62428, exact);
    }
    return fig_ratio(tape, "density in the rates' system", units->density, (figs){{given, factor}},
                     (figs){{{0}}});
}

fig units_wood_density(struct tape *tape, const struct units *units, const struct value *gravity) {
    static const char source[] = "Wood Handbook (FPL-GTR-282, 2021), Eq. 4-14";
    const fig given = units_given(tape, units, "specific gravity at 12 %", gravity);
    if (fig_none(given)) {
        return given;
    }
    const fig water = units->metric ? constant(tape, "density of water, kg/m3", 0, 1000, source)
                                    : constant(tape, "density of water, lb/cu ft", 2, 6243, source);
    const fig moisture = constant(tape, "one and 12 % moisture", 2, 112, source);
    return fig_ratio(tape, "density at 12 % moisture", units->density,
                     (figs){{given, water, moisture}}, (figs){{{0}}});
}
