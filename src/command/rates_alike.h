/* SPDX-License-Identifier: MIT */
/* Whether jobs that a call names go by rates that say the same, wherever these stand. */
#ifndef DOORCOST_COMMAND_RATES_ALIKE_H
#define DOORCOST_COMMAND_RATES_ALIKE_H

#include "command/command.h"
#include "together/rates_differ.h"

/* STATUS_DONE where they do in what jobs share; else what differs was said. path: of the further
 * job, work; request names the first. */
enum status rates_alike(const struct request *request, const struct work *first,
                        const struct work *work, const char *path, enum rates_of of,
                        struct streams streams);

#endif
