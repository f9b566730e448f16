/* SPDX-License-Identifier: MIT */
/* A chart shows what the library has cached of its cells, which is 0 for formulas; so each chart
 * gets the cells' own values beside their ranges. */
#include "report/xlsx/book_objects.h"

#include <stdlib.h>
#include <string.h>

bool book_put_pictures(const struct book *book, lxw_worksheet *const *sheets) {
    bool held = true;
    for (size_t i = 0; held && i < book->picture_count; i++) {
        const struct book_picture *const p = &book->pictures[i];
        char *const alt = strdup(p->alt); /* the library wants it writable, and copies it */
        lxw_image_options options = {
            .x_scale = p->scale,
            .y_scale = p->scale,
            .x_offset = 2,
            .y_offset = (int32_t)(p->below * 96 / 72) + 2,
            .object_position = LXW_OBJECT_MOVE_DONT_SIZE,
            .description = alt,
        };
        held = alt != NULL &&
               worksheet_insert_image_buffer_opt(sheets[p->sheet], p->row, p->column, p->png,
                                                 p->size, &options) == LXW_NO_ERROR;
        free(alt);
    }
    return held;
}

/* --- charts --- */

/* The cells of a column of a chart, from the row of its head on; NULL: there is none. A book has
 * many cells, so they are gone over once. To be freed; NULL: memory is out. */
static const struct cell **column_of(const struct book *book, const struct book_chart *chart,
                                     uint16_t column) {
    const uint32_t head = chart->first - 1;
    const size_t count = (size_t)(chart->last - head) + 1;
    /* NOLINTNEXTLINE(bugprone-sizeof-expression): pointers they are */
    const struct cell **const cells = calloc(count, sizeof *cells);
    for (size_t i = 0; cells != NULL && i < book->cell_count; i++) {
        const struct cell *const c = book_cell(book, i);
        if (c->column == column && c->sheet == chart->sheet && c->row >= head &&
            c->row <= chart->last && cells[c->row - head] == NULL) {
            cells[c->row - head] = c;
        }
    }
    return cells;
}

static double value_of(const struct book *book, const struct cell *cell) {
    const bool own = cell->kind == CELL_NUMBER || cell->kind == CELL_FORMULA;
    double value =
        (double)(own ? book_own(book, cell)->number : tape_amount(book->tape, cell->figure));
    for (uint8_t d = 0; d < cell->decimals; d++) {
        value /= 10;
    }
    return value;
}

/* Fills a range's cache with what its cells show, words or numbers. false: memory is out. */
static bool fill_cache(const struct book *book, const struct book_chart *chart,
                       const struct cell *const *cells, bool words, lxw_series_range *range) {
    range->ignore_cache = 1;
    range->has_string_cache = words;
    for (uint32_t row = chart->first; row <= chart->last; row++) {
        const struct cell *const cell = cells[row - chart->first];
        lxw_series_data_point *const point = calloc(1, sizeof *point);
        if (point == NULL) {
            return false;
        }
        point->no_data = cell == NULL;
        if (cell != NULL && cell->kind == CELL_TEXT) {
            point->is_string = 1;
            point->string = strdup(book_words(book, cell));
        } else if (cell != NULL) {
            point->number = value_of(book, cell);
        }
        STAILQ_INSERT_TAIL(range->data_cache, point, list_pointers);
        range->num_data_points++;
        if (point->is_string && point->string == NULL) {
            return false;
        }
    }
    return true;
}

/* Grays and slants that differ in print: the first in one gray, the others hatched. */
static void set_look(lxw_chart_series *series, uint16_t number) {
    static const struct {
        uint8_t pattern;
        lxw_color_t front, back;
    } looks[] = {
        {LXW_CHART_PATTERN_WIDE_UPWARD_DIAGONAL, 0x404040, 0xFFFFFF},
        {LXW_CHART_PATTERN_PERCENT_20, 0x404040, 0xFFFFFF},
        {LXW_CHART_PATTERN_WIDE_DOWNWARD_DIAGONAL, 0x404040, 0xD9D9D9},
    };
    lxw_chart_line line = {.color = 0x202020, .width = 0.75F};
    chart_series_set_line(series, &line);
    if (number == 0) {
        lxw_chart_fill fill = {.color = 0x808080};
        chart_series_set_fill(series, &fill);
        return;
    }
    const size_t n = (number - 1u) % (sizeof looks / sizeof *looks);
    lxw_chart_pattern pattern = {
        .type = looks[n].pattern, .fg_color = looks[n].front, .bg_color = looks[n].back};
    chart_series_set_pattern(series, &pattern);
}

/* words, cells: of the chart's words and of the series. */
static bool add_series(const struct book *book, const struct book_chart *chart, lxw_chart *made,
                       uint16_t number, const struct cell *const *words,
                       const struct cell *const *cells) {
    const char *const sheet = book->sheets[chart->sheet].name;
    const uint16_t column = (uint16_t)(chart->words + 1 + number);
    const struct cell *const name = cells[0];
    lxw_chart_series *const series = chart_add_series(made, NULL, NULL);
    if (series == NULL) {
        return false;
    }
    chart_series_set_categories(series, sheet, chart->first, chart->words, chart->last,
                                chart->words);
    chart_series_set_values(series, sheet, chart->first, column, chart->last, column);
    if (name != NULL && name->kind == CELL_TEXT) {
        chart_series_set_name(series, book_words(book, name));
    }
    set_look(series, number);
    if (chart->series == 1) {
        lxw_chart_font small = {.name = "Arial", .size = 9};
        chart_series_set_labels(series);
        chart_series_set_labels_font(series, &small);
    }
    return fill_cache(book, chart, words + 1, true, series->categories) &&
           fill_cache(book, chart, cells + 1, false, series->values);
}

static bool add_all_series(const struct book *book, const struct book_chart *chart,
                           lxw_chart *made) {
    const struct cell **const words = column_of(book, chart, chart->words);
    bool held = words != NULL;
    for (uint16_t i = 0; held && i < chart->series; i++) {
        const struct cell **const cells = column_of(book, chart, (uint16_t)(chart->words + 1 + i));
        held = cells != NULL && add_series(book, chart, made, i, words, cells);
        free((void *)cells);
    }
    free((void *)words);
    return held;
}

static bool insert_chart(lxw_worksheet *sheet, const struct book_chart *chart, lxw_chart *made) {
    char *const alt = strdup(chart->alt); /* as of a picture */
    lxw_chart_options options = {
        .x_scale = 1.0,
        .y_offset = 3, /* clear of a page's edge */
        .y_scale = book_chart_height(chart) / 216,
        .object_position = LXW_OBJECT_MOVE_DONT_SIZE,
        .description = alt,
    };
    const bool held = alt != NULL && worksheet_insert_chart_opt(sheet, chart->row, chart->column,
                                                                made, &options) == LXW_NO_ERROR;
    free(alt);
    return held;
}

static bool put_chart(const struct book *book, const struct book_chart *chart,
                      lxw_workbook *workbook, lxw_worksheet *sheet) {
    const bool bars = chart->kind == CHART_BARS;
    lxw_chart *const made = workbook_add_chart(workbook, bars ? LXW_CHART_BAR : LXW_CHART_COLUMN);
    lxw_chart_font small = {.name = "Arial", .size = 9};
    lxw_chart_font head = {.name = "Arial", .size = 11, .bold = LXW_TRUE};
    lxw_chart_line pale = {.color = 0xD9D9D9, .width = 0.5F};
    if (made == NULL || !add_all_series(book, chart, made)) {
        return false;
    }
    chart_title_set_name(made, chart->title);
    chart_title_set_name_font(made, &head);
    /* Of bars the library calls the upright axis, that of the words, y. */
    lxw_chart_axis *const words = bars ? made->y_axis : made->x_axis;
    lxw_chart_axis *const numbers = bars ? made->x_axis : made->y_axis;
    chart_axis_set_name(numbers, chart->axis);
    chart_axis_set_name_font(numbers, &small);
    if (chart->from_zero) {
        chart_axis_set_min(numbers, 0);
    }
    chart_axis_set_num_font(words, &small);
    chart_axis_set_interval_unit(words, 1); /* every word */
    chart_axis_set_num_font(numbers, &small);
    chart_axis_major_gridlines_set_visible(words, LXW_FALSE);
    chart_axis_major_gridlines_set_visible(numbers, LXW_TRUE);
    chart_axis_major_gridlines_set_line(numbers, &pale);
    if (bars) {
        chart_axis_set_reverse(words); /* the first word at the top */
        chart_axis_set_crossing_max(words);
        chart_axis_set_label_position(words, LXW_CHART_AXIS_LABEL_POSITION_LOW);
    }
    if (chart->series == 1) {
        chart_legend_set_position(made, LXW_CHART_LEGEND_NONE);
    } else {
        chart_legend_set_position(made, LXW_CHART_LEGEND_BOTTOM);
        chart_legend_set_font(made, &small);
    }
    return insert_chart(sheet, chart, made);
}

bool book_put_charts(const struct book *book, lxw_workbook *workbook,
                     lxw_worksheet *const *sheets) {
    bool held = true;
    for (size_t i = 0; held && i < book->chart_count; i++) {
        const struct book_chart *const chart = &book->charts[i];
        held = put_chart(book, chart, workbook, sheets[chart->sheet]);
    }
    return held;
}
