#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The buying list: all that is spent stands in it once, and on paper as it is told to programs.

    order.py DOORCOST JOB.ini

Adds up the list of `buy --json` in fractions: lines to groups, groups to what is spent, and what a
line is made up of to the line.  Then reads both papers of `buy -o` with pdftotext: the list holds
every line; the order holds what a supplier sells, no price, no client, and nothing that others
supply.  Exit status 0: all is well.
"""
import json
import math
import pathlib
import re
import subprocess
import sys
import tempfile
from fractions import Fraction

SHELF = "Small supplies"  # of the shop's own; a supplier does not read it
MONEY = re.compile(r"(?<![\w./])\d+\.\d\d(?!\d| L\b|\s+(?:sq ft|m2|bf)\b)")  # a can of 0.25 L is a size


def fail(text):
    sys.exit(f"order.py: {text}")


def value(figure):
    return None if figure is None else Fraction(figure["value"])


def priced(line):
    """What the price and the count of a line come to, in whole cents, half a cent up; None where it has no price."""
    price, count = value(line["price"]), value(line["count"])
    return None if price is None else math.floor(price * count * 100 + Fraction(1, 2))


def check_line(line, parts):
    """A cost is its price times its count, or what its parts come to."""
    cost = value(line["cost"])
    if cost is None:
        return
    sums = [priced(part) for part in parts]
    if priced(line) is not None and priced(line) != cost * 100:
        fail(f"{line['what']}: {line['how many']} do not come to {cost}")
    if sums and None not in sums and sum(sums) != cost * 100:
        fail(f"{line['what']}: its parts come to {sum(sums)} cents, not {cost}")


def check_group(group):
    lines = group["lines"]
    total = 0
    for i, line in enumerate(lines):
        if line["part of the line above"]:
            continue
        parts = []
        for part in lines[i + 1:]:
            if not part["part of the line above"]:
                break
            parts.append(part)
        check_line(line, parts)
        cents = value(line["cost"])
        total += cents * 100 if cents is not None else priced(line) or 0
    spent = value(group["spent"]) or 0
    if total != spent * 100:
        fail(f"{group['supplier']}: lines come to {total} cents, spent {spent}")
    return spent


def words_of(path):
    text = subprocess.run(["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True,
                          check=True).stdout
    return re.sub(r"\s+", "", text), text


def check_paper(purchase, page, order):
    for group in purchase["list"]:
        if order and (group["supplier"].startswith(SHELF) or "others" in group["supplier"]):
            continue
        for line in group["lines"]:
            note = line["note"] or ""
            supplier = group["supplier"]
            if order and note and re.sub(r"\s", "", note) in page:
                fail(f"the order has what is the shop's alone: '{note}'")
            if order and ("by others" in note or ("from the rack" in note and line["count"] is None and not value(line["cost"]))):
                if re.sub(r"\s", "", line["what"]) in page:
                    fail(f"the order asks for '{line['what']}', which others supply, or the rack")
                continue
            if supplier == "Glass" and not line["part of the line above"] and line["how many ordered"]:
                fail(f"'{line['how many ordered']}' is what is charged of glass, and no size")
            for word in (line["ordered as" if order else "what"], line["size"],
                         line["how many ordered" if order else "how many"], "" if order else note):
                if re.sub(r"\s", "", word or "") not in page:
                    fail(f"'{word}' is not on paper")


def main():
    program, job = sys.argv[1], sys.argv[2]
    with tempfile.TemporaryDirectory() as folder:
        both = pathlib.Path(folder) / "list.pdf", pathlib.Path(folder) / "order.pdf"
        told = subprocess.run([program, "buy", job, "--effort", "20", "--json", "-o", str(both[0])], check=True,
                              capture_output=True, text=True).stdout
        subprocess.run([program, "buy", job, "--effort", "20", "-o", str(both[1]), "--no-prices"], check=True,
                       capture_output=True)
        estimate = json.loads(told)["estimates"][0]
        purchase = estimate["purchase"]
        if sum(check_group(group) for group in purchase["list"]) != value(purchase["spent in all"]):
            fail("the groups do not come to what is spent")
        check_paper(purchase, words_of(both[0])[0], False)
        page, text = words_of(both[1])
        check_paper(purchase, page, True)
        client = next((line.split("=", 1)[1].strip() for line in open(job, encoding="utf-8")
                       if re.match(r"client\s*=", line)), None)
        if client and re.sub(r"\s", "", client) in page:
            fail("the order names the client")
        money = [one for one in MONEY.findall(text)]
        if money:
            fail(f"the order shows money: {money[0]}")


main()
