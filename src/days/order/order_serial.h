/* SPDX-License-Identifier: MIT */
/* One plan by one order of priority. For src/days/order only. */
#ifndef DOORCOST_DAYS_ORDER_ORDER_SERIAL_H
#define DOORCOST_DAYS_ORDER_ORDER_SERIAL_H

#include "days/order/order_plan.h"

struct use_step;

/* How much of a resource is in use: steps from minute 0 of work on, the last one for ever. */
struct use_line {
    struct use_step *steps;
    size_t count, room;
};

/* What the scheme works with, made once and used for every plan. */
struct serial {
    const struct order_work *work;
    struct use_line *lines; /* one a resource */
    int32_t *waits;         /* links of each task whose task is not placed yet */
    int32_t *first_after; /* of each task: where those that wait for it begin in after; one more */
    int32_t *after;
    int32_t *open; /* tasks that wait for none */
    bool failed;   /* memory ran out */
};

/* Makes room. serial_clear must be called whatever comes of it. Borrows work; part of its memory is
 * of pool. false: out of memory. */
bool serial_init(struct serial *serial, const struct order_work *work, struct pool *pool)
    __attribute__((warn_unused_result));
/* Frees what is not of the pool. */
void serial_clear(struct serial *serial);

/* Places the tasks: of those that wait for none the one with the least key, of equal ones the
 * first. begins: of each task, filled in. Returns the end, minute on the clock; what it is means
 * nothing once serial->failed is set. */
int64_t serial_place(struct serial *serial, const int64_t *keys, int64_t *begins);

#endif
