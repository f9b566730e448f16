#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What `range` tells is what an edited rates file comes to.

    range.py DOORCOST TREE JOB.ini

TREE: the folder that holds `rates` and `samples`; JOB.ini: a path below it. Every rate that has a
range is typed anew as its low and as its high, the job estimated by `compare`, and the difference
to the job as it stands held against `range`, to the cent; so are its swing and its place in the
list. Then some numbers of all are moved by a tenth, and some set, alone and together; and an option
of the job is gone through as well. Exit status 0: all is well.
"""
import os
import re
import sys
from fractions import Fraction

from told import MONEY, copied, fail, run


class Rates:
    """The rates file of a job, and what the job comes to."""

    def __init__(self, program, job, option):
        self.program, self.job, self.option = program, job, option
        with open(job, encoding="utf-8") as file:
            name = re.search(r"^rates *= *([^;\n]*?) *(;.*)?$", file.read(), re.M).group(1)
        self.path = os.path.join(os.path.dirname(job), name)
        with open(self.path, encoding="utf-8") as file:
            self.text = file.read()
        self.base = self.amounts()

    def amounts(self):
        """Of the job, or of the option, by `compare`."""
        for estimate in run(self.program, "compare", self.job):
            if (estimate["name"] == self.option if self.option else not estimate["option"]):
                return {name: Fraction(estimate[part][key]["value"])
                        for name, (part, key) in MONEY.items()}
        return fail(f"no estimate {self.option}")

    def range(self, *more):
        option = ["--option", self.option] if self.option else []
        return run(self.program, "range", self.job, *option, *more)[0]["range"]

    @staticmethod
    def line(text, section, key):
        """Where the value of a key stands in a text, without its comment."""
        at, found = 0, None
        for line in text.split("\n"):
            head = re.match(r"\s*\[([^]]*)\]", line)
            if head:
                found = " ".join(head.group(1).split()).lower()
            pair = re.match(r"\s*([^=;#\[]+?)\s*=\s*(.*)$", line)
            if pair and found == section.lower() and pair.group(1).lower() == key.lower():
                value = re.sub(r"\s*;.*$", "", pair.group(2)).rstrip()
                return at + pair.start(2), value
            at += len(line) + 1
        return fail(f"[{section}] {key} is not in the rates")

    def typed(self, row, new):
        """The text with a number of a key typed anew; its own range goes away."""
        at, value = self.line(self.text, row["section"], row["key"])
        old = row["before"] + row["value"]
        where = re.search(r"(?:(?<=, )|^)" + re.escape(old) + r"(?= *[(,]|$)( *\([^)]*\))?", value)
        if not where:
            fail(f"[{row['section']}] {row['key']}: no {old!r} in {value!r}")
        changed = value[:where.start()] + row["before"] + new + value[where.end():]
        return self.text[:at] + changed + self.text[at + len(value):]

    def hold(self, what, text, told):
        """Whether the job of these rates differs from the base as told."""
        with open(self.path, "w", encoding="utf-8") as file:
            file.write(text)
        now = self.amounts()
        with open(self.path, "w", encoding="utf-8") as file:
            file.write(self.text)
        for name, before in self.base.items():
            if Fraction(told[name]) != now[name] - before:
                fail(f"{what}: {name} {told[name]}, edited rates make it "
                     f"{float(now[name] - before):.2f}")
        left = Fraction(told["before tax"]) - Fraction(told["direct"])
        if left != Fraction(told["left over"]):
            fail(f"{what}: left over {told['left over']}")


def hold_ends(rates, row):
    moved = [Fraction(0)]
    for end in ("low", "high"):
        what = f"[{row['section']}] {row['key']} at {row[end]['value']}"
        if row[end]["adds"] is None:
            fail(f"{what}: {row[end]['wrong']}")
        rates.hold(what, rates.typed(row, row[end]["value"]), row[end]["adds"])
        moved.append(Fraction(row[end]["adds"]["client pays"]))
    if Fraction(row["swing"]) != max(moved) - min(moved):
        fail(f"[{row['section']}] {row['key']}: swing {row['swing']}")


def in_order(rows):
    swings = [Fraction(row["swing"]) for row in rows]
    if swings != sorted(swings, reverse=True):
        fail(f"swings {[float(s) for s in swings]}")


def check_ranges(rates):
    rows = rates.range()["rates"]
    if len(rows) != len(re.findall(r"^[^;\[\n]*=[^;\n]*\([^;\n)]* to [^;\n)]*\)", rates.text, re.M)):
        fail(f"{len(rows)} ranges are told of")
    in_order(rows)
    for row in rows:
        hold_ends(rates, row)
    return len(rows)


def number(text):
    return Fraction(re.match(r"[0-9.]+", text).group())


def check_by(rates):
    """Each tenth of the numbers; those that are plain ones are a tenth less and more."""
    told = rates.range("--by", "10%")
    in_order(told["rates"])
    held = 0
    for row in told["rates"][::10]:
        if re.fullmatch(r"[0-9.]+( (per|%|min|each).*)?", row["value"]):
            for end, part in (("low", 9), ("high", 11)):
                exact = number(row["value"]) * part / 10
                if abs(number(row[end]["value"]) - exact) > Fraction(1, 200):
                    fail(f"{row['key']}: {row['value']} became {row[end]['value']}")
        if row["low"]["adds"] is not None and row["high"]["adds"] is not None:
            hold_ends(rates, row)
            held += 1
    return held


def check_set(rates):
    changes = [("shop", "labor rate", "47.50 per hour"), ("shop", "allowance", "9 % added")]
    told = rates.range(*[word for section, key, value in changes
                         for word in ("--set", f"{section}.{key} = {value}")])
    all_at_once = rates.text
    for section, key, value in changes:
        at, old = rates.line(rates.text, section, key)
        row = next(row for row in told["rates"] if row["key"] == key)
        rates.hold(f"{key} set", rates.text[:at] + value + rates.text[at + len(old):],
                   row["high"]["adds"])
        at, old = rates.line(all_at_once, section, key)
        all_at_once = all_at_once[:at] + value + all_at_once[at + len(old):]
    rates.hold("all at once", all_at_once, told["all at once"]["adds"])


def main():
    program, tree, job = os.path.abspath(sys.argv[1]), sys.argv[2], sys.argv[3]
    with copied(tree) as folder:
        path = os.path.join(folder, job)
        rates = Rates(program, path, None)
        ranges, moved = check_ranges(rates), check_by(rates)
        check_set(rates)
        options = [e["name"] for e in run(program, "compare", path) if e["option"]]
        for option in options[:1]:
            check_ranges(Rates(program, path, option))
        print(f"{ranges} ranges, {moved} numbers moved by a tenth, "
              f"{'option ' + options[0] if options else 'no option'}")


main()
