/* SPDX-License-Identifier: MIT */
#include "report/csv/csv_rack.h"

#include "base/text.h"
#include "model/name.h"
#include "report/csv/csv.h"
#include "report/words/show.h"

static void put_side(struct csv *csv, const struct value *side, enum length_unit unit) {
    char text[32];
    csv_put(csv, side->set ? length_show(side->amount, unit, text, sizeof text) : "");
}

/* `12`, `0.25 gal`: without zeros behind. */
static void put_left(struct csv *csv, const struct value *left) {
    int64_t amount = left->amount;
    uint8_t decimals = left->decimals;
    char text[64];
    for (; decimals > 0 && amount % 10 == 0; decimals--) {
        amount /= 10;
    }
    const bool volume = left->unit == UNIT_GAL || left->unit == UNIT_L;
    (void)snprintf(text, sizeof text, "%.32s%s%s", show_number(amount, decimals).text,
                   volume ? " " : "", volume ? unit_name((enum unit)left->unit) : "");
    csv_put(csv, text);
}

void csv_rack(FILE *file, const struct rack *rack, const struct rates *rates) {
    static const char *const heads[] = {"what", "color", "thickness", "width", "length",
                                        "sawn", "left",  "worth",     "note"};
    struct csv csv = {.out = file};
    for (size_t i = 0; i < sizeof heads / sizeof *heads; i++) {
        csv_put(&csv, heads[i]);
    }
    csv_end(&csv);
    for (size_t i = 0; i < rack->count; i++) {
        const struct rack_item *const item = &rack->items[i];
        csv_put(&csv, text_or_empty(item->what.s));
        csv_put(&csv, text_or_empty(item->color.s));
        csv_put(&csv, text_or_empty(item->thickness_text.s));
        put_side(&csv, &item->width, rates->shop.unit);
        put_side(&csv, &item->length, rates->shop.unit);
        csv_put(&csv, item->kind == NAME_LUMBER && item->sawn ? "yes" : "");
        put_left(&csv, &item->left);
        csv_put(&csv,
                item->worth.set ? show_number(item->worth.amount, item->worth.decimals).text : "");
        csv_put(&csv, text_or_empty(item->note.s));
        csv_end(&csv);
    }
}
