/* SPDX-License-Identifier: MIT */
#include "report/draw/pdf.h"

#include "report/draw/tag.h"
#include "report/type/text_style.h"

#include <cairo-pdf.h>
#include <stdio.h>
#include <string.h>

#define LETTER_WIDTH  612.0
#define LETTER_HEIGHT 792.0
#define A4_WIDTH      (210.0 * 72 / 25.4)
#define A4_HEIGHT     (297.0 * 72 / 25.4)

/* --- language --- */

/* Cairo has no call for the language of a document.  In the versions whose files end in a plain
 * table of places, the catalog is the last object before that table, so a line more in it moves
 * nothing but the table, whose place is told once, behind it.  Later versions may do otherwise:
 * there the language is left out. ISO 32000-1, 7.5.4, 7.5.5, 14.9.2. */
#define CATALOG  " 0 obj\n<< /Type /Catalog\n"
#define LANGUAGE "   /Lang (en-US)\n"
#define TABLE_AT "startxref\n"
/* What the library prints at once comes in one piece, no longer than this. */
#define PIECE 512U

/* Where a piece goes on behind a word; 0: the word is not in it. */
static unsigned int behind(const unsigned char *bytes, unsigned int size, const char *word) {
    const unsigned int length = (unsigned int)strlen(word);
    for (unsigned int at = 0; size <= PIECE && at + length <= size; at++) {
        if (memcmp(bytes + at, word, length) == 0) {
            return at + length;
        }
    }
    return 0;
}

/* Two pieces, one behind the other. */
static cairo_status_t take_both(struct pdf *pdf, const unsigned char *bytes, unsigned int size,
                                const unsigned char *more, unsigned int more_size) {
    const cairo_status_t status = sink_take(&pdf->sink, bytes, size);
    return status != CAIRO_STATUS_SUCCESS ? status : sink_take(&pdf->sink, more, more_size);
}

/* Takes the digits of the table's place, which may come in several pieces, and puts the true one
 * before what follows them. */
static cairo_status_t take_place(struct pdf *pdf, const unsigned char *bytes, unsigned int size) {
    unsigned int at = 0;
    for (; at < size && bytes[at] >= '0' && bytes[at] <= '9'; at++) {
        pdf->place = pdf->place * 10 + (bytes[at] - '0');
    }
    if (at == size) {
        return CAIRO_STATUS_SUCCESS;
    }
    char text[32];
    (void)snprintf(text, sizeof text, "%ld", pdf->place + (long)strlen(LANGUAGE));
    pdf->told = TOLD_ALL;
    return take_both(pdf, (const unsigned char *)text, (unsigned int)strlen(text), bytes + at,
                     size - at);
}

static cairo_status_t take(void *closure, const unsigned char *bytes, unsigned int size) {
    struct pdf *const pdf = closure;
    unsigned int at = 0;
    switch (pdf->told) {
    case TOLD_NOTHING:
        at = behind(bytes, size, CATALOG);
        if (at > 0 && cairo_version() < CAIRO_VERSION_ENCODE(1, 17, 0)) {
            const cairo_status_t begun = sink_take(&pdf->sink, bytes, at);
            pdf->told = TOLD_LANGUAGE;
            return begun != CAIRO_STATUS_SUCCESS
                       ? begun
                       : take_both(pdf, (const unsigned char *)LANGUAGE,
                                   (unsigned int)strlen(LANGUAGE), bytes + at, size - at);
        }
        break;
    case TOLD_LANGUAGE:
        at = behind(bytes, size, TABLE_AT);
        if (at > 0) {
            const cairo_status_t begun = sink_take(&pdf->sink, bytes, at);
            pdf->told = TOLD_TABLE;
            return begun != CAIRO_STATUS_SUCCESS ? begun : take_place(pdf, bytes + at, size - at);
        }
        break;
    case TOLD_TABLE:
        return take_place(pdf, bytes, size);
    case TOLD_ALL:
        break;
    }
    return sink_take(&pdf->sink, bytes, size);
}

/* --- a file --- */

static void set_facts(cairo_surface_t *surface, const struct pdf_facts *facts) {
    char date[32];
    (void)snprintf(date, sizeof date, "%04d-%02d-%02dT12:00:00Z", (int)facts->year,
                   (int)facts->month, (int)facts->day);
    const struct {
        cairo_pdf_metadata_t what;
        const char *text;
    } rows[] = {
        {CAIRO_PDF_METADATA_TITLE, facts->title},     {CAIRO_PDF_METADATA_AUTHOR, facts->author},
        {CAIRO_PDF_METADATA_SUBJECT, facts->subject}, {CAIRO_PDF_METADATA_CREATOR, "doorcost"},
        {CAIRO_PDF_METADATA_CREATE_DATE, date},       {CAIRO_PDF_METADATA_MOD_DATE, date},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (rows[i].text != NULL && rows[i].text[0] != '\0') {
            cairo_pdf_surface_set_metadata(surface, rows[i].what, rows[i].text);
        }
    }
}

bool pdf_open(struct pdf *pdf, const char *path, const struct pdf_facts *facts) {
    const double narrow = facts->letter ? LETTER_WIDTH : A4_WIDTH;
    const double long_side = facts->letter ? LETTER_HEIGHT : A4_HEIGHT;
    *pdf = (struct pdf){.width = facts->across ? long_side : narrow,
                        .height = facts->across ? narrow : long_side};
    pdf->nowhere = path == NULL;
    const bool open = pdf->nowhere || sink_open(&pdf->sink, path);
    if (pdf->nowhere) {
        pdf->surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1);
    } else {
        pdf->surface = cairo_pdf_surface_create_for_stream(take, pdf, pdf->width, pdf->height);
        cairo_pdf_surface_restrict_to_version(pdf->surface, CAIRO_PDF_VERSION_1_5);
        set_facts(pdf->surface, facts);
    }
    pdf->cr = cairo_create(pdf->surface);
    if (pdf->nowhere) {
        cairo_clip(pdf->cr); /* to no path: nothing is drawn, and hardly any work done for it */
    }
    tag_begin(pdf->cr, "Document");
    return open && cairo_status(pdf->cr) == CAIRO_STATUS_SUCCESS;
}

void pdf_page(struct pdf *pdf) {
    cairo_show_page(pdf->cr);
}

bool pdf_close(struct pdf *pdf, struct pool *pool, const char **lacking) {
    tag_end(pdf->cr, "Document");
    bool done = cairo_status(pdf->cr) == CAIRO_STATUS_SUCCESS;
    if (lacking != NULL) {
        const char *const text = text_lacking(pdf->cr);
        *lacking = text == NULL ? NULL : pool_words(pool, "%s", text);
    }
    cairo_destroy(pdf->cr);
    cairo_surface_finish(pdf->surface);
    done = done && cairo_surface_status(pdf->surface) == CAIRO_STATUS_SUCCESS;
    cairo_surface_destroy(pdf->surface);
    done = (pdf->nowhere || sink_close(&pdf->sink)) && done;
    *pdf = (struct pdf){0};
    return done;
}
