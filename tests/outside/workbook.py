#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Reads the workbook of a job back by other programs and holds it against the program's own figures.

    workbook.py DOORCOST check JOB.ini    one job, from its cells to its printed pages
    workbook.py DOORCOST hostile          texts that look like formulas stay texts
    workbook.py DOORCOST seal             which files are overwritten

openpyxl reads the cells; LibreOffice and gnumeric recalculate a copy whose stored values were all
set to nothing, so that what they show they have computed.  Money must agree to the cent, other
numbers to one unit of the last digit shown.  Exit status 0: all agrees.
"""
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import warnings
import zipfile
from decimal import ROUND_HALF_UP, Decimal

import openpyxl

warnings.filterwarnings("ignore", "Workbook contains no default style")

MONEY = "#,##0.00"
# what a formula may answer besides a number: whether a choice still holds
WORDS = {"ok", "no", "sums do not add up: run again", "run again", "plan: run again", "as the program made it",
         "figures were changed: run again", "as read", "changed",
         "options are as the program made them",
         "changed since it was made", "changed: under 1 %",
         "figures were changed, options were not: run again"}
# why so much is bought, on Buy: clauses of plain words about figures, the first without its `; `
NOTE = re.compile(r"=MID\(.*,3,500\)")
CLAUSE = re.compile(r'"(?:; )?[a-z0.,;: ]*"')
# Cells of the sheet Checks: how near is near enough.
TOLERANCES = ("same_within", "limit_within", "sum_within")
# columns that are read off the drawing of a door, or say what a number was, and sheets that show values of the options
DRAWN = {("Setups", "no."), ("Bores", "hinges"), ("Cut", "stop"), ("Cut", "length"), ("Cut", "width"), ("Cut", "pieces"), ("Cut", "rough length"),
         ("Cut", "rough width"), ("Parts", "thick"), ("Panels", "staves"), ("Rates", "as read"), ("Checks", "when made")}
OF_OPTIONS = ("Compare", "Quote", "Charts")
# the sheets that are printed, and on how many pages at most
PRINTED = ("Job", "Quote", "Buy", "Cut", "Setups", "Bores")
MOST_PAGES = 10
ERRORS = re.compile(r"^(#(REF|NAME|VALUE|DIV/0|NUM|N/A|NULL)|Err:)")
PROFILE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry"
 xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""


class Faults:
    """What is wrong, each said once; of one kind no more than ten are printed."""

    def __init__(self):
        self.counts = {}

    def add(self, kind, text):
        self.counts[kind] = self.counts.get(kind, 0) + 1
        if self.counts[kind] <= 10:
            print(f"{kind}: {text}")

    def expect(self, truth, kind, text):
        if not truth:
            self.add(kind, text)

    def status(self):
        for kind, count in self.counts.items():
            print(f"{count} x {kind}")
        return 1 if self.counts else 0


def run(command, folder, **more):
    return subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False,
                          timeout=300, **more)


def cells(path, values):
    """{(sheet, cell): cell} of all cells that hold something."""
    book = openpyxl.load_workbook(path, data_only=values)
    return {(sheet.title, cell.coordinate): cell for sheet in book for row in sheet.iter_rows()
            for cell in row if cell.value is not None}


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def shown_decimals(number_format):
    """How many decimals a number format shows; of fractions of an inch, those of a 64th."""
    if "?/" in number_format:
        return 6
    match = re.search(r"0\.(0+)", number_format)
    return len(match.group(1)) if match else 0


def cents(value):
    return Decimal(repr(value)).quantize(Decimal("0.01"), ROUND_HALF_UP)


def empty_values(source, target):
    """A copy in which every formula has the stored value 0: who shows more has computed it."""
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            data = old.read(name)
            if name.startswith("xl/worksheets/sheet"):
                data = re.sub(rb"(</f>)<v>[^<]*</v>", rb"\1<v>0</v>", data)
            new.writestr(name, data)


def office(folder, *arguments):
    """LibreOffice with a profile of its own that recalculates whatever it loads."""
    user = folder / "profile" / "user"
    if not user.exists():
        user.mkdir(parents=True)
        (user / "registrymodifications.xcu").write_text(PROFILE, encoding="utf-8")
    result = run(["soffice", f"-env:UserInstallation=file://{folder}/profile", "--headless",
                  *arguments], folder)
    if result.returncode != 0:
        sys.exit(f"soffice: {result.stderr}")


def recalculate_office(folder, path):
    out = folder / "office"
    out.mkdir(exist_ok=True)
    office(folder, "--convert-to", "xlsx", "--outdir", str(out), str(path))
    return out / path.name


def recalculate_gnumeric(folder, path):
    out = folder / ("gnumeric-" + path.name)
    result = run(["ssconvert", "--recalc", "--export-type=Gnumeric_Excel:xlsx", str(path), str(out)],
                 folder)
    if not out.exists():
        sys.exit(f"ssconvert: {result.stderr}")
    return out


def compare(faults, who, formulas, stored, path):
    """What another program has computed against what was stored."""
    theirs = cells(path, True)
    compared = 0
    for at, cell in formulas.items():
        # an empty text is read as one, or as none
        ours, got = (None if at not in read or read[at].value == "" else read[at].value for read in (stored, theirs))
        where = f"{at[0]}!{at[1]} {cell.value[:80]}"
        if not is_number(ours) or not is_number(got):
            faults.expect(ours == got, f"{who}: no number", f"{where}: {got!r}, stored {ours!r}")
            compared += ours == got
            continue
        compared += 1
        if MONEY in cell.number_format:
            same = cents(ours) == cents(got)
        else:
            same = abs(ours - got) <= 10.0 ** -shown_decimals(cell.number_format) * (1 + 1e-9)
        faults.expect(same, f"{who}: differs", f"{where}: {got}, stored {ours}")
    return compared


def check_cells(faults, path, tape):
    """Every computed figure a formula, nothing else; no errors; money with two decimals."""
    formulas = {at: c for at, c in cells(path, False).items() if c.data_type == "f"}
    plain = {at: c for at, c in cells(path, False).items() if is_number(c.value)}
    stored = cells(path, True)
    for at, cell in formulas.items():
        value = stored[at].value if at in stored else None
        noted = at[0] == "Buy" and NOTE.fullmatch(cell.value)
        faults.expect(is_number(value) or value in WORDS or noted, "a formula without a number",
                      f"{at}: {value!r}")
        faults.expect("[" not in cell.value, "a formula that leaves the workbook", f"{at}")
    for at, cell in stored.items():
        faults.expect(not ERRORS.match(str(cell.value)), "an error value", f"{at}: {cell.value}")
        if is_number(cell.value) and "," in cell.number_format and "." in cell.number_format:
            faults.expect(MONEY in cell.number_format, "money in another form",
                          f"{at}: {cell.number_format}")
            faults.expect(abs(cell.value * 100 - round(cell.value * 100)) < 1e-6,
                          "money with parts of a cent", f"{at}: {cell.value}")

    # of each computed figure one cell makes it; what is plain is given or chosen, read off the
    # drawing of a door, or the value of an option
    computed = sum(1 for figure in tape if figure["op"] not in ("given", "chosen"))
    makers = sum(1 for at, cell in formulas.items()
                 if cell.value.startswith("=ROUND(") and at[0] != "Compare")
    faults.expect(makers == computed, "computed figures that are no formula",
                  f"{computed} figures, {makers} formulas that make one")
    given = len(tape) - computed
    drawn = {(at[0], c.column_letter) for at, c in cells(path, False).items()
             if (at[0], c.value) in DRAWN}
    names = openpyxl.load_workbook(path).defined_names
    near = {next(iter(names[name].destinations)) for name in TOLERANCES}
    near = {(tab, at.replace("$", "")) for tab, at in near}
    faults.expect(near <= set(plain), "a tolerance that is no number", f"{near}")
    own = [at for at in plain if at[0] not in OF_OPTIONS and at not in near and
           (at[0], at[1].rstrip("0123456789")) not in drawn]
    faults.expect(len(own) == given, "plain numbers that are not given",
                  f"{given} given or chosen figures, {len(own)} plain numbers")
    values = {round(float(figure["shown"]), 6) for figure in tape
              if figure["op"] in ("given", "chosen")}
    for at in own:
        faults.expect(round(float(plain[at].value), 6) in values, "a plain number of no figure",
                      f"{at}: {plain[at].value}")
    return formulas, stored


def check_inputs(faults, path):
    """Every cell that may be changed says what may be typed, and asks about what is unusual."""
    sheet = openpyxl.load_workbook(path)["Rates"]
    asked = {str(area): rule for rule in sheet.data_validations.dataValidation
             for area in rule.sqref.ranges}
    open_cells = [c for row in sheet.iter_rows() for c in row if not c.protection.locked]
    faults.expect(open_cells, "no inputs", path.name)
    for cell in open_cells:
        rule = asked.get(cell.coordinate)
        percent = "%" in cell.number_format
        faults.expect(rule is not None and rule.prompt and rule.errorStyle == "warning"
                      and ("5 means 5 %" in rule.prompt) == percent
                      and (">=1" in rule.formula1) == percent,
                      "an input that does not say what may be typed", cell.coordinate)


def check_links(faults, path):
    """The first sheet leads to every other one, and each of them back; a title is its tab's name."""
    book = openpyxl.load_workbook(path)
    first = book.worksheets[0]
    led = {c.hyperlink.location for row in first.iter_rows() for c in row if c.hyperlink}
    for sheet in book.worksheets[1:]:
        faults.expect(f"{sheet.title}!A1" in led, "a sheet that the first does not lead to", sheet.title)
        back = sheet["A1"].hyperlink
        faults.expect(back is not None and back.location == f"{first.title}!A1",
                      "a sheet that does not lead back", sheet.title)
        title = sheet["A2"].value or sheet["B2"].value
        faults.expect(title == sheet.title, "a title that is not the tab's name", f"{sheet.title}: {title}")
    faults.expect([s.title for s in book.worksheets[:2]] == ["Job", "Rates"], "another order",
                  [s.title for s in book.worksheets])


def check_figures(faults, stored, tape):
    """The quote's total stands on the quote sheet as the program has it."""
    for label in ("total", "before tax", "balance"):
        wanted = [figure["shown"] for figure in tape
                  if figure["label"] == label and figure["subject"] == ""]
        found = [c.value for at, c in stored.items() if at[0] == "Quote" and is_number(c.value)]
        for value in wanted:
            faults.expect(any(abs(float(value) - f) < 0.005 for f in found),
                          "a figure that is not on the quote", f"{label} {value}")


EMU = 9525  # of a dot at 96 an inch
ANCHOR = re.compile(r"<xdr:twoCellAnchor.*?</xdr:twoCellAnchor>", re.DOTALL)


def columns_of(text):
    """Widths of the columns of a sheet in dots, as the file has them."""
    widths = {}
    for first, last, width in re.findall(r'<col min="(\d+)" max="(\d+)" width="([\d.]+)"', text):
        for column in range(int(first) - 1, int(last)):
            widths[column] = round(float(width) * 7)
    return widths


def corners(anchor, widths, heights):
    """(left, top, right, bottom) of what an anchor holds, in dots; a picture has its own size."""
    def at(which):
        column, off_x, row, off_y = (int(n) for n in re.search(
            rf"<xdr:{which}><xdr:col>(\d+)</xdr:col><xdr:colOff>(-?\d+)</xdr:colOff>"
            rf"<xdr:row>(\d+)</xdr:row><xdr:rowOff>(-?\d+)</xdr:rowOff>", anchor).groups())
        return (sum(widths.get(c, 64) for c in range(column)) + off_x / EMU,
                sum(heights.get(r, 17) for r in range(row)) + off_y / EMU)

    left, top = at("from")
    right, bottom = at("to")
    wide, high = (int(n) / EMU for n in re.search(r'<a:ext cx="(\d+)" cy="(\d+)"/>', anchor).groups()) \
        if "<a:ext " in anchor else (0, 0)
    return left, top, max(right, left + wide), max(bottom, top + high)


def check_pictures(faults, path):
    """No picture and no chart lies on another, even where a program's columns are a little narrow."""
    count = 0
    with zipfile.ZipFile(path) as parts:
        for name in sorted(n for n in parts.namelist() if n.startswith("xl/drawings/drawing")):
            number = re.search(r"(\d+)\.xml", name)[1]
            sheet = next(n for n in parts.namelist() if n.startswith("xl/worksheets/_rels/")
                         and f"drawing{number}.xml" in parts.read(n).decode())
            text = parts.read(sheet.replace("_rels/", "").removesuffix(".rels")).decode()
            widths = columns_of(text)
            heights = {int(r) - 1: float(h) * 96 / 72
                       for r, h in re.findall(r'<row r="(\d+)"[^>]* ht="([\d.]+)"', text)}
            boxes = [corners(a, widths, heights) for a in ANCHOR.findall(parts.read(name).decode())]
            count += len(boxes)
            for i, a in enumerate(boxes):
                for b in boxes[i + 1:]:
                    apart = min(a[2], b[2]) - max(a[0], b[0]) < -1 or \
                        min(a[3], b[3]) - max(a[1], b[1]) < -1
                    faults.expect(apart, "pictures that lie on each other",
                                  f"{path.name}, {sheet}: {a} and {b}")
    return count


LEAST_LETTERS = 6.9  # points on paper
BOX = 1.303  # a word's box by pdftotext, in sizes of its letters


def check_letters(faults, pages, folder):
    """Most words of each page are large enough to be read; its foot is not looked at."""
    result = run(["pdftotext", "-bbox", str(pages), "-"], folder)
    for number, page in enumerate(re.findall(r"<page .*?</page>", result.stdout, re.DOTALL), 1):
        low = float(re.search(r'height="([\d.]+)"', page)[1]) - 50
        highs = sorted((float(b) - float(a)) / BOX for a, b in
                       re.findall(r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)"', page)
                       if float(a) < low)
        faults.expect(highs and highs[len(highs) // 2] >= LEAST_LETTERS, "a page printed too small",
                      f"page {number}: {highs[len(highs) // 2] if highs else 0:.1f} points")


def page_texts(folder, pages):
    return run(["pdftotext", "-layout", str(pages), "-"], folder).stdout.split("\f")[:-1]


def without_print_areas(source, target):
    """A copy of which every sheet is printed whole."""
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            data = old.read(name)
            if name == "xl/workbook.xml":
                data = re.sub(rb'<definedName name="_xlnm.Print_Area".*?</definedName>', b"", data)
            new.writestr(name, data)


def check_print(faults, folder, path):
    """What is printed when all is: the job's papers, no more than ten pages, each with its title."""
    office(folder, "--convert-to", "pdf", "--outdir", str(folder), str(path))
    texts = page_texts(folder, path.with_suffix(".pdf"))
    faults.expect(0 < len(texts) <= MOST_PAGES, "more pages than a person prints", len(texts))
    titles = []
    for number, text in enumerate(texts, 1):
        words = text.split()
        title = words[0].rstrip(":") if words else ""
        faults.expect(title in PRINTED, "a page without its title", f"page {number}: {text[:60]!r}")
        if title not in titles:
            titles.append(title)
    sheets = openpyxl.load_workbook(path, read_only=True).sheetnames
    told = ", ".join(titles[:-1]) + " and " + titles[-1]
    faults.expect(f"Printed are {told}; the other sheets are for the screen." in " ".join(texts[0].split()),
                  "sheet Job does not say what is printed", told)
    faults.expect(titles == [title for title in PRINTED if title in sheets],
                  "other sheets are printed", titles)
    print(f"{len(texts)} pages printed")


def check_pages(faults, folder, path, stored):
    """The pages of all sheets: nothing cut off, money as people read it."""
    whole = folder / "whole.xlsx"
    without_print_areas(path, whole)
    office(folder, "--convert-to", "pdf", "--outdir", str(folder), str(whole))
    pages = whole.with_suffix(".pdf")
    check_letters(faults, pages, folder)
    result = run(["pdftotext", "-layout", str(pages), "-"], folder)
    faults.expect(result.returncode == 0 and result.stdout.strip() != "", "no pages", str(pages))
    for number, page in enumerate(result.stdout.split("\f"), 1):
        faults.expect("###" not in page, "a number that does not fit its cell", f"page {number}")
        faults.expect(not re.search(r"#(REF|NAME|VALUE|DIV/0|NUM|N/A)|Err:5", page), "an error value",
                      f"page {number}")
    words = set(result.stdout.split())
    for at, cell in stored.items():
        if at[0] == "Quote" and is_number(cell.value) and MONEY in cell.number_format:
            sign = "+" if cell.number_format.startswith("+") else ""
            faults.expect(f"{cell.value:{sign},.2f}" in words, "money in another form on paper",
                          f"{at}: {cell.value:,.2f}")


def quote(doorcost, job, path, *more):
    return run([doorcost, "quote", str(job), "-o", str(path), "--effort", "20", *more], path.parent)


def check(doorcost, job, folder, faults):
    path = folder / "quote.xlsx"
    result = quote(doorcost, job, path, "--json")
    if result.returncode != 0:
        sys.exit(f"{result.stderr}")
    tape = json.loads(result.stdout)["estimates"][0]["tape"]["figures"]
    formulas, stored = check_cells(faults, path, tape)
    check_figures(faults, stored, tape)
    check_inputs(faults, path)
    check_print(faults, folder, path)
    check_pages(faults, folder, path, stored)
    check_links(faults, path)
    client = path.with_name("quote-client.xlsx")
    pictures = check_pictures(faults, path)
    print(f"{pictures} pictures, {check_pictures(faults, client)} in the client's workbook")
    faults.expect(pictures > 0, "no pictures", path.name)

    emptied = folder / "emptied.xlsx"
    empty_values(path, emptied)
    resaved = folder / "resaved.xlsx"
    openpyxl.load_workbook(path).save(resaved)
    for who, book in (("LibreOffice", recalculate_office(folder, emptied)),
                      ("gnumeric", recalculate_gnumeric(folder, emptied)),
                      ("LibreOffice after openpyxl", recalculate_office(folder, resaved)),
                      ("gnumeric after openpyxl", recalculate_gnumeric(folder, resaved))):
        compared = compare(faults, who, formulas, stored, book)
        faults.expect(compared == len(formulas), f"{who}: cells", f"{compared} of {len(formulas)}")
        print(f"{who}: {compared} cells recalculated")

    again = folder / "again.xlsx"
    quote(doorcost, job, again)
    faults.expect(again.read_bytes() == path.read_bytes(), "other bytes", "the same job twice")


HOSTILE = {
    "title": "=1+1",
    "client": '=HYPERLINK("http://localhost/","client")',
    "number": "-2+3",
    "note": "@SUM(A1:A9)",
    "address": "+49 1",
    "terms": "=cmd|' /C calc'!A0",
}
ROWS = [("=2+2", "+ROOM", "-1 is no formula"), ("+D2", "=A1", "@x"), ("-D3", "-room", "=Doors!B5"),
        ("@D4", "@room", "{=1}"), ("D5\t", "plain", "'quoted")]
REMARK = "=shop alone"  # of each row


def hostile(doorcost, folder, faults):
    """A job whose every text could be taken for a formula."""
    top = pathlib.Path(__file__).resolve().parents[2]
    shutil.copy(top / "tests/data/plain-shop.ini", folder / "shop.ini")
    shutil.copy(top / "rates/woods.csv", folder / "woods.csv")
    shop = (folder / "shop.ini").read_text(encoding="utf-8")
    shop = shop.replace("[shop]\n", "[shop]\nname = =Shop\ncontact = @mail\nwoods = woods.csv\n")
    shop = shop.replace("[spray gun]", "[spray gun]\nother loss = 5 %")
    (folder / "shop.ini").write_text(shop, encoding="utf-8")
    job = (top / "tests/data/plain-job.ini").read_text(encoding="utf-8")
    job = job.replace("title   = A bench test\n", "")
    job = job.replace("[job]\n", "[job]\n" + "".join(f"{k} = {v}\n" for k, v in HOSTILE.items()))
    job = job.replace("finish  = none", "finish  = painted\ncolor = =RED")
    (folder / "job.ini").write_text(job, encoding="utf-8")
    lines = ["id,room,width,height,note,remark"]
    lines += [f'"{id}","{room}",18,{30 + i},"{note}","{REMARK}"' for i, (id, room, note) in enumerate(ROWS)]
    (folder / "doors.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")

    path = folder / "quote.xlsx"
    result = quote(doorcost, folder / "job.ini", path, "--json")
    if result.returncode != 0:
        sys.exit(f"{result.stderr}")
    sheets = openpyxl.load_workbook(path)
    for sheet, there in (("Quote", False), ("Doors", True)):
        told = [cell.value for row in sheets[sheet].iter_rows() for cell in row if REMARK in str(cell.value)]
        faults.expect(bool(told) == there, "a remark of the shop is where the client may read it, or nowhere", sheet)
    tape = json.loads(result.stdout)["estimates"][0]["tape"]["figures"]
    formulas, stored = check_cells(faults, path, tape)
    for at, cell in formulas.items():
        plain = cell.value
        for word in WORDS | {"together"}:
            plain = plain.replace(f'"{word}"', "0")
        if NOTE.fullmatch(plain):
            plain = CLAUSE.sub("0", plain).replace("&", "+")
        faults.expect(re.fullmatch(r"=[A-Za-z0-9_!:$.,+*/()<>= -]+", plain),
                      "a text that became a formula", f"{at}: {cell.value}")
    wanted = list(HOSTILE.values()) + [text for row in ROWS for text in row] + ["=Shop", "@mail"]
    emptied = folder / "emptied.xlsx"
    empty_values(path, emptied)
    for who, book in (("as written", path), ("LibreOffice", recalculate_office(folder, emptied)),
                      ("gnumeric", recalculate_gnumeric(folder, emptied))):
        texts = [c.value for c in cells(book, False).values() if c.data_type == "s"]
        for text in wanted:
            faults.expect(any(text.strip() in t for t in texts), f"{who}: a text that is lost", text)
        if book != path:
            compare(faults, who, formulas, stored, book)


def seal(doorcost, folder, faults):
    """Ours and untouched is written over; what somebody saved, or never was ours, is not."""
    top = pathlib.Path(__file__).resolve().parents[2]
    job = top / "samples/kitchen/kitchen.ini"
    path = folder / "quote.xlsx"

    def expect(status, what, *more):
        before = path.read_bytes() if path.exists() else b""
        result = quote(doorcost, job, path, *more)
        faults.expect(result.returncode == status, "exit status",
                      f"{what}: {result.returncode}, expected {status}: {result.stderr}")
        if status != 0:
            faults.expect(path.read_bytes() == before, "a refused file has changed", what)
            faults.expect("--force" in result.stderr, "no word of --force", what)
        ours = {path.name, "quote-client.xlsx", "quote-client.pdf"}
        left = [p.name for p in folder.iterdir() if p.name not in ours]
        faults.expect(not left, "files left behind", f"{what}: {left}")

    expect(0, "nothing there")
    expect(0, "ours, untouched")
    book = openpyxl.load_workbook(path)
    book["Quote"]["A1"] = "edited"
    book.save(path)
    expect(3, "saved by another program")
    expect(0, "told to", "--force")
    expect(0, "ours again")
    path.write_bytes(path.read_bytes()[:-1] + b"x")
    expect(3, "a byte of the seal changed")
    expect(0, "told to", "--force")
    data = bytearray(path.read_bytes())
    data[len(data) // 2] ^= 1
    path.write_bytes(bytes(data))
    expect(3, "a byte in the middle changed")
    path.write_bytes(b"no workbook")
    expect(3, "a text file")
    path.write_bytes(b"")
    expect(0, "an empty file, in which nothing is lost")


def main(arguments):
    if len(arguments) < 3:
        print(__doc__)
        return 2
    doorcost = str(pathlib.Path(arguments[1]).resolve())
    faults = Faults()
    with tempfile.TemporaryDirectory(prefix="doorcost-workbook-") as name:
        folder = pathlib.Path(name)
        if arguments[2] == "check":
            check(doorcost, pathlib.Path(arguments[3]).resolve(), folder, faults)
        elif arguments[2] == "hostile":
            hostile(doorcost, folder, faults)
        else:
            seal(doorcost, folder, faults)
    return faults.status()


if __name__ == "__main__":
    sys.exit(main(sys.argv))
