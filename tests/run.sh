#!/bin/sh
# SPDX-License-Identifier: MIT
# Installs what is missing, builds, tests; ends non-zero on any failure.
#     sh tests/run.sh [VARIANT] [quick] [OPTION OF CTEST...]
# VARIANT is dev (the usual), ci or asan; quick leaves out what needs minutes, for every day.
set -eu
cd "$(dirname "$0")/.."

variant=dev
case ${1-} in
dev | ci | asan)
    variant=$1
    shift
    ;;
esac
if [ "${1-}" = quick ]; then
    shift
    set -- -LE 'office|slow' "$@"
fi
sh tests/install.sh build test
cmake -C "src/cmake/$variant.cmake" -B "build-$variant"
cmake --build "build-$variant"
ctest --test-dir "build-$variant" --output-on-failure -j"$(nproc)" --no-tests=error "$@"
