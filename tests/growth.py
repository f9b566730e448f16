#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Seconds and memory as a list grows.

tests/growth.py PROGRAM TREE                   holds the bars below
tests/growth.py PROGRAM TREE COMMAND ROWS ...  tells what a command takes at these numbers of rows
tests/growth.py - TREE list ROWS KIND FILE     writes such a list

The doors are made up: a hundred widths by sixty heights of openings, in the styles of the kitchen sample.
"""
import os
import shutil
import subprocess
import sys
import tempfile
import time

PROGRAM, TREE = sys.argv[1], sys.argv[2]
STYLES = ("shaker", "shaker-glass", "slab", "raised", "wide-shaker", "mitered")
CALLS = {
    "check": ["check"],
    "finish": ["finish"],
    "quote": ["quote", "--effort", "5", "-o", "q.xlsx"],
    "json": ["quote", "--effort", "5", "--json"],
    "plan": ["plan"],
}

# (call, rows, kind of list, MB, s): check takes 3.3 KB a row whose size no other has, quote some 30 with its workbook, and --json no more than quote does without.
BARS = (
    ("check", 10000, "plain", 46, 8),
    ("check", 10000, "sizes", 49, 8),
    ("check", 20000, "sizes", 83, 16),
    ("check", 10000, "rooms", 46, 8),
    ("check", 4000, "colors", 45, 8),
    ("check", 8000, "colors", 73, 8),
    ("finish", 1000, "colors", 40, 12),
    ("finish", 2000, "colors", 62, 12),
    ("json", 1000, "plain", 165, 60),
    ("quote", 1000, "plain", 75, 60),
    ("plan", 1, "many", 60, 6),
)


def inches(count, parts):
    return f"{count // parts} {count % parts}/{parts}" if count % parts else str(count // parts)


def write_list(path, rows, kind):
    """kind: `rooms`: each row in a room of its own; `sizes`: each of a size of its own; `colors`: each in a color of its
    own; `many`: 9,999 of each, 17 1/4 x 22 3/4; or `plain`."""
    with open(path, "w", encoding="ascii") as out:
        out.write("id,room,use,count,width,height,leaves,style,hinge side,note,color\n")
        for i in range(rows):
            width, height = 160 + i * 7 % 100 * 2, 280 + i * 11 % 60 * 5
            count, parts = 1 + i % 3, 16
            if kind == "sizes":
                width, height, parts = 640 + i % 641, 1280 + i // 641 % 1281, 64
            if kind == "many":
                width, height, count = 276, 364, 9999
            color = f"white {i}" if kind == "colors" else ""
            out.write(f"D{i + 1},room {i if kind == 'rooms' else i // 40},door,{count},{inches(width, parts)},"
                      f"{inches(height, parts)},1,{STYLES[i % len(STYLES)]},left,,{color}\n")


def measure(name, rows, kind):
    """Status, seconds of the clock and of the processor, megabytes at the most, and what was said."""
    top = tempfile.mkdtemp(prefix="doorcost-growth-")
    try:
        for part in ("samples", "rates"):
            shutil.copytree(os.path.join(TREE, part), os.path.join(top, part))
        folder = os.path.join(top, "samples", "kitchen")
        write_list(os.path.join(folder, "doors.csv"), rows, kind)
        begun = time.monotonic()
        with open(os.path.join(top, "said"), "w+b") as said, open(os.devnull, "wb") as nothing:
            command, *options = CALLS[name]
            run = subprocess.Popen([PROGRAM, command, "kitchen.ini", *options], cwd=folder, stdout=nothing,
                                   stderr=said)
            _, status, used = os.wait4(run.pid, 0)
            run.returncode = os.waitstatus_to_exitcode(status)
            seconds = time.monotonic() - begun
            said.seek(0)
            words = said.read().decode("utf-8", "replace")
        return run.returncode, seconds, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024, words
    finally:
        shutil.rmtree(top)


def tell(name, rows, kind="plain"):
    status, seconds, worked, megabytes, words = measure(name, rows, kind)
    print(f"{name} {rows} {kind}: {seconds:.2f} s ({worked:.2f} of processor), "
          f"{megabytes:.0f} MB, status {status}", flush=True)
    if status:
        print(words[-400:])
    return status, worked, megabytes


def hold():
    """Memory is held strictly; seconds of the processor generously, but not so that they may grow with the
    square: four times for twice the rows."""
    wrong = []
    worked = {}
    for name, rows, kind, most_megabytes, most_seconds in BARS:
        status, seconds, megabytes = tell(name, rows, kind)
        worked[name, rows, kind] = seconds
        what = f"{name} of {rows} rows, {kind}"
        if status:
            wrong.append(f"{what}: status {status}")
        if megabytes > most_megabytes:
            wrong.append(f"{what}: {megabytes:.0f} MB, at most {most_megabytes} expected")
        if seconds > most_seconds:
            wrong.append(f"{what}: {seconds:.1f} s of processor, at most {most_seconds} expected")
        half = worked.get((name, rows // 2, kind))
        if half is not None and seconds > 3 * half + 0.3:
            wrong.append(f"{what}: {seconds:.1f} s of processor, half as many rows take {half:.1f} s")
    print("\n".join(wrong))
    return 1 if wrong else 0


def main():
    if len(sys.argv) == 3:
        return hold()
    if sys.argv[3] == "list":
        write_list(sys.argv[6], int(sys.argv[4]), sys.argv[5])
        return 0
    for rows in map(int, sys.argv[4:]):
        tell(sys.argv[3], rows)
    return 0


if __name__ == "__main__":
    sys.exit(main())
