#!/bin/sh
# SPDX-License-Identifier: MIT
# Builds the planners as the program is used and measures them on a folder of instances:
#     sh tests/plan-bench.sh FOLDER [SECONDS]
# FOLDER holds 1d/*.txt and 2d/*.txt, and best-known.csv where results are known. SECONDS sets the
# effort to about so long an instance, default 1. Status: that of plan_bench.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
if [ $# -lt 1 ] || [ $# -gt 2 ]; then
    echo "usage: sh tests/plan-bench.sh FOLDER [SECONDS]" >&2
    exit 2
fi
cmake -C "$root/src/cmake/release.cmake" -DDOORCOST_TESTS=ON -S "$root" -B "$root/build-bench" >"$root/build-bench.log" 2>&1 &&
    cmake --build "$root/build-bench" --target plan_bench >>"$root/build-bench.log" 2>&1 || {
    cat "$root/build-bench.log" >&2
    exit 2
}
rm -f "$root/build-bench.log"
exec "$root/build-bench/tests/plan_bench" "$1" "${2:-1}"
