#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Work by day in calendars: what python3-icalendar of Debian, a reader of RFC 5545, takes from the
file of `days -o`, against `days --json`.

    days_calendar.py DOORCOST SAMPLES JOB [JOB ...]    names of jobs below SAMPLES/samples

- lines end with CR LF and have no more than 75 bytes, each of them whole letters (3.1);
- nothing is wrong with any line or component, and the names of events (UID) are unlike;
- a day of a job has its works and hours, a day without work waits, the last day is the one told;
- the same call gives the same bytes; begun later, the same events stand on later days;
- a file that somebody edited is left alone;
- titles, numbers and colors of any letters come back letter by letter.
"""
import os
import re
import subprocess
import sys
from collections import defaultdict

import icalendar

from told import copied, fail, run

# No two backslashes and none before an n: 4.0.3 of the reader takes escapes back twice.
COMMAS = r'a, b: c, d\x e "g"'
HOSTILE = [COMMAS, "W" * 90, "\u6a71" * 90, "\u0436\u0443\u043a, " * 18 + "x", "\U0001f6aa" * 22 + ","]


def write(doorcost, *arguments):
    done = subprocess.run([doorcost, "days", *arguments], capture_output=True, text=True, check=False)
    if done.returncode != 0:
        fail(f"days {' '.join(arguments)}: status {done.returncode}: {done.stderr}")


def read(path):
    """The bytes and the events of a calendar that has nothing wrong."""
    with open(path, "rb") as file:
        data = file.read()
    lines = data.split(b"\r\n")
    if lines[-1] != b"" or b"\n" in b"".join(lines) or b"\r" in b"".join(lines):
        fail(f"{path}: lines end otherwise than with CR LF")
    for line in lines:
        if len(line) > 75:
            fail(f"{path}: a line has {len(line)} bytes")
        line.decode("utf-8")
    calendar = icalendar.Calendar.from_ical(data)
    for component in calendar.walk():
        if component.errors:
            fail(f"{path}: {component.name}: {component.errors}")
    if calendar["VERSION"] != "2.0" or "PRODID" not in calendar:
        fail(f"{path}: lacks VERSION or PRODID")
    events = list(calendar.walk("VEVENT"))
    names = [str(event["UID"]) for event in events]
    if len(set(names)) != len(names):
        fail(f"{path}: two events of one name")
    return data, events


def kind(event):
    """`ready`, `wait` or `person`, and which job it is of: the part of its name before."""
    key, _, piece = str(event["UID"]).removesuffix("@doorcost").rpartition("-")
    if piece != "ready":
        key = key.rpartition("-")[0]
    return re.sub(r"\d", "", piece), key


def days_of(events):
    """By job, in the order of the file: works and hours by day, days that wait, the last day."""
    jobs = {}
    for event in events:
        sort, key = kind(event)
        job = jobs.setdefault(key, (defaultdict(set), defaultdict(float), set(), []))
        begins, ends = event.decoded("DTSTART"), event.decoded("DTEND")
        if (ends - begins).days != 1:
            fail(f"{event['UID']}: from {begins} to {ends}")
        if sort == "ready":
            job[3].append(begins.isoformat())
        elif sort == "wait":
            job[2].add(begins.isoformat())
        else:
            *works, together = str(event["DESCRIPTION"]).split("\n")
            hours = 0.0
            for work in works:
                found = re.fullmatch(r"(.*?), (\d+\.\d) hours(, [^,]*)?", work)
                job[0][begins.isoformat()].add(found[1])
                hours += float(found[2])
            told = float(re.fullmatch(r"together (\d+\.\d) hours", together)[1])
            if abs(told - hours) > 0.05 * (len(works) + 1):
                fail(f"{event['UID']}: {works} are {told} hours")
            job[1][begins.isoformat()] += told
    return list(jobs.values())


def check(events, plan, people):
    jobs = days_of(events)
    if len(jobs) != len(plan["jobs"]):
        fail(f"events of {len(jobs)} jobs")
    for number, (works, hours, waits, ready) in enumerate(jobs):
        wanted, minutes = defaultdict(set), defaultdict(int)
        for line in plan["work"]:
            if line["job"] == number:
                name = line["operation"] + (f": {line['of']}" if line["of"] else "")
                wanted[line["day"]].add(name)
                minutes[line["day"]] += line["person-minutes"]
        if works != wanted:
            fail(f"job {number}: works {dict(works)}, told {dict(wanted)}")
        for day, told in hours.items():
            if abs(told - minutes[day] / 60) > 0.05 * people + 1e-9:
                fail(f"job {number}: {told} hours on {day}, told {minutes[day]} minutes")
        if ready != [plan["jobs"][number]["ready"]] or waits & set(works):
            fail(f"job {number}: ready {ready}, waits {sorted(waits)}")


def stamps(events, day):
    for event in events:
        if event["DTSTAMP"].to_ical() != day.replace("-", "").encode() + b"T000000Z":
            fail(f"{event['UID']}: DTSTAMP {event['DTSTAMP'].to_ical()}")


def check_letters(doorcost, folder, job, path):
    with open(job, encoding="utf-8") as file:
        text = file.read()
    for hostile in HOSTILE:
        for key in ("title", "number", "color"):
            changed = re.sub(rf"(?m)^{key}( *)=.*", lambda found, k=key: f"{k}{found[1]}= {hostile}", text)
            if key == "title":
                changed = re.sub(r"(?m)^number.*\n", "", changed)
            with open(job, "w", encoding="utf-8") as file:
                file.write(changed)
            write(doorcost, job, "-o", path, "--force")
            events = read(path)[1]
            if key != "color" and str(events[-1]["SUMMARY"]) != f"{hostile}: ready":
                fail(f"{hostile}: the last event is {events[-1]['SUMMARY']}")
            plan = run(doorcost, "days", job)[0]["days"]
            check(events, plan, 2)
            if key == "color" and not any(hostile in str(event["DESCRIPTION"]) for event in events):
                fail(f"the color {hostile} is lost")
    os.remove(path)


def main():
    doorcost, samples, *names = sys.argv[1:]
    with copied(samples) as folder:
        path = os.path.join(folder, "work.ics")
        jobs = [os.path.join(folder, "samples", name) for name in names]
        write(doorcost, *jobs, "-o", path)
        data, events = read(path)
        told = run(doorcost, "days", *jobs)
        check(events, told[0]["days"], 2 * len(jobs))
        with open(jobs[0], encoding="utf-8") as file:
            stamps(events, re.search(r"(?m)^date *= *(\S+)", file.read())[1])
        write(doorcost, *jobs, "-o", path)
        if read(path)[0] != data:
            fail("another run gives other bytes")
        write(doorcost, *jobs, "-o", path, "--begin", "2027-01-11")
        later = {str(event["UID"]): event.decoded("DTSTART") for event in read(path)[1]}
        for event in events:
            if kind(event)[0] == "ready" and not later.get(str(event["UID"])) > event.decoded("DTSTART"):
                fail(f"begun later, {event['UID']} is on {later.get(str(event['UID']))}")
        with open(path, "ab") as file:
            file.write(b"X-EDITED:1\r\n")
        done = subprocess.run([doorcost, "days", *jobs, "-o", path], capture_output=True, check=False)
        if done.returncode == 0 or b"not as this program wrote it" not in done.stderr:
            fail("an edited calendar was written over")
        if len(jobs) == 1 and names[0] == "kitchen/kitchen.ini":
            check_letters(doorcost, folder, jobs[0], path)


main()
