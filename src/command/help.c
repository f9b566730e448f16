/* SPDX-License-Identifier: MIT */
/* Help, made from the tables of commands and options. */
#include "command/help.h"

#include "command/command.h"
#include "report/text/grid.h"

#include <string.h>

static const struct grid_column columns[] = {{NULL, GRID_LEFT, false}, {NULL, GRID_LEFT, true}};

static const char exit_words[] =
    "Exit status: 0 done, 1 the inputs are wrong, 2 the call is wrong, "
    "3 could not write or out of memory.";

/* Where somebody stands who has the program alone. */
static void say_begin(struct page *page) {
    say(page, "%s", "To begin, in the folder of your list of doors: doorcost new kitchen.ini");
}

/* The option as it is typed: `-o, --output FILE`. */
static const char *typed(const struct option_row *row, struct pool *pool) {
    return row->letter == '\0'
               ? pool_format(pool, "--%s%s%s", row->name, row->argument == NULL ? "" : " ",
                             row->argument == NULL ? "" : row->argument)
               : pool_format(pool, "-%c, --%s %s", row->letter, row->name,
                             row->argument == NULL ? "" : row->argument);
}

/* The command that a part of an option's help is of, which it begins with, as in `new: go on from`;
 * NULL: none. */
static const struct command *part_of(const char *text) {
    size_t count;
    const struct command *const commands = command_rows(&count);
    for (size_t i = 0; i < count; i++) {
        const size_t size = strlen(commands[i].name);
        if (strncmp(text, commands[i].name, size) == 0 && text[size] == ':') {
            return &commands[i];
        }
    }
    return NULL;
}

/* Of a help with parts of several commands what all share and the part of this one. In pool. */
static const char *help_of(const char *help, const struct command *command, struct pool *pool) {
    const char *mine = "";
    bool parts = false;
    for (const char *from = help; *from != '\0';) {
        const struct command *const of = part_of(from);
        const char *to = from;
        while (*to != '\0' && !((strncmp(to, "; ", 2) == 0 || strncmp(to, ". ", 2) == 0) &&
                                part_of(to + 2) != NULL)) {
            to++;
        }
        if (of == NULL || of == command) {
            const char *const text = of == NULL ? from : from + strlen(of->name) + 2;
            mine = pool_words(pool, "%s%s%.*s", mine, mine[0] == '\0' ? "" : "; ", (int)(to - text),
                              text);
        }
        parts = parts || of != NULL;
        from = *to == '\0' ? to : to + 2;
    }
    return parts && mine[0] != '\0' ? mine : help;
}

/* command: of whose help they are; NULL: of all. */
static void print_options(struct page *page, unsigned commands, const struct command *command) {
    size_t count;
    const struct option_row *const rows = option_rows(&count);
    struct pool pool;
    pool_init(&pool);
    for (size_t i = 0; i < count; i++) {
        if ((rows[i].commands & commands) != 0) {
            const char *const option = typed(&rows[i], &pool);
            const char *const first = option == NULL ? NULL : pool_format(&pool, "  %s", option);
            say_wrapped(page, first == NULL ? "" : first, 21, "%s",
                        command == NULL ? rows[i].help : help_of(rows[i].help, command, &pool));
        }
    }
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

void help_print(struct page *page) {
    size_t count;
    const struct command *const commands = command_rows(&count);
    struct grid grid;
    say_wrapped(page, "", 0,
                "doorcost prices cabinet-door jobs: from a rates file, a job file and a door list "
                "to the lumber, sheets and finish to buy, the hours, and a quote.");
    say_begin(page);
    say(page, "%s", "");
    say(page, "Usage: doorcost COMMAND JOB.ini [options]");
    say(page, "%s", "");
    grid_init(&grid, columns, 2, 2);
    for (size_t i = 0; i < count; i++) {
        grid_put(&grid, "%s", commands[i].name);
        grid_put(&grid, "%s", commands[i].summary);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
    say(page, "%s", "");
    say(page, "Options (each command takes those that its own help names):");
    print_options(page, ~0u, NULL);
    say(page, "%s", "");
    say(page, "%s", "'doorcost help COMMAND' tells more, with an example.");
    say_wrapped(page, "", 0, "%s", exit_words);
}

void help_print_command(struct page *page, const struct command *command) {
    size_t count;
    const unsigned bit = 1u << (command - command_rows(&count));
    say(page, "  $ %s", command->example);
    say(page, "%s", "");
    say(page, "Usage: doorcost %s %s%s%s [options]", command->name,
        command->scope == WORK_NOTHING ? "[FILE.ini]" : "JOB.ini",
        command->words == NULL ? "" : " ", command->words == NULL ? "" : command->words);
    say(page, "%s", "");
    say_wrapped(page, "", 0, "%s", command->about);
    say(page, "%s", "");
    print_options(page, bit, command);
    say(page, "%s", "");
    say_wrapped(page, "", 0, "%s", exit_words);
}

void help_print_short(struct page *page) {
    size_t count;
    const struct command *const commands = command_rows(&count);
    say(page, "Usage: doorcost COMMAND JOB.ini [options]");
    fputs("Commands:", page->out);
    for (size_t i = 0; i < count; i++) {
        fprintf(page->out, "%s %s", i == 0 ? "" : ",", commands[i].name);
    }
    fputs("\n", page->out);
    say_begin(page);
    say(page, "'doorcost help' tells more.");
}
