/* SPDX-License-Identifier: MIT */
/* The head of every report, and the one line of a check. */
#include "report/text/print.h"
#include "report/words/shipped.h"
#include "report/words/show.h"

static void line(struct grid *grid, const char *label, const char *text) {
    if (text != NULL && text[0] != '\0') {
        grid_put(grid, "%s", label);
        grid_put(grid, "%s", text);
    }
}

static const char *length_words(enum length_unit unit) {
    return unit == LENGTH_MM ? "millimeters" : "inches";
}

void head_print(struct page *page, const char *what, const struct estimate *e) {
    static const struct grid_column columns[] = {{NULL, GRID_LEFT, false}, {NULL, GRID_LEFT, true}};
    const struct job *const job = e->job;
    struct grid grid;
    struct pool pool;
    pool_init(&pool);
    say_wrapped(page, what, 0, ": %s", job->title.s);
    grid_init(&grid, columns, 2, 2);
    line(&grid, "number", job->number.s);
    line(&grid, "client", job->client.s);
    line(&grid, "at", job->address.s);
    line(&grid, "measured by", job->measured_by.s);
    line(&grid, "date", job->date.s);
    line(&grid, "valid until", show_valid_until(job).text);
    line(&grid, "ready", show_ready(&pool, e));
    line(&grid, "shop", e->rates->shop.name.s);
    line(&grid, "made", estimate_name(e));
    line(&grid, "agreed", show_agreed(&pool, e));
    grid_put(&grid, "money");
    grid_put(&grid, "%s, sizes in %s", e->rates->shop.currency.s, length_words(job->unit));
    line(&grid, "prices", shipped_example(e) ? SHIPPED_EXAMPLE_WORDS : NULL);
    grid_print(&grid, page);
    grid_clear(&grid);
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

void cautions_print(struct page *page, const struct estimate *e, unsigned papers) {
    struct pool pool;
    pool_init(&pool);
    const struct caution_list list = cautions_needed(e, papers, &pool);
    if (list.count > 0) {
        say(page, "%s", "");
        say(page, "Cautions");
    }
    for (size_t i = 0; i < list.count; i++) {
        say_wrapped(page, "  -", 4, "%s", list.texts[i]);
    }
    page->failed = page->failed || pool_failed(&pool);
    pool_clear(&pool);
}

/* What a list does not show: what stands under `note` goes out, the width of a pair may be of one
 * leaf, and a low front is made otherwise than its style. */
static void unseen_print(struct page *page, const struct job *job, struct list_made made) {
    size_t notes = 0;
    size_t pairs = 0;
    for (size_t i = 0; i < job->row_count; i++) {
        const struct row *const row = &job->rows[i];
        notes += row->note.s != NULL ? 1 : 0;
        pairs += row->leaves.amount == 2 && row->make->whole.size_is.choice == MEASURE_DOOR ? 1 : 0;
    }
    if (pairs > 0) {
        say_wrapped(page, "", 2, "the width of %s is of each leaf, as sizes are of finished doors",
                    show_count(pairs, "pair").text);
    }
    if (made.low_fronts > 0) {
        say_wrapped(page, "", 2,
                    "fronts made as slabs, being low: %lld ('slab below' of their style)",
                    (long long)made.low_fronts);
    }
    if (made.false_pulls > 0) {
        say_wrapped(page, "", 2, "false fronts with a pull: %lld (a fixed one: 0 under 'pulls')",
                    (long long)made.false_pulls);
    }
    if (notes > 0) {
        say_wrapped(page, "", 2,
                    "the client reads %s of the list; a 'remark' is for the shop alone",
                    show_count(notes, "note").text);
    }
}

void check_print(struct page *page, const struct job *job, struct list_made made,
                 const struct problems *problems) {
    say(page, "%s, %s: %s, %s", show_count(job->row_count, "row").text, show_doors(made.doors).text,
        show_count(problems_count(problems, SEVERITY_ERROR), "error").text,
        show_count(problems_count(problems, SEVERITY_WARNING), "warning").text);
    unseen_print(page, job, made);
    accepted_print(page, problems);
}

void accepted_print(struct page *page, const struct problems *problems) {
    const size_t count = problems_count(problems, SEVERITY_ACCEPTED);
    if (count == 0) {
        return;
    }
    say(page, "accepted: %s", show_count(count, "question").text);
    for (size_t i = 0; i < problems->count; i++) {
        const struct problem *const p = &problems->list[i];
        if (p->severity != SEVERITY_ACCEPTED) {
            continue;
        }
        const char *const name = problems_file_name(problems, p->place.file);
        const struct place_words place = problems_place(problems, p->place);
        if (p->more_count == 0) {
            say_wrapped(page, "  -", 4, "%s%s: %s: %s", name, place.text, p->id, p->text);
        } else {
            say_wrapped(page, "  -", 4, "%s%s and %s: %s: %s", name, place.text,
                        show_count(p->more_count, "more line").text, p->id, p->text);
        }
    }
}
