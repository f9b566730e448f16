/* SPDX-License-Identifier: MIT */
/* Further jobs that a call names behind the first. */
#ifndef DOORCOST_COMMAND_FURTHER_H
#define DOORCOST_COMMAND_FURTHER_H

#include "command/command.h"
#include "report/file/output.h"

/* Whether a further job goes with the first; any status but STATUS_DONE was said. path: its own. */
typedef enum status further_suits(const struct request *request, const struct work *first,
                                  const struct work *work, const char *path,
                                  struct streams streams);

/* Those that the words of a call name. */
struct further_jobs {
    struct work *works;
    size_t count;
};

/* Opens them, each as the first was, and prints their problems; the call may name
 * MOST_JOBS_TOGETHER jobs with the first. Any status but STATUS_DONE was said. further_close must
 * be called whatever the status. */
enum status further_open(struct further_jobs *further, const struct request *request,
                         const struct work *first, further_suits *suits, struct streams streams);
/* Frees them. */
void further_close(struct further_jobs *further);

/* files_check against the inputs of the first job and of these. */
enum status further_check(const struct further_jobs *further, const struct work *first,
                          struct output *outputs, size_t count, const struct request *request,
                          struct streams streams);

#endif
