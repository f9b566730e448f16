/* SPDX-License-Identifier: MIT */
/* Rows of the door list that stand behind the job file on the command line. */
#ifndef DOORCOST_COMMAND_ROW_WORDS_H
#define DOORCOST_COMMAND_ROW_WORDS_H

#include "base/pool.h"
#include "command/command.h"

/* The places of the rows that were named, ascending, each once; *count 0: none was named. *rows:
 * of pool. Other than STATUS_DONE: there is no such row, or memory is out, which is said. */
enum status row_words_find(const struct request *request, const struct work *work,
                           struct pool *pool, size_t **rows, size_t *count, struct streams streams)
    __attribute__((warn_unused_result));

#endif
