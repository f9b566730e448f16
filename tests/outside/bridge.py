#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What `bridge` tells adds up, and each step is what files edited so far come to.

    bridge.py DOORCOST TREE [COUNT [SEED]]

TREE: the folder that holds `rates` and `samples`. COUNT times a sample is edited at random as a
person would: rows struck, changed and added, keys of rates and job typed anew. The steps must add
up to the difference of two quotes made by themselves, to the cent. Each edit is of a known group;
for every fourth bridge the files are edited a group at a time, each time estimated by `compare`,
and the steps must be these differences. Every list calls its columns otherwise, as shops do, which
is no change. For every sixth both jobs are saved with `quote --json`, and
where their files are gone, the bridge of the documents, and of one and a file, must tell the same.
Then some bridges whose middle cannot be estimated, and documents damaged at random, which must be
refused or tell what the whole one does.
Exit status 0: all is well.
"""
import csv
import io
import json
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
from fractions import Fraction

GROUPS = ["Rows taken off", "New in rates and job", "Rows changed", "Rows added",
          "Materials and make", "Waste and yields", "Prices", "Minutes and wage",
          "Overhead and profit", "Terms of sale", "Tax", "Everything else"]
SAMPLES = ["kitchen/kitchen.ini", "old-house/old-house.ini", "metric/tea-kitchen.ini",
           "station/station.ini"]
FIELDS = {"client pays": ("sale", "total"), "before tax": ("sale", "before tax"),
          "tax": ("sale", "tax")}
# what else a column may be called: common practice, no source
CALLED = {"id": ["No.", "Door #", "item"], "room": ["Location"], "use": ["Type", "Item"],
          "count": ["Qty.", "pcs"], "width": ["W", "wide"], "height": ["H", "Ht."],
          "hinge side": ["Hand", "L/R"], "note": ["Notes"], "remark": ["Shop notes"]}


def fail(text):
    sys.exit(f"bridge.py: {text}")


class Files:
    """The texts of one job, apart from any other."""

    def __init__(self, tree, sample):
        self.job = read(os.path.join(tree, "samples", sample))
        folder = os.path.dirname(os.path.join(tree, "samples", sample))
        self.rates = read(os.path.normpath(os.path.join(folder, value(self.job, "job", "rates"))))
        text = read(os.path.join(folder, value(self.job, "job", "doors")))
        self.head, *self.rows = [row for row in csv.reader(io.StringIO(text)) if any(row)]
        self.called = list(self.head)

    def copy(self):
        other = Files.__new__(Files)
        other.job, other.rates, other.head = self.job, self.rates, list(self.head)
        other.called = list(self.called)
        other.rows = [list(row) for row in self.rows]
        return other

    def write(self, folder, name):
        job = put(self.job, "job", "rates", f"{name}-rates.ini")
        write(os.path.join(folder, name + ".ini"), put(job, "job", "doors", f"{name}.csv"))
        write(os.path.join(folder, name + "-rates.ini"), self.rates)
        with open(os.path.join(folder, name + ".csv"), "w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows([self.called, *self.rows])
        return os.path.join(folder, name + ".ini")

    def at(self, name):
        return self.head.index(name)

    def rename(self, dice):
        """Calls the columns otherwise; `item` once."""
        self.called = [dice.choice([name, *CALLED.get(name, [])]) for name in self.head]
        if "item" in self.called and "Item" in self.called:
            self.called[self.at("id")] = "No."


def read(path):
    with open(path, encoding="utf-8", newline="") as file:
        return file.read()


def write(path, text):
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)


def section(text, title):
    """Where the lines of a section begin and end."""
    found = re.search(rf"^\[{re.escape(title)}\][^\n]*\n", text, re.M)
    if not found:
        return None
    end = re.search(r"^\[", text[found.end():], re.M)
    return found.end(), found.end() + end.start() if end else len(text)


def value(text, title, key):
    """The value of a key as written, without its comment; None: it has none."""
    span = section(text, title)
    found = span and re.search(rf"^{re.escape(key)} *= *([^;\n]*?) *(;[^\n]*)?$",
                               text[span[0]:span[1]], re.M)
    return found.group(1).strip('"') if found else None


def put(text, title, key, new):
    """The text with that value; new None: without the key."""
    begin, end = section(text, title)
    line = "" if new is None else f"{key} = {new}\n"
    body, count = re.subn(rf"^{re.escape(key)} *=[^\n]*\n", lambda _: line, text[begin:end],
                          flags=re.M)
    return text[:begin] + (line if not count else "") + body + text[end:]


def titles(text, kind):
    return re.findall(rf"^\[({kind} [^\]]+)\]", text, re.M)


def scaled(text, factor):
    """The text with its first number times factor, and without a range."""
    found = re.search(r"\d+(\.\d+)?", text)
    decimals = len(found.group(1) or "") - 1 if found.group(1) else 0
    number = f"{float(found.group()) * factor:.{max(decimals, 2 if factor != int(factor) else 0)}f}"
    return re.sub(r" \([^)]* to [^)]*\)", "", text[:found.start()] + number + text[found.end():])


# --- edits: each takes the files and a random source, and gives its group, or None ---

def strike(files, dice):
    if len(files.rows) < 3:
        return None
    del files.rows[dice.randrange(len(files.rows))]
    return "Rows taken off"


def recount(files, dice):
    row = dice.choice(files.rows)
    row[files.at("count")] = str(int(row[files.at("count")] or 1) + dice.randint(1, 3))
    return "Rows changed"


def resize(files, dice):
    row = dice.choice(files.rows)
    size = row[files.at("width")]
    if not re.fullmatch(r"\d+( \d+/\d+)?", size) or row[files.at("use")] == "false front":
        return None
    whole, _, rest = size.partition(" ")
    row[files.at("width")] = f"{int(whole) - 1} {rest}".strip()
    return "Rows changed"


def add(files, dice):
    row = list(dice.choice(files.rows))
    row[files.at("id")] = f"N{len(files.rows)}{dice.randint(100, 999)}"
    files.rows.insert(dice.randint(0, len(files.rows)), row)
    return "Rows added"


def key_edit(group, where, kinds, key, low, high):
    """An edit that multiplies the number of such a key."""
    def edit(files, dice):
        text = getattr(files, where)
        have = [t for k in kinds for t in (titles(text, k) if k in NAMED else [k])
                if (value(text, t, key) or "")[:1].isdigit()]
        if not have:
            return None
        title = dice.choice(have)
        factor = dice.choice([low, high, (low + high) / 2])
        new = scaled(value(text, title, key), factor)
        setattr(files, where, put(text, title, key, new))
        return group if new != value(text, title, key) else None
    return edit


NAMED = ("lumber", "sheet", "hardware", "operation", "machine", "consumable", "glass", "spray",
         "coating", "door", "finish")


def restyle(files, dice):
    title = dice.choice(titles(files.rates, "door"))
    stile = value(files.rates, title, "stile")
    if stile is None or not stile.startswith("2 1/4") or value(files.rates, title, "top rail"):
        return None
    files.rates = put(files.rates, title, "stile", "2 1/2 in")
    return "Materials and make"


def without_pull(files, _):
    if value(files.job, "make", "pull") in (None, "none") or \
            any("pulls" in files.head and row[files.at("pulls")] for row in files.rows):
        return None
    files.job = put(files.job, "make", "pull", "none")
    return "Materials and make"


def new_lumber(files, _):
    """A lumber of another name, and all frames of it: the name alone is a step without effect."""
    name = value(files.job, "make", "frame")
    span = name and section(files.rates, f"lumber {name}")
    if not span or section(files.rates, "lumber other-wood"):
        return None
    body = files.rates[span[0]:span[1]]
    files.rates += "\n[lumber other-wood]\n" + \
        re.sub(r"^price from[^\n]*\n", "", re.sub(r"^price *=[^\n]*", lambda found: "price = " +
               scaled(found.group().split("=")[1].split(";")[0].strip(), 2), body, flags=re.M),
               flags=re.M)
    files.job = put(files.job, "make", "frame", "other-wood")
    return "Materials and make"


def retitle(files, dice):
    files.job = put(files.job, "job", "title", f"Doors {dice.randint(1, 99)}")
    return "Everything else"


def discount(files, dice):
    files.job = put(put(files.job, "sale", "discounts", None), "sale", "discount",
                    f"{dice.randint(1, 12)} %")
    return "Terms of sale"


def tax(files, dice):
    files.job = put(files.job, "sale", "tax", f"{dice.randint(1, 22)}.5 %")
    return "Tax"


EDITS = [
    strike, strike, recount, recount, resize, add, restyle, without_pull, new_lumber, retitle,
    discount, tax,
    key_edit("Waste and yields", "rates", ("lumber", "sheet"), "waste", 0.8, 1.25),
    key_edit("Waste and yields", "rates", ("spray",), "other loss", 1, 2),
    key_edit("Waste and yields", "rates", ("shop",), "remakes", 0.5, 2),
    key_edit("Prices", "rates", ("lumber", "sheet", "glass"), "price", 1, 1.5),
    key_edit("Prices", "rates", ("hardware", "consumable"), "price", 1, 1.5),
    key_edit("Minutes and wage", "rates", ("shop",), "labor rate", 0.9, 1.2),
    key_edit("Minutes and wage", "rates", ("operation",), "minutes", 0.5, 2),
    key_edit("Minutes and wage", "rates", ("machine",), "rate", 0.5, 2),
    key_edit("Overhead and profit", "rates", ("shop",), "profit", 0.5, 1.5),
    key_edit("Overhead and profit", "rates", ("shop",), "overhead", 0.5, 1.5),
    key_edit("Overhead and profit", "rates", ("shop",), "contingency", 0.5, 2),
    key_edit("Terms of sale", "job", ("sale",), "delivery", 1, 2),
]


class Bench:
    def __init__(self, program, folder):
        self.program, self.folder = program, folder

    def run(self, *words):
        done = subprocess.run([self.program, *words, "--json"], capture_output=True, text=True)
        return json.loads(done.stdout) if done.returncode == 0 else None

    def comes_to(self, files, name):
        """What files come to by themselves; None: they are refused."""
        result = self.run("compare", files.write(self.folder, name))
        estimate = result and result["estimates"][0]
        return estimate and {name: Fraction((estimate[part].get(key) or {"value": "0"})["value"])
                             for name, (part, key) in FIELDS.items()}

    def bridge(self, older, newer):
        result = self.run("bridge", older.write(self.folder, "old"),
                          newer.write(self.folder, "new"))
        return result and result["estimates"][0]["bridge"]


    def save(self, files, name):
        """A quote saved as JSON, without its tape, which `bridge` does not look at."""
        book = os.path.join(self.folder, name + "-book.xlsx")
        saved = self.run("quote", files.write(self.folder, name), "-o", book, "--force",
                         "--effort", "0")
        for estimate in saved["estimates"]:
            del estimate["tape"]
        path = os.path.join(self.folder, name + ".json")
        write(path, json.dumps(saved, indent=1))
        return path

    def remove(self, name):
        for ending in (".ini", "-rates.ini", ".csv"):
            os.remove(os.path.join(self.folder, name + ending))


def hold_saved(bench, what, told, older, newer):
    """Documents in place of files tell the same."""
    saved = [bench.save(older, "old"), bench.save(newer, "new")]
    file = os.path.join(bench.folder, "new.ini")
    for which, pair in (("old", (saved[0], file)), ("new", saved)):
        bench.remove(which)
        again = bench.run("bridge", *pair)
        again = again and again["estimates"][0]["bridge"]
        for part in ("came to", "comes to", "steps"):
            if again is None or again[part] != told[part]:
                fail(f"{what}: from saved quotes {part} is {again and again[part]}, "
                     f"not {told[part]}")


def hold_damaged(bench, base, dice, count):
    """Damaged documents: an error of the inputs, or nothing that matters was hit."""
    path = bench.save(base, "whole")
    text = read(path)
    start = text.index('"inputs"')
    whole = bench.run("bridge", path, path)["estimates"][0]["bridge"]["came to"]
    refused = 0
    for number in range(count):
        at = dice.randrange(start, len(text))
        spoiled = [text[:at], text[:at] + text[at + dice.randint(1, 40):],
                   text[:at] + dice.choice('{}[]",:0x\\\t\n\x01\u2028') + text[at:],
                   text[:at] + text[at:].replace('"line": ', '"line": -', 1),
                   text[:at] + re.sub(r'"[^"]*"', dice.choice(['""', "null", "7", "[]", "{}"]),
                                      text[at:], count=1)][number % 5]
        write(path, spoiled)
        done = subprocess.run([bench.program, "bridge", path, path, "--json"], capture_output=True,
                              text=True)
        if done.returncode not in (0, 1) or (done.returncode == 1 and "error: " not in done.stderr):
            fail(f"a damaged document, {number}: status {done.returncode}, {done.stderr}")
        refused += done.returncode
        if done.returncode == 0 and json.loads(done.stdout)["estimates"][0]["bridge"]["steps"]:
            fail(f"a damaged document, {number}: it is not itself")
    if refused < count / 2 or not whole:
        fail(f"{refused} of {count} damaged documents are refused")


def hold_sum(what, told, before, now):
    for name in FIELDS:
        added = sum((Fraction(step["adds"][name]) for step in told["steps"]), Fraction(0))
        if Fraction(told["came to"][name]) != before[name] or \
                Fraction(told["comes to"][name]) != now[name]:
            fail(f"{what}: {name} is not that of the quotes")
        if added != now[name] - before[name]:
            fail(f"{what}: the steps of {name} add up to {added}, not {now[name] - before[name]}")


def hold_steps(bench, what, told, older, edits):
    """Each step against files edited up to its group. edits: (group, edit, its seed)."""
    at, before, held = 0, bench.comes_to(older, "by-hand"), 0
    for step in told["steps"]:
        at = max(GROUPS.index(group) for group in step["groups"])
        files = older.copy()
        for group, edit, seed in edits:
            if GROUPS.index(group) <= at:
                edit(files, random.Random(seed))
        now = bench.comes_to(files, "by-hand")
        if now is None:
            fail(f"{what}: {step['groups']} is refused when edited by hand")
        for name in FIELDS:
            if Fraction(step["adds"][name]) != now[name] - before[name]:
                fail(f"{what}: {step['groups']} adds {step['adds'][name]} of {name}, the edited "
                     f"files {float(now[name] - before[name]):.2f}")
        before = now
        held += 1
    changed = {group for group, *_ in edits}
    if not changed <= {group for step in told["steps"] for group in step["groups"]}:
        fail(f"{what}: edited {changed}, told {[step['groups'] for step in told['steps']]}")
    return held


def one(bench, base, dice, number):
    """A random bridge. Gives the steps held by hand; None: the edits made no job."""
    edits, files = [], base.copy()
    for _ in range(dice.randint(1, 9)):
        edit, seed = dice.choice(EDITS), dice.random()
        trial = files.copy()
        group = edit(trial, random.Random(seed))
        # an edit by place is another one in another list: one of rows at a time
        rows = ("Rows taken off", "Rows changed", "Rows added")
        if group and not (number % 4 == 0 and group in rows and
                          any(g in rows for g, *_ in edits)):
            edits.append((group, edit, seed))
            files = trial
    files.rename(dice)
    before, now = bench.comes_to(base, "by-hand"), bench.comes_to(files, "by-hand")
    if before is None or now is None:
        return None
    what = f"bridge {number}, {[group for group, *_ in edits]}"
    told = bench.bridge(base, files)
    if told is None:
        fail(f"{what}: refused")
    hold_sum(what, told, before, now)
    if number % 4 == 1:  # and the way back
        told = bench.bridge(files, base)
        hold_sum(what + ", back", told, now, before)
    elif number % 6 == 2:
        hold_saved(bench, what, told, base, files)
    return hold_steps(bench, what, told, base, edits) if number % 4 == 0 else 0


def joined(bench, base):
    """All rows renamed: between the two the list is empty, so rows go off and on in one step."""
    files = base.copy()
    for row in files.rows:
        row[files.at("id")] += "x"
    told = bench.bridge(base, files)
    names = [step["groups"] for step in told["steps"]]
    if names != [["Rows taken off", "Rows added"]] or not told["steps"][0]["joined because"]:
        fail(f"an empty list in between: {names}")
    hold_sum("all renamed", told, bench.comes_to(base, "by-hand"), bench.comes_to(files, "by-hand"))
    files.rows.reverse()
    told = bench.bridge(base, base)
    if told["steps"]:
        fail("the same job twice has steps")


def main():
    program, tree = os.path.abspath(sys.argv[1]), sys.argv[2]
    count = int(sys.argv[3]) if len(sys.argv) > 3 else 60
    dice = random.Random(int(sys.argv[4]) if len(sys.argv) > 4 else 1)
    made = held = 0
    with tempfile.TemporaryDirectory() as folder:
        for name in os.listdir(os.path.join(tree, "rates")):
            shutil.copy(os.path.join(tree, "rates", name), folder)
        bench = Bench(program, folder)
        bases = [Files(tree, sample) for sample in SAMPLES]
        joined(bench, bases[0])
        hold_damaged(bench, bases[0], dice, count)
        for number in range(count * 2):
            steps = one(bench, dice.choice(bases), dice, number)
            made += 0 if steps is None else 1
            held += steps or 0
            if made == count:
                break
    if made < count or held == 0:
        fail(f"{made} bridges, {held} steps held")
    print(f"{made} bridges add up, {held} steps are what edited files come to")


main()
