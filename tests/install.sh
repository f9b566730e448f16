#!/bin/sh
# SPDX-License-Identifier: MIT
# Installs what is missing of the package groups named: sh tests/install.sh build test
# The groups stand in tests/packages. Says nothing when all is there.
set -eu

list=$(dirname "$0")/packages
fail() {
    echo "install: $1" >&2
    exit 1
}

[ $# -gt 0 ] || fail "name the groups to install: build, test, lint"
for group in "$@"; do
    grep -q "^$group " "$list" || fail "no group '$group' in $list"
done

command -v dpkg-query >/dev/null 2>&1 ||
    fail "this is no Debian system; install what $list names by your own means"

missing=
for group in "$@"; do
    for package in $(sed -n "s/^$group  *\([^ #]*\).*/\1/p" "$list"); do
        status=$(dpkg-query -W -f='${Status}' "$package" 2>/dev/null || true)
        [ "$status" = "install ok installed" ] || missing="$missing $package"
    done
done
[ -n "$missing" ] || exit 0

if [ "$(id -u)" -eq 0 ]; then
    as_root=
elif command -v sudo >/dev/null 2>&1; then
    as_root=sudo
else
    fail "missing:$missing; run as root, or: apt-get install$missing"
fi

echo "install: getting$missing"
log=$(mktemp)
trap 'rm -f "$log"' EXIT
fetch() {
    # Unquoted: an empty $as_root must leave no word.
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y "$@" >>"$log" 2>&1
}
# The lists may be old or empty; a package that is not found even so shows in the second step.
fetch update || echo "install: apt-get update failed, trying with the lists as they are" >&2
# Unquoted: one word a package.
if ! fetch install --no-install-recommends $missing; then
    tail -n 15 "$log" >&2
    fail "apt-get could not install$missing"
fi
