/* SPDX-License-Identifier: MIT */
#include "finish/coat.h"

struct booth {
    struct tape *tape;
    const struct measures *m;
    const struct coating *coating;
    const struct spray *spray;
    fig area;
};

static fig ratio(const struct booth *b, const char *what, figs over, figs under) {
    return fig_ratio(b->tape, what, b->m->volume, over, under);
}

/* What the mix is of the coating, or of the coating with its catalyst: coverage is told of one of
 * these, and what is sprayed is the mix. mix = coating x (1 + parts of it) / (1 - parts of the
 * mix). */
static fig mix_of_covered(const struct booth *b, fig volume) {
    const fig reducer = measures_given(b->tape, b->m, "reducer", &b->coating->reducer);
    const fig catalyst = measures_given(b->tape, b->m, "catalyst", &b->coating->catalyst);
    const bool reducer_of_mix = b->coating->reducer_of.choice == PART_OF_MIX;
    const bool catalyst_of_mix = b->coating->catalyst_of.choice == PART_OF_MIX;
    if (fig_none(reducer) && fig_none(catalyst)) {
        return volume;
    }
    const fig over[] = {b->m->hundred, reducer_of_mix ? (fig){0} : reducer,
                        catalyst_of_mix ? (fig){0} : catalyst};
    const fig under[] = {b->m->hundred, fig_minus(reducer_of_mix ? reducer : (fig){0}),
                         fig_minus(catalyst_of_mix ? catalyst : (fig){0})};
    const fig mix = fig_ratio(
        b->tape, "mix, percent of the coating", UNIT_PERCENT,
        (figs){
            {fig_sum(b->tape, "coating and its additions", UNIT_PERCENT, over, 3), b->m->hundred}},
        (figs){{fig_sum(b->tape, "mix without its parts, percent", UNIT_PERCENT, under, 3)}});
    fig covered = b->m->hundred;
    if (b->coating->coverage_of.choice == COVERAGE_OF_MIXED && !fig_none(catalyst)) {
        const fig part = catalyst_of_mix
                             ? fig_ratio(b->tape, "catalyst, percent of the coating", UNIT_PERCENT,
                                         (figs){{catalyst, mix}}, (figs){{b->m->hundred}})
                             : catalyst;
        covered = fig_plus(b->tape, "coating and catalyst, percent", b->m->hundred, part);
    }
    return ratio(b, "mix by coverage, one coat", (figs){{volume, mix}}, (figs){{covered}});
}

/* Mix that leaves the gun for all coats, before any fixed loss. */
static void spray_out(const struct booth *b, struct coat_figures *c) {
    c->film = measures_film(b->tape, b->m, "wet film", &b->coating->wet_film);
    if (b->coating->spread_by.choice == SPREAD_BY_FILM) {
        c->theoretical =
            ratio(b, "theoretical volume, one coat", (figs){{b->area, c->film, b->m->spread_over}},
                  (figs){{b->m->spread_under}});
    } else {
        const fig coverage = measures_given(b->tape, b->m, "coverage", &b->coating->coverage);
        c->theoretical = mix_of_covered(
            b, ratio(b, "volume by coverage, one coat", (figs){{b->area}}, (figs){{coverage}}));
    }
    if (b->coating->spread_by.choice == SPREAD_BY_PRACTICAL) {
        c->sprayed =
            ratio(b, "sprayed, all coats", (figs){{c->theoretical, c->times}}, (figs){{{0}}});
        return;
    }
    const fig transfer = measures_given(b->tape, b->m, "transfer efficiency", &b->spray->transfer);
    const fig lost = measures_given(b->tape, b->m, "other loss", &b->spray->other_loss);
    const fig on_parts =
        ratio(b, "all coats by transfer", (figs){{c->theoretical, c->times, b->m->hundred}},
              (figs){{transfer}});
    if (fig_none(lost)) {
        c->sprayed = on_parts;
        return;
    }
    const fig kept = fig_plus(b->tape, "kept after other loss", b->m->hundred, fig_minus(lost));
    c->sprayed = ratio(b, "sprayed, all coats", (figs){{on_parts, b->m->hundred}}, (figs){{kept}});
}

/* A coat is one mix, or as many as the pot asks for, which holds the fixed loss too. */
static fig count_mixes(const struct booth *b, fig sprayed, fig times, fig loss, fig colors) {
    const fig size = measures_given(b->tape, b->m, "mix size", &b->spray->mix_size);
    fig whole = b->m->one;
    if (!fig_none(size)) {
        const fig room = fig_plus(b->tape, "room in a mix", size, fig_minus(loss));
        const fig pots = fig_ratio(b->tape, "pots a coat", UNIT_FACTOR, (figs){{sprayed}},
                                   (figs){{times, room}});
        whole = fig_up(b->tape, "mixes a coat", pots, b->m->one);
    }
    return fig_ratio(b->tape, "mixes", UNIT_COUNT, (figs){{whole, times, colors}}, (figs){{{0}}});
}

static fig percent_of(const struct booth *b, const char *what, fig volume, fig percent) {
    return ratio(b, what, (figs){{volume, percent}}, (figs){{b->m->hundred}});
}

/* mix = coating x (1 + R + C) where the reducer is a part of the coating; where it is a part of the
 * mix it comes off first. */
static void part_mix(const struct booth *b, struct coat_figures *c) {
    const fig reducer = measures_given(b->tape, b->m, "reducer", &b->coating->reducer);
    const fig catalyst = measures_given(b->tape, b->m, "catalyst", &b->coating->catalyst);
    const bool reducer_of_mix = !fig_none(reducer) && b->coating->reducer_of.choice == PART_OF_MIX;
    const bool catalyst_of_mix =
        !fig_none(catalyst) && b->coating->catalyst_of.choice == PART_OF_MIX;
    fig rest = c->mix;
    if (reducer_of_mix) {
        c->reducer = percent_of(b, "reducer, of the mix", c->mix, reducer);
    }
    if (catalyst_of_mix) {
        c->catalyst = percent_of(b, "catalyst, of the mix", c->mix, catalyst);
    }
    if (reducer_of_mix || catalyst_of_mix) {
        const fig terms[] = {c->mix, fig_minus(c->reducer), fig_minus(c->catalyst)};
        rest = fig_sum(b->tape, "mix without its parts", b->m->volume, terms, 3);
    }
    const fig parts[] = {b->m->hundred, reducer_of_mix ? (fig){0} : reducer,
                         catalyst_of_mix ? (fig){0} : catalyst};
    if (fig_none(parts[1]) && fig_none(parts[2])) {
        c->coating_volume = rest;
        return;
    }
    const fig all = fig_sum(b->tape, "coating and its additions", UNIT_PERCENT, parts, 3);
    c->coating_volume = ratio(b, "coating", (figs){{rest, b->m->hundred}}, (figs){{all}});
    if (!fig_none(parts[1])) {
        c->reducer = percent_of(b, "reducer, of the coating", c->coating_volume, reducer);
    }
    if (!fig_none(parts[2])) {
        c->catalyst = percent_of(b, "catalyst, of the coating", c->coating_volume, catalyst);
    }
}

/* dry = wet x volume solids / (1 + reducer); a catalyst's own solids are left out (docs/method.md,
 * "Finish"). */
static void dry_out(const struct booth *b, struct coat_figures *c) {
    const fig solids = measures_given(b->tape, b->m, "solids by volume", &b->coating->solids);
    if (fig_none(solids) || fig_none(c->film)) {
        return;
    }
    const fig reducer = measures_given(b->tape, b->m, "reducer", &b->coating->reducer);
    const fig wet = fig_ratio(b->tape, "wet film, all coats", b->m->film,
                              (figs){{c->film, c->times}}, (figs){{{0}}});
    figs over = {{wet, solids}};
    figs under = {{b->m->hundred}};
    if (!fig_none(reducer) && b->coating->reducer_of.choice == PART_OF_MIX) {
        over.f[2] =
            fig_plus(b->tape, "coating in the reduced mix", b->m->hundred, fig_minus(reducer));
        under.f[1] = b->m->hundred;
    } else if (!fig_none(reducer)) {
        under.f[0] = fig_plus(b->tape, "coating and reducer", b->m->hundred, reducer);
    }
    c->dry_film = fig_ratio(b->tape, "dry film, all coats", b->m->film, over, under);
}

void coat_spray(struct coat_figures *coat, struct tape *tape, const struct measures *measures,
                const struct rates *rates, const struct spray *spray, fig area,
                const struct value *times) {
    const struct booth booth = {.tape = tape,
                                .m = measures,
                                .coating = &rates->coatings[coat->coating],
                                .spray = spray,
                                .area = area};
    coat->times = measures_given(tape, measures, "coats", times);
    spray_out(&booth, coat);
}

void coat_mix(struct coat_figures *coat, struct tape *tape, const struct measures *measures,
              const struct rates *rates, const struct spray *spray, const struct coat_pool *pool) {
    const struct booth booth = {.tape = tape,
                                .m = measures,
                                .coating = &rates->coatings[coat->coating],
                                .spray = spray,
                                .area = pool->area};
    coat->mix = coat->sprayed;
    const fig loss = measures_given(tape, measures, "fixed loss, a mix", &spray->fixed_loss);
    if (!fig_none(loss)) {
        const bool alone = fig_none(pool->sprayed);
        coat->mixes = count_mixes(&booth, alone ? coat->sprayed : pool->sprayed, coat->times, loss,
                                  pool->colors);
        fig lost = fig_ratio(tape, "fixed loss, all mixes", measures->volume,
                             (figs){{coat->mixes, loss}}, (figs){{{0}}});
        if (!alone) {
            lost = fig_ratio(tape, "fixed loss, by area", measures->volume,
                             (figs){{lost, pool->area}}, (figs){{pool->all_area}});
        }
        coat->mix = fig_plus(tape, "mix", coat->sprayed, lost);
    }
    part_mix(&booth, coat);
    dry_out(&booth, coat);
}
