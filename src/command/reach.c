/* SPDX-License-Identifier: MIT */
/* `reach`: what would have to be true for the client to pay a wanted total. */
#include "base/text.h"
#include "command/command.h"
#include "command/work.h"
#include "price/target.h"
#include "report/json/json.h"
#include "report/text/print.h"

#include <string.h>

/* The total, at the decimals of the currency. */
static bool read_total(const struct request *request, uint8_t money_decimals, int64_t *wanted,
                       FILE *err) {
    uint8_t decimals = 0;
    const char *const text = request->total;
    if (text == NULL) {
        text_print(err, "doorcost: 'reach' needs the total that is wanted, as in: %s\n",
                   request->command->example);
        return false;
    }
    if (!text_decimal(text, strlen(text), wanted, &decimals) || *wanted < 0 ||
        decimals > money_decimals) {
        text_print(err,
                   "doorcost: '%s' is no total; expected an amount of money without signs and "
                   "commas, with at most %u decimals\n",
                   text, money_decimals);
        return false;
    }
    for (; decimals < money_decimals; decimals++) {
        *wanted *= 10;
    }
    return true;
}

static enum status tell(const struct request *request, const struct work *work,
                        const struct target *target, struct streams streams) {
    if (request->json) {
        struct json_paper paper = command_paper(request, work);
        paper.target = target;
        return command_send(&paper, streams);
    }
    struct page page = {.out = streams.out};
    target_print(&page, &work->estimates[0], target);
    return page.failed ? command_out_of_memory(streams) : command_flush(streams);
}

enum status command_reach(const struct request *request, struct work *work,
                          struct streams streams) {
    struct target target = {0};
    struct pool pool;
    if (!read_total(request, work->rates.shop.money_decimals, &target.wanted, streams.err)) {
        return STATUS_USE;
    }
    pool_init(&pool);
    const enum status status = target_make(&target, &work->estimates[0], work->request.plans, &pool)
                                   ? tell(request, work, &target, streams)
                                   : command_out_of_memory(streams);
    pool_clear(&pool);
    return status;
}
