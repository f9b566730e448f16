/* SPDX-License-Identifier: MIT */
#include "read/rates/rack_file.h"

#include "base/text.h"
#include "read/key/columns.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/key/told_name.h"
#include "read/rates/rates_keys.h"

/* A row as it is read: what is left depends on what it is of. */
struct rack_said {
    struct rack_item item;
    struct text left;
    bool one_side;           /* a width or a length stands alone, whether or not it can be read */
    const struct cell *sawn; /* NULL: it is empty */
};

#define ITEM(member) FIELD(rack_said, item.member)

const struct key rack_columns[] = {
    {"what", AS_TEXT, ITEM(what), "cup-hinge", "coating topcoat", .needed = true,
     .help =
         "lumber, a sheet, hardware, a coating or an additive of the rates; a name that several "
         "have with its section before it"},
    {"color", AS_TEXT, ITEM(color), "lamp white",
     .help = "of a coating that is tinted, as the job names it; absent: not tinted, for jobs "
             "without a color"},
    {"thickness", AS_OWN(read_quarters, .range = RANGE(NM_PER_64TH, 6 * NM_PER_INCH)),
     FIELDS(rack_said, item.thickness, item.thickness_text), "4/4", "27 mm",
     .help = "of lumber, as in the rates: another is refused; absent: not compared"},
    {"width", AS_LENGTH(INCHES(1, 480)), ITEM(width), "24", "600 mm",
     .help = "of lumber, and of an offcut of a sheet, as measured across the grain; absent: whole "
             "sheets, as they are sold"},
    {"length", AS_LENGTH(INCHES(1, 480)), ITEM(length), "48", "1200 mm",
     .help = "of lumber, and of an offcut of a sheet, as measured along the grain"},
    {"sawn", AS_YES_NO, ITEM(sawn), "yes", "no",
     .help = "lumber: an offcut of which all is good, so that no end, edge or share for defects "
             "comes off; absent: no"},
    {"left", AS_TEXT, FIELD(rack_said, left), "12", "0.5 gal", .needed = true,
     .help = "pieces of lumber, sheets and hardware, a volume of what stands in cans"},
    {"worth", AS_QUANTITY(FORM("", UNIT_MONEY, 0, 1000000000)), ITEM(worth), "8.50",
     .help = "what a job is charged that uses all of it up, and of a part of it in proportion; "
             "absent: nothing"},
    {"note", AS_TEXT, ITEM(note), "from the annex", .help = "for yourself"},
};
const size_t rack_column_count = COUNT_OF(rack_columns);

#define KINDS                                                                                      \
    (1U << NAME_LUMBER | 1U << NAME_HARDWARE | 1U << NAME_COATING | 1U << NAME_ADDITIVE |          \
     1U << NAME_SHEET)
/* What is bought, but not taken from the rack. */
#define OTHER_KINDS (1U << NAME_GLASS | 1U << NAME_BANDING | 1U << NAME_CONSUMABLE)

static void report_none(struct reader *reader, const struct text *what) {
    struct problems *const problems = reader->problems;
    enum name_kind kind;
    int32_t index;
    const enum told_name other = told_name_find(reader, what, OTHER_KINDS, &kind, &index);
    if (other == TOLD_ONE) {
        problem_add(
            problems, SEVERITY_ERROR, "rack-kind", what->place,
            "[%s %s] is not taken from the rack: only lumber, sheets, hardware, coatings "
            "and additives are; leave the row out, and take from the buying list what you have",
            name_section(kind), name_at(reader->rates, kind, (size_t)index));
    } else if (other == TOLD_NONE) {
        const char *const near =
            name_nearest(reader->rates, KINDS, what->s, &reader->problems->pool);
        problem_add(problems, SEVERITY_ERROR, "unknown-name", what->place,
                    "the rates have no lumber, sheet, hardware, coating or additive '%s'; %s%s%s",
                    problem_quote(problems, what->s),
                    near == NULL ? "write a name of theirs" : "did you mean '",
                    near == NULL ? "" : problem_quote(problems, near), near == NULL ? "" : "'?");
    }
}

static bool find_what(struct reader *reader, struct rack_item *item) {
    enum name_kind kind;
    int32_t index;
    item->kind = -1;
    switch (told_name_find(reader, &item->what, KINDS, &kind, &index)) {
    case TOLD_ONE:
        item->kind = (int)kind;
        item->index = index;
        return true;
    case TOLD_NONE:
        report_none(reader, &item->what);
        return false;
    case TOLD_SEVERAL:
        break;
    }
    return false;
}

static void take_left(struct reader *reader, const struct text *left, struct rack_item *item) {
    static const struct unit_form pieces[] = {
        {"", UNIT_COUNT, 0, 0, 1000000}, {"piece", UNIT_COUNT, 0, 0, 1000000}, {0}};
    const bool counted = item->kind != NAME_COATING && item->kind != NAME_ADDITIVE;
    const bool metric = reader->unit == LENGTH_MM;
    const struct key key = {.name = "left",
                            .kind = {.nought = true},
                            .example = counted  ? "12"
                                       : metric ? "0.5 L"
                                                : "0.5 gal"};
    const struct entry entry = {.text = left->s, .place = left->place};
    if (!counted) {
        (void)volume_value(reader, &key, &entry, NULL, &item->left);
    } else {
        (void)quantity_value(reader, &key, &entry, pieces, &item->left, NULL);
    }
    item->left.place = left->place;
}

static bool is_within(length across, length along, const struct sheet *sheet) {
    return across <= sheet->width.amount && along <= sheet->length.amount;
}

/* An offcut is no larger than its sheet, turned where that has no grain; as large it is a sheet. */
static void check_whole(struct reader *reader, const struct rates *rates, struct rack_item *item) {
    if (item->kind != NAME_SHEET || !item->width.set || !item->length.set) {
        return;
    }
    const struct sheet *const sheet = &rates->sheets[item->index];
    const bool turned = !sheet->grain && !is_within(item->width.amount, item->length.amount, sheet);
    const length across = turned ? item->length.amount : item->width.amount;
    const length along = turned ? item->width.amount : item->length.amount;
    if (!sheet->width.set || !sheet->length.set) {
        return; /* was reported */
    }
    if (!is_within(across, along, sheet)) {
        problem_add(reader->problems, SEVERITY_ERROR, "rack-over-sheet", item->width.place,
                    "an offcut of '%s' is larger than its sheet; measure it again, width across "
                    "the grain, or give it the name of a larger sheet",
                    problem_quote(reader->problems, item->what.s));
    } else if (across == sheet->width.amount && along == sheet->length.amount) {
        item->width.set = false;
        item->length.set = false;
        item->sawn = false;
    }
}

static void report_unfit(struct reader *reader, const struct rack_item *item, struct place place,
                         const char *cell, const char *none) {
    problem_add(reader->problems, SEVERITY_ERROR, "cell-unfit", place,
                "'%s' says nothing of '%s', which is no %s; leave the cell empty", cell,
                problem_quote(reader->problems, item->what.s), none);
}

static void check_size(struct reader *reader, const struct rack_said *said,
                       const struct rack_item *item) {
    struct problems *const problems = reader->problems;
    const struct value *const one = item->width.set ? &item->width : &item->length;
    const char *const name = item->width.set ? "width" : "length";
    const bool lumber = item->kind == NAME_LUMBER;
    if (lumber && !item->width.set && !item->length.set && !said->one_side) {
        problem_add(problems, SEVERITY_ERROR, "missing-cell", item->what.place,
                    "a board on the rack has a width and a length; measure both");
    } else if (one->set && !lumber && item->kind != NAME_SHEET) {
        report_unfit(reader, item, one->place, name, "lumber and no sheet");
    } else if (one->set && said->one_side) {
        problem_add(problems, SEVERITY_ERROR, "missing-cell", one->place,
                    "an offcut has a width and a length, and the row has a %s alone; give both%s",
                    name, lumber ? "" : ", or none of whole sheets");
    }
}

/* What says something of lumber alone. */
static void check_lumber(struct reader *reader, const struct rates *rates,
                         const struct rack_said *said, const struct rack_item *item) {
    struct problems *const problems = reader->problems;
    if (item->kind != NAME_LUMBER) {
        if (item->thickness.set) {
            report_unfit(reader, item, item->thickness_text.place, "thickness", "lumber");
        }
        if (said->sawn != NULL) {
            report_unfit(reader, item, said->sawn->place, "sawn", "lumber");
        }
        return;
    }
    const struct lumber *const lumber = &rates->lumber[item->index];
    if (item->thickness.set && lumber->thickness.set &&
        item->thickness.amount != lumber->thickness.amount) {
        problem_add(problems, SEVERITY_ERROR, "rack-thickness", item->thickness_text.place,
                    "'%s' is %s in the rates, and %s here; name the lumber of that thickness",
                    problem_quote(problems, item->what.s),
                    problem_quote(problems, lumber->thickness_text.s),
                    problem_quote(problems, item->thickness_text.s));
    }
}

static void check_item(struct reader *reader, const struct rates *rates,
                       const struct rack_item *item) {
    struct problems *const problems = reader->problems;
    const bool tinted = item->kind == NAME_COATING && rates->coatings[item->index].tinted;
    if (item->color.s != NULL && !tinted) {
        problem_add(problems, SEVERITY_ERROR, "cell-unfit", item->color.place,
                    "'color' says nothing of '%s', which is not tinted; leave the cell empty",
                    problem_quote(problems, item->what.s));
    }
    if (item->kind == NAME_HARDWARE && rates->hardware[item->index].by_others) {
        problem_add(problems, SEVERITY_ERROR, "rack-kind", item->what.place,
                    "'%s' is supplied by others, so none is used from the rack; leave the row out, "
                    "or give it a price in the rates",
                    problem_quote(problems, item->what.s));
    }
}

/* What is used up has a worth no more. */
static void check_worth(struct reader *reader, const struct rack_item *item) {
    if (item->left.set && item->left.amount == 0 && item->worth.amount > 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "cell-unfit", item->worth.place,
                    "'worth' says nothing of '%s', of which nothing is left; leave the cell empty, "
                    "or the row out",
                    problem_quote(reader->problems, item->what.s));
    }
}

/* Whether one more size of that lumber or sheet can be counted with. */
static bool is_room(struct reader *reader, const struct rack *rack, const struct rack_item *item) {
    size_t count = 0;
    for (size_t i = 0; (i = rack_next(rack, item->kind, item->index, i)) < rack->count; i++) {
        count++;
    }
    if ((item->kind != NAME_SHEET && item->kind != NAME_LUMBER) || count < MOST_RACK_SIZES) {
        return true;
    }
    problem_add(reader->problems, SEVERITY_ERROR, "too-many", item->what.place,
                "'%s' stands in %d rows already; no more sizes of it can be counted with: leave "
                "out the smallest",
                problem_quote(reader->problems, item->what.s), (int)MOST_RACK_SIZES);
    return false;
}

static void add_item(struct reader *reader, struct rates *rates, const struct rack_said *said) {
    struct rack *const rack = &rates->rack;
    struct rack_item item = said->item;
    if (item.what.s == NULL || said->left.s == NULL || !find_what(reader, &item)) {
        return; /* was reported */
    }
    take_left(reader, &said->left, &item);
    item.sawn = item.kind == NAME_LUMBER ? item.sawn : item.width.set;
    check_item(reader, rates, &item);
    check_worth(reader, &item);
    check_size(reader, said, &item);
    check_lumber(reader, rates, said, &item);
    check_whole(reader, rates, &item);
    const struct rack_item *const earlier = rack_same(rack, &item);
    if (earlier != NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "rack-twice", item.what.place,
                    "'%s' stands in %s already; add both up in one row",
                    problem_quote(reader->problems, item.what.s),
                    problems_spot(reader->problems, earlier->place).text);
        return;
    }
    if (is_room(reader, rack, &item)) {
        rack->items[rack->count++] = item;
    }
}

static const struct column_set rack_set = {rack_columns, COUNT_OF(rack_columns), 0, "rates"};

bool rack_table(struct table *table, const char *path, struct place asked,
                struct problems *problems) {
    return columns_table(table, path, asked, MOST_RACK, &rack_set, 1, problems);
}

/* The cell of a row in that column; NULL: it is empty, or there is none. */
static const struct cell *cell_of(const struct heading *columns, const struct table *table,
                                  size_t row, const char *name) {
    for (size_t i = 0; i < table->columns; i++) {
        if (columns[i].key != NULL && text_same(columns[i].key->name, name)) {
            const struct cell *const cell = &table->rows[row].cells[i];
            return cell->text[0] != '\0' ? cell : NULL;
        }
    }
    return NULL;
}

bool rack_read(struct reader *reader, struct rates *rates, const struct table *table) {
    struct reader own = *reader;
    own.rates = rates;
    if (!table->open || table->columns == 0 || table->over) {
        return !reader->problems->failed;
    }
    const struct heading *const columns = columns_find(&own, table, &rack_set, 1);
    rates->rack.items = pool_take(reader->pool, table->count, sizeof *rates->rack.items);
    if (columns == NULL || rates->rack.items == NULL) {
        return false;
    }
    for (size_t i = 0; i < table->count; i++) {
        struct rack_said said = {0};
        columns_read(&own, columns, table, &table->rows[i], &rack_set, 1, &said);
        said.item.place = table->rows[i].place;
        said.one_side = (cell_of(columns, table, i, "width") == NULL) !=
                        (cell_of(columns, table, i, "length") == NULL);
        said.sawn = cell_of(columns, table, i, "sawn");
        add_item(&own, rates, &said);
    }
    return !pool_failed(reader->pool) && !reader->problems->failed;
}
