/* SPDX-License-Identifier: MIT */
#include "report/words/difference.h"

int64_t difference_percent(int64_t from, int64_t to) {
    if (from == 0) {
        return 0;
    }
    const int64_t base = from < 0 ? -from : from;
    const int64_t over = (to - from) * 10000; /* under 2 x 10^16 */
    const int64_t half = over < 0 ? -(base / 2) : base / 2;
    return (over + half) / base;
}
