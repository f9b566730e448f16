/* SPDX-License-Identifier: MIT */
/* What is told of labels that were laid out. */
#include "report/text/print.h"
#include "report/words/show.h"

void labels_print(struct page *page, const struct estimate *e, struct labels_told told) {
    const struct label_sheet *const s = told.sheet;
    const enum length_unit unit = e->rates->shop.unit;
    say_wrapped(page, "", 0, "%s, %s, on %s of %lld x %lld, each %s %s, %s paper.",
                show_count(told.count, "label").text,
                told.doors ? "one a door or front" : "one for each piece of the parts",
                show_count(told.sheets, "sheet").text, (long long)s->columns.amount,
                (long long)s->rows.amount, show_size(s->width.amount, s->height.amount, unit).text,
                unit == LENGTH_MM ? "mm" : "in",
                label_on_letter(s, &e->rates->shop) ? "letter" : "A4");
    if (told.next > 0) {
        say_wrapped(page, "", 0, "The last sheet is free from label %zu on: --from %zu uses it up.",
                    told.next, told.next);
    }
    say_wrapped(page, "", 0, "%s",
                "Print at actual size, not fitted to the page; try it on plain paper and hold that "
                "against a sheet.");
}
