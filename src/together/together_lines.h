/* SPDX-License-Identifier: MIT */
/* What is bought, line by line, alone and together. For src/together only. */
#ifndef DOORCOST_TOGETHER_TOGETHER_LINES_H
#define DOORCOST_TOGETHER_TOGETHER_LINES_H

#include "together/together.h"

/* Fills lines and sums of together from its estimates. false: out of memory. */
bool together_lines_make(struct together *together) __attribute__((warn_unused_result));

#endif
