/* SPDX-License-Identifier: MIT */
#include "model/setting.h"

#include "base/text.h"

const struct setting *setting_at(const struct settings *settings, struct place place) {
    size_t low = 0;
    size_t high = place.file == settings->file ? settings->count : 0;
    while (low < high) {
        const size_t middle = low + (high - low) / 2;
        if (settings->list[middle].line < place.line) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    const bool found = place.file == settings->file && low < settings->count &&
                       settings->list[low].line == place.line;
    return found ? &settings->list[low] : NULL;
}

bool setting_named(const struct setting *setting, const char *name) {
    return text_same(setting->title, name) || text_same(setting->kind, name) ||
           (text_same(setting->kind, "shop") && text_same(setting->key, name));
}
