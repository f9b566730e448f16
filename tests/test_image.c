/* SPDX-License-Identifier: MIT */
/* Pictures for workbooks: Cairo reads by libpng what was drawn. */
#include "support.h"

#include "report/doors/door_elevation.h"
#include "report/draw/draw.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* A PNG in memory, as Cairo reads it. */
struct reading {
    const unsigned char *bytes;
    size_t left;
};

static cairo_status_t read_on(void *from, unsigned char *to, unsigned int size) {
    struct reading *const r = from;
    if (size > r->left) {
        return CAIRO_STATUS_READ_ERROR;
    }
    memcpy(to, r->bytes, size);
    r->bytes += size;
    r->left -= size;
    return CAIRO_STATUS_SUCCESS;
}

/* Cairo, by libpng, finds the drawing in the picture, every dot as light as its grays have it. */
static void assert_shows(const unsigned char *bytes, size_t size, cairo_surface_t *drawn) {
    struct reading reading = {bytes, size};
    cairo_surface_t *const read = cairo_image_surface_create_from_png_stream(read_on, &reading);
    assert_int_equal(cairo_surface_status(read), CAIRO_STATUS_SUCCESS);
    cairo_surface_flush(drawn);
    const int width = cairo_image_surface_get_width(drawn);
    const int height = cairo_image_surface_get_height(drawn);
    assert_int_equal(cairo_image_surface_get_width(read), width);
    assert_int_equal(cairo_image_surface_get_height(read), height);
    for (int i = 0; i < width * height; i++) {
        const int x = 4 * (i % width);
        const int y = i / width;
        const int is =
            cairo_image_surface_get_data(read)[y * cairo_image_surface_get_stride(read) + x];
        const int was =
            cairo_image_surface_get_data(drawn)[y * cairo_image_surface_get_stride(drawn) + x];
        assert_in_range(was - is + 31, 0, 62);
        assert_true((was == 0 || was == 255) ? is == was : true);
    }
    assert_int_equal(reading.left, 0);
    cairo_surface_destroy(read);
}

/* The picture is a PNG of the size asked for, the same each time. */
static void picture(void **state) {
    struct bench bench;
    struct door_elevation e;
    struct image image;
    unsigned char *bytes[2];
    size_t size[2];
    (void)state;
    bench_open(&bench, "picture", BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){0},
               "D1,18,30\n");
    assert_true(door_elevation_make(&e, &bench.estimate.pool,
                                    bench.estimate.quantities.leaves[0].door,
                                    (struct hung_on){.count = 2}, bench.job.unit));
    for (size_t odd = 0; odd < 2; odd++) {
        image_open(&image, 100.5 + 0.5 * (double)odd, 120, 2); /* dots in pairs, or one alone */
        for (size_t i = 0; i < 2; i++) {
            assert_true(draw_elevation_png(&e.drawing, &image, DETAIL_FULL, &bytes[i], &size[i]));
        }
        assert_true(size[0] > 100 && size[0] == size[1]);
        assert_memory_equal(bytes[0], bytes[1], size[0]);
        draw_elevation(image.cr, &e.drawing, (struct area){2, 2, image.width - 4, image.height - 4},
                       DETAIL_FULL);
        assert_shows(bytes[0], size[0], image.surface);
        image_close(&image);
        free(bytes[0]);
        free(bytes[1]);
    }
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(picture)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
