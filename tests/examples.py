#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The examples of the documents below, run: what the docs show is what the program prints.

    /usr/bin/python3 tests/examples.py PROGRAM [--renew] [DOCUMENT...]

A document is worked through from top to bottom in a scratch folder with copies of samples/ and
rates/ and with doorcost on the PATH.

- A block ```console holds commands, each behind `$ `, and below each what it prints, messages
  included.  A line `...` stands for any lines left out.  A command that ends with another status
  than 0 shows it in a last line `(exit status N)`.
- A block ```ini, ```csv or ```text behind a line that is only a file name, like `laundry/doors.csv`:,
  is saved under that name; behind `Add to FILE:` it is put at the end of that file.
- A block ```sh is not run.

--renew writes what came out into the documents; look at the difference before it is committed.
"""
import difflib
import glob
import os
import re
import shutil
import subprocess
import sys
import tempfile

TREE = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
DOCUMENTS = ["README.md", "docs/tutorial.md"] + sorted(
    os.path.relpath(page, TREE) for page in glob.glob(os.path.join(TREE, "docs/how-to/*.md")))
SAVED = {"ini", "csv", "text"}
NAME = re.compile(r"^(Add to )?`([A-Za-z0-9._/-]+)`:$")


def run(command, folder, program):
    """The lines that a command prints, messages among them, and its status where not 0."""
    environment = dict(os.environ, LC_ALL="C.UTF-8")
    environment["PATH"] = os.path.dirname(program) + ":" + environment["PATH"]
    environment.pop("NO_COLOR", None)
    done = subprocess.run(["sh", "-c", command], cwd=folder, env=environment, text=True,
                          stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                          stderr=subprocess.STDOUT, check=False)
    lines = [line.rstrip() for line in done.stdout.splitlines()]
    return lines + ([f"(exit status {done.returncode})"] if done.returncode else [])


def pieces(expected):
    """The expected lines between the lines `...`."""
    parts = [[]]
    for line in expected:
        if line == "...":
            parts.append([])
        else:
            parts[-1].append(line)
    return parts


def agrees(expected, actual):
    """Whether the lines are those expected, `...` standing for any."""
    parts = pieces(expected)
    if len(parts) == 1:
        return expected == actual
    if actual[:len(parts[0])] != parts[0]:
        return False
    at, end = len(parts[0]), len(actual) - len(parts[-1])
    if end < at or actual[end:] != parts[-1]:
        return False
    for part in parts[1:-1]:
        found = next((i for i in range(at, end - len(part) + 1) if actual[i:i + len(part)] == part), None)
        if found is None:
            return False
        at = found + len(part)
    return True


def renewed(expected, actual):
    """What came out, as much of it as was shown, cut at the lines that look most alike."""
    parts = pieces(expected)
    if len(parts) == 1:
        return actual
    result, at = actual[:len(parts[0])], len(parts[0])
    end = max(len(actual) - len(parts[-1]), at)
    for part in parts[1:-1]:
        text = "\n".join(part)
        windows = range(at, max(end - len(part), at) + 1)
        best = max(windows, key=lambda i: difflib.SequenceMatcher(
            None, text, "\n".join(actual[i:i + len(part)])).ratio())
        result += ["..."] + actual[best:best + len(part)]
        at = best + len(part)
    return result + ["..."] + actual[end:]


def console(lines, folder, program, place, renew):
    """Runs a block; gives the block as it should read and how many examples differ."""
    result, failed, count, i = [], 0, 0, 0
    if not lines or not lines[0].startswith("$ "):
        sys.exit(f"{place}: a console block begins with '$ COMMAND'")
    while i < len(lines):
        command = lines[i]
        expected = []
        i += 1
        while i < len(lines) and not lines[i].startswith("$ "):
            expected.append(lines[i])
            i += 1
        count += 1
        actual = run(command[2:], folder, program)
        result.append(command)
        if agrees(expected, actual):
            result += expected
            continue
        failed += 1
        result += renewed(expected, actual) if renew else expected
        print(f"{'renewed' if renew else 'FAILED'} {place}: {command}")
        if not renew:
            print("\n".join(difflib.unified_diff(expected, actual, "shown", "printed", lineterm="")))
    return result, failed, count


def save(folder, name, lines, mode):
    path = os.path.join(folder, name)
    if os.path.commonpath([os.path.realpath(path), os.path.realpath(folder)]) != os.path.realpath(folder):
        sys.exit(f"examples: {name} is outside the scratch folder")
    os.makedirs(os.path.dirname(path), exist_ok=True)
    with open(path, mode, encoding="utf-8") as out:
        out.write("\n".join(lines) + "\n")


def work_through(document, program, renew):
    path = os.path.join(TREE, document)
    with open(path, encoding="utf-8") as source:
        lines = source.read().splitlines()
    result, failed, count, i, name = [], 0, 0, 0, None
    with tempfile.TemporaryDirectory() as folder:
        for shared in ("samples", "rates"):
            shutil.copytree(os.path.join(TREE, shared), os.path.join(folder, shared))
        while i < len(lines):
            line = lines[i]
            result.append(line)
            i += 1
            if not line.startswith("```"):
                named = NAME.match(line)
                if named or line != "":
                    name = named
                continue
            start, block = i, []
            while i < len(lines) and lines[i] != "```":
                block.append(lines[i])
                i += 1
            if i == len(lines):
                sys.exit(f"{document}:{start}: the block has no end")
            if line == "```console":
                block, wrong, ran = console(block, folder, program, f"{document}:{start}", renew)
                failed += wrong
                count += ran
            elif name is not None and line[3:] in SAVED:
                save(folder, name.group(2), block, "a" if name.group(1) else "w")
            name = None
            result += block + ["```"]
            i += 1
    if renew and result != lines:
        with open(path, "w", encoding="utf-8") as out:
            out.write("\n".join(result) + "\n")
    return failed, count


def main():
    arguments = [a for a in sys.argv[1:] if a != "--renew"]
    renew = "--renew" in sys.argv[1:]
    if not arguments:
        sys.exit("usage: examples.py PROGRAM [--renew] [DOCUMENT...]")
    program = os.path.realpath(arguments[0])
    if os.path.basename(program) != "doorcost":
        sys.exit("examples: the program must be called doorcost, as the documents do")
    failed = count = 0
    for document in arguments[1:] or DOCUMENTS:
        wrong, ran = work_through(document, program, renew)
        failed += wrong
        count += ran
    print(f"{count} examples, {failed} {'renewed' if renew else 'differences'}")
    return 0 if count > 0 and (failed == 0 or renew) else 1


if __name__ == "__main__":
    sys.exit(main())
