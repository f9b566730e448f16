/* SPDX-License-Identifier: MIT */
#include "base/manual.h"

#include <limits.h>
#include <string.h>
#include <unistd.h>

const char *manual_name(struct pool *pool, const char *page) {
    char program[PATH_MAX];
    const ssize_t size = readlink("/proc/self/exe", program, sizeof program - 1);

    program[size > 0 ? size : 0] = '\0';
    for (int up = 0; up < 2; up++) { /* the name of the program, then its folder */
        char *const slash = strrchr(program, '/');
        if (slash == NULL) {
            return "docs/formats.md";
        }
        *slash = '\0';
    }
    const char *const path = pool_words(pool, "%s/share/man/man5/doorcost-%s.5.gz", program, page);
    return access(path, R_OK) == 0 ? pool_words(pool, "'man doorcost-%s'", page)
                                   : "docs/formats.md";
}
