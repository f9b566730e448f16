/* SPDX-License-Identifier: MIT */
/* A page as one file of HTML that asks for nothing else: styles, scripts and pictures stand in it,
 * and it forbids its reader to fetch any.
 *
 * Markup is written as it stands, all else through the functions that know how to write it: words
 * by html_text, numbers of a script by html_json. A failure sticks; html_close tells. */
#ifndef DOORCOST_REPORT_HTML_HTML_H
#define DOORCOST_REPORT_HTML_HTML_H

#include "base/pool.h"
#include "report/draw/elevation.h"

#include <stdbool.h>
#include <stdio.h>

struct html {
    FILE *out;
    struct pool pool; /* for words in the making */
    bool failed;      /* memory ran out, or a picture was not made */
};

/* Opens path for writing and begins the page: its title, the styles of all pages and those of
 * `style`. script: whether the page has scripts. false: it can't be opened; errno tells. */
bool html_open(struct html *html, const char *path, const char *title, const char *style,
               bool script) __attribute__((warn_unused_result));
/* Ends the page and the file. May be called on a page that could not be opened. false: it is not
 * whole. */
bool html_close(struct html *html) __attribute__((warn_unused_result));

/* Markup as it stands. */
void html_put(struct html *html, const char *markup);
/* Markup with numbers in it; never with words of the user. */
void html_format(struct html *html, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* Words: what has a meaning in HTML is escaped, so they may stand between tags and in a value
 * within double quotes. NULL: nothing. */
void html_text(struct html *html, const char *text);
/* Words put together, likewise. */
void html_words(struct html *html, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* <tag>words</tag>; tag: with its attributes, as `td class="n"`. */
void html_element(struct html *html, const char *tag, const char *words);

/* A text of JSON with its quotes, in a script: nothing of it can end the script. */
void html_json(struct html *html, const char *text);

/* --- tables: on a narrow page each row is a block, and each cell says what it is --- */

/* The head of a column, of words or of numbers. */
struct html_head {
    const char *name; /* "": it needs none */
    bool number;
};

struct html_table {
    struct html *html;
    const struct html_head *heads;
    size_t count, column;
    bool body; /* lines of a body stand open */
};

/* Begins a table; the first head is of what each row is about. caption: what it shows; heads:
 * borrowed. */
void html_table(struct html_table *table, struct html *html, const char *caption,
                const struct html_head *heads, size_t count);
/* Ends it. */
void html_table_end(struct html_table *table);
/* A line over all columns: a heading of the lines below it, which are a body of their own. */
void html_row_head(struct html_table *table, const char *words);
/* Begins a row; class: of its style, "". */
void html_row(struct html_table *table, const char *class);
/* Ends it; cells that were not filled are left out. */
void html_row_end(struct html_table *table);
/* The next cell, with words; left empty where there are none. */
void html_cell(struct html_table *table, const char *words);
/* Left empty. */
void html_cell_none(struct html_table *table);
/* Begins the next cell; html_cell_end ends it. */
void html_cell_open(struct html_table *table);
/* Ends a cell. */
void html_cell_end(struct html_table *table);

/* --- pictures --- */

/* A picture in PNG; words: what it shows, for who does not see it; class: of its style. */
void html_picture(struct html *html, const unsigned char *png, size_t size, const char *class,
                  const char *words);
/* A door as it looks, as SVG; sizes: with its dimensions, what is hidden
 * and the marks of hinges; words: likewise. */
void html_drawing(struct html *html, const struct elevation *elevation, bool sizes,
                  const char *words);

#endif
