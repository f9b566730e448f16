/* SPDX-License-Identifier: MIT */
#include "finish/coat.h"

static fig volume(const struct calc *c, const char *what, figs over, figs under) {
    return fig_ratio(c->tape, what, c->units->volume, over, under);
}

static const struct coating *coating_of(const struct calc *c, const struct coat_figures *coat) {
    return &c->rates->coatings[coat->coating];
}

/* Reducer and catalyst of a coating, percent, apart by what they are percents of; none: none. */
struct additions {
    fig reducer, catalyst;
    bool reducer_of_mix, catalyst_of_mix;
};

static struct additions additions_of(const struct calc *c, const struct coating *coating) {
    struct additions a = {.reducer = calc_given(c, "reducer", &coating->reducer),
                          .catalyst = calc_given(c, "catalyst", &coating->catalyst)};
    a.reducer_of_mix = !fig_none(a.reducer) && coating->reducer_of.choice == PART_OF_MIX;
    a.catalyst_of_mix = !fig_none(a.catalyst) && coating->catalyst_of.choice == PART_OF_MIX;
    return a;
}

/* What the mix is of the coating, or of the coating with its catalyst: coverage is told of one of
 * these, and what is sprayed is the mix. mix = coating x (1 + parts of it) / (1 - parts of the
 * mix). */
static fig mix_of_covered(const struct calc *c, const struct coating *coating, fig covering) {
    const struct additions a = additions_of(c, coating);
    const fig hundred = c->units->hundred;
    if (fig_none(a.reducer) && fig_none(a.catalyst)) {
        return covering;
    }
    const fig over[] = {hundred, a.reducer_of_mix ? (fig){0} : a.reducer,
                        a.catalyst_of_mix ? (fig){0} : a.catalyst};
    const fig under[] = {hundred, fig_minus(a.reducer_of_mix ? a.reducer : (fig){0}),
                         fig_minus(a.catalyst_of_mix ? a.catalyst : (fig){0})};
    const fig mix = fig_ratio(
        c->tape, "mix, percent of the coating", UNIT_PERCENT,
        (figs){{fig_sum(c->tape, "coating and its additions", UNIT_PERCENT, over, 3), hundred}},
        (figs){{fig_sum(c->tape, "mix without its parts, percent", UNIT_PERCENT, under, 3)}});
    fig covered = hundred;
    if (coating->coverage_of.choice == COVERAGE_OF_MIXED && !fig_none(a.catalyst)) {
        const fig part = a.catalyst_of_mix ? calc_percent(c, "catalyst, percent of the coating",
                                                          UNIT_PERCENT, a.catalyst, mix)
                                           : a.catalyst;
        covered = fig_plus(c->tape, "coating and catalyst, percent", hundred, part);
    }
    return volume(c, "mix by coverage, one coat", (figs){{covering, mix}}, (figs){{covered}});
}

/* Transfer efficiency as likely, or at an end of its range. */
static fig transfer_of(const struct calc *c, const struct spray *spray, enum transfer_at at) {
    const struct range *const range = &spray->transfer_range;
    if (at == TRANSFER_LIKELY || !range->set) {
        return calc_given(c, "transfer efficiency", &spray->transfer);
    }
    return at == TRANSFER_LOW ? calc_given(c, "transfer efficiency, lowest", &range->low)
                              : calc_given(c, "transfer efficiency, highest", &range->high);
}

void coat_spray(struct coat_figures *coat, const struct calc *c, enum transfer_at at, fig area) {
    const struct spray *const spray = coat->way;
    const struct coating *const coating = coating_of(c, coat);
    const struct units *const m = c->units;
    coat->film = units_film(c->tape, m, "wet film", &coating->wet_film);
    if (coating->spread_by.choice == SPREAD_BY_FILM) {
        coat->theoretical =
            volume(c, "theoretical volume, one coat", (figs){{area, coat->film, m->spread_over}},
                   (figs){{m->spread_under}});
    } else {
        const fig coverage = calc_given(c, "coverage", &coating->coverage);
        coat->theoretical = mix_of_covered(
            c, coating,
            volume(c, "volume by coverage, one coat", (figs){{area}}, (figs){{coverage}}));
    }
    if (coating->spread_by.choice == SPREAD_BY_PRACTICAL) {
        coat->sprayed =
            calc_product(c, "sprayed, all coats", m->volume, coat->theoretical, coat->times);
        return;
    }
    const fig transfer = transfer_of(c, spray, at);
    const fig lost = calc_given(c, "other loss", &spray->other_loss);
    const fig on_parts =
        volume(c, "all coats by transfer", (figs){{coat->theoretical, coat->times, m->hundred}},
               (figs){{transfer}});
    if (fig_none(lost)) {
        coat->sprayed = on_parts;
        return;
    }
    const fig kept = fig_plus(c->tape, "kept after other loss", m->hundred, fig_minus(lost));
    coat->sprayed = volume(c, "sprayed, all coats", (figs){{on_parts, m->hundred}}, (figs){{kept}});
}

/* A coat is one mix, or as many as the pot asks for, which holds the fixed loss too. */
static fig count_mixes(const struct calc *c, const struct spray *spray, fig sprayed, fig times,
                       fig loss) {
    fig room = calc_given(c, "mix size", &spray->mix_size);
    if (fig_none(room)) {
        return c->units->one;
    }
    if (!fig_none(loss)) {
        room = fig_plus(c->tape, "room in a mix", room, fig_minus(loss));
    }
    const fig pots =
        fig_ratio(c->tape, "pots a coat", UNIT_FACTOR, (figs){{sprayed}}, (figs){{times, room}});
    return fig_up(c->tape, "mixes a coat", pots, c->units->one);
}

/* What comes with each mix, for all mixes of the coats; of a product that is mixed once for all
 * colors, this batch's part by area. none: nothing comes with it. */
static fig with_mixes(const struct calc *c, const struct coat_pool *pool, const char *what,
                      const char *by_area, fig mixes, fig each) {
    if (fig_none(each)) {
        return each;
    }
    const fig all = calc_product(c, what, c->units->volume, mixes, each);
    return fig_none(pool->sprayed)
               ? all
               : volume(c, by_area, (figs){{all, pool->area}}, (figs){{pool->all_area}});
}

/* mix = coating x (1 + R + C) where the reducer is a part of the coating; where it is a part of the
 * mix it comes off first. */
static void part_mix(const struct calc *c, struct coat_figures *coat) {
    const struct additions a = additions_of(c, coating_of(c, coat));
    const enum unit unit = c->units->volume;
    coat->coating_volume = coat->mix;
    if (a.reducer_of_mix) {
        coat->reducer = calc_percent(c, "reducer, of the mix", unit, coat->mix, a.reducer);
    }
    if (a.catalyst_of_mix) {
        coat->catalyst = calc_percent(c, "catalyst, of the mix", unit, coat->mix, a.catalyst);
    }
    if (a.reducer_of_mix || a.catalyst_of_mix) {
        const fig terms[] = {coat->mix, fig_minus(coat->reducer), fig_minus(coat->catalyst)};
        coat->coating_volume = fig_sum(c->tape, "mix without its parts", unit, terms, 3);
    }
    const fig parts[] = {c->units->hundred, a.reducer_of_mix ? (fig){0} : a.reducer,
                         a.catalyst_of_mix ? (fig){0} : a.catalyst};
    if (fig_none(parts[1]) && fig_none(parts[2])) {
        return;
    }
    const fig all = fig_sum(c->tape, "coating and its additions", UNIT_PERCENT, parts, 3);
    coat->coating_volume =
        volume(c, "coating", (figs){{coat->coating_volume, c->units->hundred}}, (figs){{all}});
    if (!fig_none(parts[1])) {
        coat->reducer =
            calc_percent(c, "reducer, of the coating", unit, coat->coating_volume, a.reducer);
    }
    if (!fig_none(parts[2])) {
        coat->catalyst =
            calc_percent(c, "catalyst, of the coating", unit, coat->coating_volume, a.catalyst);
    }
}

/* dry = wet x volume solids / (1 + reducer); a catalyst's own solids are left out (docs/method.md,
 * "Finish"). */
static void dry_out(const struct calc *c, struct coat_figures *coat) {
    const struct coating *const coating = coating_of(c, coat);
    const struct units *const m = c->units;
    const fig solids = calc_given(c, "solids by volume", &coating->solids);
    if (fig_none(solids) || fig_none(coat->film)) {
        return;
    }
    const fig reducer = calc_given(c, "reducer", &coating->reducer);
    const fig wet = calc_product(c, "wet film, all coats", m->film, coat->film, coat->times);
    figs over = {{wet, solids}};
    figs under = {{m->hundred}};
    if (!fig_none(reducer) && coating->reducer_of.choice == PART_OF_MIX) {
        over.f[2] = fig_plus(c->tape, "coating in the reduced mix", m->hundred, fig_minus(reducer));
        under.f[1] = m->hundred;
    } else if (!fig_none(reducer)) {
        under.f[0] = fig_plus(c->tape, "coating and reducer", m->hundred, reducer);
    }
    coat->dry_film = fig_ratio(c->tape, "dry film, all coats", m->film, over, under);
}

void coat_mix(struct coat_figures *coat, const struct calc *c, const struct coat_pool *pool) {
    const struct spray *const spray = coat->way;
    const fig loss = calc_given(c, "fixed loss, a mix", &spray->fixed_loss);
    const fig cleaning = calc_given(c, "cleaning, a mix", &spray->cleaning);
    coat->mix = coat->sprayed;
    if (!fig_none(loss) || !fig_none(cleaning) || spray->mix_size.set) {
        const fig sprayed = fig_none(pool->sprayed) ? coat->sprayed : pool->sprayed;
        const fig whole = count_mixes(c, spray, sprayed, coat->times, loss);
        coat->mixes = fig_ratio(c->tape, "mixes", UNIT_COUNT,
                                (figs){{whole, coat->times, pool->colors}}, (figs){{{0}}});
        const fig lost =
            with_mixes(c, pool, "fixed loss, all mixes", "fixed loss, by area", coat->mixes, loss);
        coat->cleaning =
            with_mixes(c, pool, "cleaning, all mixes", "cleaning, by area", coat->mixes, cleaning);
        if (!fig_none(lost)) {
            coat->mix = fig_plus(c->tape, "mix", coat->sprayed, lost);
        }
    }
    part_mix(c, coat);
    dry_out(c, coat);
}
