/* SPDX-License-Identifier: MIT */
/* What is charged beside the doors, as the job file writes it. For src/read/job only. */
#ifndef DOORCOST_READ_JOB_CHARGE_H
#define DOORCOST_READ_JOB_CHARGE_H

#include "model/job.h"
#include "read/key/key.h"

key_read
    read_charges; /* struct charge *, size_t beside it: `80.00 for samples by OPERATION, ...` */
key_read read_delivery; /* struct charge: `120.00 by OPERATION` */

/* Reports each operation that a charge names and that something else names too: a style, a finish,
 * the shop, the job, a row or another charge. The client would pay for it twice. Rates, job and
 * rows must be read. */
void charges_check(struct reader *reader, const struct job *job);

#endif
