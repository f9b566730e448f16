/* SPDX-License-Identifier: MIT */
#include "report/csv/csv.h"

#include <string.h>

void csv_put(struct csv *csv, const char *text) {
    if (csv->begun) {
        (void)putc(',', csv->out);
    }
    csv->begun = true;
    if (strpbrk(text, ",\"\r\n") == NULL) {
        (void)fputs(text, csv->out);
        return;
    }
    (void)putc('"', csv->out);
    for (const char *c = text; *c != '\0'; c++) {
        if (*c == '"') {
            (void)putc('"', csv->out);
        }
        (void)putc(*c, csv->out);
    }
    (void)putc('"', csv->out);
}

void csv_end(struct csv *csv) {
    (void)fputs("\r\n", csv->out);
    csv->begun = false;
}
