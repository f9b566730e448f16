#!/bin/sh
# SPDX-License-Identifier: MIT
# From a fresh checkout to a quote: installs what is missing, builds, quotes the sample kitchen.
set -eu
cd "$(dirname "$0")/.."
if [ ! -f src/main.c ]; then
    echo "kitchen: the program is not built here; run this in the copy of its repository" >&2
    echo "kitchen: once it is installed, type here: doorcost quote samples/kitchen/kitchen.ini" >&2
    exit 1
fi

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
