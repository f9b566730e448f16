#!/bin/sh
# SPDX-License-Identifier: MIT
# The Debian package in a clean root: made, installed with what it depends on, a job quoted from an
# empty folder by a user of no rights, removed.
#     sh tests/package.sh [BUILD]     (as root; needs mmdebstrap and the archive; some minutes)
set -eu
cd "$(dirname "$0")/.."
build=${1:-build}
command -v mmdebstrap >/dev/null || { echo "package: needs mmdebstrap" >&2; exit 2; }
[ "$(id -u)" -eq 0 ] || { echo "package: needs root" >&2; exit 2; }
[ -f "$build/CPackConfig.cmake" ] || { echo "package: nothing is built in $build" >&2; exit 2; }

folder=$(mktemp -d)
root=$folder/root
clean() {
    for place in dev proc; do
        mountpoint -q "$root/$place" && umount "$root/$place"
    done
    rm -rf --one-file-system "$folder"
}
trap clean EXIT

(cd "$build" && cpack -B "$folder" >/dev/null)
# The archive that this machine takes its own packages from.
mirror=$(sed -n 's/^\(deb\|URIs:\) *\(\[[^]]*\] *\)\{0,1\}\(https\{0,1\}:[^ ]*debian\/\{0,1\}\)\( .*\)\{0,1\}$/\3/p' \
    /etc/apt/sources.list /etc/apt/sources.list.d/* 2>/dev/null | head -n 1)
# Unquoted: no mirror must leave no word.
mmdebstrap -q --variant=apt --include=ca-certificates bookworm "$root" $mirror
cp /etc/resolv.conf "$root/etc/"
mv "$folder"/*.deb "$root/tmp/doorcost.deb"
mount --bind /proc "$root/proc"
mount --bind /dev "$root/dev"

inside() {
    chroot "$root" env HOME=/tmp LANG=C.UTF-8 DEBIAN_FRONTEND=noninteractive sh -euc "$1"
}
inside 'apt-get -qq update && apt-get -qq -y install --no-install-recommends /tmp/doorcost.deb >/tmp/log 2>&1 || { tail /tmp/log; exit 1; }'
inside 'useradd -m keeper && su keeper -c "
    mkdir ~/empty && cd ~/empty
    doorcost quote /usr/share/doorcost/samples/kitchen/kitchen.ini -o kitchen.xlsx
    ls -l kitchen.xlsx kitchen-client.xlsx kitchen-client.pdf
    cp -r /usr/share/doorcost ~/doors && cd ~/doors
    doorcost check samples/old-house/old-house.ini"'
inside 'apt-get -qq -y remove doorcost >/tmp/log 2>&1
    left=$(find / -xdev -name "*doorcost*" ! -path "/tmp/*" ! -path "/home/*" ! -path "/var/*" ! -path "/proc/*")
    [ -z "$left" ] || { echo "left behind: $left"; exit 1; }'
echo "package: installed, used and removed"
