#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The shop's workbook lives: what is changed in its cells, and what the program makes of the same
change in its files, are the same to the cent.

    live.py DOORCOST unchanged     recalculated as it was opened, nothing changes
    live.py DOORCOST changes       some hundred random changes, each made in both places
    live.py DOORCOST big           a job of 2,000 rows

A change is made on the line that the sheet Rates names and, in the workbook as it was, in the cell
that bears the line's name.  LibreOffice recalculates; the cells are then held against the workbook
that the program writes for the changed files.  Where a choice of the program (containers, cutting
plans) comes out otherwise, the check cells must say `run again`; where they don't, all must agree.
Exit status 0: so it is.
"""
import argparse
import csv
import itertools
import json
import pathlib
import random
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from fractions import Fraction

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
from office import Office
from sheets import File, name_of

TOP = pathlib.Path(__file__).resolve().parents[2]
SEED = 20260302
LEAST = 5  # changes of each kind
FLIPS = 25  # changes at least that make the program choose otherwise
AGAIN = "run again"
MADE = "as the program made it"
# Sheets that show plans, on which a plan that does not price the job may be out of date.
WORDY = ("Buy", "Quote", "Doors", "Lumber", "Sheets", "Finish", "Hardware", "Labor", "Operations", "Costs",
         "Prices")
# Columns that say what a number was when the workbook was made.
WAS = (("Rates", 7), ("Checks", 3))
OF_PLANS = ("Buy", "Checks", "Lumber", "Sheets", "Plans", "Workings", "Rates")

# Cautions name what is heavy with its weight as it was when the workbook was made.
WEIGHT = re.compile(r" \(\d+\.\d+ (?:kg|lb)\)")

# The jobs, each with what is changed in its files to begin with: (file, pattern, replacement).
BY_PLAN = (("rates/small-shop.ini", r"(?m)^(price (?:lumber|sheets) by +=) factor", r"\1 plan"),)
JOBS = {
    "metric": ("samples/metric/tea-kitchen.ini", ()),
    "old-house": ("samples/old-house/old-house.ini", ()),
    "kitchen": ("samples/kitchen/kitchen.ini", ()),
    "old-house-plan": ("samples/old-house/old-house.ini", BY_PLAN),
}

# How often a change is made in each: a run of the small one takes a third of the time.
WEIGHTS = {"metric": 5, "old-house": 2, "kitchen": 1, "old-house-plan": 2}

# Kinds of inputs by section and key; the first that fits.
KINDS = (
    ("container", r"(coating|additive) .*\.sizes"),
    ("lumber price", r"lumber .*\.price$"),
    ("lumber price break", r"lumber .*\.price from"),
    ("minimum", r"(lumber|glass|shop).*\.minimum"),
    ("lumber waste", r"lumber .*\.waste"),
    ("defects", r"lumber .*\.defects"),
    ("sheet price", r"sheet .*\.price"),
    ("half sheet price", r"sheet .*\.half sheet"),
    ("sheet waste", r"sheet .*\.waste"),
    ("banding", r"banding "),
    ("glass price", r"glass .*\.(price|stops)"),
    ("weight and moisture", r".*\.density|hinges\.|climate\."),
    ("bought in", r"door .*\.bought in|finish .*\.put out"),
    ("machine rate", r"machine .*\.rate"),
    ("labor rate", r".*\.labor rate"),
    ("minutes", r"operation .*\.minutes"),
    ("handling", r"operation .*\.handling"),
    ("feed", r"operation .*\.feed"),
    ("set-up", r"operation .*\.setup"),
    ("coverage", r"coating .*\.coverage"),
    ("wet film", r"coating .*\.wet film"),
    ("solids", r"coating .*\.solids"),
    ("reducer and catalyst", r"coating .*\.(reducer|catalyst)"),
    ("days", r"coating .*\.dry|shop\.hours per day"),
    ("transfer efficiency", r"spray .*\.transfer efficiency"),
    ("other loss", r"spray .*\.other loss"),
    ("fixed loss", r"spray .*\.fixed loss"),
    ("mix size", r"spray .*\.mix size"),
    ("hardware price", r"hardware .*\.price"),
    ("spares", r"hardware .*\.spares"),
    ("consumable", r"consumable "),
    ("sale", r"sale\.(charges|delivery|stages)"),
    ("tax", r"sale\.tax"),
    ("discount", r"sale\.discount"),
    ("deposit", r"sale\.deposit"),
    ("card fee", r"sale\.card fee"),
    ("markup", r"markup\."),
)
# What flips containers, most of the time.
FINISH = ("container", "coverage", "wet film", "reducer and catalyst", "transfer efficiency",
          "fixed loss", "mix size", "other loss")


def kind_of(section, key):
    name = f"{section}.{key}"
    for kind, pattern in KINDS:
        if re.match(pattern, name):
            return kind
    return key  # of [shop], each by itself: overhead, profit, contingency ...


class Faults:
    """What is wrong, each said once; of one kind no more than eight are printed."""

    def __init__(self):
        self.counts = Counter()

    def add(self, kind, text):
        self.counts[kind] += 1
        if self.counts[kind] <= 8:
            print(f"{kind}: {text}", flush=True)

    def expect(self, truth, kind, text):
        if not truth:
            self.add(kind, text)

    def status(self):
        for kind, count in self.counts.items():
            print(f"{count} x {kind}")
        return 1 if self.counts else 0


class Run:
    """What the program makes of a job: its workbook, and what it chose."""

    def __init__(self, doorcost, job, path, *more):
        result = subprocess.run(
            [doorcost, "quote", str(job), "--effort", "0", "--json", "--force", "-o", str(path), *more],
            capture_output=True, text=True, check=False, timeout=300)
        self.done = result.returncode == 0
        self.error = result.stderr
        if not self.done:
            return
        figures = json.loads(result.stdout)["estimates"][0]["tape"]["figures"]
        self.chosen = [(f["subject"], f["chooser"], f["output"], f["shown"])
                       for f in figures if f["op"] == "chosen"]
        self.file = File(path)


class Input:
    """A cell that may be changed and the number in a file that it comes from."""

    def __init__(self, name, at, path, line, nth, section, key):
        self.name, self.at, self.path, self.line, self.nth = name, at, path, line, nth
        self.kind = kind_of(section, key)


NUMBER = re.compile(r"(?<![\w.])\d+(?:\.\d+)?(?![\w.]*\d)")


def number_on(line, nth):
    """Where the nth number of a line's value stands: (start, end)."""
    begin = line.index("=") + 1
    end = line.find(";", begin)
    found = list(NUMBER.finditer(line, begin, end if end >= 0 else len(line)))
    return found[nth].span() if nth < len(found) else None


def inputs_of(file, folder):
    """The inputs of a workbook, from its sheet Rates."""
    inputs = []
    for name, at in sorted(file.names.items(), key=lambda item: item[1]):
        sheet, row, _ = at
        if sheet != "Rates" or not name.startswith("in_") or not file.open(at):
            continue
        section, key, source = (file.cells[(sheet, row, c)].value for c in (0, 1, 5))
        path, line = re.fullmatch(r"(.*):(\d+)(?:, learned [-\d]+)?", source).groups()
        nth = re.search(r"_([2-9]|[1-9][0-9])$", name)
        same = nth and name[:nth.start()] in file.names and \
            file.cells[(sheet, file.names[name[:nth.start()]][1], 5)].value == source
        inputs.append(Input(name, at, (folder / path).resolve(), int(line) - 1,
                            int(nth.group(1)) - 1 if same else 0, section.strip("[]"), key))
    return inputs


def compare_cells(rows, file, tolerance, skip=frozenset()):
    """The cells of an open workbook that differ from those of a file."""
    wrong = []
    for at, cell in file.cells.items():
        if at in skip or not cell.number:
            continue
        sheet, row, column = at
        there = rows.get(sheet, ())
        got = there[row][column] if row < len(there) and column < len(there[row]) else ""
        if not isinstance(got, float):
            same = False
        elif file.money(at):
            same = round(got * 100) == round(cell.value * 100)
        else:
            same = abs(got - cell.value) <= tolerance * max(1.0, abs(cell.value))
        if not same:
            wrong.append((at, got, cell.value))
    return wrong


def last_row(file, sheet):
    return max((at[1] for at in file.cells if at[0] == sheet), default=0)


class Job:
    """A job copied into a folder of its own, its workbook as it was, open in the office."""

    def __init__(self, doorcost, office, folder, name, faults):
        path, changes = JOBS[name]
        self.doorcost, self.faults, self.name = doorcost, faults, name
        self.folder = folder / name
        for part in ("samples", "rates"):
            shutil.copytree(TOP / part, self.folder / part)
        for file, pattern, text in changes:
            at = self.folder / file
            made, count = re.subn(pattern, text, at.read_text(encoding="utf-8"))
            assert count > 0, f"{file}: nothing to replace"
            at.write_text(made, encoding="utf-8")
        self.job = self.folder / path
        self.base = Run(doorcost, self.job, self.folder / "base.xlsx")
        if not self.base.done:
            sys.exit(self.base.error)
        self.file = self.base.file
        self.book = office.open(self.folder / "base.xlsx")
        self.inputs = inputs_of(self.file, self.job.parent)  # files are named from the job on
        self.checks = [at for at, cell in self.file.cells.items()
                       if cell.formula and AGAIN in cell.formula and not cell.number]
        self.frozen = self.find_frozen()
        self.agreed = 0

    def find_frozen(self):
        """Cells of the options, which were estimated apart, and what is made from them."""
        frozen = {at for at, c in self.file.cells.items()
                  if at[0] in ("Quote", "Charts") and c.number
                  and (c.formula is None or c.formula.startswith("Compare!"))}
        frozen |= {at for at, c in self.file.cells.items()
                   if c.number and (at[0], at[2]) in WAS and c.formula is None}
        frozen |= {at for at, c in self.file.cells.items() if at[0] == "Checks" and c.formula
                   and c.formula.startswith("COUNTIF(")}
        frozen |= {at for at, c in self.file.cells.items() if at[0] == "Compare" and c.number
                   and (c.formula is None or c.formula.startswith(("ROUND(", "IF(")))}
        return frozen

    def at(self, at):
        return f"{self.name}: {name_of(at)}"

    def layout(self, file):
        """Whether two workbooks have their numbers in the same cells."""
        ours = {at for at, c in self.file.cells.items() if c.number}
        theirs = {at for at, c in file.cells.items() if c.number}
        return sorted(at for at in ours ^ theirs if at[0] != "Compare")

    def unchanged(self):
        """Nothing changes by recalculation; sheets are protected without a password."""
        self.book.recalculate()
        wrong = compare_cells(self.book.rows(), self.file, 1e-9)
        for at, got, wanted in wrong[:8]:
            self.faults.add("recalculated, another value", f"{self.at(at)}: {got}, was {wanted}")
        for where in self.book.errors():
            self.faults.add("an error value", f"{self.name}: {where}")
        for name, sheet in self.book.sheets.items():
            self.faults.expect(sheet.isProtected(), "a sheet not protected", f"{self.name}: {name}")
        self.faults.expect(self.checks, "no check cell", self.name)
        return len(wrong)

    def said(self, rows):
        """What the check cells say: whether the job is to be run again, whether a plan that does
        not price it is."""
        job, plan, quote, options = set(), set(), set(), set()
        for at in self.checks:
            text = rows[at[0]][at[1]][at[2]]
            if text == AGAIN:
                job.add(at)
            elif text == "plan: " + AGAIN:
                plan.add(at)
            elif "options" in text:
                options.add(AGAIN in text)
            elif AGAIN in text:
                quote.add(at)
        self.faults.expect(bool(job) == bool(quote), "the quote's check says other than the rest",
                           f"{self.name}: {[name_of(at) for at in job | quote]}")
        return bool(job), bool(plan), options

    def words(self, rows, file, about, passed):
        """Words with numbers in them follow as well; what the reader asks stands on Checks."""
        for at, cell in file.cells.items():
            ours = self.file.cells.get(at)
            if at[0] not in WORDY or at[0] in passed or cell.number or ours is None:
                continue
            there = rows[at[0]][at[1]][at[2]]
            if WEIGHT.sub("", str(there)) != WEIGHT.sub("", str(cell.value)) and ours.value != cell.value:
                self.faults.add("words that do not follow", f"{about}: {name_of(at)}: "
                                f"{there!r}, program {cell.value!r}")

    def run_changed(self, what, value, number):
        """The program's run on files with one number changed, in a folder of its own."""
        folder = self.folder.with_name(f"{self.name}-{number}")
        text = what.path.read_text(encoding="utf-8")
        lines = text.split("\n")
        begin, end = number_on(lines[what.line], what.nth)
        lines[what.line] = lines[what.line][:begin] + value + lines[what.line][end:]
        shutil.copytree(self.folder, folder, ignore=shutil.ignore_patterns("*.xlsx", "*.pdf"))
        (folder / what.path.relative_to(self.folder)).write_text("\n".join(lines), encoding="utf-8")
        run = Run(self.doorcost, folder / self.job.relative_to(self.folder), folder / "changed.xlsx")
        shutil.rmtree(folder)
        return run

    def change(self, what, old, value, run):
        """Makes a change in the workbook, too. What came of it: 'same' when all cells agree and
        nothing is to be run again; 'refused': the program refuses such a number."""
        if not run.done:
            return "refused"
        about = f"{self.name}: {what.name} {old:g} -> {value}"
        moved = what.at not in run.file.cells or \
            run.file.cells[what.at].value == self.file.cells[what.at].value
        self.faults.expect(not moved, "the line named is not the cell's", about)
        return "refused" if moved else self.hold(what, run, about)

    def hold(self, what, run, about):
        sheet, row, column = what.at
        self.book.set(sheet, row, column, run.file.cells[what.at].value)
        rows = self.book.rows()
        errors = self.book.errors()
        again, plan, options = self.said(rows)
        changed = [at for at, c in self.file.cells.items()
                   if c.value == "as read" and rows[at[0]][at[1]][at[2]] != "as read"]
        states = {rows[at[0]][at[1]][at[2]] for at, c in self.file.cells.items()
                  if c.value == MADE and c.formula}
        self.faults.expect(states and MADE not in states, "the quote's state does not follow",
                           f"{about}: {states}")
        self.book.set(sheet, row, column, self.file.cells[what.at].value)
        flipped = run.chosen != self.base.chosen
        for where in errors:
            self.faults.add("an error value", f"{about}: {where}")
        self.faults.expect(again or plan or not flipped, "chosen otherwise and no check says so", about)
        self.faults.expect([at[:2] for at in changed] == [what.at[:2]] and False not in options,
                           "not marked as changed", f"{about}: {len(changed)} marks")
        if not again:
            # what the program asks of the new number moves the rows of Checks below it
            apart = (OF_PLANS if plan else ()) + (
                ("Checks",) if last_row(self.file, "Checks") != last_row(run.file, "Checks") else ())
            other = [at for at in self.layout(run.file) if at[0] not in apart]
            if other:
                self.faults.add("another layout", f"{about}: {len(other)} cells, first "
                                f"{name_of(other[0])}")
            frozen = self.frozen | {at for at in run.file.cells
                                    if at[0] == "Compare" and at not in self.file.cells}
            wrong = compare_cells(rows, run.file, 1e-6, frozen) if not other else []
            if not other:
                self.words(rows, run.file, about, apart)
            wrong = [w for w in wrong if w[0][0] not in apart]
            if wrong:
                at, got, wanted = wrong[0]
                self.faults.add("differs", f"{about}: {len(wrong)} cells, first {name_of(at)}: "
                                f"{got}, program {wanted}")
            else:
                self.agreed += 1
        return ("flipped" if again else "plan flipped") if flipped else \
            "again" if again else "plan again" if plan else "same"


def new_value(rng, what, old, wide):
    """Another number for an input, written as in the files."""
    if wide:
        value = old * rng.choice((0.35, 0.5, 0.65, 0.8, 1.25, 1.5, 1.8, 2.4, 3))
    elif rng.random() < 0.12:
        value = 0
    else:
        value = old * rng.choice((0.6, 0.8, 0.9, 0.97, 1.03, 1.1, 1.3, 1.7)) or rng.choice((1, 2.5, 5))
    return f"{value:.2f}".rstrip("0").rstrip(".") if value >= 0.05 or value == 0 else f"{value:.4f}"


def changes(doorcost, office, folder, faults, only):
    rng = random.Random(SEED)
    jobs = [Job(doorcost, office, folder, name, faults) for name in JOBS if only in ("", name)]
    for job in jobs:
        job.unchanged()
    kinds = {}
    for job in jobs:
        for what in job.inputs:
            kinds.setdefault(what.kind, []).append((job, what))
    made, outcomes = Counter(), Counter()
    numbers = itertools.count()

    def drawn(kind, wide):
        weights = [WEIGHTS[job.name] for job, _ in kinds[kind]]
        job, what = rng.choices(kinds[kind], weights)[0]
        line = what.path.read_text(encoding="utf-8").split("\n")[what.line]
        span = number_on(line, what.nth)
        if span is None:
            faults.add("no number on the line", f"{job.name}: {what.name}: {line}")
            return None
        old = float(line[slice(*span)])
        value = new_value(rng, what, old, wide)
        return None if float(value) == old else (job, what, old, value)

    def make(draws):
        draws = [draw for draw in draws if draw is not None]
        runs = pool.map(lambda d: d[0].run_changed(d[1], d[3], next(numbers)), draws)
        for (job, what, old, value), run in zip(draws, runs, strict=True):
            outcome = job.change(what, old, value, run)
            outcomes[outcome] += 1
            made[what.kind] += outcome != "refused"

    with ThreadPoolExecutor(2) as pool:
        for _ in range(6):
            make([drawn(kind, False) for kind in kinds for _ in range(LEAST - made[kind])])
        finish = [kind for kind in FINISH if kind in kinds]
        for _ in range(20):
            if outcomes["flipped"] < FLIPS:
                make([drawn(rng.choice(finish), True) for _ in range(6)])
    for job in jobs:
        for at, got, wanted in compare_cells(job.book.rows(), job.file, 1e-9):
            faults.add("changed back, another value", f"{job.at(at)}: {got}, was {wanted}")
        job.book.close()
    total = sum(made.values())
    print(", ".join(f"{kind} {count}" for kind, count in sorted(made.items())))
    print(f"{total} changes of {len(made)} kinds in {len(jobs)} jobs: {dict(outcomes)}; "
          f"{sum(job.agreed for job in jobs)} workbooks held cell by cell, all alike")
    if only == "":
        faults.expect(total >= 200, "too few changes", str(total))
        faults.expect(outcomes["flipped"] >= 20, "too few that are chosen otherwise", str(outcomes))
        for kind in kinds:
            faults.expect(made[kind] >= LEAST, "a kind too seldom", f"{kind}: {made[kind]}")


def unchanged(doorcost, office, folder, faults, only):
    for name in JOBS:
        if only in ("", name):
            job = Job(doorcost, office, folder, name, faults)
            job.unchanged()
            print(f"{name}: {len(job.file.cells)} cells, {len(job.inputs)} inputs")
            job.book.close()


def big_job(folder, rows):
    """The kitchen's rows over and over, every one of another size."""
    rng = random.Random(SEED)
    for part in ("samples", "rates"):
        shutil.copytree(TOP / part, folder / part)
    path = folder / "samples/kitchen/doors.csv"
    with open(path, encoding="utf-8", newline="") as lines:
        table = list(csv.reader(lines))
    head, given = table[0], [row for row in table[1:] if row]
    width, height = head.index("width"), head.index("height")
    made = [head]
    for n in range(rows):
        row = list(given[n % len(given)])
        row[0] = f"D{n + 1:04d}"
        row[head.index("rows")] = ""  # heights of rows would have to be scaled, too
        for column in (width, height):
            row[column] = str(round(inches(row[column]) * rng.uniform(0.9, 1.1) * 16) / 16)
        made.append(row)
    with open(path, "w", encoding="utf-8", newline="") as out:
        csv.writer(out).writerows(made)
    return folder / "samples/kitchen/kitchen.ini"


def inches(text):
    """17 1/4 as a number."""
    return float(sum(Fraction(word) for word in text.split()))


def big(doorcost, office, folder, faults, rows):
    job = big_job(folder / "big", int(rows or 2000))
    path = folder / "big.xlsx"
    begun = time.monotonic()
    result = subprocess.run([doorcost, "quote", str(job), "--effort", "0", "--json", "-o", str(path)],
                            capture_output=True, text=True, check=False, timeout=600)
    wrote = time.monotonic() - begun
    if result.returncode != 0:
        sys.exit(result.stderr[-2000:])
    file = File(path)
    plain = Counter(at[0] for at, c in file.cells.items() if c.number and c.formula is None)
    long = max(len(c.formula) for c in file.cells.values() if c.formula)
    figures = json.loads(result.stdout)["estimates"][0]["tape"]["figures"]
    computed = sum(f["op"] not in ("given", "chosen") for f in figures)
    makers = sum(1 for at, c in file.cells.items()
                 if c.formula and c.formula.startswith("ROUND(") and at[0] != "Compare")
    faults.expect(makers == computed, "computed figures that are no formula",
                  f"{computed} figures, {makers} formulas")
    print(f"written in {wrote:.1f} s, {path.stat().st_size / 1e6:.1f} MB, {len(file.cells)} cells, "
          f"longest formula {long} characters, plain numbers {dict(plain)}")
    begun = time.monotonic()
    book = office.open(path)
    loaded = time.monotonic()
    book.recalculate()
    calculated = time.monotonic()
    for at, got, wanted in compare_cells(book.rows(), file, 1e-6):
        faults.add("recalculated, another value", f"{name_of(at)}: {got}, was {wanted}")
    for where in book.errors():
        faults.add("an error value", where)
    at = file.names["in_shop_labor_rate"]
    changed = time.monotonic()
    book.set(*at, file.cells[at].value + 1)
    changed = time.monotonic() - changed
    book.set(*at, file.cells[at].value)
    sheets = book.document.Sheets
    for name in sheets.ElementNames:
        if name != "Quote":
            sheets.getByName(name).IsVisible = False
    printed = time.monotonic()
    book.save_as(folder / "big.pdf", "calc_pdf_Export")
    printed = time.monotonic() - printed
    book.close()
    text = subprocess.run(["pdftotext", "-layout", str(folder / "big.pdf"), "-"],
                          capture_output=True, text=True, check=False).stdout
    faults.expect("###" not in text and "D2000" in text or rows, "a page cut", text[:200])
    print(f"LibreOffice: opened in {loaded - begun:.1f} s, recalculated in "
          f"{calculated - loaded:.1f} s, a change {changed:.2f} s, quote to PDF {printed:.1f} s, "
          f"{text.count(chr(12))} pages")


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("doorcost", type=pathlib.Path)
    parser.add_argument("what", choices=("unchanged", "changes", "big"))
    parser.add_argument("job", nargs="?", default="", help="one of the jobs only; of big: so many rows")
    given = parser.parse_args()
    faults = Faults()
    begun = time.monotonic()
    signal.signal(signal.SIGTERM, lambda *_: sys.exit("stopped"))  # the office goes, too
    with tempfile.TemporaryDirectory(prefix="doorcost-live-") as folder, Office() as office:
        test = {"unchanged": unchanged, "changes": changes, "big": big}[given.what]
        test(given.doorcost.resolve(), office, pathlib.Path(folder), faults, given.job)
    print(f"{time.monotonic() - begun:.0f} s")
    return faults.status()


if __name__ == "__main__":
    sys.exit(main())
