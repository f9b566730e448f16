#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Files to begin with, by options and at a terminal: tests/new.py PROGRAM TREE PART

What `new` writes is quoted at once, says what it was told, and stands nowhere that something stood; a call that ends early or is wrong leaves
a folder as it was. Answers are typed at a pseudo-terminal of the system. PART: script, from, rates, own, shops, signals, terminal.
"""
import contextlib
import json
import os
import pty
import random
import re
import select
import shlex
import shutil
import signal
import subprocess
import sys
import tempfile
import time

PROGRAM, TREE, PART = sys.argv[1:4]
LIST = "id,width,height\nA1,15 1/4,30\nA2,18,24\n"


def fail(text):
    sys.exit(f"new.py {PART}: {text}")


def call(folder, *words):
    """A run without a terminal; it must not wait for one."""
    return subprocess.run([PROGRAM, *words], cwd=folder, capture_output=True, text=True, check=False, timeout=60,
                          stdin=subprocess.DEVNULL)


def wants(done, status, words=""):
    if done.returncode != status or words not in done.stdout + done.stderr:
        fail(f"{done.args}: status {done.returncode}, expected {status} and '{words}':\n{done.stdout}{done.stderr}")


def snapshot(folder):
    found = {}
    for at, folders, names in os.walk(folder):
        found.update({os.path.join(at, name): None for name in folders})
        for name in names:
            with open(os.path.join(at, name), "rb") as file:
                found[os.path.join(at, name)] = file.read()
    return found


@contextlib.contextmanager
def shop(*, rates=True, doors=LIST):
    """A folder with a list, and rates if wanted."""
    with tempfile.TemporaryDirectory() as folder:
        if rates:
            shutil.copytree(os.path.join(TREE, "rates"), os.path.join(folder, "rates"))
            os.unlink(os.path.join(folder, "rates", "metric-shop.ini"))
        if doors is not None:
            write(folder, "doors.csv", doors)
        yield folder


def write(folder, name, text):
    with open(os.path.join(folder, name), "w", encoding="utf-8") as file:
        file.write(text)


def read(folder, name):
    with open(os.path.join(folder, name), encoding="utf-8") as file:
        return file.read()


def values(folder, name):
    """The keys of a job file: {(section, key): value}, comments cut off."""
    found, section = {}, ""
    for line in read(folder, name).splitlines():
        head = re.match(r"\[(.*)\]", line)
        section = head.group(1) if head else section
        key = re.match(r"([a-z ]+?) *= (\"[^\"]*\"|'[^']*'|[^;]*)", line)
        if key:
            found[section, key.group(1)] = key.group(2).strip().strip("\"'")
    return found


def quoted(folder, name):
    """What the quote of a job says of it."""
    done = call(folder, "quote", name, "--effort", "1", "--json", "-o", "quote.xlsx")
    wants(done, 0)
    return json.loads(done.stdout)["job"]


def unchanged(folder, status, words, *call_words):
    """A call that fails with these words and leaves all as it was."""
    before = snapshot(folder)
    wants(call(folder, *call_words), status, words)
    if snapshot(folder) != before:
        fail(f"{call_words} left {sorted(set(snapshot(folder)) ^ set(before))}")


# --- by options ---

def script():
    for unit, file in (("in", "rates/small-shop.ini"), ("mm", "rates/metric-shop.ini")):
        with shop(rates=False, doors=LIST if unit == "in" else "id,width,height\nA1,400,700\n") as folder:
            wants(call(folder, "new", "smith-kitchen.ini", "--set", f"unit = {unit}"), 0, "Next: doorcost quote")
            for name in (os.path.basename(file), "woods.csv", "terms.txt"):
                if read(folder, "rates/" + name) != read(TREE, "rates/" + name):
                    fail(f"rates/{name} is not the one that ships")
            told = values(folder, "smith-kitchen.ini")
            if told["job", "rates"] != file or told["job", "unit"] != unit or told["job", "date"] != time.strftime("%Y-%m-%d"):
                fail(f"{told}")
            for line in read(folder, "smith-kitchen.ini").splitlines():
                if " = " in line and not re.search(r" ; \w", line):
                    fail(f"the line has no comment: {line}")
            if quoted(folder, "smith-kitchen.ini")["title"] != "Smith kitchen":
                fail("the title is not made of the name")
            unchanged(folder, 3, "stands there already", "new", "smith-kitchen.ini")

    with shop() as folder:
        odd = 'Böhm; "& Söhne" # 漢字'
        wants(call(folder, "new", "a.ini", "--set", f"client = {odd}", "--set", "make.style = slab", "--set", "number = 2026-09",
                   "--set", "sale.tax = 7 %", "--set", "sale.deposit = 30 %", "--set", "make.corner = 1/2",
                   "--set", "option maple.slab = maple-ply-slab", "--set", "sale.discount = 2 %"), 0)
        told = values(folder, "a.ini")
        if quoted(folder, "a.ini")["client"] != odd or told["make", "corner"] != "1/2" or told["option maple", "slab"] != "maple-ply-slab":
            fail(f"{told}")
        # the next job goes on with what the shop chose, not with what was that job's
        write(folder, "more.csv", LIST)
        wants(call(folder, "new", "b.ini"), 0)
        told = values(folder, "b.ini")
        expected = {("job", "number"): "2026-10", ("job", "doors"): "more.csv", ("make", "style"): "slab", ("sale", "tax"): "7 %",
                    ("sale", "deposit"): "30 %", ("sale", "discount"): None, ("job", "client"): None}
        if any(told.get(key) != value for key, value in expected.items()):
            fail(f"{told}")
        unchanged(folder, 2, '--set "doors = FILE"', "new", "c.ini")
        unchanged(folder, 2, "does not end in '.ini'", "new", "c.txt")
        unchanged(folder, 2, "needs a name", "new")
        unchanged(folder, 2, "--unit is of --list", "new", "c.ini", "--unit", "mm")
        for name in ("", ".ini", "sub/"):
            unchanged(folder, 2, "names no file", "new", name)
        unchanged(folder, 3, "folder of 'no/c.ini' is missing", "new", "no/c.ini")
        unchanged(folder, 2, "has no '='", "new", "c.ini", "--set", "number")
        unchanged(folder, 2, "can stand in no line", "new", "c.ini", "--set", "doors = more.csv", "--set", "client = a\nb")
        unchanged(folder, 2, "can stand in no line", "new", "c.ini", "--set", "doors = more.csv", "--set", "client = " + 'x;"\'')
        for set_, words in (("make.style = shakr", "did you mean 'shaker'"), ("clinet = x", "did you mean 'client'"),
                            ("date = 2026-02-30", "2026-02-30"), ("doors = none.csv", "does not exist"), ("rates = none.ini", "does not exist")):
            unchanged(folder, 1, words, "new", "c.ini", "--set", "doors = more.csv", "--set", set_)
        unchanged(folder, 2, "needs a name", "new", "--set", "doors = more.csv")
        # of several rates those of the unit, or those that are named
        with shop(rates=False) as other:
            shutil.copytree(os.path.join(TREE, "rates"), os.path.join(other, "rates"))
            for unit, file in (("in", "small-shop"), ("mm", "metric-shop")):
                call(other, "new", f"{unit}.ini", "--set", f"unit = {unit}", "--set", "doors = doors.csv")
                if values(other, f"{unit}.ini")["job", "rates"] != f"rates/{file}.ini":
                    fail(f"{unit}: {values(other, unit + '.ini')}")
                os.unlink(os.path.join(other, f"{unit}.ini"))
            shutil.copy(os.path.join(other, "rates/small-shop.ini"), os.path.join(other, "rates/other.ini"))
            unchanged(other, 2, '--set "rates =', "new", "c.ini")
            wants(call(other, "new", "c.ini", "--set", "rates = rates/small-shop.ini"), 0)
        # what is wrong in the list is not the job's fault
        write(folder, "wrong.csv", LIST + "A3,x,24\n")
        done = call(folder, "new", "c.ini")
        wants(done, 1, "wrong.csv:4: error")
        wants(done, 1, "written to c.ini")
        wants(done, 1, "doorcost check c.ini")
        os.mkdir(os.path.join(folder, "sealed"))
        os.chmod(os.path.join(folder, "sealed"), 0o500)
        if os.getuid() != 0:
            unchanged(folder, 3, "could not write", "new", "sealed/c.ini", "--set", "doors = ../more.csv")


def as_shops():
    """Lists as shops have them go to a quote, or are told what to write, by the first call."""
    with shop() as folder:
        os.unlink(os.path.join(folder, "doors.csv"))
        write(folder, "list.csv", "Mill Lane,,,,,,\n,,,Door size,,,\nNo.,Room,Qty.,W (in),H (in),Type,Hinge,Notes\n"
              '1,Hall,2,15 1/4",30,door,L,by the stove\n2,Hall,1,15 1/4,6,drawer,,\n')
        done = call(folder, "new", "hall", "--set", "client = X")
        wants(done, 0, "2 rows, 3 doors and fronts: no errors, no warnings")
        wants(done, 0, "the client reads 1 note of the list")
        if values(folder, "hall.ini")["make", "measure"] != "door":
            fail("what the list says of its sizes is not offered")
        doors = quoted(folder, "hall.ini")
        if doors["title"] != "Hall":
            fail(f"{doors}")
        # what hangs on hinges is looked at as `check` does
        write(folder, "low.csv", "#,W,H\n1,18,30\n2,18,6\n")
        done = call(folder, "new", "low", "--set", "measure = door")
        wants(done, 1, "'use' tells of a drawer front, which has none")
        if call(folder, "check", "low.ini").stderr.splitlines()[:-1] != done.stderr.splitlines():
            fail(f"check says otherwise:\n{done.stderr}")
        os.unlink(os.path.join(folder, "low.csv"))
        os.unlink(os.path.join(folder, "low.ini"))
        # columns like none are left out where somebody is asked, else told
        write(folder, "own.csv", "No,Carcass,Wood,W,H,Shelf no\n1,B1,oak,18,30,4\n")
        wants(call(folder, "new", "own"), 1, "leave it out by 'own columns = Carcass' in [job]")
        os.unlink(os.path.join(folder, "own.ini"))
        text, status = typed(folder, [b"\n"] * 4, "new", "own")
        if values(folder, "own.ini")["job", "own columns"] != "Carcass, Shelf no" or "column 'Wood' is not taken" not in text or "'Carcass'" in text:
            fail(f"status {status}:\n{text}")
        os.unlink(os.path.join(folder, "own.ini"))
        wants(call(folder, "new", "own", "--set", "own columns = carcass, WOOD, Shelf no"), 0, "no errors, no warnings")
        wants(call(folder, "bridge", "own.ini", "own.ini"), 0)
        wants(call(folder, "quote", "own.ini", "--json", "-o", "own.xlsx"), 0)
        os.unlink(os.path.join(folder, "own.ini"))
        os.unlink(os.path.join(folder, "own.csv"))
        # one that lacks a column is taken where there is no other, and told what it lacks
        write(folder, "near.csv", "Door,Width,Height\nA,18,30\n")
        wants(call(folder, "new", "near"), 1, "column 'Door' is not taken as it stands; write 'id'")


# --- signals ---

def signals():
    """A run that is asked to end leaves all of its files or none, and nothing beside them."""
    draw = random.Random(7)
    whole = none = 0
    with shop(rates=False) as folder:
        begun = time.monotonic()
        call(folder, "new", "a.ini", "--list", "list.xlsx")
        takes = time.monotonic() - begun
    for turn in range(60):
        with shop(rates=False) as folder:
            process = subprocess.Popen([PROGRAM, "new", "a.ini", "--list", "list.xlsx"], cwd=folder, stdin=subprocess.DEVNULL,
                                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            # Most runs end within the time of one; a few moments lie behind every end, on a busy machine too.
            time.sleep(takes * (draw.random() * 1.2 if turn % 6 else 3))
            process.send_signal((signal.SIGINT, signal.SIGTERM, signal.SIGHUP)[turn % 3])
            process.wait(20)
            found = sorted(os.listdir(folder))
            rates_found = sorted(os.listdir(os.path.join(folder, "rates"))) if "rates" in found else []
            if found == ["a.ini", "doors.csv", "list.xlsx", "rates"] and rates_found == ["small-shop.ini", "terms.txt", "woods.csv"]:
                whole += 1
            elif found == ["doors.csv"]:
                none += 1
            else:
                fail(f"a run that was asked to end left {found}, {rates_found}")
    if whole == 0 or none == 0:
        fail(f"{whole} runs came to their end, {none} did not: the moments are not spread")


# --- from an old job ---

def from_old():
    old = os.path.join(TREE, "samples/kitchen/kitchen-second.ini")
    with shop() as folder:
        done = call(folder, "new", "kitchen.ini", "--from", old, "--set", "client = The pilot", "--set", "agreed = as listed, 2026-05-01")
        wants(done, 0, "dropped:")
        for word in ("address", "measured by", "revision", "note"):
            if word not in re.sub(r"\s+", " ", done.stdout.partition("dropped:")[2]):
                fail(f"nothing tells that {word} was dropped:\n{done.stdout}")
        before, after = read(TREE, "samples/kitchen/kitchen-second.ini").splitlines(), read(folder, "kitchen.ini").splitlines()
        kept = [line for line in after if line in before]
        if [line for line in before if line in kept] != kept or len(kept) < 40:
            fail("lines of the old job did not stay as they were")
        told = values(folder, "kitchen.ini")
        if told["job", "client"] != "The pilot" or told["job", "agreed"] != "as listed, 2026-05-01" or ("job", "revision") in told:
            fail(f"{told}")
        if os.path.realpath(os.path.join(folder, told["job", "rates"])) != os.path.realpath(os.path.join(TREE, "rates/small-shop.ini")):
            fail(f"the rates are no more those of the old job: {told['job', 'rates']}")
        if ("sale", "tax") not in told or ("option maple", "frame") not in told or ("make", "color") in told:
            fail(f"{told}")
        quoted(folder, "kitchen.ini")
        unchanged(folder, 1, "no section '[job]'", "new", "c.ini", "--from", "rates/small-shop.ini")
        unchanged(folder, 1, "does not exist", "new", "c.ini", "--from", "none.ini")
        # without another list it goes on with that of the old job
        os.unlink(os.path.join(folder, "doors.csv"))
        write(folder, "doors.csv", LIST)
        wants(call(folder, "new", "again", "--from", "kitchen.ini"), 0, "Next: doorcost quote again.ini")
        if values(folder, "again.ini")["job", "doors"] != "doors.csv":
            fail("the list of the old job is not offered")
        # from its own folder, all names stay
        write(folder, "more.csv", LIST)
        wants(call(folder, "new", "second.ini", "--from", "kitchen.ini"), 0)
        if values(folder, "second.ini")["job", "rates"] != told["job", "rates"]:
            fail("the rates are named otherwise in the same folder")


# --- rates of one's own ---

def rates():
    with tempfile.TemporaryDirectory() as folder:
        wants(call(folder, "new", "--rates", "shop.ini", "--set", "labor rate = 44 per hour (40 to 48)", "--set", "lumber poplar.price = 4.60 per bf"), 0)
        before, after = read(TREE, "rates/small-shop.ini").splitlines(), read(folder, "shop.ini").splitlines()
        changed = [line for line in after if line not in before]
        if len(after) != len(before) + 1 or len(changed) != 3 or not any("own" in line and "labor rate, lumber poplar" in line for line in changed):
            fail(f"{changed}")
        # comments stay
        if "[lumber poplar]" not in after or not any(line.startswith("labor rate") and "paid on the wage" in line for line in changed):
            fail(f"{changed}")
        write(folder, "doors.csv", LIST)
        wants(call(folder, "new", "a.ini"), 0)
        if values(folder, "a.ini")["job", "rates"] != "shop.ini":
            fail("the job does not go by them")
        told = call(folder, "quote", "a.ini", "--effort", "1", "--all").stdout
        left = told[told.index("Still as shipped"):]
        if "labor rate" in left.partition("saw")[0] or "overhead" not in left:
            fail(f"what is as shipped is wrong:\n{left[:400]}")
        unchanged(folder, 3, "stands there already", "new", "--rates", "shop.ini")
        unchanged(folder, 2, "has no unit", "new", "--rates", "b.ini", "--set", "labor rate = 44", "--from", "shop.ini")
        unchanged(folder, 2, "did you mean 'lumber poplar'", "new", "--rates", "b.ini", "--set", "lumber popler.price = 4 per bf")
        unchanged(folder, 2, "stands alone", "new", "b.ini", "--rates", "c.ini")
        unchanged(folder, 1, "no section '[shop]'", "new", "--rates", "b.ini", "--from", "a.ini")
        # in the unit that is asked for, or not at all
        unchanged(folder, 2, "'shop.ini' is not in mm", "new", "--rates", "b.ini", "--from", "shop.ini", "--unit", "mm")
        with shop() as other:
            wants(call(other, "new", "--rates", "a.ini", "--unit", "mm"), 0, "made of the rates that ship")
            if values(other, "a.ini")["shop", "unit"] != "mm":
                fail("rates in millimeters are in inches")
        # what the rates that ship name stays as it stands there
        woods = read(folder, "woods.csv") + "\n"
        write(folder, "woods.csv", woods)
        wants(call(folder, "new", "--rates", "e.ini", "--unit", "mm"), 0, "made of the rates that ship")
        if read(folder, "woods.csv") != woods:
            fail("woods.csv was written over")
        os.unlink(os.path.join(folder, "e.ini"))
        # a name that another begins with is named too, and none twice
        prices = [f"lumber {name}.price = 4.60 per bf" for name in ("poplar-5", "poplar", "poplar")]
        wants(call(folder, "new", "--rates", "e.ini", *(word for price in prices for word in ("--set", price))), 0)
        if sorted(values(folder, "e.ini")["shop", "own"].split(", ")) != ["labor rate", "lumber poplar", "lumber poplar-5"]:
            fail(f"own = {values(folder, 'e.ini')['shop', 'own']}")
        os.unlink(os.path.join(folder, "e.ini"))
        # of several those in inches, unless --unit has it otherwise
        with shop(rates=False) as other:
            shutil.copytree(os.path.join(TREE, "rates"), os.path.join(other, "rates"))
            wants(call(other, "new", "--rates", "a.ini"), 0, "made of rates/small-shop.ini")
            wants(call(other, "new", "--rates", "b.ini", "--unit", "mm"), 0, "made of rates/metric-shop.ini")
            wants(call(other, "new", "--list", "list.csv"), 0)
            if "15.25" not in read(other, "list.csv") or not re.search(r"\nwoods += rates/woods.csv", read(other, "a.ini")):
                fail("the list is not in inches, or woods are not named from the new folder")
        # at a terminal: a wrong answer is asked for again, what is kept is not the shop's own; a bare number has the unit of the offer
        words = {"labor rate": [b"44 per day\n", b"4 6\n", b"46\n"], "overhead": [b"18\n"], "profit": [b"30\n"], "minimum job": [b"500\n"],
                 "lumber": [b"-\n"]}
        text, status = typed(folder, words, "new", "--rates", "b")
        told = values(folder, "b.ini")
        if status != 0 or text.count("has the wrong unit") != 2 or text.count("taken as") != 3 \
                or [told["shop", key] for key in ("labor rate", "overhead", "profit", "minimum job")] != ["46 per hour", "18 per bench hour", "30 % markup", "500"]:
            fail(f"status {status}:\n{text}")
        if told["shop", "own"] != "labor rate, lumber poplar, overhead, profit, minimum job":
            fail(f"{values(folder, 'b.ini')['shop', 'own']}")
        # words of the shop that ships are nobody's, and Enter leaves them out
        if any(("shop", key) in values(folder, "b.ini") for key in ("address", "contact", "license", "payment", "warranty")):
            fail("words of the shop that ships stay")
        # all own: nothing is invented, and `own` has no effect any more
        words = {"name": [b"Mill Doors\n"], "address": [b"1 Mill Lane\n"], "license": [b"no. 12\n"], "payment": [b"cash\n"], "warranty": [b"-\n"],
                 "still as shipped": [b"perhaps\n", b"no\n"]}
        text, status = typed(folder, words, "new", "--rates", "d.ini", "--set", "lumber poplar.price = 4.70 per bf")
        told = values(folder, "d.ini")
        if status != 0 or told["shop", "invented"] != "no" or ("shop", "own") in told or told["shop", "license"] != "no. 12" \
                or told["shop", "payment"] != "cash" or ("shop", "warranty") in told or "still as shipped 'perhaps' is not known; expected" not in text:
            fail(f"status {status}, {told}:\n{text}")
        before = snapshot(folder)
        text, status = typed(folder, [b"\n", b"\x03"], "new", "--rates", "c.ini")
        if snapshot(folder) != before or not os.WIFSIGNALED(status):
            fail(f"status {status}:\n{text}")
    with shop() as folder:
        wants(call(folder, "new", "a.ini"), 0)
        # goods and work by their names; what the jobs of the folder take is offered, and `<` goes back to what was asked before
        words = {"go through them": [b"perhaps\n", b"yes\n"], "lumber": [b"cherry\n", b"\n"], "cherry, price": [b"<\n", b"9.10\n"], "cherry, price from": [b"<\n", b"\n"], "sheet": [b"oak\n", b"\n"],
                 "maple-ply, price": [b"61.5\n"], "mdf-slab, price": [b"<\n", b"<\n", b"\n"], "glass": [b"-\n"], "coating": [b"\n"],
                 "operation": [b"cope, trim\n"], "cope, minutes": [b"0.9\n"], "name": [b"Mill Doors\n"], "address": [b"<\n", b"\n"]}
        text, status = typed(folder, words, "new", "--rates", "f.ini")
        told = values(folder, "f.ini") if status == 0 else {}
        expected = {("lumber cherry", "price"): "9.10 per bf", ("sheet maple-ply", "price"): "61.5 per sheet", ("operation cope", "minutes"): "0.9",
                    ("shop", "name"): "Mill Doors", ("shop", "own"): "lumber cherry, sheet maple-ply, operation cope"}
        if status != 0 or any(told.get(key) != value for key, value in expected.items()) or "there is no sheet 'oak'" not in text or "there is no answer 'perhaps'" not in text \
                or "sheet [maple-ply, mdf-slab]" not in text or "coating [surfacer, topcoat]:" not in text or "topcoat, sizes" not in text \
                or "poplar, price" in text or "name [Mill Doors]" not in text or "cherry, price [9.10 per bf]" not in text or "trim, minutes" not in text:
            fail(f"status {status}, {[told.get(key) for key in expected]}:\n{text}")


def own_rates():
    """A job that was made first takes the shop's own rates when there are some, as does the next one."""
    with shop(rates=False) as folder:
        wants(call(folder, "new", "first", "--set", "client = X ; Y"), 0, "Next: doorcost quote first.ini")
        done = call(folder, "new", "--rates", "shop.ini", "--set", "labor rate = 44 per hour")
        wants(done, 0, "first.ini goes by rates/small-shop.ini, as shipped: 'rates = shop.ini' in its [job]")
        wants(done, 0, "Next: doorcost quote first.ini")
        write(folder, "more.csv", LIST)
        wants(call(folder, "new", "second.ini"), 0)
        if values(folder, "second.ini")["job", "rates"] != "shop.ini":
            fail("the next job goes by the rates that ship")
        before = read(folder, "first.ini").splitlines()
        # the rates stand when the job is asked about
        text, status = typed(folder, {"change it": [b"\x04"]}, "new", "--rates", "third.ini")
        if "the job is as it was" not in text or "nothing was written" in text or not os.path.exists(os.path.join(folder, "third.ini")):
            fail(f"status {status}:\n{text}")
        os.unlink(os.path.join(folder, "third.ini"))
        for answer, rates in ((b"no\n", "rates/small-shop.ini"), (b"\n", "other.ini")):
            # the second job goes by the rates that these are made of, and is asked about behind the first
            text, status = typed(folder, {"change it": [answer, b"no\n"]}, "new", "--rates", "other.ini")
            if status != 0 or "out of memory" in text or "as shipped. Shall it go by the new rates" not in re.sub(r"\s+", " ", text) \
                    or "second.ini goes by shop.ini. Shall it" not in text or "Next: doorcost quote second.ini" not in text:
                fail(f"status {status}:\n{text}")
            if values(folder, "first.ini")["job", "rates"] != rates:
                fail(f"after {answer}: {values(folder, 'first.ini')}")
            os.unlink(os.path.join(folder, "other.ini"))
        after = read(folder, "first.ini").splitlines()
        if [line for line in before if line not in after] != [line for line in before if line.startswith("rates ")] or len(before) != len(after):
            fail("more than the line of the rates was changed")
        # in the folder of its own, too
        os.mkdir(os.path.join(folder, "sub"))
        write(folder, "sub/doors.csv", LIST)
        wants(call(os.path.join(folder, "sub"), "new", "third.ini", "--set", "rates = ../rates/small-shop.ini"), 0)
        shutil.copytree(os.path.join(folder, "rates"), os.path.join(folder, "sub/rates"))
        wants(call(folder, "new", "--rates", "sub/rates/mine.ini"), 0, "sub/third.ini goes by ../rates/small-shop.ini, as shipped: 'rates = rates/mine.ini'")


# --- at a terminal ---

def typed(folder, answers, *words, size=80):
    """Runs with answers typed as questions come: a list in their order, or one of each question's name; Enter for all others.
    Returns (text, status as of waitpid)."""
    process, terminal = pty.fork()
    if process == 0:
        os.chdir(folder)
        os.environ["COLUMNS"] = str(size)
        os.environ["LC_ALL"] = "C.UTF-8"
        os.execv(PROGRAM, [PROGRAM, *words])
    named = {name: list(lines) for name, lines in answers.items()} if isinstance(answers, dict) else {}
    seen, new, answers, end = b"", b"", [] if named else list(answers), time.time() + 60
    while time.time() < end:
        if select.select([terminal], [], [], 1)[0]:
            try:
                part = os.read(terminal, 1 << 16)
            except OSError:
                break
            if not part:
                break
            seen, new = seen + part, new + part
        if new.endswith(b"]: "):
            waiting = named.get(new.decode(errors="replace").splitlines()[-1].split(" [")[0], answers)
            os.write(terminal, waiting.pop(0) if waiting else b"\n")
            new = b""
    status = os.waitpid(process, 0)[1]
    os.close(terminal)
    return seen.decode(errors="replace").replace("\r", ""), status


def terminal():
    with shop() as folder:
        before = snapshot(folder)
        for stop, ends, words in ((b"\x03", lambda s: os.WIFSIGNALED(s) and os.WTERMSIG(s) == signal.SIGINT, ""),
                                  (b"\x04", lambda s: os.WIFEXITED(s) and os.WEXITSTATUS(s) == 1, "nothing was written")):
            for count in (0, 1, 5, 9):
                text, status = typed(folder, [b"\n"] * count + [stop], "new", "a.ini")
                if not ends(status) or words not in text or snapshot(folder) != before:
                    fail(f"after {count} answers {stop} gave status {status}:\n{text}")
        # Enter alone
        text, status = typed(folder, [], "new", "a.ini")
        if status != 0 or "written to a.ini" not in text:
            fail(f"status {status}:\n{text}")
        for line in text.splitlines():
            if len(line) > 80:
                fail(f"a line is wider than the terminal: {line}")
        quoted(folder, "a.ini")
        # `<` goes back, where what was typed is offered; what was only taken is offered anew, by what is answered now
        write(folder, "back.csv", LIST)
        text, status = typed(folder, {"unit": [b"<\n", b"\n"], "style": [b"slab\n", b"\n"], "frame": [b"<\n", b"\n"], "measure": [b"\n", b"door\n"],
                                      "overlay": [b"<\n"]}, "new", "back.ini")
        told = values(folder, "back.ini")
        if status != 0 or "style [slab]" not in text or told["make", "style"] != "slab" or told["make", "measure"] != "door" or told["job", "unit"] != "in":
            fail(f"status {status}, {told}:\n{text}")
        os.unlink(os.path.join(folder, "back.ini"))
        # what --set gives is not asked
        write(folder, "more.csv", LIST)
        text, _ = typed(folder, [], "new", "b.ini", "--set", "client = X", "--set", "make.style = slab")
        if "Who gets" in text or "style [" in text or values(folder, "b.ini")["make", "style"] != "slab":
            fail(f"asked what was set:\n{text}")

    # where there is nothing at all, Enter alone writes a list to fill in and the rates that ship
    with shop(rates=False, doors=None) as folder:
        text, status = typed(folder, [], "new", "a.ini")
        if status != 0 or sorted(os.listdir(folder)) != ["a-list.xlsx", "a.ini", "rates"] or values(folder, "a.ini")["job", "doors"] != "a-list.xlsx":
            fail(f"status {status}, {os.listdir(folder)}:\n{text}")
        unchanged(folder, 1, "no rows", "check", "a.ini")
        # what stands at its name is somebody's
        write(folder, "c-list.xlsx", "mine")
        text, status = typed(folder, [], "new", "c.ini")
        if status != 0 or values(folder, "c.ini")["job", "doors"] != "c-list-2.xlsx" or read(folder, "c-list.xlsx") != "mine":
            fail(f"status {status}, {os.listdir(folder)}:\n{text}")
        # whose the rates are is asked with the first job: another shop keeps no words of the one that ships
        words = {"name": [b"Mill Doors\n"], "address": [b"1 Mill Lane\n"], "labor rate": [b"52\n"], "deposit": [b"40\n"]}
        with shop(rates=False) as first:
            write(first, "doors.csv", LIST + "A3,22,18\n")
            text, status = typed(first, {**words, "door-wide A3": [b"maybe\n", b"yes\n"]}, "new", "a.ini")
            told = {**values(first, "rates/small-shop.ini"), **values(first, "a.ini")}
            expected = {("shop", "name"): "Mill Doors", ("shop", "address"): "1 Mill Lane", ("shop", "contact"): None, ("shop", "license"): None,
                        ("shop", "payment"): None, ("shop", "warranty"): None, ("shop", "labor rate"): "52 per hour", ("shop", "own"): "labor rate",
                        ("shop", "invented"): "yes", ("sale", "deposit"): "40 %", ("job", "accept"): "door-wide A3"}
            if status != 0 or any(told.get(key) != value for key, value in expected.items()) or "type yes or no" not in text:
                fail(f"status {status}, {[told.get(key) for key in expected]}:\n{text}")
            done = call(first, "check", "a.ini")
            wants(done, 0, "no errors, no warnings")
            wants(done, 0, "accepted: 1 question")
        # and of the one that ships nothing is asked, nor changed
        with shop(rates=False) as first:
            text, status = typed(first, {}, "new", "a.ini")
            if status != 0 or "address [" in text or read(first, "rates/small-shop.ini") != read(TREE, "rates/small-shop.ini"):
                fail(f"status {status}:\n{text}")
        text, status = typed(folder, [b"mm\n"] + [b"\n"] * 3 + [b"\x03"], "new", "b.ini")
        if os.path.exists(os.path.join(folder, "b.ini")):
            fail(f"{text}")

    with shop() as folder:
        # wrong answers are asked again, with the words that the reader has for them
        asked = {"style": b"shakr", "overlay": b"14 9/8", "tax": b"6.25 in", "measure": b"frames", "doors": b"none.csv", "deposit": b"200 %"}
        answers = {"client": "Ωμέγα — 船小屋 " + "x" * 300, "title": "船"}
        told, refused, last = {}, set(), ""
        pid, handle = pty.fork()
        if pid == 0:
            os.chdir(folder)
            os.environ["LC_ALL"] = "C.UTF-8"
            os.execv(PROGRAM, [PROGRAM, "new", "c.ini"])
        seen, end = b"", time.time() + 60
        while time.time() < end:
            try:
                part = os.read(handle, 1 << 16)
            except OSError:
                break
            seen += part
            prompt = re.search(rb"([a-z ]+) \[[^\n]*\]: $", seen)
            if prompt is None:
                continue
            key = prompt.group(1).decode()
            if key == last:
                told[key] = seen.decode()
            if key in asked and key not in refused:
                refused.add(key)
                os.write(handle, asked[key] + b"\n")
            else:
                os.write(handle, (answers.get(key, "") + "\n").encode())
            seen, last = b"", key
        if os.waitpid(pid, 0)[1] != 0 or set(told) != set(asked):
            fail(f"asked again: {sorted(told)}, expected {sorted(asked)}")
        found = values(folder, "c.ini")
        if found["job", "client"] != answers["client"] or quoted(folder, "c.ini")["client"] != answers["client"]:
            fail(f"the client is {found['job', 'client']}")
        for key, answer in asked.items():
            if key == "doors":
                continue
            section = next(s for s, k in found if k == key) if any(k == key for _, k in found) else "sale"
            wrong = call(folder, "new", "d.ini", "--set", "doors = doors.csv", "--set", f"{section}.{key} = {answer.decode()}").stderr
            reason = re.search(r"error: (.*)", wrong).group(1)
            if re.sub(r"\s+", " ", reason) not in re.sub(r"\s+", " ", told[key]):
                fail(f"{key}: the reader says '{reason}', the prompt '{told[key]}'")
        # a name that heads no column is asked again; what comes next is told as a shell takes it
        write(folder, "own.csv", "id,Carcass,width,height\n1,B1,18,30\n")
        text, status = typed(folder, [b"\n"] * 3 + [b"own.csv\n", b"Carcass 2\n", b"Carcass\n"], "new", "it's mine.ini")
        last = re.search(r"Next: (doorcost quote .*)", text)
        if status != 0 or "has 'Carcass 2', which heads no column" not in re.sub(r"\s+", " ", text) or last is None:
            fail(f"status {status}:\n{text}")
        if shlex.split(last.group(1)) != ["doorcost", "quote", "it's mine.ini"]:
            fail(f"a shell takes apart: {last.group(1)}")
        # what no line can hold is asked again too
        write(folder, "more.csv", LIST)
        text, status = typed(folder, [b"\n", b"\n", b"x" * 3000 + b"\n", b"\xff\n", b"Y\n"], "new", "e.ini")
        if status != 0 or text.count("can stand in no line") != 2 or values(folder, "e.ini")["job", "client"] != "Y":
            fail(f"status {status}:\n{text}")


{"script": script, "from": from_old, "signals": signals, "rates": rates, "own": own_rates, "shops": as_shops, "terminal": terminal}[PART]()
