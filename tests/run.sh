#!/bin/sh
# SPDX-License-Identifier: MIT
# Installs what is missing, builds, runs every test; ends non-zero on any failure.
set -eu
cd "$(dirname "$0")/.."

sh tests/install.sh build test
cmake --preset dev
cmake --build --preset dev
ctest --preset dev -j"$(nproc)" --no-tests=error "$@"
