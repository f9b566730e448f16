# SPDX-License-Identifier: MIT
"""A sample with a day, and a rise or a fall a year, behind every price of its rates: the quote is what tests/outside/afresh.py
makes of it, and what is asked about is what the calendar of Python says is too old.

    price_age.py PROGRAM JOB.ini
"""
import datetime
import json
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile

PROGRAM, JOB = sys.argv[1:]
HERE = os.path.dirname(os.path.abspath(__file__))
KEYS = ("price", "price from", "half sheet", "stops", "bought in", "put out", "sizes", "labor rate", "overhead", "rate",
        "minimum job")
MOST = 180
QUOTED = datetime.date(2026, 3, 2)


def fail(words):
    sys.exit("price_age: " + words)


def dated(random_, value, days):
    """Each item of a value with a day; percents are none of money."""
    items = []
    for item in re.split(r", (?![^(]*\))", value.strip()):
        if re.search(r"%|others", item):
            return value
        day = QUOTED - datetime.timedelta(random_.randint(0, 600))
        item = re.sub(r" *\(on [^()]*\)", "", item)
        days.append((QUOTED - day).days)
        yearly = random_.choice(["", f", {random_.choice([4, 2.5, -3, 12.75])} % a year"])
        items.append(f"{item.strip()} (on {day}{yearly})")
    return ", ".join(items)


def spoil(path):
    """Writes the days; the ages by line."""
    random_, ages, lines = random.Random(7), {}, []
    for at, line in enumerate(open(path, encoding="utf-8").read().split("\n"), 1):
        match = re.match(r"([a-z][a-z ]*?)( *= *)([^;]*?)( *;.*)?$", line)
        if match and match.group(1) in KEYS:
            ages[at] = []
            line = match.group(1) + match.group(2) + dated(random_, match.group(3), ages[at]) + " ;"
        if line.startswith("price age"):
            line = f"price age = {MOST} days"
        lines.append(line)
    open(path, "w", encoding="utf-8").write("\n".join(lines))
    return ages


with tempfile.TemporaryDirectory() as folder:
    root = os.path.join(os.path.dirname(JOB), "..", "..")
    for name in ("rates", "samples"):
        shutil.copytree(os.path.join(root, name), os.path.join(folder, name))
    job = os.path.join(folder, "samples", os.path.relpath(JOB, os.path.join(root, "samples")))
    text = open(job, encoding="utf-8").read()
    text, count = re.subn(r"(?m)^date .*$", f"date = {QUOTED}", text)
    open(job, "w", encoding="utf-8").write(text)
    rates = os.path.join(os.path.dirname(job), re.search(r"(?m)^rates *= *([^ ;]*)", text).group(1))
    ages = spoil(rates)
    if count != 1 or sum(map(len, ages.values())) < 40:
        fail("too few prices were given a day")
    quote = subprocess.run([PROGRAM, "quote", job, "--json", "-o", os.path.join(folder, "q.xlsx")],
                           capture_output=True, text=True, check=False)
    if quote.returncode != 0:
        fail(quote.stderr)
    told = json.loads(quote.stdout)
    used = {f["origin"]["line"] for e in told["estimates"] for f in e["tape"]["figures"]
            if "learned" in f.get("origin", {})}
    wanted = {line for line in used if any(days > MOST for days in ages[line])}
    old = [p for p in told["problems"] if p["id"] == "price-old"]
    asked = {line for p in old for line in [p["line"], *p["more lines"]]}
    if len(wanted) < 10 or asked != wanted:
        fail(f"asked about lines {sorted(asked)}, too old are {sorted(wanted)}")
    afresh = subprocess.run([sys.executable, os.path.join(HERE, "afresh.py"), PROGRAM, job], check=False)
    sys.exit(afresh.returncode)
