/* SPDX-License-Identifier: MIT */
/* libzip unpacks, libxml2 reads, both in pieces: no part ever stands in memory as a whole. */
#include "read/sheet/archive.h"

#include "read/sheet/sheet.h"
#include "read/sheet/tag_guard.h"

#include <libxml/parser.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>
#include <zip.h>

#define PIECE      ((size_t)16 * 1024)
#define MOST_DEPTH 64   /* of tags in tags; a workbook has some twenty */
#define MOST_NAMES 5000 /* of tags and attributes; libxml2 finds among more of them ever slower */

bool archive_open(struct archive *archive, int handle) {
    const int copy = dup(handle); /* libzip closes what it gets */
    int error = 0;

    *archive = (struct archive){.left = SHEET_MOST_UNPACKED};
    archive->zip = copy < 0 ? NULL : zip_fdopen(copy, 0, &error);
    if (archive->zip == NULL) {
        if (copy >= 0) {
            (void)close(copy);
        }
        archive->fault = error == ZIP_ER_MEMORY ? ARCHIVE_MEMORY : ARCHIVE_DAMAGED;
        return false;
    }
    if (archive_has(archive, "encrypted-package")) {
        archive->fault = ARCHIVE_LOCKED;
        return false;
    }
    return true;
}

void archive_close(struct archive *archive) {
    if (archive->zip != NULL) {
        zip_discard(archive->zip);
        archive->zip = NULL;
    }
}

bool archive_has(const struct archive *archive, const char *name) {
    return zip_name_locate(archive->zip, name, 0) >= 0;
}

/* One part while it is read. */
struct parse {
    struct archive *archive;
    const struct part_reader *reader;
    xmlParserCtxtPtr parser;
    unsigned depth;
    bool stopped; /* the reader wants no more */
};

static void stop(struct parse *parse, enum archive_fault fault) {
    parse->stopped = true;
    if (parse->archive->fault == ARCHIVE_GOOD) {
        parse->archive->fault = fault;
    }
    xmlStopParser(parse->parser);
}

static void on_open(void *context, const xmlChar *name, const xmlChar *prefix, const xmlChar *uri,
                    int spaces, const xmlChar **declared, int count, int defaulted,
                    const xmlChar **attributes) {
    struct parse *const parse = context;
    const struct tag tag = {.prefix = prefix == NULL ? "" : (const char *)prefix,
                            .name = (const char *)name,
                            .attributes = attributes,
                            .count = count};

    (void)uri;
    (void)spaces;
    (void)declared;
    (void)defaulted;
    if (parse->stopped) {
        return;
    }
    if (++parse->depth > MOST_DEPTH) {
        stop(parse, ARCHIVE_DAMAGED);
    } else if (!parse->reader->open(parse->reader->context, &tag)) {
        stop(parse, ARCHIVE_GOOD);
    }
}

static void on_close(void *context, const xmlChar *name, const xmlChar *prefix,
                     const xmlChar *uri) {
    struct parse *const parse = context;

    (void)prefix;
    (void)uri;
    if (parse->stopped) {
        return;
    }
    parse->depth--;
    if (parse->reader->close != NULL &&
        !parse->reader->close(parse->reader->context, (const char *)name)) {
        stop(parse, ARCHIVE_GOOD);
    }
}

static void on_text(void *context, const xmlChar *text, int size) {
    struct parse *const parse = context;

    if (!parse->stopped && parse->reader->text != NULL &&
        !parse->reader->text(parse->reader->context, (const char *)text, (size_t)size)) {
        stop(parse, ARCHIVE_GOOD);
    }
}

static void on_document_type(void *context, const xmlChar *name, const xmlChar *id,
                             const xmlChar *system) {
    (void)name;
    (void)id;
    (void)system;
    stop(context, ARCHIVE_DAMAGED);
}

/* Unpacks the part piece by piece and has each parsed; sets the archive's fault. */
static void feed(struct parse *parse, zip_file_t *part) {
    struct archive *const archive = parse->archive;
    struct tag_guard guard = {0};
    char piece[PIECE];
    zip_int64_t got = 0;

    while (!parse->stopped && (got = zip_fread(part, piece, sizeof piece)) > 0) {
        if ((size_t)got > archive->left) {
            archive->fault = ARCHIVE_LARGE;
            return;
        }
        archive->left -= (size_t)got;
        if (!tag_guard_pass(&guard, piece, (size_t)got)) {
            archive->fault = ARCHIVE_DAMAGED;
            return;
        }
        (void)xmlParseChunk(parse->parser, piece, (int)got, 0);
        if (xmlDictSize(parse->parser->dict) > MOST_NAMES) {
            archive->fault = ARCHIVE_DAMAGED;
            return;
        }
        if (!parse->stopped && parse->parser->wellFormed == 0) {
            break;
        }
    }
    if (got < 0 && archive->fault == ARCHIVE_GOOD) {
        archive->fault = ARCHIVE_DAMAGED;
    }
    if (!parse->stopped && archive->fault == ARCHIVE_GOOD) {
        (void)xmlParseChunk(parse->parser, "", 0, 1);
        if (!parse->stopped && parse->parser->wellFormed == 0) {
            archive->fault =
                parse->parser->errNo == XML_ERR_NO_MEMORY ? ARCHIVE_MEMORY : ARCHIVE_DAMAGED;
        }
    }
}

/* Whether the part is packed in a way that spreadsheets use, and not encrypted. */
static bool can_unpack(struct archive *archive, const zip_stat_t *about) {
    if ((about->valid & ZIP_STAT_ENCRYPTION_METHOD) != 0 &&
        about->encryption_method != ZIP_EM_NONE) {
        archive->fault = ARCHIVE_LOCKED;
    } else if ((about->valid & ZIP_STAT_COMP_METHOD) == 0 ||
               (about->comp_method != ZIP_CM_STORE && about->comp_method != ZIP_CM_DEFLATE)) {
        archive->fault = ARCHIVE_DAMAGED;
    }
    return archive->fault == ARCHIVE_GOOD;
}

bool archive_read(struct archive *archive, const char *name, const struct part_reader *reader) {
    struct parse parse = {.archive = archive, .reader = reader};
    xmlSAXHandler events = {.initialized = XML_SAX2_MAGIC,
                            .startElementNs = on_open,
                            .endElementNs = on_close,
                            .characters = on_text,
                            .ignorableWhitespace = on_text,
                            .cdataBlock = on_text,
                            .internalSubset = on_document_type};
    zip_file_t *part = NULL;
    zip_stat_t about;

    archive->part = name;
    if (zip_stat(archive->zip, name, 0, &about) != 0) {
        archive->fault = ARCHIVE_DAMAGED;
        return false;
    }
    if (!can_unpack(archive, &about)) {
        return false;
    }
    part = zip_fopen(archive->zip, name, 0);
    if (part == NULL) {
        archive->fault = zip_error_code_zip(zip_get_error(archive->zip)) == ZIP_ER_MEMORY
                             ? ARCHIVE_MEMORY
                             : ARCHIVE_DAMAGED;
        return false;
    }
    parse.parser = xmlCreatePushParserCtxt(&events, &parse, NULL, 0, NULL);
    if (parse.parser == NULL) {
        archive->fault = ARCHIVE_MEMORY;
    } else {
        (void)xmlCtxtUseOptions(parse.parser, XML_PARSE_NONET | XML_PARSE_NOERROR |
                                                  XML_PARSE_NOWARNING | XML_PARSE_IGNORE_ENC);
        feed(&parse, part);
        xmlFreeParserCtxt(parse.parser);
    }
    (void)zip_fclose(part);
    return archive->fault == ARCHIVE_GOOD;
}

/* --- attributes --- */

const char *attribute_value(const struct tag *tag, const char *prefix, const char *name,
                            size_t *size) {
    for (int i = 0; i < tag->count; i++) {
        const unsigned char **const attribute = tag->attributes + (ptrdiff_t)5 * i;
        const char *const before = attribute[1] == NULL ? "" : (const char *)attribute[1];

        if (strcmp((const char *)attribute[0], name) == 0 &&
            (prefix == NULL || strcmp(before, prefix) == 0)) {
            *size = (size_t)(attribute[4] - attribute[3]);
            return (const char *)attribute[3];
        }
    }
    *size = 0;
    return NULL;
}

bool attribute_says(const struct tag *tag, const char *prefix, const char *name,
                    const char *value) {
    size_t size;
    const char *const text = attribute_value(tag, prefix, name, &size);
    return text != NULL && size == strlen(value) && memcmp(text, value, size) == 0;
}

const char *attribute_text(const struct tag *tag, const char *prefix, const char *name,
                           struct pool *pool) {
    static const char ampersand[] = "&#38;";
    size_t size;
    const char *const value = attribute_value(tag, prefix, name, &size);
    char *const text = value == NULL ? NULL : pool_text(pool, value, size);
    char *to = text;

    if (text == NULL) {
        return NULL;
    }
    for (const char *from = text; *from != '\0'; from++) {
        *to++ = *from;
        if (strncmp(from, ampersand, sizeof ampersand - 1) == 0) {
            from += sizeof ampersand - 2;
        }
    }
    *to = '\0';
    return text;
}

uint32_t attribute_number(const struct tag *tag, const char *prefix, const char *name,
                          uint32_t most, uint32_t otherwise) {
    size_t size;
    const char *const value = attribute_value(tag, prefix, name, &size);
    uint64_t number = 0;

    if (value == NULL || size == 0) {
        return otherwise;
    }
    for (size_t i = 0; i < size; i++) {
        const bool digit = value[i] >= '0' && value[i] <= '9';
        number = digit ? 10 * number + (uint64_t)(value[i] - '0') : (uint64_t)most + 1;
        number = number > most ? (uint64_t)most + 1 : number;
    }
    return number > UINT32_MAX ? UINT32_MAX : (uint32_t)number;
}
