/* SPDX-License-Identifier: MIT */
#include "read/job/job_keys.h"

#include "base/text.h"
#include "read/job/accept.h"
#include "read/job/charge.h"
#include "read/key/day.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <string.h>

static void read_date(struct reader *reader, const struct key *key, const struct entry *entry,
                      void *target) {
    struct job *job = target;
    struct date date;

    (void)key;
    if (date_value(reader, entry, &date)) {
        job->date = entry_text(reader, entry);
        job->year = date.year;
        job->month = date.month;
        job->day = date.day;
    }
}

/* `maple, 2026-03-09`. The options are read by job_check_agreed, behind their sections. */
static void read_agreed(struct reader *reader, const struct key *key, const struct entry *entry,
                        void *target) {
    struct agreed *const agreed = &((struct job *)target)->agreed;
    const char *const comma = strrchr(entry->text, ',');

    if (comma == NULL || comma == entry->text) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                    "%s: '%s' cannot be read; expected one like '%s'", key->name,
                    entry_quote(reader, entry), key->example);
        return;
    }
    const struct entry option = entry_part(reader, entry, entry->text, comma);
    const struct entry day = entry_part(reader, entry, comma + 1, comma + strlen(comma));
    if (date_value(reader, &day, &agreed->date)) {
        agreed->written = entry_text(reader, entry);
        agreed->to = entry_text(reader, &option);
    }
}

/* In words, or `planned from 2026-03-16`. */
static void read_ready(struct reader *reader, const struct key *key, const struct entry *entry,
                       void *target) {
    static const char from[] = "planned from ";
    struct job *const job = target;
    const char *const text = entry->text;
    const char *const end = text + strlen(text);
    const struct entry first = entry_part(reader, entry, text, text + strcspn(text, " ,:("));

    job->ready = entry_text(reader, entry);
    job->planned.asked = text_same(first.text, "planned");
    if (!job->planned.asked || text_same(text, "planned")) {
        return;
    }
    if (strncmp(text, from, sizeof from - 1) != 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                    "%s: '%s' cannot be read; expected 'planned', '%s', or words that do not begin "
                    "with 'planned'",
                    key->name, entry_quote(reader, entry), key->other);
        return;
    }
    const struct entry day = entry_part(reader, entry, text + sizeof from - 1, end);
    job->planned.dated = date_value(reader, &day, &job->planned.from);
}

void job_check_planned(struct reader *reader, const struct rates *rates, const struct job *job) {
    bool days = false;

    for (size_t i = 0; i < rates->settings.count && !days; i++) {
        days = text_same(rates->settings.list[i].kind, "days");
    }
    if (job->planned.asked && !days) {
        problem_add(reader->problems, SEVERITY_ERROR, "ready-unplanned", job->ready.place,
                    "ready: the rates have no [days] to plan by; write people and working days "
                    "there, or a day in place of 'planned'");
    } else if (job->planned.asked && text_same(job->ready.s, "planned") &&
               job->agreed.to.s == NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "ready-unplanned", job->ready.place,
                    "ready: nothing is agreed yet, so the day is needed on which work may begin; "
                    "write it as in 'planned from 2026-03-16'");
    }
}

void job_check_agreed(struct reader *reader, struct job *job) {
    const struct text *const to = &job->agreed.to;

    job->agreed.option = -1;
    if (to->s != NULL && job->paper.choice == PAPER_ESTIMATE) {
        problem_add(reader->problems, SEVERITY_ERROR, "both-given", job->agreed.written.place,
                    "agreed: an estimate is agreed to by nobody; make it 'paper = quote', or take "
                    "one of the two away");
    }
    if (to->s == NULL || strcmp(to->s, AGREED_AS_LISTED) == 0) {
        return;
    }
    for (size_t i = 0; i < job->option_count; i++) {
        if (strcmp(job->options[i].name.s, to->s) == 0) {
            job->agreed.option = (int32_t)i;
            return;
        }
    }
    problem_add(reader->problems, SEVERITY_ERROR, "unknown-name", to->place,
                "agreed: '%s' is no option of this job; expected the name of a section '[option "
                "NAME]', or '" AGREED_AS_LISTED "'",
                problem_quote(reader->problems, to->s));
}

static const struct unit_form days[] = {
    {"day", UNIT_DAY, 0, 1, 3650},
    {"", UNIT_DAY, 0, 1, 3650},
    {0},
};

static const struct spelling papers[] = {{"quote", PAPER_QUOTE}, {"estimate", PAPER_ESTIMATE}, {0}};
static const struct spelling details[] = {
    {"sum", PRICES_SUM}, {"rooms", PRICES_ROOMS}, {"each", PRICES_EACH}, {0}};

static const struct key job_keys[] = {
    {"title", AS_TEXT, FIELD(job, title), "Boathouse galley",
     .help = "heads the quote; absent: Cabinet doors"},
    {"number", AS_TEXT, FIELD(job, number), "0031", .help = "of the job or quote"},
    {"client", AS_TEXT, FIELD(job, client), "The boat club", .help = "who gets the quote"},
    {"address", AS_TEXT, FIELD(job, address), "2 Quay Street", .help = "of the client or the site"},
    {"deliver to", AS_TEXT, FIELD(job, deliver_to), "the boathouse, by water",
     .help = "where the doors go; absent: to the address"},
    {"measured by", AS_TEXT, FIELD(job, measured_by), "the shop, 27 February",
     .help = "who measured"},
    {"note", AS_TEXT, FIELD(job, note), "second floor, no lift", .help = "to the client"},
    {"date", AS(read_date), FIELD(job, date), "2026-03-02", .needed = true,
     .help = "of the quote: year, month, day"},
    {"valid", AS_QUANTITY(days), FIELD(job, valid), "30 days", .help = "how long the quote holds"},
    {"ready", AS(read_ready), FIELD(job, ready), "6 weeks from deposit", "planned from 2026-03-16",
     .help =
         "when the doors will be ready, in words, or `planned`: by the plan of `doorcost days`, "
         "with the day on which work may begin, else from the day of `agreed` on; absent: "
         "agreed with the order"},
    {"paper", AS_CHOICE(papers), FIELD(job, paper), "quote", "estimate",
     .help = "what the client's papers are called; absent: quote"},
    {"revision", AS_COUNT(1, 999, 0), FIELD(job, revision), "2",
     .help = "of the client's papers, which replaces every earlier one of the number"},
    {"replaces", AS_TEXT, FIELD(job, replaces), "quote 0029, revision 1",
     .help = "a paper of another number that no longer holds"},
    {"agreed", AS(read_agreed), FIELD(job, agreed), "as listed, 2026-03-09", "maple, 2026-03-09",
     .help = "what the client took, the job as listed or an option, and when; heads all papers"},
    {"detail", AS_CHOICE(details), FIELD(job, detail), "sum", "each",
     .help = "the prices that the client sees: sum, rooms, or each door; absent: sum"},
    {"also", AS_NAMES(NAME_OPERATION), FIELD(job, also), "hang, fit pulls",
     .help = "operations that this job has besides, at every door that has something of them"},
    {"unit", AS_UNIT, FIELD(job, unit), "in", "mm", .needed = true,
     .help = "of bare lengths in this file and in the door list"},
    {"rates", AS_PATH, FIELD(job, rates_path), "../rates/small-shop.ini", .needed = true,
     .help = "the rates file, from this file's folder"},
    {"doors", AS_PATH, FIELD(job, doors_path), "doors.csv", "doors.xlsx:Kitchen", .needed = true,
     .help = "the door list, from this file's folder"},
    {"own columns", AS_TEXT, FIELD(job, own_columns), "Shelf, Wall",
     .help = "columns of the list that are the shop's alone: they are not read; absent: none"},
    {"terms", AS_TEXT, FIELD(job, terms), "Balance due on delivery.",
     .help = "for the foot of the quote"},
    {"accept", AS(read_accept), FIELDS(job, accepts, accept_count), "leaf-wide D01, nearly-alike",
     .help = "questions that are answered: the id, and a row or section it is about; absent: none"},
};

static const struct section_kind section_job = {"job", job_keys, COUNT_OF(job_keys), .needed = true,
                                                .help =
                                                    "Who, what and when, and the two other files."};

static void check_make(struct reader *reader, const struct ini_section *section, void *target) {
    (void)section;
    construction_check(reader, target);
}

static const struct section_kind section_make = {
    "make",
    construction_keys,
    CONSTRUCTION_KEY_COUNT,
    SECTION(job, construction),
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
    {0},
};

static const struct unit_form card_fee[] = {
    {"% added", UNIT_PERCENT, CARD_FEE_ADDED, 0, 50},
    {"% of what is paid", UNIT_PERCENT, CARD_FEE_OF_PAID, 0, 50},
    {0},
};

static const struct unit_form charged[] = {
    {"", UNIT_MONEY, 0, 0, NO_LIMIT},
    {"%", UNIT_PERCENT, 0, 0, 100},
    {0},
};
static const struct unit_form doors[] = {{"", UNIT_COUNT, 0, 2, 100000}, {0}};

static const struct key sale_keys[] = {
    {"tax name", AS_TEXT, FIELD(sale, tax_name), "VAT",
     .help = "what tax is called here; absent: tax"},
    {"tax", AS_PERCENT(0, 50), FIELD(sale, tax), "6.25 %", .help = "that the client pays"},
    {"tax on", AS_CHOICE(taxed), FIELD(sale, tax_on), "selling price", "materials at cost",
     .help = "selling price, materials at selling price, materials at cost, or none; absent: "
             "selling price"},
    {"tax delivery", AS_CHOICE(choices_yes_no), FIELD(sale, tax_delivery), "no", "yes",
     .help = "whether delivery is taxed; absent: no"},
    {"exempt", AS_TEXT, FIELD(sale, exempt), "E-1042",
     .help = "number of the certificate; where given there is no tax"},
    {"discount", AS_PERCENT(0, 99), FIELD(sale, discount), "5 %", .help = "off the doors' prices"},
    {"discounts",
     AS_OWN(read_steps, .most = MOST_DISCOUNTS, .forms = forms_percent, .limit_forms = doors),
     FIELD(sale, discounts), "20: 3 %, 50: 5 %",
     .help = "instead of discount: by the doors and fronts of the job, each from that number on"},
    {"delivery", AS_OWN(read_delivery, .forms = charged, .names = NAME_OPERATION),
     FIELD(sale, delivery), "120.00 by deliver", "3 %",
     .help =
         "charged for delivery: an amount or a percent of the doors, or what the operation costs"},
    {"charges", AS_OWN(read_charges, .forms = charged, .names = NAME_OPERATION),
     FIELDS(sale, charges, charge_count),
     "80.00 for samples, 45.00 for templates by make templates",
     .help = "other charges, likewise; not discounted, taxed like the doors"},
    {"card fee", AS_QUANTITY(card_fee), FIELDS(sale, card_fee, card_fee_of), "2.9 % added",
     "2.9 % of what is paid",
     .help = "where the client pays by card: added to the total, or of all that the card takes"},
    {"deposit", AS_PERCENT(0, 100), FIELD(sale, deposit), "50 %",
     .help = "of the total, due on order"},
    {"stages", AS_OWN(read_stages, .forms = forms_percent), FIELDS(sale, stages, stage_count),
     "40 % when sprayed",
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

    if (section_has(section, "discount") && section_has(section, "discounts")) {
        problem_add(reader->problems, SEVERITY_ERROR, "both-given", section->place,
                    "[sale] has both discount and discounts; keep the one that holds");
    }
    for (size_t i = 0; i < sale->stage_count; i++) {
        sum += ten_thousandths(&sale->stages[i].value);
    }
    if (sum > 1000000) {
        problem_add(reader->problems, SEVERITY_ERROR, "stages-over-total",
                    sale->stage_count > 0 ? sale->stages[0].value.place : sale->deposit.place,
                    "deposit and stages are more than 100 %% together; expected at most the total");
    }
}

static const struct section_kind section_sale = {"sale",
                                                 sale_keys,
                                                 COUNT_OF(sale_keys),
                                                 SECTION(job, sale),
                                                 .check = check_sale,
                                                 .help = "Tax, discount, delivery and payment."};

static const struct spelling option_prices[] = {
    {"replaces", OPTION_REPLACES}, {"adds", OPTION_ADDS}, {0}};

/* Beside those of [make]; counted from `changes`, as they are. */
static const struct key option_keys[] = {
    {"price",
     AS_CHOICE(option_prices),
     {offsetof(struct option, price) - offsetof(struct option, changes), 0},
     "replaces",
     "adds",
     .help = "whether the client reads its total, or what it adds; absent: replaces"},
};

static const struct section_kind section_option = {"option",
                                                   construction_keys,
                                                   CONSTRUCTION_KEY_COUNT,
                                                   SECTIONS(job, options, option_count, option),
                                                   .keys_at = offsetof(struct option, changes),
                                                   .more_keys = option_keys,
                                                   .more_key_count = COUNT_OF(option_keys),
                                                   .check = check_option,
                                                   .help =
                                                       "What changes, to compare: keys of [make]."};

const struct section_kind *const job_sections[] = {&section_job, &section_make, &section_sale,
                                                   &section_option};
const size_t job_section_count = COUNT_OF(job_sections);
