/* SPDX-License-Identifier: MIT */
/* The picture for the head of the client's papers: a PNG file. */
#ifndef DOORCOST_READ_RATES_PICTURE_H
#define DOORCOST_READ_RATES_PICTURE_H

#include "read/key/key.h"

#define PICTURE_LARGEST ((int64_t)4 * 1024 * 1024) /* bytes */
#define PICTURE_MOST    4000                       /* dots a side */

/* Reads the file that the shop names, if any, into shop->logo, and sees that it is a picture.  Only
 * its dots are kept: what else a PNG may carry (place, camera, remarks) is left behind.  What is
 * wrong goes to problems.  false: memory is out. */
bool picture_read(struct reader *reader, struct shop *shop) __attribute__((warn_unused_result));

#endif
