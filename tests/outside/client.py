#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What the client gets of a job holds what a client may see, and nothing else.

    client.py DOORCOST secrets JOB.ini   unpacks both files, and the page, and searches them
    client.py DOORCOST sums JOB.ini      recalculated, the workbook stays as it is, and adds up
    client.py DOORCOST repeat JOB.ini    the same inputs in two folders give the same bytes
    client.py DOORCOST keep JOB.ini      which files are overwritten, and that all are or none

Every number with decimals that stands in a file must be one that the client may see (amounts of the
sale, prices of doors where they are shown, sizes, percentages said), so a cost or a rate can't hide
under any name.  Exit status 0: all is well.
"""
import html.parser
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile
import zlib
from xml.etree import ElementTree

FORBIDDEN = re.compile(
    r"\b(costs?|hours?|hourly|rates?|suppliers?|waste|margins?|mark-?up|profits?|overhead|machines?|"
    r"machining|board[ -]feet|bf|contingency|labou?r|wages?|set-?ups?|minutes?|yield|remakes?|"
    r"consumables?|invented|transfer efficiency|wet film|\w+\.(ini|csv|txt|json))\b", re.IGNORECASE)
DECIMAL = re.compile(r"(?<![\w.])\d[\d,]*\.\d+(?![\w.]*\d)")
# Attributes of a workbook's parts that people read; the rest is the format's own.
READ_ATTRIBUTES = {"descr", "title", "name", "tooltip", "formatCode"}


def fail(text):
    print(text)
    fail.count += 1


fail.count = 0


def prepare(folder, job, detail=None, more=""):
    """Copies the job with its rates into folder, with a `detail` of its own; the path of the copy."""
    top = job.parent.parent.parent
    for name in ("samples", "rates"):
        shutil.copytree(top / name, folder / name)
    copy = folder / job.relative_to(top)
    if detail:
        text = copy.read_text(encoding="utf-8")
        copy.write_text(text.replace("[job]\n", f"[job]\ndetail = {detail}\n{more}", 1),
                        encoding="utf-8")
    return copy


def quote(doorcost, job, folder, *more):
    return subprocess.run([doorcost, "quote", str(job.relative_to(folder)), "-o", "out.xlsx", *more],
                          cwd=folder, capture_output=True, text=True, check=False, timeout=300)


# --- what the files hold ---

def book_texts(path):
    """Every text of the workbook with the part that it stands in."""
    texts = []
    with zipfile.ZipFile(path) as book:
        for part in book.namelist():
            data = book.read(part)
            if not part.endswith((".xml", ".rels", ".vml")):
                if not part.endswith(".png"):
                    fail(f"{path.name}: an unexpected part: {part}")
                continue
            if "comment" in part or "externalLink" in part or "custom" in part:
                fail(f"{path.name}: an unexpected part: {part}")
            for element in ElementTree.fromstring(data).iter():
                if element.text and element.text.strip():
                    texts.append((part, element.text))
                for name, value in element.attrib.items():
                    if name.split("}")[-1] in READ_ATTRIBUTES:
                        texts.append((part, value))
        for picture in (name for name in book.namelist() if name.endswith(".png")):
            chunks = re.findall(rb"(tEXt|zTXt|iTXt|eXIf)", book.read(picture))
            if chunks:
                fail(f"{path.name}: {picture} carries {chunks}")
    return texts


def pdf_texts(path):
    """What pdftotext reads, and what stands in the file and in its streams as plain letters."""
    data = path.read_bytes()
    text = subprocess.run(["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True,
                          check=True).stdout
    texts = [("text", text)]
    outside = re.sub(rb"stream\r?\n.*?endstream", b"", data, flags=re.DOTALL)
    texts.append(("objects", outside.decode("latin-1")))
    for stream in re.findall(rb"stream\r?\n(.*?)\r?\nendstream", data, flags=re.DOTALL):
        try:
            plain = zlib.decompress(stream)
        except zlib.error:
            plain = stream
        letters = sum(32 <= byte < 127 or byte in b"\r\n\t" for byte in plain)
        if plain and letters > 0.9 * len(plain):
            texts.append(("stream", plain.decode("latin-1")))
    return texts


class PageTexts(html.parser.HTMLParser):
    """Every text of a page, and the attributes that people are read; how it is drawn is left out."""

    def __init__(self):
        super().__init__()
        self.inside = []
        self.texts = []

    def handle_starttag(self, tag, attrs):
        if tag in ("style", "script", "svg", "text"):
            self.inside.append(tag)
        if tag == "script":
            fail("the client's page has a script")
        self.texts += [(name, value) for name, value in attrs
                       if name in ("alt", "title", "aria-label", "id", "data-l", "content")]

    def handle_endtag(self, tag):
        if self.inside and self.inside[-1] == tag:
            self.inside.pop()

    def handle_comment(self, data):
        if not re.fullmatch(r" doorcost [0-9a-f]{16} ", data):
            fail(f"the client's page has a comment: {data}")

    def handle_data(self, data):
        if data.strip() and (not self.inside or self.inside[-1] == "text"):
            self.texts.append(("text", data))


def page_texts(path):
    reader = PageTexts()
    reader.feed(path.read_text(encoding="utf-8"))
    return reader.texts


def visible(result, detail):
    """The numbers with decimals that the client may see, as they are printed."""
    base, *options = result["estimates"]
    seen = set()

    def walk(thing):
        if isinstance(thing, dict):
            if "figure" in thing and "value" in thing:
                seen.add(thing["value"])
            else:
                for key, value in thing.items():
                    if not re.search("profit|margin", key):
                        walk(value)
        elif isinstance(thing, list):
            for value in thing:
                walk(value)

    walk(base["sale"])
    for figure in base["tape"]["figures"]:
        if figure["label"] == "amount of a room" and detail != "sum":
            seen.add(figure["shown"])
        if figure["label"] in ("total", "before tax", "taxed"):
            seen.add(figure["shown"])
    for door in base["doors"]:
        seen.update(re.findall(r"\d+\.\d+", door["size"]))
        walk([door["width"], door["height"]])
        if detail == "each":
            walk([door["unit price"], door["amount"]])
    total = float(base["sale"]["total"]["value"])
    for option in options:
        walk({key: value for key, value in option["sale"].items()
              if key in ("deposit", "stages", "balance")})
        other = float(option["sale"]["total"]["value"])
        seen.update((option["sale"]["total"]["value"], f"{abs(other - total):.2f}"))
    return seen


def secrets(doorcost, job):
    for detail in ("sum", "rooms", "each"):
        with tempfile.TemporaryDirectory() as name:
            folder = pathlib.Path(name)
            copy = prepare(folder, job, detail)
            done = quote(doorcost, copy, folder, "--json")
            if done.returncode != 0:
                fail(done.stderr)
                return
            shown = subprocess.run([doorcost, "show", str(copy.relative_to(folder)), "-o", "out.html",
                                    "--client", "--effort", "5"],
                                   cwd=folder, capture_output=True, text=True, check=False)
            if shown.returncode != 0:
                fail(shown.stderr)
                return
            allowed = visible(json.loads(done.stdout), detail)
            for path, texts in ((folder / "out-client.xlsx", book_texts),
                                (folder / "out-client.pdf", pdf_texts),
                                (folder / "out-client.html", page_texts)):
                search(f"{detail}: {path.name}", texts(path), {plain(one) for one in allowed}, name)


def plain(number):
    """Without separators and without noughts at the end; to 12 digits, as workbooks write doubles to
    16, which makes 986.1799999999999 of 986.18."""
    number = number.replace(",", "")
    if len(number) > 13:
        number = f"{float(number):.12g}"
    return number.rstrip("0").rstrip(".") if "." in number else number


def search(where, texts, allowed, folder):
    numbers = 0
    for part, text in texts:
        for word in FORBIDDEN.findall(text):
            fail(f"{where}, {part}: the word '{word[0]}'")
        if folder in text or "/home/" in text or "/tmp/" in text:
            fail(f"{where}, {part}: a path")
        if part in ("stream", "objects") or part.startswith(("docProps", "xl/theme", "xl/styles",
                                                             "xl/drawings")):
            continue
        for number in DECIMAL.findall(text):
            numbers += 1
            if plain(number) not in allowed:
                fail(f"{where}, {part}: the number {number}")
    print(f"{where}: {len(texts)} texts, {numbers} numbers with decimals")


# --- sums ---

def sums(doorcost, job):
    import openpyxl  # pylint: disable=import-outside-toplevel
    for detail in ("sum", "rooms", "each"):
        with tempfile.TemporaryDirectory() as name:
            folder = pathlib.Path(name)
            copy = prepare(folder, job, detail)
            if quote(doorcost, copy, folder).returncode != 0:
                fail("no quote")
                return
            path = folder / "out-client.xlsx"
            stored = openpyxl.load_workbook(path, data_only=True)
            formulas = openpyxl.load_workbook(path)
            # openpyxl drops what was stored, so that LibreOffice computes all of it.
            (folder / "in").mkdir()
            formulas.save(folder / "in" / "again.xlsx")
            subprocess.run(["soffice", f"-env:UserInstallation=file://{folder}/profile",
                            "--headless", "--convert-to", "xlsx", "--outdir", str(folder),
                            str(folder / "in" / "again.xlsx")], capture_output=True, check=True,
                           timeout=120)
            again = openpyxl.load_workbook(folder / "again.xlsx", data_only=True)
            count = 0
            for sheet in formulas:
                if sheet.sheet_state != "visible":
                    fail(f"{detail}: a hidden sheet: {sheet.title}")
                for row in sheet.iter_rows():
                    for cell in row:
                        if not isinstance(cell.value, str) or not cell.value.startswith("="):
                            continue
                        count += 1
                        if "!" in cell.value or "[" in cell.value:
                            fail(f"{detail}: {cell.coordinate} reaches out: {cell.value}")
                        was = stored[sheet.title][cell.coordinate].value
                        now = again[sheet.title][cell.coordinate].value
                        if not isinstance(now, (int, float)) or abs(was - now) > 0.000001:
                            fail(f"{detail}: {sheet.title}!{cell.coordinate} {cell.value}: "
                                 f"{now}, stored {was}")
            print(f"{detail}: {count} formulas")
            if detail != "sum" and count < 3:
                fail(f"{detail}: too few formulas")


# --- files ---

OURS = ("out.xlsx", "out-client.xlsx", "out-client.pdf")


def repeat(doorcost, job):
    with tempfile.TemporaryDirectory() as one, tempfile.TemporaryDirectory() as two:
        made = []
        for name in (one, two):
            folder = pathlib.Path(name) / ("deeper" if name == two else "")
            folder.mkdir(exist_ok=True)
            copy = prepare(folder, job)
            # the second is begun in the folder of the job itself
            ran = subprocess.run([doorcost, "quote", copy.name, "-o", str(folder / "out.xlsx")],
                                 cwd=copy.parent, capture_output=True, check=False,
                                 timeout=300) if name == two else quote(doorcost, copy, folder)
            if ran.returncode != 0:
                fail("no quote")
                return
            subprocess.run([doorcost, "draw", str(copy.relative_to(folder)), "-o", "doors.pdf"],
                           cwd=folder, capture_output=True, check=True)
            made.append(folder)
            # a second and another folder: no clock and no name may show
            subprocess.run(["sleep", "1.1"], check=True)
        for name in (*OURS, "doors.pdf"):
            if (made[0] / name).read_bytes() != (made[1] / name).read_bytes():
                fail(f"{name}: other bytes in another folder")


def keep(doorcost, job):
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        copy = prepare(folder, job)
        quote(doorcost, copy, folder)
        if quote(doorcost, copy, folder).returncode != 0:
            fail("files of our own are not overwritten")
        for spoiled in OURS:
            (folder / spoiled).write_bytes((folder / spoiled).read_bytes() + b" ")
            before = {one: (folder / one).stat().st_mtime_ns for one in OURS}
            refused = quote(doorcost, copy, folder)
            if refused.returncode != 3 or spoiled not in refused.stderr:
                fail(f"{spoiled}: an edited file is not refused: {refused.stderr}")
            if before != {one: (folder / one).stat().st_mtime_ns for one in OURS}:
                fail(f"{spoiled}: others were replaced though it was refused")
            if quote(doorcost, copy, folder, "--force").returncode != 0:
                fail(f"{spoiled}: --force does not help")
        (folder / "out-client.pdf").unlink()
        (folder / "out-client.pdf").mkdir()
        before = {one: (folder / one).stat().st_mtime_ns for one in OURS[:2]}
        blocked = quote(doorcost, copy, folder, "--force")
        if blocked.returncode != 3:
            fail("a folder in the way goes unnoticed")
        if before != {one: (folder / one).stat().st_mtime_ns for one in OURS[:2]}:
            fail("others were replaced though a folder was in the way")
        left = [path.name for path in folder.iterdir() if path.name not in
                (*OURS, "samples", "rates")]
        if left:
            fail(f"files left behind: {left}")


def main():
    doorcost, what, job = sys.argv[1:4]
    {"secrets": secrets, "sums": sums, "repeat": repeat, "keep": keep}[what](
        doorcost, pathlib.Path(job))
    print(f"{fail.count} faults")
    return 1 if fail.count else 0


if __name__ == "__main__":
    sys.exit(main())
