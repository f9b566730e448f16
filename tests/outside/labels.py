#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Labels: one for each piece, each on a label of the sheet, with its words whole.

    labels.py DOORCOST JOB.ini
    labels.py DOORCOST odd SAMPLES

Reads the PDFs of `labels` with poppler.  The sheet is figured here from the rates file: every word lies on
one label, clear of its edges.  What stands on labels is counted against the parts of the JSON form: so many
labels of a part and door as it has pieces, with sizes as fractions made here; packed, one for each door.
odd: long names, which shrink and break and lose nothing; labels too small for their words, which are
refused and nothing written; rows by themselves, part-used sheets.  Exit status 0: all is well.
"""
import collections
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
from fractions import Fraction

from client_words import words_of

LEAST = 6  # points, of the smallest letters
EVEN = 0.75  # of all labels have letters of one size
INCH = 72


def fail(text):
    sys.exit(f"labels.py: {text}")


def run(*words):
    return subprocess.run([str(word) for word in words], capture_output=True, text=True, check=False)


def made(*words):
    done = run(*words)
    if done.returncode != 0:
        fail(f"{words}: {done.stderr}")
    return done.stdout


# --- the sheet, from the rates file ---

def points(text, metric):
    """A length of the rates in points."""
    number = re.sub(r"\s*(in|mm)$", "", text)
    total = sum(Fraction(one) for one in number.split())
    return float(total) * INCH / (25.4 if metric else 1)


class Sheet:
    def __init__(self, job, of):
        named = re.search(r"(?m)^rates\s*=\s*(\S+)", job.read_text(encoding="utf-8"))[1]
        text = (job.parent / named).read_text(encoding="utf-8")
        metric = re.search(r"(?m)^unit\s*=\s*mm", text) is not None
        body = re.search(rf"(?ms)^\[labels {of}\]\n(.*?)^\[", text)[1]
        keys = dict(re.findall(r"(?m)^([a-z ]+?)\s*=\s*([^;\n]*?)\s*(?:;.*)?$", body))
        self.columns, self.rows = int(keys["columns"]), int(keys["rows"])
        take = lambda key, absent="0": points(keys.get(key, absent), metric)
        self.wide, self.high = take("width"), take("height")
        self.left, self.top = take("left margin"), take("top margin")
        self.across, self.down = self.wide + take("column gap"), self.high + take("row gap")
        self.clear = take("inner margin")

    def place(self, left, top, right, bottom):
        """The label that a box lies on, clear of its edges; None: it does not."""
        column, row = int((left - self.left) // self.across), int((top - self.top) // self.down)
        x, y = self.left + column * self.across, self.top + row * self.down
        near = 0.6  # boxes of poppler are as wide as the typeface says
        inside = (x + self.clear - near <= left and right <= x + self.wide - self.clear + near
                  and y + self.clear - near <= top and bottom <= y + self.high - self.clear + near)
        there = 0 <= column < self.columns and 0 <= row < self.rows and inside
        return row * self.columns + column if there else None

    def labels(self, path):
        """The words of each label, by its place among those of all sheets."""
        found = collections.defaultdict(list)
        for page, words in enumerate(words_of(path)):
            for text, *box in words:
                place = self.place(*box)
                if place is None:
                    fail(f"{path.name}: page {page + 1}: '{text}' at {box} is on no label")
                if box[3] - box[1] < LEAST:
                    fail(f"{path.name}: '{text}' is {box[3] - box[1]:.1f} points high")
                found[page * self.columns * self.rows + place].append((round(box[1]), box[0], text.replace("\u00a0", " ")))
        return {place: " ".join(word[-1] for word in sorted(words)) for place, words in sorted(found.items())}


    def check_even(self, path):
        """Most labels have heads of one size, and no line of a grain is broken before its last word."""
        heads_of, alone = {}, 0
        for page, words in enumerate(words_of(path)):
            for text, *box in words:
                place = (page, self.place(*box))
                heads_of.setdefault(place, round(box[3] - box[1], 1))
                left = self.left + place[1] % self.columns * self.across + self.clear
                alone += text == "up" and box[0] < left + 1
        count = collections.Counter(heads_of.values()).most_common(1)[0][1]
        if count < EVEN * len(heads_of):
            fail(f"{path.name}: heads of {collections.Counter(heads_of.values())} points")
        if alone:
            fail(f"{path.name}: 'up' stands alone in a line {alone} times")


# --- what must stand there ---

def value(figure):
    return Fraction(figure["value"])


def size(figure):
    """As a tape has it: 23 7/16, 595.5."""
    number = value(figure)
    if figure["unit"] == "mm":
        return f"{float(number):.1f}".removesuffix(".0")
    whole, rest = divmod(round(number * 64), 64)
    part = str(Fraction(rest, 64)) if rest else ""
    return " ".join(one for one in (str(whole) if whole or not rest else "", part) if one)


def heads(door):
    """What its labels begin with, one a leaf."""
    name = door["id"] + (f" {door['leaf']}" if door["leaf"] else "")
    openings, leaves = int(value(door["openings"])), int(value(door["leaves"]))
    for opening in range(1, openings + 1):
        for leaf in range(1, leaves + 1):
            which = [f"{opening} of {openings}"] if openings > 1 else []
            which += [("left leaf", "right leaf")[leaf - 1]] if leaves > 1 else []
            yield name + (": " + ", ".join(which) if which else "")


def wanted_parts(doors):
    """Counts of the words that labels of parts begin with: which leaf, which part, length and width."""
    wanted = collections.Counter()
    for door in doors:
        for part in door["parts"]:
            both = size(part["length"]), size(part["width"])
            turned = part["part"].split(",")[0] in ("panel", "slab", "pane") and door["grain"] == "horizontal"
            field = part["part"].split(",")[0] in ("panel", "slab", "pane")
            sizes = (both if turned or not field else both[::-1])
            each = int(value(part["each door"]))
            for head in heads(door):
                for piece in range(1, each + 1):
                    which = f" {piece} of {each}" if each > 1 else ""
                    if part["part"] == "stile":
                        which = f", {('left', 'right')[piece - 1]}"
                    wanted[f"{head} {part['part']}{which} {sizes[0]} x {sizes[1]} x "] += 1
    return wanted


def check_parts(name, labels, doors):
    wanted = wanted_parts(doors)
    pieces = sum(int(value(part["pieces"])) for door in doors for part in door["parts"])
    if pieces != len(labels) or sum(wanted.values()) != pieces:
        fail(f"{name}: {len(labels)} labels of {pieces} pieces")
    seen = collections.Counter()
    for label in labels.values():
        found = [one for one in wanted if label.startswith(one)]
        if len(found) != 1:
            fail(f"{name}: '{label}' fits {found}")
        seen[found[0]] += 1
        if not re.search(r"grain (vertical|horizontal|along)|no grain|glass;", label):
            fail(f"{name}: '{label}' does not tell the grain")
        if " bar " not in label and not re.search(r"(edge|end) up", label):
            fail(f"{name}: '{label}' does not tell what is up")
        if "glass;" not in label and not re.search(r"batch \d+: \S|left bare", label):
            fail(f"{name}: '{label}' does not tell its batch")
    if seen != wanted:
        fail(f"{name}: labels too many or few: {list((seen - wanted) + (wanted - seen))[:3]}")


def check_doors(name, labels, doors):
    wanted = collections.Counter(head for door in doors for head in heads(door))
    total = sum(wanted.values())
    numbers = sorted(int(n) for label in labels.values()
                     for n in re.findall(rf"piece (\d+) of {total}$", label))
    if numbers != list(range(1, total + 1)) or len(labels) != total:
        fail(f"{name}: pieces are numbered {numbers[:5]}, {len(labels)} labels of {total}")
    for door in doors:
        width = f"{size(door['width'])} x {size(door['height'])}"
        for head in heads(door):
            if not any(label.startswith(head + " ") and width in label for label in labels.values()):
                fail(f"{name}: no label '{head}' with {width}")


def check_sample(program, job):
    with tempfile.TemporaryDirectory() as folder:
        parts, packed = pathlib.Path(folder) / "parts.pdf", pathlib.Path(folder) / "packed.pdf"
        doors = json.loads(made(program, "labels", job, "--json", "-o", parts))["estimates"][0]["doors"]
        check_parts(job.name, Sheet(job, "parts").labels(parts), doors)
        made(program, "labels", job, "--doors", "-o", packed)
        for path, of in (parts, "parts"), (packed, "doors"):
            Sheet(job, of).check_even(path)
            if "Tagged:          yes" not in run("pdfinfo", path).stdout:
                fail(f"{path.name} has no tree of its pieces")
        check_doors(job.name, Sheet(job, "doors").labels(packed), doors)


# --- out of the ordinary ---

def edit(path, pattern, text):
    old = path.read_text(encoding="utf-8")
    new = re.sub(pattern, text, old, count=1, flags=re.M)
    if new == old:
        fail(f"{path.name} lacks {pattern}")
    path.write_text(new, encoding="utf-8")


def check_odd(program, samples):
    with tempfile.TemporaryDirectory() as temporary:
        folder = pathlib.Path(temporary)
        shutil.copytree(samples, folder / "samples")
        shutil.copytree(samples.parent / "rates", folder / "rates")
        job = folder / "samples/kitchen/kitchen.ini"
        pdf = folder / "out.pdf"
        # part-used sheets, and rows by themselves
        made(program, "labels", job, "G08", "G01", "--from", "29", "-o", pdf)
        labels = Sheet(job, "parts").labels(pdf)
        if min(labels) != 28 or sorted(labels) != list(range(28, 28 + len(labels))):
            fail(f"--from 29 fills {sorted(labels)}")
        if {label[:3] for label in labels.values()} != {"G01", "G08"}:
            fail("rows that were not named are labeled")
        for wrong in ("0", "31", "two"):
            if run(program, "labels", job, "--from", wrong, "-o", folder / "no.pdf").returncode != 2:
                fail(f"--from {wrong} is taken")
        # more than a file takes
        whole = (job.parent / "doors.csv").read_text(encoding="utf-8")
        edit(job.parent / "doors.csv", "^G01,galley,door,1,", "G01,galley,door,9999,")
        done = run(program, "labels", job, "-o", folder / "no.pdf")
        if done.returncode != 2 or "at most 20000" not in done.stderr or (folder / "no.pdf").exists():
            fail(f"too many: status {done.returncode}, {done.stderr}")
        (job.parent / "doors.csv").write_text(whole, encoding="utf-8")
        # long names: whole, and no larger than their label
        long_id = "NORTH-WALL-BESIDE-THE-RANGE-AND-THE-WINDOW-TO-THE-HARBOR-1"
        edit(job.parent / "doors.csv", "^G01,", f"{long_id},")
        edit(job, r"^color .*", "color = lamp white as on the boards beside the old stair, second tone")
        made(program, "labels", job, "-o", pdf)
        for label in Sheet(job, "parts").labels(pdf).values():
            bare = label.replace(" ", "")
            if bare.startswith("NORTH") and long_id not in bare:
                fail(f"a long name is not whole: {label}")
            if "painted," in label and "theoldstair,secondtone" not in bare:
                fail(f"a long color is not whole: {label}")
        # too small: refused, and the old file stays as it was
        before = pdf.read_bytes()
        edit(folder / "rates/small-shop.ini", r"^height           = 1 .*", "height = 3/8")
        done = run(program, "labels", job, "-o", pdf)
        if done.returncode != 1 or "does not hold its words" not in done.stderr:
            fail(f"too small a label: status {done.returncode}, {done.stderr}")
        if pdf.read_bytes() != before or len(list(folder.glob("*.pdf"))) != 1:
            fail("too small a label: a file was written")


def main():
    program, path = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[-1])
    if sys.argv[2] == "odd":
        check_odd(program, path)
    else:
        check_sample(program, path)


main()
