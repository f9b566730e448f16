/* SPDX-License-Identifier: MIT */
/* By ECMA-376 part 1 (SpreadsheetML) and part 2 (packages). Names of tags are looked at without
 * their namespaces, which differ between its two editions. */
#include "read/sheet/xlsx_parts.h"

#include "base/text.h"
#include "read/sheet/sheet.h"

#include <stdlib.h>
#include <string.h>

#define MOST_SHARED  ((size_t)2000000)
#define MOST_FORMS   ((size_t)65536) /* more than the format allows */
#define MOST_CUSTOMS ((size_t)1000)

static struct pool *pool_of(const struct xlsx *xlsx) {
    return &xlsx->reading->problems->pool;
}

static bool is_good(const struct xlsx *xlsx) {
    return xlsx->reading->grid.large == NULL && !xlsx->failed;
}

/* Whether the type of a relation ends so: `.../officeDocument`. */
static bool is_relation(const struct tag *tag, const char *ending) {
    size_t size;
    const char *const type = attribute_value(tag, NULL, "Type", &size);
    const size_t length = strlen(ending);
    return strcmp(tag->name, "Relationship") == 0 && type != NULL && size > length &&
           type[size - length - 1] == '/' && memcmp(type + size - length, ending, length) == 0;
}

/* The part that a relation of the part `of` means: from the root, or from the folder of `of`. */
static const char *target(const struct tag *tag, const char *of, struct pool *pool) {
    const char *name = attribute_text(tag, NULL, "Target", pool);
    const char *const slash = strrchr(of, '/');
    size_t folder = slash == NULL ? 0 : (size_t)(slash - of) + 1;
    if (name == NULL) {
        return NULL;
    }
    if (name[0] == '/') {
        return name + 1;
    }
    while (strncmp(name, "./", 2) == 0) {
        name += 2;
    }
    while (strncmp(name, "../", 3) == 0) {
        for (folder -= folder > 0 ? 1 : 0; folder > 0 && of[folder - 1] != '/'; folder--) {
        }
        name += 3;
    }
    return pool_format(pool, "%.*s%s", (int)folder, of, name);
}

/* --- the part that all hangs on --- */

struct root {
    struct pool *pool;
    const char *workbook;
};

static bool open_root(void *context, const struct tag *tag) {
    struct root *const root = context;
    if (is_relation(tag, "officeDocument")) {
        root->workbook = target(tag, "", root->pool);
        return false;
    }
    return true;
}

const char *xlsx_workbook(struct sheet_reading *reading) {
    static const char part[] = "_rels/.rels";
    struct root root = {.pool = &reading->problems->pool};
    const struct part_reader reader = {.open = open_root, .context = &root};
    if (!archive_has(&reading->archive, part) || !archive_read(&reading->archive, part, &reader)) {
        return NULL;
    }
    return root.workbook;
}

/* --- the sheets --- */

static bool open_workbook(void *context, const struct tag *tag) {
    struct xlsx *const xlsx = context;
    if (strcmp(tag->name, "workbookPr") == 0) {
        xlsx->from_1904 = attribute_says(tag, NULL, "date1904", "1") ||
                          attribute_says(tag, NULL, "date1904", "true");
    } else if (strcmp(tag->name, "sheet") == 0) {
        const char *const name = attribute_text(tag, NULL, "name", pool_of(xlsx));
        const bool hidden = attribute_says(tag, NULL, "state", "hidden") ||
                            attribute_says(tag, NULL, "state", "veryHidden");
        if (name != NULL && sheet_take(xlsx->reading, name, hidden)) {
            xlsx->wanted = attribute_text(tag, NULL, "id", pool_of(xlsx));
        }
    }
    return true;
}

struct relations {
    struct xlsx *xlsx;
    const char *workbook;
};

static bool open_relations(void *context, const struct tag *tag) {
    struct relations *const r = context;
    struct xlsx *const xlsx = r->xlsx;
    if (xlsx->wanted != NULL && attribute_says(tag, NULL, "Id", xlsx->wanted) &&
        is_relation(tag, "worksheet")) {
        xlsx->sheet = target(tag, r->workbook, pool_of(xlsx));
    } else if (is_relation(tag, "sharedStrings")) {
        xlsx->texts = target(tag, r->workbook, pool_of(xlsx));
    } else if (is_relation(tag, "styles")) {
        xlsx->styles = target(tag, r->workbook, pool_of(xlsx));
    }
    return true;
}

bool xlsx_find_parts(struct xlsx *xlsx, const char *workbook) {
    struct archive *const archive = &xlsx->reading->archive;
    struct relations relations = {xlsx, workbook};
    const struct part_reader sheets = {.open = open_workbook, .context = xlsx};
    const struct part_reader parts = {.open = open_relations, .context = &relations};
    const char *const slash = strrchr(workbook, '/');
    const int folder = slash == NULL ? 0 : (int)(slash - workbook) + 1;
    const char *const name =
        pool_format(pool_of(xlsx), "%.*s_rels/%s.rels", folder, workbook, workbook + folder);

    if (name == NULL || !archive_read(archive, workbook, &sheets) || !xlsx->reading->found) {
        return false;
    }
    if (!archive_read(archive, name, &parts)) {
        return false;
    }
    if (xlsx->sheet == NULL) { /* a sheet of a chart, or a part that lacks */
        archive->fault = ARCHIVE_DAMAGED;
        return false;
    }
    return true;
}

/* --- texts --- */

static bool open_texts(void *context, const struct tag *tag) {
    struct xlsx *const xlsx = context;
    xlsx->skipping = xlsx->skipping || strcmp(tag->name, "rPh") == 0; /* how it is pronounced */
    xlsx->in_text = !xlsx->skipping && strcmp(tag->name, "t") == 0;
    if (strcmp(tag->name, "si") == 0) {
        xlsx->reading->cell.size = 0;
    }
    return true;
}

static bool take_text(void *context, const char *text, size_t size) {
    struct xlsx *const xlsx = context;
    if (xlsx->in_text) {
        xlsx->failed = xlsx->failed || !gather(&xlsx->reading->cell, text, size);
    }
    return !xlsx->failed;
}

static bool close_texts(void *context, const char *name) {
    struct xlsx *const xlsx = context;
    const struct gathered *const cell = &xlsx->reading->cell;
    xlsx->in_text = false;
    if (strcmp(name, "rPh") == 0) {
        xlsx->skipping = false;
    }
    if (strcmp(name, "si") != 0) {
        return true;
    }
    xlsx->shared_bytes += cell->size;
    if (xlsx->shared_count == MOST_SHARED) {
        cell_grid_over(&xlsx->reading->grid, MOST_SHARED, "texts that cells share");
    } else if (xlsx->shared_bytes > SHEET_MOST_TEXT) {
        xlsx->reading->grid.large = SHEET_LARGE_TEXT;
    }
    xlsx->shared = array_grow(xlsx->shared, &xlsx->shared_room, xlsx->shared_count + 1,
                              sizeof *xlsx->shared, &xlsx->failed);
    if (!is_good(xlsx)) {
        return false;
    }
    const char *const text =
        cell->size == 0 ? "" : pool_text(pool_of(xlsx), cell->text, cell->size);
    xlsx->failed = text == NULL;
    xlsx->shared[xlsx->shared_count++] = (struct shared_text){text, cell->size};
    return !xlsx->failed;
}

bool xlsx_read_texts(struct xlsx *xlsx) {
    const struct part_reader reader = {
        .open = open_texts, .close = close_texts, .text = take_text, .context = xlsx};
    return xlsx->texts == NULL ||
           (archive_read(&xlsx->reading->archive, xlsx->texts, &reader) && is_good(xlsx));
}

/* --- formats --- */

static bool add_custom(struct xlsx *xlsx, const struct tag *tag) {
    const char *const code = attribute_text(tag, NULL, "formatCode", pool_of(xlsx));
    if (xlsx->custom_count == MOST_CUSTOMS) {
        cell_grid_over(&xlsx->reading->grid, MOST_CUSTOMS, "formats of numbers");
    }
    xlsx->customs = array_grow(xlsx->customs, &xlsx->custom_room, xlsx->custom_count + 1,
                               sizeof *xlsx->customs, &xlsx->failed);
    if (!is_good(xlsx) || code == NULL) {
        return false;
    }
    xlsx->customs[xlsx->custom_count++] =
        (struct custom_format){.id = attribute_number(tag, NULL, "numFmtId", UINT32_MAX, 0),
                               .form = number_form_of(code, pool_of(xlsx))};
    return true;
}

static bool add_form(struct xlsx *xlsx, const struct tag *tag) {
    const uint32_t id = attribute_number(tag, NULL, "numFmtId", UINT32_MAX, 0);
    struct number_form form = number_form_built_in(id);
    for (size_t i = 0; i < xlsx->custom_count; i++) {
        form = xlsx->customs[i].id == id ? xlsx->customs[i].form : form;
    }
    if (xlsx->form_count == MOST_FORMS) {
        cell_grid_over(&xlsx->reading->grid, MOST_FORMS, "formats of cells");
    }
    xlsx->forms = array_grow(xlsx->forms, &xlsx->form_room, xlsx->form_count + 1,
                             sizeof *xlsx->forms, &xlsx->failed);
    if (!is_good(xlsx)) {
        return false;
    }
    xlsx->forms[xlsx->form_count++] = form;
    return true;
}

static bool open_styles(void *context, const struct tag *tag) {
    struct xlsx *const xlsx = context;
    if (strcmp(tag->name, "cellXfs") == 0) {
        xlsx->in_forms = true;
    } else if (strcmp(tag->name, "numFmt") == 0 && xlsx->form_count == 0) {
        return add_custom(xlsx, tag);
    } else if (strcmp(tag->name, "xf") == 0 && xlsx->in_forms) {
        return add_form(xlsx, tag);
    }
    return true;
}

static bool close_styles(void *context, const char *name) {
    (void)context;
    return strcmp(name, "cellXfs") != 0; /* nothing behind it is used */
}

bool xlsx_read_styles(struct xlsx *xlsx) {
    const struct part_reader reader = {.open = open_styles, .close = close_styles, .context = xlsx};
    return xlsx->styles == NULL ||
           (archive_read(&xlsx->reading->archive, xlsx->styles, &reader) && is_good(xlsx));
}

void xlsx_parts_clear(struct xlsx *xlsx) {
    free(xlsx->shared);
    free(xlsx->customs);
    free(xlsx->forms);
}
