/* SPDX-License-Identifier: MIT */
/* The client's paper as a PDF. */
#ifndef DOORCOST_REPORT_CLIENT_CLIENT_PDF_H
#define DOORCOST_REPORT_CLIENT_CLIENT_PDF_H

#include "base/stop.h"
#include "report/offer/offer.h"

/* Writes the offer to path as it stands (the caller has seen to a safe place). stop: asked as it is
 * made. *lacking: in pool, the first text with letters of which no typeface here knows the shape,
 * NULL: there is none. false: not written, or memory ran out. */
bool client_pdf_write(const struct offer *offer, const char *path, const struct stop *stop,
                      struct pool *pool, const char **lacking) __attribute__((warn_unused_result));

#endif
