# SPDX-License-Identifier: MIT
"""A sample whose rates ask for spare rails: the quote is what tests/outside/afresh.py makes of it, every figure is made again,
and the plan cuts what the doors need and the spares.

    spare_rails.py PROGRAM JOB.ini
"""
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
from fractions import Fraction

PROGRAM, JOB = sys.argv[1:]
HERE = os.path.dirname(os.path.abspath(__file__))


def fail(words):
    sys.exit("spare_rails: " + words)


with tempfile.TemporaryDirectory() as folder:
    root = os.path.join(os.path.dirname(JOB), "..", "..")
    for name in ("rates", "samples"):
        shutil.copytree(os.path.join(root, name), os.path.join(folder, name))
    job = os.path.join(folder, "samples", os.path.relpath(JOB, os.path.join(root, "samples")))
    for name in os.listdir(os.path.join(folder, "rates")):
        if name.endswith(".ini"):
            path = os.path.join(folder, "rates", name)
            text = re.sub(r"(?m)^(remakes .*)$", r"\1\nspare rails = yes", open(path, encoding="utf-8").read())
            open(path, "w", encoding="utf-8").write(text)
    done = subprocess.run([PROGRAM, "quote", job, "--json", "-o", os.path.join(folder, "q.xlsx")], capture_output=True,
                          check=False)
    if done.returncode != 0:
        fail(done.stderr.decode())
    again = subprocess.run([sys.executable, os.path.join(HERE, "recompute.py")], input=done.stdout, check=False)
    afresh = subprocess.run([sys.executable, os.path.join(HERE, "afresh.py"), PROGRAM, job], check=False)
    told = json.loads(done.stdout)["estimates"][0]
    spares = sum(int(s["spares"]["value"]) for s in told["materials"]["spare rails"])
    # what is cut of all lumber is what is in the doors, the spares and their allowances
    for lumber in told["materials"]["lumber"]:
        parts = [Fraction((lumber[key] or {}).get("value", 0)) for key in ("net", "spare rails", "allowances")]
        if sum(parts) != Fraction(lumber["rough"]["value"]):
            fail(lumber["name"] + ": net, spare rails and allowances are not what is rough")
    if spares < 2:
        fail("too few spares to tell")
    sys.exit(again.returncode or afresh.returncode)
