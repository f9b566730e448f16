/* SPDX-License-Identifier: MIT */
/* Help texts. */
#ifndef DOORCOST_COMMAND_HELP_H
#define DOORCOST_COMMAND_HELP_H

#include "report/text/grid.h"

struct command;

/* The general help, of --help. */
void help_print(struct page *page);
/* The help of a command, of COMMAND --help. */
void help_print_command(struct page *page, const struct command *command);
/* A few lines for a call without arguments. */
void help_print_short(struct page *page);

#endif
