#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The workbook of `range` says what its JSON says:  range_book.py PROGRAM JOB

Every amount, percent and count of the JSON that the sheet has a place for stands there, each rate's
in its row, and each chart lies over the rows of its table.
"""
import json
import os
import re
import subprocess
import sys
import tempfile

import openpyxl

WRONG = []


def want(what, found, expected):
    if found is None or abs(float(found) - float(expected)) > 1e-9:
        WRONG.append(f"{what}: {found} on the sheet, {expected} in the JSON")


def row_of(sheet, words, start=1):
    for row in range(start, sheet.max_row + 1):
        if sheet.cell(row, 1).value == words:
            return row
    WRONG.append(f"the sheet has no row '{words}'")
    return sheet.max_row + 1


def name(entry):
    before = f", {entry['before']}" if entry["before"] else ""
    return f"[{entry['section']}] {entry['key']}{before}"


def rates(sheet, moved):
    first = row_of(sheet, "One rate at a time")
    rows = 0
    for rate in moved["rates"]:
        ends = [rate["low"]["adds"], rate["high"]["adds"]]
        if all(end and not any(float(amount) for amount in end.values()) for end in ends):
            continue
        row = row_of(sheet, name(rate), first)
        rows += 1
        for column, (end, key) in enumerate([(0, "client pays"), (1, "client pays"), (0, "direct"), (1, "direct")], 2):
            if ends[end]:
                want(f"{name(rate)}, column {column}", sheet.cell(row, column).value, ends[end][key])
        if sheet.cell(row, 9).value != (rate["reason"] or "no reason is given"):
            WRONG.append(f"{name(rate)}: another reason")
    return rows


def draws(sheet, chance):
    labels = {"with the likely values": "figured", "least drawn": "least", "most drawn": "most"}
    labels.update({f"at most, in {p} % of the draws": f"P{p}" for p in (10, 50, 80, 90)})
    for words, key in labels.items():
        row = row_of(sheet, words)
        want(words, sheet.cell(row, 2).value, chance["direct cost"][key])
        want(words, sheet.cell(row, 3).value, chance["cost with overhead"][key])
    want("price", sheet.cell(row_of(sheet, "sold for, before tax"), 2).value, chance["price"])
    want("profit", sheet.cell(row_of(sheet, "profit wanted"), 2).value, chance["profit wanted"])
    row = row_of(sheet, "the price does not cover the direct cost")
    for key in ("below direct cost", "loses money", "earns less than wanted"):
        want(key, sheet.cell(row, 2).value, chance[key])
        row += 1
    row = row_of(sheet, "cost with overhead, from") + 1
    for step in chance["steps"]:
        want("step", sheet.cell(row, 1).value, step["from"])
        want("draws", sheet.cell(row, 2).value, step["draws"])
        row += 1
    row = row_of(sheet, "What the cost with overhead goes with")
    for entry in chance["inputs"]:
        if entry["is"] == "drawn":
            want(name(entry), sheet.cell(row_of(sheet, name(entry), row), 2).value, entry["share"])
    if sum(step["draws"] for step in chance["steps"]) != chance["draws"]:
        WRONG.append("the steps do not add up to the draws")


def charts(sheet, rows):
    found = []
    for chart in sheet._charts:
        for series in chart.series:
            ends = [int(row) for row in re.findall(r"\$(\d+)", series.val.numRef.f)]
            found.append(ends[-1] - ends[0] + 1)
    steps = next(n for n in range(1, 100) if sheet.cell(row_of(sheet, "cost with overhead, from") + n, 2).value is None) - 1
    expected = [min(rows, 15)] * 2 * (rows > 0) + [steps]
    if sorted(found) != sorted(expected):
        WRONG.append(f"charts over {found} rows; expected {expected}")


def main():
    program, job = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        book = os.path.join(folder, "range.xlsx")
        done = subprocess.run([program, "range", job, "--json", "-o", book], check=True, stdout=subprocess.PIPE,
                              stderr=subprocess.DEVNULL)
        estimate = json.loads(done.stdout)["estimates"][0]
        sheet = openpyxl.load_workbook(book)["Range"]
    rows = rates(sheet, estimate["range"])
    draws(sheet, estimate["chance"])
    charts(sheet, rows)
    for line in WRONG:
        print(line)
    print(f"{rows} rates moved, {len(estimate['chance']['inputs'])} ranges: {len(WRONG)} wrong")
    sys.exit(1 if WRONG else 0)


main()
