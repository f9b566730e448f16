#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Asks GNU units for every conversion of conversions.csv and holds the program's value against it.

The column `program` is what the program uses (test_conversions holds the program to it); the answer of
`units` must agree within half a unit of its last digit, and with what was published within the
tolerance of the row.  Only whole numbers and decimals: no floats.
"""
import csv
import pathlib
import subprocess
import sys
from decimal import Decimal, getcontext

getcontext().prec = 40


def ask(from_unit, to_unit):
    command = ["units", "--terse", "--output-format", "%.17g", from_unit, to_unit]
    answer = subprocess.run(command, capture_output=True, text=True, check=False)
    return Decimal(answer.stdout.split()[0]) if answer.returncode == 0 else None


def last_digit(text):
    return Decimal(1).scaleb(Decimal(text).as_tuple().exponent)


def main():
    path = pathlib.Path(__file__).with_name("conversions.csv")
    wrong = rows = 0
    for row in csv.DictReader(path.open(encoding="utf-8")):
        rows += 1
        answer = ask(row["units from"], row["units to"])
        if answer is None:
            print(f"{row['id']}: units does not know {row['units from']} or {row['units to']}")
            wrong += 1
            continue
        noise = abs(answer) * Decimal("1e-15")  # units computes in doubles
        if row["program"] and abs(answer - Decimal(row["program"])) > last_digit(row["program"]) / 2 + noise:
            print(f"{row['id']}: {row['from']} to {row['to']} is {answer}, the program has {row['program']}")
            wrong += 1
        if row["published"] and abs(answer - Decimal(row["published"])) > Decimal(row["tolerance"]) + noise:
            print(f"{row['id']}: {row['from']} to {row['to']} is {answer}, published {row['published']}")
            wrong += 1
    print(f"{rows} conversions, {wrong} wrong")
    return 1 if wrong or rows == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
