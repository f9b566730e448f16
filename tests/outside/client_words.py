#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What the client's papers say: both the same, all of it, and nothing over anything else.

    client_words.py DOORCOST JOB.ini

Makes the papers of a job as it is and in variants of it.  Of each: every text and amount of the
workbook stands in the PDF and every amount of the PDF in the workbook; no word of the PDF lies over
another; what is signed has the last term on its page; what is to be said of the sample is said.
Exit status 0: all is well.
"""
import pathlib
import re
import subprocess
import sys
import tempfile
from xml.etree import ElementTree

import openpyxl

from client import fail, prepare, quote

# What a table of cells needs and a page does not.
BOOK_ONLY = {"From", "difference", "total with it",
             "What is part of it, and on which terms",
             "adds to the total above", "takes off the total above"}
MONEY = re.compile(r"(?<![\w.])\d[\d,]*\.\d\d(?![\d.]| %)")
LONG_ID = "KITCHEN-NORTH-WALL-01-BESIDE-THE-WINDOW"


def bare(text):
    return re.sub(r"\s", "", text).casefold()


def pdf_text(path, *more):
    return subprocess.run(["pdftotext", "-raw", *more, str(path), "-"], capture_output=True,
                          text=True, check=True).stdout


def book_cells(path):
    for sheet in openpyxl.load_workbook(path, data_only=True):
        for row in sheet.iter_rows():
            yield from (cell for cell in row if cell.value is not None)


# --- both papers say the same ---

def compare(name, folder):
    text = pdf_text(folder / "out-client.pdf")
    page = bare(text)
    amounts = {one.replace(",", "") for one in MONEY.findall(text)}
    texts = []
    booked = set()
    for cell in book_cells(folder / "out-client.xlsx"):
        if isinstance(cell.value, str):
            texts.append(cell.value)
            booked.update(one.replace(",", "") for one in MONEY.findall(cell.value))
            said = re.sub(r"^(Quote|Estimate): |: _{10,}.*", "", cell.value)
            if said not in BOOK_ONLY and bare(said) not in page:
                fail(f"{name}: only in the workbook: {cell.value!r}")
        elif cell.column_letter in "DE" and cell.value == int(cell.value) and (
                ".0" in cell.number_format):
            fail(f"{name}: {cell.coordinate} shows noughts behind {cell.value}")
        elif ".00" in cell.number_format and "%" not in cell.number_format:
            booked.add(f"{abs(cell.value):.2f}")
    for amount in sorted(amounts - booked):
        fail(f"{name}: only in the PDF: {amount}")
    for amount in sorted(booked - amounts):
        fail(f"{name}: only in the workbook: {amount}")
    print(f"{name}: {len(texts)} texts, {len(booked)} amounts")
    return text, "\n".join(texts)


# --- how the pages look ---

def words_of(path):
    """The words of each page with their boxes."""
    xml = subprocess.run(["pdftotext", "-bbox", str(path), "-"], capture_output=True, text=True,
                         check=True).stdout
    tree = ElementTree.fromstring(re.sub(r"<!DOCTYPE[^>]*>", "", xml))
    for page in (one for one in tree.iter() if one.tag.endswith("page")):
        yield [(word.text, *(float(word.get(edge)) for edge in ("xMin", "yMin", "xMax", "yMax")))
               for word in page.iter() if word.tag.endswith("word")]


def look(name, path):
    pages = list(words_of(path))
    for number, words in enumerate(pages, 1):
        for i, (text, left, top, right, bottom) in enumerate(words):
            for other, left2, top2, right2, bottom2 in words[i + 1:]:
                wide = min(right, right2) - max(left, left2)
                high = min(bottom, bottom2) - max(top, top2)
                if wide > 1 and high > 4:
                    fail(f"{name}: page {number}: '{text}' lies over '{other}'")
    last = " ".join(word[0] for word in pages[-1])
    if "Law. Local law" not in last or not re.search("Agreed|Received", last):
        fail(f"{name}: what is signed stands without the last term on page {len(pages)}")
    return len(pages)


def even_lists(name, sheet):
    """Lists beside each other have no gaps: a text runs down to the dash of the next."""
    ends = {(one.min_row, one.min_col): one.max_row for one in sheet.merged_cells.ranges}
    dashes = [cell for row in sheet.iter_rows() for cell in row if cell.value == "\u2013"]
    columns = {cell.column for cell in dashes}
    for column in columns:
        rows = [cell.row for cell in dashes if cell.column == column]
        for row, following in zip(rows, rows[1:]):
            if ends.get((row, column + 1)) != following - 1:
                fail(f"{name}: row {row} of {sheet.title} is followed by a gap before row {following}")
    if len(columns) != 2:
        fail(f"{name}: {len(columns)} lists with dashes")


def sheets(name, path):
    for sheet in openpyxl.load_workbook(path):
        if sheet.sheet_view.pane is not None:
            fail(f"{name}: {sheet.title} has rows or columns that do not move")
        if sheet.page_setup.orientation == "landscape":
            fail(f"{name}: {sheet.title} does not fit an upright page")
        left = sheet.oddFooter.left.text or ""
        if len(left) > 46 or left.endswith("\u2026"):
            fail(f"{name}: the footer of {sheet.title} is too long: {left}")
        texts = [cell for row in sheet.iter_rows() for cell in row if isinstance(cell.value, str)]
        if any(cell.alignment.horizontal in (None, "general") for cell in texts):
            fail(f"{name}: {sheet.title} leaves it to the letters of a text at which side it stands")
    even_lists(name, sheet.parent["Terms"])


# --- variants ---

def every(text):
    return text


def is_adding(text):
    return re.sub(r"(\[option \w+\])", r"\1\nprice = adds", text)


def has_plain(text):
    return text + "\n[option plain]\npull = none\nprice = adds\n"


def is_long(text):
    """Names of 90 letters wherever one stands."""
    name = "who lives in the long house beside the water and looks upon the old harbor every day"
    for key in ("title", "client", "address", "ready"):
        text = re.sub(rf"(?m)^{key}  .*", f"{key} = The one {name}", text)
    text = re.sub(r"(?m)^stages .*", f"stages = 30 % when {name}", text)
    text = re.sub(r"(?m)^tax name .*\n", "", text)
    text = re.sub(r"(?m)^tax  .*", rf"\g<0>\ntax name = the tax of one {name}", text)
    return re.sub(r"\[option \w+\]", "[option for one " + name[:50] + "]", text)


def doors_with_long_ids(text):
    text = re.sub(r"(?m)^(\w)01,", LONG_ID + r"-\1,", text)
    return re.sub(r"(?m)^([^,]*),[^,]*,", r"\1,the room of all rooms with a window to the north and "
                  "one to the west and a stove,", text).replace("the room of all rooms with a window "
                  "to the north and one to the west and a stove", "room", 1)


def doors_of_one_room(text):
    """Enough rows for a room to run over a page."""
    head, first, *rest = text.splitlines()
    cells = first.split(",", 1)[1]
    return "\n".join([head, first, *(f"N{i:02},{cells}" for i in range(70)), *rest]) + "\n"


def doors_of_two_hinges(text):
    """Rows of one kind, every other one with hinges of its own."""
    rows = [f"M{i:03},galley,door,1,14 in,{20 + i % 5} in,{'client-hinge' if i % 2 else ''}" for i in range(120)]
    return "id,room,use,count,width,height,hinge\n" + "\n".join(rows) + "\n"


def doors_without_side(text):
    return text.replace(",left,", ",,").replace(",right,", ",,")


VARIANTS = [
    # name, lines of [job], change of the job, change of the list, what both say (patterns), what
    # neither says
    ("sum", "detail = sum\n", every, every,
     ["Agreed", "The prices hold|This is a quote", "Deposit, on order", "hinges left",
      "Hinge sides are as seen from the front."],
     ["lumber prices", "Received", "amount of the room"]),
    ("rooms", "detail = rooms\nrevision = 2\n", is_adding, every,
     ["(adds|takes) (off|to|[\\d,.]+ \\w+ (off|to)) the total above"], ["replaces the total"]),
    ("each", "detail = each\n", has_plain, every,
     ["price are of one of them", "takes (off|[\\d,.]+ \\w+ off) the total above",
      "Plain.*(Pulls: none|No pulls for)"], []),
    ("estimate", "paper = estimate\nready = in autumn\n", every, every,
     ["Estimate|ESTIMATE", "binds neither side", "Received", "Estimated total",
      "What would fall due", "Terms of the quote", "Expected to be ready: in autumn."],
     ["Agreed", "To the list", "only if the whole list", "This is a quote", "Valid until"]),
    ("long names", "", is_long, doors_with_long_ids, [LONG_ID + "-"], []),
    ("one room", "detail = each\n", every, doors_of_one_room, [], []),
    ("many hinges", "", every, doors_of_two_hinges,
     ["supplied, for M000, M002, M004, M006, M008, M010, M012, M014, M016, M018, M020, M022 and 48 more"],
     ["M024, M026"]),
    ("no side", "", every, doors_without_side, ["Hinge side still to be agreed: "],
     ["hinges left;", "hinges right"]),
]

SAMPLES = {
    "kitchen": ["door; hinges left; beside the range, close to the wall",
                "door; hinges left and right; sink and window bay",
                "Panels: MDF board; for G08, W05: poplar.",
                "Pulls: bar pull, 8 supplied, for G06, P01, P02",
                "Panels: maple plywood; for G08, W05: hard maple.",
                "Slab doors and fronts: maple plywood; for G13: birch plywood, banded.",
                "for P08: primed and dipped by the finisher, color lamp white",
                "Due with it: [\\d,.]+ on order \\(40 %\\), [\\d,.]+ when the doors are glued up",
                "Who pays otherwise owes [\\d,.]+ USD in all, and the same percentages of that",
                "or with the option: __", "6 weeks from the deposit"],
    "tea-kitchen": ["Panels: oak plywood; for T07: oak.",
                    "When the doors will be ready is agreed with the order."],
    "old-house": ["Frames: poplar; for D01, D02, D04: cherry.",
                  "for H01, H03, S01 to S03: painted, satin, color bottle green"],
    "station": ["pie-cut pair, hung leaf; hinges right", "bi-fold pair", "lift-up door", "tilt-out front",
                "drop-down door", "Hardware: "],
}


def check_words(name, papers, said, unsaid):
    flat = [bare(paper) for paper in papers]
    for want in said:
        for paper, where in zip(flat, ("PDF", "workbook")):
            if not re.search(bare(want), paper):
                fail(f"{name}: not in the {where}: {want}")
    for never in unsaid:
        for paper, where in zip(papers, ("PDF", "workbook")):
            if never in paper:
                fail(f"{name}: in the {where}: {never}")


def run_variant(doorcost, job, variant):
    name, lines, change, change_list, said, unsaid = variant
    with tempfile.TemporaryDirectory() as temporary:
        folder = pathlib.Path(temporary)
        copy = prepare(folder, job)
        text = copy.read_text(encoding="utf-8")
        for key in re.findall(r"(?m)^(\w+) =", lines) + ["agreed"] * ("estimate" in lines):
            text = re.sub(rf"(?m)^{key} .*\n", "", text)
        copy.write_text(change(text).replace("[job]\n", "[job]\n" + lines, 1), encoding="utf-8")
        doors = copy.parent / "doors.csv"
        doors.write_text(change_list(doors.read_text(encoding="utf-8")), encoding="utf-8")
        done = quote(doorcost, copy, folder)
        if done.returncode != 0:
            fail(f"{name}: {done.stderr}")
            return
        papers = compare(name, folder)
        has_options = "[option" in text
        if name == "rooms" and not has_options:
            said = []
        if name == "sum":
            said = said + SAMPLES[job.stem]
        check_words(name, papers, said, unsaid)
        pages = look(name, folder / "out-client.pdf")
        sheets(name, folder / "out-client.xlsx")
        if name == "rooms" and pdf_text(folder / "out-client.pdf").count("revision 2") < pages:
            fail(f"{name}: a page without the revision at its foot")
        if name == "one room" and ", continued" not in papers[0]:
            fail(f"{name}: a room goes on without its name")
        quoted = openpyxl.load_workbook(folder / "out.xlsx", read_only=True)["Quote"]
        head = " ".join(str(cell.value) for row in quoted["A1:C4"] for cell in row if cell.value)
        word = "Estimate" if name == "estimate" else "Quote"
        if not done.stdout.startswith(word) or f"{word}: " not in head:
            fail(f"{name}: '{done.stdout[:9]}', '{head}' heads the shop's papers, not {word}")


def letters(doorcost, job):
    """Letters without a shape are told of, others are not: those of a plane for private use have none.
    """
    for title, lacks in (("K\u00fcche \u0623\u0628", False), ("\U000f0041\U000f0042", True)):
        with tempfile.TemporaryDirectory() as temporary:
            folder = pathlib.Path(temporary)
            copy = prepare(folder, job)
            text = copy.read_text(encoding="utf-8")
            copy.write_text(re.sub(r"(?m)^title .*", f"title = {title}", text), encoding="utf-8")
            for call in (["quote"], ["draw"], ["plan"], ["plan", "--svg", "pages"], ["buy"]):
                target = "out.xlsx" if call == ["quote"] else "out.pdf"
                more = [] if "--svg" in call else ["-o", target]
                done = subprocess.run([doorcost, *call, str(copy), *more, "--force"], cwd=folder,
                                      capture_output=True, text=True, check=False, timeout=300)
                told = done.stderr.count("no typeface on this computer")
                if done.returncode != 0 or told != lacks or lacks != (title in done.stderr):
                    fail(f"letters: {call}, {title!a}: {done.stderr}")


def main():
    doorcost, job = sys.argv[1], pathlib.Path(sys.argv[2])
    for variant in VARIANTS:
        run_variant(doorcost, job, variant)
    letters(doorcost, job)
    print(f"{fail.count} faults")
    return 1 if fail.count else 0


if __name__ == "__main__":
    sys.exit(main())
