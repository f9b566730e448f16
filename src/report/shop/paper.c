/* SPDX-License-Identifier: MIT */
#include "report/shop/paper.h"

#include "report/words/show.h"

#include <string.h>

const char *paper_file(const struct paper *paper, const char *name) {
    const char *const job = paper->base->job->path;
    const char *const slash = strrchr(job, '/');
    const size_t folder = slash == NULL ? 0 : (size_t)(slash - job) + 1;
    return name + (strncmp(name, job, folder) == 0 ? folder : 0);
}

const char *paper_unit_of(const struct estimate *e, fig figure) {
    const bool signs = tape_unit(&e->tape, figure) == UNIT_PERCENT; /* the sign is in the cell */
    return signs ? "" : show_unit_name(e, figure);
}

const char *paper_unit(const struct paper *paper, fig figure) {
    return paper_unit_of(paper->base, figure);
}

void paper_lines(const struct paper *paper, struct paper_list *list,
                 const struct field_table *table, unsigned views, const void *thing) {
    struct book *const book = paper->book;
    for (size_t i = 0; i < table->count; i++) {
        const struct field *const field = &table->fields[i];
        const fig figure = field_figure(field, thing);
        const bool total = (field->views & FIELD_TOTAL) != 0;
        if ((field->views & views) == 0 || fig_none(figure)) {
            continue;
        }
        book_text(book, list->sheet, list->row, 0, total ? LOOK_LABEL : LOOK_PLAIN,
                  field_label(field));
        book_figure(book, list->sheet, list->row, list->figure, total ? LOOK_TOTAL : LOOK_PLAIN,
                    figure);
        book_text(book, list->sheet, list->row, (uint16_t)(list->figure + 1), LOOK_UNIT,
                  paper_unit(paper, figure));
        book_text(book, list->sheet, list->row++, list->note, LOOK_NOTE, field->note);
    }
}

uint16_t paper_columns(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                       enum look look, const struct field_table *table, unsigned views) {
    for (size_t i = 0; i < table->count; i++) {
        if ((table->fields[i].views & views) != 0) {
            book_text(paper->book, sheet, row, column++, look, field_label(&table->fields[i]));
        }
    }
    return column;
}

void paper_cells(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 const struct field_table *table, unsigned views, const void *thing) {
    for (size_t i = 0; i < table->count; i++) {
        const struct field *const field = &table->fields[i];
        if ((field->views & views) != 0) {
            book_figure(paper->book, sheet, row, column++,
                        (field->views & FIELD_TOTAL) != 0 ? LOOK_LABEL : LOOK_PLAIN,
                        field_figure(field, thing));
        }
    }
}

void paper_total(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 const struct field_table *table, size_t offset, fig figure) {
    const size_t place = field_place(table, FIELD_SHEET, offset);
    book_figure(paper->book, sheet, row, (uint16_t)(column + place), LOOK_TOTAL, figure);
}

uint32_t paper_title(const struct paper *paper, uint16_t sheet, uint16_t column, const char *note) {
    struct book *const book = paper->book;
    const struct paper_tab *const tab = paper->tabs[sheet];
    book_link(book, sheet, 0, 0, 0);
    book_text(book, sheet, PAPER_TITLE_ROW, column, LOOK_TITLE, tab->name);
    book_format(book, sheet, PAPER_TITLE_ROW + 1, column, LOOK_NOTE, "%s.%s%s", tab->about,
                note == NULL ? "" : " ", note == NULL ? "" : note);
    book_headings(book, sheet, PAPER_TITLE_ROW, PAPER_TITLE_ROW, column);
    return PAPER_FIRST_ROW;
}

void paper_headings(const struct paper *paper, uint16_t sheet, uint32_t row,
                    uint16_t freeze_column) {
    book_headings(paper->book, sheet, PAPER_TITLE_ROW, row, freeze_column);
}

void paper_heads(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 enum look look, const char *const *heads, size_t count) {
    for (size_t i = 0; i < count; i++) {
        book_text(paper->book, sheet, row, (uint16_t)(column + i), look, heads[i]);
    }
}

uint32_t paper_table(const struct paper *paper, uint16_t sheet, uint32_t row,
                     const char *const *heads, const double *widths, size_t count) {
    for (size_t i = 0; i < count; i++) {
        book_width(paper->book, sheet, (uint16_t)i, widths[i]);
    }
    paper_heads(paper, sheet, row, 0, LOOK_HEAD, heads, count);
    paper_headings(paper, sheet, row, 0);
    return row + 1;
}

#define KEPT 8 /* cautions that are not parted */

uint32_t paper_cautions(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t last,
                        unsigned papers) {
    const struct caution_list list = cautions_needed(paper->base, papers, &paper->book->pool);
    if (list.count > 0) {
        /* a long list is parted, else it takes a page of its own */
        book_keep(paper->book, sheet, row, row + (uint32_t)(list.count > KEPT ? 3 : list.count));
        book_text(paper->book, sheet, row++, 0, LOOK_SECTION, "Cautions");
    }
    for (size_t i = 0; i < list.count; i++) {
        book_span(paper->book, sheet, row++, 0, last, LOOK_WRAP, list.texts[i]);
    }
    return row;
}

const char *paper_lengths(const struct paper *paper) {
    return paper->base->units.lengths == LENGTH_MM ? "mm" : "inches";
}

const char *waste_words(enum waste_as as) {
    return as == WASTE_ADDED ? "of net, added to it" : "of what is bought, lost";
}

struct book_facts paper_facts(struct pool *pool, const struct estimate *base) {
    const struct job *const job = base->job;
    const struct text *const name = &base->rates->shop.name;
    const char *const shop = name->s == NULL ? "" : name->s;
    return (struct book_facts){
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
