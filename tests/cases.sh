#!/bin/sh
# SPDX-License-Identifier: MIT
# Whole-program cases: sh tests/cases.sh PROGRAM [--renew] [NAME...]
#
# A case is a folder of tests/cases: cmd is run by sh in an empty folder with copies of samples/ and
# rates/ (and of the case's own files), doorcost on the PATH.  Expected: stdout, stderr (absent:
# empty), status (absent: 0).  --renew writes what came out as expected; look at the difference
# before it is committed.
set -u
program=$(realpath "$1")
shift
[ -x "$program" ] || { echo "cases: no program $program" >&2; exit 2; }
renew=no
if [ "${1:-}" = --renew ]; then
    renew=yes
    shift
fi
source=$(cd "$(dirname "$0")/.." && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
PATH=$(dirname "$program"):$PATH
LC_ALL=C.UTF-8
export PATH LC_ALL
unset NO_COLOR || true
[ $# -gt 0 ] || set -- $(ls "$source/tests/cases")

# expect NAME WHAT: compares what came out with the file of the case.
expect() {
    file=$source/tests/cases/$1/$2
    [ -f "$file" ] || file=/dev/null
    cmp -s "$file" "$scratch/$2" && return 0
    if [ $renew = yes ]; then
        cp "$scratch/$2" "$source/tests/cases/$1/$2"
        [ -s "$scratch/$2" ] || rm "$source/tests/cases/$1/$2"
        echo "$1: $2 renewed"
        return 0
    fi
    echo "FAILED $1: $2 differs"
    diff -u "$file" "$scratch/$2" | head -n 40
    return 1
}

failed=0
count=0
for name in "$@"; do
    rm -rf "$scratch/work"
    mkdir "$scratch/work"
    cp -r "$source/samples" "$source/rates" "$scratch/work/"
    cp -r "$source/tests/cases/$name/." "$scratch/work/"
    (cd "$scratch/work" && rm -f stdout stderr status && exec sh ./cmd) >"$scratch/stdout" 2>"$scratch/stderr" </dev/null
    echo $? >"$scratch/status"
    [ "$(cat "$scratch/status")" != 0 ] || : >"$scratch/status"
    for what in status stdout stderr; do
        expect "$name" $what || failed=$((failed + 1))
    done
    count=$((count + 1))
done
echo "$count cases, $failed differences"
[ $failed -eq 0 ] && [ $count -gt 0 ]
