/* SPDX-License-Identifier: MIT */
/* Whether long work is to be given up: who does the work asks between one piece of it and the next,
 * and need not know who wants it to stop. */
#ifndef DOORCOST_BASE_STOP_H
#define DOORCOST_BASE_STOP_H

#include <stdbool.h>
#include <stddef.h>

struct stop {
    bool (*asked)(const void *of);
    const void *of; /* borrowed */
};

/* stop: NULL where nothing ever stops the work. */
static inline bool stop_asked(const struct stop *stop) {
    return stop != NULL && stop->asked(stop->of);
}

#endif
