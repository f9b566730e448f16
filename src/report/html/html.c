/* SPDX-License-Identifier: MIT */
#include "report/html/html.h"

#include "base/text.h"
#include "report/html/html_files.h"

#include <errno.h>
#include <stdarg.h>
#include <string.h>

bool html_open(struct html *h, const char *path, const char *title, const char *style,
               bool script) {
    *h = (struct html){.out = fopen(path, "wb")};
    pool_init(&h->pool);
    if (h->out == NULL) {
        return false;
    }
    html_put(h, "<!DOCTYPE html>\n<html lang=\"en-US\">\n<head>\n<meta charset=\"utf-8\">\n"
                "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
                "img-src data:; style-src 'unsafe-inline'; script-src ");
    html_put(h, script ? "'unsafe-inline'" : "'none'");
    html_put(h, "; base-uri 'none'; form-action 'none'\">\n");
    html_element(h, "title", title);
    html_put(h, "<style>\n");
    html_put(h, html_style);
    html_put(h, style);
    html_put(h, "</style>\n</head>\n");
    return true;
}

bool html_close(struct html *h) {
    bool held = h->out != NULL && !h->failed && !pool_failed(&h->pool);
    if (h->out != NULL) {
        html_put(h, "</html>\n");
        const bool written = ferror(h->out) == 0;
        held = fclose(h->out) == 0 && written && held;
    }
    pool_clear(&h->pool);
    h->out = NULL;
    return held;
}

void html_put(struct html *h, const char *markup) {
    (void)fputs(markup, h->out);
}

void html_format(struct html *h, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    (void)vfprintf(h->out, format, arguments);
    va_end(arguments);
}

void html_text(struct html *h, const char *text) {
    static const struct {
        char c;
        const char *escape;
    } escapes[] = {{'&', "&amp;"}, {'<', "&lt;"}, {'>', "&gt;"}, {'"', "&quot;"}, {'\'', "&#39;"}};
    for (text = text_or_empty(text); *text != '\0'; text++) {
        const char *escape = NULL;
        for (size_t i = 0; i < sizeof escapes / sizeof *escapes; i++) {
            escape = *text == escapes[i].c ? escapes[i].escape : escape;
        }
        if (escape != NULL) {
            html_put(h, escape);
        } else {
            (void)putc(*text, h->out);
        }
    }
}

void html_words(struct html *h, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    html_text(h, pool_format_list(&h->pool, format, arguments));
    va_end(arguments);
}

void html_element(struct html *h, const char *tag, const char *words) {
    html_format(h, "<%s>", tag);
    html_text(h, words);
    html_format(h, "</%.*s>\n", (int)strcspn(tag, " "), tag);
}

void html_json(struct html *h, const char *text) {
    (void)putc('"', h->out);
    for (text = text_or_empty(text); *text != '\0'; text++) {
        const unsigned char c = (unsigned char)*text;
        if (c == '"' || c == '\\') {
            html_format(h, "\\%c", c);
        } else if (c < 0x20 || c == '<' || c == '>' || c == '&') {
            html_format(h, "\\u%04x", c);
        } else {
            (void)putc(c, h->out);
        }
    }
    (void)putc('"', h->out);
}

/* RFC 4648, section 4. */
static void put_base64(struct html *h, const unsigned char *bytes, size_t size) {
    static const char digits[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    for (size_t i = 0; i < size; i += 3) {
        const size_t left = size - i;
        const unsigned word = (unsigned)bytes[i] << 16 |
                              (left > 1 ? (unsigned)bytes[i + 1] << 8 : 0u) |
                              (left > 2 ? (unsigned)bytes[i + 2] : 0u);
        (void)putc(digits[word >> 18], h->out);
        (void)putc(digits[word >> 12 & 63], h->out);
        (void)putc(left > 1 ? digits[word >> 6 & 63] : '=', h->out);
        (void)putc(left > 2 ? digits[word & 63] : '=', h->out);
    }
}

void html_picture(struct html *h, const unsigned char *png, size_t size, const char *class,
                  const char *words) {
    html_format(h, "<img class=\"%s\" alt=\"", class);
    html_text(h, words);
    html_put(h, "\" src=\"data:image/png;base64,");
    put_base64(h, png, size);
    html_put(h, "\">\n");
}
