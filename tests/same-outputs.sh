#!/bin/sh
# SPDX-License-Identifier: MIT
# What a change did to the papers:  sh tests/same-outputs.sh COMMIT
# Builds the program of that commit and that of the working tree, runs every command over every sample with both,
# and prints which outputs are not the same bytes (of a workbook, which of its parts). Status 1 where any differs.
set -eu
[ $# -eq 1 ] || {
    echo "usage: sh tests/same-outputs.sh COMMIT" >&2
    exit 2
}
root=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'git -C "$root" worktree remove --force "$work/tree" 2>/dev/null; rm -rf "$work"' EXIT

build() {
    cmake -G Ninja -S "$1" -B "$2" -DCMAKE_BUILD_TYPE=RelWithDebInfo -DDOORCOST_TESTS=OFF >"$work/log" 2>&1 &&
        cmake --build "$2" --target doorcost >>"$work/log" 2>&1 || {
        cat "$work/log" >&2
        exit 2
    }
}
git -C "$root" worktree add -q --detach "$work/tree" "$1"
build "$work/tree" "$work/build-old"
build "$root" "$work/build-new"

# Inputs are those of the commit, for both.
cp -r "$work/tree/rates" "$work/tree/samples" "$work/"
cd "$work"

# run WHICH: all outputs of a program into the folder WHICH.
run() {
    for job in samples/*/*.ini; do
        name=$(basename "$job" .ini)
        mkdir -p "out/$name"
        "build-$1/doorcost" quote "$job" --all -o "out/$name/quote.xlsx" >"out/$name/quote.txt" 2>&1 || true
        "build-$1/doorcost" quote "$job" -o "out/$name/again.xlsx" --json >"out/$name/quote.json" 2>&1 || true
        rm -f "out/$name"/again*
        for command in check finish buy compare plan strike days range table ways; do
            "build-$1/doorcost" $command "$job" >"out/$name/$command.txt" 2>&1 || true
            "build-$1/doorcost" $command "$job" --json >"out/$name/$command.json" 2>&1 || true
        done
        "build-$1/doorcost" reach "$job" 1000 >"out/$name/reach.txt" 2>&1 || true
        "build-$1/doorcost" plan "$job" -o "out/$name/plan.pdf" >/dev/null 2>&1 || true
        for more in "" --doors; do
            "build-$1/doorcost" labels "$job" $more -o "out/$name/labels$more.pdf" >/dev/null 2>&1 || true
        done
        "build-$1/doorcost" draw "$job" -o "out/$name/draw.pdf" >/dev/null 2>&1 || true
        "build-$1/doorcost" show "$job" -o "out/$name/show.html" >/dev/null 2>&1 || true
    done
    for more in "" --json; do
        "build-$1/doorcost" bridge samples/kitchen/kitchen.ini samples/kitchen/kitchen-second.ini $more \
            >"out/bridge$more.txt" 2>&1 || true
    done
    mv out "$1"
}
run old
run new

for book in old/*/*.xlsx new/*/*.xlsx; do
    python3 -m zipfile -e "$book" "$book.parts" && rm "$book"
done
if diff -rq old new; then
    echo "the outputs of all samples are the same bytes: $(find new -type f | wc -l) files and parts"
else
    diff -r old new >differences || true
    grep -a '^[<>]' differences | cut -c1-200 | head -n 40
    exit 1
fi
