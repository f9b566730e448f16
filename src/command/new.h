/* SPDX-License-Identifier: MIT */
/* What `new` begins with, a function each. Any status but STATUS_DONE: said on err. */
#ifndef DOORCOST_COMMAND_NEW_H
#define DOORCOST_COMMAND_NEW_H

#include "command/command.h"

/* The job file that the request names. */
enum status new_job(const struct request *request, struct streams streams);

#endif
