/* SPDX-License-Identifier: MIT */
/* The command line: which options there are, and what a call asks for.
 *
 * One table of options gives what is read, every help text and what the man page is checked
 * against.  An option means the same in every command.  Nothing is abbreviated; a name that is near
 * an unknown one is suggested, never taken. */
#ifndef DOORCOST_COMMAND_OPTIONS_H
#define DOORCOST_COMMAND_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

struct command;

/* What an option that may be given more than once was given; more than fit are refused. */
#define MOST_OPTION_TEXTS 64
struct option_texts {
    const char *texts[MOST_OPTION_TEXTS];
    size_t count;
};

/* What a call asks for; texts are borrowed from argv. */
struct request {
    const struct command *command; /* NULL: none named */
    const char *job;               /* the job file; NULL: none named */
    const char *output;            /* -o; NULL: the default */
    const char *option;            /* --option; NULL: the base job */
    const char *svg;               /* --svg, a folder; NULL: none */
    const char *rack;              /* --rack, a file; NULL: none */
    const char *const *words;      /* what stands behind the job file */
    size_t word_count;
    const char *depth;                     /* --depth; NULL: the default */
    const char *by;                        /* --by; NULL: not given */
    struct option_texts set;               /* --set, in the order of the line */
    const char *effort;                    /* --effort; NULL: the default */
    const char *hours;                     /* --hours; NULL: no limit */
    const char *begin;                     /* --begin, a date; NULL: not given */
    const char *total;                     /* --total; NULL: not given */
    const char *widths, *heights, *counts; /* lists; NULL: the default */
    const char *draws, *seed, *confidence; /* --draws and so on; NULL: the default */
    const char *rates;                     /* --rates; NULL: not asked for */
    const char *list;                      /* --list; NULL: not asked for */
    const char *unit;                      /* --unit; NULL: that of the file */
    const char *from;                      /* --from; NULL: the first label, no old job */
    bool all, client, doors, force, no_prices, json, no_color, help, version;
};

/* One option, and the commands that take it. */
struct option_row {
    const char *name;     /* without the dashes */
    const char *argument; /* what it takes, for help; NULL: nothing */
    const char *help;
    size_t offset;     /* into struct request: a bool, or a text where it takes one */
    unsigned commands; /* bits by place in the table of commands */
    char letter;       /* '\0': none */
    bool often;        /* may be given more than once: offset is of a struct option_texts */
};

/* All options, in the order of the help. */
const struct option_row *option_rows(size_t *count);

/* Reads argv.  false: wrong use, said in a line or two on err. */
bool options_read(struct request *request, int argc, char **argv, FILE *err)
    __attribute__((warn_unused_result));

/* The number that an option was given, at least low and at most high, both below 10^12; of an
 * option that was not given (NULL) *value stays. false: it is none, which is said on err. name:
 * without the dashes. */
bool option_whole(const char *text, const char *name, int64_t low, int64_t high, int64_t *value,
                  FILE *err) __attribute__((warn_unused_result));

/* `10%`, `2.5 %`, `10`: above 0 and at most 100, at most 4 decimals: *percent / 10^decimals. false:
 * it is none. */
bool option_percent(const char *text, int64_t *percent, uint8_t *decimals)
    __attribute__((warn_unused_result));

#endif
