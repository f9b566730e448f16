#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Links of the documents: each leads to a file, and to a heading of it, that there is.

    /usr/bin/python3 tests/links.py

Goes over README.md, DEVELOPERS.md and all of docs/. Names of documents that the program and its
messages have (`docs/NAME.md`) are looked up as well, and every page of docs/how-to has to be in the
index beside it. An anchor is a heading in lower case, without marks, with hyphens for blanks.
"""
import pathlib
import re
import sys

TREE = pathlib.Path(__file__).resolve().parent.parent
LINK = re.compile(r"\]\(([^)\s]+)\)")
NAMED = re.compile(r"\bdocs/[A-Za-z0-9/-]+\.(?:md|1)\b")


def plain(path):
    """The lines of a document without its blocks of code."""
    text = path.read_text(encoding="utf-8")
    return re.sub(r"(?ms)^```.*?^```$", "", text)


def anchors(path):
    """What `#...` can lead to, as the usual viewers make it of headings."""
    names = set()
    for head in re.findall(r"(?m)^#+ (.*)$", plain(path)):
        name = re.sub(r"[^\w\- ]", "", head.lower()).replace(" ", "-")
        again = sum(1 for other in names if re.fullmatch(re.escape(name) + r"(-\d+)?", other))
        names.add(f"{name}-{again}" if again else name)
    return names


def wrong_links(path):
    """A line for each link of a document that leads nowhere."""
    for target in LINK.findall(plain(path)):
        if re.match(r"[a-z]+:", target):
            continue
        name, _, anchor = target.partition("#")
        to = (path.parent / name).resolve() if name else path
        if not to.exists():
            yield f"{path.relative_to(TREE)}: no file '{target}'"
        elif anchor and anchor not in anchors(to):
            yield f"{path.relative_to(TREE)}: no heading '{target}'"


def wrong_names(path):
    """A line for each document that a source names and that there is not."""
    for name in NAMED.findall(path.read_text(encoding="utf-8")):
        if not (TREE / name).exists():
            yield f"{path.relative_to(TREE)}: no document '{name}'"


def main():
    documents = [TREE / "README.md", TREE / "DEVELOPERS.md", *sorted((TREE / "docs").rglob("*.md"))]
    faults = [fault for path in documents for fault in wrong_links(path)]
    named = [path for top, ends in (("src", "*.[ch]"), ("docs", "*.1"), ("docs", "*.md"), ("rates", "*.ini"))
             for path in (TREE / top).rglob(ends)]
    faults += [fault for path in named + documents[:2] for fault in wrong_names(path)]
    index = set(LINK.findall(plain(TREE / "docs/how-to/README.md")))
    faults += [f"docs/how-to/README.md lacks {page.name}" for page in sorted((TREE / "docs/how-to").glob("*.md"))
               if page.name not in index | {"README.md"}]
    print("\n".join(faults) or f"{len(documents)} documents: all links lead somewhere")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
