/* SPDX-License-Identifier: MIT */
/* Every door of the list as it looks, with its sizes.  Rows that look alike share a drawing. */
#include "model/name.h"
#include "report/doors/door_elevation.h"
#include "report/draw/draw.h"
#include "report/shop/paper.h"
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

/* Gathers the rows by their looks; *count: how many there are. NULL: memory is out. */
static struct drawn *gather(const struct paper *paper, size_t *count) {
    const struct estimate *const e = paper->base;
    struct pool *const pool = &paper->book->pool;
    struct drawn *const drawn = pool_take(pool, e->quantities.count, sizeof *drawn);
    *count = 0;
    for (size_t r = 0; drawn != NULL && r < e->quantities.count; r++) {
        const struct leaf_figures *const leaf = &e->quantities.leaves[r];
        struct drawn *const next = &drawn[*count];
        size_t same = 0;
        if (!door_elevation_make(&next->elevation, pool, leaf->door,
                                 (int32_t)tape_scaled(&e->tape, leaf->hinges, 0), e->job->unit)) {
            return NULL;
        }
        while (same < *count && !door_elevation_same(&drawn[same].elevation, &next->elevation)) {
            same++;
        }
        if (same < *count) {
            drawn[same].ids =
                pool_format(pool, "%s, %s", drawn[same].ids == NULL ? "" : drawn[same].ids,
                            leaf->door->row->id.s);
        } else {
            next->ids = leaf->door->row->id.s;
            (*count)++;
        }
    }
    return drawn;
}

/* What is seen of a door that its lines don't tell: the material of its panel or slab. */
static const char *panel_words(const struct paper *paper, const struct door *door) {
    if (door->bought_in) {
        return "bought in";
    }
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if (!part_is_frame(part->kind) && part->material_kind != MATERIAL_GLASS) {
            const char *const words =
                pool_format(&paper->book->pool, "%s %s", part_kind_name(part->kind),
                            material_name(paper->base->rates, part->material_kind, part->material));
            return words == NULL ? "" : words;
        }
    }
    return "";
}

static bool put_drawing(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                        const struct drawn *d) {
    struct book *const book = paper->book;
    const struct door *const door = d->elevation.door;
    const char *const size = pool_format(
        &book->pool, "%s", show_size(door->width, door->height, d->elevation.drawing.unit).text);
    const char *const alt = pool_format(&book->pool, "Elevation of %s: %s %s, %s, with dimensions",
                                        d->ids, show_use((enum use)door->row->use.choice),
                                        size == NULL ? "" : size, show_style(door));
    unsigned char *png = NULL;
    size_t bytes = 0;
    if (alt == NULL || !draw_elevation_png(&d->elevation.drawing, WIDTH, HEIGHT, DOTS, DETAIL_FULL,
                                           &png, &bytes)) {
        return false;
    }
    const char *const panel = panel_words(paper, door);
    book_format(book, sheet, row, column, LOOK_WRAP, "%s: %s%s%s, %s; %s%s%s", d->ids,
                door->leaves > 1 ? "pair of " : "", show_use((enum use)door->row->use.choice),
                door->leaves > 1 ? "s" : "", show_style(door), size, panel[0] == '\0' ? "" : ", ",
                panel);
    book_picture(book, sheet, row, column, png, bytes, TO_96TH / DOTS, WORDS, alt);
    free(png);
    return true;
}

void sheet_elevations(struct paper *paper) {
    struct book *const book = paper->book;
    const uint16_t sheet = book_sheet(book, "Elevations", "Door elevations", false);
    uint32_t row = paper_title(paper, sheet, "Door elevations",
                               "Finished sizes, seen from the front; hinge marks show side and "
                               "number, not their place.");
    size_t count = 0;
    const struct drawn *const drawn = gather(paper, &count);
    for (uint16_t c = 0; c < ACROSS; c++) {
        book_width(book, sheet, c, COLUMN);
    }
    for (size_t i = 0; drawn != NULL && i < count && i < MOST_DRAWINGS; i++) {
        if (i > 0 && i % ACROSS == 0) {
            row++;
        }
        book_height(book, sheet, row, WORDS + HEIGHT + 8);
        if (!put_drawing(paper, sheet, row, (uint16_t)(i % ACROSS), &drawn[i])) {
            book->failed = true;
            return;
        }
    }
    if (count > MOST_DRAWINGS) {
        book_format(book, sheet, row + 2, 0, LOOK_NOTE,
                    "%zu more are not drawn here: 'doorcost draw' draws every row.",
                    count - MOST_DRAWINGS);
    }
    book->failed = book->failed || drawn == NULL;
}
