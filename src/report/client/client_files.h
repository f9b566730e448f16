/* SPDX-License-Identifier: MIT */
/* Files of this room that are part of the program: see doorcost_embed. */
#ifndef DOORCOST_REPORT_CLIENT_CLIENT_FILES_H
#define DOORCOST_REPORT_CLIENT_CLIENT_FILES_H

/* How the client's page looks beside html_style, as CSS. */
extern const char client_style[];

#endif
