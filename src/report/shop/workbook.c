/* SPDX-License-Identifier: MIT */
#include "report/shop/workbook.h"

#include "report/shop/paper.h"
#include "report/words/show.h"
#include "report/xlsx/book_write.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

/* The tabs, from what the client sees to the last detail. Workings come last: they take in what has
 * no home yet. */
static void (*const sheets[])(struct paper *) = {
    sheet_job,      sheet_quote,          sheet_buy,        sheet_doors,
    sheet_surfaces, sheet_door_materials, sheet_parts,      sheet_panels,
    sheet_lumber,   sheet_sheets,         sheet_plans,      sheet_finish,
    sheet_hardware, sheet_labor,          sheet_operations, sheet_costs,
    sheet_prices,   sheet_compare,        sheet_charts,     sheet_elevations,
    sheet_checks,   sheet_rates,          sheet_job_fill,   sheet_workings,
};

struct shop_book {
    struct book book;
    struct book_facts facts;
};

static void set_facts(struct shop_book *workbook, const struct estimate *base) {
    struct pool *const pool = &workbook->book.pool;
    const struct job *const job = base->job;
    const struct text *const name = &base->rates->shop.name;
    const char *const shop = name->s == NULL ? "" : name->s;
    workbook->facts = (struct book_facts){
        .title = pool_text(pool, job->title.s, strlen(job->title.s)),
        .subject = pool_format(pool, "quote %s of %s", job->number.s == NULL ? "" : job->number.s,
                               job->date.s),
        .author = pool_text(pool, shop, strlen(shop)),
        .footer = book_footer(pool, job->title.s),
        .year = job->year,
        .month = job->month,
        .day = job->day,
        .letter = show_on_letter(base),
    };
}

struct shop_book *shop_book_new(const struct estimate *base, const struct estimate *options,
                                size_t option_count, const struct problems *problems,
                                const struct stop *stop) {
    struct shop_book *const workbook = calloc(1, sizeof *workbook);
    if (workbook == NULL) {
        return NULL;
    }
    struct book *const book = &workbook->book;
    book_init(book, &base->tape);
    set_facts(workbook, base);
    book->protect = true;
    book->stop = stop;
    struct paper paper = {.book = book,
                          .base = base,
                          .options = options,
                          .option_count = option_count,
                          .problems = problems};
    if (shipped_example(base)) {
        paper.shipped = shipped_of(base, &book->pool);
    }
    for (size_t i = 0; i < sizeof sheets / sizeof *sheets && !book_failed(book); i++) {
        sheets[i](&paper);
        book->failed = book->failed || stop_asked(stop);
    }
    if (book_failed(book)) {
        shop_book_free(workbook);
        return NULL;
    }
    return workbook;
}

fig shop_book_figure(const struct shop_book *workbook, const char *cell) {
    const struct book *const book = &workbook->book;
    const char *const mark = strrchr(cell, '!');
    const size_t size = mark == NULL ? 0 : (size_t)(mark - cell);
    for (uint16_t s = 0; mark != NULL && s < book->sheet_count; s++) {
        const char *const name = book->sheets[s].name;
        if (strlen(name) == size && strncasecmp(name, cell, size) == 0) {
            return book_figure_at(book, s, mark + 1);
        }
    }
    return (fig){0};
}

void shop_book_free(struct shop_book *workbook) {
    if (workbook != NULL) {
        book_clear(&workbook->book);
        free(workbook);
    }
}

bool shop_book_write(struct shop_book *workbook, const char *path) {
    return book_write(&workbook->book, &workbook->facts, path);
}
