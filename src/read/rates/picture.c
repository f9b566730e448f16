/* SPDX-License-Identifier: MIT */
#include "read/rates/picture.h"

#include <cairo.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* Length and name of the first chunk, its width and height, all within the first 24 bytes. */
#define HEAD_SIZE ((size_t)24)

static void report(struct reader *reader, const struct shop *shop, const char *id,
                   const char *what) {
    problem_add(reader->problems, SEVERITY_ERROR, id, shop->logo_path.place, "'%s' %s",
                problem_quote(reader->problems, shop->logo_path.s), what);
}

static int64_t big_endian(const unsigned char *at) {
    return ((int64_t)at[0] << 24) | ((int64_t)at[1] << 16) | ((int64_t)at[2] << 8) | at[3];
}

/* The size of the picture by its head; false: it is no PNG file. */
static bool head_of(FILE *file, int64_t *width, int64_t *height) {
    static const unsigned char mark[] = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    unsigned char head[HEAD_SIZE];
    if (fread(head, 1, HEAD_SIZE, file) != HEAD_SIZE || memcmp(head, mark, sizeof mark) != 0 ||
        memcmp(head + 12, "IHDR", 4) != 0) {
        return false;
    }
    *width = big_endian(head + 16);
    *height = big_endian(head + 20);
    rewind(file);
    return true;
}

static cairo_status_t give(void *closure, unsigned char *data, unsigned int size) {
    return fread(data, 1, size, closure) == size ? CAIRO_STATUS_SUCCESS : CAIRO_STATUS_READ_ERROR;
}

struct sink {
    struct pool *pool;
    unsigned char *bytes;
    size_t size, room;
};

static cairo_status_t take(void *closure, const unsigned char *data, unsigned int size) {
    struct sink *const sink = closure;
    bool failed = false;
    sink->bytes = array_grow(sink->bytes, &sink->room, sink->size + size, 1, &failed);
    if (failed) {
        return CAIRO_STATUS_NO_MEMORY;
    }
    memcpy(sink->bytes + sink->size, data, size);
    sink->size += size;
    return CAIRO_STATUS_SUCCESS;
}

/* Keeps the dots of the surface as PNG in the reader's pool. */
static bool keep(struct reader *reader, cairo_surface_t *surface, struct picture *logo) {
    struct sink sink = {0};
    bool held = cairo_surface_write_to_png_stream(surface, take, &sink) == CAIRO_STATUS_SUCCESS;
    char *const copy = held ? pool_text(reader->pool, (const char *)sink.bytes, sink.size) : NULL;
    free(sink.bytes);
    if (copy == NULL) {
        return false;
    }
    *logo = (struct picture){.bytes = (const unsigned char *)copy,
                             .size = sink.size,
                             .width = cairo_image_surface_get_width(surface),
                             .height = cairo_image_surface_get_height(surface)};
    return true;
}

/* Whether there is memory for the dots.  The drawing library says that it lacks where a picture is
 * damaged, too. */
static bool has_memory(int64_t width, int64_t height) {
    void *const room = malloc((size_t)width * (size_t)height * 4);
    free(room);
    return room != NULL;
}

/* For reading; a pipe is not waited for. NULL: errno tells. */
static FILE *open_file(const char *path) {
    const int handle = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    FILE *const file = handle < 0 ? NULL : fdopen(handle, "rb");
    if (file == NULL && handle >= 0) {
        (void)close(handle);
    }
    return file;
}

static bool read_open(struct reader *reader, struct shop *shop, FILE *file) {
    struct stat about;
    int64_t width = 0;
    int64_t height = 0;
    if (fstat(fileno(file), &about) != 0 || !S_ISREG(about.st_mode) ||
        !head_of(file, &width, &height)) {
        report(reader, shop, "not-a-picture", "is no PNG picture; save the picture as PNG");
        return true;
    }
    if (width == 0 || height == 0) {
        report(reader, shop, "not-a-picture", "has no dots; save the picture anew as PNG");
        return true;
    }
    if (about.st_size > PICTURE_LARGEST || width > PICTURE_MOST || height > PICTURE_MOST) {
        report(reader, shop, "picture-too-large",
               "is too large; expected a PNG picture of at most 4 MB and 4000 dots a side");
        return true;
    }
    cairo_surface_t *const surface = cairo_image_surface_create_from_png_stream(give, file);
    const cairo_status_t status = cairo_surface_status(surface);
    bool held = status != CAIRO_STATUS_NO_MEMORY || has_memory(width, height);
    if (status == CAIRO_STATUS_SUCCESS) {
        held = keep(reader, surface, &shop->logo);
    } else if (held) {
        report(reader, shop, "not-a-picture", "is damaged; save the picture anew as PNG");
    }
    cairo_surface_destroy(surface);
    return held;
}

bool picture_read(struct reader *reader, struct shop *shop) {
    if (shop->logo_path.s == NULL) {
        return true;
    }
    FILE *const file = open_file(shop->logo_path.s);
    if (file == NULL) {
        if (errno == ENOENT || errno == ENOTDIR) {
            report(reader, shop, "file-missing", "does not exist; expected a file of that name");
        } else {
            report(reader, shop, "file-unreadable", "cannot be read; try to open it in an editor");
        }
        return true;
    }
    const bool held = read_open(reader, shop, file);
    (void)fclose(file);
    return held && !reader->problems->failed;
}
