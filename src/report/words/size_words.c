/* SPDX-License-Identifier: MIT */
#include "report/words/size_words.h"

#include "report/words/show.h"

const char *size_way_name(enum size_way way) {
    return way == SIZE_ADDED ? "added to this job" : "alone";
}

const char *flat_does_name(enum flat_does does) {
    static const char *const names[] = {
        [FLAT_BEARS] = "bears it", [FLAT_LESS] = "earns less", [FLAT_LOSES] = "loses money"};
    return names[does];
}

const char *flat_does_mark(enum flat_does does) {
    static const char *const marks[] = {[FLAT_BEARS] = "", [FLAT_LESS] = "< ", [FLAT_LOSES] = "! "};
    return marks[does];
}

const char *size_area_name(const struct estimate *e) {
    return unit_name(e->units.area);
}

const char *size_flat_words(const struct estimate *e, const struct size_table *table,
                            const struct size_style *style, struct pool *pool) {
    const struct size_flat *const flat = &style->flat;
    const char *const area = size_area_name(e);
    return pool_words(
        pool,
        "A flat price by area would be %s a %s: what the job's %s are sold for over their "
        "area (%s over %s %s).",
        show_number(flat->rate, table->money_decimals).text, area,
        flat->own ? pool_words(pool, "%s doors", style->name) : "doors and fronts of all styles",
        show_number(flat->sold, table->money_decimals).text,
        show_number((flat->area + 50) / 100, 2).text, area);
}
