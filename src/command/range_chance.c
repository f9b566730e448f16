/* SPDX-License-Identifier: MIT */
#include "command/range_chance.h"

#include "base/text.h"

#include <string.h>

#define MOST_SEED INT64_C(999999999)

/* Hundredths of a percent, from 50 to 99 %. */
static bool read_confidence(const char *text, int32_t *confidence, FILE *err) {
    int64_t percent;
    uint8_t decimals;
    if (option_percent(text, &percent, &decimals) && decimals <= 2) {
        for (; decimals < 2; decimals++) {
            percent *= 10;
        }
        *confidence = (int32_t)percent;
        if (percent >= 5000 && percent <= 9900) {
            return true;
        }
    }
    text_print(err, "doorcost: --confidence takes a percentage from 50 to 99, as in --confidence "
                    "80%%\n");
    return false;
}

bool chance_options(const struct request *request, bool drawn, struct chance_request *asked,
                    FILE *err) {
    int64_t draws = CHANCE_DRAWS;
    int64_t seed = 1;
    *asked = (struct chance_request){.confidence = 0};
    if (!drawn &&
        (request->draws != NULL || request->seed != NULL || request->confidence != NULL)) {
        text_print(err,
                   "doorcost: --%s is for draws from ranges, which --set and --by leave out; "
                   "ask without it\n",
                   request->draws != NULL  ? "draws"
                   : request->seed != NULL ? "seed"
                                           : "confidence");
        return false;
    }
    if (!option_whole(request->draws, "draws", CHANCE_LEAST_DRAWS, CHANCE_MOST_DRAWS, &draws,
                      err) ||
        !option_whole(request->seed, "seed", 0, MOST_SEED, &seed, err) ||
        (request->confidence != NULL &&
         !read_confidence(request->confidence, &asked->confidence, err))) {
        return false;
    }
    asked->draws = (size_t)draws;
    asked->seed = (uint64_t)seed;
    return true;
}

enum status chance_open(struct chance *chance, const struct estimate *base,
                        const struct ranges *ranges, struct chance_request asked, struct pool *pool,
                        struct streams streams) {
    asked.ends = range_chance_ends(ranges, base, pool);
    if (asked.ends == NULL) {
        return command_out_of_memory(streams);
    }
    switch (chance_make(chance, base, asked, pool)) {
    case ESTIMATE_OK:
        return STATUS_DONE;
    case ESTIMATE_FAULT:
        text_print(streams.err,
                   "doorcost: a draw from the ranges cannot be figured: an amount grows too large, "
                   "or is divided by nothing; narrow the ranges\n");
        return STATUS_INPUTS;
    case ESTIMATE_MEMORY:
        break;
    }
    return command_out_of_memory(streams);
}
