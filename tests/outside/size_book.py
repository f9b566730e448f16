#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The workbook of `table` says what its JSON says:  size_book.py PROGRAM JOB [STYLE ...]

Each amount of the JSON stands on the sheet of its style, in the table of its way and count and in
the row of its size; what the flat price does is marked; each chart lies over the rows of its table;
no cell holds an error.
"""
import json
import os
import re
import subprocess
import sys
import tempfile

import openpyxl

WRONG = []
COUNTS = [1, 7, 50]
WAYS = {"added": "added to this job", "alone": "alone"}
COLUMNS = {3: "price of each", 4: "before tax", 5: "client pays", 6: "direct", 7: "left over", 8: "to buy",
           9: "hours", 10: "price by area", 11: "flat price"}
MARKS = {"bears it": "bears it", "earns less": "< earns less", "loses money": "! loses money"}


def want(what, found, expected):
    if found is None or isinstance(found, str) or abs(float(found) - float(expected)) > 1e-9:
        WRONG.append(f"{what}: {found} on the sheet, {expected} in the JSON")


def same(what, found, expected):
    if found != expected:
        WRONG.append(f"{what}: '{found}' on the sheet, '{expected}' expected")


def row_of(sheet, words):
    for row in range(1, sheet.max_row + 1):
        if sheet.cell(row, 1).value == words:
            return row
    WRONG.append(f"the sheet has no row '{words}'")
    return sheet.max_row + 1


def table(sheet, style, way, at):
    row = row_of(sheet, f"{COUNTS[at]}, {WAYS[way]}") + 1
    for size in style["sizes"]:
        row += 1
        name = f"{size['width']} x {size['height']}"
        same("size", sheet.cell(row, 1).value, name)
        if size["cannot be made"] is not None:
            same(name, sheet.cell(row, 2).value, f"cannot be made: {size['cannot be made']}")
            continue
        same("count", size["prices"][at]["count"], COUNTS[at])
        price = size["prices"][at][way]
        if price is None:
            same(name, sheet.cell(row, 2).value, "cannot be estimated so")
            continue
        what = f"{style['style']}, {name}, {COUNTS[at]} {way}"
        want(f"{what}, area", sheet.cell(row, 2).value, size["area"])
        for column, key in COLUMNS.items():
            want(f"{what}, {key}", sheet.cell(row, column).value, price[key])
        same(what, sheet.cell(row, 12).value, MARKS[price["flat price does"]])
    same("behind the table", sheet.cell(row + 1, 1).value, None)


def chart(sheet, style):
    """The sizes of the chart, all of them or those of one height."""
    made = [s for s in style["sizes"] if s["cannot be made"] is None and s["prices"][0]["added"] is not None]
    one = len(style["sizes"]) > 24
    words = "Price by area, 1 more added to this job" + (", the sizes of one height" if one else "")
    row = first = row_of(sheet, words) + 2
    heights = sorted({float(s["height"].split()[0]) for s in style["sizes"]}) if one else []
    for size in made:
        if one and float(size["height"].split()[0]) != heights[len(heights) // 2]:
            continue
        same("size in the chart", sheet.cell(row, 1).value, f"{size['width']} x {size['height']}")
        want("by area in the chart", sheet.cell(row, 2).value, size["prices"][0]["added"]["price by area"])
        want("flat in the chart", sheet.cell(row, 3).value, style["flat price by area"])
        row += 1
    found = [re.findall(r"\$(\d+)", series.val.numRef.f) for one in sheet._charts for series in one.series]
    same("rows of the chart", found, [[str(first), str(row - 1)]] * 2 if row > first else [])


def check(program, job, words):
    with tempfile.TemporaryDirectory() as folder:
        book = os.path.join(folder, "table.xlsx")
        done = subprocess.run([program, "table", job, *words, "--counts", ",".join(map(str, COUNTS)), "--json", "-o", book],
                              check=True, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
        styles = json.loads(done.stdout)["estimates"][0]["sizes"]["styles"]
        sheets = openpyxl.load_workbook(book)
    same("sheets", sheets.sheetnames, [style["style"] for style in styles])
    for style, sheet in zip(styles, sheets):
        for way in WAYS:
            for at in range(len(COUNTS)):
                table(sheet, style, way, at)
        chart(sheet, style)
        for cells in sheet.iter_rows():
            for cell in cells:
                if cell.data_type == "e" or (isinstance(cell.value, str) and cell.value[:1] in "#="):
                    WRONG.append(f"{cell.coordinate} holds {cell.value}")
    return sum(len(style["sizes"]) for style in styles)


def main():
    program, job, *styles = sys.argv[1:]
    sizes = check(program, job, styles)
    metric = "metric" in job or "station" in job
    widths, heights = ("250,300,400,450,500,600", "300,400,500,700,900") if metric else ("9,12,15,18,21,24", "12,18,24,30,40")
    sizes += check(program, job, [*styles, "--widths", widths, "--heights", heights])
    for line in WRONG:
        print(line)
    print(f"{sizes} sizes: {len(WRONG)} wrong")
    sys.exit(1 if WRONG else 0)


main()
