# SPDX-License-Identifier: MIT
"""What each row of a door list takes, from the input files alone, by docs/method.md sections 2, 3, 4, 5 and 7.

Lengths are Fractions in the unit of the job. Each quantity is rounded once, half away from zero.
"""
from fractions import Fraction
from math import isqrt

from afresh_read import listed, number

DECIMALS = {"length": 6, "area": 4, "bf": 4, "m3": 6, "run": 4, "volume": 4, "min": 2, "weight": 2, "percent": 4,
            "factor": 6, "hours": 2, "money": 2}


def rounded(value, kind):
    """Half away from zero to the decimals of its kind."""
    scale = 10 ** DECIMALS[kind]
    value = Fraction(value) * scale
    whole = (abs(value) + Fraction(1, 2)).__floor__()
    return Fraction(whole if value >= 0 else -whole, scale)


def up(value, step=1):
    """Raised to a multiple of step; a multiple stays."""
    return -(-Fraction(value) // step) * Fraction(step)


class Part:
    def __init__(self, kind, count, length, width, thickness, material, material_kind):
        self.kind, self.count, self.length, self.width = kind, count, length, width
        self.thickness, self.material, self.material_kind = thickness, material, material_kind
        self.staves, self.raised, self.rise = 1, False, 0

    @property
    def frame(self):
        return self.kind not in ("panel", "slab", "pane", "bar")

    @property
    def field(self):
        return self.kind in ("panel", "slab", "pane")


LEVEL = ("lift up", "tilt out", "drop down")
FOLDING = ("bi-fold", "pie cut")


def doors_of(inputs, row, option=None):
    """The leaves of a row that are made apart: one, or of what folds the one that hangs and the one that folds."""
    if (row.get("opens") or "hinged") not in FOLDING:
        return [Door(inputs, row, option)]
    folding = Door(inputs, row, option, role="folding leaf")
    return [Door(inputs, row, option, role="hung leaf", beside=folding), folding]


class Door:
    """A row of the list as one leaf of it."""

    def __init__(self, inputs, row, option=None, role=None, beside=None):
        self.inputs, self.row, self.role = inputs, row, role
        self.id = row["id"] + (" " + role if role else "")
        self.opens = row.get("opens") or "hinged"
        self.hung_on = "fold hinge" if role == "folding leaf" else "hinge"
        both = row.get("hinge side") == "pair"
        self.make = self.made(option)
        self.count = int(row.get("count") or 1)
        self.together = int(row.get("leaves") or {"pie cut": 2, "bi-fold": 4 if both else 2}.get(self.opens, 1 + both))
        self.leaves = self.together // (2 if role else 1)
        self.pieces = self.count * self.leaves
        self.use = row.get("use") or "door"
        self.style_name = self.make["style"]
        self.style = inputs.section("door", self.style_name)
        self.width, self.height = self.size()
        below = self.of_style("slab below")
        self.front = self.use in ("drawer front", "false front")
        if self.front and below is not None and self.height < below:  # made in all by another style
            self.style_name = self.style["slab style"].lower()
            self.style = inputs.section("door", self.style_name)
        self.slab = self.style["kind"] == "slab"
        self.bought = "bought in" in self.style
        self.upright = (self.make.get("grain") or self.style.get("panel grain", "vertical")) == "vertical"
        self.thickness = self.of_style("thickness")
        self.parts, self.openings = [], []
        if self.slab:
            self.parts_of_slab()
        elif not self.bought:
            self.parts_of_frame()
        finish = self.make.get("finish", "none")
        self.finish = None if finish == "none" else finish
        self.finish_keys = inputs.section("finish", self.finish) if self.finish else {}
        self.sent_out = "put out" in self.finish_keys
        tinted = any(inputs.section("coating", c).get("tinted") == "yes" for c, _ in coats_of(self.finish_keys))
        self.batch_color = self.make.get("color", "") if tinted else ""
        self.surfaces()
        self.weight = rounded(sum(p.count * self.weight_of(p) for p in self.parts), "weight")
        self.carried = self.weight + (beside.weight if beside else 0)
        self.hinges = self.hinge_count()
        self.pulls = self.pull_count()
        self.fitted = self.other_hardware()

    # --- how it is made

    def made(self, option):
        make = {k: v for k, v in self.inputs.job[("make", "")].items()}
        layers = [self.inputs.job[("option", option)]] if option else []
        layers.append({k: v for k, v in self.row.items() if v})
        for layer in layers:
            if any(k.startswith("overlay") for k in layer):
                make.pop("reveal", None)
            if "reveal" in layer:
                for key in [k for k in make if k.startswith("overlay")]:
                    make.pop(key)
            if "overlay" in layer:
                for side in ("left", "right", "top", "bottom"):
                    make.pop("overlay " + side, None)
            make.update(layer)
        return make

    def of_style(self, key, default=None):
        text = self.style.get(key)
        return self.inputs.length(text) if text else default

    def sized(self, key, default=0):
        text = self.make.get(key)
        return self.inputs.length(text, of_rates=False) if text else Fraction(default)

    def near(self, size):
        """To 1/64 in or 0.1 mm, half away from zero."""
        step = Fraction(1, 64) if self.inputs.bare == "in" else Fraction(1, 10)
        return ((size / step) + Fraction(1, 2)).__floor__() * step

    def cut(self, size, way="nearest"):
        """To the shop's step, where it has one: to the nearest, half up; down; up."""
        base = Fraction(1, 64) if self.inputs.bare == "in" else Fraction(1, 10)
        step = self.inputs.section("saw").get("round sizes to")
        if not step:
            return size
        step = up(self.inputs.length(step), base)
        return {"nearest": lambda: ((size / step) + Fraction(1, 2)).__floor__() * step,
                "down": lambda: (size / step).__floor__() * step, "up": lambda: up(size, step)}[way]()

    def size(self):
        left = (self.role != "folding leaf") != (self.row.get("hinge side") == "right")
        cut = self.opens == "pie cut"
        width, height = self.sized("second width" if cut and not left else "width"), self.sized("height")
        if self.make.get("measure", "opening") == "door" or self.use == "end panel":
            return self.cut(self.near(width), "down"), self.cut(self.near(height), "down")
        reveal = self.sized("reveal") if "reveal" in self.make else None
        sides = {}
        for side in ("left", "right", "top", "bottom"):
            own = self.make.get("overlay " + side)
            sides[side] = -reveal if reveal is not None else \
                self.inputs.length(own, of_rates=False) if own else self.sized("overlay")
        height += sides["top"] + sides["bottom"]
        if cut:
            width += sides["left" if left else "right"] - self.sized("corner")
            return self.cut(self.near(width), "down"), self.cut(self.near(height), "down")
        width += sides["left"] + sides["right"]
        if self.together > 1:
            gap = self.sized("gap", Fraction(1, 8) if self.inputs.bare == "in" else 3)
            width = (width - (self.together - 1) * gap) / self.together
        return self.cut(self.near(width), "down"), self.cut(self.near(height), "down")

    # --- parts

    def material(self, key):
        name = self.make[key].lower()
        for kind in ("lumber", "sheet", "glass"):
            if self.inputs.section(kind, name):
                return name, kind
        raise KeyError(name)

    def solid(self, kind, count, high, wide, thickness, name):
        """A panel or slab of lumber: along is the length of its grain."""
        along, across = (high, wide) if self.upright else (wide, high)
        part = Part(kind, count, along, across, thickness, name, "lumber")
        stave = self.of_style("stave")
        part.staves = int(up(across / stave)) if stave else 1
        part.raised = self.style.get("raised") == "yes"
        return part

    def of_sheet(self, kind, high, wide, thickness, name):
        along, across = (high, wide) if self.upright else (wide, high)
        return Part(kind, 1, along, across, thickness, name, "sheet")

    def parts_of_slab(self):
        name, kind = self.material("slab")
        if kind == "lumber":
            self.parts.append(self.solid("slab", 1, self.height, self.width, self.thickness, name))
            return
        self.thickness = self.inputs.length(self.inputs.section("sheet", name)["thickness"])
        self.parts.append(self.of_sheet("slab", self.height, self.width, self.thickness, name))

    def by_hand(self, coating):
        """A coat whose own way is by hand is no sprayed one."""
        own = self.inputs.section("coating", coating).get("put on")
        return own is not None and self.inputs.section("spray", own).get("by hand") == "yes"

    def divided(self, whole, count, between):
        """count openings of a length with bars between: equal as cut, the last takes what remains."""
        clear = whole - (count - 1) * between
        each = self.cut(self.near(clear / count))
        return [each] * (count - 1) + [clear - (count - 1) * each]

    def lay_bars(self, wide, high):
        if not self.row.get("bars"):
            return
        lights = [int(n) for n in self.row["bars"].lower().split("x")]
        faces = 2 if self.style.get("bars on") == "both" else 1
        name, _ = self.material("frame")
        for count, along in ((lights[0] - 1, high), (lights[1] - 1, wide)):
            if count:
                self.parts.append(Part("bar", count * faces, self.cut(along, "down"), self.cut(self.of_style("bar thickness")),
                                       self.of_style("bar width"), name, "lumber"))

    def bar_area(self):
        along = sum(p.count * p.length for p in self.parts if p.kind == "bar")
        on = {"front", "back"} if self.style.get("bars on") == "both" else {"front"}
        finished = {"both": {"front", "back"}, "none": set()}.get(self.finish_keys.get("faces", "both"),
                                                                  {self.finish_keys.get("faces")})
        if not along:
            return 0
        around = self.of_style("bar width") + 2 * self.of_style("bar thickness")
        return rounded(along * around * len(on & finished) / len(on) / self.per_area(), "area")

    def arc(self, chord, rise):
        """Along an arch, by Huygens' rule, to a step; the root to a nanometer."""
        nm = 25_400_000 if self.inputs.bare == "in" else 1_000_000
        half, up_by = int(chord * nm) // 2, int(rise * nm)
        return self.near(Fraction((8 * isqrt(half * half + up_by * up_by) - int(chord * nm)) // 3, nm))

    def around(self, wide, high, rise):
        return 2 * (wide + high) if not rise else wide + 2 * (high - rise) + self.arc(wide, rise)

    def open_area(self, wide, high, rise):
        area = rounded(wide * high / self.per_area(), "area")
        if not rise:
            return area
        return area - rounded(wide * rise / (3 * self.per_area()), "area") + \
            rounded(rise ** 3 / (2 * wide * self.per_area()), "area")

    def parts_of_frame(self):
        stile = self.of_style("stile")
        top = self.of_style("top rail", stile)
        bottom = self.of_style("bottom rail", stile)
        if self.front and "drawer rail" in self.style:
            top = bottom = self.of_style("drawer rail")
        mid_rail, mid_stile = self.of_style("mid rail", stile), self.of_style("mid stile", stile)
        joint = self.style["joint"]
        mitered = joint in ("miter", "mitre")
        tongue = 0 if joint in ("dowel", "loose tenon") or mitered else self.of_style("tongue", 0)
        rails, stiles = int(self.row.get("mid rails") or 0), int(self.row.get("mid stiles") or 0)
        clear = self.height - top - bottom
        given = self.row.get("rows")
        rows = [self.inputs.length(t, of_rates=False) for t in given.split("|")] if given else \
            self.divided(clear, rails + 1, mid_rail)
        columns = self.divided(self.width - 2 * stile, stiles + 1, mid_stile)
        name, _ = self.material("frame")
        rail = self.width if mitered else self.width - 2 * stile + 2 * tongue

        def add(kind, count, length, width):
            if count:
                self.parts.append(Part(kind, count, self.cut(length), self.cut(width), self.thickness, name, "lumber"))

        rise = self.inputs.length(self.row["arch"], of_rates=False) if self.row.get("arch") else 0
        add("stile", 2, self.height, stile)
        add("rail", 1, rail, top + rise)  # the blank
        self.parts[-1].rise = rise
        add("rail", 1, rail, bottom)
        add("rail", rails, self.width - 2 * stile + 2 * tongue, mid_rail)
        for at, row in enumerate(rows):
            add("mid stile", stiles, row - (rise if at == 0 else 0) + 2 * tongue, mid_stile)
        self.openings = [(c, r, rise if at == 0 else 0) for at, r in enumerate(rows) for c in columns]
        self.arches = len(columns) if rise else 0
        self.joints = 4 + 2 * rails + 2 * stiles * len(rows)
        for wide, high, _ in self.openings:
            self.fill(wide, high)

    def fill(self, wide, high):
        groove = self.of_style("groove", 0)
        kind = self.style["kind"]
        if kind == "glass":
            add = 2 * (groove - self.of_style("glass clearance", 0))
            name, _ = self.material("glass")
            thickness = self.inputs.length(self.inputs.section("glass", name)["thickness"])
            self.parts.append(Part("pane", 1, self.cut(high + add, "down"), self.cut(wide + add, "down"),
                                   thickness, name, "glass"))
            self.lay_bars(wide, high)
        elif kind == "panel":
            add = 2 * (groove - self.of_style("panel clearance", 0))
            name, _ = self.material("panel")
            thickness = self.inputs.length(self.inputs.section("sheet", name)["thickness"])
            self.parts.append(self.of_sheet("panel", self.cut(high + add, "down"), self.cut(wide + add, "down"),
                                            thickness, name))
        elif kind == "solid":
            along = 2 * (groove - self.of_style("panel clearance", 0))
            across = 2 * (groove - self.of_style("clearance across", 0))
            upright = self.upright
            name, _ = self.material("solid panel" if "solid panel" in self.make else "panel")
            thickness = self.of_style("panel thickness", self.thickness)
            self.parts.append(self.solid("panel", 1, self.cut(high + (along if upright else across), "down"),
                                         self.cut(wide + (across if upright else along), "down"), thickness, name))

    # --- quantities of a leaf

    def per_area(self):
        return 144 if self.inputs.bare == "in" else 1_000_000

    def per_run(self):
        return 12 if self.inputs.bare == "in" else 1000

    def net(self, part):
        """Net lumber of a piece, in what its lumber is sold by."""
        keys = self.inputs.section("lumber", part.material)
        thickness = self.inputs.length(keys["thickness"]) if "/" not in keys["thickness"] or " " in keys["thickness"] \
            else number(keys["thickness"])[0] * (1 if self.inputs.bare == "in" else Fraction(254, 10))
        if keys["price"].endswith("per bf"):
            inch = 1 if self.inputs.bare == "in" else Fraction(254, 10)
            volume = max(thickness, inch) * part.width * part.length
            return rounded(volume / (144 * inch ** 3), "bf")
        return rounded(thickness * part.width * part.length / 10 ** 9, "m3")

    def area(self, part):
        return rounded(part.width * part.length / self.per_area(), "area")

    def surfaces(self):
        self.face = rounded(self.width * self.height / self.per_area(), "area")
        self.perimeter = 2 * (self.width + self.height)
        edges = rounded(self.perimeter * self.thickness / self.per_area(), "area")
        inner = sum(self.around(*opening) for opening in self.openings)
        see_through = self.style["kind"] in ("glass", "open") and not self.slab and not self.bought
        faces = 2 if self.finish_keys.get("faces", "both") == "both" else 1
        faces = 0 if self.finish_keys.get("faces") == "none" else faces
        open_area = sum(self.open_area(*opening) for opening in self.openings) if see_through else 0
        self.sprayed = faces * (self.face - open_area) + edges
        if see_through:
            self.sprayed += rounded(inner * self.thickness / self.per_area(), "area")
        self.sprayed += self.bar_area()
        extra = self.of_style("profile extra")
        if extra and self.openings:
            self.sprayed += rounded(inner * extra / self.per_area(), "area")

    def density(self, kind, material):
        """By volume of cubic feet or cubic meters, lb or kg."""
        if kind == "lumber":
            wood = self.inputs.woods[self.inputs.section("lumber", material)["species"]]
            gravity = Fraction(wood["sg_12pct_volume"])
            return (1000 if self.inputs.metric else Fraction(6243, 100)) * gravity * Fraction(112, 100)
        value, unit = number(self.inputs.section(kind, material)["density"])
        if unit == "g/cm3":
            return value * 1000 if self.inputs.metric else value * Fraction("62.42796")
        return value

    def weight_of(self, part):
        thickness = part.thickness
        if part.raised and "mean thickness" in self.style:
            thickness = self.of_style("mean thickness")
        by_area = rounded(self.density(part.material_kind, part.material) * thickness / self.per_run(), "factor")
        return rounded(by_area * part.width * part.length / self.per_area(), "weight")

    def hinge_count(self):
        tilts = self.use == "false front" and self.opens in LEVEL
        if self.use != "door" and not tilts or self.make.get(self.hung_on, "none") == "none":
            return 0
        if self.row.get("hinges at") and self.role != "folding leaf":
            return len(self.row["hinges at"].split("|"))
        if self.row.get("hinges") and self.role != "folding leaf":
            return int(self.row["hinges"])
        rules = self.inputs.section("hinges")

        def upto(text, by):
            chosen = 0
            for item in listed(text):
                limit, _, count = item.partition(":")
                chosen = int(count)
                value = self.inputs.length(limit) if "height" in rules and text == rules["by height"] or \
                    text == rules["by height"] else number(limit)[0]
                if by <= value:
                    break
            return chosen

        edge = self.width if self.opens in LEVEL else self.height
        count = upto(rules["by height"], edge)
        return count if self.bought else max(count, upto(rules["by weight"], self.carried))

    def hinge_places(self):
        """From the upper end, or the left one of what hangs level, to the middle of each; None: not said."""
        ends = self.inputs.section("hinges").get("from the ends")
        own = self.row.get("hinges at") if self.role != "folding leaf" else None
        if not self.hinges or not own and not ends:
            return None
        if own:
            return [self.inputs.length(text, of_rates=False) for text in own.split("|")]
        edge = self.width if self.opens in LEVEL else self.height
        ends = self.inputs.length(ends)
        if self.hinges == 1:
            return [self.cut(edge / 2)]
        apart = (edge - 2 * ends) / (self.hinges - 1)
        between = [self.cut(ends + apart * i) for i in range(1, self.hinges - 1)]
        return [ends, *between, edge - ends]

    def pull_count(self):
        own = self.row.get("pull") or self.row.get("pulls")
        if self.make.get("pull", "none") == "none" or self.use == "end panel" and not own or self.role == "hung leaf":
            return 0
        return int(self.row.get("pulls") or 1)

    def other_hardware(self):
        """Pieces a leaf by name, of what is listed beside hinge and pull."""
        text = self.make.get("hardware", "none") if self.use == "door" else self.row.get("hardware") or "none"
        text = "none" if self.role == "hung leaf" else text
        pieces = {}
        for item in listed("" if text == "none" else text):
            name, mark, _ = item.partition(" per opening")
            count, _, rest = name.partition(" ")
            count, name = (int(count), rest.strip()) if count.isdigit() and rest else (1, name)
            pieces[name.lower()] = Fraction(count, self.leaves if mark else 1)
        return pieces

    # --- what work is counted by

    def drivers(self):
        frame = sum(p.count * p.length for p in self.parts if p.frame)
        solid = [p for p in self.parts if p.field and p.material_kind == "lumber"]
        run = self.per_run()
        banded = [p for p in self.parts if p.kind == "slab" and p.material_kind == "sheet" and
                  "banding" in self.inputs.section("sheet", p.material)]
        times = sum(n for coating, n in coats_of(self.finish_keys) if not self.by_hand(coating))
        here = self.finish and not self.sent_out
        return {
            "door": 1, "part": sum(p.count for p in self.parts),
            "stile": sum(p.count for p in self.parts if p.kind in ("stile", "mid stile")),
            "rail": sum(p.count for p in self.parts if p.kind == "rail"),
            "panel": sum(p.count for p in self.parts if p.field),
            "bar": sum(p.count for p in self.parts if p.kind == "bar"),
            "run of bar": rounded(sum(p.count * p.length for p in self.parts if p.kind == "bar") / run, "run"),
            "joint": self.joints if self.openings else 0,
            "arch": self.arches if self.openings else 0,
            "hinge": self.hinges, "pull": self.pulls, "piece of hardware": sum(self.fitted.values()),
            "run": rounded(max(self.width, self.height) / run, "run"),
            "frame": rounded(frame / run, "run"), "edge": rounded(self.perimeter / run, "run"),
            "area": self.face, "sprayed": self.sprayed if here else 0,
            "sprayed per coat": rounded(self.sprayed * times, "area") if here else 0,
            "sprayed between coats": rounded(self.sprayed * max(times - 1, 0), "area") if here else 0,
            "solid panel": sum(p.count for p in solid),
            "glue line": sum(p.count * rounded((p.staves - 1) * p.length / run, "run") for p in solid),
            "solid area": sum(p.count * self.area(p) for p in solid),
            "raised edge": sum(p.count * rounded(2 * (p.length + p.width) / run, "run") for p in solid if p.raised),
            "banding": rounded(self.perimeter / run, "run") if banded else 0,
            "pane": sum(p.count for p in self.parts if p.kind == "pane"),
        }


def coats_of(finish):
    """[(coating, times)] in the order of the file."""
    coats = []
    for item in listed(finish.get("coats", "")):
        name, _, times = item.rpartition(" x ")
        coats.append((name.strip().lower(), int(times)))
    return coats
