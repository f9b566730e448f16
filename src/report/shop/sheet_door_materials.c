/* SPDX-License-Identifier: MIT */
/* What one leaf takes of each material, finish and piece of hardware: a column a thing, so that its
 * sum over the job is one range. */
#include "model/name.h"
#include "report/shop/paper.h"
#include "report/words/show.h"

#define FIRST_ROW (PAPER_FIRST_ROW + 1)

static void head(const struct paper *paper, uint16_t sheet, uint16_t column, const char *name,
                 const char *what) {
    book_format(paper->book, sheet, FIRST_ROW - 1, column, LOOK_TALL, "%s, %s", name, what);
}

static const struct material_use *use_of(const struct leaf_figures *leaf,
                                         enum material_kind material_kind, int32_t material) {
    for (size_t u = 0; u < leaf->use_count; u++) {
        if (leaf->uses[u].material_kind == material_kind && leaf->uses[u].material == material) {
            return &leaf->uses[u];
        }
    }
    return NULL;
}

/* A column of a figure of struct material_use. */
static void material_column(const struct paper *paper, uint16_t sheet, uint16_t column,
                            enum material_kind material_kind, int32_t material,
                            const struct field *field) {
    const struct quantities *const q = &paper->base->quantities;
    head(paper, sheet, column, material_name(paper->base->rates, material_kind, material),
         field->label);
    for (size_t r = 0; r < q->count; r++) {
        const struct material_use *const use = use_of(&q->leaves[r], material_kind, material);
        if (use != NULL) {
            book_set_home(paper->book, sheet, FIRST_ROW + (uint32_t)r, column, LOOK_PLAIN,
                          field_figure(field, use));
        }
    }
}

static const struct field net = {.label = "net", .offset = offsetof(struct material_use, net)};
static const struct field rough = {.label = "rough",
                                   .offset = offsetof(struct material_use, rough)};
static const struct field area = {.label = "area", .offset = offsetof(struct material_use, net)};
static const struct field charged = {.label = "area charged",
                                     .offset = offsetof(struct material_use, net)};
static const struct field cost = {.label = "cost", .offset = offsetof(struct material_use, cost)};

static uint16_t material_columns(const struct paper *paper, uint16_t sheet, uint16_t column) {
    const struct estimate *const e = paper->base;
    for (size_t i = 0; i < e->lumber.count; i++) {
        const int32_t material = e->lumber.buys[i].material;
        material_column(paper, sheet, column++, MATERIAL_LUMBER, material, &net);
        material_column(paper, sheet, column++, MATERIAL_LUMBER, material, &rough);
    }
    for (size_t i = 0; i < e->sheets.count; i++) {
        material_column(paper, sheet, column++, MATERIAL_SHEET, e->sheets.buys[i].material, &area);
    }
    for (size_t i = 0; i < e->glass.count; i++) {
        const int32_t material = e->glass.buys[i].material;
        material_column(paper, sheet, column++, MATERIAL_GLASS, material, &charged);
        material_column(paper, sheet, column++, MATERIAL_GLASS, material, &cost);
    }
    return column;
}

static uint16_t other_columns(const struct paper *paper, uint16_t sheet, uint16_t column) {
    const struct estimate *const e = paper->base;
    const struct quantities *const q = &e->quantities;
    for (size_t i = 0; i < e->banding.count; i++, column++) {
        head(paper, sheet, column, e->rates->bandings[e->banding.buys[i].banding].name.s, "run");
        for (size_t r = 0; r < q->count; r++) {
            if (q->leaves[r].banding == e->banding.buys[i].banding) {
                book_set_home(paper->book, sheet, FIRST_ROW + (uint32_t)r, column, LOOK_PLAIN,
                              q->leaves[r].banded);
            }
        }
    }
    for (size_t i = 0; i < e->hardware.count; i++, column++) {
        head(paper, sheet, column, e->rates->hardware[e->hardware.buys[i].hardware].name.s,
             "pieces");
        for (size_t r = 0; r < q->count; r++) {
            book_set_home(paper->book, sheet, FIRST_ROW + (uint32_t)r, column, LOOK_PLAIN,
                          hardware_on_leaf(&e->hardware.buys[i], &q->leaves[r]));
        }
    }
    for (size_t b = 0; b < e->finish.batch_count; b++, column++) {
        const struct batch *const batch = &e->finish.batches[b];
        const char *const color = show_batch_color(e, batch);
        head(paper, sheet, column, e->rates->finishes[batch->finish].name.s,
             color[0] == '\0' ? "sprayed" : color);
        for (size_t i = 0; i < batch->row_count; i++) {
            const size_t r = e->finish.rows[batch->first_row + i];
            book_set_home(paper->book, sheet, FIRST_ROW + (uint32_t)r, column, LOOK_PLAIN,
                          q->leaves[r].sprayed);
        }
    }
    return column;
}

void sheet_door_materials(const struct paper *paper, uint16_t sheet) {
    struct book *const book = paper->book;
    const struct quantities *const q = &paper->base->quantities;
    const struct units *const m = &paper->base->units;
    /* right of the column that is printed on every page */
    (void)paper_title(
        paper, sheet, 1,
        pool_words(&book->pool,
                   "Lumber in the unit it is sold by, areas in %s, runs in %s, pieces, money.",
                   unit_name(m->area), unit_name(m->run)));
    book_text(book, sheet, FIRST_ROW - 1, 0, LOOK_HEAD, "id");
    book_text(book, sheet, FIRST_ROW - 1, 1, LOOK_TALL, "doors in all");
    paper_headings(paper, sheet, FIRST_ROW - 1, 1);
    for (size_t r = 0; r < q->count; r++) {
        book_text(book, sheet, FIRST_ROW + (uint32_t)r, 0, LOOK_LABEL, q->leaves[r].door->name);
        book_mention(book, sheet, FIRST_ROW + (uint32_t)r, 1, LOOK_PLAIN, q->leaves[r].pieces);
    }
    (void)other_columns(paper, sheet, material_columns(paper, sheet, 2));
}
