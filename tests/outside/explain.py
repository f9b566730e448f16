#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Lines of `explain` can be followed with a pocket calculator.

    explain.py DOORCOST JOB.ini [SEED]

Asks for figures of the job by the names that the JSON form gives them, chosen at random, and for
cells of the workbook; works out every printed line from the numbers that stand in it, in fractions,
rounded to the decimals of its result; and holds the first line against the JSON form.
Exit status 0: all is well.
"""
import json
import random
import re
import subprocess
import sys
import tempfile
from fractions import Fraction

import openpyxl

NUMBER = re.compile(r"(?<!\S)(-?\d+(?:\.\d+)?)(?: [A-Za-z%][A-Za-z0-9%]*)*(?: \[\d+\])?\)?$")
HEAD = re.compile(r"\[(\d+)\] .*: (-?\d+(?:\.\d+)?)(?: [A-Za-z%].*)?$")
ASKED = 14


def fail(text):
    sys.exit(f"explain.py: {text}")


def explain(program, job, words):
    run = subprocess.run([program, "explain", job, *words, "--effort", "5", "--depth", "3"],
                         capture_output=True, text=True)
    if run.returncode != 0:
        fail(f"{words}: {run.stderr}")
    return run.stdout


def joined(text):
    """Head and making of each line, broken lines put together."""
    lines = []
    for line in text.split("\n\n")[0].splitlines():
        if re.match(r"\[\d+\] ", line):
            lines.append([line, ""])
        elif not lines:
            fail(f"no number: {line}")
        elif lines[-1][1] == "" and not re.match(r" {4}(= |  |$)", line):
            lines[-1][0] += " " + line.strip()
        elif lines[-1][1] == "" and not re.match(r" {4}(= | {2}\S)", line):
            lines[-1][0] += " " + line.strip()
        else:
            lines[-1][1] += " " + line.strip()
    return lines


def value(piece):
    found = NUMBER.search(piece.strip())
    if not found:
        fail(f"no number in '{piece}'")
    return Fraction(found.group(1))


def worked_out(making):
    """The value of `a 1 [2] x b 2 + c 3 / (d 4)`."""
    total, sign = Fraction(0), 1
    pieces = re.split(r"(?:^| )([+-]) ", making)
    terms = [(1, pieces[0])] + [(1 if pieces[i] == "+" else -1, pieces[i + 1])
                                for i in range(1, len(pieces), 2)]
    for sign, term in terms:
        if not term.strip():
            continue
        over, _, under = term.partition(" / (")
        result = Fraction(1)
        for piece in over.split(" x "):
            result *= value(piece)
        for piece in under.rstrip(")").split(" x ") if under else []:
            divisor = value(piece)
            result = result / divisor if divisor else Fraction(0)
        total += sign * result
    return total


def rounded(number, decimals):
    scaled = abs(number) * 10 ** decimals
    whole = (2 * scaled.numerator + scaled.denominator) // (2 * scaled.denominator)
    return Fraction(whole if number >= 0 else -whole, 10 ** decimals)


def check(words, text):
    """Works out every line that is a formula; the value of the first."""
    first, done = None, 0
    for head, making in joined(text):
        found = HEAD.match(head)
        if not found:
            fail(f"{words}: cannot read '{head}'")
        shown = found.group(2)
        first = shown if first is None else first
        if making.strip().startswith("= "):
            decimals = len(shown.partition(".")[2])
            result = worked_out(making.strip()[2:].strip())
            if abs(rounded(result, decimals) - Fraction(shown)) > Fraction(0):
                fail(f"{words}: {head}\n  {making}\n  comes to {float(result)}")
            done += 1
    return first, done


def named(estimate):
    """Words to ask with, and the value that the JSON form has for them."""
    asked = []
    for door in estimate["doors"]:
        for key, figure in door.items():
            if isinstance(figure, dict) and "figure" in figure:
                name = [door["id"], *(door.get("leaf") or "").split()]
                asked.append(([*name, *key.split()], figure["value"]))
    for key, figure in estimate["sale"].items():
        if isinstance(figure, dict) and "figure" in figure:
            asked.append((key.split(), figure["value"]))
    return asked


def check_sizes(program, job, estimate):
    """A size that was measured on the door is given; one of an opening is worked out."""
    for door in estimate["doors"][::4]:
        for size, measured in zip(("width", "height"), door["as measured"].split(" x ")):
            length = sum(Fraction(part) for part in measured.split())
            given = door["measured"] == "door" and length == Fraction(door[size]["value"])
            text = " ".join(explain(program, job, [door["id"], *(door.get("leaf") or "").split(), size]).split())
            if ("worked out from" in text) == given:
                fail(f"{door['id']} {size}, measured on the {door['measured']}: {text[:120]}")


def cells(path):
    """Cells with formulas that make figures."""
    book = openpyxl.load_workbook(path)
    return [f"{sheet.title}!{cell.coordinate}" for sheet in book for row in sheet.iter_rows()
            for cell in row if str(cell.value).startswith("=ROUND(") and sheet.title != "Compare"]


def main():
    program, job = sys.argv[1], sys.argv[2]
    draw = random.Random(int(sys.argv[3]) if len(sys.argv) > 3 else 1)
    with tempfile.TemporaryDirectory() as folder:
        out = f"{folder}/book.xlsx"
        told = subprocess.run([program, "quote", job, "--json", "--effort", "5", "-o", out],
                              capture_output=True, text=True, check=True).stdout
        estimate = json.loads(told)["estimates"][0]
        check_sizes(program, job, estimate)
        formulas = 0
        asked = named(estimate)
        for words, expected in draw.sample(asked, min(ASKED, len(asked))):
            got, done = check(words, explain(program, job, words))
            formulas += done
            if Fraction(got) != Fraction(expected):
                fail(f"{words}: {got}, the JSON form has {expected}")
        for cell in draw.sample(cells(out), 3):
            formulas += check([cell], explain(program, job, [cell]))[1]
        if formulas < 20:
            fail(f"only {formulas} lines to work out")
        print(f"{formulas} lines worked out")


main()
