#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What a change order of `bridge -o` says: what two quotes say, their differences, and nothing else.

    change.py DOORCOST TREE

The kitchen and its second version, whose rates are dearer here too, as PDF and as workbook, with each
way of showing prices. No word that tells of cost, no number with decimals but those of the two
client's quotes and differences of these; every row that changed is named; the rows add up to what
the doors differ by, the differences to the total. Exit status 0: all is well.
"""
import itertools
import json
import pathlib
import re
import subprocess
import sys
import tempfile
from fractions import Fraction

import client
import openpyxl
from client import fail

ROWS = {"P03": "Taken off", "G04": "Changed", "W06": "Changed", "P09": "Added"}


def run(doorcost, folder, *words):
    done = subprocess.run([doorcost, *words], cwd=folder, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        fail(f"{words}: {done.stderr}")
    return done.stdout


def prepare(folder, tree, detail):
    job = client.prepare(folder, tree / "samples/kitchen/kitchen.ini", detail)
    second = job.with_name("kitchen-second.ini")
    rates = folder / "rates/small-shop.ini"
    (folder / "rates/dearer.ini").write_text(
        re.sub(r"^(labor rate *= *)\d+\.\d+ per hour( \([^)]*\))?", r"\g<1>44.00 per hour",
               rates.read_text(encoding="utf-8"), count=1, flags=re.M), encoding="utf-8")
    text = second.read_text(encoding="utf-8").replace("[job]\n", f"[job]\ndetail = {detail}\n", 1)
    second.write_text(text.replace("small-shop.ini ", "dearer.ini "), encoding="utf-8")
    return job.relative_to(folder), second.relative_to(folder)


def amounts(result):
    """What each row of the list comes to on the quote."""
    found = {}
    for door in result["estimates"][0]["doors"]:
        found[door["id"]] = found.get(door["id"], 0) + Fraction(door["amount"]["value"])
    return found


def money(thing, found):
    if isinstance(thing, dict) and "figure" in thing:
        found.append(Fraction(thing["value"]))
    elif isinstance(thing, (dict, list)):
        for value in thing.values() if isinstance(thing, dict) else thing:
            money(value, found)
    return found


def allowed(results, detail):
    seen = set().union(*(client.visible(result, detail) for result in results))
    sales = [money(result["estimates"][0]["sale"], []) for result in results]
    differences = {b - a for a, b in itertools.product(sales[0] + [Fraction(0)],
                                                       sales[1] + [Fraction(0)])}
    if detail == "each":
        was, now = (amounts(result) for result in results)
        rows = [now.get(i, 0) - was.get(i, 0) for i in ROWS]
        differences.update(rows)
        differences.add(rows[1] + rows[2])
        differences.add(sum(now.values()) - sum(was.values()) - sum(rows))
    return {client.plain(one) for one in seen} | \
        {client.plain(f"{abs(float(one)):.2f}") for one in differences}


def check_book(path, results, detail):
    """The numbers in the cells of the price, which no paper rounds."""
    sheet = openpyxl.load_workbook(path)["Change order"]
    rows = [[cell.value for cell in row] for row in sheet.iter_rows()]
    price = next(i for i, row in enumerate(rows) if row[0] == "Price")
    total = next(row for row in rows[price:] if str(row[0]).startswith("Total"))
    for column, result in ((3, results[0]), (4, results[1])):
        wanted = result["estimates"][0]["sale"]["total"]["value"]
        if f"{total[column]:.2f}" != wanted:
            fail(f"{path.name}: the total is {total[column]}, not {wanted}")
    if not str(total[5]).startswith("=ROUND(E"):
        fail(f"{path.name}: the difference of the total is no formula: {total[5]}")
    head = None
    told = {}
    for row in rows[:price]:
        head = row[0] if row[0] in ("Taken off", "Changed", "Added") else head
        if row[0] in ROWS:
            told[row[0]] = head
    if told != ROWS:
        fail(f"{path.name}: the rows are {told}")
    sums = [row[5] for row in rows[price + 1:] if row[0] in
            ("Rows taken off", "Rows changed", "Rows added", "All other rows")]
    if (len(sums) == 4) != (detail == "each"):
        fail(f"{path.name}: {len(sums)} sums of rows with {detail}")
    was, now = (sum(amounts(result).values()) for result in results)
    if detail == "each" and abs(sum(sums) - float(now - was)) > 0.001:
        fail(f"{path.name}: the rows add up to {sum(sums)}, the doors to {float(now - was)}")


def check_text(text, results):
    was, now = (Fraction(r["estimates"][0]["sale"]["total"]["value"]) for r in results)
    for words in (f"{float(now):,.2f} USD", f"{float(was):,.2f} USD",
                  f"{float(now - was):,.2f} USD more", "7 weeks from the deposit",
                  "it was: 6 weeks from the deposit", "CHANGE ORDER", "example prices",
                  "signature and name", "quote 0031 of March 2, 2026"):
        if words not in text:
            fail(f"the PDF lacks '{words}'")


def main():
    doorcost, tree = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    for detail in ("sum", "rooms", "each"):
        with tempfile.TemporaryDirectory() as name:
            folder = pathlib.Path(name)
            jobs = [str(job) for job in prepare(folder, tree, detail)]
            results = [json.loads(run(doorcost, folder, "quote", job, "-o", f"q{i}.xlsx", "--json"))
                       for i, job in enumerate(jobs)]
            may = allowed(results, detail)
            for file, texts in (("c.pdf", client.pdf_texts), ("c.xlsx", client.book_texts)):
                run(doorcost, folder, "bridge", *jobs, "-o", file)
                client.search(f"{detail}: {file}", texts(folder / file), may, name)
            check_book(folder / "c.xlsx", results, detail)
            check_text(client.pdf_texts(folder / "c.pdf")[0][1], results)
    print(f"{fail.count} faults")
    return 1 if fail.count else 0


if __name__ == "__main__":
    sys.exit(main())
