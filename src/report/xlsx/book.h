/* SPDX-License-Identifier: MIT */
/* A workbook before it is written: sheets of cells that hold text, plain numbers or figures of the
 * tape.
 *
 * Each figure has one home cell; other cells that show it point there.  When all sheets are laid
 * out, a home becomes a formula over the homes of the figure's operands, and figures that no sheet
 * gave a home get one on the sheet of workings.  So sheets only lay figures out, in any order, and
 * no sheet computes.
 *
 * Failure sticks: after an allocation fails nothing more is added and book_failed tells. Texts are
 * copied. Rows and columns count from 0. */
#ifndef DOORCOST_REPORT_XLSX_BOOK_H
#define DOORCOST_REPORT_XLSX_BOOK_H

#include "base/stop.h"
#include "figure/tape.h"
#include "report/type/text_width.h"

enum look {
    LOOK_PLAIN,
    LOOK_TITLE,         /* head of a sheet */
    LOOK_NOTE,          /* small gray words under a head or beside a cell */
    LOOK_SECTION,       /* head of a part of a sheet */
    LOOK_PART,          /* the same within a table, with room above */
    LOOK_PART_SUM,      /* what that comes to, beside it */
    LOOK_HEAD,          /* column heading, wrapped, on a band; stands as the cell below it */
    LOOK_TALL,          /* column heading turned upright */
    LOOK_LABEL,         /* bold */
    LOOK_WRAP,          /* text that may run over several lines */
    LOOK_INPUT,         /* a given of the rates */
    LOOK_TOTAL,         /* bold under a line */
    LOOK_GRAND,         /* the number that the sheet is for */
    LOOK_DIFFERENCE,    /* a number with its sign, a plus too */
    LOOK_WARN,          /* a caution */
    LOOK_UNIT,          /* words right of a number that belong to it: indented */
    LOOK_LINK,          /* the name of another sheet, which leads there */
    LOOK_CHECK,         /* words in bold, indented: what a check says */
    LOOK_STATE,         /* what all checks say, in a frame */
    LOOK_HEAD_RIGHT,    /* what LOOK_HEAD comes to over numbers: set when the book is written */
    LOOK_HEAD_INDENTED, /* over indented words, likewise */
    LOOK_COUNT
};

enum cell_kind { CELL_TEXT, CELL_HOME, CELL_MENTION, CELL_NUMBER, CELL_FORMULA, CELL_CHECK };

/* What a cell holds that is neither words nor a figure. */
struct book_own {
    int64_t number;      /* of a number or formula, at the cell's decimals */
    const char *formula; /* of a formula or check, without '=' */
    const char *shown;   /* of a check: what it says now */
};

/* Where a figure is at home. */
struct home {
    uint32_t row;
    uint16_t column;
    uint8_t sheet;
    bool stands; /* false: it has none */
};

/* There are hundreds of a door: kept small. A home that is not the figure's (book_home) was one
 * until another was claimed, and is a mention. */
struct cell {
    uint32_t row;
    union {
        fig figure;     /* of a home or mention */
        uint32_t words; /* of a text: book_words tells them */
        uint32_t own;   /* of a number, formula or check: place among the book's own */
    };
    uint16_t sheet, column;
    uint16_t span; /* further columns that a text runs over, as one cell */
    uint8_t kind, look;
    union {
        struct {
            uint8_t unit, decimals; /* of a number */
        };
        uint16_t down; /* of a text: further rows that it runs over, likewise */
    };
    bool less; /* of a mention: shown with the other sign */
};

/* A picture that lies on a sheet, its upper left corner at a cell. */
struct book_picture {
    uint16_t sheet, column;
    uint32_t row;
    const unsigned char *png;
    size_t size;
    double scale; /* of what it takes at 96 dots an inch */
    double below; /* points from the top of its cell, where words stand above it */
    const char *alt;
};

enum chart_kind { CHART_BARS, CHART_COLUMNS };

/* A chart that lies on a sheet, over a table of that sheet: a column of words, then a column of
 * numbers for each series, with the series' names in the row above the first. */
struct book_chart {
    uint16_t sheet, column; /* of its upper left corner */
    uint32_t row;
    enum chart_kind kind;
    const char *title, *axis, *alt; /* axis: what the numbers are */
    uint16_t words;                 /* column of the words; the numbers stand right of it */
    uint16_t series;                /* how many columns of numbers */
    uint32_t first, last;           /* rows of the table */
    bool from_zero; /* the numbers' axis begins at 0, so that bars are as long as these; none of
                       them is below */
};

/* How wide a chart is, in points. */
#define BOOK_CHART_WIDTH 360.0

/* Rows that are printed on one page where they fit on one. */
struct book_block {
    uint32_t first, last;
};

/* The height of a row, where it is not for the cells to say. */
struct book_height {
    uint16_t sheet;
    uint32_t row;
    double points;
};

struct book_sheet {
    const char *name, *title;
    double *widths; /* columns, in characters; 0: as the cells need */
    uint16_t width_count;
    bool landscape;
    uint32_t repeat_first,
        repeat_last;    /* heading rows printed on every page, when repeat_last > 0 */
    uint32_t heads_end; /* behind the rows that the last of these heads; 0: it heads all */
    bool few_decimals;  /* book_few_decimals */
    uint32_t freeze_row;
    uint16_t freeze_column;
    uint32_t print_from; /* the first row that is printed; 0: all are */
    uint32_t print_end;  /* behind the last one; 0: to the end */
    bool on_screen;      /* not printed unless its print area is cleared */
    uint32_t *breaks;    /* rows before which a page starts, ascending */
    size_t break_count, break_room;
    struct book_block *blocks;
    size_t block_count, block_room;
};

#define BOOK_MOST_SHEETS 28
/* What stands right of these is left out; its figures find a home among the workings. */
#define BOOK_MOST_COLUMNS 256

/* A cell by a name of its own, for formulas of whoever uses the book. */
struct book_name {
    const char *name;
    uint32_t row;
    uint16_t sheet, column;
};

/* A cell that leads to the head of a sheet. */
struct book_link {
    uint32_t row;
    uint16_t sheet, column, to;
};

struct book {
    uint16_t spare_sheet;    /* below whose cells parts of long sums are put */
    const struct stop *stop; /* asked while it is laid out and written; NULL: nothing stops it */
    bool protect; /* all but input cells are kept from slips of the finger; without a password */
    struct book_name *names;
    size_t name_count, name_room;
    const struct tape *tape;
    struct pool pool;
    struct book_sheet sheets[BOOK_MOST_SHEETS];
    uint16_t sheet_count;
    struct cell **blocks; /* cells, BOOK_BLOCK a block: book_cell */
    size_t cell_count, block_room;
    struct book_texts *texts; /* words of its cells, each once */
    struct book_own *owns;
    size_t own_count, own_room;
    struct book_picture *pictures;
    size_t picture_count, picture_room;
    struct book_link *links;
    size_t link_count, link_room;
    struct book_chart *charts;
    size_t chart_count, chart_room;
    struct book_height *heights;
    size_t height_count, height_room;
    struct home *homes;          /* by figure id */
    struct text_widths *letters; /* of the typeface of its cells */
    bool failed;
};

/* tape: that the figures of its cells are of; NULL: it has none. */
void book_init(struct book *book, const struct tape *tape);
/* Frees all that the book holds. */
void book_clear(struct book *book);
/* Whether something could not be added for want of memory. */
bool book_failed(const struct book *book);

/* text for the footer of a book, so coded that it is shown as it is; cut where it would run into
 * the words beside it. In pool; NULL when memory is out. */
const char *book_footer(struct pool *pool, const char *text);
/* The same of a text that is left out where it would be cut, for a shorter one. */
const char *book_footer_or(struct pool *pool, const char *text, const char *shorter);

/* Cells are kept in blocks, so that those that are written make way for what comes of them. */
#define BOOK_BLOCK ((size_t)4096)

/* Cell i of all, in the order they were added. */
static inline struct cell *book_cell(const struct book *book, size_t i) {
    return &book->blocks[i / BOOK_BLOCK][i % BOOK_BLOCK];
}
/* Frees a block of cells, none of which may be asked for after. */
void book_release(struct book *book, size_t block);

/* Adds a sheet. name: the tab, letters only (so that it needs no quotes in formulas). title:
 * printed in the footer. */
uint16_t book_sheet(struct book *book, const char *name, const char *title, bool landscape);
/* How wide a text of the size that most cells have is, in the characters that columns are counted
 * in. */
double book_letters(const struct book *book, const char *text, bool bold);
/* How many lines a text of that size takes in columns of these widths beside each other. */
size_t book_lines(const struct book *book, const double *widths, size_t count, const char *text);
/* Sets the width of a column, in characters; without a call it is as wide as its cells need. */
void book_width(struct book *book, uint16_t sheet, uint16_t column, double characters);
/* Rows first to last are headings: kept in sight and printed on every page. */
void book_headings(struct book *book, uint16_t sheet, uint32_t first, uint32_t last,
                   uint16_t freeze_column);
/* The last heading row heads only the rows before `end`: where the first page holds them all, the
 * others repeat but the rows above it. */
void book_heads_end(struct book *book, uint16_t sheet, uint32_t end);
/* Areas and volumes are shown with two decimals at most, cubic meters with four, and whole amounts
 * with none, `100`: on a sheet that lists unlike things. Cells hold all. */
void book_few_decimals(struct book *book, uint16_t sheet);
/* The rows before first stay on screen, and, where end is not 0, those from end on: links have no
 * use on paper. first must be over 0. */
void book_print_rows(struct book *book, uint16_t sheet, uint32_t first, uint32_t end);
/* Keeps a sheet out of what is printed when all sheets are: its print area is an empty cell. */
void book_on_screen(struct book *book, uint16_t sheet);
/* A page starts before row, which is behind that of the last call for the sheet. */
void book_break(struct book *book, uint16_t sheet, uint32_t row);
/* Rows first to last are not parted by a page where one can hold them; blocks may lie in blocks. */
void book_keep(struct book *book, uint16_t sheet, uint32_t first, uint32_t last);

/* A text in a cell, NULL, or empty where nothing of it would be seen: nothing; cut where a cell
 * holds no more (32,767 units of UTF-16). */
void book_text(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
               const char *text);
/* A text as printf makes it. */
void book_format(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                 const char *format, ...) __attribute__((format(printf, 6, 7)));
/* The name of the sheet `to`, which leads there. */
void book_link(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, uint16_t to);
/* A text that runs over the columns first to last, broken into lines. */
void book_span(struct book *book, uint16_t sheet, uint32_t row, uint16_t first, uint16_t last,
               enum look look, const char *text);
/* A text that runs over the columns first to last, whose widths are given, and over a row for each
 * of its lines: so lists of unlike texts stand beside each other without gaps. Returns how many
 * rows. */
uint32_t book_span_down(struct book *book, uint16_t sheet, uint32_t row, uint16_t first,
                        uint16_t last, enum look look, const char *text);
/* A picture as PNG; the bytes are copied. alt: what it shows, for who can't see it; needed. */
void book_picture(struct book *book, uint16_t sheet, uint32_t row, uint16_t column,
                  const unsigned char *png, size_t size, double scale, double below,
                  const char *alt);
/* How high a chart is, in points: bars need room for their words. */
double book_chart_height(const struct book_chart *chart);
/* A chart; its texts are copied. alt is needed. */
void book_chart(struct book *book, const struct book_chart *chart);
/* The height of a row in points, at most 409. */
void book_height(struct book *book, uint16_t sheet, uint32_t row, double points);
/* A plain number, value / 10^decimals of unit. */
void book_number(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                 enum unit unit, uint8_t decimals, int64_t value);
/* A formula of a sheet's own over cells of that sheet (differences of the options), with its value.
 */
void book_formula(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                  enum unit unit, uint8_t decimals, int64_t value, const char *formula);
/* A check: a formula that gives words, over any cells; `{n}` in it stands for the home of figure n,
 * wherever that comes to lie.  shown: what it gives now. `run again` stands out. */
void book_check(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                const char *formula, const char *shown);
/* The figure of a cell of a sheet, by its place as a spreadsheet names it: `F12`, `$F$12`; none
 * where it shows none. */
fig book_figure_at(const struct book *book, uint16_t sheet, const char *place);
/* Names a cell: letters, digits and `_`, beginning with a letter, no cell reference; a name that is
 * taken, case ignored, gets a `_` more. */
void book_define(struct book *book, uint16_t sheet, uint32_t row, uint16_t column,
                 const char *name);
/* The figure's home; where it has one already, a mention. none: nothing is written. */
void book_figure(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                 fig figure);
/* The figure's home from now on; what was its home before becomes a mention. Right of the last
 * column: nothing, and its home stays. */
void book_set_home(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                   fig figure);
/* A cell that shows a figure whose home is elsewhere (or here, when it gets none elsewhere). */
void book_mention(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                  fig figure);

/* The same with the other sign: what is taken off. */
void book_negated(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                  fig figure);

/* The words of a cell that is a text. Borrowed. */
const char *book_words(const struct book *book, const struct cell *cell);
/* What a number, formula or check holds. */
const struct book_own *book_own(const struct book *book, const struct cell *cell);

/* The home of a figure; NULL before book_assign_homes where it has none. */
const struct home *book_home(const struct book *book, fig figure);
/* Whether a cell is its figure's home. */
bool book_at_home(const struct book *book, const struct cell *cell);

/* Makes the first mention of a homeless figure its home. To be called when all sheets but the last
 * ones are laid out. */
void book_assign_homes(struct book *book);

#endif
