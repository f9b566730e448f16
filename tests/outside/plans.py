# SPDX-License-Identifier: MIT
"""Cutting plans checked from their JSON, by rules of this file alone.

Boards: every strip lies within the straightened board, every part within the trimmed length less
the share of defects; strips and parts are a kerf apart; every item is there as often as wanted.
Sheets: the nodes are cuts that go through from edge to edge, each leaves two regions a kerf apart,
parts fill their regions, grain is kept. Both: the counts and areas that the tape has, the price not
below the bound.  Sizes are whole millionths of the job's unit.
"""
import math
from fractions import Fraction

MILLION = 10**6
KEEP = {"in": (12, Fraction(3, 2), 6), "mm": (300, 40, 150)}  # length; width of board, of sheet


def size(text):
    value = Fraction(text) * MILLION
    assert value.denominator == 1, text
    return int(value)


def hundredths(area):
    """Square millionths as hundredths of a square unit, half up."""
    return math.floor(Fraction(area, 10**10) + Fraction(1, 2))


class Plan:
    def __init__(self, plan, unit):
        self.plan = plan
        self.kerf = size(plan["saw kerf"])
        self.sizes = [(size(s["length"]), size(s["width"])) for s in plan["sizes"]]
        self.prices = [round(Fraction(s["price"]) * 100) for s in plan["sizes"]]
        self.items = [(size(i["length"]), size(i["width"]), i["pieces"]) for i in plan["items"]]
        self.counts = [0] * len(self.sizes)
        self.pieces = [0] * len(self.items)
        self.keep = [side * MILLION for side in KEEP[unit]]
        self.area = dict.fromkeys(("boards", "parts", "trim", "kerf", "defects", "offcuts", "keep"), 0)
        self.cuts = 0
        self.faults = []

    def fault(self, text):
        self.faults.append(f"plan of {self.plan['name']}: {text}")

    def must(self, truth, text):
        if not truth:
            self.fault(text)

    def add(self, kind, area, copies):
        self.area[kind] += area * copies

    def finish(self, bound):
        for (along, across, wanted), made in zip(self.items, self.pieces):
            self.must(wanted == made, f"item of {along} x {across}: {made} of {wanted}")
        cost = sum(n * price for n, price in zip(self.counts, self.prices))
        self.must(cost >= round(Fraction(bound) * 100), f"costs {cost}, less than its bound {bound}")
        for stock, count in zip(self.plan["sizes"], self.counts):
            self.must(int(stock["to buy"]["value"]) == count, "another count is to buy")
        area = self.area
        rest = area["boards"] - sum(v for k, v in area.items() if k not in ("boards", "keep"))
        self.must(rest == 0, f"areas do not add up: {rest} missing")


def check_boards(plan, unit):
    p = Plan(plan, unit)
    trim, edge = size(plan["end trim"]), size(plan["edge straightened"])
    share = size(plan["share of defects"])
    for board in plan["boards cut"]:
        along, across = p.sizes[board["size"]]
        copies = board["copies"]
        p.counts[board["size"]] += copies
        sawn = along - 2 * trim
        clear = sawn // MILLION * (MILLION - share) + sawn % MILLION * (MILLION - share) // MILLION
        end, top = along - trim, across - edge
        p.add("boards", along * across, copies)
        p.add("trim", along * across - sawn * (across - 2 * edge), copies)
        cuts = 2 * (trim > 0) + 2 * (edge > 0)

        def rest(x, y, wide):
            """What lies from x to the end of the board: clear first, then for defects."""
            offcut = max(0, trim + clear - x)
            p.add("offcuts", offcut * wide, copies)
            p.add("defects", (end - max(x, trim + clear)) * wide, copies)
            if offcut >= p.keep[0] and wide >= p.keep[1]:
                p.add("keep", offcut * wide, copies)

        y = edge
        for strip in board["strips"]:
            wide = size(strip["width"])
            p.must(y + wide <= top, f"board {board['number']}: strips are wider than it")
            x = trim
            for part in strip["parts"]:
                box = [size(part[k]) for k in ("x", "y", "length", "width")]
                item = p.items[part["item"]]
                p.must(box == [x, y, item[0], item[1]] and item[1] == wide,
                       f"board {board['number']}: {part['name']} is elsewhere")
                p.must(x + item[0] <= trim + clear, f"board {board['number']}: a strip is too long")
                p.pieces[part["item"]] += copies
                p.add("parts", item[0] * item[1], copies)
                x += item[0]
                if x < end:
                    cuts += 1
                    p.add("kerf", min(p.kerf, end - x) * wide, copies)
                x = min(x + p.kerf, end)
            rest(x, y, wide)
            y += wide
            if y < top:
                cuts += 1
                p.add("kerf", min(p.kerf, top - y) * sawn, copies)
            y = min(y + p.kerf, top)
        if y < top:
            rest(trim, y, top - y)
        p.must(cuts == len(board["cuts"]), f"board {board['number']}: {cuts} cuts")
        p.cuts += cuts * copies
    p.finish(plan["bound"]["value"])
    return p


def check_sheets(plan, unit):
    p = Plan(plan, unit)
    trim = size(plan["edge trim"])
    for sheet in plan["sheets cut"]:
        along, across = p.sizes[sheet["size"]]
        copies, nodes = sheet["copies"], sheet["nodes"]
        p.counts[sheet["size"]] += copies
        p.add("boards", along * across, copies)
        p.add("trim", along * across - (along - 2 * trim) * (across - 2 * trim), copies)
        p.cuts += 4 * (trim > 0) * copies
        seen = []

        def walk(number, region):
            node = nodes[number]
            seen.append(number)
            box = tuple(size(node[k]) for k in ("x", "y", "length", "width"))
            p.must(box == region and box[2] > 0 and box[3] > 0,
                   f"sheet {sheet['number']}: node {number} is not what its cut left")
            x, y, long, wide = region
            if node["becomes"] == "part":
                item = p.items[node["item"]]
                turned = node["turned"]
                p.must(not (turned and plan["grain"]), "a part lies across the grain")
                p.must((long, wide) == ((item[1], item[0]) if turned else item[:2]),
                       f"sheet {sheet['number']}: node {number} is not of its item's size")
                p.pieces[node["item"]] += copies
                p.add("parts", long * wide, copies)
            elif node["becomes"] == "offcut":
                p.add("offcuts", long * wide, copies)
                if max(long, wide) >= p.keep[0] and min(long, wide) >= p.keep[2]:
                    p.add("keep", long * wide, copies)
            else:
                at = size(node["at"])
                crosscut = node["becomes"] == "crosscut"
                low, high = (x, x + long) if crosscut else (y, y + wide)
                kerf = min(p.kerf, high - at)
                p.must(low < at < high, f"sheet {sheet['number']}: a cut beside its region")
                p.add("kerf", kerf * (wide if crosscut else long), copies)
                p.cuts += copies
                first = (x, y, at - x, wide) if crosscut else (x, y, long, at - y)
                after = at + kerf
                second = (after, y, high - after, wide) if crosscut else (x, after, long, high - after)
                walk(node["first"], first)
                p.must((node["second"] is None) == (after == high),
                       f"sheet {sheet['number']}: what a cut leaves is lost")
                if node["second"] is not None:
                    walk(node["second"], second)

        walk(0, (trim, trim, along - 2 * trim, across - 2 * trim))
        p.must(seen == list(range(len(nodes))), "nodes are not in the order of the cuts")
    p.finish(plan["bound"]["value"])
    return p


def outputs(p, boards):
    """What the chooser of such a plan gives: counts, then what it comes to."""
    area = p.area
    more = ["trim", "kerf", "defects", "keep"] if boards else ["trim", "kerf", "keep"]
    return p.counts + [p.cuts] + [hundredths(area[k]) for k in more]


def surface(boards):
    """Surface measure of (count, width, length) in millionths of an inch: each board to the nearest
    foot, halves up and down by turns, up first."""
    total, down = 0, False
    for count, wide, long in boards:
        for _ in range(count):
            exact = Fraction(wide, MILLION) * (Fraction(long, MILLION) // 12) / 12
            whole = exact.numerator // exact.denominator
            if exact - whole == Fraction(1, 2):
                total += whole + (0 if down else 1)
                down = not down
            else:
                total += whole + (1 if exact - whole > Fraction(1, 2) else 0)
    return total
