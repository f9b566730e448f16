/* SPDX-License-Identifier: MIT */
#include "stock/spare_chooser.h"

#include "base/int128.h"
#include "model/limits.h"

#include <stdlib.h>

#define MILLION 1000000
#define CERTAIN INT64_C(1000000000000000) /* a chance of 1 */
#define PERCENT INT64_C(100000000)        /* all of a percent with 6 decimals */
#define MOST    999                       /* spares */

/* Chances of 0 to top spoiled pieces among those that were milled. */
struct spoiled {
    int64_t *chance;
    size_t top;
    int64_t percent, pieces;
};

/* One piece more is milled. */
static void mill(struct spoiled *s) {
    const int64_t good = PERCENT - s->percent;
    for (size_t k = s->top + 1; k-- > 0;) {
        const int128 before = k == 0 ? 0 : (int128)s->chance[k - 1] * s->percent;
        s->chance[k] = (int64_t)int128_round((int128)s->chance[k] * good + before, PERCENT);
    }
    s->pieces++;
}

/* P(B > spares), and E[max(B - spares, 0)], of CERTAIN. */
static int64_t short_of(const struct spoiled *s, int64_t spares, int128 *lacking) {
    int64_t enough = 0;
    *lacking =
        int128_round((int128)s->pieces * s->percent * CERTAIN, PERCENT) - (int128)spares * CERTAIN;
    for (int64_t k = 0; k <= spares && k <= (int64_t)s->top; k++) {
        enough += s->chance[k];
        *lacking += (int128)(spares - k) * s->chance[k];
    }
    return enough < CERTAIN ? CERTAIN - enough : 0;
}

static int64_t hundredths(int64_t chance) {
    return (int64_t)int128_round((int128)chance * 10000, CERTAIN);
}

/* The most spares that may cost least: those that cost no more than none. */
static int64_t most_spares(int64_t pieces, int64_t percent, int64_t each, int64_t setup) {
    const int128 spoiled = int128_round((int128)pieces * percent, PERCENT) + 1;
    const int128 most = each > 0 ? setup / each + spoiled : MOST;
    return most < pieces ? (most < MOST ? (int64_t)most : MOST) : (pieces < MOST ? pieces : MOST);
}

static bool choose(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    if (count != 4 || outputs < SPARE_OUTPUTS || in[0] < MILLION || in[1] < 0 || in[1] > PERCENT) {
        return false;
    }
    const int64_t pieces = in[0] / MILLION;
    const int64_t most = most_spares(pieces, in[1], in[2], in[3]);
    struct spoiled s = {.top = (size_t)most, .percent = in[1]};
    s.chance = calloc(s.top + 1, sizeof *s.chance);
    if (s.chance == NULL || pieces > MOST_SPARED) {
        free(s.chance);
        return false;
    }
    s.chance[0] = CERTAIN;
    while (s.pieces < pieces) {
        mill(&s);
    }
    int128 best = -1;
    for (int64_t spares = 0; spares <= most; spares++, mill(&s)) {
        int128 lacking;
        const int64_t over = short_of(&s, spares, &lacking);
        const int128 cost = ((int128)spares * CERTAIN + lacking) * in[2] + (int128)over * in[3];
        if (spares == 0) {
            out[SPARE_OUT_SHORT_WITHOUT] = hundredths(over);
        }
        if (best < 0 || cost < best) {
            best = cost;
            out[SPARE_OUT_COUNT] = spares;
            out[SPARE_OUT_SHORT_WITH] = hundredths(over);
        }
    }
    free(s.chance);
    return true;
}

const struct chooser spare_chooser = {.name = "spares", .choose = choose};
