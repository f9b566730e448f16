/* SPDX-License-Identifier: MIT */
/* The typeface of all papers; shared by the files that measure and set text, and by nobody else. */
#ifndef DOORCOST_REPORT_TYPE_TYPE_FONT_H
#define DOORCOST_REPORT_TYPE_TYPE_FONT_H

#include <pango/pangocairo.h>
#include <stdbool.h>

/* Gives a layout the typeface. size: in the units of its surface. */
void type_font_set(PangoLayout *layout, double size, bool bold);

#endif
