/* SPDX-License-Identifier: MIT */
/* Lists in workbooks, of parts that are written here: what cells give, and what is wrong with a
 * file. Then both kinds of file spoiled in over a thousand ways: each is read or refused in order.
 * Numbers of formats are those of ECMA-376 part 1, 18.8.30; files of other programs are read by
 * tests/outside/list_book.py. */
#include "draw.h"
#include "read/file/table.h"
#include "read/sheet/sheet.h"

#include "cmocka_all.h"
#include "file_bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <zip.h>

#define XLSX "list-book.xlsx"
#define ODS  "list-book.ods"
#define MOST ((size_t)5)

struct part {
    const char *name, *text;
};

static void write_zip(const char *path, const struct part *parts, size_t count, bool packed) {
    int error = 0;
    zip_t *const zip = zip_open(path, ZIP_CREATE | ZIP_TRUNCATE, &error);
    assert_non_null(zip);
    for (size_t i = 0; i < count; i++) {
        zip_source_t *const source =
            zip_source_buffer(zip, parts[i].text, strlen(parts[i].text), 0);
        assert_non_null(source);
        const zip_int64_t at = zip_file_add(zip, parts[i].name, source, 0);
        assert_true(at >= 0);
        assert_int_equal(zip_set_file_compression(zip, (zip_uint64_t)at,
                                                  packed ? ZIP_CM_DEFLATE : ZIP_CM_STORE, 0),
                         0);
    }
    assert_int_equal(zip_close(zip), 0);
}

#define RELATIONS "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
#define RELATION(id, type, target)                                                                 \
    "<Relationship Id='" id "' Type='" RELATIONS "/" type "' Target='" target "'/>"

/* Cells of a format by their `s`: 1 a fraction, 2 a date, 3 millimeters, 4 percent, 5 inches, 6 a
 * time, 7 money, 8 a unit of more than any has. */
static const char styles[] =
    "<styleSheet><numFmts><numFmt numFmtId='164' formatCode='0.0&quot; mm&quot;'/>"
    "<numFmt numFmtId='165' formatCode='#\\ ?/?\\&quot;'/>"
    "<numFmt numFmtId='166' formatCode='[$$-409]#,##0.00;[Red]-0.00'/>"
    "<numFmt numFmtId='167' formatCode='0&quot; mm                              or "
    "so&quot;'/></numFmts>"
    "<cellStyleXfs><xf numFmtId='14'/></cellStyleXfs><cellXfs><xf numFmtId='0'/>"
    "<xf numFmtId='12'/><xf numFmtId='14'/><xf numFmtId='164'/><xf numFmtId='9'/>"
    "<xf numFmtId='165'/><xf numFmtId='20'/><xf numFmtId='166'/><xf "
    "numFmtId='167'/></cellXfs></styleSheet>";

static void write_xlsx(const char *rows, bool packed) {
    char sheet[6000];
    (void)snprintf(sheet, sizeof sheet, "<worksheet><sheetData>%s</worksheet>", rows);
    const struct part parts[] = {
        {"_rels/.rels", "<?xml version='1.0' encoding='UTF-8'?><Relationships>" RELATION(
                            "a", "officeDocument", "xl/workbook.xml") "</Relationships>"},
        {"xl/workbook.xml", "<workbook><sheets><sheet name='Old' sheetId='1' r:id='r1' "
                            "state='hidden' xmlns:r='x'/><sheet name='A &amp; B' r:id='r2' "
                            "xmlns:r='x'/></sheets></workbook>"},
        {"xl/_rels/workbook.xml.rels",
         "<Relationships>" RELATION("r1", "worksheet", "worksheets/old.xml")
             RELATION("r2", "worksheet", "/xl/worksheets/new.xml")
                 RELATION("r3", "sharedStrings", "../xl/texts.xml")
                     RELATION("r4", "styles", "styles.xml") "</Relationships>"},
        {"xl/worksheets/old.xml",
         "<worksheet><sheetData><row><c t='str'><v>z</v></c></row></sheetData></worksheet>"},
        {"xl/worksheets/new.xml", sheet},
        {"xl/texts.xml",
         "<sst><si><t>a</t></si><si><t>b</t></si><si><r><t>two </t></r><r><t>runs"
         "</t></r><rPh><t>said</t></rPh></si><si><t>_x000D_1_x005F_</t></si></sst>"},
        {"xl/styles.xml", styles},
    };
    write_zip(XLSX, parts, COUNT(parts), packed);
}

#define ODS_NAMES                                                                                  \
    "xmlns:office='o' xmlns:table='t' xmlns:text='x' xmlns:style='s' xmlns:calcext='c' "           \
    "xmlns:draw='d'"

static void write_ods(const char *rows, bool packed) {
    char content[9000];
    char hidden[3000] = ""; /* of sheets that are not there, more than a list has */
    for (int i = 0; i < 20; i++) {
        const size_t used = strlen(hidden);
        (void)snprintf(hidden + used, sizeof hidden - used,
                       "<style:style style:name='h%d' style:family='table'>"
                       "<style:table-properties table:display='false'/></style:style>",
                       i);
    }
    (void)snprintf(content, sizeof content,
                   "<office:document-content " ODS_NAMES "><office:automatic-styles>%s"
                   "<style:style style:name='ta2' style:family='table'><style:table-properties "
                   "table:display='false'/></style:style></office:automatic-styles><office:body>"
                   "<office:spreadsheet><table:tracked-changes><table:table-cell/>"
                   "</table:tracked-changes><table:table table:name='Old' table:style-name='ta2'>"
                   "<table:table-row><table:table-cell office:value-type='string'><text:p>z"
                   "</text:p></table:table-cell></table:table-row></table:table>"
                   "<table:table table:name='New'>%s</table:table></office:spreadsheet>"
                   "</office:body></office:document-content>",
                   hidden, rows);
    const struct part parts[] = {
        {"mimetype", "application/vnd.oasis.opendocument.spreadsheet"},
        {"content.xml", content},
        {"META-INF/manifest.xml", "<manifest/>"},
    };
    write_zip(ODS, parts, COUNT(parts), packed);
}

/* --- what is read --- */

static bool names_column(const void *context, const char *text) {
    (void)context;
    return strlen(text) == 1 && *text >= 'a' && *text <= 'e';
}

static const struct table_wanted wanted = {.most = MOST, .names = names_column};

/* Cells with a `|` behind each, rows in `{}`; then the problems, each with its place. */
static void dump_list(struct dump *dump, const char *path) {
    struct problems problems;
    struct table table;
    problems_init(&problems);
    assert_true(table_read(&table, path, (struct place){0}, wanted, &problems));
    for (size_t r = 0; r <= table.count && table.columns > 0; r++) {
        const struct cell *const cells = r == 0 ? table.heading : table.rows[r - 1].cells;
        dump_add(dump, "{");
        for (size_t c = 0; c < table.columns; c++) {
            dump_add(dump, "%s|", cells[c].text);
        }
        dump_add(dump, "}");
    }
    for (size_t i = 0; i < problems.count; i++) {
        const struct problem *const p = &problems.list[i];
        dump_add(dump, " %s %s%s", p->id, problems_file_name(&problems, p->place.file),
                 problems_place(&problems, p->place).text);
    }
    problems_clear(&problems);
}

struct book_case {
    const char *name, *rows, *expected;
};

#define HEAD            "<row r='1'><c r='A1' t='s'><v>0</v></c><c r='B1' t='s'><v>1</v></c></row>"
#define ROW(cells)      HEAD "<row r='2'>" cells "</row></sheetData>"
#define N(style, value) "<c s='" style "'><v>" value "</v></c>"

static const struct book_case of_xlsx[] = {
    {"shared texts", ROW("<c t='s'><v>2</v></c><c t='s'><v>3</v></c>"), "{a|b|}{two runs|1_|}"},
    {"texts of their own",
     ROW("<c t='inlineStr'><is><t>x</t></is></c><c t='str'><f>A1</f><v>y</v></c>"), "{a|b|}{x|y|}"},
    {"a line end, a tab", ROW("<c t='str'><v>x&#10;y&#9;z</v></c>"), "{a|b|}{x y z||}"},
    {"numbers", ROW(N("0", "23.4375") N("0", "2")), "{a|b|}{23.4375|2|}"},
    {"digits of a double", ROW(N("0", "15.300000000000001") N("0", "23.333333333333332")),
     "{a|b|}{15.3|23.333333333|}"},
    {"fractions", ROW(N("1", "23.4375") N("1", "0.75")), "{a|b|}{23 7/16|3/4|}"},
    {"a whole one, one of thirds", ROW(N("1", "23") N("1", "0.333333333333333")),
     "{a|b|}{23|0.333333333|}"},
    {"units", ROW(N("3", "595") N("5", "15.5")), "{a|b|}{595 mm|15 1/2\"|}"},
    {"a unit of more than any has", ROW(N("8", "595")), "{a|b|}{595 (a long unit)||}"},
    {"percent, money", ROW(N("4", "0.25") N("7", "1250.5")), "{a|b|}{25 %|1250.5|}"},
    /* 46085 days on from 1899-12-30 by hand: 126 years of 365, 31 leap days, 64 days of 2026 */
    {"a date, a time", ROW(N("2", "46085") N("6", "0.145833333333333")),
     "{a|b|}{2026-03-04|3:30|}"},
    {"a moment before midnight, at seven seconds past noon",
     ROW(N("2", "46084.999999") N("2", "46085.500081")), "{a|b|}{2026-03-04|2026-03-04 12:00:07|}"},
    {"yes and no", ROW("<c t='b'><v>1</v></c><c t='b'><v>0</v></c>"), "{a|b|}{yes|no|}"},
    {"an error", ROW("<c t='e'><v>#REF!</v></c><c t='str'><v>x</v></c>"),
     "{a|b|} cell-error list-book.xlsx:A & B!A2"},
    {"a formula without its value", ROW(N("0", "1") "<c><f>1+1</f><v></v></c>"),
     "{a|b|} cell-formula list-book.xlsx:A & B!B2"},
    {"an empty text of a formula", ROW(N("0", "1") "<c t='str'><f>x</f><v></v></c>"),
     "{a|b|}{1||}"},
    {"blank rows and cells", HEAD "<row r='5'><c r='B5'><v>7</v></c></row></sheetData>",
     "{a|b|}{|7|}"},
    {"rows without numbers",
     "<row><c t='s'><v>0</v></c></row><row><c><v>1</v></c></row>"
     "</sheetData>",
     "{a|}{1|}"},
    {"beside the list", ROW(N("0", "1") "<c r='D2' t='str'><v>mine</v></c>"), "{a|b|}{1||}"},
    {"a title, and room above",
     "<row r='2'><c r='B2' t='str'><v>Doors, galley</v></c></row><row r='4'><c r='B4' t='s'><v>0"
     "</v></c><c r='C4' t='s'><v>1</v></c></row><row r='5'><c r='C5'><v>2</v></c></row>"
     "</sheetData><mergeCells><mergeCell ref='B2:E2'/></mergeCells>",
     "{|a|b|}{||2|}"},
    {"a heading of two rows",
     "<row r='1'><c r='A1' t='s'><v>0</v></c><c r='B1' t='str'><v>c</v></c><c r='C1' t='str'><v>"
     "size</v></c></row><row r='2'><c r='C2' t='str'><v>d</v></c><c r='D2' t='str'><v>e</v></c>"
     "</row><row r='3'><c><v>1</v></c><c><v>2</v></c><c><v>3</v></c><c><v>4</v></c></row>"
     "</sheetData><mergeCells><mergeCell ref='A1:A2'/><mergeCell ref='B1:B2'/>"
     "<mergeCell ref='C1:D1'/></mergeCells>",
     "{a|c|d|e|}{1|2|3|4|}"},
    {"a heading of two rows that are not over each other",
     "<row r='1'><c r='A1' t='s'><v>0</v></c><c r='B1' t='str'><v>size</v></c><c r='D1' t='s'><v>1"
     "</v></c></row><row r='2'><c r='B2' t='str'><v>c</v></c><c r='C2' t='str'><v>d</v></c></row>"
     "<row r='3'><c><v>1</v></c><c><v>2</v></c><c><v>3</v></c><c><v>4</v></c></row></sheetData>",
     "{a|c|d|b|}{1|2|3|4|}"},
    {"names in a title",
     "<row r='1'><c r='A1' t='s'><v>0</v></c><c r='B1' t='str'><v>x</v></c><c r='C1' t='s'><v>1"
     "</v></c></row><row r='2'><c r='A2' t='s'><v>0</v></c><c r='B2' t='s'><v>1</v></c>"
     "<c r='C2' t='str'><v>c</v></c></row><row r='3'><c><v>1</v></c></row></sheetData>",
     "{a|b|c|}{1|||}"},
    {"a cell over three rows, one of them blank",
     HEAD "<row r='2'><c><v>1</v></c><c><v>2</v></c></row><row r='4'><c r='B4'><v>3</v></c></row>"
          "</sheetData><mergeCells><mergeCell ref='A2:A4'/></mergeCells>",
     "{a|b|}{1|2|}{1|3|}"},
    {"a rule that only the last row breaks",
     HEAD "<row r='2'><c><v>1</v></c></row><row r='3'><c><v>1</v></c></row><row r='4'><c><v>1</v>"
          "</c></row><row r='5'><c><v>1</v></c></row><row r='6'><c><v>1</v></c></row><row r='7'>"
          "<c r='B7'><v>1</v></c></row></sheetData>",
     "{a|b|}{1||}{1||}{1||}{1||}{1||} too-many-rows list-book.xlsx:A & B!B7"},
    {"nothing", "</sheetData>", " empty-table list-book.xlsx:A & B"},
    /* what no workbook has */
    {"a document type", "<!DOCTYPE x>", " workbook-damaged list-book.xlsx:A & B"},
    {"an entity", ROW("<c t='str'><v>&x;</v></c>"), " workbook-damaged list-book.xlsx:A & B"},
    {"a text that lacks", ROW("<c t='s'><v>4</v></c>"), " workbook-damaged list-book.xlsx:A & B"},
    {"a column too far", ROW("<c r='XFE2'><v>1</v></c>"), " workbook-damaged list-book.xlsx:A & B"},
    {"rows in no order", "<row r='2'/><row r='1'/></sheetData>",
     " workbook-damaged list-book.xlsx:A & B"},
    {"a row too far", HEAD "<row r='99999999'><c><v>1</v></c></row></sheetData>",
     " workbook-damaged list-book.xlsx:A & B"},
    {"a row that is no number", HEAD "<row r='two'><c><v>1</v></c></row></sheetData>",
     " workbook-damaged list-book.xlsx:A & B"},
    {"a row beyond all numbers",
     HEAD "<row r='99999999999999999999999'><c><v>1</v></c></row></sheetData>",
     " workbook-damaged list-book.xlsx:A & B"},
    {"tags that are not closed", "<row>", " workbook-damaged list-book.xlsx:A & B"},
};

#define OHEAD                                                                                      \
    "<table:table-row><table:table-cell office:value-type='string'><text:p>a</text:p>"             \
    "</table:table-cell><table:table-cell office:value-type='string'><text:p>b</text:p>"           \
    "</table:table-cell></table:table-row>"
#define OROW(cells) OHEAD "<table:table-row>" cells "</table:table-row>"
#define OCELL(type, value, text)                                                                   \
    "<table:table-cell office:value-type='" type "' office:" value "><text:p>" text                \
    "</text:p></table:table-cell>"

static const struct book_case of_ods[] = {
    {"texts",
     OROW("<table:table-cell office:value-type='string'><text:p>x<text:s/>y</text:p><text:p>z"
          "</text:p></table:table-cell>"),
     "{a|b|}{x y z||}"},
    {"several blanks",
     OROW("<table:table-cell office:value-type='string'><text:p>x<text:s text:c='3'/>y</text:p>"
          "</table:table-cell>"),
     "{a|b|}{x   y||}"},
    {"blank rows beyond all rows",
     OHEAD
     "<table:table-row table:number-rows-repeated='2000000'><table:table-cell/>"
     "</table:table-row><table:table-row>" OCELL("float", "value='1'", "1") "</table:table-row>",
     " workbook-damaged list-book.ods:New"},
    {"an error in a row that stands twice",
     OHEAD "<table:table-row table:number-rows-repeated='2'>" OCELL(
         "float", "value='1'",
         "1") "<table:table-cell office:value-type='string' calcext:value-type='error'>"
              "<text:p>#N/A</text:p></table:table-cell></table:table-row>",
     "{a|b|} cell-error list-book.ods:New!B2"},
    {"a note in a cell",
     OROW("<table:table-cell office:value-type='string'><office:annotation><text:p>said</text:p>"
          "</office:annotation><text:p>x</text:p></table:table-cell>"),
     "{a|b|}{x||}"},
    {"numbers", OROW(OCELL("float", "value='23.4375'", "23.44") OCELL("float", "value='2'", "2")),
     "{a|b|}{23.4375|2|}"},
    {"fractions",
     OROW(OCELL("float", "value='23.4375'", "23 4/9") OCELL("float", "value='0.75'", " 3/4 ")),
     "{a|b|}{23 7/16|3/4|}"},
    {"units, money",
     OROW(OCELL("float", "value='595'", "595 mm") OCELL("currency", "value='12.5'", "$12.50")),
     "{a|b|}{595 mm|12.5|}"},
    {"a unit of more than any has",
     OROW(OCELL("float", "value='595'", "595 mm                              or so")),
     "{a|b|}{595 (a long unit)||}"},
    {"percent, a date",
     OROW(OCELL("percentage", "value='0.25'", "25%")
              OCELL("date", "date-value='2026-03-04'", "4 Mar")),
     "{a|b|}{25 %|2026-03-04|}"},
    {"a time, yes",
     OROW(OCELL("time", "time-value='PT03H30M00S'", "3:30")
              OCELL("boolean", "boolean-value='true'", "TRUE")),
     "{a|b|}{3:30|yes|}"},
    {"an error",
     OROW("<table:table-cell office:value-type='string' calcext:value-type='error'><text:p>#REF!"
          "</text:p></table:table-cell>"),
     "{a|b|} cell-error list-book.ods:New!A2"},
    {"a formula without its value", OROW("<table:table-cell table:formula='of:=1'/>"),
     "{a|b|} cell-formula list-book.ods:New!A2"},
    {"blank cells, row and cell again",
     OHEAD "<table:table-row table:number-rows-repeated='3'><table:table-cell "
           "table:number-columns-repeated='16384'/></table:table-row><table:table-row "
           "table:number-rows-repeated='2'><table:table-cell office:value-type='float' "
           "office:value='7' table:number-columns-repeated='2'/></table:table-row>"
           "<table:table-row table:number-rows-repeated='1048570'><table:table-cell/>"
           "</table:table-row>",
     "{a|b|}{7|7|}{7|7|}"},
    {"a cell over two rows",
     OHEAD "<table:table-row><table:table-cell table:number-rows-spanned='2' "
           "office:value-type='string'><text:p>x</text:p></table:table-cell><table:table-cell "
           "office:value-type='float' office:value='1'/></table:table-row><table:table-row>"
           "<table:covered-table-cell/><table:table-cell office:value-type='float' "
           "office:value='2'/></table:table-row>",
     "{a|b|}{x|1|}{x|2|}"},
    {"a million rows",
     OHEAD "<table:table-row table:number-rows-repeated='1000000'><table:table-cell "
           "office:value-type='float' office:value='7'/></table:table-row>",
     "{a|b|}{7||}{7||}{7||}{7||}{7||} too-many-rows list-book.ods:New!A7"},
    {"more rows than a sheet has",
     OHEAD "<table:table-row table:number-rows-repeated='1048576'><table:table-cell "
           "office:value-type='float' office:value='7'/></table:table-row>",
     " workbook-damaged list-book.ods:New"},
    {"a column too far",
     OROW("<table:table-cell table:number-columns-repeated='16384'/><table:table-cell "
          "office:value-type='float' office:value='7'/>"),
     " workbook-damaged list-book.ods:New"},
};

static void test_cells(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(of_xlsx); i++) {
        struct dump dump = {.used = 0};
        write_xlsx(of_xlsx[i].rows, i % 2 == 0);
        dump_list(&dump, XLSX);
        wrong = dump_compare(&dump, of_xlsx[i].expected, of_xlsx[i].name, wrong);
    }
    for (size_t i = 0; i < COUNT(of_ods); i++) {
        struct dump dump = {.used = 0};
        write_ods(of_ods[i].rows, i % 2 == 0);
        dump_list(&dump, ODS);
        wrong = dump_compare(&dump, of_ods[i].expected, of_ods[i].name, wrong);
    }
    assert_int_equal(wrong, 0);
}

/* --- sheets and files --- */

static void test_sheets(void **state) {
    static const struct {
        const char *path, *expected;
    } cases[] = {
        {XLSX ":old", "{z|}"},
        {XLSX ":A & B", "{a|b|}"},
        {XLSX ":None", " no-sheet list-book.xlsx"},
        {ODS ":Old", "{z|}"},
        {ODS ":None", " no-sheet list-book.ods"},
        {"none.xlsx:x", " file-missing none.xlsx"},
        {".", " file-is-folder ."},
    };
    int wrong = 0;
    (void)state;
    write_xlsx(HEAD "</sheetData>", true);
    write_ods(OHEAD, true);
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct dump dump = {.used = 0};
        dump_list(&dump, cases[i].path);
        wrong = dump_compare(&dump, cases[i].expected, cases[i].path, wrong);
    }
    assert_int_equal(wrong, 0);
    assert_string_equal(sheet_named("a.xlsx:b"), "b");
    assert_string_equal(sheet_named("d:x/a.ODS:b:c"), "b:c");
    assert_null(sheet_named("a.xlsx"));
    assert_null(sheet_named("a.xlsx:"));
    assert_null(sheet_named("a.xlsx:/b.csv"));
    assert_null(sheet_named("a.csv:b"));
}

static void expect_file(const char *bytes, size_t size, const char *expected) {
    struct dump dump = {.used = 0};
    file_bench_write(XLSX, bytes, size);
    dump_list(&dump, XLSX);
    assert_int_equal(dump_compare(&dump, expected, expected, 0), 0);
}

/* Files that are no workbook, or not one that can be read. */
static void test_files(void **state) {
    static const struct part locked[] = {
        {"content.xml", "\x7F\x10"},
        {"META-INF/manifest.xml", "<a><b xmlns:m='m'><m:encryption-data/></b></a>"}};
    static const struct part other[] = {{"Index/Document.iwa", "x"}};
    static char binary[1536] = "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1";
    struct dump dump = {.used = 0};
    (void)state;
    expect_file(BYTES(""), " workbook-damaged list-book.xlsx");
    expect_file(BYTES("a,b\n1,2\n"), " workbook-damaged list-book.xlsx");
    expect_file(BYTES("PK\3\4 and more"), " workbook-damaged list-book.xlsx");
    expect_file(binary, sizeof binary, " workbook-older list-book.xlsx");
    binary[30] = 9; /* sectors of 512 bytes; the directory is sector 1 */
    binary[48] = 1;
    static const char name[] = "EncryptedPackage";
    for (size_t i = 0; i < sizeof name; i++) {
        binary[1024 + 128 + 2 * i] = name[i];
    }
    expect_file(binary, sizeof binary, " workbook-locked list-book.xlsx");
    write_zip(ODS, locked, COUNT(locked), true);
    dump_list(&dump, ODS);
    write_zip(ODS, other, COUNT(other), true);
    dump_list(&dump, ODS);
    assert_string_equal(dump.text, " workbook-locked list-book.ods workbook-damaged list-book.ods");
}

/* --- limits --- */

/* A row of 20,000 bytes and one of one more; of texts that 3,000 rows share, 32 MB and more. */
static void test_long_rows(void **state) {
    static char text[20004];
    static char rows[160000];
    (void)state;
    for (size_t size = 20000; size <= 20003; size++) {
        struct problems problems;
        struct table table;
        memset(text, 'x', size);
        if (size == 20002) {
            memset(text, ' ', 5); /* leading blanks are left out */
        } else if (size == 20003) {
            memcpy(text, "_x000A_", 7); /* one letter of seven */
        }
        text[size] = '\0';
        (void)snprintf(rows, sizeof rows,
                       "<worksheet><sheetData><row><c t='str'><v>a</v></c></row><row><c t='str'>"
                       "<v>%s</v></c></row></sheetData></worksheet>",
                       text);
        const struct part parts[] = {
            {"_rels/.rels", "<a>" RELATION("a", "officeDocument", "b") "</a>"},
            {"b", "<a><sheet name='S' id='r'/></a>"},
            {"_rels/b.rels", "<a>" RELATION("r", "worksheet", "s") "</a>"},
            {"s", rows}};
        write_zip(XLSX, parts, COUNT(parts), true);
        problems_init(&problems);
        assert_true(table_read(&table, XLSX, (struct place){0}, wanted, &problems));
        assert_int_equal(table.count, size == 20000 ? 1 : 0);
        assert_int_equal(problems.count, size == 20000 ? 0 : 1);
        if (size > 20000) {
            assert_string_equal(problems.list[0].id, "line-too-long");
        }
        problems_clear(&problems);
    }
}

/* --- spoiled at random --- */

static uint32_t seed;

static char *load(const char *path, size_t *size) {
    FILE *const file = fopen(path, "rb");
    char *const bytes = malloc(65536);
    assert_non_null(file);
    assert_non_null(bytes);
    *size = fread(bytes, 1, 65536, file);
    assert_int_equal(fclose(file), 0);
    return bytes;
}

/* Reads it; whether it was refused, in which case something was said. */
static bool is_refused(const char *path) {
    struct problems problems;
    struct table table;
    problems_init(&problems);
    assert_true(table_read(&table, path, (struct place){0}, wanted, &problems));
    const bool refused = problems_count(&problems, SEVERITY_ERROR) > 0;
    assert_true(refused || table.open);
    problems_clear(&problems);
    return refused;
}

/* Bytes changed, taken away from the end, put in: in packed files most of it is seen by the sums of
 * the archive, in others it comes to the reader of XML. */
static void spoil(const char *path, size_t rounds) {
    size_t size;
    size_t refused = 0;
    char *const good = load(path, &size);
    char *const bytes = malloc(size + 64);
    assert_non_null(bytes);
    for (size_t round = 0; round < rounds; round++) {
        size_t length = size;
        seed = (uint32_t)round + 1;
        memcpy(bytes, good, size);
        if (round % 4 == 0) {
            length = draw_below(&seed, (uint32_t)size);
        }
        for (uint32_t i = 1 + draw_below(&seed, 4); i > 0 && length > 0; i--) {
            static const char odd[] = "<>&\"'=/!\0\xFF\x80";
            const uint32_t at = draw_below(&seed, (uint32_t)length);
            if (round % 3 == 0) {
                bytes[at] = odd[draw_below(&seed, sizeof odd - 1)];
            } else {
                bytes[at] = (char)(bytes[at] ^ (1 << draw_below(&seed, 8)));
            }
        }
        file_bench_write(path, bytes, length);
        refused += is_refused(path) ? 1 : 0;
    }
    assert_true(refused > rounds / 2);
    free(bytes);
    free(good);
}

static void test_spoiled(void **state) {
    (void)state;
    for (int packed = 0; packed < 2; packed++) {
        write_xlsx(ROW(N("1", "23.4375") "<c t='s'><v>2</v></c>"), packed == 1);
        spoil(XLSX, 300);
        write_ods(OROW(OCELL("float", "value='23.4375'", "23 4/9")
                           OCELL("date", "date-value='2026-03-04'", "4 Mar")),
                  packed == 1);
        spoil(ODS, 300);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_cells),   cmocka_unit_test(test_sheets),
        cmocka_unit_test(test_files),   cmocka_unit_test(test_long_rows),
        cmocka_unit_test(test_spoiled),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
