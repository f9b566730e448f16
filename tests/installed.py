#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""What is installed, used as it lies there: tests/installed.py PART BUILD TREE

Installs the build into a folder that is dropped afterwards. PART:
  use      a sample is quoted and all are checked, from an empty folder, outside the source tree
  pages    the manual pages hold every key and column of docs/formats.md; mandoc has no fault to find
  desktop  a desktop (GLib, as most of them) knows a job file, and what opens it says what happened
  bash, zsh, fish   what the shell itself offers, against the program's own help
  deb      the Debian package: its files are those installed, its libraries are named
tests/package.sh goes further for the package, in a clean root.
"""
import gzip
import os
import pathlib
import re
import subprocess
import sys
import tempfile

PART, BUILD, TREE = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
FAULTS = []


def run(*call, **more):
    more = {"stdout": subprocess.PIPE, "stderr": subprocess.STDOUT, "text": True,
            "stdin": subprocess.DEVNULL, **more}
    return subprocess.run([str(c) for c in call], check=False, timeout=120, **more)


def want(held, what):
    if not held:
        FAULTS.append(what)


def use(prefix, empty):
    samples = sorted((prefix / "share/doorcost/samples").glob("*/*.ini"))
    want(len(samples) == len(list(TREE.glob("samples/*/*.ini"))), "a sample is not installed")
    program = prefix / "bin/doorcost"
    for job in samples:
        done = run(program, "check", job, cwd=empty)
        want(done.returncode == 0, f"check of {job.name}: {done.stdout}")
    kitchen = prefix / "share/doorcost/samples/kitchen/kitchen.ini"
    done = run(program, "quote", kitchen, "-o", "kitchen.xlsx", cwd=empty)
    want(done.returncode == 0, f"quote: {done.stdout}")
    wanted = ["kitchen-client.pdf", "kitchen-client.xlsx", "kitchen.xlsx"]
    want(sorted(os.listdir(empty)) == wanted, f"quote left {os.listdir(empty)}")
    # messages name the manual page that is there
    (pathlib.Path(empty) / "doors.csv").write_text("id,shelf,width,height\nD01,x,18,30\n")
    done = run(program, "new", "a", "--set", f"rates = {prefix / 'share/doorcost/rates/small-shop.ini'}", cwd=empty)
    want("column 'shelf' is not known; name it as in 'man doorcost-list'" in done.stdout, f"no manual page: {done.stdout}")
    noted = pathlib.Path(empty) / "noted.csv"
    noted.write_text("what,shelf\nmaking,x\n")
    done = run(program, "learn", kitchen, noted, cwd=empty)
    want("column 'shelf' is not known; name it as in 'man doorcost-noted'" in done.stdout, f"no page of what was noted: {done.stdout}")
    for page in (prefix / "share/doc/doorcost").rglob("*.md"):
        for link in re.findall(r"\]\(([\w./-]+\.md)", page.read_text()):
            there = (page.parent / link).resolve()
            # What is for contributors or beside the rates stays in the source tree.
            want(there.exists() or "DEVELOPERS" in link or "rates" in link, f"{page.name}: {link}")


def pages(prefix, _empty):
    text = ""
    for page in sorted((prefix / "share/man").rglob("*.gz")):
        plain = gzip.decompress(page.read_bytes())
        done = run("mandoc", "-T", "lint", "-W", "warning", input=plain.decode(), stdin=None)
        lines = [line for line in done.stdout.splitlines() if "missing date" not in line]
        want(not lines, f"{page.name}: {lines}")
        shown = run("mandoc", "-T", "utf8", "-O", "width=200", input=plain.decode(), stdin=None).stdout
        want("`" not in shown and "**" not in shown, f"{page.name}: markup of the document is left")
        text += re.sub(r".\x08", "", shown)
    flat = re.sub(r"\s+", " ", text)
    keys = 0
    needed = False
    for line in (TREE / "docs/formats.md").read_text().splitlines():
        if re.match(r"\| (Key|Column) \| Needed", line):
            needed = True
        elif not line.startswith("|"):
            needed = False
        elif needed and "---" not in line:
            key, example, meaning = re.match(r"\| `(.+?)` \|[^|]*\| ((?:`[^`]*`|<br>)*) \| (.*) \|$",
                                             line).groups()
            example = " or ".join(re.findall(r"`([^`]+)`", example))
            keys += 1
            want(f"{key} = {example}" in flat or f"{key}: {example}".rstrip() in flat,
                 f"no page has '{key}' with '{example}'")
            meaning = re.sub(r"[`*]|\[([^]]*)\]\([^)]*\)", r"\1", meaning).replace("<br>", " or ")
            want(meaning in flat, f"no page says '{meaning}'")
    want(keys > 200, f"only {keys} keys were looked for")


def desktop(prefix, empty):
    share = prefix / "share"
    done = run("desktop-file-validate", share / "applications/doorcost.desktop")
    want(done.returncode == 0 and done.stdout == "", done.stdout)
    want(run("update-mime-database", share / "mime").returncode == 0, "update-mime-database")
    known = {**os.environ, "XDG_DATA_HOME": str(share), "XDG_DATA_DIRS": "/usr/share"}
    job = TREE / "samples/kitchen/kitchen.ini"
    for file, kind in [(job, "application/x-doorcost-job"),
                       (TREE / "rates/small-shop.ini", "text/plain"),
                       (TREE / "samples/kitchen/doors.csv", "text/csv")]:
        said = run("gio", "info", "-a", "standard::content-type", file, env=known).stdout
        want(f"content-type: {kind}\n" in said, f"{file.name} is taken for {said}")
    entry = (share / "applications/doorcost.desktop").read_text()
    want("MimeType=application/x-doorcost-job;" in entry, "the entry opens no job files")
    opener = re.search(r"^Exec=(\S+) %f$", entry, re.M).group(1)
    path = {**os.environ, "PATH": f"{prefix}/bin:{os.environ['PATH']}"}
    path.pop("DISPLAY", None)
    path.pop("WAYLAND_DISPLAY", None)
    for kind in ["rates", "samples"]:
        run("cp", "-r", share / "doorcost" / kind, empty)
    good = empty / "samples/kitchen/kitchen.ini"
    done = run(prefix / "bin" / opener, good, env=path)
    want(done.returncode == 0 and f"The workbook is {good.with_suffix('.xlsx')}" in done.stdout,
         f"opening a job said: {done.stdout}")
    bad = empty / "samples/kitchen/bad.ini"
    bad.write_text(good.read_text().replace("[make]", "[tools]"))
    done = run(prefix / "bin" / opener, bad, env=path)
    want(done.returncode == 1 and "tools" in done.stdout and "Nothing was written" in done.stdout
         and not bad.with_suffix(".xlsx").exists(), f"opening a faulty job said: {done.stdout}")
    done = run(prefix / "bin" / opener, empty / "none.ini", env=path)
    want(done.returncode == 2 and "[job]" in done.stdout, f"opening nothing said: {done.stdout}")


# What each shell is asked, and what it should offer: filled in with the program's own help.
def offers(program):
    top = run(program, "help").stdout.split("\nOptions")[0]
    commands = re.findall(r"^  ([a-z]+)  ", top, re.M)
    yield "", sorted([*commands, "help"])
    yield "help ", sorted([*commands, "help"])
    yield "st", ["strike"]
    for command in commands:
        said = run(program, "help", command).stdout
        options = re.findall(r"^  (?:-\w, )?(--[a-z-]+)", said, re.M)
        yield f"{command} job.ini --", sorted(options)
    yield "quote job.ini --option ", ["maple", "of oak"]
    yield "quote jo", ["job.ini"]


BASH = r"""
source "$1/share/bash-completion/completions/doorcost"
IFS=' ' read -r -a COMP_WORDS <<<"doorcost $2"
case $2 in *' ' | '') COMP_WORDS+=('') ;; esac
COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
$(complete -p doorcost | sed 's/.*-F \([^ ]*\).*/\1/')
printf '%s\n' "${COMPREPLY[@]}"
"""
FISH = r"""
source $argv[1]/share/fish/vendor_completions.d/doorcost.fish
complete -C "doorcost $argv[2]" | cut -f 1
"""
# zsh completes only where somebody types: a terminal of its own is typed into, and what it would
# offer is listed by its own function.
ZSH = r"""
zmodload zsh/zpty
zpty z zsh -f -i
zpty -w z "PROMPT= ; fpath=($1/share/zsh/vendor-completions \$fpath); autoload -U compinit; compinit -u -d $PWD/.dump"
zpty -w z "compadd () { local -a hits; builtin compadd -O hits \"\$@\"; print -l -- \"<\"\${^hits}\">\"; builtin compadd \"\$@\" }"
zpty -w z "bindkey '^I' complete-word; zle -C complete-word complete-word _main_complete; print REA''DY"
zpty -r -m z line '*READY*'
zpty -w -n z "doorcost $2"$'\t'
sleep 1
zpty -w -n z $'\x15'"print EN''D"$'\n'
zpty -r -m z line '*END*'
print -r -- $line
zpty -d z
"""


def shell(prefix, empty):
    path = {**os.environ, "PATH": f"{prefix}/bin:{os.environ['PATH']}", "HOME": str(empty),
            "TERM": "dumb"}
    (empty / "job.ini").write_text("[job]\n[option maple]\n[option of oak]\n")
    (empty / "notes.txt").write_text("")
    script = {"bash": BASH, "fish": FISH, "zsh": ZSH}[PART]
    call = {"bash": ["bash", "-c", script, "bash"], "fish": ["fish", "-c", script],
            "zsh": ["zsh", "-f", "-c", script, "zsh"]}[PART]
    for typed, wanted in offers(prefix / "bin/doorcost"):
        said = run(*call, prefix, typed, env=path, cwd=empty).stdout
        if PART == "zsh":
            said = "\n".join(re.findall(r"<([^<>\n]*)>", said.replace("\r", "")))
        got = sorted(set(line.strip() for line in said.splitlines() if line.strip()))
        want(got == wanted, f"'doorcost {typed}' offers {got}, not {wanted}")


def deb(prefix, empty):
    done = run("cpack", "--config", os.path.join(BUILD, "CPackConfig.cmake"), "-B", empty)
    want(done.returncode == 0, done.stdout)
    package = next(iter(empty.glob("*.deb")), None)
    if package is None:
        want(False, "no package was made")
        return
    listed = run("dpkg-deb", "-c", package).stdout
    inside = sorted(line.split()[5][len("./usr/"):] for line in listed.splitlines()
                    if line.startswith("-"))
    there = sorted(str(file.relative_to(prefix)) for file in prefix.rglob("*") if file.is_file())
    want(inside == there, f"the package differs in {set(inside) ^ set(there)}")
    needs = run("dpkg-deb", "-f", package, "Depends").stdout
    for library in ["libc6", "libcairo2", "libxlsxwriter", "libiniparser", "fonts-liberation"]:
        want(library in needs, f"the package does not depend on {library}")
    version = run(prefix / "bin/doorcost", "--version").stdout.split()[1]
    want(run("dpkg-deb", "-f", package, "Version").stdout.strip() == version, "another version")


def main():
    with tempfile.TemporaryDirectory() as folder:
        prefix, empty = pathlib.Path(folder).resolve() / "usr", pathlib.Path(folder).resolve() / "empty"
        empty.mkdir()
        done = run("cmake", "--install", BUILD, "--prefix", prefix)
        want(done.returncode == 0, done.stdout)
        {"use": use, "pages": pages, "desktop": desktop, "deb": deb}.get(PART, shell)(prefix, empty)
    for fault in FAULTS:
        print(f"installed, {PART}: {fault}")
    return 1 if FAULTS else 0


sys.exit(main())
