# SPDX-License-Identifier: MIT
"""A whole quote made again from the input files alone, by the formulas of docs/method.md and in other code:
    afresh.py PROGRAM JOB.ini
Nothing of the program's tape is used; what a cutting plan finds (sheets, boards, cuts) is taken as found.
Compared to the last digit: sizes, quantities, hours, costs, every door's price, the foot of the quote.
"""
import itertools
import json
import os
import subprocess
import sys
import tempfile
from fractions import Fraction

from afresh_door import coats_of, doors_of, rounded, up
from afresh_read import Inputs, listed, number, percent
from afresh_spare import spare_rails
from afresh_work import Labor

VOLUMES = {"gal": Fraction(1), "qt": Fraction(1, 4), "pt": Fraction(1, 8), "fl oz": Fraction(1, 128),
           "l": Fraction(1), "ml": Fraction(1, 1000)}


def volume(text):
    value, unit = number(text)
    return value * VOLUMES[unit.partition(" at ")[0].replace(" per mix", "").replace(" per color", "").strip().lower()]


def with_waste(net, text, kind):
    """To buy of net: `45 % added`, `31 % lost`."""
    value, how = number(text)
    return rounded(net * (100 + value) / 100 if "lost" not in how else net * 100 / (100 - value), kind)


def cheapest(need, sizes):
    """Counts of the least cost that hold need; then the least left over, then the fewest."""
    ranges = [range(int(up(need / size)) + 1) for size, _ in sizes]
    best = None
    for counts in itertools.product(*ranges):
        holds = sum(n * size for n, (size, _) in zip(counts, sizes))
        if holds >= need:
            key = (sum(n * price for n, (_, price) in zip(counts, sizes)), holds, sum(counts))
            best = min(best or (key, counts), (key, counts))
    return best[0][0], rounded(best[0][1], "volume")


def charge_of(text):
    """`80.00 for samples by show`, `3 %`, `by deliver`: price, words, operation."""
    rest, _, operation = (" " + text).rpartition(" by ")
    if not operation or not _:
        rest, operation = " " + text, ""
    price, _, words = rest.partition(" for ")
    return price.strip(), words.strip(), operation.strip().lower()


class Job:
    def __init__(self, path, document):
        self.inputs = Inputs(path)
        self.shop = self.inputs.section("shop")
        self.sale = self.inputs.job[("sale", "")]
        self.estimate = document["estimates"][0]
        self.doors = [door for row in self.inputs.rows for door in doors_of(self.inputs, row)]
        self.failures, self.compared = [], 0
        self.group, self.share = {}, {d.id: {} for d in self.doors}
        self.lumber()
        self.sheets()
        self.glass()
        self.work()
        self.finish()
        self.hardware()
        self.consumables()
        self.bought_in()
        self.build_up()
        self.prices()
        self.foot()

    def total(self, each):
        return sum(d.pieces * each(d) for d in self.doors)

    def same(self, what, mine, theirs):
        """theirs: a figure of the document, or null."""
        self.compared += 1
        shown = Fraction(theirs["value"]) if theirs else Fraction(0)
        if shown != mine:
            self.failures.append(f"{what}: {float(mine)} made afresh, the program has {float(shown)}")

    def listed_as(self, kind):
        return {m["name"].lower(): m for m in self.estimate["materials"][kind]}

    # --- materials

    def lumber(self):
        theirs = self.listed_as("lumber")
        cost, charged = Fraction(0), {}
        for door in self.doors:
            door.net_of = {}
            for part in door.parts:
                if part.material_kind == "lumber":
                    door.net_of[part.material] = door.net_of.get(part.material, 0) + part.count * door.net(part)
            door.net_lumber = sum(door.net_of.values())
        self.bought = {"board": 0, "cut": 0, "bf": 0, "m3": 0, "sheet": 0}
        spares = spare_rails(self, with_waste) if self.shop.get("spare rails") == "yes" else []
        told = {(s["lumber"].lower(), s["as"], s["size"]): s for s in self.estimate["materials"]["spare rails"]}
        if len(told) != len(spares):
            self.failures.append(f"{len(spares)} widths of rails made afresh, the program has {len(told)}")
        for name, door, _, count in spares:
            mine = [s for (lumber, as_, _), s in told.items() if lumber == name and as_.lower() == door.id.lower()]
            if str(count) not in [s["spares"]["value"] for s in mine]:
                self.failures.append(f"{count} spare rails of {name} as of {door.id} made afresh")
        for name, keys in self.inputs.kinds("lumber").items():
            net = self.total(lambda d: d.net_of.get(name, 0))
            if not net:
                continue
            bf = keys["price"].endswith("per bf")
            milled = net + sum(count * door.net(part) for lumber, door, part, count in spares if lumber == name)
            unit = "bf" if bf else "m3"
            need = up(with_waste(rounded(milled * self.to_buy(name), unit), keys["waste"], unit), 1 if bf else Fraction(1, 1000))
            need = max(need, number(keys.get("minimum", "0"))[0]) if need else need
            steps = [(Fraction(0), number(keys["price"])[0])]
            steps += [(number(s)[0], number(s.partition(" at ")[2])[0]) for s in listed(keys.get("price from", ""))]
            ways = [(rounded(max(need, start) * price, "money"), max(need, start)) for start, price in steps
                    if not any(start < later <= need for later, _ in steps)]
            charged[name], amount = min(ways)
            self.same(name + " net", net, theirs[name]["net"])
            self.same(name + " bought", amount, theirs[name]["by factor"]["bought"])
            self.same(name + " cost", charged[name], theirs[name]["by factor"]["cost"])
            if theirs[name]["priced by"] == "plan":
                charged[name] = Fraction(theirs[name]["by plan"]["cost"]["value"])
                amount = Fraction(theirs[name]["by plan"]["bought"]["value"])
            worth, rack = (Fraction(theirs[name].get(key, {"value": 0})["value"]) for key in ("worth from the rack", "from the rack"))
            charged[name] += worth
            self.bought[unit] += amount + rack
            cost += charged[name]
            for d in self.doors:
                share = rounded(charged[name] * d.net_of.get(name, 0) / net, "money")
                self.share[d.id]["lumber"] = self.share[d.id].get("lumber", 0) + share
        self.group["lumber"] = cost

    def to_buy(self, name):
        """The part of a lumber's parts, by area, that its plan has on boards that are bought, not of the rack."""
        plans = (self.estimate.get("plans") or {"lumber": []})["lumber"]
        area = {True: 0, False: 0}
        for plan in plans:
            if plan["name"].lower() != name.lower() or plan["missing"]:
                continue
            for board in plan["boards cut"]:
                sold = "to buy" in plan["sizes"][board["size"]]
                for strip in board.get("strips", board.get("segments")):
                    area[sold] += board["copies"] * sum(Fraction(p["length"]) * Fraction(p["width"]) for p in strip["parts"])
        return area[True] / (area[True] + area[False]) if area[False] else 1

    def sheets(self):
        theirs = self.listed_as("sheets")
        cost = Fraction(0)
        for d in self.doors:
            d.sheet_of = {}
            for p in d.parts:
                if p.material_kind == "sheet":
                    d.sheet_of[p.material] = d.sheet_of.get(p.material, 0) + p.count * d.area(p)
            d.sheet_area = sum(d.sheet_of.values())
        for name, keys in self.inputs.kinds("sheet").items():
            net = self.total(lambda d: d.sheet_of.get(name, 0))
            if not net:
                continue
            sides = [self.inputs.length(s) for s in keys["size"].split(" x ")]
            area = rounded(sides[0] * sides[1] / self.doors[0].per_area(), "area")
            need = rounded(with_waste(net, keys["waste"], "area") / area, "factor")
            whole, half = up(need), Fraction(0)
            money = rounded(whole * number(keys["price"])[0], "money")
            if "half sheet" in keys and need - (whole - 1) <= Fraction(1, 2):
                with_half = rounded((whole - 1) * number(keys["price"])[0] + number(keys["half sheet"])[0], "money")
                if with_half <= money:
                    whole, half, money = whole - 1, Fraction(1), with_half
            self.same(name + " net", net, theirs[name]["net"])
            thick = self.inputs.length(keys["thickness"]) / self.doors[0].per_run()
            weight = rounded(self.doors[0].density("sheet", name) * thick * area, "weight")
            self.same(name + " weight", weight, theirs[name]["weight"])
            self.same(name + " whole sheets", whole, theirs[name]["by factor"]["whole sheets"])
            self.same(name + " cost", money, theirs[name]["by factor"]["cost"])
            by_plan = theirs[name]["priced by"] == "plan"
            if by_plan:
                money = Fraction(theirs[name]["by plan"]["cost"]["value"])
                money += Fraction(theirs[name].get("worth from the rack", {"value": 0})["value"])
            if self.shop["charge sheets"] == "used":
                money = Fraction(theirs[name]["charged"]["value"])
            self.bought["sheet"] += whole + half if not by_plan else sum(
                Fraction(theirs[name]["by plan"][k]["value"]) for k in ("whole sheets", "half sheets", "from the rack")
                if theirs[name]["by plan"].get(k))
            cost += money
            for d in self.doors:
                share = rounded(money * d.sheet_of.get(name, 0) / net, "money")
                self.share[d.id]["sheets"] = self.share[d.id].get("sheets", 0) + share
        self.group["sheets"] = cost + self.banding()

    def banding(self):
        cost = Fraction(0)
        for name, keys in self.inputs.kinds("banding").items():
            of = {d.id: d.drivers()["banding"] for d in self.doors if any(
                p.kind == "slab" and self.inputs.section("sheet", p.material).get("banding", "").lower() == name
                for p in d.parts)}
            net = self.total(lambda d: of.get(d.id, 0))
            if not net:
                continue
            need = rounded(net * (100 + percent(keys.get("waste", "0"))) / 100, "run")
            price = number(keys["price"])[0]
            if "roll" in keys:
                roll = self.inputs.length(keys["roll"]) / self.doors[0].per_run()
                rolls = rounded(need / roll, "factor")
                money = up(rolls) * price
                if self.shop.get("charge banding", "used") == "used":
                    money = rounded(money * need / (up(rolls) * roll), "money")
            else:
                money = rounded(need * price, "money")
            self.same(name + " charged", money, self.listed_as("banding")[name]["charged"])
            cost += money
            for d in self.doors:
                share = rounded(money * of.get(d.id, 0) / net, "money")
                self.share[d.id]["sheets"] = self.share[d.id].get("sheets", 0) + share
        return cost

    def pane(self, d, part):
        keys = self.inputs.section("glass", part.material)
        step = self.inputs.length(keys["round up"]) if "round up" in keys else None
        wide, high = (up(s, step) if step else s for s in (part.width, part.length))
        area = max(rounded(wide * high / d.per_area(), "area"), number(keys.get("minimum", "0"))[0])
        stops = rounded(2 * (part.width + part.length) * number(keys.get("stops", "0"))[0] / d.per_run(), "money")
        return rounded(area * number(keys["price"])[0], "money") + stops

    def glass(self):
        for d in self.doors:
            self.share[d.id]["glass"] = sum(p.count * self.pane(d, p) for p in d.parts if p.kind == "pane")
        self.group["glass"] = self.total(lambda d: self.share[d.id]["glass"])

    # --- work

    def work(self):
        plans = self.estimate.get("plans") or {"lumber": [], "sheets": []}
        found = [p for p in plans["lumber"] + plans["sheets"] if not p["missing"]]
        self.bought["cut"] = sum(Fraction(p["cuts"]["value"]) for p in found)
        self.bought["board"] = sum(Fraction(p["boards"]["value"]) for p in found if "boards" in p)
        self.charges = [charge_of(text) for text in listed(self.sale.get("charges", ""))]
        if "delivery" in self.sale:
            self.charges.append(charge_of(self.sale["delivery"]))
        self.labor = Labor(self.inputs, self.doors, self.bought, {c[2] for c in self.charges if c[2]})
        for theirs in self.estimate["labor"]["operations"]:
            mine = self.labor.operations.pop(theirs["name"].lower(), None)
            if mine is None:
                self.failures.append(theirs["name"] + ": an operation that is not found afresh")
                continue
            self.same(theirs["name"] + " machine minutes", mine["machine"], theirs["machine minutes"])
            self.same(theirs["name"] + " person-minutes", mine["person"], theirs["person-minutes"])
            self.same(theirs["name"] + " cost", mine["cost"], theirs["cost"])
        self.failures += [name + ": an operation that the program lacks" for name in self.labor.operations]
        self.same("person-minutes", self.labor.person, self.estimate["labor"]["person-minutes"])
        self.group["labor"], self.group["machine"] = self.labor.labor, self.labor.machine
        for d in self.doors:
            self.share[d.id]["labor"] = self.labor.cost_of[d.id]

    # --- finish

    def sprayed(self, area, name, times, spray):
        """The mix that leaves the gun for one product's coats over an area."""
        keys = self.inputs.section("coating", name)
        losses = True
        if "coverage" in keys:
            value, how = number(keys["coverage"])
            sprayed = self.mix_of(keys, rounded(area / value, "volume"))
            losses = "practical" not in how
        else:
            film, unit = number(keys["wet film"])
            over = Fraction(144, 231000) if unit == "mil" else Fraction(1, 1000)
            sprayed = rounded(area * film * over, "volume")
        if losses:
            sprayed = rounded(sprayed * times * 100 / percent(spray["transfer efficiency"]), "volume")
            sprayed = rounded(sprayed * 100 / (100 - percent(spray.get("other loss", "0"))), "volume")
        else:
            sprayed = rounded(sprayed * times, "volume")
        return sprayed

    @staticmethod
    def mix_of(keys, covered):
        """Coverage is told of the product as sold, or with its catalyst; the gun sprays the mix."""
        parts = [number(keys[k]) if k in keys else (Fraction(0), "") for k in ("reducer", "catalyst")]
        if not any(value for value, _ in parts):
            return covered
        of_coating = sum(value for value, of in parts if "mix" not in of)
        of_mix = sum(value for value, of in parts if "mix" in of)
        mix = rounded((100 + of_coating) * 100 / (100 - of_mix), "percent")
        catalyst, of = parts[1]
        base = Fraction(100)
        if keys.get("coverage of") == "mixed" and catalyst:
            base += rounded(catalyst * mix / 100, "percent") if "mix" in of else catalyst
        return rounded(covered * mix / base, "volume")

    def mixed(self, sprayed, name, times, spray, whole, part):
        """Coating, reducer and catalyst; whole: sprayed of all colors that are mixed together, of which
        this is a part by area."""
        keys = self.inputs.section("coating", name)
        loss = volume(spray.get("fixed loss", "0 gal"))
        mixes = times
        if "mix size" in spray:
            mixes *= up(rounded(whole / (times * (volume(spray["mix size"]) - loss)), "factor"))
        mix = sprayed + rounded(rounded(mixes * loss, "volume") * part, "volume")
        wash = rounded(rounded(mixes * volume(spray.get("cleaning", "0 gal")), "volume") * part, "volume")
        parts = {k: number(keys[k]) if k in keys else (Fraction(0), "") for k in ("reducer", "catalyst")}
        added, rest = {}, mix
        for part, (value, of) in parts.items():
            if "mix" in of:
                added[part] = rounded(mix * value / 100, "volume")
                rest -= added[part]
        of_coating = sum(value for value, of in parts.values() if "mix" not in of)
        coating = rounded(rest * 100 / (100 + of_coating), "volume")
        for part, (value, of) in parts.items():
            if "mix" not in of:
                added[part] = rounded(coating * value / 100, "volume")
        return coating, added["reducer"], added["catalyst"], wash

    def finish(self):
        needs, uses = {}, {}
        for name, keys in self.inputs.kinds("finish").items():
            if "put out" in keys:
                continue
            spray = self.inputs.section("spray", keys["spray"])
            areas = {}
            for d in self.doors:
                if d.finish == name:
                    areas[d.batch_color] = areas.get(d.batch_color, 0) + d.pieces * d.sprayed
            for c, (coating, times) in enumerate(coats_of(keys)):
                own = self.inputs.section("coating", coating)
                way = self.inputs.section("spray", own["put on"]) if "put on" in own else spray
                sprayed = {color: self.sprayed(area, coating, times, way) for color, area in areas.items()}
                for color, area in areas.items():
                    whole, part = sprayed[color], Fraction(1)
                    if own.get("tinted") != "yes":
                        whole, part = sum(sprayed.values()), area / sum(areas.values())
                    amounts = self.mixed(sprayed[color], coating, times, way, whole, part)
                    products = [("coating", coating, color if own.get("tinted") == "yes" else "")]
                    products += [("additive", own.get(k + " product", "").lower(), "") for k in ("reducer", "catalyst")]
                    products.append(("additive", way.get("cleaning product", "").lower(), ""))
                    for product, amount in zip(products, amounts):
                        if amount:
                            needs[product] = needs.get(product, 0) + amount
                            uses.setdefault((name, color), []).append((c, product, amount))
        theirs = {(p["name"].lower(), p["color"] or ""): p for p in self.estimate["finish"]["products"]}
        charged, total = {}, Fraction(0)
        for (kind, name, color), used in needs.items():
            own, need = self.inputs.section(kind, name), used
            if kind == "coating":
                need += rounded(used * percent(own.get("reserve", "0")) / 100, "volume")
                need += rounded(volume(own.get("touch-up", "0 gal")), "volume")
            sizes = [(volume(s), number(s.partition(" at ")[2])[0])
                     for s in listed(self.inputs.section(kind, name)["sizes"])]
            money, bought = cheapest(need, sizes)
            self.same(f"{name} {color} need", need, theirs[(name, color)]["need"])
            self.same(f"{name} {color} bought", bought, theirs[(name, color)]["bought"])
            if self.shop["charge finish"] == "used":
                money = rounded(money * need / bought, "money")
            charged[(kind, name, color)] = money
            total += money
        self.group["finish"] = total
        self.finish_shares(uses, charged, needs)

    def finish_shares(self, uses, charged, needs):
        for (finish, color), used in uses.items():
            cost = sum(rounded(charged[product] * amount / needs[product], "money") for _, product, amount in used)
            rows = [d for d in self.doors if d.finish == finish and d.batch_color == color]
            area = sum(d.pieces * d.sprayed for d in rows)
            for d in rows:
                self.share[d.id]["finish"] = rounded(cost * d.sprayed / area, "money")

    # --- hardware and the rest

    def hardware(self):
        """Each piece by what it is on a door as: packs are made up of each apart."""
        theirs = {(h["name"].lower(), h["as"]): h for h in self.estimate["materials"]["hardware"]}
        roles = {"hinge": lambda d, name: d.hinges * (d.make.get(d.hung_on, "").lower() == name),
                 "pull": lambda d, name: d.pulls * (d.make.get("pull", "").lower() == name),
                 "other": lambda d, name: d.fitted.get(name, 0)}
        self.group["hardware"] = Fraction(0)
        for name, keys in self.inputs.kinds("hardware").items():
            for role, count in roles.items():
                self.piece(name, keys, lambda d, n=name, c=count: c(d, n), theirs.pop((name, role), None))
        self.failures += [f"hardware {name} as {role} is on no door" for name, role in theirs]

    def piece(self, name, keys, of, theirs):
        need = self.total(of)
        if not need:
            return
        self.same(name + " needed", need, theirs["needed"])
        if keys["price"] == "by others":
            return
        pieces = up(rounded(need * (100 + percent(keys.get("spares", "0"))) / 100, "factor"))
        money = rounded(pieces * number(keys["price"])[0], "money")
        if "pack" in keys:
            packs = up(pieces / number(keys["pack"])[0])
            bought = rounded(packs * number(keys["price"])[0], "money")
            money = bought if self.shop["charge hardware"] == "bought" else \
                rounded(pieces * number(keys["price"])[0] / number(keys["pack"])[0], "money")
        self.same(name + " charged", money, theirs["charged"])
        self.group["hardware"] += money
        for d in self.doors:
            share = rounded(money * of(d) / need, "money")
            self.share[d.id]["hardware"] = self.share[d.id].get("hardware", 0) + share

    def consumables(self):
        total = Fraction(0)
        minutes = self.labor.minutes
        here = {d.id: d.sprayed if d.finish and not d.sent_out else 0 for d in self.doors}
        for keys in self.inputs.kinds("consumable").values():
            price, per = number(keys["price"])
            per = per.rpartition("per ")[2]
            basis = {"door": lambda d: 1, "hinge": lambda d: d.hinges, "hour": lambda d: minutes[d.id]}.get(
                per, lambda d: here[d.id])
            whole = self.total(basis) if per != "hour" else self.labor.person
            counted = rounded(whole / 60, "hours") if per == "hour" else whole
            money = rounded(counted * price, "money")
            total += money
            for d in self.doors:
                share = rounded(money * basis(d) / whole, "money") if whole else Fraction(0)
                self.share[d.id]["consumables"] = self.share[d.id].get("consumables", 0) + share
        self.group["consumables"] = total

    def bought_in(self):
        for d in self.doors:
            own = sent = Fraction(0)
            if d.bought:
                price, per = number(d.style["bought in"])
                own += rounded(price * (1 if per.endswith("door") else d.face), "money")
            if d.finish and d.sent_out:
                sent = rounded(number(d.finish_keys["put out"])[0] * d.sprayed, "money")
            self.share[d.id]["goods"] = own
            self.share[d.id]["bought in"] = own + sent
        self.group["bought in"] = self.total(lambda d: self.share[d.id]["bought in"])
        self.goods = self.total(lambda d: self.share[d.id]["goods"])

    # --- price

    MATERIALS = ("lumber", "sheets", "glass", "finish", "hardware", "consumables")

    def direct(self, group, remade=True):
        """Materials, tax on purchases, remakes and direct cost of a job's or a door's groups."""
        materials = sum(group.get(k, 0) for k in self.MATERIALS) + group.get("goods", 0)
        tax = rounded(materials * percent(self.shop.get("tax on purchases", "0")) / 100, "money")
        before = materials - group.get("goods", 0) + group.get("bought in", 0) + tax + group.get("labor", 0) + group.get("machine", 0)
        remakes = rounded(before * percent(self.shop.get("remakes", "0")) / 100, "money") if remade else Fraction(0)
        return materials, tax, remakes, before + remakes

    def steps(self, group, minutes, at_bench, remade=True):
        """Contingency, overhead, cost with overhead, profit."""
        direct = self.direct(group, remade)[3]
        contingency = rounded(direct * percent(self.shop.get("contingency", "0")) / 100, "money")
        value, of = number(self.shop["overhead"])
        minutes = at_bench if "bench" in of else minutes
        overhead = rounded(minutes * value / 60, "money") if "hour" in of else \
            rounded((direct + contingency) * value / 100, "money")
        cost = direct + contingency + overhead
        rest, profit = cost, Fraction(0)
        for name, text in self.inputs.section("markup").items():
            amount = group.get(name, 0) + (group.get("machine", 0) if name == "labor" else 0)
            if amount:
                part = rounded(amount * cost / direct, "money")
                profit += rounded(part * percent(text) / 100, "money")
                rest -= part
        value, of = number(self.shop["profit"])
        profit += rounded(rest * value / 100, "money") if "margin" not in of else \
            rounded(rest * 100 / (100 - value), "money") - rest
        return contingency, overhead, cost, profit

    def build_up(self):
        theirs = self.estimate["costs"]
        whole = {**self.group, "goods": self.goods}
        materials, tax, remakes, direct = self.direct(whole)
        contingency, overhead, cost, profit = self.steps(whole, self.labor.person - self.labor.apart_person,
                                                          self.labor.bench_person)
        for name, money in self.group.items():
            self.same("group " + name, money, theirs["groups"][name])
        for name, mine in (("materials", materials), ("direct cost", direct), ("contingency", contingency),
                           ("overhead", overhead), ("cost with overhead", cost), ("profit", profit),
                           ("price by cost", cost + profit)):
            self.same(name, mine, theirs[name])
        self.same("remakes", remakes, theirs["groups"]["remakes"])
        self.same("tax on purchases", tax, theirs["groups"]["tax on purchases"])
        self.materials, self.direct_cost, self.by_cost, self.full = materials, direct, cost + profit, cost

    def prices(self):
        minimum = self.shop.get("minimum door")
        least = Fraction(0)
        if minimum:
            value, unit = number(minimum)
            least = value if not unit else rounded(self.by_cost * value / self.total(lambda d: d.face), "money")
        step = number(self.shop.get("round price to", "0.01"))[0]
        self.doors_total = Fraction(0)
        for d, theirs in zip(self.doors, self.estimate["doors"]):
            _, _, cost, profit = self.steps(self.share[d.id], self.labor.minutes[d.id], self.labor.bench[d.id])
            extra = number(d.row["extra charge"])[0] if d.row.get("extra charge") else 0
            price = up(max(cost + profit, least) + extra, step)
            for name, mine in (("width", d.width), ("height", d.height), ("sprayed", d.sprayed if d.finish else 0),
                               ("hinges", d.hinges), ("pulls", d.pulls),
                               ("other hardware", sum(d.fitted.values())), ("weight", d.weight),
                               ("person-minutes", self.labor.minutes[d.id]), ("price by cost", cost + profit),
                               ("unit price", price), ("amount", price * d.pieces)):
                self.same(f"{d.id} {name}", mine, theirs[name])
            told = [piece for piece in theirs["hardware"] if piece["as"] == "hinge"]
            places = d.hinge_places()
            at = [self.inputs.length(text, of_rates=False) for text in told[0].get("at", [])] if told else None
            if (at or None) != places:
                self.failures.append(f"{d.id}: hinges at {places} made afresh, the program has {at}")
            self.doors_total += price * d.pieces

    def foot(self):
        theirs, sale = self.estimate["sale"], self.sale
        discount = rounded(self.doors_total * percent(sale.get("discount", "0")) / 100, "money")
        after = self.doors_total - discount
        sold = max(after, number(self.shop.get("minimum job", "0"))[0])
        amounts, self.worked, self.worked_cost = [], sold, self.full
        for price, _, operation in self.charges:
            work = self.labor.paid_by_charge.get(operation)
            cost = Fraction(0)
            if work:
                group = {"labor": work["labor"], "machine": work["cost"] - work["labor"]}
                _, _, cost, profit = self.steps(group, work["person"], work["bench"], remade=False)
            value, unit = number(price) if price else (cost + profit, "")
            amounts.append(rounded(sold * value / 100, "money") if unit == "%" else value)
            self.worked += amounts[-1] if work else 0
            self.worked_cost += cost
        delivery = amounts.pop() if "delivery" in sale else Fraction(0)
        charges = sum(amounts)
        base = {"selling price": sold + charges + (delivery if sale.get("tax delivery") == "yes" else 0),
                "materials at selling price": rounded(sold * self.materials / self.direct_cost, "money"),
                "materials at cost": self.materials, "none": Fraction(0)}[sale.get("tax on", "selling price")]
        tax = rounded(base * percent(sale.get("tax", "0")) / 100, "money")
        total = sold + charges + delivery + tax
        card = sale.get("card fee", "0 % added")
        share = percent(card.split("%")[0])
        fee = rounded(total * share / (100 - share if card.endswith("of what is paid") else 100), "money")
        total += fee
        deposit = rounded(total * percent(sale.get("deposit", "0")) / 100, "money")
        stages = [rounded(total * percent(s) / 100, "money") for s in listed(sale.get("stages", ""))]
        for name, mine in (("doors and fronts", self.doors_total), ("discount", discount), ("sold", sold),
                           ("sold, with charges worked for", self.worked), ("cost of that", self.worked_cost),
                           ("profit left", self.worked - self.worked_cost),
                           ("taxable", base), ("tax", tax), ("card fee", fee), ("total", total),
                           ("deposit", deposit), ("balance", total - deposit - sum(stages))):
            self.same(name, mine, theirs[name])


def main():
    program, path = sys.argv[1:3]
    with tempfile.TemporaryDirectory() as folder:
        out = os.path.join(folder, "book.xlsx")
        run = subprocess.run([program, "quote", path, "--json", "--effort", "20", "-o", out], check=True,
                             capture_output=True, text=True)
    job = Job(path, json.loads(run.stdout))
    for failure in job.failures:
        print(failure)
    print(f"{job.compared} figures made afresh, {len(job.failures)} differ")
    return 1 if job.failures or job.compared < 200 else 0


if __name__ == "__main__":
    sys.exit(main())
