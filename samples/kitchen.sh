#!/bin/sh
# SPDX-License-Identifier: MIT
# From a fresh checkout to a quote: installs what is missing, builds, quotes the sample kitchen.
set -eu
cd "$(dirname "$0")/.."

sh tests/install.sh build
log=$(mktemp)
trap 'rm -f "$log"' EXIT
echo "building ..."
if ! { cmake -C src/cmake/release.cmake -B build && cmake --build build; } >"$log" 2>&1; then
    cat "$log" >&2
    echo "kitchen: the build failed, see above" >&2
    exit 1
fi

mkdir -p out
build/doorcost quote samples/kitchen/kitchen.ini -o out/kitchen.xlsx
echo
echo "The workbook is $(pwd)/out/kitchen.xlsx"
