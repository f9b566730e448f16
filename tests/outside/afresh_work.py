# SPDX-License-Identifier: MIT
"""Labor from the input files alone, by docs/method.md section 6."""
from fractions import Fraction

from afresh_door import coats_of, rounded
from afresh_read import listed, number, percent

WHOLE_DOOR = ("door", "run", "hinge", "pull", "piece of hardware", "edge", "area", "sprayed", "sprayed per coat", "sprayed between coats")
OF_JOB = ("job", "bf", "m3", "sheet", "board", "cut")


def driver_of(text):
    """`ft of frame` -> frame, `sqft sprayed per coat` -> sprayed per coat, `sqft` -> area."""
    for unit in ("sqft", "ft", "m2", "m"):
        if text == unit or text.startswith(unit + " "):
            rest = text[len(unit):].strip()
            rest = rest[3:] if rest.startswith("of ") else rest
            return {"": "area", "solid panel": "solid area", "bar": "run of bar",
                    "door": "run" if unit in ("ft", "m") else "area"}.get(rest, rest)
    return text


def works_on(driver, part):
    frame = part.frame
    solid = part.field and part.material_kind == "lumber"
    return {
        "stile": part.kind in ("stile", "mid stile"), "rail": part.kind == "rail", "frame": frame,
        "joint": frame,  # every frame part is cut at a joint
        "arch": part.kind == "rail" and part.rise > 0,
        "bar": part.kind == "bar", "run of bar": part.kind == "bar",
        "panel": part.field, "bf": part.material_kind == "lumber", "m3": part.material_kind == "lumber",
        "sheet": part.material_kind == "sheet", "pane": part.material_kind == "glass", "solid panel": solid,
        "solid area": solid, "glue line": solid and part.staves > 1, "raised edge": part.raised,
        "banding": part.kind == "slab" and part.material_kind == "sheet",
    }.get(driver, True)


class Labor:
    def __init__(self, inputs, doors, bought, charged):
        """bought: {'bf': ..., 'sheet': ..., 'board': ..., 'cut': ...} of the whole job."""
        self.inputs, self.doors, self.bought = inputs, doors, bought
        self.shop = inputs.section("shop")
        self.operations = {}
        self.minutes = {d.id: Fraction(0) for d in doors}
        self.cost_of = {d.id: Fraction(0) for d in doors}
        self.bench = {d.id: Fraction(0) for d in doors}
        self.person = self.bench_person = Fraction(0)
        self.labor = self.machine = Fraction(0)
        self.charged = charged  # operations that a charge pays, not the doors
        self.apart_person, self.paid_by_charge = Fraction(0), {}
        for name, keys in inputs.kinds("operation").items():
            self.operation(name, keys)

    def applies(self, door, name):
        if name in self.charged:
            return True
        lists = [self.shop.get("operations", ""), door.style.get("operations", ""),
                 self.inputs.job[("job", "")].get("also", ""), door.row.get("also") or ""]
        if door.finish:
            lists.append(door.finish_keys.get("operations", ""))
        return any(name in [i.lower() for i in listed(text)] for text in lists)

    def passes(self, keys, driver, door):
        passes = int(number(keys.get("passes", "1"))[0])
        if "capacity" in keys:
            if driver in WHOLE_DOOR:
                wide = min(door.width, door.height)
            else:
                wide = max([min(p.width, p.length) for p in door.parts if works_on(driver, p)], default=0)
            if wide > self.inputs.length(keys["capacity"]):
                passes *= 2
        return passes

    def handled(self, keys, driver, door):
        """Parts of a leaf; what is milled in blanks counts as these where the machine has a shortest."""
        shortest = self.inputs.section("machine", keys.get("machine", "")).get("shortest")
        things, seen = 0, set()
        for p in door.parts:
            if not works_on(driver, p):
                continue
            blanks = self.blanks(door, p) if shortest and p.frame and driver not in WHOLE_DOOR + OF_JOB else None
            if blanks is None:
                things += p.count * door.pieces
            elif (p.material, p.length, p.width, p.kind == "rail") not in seen:
                seen.add((p.material, p.length, p.width, p.kind == "rail"))
                things += blanks
        return rounded(Fraction(things, door.pieces), "factor")

    def blanks(self, door, part):
        """How many blanks the row's parts of this size are milled in; None: long enough by themselves."""
        saw = self.inputs.section("saw")
        kerf, more = self.inputs.length(saw["kerf"]), self.inputs.length(saw["length allowance"])
        least = 0
        for name in listed(door.style.get("operations", "")):
            keys = self.inputs.section("operation", name)
            driver = driver_of(keys["per"])
            machine = self.inputs.section("machine", keys.get("machine", ""))
            if "shortest" in machine and driver not in WHOLE_DOOR + OF_JOB and works_on(driver, part):
                least = max(least, self.inputs.length(machine["shortest"]))
        if door.cut(part.length + more, "up") >= least:
            return None
        pieces = sum(p.count for p in door.parts if p.frame and (p.material, p.length, p.width, p.kind == "rail") ==
                     (part.material, part.length, part.width, part.kind == "rail")) * door.pieces
        holds = 1
        while door.cut(holds * part.length + (holds - 1) * kerf + more, "up") < least:
            holds += 1
        return max(pieces // holds, 1)

    def run(self, keys, driver, door, count):
        passes = self.passes(keys, driver, door)
        at_once = number(keys.get("together", "1"))[0]
        total = Fraction(0)
        if "feed" in keys:
            total += rounded(count * passes / number(keys["feed"])[0] / at_once, "min")
        elif "minutes" in keys:
            total += rounded(count * number(keys["minutes"])[0] * passes / at_once, "min")
        if "handling" in keys:
            value, per = number(keys["handling"])
            per = per.rpartition("per ")[2]
            handled = self.handled(keys, driver, door) if per == "part" else door.drivers()[per]
            total += rounded(handled * value * passes, "min")
        woods = [p.material for p in door.parts if works_on(driver, p) and p.material_kind == "lumber"]
        if keys.get("by wood") == "yes" and woods and "work" in self.inputs.section("lumber", woods[0]):
            total = rounded(total * percent(self.inputs.section("lumber", woods[0])["work"]) / 100, "min")
        return total

    def setups(self, keys, driver, here):
        per = keys["setup"].rpartition("per ")[2]
        if per == "job":
            return 1
        batches = {(d.finish, d.batch_color) for d in here if d.finish and not d.sent_out}
        if per == "coat":  # what is not tinted is mixed once for all colors
            mixes = {(finish, at, color if self.inputs.section("coating", name).get("tinted") == "yes" else "", n)
                     for finish, color in batches
                     for at, (name, n) in enumerate(coats_of(self.inputs.section("finish", finish)))}
            return sum(n for _, _, _, n in mixes)
        if per == "color":
            return len(batches)
        marks = set()
        for door in here:
            if driver in WHOLE_DOOR and per == "thickness":
                marks.add(door.thickness)
                continue
            for part in door.parts:
                if works_on(driver, part):
                    marks.add({"material": (part.material_kind, part.material), "thickness": part.thickness,
                               "width": part.width, "length": part.length, "style": door.style_name}[per])
        return len(marks)

    def operation(self, name, keys):
        driver = driver_of(keys["per"])
        here = [d for d in self.doors if self.applies(d, name)]
        if not here:
            return
        basis, runs = {}, Fraction(0)
        for door in here:
            if driver in OF_JOB:
                basis[door.id] = {"job": 1, "bf": door.net_lumber, "m3": door.net_lumber, "board": door.net_lumber,
                                  "sheet": door.sheet_area, "cut": sum(p.count for p in door.parts)}[driver]
                continue
            count = door.drivers()[driver]
            if count:
                basis[door.id] = self.run(keys, driver, door, count)
                runs += basis[door.id] * door.pieces
        basis = {i: b for i, b in basis.items() if b}
        if not basis:
            return
        if driver in OF_JOB:
            count = 1 if driver == "job" else self.bought[driver]
            runs = rounded(count * number(keys.get("minutes", "0"))[0] * int(number(keys.get("passes", "1"))[0]), "min")
        machine = runs
        if "setup" in keys:
            machine += rounded(self.setups(keys, driver, [d for d in here if d.id in basis]) * number(keys["setup"])[0], "min")
        hands = number(keys.get("hands", "1"))[0]
        percent, of = number(self.shop["allowance"])
        person = machine * hands * (100 + percent) / 100 if "added" in of else machine * hands * 100 / (100 - percent)
        person = rounded(person, "min")
        rate = number(keys.get("labor rate", self.shop["labor rate"]))[0]
        labor = rounded(person * rate / 60, "money")
        cost = Fraction(0)
        if "machine" in keys:
            cost = rounded(machine * number(self.inputs.section("machine", keys["machine"])["rate"])[0] / 60, "money")
        at_bench = keys.get("off the bench") != "yes"
        self.operations[name] = {"machine": machine, "person": person, "labor": labor, "cost": labor + cost,
                                 "bench": person if at_bench else Fraction(0)}
        self.person += person
        if name in self.charged:
            self.apart_person += person
            self.paid_by_charge[name] = self.operations[name]
            return
        self.bench_person += person if at_bench else 0
        self.labor += labor
        self.machine += cost
        whole = sum(basis[d.id] * d.pieces for d in here if d.id in basis)
        for door in here:
            if door.id in basis:
                share = rounded(person * basis[door.id] / whole, "min")
                self.minutes[door.id] += share
                self.bench[door.id] += share if at_bench else 0
                self.cost_of[door.id] += rounded((labor + cost) * basis[door.id] / whole, "money")
