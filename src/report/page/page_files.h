/* SPDX-License-Identifier: MIT */
/* Files of this room that are part of the program: see doorcost_embed. */
#ifndef DOORCOST_REPORT_PAGE_PAGE_FILES_H
#define DOORCOST_REPORT_PAGE_PAGE_FILES_H

/* How the page looks beside html_style, as CSS. */
extern const char page_style[];
/* The tape made again, as JavaScript. */
extern const char page_replay[];
/* What the page does, as JavaScript, behind page_replay. */
extern const char page_script[];
/* The same of rates that are moved, behind page_script. */
extern const char page_moving[];

#endif
