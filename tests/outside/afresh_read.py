# SPDX-License-Identifier: MIT
"""The input files read anew, without a line of the program: what tests/outside/afresh.py works from.

A value is a Fraction and what follows it ('4.10 per bf' -> 41/10, 'per bf'). Lengths are in the unit of the job.
"""
import csv
import datetime
import os
import re
from fractions import Fraction

IN, MM = Fraction(1), Fraction(10, 254)  # inches a unit
LENGTHS = {"in": IN, "ft": Fraction(12), "mm": MM, "cm": MM * 10, "m": MM * 1000, "mil": Fraction(1, 1000),
           "um": MM / 1000}


def number(text):
    """A number at the head of text (17 1/4, 3/8, 23.4375, 5/4), and what stands after it."""
    m = re.match(r"\s*(\d+)\s+(\d+)/(\d+)|\s*(\d+)/(\d+)|\s*(\d+(?:\.\d+)?|\.\d+)", text)
    if not m:
        raise ValueError("no number: " + text)
    a, b, c, d, e, f = m.groups()
    value = int(a) + Fraction(int(b), int(c)) if a else Fraction(int(d), int(e)) if d else Fraction(f)
    return value, text[m.end():].strip()


def rounded(value, decimals):
    """Half away from zero."""
    scaled = abs(value) * 10 ** decimals
    whole = int(scaled + Fraction(1, 2))
    return Fraction(whole if value >= 0 else -whole, 10 ** decimals)


DATED = re.compile(r"(?<![\w.])([\d.]+)((?: per [\w ]+?| each)?) *\(on (\d{4}-\d\d-\d\d)(?:, *(-?[\d.]+) % a year)?\)")


def aged(text, quoted):
    """Prices as they are on the day of the quote: docs/method.md, "Prices and their age"; days by the calendar of Python."""
    def price(match):
        number_, unit, on, yearly = match.groups()
        days = max(0, (quoted - datetime.date.fromisoformat(on)).days)
        risen = rounded(Fraction(yearly or 0) * days / 365, 4)
        rise = rounded(Fraction(number_) * risen / 100, 6 if unit.strip() else 2)
        return f"{float(Fraction(number_) + rise):.6f}{unit}"
    return DATED.sub(price, text)


def ini(path, quoted=None):
    """Sections in their order: {(kind, name): {key: text}}; quoted: the day to which prices are aged."""
    sections, here = {}, None
    for line in open(path, encoding="utf-8"):
        line = line.strip()
        if not line or line[0] in ";#":
            continue
        if line[0] == "[":
            kind, _, name = line[1:line.index("]")].strip().partition(" ")
            if name and kind + " " + name == "bought in":
                kind, name = "bought in", ""
            here = sections.setdefault((kind.lower(), name.strip().lower()), {})
            continue
        key, _, text = line.partition("=")
        text = re.split(r"\s;", text.strip())[0]
        text = re.sub(r"\s*\([^()]* to [^()]*\)", "", text).strip()  # ranges move nothing
        here[key.strip().lower()] = text if quoted is None else aged(text, quoted).strip()
    return sections


class Inputs:
    def __init__(self, path):
        self.job = ini(path)
        head = self.job[("job", "")]
        folder = os.path.dirname(path)
        rates = os.path.join(folder, head["rates"])
        self.rates = ini(rates, datetime.date.fromisoformat(head["date"]))
        shop = self.rates[("shop", "")]
        self.bare = head.get("unit", "in")
        self.rates_bare = shop.get("unit", "in")
        self.metric = self.rates_bare == "mm"
        with open(os.path.join(os.path.dirname(rates), shop["woods"]), encoding="utf-8") as f:
            self.woods = {row["name"]: row for row in csv.DictReader(f)}
        with open(os.path.join(folder, head["doors"]), encoding="utf-8-sig") as f:
            self.rows = [{k: (v or "").strip() for k, v in row.items()} for row in csv.DictReader(f)]

    def length(self, text, of_rates=True):
        """A length in the job's unit."""
        value, unit = number(text)
        scale = LENGTHS[unit.split(",")[0].strip() or (self.rates_bare if of_rates else self.bare)]
        return value * scale / LENGTHS[self.bare]

    def kinds(self, kind):
        return {name: keys for (k, name), keys in self.rates.items() if k == kind}

    def section(self, kind, name=""):
        return self.rates.get((kind, name.lower()), {})


def percent(text):
    return number(text)[0]


def listed(text):
    return [item.strip() for item in text.split(",")] if text else []
