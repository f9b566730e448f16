/* SPDX-License-Identifier: MIT */
/* Every door of the list as it looks, with its sizes.  Rows that look alike share a drawing. */
#include "base/index.h"
#include "base/joined.h"
#include "base/text.h"
#include "model/name.h"
#include "report/doors/door_elevation.h"
#include "report/draw/draw.h"
#include "report/shop/paper.h"
#include "report/words/door_words.h"
#include "report/words/show.h"

#include <stdlib.h>

#define ACROSS  3
#define COLUMN  34.0  /* characters: some 184 points */
#define WIDTH   178.0 /* points of a drawing */
#define HEIGHT  170.0
#define WORDS   27.0 /* for two lines above it */
#define DOTS    2.0
#define TO_96TH (96.0 / 72.0)
/* A workbook with more pictures is slow to open; `doorcost draw` has no such limit. */
#define MOST_DRAWINGS ((size_t)96)

struct drawn {
    struct door_elevation elevation;
    const char *ids; /* of the rows that look like it */
};

#define NOT_DRAWN SIZE_MAX

/* The looks of the doors, dropped when the sheet is made. */
struct looks {
    struct pool pool;
    struct drawn *drawn;
    size_t count;
    struct index index; /* of these */
    size_t *of; /* which of them each door has; NOT_DRAWN: it is seen in another's drawing */
};

static bool same_look(const void *list, size_t number, const void *elevation) {
    return door_elevation_same(&((const struct drawn *)list)[number].elevation, elevation);
}

/* Finds the look of a row among those before it, or adds it. */
static bool add_look(struct looks *looks, const struct paper *paper, size_t row) {
    const struct estimate *const e = paper->base;
    const struct leaf_figures *const leaf = &e->quantities.leaves[row];
    const int32_t hinges = (int32_t)tape_scaled(&e->tape, leaf->hinges, 0);
    struct door_elevation elevation;
    struct pool scratch;
    size_t same = 0;
    bool failed = false;
    if (door_drawn(leaf->door) != leaf->door) {
        looks->of[row] = NOT_DRAWN;
        return true;
    }
    pool_init(&scratch);
    bool held = door_elevation_make(&elevation, &scratch, leaf->door, hinges, e->job->unit);
    if (held) {
        same = index_add(&looks->index, door_elevation_hash(&elevation), same_look, looks->drawn,
                         &elevation, looks->count, &failed);
    }
    pool_clear(&scratch);
    held = held && !failed;
    if (held && same == looks->count) {
        held = door_elevation_make(&looks->drawn[looks->count++].elevation, &looks->pool,
                                   leaf->door, hinges, e->job->unit);
    }
    looks->of[row] = same;
    return held;
}

/* Gathers the rows by their looks. false: out of memory. */
static bool gather(struct looks *looks, const struct paper *paper) {
    const size_t rows = paper->base->quantities.count;
    pool_init(&looks->pool);
    looks->drawn = pool_take(&looks->pool, rows, sizeof *looks->drawn);
    looks->of = pool_take(&looks->pool, rows, sizeof *looks->of);
    bool held = !pool_failed(&looks->pool);
    for (size_t r = 0; held && r < rows; r++) {
        held = add_look(looks, paper, r);
    }
    for (size_t i = 0; held && i < looks->count && i < MOST_DRAWINGS; i++) {
        struct joined ids = {0};
        for (size_t r = 0; r < rows; r++) {
            if (looks->of[r] == i) {
                joined_add(&ids, ids.size == 0 ? "" : ", ");
                joined_add(&ids, text_or_empty(paper->base->quantities.leaves[r].door->row->id.s));
            }
        }
        looks->drawn[i].ids = joined_take(&ids, &looks->pool);
        held = looks->drawn[i].ids != NULL;
    }
    index_clear(&looks->index);
    return held;
}

/* What is seen of a door that its lines don't tell: the material of its panel or slab. */
static const char *panel_words(const struct paper *paper, const struct door *door) {
    if (door->bought_in) {
        return "bought in";
    }
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if (part_is_field(part->kind) && part->material_kind != MATERIAL_GLASS) {
            const char *const words =
                pool_format(&paper->book->pool, "%s %s", part_full_name(part),
                            material_name(paper->base->rates, part->material_kind, part->material));
            return words == NULL ? "" : words;
        }
    }
    return "";
}

static bool put_drawing(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                        const struct drawn *d, struct image *image) {
    struct book *const book = paper->book;
    const struct door *const door = d->elevation.door;
    const char *const size = show_leaf_sizes(&book->pool, door, d->elevation.drawing.unit);
    const char *const alt =
        pool_format(&book->pool, "Elevation of %s: %s %s, %s, with dimensions", d->ids,
                    show_opening(&book->pool, door), size == NULL ? "" : size, show_style(door));
    unsigned char *png = NULL;
    size_t bytes = 0;
    if (alt == NULL ||
        !draw_elevation_png(&d->elevation.drawing, image, DETAIL_FULL, &png, &bytes)) {
        return false;
    }
    const char *const panel = panel_words(paper, door);
    book_format(book, sheet, row, column, LOOK_WRAP, "%s: %s, %s; %s%s%s", d->ids,
                show_opening(&book->pool, door), show_style(door), size,
                panel[0] == '\0' ? "" : ", ", panel);
    book_picture(book, sheet, row, column, png, bytes, TO_96TH / DOTS, WORDS, alt);
    free(png);
    return true;
}

static void put_looks(const struct paper *paper, uint16_t sheet, uint32_t row,
                      const struct looks *looks) {
    struct book *const book = paper->book;
    struct image image;
    image_open(&image, WIDTH, HEIGHT, DOTS);
    for (size_t i = 0; !book->failed && i < looks->count && i < MOST_DRAWINGS; i++) {
        if (i > 0 && i % ACROSS == 0) {
            row++;
        }
        book_height(book, sheet, row, WORDS + HEIGHT + 8);
        book->failed =
            stop_asked(book->stop) ||
            !put_drawing(paper, sheet, row, (uint16_t)(i % ACROSS), &looks->drawn[i], &image) ||
            book->failed;
    }
    image_close(&image);
    if (looks->count > MOST_DRAWINGS) {
        book_format(book, sheet, row + 2, 0, LOOK_NOTE,
                    "%zu more are not drawn here: 'doorcost draw' draws every row.",
                    looks->count - MOST_DRAWINGS);
    }
}

void sheet_elevations(const struct paper *paper, uint16_t sheet) {
    struct book *const book = paper->book;
    const uint32_t row = paper_title(paper, sheet, 0,
                                     "Finished sizes, seen from the front; hinge marks show side "
                                     "and number, not their place; dashed lines meet at the hinged "
                                     "edge.");
    for (uint16_t c = 0; c < ACROSS; c++) {
        book_width(book, sheet, c, COLUMN);
    }
    struct looks looks = {0};
    if (gather(&looks, paper)) {
        put_looks(paper, sheet, row, &looks);
    } else {
        book->failed = true;
    }
    pool_clear(&looks.pool);
}
