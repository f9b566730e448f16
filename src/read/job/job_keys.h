/* SPDX-License-Identifier: MIT */
/* The sections of the job file and the columns of the door list. */
#ifndef DOORCOST_READ_JOB_JOB_KEYS_H
#define DOORCOST_READ_JOB_JOB_KEYS_H

#include "model/job.h"
#include "read/key/columns.h"
#include "read/key/key.h"

/* construction_keys.c */
#define CONSTRUCTION_KEY_COUNT ((size_t)22)
extern const struct key construction_keys[CONSTRUCTION_KEY_COUNT];

/* Sets every field to what an absent key means: not given. */
void construction_init(struct construction *construction);

/* Reports keys that contradict each other in one section or row: overlay with reveal. */
void construction_check(struct reader *reader, const struct construction *construction);

/* job_keys.c */
extern const struct section_kind *const job_sections[];
extern const size_t job_section_count;

/* job_keys.c: finds the option that was agreed, and reports one that the job has not. After all
 * sections are read. */
void job_check_agreed(struct reader *reader, struct job *job);

/* job_keys.c: reports a `ready = planned` that lacks what a plan needs. After all sections are
 * read.
 */
void job_check_planned(struct reader *reader, const struct rates *rates, const struct job *job);

/* row.c */
extern const struct key row_keys[];
extern const size_t row_key_count;

/* What must hold within the row itself, and what a craftsman would question. */
void row_check(struct reader *reader, const struct job *job, struct row *row);

/* row_make.c: the style by which a row is made under a construction that names one. Borrowed. */
const struct style *row_style(const struct reader *reader, const struct row *row,
                              const struct construction *construction);

/* row_opens.c: completes the leaves of a row by how it opens, and reports cells that do not go with
 * that: leaves, hinge side, use, second width. */
void row_check_opens(struct reader *reader, struct row *row);

/* row_opens.c: whether a pie-cut pair for measured openings has its corner; reports it. option:
 * NULL for the base job. */
bool row_check_corner(struct reader *reader, const struct row *row,
                      const struct construction *construction, const struct option *option)
    __attribute__((warn_unused_result));

/* row_make.c: whether a row's door can be made of what is named for it, in the base job and in
 * every option. */
void row_check_make(struct reader *reader, const struct job *job, const struct row *row);

/* row_make.c: whether the door of a row can be made under a construction; reports what it lacks, or
 * that its size leaves no room for its frame. option: whose words are said with it; NULL for the
 * base job. */
bool row_can_be_made(struct reader *reader, const struct row *row,
                     const struct construction *construction, const struct option *option);

/* row_effect.c: asks about cells of a row that nothing is made of, in the base job and in every
 * option: a panel of a slab, the hinge of a drawer front. */
void row_warn_effect(struct reader *reader, const struct job *job, const struct row *row);

/* row_woods.c: the material that fills a row's door and is no glass, with its key in *key; NULL:
 * none is named or made. */
const struct material_reference *row_filling(const struct reader *reader, const struct row *row,
                                             const struct construction *construction,
                                             const char **key);

/* row_effect.c: asks about what an option names and no row is made of. After all rows are read; the
 * rates hold no errors in what is named. */
void option_warn_effect(struct reader *reader, const struct job *job, size_t option);

/* row_woods.c: asks about a clear finish on a sheet that its name or words call a bare board (MDF
 * and the like, without grain), in the base job and in every option. */
void row_warn_clear(struct reader *reader, const struct job *job, const struct row *row);

/* row_woods.c: asks, once an option, about one that names other lumber for frames and leaves panels
 * or slabs in the wood that the frames had; by the woods of the rates, or a word that names share.
 * After all rows are read; the rates hold no errors in what is named. */
void options_warn_woods(struct reader *reader, const struct job *job);

/* row_woods.c: asks, once a key, about a panel of [make] in another wood than its frames, where a
 * finish shows both. After all rows are read. */
void make_warn_woods(struct reader *reader, const struct job *job);

/* row_woods.c: the same of a row that names lumber for its frame. */
void row_warn_woods(struct reader *reader, const struct job *job, const struct row *row);

/* row.c: makes of the use `pair` a door hung at both sides; reports another hinge side. Before
 * anything looks at the row. */
void row_take_pair(struct reader *reader, struct row *row);

/* row_make.c: ` in option 'maple'`, or nothing for the base job (NULL). In the problems' pool. */
const char *option_words(struct reader *reader, const struct option *option);

/* list_totals.c: takes lines of totals out of a list: those whose first word says so, and which
 * have no size. One whose count is neither that of all rows above nor of those since the last such
 * line is reported, and a row that is named so and has a size. columns: of door_list_columns. */
void list_totals_drop(struct table *table, const struct heading *columns,
                      struct problems *problems);

/* door_list.c: reads the list at path to a table (columns_table), without its row that shows how
 * and its lines of totals. false: memory is out. */
bool door_list_table(struct table *table, const char *path, struct place asked,
                     struct problems *problems) __attribute__((warn_unused_result));
/* Takes the names of columns of a list away, that it is told with commas between, so that these are
 * the user's own; one that the list lacks is reported. place: of names. */
void door_list_leave_out(struct table *table, const char *names, struct place place,
                         struct problems *problems);
/* What each column of a list means (columns_mean). In pool; NULL: memory is out. */
struct heading *door_list_columns(const struct table *table, struct pool *pool);
/* What the headings of a list tell. */
struct list_told {
    bool doors;          /* it has the columns width and height */
    bool whole;          /* and id */
    const char *measure; /* what sizes are of, `opening` or `door`; NULL: not told. Static. */
    const char *strange; /* headings like no column, with commas between; NULL: none. In pool. */
};
/* Looks at the headings of a table that was read; memory of pool. */
struct list_told door_list_told(const struct table *table, struct pool *pool);
/* Reads the rows of the job from its door list. false: memory is out. */
bool door_list_read(struct reader *reader, struct job *job, const struct table *table)
    __attribute__((warn_unused_result));

/* list_name.c: gives the columns of a list the names of their keys, whatever it calls them, so that
 * lists can be held against each other and put together; bare lengths below a heading with a unit
 * other than the job's get it. The list holds no errors. Memory of pool. false: memory is out. */
bool door_list_name(struct table *table, enum length_unit unit, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
