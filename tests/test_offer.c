/* SPDX-License-Identifier: MIT */
/* What the client is told of small jobs, line by line: statements, what is part of it and what is
 * not, rows named in ranges, what options change, the price and its payments.  Expected lines are
 * written by hand. */
#include "support.h"

#include "file_bench.h"
#include "report/offer_make/offer_maker.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define MOST_LINES 16

static void tell_texts(struct dump *told, const char *what, const struct offer_texts *texts) {
    for (size_t i = 0; i < texts->count; i++) {
        dump_add(told, "%s: %s\n", what, texts->text[i]);
    }
}

/* The offer as lines, each of what it is and its words. */
static void tell_offer(struct dump *told, const struct offer *o) {
    *told = (struct dump){.text = "\n", .used = 1};
    dump_add(told, "paper: %s\nmark: %s\nreference: %s\nlist: %s\n", o->paper, o->mark,
             o->reference, o->list_note);
    for (size_t i = 0; i < o->fact_count; i++) {
        dump_add(told, "%s: %s\n", o->facts[i].label, o->facts[i].text);
    }
    tell_texts(told, "shop", &o->shop_lines);
    tell_texts(told, "statement", &o->statements);
    tell_texts(told, "made", &o->made);
    tell_texts(told, "in", &o->included);
    tell_texts(told, "out", &o->excluded);
    tell_texts(told, "note", &o->notes);
    for (size_t i = 0; i < o->kind_count; i++) {
        dump_add(told, "kind %s: %s\n", o->kinds[i].letter, o->kinds[i].words);
    }
    for (size_t i = 0; i < o->room_count; i++) {
        dump_add(told, "room %s: %zu\n", o->rooms[i].name, o->rooms[i].count);
    }
    for (size_t i = 0; i < o->door_count; i++) {
        const struct offer_door *const d = &o->doors[i];
        dump_add(told, "door %s: %s, %s, %s x %s, %s%s\n", d->id, o->kinds[d->kind].letter,
                 d->listed, d->width.text, d->height.text, d->count.text,
                 strcmp(d->leaves.text, "1") == 0 ? "" : " x 2");
        if (o->detail == OFFER_EACH) {
            dump_add(told, "price %s: %s, %s\n", d->id, d->price.text, d->amount.text);
        }
    }
    for (size_t i = 0; i < o->line_count; i++) {
        dump_add(told, "line %s: %s\n", o->lines[i].words, o->lines[i].amount.text);
    }
    for (size_t i = 0; i < o->payment_count; i++) {
        dump_add(told, "payment %s: %s\n", o->payments[i].words, o->payments[i].amount.text);
    }
    for (size_t i = 0; i < o->option_count; i++) {
        const struct offer_option *const option = &o->options[i];
        dump_add(told, "option %s: %s; %s\n", option->name, option->first, option->second);
        dump_add(told, "change %s: %s\ndue %s: %s\n", option->name, option->words, option->name,
                 option->payments);
    }
    dump_add(told, "total: %s, %s\npay: %s, %s\nsign: %s\nother: %s\n", o->total_label,
             o->total_words, o->pay_label, o->pay_words, o->agreed, o->other_total);
    tell_texts(told, "pay note", &o->pay_notes);
}

struct offer_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *lines[MOST_LINES]; /* that must be there; after a '!': that must not begin a line */
};

static void check_lines(struct bench *bench, const struct dump *told,
                        const char *const lines[MOST_LINES]) {
    for (size_t i = 0; i < MOST_LINES && lines[i] != NULL; i++) {
        const bool absent = lines[i][0] == '!';
        char line[1024];
        (void)snprintf(line, sizeof line, "\n%s%s", lines[i] + (absent ? 1 : 0),
                       absent ? "" : "\n");
        if ((strstr(told->text, line) == NULL) != absent) {
            bench_wrong(bench, "%s '%s'", absent ? "unwanted" : "missing",
                        lines[i] + (absent ? 1 : 0));
        }
    }
}

static int run_case(const struct offer_case *c, enum bench_unit unit) {
    static struct dump told; /* large for a stack */
    struct bench bench;
    struct estimate options[4];
    struct offer offer;
    bench_open(&bench, c->name, unit, c->edits, c->doors);
    bench_sound(&bench);
    assert_int_equal(bench.result, ESTIMATE_OK);
    assert_true(bench.job.option_count <= COUNT(options));
    for (size_t i = 0; i < bench.job.option_count; i++) {
        assert_int_equal(estimate_make(&options[i], &bench.rates, &bench.job, bench_request((int)i),
                                       &bench.problems),
                         ESTIMATE_OK);
    }
    assert_true(offer_make(&offer, &bench.estimate, options, bench.job.option_count));
    tell_offer(&told, &offer);
    check_lines(&bench, &told, c->lines);
    offer_clear(&offer);
    for (size_t i = 0; i < bench.job.option_count; i++) {
        estimate_clear(&options[i]);
    }
    return bench_close(&bench);
}

static void run_cases(const struct offer_case *cases, size_t count, enum bench_unit unit) {
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        wrong += run_case(&cases[i], unit);
    }
    assert_int_equal(wrong, 0);
}

#define ONE "D1,18,30\n"

/* --- statements --- */

/* NOLINTBEGIN(bugprone-suspicious-missing-comma): long texts go over lines */
static const struct offer_case statement_cases[] = {
    {"a bare quote says nothing that the job does not",
     {NULL},
     ONE,
     {"paper: Quote", "mark: ", "reference: Quote", "Date: March 2, 2026",
      "statement: This is a quote: the price holds for what is listed here.",
      "statement: Made to the finished sizes below.",
      "statement: The prices hold only if the whole list is ordered.",
      "statement: When the doors will be ready is agreed with the order.", "!Valid until",
      "!Number"}},
    {"rates that are made up",
     {"shop|invented = yes"},
     ONE,
     {"paper: Quote", "mark: example prices", "reference: Quote, example prices",
      "statement: Example prices, made up: this paper shows how a quote reads, and offers "
      "nothing."}},
    {"an estimate of such rates",
     {"shop|invented = yes", "job|paper = estimate"},
     ONE,
     {"reference: Estimate, example prices",
      "statement: Example prices, made up: this paper shows how an estimate reads, and offers "
      "nothing."}},
    {"thirty days from March 2 end on April 1; who measured; when ready",
     {"job|valid = 30 days\nmeasured by = the shop, 27 February\nready = 6 weeks from "
      "deposit\nnumber = 0031\nrevision = 2"},
     ONE,
     {"reference: Quote 0031, revision 2", "Number: 0031", "Revision: 2",
      "Valid until: April 1, 2026", "Ready: 6 weeks from deposit",
      "statement: Made to the finished sizes below, from measurements by the shop, 27 February.",
      "statement: The prices hold until April 1, 2026, and only if the whole list is ordered.",
      "!statement: When the doors"}},
    {"what it replaces",
     {"job|number = 0031\nrevision = 3\nreplaces = quote 0029"},
     ONE,
     {"Revision: 3", "Replaces: quote 0029",
      "statement: It replaces every earlier one of the number 0031, and quote 0029; what they said "
      "no longer holds."}},
    {"a later number alone",
     {"job|number = 0031\nreplaces = quote 0029, revision 2"},
     ONE,
     {"statement: It replaces quote 0029, revision 2; what they said no longer holds.",
      "!Revision"}},
    {"what was agreed",
     {"job|agreed = as listed, 2026-03-09"},
     ONE,
     {"Agreed: As listed, March 9, 2026", "!statement: It replaces"}},
    {"who the shop is and how it is paid",
     {"shop|address = 4 Mill Yard\nlicense = contractor license 00-0000\npayment = by check"},
     ONE,
     {"shop: 4 Mill Yard", "shop: contractor license 00-0000", "pay note: How to pay: by check."}},
    {"over the end of a leap year's February, and of the year",
     {"job|date = 2027-12-15\nvalid = 80 days"},
     ONE,
     {"Date: December 15, 2027", "Valid until: March 4, 2028"}}, /* 16 + 31 + 29 = 76 to Feb 29 */
    {"an estimate binds nobody and is not agreed to",
     {"job|paper = estimate\nvalid = 30 days\nready = in May"},
     ONE,
     {"paper: Estimate", "Prices until: April 1, 2026", "statement: Expected to be ready: in May.",
      "statement: It is worked out for the whole list, at prices that are expected to last until "
      "April 1, 2026.",
      "sign: Received; signing this orders nothing. Please send a quote for the list.",
      "pay: To order, please ask for a quote", "!Ready:", "!statement: This is a quote"}},
};

static const struct offer_case metric_cases[] = {
    {"dates and sizes of a metric shop",
     {"job|valid = 30 days"},
     "D1,450,700.5\n",
     {"Date: 2 March 2026", "Valid until: 1 April 2026",
      "list: Sizes are finished sizes of one door in mm.", "door D1: A, door, 450 x 700.5, 1"}},
};

static void statements(void **state) {
    (void)state;
    run_cases(metric_cases, COUNT(metric_cases), BENCH_MM);
    run_cases(statement_cases, COUNT(statement_cases), BENCH_INCH);
}

/* --- what is part of it --- */

static const struct offer_case part_cases[] = {
    {"nothing but bare doors",
     {NULL},
     ONE,
     {"in: The doors and fronts as listed, 1 in all, sanded and bare",
      "out: Hinges, boring for them and fitting them", "out: Delivery",
      "out: Hanging and adjusting the doors on the cabinets",
      "out: Drilling for pulls and knobs, and fitting them", "!in: Delivery", "!out: Boring"}},
    {"all that a shop may do",
     {"make|hinge = hinge\npull = pull\nfinish = painted",
      "sale|delivery = 120.00\ncharges = 80.00 for samples", "job|also = fit, hang, pulls",
      "door plain|operations = bore", "operation bore|per = hinge\nminutes = 2\ndoes = boring",
      "operation fit|per = hinge\nminutes = 2\ndoes = fitting hinges",
      "operation hang|per = hinge\nminutes = 2\ndoes = hanging",
      "operation pulls|per = door\nminutes = 2\ndoes = fitting pulls"},
     "id,width,height,count\nD1,18,30,3\n",
     {"in: The doors and fronts as listed, 3 in all, sanded and finished as said",
      "in: Hinges: hinge, 6 supplied", "in: Pulls: pull, 3 supplied",
      "in: Boring the doors for their hinges", "in: Fitting the hinges to the doors",
      "in: Delivery", "in: Hanging and adjusting the doors on the cabinets", "in: Samples",
      "in: Drilling for pulls and knobs, and fitting them", "!out: Delivery", "!out: Hanging",
      "!out: Drilling"}},
    {"what is bored and says so by nothing is promised by nothing",
     {"make|hinge = hinge", "door plain|operations = bore",
      "operation bore|per = hinge\nminutes = 2"},
     ONE,
     {"out: Boring the doors for their hinges", "!in: Boring"}},
    {"an operation in the client's own words, and for one row alone",
     {"operation oil|per = door\nminutes = 5\nwords = oiling the edges twice"},
     "id,width,height,also\nD1,18,30,\nD2,18,30,oil\n",
     {"in: Oiling the edges twice, for D2"}},
    {"an operation that has nothing to do is not promised",
     {"job|also = hang", "operation hang|per = hinge\nminutes = 2\ndoes = hanging"},
     ONE,
     {"out: Hanging and adjusting the doors on the cabinets", "!in: Hanging"}},
    {"a charge is promised by its own name, delivery too",
     {"sale|delivery = by drive\ncharges = 40.00 for templates by measure",
      "operation drive|per = job\nminutes = 60\ndoes = delivery\nwords = a van",
      "operation measure|per = job\nminutes = 30\nwords = measuring"},
     ONE,
     {"in: Templates", "in: Delivery", "!in: A van", "!in: Measuring", "!out: Delivery"}},
    {"hinges by others, delivery to an address",
     {"make|hinge = hinge", "hardware hinge|price = by others\nwords = concealed hinge",
      "sale|delivery = 120.00", "job|address = 1 Quay Lane (invented)"},
     ONE,
     {"out: Hinges: concealed hinge, 2 needed, by others", "in: Delivery to the address above",
      "out: Boring the doors for their hinges", "out: Fitting the hinges to the doors",
      "!out: Hinges, boring"}},
    {"other hardware, sold and not fitted",
     {"make|hardware = catch", "hardware catch|price = 1.40 each\nwords = magnetic catch",
      "hardware lock|price = by others"},
     "id,width,height,hardware\nD1,18,30,\nD2,18,30,\"2 catch, lock\"\nD3,18,30,none\n",
     {"in: Other hardware: magnetic catch, 3 supplied, for D1, D2",
      "out: Other hardware: lock, 1 needed, by others, for D2",
      "out: Fitting the other hardware to the doors"}},
    {"other hardware, fitted",
     {"make|hardware = catch", "hardware catch|price = 1.40 each", "job|also = fit",
      "operation fit|per = piece of hardware\nminutes = 2\ndoes = fitting hardware"},
     ONE,
     {"in: Other hardware: catch, 1 supplied", "in: Fitting the other hardware to the doors",
      "!out: Fitting the other"}},
    {"no other hardware, no word of it", {NULL}, ONE, {"!out: Fitting the other"}},
    {"plates come with the hinges and are fixed by who hangs the doors",
     {"make|hinge = hinge", "job|also = hang",
      "operation hang|per = hinge\nminutes = 2\ndoes = hanging"},
     ONE,
     {"in: Hinges: hinge, 2 supplied", "!out: Fixing the hinge plates"}},
    {"plates that nobody is paid to fix",
     {"make|hinge = hinge"},
     ONE,
     {"out: Fixing the hinge plates to the cabinets",
      "out: Cabinet boxes, drawer boxes, and taking away old doors"}},
    {"delivery to elsewhere, and a warranty",
     {"shop|warranty = 2 years on joints", "sale|delivery = 120.00",
      "job|address = 1 Quay Lane\ndeliver to = the barn behind it"},
     ONE,
     {"in: Delivery to the barn behind it", "in: Warranty: 2 years on joints"}},
    {"two kinds of hinges, each with its rows",
     {"make|hinge = hinge", "hardware cup|price = 4.00 each"},
     "id,width,height,hinge\nD1,18,30,\nD2,18,30,cup\nD3,18,30,\n",
     {"in: Hinges: hinge, 4 supplied, for D1, D3", "in: Hinges: cup, 2 supplied, for D2"}},
};

static void parts(void **state) {
    (void)state;
    run_cases(part_cases, COUNT(part_cases), BENCH_INCH);
}

/* --- rows, kinds, words of doors --- */

#define TWO_WOODS                                                                                  \
    "lumber poplar|words = poplar",                                                                \
        "lumber oak|thickness = 4/4\nprice = 9.00 per bf\nwaste = 0 % added"
#define LONG_NAME                                                                                  \
    "a-door-whose-name-runs-on-and-on-over-more-than-sixty-letters-of-its-row-in-the-list"

static const struct offer_case row_cases[] = {
    {"two rows that follow are two, three are a range",
     {TWO_WOODS},
     "id,width,height,frame\nG01,18,30,oak\nG02,18,30,oak\nG03,18,30,oak\nG04,18,30,\n"
     "G05,18,30,oak\nG06,18,30,\nG07,18,30,oak\nG08,18,30,oak\nG09,18,30,\nG10,18,30,\n"
     "G11,18,30,\nG12,18,30,\nG13,18,30,\n",
     {"made: Frames: poplar; for G01 to G03, G05, G07, G08: oak.", "made: Panels: ply.",
      "made: Finish: left bare, without a finish."}},
    {"a door bought in has no wood of ours",
     {TWO_WOODS, "door ready|kind = slab\nbought in = 80.00 per door"},
     "id,width,height,style\nD1,18,30,\nD2,18,30,\nD3,18,30,ready\n",
     {"made: Frames: poplar; for D3: ready-made, in the wood of their maker."}},
    {"whether a pane is safety glazing, where it is said",
     {"make|style = glazed", "glass clear|safety = no",
      "glass wired|thickness = 1/4\nprice = 20.00 per sqft\nsafety = yes"},
     "id,width,height,glass\nD1,18,30,\nD2,18,30,\nD3,18,30,wired\n",
     {"made: Glass: clear, not safety glazing; for D3: wired, safety glazing."}},
    {"many rows are named by their kinds, where they are all of these",
     {TWO_WOODS},
     "id,width,height,mid rails,frame\nA1,18,30,1,oak\nA2,18,30,0,\nA3,18,30,1,oak\nA4,18,30,0,\n"
     "A5,18,30,1,oak\nA6,18,30,0,\nA7,18,30,2,oak\nA8,18,30,0,\nA9,18,30,0,\n",
     {"made: Frames: poplar; for kinds A, C: oak."}},
    {"and by their names where they are not",
     {TWO_WOODS},
     "id,width,height,mid rails,frame\nA1,18,30,1,oak\nA2,18,30,0,\nA3,18,30,1,oak\nA4,18,30,0,\n"
     "A5,18,30,1,oak\nA6,18,30,0,\nA7,18,30,2,oak\nA8,18,30,0,\nA9,18,30,1,\nB1,18,30,0,\n",
     {"made: Frames: poplar; for A1, A3, A5, A7: oak."}},
    {"a remark is for the shop alone",
     {NULL},
     "id,width,height,note,remark\nD1,18,30,over the sink,ask for less\n",
     {"door D1: A, door; over the sink, 18 x 30, 1"}},
    {"a place for each row stands beside it",
     {NULL},
     "id,room,width,height\nA1,sink,18,30\nA2,Range,18,30\nA3,,18,30\nA4,end,18,30\n"
     "A5,range,18,30\nA6,end,18,30\nA7,end,18,30\n",
     {"room : 7", "door A1: A, sink: door, 18 x 30, 1", "door A5: A, range: door, 18 x 30, 1",
      "door A3: A, door, 18 x 30, 1"}},
    {"half as many rooms as rows have their lines",
     {NULL},
     "id,room,width,height\nA1,a,18,30\nA2,b,18,30\nA3,c,18,30\nA4,d,18,30\n"
     "A5,a,18,30\nA6,b,18,30\nA7,c,18,30\nA8,d,18,30\n",
     {"room a: 2", "room d: 2", "door A1: A, door, 18 x 30, 1"}},
    {"three rooms have their lines in any list",
     {NULL},
     "id,room,width,height\nA1,a,18,30\nA2,b,18,30\nA3,c,18,30\n",
     {"room a: 1", "room c: 1", "door A1: A, door, 18 x 30, 1"}},
    {"rooms whose sums are asked for have their lines",
     {"job|detail = rooms"},
     "id,room,width,height\nA1,a,18,30\nA2,b,18,30\nA3,c,18,30\nA4,d,18,30\n",
     {"room a: 1", "room d: 1", "door A1: A, door, 18 x 30, 1"}},
    {"a range ends with its room",
     {TWO_WOODS},
     "id,room,width,height,frame\nA1,hall,18,30,\nA2,hall,18,30,oak\nA3,hall,18,30,oak\n"
     "B1,bath,18,30,oak\nB2,bath,18,30,\nB3,bath,18,30,\nB4,bath,18,30,\n",
     {"made: Frames: poplar; for A2, A3, B1: oak."}},
    {"grain that runs level is told where it shows",
     {"sheet ply|grain = length", "door plain|panel grain = horizontal"},
     "id,width,height,grain\nD1,18,30,\nD2,18,30,\nD3,18,30,vertical\n",
     {"made: Panels: ply, grain horizontal; for D3: ply."}},
    {"arches and bars are of kinds of their own, and told",
     {"make|style = glazed", "door glazed|bar width = 5/8\nbar thickness = 1/4\nbars on = both"},
     "id,width,height,arch,bars\nD1,18,30,,\nD2,18,30,2,\nD3,18,40,3,\nD4,18,30,,2 x 3\n",
     {"kind A: door, glazed, clear", "kind B: door, glazed, arched top, clear",
      "kind C: door, glazed, clear, 2 x 3 lights", "door D3: B, door, 18 x 40, 1",
      "door D4: C, door; bars on both faces of the glass, 18 x 30, 1"}},
    {"long names stay whole",
     {TWO_WOODS},
     "id,width,height,frame\n" LONG_NAME ",18,30,oak\nD2,18,30,\nD3,18,30,\n",
     {"made: Frames: poplar; for " LONG_NAME ": oak.", "door " LONG_NAME ": A, door, 18 x 30, 1"}},
    {"kinds by look, pairs, hinge sides, notes and extras",
     {"make|hinge = hinge"},
     "id,width,height,count,leaves,hinge side,use,note,extra charge\n"
     "D1,18,30,1,1,left,,,\nD2,20,40,1,1,,,by the window,\nD3,18,30,2,2,pair,,,\n"
     "F1,18,8,1,1,,drawer front,,5.00 a carved shell\n",
     {"kind A: door, plain", "kind B: pair of doors, plain", "kind C: drawer front, plain",
      "door D1: A, door; hinges left, 18 x 30, 1", "statement: Hinge side still to be agreed: D2.",
      "door D2: A, door; by the window, 20 x 40, 1",
      "door D3: B, door; hinges left and right, 18 x 30, 2 x 2",
      "door F1: C, drawer front; a carved shell, 18 x 8, 1",
      "list: Sizes are finished sizes of one door in inches. Hinge sides are as seen from the "
      "front. A pair is two doors in one opening; its size is of one of them."}},
    {"leaves that fold: a kind, a line each, each hinge with its rows",
     {"make|hinge = hinge\nfold hinge = fold\npull = pull", "hardware fold|price = 5.00 each"},
     "id,width,second width,height,opens,leaves,hinge side,use,note\n"
     "B1,18,,30,bi-fold,,left,,\nB2,18,,30,bi-fold,,left,,\nB3,18,,30,bi-fold,4,,,\n"
     "C1,11,12,30,pie cut,,right,,by the stove\nL1,30,,15,lift up,,,,\n"
     "T1,30,,8,tilt out,,,false front,\n",
     {"kind A: bi-fold pair of doors, plain", "kind B: two bi-fold pairs of doors, plain",
      "kind C: pie-cut pair of doors, plain", "kind D: lift-up door, plain",
      "kind E: tilt-out front, plain",
      "door B1: A, bi-fold pair, hung leaf; hinges left, 18 x 30, 1",
      "door B1: A, bi-fold pair, folding leaf; hinged to the hung leaf, 18 x 30, 1",
      "door B3: B, bi-fold pair, hung leaf; hinges left and right, 18 x 30, 1 x 2",
      "door C1: C, pie-cut pair, hung leaf; hinges right; by the stove, 12 x 30, 1",
      "door C1: C, pie-cut pair, folding leaf; hinged to the hung leaf, 11 x 30, 1",
      "door L1: D, lift-up door; hinges at the top, 30 x 15, 1",
      "door T1: E, tilt-out front; hinges at the bottom, 30 x 8, 1",
      "in: Hinges: hinge, 14 supplied, for B1 to T1", "in: Hinges: fold, 10 supplied, for B1 to C1",
      "in: Pulls: pull, 7 supplied",
      "list: Sizes are finished sizes of one door in inches. Hinge sides are as seen from the "
      "front. A pair is two doors in one opening; its size is of one of them. A bi-fold or "
      "pie-cut pair is two leaves hinged to each other, a line each. An angle in a drawing marks "
      "the corner that a pie-cut pair closes."}},
    {"two rows that fold are two, not a range",
     {"make|hinge = hinge\nfold hinge = fold", "hardware fold|price = 5.00 each"},
     "id,width,height,opens\nB1,18,30,bi-fold\nB2,18,30,bi-fold\nD1,18,30,\n",
     {"in: Hinges: fold, 4 supplied, for B1, B2", "in: Hinges: hinge, 6 supplied, for B1 to D1"}},
};

static void rows(void **state) {
    (void)state;
    run_cases(row_cases, COUNT(row_cases), BENCH_INCH);
}

/* --- price --- */

/* A slab from one sheet of 1,000.00, as in test_price.c. */
#define THOUSAND                                                                                   \
    "make|style = slab", "sheet board|price = 1000.00 per sheet", "shop|charge sheets = bought"
#define SLAB "S1,24,24\n"

static const struct offer_case price_cases[] = {
    {"the doors alone",
     {THOUSAND},
     SLAB,
     {"line Doors and fronts: 1,000.00", "line Total, USD: 1,000.00",
      "payment Due on delivery: 1,000.00", "total: Total, 1,000.00 USD",
      "pay: Due, 1,000.00 USD on delivery", "sign: To the list and the price of 1,000.00 USD.",
      "!price", "!line Before", "!pay note"}},
    {"the price of each only where it is to be seen",
     {THOUSAND, "job|detail = each"},
     "id,count,width,height\nS1,2,24,24\n",
     {"price S1: 500.00, 1,000.00"}},
    /* 1,000 less 5 % is 950; with 120 of delivery 1,070; 6.25 % of 950 is 59.375 */
    {"discount, delivery, tax on all but that, deposit",
     {THOUSAND, "sale|discount = 5 %\ndelivery = 120.00\ntax = 6.25 %\ntax on = selling price\n"
                "tax name = sales tax\ndeposit = 40 %"},
     SLAB,
     {"line Less discount, 5 %: -50.00", "line After discount: 950.00", "line Delivery: 120.00",
      "line Before sales tax: 1,070.00", "line (of this taxed: all but delivery): 950.00",
      "line Sales tax, 6.25 %: 59.38", "line Total, USD: 1,129.38",
      "payment Deposit, on order, 40 %: 451.75", "payment Balance, on delivery: 677.63"}},
    {"tax on materials says neither their cost nor the percentage",
     {THOUSAND, "sale|tax = 10 %\ntax on = materials at cost"},
     SLAB,
     {"line Before tax: 1,000.00", "line Tax on materials: 100.00", "line Total, USD: 1,100.00",
      "!line (of this taxed", "!line Tax, 10 %"}},
    {"exempt, with the certificate",
     {THOUSAND, "sale|tax = 10 %\nexempt = E-1042"},
     SLAB,
     {"line Total, USD; no tax: exempt, certificate E-1042: 1,000.00", "!line Tax"}},
    {"stages and a card fee of 2 %",
     {THOUSAND, "sale|card fee = 2 % added\nstages = 30 % when sprayed"},
     SLAB,
     {"line In all, not paid by card: 1,000.00", "line Card fee, 2 %: 20.00",
      "line Total, USD: 1,020.00", "payment When sprayed, 30 %: 306.00",
      "payment Balance, on delivery: 714.00",
      "pay note: The total and the payments include the card fee. Who pays otherwise owes 1,000.00 "
      "USD "
      "in all, and the same percentages of that.",
      "total: Total, card fee included, 1,020.00 USD", "other: not paid by card: 1,000.00 USD",
      "sign: To the list and the price of 1,020.00 USD (not paid by card: 1,000.00 USD)."}},
    {"a card fee of what the card takes",
     {THOUSAND, "sale|card fee = 2 % of what is paid"},
     SLAB,
     {"line In all, not paid by card: 1,000.00",
      "line Card fee, of what the card takes, 2 %: 20.41", "line Total, USD: 1,020.41"}},
};

static void prices(void **state) {
    (void)state;
    run_cases(price_cases, COUNT(price_cases), BENCH_INCH);
}

/* --- options --- */

#define DEAR                                                                                       \
    "sheet dear|thickness = 3/4\nsize = 48 x 96\nprice = 1250.00 per sheet\nwaste = 0 % added"

static const struct offer_case option_cases[] = {
    {"an option that replaces, and what is then due",
     {THOUSAND, DEAR, "option birch|slab = dear", "sale|deposit = 40 %"},
     SLAB,
     {"option Birch: replaces the total above: 1,250.00 USD; difference +250.00 USD",
      "change Birch: Slab doors and fronts: dear.",
      "due Birch: Due with it: 500.00 on order (40 %), 750.00 on delivery.",
      "sign: To the list and the price of 1,000.00 USD, "
      "or\u00a0with\u00a0the\u00a0option:\u00a0______________."}},
    {"one that adds",
     {THOUSAND, DEAR, "option birch|slab = dear\nprice = adds"},
     SLAB,
     {"option Birch: adds 250.00 USD to the total above; total with it 1,250.00 USD",
      "due Birch: "}},
    {"one that takes off",
     {THOUSAND,
      "sheet cheap|thickness = 3/4\nsize = 48 x 96\nprice = 600.00 per sheet\n"
      "waste = 0 % added",
      "option plain|slab = cheap\nprice = adds"},
     SLAB,
     {"option Plain: takes 400.00 USD off the total above; total with it 600.00 USD"}},
    {"no hinges, and the rows that keep their own panel",
     {"make|hinge = hinge", "option bare|hinge = none"},
     "id,width,height\nD1,18,30\nD2,18,30\n",
     {"change Bare: Hinges: none."}},
    {"finish and style",
     {"lumber poplar|words = poplar",
      "option painted|finish = painted\ncolor = sea green\nstyle = solid\npanel = poplar"},
     ONE,
     {"change Painted: Style: solid. Panels: poplar. Finish: painted, on both faces and the "
      "edges."}},
    {"other hardware that an option changes, on all doors and on some",
     {"make|hardware = catch", "hardware catch|price = 1.40 each\nwords = magnetic catch",
      "hardware lock|price = 9 each", "option locked|hardware = 2 catch, lock per opening",
      "option open|hardware = none"},
     "id,leaves,width,height,hardware\nD1,1,18,30,\nD2,1,18,30,catch\nD3,2,18,30,\n",
     {"change Locked: Other hardware: 2 x magnetic catch, lock; for D2: magnetic catch; for D3: 2 "
      "x "
      "magnetic catch, lock for the opening.",
      "change Open: Other hardware: magnetic catch. No other hardware for D1, D3."}},
    {"sizes that differ",
     {"make|measure = opening\noverlay = 1/2", "option wide|overlay = 1"},
     ONE,
     {"change Wide: Finished sizes differ from those listed."}},
};
/* NOLINTEND(bugprone-suspicious-missing-comma) */

static void options(void **state) {
    (void)state;
    run_cases(option_cases, COUNT(option_cases), BENCH_INCH);
}

/* As many doors as there are kinds, no two alike: one a style, use, leaves, rails and stiles. */
static void write_kinds(char *doors, size_t size, size_t count) {
    static const char *const styles[] = {"plain", "profiled", "tenoned"};
    static const char *const uses[] = {"door", "drawer front", "false front", "end panel"};
    size_t used =
        (size_t)snprintf(doors, size, "id,width,height,style,use,leaves,mid rails,mid stiles\n");
    for (unsigned i = 0; i < count; i++) {
        used +=
            (size_t)snprintf(doors + used, size - used, "%u,60,60,%s,%s,%u,%u,%u\n", i,
                             styles[i / 256], uses[i / 64 % 4], 1 + i / 32 % 2, i / 8 % 4, i % 8);
        assert_true(used < size);
    }
}

/* 26 letters, 676 pairs of them, then three: Z, AA, ZZ, AAA. */
static void kind_letters(void **state) {
    static const struct {
        size_t kind;
        const char *letter;
    } wanted[] = {{0, "A"}, {25, "Z"}, {26, "AA"}, {52, "BA"}, {701, "ZZ"}, {702, "AAA"}};
    static char doors[65536];
    struct bench bench;
    struct offer offer;
    (void)state;
    write_kinds(doors, sizeof doors, 703);
    bench_open(&bench, "letters", BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){0}, doors);
    bench_sound(&bench);
    assert_true(offer_make(&offer, &bench.estimate, NULL, 0));
    assert_int_equal(offer.kind_count, 703);
    for (size_t i = 0; i < COUNT(wanted); i++) {
        assert_string_equal(offer.kinds[wanted[i].kind].letter, wanted[i].letter);
    }
    offer_clear(&offer);
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(statements), cmocka_unit_test(parts),   cmocka_unit_test(rows),
        cmocka_unit_test(prices),     cmocka_unit_test(options), cmocka_unit_test(kind_letters),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
