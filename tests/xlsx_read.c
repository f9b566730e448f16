/* SPDX-License-Identifier: MIT */
#include "xlsx_read.h"

#include "cmocka_all.h"

#include <expat.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <zip.h>

static void *grown(void *list, size_t count, size_t *room, size_t size) {
    if (count < *room) {
        return list;
    }
    *room = *room == 0 ? 64 : *room * 2;
    void *const more = realloc(list, *room * size);
    assert_non_null(more);
    return more;
}

char *xlsx_part(const char *path, const char *name) {
    zip_stat_t about;
    zip_t *const archive = zip_open(path, ZIP_RDONLY, NULL);
    assert_non_null(archive);
    if (zip_stat(archive, name, 0, &about) != 0) {
        zip_discard(archive);
        return NULL;
    }
    char *const bytes = calloc((size_t)about.size + 1, 1);
    zip_file_t *const part = zip_fopen(archive, name, 0);
    assert_non_null(bytes);
    assert_non_null(part);
    assert_int_equal(zip_fread(part, bytes, about.size), about.size);
    (void)zip_fclose(part);
    zip_discard(archive);
    return bytes;
}

/* --- parts --- */

struct reader {
    struct xlsx *book;
    char *words; /* what stands between the tags, since the last that counts */
    size_t used, room;
    uint16_t sheet;
    char type[16];
};

static const char *attribute(const XML_Char **attributes, const char *name) {
    for (; attributes[0] != NULL; attributes += 2) {
        if (strcmp(attributes[0], name) == 0) {
            return attributes[1];
        }
    }
    return NULL;
}

/* `AB12`, dollars passed over; where it ends. */
static const char *reference_at(const char *text, uint32_t *row, uint16_t *column) {
    unsigned letters = 0;
    unsigned long number = 0;
    const char *at = text;
    at += *at == '$' ? 1 : 0;
    for (; *at >= 'A' && *at <= 'Z'; at++) {
        letters = letters * 26 + (unsigned)(*at - 'A') + 1;
    }
    at += *at == '$' ? 1 : 0;
    if (letters == 0 || *at < '0' || *at > '9') {
        return NULL;
    }
    for (; *at >= '0' && *at <= '9'; at++) {
        number = number * 10 + (unsigned long)(*at - '0');
    }
    *row = (uint32_t)(number - 1);
    *column = (uint16_t)(letters - 1);
    return at;
}

static char *taken(struct reader *r) {
    char *const text = strdup(r->words == NULL ? "" : r->words);
    assert_non_null(text);
    r->used = 0;
    if (r->words != NULL) {
        r->words[0] = '\0';
    }
    return text;
}

static void see_words(void *to, const XML_Char *words, int size) {
    struct reader *const r = to;
    while (r->used + (size_t)size + 1 > r->room) {
        r->room = r->room == 0 ? 256 : r->room * 2;
        r->words = realloc(r->words, r->room);
        assert_non_null(r->words);
    }
    memcpy(r->words + r->used, words, (size_t)size);
    r->used += (size_t)size;
    r->words[r->used] = '\0';
}

static void see_start(void *to, const XML_Char *name, const XML_Char **attributes) {
    struct reader *const r = to;
    struct xlsx *const book = r->book;
    if (strcmp(name, "sheet") == 0) {
        book->names[book->sheet_count] = strdup(attribute(attributes, "name"));
        assert_non_null(book->names[book->sheet_count++]);
    } else if (strcmp(name, "c") == 0) {
        const char *const type = attribute(attributes, "t");
        const char *const style = attribute(attributes, "s");
        book->cells = grown(book->cells, book->count, &book->room, sizeof *book->cells);
        struct xlsx_cell *const cell = &book->cells[book->count++];
        *cell = (struct xlsx_cell){.sheet = r->sheet,
                                   .style = style == NULL ? 0 : (unsigned)strtoul(style, NULL, 10)};
        assert_non_null(reference_at(attribute(attributes, "r"), &cell->row, &cell->column));
        (void)snprintf(r->type, sizeof r->type, "%s", type == NULL ? "n" : type);
    }
    if (strcmp(name, "si") == 0 || strcmp(name, "f") == 0 || strcmp(name, "v") == 0 ||
        strcmp(name, "is") == 0) {
        free(taken(r));
    }
}

static struct xlsx_value value_of(struct reader *r, char *text) {
    struct xlsx_value value = {.kind = XLSX_NUMBER};
    char *end = NULL;
    if (strcmp(r->type, "n") == 0) {
        value.number = strtod(text, &end);
        assert_true(end != text && *end == '\0');
        free(text);
        return value;
    }
    value.kind = strcmp(r->type, "e") == 0 ? XLSX_ERROR : XLSX_TEXT;
    if (strcmp(r->type, "s") == 0) {
        const size_t number = strtoul(text, NULL, 10);
        assert_true(number < r->book->text_count);
        free(text);
        value.text = r->book->texts[number];
        return value;
    }
    struct xlsx *const book = r->book; /* keeps the text for the value */
    book->texts = grown(book->texts, book->text_count, &book->text_room, sizeof *book->texts);
    book->texts[book->text_count++] = text;
    value.text = text;
    return value;
}

static void see_end(void *to, const XML_Char *name) {
    struct reader *const r = to;
    struct xlsx *const book = r->book;
    if (strcmp(name, "si") == 0) {
        book->texts = grown(book->texts, book->text_count, &book->text_room, sizeof *book->texts);
        book->texts[book->text_count++] = taken(r);
    } else if (strcmp(name, "f") == 0 && book->count > 0) {
        book->cells[book->count - 1].formula = taken(r);
    } else if ((strcmp(name, "v") == 0 || strcmp(name, "is") == 0) && book->count > 0) {
        book->cells[book->count - 1].value = value_of(r, taken(r));
    }
}

static void read_part(struct reader *r, const char *path, const char *name) {
    char *const part = xlsx_part(path, name);
    if (part == NULL) {
        return;
    }
    XML_Parser parser = XML_ParserCreate(NULL);
    assert_non_null(parser);
    XML_SetUserData(parser, r);
    XML_SetElementHandler(parser, see_start, see_end);
    XML_SetCharacterDataHandler(parser, see_words);
    assert_int_equal(XML_Parse(parser, part, (int)strlen(part), 1), XML_STATUS_OK);
    XML_ParserFree(parser);
    free(part);
    free(taken(r));
}

void xlsx_read(struct xlsx *book, const char *path) {
    *book = (struct xlsx){0};
    struct reader reader = {.book = book};
    read_part(&reader, path, "xl/sharedStrings.xml");
    read_part(&reader, path, "xl/workbook.xml");
    for (; reader.sheet < book->sheet_count; reader.sheet++) {
        char name[64];
        (void)snprintf(name, sizeof name, "xl/worksheets/sheet%d.xml", reader.sheet + 1);
        read_part(&reader, path, name);
    }
    free(reader.words);
}

void xlsx_clear(struct xlsx *book) {
    for (size_t i = 0; i < book->count; i++) {
        free(book->cells[i].formula);
    }
    for (size_t i = 0; i < book->text_count; i++) {
        free(book->texts[i]);
    }
    for (size_t i = 0; i < book->sheet_count; i++) {
        free(book->names[i]);
    }
    free(book->cells);
    free(book->texts);
    *book = (struct xlsx){0};
}

static struct xlsx_cell *cell_at(const struct xlsx *book, uint16_t sheet, uint32_t row,
                                 uint16_t column) {
    for (size_t i = 0; i < book->count; i++) {
        struct xlsx_cell *const cell = &book->cells[i];
        if (cell->sheet == sheet && cell->row == row && cell->column == column) {
            return cell;
        }
    }
    return NULL;
}

/* SIZE_MAX: there is none of that name. */
static size_t sheet_of(const struct xlsx *book, const char *name, size_t size) {
    for (size_t s = 0; s < book->sheet_count; s++) {
        if (strlen(book->names[s]) == size && strncmp(book->names[s], name, size) == 0) {
            return s;
        }
    }
    return SIZE_MAX;
}

struct xlsx_cell *xlsx_at(const struct xlsx *book, const char *sheet, const char *reference) {
    uint32_t row;
    uint16_t column;
    const size_t number = sheet_of(book, sheet, strlen(sheet));
    assert_true(number != SIZE_MAX);
    assert_non_null(reference_at(reference, &row, &column));
    return cell_at(book, (uint16_t)number, row, column);
}

/* --- formulas: a descent over the text --- */

struct area {
    uint16_t sheet, column, last_column;
    uint32_t row, last_row;
};

struct formula {
    struct xlsx *book;
    const char *at;
    uint16_t sheet;
};

static const struct xlsx_value division = {.kind = XLSX_ERROR, .text = "#DIV/0!"};
static const struct xlsx_value no_value = {.kind = XLSX_ERROR, .text = "#VALUE!"};
static const struct xlsx_value circle = {.kind = XLSX_ERROR, .text = "circle"};

static struct xlsx_value number(double value) {
    return (struct xlsx_value){.kind = XLSX_NUMBER, .number = value};
}

double xlsx_round(double value, int decimals) {
    char digits[40];
    /* the 15 digits, then the half of the last wanted place added by hand: what printf would do
     * at a half goes by the bits of the double */
    (void)snprintf(digits, sizeof digits, "%.14e", value);
    const char *const e = strchr(digits, 'e');
    assert_non_null(e);
    const long exponent = strtol(e + 1, NULL, 10);
    const bool minus = digits[0] == '-';
    __int128 whole = 0;
    for (const char *c = digits; c < e; c++) {
        if (*c >= '0' && *c <= '9') {
            whole = whole * 10 + (*c - '0');
        }
    }
    /* value = whole * 10^(exponent - 14) */
    long drop = 14 - exponent - decimals;
    if (drop > 18) {
        return 0;
    }
    if (drop > 0) {
        __int128 step = 1;
        for (; drop > 0; drop--) {
            step *= 10;
        }
        whole = (whole + step / 2) / step;
        (void)snprintf(digits, sizeof digits, "%s%llde%d", minus ? "-" : "", (long long)whole,
                       -decimals);
    }
    return strtod(digits, NULL);
}

static struct xlsx_value expression(struct formula *f);

static void fault(struct formula *f, const char *what) {
    f->book->fault = f->book->fault == NULL ? what : f->book->fault;
}

static bool take(struct formula *f, const char *token) {
    const size_t size = strlen(token);
    if (strncmp(f->at, token, size) != 0) {
        return false;
    }
    f->at += size;
    return true;
}

static void need(struct formula *f, const char *token) {
    if (!take(f, token)) {
        fault(f, "a token that was expected is not there");
    }
}

/* A reference or a range; false, and nothing read: it is none. */
static bool area_at(struct formula *f, struct area *area) {
    const size_t name = strspn(f->at, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz");
    const char *at = f->at;
    area->sheet = f->sheet;
    if (at[name] == '!') {
        const size_t sheet = sheet_of(f->book, at, name);
        if (sheet == SIZE_MAX) {
            fault(f, "a sheet that is not there");
            return false;
        }
        area->sheet = (uint16_t)sheet;
        at += name + 1;
    }
    at = reference_at(at, &area->row, &area->column);
    if (at == NULL) {
        return false;
    }
    area->last_row = area->row;
    area->last_column = area->column;
    if (*at == ':') {
        at = reference_at(at + 1, &area->last_row, &area->last_column);
        if (at == NULL) {
            return false;
        }
    }
    f->at = at;
    return true;
}

static struct xlsx_value value_at(struct xlsx *book, uint16_t sheet, uint32_t row,
                                  uint16_t column) {
    struct xlsx_cell *const cell = cell_at(book, sheet, row, column);
    return cell == NULL ? (struct xlsx_value){0} : xlsx_work_out(book, cell);
}

/* SUM and SUMPRODUCT: texts and empty cells count as nothing. */
static struct xlsx_value sum_of(struct formula *f, bool product) {
    struct area areas[2];
    size_t count = 0;
    double sum = 0;
    do {
        if (count == 2 || !area_at(f, &areas[count++])) {
            fault(f, "a range is not there");
            return no_value;
        }
    } while (product && take(f, ","));
    need(f, ")");
    for (uint32_t row = 0; row <= areas[0].last_row - areas[0].row; row++) {
        for (uint16_t c = 0; c <= areas[0].last_column - areas[0].column; c++) {
            double term = 1;
            for (size_t a = 0; a < count; a++) {
                const struct xlsx_value v = value_at(f->book, areas[a].sheet, areas[a].row + row,
                                                     (uint16_t)(areas[a].column + c));
                if (v.kind == XLSX_ERROR) {
                    return v;
                }
                term *= v.kind == XLSX_NUMBER ? v.number : 0;
            }
            sum += term;
        }
    }
    const bool alike =
        count == 1 ||
        (areas[0].last_row - areas[0].row == areas[1].last_row - areas[1].row &&
         areas[0].last_column - areas[0].column == areas[1].last_column - areas[1].column);
    return alike ? number(sum) : no_value;
}

/* SUMIF over a column, of cells beside which something stands in another. */
static struct xlsx_value sum_beside(struct formula *f) {
    struct area beside;
    struct area of;
    double sum = 0;
    if (!area_at(f, &beside)) {
        fault(f, "a range is not there");
        return no_value;
    }
    need(f, ",\"<>\",");
    if (!area_at(f, &of)) {
        fault(f, "a range is not there");
        return no_value;
    }
    need(f, ")");
    for (uint32_t row = 0; row <= of.last_row - of.row; row++) {
        const struct xlsx_value mark =
            value_at(f->book, beside.sheet, beside.row + row, beside.column);
        const struct xlsx_value v = value_at(f->book, of.sheet, of.row + row, of.column);
        if (mark.kind != XLSX_EMPTY && v.kind == XLSX_ERROR) {
            return v;
        }
        sum += mark.kind != XLSX_EMPTY && v.kind == XLSX_NUMBER ? v.number : 0;
    }
    return beside.column == beside.last_column && of.column == of.last_column ? number(sum)
                                                                              : no_value;
}

static bool is_true(struct xlsx_value value) {
    return value.kind == XLSX_NUMBER && value.number != 0;
}

#define MOST_ARGUMENTS 8

static struct xlsx_value function(struct formula *f, const char *name) {
    struct xlsx_value in[MOST_ARGUMENTS] = {{0}};
    size_t count = 0;
    if (strcmp(name, "SUM") == 0 || strcmp(name, "SUMPRODUCT") == 0) {
        return sum_of(f, strcmp(name, "SUMPRODUCT") == 0);
    }
    if (strcmp(name, "SUMIF") == 0) {
        return sum_beside(f);
    }
    do {
        if (count == MOST_ARGUMENTS) {
            fault(f, "too many arguments");
            return no_value;
        }
        in[count++] = expression(f);
    } while (take(f, ","));
    need(f, ")");
    if (strcmp(name, "IF") == 0 && count == 3) {
        return in[0].kind == XLSX_ERROR ? in[0] : (is_true(in[0]) ? in[1] : in[2]);
    }
    for (size_t i = 0; i < count; i++) {
        if (in[i].kind == XLSX_ERROR) {
            return in[i];
        }
    }
    if (strcmp(name, "ROUND") == 0 && count == 2) {
        return number(xlsx_round(in[0].number, (int)in[1].number));
    }
    if (strcmp(name, "MAX") == 0 && count == 2) {
        return number(in[0].number > in[1].number ? in[0].number : in[1].number);
    }
    if (strcmp(name, "MIN") == 0 && count == 2) {
        return number(in[0].number < in[1].number ? in[0].number : in[1].number);
    }
    if (strcmp(name, "INT") == 0 && count == 1) {
        const double cut = (double)(int64_t)in[0].number;
        return number(cut > in[0].number ? cut - 1 : cut);
    }
    fault(f, "a function that is not known");
    return no_value;
}

static struct xlsx_value primary(struct formula *f) {
    struct area area;
    char name[16] = "";
    if (take(f, "(")) {
        const struct xlsx_value value = expression(f);
        need(f, ")");
        return value;
    }
    if (*f->at == '"') {
        const char *const end = strchr(f->at + 1, '"');
        assert_non_null(end);
        char *const text = strndup(f->at + 1, (size_t)(end - f->at - 1));
        assert_non_null(text);
        f->at = end + 1;
        f->book->texts =
            grown(f->book->texts, f->book->text_count, &f->book->text_room, sizeof *f->book->texts);
        f->book->texts[f->book->text_count++] = text;
        return (struct xlsx_value){.kind = XLSX_TEXT, .text = text};
    }
    if ((*f->at >= '0' && *f->at <= '9') || *f->at == '.') {
        char *end = NULL;
        const double value = strtod(f->at, &end);
        f->at = end;
        return number(value);
    }
    if (area_at(f, &area)) {
        return value_at(f->book, area.sheet, area.row, area.column);
    }
    const size_t size = strspn(f->at, "ABCDEFGHIJKLMNOPQRSTUVWXYZ");
    if (size == 0 || size >= sizeof name || f->at[size] != '(') {
        fault(f, "neither number, reference nor function");
        f->at += *f->at != '\0' ? 1 : 0;
        return no_value;
    }
    memcpy(name, f->at, size);
    f->at += size + 1;
    return function(f, name);
}

static struct xlsx_value unary(struct formula *f) {
    if (take(f, "-")) {
        struct xlsx_value value = unary(f);
        value.number = -value.number;
        value.kind = value.kind == XLSX_EMPTY ? XLSX_NUMBER : value.kind;
        return value;
    }
    return primary(f);
}

static struct xlsx_value both(struct xlsx_value a, struct xlsx_value b, char sign) {
    if (a.kind == XLSX_ERROR || b.kind == XLSX_ERROR) {
        return a.kind == XLSX_ERROR ? a : b;
    }
    if (a.kind == XLSX_TEXT || b.kind == XLSX_TEXT) {
        return no_value;
    }
    switch (sign) {
    case '*':
        return number(a.number * b.number);
    case '/':
        return b.number == 0 ? division : number(a.number / b.number);
    case '+':
        return number(a.number + b.number);
    default:
        return number(a.number - b.number);
    }
}

static struct xlsx_value product(struct formula *f) {
    struct xlsx_value value = unary(f);
    while (*f->at == '*' || *f->at == '/') {
        const char sign = *f->at++;
        value = both(value, unary(f), sign);
    }
    return value;
}

static struct xlsx_value terms(struct formula *f) {
    struct xlsx_value value = product(f);
    while (*f->at == '+' || *f->at == '-') {
        const char sign = *f->at++;
        value = both(value, product(f), sign);
    }
    return value;
}

static struct xlsx_value expression(struct formula *f) {
    static const char *const signs[] = {"<=", ">=", "<>", "<", ">", "="};
    const struct xlsx_value left = terms(f);
    for (size_t i = 0; i < COUNT(signs); i++) {
        if (!take(f, signs[i])) {
            continue;
        }
        const struct xlsx_value right = terms(f);
        if (left.kind == XLSX_ERROR || right.kind == XLSX_ERROR) {
            return left.kind == XLSX_ERROR ? left : right;
        }
        const double a = left.number;
        const double b = right.number;
        const bool holds[] = {a <= b, a >= b, a < b || a > b, a<b, a> b, !(a < b) && !(a > b)};
        return number(holds[i] ? 1 : 0);
    }
    return left;
}

struct xlsx_value xlsx_formula(struct xlsx *book, uint16_t sheet, const char *formula) {
    struct formula f = {.book = book, .at = formula, .sheet = sheet};
    const struct xlsx_value value = expression(&f);
    if (*f.at != '\0') {
        fault(&f, "something behind the formula");
    }
    return value;
}

struct xlsx_value xlsx_work_out(struct xlsx *book, struct xlsx_cell *cell) {
    if (cell->formula == NULL) {
        return cell->value;
    }
    if (cell->visit == 1) {
        return circle;
    }
    if (cell->visit == 0) {
        cell->visit = 1;
        cell->found = xlsx_formula(book, cell->sheet, cell->formula);
        cell->visit = 2;
    }
    return cell->found;
}

void xlsx_forget(struct xlsx *book) {
    for (size_t i = 0; i < book->count; i++) {
        book->cells[i].visit = 0;
    }
}
