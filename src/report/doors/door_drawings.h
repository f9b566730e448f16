/* SPDX-License-Identifier: MIT */
/* The elevations of a job's doors on paper for the shop wall: every row of the list with its
 * dimensions, parts and materials, several on a page. */
#ifndef DOORCOST_REPORT_DOORS_DOOR_DRAWINGS_H
#define DOORCOST_REPORT_DOORS_DOOR_DRAWINGS_H

#include "base/stop.h"
#include "price/estimate.h"

/* Writes the PDF to path as it stands (the caller has seen to a safe place). stop: asked between
 * pages. *lacking: in pool, as pdf_close has it. false: not written, or memory ran out. */
bool door_drawings_write(const struct estimate *estimate, const char *path, const struct stop *stop,
                         struct pool *pool, const char **lacking)
    __attribute__((warn_unused_result));

#endif
