/* SPDX-License-Identifier: MIT */
/* Markup, margin, overhead, contingency, tax, card fee and allowance against published examples
 * (money.csv): small jobs, read and estimated, whose cost is the row's amount. */
#include "ways.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define SHEETS                                                                                     \
    "make|style = slab", "sheet board|price = {amount} per sheet", "shop|charge sheets = bought"
#define MARKUP  "shop|profit = {percent} % markup"
#define MARGIN  "shop|profit = {percent} % margin"
#define ROW     "id,count,width,height\nD1,{count},18,30\n"
#define WORK    "door plain|operations = work"
#define AN_HOUR "door slab|operations = work", "operation work|per = job\nminutes = 60"
#define PILE    "shop|labor rate = 0.00 per hour\ncontingency = {percent} %\n"

static const struct way ways[] = {
    {.check = "markup price",
     .edits = {SHEETS, MARKUP},
     .doors = ROW,
     .answer = COST(job.price, NULL)},
    {.check = "markup profit",
     .edits = {SHEETS, MARKUP},
     .doors = ROW,
     .answer = COST(job.profit, NULL)},
    {.check = "markup margin",
     .edits = {SHEETS, MARKUP},
     .doors = ROW,
     .answer = SALE(margin_left, NULL)},
    {.check = "margin price",
     .edits = {SHEETS, MARGIN},
     .doors = ROW,
     .answer = COST(job.price, NULL)},
    {.check = "margin left",
     .edits = {SHEETS, MARGIN},
     .doors = ROW,
     .answer = SALE(margin_left, NULL)},
    {.check = "overhead of cost",
     .edits = {SHEETS, "shop|overhead = {percent} % of cost"},
     .doors = ROW,
     .answer = COST(job.overhead, NULL)},
    {.check = "overhead by the hour",
     .edits = {"shop|overhead = {amount} per hour", WORK,
               "operation work|per = door\nminutes = 60"},
     .doors = ROW,
     .answer = COST(job.overhead, NULL)},
    {.check = "contingency",
     .edits = {SHEETS, PILE},
     .doors = ROW,
     .answer = COST(job.contingency, NULL)},
    {.check = "overhead after contingency",
     .edits = {SHEETS, PILE "overhead = 18 % of cost"},
     .doors = ROW,
     .answer = COST(job.overhead, NULL)},
    {.check = "price after contingency",
     .edits = {SHEETS, PILE "overhead = 18 % of cost\nprofit = 25 % markup"},
     .doors = ROW,
     .answer = COST(job.price, NULL)},
    {.check = "price of a margin after contingency",
     .edits = {SHEETS, PILE "overhead = 18 % of cost\nprofit = 25 % margin"},
     .doors = ROW,
     .answer = COST(job.price, NULL)},
    {.check = "price of hours after contingency",
     .edits = {SHEETS, AN_HOUR, (PILE "overhead = 14.00 per hour\nprofit = 25 % markup")},
     .doors = ROW,
     .answer = COST(job.price, NULL)},
    {.check = "tax",
     .edits = {"make|style = slab", "sheet board|price = 0.00 per sheet",
               "shop|minimum door = {amount}", "sale|tax = {percent} %\ntax on = selling price"},
     .doors = ROW,
     .answer = SALE(tax, NULL)},
    {.check = "card fee added",
     .edits = {SHEETS, "sale|card fee = {percent} % added"},
     .doors = ROW,
     .answer = SALE(card_fee, NULL)},
    {.check = "card fee of what is paid",
     .edits = {SHEETS, "sale|card fee = {percent} % of what is paid"},
     .doors = ROW,
     .answer = SALE(card_fee, NULL)},
    {.check = "total with card fee added",
     .edits = {SHEETS, "sale|card fee = {percent} % added"},
     .doors = ROW,
     .answer = SALE(total, NULL)},
    {.check = "total with card fee of what is paid",
     .edits = {SHEETS, "sale|card fee = {percent} % of what is paid"},
     .doors = ROW,
     .answer = SALE(total, NULL)},
    {.check = "allowance of shift",
     .edits = {"shop|allowance = {percent} % of shift", WORK,
               "operation work|per = door\nminutes = {amount}"},
     .doors = ROW,
     .answer = LABOR(person_minutes, NULL)},
    {.check = "allowance added",
     .edits = {"shop|allowance = {percent} % added", WORK,
               "operation work|per = door\nminutes = {amount}"},
     .doors = ROW,
     .answer = LABOR(person_minutes, NULL)},
    /* a batch for each length of stile, 20 pieces each at 29.29 / 20 minutes */
    {.check = "batches",
     .edits = {WORK, "operation work|per = stile\nminutes = 1.4645\n"
                     "setup = {amount} min per length"},
     .doors = "id,count,width,height\nD01,10,18,20\nD02,10,18,21\nD03,10,18,22\nD04,10,18,23\n"
              "D05,10,18,24\nD06,10,18,25\nD07,10,18,26\nD08,10,18,27\nD09,10,18,28\n"
              "D10,10,18,29\nD11,10,18,30\nD12,10,18,31\nD13,10,18,32\nD14,10,18,33\n"
              "D15,10,18,34\nD16,10,18,35\nD17,10,18,36\nD18,10,18,37\nD19,10,18,38\n"
              "D20,10,18,39\nD21,10,18,40\nD22,10,18,41\nD23,10,18,42\nD24,10,18,43\n"
              "D25,10,18,44\nD26,10,18,45\nD27,10,18,46\nD28,10,18,47\n",
     .answer = OPERATION(0, machine_minutes, NULL)},
};

static void test_published(void **state) {
    (void)state;
    ways_run("money.csv", ways, COUNT(ways));
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_published)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
