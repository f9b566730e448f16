#!/bin/sh
# SPDX-License-Identifier: MIT
# What a quote takes, beside the floor: the same cells written by the workbook library alone.
#     sh tests/quote-bench.sh [ROWS ...]
# Builds as the program is used; measures the kitchen, and lists of made-up doors of ROWS (60, 1,000 and 10,000).
# Prints the table of docs/speed.md: seconds of the processor and peaks of memory.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cmake -C "$root/src/cmake/release.cmake" -DDOORCOST_TESTS=ON -S "$root" -B "$root/build-bench" >"$work/log" 2>&1 &&
    cmake --build "$root/build-bench" --target quote_bench >>"$work/log" 2>&1 || {
    cat "$work/log" >&2
    exit 2
}
[ $# -gt 0 ] || set -- 60 1000 10000
cp -r "$root/rates" "$root/samples" "$work/"
job="$work/samples/kitchen/kitchen.ini"
echo "| job | reading | stages | plans | client workbook | client PDF | sheets laid out | written | all | memory | workbook | floor | its memory |"
echo "|---|---|---|---|---|---|---|---|---|---|---|---|---|"
"$root/build-bench/tests/quote_bench" "$job" "$work" kitchen
for rows in "$@"; do
    kind=plain
    [ "$rows" -gt 100 ] || kind=sizes
    python3 "$root/tests/growth.py" - "$root" list "$rows" "$kind" "$work/samples/kitchen/doors.csv"
    "$root/build-bench/tests/quote_bench" "$job" "$work" "$rows rows"
done
