/* SPDX-License-Identifier: MIT */
#include "report/draw/pdf.h"

#include <cairo-pdf.h>
#include <stdio.h>

#define LETTER_WIDTH  612.0
#define LETTER_HEIGHT 792.0
#define A4_WIDTH      (210.0 * 72 / 25.4)
#define A4_HEIGHT     (297.0 * 72 / 25.4)

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
    *pdf = (struct pdf){.width = facts->letter ? LETTER_WIDTH : A4_WIDTH,
                        .height = facts->letter ? LETTER_HEIGHT : A4_HEIGHT};
    pdf->nowhere = path == NULL;
    const bool open = pdf->nowhere || sink_open(&pdf->sink, path);
    pdf->surface = cairo_pdf_surface_create_for_stream(pdf->nowhere ? NULL : sink_take, &pdf->sink,
                                                       pdf->width, pdf->height);
    cairo_pdf_surface_restrict_to_version(pdf->surface, CAIRO_PDF_VERSION_1_5);
    set_facts(pdf->surface, facts);
    pdf->cr = cairo_create(pdf->surface);
    return open && cairo_status(pdf->cr) == CAIRO_STATUS_SUCCESS;
}

void pdf_page(struct pdf *pdf) {
    cairo_show_page(pdf->cr);
}

bool pdf_close(struct pdf *pdf) {
    bool done = cairo_status(pdf->cr) == CAIRO_STATUS_SUCCESS;
    cairo_destroy(pdf->cr);
    cairo_surface_finish(pdf->surface);
    done = done && cairo_surface_status(pdf->surface) == CAIRO_STATUS_SUCCESS;
    cairo_surface_destroy(pdf->surface);
    done = (pdf->nowhere || sink_close(&pdf->sink)) && done;
    *pdf = (struct pdf){0};
    return done;
}
