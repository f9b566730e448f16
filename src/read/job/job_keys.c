/* SPDX-License-Identifier: MIT */
#include "read/job/job_keys.h"

#include "base/text.h"
#include "read/key/grammar.h"
#include "read/key/measure.h"
#include "read/rates/rates_keys.h"

#include <string.h>

static int32_t days_of(int32_t year, int32_t month) {
    static const int32_t days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;

    return days[month - 1] + (month == 2 && leap ? 1 : 0);
}

/* Digits [at, at + size) as a number; -1: not only digits. */
static int32_t number_of(const char *text, size_t at, size_t size) {
    int64_t number = 0;
    uint8_t decimals = 0;

    if (strspn(text + at, "0123456789") < size ||
        !text_decimal(text + at, size, &number, &decimals)) {
        return -1;
    }
    return (int32_t)number;
}

static void read_date(struct reader *reader, const struct key *key, const struct entry *entry,
                      void *target) {
    struct job *job = target;
    const char *text = entry->text;
    int32_t year = -1;
    int32_t month = -1;
    int32_t day = -1;

    if (strlen(text) == 10 && text[4] == '-' && text[7] == '-') {
        year = number_of(text, 0, 4);
        month = number_of(text, 5, 2);
        day = number_of(text, 8, 2);
    }
    if (year < 1900 || month < 1 || month > 12 || day < 1 || day > days_of(year, month)) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-date", entry->place,
                    "date '%s' is no day of the calendar; expected year, month and day like '%s'",
                    problem_quote(reader->problems, text), key->example);
        return;
    }
    job->date = entry_text(reader, entry);
    job->year = year;
    job->month = month;
    job->day = day;
}

static const struct form days[] = {
    {"day", UNIT_DAY, 0, 1, 3650},
    {"", UNIT_DAY, 0, 1, 3650},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

static const struct form revisions[] = {
    {"", UNIT_COUNT, 0, 1, 999},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct spelling papers[] = {
    {"quote", PAPER_QUOTE}, {"estimate", PAPER_ESTIMATE}, {NULL, 0}};
static const struct spelling details[] = {
    {"sum", PRICES_SUM}, {"rooms", PRICES_ROOMS}, {"each", PRICES_EACH}, {NULL, 0}};

static const struct key job_keys[] = {
    {.name = "title",
     .read = read_text,
     .at = offsetof(struct job, title),
     .example = "Boathouse galley",
     .help = "heads the quote; absent: Cabinet doors"},
    {.name = "number",
     .read = read_text,
     .at = offsetof(struct job, number),
     .example = "0031",
     .help = "of the job or quote"},
    {.name = "client",
     .read = read_text,
     .at = offsetof(struct job, client),
     .example = "The boat club",
     .help = "who gets the quote"},
    {.name = "address",
     .read = read_text,
     .at = offsetof(struct job, address),
     .example = "2 Quay Street",
     .help = "of the client or the site"},
    {.name = "measured by",
     .read = read_text,
     .at = offsetof(struct job, measured_by),
     .example = "the shop, 27 February",
     .help = "who measured"},
    {.name = "note",
     .read = read_text,
     .at = offsetof(struct job, note),
     .example = "second floor, no lift",
     .help = "to the client"},
    {.name = "date",
     .read = read_date,
     .at = offsetof(struct job, date),
     .needed = true,
     .example = "2026-03-02",
     .help = "of the quote: year, month, day"},
    {.name = "valid",
     .read = read_measure,
     .at = offsetof(struct job, valid),
     .forms = days,
     .example = "30 days",
     .help = "how long the quote holds"},
    {.name = "ready",
     .read = read_text,
     .at = offsetof(struct job, ready),
     .example = "6 weeks from deposit",
     .help = "when the doors will be ready; absent: agreed with the order"},
    {.name = "paper",
     .read = read_choice,
     .at = offsetof(struct job, paper),
     .choices = papers,
     .example = "quote",
     .other = "estimate",
     .help = "what the client's papers are called; absent: quote"},
    {.name = "revision",
     .read = read_measure,
     .at = offsetof(struct job, revision),
     .forms = revisions,
     .example = "2",
     .help = "of the client's papers"},
    {.name = "detail",
     .read = read_choice,
     .at = offsetof(struct job, detail),
     .choices = details,
     .example = "sum",
     .other = "each",
     .help = "the prices that the client sees: sum, rooms, or each door; absent: sum"},
    {.name = "hinges fitted",
     .read = read_choice,
     .at = offsetof(struct job, hinges_fitted),
     .choices = choices_yes_no,
     .example = "no",
     .other = "yes",
     .help = "whether the shop fits the hinges to the doors; absent: no"},
    {.name = "hanging",
     .read = read_choice,
     .at = offsetof(struct job, hanging),
     .choices = choices_yes_no,
     .example = "no",
     .other = "yes",
     .help = "whether the shop hangs the doors; absent: no"},
    {.name = "unit",
     .read = read_unit,
     .at = offsetof(struct job, unit),
     .choices = choices_unit,
     .needed = true,
     .example = "in",
     .other = "mm",
     .help = "of bare lengths in this file and in the door list"},
    {.name = "rates",
     .read = read_path,
     .at = offsetof(struct job, rates_path),
     .needed = true,
     .example = "../rates/small-shop.ini",
     .help = "the rates file, from this file's folder"},
    {.name = "doors",
     .read = read_path,
     .at = offsetof(struct job, doors_path),
     .needed = true,
     .example = "doors.csv",
     .help = "the door list, from this file's folder"},
    {.name = "terms",
     .read = read_text,
     .at = offsetof(struct job, terms),
     .example = "Balance due on delivery.",
     .help = "for the foot of the quote"},
};

static const struct section_kind section_job = {.name = "job",
                                                .keys = job_keys,
                                                .key_count = COUNT_OF(job_keys),
                                                .needed = true,
                                                .help =
                                                    "Who, what and when, and the two other files."};

static void check_make(struct reader *reader, const struct ini_section *section, void *target) {
    (void)section;
    construction_check(reader, target);
}

static const struct section_kind section_make = {
    .name = "make",
    .keys = construction_keys,
    .key_count = CONSTRUCTION_KEY_COUNT,
    .at = offsetof(struct job, construction),
    .check = check_make,
    .help = "How every door is made, unless its row says otherwise."};

static void check_option(struct reader *reader, const struct ini_section *section, void *target) {
    const struct option *option = target;

    (void)section;
    construction_check(reader, &option->changes);
}

static const struct spelling taxed[] = {
    {"selling price", TAX_ON_SELLING_PRICE},
    {"materials at selling price", TAX_ON_MATERIALS_SOLD},
    {"materials at cost", TAX_ON_MATERIALS_COST},
    {"none", TAX_ON_NOTHING},
    {NULL, 0},
};
static const struct form tax[] = {
    {"%", UNIT_PERCENT, 0, 0, 50},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form discount[] = {
    {"%", UNIT_PERCENT, 0, 0, 99},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

static const struct key sale_keys[] = {
    {.name = "tax name",
     .read = read_text,
     .at = offsetof(struct sale, tax_name),
     .example = "VAT",
     .help = "what tax is called here; absent: tax"},
    {.name = "tax",
     .read = read_measure,
     .at = offsetof(struct sale, tax),
     .forms = tax,
     .example = "6.25 %",
     .help = "that the client pays"},
    {.name = "tax on",
     .read = read_choice,
     .at = offsetof(struct sale, tax_on),
     .choices = taxed,
     .example = "selling price",
     .other = "materials at cost",
     .help = "selling price, materials at selling price, materials at cost, or none; absent: "
             "selling price"},
    {.name = "tax delivery",
     .read = read_choice,
     .at = offsetof(struct sale, tax_delivery),
     .choices = choices_yes_no,
     .example = "no",
     .other = "yes",
     .help = "whether delivery is taxed; absent: no"},
    {.name = "exempt",
     .read = read_text,
     .at = offsetof(struct sale, exempt),
     .example = "E-1042",
     .help = "number of the certificate; where given there is no tax"},
    {.name = "discount",
     .read = read_measure,
     .at = offsetof(struct sale, discount),
     .forms = discount,
     .example = "5 %",
     .help = "off the doors' prices"},
    {.name = "delivery",
     .read = read_measure,
     .at = offsetof(struct sale, delivery),
     .forms = forms_money,
     .example = "120.00",
     .help = "charged for delivery"},
    {.name = "charges",
     .read = read_charges,
     .at = offsetof(struct sale, charges),
     .choice_at = offsetof(struct sale, charge_count),
     .forms = forms_money,
     .example = "80.00 for samples, 45.00 for templates",
     .help = "other charges; not discounted, taxed like the doors"},
    {.name = "card fee",
     .read = read_measure,
     .at = offsetof(struct sale, card_fee),
     .forms = discount,
     .example = "2.9 %",
     .help = "of the total, added to it where the client pays by card"},
    {.name = "deposit",
     .read = read_measure,
     .at = offsetof(struct sale, deposit),
     .forms = forms_percent,
     .example = "50 %",
     .help = "of the total, due on order"},
    {.name = "stages",
     .read = read_stages,
     .at = offsetof(struct sale, stages),
     .choice_at = offsetof(struct sale, stage_count),
     .forms = forms_percent,
     .example = "40 % when sprayed",
     .help = "of the total, due as work goes on; what remains is due on delivery"},
};

/* A percentage in ten-thousandths: the most decimals that it may have. */
static int64_t ten_thousandths(const struct value *value) {
    int64_t amount = value->set ? value->amount : 0;

    for (unsigned i = value->decimals; i < 4; i++) {
        amount *= 10;
    }
    return amount;
}

static void check_sale(struct reader *reader, const struct ini_section *section, void *target) {
    const struct sale *sale = target;
    int64_t sum = ten_thousandths(&sale->deposit);

    (void)section;
    for (size_t i = 0; i < sale->stage_count; i++) {
        sum += ten_thousandths(&sale->stages[i].value);
    }
    if (sum > 1000000) {
        problem_add(reader->problems, SEVERITY_ERROR, "stages-over-total",
                    sale->stage_count > 0 ? sale->stages[0].value.place : sale->deposit.place,
                    "deposit and stages are more than 100 %% together; expected at most the total");
    }
}

static const struct section_kind section_sale = {.name = "sale",
                                                 .keys = sale_keys,
                                                 .key_count = COUNT_OF(sale_keys),
                                                 .at = offsetof(struct job, sale),
                                                 .check = check_sale,
                                                 .help = "Tax, discount, delivery and payment."};

static const struct spelling option_prices[] = {
    {"replaces", OPTION_REPLACES}, {"adds", OPTION_ADDS}, {NULL, 0}};

/* Beside those of [make]; counted from `changes`, as they are. */
static const struct key option_keys[] = {
    {.name = "price",
     .read = read_choice,
     .at = offsetof(struct option, price) - offsetof(struct option, changes),
     .choices = option_prices,
     .example = "replaces",
     .other = "adds",
     .help = "whether the client reads its total, or what it adds; absent: replaces"},
};

static const struct section_kind section_option = {.name = "option",
                                                   .keys = construction_keys,
                                                   .key_count = CONSTRUCTION_KEY_COUNT,
                                                   .more_keys = option_keys,
                                                   .more_key_count = COUNT_OF(option_keys),
                                                   .named = true,
                                                   .at = offsetof(struct job, options),
                                                   .count_at = offsetof(struct job, option_count),
                                                   .size = sizeof(struct option),
                                                   .keys_at = offsetof(struct option, changes),
                                                   .check = check_option,
                                                   .help =
                                                       "What changes, to compare: keys of [make]."};

const struct section_kind *const job_sections[] = {&section_job, &section_make, &section_sale,
                                                   &section_option};
const size_t job_section_count = COUNT_OF(job_sections);
