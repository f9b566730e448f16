#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Signals at any moment: tests/signals.py PROGRAM TREE

A run that is asked to end has a fifth of a second of the processor left, dies of that signal (130, 143 or 129 to a shell), leaves nothing beside
its outputs or in the folder of temporary files, and its outputs are all the old ones or all the new ones.
"""
import os
import random
import re
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time

PROGRAM, TREE = sys.argv[1], sys.argv[2]
# Seconds of the processor after a run was asked: other tests may make the machine slow. A program
# under the sanitizers works several times as long.
SOON = float(sys.argv[3])
RUNS = 8  # of each signal and call
SIGNALS = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)
# (options, outputs)
CALLS = {
    "quote": (["--effort", "20", "-o", "a.xlsx"], ["a.xlsx", "a-client.xlsx", "a-client.pdf"]),
    "plan": (["--effort", "20", "-o", "p.pdf", "--svg", "svg"], ["p.pdf"]),
    "draw": (["-o", "d.pdf"], ["d.pdf"]),
    "show": (["--effort", "20", "-o", "s.html"], ["s.html"]),
    "labels": (["-o", "l.pdf"], ["l.pdf"]),
    "table": (["-o", "t.csv"], ["t.csv"]),
    "days": (["-o", "w.ics"], ["w.ics"]),
    "bridge": ([os.path.join(TREE, "samples/metric/tea-kitchen.ini"), "-o", "b.pdf"], ["b.pdf"]),
}


def call(name):
    job = os.path.join(TREE, "samples/metric/tea-kitchen.ini")
    return [PROGRAM, name, job, "--force", *CALLS[name][0]]


def run(name, folder, temporary):
    environment = dict(os.environ, TMPDIR=temporary)
    return subprocess.Popen(call(name), cwd=folder, env=environment, stdout=subprocess.DEVNULL,
                            stderr=subprocess.DEVNULL)


def worked(process):
    """Seconds of the processor that a run has had."""
    with open(f"/proc/{process.pid}/stat", encoding="ascii", errors="replace") as file:
        fields = file.read().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def files_of(folder):
    found = {}
    for at, _, names in os.walk(folder):
        for name in names:
            path = os.path.join(at, name)
            with open(path, "rb") as file:
                found[os.path.relpath(path, folder)] = file.read()
    return found


def names_needed(folder):
    """Whether the disk can't make files without a name: then one of a program that is killed stays."""
    try:
        os.close(os.open(folder, os.O_TMPFILE | os.O_RDWR))
    except OSError:
        return True
    return False


def lack_memory(wrong):
    """The libraries that set text end the program where memory or threads lack: nothing is left of its files."""
    done = 0
    for megabytes in range(50, 210, 10):
        top = tempfile.mkdtemp(prefix="doorcost-signals-")
        size = megabytes << 20
        status = subprocess.run(call("quote"), cwd=top, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                                preexec_fn=lambda most=size: limit(most), check=False).returncode
        done += status == 0
        left = [name for name in os.listdir(top) if not names_needed(top) or not re.search(r"\.\w{6}$", name)]
        if status != 0 and left:
            wrong.append(f"{megabytes} MB of addresses: status {status}, left {left}")
        shutil.rmtree(top)
    print(f"{done} of 16 runs had the memory they needed")


def limit(size):
    resource.setrlimit(resource.RLIMIT_AS, (size, size))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def main():
    random.seed(7)
    wrong, late, statuses = [], 0.0, {}
    for name in CALLS:
        top = tempfile.mkdtemp(prefix="doorcost-signals-")
        folder, temporary = os.path.join(top, "out"), os.path.join(top, "tmp")
        os.mkdir(folder)
        os.mkdir(temporary)
        begun = time.monotonic()
        assert run(name, folder, temporary).wait() == 0, name
        whole = time.monotonic() - begun
        new = files_of(folder)
        assert set(CALLS[name][1]) <= set(new), name
        old = {path: b"old " + path.encode() for path in new}
        for sent in SIGNALS:
            for _ in range(RUNS):
                for path, content in old.items():
                    with open(os.path.join(folder, path), "wb") as file:
                        file.write(content)
                process = run(name, folder, temporary)
                # Most of them while files are being made, which is at the end.
                time.sleep(whole * random.choice((random.random(), 0.5 + 0.6 * random.random())))
                before = worked(process)
                os.kill(process.pid, sent)
                _, status, used = os.wait4(process.pid, 0)
                status = process.returncode = os.waitstatus_to_exitcode(status)
                took = used.ru_utime + used.ru_stime - before
                late = max(late, took)
                if took > SOON:
                    wrong.append(f"{name}, {sent.name}: worked {took:.2f} s after it was asked")
                statuses[status] = statuses.get(status, 0) + 1
                left = files_of(folder)
                if status not in (0, -sent):
                    wrong.append(f"{name}, {sent.name}: status {status}")
                if left not in (old, new) or (status == 0 and left != new):
                    wrong.append(f"{name}, {sent.name}: left {sorted(left)}, not all old or all new")
                if os.listdir(temporary):
                    wrong.append(f"{name}, {sent.name}: temporary {os.listdir(temporary)}")
        shutil.rmtree(top)
    for sent in SIGNALS:
        if statuses.get(-sent, 0) == 0:
            wrong.append(f"{sent.name} never came in time to end a run")
    # What is ignored (nohup) does not end a run.
    top = tempfile.mkdtemp(prefix="doorcost-signals-")
    process = subprocess.Popen(call("draw"), cwd=top, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                               preexec_fn=lambda: signal.signal(signal.SIGHUP, signal.SIG_IGN))
    while process.poll() is None:
        process.send_signal(signal.SIGHUP)
        time.sleep(0.002)
    if process.returncode != 0:
        wrong.append(f"an ignored SIGHUP ended a run: {process.returncode}")
    shutil.rmtree(top)
    lack_memory(wrong)
    print(f"slowest end {late:.3f} s; statuses {statuses}")
    print("\n".join(wrong))
    return 1 if wrong else 0


sys.exit(main())
