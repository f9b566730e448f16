/* SPDX-License-Identifier: MIT */
/* The job or rates file that a sheet or list to fill in is made by: the list of doors need not be
 * there yet, so no job is estimated. */
#ifndef DOORCOST_COMMAND_VISIT_FILE_H
#define DOORCOST_COMMAND_VISIT_FILE_H

#include "command/command.h"
#include "price/estimate.h"

/* Reads it into the work; a rates file leaves the job without a title. Any status but STATUS_DONE:
 * said on err. */
enum status visit_file_open(const struct request *request, const char *path, struct work *work,
                            struct streams streams);

/* The unit to measure in: as --unit has it, else that of the job, else of the rates (each NULL: not
 * known), else inches. false: there is no such unit, which is said on err. */
bool visit_file_unit(const struct request *request, const struct job *job,
                     const struct rates *rates, enum length_unit *unit, FILE *err)
    __attribute__((warn_unused_result));

#endif
