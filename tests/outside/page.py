#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Pages of `doorcost show`, seen in a browser: page.py PROGRAM TREE JOB ...

Each page is opened by Chromium at three widths (page_check.js): nothing runs over the edge, nothing
is asked for, the console stays empty, names, headings and contrast are as WCAG 2.2 wants them, each
number is said as it is figured, and each figure made again in JavaScript is what the program has.
Its tape is held against that of `quote --json`.  A job whose names are full of markup is among them.
"""
import html.parser
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

from browser import Browser

HERE = pathlib.Path(__file__).resolve().parent
WIDTHS = (360, 800, 1400)
MOST_BYTES = 1_000_000  # of the kitchen's page
MOST_MILLISECONDS = 2000  # to show it; 200 are the aim, and a busy machine takes longer
NASTY = "</script><b>\"x\" & 'y'<!--"


class Reader(html.parser.HTMLParser):
    """Tags that are not closed, and addresses that lead out of the page."""

    VOID = {"meta", "img", "input", "br", "rect", "path", "hr", "link"}

    def __init__(self):
        super().__init__()
        self.open = []
        self.faults = []
        self.data = ""

    def handle_starttag(self, tag, attrs):
        for name, value in attrs:
            if name in ("src", "href", "action", "srcset", "data") and not re.match(
                r"data:image/png;base64,|#", value or ""
            ):
                self.faults.append(f"<{tag} {name}> leads to {value[:60]}")
        if tag not in self.VOID:
            self.open.append((tag, dict(attrs).get("id")))

    def handle_endtag(self, tag):
        if tag in self.VOID:
            return
        if not self.open or self.open[-1][0] != tag:
            self.faults.append(f"</{tag}> at {self.getpos()}, open: {self.open[-3:]}")
        else:
            self.open.pop()

    def handle_data(self, data):
        if self.open and self.open[-1][1] == "data":
            self.data += data


def run(*words, **more):
    return subprocess.run(words, check=True, capture_output=True, text=True, **more)


def read(page):
    """The text of a page, what its script is given, and what is wrong with its markup."""
    text = page.read_text(encoding="utf-8")
    reader = Reader()
    reader.feed(text)
    reader.close()
    return text, reader.data, [f"{page.name}: {fault}" for fault in reader.faults + reader.open]


def write(doorcost, job, page):
    run(doorcost, "show", job, "-o", page, "--client")
    text, data, faults = read(page)
    client, _, more = read(page.with_stem(page.stem + "-client"))
    return text + client, json.loads(data), faults + more


def compare_tapes(name, data, quoted):
    """The page's figures against those of the JSON of the quote, which planned the same."""
    faults = []
    figures = quoted["estimates"][0]["tape"]["figures"]
    if len(figures) + 1 != len(data["figures"]):
        return [f"{name}: {len(data['figures']) - 1} figures on the page, {len(figures)} in JSON"]
    for figure, packed in zip(figures, data["figures"][1:]):
        _, _, decimals, label = data["kinds"][packed[0]]
        here = (data["texts"][label], data["texts"][packed[1]], str(packed[2]), decimals)
        there = (figure["label"], figure["subject"], figure["value"], figure["decimals"])
        if here != there:
            faults.append(f"{name}: figure {figure['id']} is {here}, in JSON {there}")
    return faults


def nasty(tree, folder):
    """The kitchen with names that mean something in HTML and JavaScript."""
    job = (tree / "samples/kitchen/kitchen.ini").read_text()
    job = re.sub(r"(?m)^(title|client) *=.*", f"\\1 = {NASTY}", job)
    for key, path in (("rates", "rates"), ("doors", "samples/kitchen")):
        job = re.sub(rf"(?m)^({key}) *= *(.*/)?([^/\n]+)$", rf"\1 = {tree}/{path}/\3", job)
    path = folder / "nasty.ini"
    path.write_text(job)
    return path


def look(browser, page):
    """What page_check.js says of a page at three widths, and how long it took to show."""
    faults = []
    slowest = 0
    for width in WIDTHS:
        browser.width(width)
        browser.open(page)
        browser.ask((HERE / "page_check.js").read_text())
        seen = browser.ask(f"look({json.dumps(page.name)}, {width}, {json.dumps(width == 800 and not page.stem.endswith('-client'))})")
        faults += seen["faults"]
        slowest = max(slowest, seen["milliseconds"])
    if slowest > MOST_MILLISECONDS:
        faults.append(f"{page.name}: shown in {slowest} ms")
    return faults, slowest


def ticks(browser, page):
    """A box that was ticked is found so again; where nothing may be kept, the page works too."""
    box = "document.querySelector('input[data-tick]')"
    browser.open(page)
    browser.ask(f"{box}.click()")
    browser.open(page)
    faults = [] if browser.ask(f"{box}.checked") else [f"{page.name}: a tick was forgotten"]
    refuse = "Object.defineProperty(window, 'localStorage', {get() { throw new Error('refused'); }})"
    script = browser.call("Page.addScriptToEvaluateOnNewDocument", source=refuse)["identifier"]
    browser.open(page)
    if not browser.ask(f"{box}.click(), {box}.checked"):
        faults.append(f"{page.name}: does not tick without a store")
    browser.call("Page.removeScriptToEvaluateOnNewDocument", identifier=script)
    return faults


def main():
    doorcost, tree, *jobs = sys.argv[1:]
    tree = pathlib.Path(tree).resolve()
    faults, times = [], []
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        pages = []
        for job in [*map(pathlib.Path, jobs), nasty(tree, folder)]:
            page = folder / (job.stem + ".html")
            text, data, more = write(doorcost, job, page)
            quoted = json.loads(run(doorcost, "quote", job, "--json", "-o", folder / "b.xlsx", "--force").stdout)
            faults += more + compare_tapes(page.name, data, quoted)
            pages.append(page)
            if job.stem == "kitchen" and page.stat().st_size > MOST_BYTES:
                faults.append(f"{page.name}: {page.stat().st_size} bytes, at most {MOST_BYTES}")
            if job.stem == "nasty" and NASTY in text:
                faults.append("nasty.html: a name stands there as markup")
        with Browser() as browser:
            for page in pages + [page.with_stem(page.stem + "-client") for page in pages]:
                more, slowest = look(browser, page)
                faults += more
                times.append(slowest)
            faults += ticks(browser, pages[0]) + browser.heard
    for fault in faults[:50]:
        print(fault)
    print(f"{2 * len(pages)} pages at {len(WIDTHS)} widths, slowest shown in {max(times)} ms; "
          f"{len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
