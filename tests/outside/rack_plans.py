# SPDX-License-Identifier: MIT
"""Boards, sheets and offcuts on the rack: whole quotes of the samples, and small jobs against all choices there are.

    rack_plans.py PROGRAM SAMPLES

The samples, priced by plan, with a rack for each of their sheets and a lumber, and the lumber by factor as well: recompute.py makes every figure again and checks the
plans, afresh.py makes the quote from its files, order.py and plan_paper.py read the papers; no more is taken than is
there, and less is bought than without: by the factor the net of the parts cut of the rack, with waste.  The small jobs are doors of one size that keep their grain: of such a sheet
holds rows x columns of them, so that the cheapest set of sheets and offcuts is found by trying every one (by
arithmetic). The program must cost as much, prove no more, and take no more than there is.
"""
import itertools
import json
import math
import os
import pathlib
import random
import re
import subprocess
import sys
import tempfile
from fractions import Fraction

import told

HERE = os.path.dirname(os.path.abspath(__file__))
SAMPLES = {"kitchen/kitchen": ("small-shop", [("mdf-panel", "", "", 1, "10.00"), ("mdf-panel", "24", "49", 2, "3.00"),
                                              ("mdf-slab", "22 1/2", "40", 1, ""), ("birch-core", "17", "20", 3, "4.00"),
                                              ("poplar", "6 1/4", "97", 3, "12.00"), ("poplar", "2 3/8", "31", 5, "", "yes"),
                                              ("poplar", "3 1/2", "20", 4, "", "yes")], 10),
           "metric/tea-kitchen": ("metric-shop", [("mdf-6", "600", "1300", 2, ""), ("mdf-22", "", "", 1, "20.00"),
                                                  ("mdf-22", "420", "1250", 1, "2.00"), ("tulipwood", "160", "2050", 1, ""),
                                                  ("tulipwood", "70", "900", 3, "2.10", "yes")], 4)}


JOBS = 150


def table(rows):
    return "".join(",".join(map(str, (*row, "")[:6])) + "\n" for row in [("what", "width", "length", "left", "worth", "sawn"), *rows])


def sheets_of(estimate):
    return {s["name"]: s for s in estimate["materials"]["sheets"]}


def check_lumber(job, estimate, before, rack):
    for lumber in estimate["materials"]["lumber"]:
        old = next(one for one in before if one["name"] == lumber["name"])
        if all(row[0] != lumber["name"] for row in rack):
            continue
        amounts = [Fraction(lumber[key]["value"]) for key in ("bought", "from the rack", "bought and from the rack")]
        charged, cost, worth, was = (Fraction(value) for value in (lumber["charged"]["value"], lumber["cost"]["value"],
                                                                   lumber["worth from the rack"]["value"], old["cost"]["value"]))
        if amounts[0] + amounts[1] != amounts[2] or charged != cost + worth or amounts[1] <= 0 or charged >= was:
            told.fail(f"{job}: {lumber['name']}: {amounts}, charged {charged}, before {was}")


def check_sample(program, folder, job, shop, rack, pages, lumber_by):
    path = os.path.join(folder, "samples", job + ".ini")
    rates = pathlib.Path(folder, "rates", shop + ".ini")
    text, count = re.subn(r"(?m)^(price sheets by +=) \w+", r"\1 plan", re.sub("(?m)^stock = .*\n", "", rates.read_text()))
    text, more = re.subn(r"(?m)^(price lumber by +=) \w+", rf"\1 {lumber_by}", text)
    if (count, more) != (1, 1):
        told.fail(f"{shop}: no way to price sheets and lumber")
    rates.write_text(text)
    old = told.run(program, "quote", path, "--force", "-o", f"{folder}/q.xlsx")[0]
    before = sheets_of(old)
    rates.write_text(re.sub(r"(?m)^woods .*", r"\g<0>\nstock = rack.csv", text))
    pathlib.Path(folder, "rates", "rack.csv").write_text(table(rack))
    quote = subprocess.run([program, "quote", path, "--force", "--json", "-o", f"{folder}/q.xlsx"], capture_output=True,
                           text=True, check=True).stdout
    for script, words, given in (("recompute.py", [], quote), ("afresh.py", [program, path], None),
                                 ("order.py", [program, path], None), ("plan_paper.py", [program, path, str(pages)], None)):
        done = subprocess.run([sys.executable, os.path.join(HERE, script), *words], input=given, capture_output=True,
                              text=True, check=False)
        if done.returncode != 0:
            told.fail(f"{job}: {script}: {done.stdout}{done.stderr}")
    check_lumber(job, json.loads(quote)["estimates"][0], old["materials"]["lumber"], rack)
    taken = 0
    for name, sheet in sheets_of(json.loads(quote)["estimates"][0]).items():
        there = sum(row[3] for row in rack if row[0] == name)
        used = int(Fraction(sheet.get("from the rack", {"value": 0})["value"]))
        saved = Fraction(before[name]["cost"]["value"]) - Fraction(sheet["cost"]["value"])
        if used > there or saved < 0 or (saved > 0) != (used > 0 and saved > 0):
            told.fail(f"{job}: {name}: {used} of {there} pieces save {saved}")
        taken += used
    if taken == 0:
        told.fail(f"{job}: nothing is taken")


# --- small jobs ---


def cheapest(wanted, rack, sold):
    """The least of all choices: rack and sold as (doors on it, money, how many)."""
    best = None
    for taken in itertools.product(*(range(count + 1) for _, _, count in rack)):
        money = sum(n * worth for n, (_, worth, _) in zip(taken, rack))
        left = max(0, wanted - sum(n * holds for n, (holds, _, _) in zip(taken, rack)))
        wholes, *halves = sold
        for n in range(math.ceil(left / halves[0][0]) + 1 if halves and halves[0][0] else 1):
            rest = max(0, left - (n * halves[0][0] if halves else 0))
            if rest and not wholes[0]:
                continue
            cost = money + (n * halves[0][1] if halves else 0) + (math.ceil(rest / wholes[0]) * wholes[1] if rest else 0)
            best = cost if best is None else min(best, cost)
    return best


def check_small(program, folder, number):
    draw = random.Random(number)
    kerf, trim = draw.choice([Fraction(0), Fraction(1, 8)]), draw.choice([Fraction(0), Fraction(1, 4)])
    wide, high = draw.randint(6, 23), draw.randint(8, 47)
    price, half = draw.randint(40, 99), draw.choice([0, 0, 55])
    wanted = draw.randint(1, 40)

    def holds(across, along, edge):
        return (math.floor((across - 2 * edge + kerf) / (wide + kerf))
                * math.floor((along - 2 * edge + kerf) / (high + kerf)))

    sizes = {(draw.randint(6, 47), draw.randint(8, 95)): draw.randint(1, 3) for _ in range(draw.randint(1, 4))}
    rows, rack = [], []
    if draw.random() < 0.4:
        rows.append(("board", "", "", 1, draw.randint(0, price)))
        rack.append((holds(48, 96, trim), rows[-1][4], 1))
    for (across, along), count in sizes.items():
        worth = draw.choice([0, draw.randint(1, 20)])
        rows.append(("board", across, along, count, worth * count or ""))
        rack.append((holds(across, along, 0), worth, count))
    sold = [(holds(48, 96, trim), price)] + ([(holds(48, 48, trim), half)] if half else [])
    job = told.write_slabs(folder, f"id,count,width,height\nA,{wanted},{wide},{high}\n", title="One size", stock="rack.csv", kerf=kerf,
                           price=price, sheet=f"edge trim = {trim}\n" + (f"half sheet = {half}.00\n" if half else ""))
    pathlib.Path(folder, "rack.csv").write_text(table(rows))
    estimate = told.run(program, "plan", job)[0]
    plan = estimate["plans"]["sheets"][0]
    cost = covered = Fraction(0)
    for size in plan["sizes"]:
        of_rack = "from the rack" in size
        count = int(size["from the rack" if of_rack else "to buy"]["value"])
        edge = 0 if size.get("sawn") else trim
        cost += count * Fraction(size["price"])
        covered += count * holds(Fraction(size["width"]), Fraction(size["length"]), edge)
        if of_rack and count > size["on the rack"]:
            told.fail(f"job {number}: {count} of {size['on the rack']}")
    best = cheapest(wanted, rack, sold)
    bound = Fraction(plan["bound"]["value"])
    if covered < wanted or cost < best or bound > best:
        told.fail(f"job {number}: costs {cost}, the cheapest {best}, bound {bound}, room for {covered} of {wanted}")
    return cost == best, bound == best


def main():
    program, samples = sys.argv[1:]
    with told.copied(samples) as folder:
        for job, (shop, rack, pages) in SAMPLES.items():
            for lumber_by in ("plan", "factor"):
                check_sample(program, folder, job, shop, rack, pages, lumber_by)
    with tempfile.TemporaryDirectory() as folder:
        found = [check_small(program, folder, number) for number in range(JOBS)]
    least, proved = (sum(one[i] for one in found) for i in range(2))
    print(f"{len(SAMPLES)} samples; of {JOBS} small jobs {least} cost least, {proved} are proved to")
    if least < JOBS:
        told.fail(f"{JOBS - least} small jobs cost more than they need")


main()
