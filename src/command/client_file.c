/* SPDX-License-Identifier: MIT */
#include "command/client_file.h"

#include "base/text.h"
#include "report/client/client_book.h"
#include "report/client/client_pdf.h"

bool client_file_write(struct offer *offer, const struct output *file, FILE *err) {
    const struct stop stop = outputs_stop(file);
    const char *lacking = NULL;
    const bool done = file->kind == OUTPUT_WORKBOOK
                          ? client_book_write(offer, file->name, &stop)
                          : client_pdf_write(offer, file->name, &stop, &offer->pool, &lacking);
    if (done && lacking != NULL) {
        text_print(err, "doorcost: '%s' has letters that no typeface here has the shape of\n",
                   file->path);
    }
    return done;
}
