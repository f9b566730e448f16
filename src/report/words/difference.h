/* SPDX-License-Identifier: MIT */
/* The difference of two options: figures of different tapes, so no tape can hold it. */
#ifndef DOORCOST_REPORT_WORDS_DIFFERENCE_H
#define DOORCOST_REPORT_WORDS_DIFFERENCE_H

#include <stdint.h>

/* 100 x (to - from) / |from| as hundredths of a percent, so that what grows is above zero; half
 * away from zero; 0 when from is 0. Values under 10^12. */
int64_t difference_percent(int64_t from, int64_t to);

#endif
