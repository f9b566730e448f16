/* SPDX-License-Identifier: MIT */
#include "report/offer_make/offer_maker.h"
#include "report/words/show.h"

#include <string.h>

/* Puts a comma between thousands. */
static const char *separate(struct pool *pool, const char *plain, const char *sign) {
    const size_t whole = strcspn(plain, ".");
    char *const text = pool_take(pool, 2 * strlen(plain) + 4, 1);
    size_t used = 0;
    if (text == NULL) {
        return "";
    }
    for (; *sign != '\0'; sign++) {
        text[used++] = *sign;
    }
    for (size_t i = 0; plain[i] != '\0'; i++) {
        if (i > 0 && i < whole && (whole - i) % 3 == 0) {
            text[used++] = ',';
        }
        text[used++] = plain[i];
    }
    return text;
}

const char *offer_money(struct offer_maker *m, const struct estimate *e, fig amount, bool less) {
    const struct shown shown = show_money(e, amount);
    const bool minus = shown.text[0] == '-' && shown.text[1] != '\0';
    return separate(m->pool, shown.text + (minus ? 1 : 0), minus != less ? "-" : "");
}

const char *offer_sum(struct offer_maker *m, int64_t amount, bool plus) {
    const int64_t size = amount < 0 ? -amount : amount;
    return separate(m->pool, show_number(size, m->e->rates->shop.money_decimals).text,
                    amount < 0 ? "-" : (plus && amount > 0 ? "+" : ""));
}

const char *offer_percent(struct offer_maker *m, fig percent) {
    return pool_words(m->pool, "%s %%", show(m->e, percent).text);
}

static struct offer_amount amount(struct offer_maker *m, fig figure, bool less) {
    const struct tape *const tape = &m->e->tape;
    const int64_t value = tape_amount(tape, figure);
    return (struct offer_amount){
        .value = less ? -value : value,
        .decimals = tape_decimals(tape, figure),
        .unit = tape_unit(tape, figure),
        .text = tape_unit(tape, figure) == UNIT_MONEY
                    ? offer_money(m, m->e, figure, less)
                    : pool_words(m->pool, "%s%s", less ? "-" : "", show(m->e, figure).text),
    };
}

struct offer_amount offer_amount(struct offer_maker *m, fig figure) {
    return amount(m, figure, false);
}

struct offer_amount offer_amount_less(struct offer_maker *m, fig figure) {
    return amount(m, figure, true);
}
