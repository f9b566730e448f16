/* SPDX-License-Identifier: MIT */
#include "report/words/size_words.h"

const char *size_way_name(enum size_way way) {
    return way == SIZE_ADDED ? "added to this job" : "alone";
}

const char *flat_does_name(enum flat_does does) {
    static const char *const names[] = {
        [FLAT_BEARS] = "bears it", [FLAT_LESS] = "earns less", [FLAT_LOSES] = "loses money"};
    return names[does];
}

const char *size_area_name(const struct estimate *e) {
    return unit_name(e->units.area);
}
