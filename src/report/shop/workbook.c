/* SPDX-License-Identifier: MIT */
#include "report/shop/workbook.h"

#include "report/shop/paper.h"
#include "report/words/show.h"
#include "report/xlsx/book_write.h"

#include <string.h>

/* The tabs, from what the client sees to the last detail. Workings come last: they take in what has
 * no home yet. */
static void (*const sheets[])(struct paper *) = {
    sheet_quote,      sheet_doors,  sheet_surfaces, sheet_takes,   sheet_parts,    sheet_panels,
    sheet_lumber,     sheet_sheets, sheet_plans,    sheet_finish,  sheet_hardware, sheet_labor,
    sheet_operations, sheet_costs,  sheet_prices,   sheet_compare, sheet_charts,   sheet_elevations,
    sheet_checks,     sheet_rates,  sheet_workings,
};

static bool write_file(struct book *book, const struct estimate *base, const char *name) {
    const struct job *const job = base->job;
    const char *const shop = base->rates->shop.name.s == NULL ? "" : base->rates->shop.name.s;
    const struct book_facts facts = {
        .title = pool_text(&book->pool, job->title.s, strlen(job->title.s)),
        .subject = pool_format(&book->pool, "quote %s of %s",
                               job->number.s == NULL ? "" : job->number.s, job->date.s),
        .author = pool_text(&book->pool, shop, strlen(shop)),
        .footer = book_footer(&book->pool, job->title.s),
        .year = job->year,
        .month = job->month,
        .day = job->day,
        .letter = show_on_letter(base),
    };
    return !book_failed(book) && book_write(book, &facts, name);
}

bool workbook_write(const char *path, const struct estimate *base, const struct estimate *options,
                    size_t option_count, const struct problems *problems) {
    struct book book;
    book_init(&book, &base->tape);
    book.protect = true;
    struct paper paper = {.book = &book,
                          .base = base,
                          .options = options,
                          .option_count = option_count,
                          .problems = problems};
    for (size_t i = 0; i < sizeof sheets / sizeof *sheets && !book_failed(&book); i++) {
        sheets[i](&paper);
    }
    const bool done = !book_failed(&book) && write_file(&book, base, path);
    book_clear(&book);
    return done;
}
