#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Hours of past jobs by doors, area and coats: a law that is put into notes comes out again.

    learn_fit.py DOORCOST TREE

Nine jobs of the kitchen's rows, drawn anew, are noted with 2 h each, 0.4 h a door, 0.05 h a sq ft of
one face and 0.02 h a sq ft of a coat, all in whole hundredths; doors, areas and coats are read from
the JSON of a quote. `learn` must find these numbers again, but for the rounding of the hours. Seven
jobs, and jobs of which some work was not noted, are refused with the reason."""
import json
import sys
import tempfile
from pathlib import Path

from learn_circle import Jobs, run, write

LAW = {"a job": 2.0, "a door": 0.4, "area of a face": 0.05, "area of a coat": 0.02}


def measures(job, folder):
    """What a quote says of the job, in the order of LAW."""
    quote = json.loads(run("quote", job, "--effort", "0", "-o", folder / "q.xlsx", "--force", "--json"))
    quote = quote["estimates"][0]
    doors = [(float(d["pieces"]["value"]), float(d["face area"]["value"])) for d in quote["doors"]]
    coats = sum(float(b["sprayed area"]["value"]) * float(c["coats"]["value"])
                for b in quote["finish"]["batches"] for c in b["coats"])
    return [1.0, sum(n for n, _ in doors), sum(n * a for n, a in doors), coats]


def fitted(call):
    return json.loads(run("learn", *call, "--json"))["estimates"][0]["learned"]["hours fitted"]


def main():
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        jobs = Jobs(folder)
        call, hours = [], []
        for number in range(9):
            job = jobs.draw(number)
            took = sum(a * b for a, b in zip(LAW.values(), measures(job, folder)))
            hours.append(round(took, 2))
            noted = folder / f"n{number}.csv"
            write(noted, [["what", "hours"], ["all", f"{took:.2f}"]])
            call += [job, noted]
        told = fitted(call)
        for key, wanted in LAW.items():
            if told["lacks"] is not None or abs(float(told[key]) - wanted) > max(0.02 * wanted, 0.002):
                sys.exit(f"learn_fit.py: {key}: {told[key]}, put in {wanted}; {told['lacks']}")
        for one, wanted in zip(told["hours"], hours):
            if abs(float(one) - wanted) > 0.03:
                sys.exit(f"learn_fit.py: {one} hours, noted {wanted}")
        if "from eight jobs on" not in fitted(call[:14])["lacks"]:
            sys.exit("learn_fit.py: seven jobs are not refused")
        write(folder / "n0.csv", [["what", "hours"], ["making", "10"]])
        if "all work" not in fitted(call)["lacks"]:
            sys.exit("learn_fit.py: work that was not noted is not seen")
    return 0


if __name__ == "__main__":
    sys.exit(main())
