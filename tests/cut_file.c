/* SPDX-License-Identifier: MIT */
/* Lines of a word and numbers. */
#include "cut_file.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define LINE_MAX_BYTES 512

/* The number at *text, which is moved past it. */
static bool take_number(const char **text, int64_t *number) {
    char *end = NULL;
    errno = 0;
    long long value = strtoll(*text, &end, 10);
    if (end == *text || errno != 0) {
        return false;
    }
    *text = end;
    *number = value;
    return true;
}

static bool take_numbers(const char *text, int64_t *numbers, size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (!take_number(&text, &numbers[i])) {
            return false;
        }
    }
    return text[strspn(text, " \t\r\n")] == '\0';
}

static bool add_stock(struct cut_file *file, const int64_t *numbers) {
    size_t count = file->job.stock_count;
    struct cut_stock *grown = realloc(file->stocks, (count + 1) * sizeof *grown);
    if (grown == NULL) {
        return false;
    }
    grown[count] = (struct cut_stock){numbers[0], numbers[1], numbers[2], CUT_UNLIMITED};
    file->stocks = grown;
    file->job.stocks = grown;
    file->job.stock_count++;
    return true;
}

static bool add_item(struct cut_file *file, const int64_t *numbers, bool turn) {
    size_t count = file->job.item_count;
    struct cut_item *grown = realloc(file->items, (count + 1) * sizeof *grown);
    if (grown == NULL) {
        return false;
    }
    grown[count] = (struct cut_item){numbers[0], numbers[1], numbers[2], turn};
    file->items = grown;
    file->job.items = grown;
    file->job.item_count++;
    return true;
}

static bool read_line(struct cut_file *file, const char *line, bool flat, bool turn) {
    int64_t numbers[3] = {0};
    size_t word = strcspn(line, " \t\r\n");
    const char *rest = line + word;
    if (line[0] == '#' || word == 0) {
        return true;
    }
    if (strncmp(line, "kerf", word) == 0) {
        return take_numbers(rest, &file->job.kerf, 1);
    }
    if (strncmp(line, "trim", word) == 0) {
        return take_numbers(rest, &file->job.trim, 1);
    }
    bool stock = strncmp(line, "stock", word) == 0;
    if (!stock && strncmp(line, "item", word) != 0) {
        return false;
    }
    if (!take_numbers(rest, numbers, flat ? 2 : 3)) {
        return false;
    }
    if (flat) {
        numbers[2] = numbers[1];
        numbers[1] = 1;
    }
    return stock ? add_stock(file, numbers) : add_item(file, numbers, turn);
}

bool cut_file_read(struct cut_file *file, const char *path, bool flat, bool turn, int *line) {
    *file = (struct cut_file){0};
    *line = 0;
    FILE *input = fopen(path, "r");
    if (input == NULL) {
        return false;
    }
    char text[LINE_MAX_BYTES];
    bool ok = true;
    while (ok && fgets(text, sizeof text, input) != NULL) {
        (*line)++;
        ok = read_line(file, text, flat, turn);
    }
    (void)fclose(input);
    if (!ok) {
        cut_file_clear(file);
    }
    return ok;
}

void cut_file_clear(struct cut_file *file) {
    free(file->stocks);
    free(file->items);
    *file = (struct cut_file){0};
}

/* Splits a line at its commas, in place; fields that are missing are empty. */
static void split(char *line, char **fields, size_t count) {
    for (size_t i = 0; i < count; i++) {
        size_t length = strcspn(line, ",\r\n");
        fields[i] = line;
        line += length;
        if (*line != '\0') {
            *line++ = '\0';
        }
    }
}

static bool add_known(struct cut_known_list *list, char *line) {
    char *fields[18];
    split(line, fields, 18);
    bool flat = fields[2][0] == '\0';
    if (strcmp(fields[0], "instance") == 0 || (!flat && strcmp(fields[4], "any") != 0)) {
        return true;
    }
    if (list->count == list->room) {
        size_t room = 2 * list->room + 64;
        struct cut_known *rows = realloc(list->rows, room * sizeof *rows);
        if (rows == NULL) {
            return false;
        }
        list->rows = rows;
        list->room = room;
    }
    struct cut_known *known = &list->rows[list->count];
    const char *bound = fields[6];
    const char *best = fields[7];
    const char *bar = fields[16];
    const char *bound_bar = fields[17];
    *known = (struct cut_known){.rotation = flat ? -1 : fields[2][0] == '1'};
    if (strlen(fields[0]) >= sizeof known->name || !take_number(&bound, &known->lower_bound) ||
        !take_number(&best, &known->best_known) ||
        (*bar != '\0' && !take_number(&bar, &known->bar)) ||
        (*bound_bar != '\0' && !take_number(&bound_bar, &known->bound_bar))) {
        return false;
    }
    memcpy(known->name, fields[0], strlen(fields[0]) + 1);
    list->count++;
    return true;
}

bool cut_known_read(struct cut_known_list *list, const char *folder) {
    char text[LINE_MAX_BYTES];
    *list = (struct cut_known_list){0};
    (void)snprintf(text, sizeof text, "%s/best-known.csv", folder);
    FILE *input = fopen(text, "r");
    if (input == NULL) {
        return true;
    }
    bool ok = true;
    while (ok && fgets(text, sizeof text, input) != NULL) {
        ok = add_known(list, text);
    }
    (void)fclose(input);
    return ok;
}

void cut_known_clear(struct cut_known_list *list) {
    free(list->rows);
    *list = (struct cut_known_list){0};
}

const struct cut_known *cut_known_find(const struct cut_known_list *list, const char *name,
                                       int rotation) {
    for (size_t i = 0; i < list->count; i++) {
        if (list->rows[i].rotation == rotation && strcmp(list->rows[i].name, name) == 0) {
            return &list->rows[i];
        }
    }
    return NULL;
}
