/* SPDX-License-Identifier: MIT */
/* The library takes what it packs as const. */
#define ZLIB_CONST
#include "report/draw/image.h"

#include "base/array.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <zlib.h>

/* Letters and lines lose nothing to the eye by so few; close to white lie the fills of panels and
 * offcuts. Four bits hold a dot. */
static const unsigned char grays[] = {0, 60, 122, 184, 234, 255};
#define GRAYS COUNT_OF(grays)
#define WHITE 0xFFFFFFU
/* Dots of a row that are looked at together; even. */
#define AT_ONCE ((size_t)8)

/* What a drawing sets of lines and places is gone with it. */
static void begin(const struct image *image) {
    cairo_save(image->cr);
    cairo_set_source_rgb(image->cr, 1, 1, 1);
    cairo_paint(image->cr);
}

void image_open(struct image *image, double width, double height, double dots) {
    image->surface =
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int)(width * dots), (int)(height * dots));
    image->cr = cairo_create(image->surface);
    image->width = width;
    image->height = height;
    cairo_scale(image->cr, dots, dots);
    begin(image);
}

/* Which of the grays is nearest to each light of a dot. */
static void find_nearest(unsigned char nearest[256]) {
    for (unsigned i = 0, g = 0; i < 256; i++) {
        g += g + 1 < GRAYS && 2 * i > (unsigned)grays[g] + grays[g + 1] ? 1 : 0;
        nearest[i] = (unsigned char)g;
    }
}

/* Dots of 32 bits as grays of 4, by the green that gives most of a color's light. */
static void take_dots(const uint32_t *dots, size_t count, const unsigned char nearest[256],
                      unsigned char *to) {
    for (size_t x = 0; x < count; x += 2) {
        const uint32_t right = x + 1 < count ? dots[x + 1] : WHITE;
        *to++ = (unsigned char)(nearest[dots[x] >> 8 & 0xFF] << 4 | nearest[right >> 8 & 0xFF]);
    }
}

/* Most of a row is white. */
static void take_row(const uint32_t *dots, size_t width, const unsigned char nearest[256],
                     unsigned char *to) {
    const unsigned char white = (unsigned char)((GRAYS - 1) << 4 | (GRAYS - 1));
    size_t x = 0;
    for (; x + AT_ONCE <= width; x += AT_ONCE) {
        uint32_t all = WHITE;
        for (size_t i = 0; i < AT_ONCE; i++) {
            all &= dots[x + i];
        }
        if (all == WHITE) {
            memset(to + x / 2, white, AT_ONCE / 2);
        } else {
            take_dots(dots + x, AT_ONCE, nearest, to + x / 2);
        }
    }
    take_dots(dots + x, width - x, nearest, to + x / 2);
}

/* All dots as a PNG has them: each row behind the number of its filter, which is none, as others
 * make it larger. To be freed; NULL: memory is out. */
static unsigned char *take_rows(const struct image *image, size_t *size) {
    const unsigned char *dots = cairo_image_surface_get_data(image->surface);
    const size_t width = (size_t)cairo_image_surface_get_width(image->surface);
    const size_t height = (size_t)cairo_image_surface_get_height(image->surface);
    const size_t row = 1 + (width + 1) / 2;
    unsigned char *const rows = malloc(row * height);
    unsigned char nearest[256];
    find_nearest(nearest);
    for (size_t y = 0; rows != NULL && y < height; y++) {
        rows[y * row] = 0;
        take_row((const uint32_t *)(const void *)dots, width, nearest, rows + y * row + 1);
        dots += cairo_image_surface_get_stride(image->surface);
    }
    *size = row * height;
    return rows;
}

/* --- PNG: chunks, each with its length before it and a sum behind (ISO/IEC 15948, 5.3) --- */

static unsigned char *put_number(unsigned char *to, size_t number) {
    for (int shift = 24; shift >= 0; shift -= 8) {
        *to++ = (unsigned char)(number >> shift & 0xFF);
    }
    return to;
}

/* Ends a chunk whose `size` bytes stand at body already, behind room for length and type; returns
 * where the next body goes. */
static unsigned char *end_chunk(unsigned char *body, const char type[4], size_t size) {
    (void)put_number(body - 8, size);
    memcpy(body - 4, type, 4);
    return put_number(body + size, crc32(0, body - 4, (uInt)size + 4)) + 8;
}

/* Packs rows into `room` bytes. Runs of white are most of them: a match of six bytes or more is
 * taken as it is, of 24 that are looked at; the usual level looks longer, for 3 % less. Returns the
 * size; 0: memory is out. */
static size_t deflate_rows(const unsigned char *rows,
                           size_t size, /* NOLINTNEXTLINE(readability-non-const-parameter) */
                           unsigned char *to, size_t room) {
    z_stream z = {.next_in = rows, .avail_in = (uInt)size, .next_out = to, .avail_out = (uInt)room};
    if (deflateInit2(&z, 4, Z_DEFLATED, MAX_WBITS, 8, Z_DEFAULT_STRATEGY) != Z_OK) {
        return 0;
    }
    (void)deflateTune(&z, 32, 6, 258, 24);
    const bool whole = deflate(&z, Z_FINISH) == Z_STREAM_END;
    const size_t packed = z.total_out;
    (void)deflateEnd(&z);
    return whole ? packed : 0;
}

/* What stands before the picture: sizes, four bits a dot, by a palette, the palette. */
static unsigned char *put_head(unsigned char *to, const struct image *image) {
    static const unsigned char signature[8] = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    static const unsigned char kind[5] = {4, 3, 0, 0, 0};
    memcpy(to, signature, sizeof signature);
    unsigned char *const body = to + sizeof signature + 8;
    to = put_number(body, (size_t)cairo_image_surface_get_width(image->surface));
    to = put_number(to, (size_t)cairo_image_surface_get_height(image->surface));
    memcpy(to, kind, sizeof kind);
    to = end_chunk(body, "IHDR", 8 + sizeof kind);
    for (size_t i = 0; i < GRAYS; i++) {
        memset(to + 3 * i, grays[i], 3);
    }
    return end_chunk(to, "PLTE", 3 * GRAYS);
}

/* The PNG of what was drawn. NULL: memory is out. */
static unsigned char *pack(const struct image *image, size_t *size) {
    size_t raw = 0;
    unsigned char *const rows = take_rows(image, &raw);
    const size_t room = compressBound((uLong)raw) + 64;
    unsigned char *png = rows == NULL ? NULL : malloc(room + 256);
    if (png != NULL) {
        unsigned char *const body = put_head(png, image);
        const size_t packed = deflate_rows(rows, raw, body, room);
        unsigned char *const end = end_chunk(body, "IDAT", packed);
        *size = (size_t)(end_chunk(end, "IEND", 0) - 8 - png);
        if (packed == 0) {
            free(png);
            png = NULL;
        }
    }
    free(rows);
    return png;
}

bool image_take(struct image *image, unsigned char **bytes, size_t *size) {
    cairo_surface_flush(image->surface);
    const bool drawn = cairo_status(image->cr) == CAIRO_STATUS_SUCCESS &&
                       cairo_image_surface_get_data(image->surface) != NULL;
    *size = 0;
    *bytes = drawn ? pack(image, size) : NULL;
    cairo_restore(image->cr);
    begin(image);
    return *bytes != NULL;
}

void image_close(struct image *image) {
    cairo_destroy(image->cr);
    cairo_surface_destroy(image->surface);
    *image = (struct image){0};
}
