/* SPDX-License-Identifier: MIT */
/* The pieces that a document is put together from.  Each returns a new value that the caller owns,
 * NULL when memory is out; setting a NULL into an object or list fails there, so that one question
 * at the end is enough: json_missing. */
#ifndef DOORCOST_REPORT_JSON_JSON_PARTS_H
#define DOORCOST_REPORT_JSON_JSON_PARTS_H

#include "report/json/json.h"
#include "report/json/json_stream.h"
#include "report/words/field.h"
#include "trial/range.h"

/* A document in the making: failure sticks. */
struct json_maker {
    struct json_stream stream;
    const struct estimate *e;
    bool failed;
};

/* object[key] = value, which is taken over; a NULL value fails the maker. */
void json_put(struct json_maker *maker, json_t *object, const char *key, json_t *value);
/* A value more at the end of a list, which takes it over; NULL fails the maker. */
void json_add(struct json_maker *maker, json_t *list, json_t *value);
/* object[key] = text; NULL: null. */
void json_put_text(struct json_maker *maker, json_t *object, const char *key, const char *text);
/* object[key] = count. */
void json_put_count(struct json_maker *maker, json_t *object, const char *key, int64_t count);

/* object[key] = {"figure": id, "value": "4.10", "unit": "bf"}; null for none. */
void json_put_figure(struct json_maker *maker, json_t *object, const char *key, fig f);

/* object[key] = what a job comes to; o: NULL: null. */
void json_put_outcome(struct json_maker *maker, json_t *object, const char *key,
                      const struct outcome *o, uint8_t money_decimals);

/* All figures of a table that have a key. */
void json_put_fields(struct json_maker *maker, json_t *object, const struct field_table *table,
                     const void *thing);

/* The materials with what is bought of each; owned by the caller. These five and json_purchase:
 * NULL where memory is out. */
json_t *json_materials(struct json_maker *maker);
/* Batches, products and containers. */
json_t *json_finish(struct json_maker *maker);
/* Operations, machines and hours. */
json_t *json_labor(struct json_maker *maker);
/* The costs by group. */
json_t *json_costs(struct json_maker *maker);
/* The lines from the doors to what is paid. */
json_t *json_sale(struct json_maker *maker);
/* What a list of purchases holds. */
json_t *json_purchase(struct json_maker *maker, const struct purchase *purchase);

/* Those that grow with the door list are written as they are made, each under its key into the
 * object that is open. */
void json_doors(struct json_maker *maker);
/* The cutting plans, likewise. */
void json_plans(struct json_maker *maker);
/* Rows struck and added, and sizes made one, likewise. */
void json_strike(struct json_maker *maker, const struct strike *strike);
/* What happened and what the rates should be by it, likewise. */
void json_learn(struct json_maker *maker, const struct json_paper *paper);
/* The work by day, likewise. */
void json_days(struct json_maker *maker, const struct day_plan *plan, const struct day_rows *rows);
/* Rates moved, and those without a range, likewise. */
void json_range(struct json_maker *maker, const struct ranges *ranges);
/* The steps from one job to another, likewise. */
void json_bridge(struct json_maker *maker, const struct bridge *bridge);
/* The prices by size, likewise. */
void json_size_table(struct json_maker *maker, const struct size_table *table);
/* The ways of rows, likewise. */
void json_ways(struct json_maker *maker, const struct ways *ways);
/* What the job may come to, likewise. */
void json_chance(struct json_maker *maker, const struct chance *chance);
/* What reaches a wanted total, likewise. */
void json_target(struct json_maker *maker, const struct target *target);
/* Jobs put together, likewise. */
void json_together(struct json_maker *maker, const struct together *together);
/* What the files say, likewise. problems: has their names. */
void json_inputs(struct json_maker *maker, const struct job_texts *texts,
                 const struct problems *problems);
/* All figures with how they were made, and problems, likewise. */
void json_tape(struct json_maker *maker, const struct problems *problems);

#endif
