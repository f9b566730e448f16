/* SPDX-License-Identifier: MIT */
#include "report/xlsx/book_proof.h"

#include "report/xlsx/xml_scan.h"

#include <stdlib.h>
#include <string.h>
#include <zip.h>

/* --- what was to be written --- */

/* The library's trees have no function to walk them that a program could call. */
static size_t cells_below(const lxw_cell *cell) {
    return cell == NULL ? 0
                        : 1 + cells_below(RB_LEFT(cell, tree_pointers)) +
                              cells_below(RB_RIGHT(cell, tree_pointers));
}

static size_t cells_of(const lxw_row *row) {
    return row == NULL ? 0
                       : cells_below(RB_ROOT(row->cells)) + cells_of(RB_LEFT(row, tree_pointers)) +
                             cells_of(RB_RIGHT(row, tree_pointers));
}

size_t book_proof_row(const lxw_worksheet *sheet) {
    size_t count = 0;
    for (lxw_col_t c = 0; c <= sheet->dim_colmax; c++) {
        count += sheet->array[c] != NULL ? 1 : 0;
    }
    return count;
}

size_t book_proof_cells(const lxw_workbook *workbook) {
    const lxw_worksheet *sheet;
    size_t count = 0;
    STAILQ_FOREACH(sheet, workbook->worksheets, list_pointers) {
        count += cells_of(RB_ROOT(sheet->table));
    }
    return count;
}

/* --- what was written --- */

struct seen {
    const struct stop *stop;
    size_t cells;         /* of sheets */
    size_t texts, wanted; /* of the list of texts: that are there, that it says */
};

static void see_start(void *to, struct xml_piece name, const struct xml_scan_attribute *attributes,
                      size_t count) {
    struct seen *const seen = to;
    if (xml_is(name, "c")) {
        seen->cells++;
    } else if (xml_is(name, "si")) {
        seen->texts++;
    } else if (xml_is(name, "sst")) {
        for (size_t i = 0; i < count; i++) {
            /* the quote behind it ends the number */
            seen->wanted += xml_is(attributes[i].name, "uniqueCount")
                                ? strtoul(attributes[i].value.at, NULL, 10)
                                : 0;
        }
    }
}

static bool is_xml(const char *name) {
    const char *const dot = strrchr(name, '.');
    return dot != NULL &&
           (strcmp(dot, ".xml") == 0 || strcmp(dot, ".rels") == 0 || strcmp(dot, ".vml") == 0);
}

/* Cells stand in sheets alone; a chart has elements of the same name. */
static bool has_cells(const char *name) {
    return strncmp(name, "xl/worksheets/", 14) == 0;
}

/* All of a part.  zip_fread says when its sum is not the one of the archive. */
static bool read_part(zip_file_t *part, const zip_stat_t *about, struct seen *seen) {
    char bytes[1 << 14];
    struct seen here = {0};
    const bool xml = is_xml(about->name);
    struct xml_scan *const scan = xml ? xml_scan_new(see_start, &here) : NULL;
    zip_uint64_t size = 0;
    zip_int64_t got = 1;
    bool good = scan != NULL || !xml;
    while (good && got > 0 && !stop_asked(seen->stop)) {
        got = zip_fread(part, bytes, sizeof bytes);
        good = got >= 0 && (scan == NULL || xml_scan_take(scan, bytes, (size_t)got));
        size += got > 0 ? (zip_uint64_t)got : 0;
    }
    good = good && (scan == NULL || xml_scan_ended(scan));
    xml_scan_free(scan);
    seen->cells += has_cells(about->name) ? here.cells : 0;
    seen->texts += here.texts;
    seen->wanted += here.wanted;
    return good && size == about->size; /* less where it was stopped */
}

static bool read_at(zip_t *archive, zip_uint64_t i, struct seen *seen) {
    zip_stat_t about;
    zip_file_t *const part = zip_fopen_index(archive, i, 0);
    bool good = part != NULL && zip_stat_index(archive, i, 0, &about) == 0 &&
                (about.valid & ZIP_STAT_SIZE) != 0 && read_part(part, &about, seen);
    if (part != NULL) {
        good = zip_fclose(part) == 0 && good;
    }
    return good;
}

bool book_proof(const char *path, size_t cells, const struct stop *stop) {
    struct seen seen = {.stop = stop};
    zip_t *const archive = zip_open(path, ZIP_RDONLY | ZIP_CHECKCONS, NULL);
    if (archive == NULL) {
        return false;
    }
    const zip_int64_t count = zip_get_num_entries(archive, 0);
    bool good = count > 0;
    for (zip_int64_t i = 0; good && i < count; i++) {
        good = read_at(archive, (zip_uint64_t)i, &seen);
    }
    zip_discard(archive);
    return good && seen.cells == cells && seen.texts == seen.wanted;
}
