#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What a terminal gets and a pipe does not: a line of progress, messages broken at 80 columns.

    terminal.py DOORCOST SAMPLES

A terminal of its own (pty) takes stderr, a pipe takes it once more.  Exit status 0: all is well.
"""
import os
import pathlib
import pty
import re
import shutil
import subprocess
import sys
import tempfile

ROWS = [f"R{i:03}" for i in range(300)]
CLEAR = "\r\x1b[K"


def fail(text):
    print(text)
    fail.count += 1


fail.count = 0


def on_terminal(call, **more):
    """What a call writes to stderr where that is a terminal, and its exit status."""
    ours, theirs = pty.openpty()
    with subprocess.Popen(call, stdout=subprocess.DEVNULL, stderr=theirs, **more) as program:
        os.close(theirs)
        pieces = []
        while True:
            try:
                piece = os.read(ours, 65536)
            except OSError:  # the other end is closed
                break
            if not piece:
                break
            pieces.append(piece)
        status = program.wait()
    os.close(ours)
    return b"".join(pieces).decode().replace("\r\n", "\n"), status


def in_pipe(call, **more):
    return subprocess.run(call, capture_output=True, text=True, check=False, **more)


def long_job(folder):
    """A job that takes some seconds to strike from."""
    path = folder / "samples/kitchen/kitchen.ini"
    rows = ["id,use,count,width,height"]
    rows += [f"{name},door,1,{12 + i % 9},{20 + i % 13}" for i, name in enumerate(ROWS)]
    (path.parent / "doors.csv").write_text("\n".join(rows) + "\n", encoding="utf-8")
    return path


def progress(doorcost, folder):
    call = [doorcost, "strike", str(long_job(folder)), *ROWS]
    env = dict(os.environ, TERM="xterm")
    text, status = on_terminal(call, env=env)
    lines = re.findall(r"\r\x1b\[Kdoorcost: estimating the job without each row, (\d+) s", text)
    if status != 0 or lines != [str(i + 1) for i in range(len(lines))] or not lines:
        fail(f"progress: status {status}, {text[-300:]!r}")
    if not text.endswith(CLEAR) or text.count(CLEAR) <= len(lines):
        fail(f"the line stays: {text[-100:]!r}")
    piped = in_pipe(call, env=env)
    if "\r" in piped.stderr or "\x1b" in piped.stderr or "without each row" in piped.stderr:
        fail(f"in a pipe: {piped.stderr[-200:]!r}")
    text, _ = on_terminal(call, env=dict(env, TERM="dumb"))
    if CLEAR in text:
        fail(f"TERM dumb: {text[-200:]!r}")


def soon(doorcost, folder):
    """What is done within a second shows nothing."""
    text, status = on_terminal([doorcost, "check", str(folder / "samples/kitchen/kitchen.ini")],
                               env=dict(os.environ, TERM="xterm"))
    if status != 0 or CLEAR in text:
        fail(f"check: status {status}, {text!r}")


def wrapped(doorcost, folder):
    path = folder / "samples/kitchen/kitchen.ini"
    text = path.read_text(encoding="utf-8")
    text = re.sub("(?m)^overlay .*", "overlay = 1/2 and a little more on the side of the wall", text)
    path.write_text(text.replace("\nstyle ", "\nstile ", 1), encoding="utf-8")
    call = [doorcost, "check", "kitchen.ini"]
    shown, _ = on_terminal(call, cwd=path.parent, env=dict(os.environ, TERM="xterm", NO_COLOR="1"))
    plain = in_pipe(call, cwd=path.parent).stderr
    call_wrong, _ = on_terminal([doorcost, "check", str(path), "--effort", "1 2"])
    told = [line for line in plain.splitlines() if ": error: " in line]
    if max(map(len, told)) <= 80:
        fail("no message is longer than 80 columns")
    for line in (shown + call_wrong).splitlines():
        if len(line) > 80 and " | " not in line:
            fail(f"{len(line)} columns: {line}")
    if shown.replace("\n  ", " ").split() != plain.split():
        fail(f"a terminal gets other words: {shown}\n{plain}")


def main():
    doorcost, samples = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2])
    for what in (soon, wrapped, progress):
        with tempfile.TemporaryDirectory() as temporary:
            folder = pathlib.Path(temporary)
            shutil.copytree(samples, folder / "samples")
            shutil.copytree(samples.parent / "rates", folder / "rates")
            what(doorcost, folder)
    print(f"{fail.count} faults")
    return 1 if fail.count else 0


if __name__ == "__main__":
    sys.exit(main())
