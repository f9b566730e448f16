#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What `strike` tells is what an edited door list comes to.

    strike.py DOORCOST SAMPLES JOB.ini

SAMPLES: the folder that holds `rates` and `samples`; JOB.ini: a path below it. The door list is
edited as a person would, a row deleted, its count raised, a size typed anew, the job estimated by
`compare`, and the difference to the job as it stands held against `strike`, to the cent.
Exit status 0: all is well.
"""
import csv
import os
import re
import sys
from fractions import Fraction

from told import MONEY, copied, fail, run


def amounts(estimate):
    return {name: Fraction(estimate[part][key]["value"]) for name, (part, key) in MONEY.items()}


def length(text):
    """`22 3/4`, `120`, `22 1/2 in` as a number; None: none."""
    found = re.fullmatch(r"(\d+(?:\.\d+)?)(?: (\d+/\d+))?(?: (?:in|mm))?", text.strip())
    return None if not found else Fraction(found.group(1)) + Fraction(found.group(2) or 0)


def written(size, metric):
    whole, rest = divmod(size, 1)
    if metric:
        return f"{float(size):g}"
    return f"{whole} {rest}" if rest else f"{whole}"


class List:
    """The door list of a job, and what the job comes to."""

    def __init__(self, program, job):
        self.program, self.job = program, job
        with open(job, encoding="utf-8") as file:
            name = re.search(r"^doors *= *([^;\n]*?) *(;.*)?$", file.read(), re.M).group(1)
        self.path = os.path.join(os.path.dirname(job), name)
        with open(self.path, encoding="utf-8", newline="") as file:
            self.head, *self.rows = [row for row in csv.reader(file) if any(row)]
        self.base = amounts(run(program, "compare", job)[0])

    def write(self, rows):
        with open(self.path, "w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows([self.head, *rows])

    def hold(self, what, rows, told, sign):
        """Whether the job of these rows differs from the base as told."""
        self.write(rows)
        now = amounts(run(self.program, "compare", self.job)[0])
        self.write(self.rows)
        for name, before in self.base.items():
            expected = sign * (now[name] - before)
            if Fraction(told[name]) != expected:
                fail(f"{what}: {name} {told[name]}, the edited list makes it {float(expected):.2f}")
        left = Fraction(told["before tax"]) - Fraction(told["direct"])
        if left != Fraction(told["left over"]):
            fail(f"{what}: left over {told['left over']}")

    def column(self, row, name):
        return row[self.head.index(name)]

    def changed(self, row, name, text):
        new = list(row)
        new[self.head.index(name)] = text
        return new


def check_rows(doors, strike):
    if len(strike["rows"]) != len(doors.rows):
        fail(f"{len(strike['rows'])} rows of {len(doors.rows)}")
    for at, (told, row) in enumerate(zip(strike["rows"], doors.rows)):
        if told["id"] != doors.column(row, "id"):
            fail(f"{told['id']} stands where {row} is")
        doors.hold(f"{told['id']} struck", doors.rows[:at] + doors.rows[at + 1:],
                   told["struck"], -1)
        count = int(doors.column(row, "count") or 1)
        more = doors.changed(row, "count", str(count + 1))
        doors.hold(f"one more {told['id']}", doors.rows[:at] + [more] + doors.rows[at + 1:],
                   told["one more"], 1)


def check_together(doors):
    ids = [doors.column(row, "id") for row in doors.rows]
    some = ids[1:4]
    told = run(doors.program, "strike", doors.job, *reversed(some))[0]["strike"]
    if [row["id"] for row in told["rows"]] != some:
        fail(f"asked for {some}")
    doors.hold(f"{some} struck", [row for row, name in zip(doors.rows, ids) if name not in some],
               told["all at once"], -1)


def check_sizes(doors):
    """A list in which many heights are a little off, each again to be made one."""
    metric = any("metric" in part for part in doors.job.split(os.sep))
    step, held = (Fraction(3) if metric else Fraction(1, 8)), 0
    rows = []
    for at, row in enumerate(doors.rows):
        size = length(doors.column(row, "height"))
        if at % 3 == 1 and size is not None and doors.column(row, "use") == "door" \
                and not ("rows" in doors.head and doors.column(row, "rows")):
            row = doors.changed(row, "height", written(size - step, metric))
        rows.append(row)
    doors.rows = rows
    doors.write(rows)
    doors.base = amounts(run(doors.program, "compare", doors.job)[0])
    for told in run(doors.program, "strike", doors.job)[0]["strike"]["sizes"]:
        side, by = told["side"], length(told["to"]) - length(told["from"])
        edited = []
        for row in rows:
            if doors.column(row, "id") in told["rows"]:
                leaves = doors.column(row, "leaves") if side == "width" else "1"
                size = length(doors.column(row, side)) + by * int(leaves or 1)
                row = doors.changed(row, side, written(size, metric))
            edited.append(row)
        doors.hold(f"{side} of {told['rows']} as {told['as row']}", edited, told["saves"], -1)
        held += 1
    return held


def main():
    program, samples, job = os.path.abspath(sys.argv[1]), sys.argv[2], sys.argv[3]
    with copied(samples) as folder:
        doors = List(program, os.path.join(folder, job))
        strike = run(program, "strike", doors.job)[0]["strike"]
        check_rows(doors, strike)
        check_together(doors)
        held = check_sizes(doors)
        if "kitchen.ini" in job and held == 0:
            fail("no sizes were made one")
        print(f"{len(doors.rows)} rows struck and added, {held} sizes made one")


main()
