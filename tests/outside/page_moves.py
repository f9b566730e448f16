#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Rates moved on the page against the program: page_moves.py PROGRAM JOB COUNT [SEED]

COUNT changes of rates, drawn by chance, are made on the page of `show` in Chromium, one by one and
several at once, and by `range --set`, which reads and estimates the whole job anew.  What the
client pays, before tax, tax, hours and what is bought are to be the same to the cent, or the page
says `run again`, as it may of a few that the program chooses by.  What the page takes as a number
of the rate the program takes too, and the other way round.
"""
import json
import pathlib
import random
import re
import subprocess
import sys
import tempfile
from decimal import Decimal

from browser import Browser

AT_ONCE = 40  # changes of one call of `range`
HERE = pathlib.Path(__file__).resolve().parent

# What the page comes to with the changes, a list of [rate, text] each: by the names of `range`, null
# where it says `run again`.
ON_PAGE = """
(function (trials) {
    const say = (id) => {
        const f = tape.now[id];
        return f.again === "" ? plain(f.value, f.decimals) : null;
    };
    const boxes = new Map(moving.boxes.map((box) => [Number(box.dataset.r), box]));
    return trials.map((trial) => {
        trial.forEach(([rate, text]) => { boxes.get(rate).value = text; });
        moving.follow();
        const found = Object.fromEntries(Object.entries(data.outcome).map(([name, id]) => [name, id === 0 ? "0" : say(id)]));
        const wrong = moving.boxes.filter((box) => box.getAttribute("aria-invalid") === "true").length;
        trial.forEach(([rate]) => { boxes.get(rate).value = boxes.get(rate).defaultValue; });
        return { found, wrong, state: document.getElementById("state").textContent };
    });
})
"""


def line_of(rate, text):
    return f"{rate['section']}.{rate['key']} = {rate['before']}{text}{rate['unit']}{rate['behind']}"


def moved(draw, value, decimals, none):
    """Another number: mostly near the one that is read, now and then far from it, or nothing."""
    if Decimal(value) == 0:
        return str(draw.randint(1, 9))
    if none and draw.random() < 0.05:
        return "0"
    factor = Decimal(draw.choice([draw.uniform(0.8, 1.25), draw.uniform(0.3, 3), 1.1, 0.9]))
    step = Decimal(1).scaleb(-decimals)
    number = (Decimal(value) * factor).quantize(step)
    return None if number <= 0 or number == Decimal(value) else format(number, "f")


def program(doorcost, job, changes):
    """What `range --set` tells; or the places of the changes that it refuses."""
    words = [word for change in changes for word in ("--set", change)]
    done = subprocess.run([doorcost, "range", job, *words, "--json"], capture_output=True, text=True,
                          check=False)
    refused = {int(line) - 1 for line in re.findall(r"^--set:(\d+): error", done.stderr, re.M)}
    if done.returncode != 0 and not refused:
        raise RuntimeError(done.stderr)
    return None if refused else json.loads(done.stdout)["estimates"][0]["range"], refused


def main():
    doorcost, job, count, seed = sys.argv[1], sys.argv[2], int(sys.argv[3]), int((sys.argv + ["1"])[4])
    draw = random.Random(seed)
    faults, again, refused, compared, calls = [], 0, 0, 0, 0
    with tempfile.TemporaryDirectory() as folder, Browser() as browser:
        page = pathlib.Path(folder) / "page.html"
        subprocess.run([doorcost, "show", job, "-o", page, "--effort", "1"], check=True,
                       capture_output=True)
        browser.width(1000)
        browser.open(page)
        rates = browser.ask("data.rates.map((r, i) => ({...r, i, read: (moving.boxes.find((b) => Number(b.dataset.r) === i) || {}).value}))")
        rates = [r for r in rates if r["givens"]]
        trials = []
        left = count
        while left > 0:
            keys, trial = set(), []
            for rate in draw.sample(rates, min(len(rates), AT_ONCE * 2)):
                text = moved(draw, rate["read"], min(rate["decimals"], draw.choice([2, 3, rate["decimals"]])), rate["none"])
                if text is not None and (rate["section"], rate["key"]) not in keys and len(trial) < min(AT_ONCE, left):
                    keys.add((rate["section"], rate["key"]))
                    trial.append((rate, text))
            trials.append(trial)
            left -= len(trial)
        while trials:
            trial = trials.pop(0)
            lists = [[[rate["i"], text]] for rate, text in trial] + [[[rate["i"], text] for rate, text in trial]]
            seen = browser.ask(f"{ON_PAGE}({json.dumps(lists)})")
            changes = [line_of(rate, text) for rate, text in trial]
            told, wrong = program(doorcost, job, changes)
            if wrong:
                refused += len(wrong)
                faults += [f"{changes[i]}: taken by the page, not by the program" for i in wrong
                           if not seen[i]["wrong"]]
                trials.insert(0, [one for i, one in enumerate(trial) if i not in wrong])
                continue
            calls += 1
            stands = told["as it stands"]
            by_change = {(r["section"], r["key"]): r["high"] for r in told["rates"]}
            ends = [by_change[rate["section"], rate["key"]] for rate, _ in trial] + [told["all at once"]]
            for words, one, end in zip(changes + ["all at once"], seen, ends):
                if end["adds"] is None:
                    refused += 1
                    continue
                for name, value in one["found"].items():
                    wanted = Decimal(stands[name]) + Decimal(end["adds"][name])
                    if value is None:
                        again += name == "client pays"
                        continue
                    compared += name == "client pays"
                    if Decimal(value).quantize(Decimal("0.01")) != wanted.quantize(Decimal("0.01")):
                        faults.append(f"{words}: {name} {value} on the page, {wanted} by the program ({one['state']})")
                if one["wrong"]:
                    faults.append(f"{words}: refused by the page, not by the program")
        faults += browser.heard
    for fault in faults[:80]:
        print(fault)
    print(f"{count} changes one by one and {calls} times all at once: {compared} equal to the program "
          f"but {len(faults)}, {again} say 'run again', {refused} are refused by the program")
    return 1 if faults or compared < count * 0.75 else 0


if __name__ == "__main__":
    sys.exit(main())
