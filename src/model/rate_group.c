/* SPDX-License-Identifier: MIT */
#include "model/rate_group.h"

#include "base/text.h"

#include <string.h>
#include <strings.h>

/* Whether name is the first `size` bytes of section, alone or with the key behind. */
static bool is_of(const char *name, const char *section, size_t size, const char *key) {
    if (strncasecmp(name, section, size) != 0) {
        return false;
    }
    return name[size] == '\0' || (name[size] == ' ' && text_same(name + size + 1, key));
}

/* Whether a name of `together` is of the number: its section (`lumber poplar`), the kind of it
 * (`lumber`), either with its key behind (`lumber price`), of [shop] the key alone, or `all`. */
static bool rate_group_holds(const char *name, const struct rate_number *number) {
    const char *const section = number->section;
    return text_same(name, "all") || is_of(name, section, strlen(section), number->key) ||
           is_of(name, section, strcspn(section, " "), number->key) ||
           (text_same(section, "shop") && text_same(name, number->key));
}

int32_t rate_group_of(const struct rates *rates, const struct rate_number *number) {
    for (size_t i = 0; i < rates->chance.together_count; i++) {
        if (rate_group_holds(rates->chance.together[i].name.s, number)) {
            return (int32_t)i;
        }
    }
    return -1;
}
