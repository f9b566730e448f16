/* SPDX-License-Identifier: MIT */
#include "report/offer/offer.h"

void offer_clear(struct offer *offer) {
    pool_clear(&offer->pool);
    *offer = (struct offer){0};
}

bool offer_has_sums(const struct offer *offer) {
    return offer->detail != OFFER_SUM;
}
