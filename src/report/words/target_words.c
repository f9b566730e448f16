/* SPDX-License-Identifier: MIT */
#include "report/words/target_words.h"

const char *lever_name(enum lever lever, const struct estimate *e) {
    static const char *const names[LEVER_COUNT] = {[LEVER_PROFIT] = "profit, % markup",
                                                   [LEVER_DISCOUNT] = "discount, %",
                                                   [LEVER_HOURS] = "hours of work"};
    const bool margin = e->rates->shop.profit_as.choice == PROFIT_MARGIN;
    return lever == LEVER_PROFIT && margin ? "profit, % margin" : names[lever];
}

const char *target_rows(const struct target *t, struct pool *pool) {
    const char *names = "";
    for (size_t i = 0; i < t->rows.count; i++) {
        names = pool_words(pool, "%s%s%s", names, i == 0 ? "" : ", ", t->rows.rows[i]->id.s);
    }
    return names;
}
