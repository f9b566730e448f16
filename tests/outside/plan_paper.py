#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The paper of the cutting plans against the plans as programs get them.

    plan_paper.py DOORCOST JOB.ini PAGES
    plan_paper.py DOORCOST odd FOLDER

Reads the PDF of `plan -o` with poppler's programs: it has PAGES pages at most, no letter under 7
points, every part with its pieces on the list, every piece that is drawn with its number, and what is
to fetch is what the plan buys; boards that are cut alike stand there once, and their counts add up.
odd: jobs made of the sample in FOLDER that strain it: crosscut first, sheets that stand, long names
and such from right to left, sheets full of small parts.  Exit status 0: all is well.
"""
import collections
import csv
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

from client_words import words_of

LEAST = 7  # points
HEAD = re.compile(r"((?:boards?|half sheets?|sheets?|rack boards?|rack sheets?|rack offcuts?)) (\d+)(?: (?:and|to) (\d+))? of (\d+), [^\n,]*"
                  r"(?:, (\d+) alike)?")
FETCH = re.compile(r"(?<![\d/])(\d+) (board|half sheet|sheet|rack board|rack sheet|rack offcut)s? of ")


def fail(text):
    sys.exit(f"plan_paper.py: {text}")


def told(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def plain(text):
    return re.sub(r"\s", "", text)


def kind_of(noun):
    """Offcuts of boards and of sheets have one name on paper."""
    return "offcuts" if "offcut" in noun else "lumber" if "board" in noun else "sheets"


def read_plans(plans):
    """Pieces by name, drawn pieces by name, and per kind of stock: boards bought, boards with their copies."""
    wanted, drawn, bought, copies = (collections.Counter() for _ in range(4))
    for kind, list_of in (("lumber", "boards cut"), ("sheets", "sheets cut")):
        for plan in plans[kind]:
            if plan["missing"]:
                continue
            for size in plan["sizes"]:
                bought["offcuts" if size.get("sawn") else kind] += int(size.get("from the rack", size.get("to buy"))["value"])
            for stock in plan[list_of]:
                copies["offcuts" if plan["sizes"][stock["size"]].get("sawn") else kind] += stock["copies"]
                parts = ([p for strip in stock.get("strips", stock.get("segments", [])) for p in strip["parts"]] if kind == "lumber"
                         else [n for n in stock["nodes"] if n["becomes"] == "part"])
                for part in parts:
                    drawn[plain(part["name"])] += 1
                    wanted[plain(part["name"])] += stock["copies"]
    return wanted, drawn, bought, copies


def check_parts(text, wanted, drawn):
    """Every part is on the list with its pieces, and its number on each piece that is drawn."""
    start = text.index("Parts by number")
    end = re.search(r"Offcuts to keep|" + HEAD.pattern, text[start:])
    listed = plain(text[start:start + end.start()])
    names = sorted(wanted, key=len, reverse=True)
    numbers, pieces = collections.defaultdict(set), collections.Counter()
    for found in re.finditer(r"(?:(\d+)x)?#(\d+)", listed):
        rest = listed[found.end():]
        name = next((n for n in names if rest.startswith(n)), None)
        if name is not None:
            numbers[name].add(found[2])
            pieces[name] += int(found[1] or 1)
    shown = collections.Counter(re.findall(r"#(\d+)(?![\d])", text))
    seen = 0
    for name in names:
        if not name.isascii():
            continue  # poppler tells what runs from right to left in another order
        if pieces[name] != wanted[name]:
            fail(f"{name}: {pieces[name]} of {wanted[name]} pieces are on the list")
        count = sum(shown[n] for n in numbers[name])
        if count < drawn[name] + 2 * len(numbers[name]):  # on the list, in the cuts, and on each piece
            fail(f"{name}: {drawn[name]} drawn, but {count} times on paper")
        seen += drawn[name]
    if "too small for" in text:
        fail("a part has no number in its drawing")
    return seen


def check_stock(text, bought, copies):
    fetched, heads = collections.Counter(), collections.Counter()
    for count, noun in FETCH.findall(text[:text.index("Parts by number")]):
        fetched[kind_of(noun)] += int(count)
    for noun, first, last, _, alike in HEAD.findall(text):
        many = int(last or first) - int(first) + 1
        if many != int(alike or 1):
            fail(f"{noun} {first} to {last}: {alike} alike")
        heads[kind_of(noun)] += many
    for kind in ("lumber", "sheets", "offcuts"):
        if not fetched[kind] == heads[kind] == copies[kind] == bought[kind]:
            fail(f"{kind}: {fetched[kind]} to fetch, {heads[kind]} drawn, {bought[kind]} bought")


def check_columns(words):
    """Columns of a list begin on one line, whether with a material or without."""
    tops = sorted(word[2] for word in words)
    for title in ("fetch", "width", "first", "keep"):
        below = [bottom for text, _, _, _, bottom in words if text == title]
        first = min((top for top in tops if below and top > below[0] - 1), default=None)
        near = [top for top in tops if first is not None and first + 0.5 < top < first + LEAST]
        if near:
            fail(f"below '{title}' columns begin at {first} and {near[0]}")


def check_last(text):
    """Nothing stands alone on the last page while two or more things stand on the one before."""
    heads = [len(HEAD.findall(page)) for page in text.split("\f")[:-1]]
    if len(heads) > 1 and heads[-1] == 1 and heads[-2] > 1:
        fail(f"one board or sheet alone on the last page: {heads}")


def check(program, job, most, *more):
    with tempfile.TemporaryDirectory() as folder:
        paper = f"{folder}/plan.pdf"
        plans = json.loads(told(program, "plan", str(job), "--json", "-o", paper, *more))
        plans = plans["estimates"][0]["plans"]
        text = told("pdftotext", "-raw", paper, "-")
        check_columns(next(iter(words_of(paper))))
        pages = int(re.search(r"Pages:\s+(\d+)", told("pdfinfo", paper))[1])
        sizes = re.findall(r'<fontspec[^>]* size="(\d+)"',
                           told("pdftohtml", "-xml", "-i", "-zoom", "3", "-stdout", paper))
    if pages > most:
        fail(f"{job}: {pages} pages")
    if min(map(int, sizes)) < 3 * LEAST:
        fail(f"{job}: letters of {min(map(int, sizes)) / 3} points")
    if not more:
        check_last(text)  # of odd jobs a sheet may fill a page
    wanted, drawn, bought, copies = read_plans(plans)
    seen = check_parts(text, wanted, drawn)
    check_stock(text, bought, copies)
    print(f"{pathlib.Path(job).name}: {seen} pieces on {pages} pages")


# --- odd jobs ---

NAMES = ["A door at the far end of the long wall beside the window, which opens against the old range",
         "\u05d3\u05dc\u05ea \u05e9\u05de\u05d0\u05dc",
         "\u0628\u0627\u0628", "W" * 90]
WIDE = "\u6771\u5074\u306e\u6249"  # without a typeface that has it, its codes are shown, in small figures


def write_odd(folder, sample, changes):
    shutil.copytree(sample.parent.parent, folder / "samples")
    shutil.copytree(sample.parent.parent.parent / "rates", folder / "rates")
    home = folder / "samples" / sample.parent.name
    with open(home / "doors.csv", encoding="utf-8", newline="") as file:
        head = next(csv.reader(file))
    rows = [{"id": name, "use": "door", "count": 1 + i % 3, "width": 12 + i, "height": 20 + 2 * i}
            for i, name in enumerate(NAMES)]
    rows += [{"id": f"K{i:02}", "use": "drawer front", "count": 12, "width": 4 + i % 4,
              "height": 3 + i % 3, "pull": "none"} for i in range(10)]
    rows += [{"id": "B1", "use": "door", "count": 18, "width": 10, "height": 14}]
    with open(home / "doors.csv", "w", encoding="utf-8", newline="") as file:
        out = csv.DictWriter(file, head)
        out.writeheader()
        out.writerows({**row, "leaves": 1} for row in rows)
    rates = folder / "rates" / "small-shop.ini"
    text = rates.read_text(encoding="utf-8")
    for pattern, other in changes:
        text, count = re.subn(pattern, other, text, flags=re.M)
        if count == 0:
            fail(f"no '{pattern}' in the rates")
    rates.write_text(text, encoding="utf-8")
    return home / "kitchen.ini"


def odd(program, folder):
    sample = pathlib.Path(folder).resolve() / "kitchen.ini"
    for changes in ([], [(r"^(first cut *= )rip", r"\1crosscut"), (r"^(size *= )49 x 97", r"\g<1>97 x 49")]):
        with tempfile.TemporaryDirectory() as work:
            check(program, write_odd(pathlib.Path(work), sample, changes), 12, "--effort", "20")


if sys.argv[2] == "odd":
    odd(sys.argv[1], sys.argv[3])
else:
    check(sys.argv[1], sys.argv[2], int(sys.argv[3]))
