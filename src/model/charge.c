/* SPDX-License-Identifier: MIT */
#include "model/charge.h"

#include <assert.h>

size_t charge_count(const struct job *job) {
    return job->sale.charge_count + (job->sale.delivery.given ? 1 : 0);
}

const struct charge *charge_at(const struct job *job, size_t index) {
    assert(index < charge_count(job));
    return index < job->sale.charge_count ? &job->sale.charges[index] : &job->sale.delivery;
}

const char *charge_name(const struct job *job, size_t index) {
    const struct charge *const charge = charge_at(job, index);
    return charge == &job->sale.delivery ? "delivery" : charge->name.s;
}

int32_t charge_of_operation(const struct job *job, int32_t operation) {
    for (size_t i = 0; i < charge_count(job); i++) {
        if (charge_at(job, i)->operation.index == operation) {
            return (int32_t)i;
        }
    }
    return -1;
}
