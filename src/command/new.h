/* SPDX-License-Identifier: MIT */
/* What `new` begins with, a function each. Any status but STATUS_DONE: said on err. */
#ifndef DOORCOST_COMMAND_NEW_H
#define DOORCOST_COMMAND_NEW_H

#include "command/command.h"

/* The job file that the request names. */
enum status new_job(const struct request *request, struct streams streams);

/* The rates that it names, made of others. */
enum status new_rates(const struct request *request, struct streams streams);

/* The list to fill in that it names, alone. Opens what --from names into the work. */
enum status new_list(const struct request *request, struct work *work, struct streams streams);

#endif
