#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""A list to fill in: tests/outside/list_filled.py PROGRAM SAMPLES

What `new --list` writes is filled in by openpyxl, and saved anew by LibreOffice as .xlsx and .ods; each is read as the rows that were put in, the
row that shows how is not. The checks in the cells, as openpyxl finds them, are those of the reader: what they take it reads, what lies beyond it refuses.
"""
import json
import os
import shutil
import subprocess
import sys
import tempfile

import openpyxl
from openpyxl.utils import range_boundaries

from told import fail

PROGRAM, SAMPLES = sys.argv[1:3]
ROWS = {"in": [{"id": "K1", "room": "galley", "use": "door", "count": 2, "width": 15.25, "height": 30, "hinge side": "left", "note": "by the range"},
               {"id": "K2", "use": "drawer front", "width": 15.25, "height": 6.4375, "style": "slab", "finish": "clear"},
               {"id": "K3", "width": 33, "height": 24.015625, "leaves": 2, "glass": "reeded", "style": "shaker-glass"}],
        "mm": [{"id": "船 1", "room": "台所", "count": 2, "width": 394.5, "height": 762, "hinge side": "right"},
               {"id": "K2", "use": "drawer front", "width": 394.5, "height": 160, "style": "slab"}]}


def run(folder, *words, status=0):
    done = subprocess.run([PROGRAM, *words], cwd=folder, capture_output=True, text=True, check=False, stdin=subprocess.DEVNULL)
    if done.returncode != status:
        fail(f"{words}: status {done.returncode}\n{done.stdout}{done.stderr}")
    return done


def fill(folder, rows):
    """Puts rows into doors.xlsx; what its cells take, by heading."""
    path = os.path.join(folder, "doors.xlsx")
    book = openpyxl.load_workbook(path)
    sheet = book.worksheets[0]
    heads = {cell.value: cell.column for cell in sheet[3]}
    if sheet.cell(4, heads["id"]).value != "example":
        fail("the row that shows how is not the first")
    for number, row in enumerate(rows):
        for head, value in row.items():
            sheet.cell(5 + number, heads[head]).value = value
    book.save(path)
    checks = {}
    for check in sheet.data_validations.dataValidation:
        left, top, right, bottom = range_boundaries(str(check.sqref))
        if left != right or top != 5 or bottom < 400:
            fail(f"a check stands at {check.sqref}")
        name = next(head for head, column in heads.items() if column == left)
        choices = None
        if check.type == "list":
            choices = [cell[0].value for cell in book["Choices"][check.formula1.partition("!")[2].replace("$", "")]]
        checks[name] = (check.type, check.formula1, check.formula2, choices)
    return checks


def check_looks(folder, checks):
    """Words behind a number stand clear of it; the sheet of choices shows the columns that have some."""
    book = openpyxl.load_workbook(os.path.join(folder, "doors.xlsx"))
    heads = list(book.worksheets[0][3])
    for before, cell in zip(heads, heads[1:]):
        numbers = [checks.get(head.value, ("",))[0] in ("decimal", "whole") for head in (before, cell)]
        if numbers == [True, False] and not all(book.worksheets[0].cell(row, cell.column).alignment.indent
                                                for row in (3, 4)):
            fail(f"'{cell.value}' touches the numbers of '{before.value}'")
    for cell in heads:
        shown = not book["Choices"].column_dimensions[cell.column_letter].hidden
        if shown != (checks.get(cell.value, ("",))[0] == "list"):
            fail(f"the choices of '{cell.value}' are {'shown' if shown else 'hidden'}")


def rows_of(folder):
    done = run(folder, "quote", "k.ini", "--effort", "1", "--json", "-o", "quote.xlsx", "--force")
    return [{key: door[key] for key in ("id", "as measured", "count", "use", "hinge side") if key in door}
            for door in json.loads(done.stdout)["estimates"][0]["doors"]]


def convert(folder, kind):
    """doors.xlsx as LibreOffice saves it."""
    out = os.path.join(folder, "saved")
    subprocess.run(["soffice", f"-env:UserInstallation=file://{folder}/office", "--headless", "--convert-to", kind, "--outdir", out, "doors.xlsx"],
                   cwd=folder, check=True, capture_output=True)
    return f"saved/doors.{kind}"


def try_value(folder, rates, unit, row, status):
    """The reader on a list of that one row beside what every row needs."""
    whole = {"id": "K1", "width": 20 if unit == "in" else 500, "height": 30 if unit == "in" else 700, **row}
    with open(os.path.join(folder, "one.csv"), "w", encoding="utf-8") as file:
        file.write(",".join(whole) + "\n" + ",".join(str(value) for value in whole.values()) + "\n")
    with open(os.path.join(folder, "k.ini"), encoding="utf-8") as file:
        text = file.read()
    with open(os.path.join(folder, "one.ini"), "w", encoding="utf-8") as file:
        file.write(text.replace("= doors.xlsx", "= one.csv"))
    run(folder, "check", "one.ini", status=status)


for unit, rates in (("in", "small-shop.ini"), ("mm", "metric-shop.ini")):
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(os.path.join(SAMPLES, "rates"), os.path.join(folder, "rates"))
        run(folder, "new", "k.ini", "--list", "doors.xlsx", "--set", f"rates = rates/{rates}", "--set", f"unit = {unit}")
        checks = fill(folder, ROWS[unit])
        check_looks(folder, checks)
        found = rows_of(folder)
        if [row["id"] for row in found] != [row["id"] for row in ROWS[unit]]:
            fail(f"{unit}: read {found}")
        for kind in ("xlsx", "ods"):
            name = convert(folder, kind)
            with open(os.path.join(folder, "k.ini"), encoding="utf-8") as file:
                text = file.read()
            with open(os.path.join(folder, "k.ini"), "w", encoding="utf-8") as file:
                file.write(text.replace("doors.xlsx", name))
            if rows_of(folder) != found:
                fail(f"{unit}: of {name} is read {rows_of(folder)}, of doors.xlsx {found}")
            with open(os.path.join(folder, "k.ini"), "w", encoding="utf-8") as file:
                file.write(text)
        if unit == "mm":
            continue
        for name, (kind, low, high, choices) in checks.items():
            if kind in ("whole", "decimal"):
                for value, status in ((low, 0), (high, 0 if name == "count" else None), (float(low) - 1, 1), (float(high) + 1, 1)):
                    if status is not None and not (name in ("width", "height") and status == 0):
                        try_value(folder, rates, unit, {name: f"{float(value):g}"}, status)
            if kind == "list" and name in ("use", "hinge side", "finish"):
                for choice in choices:
                    if not (name == "use" or choice == "pair"):
                        try_value(folder, rates, unit, {name: choice}, 0)
                try_value(folder, rates, unit, {name: "nonsense"}, 1)
        # as text it begins with the same columns
        run(folder, "new", "--list", "blank.csv", "--from", "k.ini")
        with open(os.path.join(folder, "blank.csv"), encoding="utf-8") as file:
            if file.readline().strip().split(",") != list(checks):
                fail("the CSV file has other columns")
        before = open(os.path.join(folder, "doors.xlsx"), "rb").read()
        run(folder, "new", "--list", "doors.xlsx", status=3)
        run(folder, "new", "--list", "doors.txt", status=2)
        run(folder, "new", "--list", "no.xlsx", "--unit", "ft", status=2)
        if open(os.path.join(folder, "doors.xlsx"), "rb").read() != before or os.path.exists(os.path.join(folder, "no.xlsx")):
            fail("a list was written over, or a wrong call left one")
