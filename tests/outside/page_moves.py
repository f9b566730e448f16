#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Numbers moved on the page against the program: page_moves.py PROGRAM JOB COUNT [SEED]

COUNT changes of rates and of the job, drawn by chance, are made on the page of `show` in Chromium,
one by one and several at once; those of rates also by `range --set`, which reads and estimates the
whole job anew, those of the job in an edited copy of its file.  What the
client pays, before tax, tax, hours and what is bought are to be the same to the cent, or the page
says `run again`, as it may of a few that the program chooses by.  What the page takes as a number
of the rate the program takes too, and the other way round.
"""
import csv
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
    const boxes = new Map(moving.boxes.map((box) => [Number(box.id.slice(1)), box]));
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


# The numbers that can be moved there.
RATES = """
moving.boxes.map((box) => ({...moving.rateOf(box), i: Number(box.id.slice(1)), read: box.value,
                            job: /^(sale$|row )/.test(moving.rateOf(box).section)}))
"""


def value_of(rate, text):
    return f"{rate['before']}{text}{rate['unit']}{rate['behind']}"


def line_of(rate, text):
    return f"{rate['section']}.{rate['key']} = {value_of(rate, text)}"


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


def edited_list(path, changes, to):
    """A copy of a door list with extra charges of rows changed."""
    with open(path, encoding="utf-8", newline="") as file:
        head, *rows = csv.reader(file)
    for rate, new in changes:
        row = next(row for row in rows if row[head.index("id")] == rate["section"].removeprefix("row "))
        row[head.index(rate["key"])] = value_of(rate, new)
    with open(to, "w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows([head, *rows])
    return to


def edited(job, changes, to):
    """A copy of a job file with changes of its own numbers, and of its list with those of rows; other files by their whole names."""
    text = pathlib.Path(job).read_text(encoding="utf-8")
    folder = pathlib.Path(job).resolve().parent
    text = re.sub(r"(?m)^(rates|doors)( *= *)([^;\n]*?)( *;.*)?$", lambda m: f"{m[1]}{m[2]}{folder / m[3]}", text)
    rows = [change for change in changes if change[0]["section"].startswith("row ")]
    doors = re.search(r"(?m)^doors *= *([^;\n]*?) *(;.*)?$", text)[1]
    if rows:
        text = text.replace(doors, str(edited_list(doors, rows, to.with_suffix(".csv"))))
    for rate, new in (change for change in changes if change not in rows):
        line = re.compile(rf"(?m)(^\[{rate['section']}\]\n(?:(?!\[).*\n)*?{rate['key']} *=)[^;\n]*")
        text, count = line.subn(lambda m: f"{m[1]} {value_of(rate, new)} ", text)
        if count != 1:
            raise RuntimeError(f"{job} has {count} lines of [{rate['section']}] {rate['key']}")
    to.write_text(text, encoding="utf-8")
    return to


def program(doorcost, job, trial, folder):
    """What the program tells of a list of changes: what each comes to, by the names of `range`, and
    all at once, None where the job can't be estimated so; or the places of those that it refuses."""
    refused, ends = set(), {}
    own = [i for i, (rate, _) in enumerate(trial) if rate["job"]]
    rates = [i for i in range(len(trial)) if i not in own]
    changes = [word for i in rates for word in ("--set", line_of(*trial[i]))]
    for i in own + [None]:
        moved_job = [trial[n] for n in (own if i is None else [i])]
        path = edited(job, moved_job, folder / "edited.ini")
        # one alone is any change, as only what stands without it is taken
        done = subprocess.run([doorcost, "range", path, *(changes if i is None else changes[:2]), "--json"],
                              capture_output=True, text=True, check=False)
        refused |= {rates[int(line) - 1] for line in re.findall(r"^--set:(\d+): error", done.stderr, re.M)}
        wrong = re.search(rf"^{re.escape(str(path))}:\d+: error", done.stderr, re.M)
        if wrong and i is not None:
            refused.add(i)
        elif wrong and not refused:  # deposit and stages together
            refused.add(max(own, key=lambda n: trial[n][0]["payment"]))
        elif done.returncode != 0 and not refused and not wrong:
            raise RuntimeError(done.stderr)
        elif done.returncode == 0:
            ends[i] = json.loads(done.stdout)["estimates"][0]["range"]
    if refused:
        return None, refused
    whole = edited(job, [], folder / "edited.ini")
    done = subprocess.run([doorcost, "range", whole, *changes, "--json"], capture_output=True, text=True, check=True)
    alone = json.loads(done.stdout)["estimates"][0]["range"]
    return comes_to(trial, alone, ends), refused


def sums(told, end):
    """What a job comes to with what it adds."""
    return end["adds"] and {name: Decimal(told["as it stands"][name]) + Decimal(more)
                            for name, more in end["adds"].items()}


def comes_to(trial, alone, ends):
    """For each change, then all at once, what the job comes to. alone: rates moved in the job as it
    is; ends: by the place of a change of the job, None for all, the job so edited."""
    by_rate = {(r["section"], r["key"]): r["high"] for r in alone["rates"]}
    found = []
    for i, (rate, _) in enumerate(trial):
        if rate["job"]:
            found.append({name: Decimal(value) for name, value in ends[i]["as it stands"].items()})
        else:
            found.append(sums(alone, by_rate[rate["section"], rate["key"]]))
    return found + [sums(ends[None], ends[None]["all at once"])]


def draw_trial(draw, rates, most):
    """Changes of as many different keys, of the job's each with an even chance."""
    keys, trial = set(), []
    own = [rate for rate in rates if rate["job"] and draw.random() < 0.5]
    others = [rate for rate in rates if not rate["job"]]
    for rate in own + draw.sample(others, min(len(others), AT_ONCE * 2)):
        text = moved(draw, rate["read"], min(rate["decimals"], draw.choice([2, 3, rate["decimals"]])), rate["none"])
        if text is not None and (rate["section"], rate["key"]) not in keys and len(trial) < most:
            keys.add((rate["section"], rate["key"]))
            trial.append((rate, text))
    return trial


class Held:
    """The page held against the program, and how often."""

    def __init__(self):
        self.faults, self.again, self.refused, self.compared, self.of_job, self.of_rows, self.calls = [], 0, 0, 0, 0, 0, 0

    def one(self, words, seen, wanted):
        if wanted is None:
            self.refused += 1
            return
        for name, value in seen["found"].items():
            if value is None:
                self.again += name == "client pays"
                continue
            self.compared += name == "client pays"
            if Decimal(value).quantize(Decimal("0.01")) != wanted[name].quantize(Decimal("0.01")):
                self.faults.append(f"{words}: {name} {value} on the page, {wanted[name]} by the program ({seen['state']})")
        if seen["wrong"]:
            self.faults.append(f"{words}: refused by the page, not by the program")

    def trial(self, browser, doorcost, job, trial, folder):
        """Holds a list of changes; what is left of it where the program refuses some."""
        lists = [[[rate["i"], text]] for rate, text in trial] + [[[rate["i"], text] for rate, text in trial]]
        seen = browser.ask(f"{ON_PAGE}({json.dumps(lists)})")
        changes = [line_of(rate, text) for rate, text in trial]
        told, wrong = program(doorcost, job, trial, folder)
        if wrong:
            self.refused += len(wrong)
            self.faults += [f"{changes[i]}: taken by the page, not by the program" for i in wrong
                            if not seen[i]["wrong"] and not seen[-1]["wrong"]]
            return [one for i, one in enumerate(trial) if i not in wrong]
        self.calls += 1
        self.of_job += sum(1 for rate, _ in trial if rate["job"])
        self.of_rows += sum(1 for rate, _ in trial if rate["section"].startswith("row "))
        for words, one, wanted in zip(changes + ["all at once"], seen, told):
            self.one(words, one, wanted)
        return []


def main():
    doorcost, job, count, seed = sys.argv[1], sys.argv[2], int(sys.argv[3]), int((sys.argv + ["1"])[4])
    draw = random.Random(seed)
    held = Held()
    with tempfile.TemporaryDirectory() as folder, Browser() as browser:
        page = pathlib.Path(folder) / "page.html"
        subprocess.run([doorcost, "show", job, "-o", page, "--effort", "1"], check=True,
                       capture_output=True)
        browser.width(1000)
        browser.open(page)
        rates = browser.ask(RATES)
        left = count
        while left > 0:
            trial = draw_trial(draw, rates, min(AT_ONCE, left))
            left -= len(trial)
            while trial:
                trial = held.trial(browser, doorcost, job, trial, pathlib.Path(folder))
        late = {rate["key"]: rate for rate in rates if rate.get("payment")}
        if len(late) == 2:  # together more than the total, which either alone may be
            held.trial(browser, doorcost, job, [(late["deposit"], "99")], pathlib.Path(folder))
        held.faults += browser.heard
        if held.of_rows == 0 and any(rate["section"].startswith("row ") for rate in rates):
            held.faults.append("no extra charge of a row was moved")
    for fault in held.faults[:80]:
        print(fault)
    print(f"{count} changes, {held.of_job} of them of the job, {held.of_rows} of these of rows, one by one and {held.calls} times all at once: "
          f"{held.compared} equal to the program but {len(held.faults)}, {held.again} say 'run again', "
          f"{held.refused} are refused by the program")
    return 1 if held.faults or held.compared < count * 0.75 or held.of_job < count / 40 else 0


if __name__ == "__main__":
    sys.exit(main())
