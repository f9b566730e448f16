/* SPDX-License-Identifier: MIT */
/* Further jobs that a call names behind the first. */
#ifndef DOORCOST_COMMAND_FURTHER_H
#define DOORCOST_COMMAND_FURTHER_H

#include "command/command.h"

/* Opens the job at path as the first was, with that option of its own or as listed (NULL), and
 * prints its problems. It must name the rates file of the first; why: said where it does not.
 * work_close must be called whatever the status. */
enum status further_open(const struct request *request, const struct work *first, const char *path,
                         const char *option, const char *why, struct work *work,
                         struct streams streams);

#endif
