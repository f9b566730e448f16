/* SPDX-License-Identifier: MIT */
#include "price/setting_used.h"

static void mark(const struct estimate *e, const struct settings *settings, fig given, bool *used) {
    const struct setting *const s = tape_op(&e->tape, given) == OP_GIVEN
                                        ? setting_at(settings, tape_origin(&e->tape, given).place)
                                        : NULL;
    if (s != NULL) {
        used[s - settings->list] = true;
    }
}

bool *settings_used(const struct estimate *e, const struct settings *settings, struct pool *pool) {
    bool *const used = pool_take(pool, settings->count, sizeof *used);
    for (uint32_t id = 1; used != NULL && id < e->tape.count; id++) {
        const size_t count = tape_operands(&e->tape, (fig){id});
        for (size_t i = 0; i < count; i++) {
            mark(e, settings, tape_operand(&e->tape, (fig){id}, i).f, used);
        }
    }
    return used;
}
