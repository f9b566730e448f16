/* SPDX-License-Identifier: MIT */
#include "report/check_cell.h"

#include <stdio.h>
#include <xlsxwriter.h>

/* The least need that has the same choice, at 4 decimals as needs are kept. */
static int64_t holds_from(const struct tape *tape, const struct product *product) {
    struct container_size sizes[CONTAINERS_MOST_SIZES];
    for (size_t i = 0; i < product->size_count; i++) {
        sizes[i] = (struct container_size){.volume = tape_scaled(tape, product->volumes[i], 6),
                                           .price = tape_scaled(tape, product->prices[i], 6)};
    }
    return containers_hold_from(tape_scaled(tape, product->need, 6), 100, sizes,
                                product->size_count) /
           100;
}

void check_containers(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t need,
                      uint16_t price, const struct product *product) {
    const struct tape *const tape = &paper->base->tape;
    char text[1024];
    char cell[LXW_MAX_CELL_NAME_LENGTH];
    char least[32];
    char most[32];
    char value[32];
    size_t used = 0;
    lxw_rowcol_to_cell(cell, row, need);
    (void)figure_text(holds_from(tape, product), 4, least, sizeof least);
    (void)tape_text(tape, product->bought, most, sizeof most);
    used += (size_t)snprintf(text, sizeof text, "IF(AND(%s>=%s,%s<=%s", cell, least, cell, most);
    for (size_t i = 0; i < product->size_count; i++) {
        lxw_rowcol_to_cell(cell, row + (uint32_t)i, price);
        used += (size_t)snprintf(text + used, sizeof text - used, ",%s=%s", cell,
                                 tape_text(tape, product->prices[i], value, sizeof value));
    }
    (void)snprintf(text + used, sizeof text - used, "),\"ok\",\"run again\")");
    book_check(paper->book, sheet, row, CHECK_COLUMN, LOOK_LABEL, text, "ok");
}

void check_all(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column) {
    char text[160];
    if (paper->base->finish.product_count == 0) {
        return;
    }
    (void)snprintf(text, sizeof text,
                   "IF(COUNTIF(%s!K1:K%d,\"run again\")>0,\"figures were changed: run again\",\"as "
                   "the program made it\")",
                   CHECK_SHEET, CHECK_ROWS);
    book_check(paper->book, sheet, row, column, LOOK_NOTE, text, "as the program made it");
}
