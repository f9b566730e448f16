#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The sheet to measure on, read with poppler's programs.

    visit.py DOORCOST SAMPLES

Without a file in both units, with rates, with every sample, and with a job whose list is not there yet: twelve
rows to write in, apart far enough, with the columns of a door list on their heads; no letter under 8 points, no
word off the page or over another; client, unit, step, overlay and names as the files have them.  What is wrong
in a file is said and nothing written.  Exit status 0: all is well.
"""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

from client_words import words_of

LEAST = 8       # points
APART = 20      # points from a row to the next: a hand writes in 7 mm
EDGE = 18       # points: what printers reach
FOOT = 40       # points that the number of the page takes
PAPERS = {"letter": (612, 792), "A4": (595.276, 841.89)}
COLUMNS = ["id", "room", "use", "count", "leaves", "note"]


def fail(text):
    sys.exit(f"visit.py: {text}")


def run(*words):
    return subprocess.run([str(word) for word in words], capture_output=True, text=True, check=False)


def bare(text):
    return re.sub(r"\s", "", text)


def check_sheet(program, folder, name, words, paper, *expected):
    """Writes a sheet and looks at it; expected: texts that must stand on it."""
    path = folder / "sheet.pdf"
    done = run(program, "measure", *words, "--force", "-o", path)
    if done.returncode != 0 or done.stderr:
        fail(f"{name}: status {done.returncode}: {done.stderr}")
    wide, high = PAPERS[paper]
    pages = list(words_of(path))
    size = re.search(r"Page size: +([\d.]+) x ([\d.]+)", run("pdfinfo", path).stdout)
    if abs(float(size[1]) - wide) > 1 or abs(float(size[2]) - high) > 1:
        fail(f"{name}: not of {paper}: {size[0]}")
    for page in pages:
        for i, (text, left, top, right, bottom) in enumerate(page):
            if left < EDGE or top < EDGE or right > wide - EDGE or bottom > high - EDGE:
                fail(f"{name}: '{text}' is off the page")
            if bottom - top < LEAST:
                fail(f"{name}: '{text}' is {bottom - top:.1f} points high")
            for other, left2, top2, right2, bottom2 in page[i + 1:]:
                if min(right, right2) - max(left, left2) > 1 and min(bottom, bottom2) - max(top, top2) > 4:
                    fail(f"{name}: '{text}' lies over '{other}'")
    rows = [(word[2], word[0]) for word in pages[0] if re.fullmatch(r"\d+", word[0]) and word[1] < 50]
    if [text for _, text in sorted(rows)] != [str(n) for n in range(1, 13)]:
        fail(f"{name}: rows {rows}")
    tops = sorted(top for top, _ in rows)
    if min(b - a for a, b in zip(tops, tops[1:])) < APART:
        fail(f"{name}: rows are too near to each other")
    free = high - FOOT - max(word[4] for word in pages[0] if word[4] < high - FOOT)
    if len(pages) == 1 and free > APART and tops[1] - tops[0] < APART + 8:
        fail(f"{name}: {free:.0f} points are left, and rows stand {tops[1] - tops[0]:.0f} apart")
    text = " ".join(word[0] for page in pages for word in page)
    for one in (*COLUMNS, "diagonals", "lead", "overlay", "reveal", "gap", *expected):
        if bare(one) not in bare(text):
            fail(f"{name}: lacks '{one}'")


def names_of(rates, kind):
    return re.findall(rf"(?m)^\[{kind} ([^\]]+)\]", rates.read_text(encoding="utf-8"))


def key_of(path, key):
    found = re.search(rf"(?m)^{key} *= *([^;\n]*?) *(?:;.*)?$", path.read_text(encoding="utf-8"))
    return found[1].strip() if found else ""


def check_samples(program, folder, samples):
    for job in sorted(samples.glob("*/*.ini")):
        rates = (job.parent / key_of(job, "rates")).resolve()
        metric = key_of(job, "unit") == "mm"
        names = [", ".join(names_of(rates, kind)) for kind in ("door", "finish")]
        check_sheet(program, folder, job.name, [job], "A4" if metric else "letter", key_of(job, "title"),
                    key_of(job, "client"), key_of(job, "address"), *names,
                    "All sizes in " + ("millimeters" if metric else "inches"),
                    "to " + key_of(rates, "round sizes to"),
                    ("width, mm" if metric else "width, in"))


def main():
    program, samples = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
    with tempfile.TemporaryDirectory() as temporary:
        folder = pathlib.Path(temporary)
        check_sheet(program, folder, "no file", [], "letter", "width, in", "[ ] the openings", "each side: ____")
        check_sheet(program, folder, "no file, mm", ["--unit", "mm"], "A4", "width, mm")
        shutil.copytree(samples, folder / "samples")
        shutil.copytree(samples.parent / "rates", folder / "rates")
        check_samples(program, folder, folder / "samples")
        rates = folder / "rates/metric-shop.ini"
        check_sheet(program, folder, "rates", [rates], "A4", key_of(rates, "name"), "[ ] the openings",
                    ", ".join(names_of(rates, "door")))
        # before the visit there is no list yet; the rest is as it will be
        job = folder / "samples/kitchen/kitchen.ini"
        (job.parent / "doors.csv").unlink()
        check_sheet(program, folder, "no list", [job], "letter", "Overlay, each side: 1/2", "pair: 1/8")
        # what is wrong is said, and nothing is written
        rates = folder / "rates/small-shop.ini"
        rates.write_text(rates.read_text(encoding="utf-8").replace("kerf  ", "curf  "), encoding="utf-8")
        for words in ([job], [rates], [folder / "none.ini"]):
            done = run(program, "measure", *words, "-o", folder / "no.pdf")
            if done.returncode != 1 or "error:" not in done.stderr or (folder / "no.pdf").exists():
                fail(f"{words}: status {done.returncode}: {done.stderr}")
        if run(program, "measure", "--unit", "ft", "-o", folder / "no.pdf").returncode != 2:
            fail("--unit ft is taken")


main()
