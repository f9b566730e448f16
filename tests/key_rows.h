/* SPDX-License-Identifier: MIT */
/* How docs/formats.md shows a key or column: the line that its row of the tables gives. */
#ifndef DOORCOST_TESTS_KEY_ROWS_H
#define DOORCOST_TESTS_KEY_ROWS_H

#include "read/key.h"

/* `| `kerf` | yes | `1/8 in` | lost by each cut |`, into text. */
static inline void key_row(const struct key *key, char *text, size_t size) {
    char other[128] = "";

    if (key->other != NULL) {
        (void)snprintf(other, sizeof(other), "<br>`%s`", key->other);
    }
    (void)snprintf(text, size, "| `%s` | %s | `%s`%s | %s |", key->name, key->needed ? "yes" : "",
                   key->example, other, key->help);
}

#endif
