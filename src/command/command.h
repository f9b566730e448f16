/* SPDX-License-Identifier: MIT */
/* The commands: one table gives what can be called, its help and what it needs estimated. */
#ifndef DOORCOST_COMMAND_COMMAND_H
#define DOORCOST_COMMAND_COMMAND_H

#include "command/options.h"

#include <stdio.h>

/* The program's exit status. */
enum status {
    STATUS_DONE = 0,
    STATUS_INPUTS = 1, /* the inputs are wrong */
    STATUS_USE = 2,    /* the call is wrong */
    STATUS_OUTPUT = 3, /* could not write, or out of memory */
};

/* Which estimates a command needs. */
enum work_scope {
    WORK_ONE,       /* the base job, or the option that was named */
    WORK_ALL,       /* and each option of the job, where none was named */
    WORK_PROBLEMS,  /* as WORK_ALL, but only their problems are kept */
    WORK_PURCHASES, /* as WORK_ALL, with what each has to buy */
    WORK_PURCHASE,  /* as WORK_ONE, with what it has to buy */
    WORK_NOTHING,   /* none, nor a job: the command opens what is named, if anything is */
};

/* Of which estimates a command shows how their figures came about. */
enum work_trace {
    TRACE_NONE,
    TRACE_FIRST,
    TRACE_ALL,
};

struct problems;
struct work;
struct work_request;
struct json_paper; /* report/json/json.h */

struct streams {
    FILE *out, *err;
    FILE *in; /* where answers are typed; NULL: nobody is asked */
};

/* Places in the table, for the bits of an option. */
enum command_place {
    PLACE_QUOTE,
    PLACE_CHECK,
    PLACE_FINISH,
    PLACE_BUY,
    PLACE_PLAN,
    PLACE_COMPARE,
    PLACE_DRAW,
    PLACE_LABELS,
    PLACE_EXPLAIN,
    PLACE_STRIKE,
    PLACE_DAYS,
    PLACE_LEARN,
    PLACE_RANGE,
    PLACE_BRIDGE,
    PLACE_TABLE,
    PLACE_WAYS,
    PLACE_REACH,
    PLACE_SHOW,
    PLACE_MEASURE,
    PLACE_NEW,
    COMMAND_COUNT
};

struct command {
    const char *name;
    const char *summary; /* a line of the list of commands */
    const char *example; /* opens its help */
    const char *about;   /* a paragraph */
    enum work_scope scope;
    enum work_trace trace; /* as text and in its files; as JSON all are */
    unsigned json_parts;   /* of enum json_part */
    bool plans;            /* cutting plans are made even where the rates price by factor */
    /* Writes the result.  The work holds no error. */
    enum status (*run)(const struct request *request, struct work *work, struct streams streams);
    const char *words; /* what it takes behind the job file, for help; NULL: nothing */
};

/* All commands in the order of the help; *count: how many. Static. */
const struct command *command_rows(size_t *count);
/* By its exact name; NULL: none. */
const struct command *command_find(const char *name);

/* Does what argv asks for. */
enum status command_main(int argc, char **argv, struct streams streams);

/* Opens the job at path and prints its problems on streams.err. Any status but STATUS_DONE: it has
 * errors or not the option asked for, which was said, or memory is out. work_close must be called
 * whatever the status. */
enum status command_open(const struct request *request, const char *path, struct work_request asked,
                         struct work *work, struct streams streams);

/* Flushes out and sees whether it took all: STATUS_DONE, or STATUS_OUTPUT with a line on err. */
enum status command_flush(struct streams streams);
/* Prints problems on err, colored where that is wanted. Of errors there, that nothing was written.
 */
void command_problems(const struct request *request, const struct problems *problems,
                      struct streams streams);
/* Says that memory is out; STATUS_OUTPUT. */
enum status command_out_of_memory(struct streams streams);
/* What every result as JSON says: command, problems, job, estimates. Borrows the work. */
struct json_paper command_paper(const struct request *request, const struct work *work);
/* Prints a result as JSON; STATUS_OUTPUT where memory ran out or out did not take it. */
enum status command_send(const struct json_paper *paper, struct streams streams);
/* The result of a command that adds nothing to it. */
enum status command_json(const struct request *request, const struct work *work,
                         struct streams streams);

/* Each command: shows what it is for on streams.out and writes the files that the request names.
 * The work holds no error. STATUS_OUTPUT with a line on streams.err where something could not be
 * written or memory ran out. This one: the quote as text, its workbooks and PDF. */
enum status command_quote(const struct request *request, struct work *work, struct streams streams);
/* How many rows and doors there are, errors and questions. */
enum status command_check(const struct request *request, struct work *work, struct streams streams);
/* The finish to buy. */
enum status command_finish(const struct request *request, struct work *work,
                           struct streams streams);
/* All that is to buy. */
enum status command_buy(const struct request *request, struct work *work, struct streams streams);
/* Elevations as PDF or SVG. */
enum status command_draw(const struct request *request, struct work *work, struct streams streams);
/* Labels of parts or of doors as PDF. */
enum status command_labels(const struct request *request, struct work *work,
                           struct streams streams);
/* A sheet to measure on as PDF; opens the file that is named, a job or rates, into the work. */
enum status command_measure(const struct request *request, struct work *work,
                            struct streams streams);
/* The cutting plans as text, PDF or SVG. */
enum status command_plan(const struct request *request, struct work *work, struct streams streams);
/* The job and its options side by side. */
enum status command_compare(const struct request *request, struct work *work,
                            struct streams streams);

/* What each row saves if it is struck, and one more of it costs. */
enum status command_strike(const struct request *request, struct work *work,
                           struct streams streams);

/* The work in order by day, of this job and of those that the request's words name. */
enum status command_days(const struct request *request, struct work *work, struct streams streams);

/* What happened, against the estimate. */
enum status command_learn(const struct request *request, struct work *work, struct streams streams);

/* What rates change when they are moved through their ranges, or as set. */
enum status command_range(const struct request *request, struct work *work, struct streams streams);

/* Why the price moved from the work's job to the one that the request's words name. */
enum status command_bridge(const struct request *request, struct work *work,
                           struct streams streams);

/* What one more door comes to by its size and by how many are ordered. */
enum status command_table(const struct request *request, struct work *work, struct streams streams);

/* The ways of each row, and those that keep the job within its hours. */
enum status command_ways(const struct request *request, struct work *work, struct streams streams);

/* What would have to be true for the client to pay a wanted total. */
enum status command_reach(const struct request *request, struct work *work, struct streams streams);

/* The estimate as a page to look into. */
enum status command_show(const struct request *request, struct work *work, struct streams streams);

/* A job file to begin with. Takes no work. */
enum status command_new(const struct request *request, struct work *work, struct streams streams);

/* How a figure came about. */
enum status command_explain(const struct request *request, struct work *work,
                            struct streams streams);

#endif
