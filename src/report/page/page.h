/* SPDX-License-Identifier: MIT */
/* An estimate as one page to look into: the quote, drawings, plans, what to buy and cut, hours,
 * cost, each number with how it was made. The page asks for nothing and needs no network. */
#ifndef DOORCOST_REPORT_PAGE_PAGE_H
#define DOORCOST_REPORT_PAGE_PAGE_H

#include "base/stop.h"
#include "price/estimate.h"

struct page_facts {
    const struct estimate *base;    /* traced, with its purchase */
    const struct estimate *options; /* the job's options, on tapes of their own */
    size_t option_count;
    const struct problems *problems;
};

/* Writes the page to path as it stands (the caller has seen to a safe place). stop: asked between
 * pictures. false: not written, or memory ran out. */
bool page_write(const struct page_facts *facts, const char *path, const struct stop *stop)
    __attribute__((warn_unused_result));

#endif
