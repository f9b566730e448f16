#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The chart of the work by day as poppler's programs read it, against `days --json`.

    days_chart.py DOORCOST JOB.ini [JOB.ini ...]

- each work of each row stands on paper with its hours, and its row with its name;
- each day with work heads a column, and each page begins with days, none with the notes alone;
- no letter is under 7 points; what is drawn is gray alone; pages are letter or A4, across.
"""
import os
import re
import subprocess
import sys
import tempfile
from collections import Counter

from told import fail, run

LEAST = 7  # points
WAITS = {"clamps": ", in clamps", "racks": ", dries", "finisher": ", away"}
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def told(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def plain(text):
    return re.sub(r"\s", "", text)


def hours(minutes):
    return f"{minutes}min" if minutes < 60 else f"{(minutes * 10 + 30) // 60 / 10:.1f}h"


def only_finish(plan):
    """The finish that all coats are of; None where there are several."""
    names = {work["of"].split(": ")[0] for row in plan["rows"] for work in row["work"] if work["of"] and ": " in work["of"]}
    return names.pop() if len(names) == 1 else None


def words_of(plan, row, work, finish):
    """A work in its cell: the only finish is told in the head alone."""
    letter = LETTERS[work["job"]] if len(plan["jobs"]) > 1 else ""
    short = work["of"] or ""
    if finish and short.startswith(finish):
        short = short[len(finish):].removeprefix(": ")
    of = f": {short}" if short else ""
    wait = WAITS[row["is"]] if work["waits"] else ""
    return plain(f"{letter}{work['operation']}{of}{wait},") + hours(work["minutes"])


def check_words(plan, text):
    finish = only_finish(plan)
    if finish and plain(f"Coats are of: {finish}.") not in text:
        fail(f"the head does not tell of '{finish}'")
    wanted = Counter(words_of(plan, row, work, finish) for row in plan["rows"] for work in row["work"])
    for words, count in wanted.items():
        if text.count(words) < count:
            fail(f"{words}: {text.count(words)} of {count} times on paper")
    for row in plan["rows"]:
        if plain(row["who"]) not in text:
            fail(f"{row['who']} has no row")


def check_pages(paper, plan):
    size = re.search(r"Page size: +([\d.]+) x ([\d.]+)", told("pdfinfo", paper))
    if (round(float(size[1])), round(float(size[2]))) not in ((792, 612), (842, 595)):
        fail(f"pages of {size[1]} x {size[2]}")
    letters = re.findall(r'<fontspec[^>]* size="(\d+)"',
                         told("pdftohtml", "-xml", "-i", "-zoom", "3", "-stdout", paper))
    if min(map(int, letters)) < 3 * LEAST:
        fail(f"letters of {min(map(int, letters)) / 3} points")
    pages = told("pdftotext", "-raw", paper, "-").split("\f")[:-1]
    for number, page in enumerate(pages[1:], 2):
        lines = page.strip().splitlines()
        if not re.match(r"(Mon|Tue|Wed|Thu|Fri|Sat|Sun) \d{4}-|Nothing is done", lines[0]):
            fail(f"page {number} begins with '{lines[0]}'")
    for day in {work["day"] for row in plan["rows"] for work in row["work"]}:
        if day not in "".join(pages):
            fail(f"{day} heads no column")
    return len(pages)


def check_gray(paper, folder):
    told("pdftoppm", "-r", "40", paper, f"{folder}/page")
    for name in os.listdir(folder):
        if name.endswith(".ppm"):
            with open(f"{folder}/{name}", "rb") as file:
                dots = file.read().split(b"\n255\n", 1)[1]
            if dots[0::3] != dots[1::3] or dots[1::3] != dots[2::3]:
                fail(f"{name}: not gray")


def main():
    doorcost, *jobs = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        paper = f"{folder}/work.pdf"
        plan = run(doorcost, "days", *jobs, "-o", paper)[0]["days"]
        check_words(plan, plain(told("pdftotext", "-raw", paper, "-")))
        pages = check_pages(paper, plan)
        check_gray(paper, folder)
    print(f"{sum(len(row['work']) for row in plan['rows'])} works on {pages} pages")


main()
