#!/bin/sh
# SPDX-License-Identifier: MIT
# The spelling of comments, messages and documents: sh tests/spelling.sh
# US spelling; tests/spelling-words lists what is right and looks wrong. Prints FILE:LINE: WORD ==> WORD.
set -eu
cd "$(dirname "$0")/.."
# unit_suffix.c and test_key.c hold the spellings that inputs may have, style.sh those that texts may not; the instances of
# tests/cutting are data.
codespell --builtin clear,rare,en-GB_to_en-US --ignore-words tests/spelling-words \
    --skip 'src/read/key/unit_suffix.c,tests/test_key.c,tests/style.sh,tests/cutting,tests/cases,*.csv' \
    src docs tests rates samples README.md DEVELOPERS.md .ci
