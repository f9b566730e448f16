/* SPDX-License-Identifier: MIT */
/* A paper for the client as the one file of a command. */
#ifndef DOORCOST_COMMAND_CLIENT_FILE_H
#define DOORCOST_COMMAND_CLIENT_FILE_H

#include "report/file/output.h"
#include "report/offer/offer.h"

#include <stdio.h>

/* Writes the offer to file->name, as workbook or PDF by the file's kind; says on err where letters
 * of it lack a shape. The file was begun. false: not written, or memory ran out. */
bool client_file_write(struct offer *offer, const struct output *file, FILE *err)
    __attribute__((warn_unused_result));

#endif
