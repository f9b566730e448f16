#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What `reach` tells comes true in edited files.

    reach.py DOORCOST SAMPLES JOB.ini

SAMPLES: the folder that holds `rates` and `samples`; JOB.ini: a path below it. As a person would, the
profit of the rates, the discount of the job, the times of all operations are written as told, or rows
are deleted; `compare` then has to come to what was told, to the cent, and a hundredth of a percent
less of the change must not reach the total any more. Exit status 0: all is well.
"""
import csv
import os
import re
import sys
import tempfile
from fractions import Fraction

from told import MONEY, copied, fail, run, write_slabs

FIELDS = {**MONEY, "profit left": ("sale", "profit left")}
STEP = Fraction(1, 100)


def read(path):
    with open(path, encoding="utf-8", newline="") as file:
        return file.read()


def write(path, text):
    with open(path, "w", encoding="utf-8", newline="") as file:
        file.write(text)


def half_away(value, places):
    return Fraction(int(value * 10**places + Fraction(1, 2)), 10**places)


class Job:
    def __init__(self, program, path):
        self.program, self.path = program, path
        folder = os.path.dirname(path)
        self.job = read(path)
        self.rates_path = os.path.join(folder, self.key(self.job, "rates"))
        self.list_path = os.path.join(folder, self.key(self.job, "doors"))
        self.rates, self.doors = read(self.rates_path), read(self.list_path)

    @staticmethod
    def key(text, key):
        return re.search(rf"^{key} *= *([^;\n]*?) *(;.*)?$", text, re.M).group(1)

    def amounts(self, job=None, rates=None, doors=None):
        """What it comes to with these in place of its files, which are put back."""
        write(self.path, job or self.job)
        write(self.rates_path, rates or self.rates)
        write(self.list_path, doors or self.doors)
        found = run(self.program, "compare", self.path)[0]
        write(self.path, self.job)
        write(self.rates_path, self.rates)
        write(self.list_path, self.doors)
        return {name: Fraction(found[part][key]["value"]) for name, (part, key) in FIELDS.items()}

    def with_profit(self, percent):
        kind = re.search(r"^profit *= *[0-9.]+ % (markup|margin)", self.rates, re.M).group(1)
        return self.amounts(rates=re.sub(r"^profit *=.*$", f"profit = {float(percent):.2f} % {kind}",
                                         self.rates, count=1, flags=re.M))

    def with_discount(self, percent):
        text = re.sub(r"^discounts? *=.*\n", "", self.job, flags=re.M)
        text = text.replace("[sale]\n", f"[sale]\ndiscount = {float(percent):.2f} %\n")
        return self.amounts(job=text)

    def with_hours(self, percent):
        """Each time of an operation in that percent, each feed the other way round, at six decimals,
        without the range behind it."""
        def scaled(found):
            key, number, rest = found.groups()
            over = percent / 100 if key.strip() != "feed" else 100 / percent
            value = half_away(Fraction(number) * over, 6)
            rest = re.sub(r" \([^)]* to [^)]*\)", "", rest)
            return f"{key}= {float(value):.6f}{rest}"
        parts = re.split(r"(?m)^(?=\[)", self.rates)
        for at, part in enumerate(parts):
            if part.startswith("[operation"):
                parts[at] = re.sub(r"(?m)^((?:minutes|handling|setup|feed) *)= *([0-9.]+)(.*)$", scaled,
                                   part)
        return self.amounts(rates="".join(parts))

    def without(self, ids):
        rows = [row for row in csv.reader(self.doors.splitlines()) if any(row)]
        at = rows[0].index("id")
        folder = tempfile.mkstemp()[1]
        with open(folder, "w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows(row for row in rows if row[at] not in ids)
        text = read(folder)
        os.remove(folder)
        return self.amounts(doors=text)


def hold(what, told, found):
    for name, amount in found.items():
        if Fraction(told[name]) != amount:
            fail(f"{what}: {name} {told[name]}, edited files make it {float(amount):.2f}")
    if Fraction(told["before tax"]) - Fraction(told["direct"]) != Fraction(told["left over"]):
        fail(f"{what}: left over {told['left over']}")


def reaches(total, wanted, base):
    return total >= wanted if wanted > base else total <= wanted


def check_lever(job, lever, answer, wanted, base):
    """lever: estimates the job with it at a percent."""
    what, told = f"{answer['what']} for {float(wanted):.2f}", answer["comes to"]
    then, now = Fraction(answer["percent then"]), Fraction(answer["percent now"])
    hold(what, told, lever(then))
    total = Fraction(told["client pays"])
    if reaches(total, wanted, base) != answer["reaches it"]:
        fail(f"{what}: {float(total):.2f} reaches it: {answer['reaches it']}")
    if (total - base) * (wanted - base) < 0:
        fail(f"{what}: {float(total):.2f} is on the other side of {float(base):.2f}")
    if answer["reaches it"] and then != now:
        before = then + (STEP if then < now else -STEP)
        if reaches(lever(before)["client pays"], wanted, base):
            fail(f"{what}: {float(before):.2f} reaches it too")


def check_rows(job, rows, wanted, base, ids):
    if not rows["without"]:
        return
    hold(f"without {rows['without']}", rows["comes to"], job.without(rows["without"]))
    total = Fraction(rows["comes to"]["client pays"])
    if (total <= wanted) != rows["reaches it"]:
        fail(f"without {rows['without']}: {float(total):.2f} reaches it: {rows['reaches it']}")
    # one row by itself: whether it does, and which of these comes nearest
    singles = {row: job.without([row])["client pays"] for row in ids}
    good = {row: paid for row, paid in singles.items() if paid <= wanted}
    if good and (len(rows["without"]) != 1 or total != max(good.values())):
        fail(f"one row does it: {max(good, key=good.get)}, not {rows['without']}")
    if not good and rows["reaches it"] and len(rows["without"]) == 1:
        fail(f"no single row reaches it, but {rows['without']} is told to")


def check_twins(program):
    """Of rows of which one does it as well as another, the first of the list is told (docs/method.md)."""
    with tempfile.TemporaryDirectory() as folder:
        path = write_slabs(folder, "id,width,height\nA,10,20\nB,16,30\nC,10,20\n", title="Twins", stock="")
        job = Job(program, path)
        wanted = job.without(["C"])["client pays"]
        told = run(program, "reach", path, "--total", f"{float(wanted):.2f}")[0]["reach"]["rows"]
        if job.without(["A"])["client pays"] != wanted or told["without"] != ["A"]:
            fail(f"of the twins A and C {told['without']} is told")


def main():
    program, samples, path = os.path.abspath(sys.argv[1]), sys.argv[2], sys.argv[3]
    check_twins(program)
    with copied(samples) as folder:
        job = Job(program, os.path.join(folder, path))
        base = job.amounts()["client pays"]
        rows = [row for row in csv.reader(job.doors.splitlines()) if any(row)]
        ids = [row[rows[0].index("id")] for row in rows[1:]]
        levers = [job.with_profit, job.with_discount, job.with_hours]
        held = 0
        for part in (Fraction(93, 100), Fraction(107, 100), Fraction(35, 100)):
            wanted = half_away(base * part, 2)
            told = run(program, "reach", job.path, "--total", f"{float(wanted):.2f}")[0]["reach"]
            if Fraction(told["wanted"]) != wanted:
                fail(f"wanted {told['wanted']}")
            hold("as it stands", told["as it stands"], job.amounts())
            for lever, answer in zip(levers, told["alone"]):
                check_lever(job, lever, answer, wanted, base)
                held += 1
            if part == Fraction(93, 100):
                check_rows(job, told["rows"], wanted, base, ids)
        print(f"{held} answers hold")


main()
