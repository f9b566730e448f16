/* SPDX-License-Identifier: MIT */
/* Which ranges can be drawn by replay: those whose number stands on the tape as it is written, and
 * whose ends, replayed, come to what whole estimates came to. */
#include "chance/normal.h"
#include "chance/random.h"
#include "model/charge.h"
#include "model/rate_group.h"
#include "price/chance_parts.h"
#include "stock/board_chooser.h"
#include "stock/sheets_by_plan.h"

/* Plans take seconds to make; a draw takes microseconds. */
static const struct chooser *const held[] = {&boards_chooser, &boards_rack_chooser, &sheets_chooser,
                                             &sheets_rack_chooser, NULL};

struct chance_figures chance_figures_of(const struct estimate *e, struct pool *pool) {
    const size_t charges = charge_count(e->job);
    const size_t count = 1 + charges;
    struct chance_figures f = {.units = &e->units, .decimals = e->tape.money_decimals};
    f.all = pool_take(pool, 2 * count, sizeof *f.all);
    if (f.all == NULL) {
        return f;
    }
    f.count = count;
    f.direct = f.all;
    f.overhead = f.all + count;
    f.direct[0] = e->costs.job.direct;
    f.overhead[0] = e->costs.job.overhead;
    for (size_t i = 0; i < charges; i++) {
        f.direct[1 + i] = e->costs.charges[i].direct;
        f.overhead[1 + i] = e->costs.charges[i].overhead;
    }
    return f;
}

static int64_t add_up(const struct replay *replay, const struct chance_figures *f,
                      const fig *figures) {
    int64_t sum = 0;
    for (size_t i = 0; i < f->count; i++) {
        sum += tape_scaled(&replay->tape, figures[i], f->decimals);
    }
    return sum;
}

int64_t chance_direct(const struct replay *replay, const struct chance_figures *f) {
    return add_up(replay, f, f->direct);
}

int64_t chance_overhead(const struct replay *replay, const struct chance_figures *f) {
    return add_up(replay, f, f->overhead);
}

bool chance_replay(struct replay *replay, const struct estimate *e, const struct chance_figures *f,
                   const struct chance_source *sources, size_t count) {
    size_t moved = 0;
    struct pool pool;
    pool_init(&pool);
    for (size_t i = 0; i < count; i++) {
        moved += sources[i].givens.count;
    }
    fig *const givens = pool_take(&pool, moved, sizeof *givens);
    moved = 0;
    for (size_t i = 0; givens != NULL && i < count; i++) {
        for (size_t g = 0; g < sources[i].givens.count; g++) {
            givens[moved++] = sources[i].givens.list[g];
        }
    }
    *replay = (struct replay){0};
    const bool made =
        givens != NULL && replay_make(replay, &e->tape,
                                      (struct replay_request){.moved = givens,
                                                              .moved_count = moved,
                                                              .wanted = f->all,
                                                              .wanted_count = 2 * f->count,
                                                              .held = held});
    pool_clear(&pool);
    return made;
}

void chance_set(struct replay *replay, const struct chance_figures *f,
                const struct chance_source *source, int64_t amount) {
    uint8_t decimals = source->decimals;
    if (source->givens.way == RATE_AS_LENGTH) {
        amount = length_millionths(amount, f->units->lengths);
        decimals = 6;
    } else if (source->givens.way == RATE_AS_FILM) {
        amount = units_film_amount(f->units, amount, &decimals);
    }
    for (size_t g = 0; g < source->givens.count; g++) {
        replay_set(replay, source->givens.list[g], amount, decimals);
    }
}

#define LEAST_STEPS 100
#define MOST_AMOUNT INT64_C(100000000000) /* a tenth of what the tape holds */

/* The ends at as many decimals as one of the three is written with, or as make a hundred steps of
 * the range, where so many may be written. */
static void take_ends(struct chance_source *source, const struct rate_number *number) {
    uint8_t decimals = number->value.decimals;
    decimals = number->low.decimals > decimals ? number->low.decimals : decimals;
    decimals = number->high.decimals > decimals ? number->high.decimals : decimals;
    while (number->value.unit != UNIT_NM && decimals < number->most_decimals &&
           value_at(&number->high, decimals) - value_at(&number->low, decimals) < LEAST_STEPS &&
           value_at(&number->high, decimals) < MOST_AMOUNT) {
        decimals++;
    }
    source->decimals = decimals;
    source->low = value_at(&number->low, decimals);
    source->likely = value_at(&number->value, decimals);
    source->high = value_at(&number->high, decimals);
}

/* Whether the replay comes to what is wanted with the number at one end. *fault: the first. */
static bool end_is(struct replay *replay, const struct chance_figures *f,
                   const struct chance_source *source, int64_t amount, int64_t wanted,
                   enum tape_fault *fault) {
    chance_set(replay, f, source, amount);
    const enum tape_fault found = replay_run(replay);
    *fault = *fault == TAPE_OK ? found : *fault;
    return found == TAPE_OK && chance_direct(replay, f) == wanted;
}

bool chance_source_make(struct chance_source *source, struct chance_input *input,
                        const struct estimate *e, const struct chance_figures *f,
                        const struct chance_ends *ends, struct pool *pool) {
    struct replay replay;
    input->state = CHANCE_HELD;
    *source = (struct chance_source){0};
    take_ends(source, input->number);
    if (!rate_givens_find(&source->givens, e, input->number, pool)) {
        return false;
    }
    if (!ends->known || !source->givens.as_written) {
        return true;
    }
    if (!chance_replay(&replay, e, f, source, 1)) {
        replay_clear(&replay);
        return false;
    }
    input->plan = replay.held;
    const bool moves = replay.count > 0;
    enum tape_fault fault = TAPE_OK;
    const bool alike =
        replay.held || (end_is(&replay, f, source, source->low, ends->low, &fault) &&
                        end_is(&replay, f, source, source->high, ends->high, &fault));
    if (moves && alike) {
        input->state = CHANCE_DRAWN;
    } else if (!moves && !replay.held && alike) {
        input->state = CHANCE_NO_EFFECT;
    }
    replay_clear(&replay);
    return fault != TAPE_MEMORY;
}

static double part_of_one(const struct value *value) {
    double part = (double)value->amount;
    for (uint8_t d = 0; d < value->decimals; d++) {
        part /= 10;
    }
    return part;
}

void chance_source_seed(struct chance_source *source, const struct chance_input *input,
                        const struct rates *rates, uint64_t seed, struct pool *pool) {
    const struct rate_number *const number = input->number;
    source->shape = pool_take(pool, 1, sizeof *source->shape);
    if (source->shape == NULL) {
        return;
    }
    shape_make(source->shape,
               rates->chance.shape.choice == CHANCE_TRIANGLE ? SHAPE_TRIANGLE : SHAPE_PERT,
               source->low, source->likely, source->high);
    source->own = random_stream(
        seed, pool_words(pool, "%s, %s, %s", number->section, number->key, number->lead));
    if (input->group >= 0) {
        const struct named_value *const group = &rates->chance.together[input->group];
        source->together = part_of_one(&group->value);
        source->shared = random_stream(seed, pool_words(pool, "together, %s", group->name.s));
    }
}

int64_t chance_amount(const struct chance_source *source, size_t i) {
    const double own = random_part(random_at(source->own, i));
    if (source->together <= 0) {
        return shape_at(source->shape, own);
    }
    const double shared = random_part(random_at(source->shared, i));
    return shape_at(source->shape, normal_joined(shared, own, source->together));
}
