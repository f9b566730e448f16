#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What `ways` tells is what edited door lists come to, and what it chooses is the best there is.

    make_or_buy.py DOORCOST SAMPLES JOB.ini

SAMPLES: the folder that holds `rates` and `samples`; JOB.ini: a path below it. The cells `style` and
`finish` of the door list are edited as a person would, the job quoted, and what is spent, hours at
the bench, direct cost and what the client pays held against `ways`, to the cent. For a few rows all
choices there are are quoted so, and the best of them within some hours is found here.
Exit status 0: all is well.
"""
import csv
import itertools
import os
import re
import sys
from fractions import Fraction

from told import MONEY, copied, fail, run

MOST_QUOTES = 16
FIELDS = {**MONEY, "direct": ("costs", "direct cost")}


class Job:
    """A job, its door list, and what edited lists come to."""

    def __init__(self, program, path):
        self.program, self.path = program, path
        with open(path, encoding="utf-8") as file:
            text = file.read()
        # What a charge that is worked for costs is in the direct cost, and no paper has it alone.
        text = re.sub(r"^(delivery *= *[\d.]+) by [^;\n]*", r"\1 ", text, flags=re.M)
        with open(path, "w", encoding="utf-8") as file:
            file.write(text)
        self.options = re.findall(r"^\[option (.*?)\]", text, re.M)
        name = re.search(r"^doors *= *([^;\n]*?) *(;.*)?$", text, re.M).group(1)
        self.list = os.path.join(os.path.dirname(path), name)
        with open(self.list, encoding="utf-8", newline="") as file:
            self.head, *rows = [row for row in csv.reader(file) if any(row)]
        self.head += [name for name in ("style", "finish") if name not in self.head]
        self.rows = {row[0]: row + [""] * (len(self.head) - len(row)) for row in rows}

    def edit(self, cells, without=None):
        """Writes the list with those cells: {row: {column: text}}."""
        rows = []
        for name, row in self.rows.items():
            row = list(row)
            for column, text in cells.get(name, {}).items():
                row[self.head.index(column)] = text
            if name != without:
                rows.append(row)
        with open(self.list, "w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows([self.head, *rows])

    def compared(self, cells, option=None, without=None):
        """Money of the job with those cells."""
        self.edit(cells, without)
        found = run(self.program, "compare", self.path)
        self.edit({})
        estimate = next(e for e in found if e["option"] == bool(option)
                        and e["name"] in (option, found[0]["name"]))
        return {name: Fraction(estimate[part][key]["value"])
                for name, (part, key) in FIELDS.items()}

    def hours(self, cells):
        """Hours at the bench of the job with those cells."""
        self.edit(cells)
        quoted = run(self.program, "quote", self.path, "--effort", "0", "--force",
                     "-o", os.path.join(os.path.dirname(self.path), "out.xlsx"))[0]
        self.edit({})
        return Fraction(quoted["labor"]["bench hours"]["value"])

    def ways(self, *more):
        return run(self.program, "ways", self.path, *more)[0]["ways"]


def same(what, told, found, base_told, base_found):
    """All of it to the cent; direct cost, which the papers give of the doors alone, as it differs."""
    for name, amount in found.items():
        expected = amount
        if name == "direct":
            expected = Fraction(base_told[name]) + amount - base_found[name]
        if Fraction(told[name]) != expected:
            fail(f"{what}: {name} {told[name]}, the edited list makes it {float(expected):.2f}")


def cells_of(way):
    return {column: way[column] for column in ("style", "finish") if way[column] is not None}


def check_rows(job, ways, option=None, some=None):
    """Each way of each row, and what it takes more than the job without the row."""
    held, base = 0, job.compared({}, option)
    same("as listed", ways["as listed"], base, ways["as listed"], base)
    for row in ways["rows"][:some]:
        without = job.compared({}, option, row["id"])
        styles, finishes = ({way[what] for way in row["ways"]} - {None} for what in ("style", "finish"))
        if len(row["ways"]) != (1 + len(styles)) * (1 + len(finishes)):
            fail(f"{row['id']}: bought and sent each may be, {len(row['ways'])} ways")
        for way in row["ways"]:
            found = job.compared({row["id"]: cells_of(way)}, option)
            what = f"{row['id']} {way['way']}"
            same(what, way["job"], found, ways["as listed"], base)
            same(what, way["row"], {name: found[name] - without[name] for name in found},
                 {"direct": 0}, {"direct": 0})
            held += 1
    return held


def check_choice(job, ways, choice):
    """What a choice for all rows comes to, and what the single changes add up to."""
    by_row = {row["id"]: {way["way"]: way for way in row["ways"]} for row in ways["rows"]}
    cells, total = {}, {name: Fraction(text) for name, text in ways["as listed"].items()}
    for name, picked in choice["changed"].items():
        way = by_row[name][picked]
        cells[name] = cells_of(way)
        for what in total:
            total[what] += Fraction(way["job"][what]) - Fraction(ways["as listed"][what])
    for what, amount in total.items():
        if Fraction(choice["added up"][what]) != amount:
            fail(f"{choice['choice']}: {what} adds up to {choice['added up'][what]}")
    same(choice["choice"], choice["estimated whole"], job.compared(cells), ways["as listed"],
         job.compared({}))
    hours = job.hours(cells)
    if Fraction(choice["estimated whole"]["bench hours"]) != hours:
        fail(f"{choice['choice']}: hours {choice['estimated whole']['bench hours']}, not {hours}")
    return hours


def check_best(job, ways):
    """A few rows: each choice there is, quoted, and the best of them within several limits."""
    rows, count = [], 1
    for row in sorted(ways["rows"], key=lambda row: -len(row["ways"])):
        if count * len(row["ways"]) <= MOST_QUOTES:
            rows.append(row)
            count *= len(row["ways"])
    all_there_is = []
    for picked in itertools.product(*(row["ways"] for row in rows)):
        cells = {row["id"]: cells_of(way) for row, way in zip(rows, picked)}
        all_there_is.append((job.hours(cells), job.compared(cells)["to buy"]))
    hours = sorted({hours for hours, _ in all_there_is})
    for limit in (hours[0] - 1, hours[0], hours[len(hours) // 3], hours[len(hours) // 2],
                  hours[-1]):
        best = min(all_there_is, key=lambda of: (max(of[0] - limit, 0), of[1], of[0]))
        told = job.ways(*(row["id"] for row in rows), "--hours", f"{float(limit):.2f}")["within"]
        real = told["chosen"]["estimated whole"]
        if (Fraction(real["bench hours"]), Fraction(real["to buy"])) != best:
            fail(f"{float(limit)} hours: {real}, the best of all is {best}")
        if told["within"] != (best[0] <= limit) or not told["all tried"]:
            fail(f"{float(limit)} hours: within {told['within']}, all tried {told['all tried']}")
    return len(all_there_is)


def check_within(job, ways):
    """All rows: the choice holds the hours, and no other way of any one row betters it."""
    start = Fraction(ways["as listed"]["bench hours"])
    least = Fraction(ways["choices"][-1]["estimated whole"]["bench hours"])
    limit = round((start + least) / 2, 1)
    told = job.ways("--hours", f"{float(limit):.1f}")
    chosen = told["within"]["chosen"]
    hours = check_choice(job, told, chosen)
    if not told["within"]["within"] or hours > limit:
        fail(f"{hours} hours of {limit}")
    for row in told["rows"]:
        for way in row["ways"]:
            changed = {**chosen["changed"], row["id"]: way["way"]}
            cells = {other["id"]: cells_of(next(w for w in other["ways"]
                                                if w["way"] == changed[other["id"]]))
                     for other in told["rows"] if other["id"] in changed}
            spent = job.compared(cells)["to buy"]
            if spent < Fraction(chosen["estimated whole"]["to buy"]) and job.hours(cells) <= limit:
                fail(f"{row['id']} {way['way']} makes it {float(spent)}")
    return limit


def main():
    program, samples, path = os.path.abspath(sys.argv[1]), sys.argv[2], sys.argv[3]
    with copied(samples) as folder:
        job = Job(program, os.path.join(folder, path))
        ways = job.ways()
        if len(ways["rows"]) + ways["rows of one way"] != len(job.rows):
            fail(f"{len(ways['rows'])} rows and {ways['rows of one way']} of {len(job.rows)}")
        held = check_rows(job, ways)
        for option in job.options:
            told = job.ways("--option", option)
            held += check_rows(job, told, option, 3)
        for choice in ways["choices"]:
            check_choice(job, ways, choice)
        tried = check_best(job, ways)
        limit = check_within(job, ways)
        print(f"{held} ways, {len(ways['choices'])} choices, best of {tried}, "
              f"within {float(limit)} hours")


main()
