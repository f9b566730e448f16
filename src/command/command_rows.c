/* SPDX-License-Identifier: MIT */
/* The commands, in the order of the help. */
#include "command/command.h"
#include "report/json/json.h"

#include <string.h>

static const struct command rows[COMMAND_COUNT] = {
    [PLACE_QUOTE] =
        {"quote", "write the workbook and the client's papers, print a summary",
         "doorcost quote samples/kitchen/kitchen.ini -o kitchen.xlsx",
         "Writes the shop's workbook, and beside it the client's papers, -client.xlsx and "
         "-client.pdf; with --option NAME that stands in the names too, and with --json they are "
         "written as well. Prints what fits a screen: total, profit, hours, what to buy, what is "
         "open; with --all each door, what it costs and all cautions. Files that somebody has "
         "edited are left alone unless --force is given.",
         WORK_PURCHASES, TRACE_FIRST,
         JSON_DOORS | JSON_MATERIALS | JSON_FINISH | JSON_LABOR | JSON_COSTS | JSON_SALE |
             JSON_TAPE | JSON_PLANS | JSON_INPUTS,
         true, command_quote, NULL},
    [PLACE_CHECK] = {"check", "read all files and report what is wrong in them",
                     "doorcost check samples/kitchen/kitchen.ini",
                     "Reads job, rates and door list, estimates the job and every option of it, "
                     "and reports every error and warning with its file and line. Writes nothing.",
                     WORK_PROBLEMS, TRACE_NONE, 0, false, command_check, NULL},
    [PLACE_FINISH] =
        {"finish", "print what finish to buy, and why",
         "doorcost finish samples/kitchen/kitchen.ini",
         "Prints, for each finish and color, the sprayed area and the numbers that lead from it "
         "to coating, reducer and catalyst, then the cheapest containers that hold them.",
         WORK_ONE, TRACE_FIRST, JSON_FINISH, false, command_finish, NULL},
    [PLACE_BUY] =
        {"buy", "print what to buy, by supplier",
         "doorcost buy samples/kitchen/kitchen.ini -o order.pdf --no-prices",
         "Prints what to buy, supplier by supplier, with sizes and counts; below it how "
         "these amounts come about, what each costs, and what of it the job is charged. "
         "With -o it writes the list as a PDF to tick off, or, with --no-prices, to send "
         "to a supplier. With further job files: one list for all of them, what each bears of it, "
         "and what buying together saves.",
         WORK_PURCHASE, TRACE_NONE, JSON_MATERIALS | JSON_FINISH | JSON_PURCHASE, true, command_buy,
         "[JOB.ini ...]"},
    [PLACE_PLAN] =
        {"plan", "plan and draw the cutting of boards and sheets",
         "doorcost plan samples/kitchen/kitchen.ini -o kitchen-plan.pdf",
         "Prints, for each lumber and sheet, what to buy by cutting plan, how each "
         "board and sheet is cut, where the waste goes, how near to the least possible "
         "that is, and what the waste factor should have been. With -o or --svg it "
         "draws the plans, a page for each board and sheet, to hang at the saw. With further job "
         "files: one set of plans for all of them, what each bears of it, and what "
         "that saves.",
         WORK_PURCHASE, TRACE_NONE, JSON_PLANS, true, command_plan, "[JOB.ini ...]"},
    [PLACE_COMPARE] =
        {"compare", "put the options of the job side by side",
         "doorcost compare samples/kitchen/kitchen.ini",
         "Prints the job as listed and each [option NAME] of it side by side: cost by group, "
         "price, materials, hours, weight, and the difference to the first in money and percent.",
         WORK_PURCHASES, TRACE_NONE, JSON_COSTS | JSON_SALE | JSON_PURCHASE, false, command_compare,
         NULL},
    [PLACE_DRAW] = {"draw", "draw the doors for the shop wall",
                    "doorcost draw samples/kitchen/kitchen.ini -o kitchen-doors.pdf",
                    "Writes a PDF with the elevation of each row of the door list: sizes of leaf "
                    "and parts, hinge side, materials, several on a page.",
                    WORK_ONE, TRACE_NONE, 0, false, command_draw, NULL},
    [PLACE_LABELS] =
        {"labels", "print labels for parts, or for doors to pack",
         "doorcost labels samples/kitchen/kitchen.ini -o kitchen-labels.pdf",
         "Writes a PDF for sheets of labels, whose sizes the rates give in [labels parts] and "
         "[labels doors]: one for each piece of every part, in the order of cutting, with its "
         "door, size, grain, which edge is up and the batch of its finish; with --doors one for "
         "each door, to pack it. With names of rows behind the job file: these alone.",
         WORK_ONE, TRACE_NONE, JSON_DOORS, false, command_labels, "[ROW ...]"},
    [PLACE_EXPLAIN] =
        {"explain", "tell how a figure came about",
         "doorcost explain samples/kitchen/kitchen.ini G03 labor",
         "Prints what a figure was made from, line by line, down to sizes, rates with file and "
         "line, and published constants. WHAT is a door (G03), a line (total, labor), a material, "
         "an operation, one of these with what is asked of it (G03 labor, poplar yield), or a cell "
         "of the workbook (Prices!F12).",
         WORK_PURCHASES, TRACE_FIRST, JSON_TAPE, true, command_explain, "WHAT"},
    [PLACE_STRIKE] =
        {"strike", "tell what a row saves if it is struck, and one more of it costs",
         "doorcost strike samples/kitchen/kitchen.ini G03 G04",
         "Estimates the job anew without each row, and with one more of it: whole sheets, set-ups, "
         "minimums and price breaks make that differ from what the row is listed at. Tells too "
         "which nearly equal sizes, made one, save something. With names of rows behind the job "
         "file: these, and all of them at once.",
         WORK_PURCHASE, TRACE_NONE, JSON_COSTS | JSON_SALE | JSON_PURCHASE, false, command_strike,
         "[ROW ...]"},
    [PLACE_DAYS] =
        {"days", "put the work in order by day, of one job or several",
         "doorcost days samples/kitchen/kitchen.ini",
         "Puts the work of the job in order by the people, machines, clamps, racks and working "
         "days of the rates, with the time that glue and finish take to set and dry. Tells when "
         "all is done, what decides that, how soon any plan could be done, what one more person, "
         "clamp set or rack would bring, and the work of each day. Further jobs may follow, "
         "up to 26 in all, whose rates say the same of the shop: they share it, and --option is "
         "that of each. -o writes the plan as a chart, .pdf, as a list to tick off, .xlsx, or for "
         "calendar "
         "programs, .ics.",
         WORK_ONE, TRACE_NONE, 0, false, command_days, "[JOB.ini ...]"},
    [PLACE_LEARN] =
        {"learn", "tell how a job came out against its estimate",
         "doorcost learn samples/kitchen/kitchen.ini samples/kitchen/noted.csv",
         "Reads what was noted of a finished job: hours by operation, sort of work or all, what "
         "was "
         "bought, paid, used and left, doors made again. Tells how hours, prices and amounts "
         "differ from the estimate in money, waste and transfer efficiency as they were, what the "
         "job earned, and what the rates should be by it. Further jobs and what was noted of them "
         "may follow, all with rates of one file: the more jobs, the further the rates move. With "
         "-o the new rates are written to a new file, which keeps all comments; with --rack what "
         "is "
         "on the rack when one job is done, which the next rates name.",
         WORK_PURCHASE, TRACE_NONE, JSON_COSTS | JSON_SALE | JSON_PURCHASE, false, command_learn,
         "NOTED.csv [JOB.ini NOTED.csv ...]"},
    [PLACE_RANGE] =
        {"range", "tell which rates move the price, and how far",
         "doorcost range samples/kitchen/kitchen.ini",
         "Moves each rate that has a range, '4.10 per bf (3.80 to 4.60)', to its low and its high, "
         "estimates the job anew for each, and prints what that changes for the client and of the "
         "cost, what moves most first; then which rates without a range move the price most. With "
         "--set, what single changes come to; with --by, all rates moved by the same part, which "
         "is no analysis of what is uncertain.",
         WORK_PURCHASE, TRACE_FIRST, JSON_COSTS | JSON_SALE | JSON_PURCHASE, false, command_range,
         NULL},
    [PLACE_BRIDGE] =
        {"bridge", "tell why the price moved from one job to another",
         "doorcost bridge samples/kitchen/kitchen.ini samples/kitchen/kitchen-second.ini",
         "Goes from the job file to NEW, a group of inputs at a time: rows taken off, changed and "
         "added, materials, waste, prices, minutes and wage, overhead and profit, terms of sale, "
         "tax. Each step is a whole estimate, and they add up to the difference to the cent. "
         "Either "
         "job may be a quote saved with 'quote --json'. With -o it writes a change order for the "
         "client as PDF or workbook, without anything of "
         "cost.",
         WORK_ONE, TRACE_NONE, JSON_COSTS | JSON_SALE, false, command_bridge, "NEW"},
    [PLACE_TABLE] =
        {"table", "tell what one more door costs, by size and count",
         "doorcost table samples/kitchen/kitchen.ini shaker --widths 12,15,18",
         "Estimates the job anew with one more door of a style, for each size and count, and a job "
         "of that door alone: direct cost, price, price by area, and where a flat price by area "
         "would lose money. The door is made as [make] says. Styles are named behind the job file; "
         "without a name it is the one that the job has most doors of. -o writes all of it: "
         "to a workbook with charts where FILE ends in .xlsx, else as comma-separated values.",
         WORK_PURCHASE, TRACE_NONE, JSON_COSTS | JSON_SALE | JSON_PURCHASE, false, command_table,
         "[STYLE ...]"},
    [PLACE_WAYS] =
        {"ways", "tell what each row costs made here, bought in, its finish sent out",
         "doorcost ways samples/kitchen/kitchen.ini --hours 40",
         "Estimates the job anew with each row that the rates know another way for: bought in, its "
         "finish sent out, or both. Tells money spent, hours at the bench and direct cost of each, "
         "and what one choice for all comes to. With --hours it chooses a way for each row so that "
         "the job takes no more hours at the bench and spends the least. With names of rows behind "
         "the job file: these alone may change.",
         WORK_PURCHASE, TRACE_NONE, JSON_COSTS | JSON_SALE | JSON_PURCHASE, false, command_ways,
         "[ROW ...]"},
    [PLACE_REACH] =
        {"reach", "tell what would have to be true for a wanted total",
         "doorcost reach samples/kitchen/kitchen.ini --total 7000",
         "Tells which profit, which discount, how many hours of work, and which rows left out "
         "would "
         "each alone make the client pay that total, tax included; what it then really comes to, "
         "and what is left of it. Each answer is a whole estimate. Changes nothing.",
         WORK_PURCHASE, TRACE_NONE, JSON_COSTS | JSON_SALE | JSON_PURCHASE, false, command_reach,
         NULL},
    [PLACE_SHOW] =
        {"show", "write the estimate as a page to look into, for a browser",
         "doorcost show samples/kitchen/kitchen.ini -o kitchen.html",
         "Writes one HTML file that needs no network: the quote, drawings of the doors, cutting "
         "plans, what to buy and to cut, hours and cost. Each number opens to how it was made, "
         "down to file and line; rates and terms of sale can be moved, and the whole estimate "
         "follows to the cent; "
         "what is bought and cut can be ticked off, which the browser "
         "remembers. For the shop alone: it shows what the job costs. With --client a second "
         "page, -client.html, holds the offer to the client and nothing else.",
         WORK_PURCHASES, TRACE_FIRST, 0, true, command_show, NULL},
    [PLACE_MEASURE] =
        {"measure", "print a blank sheet to measure on",
         "doorcost measure samples/kitchen/kitchen.ini -o measure.pdf",
         "Writes a PDF to take along to the client: rows for 12 openings with the columns of the "
         "door list, drawings of what is measured where, what to look for. With a job file its "
         "client, units, overlay and the names of its rates stand on it; its door list need not be "
         "there yet. With a rates file the names of the shop; without a file none.",
         WORK_NOTHING, TRACE_NONE, 0, false, command_measure, NULL},
    [PLACE_NEW] =
        {"new", "write a job file to begin with",
         "doorcost new kitchen.ini --set \"client = The boat club\" --set \"doors = doors.xlsx\"",
         "Writes a job file, each line with what it is. At a terminal it asks for the few things "
         "that a job needs; Enter takes what is offered: from the last job of the folder, from the "
         "rates, or what is usual. Else, and for what --set gives, nothing is asked. Where the "
         "shop has no rates yet, those that ship are put beside it, in the folder rates. With "
         "--from it goes on from an old job: its lines and comments stay, what belonged to that "
         "job alone goes. With --list or --rates it writes a list "
         "to fill in, or rates of your own. Nothing is written over unasked.",
         WORK_NOTHING, TRACE_NONE, 0, false, command_new, NULL},
};

const struct command *command_rows(size_t *count) {
    *count = COMMAND_COUNT;
    return rows;
}

const struct command *command_find(const char *name) {
    for (size_t i = 0; i < COMMAND_COUNT; i++) {
        if (strcmp(rows[i].name, name) == 0) {
            return &rows[i];
        }
    }
    return NULL;
}
