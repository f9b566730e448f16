#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""A job cut in two, and both bought for together, is what it was as one job.

    together.py DOORCOST SAMPLES JOB.ini

SAMPLES: the folder that holds `rates` and `samples`; JOB.ini: a path below it. The door list is cut
in the middle as a person would, and `buy` and `plan` of the two jobs held against those of the whole
one, line by line, to the cent. (Rates without touch-up, which each client keeps, and without what is
used up by the hour, as set-ups stay one for each job.) Then parts and savings are worked out again
from what each job buys alone, in fractions. Exit status 0: all is well.
"""
import csv
import json
import os
import re
import shutil
import subprocess
import sys
from fractions import Fraction

from told import copied, fail, run

EFFORT = ("--effort", "20")  # the planners' best is not what is tested


def edit(path, pattern, text=""):
    with open(path, encoding="utf-8") as file:
        whole = file.read()
    with open(path, "w", encoding="utf-8") as file:
        file.write(re.sub(pattern, text, whole, flags=re.M))


def key(job, name):
    with open(job, encoding="utf-8") as file:
        return re.search(rf"^{name} *= *([^;\n]*?) *(;.*)?$", file.read(), re.M).group(1)


def cut(job):
    """The two halves of a job, beside it; its rates are edited."""
    folder = os.path.dirname(job)
    rates = os.path.join(folder, key(job, "rates"))
    edit(rates, r"^touch-up *=.*$")
    edit(rates, r"^(price *= *\S+ )per hour", r"\1per door")
    edit(job, r"^accept *=.*\n(^[ \t]+\S.*\n)*")
    with open(os.path.join(folder, key(job, "doors")), encoding="utf-8", newline="") as file:
        head, *rows = [row for row in csv.reader(file) if any(row)]
    halves = []
    for name, some in (("one", rows[:len(rows) // 2]), ("two", rows[len(rows) // 2:])):
        path = os.path.join(folder, f"{name}.ini")
        shutil.copy(job, path)
        edit(path, r"^doors *=.*$", f"doors = {name}.csv")
        with open(os.path.join(folder, f"{name}.csv"), "w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows([head, *some])
        halves.append(path)
    return halves


def bought(estimate):
    """What is spent by group, and every line of the list with its cost."""
    groups = {}
    for group in estimate["purchase"]["list"]:
        lines = [(re.sub(r"\b[AB]-", "", line["what"]), line["size"], line["how many"],
                  line["cost"] and line["cost"]["value"]) for line in group["lines"]]
        groups[group["supplier"]] = lines, group["spent"]["value"]
    return groups


def as_text(plans):
    """Without the letters of the jobs and the numbers of figures."""
    text = re.sub(r'"figure": \d+, ', "", json.dumps(plans, sort_keys=True))
    return re.sub(r"\b[AB]-", "", text)


def rounded(amount):
    """A half away from zero, of what is not below it."""
    return Fraction(int(amount * 100 + Fraction(1, 2)), 100)


def check_parts(together, alone):
    """Lines, parts and sums, from what each job comes to alone."""
    for job, estimate in zip(together["jobs"], alone):
        spent = Fraction(estimate["purchase"]["spent in all"]["value"])
        if Fraction(job["alone"]) != spent:
            fail(f"{job['file']} alone {job['alone']}, it says {spent}")
    for line in together["lines"]:
        whole, sums, before = Fraction(line["together"]), Fraction(0), Fraction(0)
        costs = [Fraction(part["alone"]) for part in line["parts"]]
        if sum(costs) != Fraction(line["alone"]):
            fail(f"{line['what']}: {costs} are not {line['alone']}")
        for part, cost in zip(line["parts"], costs):
            sums += cost
            upto = rounded(whole * sums / sum(costs))
            if Fraction(part["part"]) != upto - before:
                fail(f"{line['what']}: part {part['part']} of {part['job']}, {upto - before} here")
            before = upto
        if before != whole:
            fail(f"{line['what']}: parts come to {before}, not {whole}")
    for name in ("alone", "together"):
        if sum(Fraction(line[name]) for line in together["lines"]) != Fraction(together[name]):
            fail(f"lines do not come to {name} {together[name]}")
    for at, job in enumerate(together["jobs"]):
        part = sum(Fraction(line["parts"][at]["part"]) for line in together["lines"])
        if part != Fraction(job["part"]) or Fraction(job["saves"]) != Fraction(job["alone"]) - part:
            fail(f"{job['file']}: part {job['part']}, its lines {part}")
    if Fraction(together["saves"]) != Fraction(together["alone"]) - Fraction(together["together"]):
        fail(f"saves {together['saves']}")


def refused(program, one, two):
    """A price that only one of two files of rates has."""
    rates = os.path.join(os.path.dirname(two), key(two, "rates"))
    other = os.path.join(os.path.dirname(rates), "other.ini")
    shutil.copy(rates, other)
    edit(other, r"^(labor rate *= *)[^;\n]*", r"\g<1>51.00 per hour ")
    edit(two, r"^rates *=.*$", f"rates = {other}")
    run(program, "buy", one, two, *EFFORT)  # a wage buys nothing
    edit(other, r"^(price *= *)[^;\n]* per (bf|m3)[^;\n]*", r"\g<1>7.77 per \2 ")
    done = subprocess.run([program, "buy", one, two, *EFFORT], capture_output=True, text=True, check=False)
    if done.returncode != 1 or "] price: '" not in done.stderr or done.stdout != "":
        fail(f"other rates were taken: {done.returncode} {done.stderr}")


def main():
    program, samples, job = os.path.abspath(sys.argv[1]), sys.argv[2], sys.argv[3]
    with copied(samples) as folder:
        job = os.path.join(folder, job)
        halves = cut(job)
        whole, both = run(program, "buy", job, *EFFORT)[0], run(program, "buy", *halves, *EFFORT)[0]
        one, other = bought(whole), bought(both)
        for supplier in one.keys() | other.keys():
            if one.get(supplier) != other.get(supplier):
                fail(f"{supplier}: {one.get(supplier)} as one job, {other.get(supplier)} as two")
        if whole["purchase"]["spent"] and one == {}:
            fail("nothing is bought")
        check_parts(both["together"], [run(program, "buy", half, *EFFORT)[0] for half in halves])
        plans = run(program, "plan", *halves, *EFFORT)[0]["plans"]
        if as_text(plans) != as_text(run(program, "plan", job, *EFFORT)[0]["plans"]):
            fail("the plans are not those of the one job")
        refused(program, *halves)
        print(f"{sum(len(lines) for lines, _ in one.values())} lines, saves {both['together']['saves']}")


main()
