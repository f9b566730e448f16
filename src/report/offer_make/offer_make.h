/* SPDX-License-Identifier: MIT */
/* Makes what the client is told of an estimate.  This room sees what the job costs, and takes over
 * only what struct offer has a place for. */
#ifndef DOORCOST_REPORT_OFFER_MAKE_OFFER_MAKE_H
#define DOORCOST_REPORT_OFFER_MAKE_OFFER_MAKE_H

#include "price/estimate.h"
#include "price/size_table.h"
#include "report/offer/offer.h"

/* Makes the offer of an estimate; options: option_count estimates of the same job.  All texts live
 * in its pool or in the inputs of the estimate, which must stay. offer: always left so that
 * offer_clear may be called. false: out of memory. */
bool offer_make(struct offer *offer, const struct estimate *estimate,
                const struct estimate *options, size_t option_count)
    __attribute__((warn_unused_result));

/* Makes the change order from the offer of an older estimate to that of a newer, from these two
 * alone; neither is an estimate by its paper, and both are in one currency. newer_estimate: in
 * whose money amounts are written. Borrows both offers. order: always left so that offer_clear may
 * be called. false: out of memory. */
bool offer_order_make(struct offer *order, const struct offer *older, const struct offer *newer,
                      const struct estimate *newer_estimate) __attribute__((warn_unused_result));

/* Makes a price list: of the table the price of each door, nothing else; of `of`, the offer of the
 * same estimate who writes, when, and until when it holds. Borrows the offer and the inputs. list:
 * always left so that offer_clear may be called. false: out of memory. */
bool offer_prices_make(struct offer *list, const struct offer *of, const struct estimate *estimate,
                       const struct size_table *table) __attribute__((warn_unused_result));

#endif
