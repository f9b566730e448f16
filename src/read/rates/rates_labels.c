/* SPDX-License-Identifier: MIT */
/* Sheets of labels by their sizes. */
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include "base/text.h"

#define MARGIN RANGE(0, 8 * NM_PER_INCH)
#define GAP    RANGE(0, 3 * NM_PER_INCH)
#define WIDE   RANGE(3 * NM_PER_INCH / 4, 12 * NM_PER_INCH)
#define HIGH   RANGE(NM_PER_INCH / 4, 12 * NM_PER_INCH)

/* Of a label without its inner margins. */
#define LEAST_WIDE (NM_PER_INCH / 2)
#define LEAST_HIGH (NM_PER_INCH / 8)

static const struct key label_keys[] = {
    {"paper", AS_CHOICE(choices_paper_size), FIELD(label_sheet, paper_size), "letter", "A4",
     .help = "of the sheet; absent: as that of `[shop]`"},
    {"columns", AS_COUNT(1, 20, 1), FIELD(label_sheet, columns), "3", .needed = true,
     .help = "labels beside each other"},
    {"rows", AS_COUNT(1, 60, 1), FIELD(label_sheet, rows), "10", .needed = true,
     .help = "labels below each other"},
    {"width", AS_LENGTH(WIDE), FIELD(label_sheet, width), "2 5/8 in", "64 mm", .needed = true,
     .help = "of a label"},
    {"height", AS_LENGTH(HIGH), FIELD(label_sheet, height), "1 in", "34 mm", .needed = true,
     .help = "of a label"},
    {"left margin", AS_LENGTH(MARGIN), FIELD(label_sheet, left), "3/16 in", "7 mm", .needed = true,
     .help = "from the left edge of the paper to the first label"},
    {"top margin", AS_LENGTH(MARGIN), FIELD(label_sheet, top), "1/2 in", "13 mm", .needed = true,
     .help = "from the top edge of the paper to the first label"},
    {"column gap", AS_LENGTH(GAP), FIELD(label_sheet, across), "1/8 in", "2.5 mm",
     .help = "between columns; absent: none, labels touch"},
    {"row gap", AS_LENGTH(GAP), FIELD(label_sheet, down), "1/8 in", "2 mm",
     .help = "between rows; absent: none"},
    {"inner margin", AS_LENGTH(RANGE(0, NM_PER_INCH)), FIELD(label_sheet, inset), "1/16 in", "2 mm",
     .help = "kept free within each edge of a label; absent: 1/16 in"},
};

/* The name says what a sheet is for. */
static void check_labels(struct reader *reader, const struct ini_section *section, void *target) {
    struct label_sheet *const sheet = target;

    (void)section;
    sheet->of = text_same(sheet->name.s, "doors") ? LABEL_OF_DOORS : LABEL_OF_PARTS;
    if (sheet->of == LABEL_OF_PARTS && !text_same(sheet->name.s, "parts")) {
        problem_add(reader->problems, SEVERITY_ERROR, "labels-of-what", sheet->name.place,
                    "labels of '%s' are not known; expected [labels parts] or [labels doors]",
                    problem_quote(reader->problems, sheet->name.s));
    }
}

const struct section_kind section_labels = {
    "labels",
    label_keys,
    COUNT_OF(label_keys),
    SECTIONS(rates, labels, label_count, label_sheet),
    .check = check_labels,
    .help = "A sheet of labels, by its sizes: `[labels parts]` for parts, `[labels doors]` for "
            "packing."};

/* One direction of a sheet: its labels, with margin and gaps, against the paper. */
static void check_fit(struct reader *reader, const struct value *count, const struct value *size,
                      const struct value *margin, const struct value *gap, length paper,
                      const char *what) {
    char all[32];
    char most[32];
    const length taken =
        margin->amount + count->amount * size->amount + (count->amount - 1) * gap->amount;

    if (!count->set || !size->set || !margin->set || taken <= paper) {
        return;
    }
    problem_add(reader->problems, SEVERITY_ERROR, "labels-off-paper", size->place,
                "%lld labels with their margin and gaps are %s %s, but the paper is %s; measure "
                "the sheet, or say its paper",
                (long long)count->amount, length_show(taken, reader->unit, all, sizeof all), what,
                length_show(paper, reader->unit, most, sizeof most));
}

/* What the edges leave of a label has to take a word, and its picture beside it. */
static void check_room(struct reader *reader, const struct label_sheet *s) {
    char room[2][32];
    const length edges = 2 * s->inset.amount;

    if (!s->inset.set || !s->width.set || !s->height.set ||
        (s->width.amount - edges >= LEAST_WIDE && s->height.amount - edges >= LEAST_HIGH)) {
        return;
    }
    problem_add(reader->problems, SEVERITY_ERROR, "labels-no-room", s->inset.place,
                "the inner margin leaves less than %s x %s of a label; make it narrower",
                length_show(LEAST_WIDE, reader->unit, room[0], sizeof room[0]),
                length_show(LEAST_HIGH, reader->unit, room[1], sizeof room[1]));
}

void labels_check(struct reader *reader, const struct rates *rates) {
    for (size_t i = 0; i < rates->label_count; i++) {
        const struct label_sheet *const s = &rates->labels[i];
        const bool letter = label_on_letter(s, &rates->shop);

        check_fit(reader, &s->columns, &s->width, &s->left, &s->across, paper_width(letter),
                  "wide");
        check_fit(reader, &s->rows, &s->height, &s->top, &s->down, paper_height(letter), "high");
        check_room(reader, s);
    }
}
