# SPDX-License-Identifier: MIT
"""What the program tells as JSON, for tests that hold it against edited files."""
import contextlib
import json
import os
import shutil
import subprocess
import sys
import tempfile

# Where `compare` has what a job comes to.
MONEY = {"client pays": ("sale", "total"), "before tax": ("sale", "before tax"),
         "to buy": ("purchase", "spent in all")}


def fail(text):
    """Ends the test, with its name before what is wrong."""
    sys.exit(f"{os.path.basename(sys.argv[0])}: {text}")


def run(program, command, job, *more):
    """The estimates that a command tells of."""
    done = subprocess.run([program, command, job, *more, "--json"], capture_output=True, text=True,
                          check=False)
    if done.returncode != 0:
        fail(f"{command} {job} {' '.join(more)}: {done.stderr}")
    return json.loads(done.stdout)["estimates"]


SLABS = {"shop.ini": """[shop]
currency = USD
unit = in
labor rate = 60.00 per hour
hours per day = 8
price sheets by = plan
stock = {stock}
[saw]
kerf = {kerf}
length allowance = 1
edge allowance = 1/16
[sheet board]
thickness = 3/4
size = 48 x 96
price = {price}.00 per sheet
{sheet}grain = length
waste = 0 % added
[door slab]
kind = slab
thickness = 3/4
[operation pack]
per = door
minutes = 1
""", "job.ini": """[job]
title = {title}
date = 2026-03-02
unit = in
rates = shop.ini
doors = doors.csv
also = pack
[make]
style = slab
slab = board
finish = none
hinge = none
pull = none
measure = door
gap = 1/8
[sale]
tax on = none
"""}


def write_slabs(folder, doors, *, title, stock, kerf=0, price=80, sheet=""):
    """A job of slabs that keep their grain, of one sheet bought by plan; sheet: further lines of that. The job file."""
    for name, text in SLABS.items():
        with open(os.path.join(folder, name), "w", encoding="utf-8") as file:
            file.write(text.format(title=title, stock=stock, kerf=kerf, price=price, sheet=sheet))
    with open(os.path.join(folder, "doors.csv"), "w", encoding="utf-8") as file:
        file.write(doors)
    return os.path.join(folder, "job.ini")


@contextlib.contextmanager
def copied(samples):
    """A folder with copies of `rates` and `samples` of the folder `samples`, to be edited."""
    with tempfile.TemporaryDirectory() as folder:
        for part in ("rates", "samples"):
            shutil.copytree(os.path.join(samples, part), os.path.join(folder, part))
        yield folder
