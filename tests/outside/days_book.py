#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The workbook of the work by day, recalculated by LibreOffice and read by openpyxl, against `days
--json`.

    days_book.py DOORCOST JOB.ini [JOB.ini ...]

- each work of a person stands in its line, and nothing else does: day, who, what, machine, job,
  doors, minutes;
- below each day stands the sum of its minutes and their hours, and of all days at the end;
- a day on which nobody is at work has a line that names all that is waited for;
- what waits stands on a sheet of its own, and in no sum;
- the heads of each sheet are printed on every page, and the line above a sum has no gap;
- sums are formulas, and come to the same where they are figured again.
"""
import os
import re
import subprocess
import sys
import tempfile
from collections import defaultdict
from fractions import Fraction

import openpyxl

from told import fail, run

WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
WAITS = {"clamps": ", in clamps", "racks": ", dries", "finisher": ", away"}
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def wanted_lines(plan):
    """Lines of people and of what waits: day, who, what, job's number, doors, minutes."""
    people, waits = [], []
    for row in plan["rows"]:
        for work in row["work"]:
            if row["is"] != "person" and not work["waits"]:
                continue
            what = work["operation"] + (f": {work['of']}" if work["of"] else "")
            what += WAITS[row["is"]] if work["waits"] else ""
            line = (work["day"], row["who"], what, work["job"], work["doors"], work["minutes"])
            (waits if work["waits"] else people).append(line)
    return sorted(people), sorted(waits)


def line_of(plan, cells):
    done, day, who, what, _, job, doors, minutes, hours = cells[:9]
    number = 0
    if len(plan["jobs"]) > 1:
        letter, job = job.split("  ", 1)
        number = LETTERS.index(letter)
    told = plan["jobs"][number]
    if job != (told["number"] or told["title"]) or hours is not None or day.split()[0] not in WEEKDAYS:
        fail(f"line {cells}")
    return done, (day.split()[1], who, what, number, doors, minutes)


def rounded(minutes):
    """Hours with two decimals, half up."""
    return float(Fraction((minutes * 100 + 30) // 60, 100))


def check_head(sheet):
    """The head of the table is printed on every page."""
    first, last = (int(row) for row in re.findall(r"\d+", sheet.print_title_rows))
    if first != last or sheet.cell(first, 2).value != "day":
        fail(f"{sheet.title}: rows {sheet.print_title_rows} are printed on every page")


def check_idle(plan, idle):
    """idle: {day: words} of the days without work; each names what dries, sets or is away on it."""
    waits = defaultdict(list)
    busy = {work["day"] for row in plan["rows"] if row["is"] == "person" for work in row["work"]}
    for day, _, what, *_ in wanted_lines(plan)[1]:
        waits[day].append(what)
    first = min(busy)
    for day, words in idle.items():
        if day in busy or not words.startswith("nobody is at work") or not all(what in words for what in waits[day]):
            fail(f"{day}: {words}, waited for {waits[day]}")
    if {day for day in waits if day > first} - busy - set(idle):
        fail(f"days of waiting have no line: {set(waits) - busy - set(idle)}")


def check(plan, book, formulas):
    people, sums, idle = [], {}, {}
    for row, cells in enumerate(book["Days"].iter_rows(values_only=True), 1):
        if cells[1] is not None and cells[1] != "day" and cells[0] is None:
            idle[cells[1].split()[1]] = cells[3]
        elif cells[1] is not None and cells[1] != "day":
            done, line = line_of(plan, cells)
            if done != "[  ]":
                fail(f"row {row}: {done}")
            people.append(line)
        elif isinstance(cells[7], (int, float)):
            sums[cells[3]] = cells[7:9]
            for column in (8, 9):
                if not str(formulas.cell(row, column).value).startswith("="):
                    fail(f"row {row}: {formulas.cell(row, column).value} is no formula")
            if not all(formulas.cell(row, column).border.top.style for column in range(1, 10)):
                fail(f"row {row}: the line above '{cells[3]}' has a gap")
    waits = [line_of(plan, (*cells, None, None)) for cells in book["Waits"].iter_rows(values_only=True)
             if cells[1] not in (None, "day")]
    if any(done for done, _ in waits):
        fail("what waits has boxes to tick")
    waits = [line for _, line in waits]
    if (sorted(people), sorted(waits)) != wanted_lines(plan):
        fail("lines are not those of the plan")
    by_day = defaultdict(int)
    for line in people:
        by_day[line[0]] += line[5]
    check_idle(plan, idle)
    total = sums.pop("all days")
    told = {name.split()[1]: value for name, value in sums.items()}
    if told != {day: (minutes, rounded(minutes)) for day, minutes in by_day.items()}:
        fail(f"sums {told}, figured {dict(by_day)}")
    if total != (plan["person-minutes"], rounded(plan["person-minutes"])):
        fail(f"all days: {total}")
    return len(people) + len(waits)


def main():
    doorcost, *jobs = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        book = os.path.join(folder, "work.xlsx")
        plan = run(doorcost, "days", *jobs, "-o", book)[0]["days"]
        subprocess.run(["soffice", f"-env:UserInstallation=file://{folder}/office", "--headless",
                        "--convert-to", "ods", "--outdir", folder, book], check=True,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        again = os.path.join(folder, "again")
        subprocess.run(["soffice", f"-env:UserInstallation=file://{folder}/office", "--headless",
                        "--convert-to", "xlsx", "--outdir", again, f"{folder}/work.ods"], check=True,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        formulas = openpyxl.load_workbook(book)
        for sheet in formulas:
            check_head(sheet)
        lines = check(plan, openpyxl.load_workbook(book, data_only=True), formulas["Days"])
        check(plan, openpyxl.load_workbook(f"{again}/work.xlsx", data_only=True), formulas["Days"])
    print(f"{lines} lines")


main()
