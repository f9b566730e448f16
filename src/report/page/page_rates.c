/* SPDX-License-Identifier: MIT */
/* The numbers that the job takes of its own file and of the rates, each in a box: moved there, the
 * page makes the tape again. One that goes into more than figures, as a size or a count that parts,
 * set-ups and plans are made from, needs another run, which the page says. */
#include "base/array.h"
#include "base/text.h"
#include "model/rate_number.h"
#include "price/setting_used.h"
#include "report/page/page_parts.h"
#include "report/words/show.h"

#include <inttypes.h>
#include <string.h>

/* --- which they are --- */

/* How a number is written that becomes a film: in the unit of its given, with as many decimals as
 * whole nanometers have. */
static void write_film(struct view *v, struct view_rate *rate) {
    const struct tape *const tape = &v->e->tape;
    const fig given = rate->givens.list[0];
    const enum unit unit = tape_unit(tape, given);
    rate->decimals = unit == UNIT_MIL ? 2 : 3;
    rate->unit = pool_words(&v->html.pool, " %s", unit_name(unit));
    rate->shown = pool_words(&v->html.pool, "%s", show_short(v->e, given).text);
}

static bool take_rate(struct view *v, const struct rate_number *number) {
    struct view_rate *const rate = &v->rates[v->rate_count];
    char text[32];
    *rate = (struct view_rate){
        .number = number, .decimals = number->most_decimals, .unit = number->unit};
    if (!rate_givens_find(&rate->givens, v->e, number, &v->html.pool)) {
        return false;
    }
    /* lengths are in the parts and what machines are set up for, too */
    rate->moves = rate->givens.as_written && rate->givens.count > 0 &&
                  rate->givens.way != RATE_AS_LENGTH && rate_number_may_differ(number);
    if (rate->moves && rate->givens.way == RATE_AS_FILM) {
        write_film(v, rate);
    } else {
        rate->shown = pool_words(
            &v->html.pool, "%s",
            figure_text(number->value.amount, number->value.decimals, text, sizeof text));
    }
    v->rate_count++;
    return true;
}

/* Those of a file that a figure is made of. */
static bool take_file(struct view *v, const struct rate_numbers *numbers,
                      const struct settings *settings) {
    const bool *const used = settings_used(v->e, settings, &v->html.pool);
    bool held = used != NULL;
    for (size_t i = 0; held && i < numbers->count; i++) {
        const struct rate_number *const number = &numbers->list[i];
        const struct setting *const s = setting_at(settings, number->value.place);
        held = s == NULL || !used[s - settings->list] || take_rate(v, number);
    }
    return held;
}

/* The extra charge of a row, written as the list has it. */
static bool take_extra(struct view *v, const struct row *row) {
    struct pool *const pool = &v->html.pool;
    const struct value *const value = &row->extra_charge;
    const char *const words = text_or_empty(row->extra_words.s);
    char text[32];
    const struct rate_number number = {
        .value = *value,
        .section = pool_words(pool, "row %s", row->id.s),
        .key = "extra charge",
        .before = "",
        .behind = words[0] == '\0' ? "" : pool_words(pool, " %s", words),
        .lead = "",
        .likely =
            pool_words(pool, "%s", figure_text(value->amount, value->decimals, text, sizeof text)),
        .unit = "",
        .most_decimals = v->e->rates->shop.money_decimals,
        .most = RATE_NO_LIMIT};
    const struct rate_number *const kept = pool_copy(pool, &number, sizeof number);
    return kept != NULL && take_rate(v, kept);
}

static bool take_list(struct view *v) {
    const struct job *const job = v->e->job;
    bool held = true;
    for (size_t i = 0; held && i < job->row_count; i++) {
        held = !job->rows[i].extra_charge.set || take_extra(v, &job->rows[i]);
    }
    return held;
}

static bool take_rates(struct view *v) {
    const struct rates *const r = v->e->rates;
    const struct job *const job = v->e->job;
    v->rates = pool_take(&v->html.pool, job->numbers.count + job->row_count + r->numbers.count + 1,
                         sizeof *v->rates);
    if (v->rates == NULL || !take_file(v, &job->numbers, &job->settings)) {
        return false;
    }
    v->job_rates = v->rate_count;
    if (!take_list(v)) {
        return false;
    }
    v->list_rates = v->rate_count;
    return take_file(v, &r->numbers, &r->settings);
}

/* --- the boxes --- */

static void put_name(struct view *v, const struct view_rate *rate, size_t at) {
    struct html *const h = &v->html;
    html_cell_open(&v->table);
    if (rate->moves) {
        html_format(h, "<label for=\"r%zu\">", at);
    }
    html_text(h, rate->number->key);
    if (rate->number->lead[0] != '\0') {
        html_words(h, ", %s", rate->number->lead);
    }
    /* `60.00 for finish samples, 45.00 for templates`: what of it is of this number */
    html_words(h, "%.*s", (int)strcspn(rate->number->behind, ","), rate->number->behind);
    html_put(h, rate->moves ? "</label>" : "");
    html_cell_end(&v->table);
}

static void put_box(struct view *v, const struct view_rate *rate, size_t at) {
    struct html *const h = &v->html;
    html_cell_open(&v->table);
    if (rate->moves) {
        html_format(h, "<span class=\"rate\"><input id=\"r%zu\" autocomplete=\"off\" value=\"", at);
        html_text(h, rate->shown);
        html_put(h, "\"> ");
        html_element(h, "span class=\"u\"", rate->unit);
        html_put(h, "</span>");
    } else {
        html_text(h, rate->number->likely);
    }
    html_cell_end(&v->table);
}

static void put_rate(struct view *v, size_t at) {
    const struct view_rate *const rate = &v->rates[at];
    const struct place place = rate->number->value.place;
    html_row(&v->table, "");
    put_name(v, rate, at);
    put_box(v, rate, at);
    html_cell(&v->table, rate->moves ? rate->number->likely : "needs another run");
    html_cell(&v->table, pool_words(&v->html.pool, "line %u", place.line));
    html_row_end(&v->table);
}

/* Those from `from` on and before `to`, of one file. */
static void put_table(struct view *v, const char *caption, size_t from, size_t to) {
    static const struct html_head heads[] = {
        {"number", false}, {"here", false}, {"as read", false}, {"stands in", false}};
    const char *section = "";
    if (from == to) {
        return;
    }
    html_table(&v->table, &v->html, caption, heads, COUNT_OF(heads));
    for (size_t i = from; i < to; i++) {
        if (strcmp(section, v->rates[i].number->section) != 0) {
            section = v->rates[i].number->section;
            html_row_head(&v->table, pool_words(&v->html.pool, "[%s]", section));
        }
        put_rate(v, i);
    }
    html_table_end(&v->table);
}

void page_rates(struct view *v) {
    struct pool *const pool = &v->html.pool;
    view_section(v, "rates", "Rates");
    if (!take_rates(v)) {
        v->html.failed = true;
    }
    html_element(&v->html, "p class=\"screen\"",
                 "Type another number, and the whole estimate follows, as if its file were edited "
                 "so. A figure that the program chose for other numbers says 'run again'. "
                 "Nothing is written: what is to last goes into the file.");
    html_put(&v->html, "<div id=\"changes\" hidden></div>\n");
    put_table(v, pool_words(pool, "What the job itself says, in %s", v->e->job->settings.file_name),
              0, v->job_rates);
    put_table(v, pool_words(pool, "What its list says, in %s", v->e->job->doors_file), v->job_rates,
              v->list_rates);
    put_table(v, pool_words(pool, "What it takes from %s", v->e->rates->settings.file_name),
              v->list_rates, v->rate_count);
    view_section_end(v);
}

/* --- for the script --- */

/* Whether a rate of that unit may be nothing: a price, a percent. A feed or a film of nothing is
 * none. */
static bool may_be_none(const struct value *value) {
    return value->unit == UNIT_PERCENT || value->unit == UNIT_MONEY ||
           (value->unit >= UNIT_MONEY_PER_BF && value->unit <= UNIT_MONEY_PER_M);
}

/* Whether it is a part of the total that falls due before the rest: all of them together are no
 * more than the total. */
static bool is_payment(const struct rate_number *number) {
    return strcmp(number->section, "sale") == 0 &&
           (strcmp(number->key, "deposit") == 0 || strcmp(number->key, "stages") == 0);
}

/* What is "" is left out. */
static void put_words(struct html *h, const char *name, const char *words) {
    if (words[0] != '\0') {
        html_format(h, ",\"%s\":", name);
        html_json(h, words);
    }
}

/* 0 for one that needs another run. */
static void put_data(struct view *v, const struct view_rate *rate) {
    struct html *const h = &v->html;
    const struct rate_number *const n = rate->number;
    if (!rate->moves) {
        html_put(h, "0");
        return;
    }
    html_format(h, "{\"decimals\":%u", rate->decimals);
    if (n->least != 0) {
        html_format(h, ",\"least\":%" PRId32, n->least);
    }
    if (n->most != RATE_NO_LIMIT) {
        html_format(h, ",\"most\":%" PRId32, n->most);
    }
    html_put(h, is_payment(n) ? ",\"payment\":true" : "");
    html_put(h, may_be_none(&n->value) ? ",\"none\":true" : "");
    html_put(h, ",\"givens\":[");
    for (size_t i = 0; i < rate->givens.count; i++) {
        html_format(h, i == 0 ? "%u" : ",%u", rate->givens.list[i].id);
    }
    html_put(h, "]");
    put_words(h, "section", n->section);
    put_words(h, "key", n->key);
    put_words(h, "before", n->before);
    put_words(h, "unit", rate->unit);
    put_words(h, "behind", n->behind);
    html_put(h, "}");
}

/* Between which needs, at 4 decimals, the containers of a product stay those that were chosen; by
 * the need's figure. */
static void put_hold(struct view *v, const struct product *p) {
    const struct tape *const tape = &v->e->tape;
    html_format(&v->html, "\"%u\":[%" PRId64 ",%" PRId64 "]", p->to_buy.id,
                product_holds_from(tape, p), tape_scaled(tape, p->bought, 4));
}

void page_rates_data(struct view *v) {
    const struct finish_list *const finish = &v->e->finish;
    html_put(&v->html, "\"rates\":[");
    for (size_t i = 0; i < v->rate_count; i++) {
        html_put(&v->html, i == 0 ? "\n" : ",\n");
        put_data(v, &v->rates[i]);
    }
    html_put(&v->html, "],\n\"holds\":{");
    bool any = false;
    for (size_t i = 0; i < finish->product_count; i++) {
        if (tape_amount(&v->e->tape, finish->products[i].need) > 0) {
            html_put(&v->html, any ? "," : "");
            put_hold(v, &finish->products[i]);
            any = true;
        }
    }
    html_put(&v->html, "},\n");
}
