#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Pages of `doorcost show` for who does not see them or has no mouse: page_access.py PROGRAM JOB ...

What Chromium tells a screen reader of a page, its accessibility tree, and what keys do on it:
- every control has a role and a name, tables have a name and heads, headings come in their order
  (WCAG 2.2, 1.3.1, 2.4.6, 4.1.2);
- Tab goes to each control once, in the order of the page, and what has the focus is in sight, not
  under the line that stays there, with an outline (2.1.1, 2.4.3, 2.4.7, 2.4.11);
- a number opens with Enter, the keys stay within what opened, Escape leads back (2.1.2);
- boxes are ticked with Space; a number that is typed is told with the new total by a live region
  (4.1.3).
"""
import pathlib
import subprocess
import sys
import tempfile

from browser import Browser

CONTROLS = {"button", "link", "textbox", "checkbox", "DisclosureTriangle"}
STOPS = "a[href], button, input, [tabindex='0']"

# Where the focus is: its number among all that can have it, and what is wrong with how it is shown.
FOCUS = f"""
(function () {{
    const e = document.activeElement;
    const at = [...document.querySelectorAll("{STOPS}")].filter((x) => x.closest("dialog") === null && x.offsetParent !== null).indexOf(e);
    const box = e.getBoundingClientRect();
    const style = getComputedStyle(e);
    const x = Math.min(box.left + box.width / 2, innerWidth - 2);
    const y = box.top + Math.min(box.height / 2, 12);
    const top = document.elementFromPoint(x, y);
    const faults = [];
    if (!(y >= 0 && y < innerHeight)) {{
        faults.push("is out of sight at " + Math.round(y));
    }} else if (top === null || !(e.contains(top) || top.contains(e))) {{
        faults.push("is hidden by <" + (top && top.tagName) + " " + (top && top.id) + ">");
    }}
    if (style.outlineStyle === "none" || parseFloat(style.outlineWidth) < 2) {{
        faults.push("has no outline");
    }}
    return {{ at, faults, words: e.tagName + " '" + (e.textContent || e.id).trim().slice(0, 30) + "'" }};
}})()
"""
# Until all parts are laid out.
ALL_THERE = """
new Promise((done) => {
    const parts = [...document.querySelectorAll("main > section")];
    const look = () => parts.every((p) => getComputedStyle(p).contentVisibility === "visible") ? done(true) : setTimeout(look, 10);
    look();
})
"""
COUNT = f"""[...document.querySelectorAll("{STOPS}")].filter((x) => x.closest("dialog") === null && x.offsetParent !== null).length"""


def value(node, name):
    return node.get(name, {}).get("value", "")


class Tree:
    """What a screen reader is told, without what it passes over."""

    def __init__(self, browser):
        browser.call("Accessibility.enable")
        self.all = {n["nodeId"]: n for n in browser.call("Accessibility.getFullAXTree")["nodes"]}
        self.nodes = [n for n in self.all.values() if not n["ignored"]]

    def below(self, node, roles):
        """Nodes of these roles in a node, in their order."""
        for child in node.get("childIds", []):
            if child not in self.all:
                continue
            if value(self.all[child], "role") in roles and not self.all[child]["ignored"]:
                yield self.all[child]
            yield from self.below(self.all[child], roles)

    def of(self, *roles):
        root = next(n for n in self.nodes if value(n, "role") == "RootWebArea")
        return list(self.below(root, set(roles)))

    def property(self, node, name):
        return next((p["value"].get("value") for p in node.get("properties", []) if p["name"] == name), None)


def controls(tree):
    for node in tree.nodes:
        role = value(node, "role")
        if tree.property(node, "focusable") and role not in ("RootWebArea", "dialog"):
            if role not in CONTROLS and not (role == "heading" and tree.property(node, "focusable")):
                yield f"a control is a '{role}': {value(node, 'name')[:40]}"
            if value(node, "name").strip() == "":
                yield f"a {role} has no name"


def has_words(tree, node):
    return any(value(n, "name").strip() for n in tree.below(node, {"StaticText"}))


def tables(tree):
    for table in tree.of("table"):
        name = value(table, "name")
        if name.strip() == "":
            yield "a table has no name"
        if not list(tree.below(table, {"columnheader"})):
            yield f"table '{name}' has no heads"
        for row in tree.below(table, {"row"}):
            for head in tree.below(row, {"rowheader", "columnheader"}):
                if not has_words(tree, head):
                    yield f"table '{name}': a head without words"
            cells = list(tree.below(row, {"cell"}))
            if cells and not list(tree.below(row, {"rowheader", "columnheader"})):
                yield f"table '{name}': a row without head: {value(cells[0], 'name')[:40]}"


def headings(tree):
    before = 0
    for heading in tree.of("heading"):
        level = tree.property(heading, "level")
        if level > before + 1:
            yield f"heading '{value(heading, 'name')}' of level {level} behind one of {before}"
        if value(heading, "name").strip() == "":
            yield "a heading without words"
        before = level
    if before == 0:
        yield "no headings"


def walk(browser, name):
    """Tab from the top to the end and some steps back."""
    count = browser.ask(COUNT)
    browser.ask("document.activeElement.blur(), scrollTo(0, 0)")
    faults = []
    for at in range(count):
        browser.press("Tab")
        here = browser.ask(FOCUS)
        if here["at"] != at:
            return faults + [f"{name}: Tab {at + 1} of {count} leads to {here['at'] + 1}: {here['words']}"]
        faults += [f"{name}: {here['words']} {fault}" for fault in here["faults"]]
    for at in range(count - 2, max(count - 12, 0), -1):
        browser.press("Tab", shift=True)
        here = browser.ask(FOCUS)
        if here["at"] != at:
            return faults + [f"{name}: back leads to {here['at'] + 1}, not to {at + 1}"]
        faults += [f"{name}: back: {here['words']} {fault}" for fault in here["faults"]]
    return faults


def opens(browser, name):
    """A number by keys: in, round, deeper, back, out."""
    faults = []

    def want(right, words):
        if not browser.ask(right):
            faults.append(f"{name}: {words}")

    browser.ask("document.querySelector('#quote button.f').focus()")
    browser.press("Enter")
    want("document.getElementById('how').open && document.activeElement.id === 'how-title'", "Enter does not open a number")
    for _ in range(12):
        browser.press("Tab")
        want("document.activeElement === document.body || document.activeElement.closest('dialog') !== null",
             "Tab leaves what opened")
    browser.ask("document.querySelector('dialog ul.made button.f, dialog button.plain').focus()")
    browser.press("Escape")
    want("!document.getElementById('how').open && document.activeElement === document.querySelector('#quote button.f')",
         "Escape does not lead back to the number")
    for what, state in (("input[data-tick]", "checked"), ("div.plan", "ariaPressed === 'true'")):
        if browser.ask(f"document.querySelector(\"{what}\") !== null"):
            browser.ask(f"document.querySelector(\"{what}\").focus()")
            browser.press(" ")
            want(f"document.activeElement.{state}", f"Space does nothing at {what}")
            browser.press(" ")
            want(f"!(document.activeElement.{state})", f"Space does not take it back at {what}")
    return faults


def told(browser, name):
    """A number that is typed: what the live region then says."""
    browser.ask("moving.boxes.find((b) => moving.rateOf(b).key === 'labor rate').select()")
    browser.ask("moving.boxes.find((b) => moving.rateOf(b).key === 'labor rate').focus()")
    browser.press("41")
    browser.press("Tab")
    tree = Tree(browser)
    regions = [n for n in tree.of("status") if tree.property(n, "live") == "polite"]
    words = " ".join(value(n, "name") for region in regions for n in tree.below(region, {"StaticText"}))
    total = browser.ask("document.querySelector('#bar button.f').textContent")
    if len(regions) != 1 or f"total {total}," not in words:
        return [f"{name}: {len(regions)} live regions, which say '{words}', the total is {total}"]
    return []


def main():
    doorcost, *jobs = sys.argv[1:]
    faults, stops = [], 0
    with tempfile.TemporaryDirectory() as folder, Browser() as browser:
        for job in jobs:
            page = pathlib.Path(folder) / (pathlib.Path(job).stem + ".html")
            subprocess.run([doorcost, "show", job, "-o", page, "--client"], check=True, capture_output=True)
            for shown in (page.with_stem(page.stem + "-client"), page):
                for width in (1200, 360):
                    name = f"{shown.name} at {width}"
                    browser.width(width)
                    browser.open(shown)
                    browser.ask(ALL_THERE)
                    tree = Tree(browser)
                    for look in (controls, tables, headings):
                        faults += [f"{name}: {fault}" for fault in look(tree)]
                    faults += walk(browser, name)
                    stops += browser.ask(COUNT)
            faults += opens(browser, page.name) + told(browser, page.name)
        faults += browser.heard
    for fault in faults[:60]:
        print(fault)
    print(f"{stops} controls reached by Tab, {len(faults)} faults")
    return 1 if faults or stops < 100 else 0


if __name__ == "__main__":
    sys.exit(main())
