/* SPDX-License-Identifier: MIT */
/* The key `hardware` of [make], options and rows. */
#ifndef DOORCOST_READ_JOB_HARDWARE_ITEMS_H
#define DOORCOST_READ_JOB_HARDWARE_ITEMS_H

#include "read/key/key.h"

key_read read_hardware_items; /* struct hardware_items: `2 knob, 1 lock per opening` or `none` */

#endif
