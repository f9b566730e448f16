# SPDX-License-Identifier: MIT
"""Spare rails from the input files alone, by docs/method.md, "Spare rails"; chances as whole fractions."""
import math
from fractions import Fraction

from afresh_door import rounded
from afresh_read import listed, number, percent
from afresh_work import Labor, WHOLE_DOOR, driver_of, works_on


def cost_of(spares, pieces, spoiled, each, setup):
    """What spares cost, and what setting up once more does: binomial chances of pieces and spares."""
    milled = pieces + spares
    chance = [math.comb(milled, k) * spoiled ** k * (1 - spoiled) ** (milled - k) for k in range(spares + 1)]
    short = 1 - sum(chance)
    lacking = milled * spoiled - spares + sum((spares - k) * c for k, c in enumerate(chance))
    return spares * each + short * setup + lacking * each


def fewest(pieces, spoiled, each, setup):
    """The spares that cost least: every number of them that could, looked at."""
    best = None
    for spares in range(pieces + 1):
        if best and spares * each >= best[0]:
            break
        best = min(best or (cost_of(0, pieces, spoiled, each, setup), 0),
                   (cost_of(spares, pieces, spoiled, each, setup), spares))
    return best[1]


def setup_cost(inputs, shop, door, part):
    total = Fraction(0)
    for name in listed(door.style.get("operations", "")):
        keys = inputs.section("operation", name)
        driver = driver_of(keys["per"])
        if "setup" not in keys or driver in WHOLE_DOOR or not works_on(driver, part) or \
                keys["setup"].rpartition("per ")[2] in ("coat", "color"):
            continue
        machine = number(keys["setup"])[0]
        rest, of = number(shop["allowance"])
        person = machine * number(keys.get("hands", "1"))[0]
        person = rounded(person * (100 + rest) / 100 if "added" in of else person * 100 / (100 - rest), "min")
        total += rounded(person * number(keys.get("labor rate", shop["labor rate"]))[0] / 60, "money")
        if "machine" in keys:
            total += rounded(machine * number(inputs.section("machine", keys["machine"])["rate"])[0] / 60, "money")
    return total


def spare_rails(job, with_waste):
    """(lumber, door, part, spares) of each width; job: with inputs, shop and doors."""
    groups = {}
    for door in job.doors:
        for part in door.parts:
            if part.kind == "rail" and part.material_kind == "lumber" and not part.rise and \
                    Labor.blanks(job, door, part) is None:
                groups.setdefault((part.material, part.thickness, part.width), []).append((door, part))
    found = []
    for (lumber, _, _), rails in groups.items():
        door, part = max(rails, key=lambda rail: rail[1].length)
        keys = job.inputs.section("lumber", lumber)
        unit = "bf" if keys["price"].endswith("per bf") else "m3"
        each = rounded(with_waste(door.net(part), keys["waste"], unit) * number(keys["price"])[0], "money")
        setup = setup_cost(job.inputs, job.shop, door, part)
        pieces = sum(p.count * d.pieces for d, p in rails)
        if setup:
            found.append((lumber, door, part,
                          fewest(pieces, percent(job.shop["remakes"]) / 100, each, setup)))
    return found
