/* SPDX-License-Identifier: MIT */
/* The client's paper as a workbook: plain values, and formulas over its own cells only. */
#ifndef DOORCOST_REPORT_CLIENT_CLIENT_BOOK_H
#define DOORCOST_REPORT_CLIENT_CLIENT_BOOK_H

#include "base/stop.h"
#include "report/offer/offer.h"

/* Writes the offer to path as it stands (the caller has seen to a safe place). stop: asked as it is
 * made. false: not written, or memory ran out. */
bool client_book_write(const struct offer *offer, const char *path, const struct stop *stop)
    __attribute__((warn_unused_result));

#endif
