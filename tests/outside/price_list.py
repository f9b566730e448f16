#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What a price list of `table --client` says: the prices of `table --json`, and nothing else.

    price_list.py DOORCOST JOB.ini [STYLE ...]

As text, PDF and workbook: no word that tells of cost, no number with decimals but prices of one door and
sizes, nothing of the job's client; and each price stands there, of the workbook in the row of its size.
Exit status 0: all is well.
"""
import json
import pathlib
import re
import subprocess
import sys
import tempfile

import client
import openpyxl
from client import fail

COUNTS = ["1", "2", "5", "10", "20", "50"]
WAYS = {"added": "Price of each, ordered together with this job", "alone": "Price of each, ordered alone"}
ABREAST = 5


def run(doorcost, job, folder, *words):
    done = subprocess.run([doorcost, "table", str(job.relative_to(folder)), *words, "--counts", ",".join(COUNTS)],
                          cwd=folder, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        fail(f"{words}: {done.stderr}")
    return done.stdout


def tables(styles):
    """Each table as it should stand: head, heads of its columns, rows of size and prices; None: a dash."""
    for style in styles:
        for way, head in WAYS.items():
            for start in range(0, len(COUNTS), ABREAST):
                rows = []
                for size in style["sizes"]:
                    made = size["cannot be made"] is None
                    prices = [size["prices"][c][way]["price of each"] if made and size["prices"][c][way] else None
                              for c in range(start, min(start + ABREAST, len(COUNTS)))]
                    rows.append((f"{size['width']} x {size['height']}", prices))
                yield head, [f"of {count}" for count in COUNTS[start:start + ABREAST]], rows


def check_book(path, expected):
    book = openpyxl.load_workbook(path)
    if book.sheetnames != ["Price list"]:
        fail(f"sheets {book.sheetnames}")
    rows = [[cell.value for cell in row] for row in book["Price list"].iter_rows()]
    at = 0
    for head, counts, sizes in expected:
        while at < len(rows) and rows[at][0] != head:
            at += 1
        if rows[at + 1][:len(counts) + 1] != ["Size", *counts]:
            fail(f"{head}: heads {rows[at + 1]}")
        at += 2
        for size, prices in sizes:
            found = [value for value in rows[at][1:] if value is not None]
            wanted = ["-" if price is None else float(price) for price in prices]
            if rows[at][0] != size or found != wanted:
                fail(f"{head}: {rows[at]}; expected {size}: {wanted}")
            at += 1


def check_text(where, text, expected):
    """All prices in their order, as lines of the paper; blanks between them may be of any width."""
    plain = " ".join(text.split())
    at = 0
    for _, _, sizes in expected:
        for size, prices in sizes:
            line = " ".join([size, *("-" if price is None else f"{float(price):,.2f}" for price in prices)])
            found = plain.find(line, at)
            if found < 0:
                fail(f"{where}: the line '{line}' lacks or is out of order")
            else:
                at = found


def main():
    doorcost, source, *styles = sys.argv[1:]
    doorcost = str(pathlib.Path(doorcost).resolve())
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        job = client.prepare(folder, pathlib.Path(source))
        given = job.read_text(encoding="utf-8")
        job.write_text(re.sub(r"^client *=.*$", "client = Somebody Else", given, flags=re.M), encoding="utf-8")
        found = json.loads(run(doorcost, job, folder, *styles, "--json"))["estimates"][0]["sizes"]["styles"]
        expected = list(tables(found))
        may = {client.plain(p) for _, _, rows in expected for _, prices in rows for p in prices if p}
        may.update(client.plain(n) for _, _, rows in expected for size, _ in rows for n in re.findall(r"\d+\.\d+", size))
        if not may:
            fail("there are no prices")
        texts = {"text": [("text", run(doorcost, job, folder, *styles, "--client"))]}
        for file, read in (("list.pdf", client.pdf_texts), ("list.xlsx", client.book_texts)):
            run(doorcost, job, folder, *styles, "--client", "-o", file)
            texts[file] = read(folder / file)
        for where, parts in texts.items():
            client.search(where, parts, may, name)
            if any("Somebody Else" in text for _, text in parts):
                fail(f"{where}: it names the client of the job")
        for where in ("text", "list.pdf"):
            check_text(where, texts[where][0][1], expected)
            for words in ("before tax", "example prices" if where == "list.pdf" else "Example prices"):
                if words not in texts[where][0][1]:
                    fail(f"{where}: '{words}' lacks")
            if where == "text" and max(map(len, texts[where][0][1].splitlines())) > 80:
                fail("a line is longer than 80 columns")
        check_book(folder / "list.xlsx", expected)
    print(f"{fail.count} faults")
    return 1 if fail.count else 0


if __name__ == "__main__":
    sys.exit(main())
