/* SPDX-License-Identifier: MIT */
/* The client's paper as a page for a browser: one file that asks for nothing, without scripts. */
#ifndef DOORCOST_REPORT_CLIENT_CLIENT_PAGE_H
#define DOORCOST_REPORT_CLIENT_CLIENT_PAGE_H

#include "report/offer/offer.h"

/* Writes the offer, which is neither a change order nor a price list, to path as it stands (the
 * caller has seen to a safe place). false: not written, or memory ran out. */
bool client_page_write(const struct offer *offer, const char *path)
    __attribute__((warn_unused_result));

#endif
