/* SPDX-License-Identifier: MIT */
/* Help texts. */
#ifndef DOORCOST_COMMAND_HELP_H
#define DOORCOST_COMMAND_HELP_H

#include "report/text/grid.h"

struct command;

void help_print(struct page *page);                                        /* --help */
void help_print_command(struct page *page, const struct command *command); /* COMMAND --help */
void help_print_short(struct page *page); /* for a call without arguments */

#endif
