# SPDX-License-Identifier: MIT
"""Cutting plans checked from their JSON, by rules of this file alone.

Boards (of the rack, sawn ones are not trimmed, straightened, nor kept in part for defects): every strip lies within the straightened board, every part within the trimmed length less
the share of defects; boards crosscut first: every segment within that length, every part within the
straightened width.  Strips, segments and parts are a kerf apart; every item is there as often as
wanted.
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
        self.cuts = self.sold = 0  # sold: area of the parts on what is bought
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
            rack = "from the rack" in stock
            told = int(stock["from the rack" if rack else "to buy"]["value"])
            self.must(told == count, f"{told} of a size, {count} are cut")
            self.must(not rack or count <= stock["on the rack"], "more is taken than is on the rack")
        area = self.area
        rest = area["boards"] - sum(v for k, v in area.items() if k not in ("boards", "keep"))
        self.must(rest == 0, f"areas do not add up: {rest} missing")


def rip_first(p, board, saw):
    """Straightened as a whole, ripped into strips, each strip crosscut."""
    y, sawn = saw.edge, saw.end - saw.trim
    for strip in board["strips"]:
        wide = size(strip["width"])
        p.must(y + wide <= saw.top, f"board {board['number']}: strips are wider than it")
        x = saw.trim
        for part in strip["parts"]:
            item = saw.place(part, x, y)
            p.must(item[1] == wide, f"board {board['number']}: {part['name']} is not of its strip")
            p.must(x + item[0] <= saw.clear, f"board {board['number']}: a strip is too long")
            x = saw.blade(x + item[0], saw.end, wide)
        saw.rest(x, y, saw.end, wide)
        y = saw.blade(y + wide, saw.top, sawn)
    saw.rest(saw.trim, y, saw.end, saw.top - y)


def crosscut_first(p, board, saw):
    """Crosscut over the whole width into segments, each straightened and ripped by itself."""
    x = saw.trim
    for segment in board["segments"]:
        long = size(segment["length"])
        p.must(x + long <= saw.clear, f"board {board['number']}: segments are longer than it")
        saw.add("trim", 2 * saw.edge * long)
        saw.cuts += 2 * (saw.edge > 0)
        y = saw.edge
        for part in segment["parts"]:
            item = saw.place(part, x, y)
            p.must(item[0] == long, f"board {board['number']}: {part['name']} is not of its segment")
            p.must(y + item[1] <= saw.top, f"board {board['number']}: a segment is too wide")
            y = saw.blade(y + item[1], saw.top, long)
        saw.rest(x, y, x + long, saw.top - y)
        x = saw.blade(x + long, saw.end, saw.across)
    saw.rest(x, 0, saw.end, saw.across)


class Saw:
    """What is left of one board, and what its cuts take."""

    def __init__(self, p, plan, board):
        self.p, self.board, self.cuts = p, board, 0
        stock = plan["sizes"][board["size"]]
        of_use = bool(stock.get("sawn"))
        self.trim, self.edge = (0 if of_use else size(plan[key]) for key in ("end trim", "edge straightened"))
        share = 0 if of_use else size(plan["share of defects"])
        self.sold = "to buy" in stock
        self.along, self.across = p.sizes[board["size"]]
        sawn = self.along - 2 * self.trim
        self.clear = self.trim + (
            sawn // MILLION * (MILLION - share) + sawn % MILLION * (MILLION - share) // MILLION
        )
        self.end, self.top = self.along - self.trim, self.across - self.edge
        self.cuts = 2 * (self.trim > 0)
        self.add("boards", self.along * self.across)
        self.add("trim", 2 * self.trim * self.across)

    def add(self, kind, area):
        self.p.add(kind, area, self.board["copies"])

    def place(self, part, x, y):
        """A part must lie there; its item."""
        box = [size(part[k]) for k in ("x", "y", "length", "width")]
        item = self.p.items[part["item"]]
        self.p.must(box == [x, y, item[0], item[1]],
                    f"board {self.board['number']}: {part['name']} is elsewhere")
        self.p.pieces[part["item"]] += self.board["copies"]
        self.add("parts", item[0] * item[1])
        self.p.sold += item[0] * item[1] * self.board["copies"] * self.sold
        return item

    def blade(self, at, limit, over):
        """Where the next piece begins behind a cut at `at`, which is none at the limit."""
        if at < limit:
            self.cuts += 1
            self.add("kerf", min(self.p.kerf, limit - at) * over)
        return min(at + self.p.kerf, limit)

    def rest(self, x, y, end, wide):
        """What lies from x to the end: clear first, then for defects."""
        offcut = max(0, min(end, self.clear) - x)
        self.add("offcuts", offcut * wide)
        self.add("defects", max(0, end - max(x, self.clear)) * wide)
        if offcut >= self.p.keep[0] and wide >= self.p.keep[1]:
            self.add("keep", offcut * wide)


def check_boards(plan, unit):
    p = Plan(plan, unit)
    for board in plan["boards cut"]:
        p.counts[board["size"]] += board["copies"]
        saw = Saw(p, plan, board)
        if plan["first cut"] == "crosscut":
            crosscut_first(p, board, saw)
        else:
            saw.add("trim", 2 * saw.edge * (saw.end - saw.trim))
            saw.cuts += 2 * (saw.edge > 0)
            rip_first(p, board, saw)
        p.must(saw.cuts == len(board["cuts"]), f"board {board['number']}: {saw.cuts} cuts")
        p.cuts += saw.cuts * board["copies"]
    p.finish(plan["bound"]["value"])
    check_footage(p, unit)
    return p


def check_footage(p, unit):
    """Board feet (of a square foot an inch thick, by definition) or cubic meters of what the boards lose; `5/4` is 1 1/4 in."""
    of_one = Fraction(p.plan["thickness"]) / (144 if unit == "in" else 10**9) / MILLION**2
    for name, kind in (("ends and edges", "trim"), ("kerf", "kerf"), ("defects", "defects"), ("offcuts worth keeping", "keep")):
        value = p.plan[name]["value"]
        step = Fraction(1, 10 ** len(value.partition(".")[2]))
        p.must(abs(Fraction(value) - p.area[kind] * of_one) < step, f"{name} {value}")
    net, spare, more = (p.plan[name] for name in ("net", "spare rails", "allowances"))
    parts = Fraction(net["value"]) + Fraction(spare["value"] if spare else 0) + Fraction(more["value"])
    # each of them is rounded
    p.must(abs(parts - p.area["parts"] * of_one) < step * (1 + sum(p.pieces)), f"parts {float(parts)}")


def check_sheets(plan, unit):
    p = Plan(plan, unit)
    for sheet in plan["sheets cut"]:
        along, across = p.sizes[sheet["size"]]
        stock = plan["sizes"][sheet["size"]]
        trim = 0 if stock.get("sawn") else size(plan["edge trim"])
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
                p.sold += long * wide * copies if "to buy" in stock else 0
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
    rack = any("from the rack" in stock for stock in p.plan["sizes"])
    return p.counts + [p.cuts] + [hundredths(area[k]) for k in more] + ([hundredths(p.sold)] if rack else [])


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
