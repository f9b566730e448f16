#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Work by day keeps to the shop: what the plan of `days --json` tells against the rates file and the
estimate of `quote --json`, by days and sums alone.

    days.py DOORCOST JOB.ini [JOB.ini ...]

- each operation's minutes are those of the estimates, whole, or it is named as not planned;
- work stands on working days alone, and no day holds more than its people can do;
- people and machines do one thing at a time, and what people do is all of the work;
- `first` comes before all others of a job, `last` behind them, coats in their order;
- no plan is sooner than all minutes shared by all people, nor than the bound that is told.

Days of the week and of the month are those of Python's datetime. Exit status 0: all is well.
"""
import configparser
import datetime
import math
import re
import sys
import tempfile
from collections import defaultdict
from fractions import Fraction

from told import fail, run

WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]


def day(text):
    return datetime.date.fromisoformat(text)


def names(rules, key):
    return [name.strip() for name in rules.get(key, "").split(",") if name.strip()]


def days_off(rules):
    off = set()
    for item in names(rules, "holidays"):
        ends = [day(end.strip()) for end in item.split(" to ")]
        for number in range(ends[0].toordinal(), ends[-1].toordinal() + 1):
            off.add(datetime.date.fromordinal(number))
    return off


def read_rates(job):
    files = configparser.ConfigParser(inline_comment_prefixes=(";",), interpolation=None)
    files.read(job)
    rates = configparser.ConfigParser(inline_comment_prefixes=(";",), interpolation=None)
    rates.read(re.sub("[^/]*$", files["job"]["rates"], job, count=1))
    return rates


def estimated(doorcost, job):
    """Person-minutes of each operation."""
    with tempfile.TemporaryDirectory() as folder:
        labor = run(doorcost, "quote", job, "-o", f"{folder}/q.xlsx")[0]["labor"]
    return {o["name"]: Fraction(o["person-minutes"]["value"]) for o in labor["operations"]}


def check_minutes(plan, rules, by_job):
    """The steps of an operation add up to it, each batch and each person's part rounded up once."""
    planned = defaultdict(int)
    for line in plan["work"]:
        planned[line["job"], line["operation"]] += line["person-minutes"]
    for number, minutes in enumerate(by_job):
        for name, wanted in minutes.items():
            left = name in names(rules, "not planned")
            done = planned[number, name]
            if left != (done == 0) and wanted > 0:
                fail(f"{name} of job {number}: {done} minutes planned")
            if not left and not wanted - Fraction(1, 2) <= done <= wanted + 12:
                fail(f"{name} of job {number}: {done} minutes planned of {float(wanted)}")


def check_days(plan, rules):
    worked = [WEEKDAYS.index(d.lower()[:3]) for d in names(rules, "working days")] or range(5)
    off = days_off(rules)
    room = int(rules.get("people", "1")) * plan["minutes of a day"]
    by_day = defaultdict(int)
    for line in plan["work"]:
        by_day[day(line["day"])] += line["person-minutes"]
    for date, minutes in by_day.items():
        if date.weekday() not in worked or date in off:
            fail(f"work on {date}, which is off")
        if minutes > room:
            fail(f"{minutes} minutes of work on {date}, where there are {room}")
    open_days = 0
    date = day(plan["from"])
    while date <= day(plan["ready"]):
        open_days += date.weekday() in worked and date not in off
        date += datetime.timedelta(1)
    if open_days != plan["working days"]:
        fail(f"{plan['working days']} working days, by the calendar {open_days}")
    if max(by_day) > day(plan["ready"]) or min(by_day) < day(plan["from"]):
        fail("work before the first day or after the last")
    if open_days < math.ceil(Fraction(sum(by_day.values()), room)):
        fail("sooner than all people at work all the time")
    if day(plan["no plan before"]) > day(plan["ready"]):
        fail("sooner than the bound")
    for more in plan["with one more"]:
        if day(more["ready"]) > day(plan["ready"]) or more["working days saved"] < 0:
            fail(f"later with {more['what']}")


def check_order(plan, rules):
    for number in range(len(plan["jobs"])):
        lines = [line for line in plan["work"] if line["job"] == number]
        for key in ("first", "last"):
            named = [day(x["day"]) for x in lines if x["operation"] in names(rules, key)]
            others = [day(x["day"]) for x in lines if x["operation"] not in names(rules, key)]
            if key == "first" and named and max(named) > min(others):
                fail(f"job {number}: an operation of `first` behind others")
            if key == "last" and named and min(named) < max(others):
                fail(f"job {number}: an operation of `last` before others")
        begun = {}
        for line in lines:
            coat = re.fullmatch(r"(.*), coat (\d+) of \d+", line["of"] or "")
            if coat:
                finish = coat[1].split(": ")[0] if ": " in coat[1] else ""
                begun.setdefault((finish, int(coat[2])), day(line["day"]))
        for (finish, coat), date in begun.items():
            if (finish, coat + 1) in begun and begun[finish, coat + 1] < date:
                fail(f"job {number}: coat {coat + 1} before coat {coat}")


def check_rows(plan):
    """People and machines do one thing at a time, and what people do is the work of the plan."""
    done = defaultdict(int)
    for row in plan["rows"]:
        by_day = defaultdict(list)
        for work in row["work"]:
            times = [(time["from"], time["to"]) for time in work["times"]]
            if sum(to - begins for begins, to in times) != work["minutes"] or not times:
                fail(f"{row['who']}: {times} are {work['minutes']} minutes")
            if min(times)[0] < 0 or max(times)[1] > plan["minutes of a day"]:
                fail(f"{row['who']}: {times} on {work['day']}")
            if row["is"] in ("person", "machine"):
                by_day[work["day"]] += times
            if work["waits"] != (row["is"] in ("racks", "finisher")) and row["is"] != "clamps":
                fail(f"{row['who']}: waits {work['waits']}")
            if row["is"] == "person":
                done[work["day"], work["job"], work["operation"], work["of"]] += work["minutes"]
        for date, times in by_day.items():
            times.sort()
            for before, then in zip(times, times[1:]):
                if then[0] < before[1]:
                    fail(f"{row['who']} is at two works on {date}: {before} and {then}")
    told = {(x["day"], x["job"], x["operation"], x["of"]): x["person-minutes"] for x in plan["work"]}
    if done != told:
        fail(f"people do {sorted(set(done.items()) ^ set(told.items()))[:4]}")


def main():
    doorcost, *jobs = sys.argv[1:]
    rules = read_rates(jobs[0])["days"]
    together = ["--begin", "2026-12-21"] if len(jobs) > 1 else []
    plan = run(doorcost, "days", jobs[0], *jobs[1:], *together)[0]["days"]
    check_minutes(plan, rules, [estimated(doorcost, job) for job in jobs])
    check_days(plan, rules)
    check_order(plan, rules)
    check_rows(plan)
    alone = [run(doorcost, "days", job, *together)[0]["days"] for job in jobs]
    if max(day(a["no plan before"]) for a in alone) > day(plan["ready"]):
        fail("together sooner than one of them alone can be")


main()
