/* SPDX-License-Identifier: MIT */
#include "report/words/way_words.h"

const char *way_kind_words(enum way_kind kind) {
    static const char *const words[] = {
        [WAY_LISTED] = "as listed",
        [WAY_BOUGHT] = "bought in",
        [WAY_SENT] = "finish sent out",
        [WAY_BOUGHT_SENT] = "bought, sent out",
    };
    return words[kind];
}

const char *way_words(const struct ways_row *row, size_t way) {
    const enum way_kind kind = row->ways[way].kind;
    return kind == WAY_LISTED && row->made_here ? "made here" : way_kind_words(kind);
}

const char *ways_all_words(enum ways_all all) {
    static const char *const words[] = {
        [WAYS_LEAST_DIRECT] = "each at least direct",
        [WAYS_ALL_BOUGHT] = "all bought in",
        [WAYS_ALL_SENT] = "all finishes sent out",
        [WAYS_ALL_OUT] = "all by others",
    };
    return words[all];
}
