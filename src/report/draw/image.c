/* SPDX-License-Identifier: MIT */
#include "report/draw/image.h"

#include "base/array.h"
#include "base/pool.h"

#include <png.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* Letters and lines lose nothing to the eye by so few; close to white lie the fills of panels and
 * offcuts. Four bits hold a dot. */
static const unsigned char grays[] = {0, 36, 73, 110, 147, 184, 234, 255};
#define GRAYS COUNT_OF(grays)
/* Of packing: the next takes a third longer for 4 % less. */
#define LEVEL 5

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

/* Dots of 32 bits as grays of 4, by the green that gives most of a color's light. Most of a page is
 * white. */
static void take_row(const uint32_t *dots, size_t width, const unsigned char nearest[256],
                     unsigned char *to) {
    const uint32_t white = 0xFFFFFF;
    const unsigned char both_white = (unsigned char)((GRAYS - 1) << 4 | (GRAYS - 1));
    for (size_t x = 0; x < width; x += 2) {
        const uint32_t left = dots[x];
        const uint32_t right = x + 1 < width ? dots[x + 1] : white;
        const int dots_of_byte = nearest[left >> 8 & 0xFF] << 4 | nearest[right >> 8 & 0xFF];
        *to++ = (left & right & white) == white ? both_white : (unsigned char)dots_of_byte;
    }
}

/* A PNG as it grows in memory. */
struct packed {
    unsigned char *bytes;
    size_t size, room;
};

static void pack_more(png_structp png, png_bytep bytes, size_t size) {
    struct packed *const to = png_get_io_ptr(png);
    bool failed = false;
    to->bytes = array_grow(to->bytes, &to->room, to->size + size, 1, &failed);
    if (failed) {
        png_error(png, "memory is out");
    }
    memcpy(to->bytes + to->size, bytes, size);
    to->size += size;
}

/* The library's way out of an error, which is want of memory alone: back to the setjmp of pack. */
static void leave(png_structp png, png_const_charp why) {
    (void)why;
    png_longjmp(png, 1);
}

static void stay(png_structp png, png_const_charp why) {
    (void)png;
    (void)why;
}

static void write_rows(png_structp png, png_infop info, const struct image *image,
                       unsigned char *row) {
    png_color palette[GRAYS];
    unsigned char nearest[256];
    const unsigned char *dots = cairo_image_surface_get_data(image->surface);
    const int width = cairo_image_surface_get_width(image->surface);
    const int height = cairo_image_surface_get_height(image->surface);
    find_nearest(nearest);
    for (size_t i = 0; i < GRAYS; i++) {
        palette[i] = (png_color){.red = grays[i], .green = grays[i], .blue = grays[i]};
    }
    png_set_filter(png, PNG_FILTER_TYPE_BASE, PNG_FILTER_NONE); /* others make it larger */
    png_set_compression_level(png, LEVEL);
    png_set_IHDR(png, info, (png_uint_32)width, (png_uint_32)height, 4, PNG_COLOR_TYPE_PALETTE,
                 PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
    png_set_PLTE(png, info, palette, GRAYS);
    png_write_info(png, info);
    for (int y = 0; y < height; y++) {
        take_row((const uint32_t *)(const void *)dots, (size_t)width, nearest, row);
        png_write_row(png, row);
        dots += cairo_image_surface_get_stride(image->surface);
    }
    png_write_end(png, NULL);
}

/* The PNG of what was drawn. false: memory is out. */
static bool pack(const struct image *image, struct packed *to) {
    unsigned char *const row =
        malloc((size_t)cairo_image_surface_get_width(image->surface) / 2 + 1);
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, NULL, leave, stay);
    png_infop info = png == NULL ? NULL : png_create_info_struct(png);
    bool done = false;
    if (row != NULL && info != NULL && setjmp(png_jmpbuf(png)) == 0) {
        png_set_write_fn(png, to, pack_more, NULL);
        write_rows(png, info, image, row);
        done = true;
    }
    png_destroy_write_struct(&png, &info);
    free(row);
    return done;
}

bool image_take(struct image *image, unsigned char **bytes, size_t *size) {
    struct packed packed = {0};
    cairo_surface_flush(image->surface);
    const bool drawn = cairo_status(image->cr) == CAIRO_STATUS_SUCCESS &&
                       cairo_image_surface_get_data(image->surface) != NULL;
    const bool held = drawn && pack(image, &packed);
    if (!held) {
        free(packed.bytes);
        packed = (struct packed){0};
    }
    *bytes = packed.bytes;
    *size = packed.size;
    cairo_restore(image->cr);
    begin(image);
    return held;
}

void image_close(struct image *image) {
    cairo_destroy(image->cr);
    cairo_surface_destroy(image->surface);
    *image = (struct image){0};
}
