#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Pages of `doorcost show` on paper: page_print.py PROGRAM KITCHEN

The page of the kitchen, with one number changed, and that for its client are printed by Chromium,
on letter and on A4, and read by poppler.  No more pages than MOST, each part with its title, no
title alone at the foot, heads again where a table goes on, no word over the edge, no word of what is
only pressed; the change is on paper as the file would have it.
"""
import base64
import pathlib
import re
import subprocess
import sys
import tempfile

from browser import Browser

MOST = {"kitchen": 28, "kitchen-client": 7}
PAPERS = {"letter": (8.5, 11), "A4": (8.27, 11.69)}  # inches; A4 is 210 x 297 mm, ISO 216
EDGE = 20  # points that are free at each side
TITLES = ("Quote", "Doors", "Cutting plans", "To buy", "To cut", "Hours", "Cost", "Rates", "Notes")
PRESSED = ("to the quote", "Back", "Close", "as read:", "Type another number")
HEADS = {"person-minutes": 2, "stands": 4}  # words of heads that stand on so many pages or columns
CHANGE = """
const box = moving.boxes.find((b) => moving.rateOf(b).key === "labor rate");
box.value = "41";
moving.follow();
"""


def printed(browser, paper, pdf):
    width, height = PAPERS[paper]
    answer = browser.call("Page.printToPDF", paperWidth=width, paperHeight=height, preferCSSPageSize=False,
                          marginTop=0.5, marginBottom=0.5, marginLeft=0.5, marginRight=0.5)
    pdf.write_bytes(base64.b64decode(answer["data"]))
    layout = subprocess.run(["pdftotext", "-bbox", pdf, "-"], capture_output=True, text=True, check=True).stdout
    text = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
    return layout, text.split("\f")[:-1]


def over_edge(layout):
    """Words outside of what printers can reach."""
    for page in re.findall(r'(?s)<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', layout):
        wide, high = float(page[0]), float(page[1])
        for x0, y0, x1, y1, word in re.findall(
                r'<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)</word>', page[2]):
            if float(x0) < EDGE or float(y0) < EDGE or float(x1) > wide - EDGE or float(y1) > high - EDGE:
                yield f"'{word}' runs over the edge"


def shop(pages):
    """What the shop's page lacks on paper."""
    lines = [[line.strip() for line in page.splitlines() if line.strip()] for page in pages]
    for title in TITLES:
        where = [page for page in lines if title in page]
        if len(where) != 1:
            yield f"title '{title}' on {len(where)} pages"
        elif where[0].index(title) > len(where[0]) - 3:
            yield f"title '{title}' at the foot of a page"
    words = "\n".join(pages)
    for pressed in PRESSED:
        if pressed in words:
            yield f"'{pressed}' is on paper"
    if not re.search(r"\[shop\] labor rate = 41 per hour", words):
        yield "the change is not on paper"
    for head, least in HEADS.items():
        if len(re.findall(rf"\b{head}\b", words)) < least:
            yield f"head '{head}' is not on each page of its table"


def main():
    doorcost, job = sys.argv[1:]
    faults, counts = [], []
    with tempfile.TemporaryDirectory() as name, Browser() as browser:
        folder = pathlib.Path(name)
        page = folder / "kitchen.html"
        subprocess.run([doorcost, "show", job, "-o", page, "--client"], check=True, capture_output=True)
        for shown in (page, page.with_stem("kitchen-client")):
            browser.width(1000)
            browser.open(shown)
            if shown == page:
                browser.ask(CHANGE)
            for paper in PAPERS:
                layout, pages = printed(browser, paper, folder / "out.pdf")
                here = list(over_edge(layout)) + (list(shop(pages)) if shown == page else [])
                if len(pages) > MOST[shown.stem]:
                    here.append(f"{len(pages)} pages, at most {MOST[shown.stem]}")
                faults += [f"{shown.name} on {paper}: {fault}" for fault in here]
                counts.append(f"{shown.stem} {paper} {len(pages)}")
        faults += browser.heard
    for fault in faults[:40]:
        print(fault)
    print(f"pages: {', '.join(counts)}; {len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
