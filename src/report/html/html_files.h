/* SPDX-License-Identifier: MIT */
/* Files of this room that are part of the program: see doorcost_embed. */
#ifndef DOORCOST_REPORT_HTML_HTML_FILES_H
#define DOORCOST_REPORT_HTML_HTML_FILES_H

/* How every page looks, as CSS. */
extern const char html_style[];

#endif
