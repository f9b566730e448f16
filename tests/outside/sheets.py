# SPDX-License-Identifier: MIT
"""Reads the cells of a workbook straight from its file, quickly: what is stored, how it is shown,
which are formulas, which may be changed."""
import re
import zipfile
from html import unescape

CELL = re.compile(
    r'<c r="([A-Z]+)([0-9]+)"(?: s="([0-9]+)")?(?: t="([a-z]+)")?(?:/>|>(.*?)</c>)', re.DOTALL)
FORMULA = re.compile(r"<f[^>]*>(.*?)</f>", re.DOTALL)
VALUE = re.compile(r"<v>(.*?)</v>", re.DOTALL)


class Cell:
    __slots__ = ("value", "formula", "style")

    def __init__(self, value, formula, style):
        self.value, self.formula, self.style = value, formula, style

    @property
    def number(self):
        return isinstance(self.value, float)


def column_of(letters):
    column = 0
    for letter in letters:
        column = column * 26 + ord(letter) - 64
    return column - 1


def name_of(at):
    sheet, row, column = at
    letters = ""
    column += 1
    while column > 0:
        letters = chr(65 + (column - 1) % 26) + letters
        column = (column - 1) // 26
    return f"{sheet}!{letters}{row + 1}"


class File:
    """cells: {(sheet, row, column): Cell}; names: {defined name: (sheet, row, column)}."""

    def __init__(self, path):
        with zipfile.ZipFile(path) as parts:
            book = parts.read("xl/workbook.xml").decode()
            shared = parts.read("xl/sharedStrings.xml").decode()
            self.read_styles(parts.read("xl/styles.xml").decode())
            strings = [unescape("".join(re.findall(r"<t[^>]*>(.*?)</t>", text, re.DOTALL)))
                       for text in re.findall(r"<si>(.*?)</si>", shared, re.DOTALL)]
            self.cells = {}
            for number, name in enumerate(re.findall(r'<sheet name="([^"]+)"', book), 1):
                text = parts.read(f"xl/worksheets/sheet{number}.xml").decode()
                self.read_sheet(name, text, strings)
        self.names = {}
        for name, sheet, letters, row in re.findall(
                r'<definedName name="(\w+)">(\w+)!\$([A-Z]+)\$([0-9]+)</definedName>', book):
            self.names[name] = (sheet, int(row) - 1, column_of(letters))

    def read_styles(self, text):
        codes = {int(i): unescape(code) for i, code in
                 re.findall(r'<numFmt numFmtId="([0-9]+)" formatCode="([^"]*)"', text)}
        cells = re.search(r"<cellXfs.*?</cellXfs>", text, re.DOTALL).group(0)
        styles = re.findall(r"<xf [^>]*?(?:/>|>.*?</xf>)", cells, re.DOTALL)
        self.formats = [int(re.search(r'numFmtId="([0-9]+)"', s).group(1)) for s in styles]
        # 4: the built-in #,##0.00
        self.money_styles = {i for i, f in enumerate(self.formats)
                             if f == 4 or codes.get(f, "").startswith("#,##0.00")}
        self.open_styles = {i for i, s in enumerate(styles) if 'locked="0"' in s}

    def read_sheet(self, name, text, strings):
        for letters, row, style, kind, inner in CELL.findall(text):
            value = VALUE.search(inner)
            if value is None:
                continue
            formula = FORMULA.search(inner)
            value = value.group(1)
            if kind == "s":
                value = strings[int(value)]
            elif kind == "str":
                value = unescape(value)
            else:
                value = float(value)
            self.cells[(name, int(row) - 1, column_of(letters))] = Cell(
                value, unescape(formula.group(1)) if formula else None, int(style or 0))

    def money(self, at):
        return self.cells[at].style in self.money_styles

    def open(self, at):
        return self.cells[at].style in self.open_styles
