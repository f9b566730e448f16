#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Long texts of every script, in every field that a person fills in, through every paper.

    texts.py DOORCOST parts        every part of every file is well-formed, and no text lacks
    texts.py DOORCOST footers      what a title looks like in the footer of the workbooks

Exit status 0: all is well.
"""
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile
from xml.parsers import expat

TOP = pathlib.Path(__file__).resolve().parent.parent.parent
# A letter of each, of 1, 2, 2, 2, 3 and 4 bytes in UTF-8.
SCRIPTS = {"latin": "e", "accents": "\u00e9", "cyrillic": "\u0436", "arabic": "\u0639",
           "chinese": "\u6a71", "emoji": "\U0001f6aa"}
ROWS = """id,room,use,count,width,height,leaves,style,mid rails,color,hinge side,extra charge,note
{id}1,{room},door,2,17 1/4,22 3/4,1,,1,{color},left,5.00 for {words},{note}
{id}2,{room},door,1,30 1/2,22 3/4,2,shaker-glass,0,{color},,,{note}
{id}3,{room}2,drawer front,3,14 3/8,5 1/4,1,slab,0,,,,{note}
"""
JOB = """[job]
title = {title}
number = {number}
client = {client}
address = {address}
measured by = {measured}
date = 2026-03-02
valid = 30 days
ready = {ready}
unit = in
rates = rates.ini
doors = doors.csv
note = {note}
terms = {terms}
[make]
style = shaker
frame = {wood}
panel = mdf-panel
slab = mdf-slab
glass = clear
finish = painted
color = {color}
hinge = {hinge}
measure = opening
overlay = 1/2
gap = 1/8
[sale]
tax = 6 %
tax name = {tax}
tax on = selling price
charges = 60.00 for {charge}
deposit = 40 %
stages = 30 % when {stage}
[option {option}]
frame = hard-maple
"""


def fail(text):
    print(text)
    fail.count += 1


fail.count = 0


def fill(letter, size, ahead):
    """`ahead` plain letters, then letters up to `size` bytes: so each byte of a text is within a
    character for some `ahead`, and a cut there is seen."""
    return "a" * ahead + letter * ((size - ahead) // len(letter.encode()))


def write_job(folder, text, name):
    """A job whose fields all hold `text`; its names of things hold `name`, which is shorter."""
    fields = {key: text for key in ("title", "number", "client", "address", "measured", "ready",
                                    "note", "terms", "color", "words", "room", "tax", "charge",
                                    "stage")}
    fields.update({"id": name, "wood": name + "w", "hinge": name + "h", "option": name + "o"})
    (folder / "job.ini").write_text(JOB.format(**fields), encoding="utf-8")
    (folder / "doors.csv").write_text(ROWS.format(**fields), encoding="utf-8")
    rates = (TOP / "rates" / "small-shop.ini").read_text(encoding="utf-8")
    rates = re.sub(r"(?m)^(name|address|contact)( +)=.*", rf"\1 = {text}", rates, count=3)
    rates = rates.replace("[lumber poplar]", f"[lumber {fields['wood']}]")
    rates = rates.replace("[hardware cup-hinge]", f"[hardware {fields['hinge']}]")
    rates = re.sub(r"price (lumber|sheets) by  = factor", r"price \1 by  = plan", rates)
    (folder / "rates.ini").write_text(rates, encoding="utf-8")
    for other in ("terms.txt", "woods.csv"):
        shutil.copy(TOP / "rates" / other, folder)


def run(doorcost, folder, *arguments):
    done = subprocess.run([doorcost, *arguments], cwd=folder, capture_output=True, check=False,
                          timeout=300)
    try:
        out, err = done.stdout.decode("utf-8"), done.stderr.decode("utf-8")
    except UnicodeDecodeError as error:
        fail(f"{arguments[0]}: {error}")
        return None
    if done.returncode != 0:
        fail(f"{arguments[0]}: status {done.returncode}: {err.strip()[:300]}")
        return None
    return out


def well_formed(where, data):
    """The characters of an XML document together; None: it is malformed."""
    parser = expat.ParserCreate()
    texts = []
    parser.CharacterDataHandler = texts.append
    try:
        parser.Parse(data, True)
    except expat.ExpatError as error:
        fail(f"{where}: {error}")
        return None
    return "".join(texts)


def book_texts(path):
    texts = ""
    with zipfile.ZipFile(path) as book:
        for part in book.namelist():
            if part.endswith((".xml", ".rels", ".vml")):
                texts += well_formed(f"{path.name}, {part}", book.read(part)) or ""
    return texts


def one(doorcost, folder, where, text, name, whole):
    """whole: commands of hundreds of estimates are tried too."""
    before = fail.count
    write_job(folder, text, name)
    for command in ("check", "buy", "finish", "compare", "strike", "days"):
        run(doorcost, folder, command, "job.ini")
    if whole:
        run(doorcost, folder, "range", "job.ini", "--draws", "100")
        run(doorcost, folder, "table", "job.ini", "--counts", "1")
        run(doorcost, folder, "ways", "job.ini")
        run(doorcost, folder, "bridge", "job.ini", "job.ini")
    if run(doorcost, folder, "quote", "job.ini", "-o", "q.xlsx", "--effort", "5") is not None:
        for book in ("q.xlsx", "q-client.xlsx"):
            if text not in book_texts(folder / book):
                fail(f"{book}: the text is not in it whole")
    for command in (["draw", "job.ini", "-o", "d.pdf"], ["show", "job.ini", "-o", "s.html", "--effort", "5"],
                    ["plan", "job.ini", "-o", "p.pdf", "--svg", "svg", "--effort", "5"]):
        run(doorcost, folder, *command)
    for drawing in sorted((folder / "svg").glob("*.svg")):
        well_formed(drawing.name, drawing.read_bytes())
    for command in ("quote", "plan"):
        out = run(doorcost, folder, command, "job.ini", "--json", "--effort", "5",
                  *(["-o", "j.xlsx"] if command == "quote" else []))
        if out is not None and text not in json.dumps(json.loads(out), ensure_ascii=False):
            fail(f"{command} --json: the text is not in it whole")
    if fail.count > before:
        fail(f"... {where}")


def parts(doorcost):
    count = 0
    for script, letter in SCRIPTS.items():
        for ahead in range(len(letter.encode())):
            with tempfile.TemporaryDirectory() as folder:
                one(doorcost, pathlib.Path(folder), f"{script}, {ahead} ahead",
                    fill(letter, 900, ahead), fill(letter, 70, ahead), ahead == 0)
            count += 1
    print(f"{count} jobs")


# --- footers ---

FONT = '&"Arial,Regular"'
# A title, and how ECMA-376 (part 1, 18.3.1.46, oddFooter) writes it behind a size of letters.
FOOTERS = {
    "B&G house": f"B&&{FONT}G house",
    "B&g house": "B&&g house",
    "&[Picture] & Sons": f"&&{FONT}[Picture] && Sons",
    "&&G": f"&&&&{FONT}G",
    "5 Elm Street": f"{FONT}5 Elm Street",
    "R&D": "R&&D",
    "House 5": "House 5",
    "\u0436" * 45: "\u0436" * 45,
    "\u0436" * 46: "\u0436" * 44 + "\u2026",
    "\U0001f6aa" * 40: "\U0001f6aa" * 22 + "\u2026",
}


def footer_of(path):
    with zipfile.ZipFile(path) as book:
        texts = set()
        for part in book.namelist():
            if part.startswith("xl/worksheets/sheet"):
                data = book.read(part)
                well_formed(f"{path.name}, {part}", data)
                found = re.search(r"<oddFooter>(.*?)</oddFooter>", data.decode(), re.DOTALL)
                text = found[1] if found else "no footer"
                text = text.replace("&quot;", '"').replace("&amp;", "&")
                if len(text.encode("utf-16-le")) / 2 > 255:
                    fail(f"{path.name}, {part}: a footer of {len(text)} letters")
                texts.add(re.sub(r"&C&8[^&]*&R&8page &P of &N$", "", text))
        return texts


def footers(doorcost):
    for title in [*FOOTERS, "&G" * 100, "&" * 300]:
        with tempfile.TemporaryDirectory() as name:
            folder = pathlib.Path(name)
            write_job(folder, "plain", "p")
            job = folder / "job.ini"
            job.write_text(job.read_text(encoding="utf-8").replace("title = plain", f"title = {title}")
                           .replace("number = plain", "number = &G 1"), encoding="utf-8")
            if run(doorcost, folder, "quote", "job.ini", "-o", "q.xlsx") is None:
                fail(f"... {title}")
                continue
            got = footer_of(folder / "q.xlsx")
            if title in FOOTERS and got != {f"&L&8{FOOTERS[title]}"}:
                fail(f"{title}: {got}")
            footer_of(folder / "q-client.xlsx")


def main():
    if len(sys.argv) != 3 or sys.argv[2] not in ("parts", "footers"):
        print(__doc__)
        return 2
    globals()[sys.argv[2]](str(pathlib.Path(sys.argv[1]).resolve()))
    return 1 if fail.count > 0 else 0


if __name__ == "__main__":
    sys.exit(main())
