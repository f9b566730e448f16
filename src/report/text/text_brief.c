/* SPDX-License-Identifier: MIT */
/* What one screen holds of a quote: what it comes to, what it takes, what is still open. */
#include "base/text.h"
#include "model/construction.h"
#include "report/text/print.h"
#include "report/words/buy_list.h"
#include "report/words/field.h"
#include "report/words/moves.h"
#include "report/words/shipped.h"
#include "report/words/show.h"

#include <string.h>

#define MOST_OPTIONS 2 /* that are told one by one */

/* A line of what the user named, cut where it is longer: --all has it whole. */
static void say_cut(struct page *page, const char *text, struct pool *pool) {
    say(page, "%s", text_or_empty(grid_cut(pool, text, GRID_WIDTH)));
}

static void print_head(struct page *page, const struct estimate *e) {
    const struct job *const job = e->job;
    const struct shown doors = show_doors(tape_amount(&e->tape, e->quantities.all_leaves));
    struct pool pool;
    pool_init(&pool);
    say_cut(page,
            pool_words(&pool, "%s%s%s: %s", show_paper(job), job->number.s == NULL ? "" : " ",
                       text_or_empty(job->number.s), job->title.s),
            &pool);
    say_cut(page,
            pool_words(&pool, "  %s, %s%s%s%s", doors.text, e->option < 0 ? "" : "option ",
                       estimate_name(e), job->client.s == NULL ? "" : ", for ",
                       text_or_empty(job->client.s)),
            &pool);
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

/* --- figures --- */

static void put(struct grid *grid, const char *label, const char *figure, const char *note) {
    grid_put(grid, "%s", label);
    grid_put(grid, "%s", figure);
    grid_put(grid, "%s", note);
}

static void put_total(struct grid *grid, const struct estimate *e) {
    const struct sale_figures *const sale = &e->sale;
    const bool deposit = !fig_none(sale->deposit) && tape_amount(&e->tape, sale->deposit) != 0;
    put(grid, pool_words(&grid->pool, "total, %s", e->rates->shop.currency.s),
        show_money(e, sale->total).text,
        deposit
            ? pool_words(&grid->pool, "deposit, on order: %s", show_money(e, sale->deposit).text)
            : "");
}

static void put_options(struct grid *grid, const struct estimate *base,
                        const struct estimate *options, size_t count) {
    for (size_t i = 0; i < count && i < MOST_OPTIONS; i++) {
        const struct estimate *const o = &options[i];
        const struct shown_difference d = show_difference(base, o);
        put(grid, pool_words(&grid->pool, "  as %s", grid_cut(&grid->pool, estimate_name(o), 24)),
            show_money(o, o->sale.total).text,
            pool_words(&grid->pool, "%s, %s", d.money.text, d.percent.text));
    }
    if (count > MOST_OPTIONS) {
        put(grid, pool_words(&grid->pool, "  as %zu more", count - MOST_OPTIONS), "",
            "'doorcost compare' has all");
    }
}

static void put_profit(struct grid *grid, const struct estimate *e) {
    const struct sale_figures *const sale = &e->sale;
    const struct shown sold = show_money(e, sale->worked);
    put(grid, "profit left", show_money(e, sale->profit_left).text,
        fig_none(sale->margin_left) ? pool_words(&grid->pool, "of %s, before tax", sold.text)
                                    : pool_words(&grid->pool, "%s %% of %s, before tax",
                                                 show(e, sale->margin_left).text, sold.text));
}

#define LABOR_LABEL(member) field_label(field_at(&fields_labor, offsetof(struct labor, member)))

static void put_hours(struct grid *grid, const struct estimate *e) {
    const struct labor *const labor = &e->labor;
    put(grid, LABOR_LABEL(hours), show(e, labor->hours).text,
        pool_words(&grid->pool, "%s at the bench", show(e, labor->bench_hours).text));
    if (!fig_none(labor->work_days)) {
        put(grid, LABOR_LABEL(work_days), show(e, labor->work_days).text,
            fig_none(labor->dry_hours) ? ""
                                       : pool_words(&grid->pool, "%s: %s", LABOR_LABEL(dry_hours),
                                                    show_unit(e, labor->dry_hours).text));
    }
}

static void print_figures(struct page *page, const struct estimate *base,
                          const struct estimate *options, size_t option_count) {
    static const struct grid_column columns[] = {
        {NULL, GRID_LEFT, false}, {NULL, GRID_RIGHT, false}, {NULL, GRID_LEFT, true}};
    struct grid grid;
    grid_init(&grid, columns, 3, 2);
    put_total(&grid, base);
    put_options(&grid, base, options, option_count);
    put_profit(&grid, base);
    put_hours(&grid, base);
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* --- what to buy --- */

/* How much of a line is asked for at the counter: `100 bf`; of cans `2 x 1 qt + 2 x 1 gal`. */
static const char *amount_words(const struct buy_list *list, size_t line,
                                const struct buy_group *group, const struct estimate *e,
                                struct pool *pool) {
    const struct buy_line *const whole = &list->lines[line];
    if (group->group != COST_FINISH && whole->how_many[0] != '\0') {
        return whole->how_many;
    }
    const char *words = fig_none(whole->count)
                            ? ""
                            : pool_words(pool, "%s x %s", show(e, whole->count).text, whole->size);
    for (size_t i = line + 1; i < group->first + group->count && list->lines[i].part; i++) {
        const struct buy_line *const part = &list->lines[i];
        const char *const more =
            group->group == COST_FINISH
                ? pool_words(pool, "%s x %s", show(e, part->count).text, part->size)
                : part->how_many;
        words = pool_words(pool, "%s%s%s", words, words[0] == '\0' ? "" : " + ", more);
    }
    return words;
}

/* Whether a line tells of a thing that is bought: not of sizes of it, nor of what others or the
 * rack supply. */
static bool is_bought(const struct buy_line *line) {
    return !line->part && !line->by_others;
}

static size_t bought_lines(const struct buy_list *list, const struct buy_group *group) {
    size_t count = 0;
    for (size_t i = group->first; i < group->first + group->count; i++) {
        count += is_bought(&list->lines[i]) ? 1 : 0;
    }
    return count;
}

/* What is bought of a group as one text of at most so many columns; its last words tell how many
 * more there are. */
static const char *group_words(const struct buy_list *list, const struct buy_group *group,
                               const struct estimate *e, size_t columns, struct pool *pool) {
    size_t left = bought_lines(list, group);
    const char *words = "";
    for (size_t i = group->first; i < group->first + group->count; i++) {
        const struct buy_line *const line = &list->lines[i];
        if (!is_bought(line)) {
            continue;
        }
        const char *const before = words[0] == '\0' ? "" : "; ";
        const char *const next = pool_words(pool, "%s%s%s %s", words, before, line->what,
                                            amount_words(list, i, group, e, pool));
        const char *const tail = left == 1 ? "" : pool_words(pool, "; %zu more", left - 1);
        if (words[0] != '\0' && text_columns(next) + text_columns(tail) > columns) {
            return pool_words(pool, "%s; %zu more", words, left);
        }
        words = text_or_empty(grid_cut(pool, next, columns - text_columns(tail)));
        left--;
    }
    return words;
}

static bool print_buy(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {
        {NULL, GRID_LEFT, false}, {NULL, GRID_RIGHT, false}, {NULL, GRID_LEFT, true}};
    struct buy_list list;
    struct pool pool;
    struct grid grid;
    pool_init(&pool);
    const bool held = buy_list_make(&list, &pool, e);
    grid_init(&grid, columns, 3, 2);
    const size_t room =
        GRID_WIDTH - 2 - strlen("consumables") - 4 - text_columns(show_money(e, list.total).text);
    for (size_t g = 0; held && g < list.group_count; g++) {
        const struct buy_group *const group = &list.groups[g];
        if (bought_lines(&list, group) == 0) {
            continue;
        }
        put(&grid, cost_group_name(group->group), show_money(e, group->total).text,
            group_words(&list, group, e, room, &pool));
    }
    if (held && list.group_count > 0) {
        say(page, "%s", "");
        say(page, "To buy, %s in all", show_money(e, list.total).text);
        grid_print(&grid, page);
    }
    page->failed = page->failed || pool_failed(&pool);
    grid_clear(&grid);
    buy_list_clear(&list);
    pool_clear(&pool);
    return held;
}

/* --- what is open, and what comes next --- */

/* With the line that answers the first of them. */
static void say_warnings(struct page *page, const struct job *job, const struct problems *problems,
                         size_t count, struct pool *pool) {
    size_t i = 0;
    while (problems->list[i].severity != SEVERITY_WARNING) {
        i++;
    }
    say_wrapped(page, "  -", 4, "%s, above: mend, or answer in [job]: accept = %s",
                show_count(count, "warning").text, job_accept_item(job, &problems->list[i], pool));
}

/* Warnings that were printed above, and those that the job accepts. */
static void say_questions(struct page *page, const struct job *job, const struct problems *problems,
                          struct pool *pool) {
    const size_t warnings = problems_count(problems, SEVERITY_WARNING);
    const size_t accepted = problems_count(problems, SEVERITY_ACCEPTED);
    if (warnings > 0 && accepted > 0) {
        say(page, "  - %s, above; %s accepted ('doorcost check' lists them)",
            show_count(warnings, "warning").text, show_count(accepted, "question").text);
    } else if (warnings > 0) {
        say_warnings(page, job, problems, warnings, pool);
    } else if (accepted > 0) {
        say(page, "  - %s accepted ('doorcost check' lists them)",
            show_count(accepted, "question").text);
    }
}

/* Which of the numbers that are as shipped to put in first: those in which most money is. */
static void say_first(struct page *page, const struct estimate *e, struct pool *pool) {
    const struct moves moves = moves_of(e, pool);
    const char *names = "";
    size_t named = 0;
    for (size_t i = 0; i < moves.count && named < 3; i++) {
        const struct setting *const s = moves.list[i].setting;
        if (moves.list[i].shipped) {
            names = pool_words(pool, "%s%s%s %s", names, named == 0 ? "" : ", ", s->title, s->key);
            named++;
        }
    }
    if (named > 0) {
        say(page, "%s",
            text_or_empty(
                grid_cut(pool, pool_words(pool, "    most money in: %s", names), GRID_WIDTH)));
    }
}

static void print_open(struct page *page, const struct estimate *e,
                       const struct problems *problems) {
    struct pool pool;
    pool_init(&pool);
    say(page, "%s", "");
    say(page, "%s", "Open");
    say_questions(page, e->job, problems, &pool);
    if (shipped_example(e)) {
        const struct shipped shipped = shipped_of(e, &pool);
        if (shipped.left > 0) {
            say(page, "  - example prices: %zu of %zu numbers from the rates are as shipped",
                shipped.left, shipped.used);
            say_first(page, e, &pool);
        } else {
            say_wrapped(page, "  -", 4, "%s", shipped_words(&shipped, &pool));
        }
    }
    const size_t told =
        cautions_needed(e, CAUTION_SHOP | CAUTION_QUOTE | CAUTION_CLIENT, &pool).count;
    say(page, "  - %s (--all, or sheet Checks); measure again before the first cut",
        show_count(told, "caution").text);
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

void brief_next_print(struct page *page, const struct rates *rates,
                      const struct problems *problems) {
    const char *next = "read the workbook, sheet Checks first; then send the client's PDF";
    if (rates->shop.invented) {
        next = "doorcost new --rates shop.ini: prices of your own, before a client sees any";
    } else if (problems_count(problems, SEVERITY_WARNING) > 0) {
        next = "see to the warnings; read the workbook; only then send the client's PDF";
    }
    say(page, "%s", "");
    say(page, "Next: %s", next);
    say(page, "More: quote --all, buy, plan, draw, explain; 'doorcost help' tells of each");
}

void brief_print(struct page *page, const struct estimate *base, const struct estimate *options,
                 size_t option_count, const struct problems *problems) {
    print_head(page, base);
    say(page, "%s", "");
    print_figures(page, base, options, option_count);
    page->failed = !print_buy(page, base) || page->failed;
    print_open(page, base, problems);
}
