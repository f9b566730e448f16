# SPDX-License-Identifier: MIT
"""Lists in workbooks of three other programs, and workbooks made to cost much.

list_book.py same PROGRAM SOURCE    the same estimate as from the CSV file
list_book.py bombs PROGRAM SOURCE   each refused within a second of processor time and 200 MB
"""
import csv
import datetime
import json
import os
import re
import shutil
import struct
import subprocess
import sys
import tempfile
import zipfile

from told import fail

MIXED = re.compile(r"(?:(\d+) )?(\d+)/(\d+)")


def quote(program, folder, doors):
    """What `quote` tells with that list; the list's own rows without their places."""
    with open(f"{folder}/job.ini", encoding="utf-8") as file:
        text = re.sub(r"(?m)^doors .*", f"doors = {doors}", file.read())
    with open(f"{folder}/other.ini", "w", encoding="utf-8") as file:
        file.write(text)
    done = subprocess.run([program, "quote", f"{folder}/other.ini", "--json", "--force"],
                          capture_output=True, text=True, check=False)
    return json.loads(done.stdout), done.stderr


def placeless(told):
    """The same without files and lines."""
    if isinstance(told, dict):
        return {key: placeless(value) for key, value in told.items()
                if key not in ("file", "line")}
    return [placeless(one) for one in told] if isinstance(told, list) else told


def put(cell, text):
    """A cell of the CSV file as a person would have typed it into a sheet."""
    mixed = MIXED.fullmatch(text)
    if mixed and 64 % int(mixed[3]) == 0:
        cell.value = int(mixed[1] or 0) + int(mixed[2]) / int(mixed[3])
        cell.number_format = "# ??/??"
    elif re.fullmatch(r"\d+(\.\d+)?", text):
        cell.value = float(text) if "." in text else int(text)
    elif text:
        cell.value = text


def write_book(path, rows, epoch=None):
    """The list with a title above and below blank rows, on the second sheet that is shown."""
    import openpyxl
    book = openpyxl.Workbook()
    if epoch:
        book.epoch = epoch
    book.active.title = "Notes"
    book.active["A1"] = "of the visit"
    sheet = book.create_sheet("Doors & fronts")
    sheet["B2"] = "What is to be made"
    sheet.merge_cells("B2:F2")
    for r, row in enumerate(rows):
        for c, text in enumerate(row):
            put(sheet.cell(r + 4 + (r > 3), c + 2), text)  # a blank row below the third
    book.save(path)
    return sheet


def convert(folder, source, ending):
    """The workbook as LibreOffice and gnumeric save it."""
    made = f"{folder}/office/{source[:-5]}.{ending}"
    subprocess.run(["soffice", f"-env:UserInstallation=file://{folder}/profile", "--headless",
                    "--convert-to", ending, "--outdir", f"{folder}/office", f"{folder}/{source}"],
                   check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    other = f"{folder}/gnumeric-{source[:-5]}.{ending}"
    subprocess.run(["ssconvert", f"{folder}/{source}", other], check=True,
                   stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return [os.path.relpath(made, folder), os.path.basename(other)]


def same(program, source):
    import openpyxl.utils.datetime
    with tempfile.TemporaryDirectory() as top:
        shutil.copytree(f"{source}/rates", f"{top}/rates")
        folder = f"{top}/samples/kitchen"
        shutil.copytree(f"{source}/samples/kitchen", folder)
        os.rename(f"{folder}/kitchen.ini", f"{folder}/job.ini")
        with open(f"{folder}/doors.csv", encoding="utf-8", newline="") as file:
            rows = list(csv.reader(file))
        wanted, _ = quote(program, folder, "doors.csv")
        write_book(f"{folder}/list.xlsx", rows)
        books = ["list.xlsx"] + convert(folder, "list.xlsx", "xlsx") + \
            convert(folder, "list.xlsx", "ods")
        for book in books:
            told, said = quote(program, folder, f"{book}:doors & FRONTS")
            if placeless(told.get("estimates")) != placeless(wanted["estimates"]):
                fail(f"{book} gives another estimate than the CSV file\n{said}")
        # a fraction that became a date, in workbooks that count days in either way
        column = rows[0].index("width") + 1
        for epoch in (None, openpyxl.utils.datetime.CALENDAR_MAC_1904):
            sheet = write_book(f"{folder}/dates.xlsx", rows, epoch)
            cell = sheet.cell(5, column + 1)
            cell.value, cell.number_format = datetime.date(2026, 3, 4), "d-mmm"
            sheet.parent.save(f"{folder}/dates.xlsx")
            for book in ["dates.xlsx"] + convert(folder, "dates.xlsx", "ods"):
                _, said = quote(program, folder, f"{book}:Doors & fronts")
                place = f"{book}:Doors & fronts!{cell.coordinate}: error: width '2026-03-04'"
                if place not in said or "made it of 3/4;" not in said:
                    fail(f"{book}: {said}")
                books.append(book)
    print(f"{len(books)} workbooks as they should be")


# --- workbooks made to cost much ---

RELATION = ('<Relationship Id="%s" Target="%s" Type="http://schemas.openxmlformats.org/'
            'officeDocument/2006/relationships/%s"/>')
SHEET = "xl/sheet.xml"
START, END = "<worksheet><sheetData>", "</sheetData></worksheet>"
OTHERS = {
    "_rels/.rels": "<a>" + RELATION % ("a", "xl/book.xml", "officeDocument") + "</a>",
    "xl/book.xml": '<a><sheet name="S" id="s"/></a>',
    "xl/_rels/book.xml.rels": "<a>" + RELATION % ("s", "sheet.xml", "worksheet")
    + RELATION % ("t", "texts.xml", "sharedStrings") + "</a>",
    "xl/texts.xml": "<sst><si><t>" + "y" * 19000 + "</t></si></sst>",
    SHEET: START + END,
}
BLANK_TEXTS = {**OTHERS, "xl/texts.xml": "<sst><si><t>" + " " * 19000 + "</t></si></sst>"}
CONTENT = "content.xml"
OPEN = {"mimetype": "application/vnd.oasis.opendocument.spreadsheet", CONTENT: ""}
OPEN_START = ("<office:document-content " + " ".join(
    f'xmlns:{name}="{name}"' for name in ("office", "table", "text"))
    + '><office:body><office:spreadsheet><table:table table:name="N">')
OPEN_END = "</table:table></office:spreadsheet></office:body></office:document-content>"
CELL = '<table:table-row><table:table-cell office:value-type="string"><text:p>'
CELL_END = "</text:p></table:table-cell></table:table-row>"
TOLD_BLANKS = '<text:s text:c="20000"/>'
MB = 1 << 20


def parts(count, text):
    """A text many times, in pieces, so that this program stays small; %d: its number."""
    step = 1000
    for at in range(0, count, step):
        yield "".join(text % i if "%" in text else text for i in range(at, at + step))


def bomb(path, part, start, pieces, end, others):
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as book:
        for name, text in others.items():
            with book.open(name, "w") as out:
                if name != part:
                    out.write(text.encode())
                    continue
                out.write(start.encode())
                for piece in pieces:
                    out.write(piece.encode())
                out.write(end.encode())


def crowd(path, count):
    """An archive that names one byte under many names."""
    with open(path, "wb") as out:
        out.write(struct.pack("<4s5H3I2H", b"PK\3\4", 20, 0, 0, 0, 0, 0, 0, 0, 1, 0) + b"a")
        start = out.tell()
        for i in range(count):
            out.write(struct.pack("<4s6H3I5H2I", b"PK\1\2", 20, 20, 0, 0, 0, 0, 0, 0, 0, 5, 0, 0,
                                  0, 0, 0, 0) + b"%05x" % i)
        size = out.tell() - start
        end = out.tell()
        out.write(struct.pack("<4sQ2H2I4Q", b"PK\6\6", 44, 45, 45, 0, 0, count, count, size, start))
        out.write(struct.pack("<4sIQI", b"PK\6\7", 0, end, 1))
        out.write(struct.pack("<4s4H2IH", b"PK\5\6", 0, 0, 0xffff, 0xffff, 0xffffffff, 0xffffffff,
                              0))


ROW = "<row>" + "<c><v>1</v></c>" * 10 + "</row>"
BOMBS = [  # what it is, the part, its start, a piece, how often it stands, its end, all parts
    ("blanks", SHEET, START, " " * 1000, 400000, END),
    ("rows", SHEET, START, ROW, 450000, END),
    ("tags in tags", SHEET, START, "<a>", 300000, ""),
    ("attributes", SHEET, START + "<row ", 'a%d="" ', 300000, "/>" + END),
    ("tags with attributes", SHEET, START,
     "<row " + " ".join(f'a{i}=""' for i in range(190)) + "/>", 40000, END),
    ("names", SHEET, START, "<a%d/>", 300000, END),
    ("a long text", SHEET, START + "<row><c><v>", "1" * 1000, 60000, "</v></c></row>" + END),
    ("a long comment", SHEET, START + "<!--", "<> " * 300, 70000, "-->" + END),
    ("long rows", SHEET, START, "<row><c t='s'><v>0</v></c></row>", 100000, END),
    ("texts", "xl/texts.xml", "<sst>", "<si/>", 12000000, "</sst>"),
    ("cells over rows", SHEET, START + ROW * 50000 + "</sheetData><mergeCells>",
     '<mergeCell ref="A1:A50000"/>', 9000, "</mergeCells></worksheet>"),
    ("blanks that cells share", SHEET, START, "<row><c t='s'><v>0</v></c></row>", 1000000, END,
     BLANK_TEXTS),
    ("blanks told in cells", CONTENT, OPEN_START, CELL + TOLD_BLANKS + CELL_END, 300000, OPEN_END,
     OPEN),
    ("blanks told in a cell", CONTENT, OPEN_START + CELL, TOLD_BLANKS, 1000000,
     CELL_END + OPEN_END, OPEN),
]
# The limit that some go over, as it is told.
LIMITS = {"rows": "over 48 MB unpacked", "long rows": "over 32 MB of text",
          "texts": "over 2000000 texts that cells share",
          "cells over rows": "over 100000 rows that such cells go over"}


def measure(program, job, doors, name):
    with open(job, "w", encoding="utf-8") as file:
        file.write(f"[job]\nrates = none.ini\ndoors = {doors}\n")
    child = subprocess.Popen([program, "check", job], stdout=subprocess.PIPE,
                             stderr=subprocess.STDOUT)
    said = child.stdout.read().decode()
    _, status, used = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    seconds = used.ru_utime + used.ru_stime
    print(f"{name}: {seconds:.2f} s, {used.ru_maxrss // 1024} MB")
    # a second where nothing else runs; beside others' work the processor's seconds are longer
    if child.returncode != 1 or "error" not in said or seconds > 3 or used.ru_maxrss > 200 * 1024:
        fail(f"{name}: status {child.returncode}, {seconds:.2f} s, {used.ru_maxrss} kB\n{said}")
    return said


def bombs(program, _):
    with tempfile.TemporaryDirectory() as folder:
        path, job = f"{folder}/bomb.xlsx", f"{folder}/job.ini"
        for name, part, start, piece, count, end, *all_parts in BOMBS:
            book = "bomb.ods" if part == CONTENT else "bomb.xlsx"
            bomb(f"{folder}/{book}", part, start, parts(count, piece), end,
                 *(all_parts or [OTHERS]))
            said = measure(program, job, book, name)
            if book not in said or LIMITS.get(name, "") not in said:
                fail(f"{name}: {said}")
        crowd(path, 300000)
        measure(program, job, "bomb.xlsx", "many names")


if __name__ == "__main__":
    {"same": same, "bombs": bombs}[sys.argv[1]](sys.argv[2], sys.argv[3])
