/* SPDX-License-Identifier: MIT */
#include "file_bench.h"

#include "cmocka_all.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

void file_bench_write(const char *path, const char *bytes, size_t size) {
    FILE *const file = fopen(path, "wb");
    assert_non_null(file);
    assert_int_equal(fwrite(bytes, 1, size, file), size);
    assert_int_equal(fclose(file), 0);
}

void dump_add(struct dump *dump, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    const int size =
        vsnprintf(dump->text + dump->used, sizeof dump->text - dump->used, format, arguments);
    va_end(arguments);
    assert_in_range(size, 0, (int)(sizeof dump->text - dump->used) - 1);
    dump->used += (size_t)size;
}

void dump_problems(struct dump *dump, const struct problems *problems) {
    for (size_t i = 0; i < problems->count; i++) {
        const struct problem *const p = &problems->list[i];
        dump_add(dump, " %s%s@%u", p->id, p->severity == SEVERITY_ERROR ? "" : "?",
                 (unsigned)p->place.line);
        if (p->place.column > 0) {
            dump_add(dump, ":%u+%u", (unsigned)p->place.column, (unsigned)p->place.width);
        }
        for (size_t m = 0; m < p->more_count; m++) {
            dump_add(dump, ",%u", (unsigned)p->more[m]);
        }
    }
}

int dump_compare(const struct dump *dump, const char *expected, const char *name, int wrong) {
    if (strcmp(dump->text, expected) == 0) {
        return wrong;
    }
    print_error("%s\n  is:       %s\n  expected: %s\n", name, dump->text, expected);
    return wrong + 1;
}
