/* SPDX-License-Identifier: MIT */
/* The order in which problems are shown, and how they are printed. */
#include "base/problem.h"
#include "base/text.h"

#include <stdlib.h>
#include <string.h>

static int compare(const void *left, const void *right) {
    const struct problem *a = *(const struct problem *const *)left;
    const struct problem *b = *(const struct problem *const *)right;

    const int order = place_order(a->place, b->place);
    /* both point into the list, whose order is that of finding */
    return order != 0 ? order : (a < b ? -1 : 1);
}

/* The problems in order, on the heap; NULL when memory is out or there are none. */
static const struct problem **ordered(const struct problems *problems) {
    const struct problem **order = calloc(problems->count + 1, sizeof(const struct problem *));

    if (order == NULL) {
        return NULL;
    }
    for (size_t i = 0; i < problems->count; i++) {
        order[i] = &problems->list[i];
    }
    qsort(order, problems->count, sizeof(const struct problem *), compare);
    return order;
}

void problems_sort(struct problems *problems) {
    const struct problem **order = ordered(problems);
    struct problem *list = calloc(problems->count + 1, sizeof(*list));

    if (order == NULL || list == NULL) {
        problems->failed = true;
        free(list);
    } else {
        for (size_t i = 0; i < problems->count; i++) {
            list[i] = *order[i];
        }
        free(problems->list);
        problems->list = list;
        problems->room = problems->count + 1;
        problems->index_room = 0; /* built anew by the next problem */
    }
    free(order);
}

/* How many bytes of a line are shown, and what stands for the rest. */
#define SHOWN_BEFORE  40
#define SHOWN_IN_ALL  100
#define BETWEEN_CELLS " | "

/* Columns of the first size bytes. */
static size_t columns_of(const char *text, size_t size) {
    char part[SHOWN_IN_ALL + 16];

    if (size >= sizeof(part)) {
        return size;
    }
    memcpy(part, text, size);
    part[size] = '\0';
    return text_columns(part);
}

/* How many columns the tabs of a row of cells take more than one each. */
static size_t more_columns(const char *text, size_t size, bool cells) {
    size_t more = 0;

    for (size_t i = 0; cells && i < size; i++) {
        more += text[i] == '\t' ? strlen(BETWEEN_CELLS) - 1 : 0;
    }
    return more;
}

/* Part of a line; the cells of a sheet stand apart. */
static void put_part(FILE *out, const char *text, size_t size, bool cells) {
    while (size > 0) {
        const char *const tab = cells ? memchr(text, '\t', size) : NULL;
        const size_t part = tab == NULL ? size : (size_t)(tab - text);

        text_put(out, text, part);
        if (tab != NULL) {
            fputs(BETWEEN_CELLS, out);
        }
        text += tab == NULL ? part : part + 1;
        size -= tab == NULL ? part : part + 1;
    }
}

static size_t character_start(const char *line, size_t at) {
    while (at > 0 && ((unsigned char)line[at] & 0xC0) == 0x80) {
        at--;
    }
    return at;
}

static void print_line(const struct problems *problems, struct place place, FILE *out) {
    const char *line = problems_line(problems, place);
    size_t mark = place.column > 0 ? (size_t)place.column - 1 : 0;
    size_t size = line == NULL ? 0 : strlen(line);
    size_t from = 0;
    size_t to = size;
    size_t width = place.width;
    const bool cells = problems_has_cells(problems, place.file);
    int digits = snprintf(NULL, 0, "%u", place.line);

    if (line == NULL || size == 0) {
        return;
    }
    if (size > SHOWN_IN_ALL) {
        from = mark > SHOWN_BEFORE && mark < size ? character_start(line, mark - SHOWN_BEFORE) : 0;
        to = size - from > SHOWN_IN_ALL ? character_start(line, from + SHOWN_IN_ALL) : size;
    }
    fprintf(out, "  %u | %s", place.line, from > 0 ? "..." : "");
    put_part(out, line + from, to - from, cells);
    fprintf(out, "%s\n", to < size ? "..." : "");
    if (width == 0 || mark >= to) {
        return;
    }
    if (mark + width > to) {
        width = to - mark;
    }
    fprintf(out, "  %*s | %s", digits, "", from > 0 ? "   " : "");
    for (size_t i =
             columns_of(line + from, mark - from) + more_columns(line + from, mark - from, cells);
         i > 0; i--) {
        fputc(' ', out);
    }
    for (size_t i = columns_of(line + mark, width); i > 0; i--) {
        fputc('^', out);
    }
    fputc('\n', out);
}

static void print_more(const struct problems *problems, const struct problem *problem, FILE *out) {
    const size_t shown_at_most = 12;
    size_t count = problem->more_count;
    size_t shown = count > shown_at_most ? shown_at_most : count;

    if (count == 0) {
        return;
    }
    const char *const word = problems_line_word(problems, problem->place.file);
    fprintf(out, "  also on %s%s ", word, count == 1 ? "" : "s");
    for (size_t i = 0; i < shown; i++) {
        const char *before = i == 0 ? "" : (i + 1 == count ? " and " : ", ");

        fprintf(out, "%s%u", before, problem->more[i]);
    }
    if (shown < count) {
        fprintf(out, " and %zu more", count - shown);
    }
    fputc('\n', out);
}

void problems_print(const struct problems *problems, FILE *out, bool color) {
    static const char *const words[] = {"warning", "error"};
    static const char *const colors[] = {"\033[1;33m", "\033[1;31m"};
    const struct problem **order = ordered(problems);

    for (size_t i = 0; i < problems->count; i++) {
        const struct problem *problem = order != NULL ? order[i] : &problems->list[i];
        const char *name = problems_file_name(problems, problem->place.file);

        if (problem->severity == SEVERITY_ACCEPTED) {
            continue;
        }
        size_t column = text_columns(name);
        if (name[0] != '\0') {
            const struct place_words place = problems_place(problems, problem->place);
            text_print(out, "%s%s:", name, place.text);
            column += strlen(place.text) + 2;
        }
        column += strlen(words[problem->severity]) + 2;
        fprintf(out, "%s%s%s:%s ", name[0] != '\0' ? " " : "",
                color ? colors[problem->severity] : "", words[problem->severity],
                color ? "\033[0m" : "");
        text_put_message(out, problem->text, strlen(problem->text), column);
        fputc('\n', out);
        print_line(problems, problem->place, out);
        print_more(problems, problem, out);
    }
    free(order);
}
