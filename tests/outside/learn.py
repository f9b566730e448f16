#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What `learn` tells, worked again in fractions from the JSON of a quote.

    learn.py DOORCOST JOB.ini [SEED [RUNS]]

Random notes of the job: hours of some operations, of a sort of work, of all the rest; goods bought,
paid, used and left. Minutes estimated, costs and amounts are taken from `quote --json` and `buy
--json`; the variances are those of bookkeeping with standard costs (common practice, no source).
Notes that are the estimate itself must give nothing. Exit status 0: all is well."""
import csv
import json
import random
import re
import subprocess
import sys
import tempfile
from fractions import Fraction
from pathlib import Path

PROGRAM, JOB = sys.argv[1], sys.argv[2]
RANDOM = random.Random(int(sys.argv[3]) if len(sys.argv) > 3 else 11)
RUNS = int(sys.argv[4]) if len(sys.argv) > 4 else 12
RANGE = re.compile(r"[(]([0-9.]+) to ([0-9.]+)[)]")
HEAD = ["what", "hours", "minutes", "people", "bought", "paid", "taken", "left", "remade"]


def fail(text):
    sys.exit(f"learn.py: {JOB}: {text}")


def run(*call):
    done = subprocess.run([PROGRAM, *call, "--json"], capture_output=True, text=True, check=False)
    if done.returncode != 0:
        fail(f"{call}: {done.stderr}")
    return json.loads(done.stdout)["estimates"][0]


def number(figure):
    return Fraction(figure["value"]) if figure is not None else Fraction(0)


def rounded(value, decimals):
    """Half away from zero."""
    scaled = abs(value) * 10 ** decimals
    whole = int(scaled + Fraction(1, 2))
    return Fraction(whole if value >= 0 else -whole, 10 ** decimals)


class Job:
    """What the estimate says."""

    def __init__(self, folder):
        quote = run("quote", JOB, "-o", str(folder / "q.xlsx"))
        self.folder = folder
        labor = quote["labor"]
        self.operations = {o["name"]: (number(o["person-minutes"]), number(o["labor"]))
                           for o in labor["operations"]}
        self.profit = number(quote["sale"]["profit left"])
        self.lumber = {}
        for buy in quote["materials"]["lumber"]:
            use = buy["with waste" if buy["priced by"] == "factor" else "bought"]
            self.lumber[buy["name"]] = {"unit": buy["net"]["unit"], "use": number(use),
                                        "buy": number(buy["bought"]), "cost": number(buy["cost"])}
        self.products = {}
        for product in quote["finish"]["products"]:
            one = self.products.setdefault(product["name"], {"buy": 0, "use": 0, "cost": 0})
            one["unit"] = product["bought"]["unit"]
            one["buy"] += number(product["bought"])
            one["use"] += number(product["used"])
            one["cost"] += number(product["cost"])

    def learn(self, rows):
        path = self.folder / "noted.csv"
        with open(path, "w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows([HEAD, *[[row.get(column, "") for column in HEAD] for row in rows]])
        return run("learn", JOB, str(path))["learned"]


def decimal(value, decimals):
    return f"{float(value):.{decimals}f}"


def same(what, told, wanted, slack=Fraction(0)):
    if abs(Fraction(told) - wanted) > slack:
        fail(f"{what}: {told}, here {float(wanted):.6f}")


def check_work(job):
    """Hours of some operations and of all the rest, by one person or two."""
    names = RANDOM.sample(sorted(job.operations), k=min(3, len(job.operations)))
    rows = []
    noted = {}
    for name in names:
        for _ in range(RANDOM.randint(1, 2)):
            hours, people = Fraction(RANDOM.randint(1, 900), 100), RANDOM.randint(1, 3)
            rows.append({"what": f"operation {name}", "hours": decimal(hours, 2), "people": people})
            noted[name] = noted.get(name, 0) + hours * 60 * people
    minutes = RANDOM.randint(1, 5000)
    rows.append({"what": "all", "minutes": minutes})
    noted["all"] = Fraction(minutes)
    told = job.learn(rows)
    lines = {line["what"]: line for line in told["work"]}
    more = 0
    for name, took in noted.items():
        held = [name] if name != "all" else [n for n in job.operations if n not in names]
        estimated = sum((job.operations[n][0] for n in held), Fraction(0))
        wages = sum((job.operations[n][1] for n in held), Fraction(0))
        same(f"{name}, minutes noted", lines[name]["minutes, noted"], took)
        same(f"{name}, minutes estimated", lines[name]["minutes, estimated"], estimated)
        cost = rounded((took - estimated) * wages / estimated, 2) if estimated else None
        if cost is not None:
            same(f"{name}, costs more", lines[name]["costs more"], cost)
        more += Fraction(lines[name]["costs more"])
    same("minutes that nobody noted", told["minutes, not noted"], Fraction(0))
    same("profit", told["profit left"], job.profit - more)


def check_goods(job):
    """Lumber and liquids, bought in one or two lots, used with something left, or only bought."""
    rows, wanted = [], {}
    for goods in (job.lumber, job.products):
        for name, one in goods.items():
            bought = Fraction(RANDOM.randint(8000, 15000), 10000) * one["buy"]
            bought = rounded(bought, 4)
            paid = rounded(one["cost"] * RANDOM.randint(70, 140) / 100, 2)
            row = {"what": name if goods is job.lumber else f"{one['section']} {name}",
                   "bought": f"{decimal(bought, 6)} {one['unit']}", "paid": decimal(paid, 2)}
            use = bought
            estimated = one["buy"]
            if RANDOM.random() < 0.7:
                left = rounded(bought / RANDOM.randint(3, 9), 4)
                row["left"] = f"{decimal(left, 6)} {one['unit']}"
                use, estimated = bought - left, one["use"]
            rows.append(row)
            price = one["cost"] / one["buy"]
            wanted[name] = (rounded(paid - rounded(one["cost"] * bought / one["buy"], 2), 2),
                            rounded((use - estimated) * price, 2), use)
    told = job.learn(rows)
    parts = 0
    for line in told["goods"]:
        by_price, by_amount, use = wanted[line["what"]]
        same(f"{line['what']}, used", line["used"], use)
        same(f"{line['what']}, by price", line["costs more by price"], by_price)
        same(f"{line['what']}, by amount", line["costs more by amount"], by_amount)
        parts += by_price + by_amount
    if len(told["goods"]) != len(wanted):
        fail("goods are missing")
    same("profit", told["profit left"], job.profit - parts)


def check_as_estimated(job):
    """Everything as estimated: nothing costs more, waste is that of the rates."""
    rows = [{"what": f"operation {name}", "minutes": decimal(minutes, 2)}
            for name, (minutes, _) in job.operations.items()]
    for name, one in job.lumber.items():
        rows.append({"what": name, "bought": f"{decimal(one['buy'], 6)} {one['unit']}",
                     "paid": decimal(one["cost"], 2),
                     "taken": f"{decimal(one['use'], 6)} {one['unit']}"})
    told = job.learn(rows)
    for line in told["work"]:
        same(line["what"], line["costs more"], Fraction(0))
    for line in told["goods"]:
        same(line["what"], line["costs more by price"], Fraction(0))
        same(line["what"], line["costs more by amount"], Fraction(0))
    same("profit", told["profit left"], job.profit)


def check_remakes(job):
    """The rate of doors made again, against the mean of a beta distribution whose prior has the mean
    and spread of the rates and which has seen the doors of the job (conjugate prior of a binomial
    share, as textbooks of statistics have it, from memory). Both differ by one door in all of them."""
    told = job.learn([{"what": "doors", "remade": 0}])
    rate = next((r for r in told["rates"] if (r["section"], r["key"]) == ("shop", "remakes")), None)
    if rate is None:
        fail("no doors made again, and remakes stay")
    was = float(rate["is"].split()[0]) / 100
    low, high = RANGE.search(job.remakes).groups() if RANGE.search(job.remakes) else (0, 300 * was)
    spread = (float(high) - float(low)) / 600
    doors = int(rate["why"].split()[2])
    for remade in (0, 1, RANDOM.randint(2, 5), RANDOM.randint(2, doors)):
        told = job.learn([{"what": "doors", "remade": remade}])
        rate = next((r for r in told["rates"] if (r["section"], r["key"]) == ("shop", "remakes")), None)
        now = float(rate["should be"].split()[0]) / 100 if rate else was
        seen = was * (1 - was) / spread ** 2 - 1
        mean = (was * seen + remade) / (seen + doors)
        if abs(now - mean) > abs(remade / doors - was) / (seen + doors) + 0.0001:
            fail(f"{remade} of {doors} doors made again: {now}, by a beta distribution {mean}")


def check_all_told(job):
    """Each price, waste and transfer that was noted moves a rate, or it is said why not."""
    rows = []
    for goods in (job.lumber, job.products):
        for name, one in goods.items():
            rows.append({"what": name if goods is job.lumber else f"{one['section']} {name}",
                         "bought": f"{decimal(one['buy'] * 2, 6)} {one['unit']}",
                         "paid": decimal(one["cost"] * 3, 2),
                         "taken": f"{decimal(one['buy'] * 2, 6)} {one['unit']}"})
    told = job.learn(rows)
    moved = {(r["section"], r["key"]) for r in told["rates"]}
    said = {entry["what"] for entry in told["no rate changes by"]}
    for line in told["goods"]:
        name, section = line["what"], f"{line['kind']} {line['what']}"
        wanted = [("price", (section, "price"))]
        if line["waste, %"] is not None:
            wanted.append(("waste", (section, "waste")))
        for key, rate in wanted:
            if rate not in moved and f"{name}, {key}" not in said:
                fail(f"{section}: nothing is said of its {key}")
            if rate in moved and f"{name}, {key}" in said:
                fail(f"{section}: its {key} is moved, and is said not to be")


def main():
    with tempfile.TemporaryDirectory() as folder:
        job = Job(Path(folder))
        rates = Path(JOB).parent / "../../rates"
        text = "".join(path.read_text(encoding="utf-8") for path in rates.glob("*.ini"))
        for name, one in job.products.items():
            one["section"] = "coating" if f"[coating {name}]" in text else "additive"
        job.remakes = re.search(r"^remakes .*", text, re.M)[0]
        check_as_estimated(job)
        check_remakes(job)
        check_all_told(job)
        for _ in range(RUNS):
            check_work(job)
            check_goods(job)
    return 0


sys.exit(main())
