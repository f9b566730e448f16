/* SPDX-License-Identifier: MIT */
#include "report/draw/image.h"

#include "base/array.h"

#include <png.h>
#include <stdint.h>
#include <stdlib.h>

/* Letters and lines lose nothing to the eye by so few; close to white lie the fills of panels and
 * offcuts. Four bits hold a dot. */
static const unsigned char grays[] = {0, 36, 73, 110, 147, 184, 234, 255};
#define GRAYS COUNT_OF(grays)

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

/* Dots of 32 bits to the nearest of the grays, by the green that gives most of a color's light. */
static void take_grays(const unsigned char *from, size_t step, size_t width, size_t height,
                       unsigned char *to) {
    unsigned char nearest[256];
    for (unsigned i = 0, g = 0; i < sizeof nearest; i++) {
        g += g + 1 < GRAYS && 2 * i > (unsigned)grays[g] + grays[g + 1] ? 1 : 0;
        nearest[i] = (unsigned char)g;
    }
    for (size_t y = 0; y < height; y++) {
        const uint32_t *const row = (const uint32_t *)(const void *)(from + y * step);
        for (size_t x = 0; x < width; x++) {
            *to++ = nearest[row[x] >> 8 & 0xFF];
        }
    }
}

/* The PNG of width x height dots, each the number of its gray. NULL: memory is out. */
static unsigned char *pack(const unsigned char *light, size_t width, size_t height, size_t *size) {
    unsigned char colors[GRAYS][3];
    png_image png = {.version = PNG_IMAGE_VERSION,
                     .width = (png_uint_32)width,
                     .height = (png_uint_32)height,
                     .format = PNG_FORMAT_RGB_COLORMAP,
                     .colormap_entries = GRAYS};
    png_alloc_size_t room = PNG_IMAGE_PNG_SIZE_MAX(png);
    unsigned char *const bytes = malloc(room);
    for (unsigned i = 0; i < GRAYS; i++) {
        colors[i][0] = colors[i][1] = colors[i][2] = grays[i];
    }
    if (bytes == NULL || png_image_write_to_memory(&png, bytes, &room, 0, light, 0, colors) == 0) {
        free(bytes);
        return NULL;
    }
    unsigned char *const fitted = realloc(bytes, room);
    *size = room;
    return fitted == NULL ? bytes : fitted;
}

bool image_take(struct image *image, unsigned char **bytes, size_t *size) {
    cairo_surface_flush(image->surface);
    const unsigned char *const dots = cairo_image_surface_get_data(image->surface);
    const size_t width = (size_t)cairo_image_surface_get_width(image->surface);
    const size_t height = (size_t)cairo_image_surface_get_height(image->surface);
    const bool drawn = cairo_status(image->cr) == CAIRO_STATUS_SUCCESS && dots != NULL;
    unsigned char *const light = drawn ? malloc(width * height + 1) : NULL;
    *bytes = NULL;
    *size = 0;
    if (light != NULL) {
        take_grays(dots, (size_t)cairo_image_surface_get_stride(image->surface), width, height,
                   light);
        *bytes = pack(light, width, height, size);
    }
    free(light);
    cairo_restore(image->cr);
    begin(image);
    return *bytes != NULL;
}

void image_close(struct image *image) {
    cairo_destroy(image->cr);
    cairo_surface_destroy(image->surface);
    *image = (struct image){0};
}
