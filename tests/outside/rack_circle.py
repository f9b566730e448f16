# SPDX-License-Identifier: MIT
"""The rack from job to job: what `learn --rack` writes, reckoned again from the JSON of the plan, and used by the next job.

    rack_circle.py PROGRAM SAMPLES

Of the samples, sheets priced by plan and lumber by factor, with a rack of hardware, cans, sheets and boards: each old row is less by what the plan and the lists take of
it, its worth in proportion; each offcut that the plan keeps is there, no larger than it is and less than 1/32 in or 1 mm smaller; what was
noted as left of a can is added. What was noted as taken stands in place of what the estimate takes; what
the program writes it reads. Then a small job, worked out by
hand: it leaves an offcut, and the next job buys nothing.
"""
import collections
import csv
import os
import pathlib
import re
import subprocess
import sys
import tempfile
from fractions import Fraction

import told

HEAD = ["what", "color", "thickness", "width", "length", "sawn", "left", "worth", "note"]
LUMBER = (2, 5)  # columns of lumber alone; rows of others are told without them
RACK = {"kitchen/kitchen": ("small-shop", "topcoat", "gal", Fraction(1, 32),
                            [["mdf-panel", "", "", "", "1", "9.00", ""], ["mdf-panel", "", "24", "49", "3", "", "by the door"],
                             ["knob", "", "", "", "100", "50", ""], ["cup-hinge", "", "", "", "12", "", "annex"],
                             ["topcoat", "lamp white", "", "", "1 qt", "10.00", ""], ["pull-out", "", "", "", "5", "", ""],
                             ["poplar", "", "4/4", "6 1/4", "97", "", "3", "12.00", "rough"],
                             ["poplar", "", "", "2 3/8", "31", "yes", "5", "", ""], ["poplar", "", "", "1", "20", "yes", "2", "", "too narrow"]]),
        "metric/tea-kitchen": ("metric-shop", None, "L", Fraction(1), [["mdf-6", "", "600", "1300", "2", "", '"good", both'],
                                                                        ["tulipwood", "", "", "160", "2050", "", "1", "", "good"]])}


def number(text):
    """Inches as a shop writes them, or a plain number."""
    return sum(Fraction(part) for part in text.split())


def write(path, rows):
    with open(path, "w", encoding="utf-8", newline="") as file:
        wide = [row if len(row) == len(HEAD) else [row[0], row[1], "", row[2], row[3], "", *row[4:]] for row in rows]
        csv.writer(file).writerows([HEAD, *wide])


def learned(program, job, noted, target):
    done = subprocess.run([program, "learn", job, noted, "--rack", target], capture_output=True, text=True, check=False)
    if done.returncode != 0:
        told.fail(f"learn {job}: {done.stderr}")
    with open(target, encoding="utf-8", newline="") as file:
        rows = list(csv.reader(file))
    if rows[0] != HEAD:
        told.fail(f"heading {rows[0]}")
    return [row if is_lumber(row) else [cell for i, cell in enumerate(row) if i not in LUMBER] for row in rows[1:]]


def is_lumber(row):
    return row[0].startswith("lumber ") or len(row) == len(HEAD) and row[0] in ("poplar", "tulipwood")


def kept(plan):
    """Offcuts of a plan that are kept: (width, length) with how many."""
    sizes = collections.Counter()
    for sheet in plan["sheets cut"]:
        for node in sheet["nodes"]:
            if node.get("keep"):
                sizes[(Fraction(node["width"]), Fraction(node["length"]))] += sheet["copies"]
    return sizes


def check_lumber(job, estimate, old, new, step):
    """Boards of the rack less those that the plan cuts, and an offcut for each that it keeps. One that still has its edges (behind the
    last segment of a board) is as wide as it will be without them. How many there are in all."""
    there, want = collections.Counter(), 0
    for row in new:
        there[(row[0].removeprefix("lumber "), number(row[3]), number(row[4]), row[5])] += int(row[6])
        if row[5] and row[5] != "yes":
            told.fail(f"{job}: {row}")
    for plan in estimate["plans"]["lumber"]:
        if not any("on the rack" in size for size in plan["sizes"]):
            continue
        for size in plan["sizes"]:
            if "on the rack" in size:
                key = plan["name"], Fraction(size["width"]), Fraction(size["length"]), "yes" if size["sawn"] else ""
                rows = [row for row in old if (row[0], number(row[3]), number(row[4]), row[5]) == key]
                left = int(rows[0][6]) - int(size["from the rack"]["value"])
                there[key] -= left
                worth = [Fraction(row[7] or 0) for row in new if row[8] == rows[0][8] != ""]
                if there[key] < 0 or (left and rows[0][7] and worth != [round(Fraction(rows[0][7]) * left / int(rows[0][6]), 2)]):
                    told.fail(f"{job}: {left} of {key} are left: {new}")
        for board in plan["boards cut"]:
            edge = 0 if plan["sizes"][board["size"]].get("sawn") else Fraction(plan["edge straightened"])
            for offcut in board["offcuts"]:
                wide, along = (Fraction(offcut[k]) for k in ("width", "length"))
                if plan["first cut"] == "crosscut" and wide == Fraction(plan["sizes"][board["size"]]["width"]):
                    wide -= 2 * edge
                near = [k for k in there if k[0] == plan["name"] and k[3] == "yes" and there[k] >= board["copies"]
                        and 0 <= wide - k[1] < step and 0 <= along - k[2] < step]
                if offcut["keep"]:
                    want += board["copies"]
                    if not near:
                        told.fail(f"{job}: no offcut of {wide} x {along} of {plan['name']}")
                    there[near[0]] -= board["copies"]
    if any(there.values()):
        told.fail(f"{job}: too much is there: {+there}")
    return want


def check_old(estimate, old, new):
    """Rows that were there before."""
    taken = collections.Counter()
    for plan in estimate["plans"]["sheets"]:
        for size in plan["sizes"]:
            if "from the rack" in size:
                key = (plan["name"], Fraction(size["width"]), Fraction(size["length"])) if size["sawn"] else (plan["name"], None, None)
                taken[key] += Fraction(size["from the rack"]["value"])
    for kind in ("hardware", "finish"):
        for one in estimate["materials"].get(kind) or []:
            rack = one.get("from the rack")
            name = one.get("name", one.get("product"))
            taken[(name, None, None)] += Fraction(rack["value"]) if rack else 0
    for row in old:
        key = (row[0], number(row[2]) if row[2] else None, number(row[3]) if row[3] else None)
        amount = Fraction(1, 4) if row[4] == "1 qt" else Fraction(row[4])
        left = amount - taken[key]
        now = [r for r in new if r[:4] == row[:4] or (r[0] == row[0] and r[1] == row[1] and not r[2] and not row[2])]
        if left == 0 and not now:
            continue
        if len(now) != 1 or now[0][6] != row[6]:
            told.fail(f"{row}: {now}")
        yield row, left, amount, now[0]


def check_sample(program, folder, job, shop, coating, unit, step, rack):
    path, rates = f"{folder}/samples/{job}.ini", pathlib.Path(folder, "rates", shop + ".ini")
    text = re.sub(r"(?m)^(price sheets by +=) factor", r"\1 plan", rates.read_text())
    names = set(re.findall(r"(?m)^\[(?:hardware|coating|sheet|lumber) (.*)\]", text))
    rack = [row for row in rack if row[0] in names]
    rates.write_text(re.sub(r"(?m)^woods .*", r"\g<0>\nstock = rack.csv", text))
    write(f"{folder}/rates/rack.csv", rack)
    noted = f"{folder}/noted.csv"
    extra = Fraction(2, 5) if coating else 0
    pathlib.Path(noted).write_text("what,hours,bought,left\nall,60,,\n" + (f"{coating},,2.5 {unit},0.4 {unit}\n" if coating else ""))
    estimate = told.run(program, "plan", path)[0]
    whole = told.run(program, "buy", path)[0]
    estimate["materials"] = whole["materials"]
    new = learned(program, path, noted, f"{folder}/next-{shop}.csv")
    boards = check_lumber(job, estimate, [row for row in rack if is_lumber(row)], [row for row in new if is_lumber(row)], step)
    rack, new = ([row for row in rows if not is_lumber(row)] for rows in (rack, new))
    old = set()
    for row, left, amount, now in check_old(estimate, rack, new):
        more = extra if row[0] == coating else 0
        if row[0] == coating:
            left = max(left, Fraction(0))
        if row[0] != coating and number(re.sub(r" .*", "", now[4])) != left + more:
            told.fail(f"{job}: {row}: {now[4]} left, not {left + more}")
        if row[5] and left > 0 and row[0] != coating and abs(Fraction(now[5] or 0) - Fraction(row[5]) * left / amount) > Fraction(1, 200):
            told.fail(f"{job}: {row}: worth {now[5]}")
        old.add(tuple(now))
    offcuts = collections.Counter()
    for row in new:
        if row[0].startswith("sheet "):
            offcuts[(row[0][6:], number(row[2]), number(row[3]))] += int(row[4])
    want = 0
    for plan in estimate["plans"]["sheets"]:
        for (width, length), count in kept(plan).items():
            want += count
            near = [k for k, n in offcuts.items() if k[0] == plan["name"] and 0 <= width - k[1] < step and 0 <= length - k[2] < step and n > 0]
            if not near:
                told.fail(f"{job}: no offcut of {width} x {length} of {plan['name']}")
    if sum(offcuts.values()) != want:
        told.fail(f"{job}: {sum(offcuts.values())} offcuts for {want}")
    if boards == 0 and coating:
        told.fail(f"{job}: no offcut of a board")
    return want + boards


def check_taken(program, folder):
    """A shop that counts what it opens: of what is there and bought, what is gone is what was taken less what is left of it."""
    rates = pathlib.Path(folder, "rates", "small-shop.ini")
    rates.write_text(re.sub(r"(?m)^(woods .*)", r"\1\nstock = taken.csv", rates.read_text()))
    write(f"{folder}/rates/taken.csv", [["topcoat", "lamp white", "", "", "20 gal", "200.00", ""], ["cup-hinge", "", "", "", "100", "", ""],
                                        ["knob", "", "", "", "10", "5.00", ""], ["bar-pull", "", "", "", "4", "", ""]])
    noted = pathlib.Path(folder, "taken-noted.csv")
    noted.write_text("what,bought,taken,left\ntopcoat,,20 gal,17.5 gal\ncup-hinge,,100,30\nknob,60,47,\nbar-pull,,9,2\nsurfacer,3 gal,2.5 gal,0.1 gal\n")
    new = {row[0]: row[1:6] for row in learned(program, f"{folder}/samples/kitchen/kitchen.ini", str(noted), f"{folder}/taken-next.csv")}
    for name, want in {"topcoat": ["lamp white", "", "", "17.5 gal", "175.00"], "cup-hinge": ["", "", "", "30", ""],
                       "knob": ["", "", "", "23", ""],  # 10 + 60 - 47; the 10 were used first, and their worth with them
                       "bar-pull": ["", "", "", "2", ""],  # more was taken than is known of: what is left is there
                       "coating surfacer": ["", "", "", "0.6 gal", ""]}.items():  # half a gallon closed
        if new.get(name) != want:
            told.fail(f"{name} noted as taken: {new.get(name)}, not {want}")
    done = subprocess.run([program, "learn", f"{folder}/samples/kitchen/kitchen.ini", str(noted), "--option", "maple", "--rack",
                           f"{folder}/taken-maple.csv"], capture_output=True, text=True, check=False)
    row = pathlib.Path(folder, "taken-maple.csv").read_text().split("\n")[1]
    if done.returncode != 0 or "'topcoat' is noted as left over, and the job has it in no color" not in done.stderr or ",20 gal," not in row:
        told.fail(f"a tinted coating of another option: {row}, {done.stderr}")


def check_sizes(program, folder):
    """What the new rack is read as: no row twice, none larger than it was, and no more than the reader takes (docs/formats.md, "Limits":
    50 rows of one sheet, 2000 in all)."""
    rates = pathlib.Path(folder, "rates", "small-shop.ini")
    text = re.sub(r"(?m)^(price sheets by +=) factor", r"\1 plan", rates.read_text())
    noted = f"{folder}/sizes.csv"
    pathlib.Path(noted).write_text("what,hours\nall,60\n")
    one = [["mdf-slab", "", str(2 + n * 3 / 4), "90", "1", "999", ""] for n in range(50)]
    same = [["mdf-slab", "", "600 mm", "300 mm", "3", "100", ""], ["mdf-slab", "", "23 19/32", "11 25/32", "2", "50.50", "kept"]]
    for title, rack, gone, twins in (("one", one, "2", False), ("same", same, None, True)):
        rates.write_text(re.sub(r"(?m)^(woods .*)", r"\1\nstock = sizes-rack.csv", text))
        write(f"{folder}/rates/sizes-rack.csv", rack)
        new = learned(program, f"{folder}/samples/kitchen/kitchen.ini", noted, f"{folder}/rates/sizes-{title}.csv")
        slabs = [row for row in new if row[0].endswith("mdf-slab") and Fraction(row[5] or 0) > 0]
        if gone and (len([r for r in new if r[0].endswith("mdf-slab")]) != 50 or gone in [row[2] for row in slabs]):
            told.fail(f"{title}: {slabs}")
        if twins and slabs != [["mdf-slab", "", "23 19/32", "11 25/32", "5", "150.50", "kept"]]:
            told.fail(f"{title}: {slabs}")
        rates.write_text(re.sub(r"(?m)^(woods .*)", rf"\1\nstock = sizes-{title}.csv", text))
        told.run(program, "plan", f"{folder}/samples/kitchen/kitchen.ini")
    slab = re.search(r"(?ms)^\[sheet mdf-slab\].*?(?=^\[)", text)[0]
    more = "\n" + "".join(slab.replace("mdf-slab]", f"mdf-slab-{n}]") for n in range(40))
    for stock in ("sizes-all", "sizes-next"):
        rates.write_text(re.sub(r"(?m)^(woods .*)", rf"\1\nstock = {stock}.csv", text) + more)
        if stock == "sizes-all":
            write(f"{folder}/rates/sizes-all.csv", [[f"mdf-slab-{n}", "", str(5 + k), "40", "1", "9", ""] for n in range(40) for k in range(50)])
            new = learned(program, f"{folder}/samples/kitchen/kitchen.ini", noted, f"{folder}/rates/sizes-next.csv")
            if len(new) != 2000 or not any(not row[0].startswith("mdf-slab-") for row in new):
                told.fail(f"{len(new)} rows where 2000 can be read")
    told.run(program, "plan", f"{folder}/samples/kitchen/kitchen.ini")


def check_by_hand(program, folder):
    """A slab of 48 x 60 leaves 48 x 36 of a sheet of 48 x 96; one of 48 x 30 is cut of that, and leaves 48 x 6, which is
    not worth keeping at 12 x 6 unless its sides are 12 and 6 or more: it is."""
    path = pathlib.Path(folder)
    for title, door, rack, bought, after in (
            ("first", "48,60", "none.csv", 1, [["sheet board", "", "48", "36", "1", "", ""]]),
            ("second", "48,30", "first.csv", 0, [["sheet board", "", "48", "6", "1", "", ""]]),
            ("third", "48,6", "second.csv", 0, [])):
        if title == "first":
            write(path / "none.csv", [])
        job = told.write_slabs(folder, f"id,width,height\nA,{door}\n", title=title, stock=rack)
        (path / "noted.csv").write_text("what,minutes\npack,1\n")
        sheet = told.run(program, "plan", job)[0]["plans"]["sheets"][0]
        if int(sheet["sizes"][0]["to buy"]["value"]) != bought:
            told.fail(f"the {title} job buys {sheet['sizes'][0]['to buy']}")
        rows = learned(program, job, str(path / "noted.csv"), str(path / (title + ".csv")))
        if rows != after:
            told.fail(f"the {title} job leaves {rows}")


def main():
    program, samples = sys.argv[1:]
    with told.copied(samples) as folder:
        count = sum(check_sample(program, folder, job, *rest) for job, rest in RACK.items())
    with told.copied(samples) as folder:
        check_taken(program, folder)
    with told.copied(samples) as folder:
        check_sizes(program, folder)
    with tempfile.TemporaryDirectory() as folder:
        check_by_hand(program, folder)
    print(f"{len(RACK)} samples keep {count} offcuts; a small job uses what the one before left")


main()
