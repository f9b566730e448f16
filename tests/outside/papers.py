#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The PDFs as whoever has them read aloud gets them, and what they are of jobs out of the ordinary.

    papers.py DOORCOST tags JOB.ini      title, language and tree of every PDF of a job
    papers.py DOORCOST extreme SAMPLES   jobs of 300 rows, 90 letters, five scripts, odd logos

The tree is read by poppler, the places of objects and the catalog from the bytes.  Of the extreme
jobs no word lies over another or off the page, every row is there, and amounts are whole.  Exit
status 0: all is well.
"""
import csv
import json
import pathlib
import re
import shutil
import struct
import subprocess
import sys
import tempfile
import zlib

import openpyxl

from client_words import words_of

PAPERS = {"client": ["quote", "--effort", "5"], "draw": ["draw"], "plan": ["plan", "--effort", "5"],
          "buy": ["buy"], "order": ["buy", "--no-prices"], "days": ["days"]}
TYPES = {"Document", "H1", "H2", "H3", "P", "Table", "TR", "TH", "TD", "L", "LI", "Lbl", "LBody",
         "Figure"}
EDGE = 18  # points: what printers reach


def fail(text):
    print(text)
    fail.count += 1


fail.count = 0


def told(*words):
    done = subprocess.run(words, capture_output=True, text=True, check=False, timeout=600)
    if done.returncode != 0:
        sys.exit(f"{words}: {done.stderr}")
    return done.stdout


def make_papers(doorcost, job, folder):
    """All PDFs of a job; its results as JSON."""
    result = None
    for name, call in PAPERS.items():
        target = folder / (f"{name}.xlsx" if name == "client" else f"{name}.pdf")
        out = told(doorcost, *call, str(job), "--json", "-o", str(target))
        result = json.loads(out) if name == "client" else result
    (folder / "client-client.pdf").rename(folder / "client.pdf")
    return result


# --- tags ---

def check_places(name, data):
    """Every object stands where the table says, and the catalog tells the language."""
    table = int(re.search(rb"startxref\s+(\d+)", data)[1])
    if data[table:table + 4] != b"xref":
        fail(f"{name}: no table at {table}")
        return
    entries = re.findall(rb"(\d{10}) (\d{5}) ([nf]) \n", data[table:])
    for number, (at, _, used) in enumerate(entries):
        begins = b"%d 0 obj" % number
        if used == b"n" and data[int(at):int(at) + len(begins)] != begins:
            fail(f"{name}: object {number} is not at {int(at)}")
    root = int(re.search(rb"/Root (\d+) 0 R", data[table:])[1])
    at = int(entries[root][0])
    catalog = data[at:data.index(b"endobj", at)]
    if catalog.count(b"/Lang (en-US)") != 1 or b"/Marked true" not in catalog:
        fail(f"{name}: the catalog is {catalog}")


def tree_of(path):
    """The types of the tree, and the texts below each, in order."""
    pieces = []
    for line in told("pdfinfo", "-struct-text", str(path)).splitlines():
        word = line.strip()
        if word.startswith('"'):
            pieces[-1][1] += word.strip('"')
        elif word:
            pieces.append([word.split()[0], ""])
    return pieces


def check_starts(name, path):
    """A page of a list that goes on says which, and no sum stands alone at the top of one."""
    for number, words in enumerate(words_of(path), 1):
        start = " ".join(word[0] for word in words[:3])
        if re.match(r"What Size|together", start):
            fail(f"{name}: page {number} begins with '{start}'")


def tags(doorcost, job):
    with tempfile.TemporaryDirectory() as temporary:
        folder = pathlib.Path(temporary)
        result = make_papers(doorcost, job, folder)
        title = result["job"]["title"]
        for name in PAPERS:
            path = folder / f"{name}.pdf"
            check_places(name, path.read_bytes())
            check_starts(name, path)
            facts = told("pdfinfo", str(path))
            pieces = tree_of(path)
            types = [one for one, _ in pieces]
            heads = [text for one, text in pieces if one == "H1"]
            expected = {"buy": "What to buy", "order": "Order", "days": "Work by day",
                        "plan": f"Cutting plan: {title}"}.get(name, title)
            if "Tagged:          yes" not in facts or not re.search(r"Title: +\S", facts):
                fail(f"{name}: {facts}")
            if set(types) - TYPES or types[0] != "Document" or types.count("Document") != 1:
                fail(f"{name}: pieces {sorted(set(types))}")
            if len(heads) != 1 or not expected.startswith(heads[0]):
                fail(f"{name}: headed {heads}, not {expected}")
            print(f"{name}: {len(pieces)} pieces")
        ids = [door["id"] for door in result["estimates"][0]["doors"]]
        cells = [pieces[1] for pieces in zip(tree_of(folder / "client.pdf"),
                                             tree_of(folder / "client.pdf")[1:])
                 if pieces[0][0] == "TR" and pieces[1][0] == "TD"]
        listed = [text for _, text in cells if text in ids]
        if listed != ids:
            fail(f"client: rows {listed}, not {ids}")
        drawn = [text for one, text in tree_of(folder / "draw.pdf") if one == "H2"]
        if not set(drawn) <= set(ids) or not drawn:
            fail(f"draw: {drawn}")


# --- jobs out of the ordinary ---

WORDS = "the one who lives in the long house beside the water and looks upon the old harbor each day"
UNBROKEN = "Saltmarshlighthousekeeperscottagepantrydoorbesidetheovenandthewindowtothenorthernharborwal"
CJK = "\u53f0\u6240\u306e\u6249\u3068\u5f15\u304d\u51fa\u3057"
ARABIC = "\u0623\u0628\u0648\u0627\u0628 \u0627\u0644\u0645\u0637\u0628\u062e"
HEBREW = "\u05d3\u05dc\u05ea\u05d5\u05ea \u05de\u05d8\u05d1\u05d7"

# name, sample, texts for title, client, address, room and note, rows, logo, `detail`, paper
JOBS = [
    ("90 letters", "kitchen/kitchen", [WORDS[:90], UNBROKEN, WORDS[:90], UNBROKEN, WORDS[:90]], 12,
     (30, 1200), "each", "letter"),
    ("300 rows", "metric/tea-kitchen", ["Hotel", "Hotel", "", "room", "as drawn"], 300, (1200, 30),
     "each", "A4"),
    ("300 rows, letter", "kitchen/kitchen", ["Hotel", "Hotel", "", "room", ""], 300, (1, 1), "rooms",
     "letter"),
    ("CJK", "kitchen/kitchen", [CJK * 4, CJK, CJK * 2, CJK, CJK * 3], 20, (3000, 3000), "each", "A4"),
    ("Arabic", "metric/tea-kitchen", [ARABIC * 2, ARABIC, HEBREW, ARABIC, HEBREW], 20, (2, 900), "sum",
     "letter"),
]


def png(width, height):
    """A gray picture."""
    def chunk(kind, data):
        return (struct.pack(">I", len(data)) + kind + data
                + struct.pack(">I", zlib.crc32(kind + data)))
    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    rows = (b"\0" + b"\x80" * width) * height
    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows))
            + chunk(b"IEND", b""))


def set_key(text, section, key, value):
    text = re.sub(rf"(?m)^;? ?{key} +=.*\n", "", text)
    return text.replace(f"[{section}]\n", f"[{section}]\n{key} = {value}\n", 1)


def write_job(folder, samples, job):
    _, sample, texts, count, logo, detail, paper = job
    shutil.copytree(samples, folder / "samples")
    shutil.copytree(samples.parent / "rates", folder / "rates")
    path = folder / "samples" / f"{sample}.ini"
    text = path.read_text(encoding="utf-8")
    text = re.sub(r"(?m)^agreed .*\n", "", text)
    for key, value in zip(("title", "client", "address"), texts):
        text = set_key(text, "job", key, value) if value else text
    path.write_text(set_key(text, "job", "detail", detail), encoding="utf-8")
    (folder / "rates" / "odd.png").write_bytes(png(*logo))
    for rates in (folder / "rates").glob("*-shop.ini"):
        shop = rates.read_text(encoding="utf-8")
        for key, value in (("logo", "odd.png"), ("paper size", paper)):
            shop = set_key(shop, "shop", key, value)
        rates.write_text(shop, encoding="utf-8")
    metric = "metric" in sample
    with open(path.parent / "doors.csv", "w", encoding="utf-8", newline="") as file:
        out = csv.writer(file)
        out.writerow(["id", "room", "use", "count", "width", "height", "note"])
        for i in range(count):
            size = (300 + i % 40 * 5, 500 + i % 30 * 5) if metric else (12 + i % 9, 20 + i % 11)
            out.writerow([f"R{i + 1:03}", f"{texts[3]} {i // 25}", "door", 1 + i % 3, *size, texts[4]])
    return path


def check_pages(name, path, paper, drawn):
    """No word off the page; none over another, where no drawing is among them."""
    sizes = {"letter": (612, 792), "A4": (595.276, 841.89)}
    wide, high = sizes[paper][::-1] if path.name == "days.pdf" else sizes[paper]
    size = re.search(r"Page size: +([\d.]+) x ([\d.]+)", told("pdfinfo", str(path)))
    if abs(float(size[1]) - wide) > 1 or abs(float(size[2]) - high) > 1:
        fail(f"{name}: a page of {size[1]} x {size[2]}, not {paper}")
    for number, words in enumerate(words_of(path), 1):
        for i, (text, left, top, right, bottom) in enumerate(words):
            if left < EDGE or top < EDGE or right > wide - EDGE or bottom > high - EDGE:
                fail(f"{name}: page {number}: '{text}' at {left:.0f}, {top:.0f} to {right:.0f}, "
                     f"{bottom:.0f} is off the page")
            for other, left2, top2, right2, bottom2 in words[i + 1:] if not drawn else []:
                if (min(right, right2) - max(left, left2) > 1
                        and min(bottom, bottom2) - max(top, top2) > 4):
                    fail(f"{name}: page {number}: '{text}' lies over '{other}'")


def check_sides(name, folder):
    """Names that run from right to left stand where others would, and no number runs on with them."""
    for paper, side in ("client", 0.5), ("buy", 0.7), ("days", 0.5):
        for text, left, *_ in (word for page in words_of(folder / f"{paper}.pdf") for word in page):
            if re.search("[\u0590-\u06ff]", text) and left > 600 * side:
                fail(f"{name}: {paper}: '{text}' stands at {left:.0f}, as if the paper ran from right to left")
    words = next(iter(words_of(folder / "buy.pdf")))
    line = next(top for text, _, top, *_ in words if text == "sizes")
    order = [text.strip(",") for text, _, top, *_ in sorted(words, key=lambda word: word[1])
             if abs(top - line) < 2 and re.search(r"\d{4}-", text)]
    if order != ["2026-07", "2026-04-20"]:
        fail(f"{name}: number and date run {order}")


def check_title(name, path):
    """A long title of the shop's workbook is broken, not cut off where its page ends."""
    sheet = openpyxl.load_workbook(path)["Job"]
    over = [one for one in sheet.merged_cells.ranges if (one.min_row, one.min_col) == (2, 1)]
    if len(over) != 1 or not sheet["A2"].alignment.wrap_text:
        fail(f"{name}: the title of Job runs over the edge")
    elif len(sheet["A2"].value) > 80 and sheet.row_dimensions[2].height < 40:
        fail(f"{name}: the title of Job is {sheet.row_dimensions[2].height} points high")


def check_rows(name, folder, result, detail):
    """Every row is on the papers that list rows, with its amounts whole."""
    estimate = result["estimates"][0]
    words = [word[0] for page in words_of(folder / "client.pdf") for word in page]
    shown = set(words)
    amounts = [estimate["sale"]["total"]]
    for door in estimate["doors"]:
        if words.count(door["id"]) < 1:
            fail(f"{name}: {door['id']} is not on the client's paper")
        if detail == "each":
            amounts += [door["unit price"], door["amount"]]
    for amount in amounts:
        text = f"{float(amount['value']):,.2f}"
        if text not in shown:
            fail(f"{name}: {text} is not on the client's paper")
    for paper in ("draw", "plan"):
        text = told("pdftotext", "-raw", str(folder / f"{paper}.pdf"), "-")
        lacking = [door["id"] for door in estimate["doors"] if door["id"] not in text]
        if lacking and paper == "plan":
            fail(f"{name}: {lacking[:5]} are not on the plan")


def extreme(doorcost, samples):
    for job in JOBS:
        with tempfile.TemporaryDirectory() as temporary:
            folder = pathlib.Path(temporary)
            path = write_job(folder, samples, job)
            result = make_papers(doorcost, path, folder)
            for paper in ("buy", "order"):
                check_starts(f"{job[0]}, {paper}", folder / f"{paper}.pdf")
            for paper in PAPERS:
                check_pages(f"{job[0]}, {paper}", folder / f"{paper}.pdf", job[6],
                            paper in ("draw", "plan"))
            check_rows(job[0], folder, result, job[5])
            check_title(job[0], folder / "client.xlsx")
            if job[0] == "Arabic":
                check_sides(job[0], folder)
            print(f"{job[0]}: looked at")


def main():
    doorcost, what, path = sys.argv[1:]
    {"tags": tags, "extreme": extreme}[what](doorcost, pathlib.Path(path))
    print(f"{fail.count} faults")
    return 1 if fail.count else 0


if __name__ == "__main__":
    sys.exit(main())
