#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Makes every figure of a quote again, outside the program, and fails on any difference.

    doorcost quote JOB.ini --json -o BOOK.xlsx | recompute.py
    recompute.py PROGRAM JOB.ini

Reads the JSON that docs/json.md describes.  Uses whole numbers and fractions only; rounding is half
away from zero, once per operation.  Chosen figures are made again: containers by trying every
volume that can be bought (least money, then least left over, then fewest containers), the moisture
of wood from the published table; surface measure board by board; boards and sheets from the plan in
the document, which is checked first (plans.py).
"""
import json
import math
import os
import subprocess
import sys
import tempfile
from fractions import Fraction

import plans
from afresh_spare import cost_of, fewest

LIMIT = 10**12

# Moisture of wood, tenths of a percent, in air of 70 F at 5, 10, ... 90 % relative humidity:
# Wood Handbook (FPL-GTR-190, 2010), Table 4-2.
MOISTURE = (13, 25, 35, 45, 54, 62, 69, 77, 85, 92, 101, 110, 120, 131, 144, 160, 179, 205)


def moisture(humidity):
    """Between the table's rows by proportion, as a fraction of tenths of a percent."""
    row = min(max(math.ceil(humidity / 5) - 1, 1), len(MOISTURE) - 1)
    low, high = MOISTURE[row - 1], MOISTURE[row]
    return low + (high - low) * (humidity - 5 * row) / 5


def rounded(value, decimals):
    """The scaled integer of a fraction at so many decimals, half away from zero."""
    scaled = abs(value) * 10**decimals
    whole = math.floor(scaled + Fraction(1, 2))
    return whole if value >= 0 else -whole


def plain(scaled, decimals):
    """4.10 for 410 at 2 decimals."""
    digits = str(abs(scaled)).rjust(decimals + 1, "0")
    sign = "-" if scaled < 0 else ""
    return sign + (digits[:-decimals] + "." + digits[-decimals:] if decimals else digits)


class Tape:
    def __init__(self, name, figures, checked):
        self.name = name
        self.checked = checked  # plans by chooser and material
        self.figures = {figure["id"]: figure for figure in figures}
        self.faults = []
        self.sets = {}  # operands of a choice: {output: figure}

    def fault(self, figure, text):
        self.faults.append(
            f"{self.name}: figure {figure['id']} '{figure['label']}' of "
            f"'{figure['subject']}': {text}"
        )

    def value(self, number):
        figure = self.figures[number]
        return Fraction(int(figure["value"]), 10 ** figure["decimals"])

    def pick(self, figure):
        by = self.value(figure["by"])
        rows = list(zip(figure["limits"], figure["values"], strict=True))
        if figure["op"] == "pick upto":
            fitting = [value for limit, value in rows if by <= self.value(limit)]
            return self.value(fitting[0] if fitting else rows[-1][1])
        fitting = [value for limit, value in rows if by >= self.value(limit)]
        return self.value(fitting[-1] if fitting else rows[0][1])

    def ratio(self, figure):
        over = math.prod((self.value(i) for i in figure["over"]), start=Fraction(1))
        under = math.prod((self.value(i) for i in figure["under"]), start=Fraction(1))
        return Fraction(0) if over == under == 0 else over / under

    def made(self, figure):
        """The exact value of a figure that is neither given nor chosen."""
        op = figure["op"]
        if op == "sum":
            return sum(map(self.value, figure["plus"])) - sum(map(self.value, figure["minus"]))
        if op == "total":
            pairs = zip(figure["counts"], figure["each"], strict=True)
            return sum((self.value(count) * self.value(each) for count, each in pairs), Fraction(0))
        if op == "ratio":
            return self.ratio(figure)
        if op in ("larger", "smaller"):
            values = [self.value(i) for i in figure["of"]]
            return max(values) if op == "larger" else min(values)
        if op == "up":
            step = self.value(figure["step"][0])
            return math.ceil(self.value(figure["of"][0]) / step) * step
        if op in ("pick upto", "pick from"):
            return self.pick(figure)
        raise ValueError(f"operation '{op}' is not known")

    def operands(self, figure):
        keys = ("plus", "minus", "counts", "each", "over", "under", "of", "step", "limits",
                "values", "operands")
        numbers = [number for key in keys for number in figure.get(key, [])]
        return numbers + ([figure["by"]] if "by" in figure else [])

    def check_form(self, figure):
        if figure["shown"] != plain(int(figure["value"]), figure["decimals"]):
            self.fault(figure, f"shown as {figure['shown']}")
        if abs(int(figure["value"])) >= LIMIT:
            self.fault(figure, "too large for a spreadsheet to keep exactly")
        for number in self.operands(figure):
            if not 0 < number < figure["id"]:
                self.fault(figure, f"is made from figure {number}, which does not stand before it")

    def check_given(self, figure):
        origin = figure["origin"]
        if not origin.get("source") and not (origin.get("file") and origin.get("line", 0) > 0):
            self.fault(figure, "comes from nowhere")

    def check(self):
        for figure in self.figures.values():
            self.check_form(figure)
            if figure["op"] == "given":
                self.check_given(figure)
            elif figure["op"] == "chosen":
                key = (figure["chooser"], tuple(figure["operands"]))
                self.sets.setdefault(key, {})[figure["output"]] = figure
            else:
                again = rounded(self.made(figure), figure["decimals"])
                if again != int(figure["value"]):
                    self.fault(figure, f"is {figure['value']}, made again {again}")
        for (chooser, operands), outputs in self.sets.items():
            self.check_choice(chooser, operands, outputs)

    def check_moisture(self, outputs, operands):
        again = rounded(moisture(self.value(operands[0])) * 10, 0)
        if len(outputs) != 1 or int(outputs[0]["value"]) != again:
            self.fault(outputs[0], f"moisture {outputs[0]['value']}, made again {again}")

    def check_choice(self, chooser, operands, outputs):
        first = next(iter(outputs.values()))
        if chooser == "moisture":
            self.check_moisture(outputs, operands)
            return
        if chooser in ("boards", "sheets"):
            self.check_plan(chooser, first, outputs)
            return
        if chooser in ("surface measure", "tally"):
            self.check_surface(chooser, operands, first)
            return
        if chooser == "spares":
            self.check_spares(outputs, operands)
            return
        if chooser != "containers":
            self.fault(first, f"chooser '{chooser}' is not known")
            return
        need, *rest = (int(self.value(i) * 10**6) for i in operands)
        sizes = list(zip(rest[::2], rest[1::2], strict=True))
        if sorted(outputs) != list(range(len(sizes))):
            self.fault(first, "a size has no count")
            return
        counts = [int(outputs[i]["value"]) for i in range(len(sizes))]
        cost = sum(n * price for n, (_, price) in zip(counts, sizes))
        volume = sum(n * size for n, (size, _) in zip(counts, sizes))
        taken = (cost, volume, sum(counts))
        best = cheapest(need, sizes)
        if min(counts) < 0 or volume < need or taken != best:
            self.fault(first, f"(money, volume, containers) {taken}, made again {best}")


    def check_spares(self, outputs, operands):
        """The fewest spares that cost least, and the chances to set up once more, of binomial numbers in fractions."""
        pieces, spoiled, each, setup = (self.value(i) for i in operands)
        pieces, spoiled = int(pieces), spoiled / 100
        count = fewest(pieces, spoiled, each, setup)
        short = [rounded((cost_of(s, pieces, spoiled, Fraction(0), Fraction(1))) * 10000, 0) for s in (0, count)]
        given = [int(outputs[i]["value"]) for i in sorted(outputs)]
        if given != [count, *short]:
            self.fault(outputs[0], f"is {given}, made again {[count, *short]}")

    def check_plan(self, chooser, first, outputs):
        plan = self.checked.get((chooser, first["subject"]))
        if plan is None:
            self.fault(first, "its plan is not in the document")
            return
        wanted = plans.outputs(plan, chooser == "boards")
        given = [int(outputs[i]["value"]) for i in sorted(outputs)]
        if wanted != given:
            self.fault(first, f"is {given}, from the plan {wanted}")

    def check_surface(self, chooser, operands, first):
        inch, *rest = (self.value(i) for i in operands)
        if chooser == "surface measure":
            rest = [Fraction(1), *rest]
        boards = [
            (int(count), int(wide / inch * 10**6), int(long / inch * 10**6))
            for count, wide, long in zip(rest[::3], rest[1::3], rest[2::3], strict=True)
        ]
        again = plans.surface(boards)
        if again != int(first["value"]):
            self.fault(first, f"is {first['value']}, made again {again}")


def check_plans(estimate, unit):
    """Checked plans by chooser and material, and their faults."""
    checked = {}
    faults = []
    for chooser, key, check in (
        ("boards", "lumber", plans.check_boards),
        ("sheets", "sheets", plans.check_sheets),
    ):
        for plan in estimate.get("plans", {}).get(key, []):
            if plan["missing"] is None:
                checked[(chooser, plan["name"])] = check(plan, unit)
                faults += checked[(chooser, plan["name"])].faults
    return checked, faults


def cheapest(need, sizes):
    """Least money, then least volume, then fewest containers of all sets that hold need."""
    if need <= 0:
        return (0, 0, 0)
    unit = math.gcd(*(size for size, _ in sizes))
    least = -(-need // unit)
    most = least + max(size for size, _ in sizes) // unit
    best = {0: (0, 0)}  # volume in units: (money, containers)
    for volume in range(1, most + 1):
        ways = [
            (best[volume - size // unit][0] + price, best[volume - size // unit][1] + 1)
            for size, price in sizes
            if volume - size // unit in best
        ]
        if ways:
            best[volume] = min(ways)
    return min((best[v][0], v * unit, best[v][1]) for v in best if v >= least)


def references(value):
    """Every {"figure", "value", "unit"} of a document but for those of the tape."""
    if isinstance(value, dict):
        if "figure" in value:
            yield value
        for key, inner in value.items():
            if key != "tape":
                yield from references(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from references(inner)


def quoted(program, job):
    with tempfile.TemporaryDirectory() as folder:
        return subprocess.run([program, "quote", job, "--effort", "20", "--json", "-o", os.path.join(folder, "book.xlsx")],
                              stdout=subprocess.PIPE, check=True).stdout


def main():
    document = json.loads(quoted(*sys.argv[1:]) if len(sys.argv) > 1 else sys.stdin.read())
    faults = []
    made = 0
    planned = 0
    for estimate in document["estimates"]:
        checked, wrong = check_plans(estimate, document["job"]["length unit"])
        faults += wrong
        planned += len(checked)
        tape = Tape(estimate["name"], estimate["tape"]["figures"], checked)
        tape.check()
        for reference in references(estimate):
            figure = tape.figures.get(reference["figure"])
            shown = figure and figure["shown"]
            if figure is None or (shown, figure["unit"]) != (reference["value"], reference["unit"]):
                tape.faults.append(f"{tape.name}: {reference} is not what the tape has: {shown}")
        faults += tape.faults
        made += len(tape.figures)
    for fault in faults[:50]:
        print(fault)
    print(f"{made} figures of {len(document['estimates'])} estimates made again, {planned} cutting "
          f"plans checked, {len(faults)} differ")
    return 1 if faults or made == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
