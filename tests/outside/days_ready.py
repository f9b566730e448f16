#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""`ready = planned`: the day that a quote promises is that of `doorcost days`.

    days_ready.py DOORCOST SAMPLES

With the day on which work may begin, and with the day on which the client took the job; as text and
on the client's papers, in words of Python's own calendar; with an option of its own; and nowhere
where `ready` is in words.
"""
import datetime
import os
import re
import subprocess
import sys

import openpyxl

from told import copied, fail, run

MONTHS = ("January February March April May June July August September October November "
          "December").split()


def words(text):
    day = datetime.date.fromisoformat(text)
    return f"{MONTHS[day.month - 1]} {day.day}, {day.year}"


def edit(path, ready, agreed):
    with open(path, encoding="utf-8") as file:
        text = file.read()
    text = re.sub(r"(?m)^(ready|agreed) *=.*\n", "", text)
    more = f"ready = {ready}\n" + (f"agreed = {agreed}\n" if agreed else "")
    with open(path, "w", encoding="utf-8") as file:
        file.write(text.replace("[job]\n", "[job]\n" + more, 1))


def quoted(doorcost, job, folder, *more):
    """`ready` of the head as text, and all texts of the client's papers."""
    book = os.path.join(folder, "q.xlsx")
    head = subprocess.run([doorcost, "quote", job, "--all", "-o", book, "--effort", "1", *more],
                          capture_output=True, text=True, check=True).stdout
    page = subprocess.run(["pdftotext", "-raw", f"{folder}/q-client.pdf", "-"], capture_output=True,
                          text=True, check=True).stdout
    cells = [str(cell.value) for sheet in openpyxl.load_workbook(f"{folder}/q-client.xlsx")
             for row in sheet.iter_rows() for cell in row]
    found = re.search(r"(?m)^  ready +(.*)$", head)
    return found[1], re.sub(r"\s+", " ", page), cells


def check(doorcost, job, folder, begins, *more):
    """begins: the day that is promised with the other; None: it is no condition."""
    text, page, cells = quoted(doorcost, job, folder, *more)
    plan = run(doorcost, "days", job, *more)[0]["days"]
    promised = words(plan["ready"]) + (f", if work begins by {words(begins)}" if begins else "")
    if not text.startswith(plan["ready"] + ", planned"):
        fail(f"{text}, planned {plan['ready']}")
    if promised not in page or promised not in cells:
        fail(f"'{promised}' is not on the client's papers")
    return plan


def main():
    doorcost, samples = sys.argv[1:]
    with copied(samples) as folder:
        job = os.path.join(folder, "samples/kitchen/kitchen.ini")
        edit(job, "planned from 2026-06-03", None)
        plan = check(doorcost, job, folder, "2026-06-03")
        if plan["from"] != "2026-06-03":
            fail(f"begins {plan['from']}")
        check(doorcost, job, folder, "2026-06-03", "--option", "maple")
        edit(job, "planned", "as listed, 2026-05-04")
        if check(doorcost, job, folder, None)["from"] != "2026-05-04":
            fail("does not begin when the client took the job")
        edit(job, "planned from 2026-06-03", "as listed, 2026-05-04")
        check(doorcost, job, folder, "2026-06-03")
        edit(job, "before the planned feast", None)
        if quoted(doorcost, job, folder)[0] != "before the planned feast":
            fail("words are taken for a plan")


main()
