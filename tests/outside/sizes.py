#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What `table` tells is what edited files come to.

    sizes.py DOORCOST SAMPLES JOB.ini [OPTION]

SAMPLES: the folder that holds `rates` and `samples`; JOB.ini: a path below it; OPTION: work on that
option. As a person would, a row is written at the end of the door list, or a list of that row alone
beside a job without charges, delivery and operations of its own; `compare` estimates them, and what
they come to is held against `table`, to the cent. Exit status 0: all is well.
"""
import csv
import io
import json
import os
import re
import subprocess
import sys
from fractions import Fraction

from told import copied

FIELDS = {"client pays": ("sale", "total"), "before tax": ("sale", "before tax"),
          "to buy": ("purchase", "spent in all")}
STYLES = {"kitchen": ["shaker", "raised", "louvered"], "old-house": ["shaker", "wide-shaker"],
          "tea-kitchen": [], "station": []}
COUNTS = [1, 23]


def fail(text):
    sys.exit(f"sizes.py: {text}")


def call(program, *words):
    return subprocess.run([program, *words], capture_output=True, text=True, check=False)


def rounded(value, places):
    """Half away from zero, as the papers round."""
    scaled = abs(value) * 10**places
    whole = int(scaled + Fraction(1, 2))
    return Fraction(whole if value >= 0 else -whole, 10**places)


class Job:
    def __init__(self, program, path, option):
        self.program, self.path, self.option = program, path, option
        with open(path, encoding="utf-8") as file:
            self.text = file.read()
        name = re.search(r"^doors *= *([^;\n]*?) *(;.*)?$", self.text, re.M).group(1)
        self.list = os.path.join(os.path.dirname(path), name)
        with open(self.list, encoding="utf-8", newline="") as file:
            self.head, *self.rows = [row for row in csv.reader(file) if any(row)]
        if "style" not in self.head:
            self.head.append("style")
            self.rows = [row + [""] for row in self.rows]
        self.metric = re.search(r"^unit *= *mm", self.text, re.M) is not None
        self.base = self.amounts()

    def amounts(self):
        done = call(self.program, "compare", self.path, "--json")
        if done.returncode != 0:
            fail(f"compare: {done.stderr}")
        found = [e for e in json.loads(done.stdout)["estimates"]
                 if e["name"] == (self.option or "as listed")][0]
        return {name: Fraction(found[part][key]["value"]) for name, (part, key) in FIELDS.items()}

    def write(self, rows, text):
        with open(self.list, "w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows([self.head, *rows])
        with open(self.path, "w", encoding="utf-8") as file:
            file.write(text)

    def restore(self):
        self.write(self.rows, self.text)

    def row(self, style, width, height, count):
        cells = {"id": "ONE-MORE", "width": width, "height": height, "count": str(count),
                 "style": style}
        return [cells.get(column, "") for column in self.head]

    def alone(self):
        """The job file without what is this job's own; [sale] and [job] hold these keys alone."""
        return re.sub(r"^(delivery|charges|also) *=.*\n", "", self.text, flags=re.M)

    def added(self, row):
        self.write(self.rows + [row], self.text)
        now = self.amounts()
        self.restore()
        return {name: now[name] - before for name, before in self.base.items()}

    def by_itself(self, row):
        self.write([row], self.alone())
        now = self.amounts()
        self.restore()
        return now


def check_price(told, expected, count, area, rate, what):
    for name, amount in expected.items():
        if Fraction(told[name]) != amount:
            fail(f"{what}: {name} {told[name]}, the edited files make it {float(amount):.2f}")
    price, direct = expected["before tax"], Fraction(told["direct"])
    flat = rounded(rate * area * count, 2)
    does = "loses money" if flat < direct else "earns less" if flat < price else "bears it"
    derived = {"left over": price - direct, "price of each": rounded(price / count, 2),
               "price by area": rounded(price / (area * count), 2), "flat price": flat}
    for name, amount in derived.items():
        if Fraction(told[name]) != amount:
            fail(f"{what}: {name} {told[name]}, not {float(amount):.2f}")
    if told["flat price does"] != does:
        fail(f"{what}: a flat price {does}, not {told['flat price does']}")


def check_style(job, style):
    rate = Fraction(style["flat price by area"])
    if rate != rounded(Fraction(style["sold for"]) / Fraction(style["area"]), 2):
        fail(f"{style['style']}: flat price {rate}")
    made, lost = 0, 0
    for size in style["sizes"]:
        what = f"{style['style']} {size['width']} x {size['height']}"
        if size["cannot be made"] is not None:
            job.write(job.rows + [job.row(style["style"], size["width"], size["height"], 1)],
                      job.text)
            done = call(job.program, "check", job.path)
            job.restore()
            if size["cannot be made"] not in done.stderr or done.returncode != 1:
                fail(f"{what}: '{size['cannot be made']}', but check says: {done.stderr}")
            lost += 1
            continue
        for prices in size["prices"]:
            count = prices["count"]
            row = job.row(style["style"], size["width"], size["height"], count)
            area = Fraction(size["area"])
            check_price(prices["added"], job.added(row), count, area, rate, f"{what}, {count} added")
            check_price(prices["alone"], job.by_itself(row), count, area, rate,
                        f"{what}, {count} alone")
            made += 1
    return made, lost


def check_area(job, style, folder):
    """The leaf of the row as `quote` has it: its width times its height."""
    size = [s for s in style["sizes"] if s["cannot be made"] is None][0]
    job.write(job.rows + [job.row(style["style"], size["width"], size["height"], 1)], job.text)
    more = ["--option", job.option] if job.option else []
    done = call(job.program, "quote", job.path, "--json", "-o", os.path.join(folder, "t.xlsx"),
                *more)
    job.restore()
    door = json.loads(done.stdout)["estimates"][0]["doors"][-1]
    over = Fraction(1, 1000000) if job.metric else Fraction(1, 144)
    area = Fraction(door["width"]["value"]) * Fraction(door["height"]["value"]) * over
    if rounded(area, 4) != Fraction(size["area"]):
        fail(f"{style['style']}: area {size['area']}, the leaf has {float(area):.4f}")


def check_flat(job, document, folder):
    """What the doors of a style are sold for, and their area, as `quote` lists them."""
    more = ["--option", job.option] if job.option else []
    done = call(job.program, "quote", job.path, "--json", "-o", os.path.join(folder, "f.xlsx"),
                *more)
    base = json.loads(done.stdout)["estimates"][0]
    sale = {key: Fraction(base["sale"][key]["value"])
            for key in ("doors and fronts", "after discount")}
    for style in document["styles"]:
        for own in (True, False):
            doors = [d for d in base["doors"]
                     if not own or (d["style"] == style["style"] and d["use"] == "door")]
            if doors:
                break
        if style["flat price is of the style"] != own:
            fail(f"{style['style']}: the flat price is not of its own doors")
        listed = sum(Fraction(d["amount"]["value"]) for d in doors)
        area = sum(Fraction(d["face area"]["value"]) * int(d["pieces"]["value"]) for d in doors)
        sold = rounded(listed * sale["after discount"] / sale["doors and fronts"], 2)
        if sold != Fraction(style["sold for"]) or area != Fraction(style["area"]):
            fail(f"{style['style']}: sold for {style['sold for']} over {style['area']}, not "
                 f"{float(sold):.2f} over {float(area):.4f}")


def check_csv(job, words, document, folder):
    """The same prices stand in the CSV file, a record each."""
    path = os.path.join(folder, "t.csv")
    done = call(job.program, "table", job.path, *words, "-o", path)
    if done.returncode != 0:
        fail(f"-o t.csv: {done.stderr}")
    with open(path, encoding="utf-8", newline="") as file:
        text = file.read()
    if text.count("\r\n") != text.count("\n"):
        fail("lines of the CSV file do not end with CR LF")
    records = list(csv.DictReader(io.StringIO(text)))
    at = 0
    for style in document["styles"]:
        for size in style["sizes"]:
            ways = [("added to this job", "added"), ("alone", "alone")]
            for way, key in ways:
                for c, count in enumerate(COUNTS):
                    record = records[at]
                    at += 1
                    made = size["cannot be made"] is None
                    price = size["prices"][c][key] if made else None
                    told = [record["style"], record["width"], record["height"], record["way"],
                            record["count"], record["price before tax"] or None,
                            record["client pays"] or None, record["flat price does"] or None]
                    wanted = [style["style"], size["width"], size["height"], way, str(count),
                              *(price[k] if made else None
                                for k in ("before tax", "client pays", "flat price does"))]
                    if told != wanted:
                        fail(f"record {at} of the CSV file: {told}, not {wanted}")
    if at != len(records):
        fail(f"{len(records)} records, {at} prices")
    again = call(job.program, "table", job.path, *words, "-o", path)
    if again.returncode != 3 or "stands there already" not in again.stderr:
        fail(f"a CSV file is written over: {again.stderr}")
    if call(job.program, "table", job.path, *words, "-o", path, "--force").returncode != 0:
        fail("a CSV file is not written over with --force")


def main():
    program, samples, path = os.path.abspath(sys.argv[1]), sys.argv[2], sys.argv[3]
    option = sys.argv[4] if len(sys.argv) > 4 else None
    name = os.path.splitext(os.path.basename(path))[0]
    with copied(samples) as folder:
        job = Job(program, os.path.join(folder, path), option)
        sides = ["--widths", "90,400,555.5", "--heights", "600,1300"] if job.metric else \
            ["--widths", "3,12,17 1/4", "--heights", "20,41 3/8"]
        words = [*STYLES[name], *sides, "--counts", ",".join(str(c) for c in COUNTS),
                 *(["--option", option] if option else [])]
        done = call(program, "table", job.path, *words, "--json")
        if done.returncode != 0:
            fail(done.stderr)
        document = json.loads(done.stdout)["estimates"][0]["sizes"]
        made, lost = 0, 0
        for style in document["styles"]:
            found = check_style(job, style)
            made, lost = made + found[0], lost + found[1]
            check_area(job, style, folder)
        check_flat(job, document, folder)
        check_csv(job, words, document, folder)
        if made == 0 or lost == 0:
            fail(f"{made} sizes can be made, {lost} cannot")
        print(f"{made} prices added and alone, {lost} sizes that cannot be made")


main()
