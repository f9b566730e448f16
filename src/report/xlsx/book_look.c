/* SPDX-License-Identifier: MIT */
#include "report/xlsx/book_look.h"

#include "base/length.h"

#include <stdio.h>
#include <string.h>

/* Ink on paper: dark heads on a light band, so that a grayscale print stays readable. */
#define INK_GRAY   0x595959
#define INK_LINK   0x1F3F7F
#define BAND       0xE7E6E6
#define INPUT_BAND 0xFFF8DC
#define WARN_BAND  0xF4E3D7
#define RULE       0x8C8C8C

static bool is_money(enum unit unit) {
    return unit >= UNIT_MONEY && unit <= UNIT_MONEY_PER_M;
}

/* Whether an inch value at 6 decimals is a whole number of 64ths. */
static bool is_64ths(int64_t value, uint8_t decimals) {
    return decimals == 6 && value % 15625 == 0;
}

void look_number_format(enum unit unit, uint8_t decimals, int64_t value, char *number) {
    char tail[12] = "";
    if (unit == UNIT_IN && is_64ths(value, decimals)) {
        (void)snprintf(number, 32, "# ?/\?\?");
        return;
    }
    if (unit == UNIT_MM && decimals == 6 && value % 100000 == 0) {
        decimals = 1;
    }
    if (decimals > 0) {
        (void)snprintf(tail, sizeof tail, ".%.*s", (int)decimals, "000000000");
    }
    (void)snprintf(number, 32, "%s%s%s", is_money(unit) ? "#,##0" : "0", tail,
                   unit == UNIT_PERCENT ? "\" %\"" : "");
}

bool look_whole_format(enum unit unit, uint8_t decimals, int64_t value, char *number) {
    int64_t one = 1;
    for (uint8_t d = 0; d < decimals; d++) {
        one *= 10;
    }
    const bool own = is_money(unit) || unit == UNIT_PERCENT || unit == UNIT_IN || unit == UNIT_MM ||
                     unit == UNIT_HOUR;
    if (decimals == 0 || own || value % one != 0) {
        return false;
    }
    (void)snprintf(number, 32, "General"); /* which shows decimals again once there are some */
    return true;
}

void look_shown(enum unit unit, uint8_t decimals, int64_t value, char *text, size_t size) {
    if (unit == UNIT_IN && is_64ths(value, decimals)) {
        (void)length_show(value / 15625 * NM_PER_64TH, LENGTH_INCH, text, size);
        return;
    }
    if (unit == UNIT_MM && decimals == 6 && value % 100000 == 0) {
        (void)figure_text(value / 100000, 1, text, size);
        return;
    }
    (void)figure_text(value, decimals, text, size);
    const size_t used = strlen(text);
    if (is_money(unit) && used > 6 && used + 2 < size) {
        (void)strncat(text, "  ", size - used - 1); /* room for the separators of thousands */
    }
    if (unit == UNIT_PERCENT && used + 3 < size) {
        (void)strncat(text, " %", size - used - 1);
    }
}

static void set_head(lxw_format *f) {
    format_set_bold(f);
    format_set_bg_color(f, BAND);
    format_set_text_wrap(f);
    format_set_align(f, LXW_ALIGN_VERTICAL_BOTTOM);
    format_set_bottom(f, LXW_BORDER_THIN);
    format_set_bottom_color(f, RULE);
}

static void set_letters(lxw_format *f, enum look look) {
    static const struct {
        double size;
        bool bold;
    } letters[LOOK_COUNT] = {
        [LOOK_TITLE] = {15, true}, [LOOK_NOTE] = {8.5, false},  [LOOK_SECTION] = {11, true},
        [LOOK_PART] = {11, true},  [LOOK_PART_SUM] = {9, true}, [LOOK_LABEL] = {9, true},
        [LOOK_TOTAL] = {9, true},  [LOOK_GRAND] = {11, true},   [LOOK_CHECK] = {9, true},
        [LOOK_STATE] = {11, true},
    };
    format_set_font_name(f, "Arial");
    format_set_font_size(f, letters[look].size > 0 ? letters[look].size : 9);
    if (letters[look].bold) {
        format_set_bold(f);
    }
}

static void set_side(lxw_format *f, enum look look, bool number) {
    const bool low = look == LOOK_PART || look == LOOK_PART_SUM;
    format_set_align(f, low ? LXW_ALIGN_VERTICAL_BOTTOM : LXW_ALIGN_VERTICAL_TOP);
    if (number && look != LOOK_HEAD && look != LOOK_TALL) {
        format_set_align(f, LXW_ALIGN_RIGHT);
    } else if (!number && look != LOOK_HEAD_RIGHT && look != LOOK_TALL) {
        format_set_align(f, LXW_ALIGN_LEFT); /* whichever way the letters of its words run */
    }
}

static void set_look(lxw_format *f, enum look look, bool number) {
    set_letters(f, look);
    set_side(f, look, number);
    switch (look) {
    case LOOK_NOTE:
        format_set_font_color(f, INK_GRAY);
        break;
    case LOOK_HEAD:
        set_head(f);
        break;
    case LOOK_HEAD_RIGHT:
        set_head(f);
        format_set_align(f, LXW_ALIGN_RIGHT);
        break;
    case LOOK_HEAD_INDENTED:
        set_head(f);
        format_set_indent(f, 1);
        break;
    case LOOK_TALL:
        set_head(f);
        format_set_rotation(f, 90);
        format_set_align(f, LXW_ALIGN_CENTER);
        break;
    case LOOK_WRAP:
        format_set_text_wrap(f);
        break;
    case LOOK_INPUT:
        format_set_unlocked(f);
        format_set_bg_color(f, INPUT_BAND);
        format_set_bottom(f, LXW_BORDER_HAIR);
        format_set_bottom_color(f, RULE);
        break;
    case LOOK_TOTAL:
        format_set_top(f, LXW_BORDER_THIN);
        format_set_top_color(f, RULE);
        break;
    case LOOK_GRAND:
        format_set_top(f, LXW_BORDER_THIN);
        format_set_bottom(f, LXW_BORDER_DOUBLE);
        break;
    case LOOK_WARN:
        format_set_bg_color(f, WARN_BAND);
        format_set_text_wrap(f);
        break;
    case LOOK_LINK:
        format_set_underline(f, LXW_UNDERLINE_SINGLE);
        format_set_font_color(f, INK_LINK);
        break;
    case LOOK_STATE:
        format_set_border(f, LXW_BORDER_THIN);
        break;
    case LOOK_UNIT:
    case LOOK_CHECK:
        format_set_indent(f, 1);
        break;
    default:
        break;
    }
}

lxw_format *look_format(struct book_looks *looks, enum look look, const char *number, bool wrap) {
    for (size_t i = 0; i < looks->count; i++) {
        if (looks->made[i].look == look && looks->made[i].wrap == wrap &&
            strcmp(looks->made[i].number, number) == 0) {
            return looks->made[i].format;
        }
    }
    lxw_format *const format = workbook_add_format(looks->workbook);
    if (format == NULL || looks->count == BOOK_MOST_FORMATS) {
        return format;
    }
    set_look(format, look, number[0] != '\0');
    if (number[0] != '\0') {
        char with_sign[3 * 32 + 4];
        (void)snprintf(with_sign, sizeof with_sign, "+%s;-%s;%s", number, number, number);
        format_set_num_format(format, look == LOOK_DIFFERENCE ? with_sign : number);
    }
    if (wrap) {
        format_set_text_wrap(format);
    }
    looks->made[looks->count].look = (uint8_t)look;
    looks->made[looks->count].wrap = wrap;
    (void)snprintf(looks->made[looks->count].number, sizeof looks->made[looks->count].number, "%s",
                   number);
    looks->made[looks->count++].format = format;
    return format;
}
