/* SPDX-License-Identifier: MIT */
/* The draws of `range`: what its options ask for, and what comes of it. */
#ifndef DOORCOST_COMMAND_RANGE_CHANCE_H
#define DOORCOST_COMMAND_RANGE_CHANCE_H

#include "command/command.h"
#include "trial/range_chance.h"

/* Reads --draws, --seed and --confidence. false: one of them is wrong, or given where nothing is
 * drawn (drawn: it is), which is said on err. */
bool chance_options(const struct request *request, bool drawn, struct chance_request *asked,
                    FILE *err) __attribute__((warn_unused_result));

/* Draws from the ranges; `asked` lacks ends. STATUS_INPUTS where a draw cannot be figured, which is
 * said. In pool. */
enum status chance_open(struct chance *chance, const struct estimate *base,
                        const struct ranges *ranges, struct chance_request asked, struct pool *pool,
                        struct streams streams);

#endif
