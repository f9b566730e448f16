#!/bin/sh
# SPDX-License-Identifier: MIT
# The rooms of src against what they say of themselves:  sh tests/rooms.sh [TREE]
# - a file includes headers of its own room and of rooms that its CMakeLists.txt names under USES;
# - a room names none that it does not need, and none that stands after it (so there is no circle);
# - DEVELOPERS.md shows each room with just these;
# - the client's papers, and all rooms that they use, can't reach what a job is or costs.
# Prints what is wrong and ends non-zero where anything is.
set -u
cd "${1:-$(dirname "$0")/..}" || exit 2
LC_ALL=C
export LC_ALL

found=$(mktemp)
trap 'rm -f "$found"' EXIT

order=$(sed -n '/^foreach(room/,/)$/p' src/CMakeLists.txt | sed '1d; s/)//' | tr -s ' \n' ' ')
[ -n "$(echo "$order" | tr -d ' ')" ] || {
    echo "rooms: src/CMakeLists.txt lists no rooms" >&2
    exit 2
}

# uses ROOM: the rooms that it may include.
uses() {
    sed -n 's/^ *USES //p' "src/$1/CMakeLists.txt" | sed 's/)$//'
}

# includes ROOM: lines `FILE:LINE ROOM`, a line an include of another room's header.
includes() {
    grep -n '^#include "' "src/$1"/*.[ch] | sed -n 's|^\([^:]*:[0-9]*\):#include "\(.*\)/[^/]*"$|\1 \2|p' |
        grep -v " $1\$"
}

earlier=
for room in $order; do
    [ -f "src/$room/CMakeLists.txt" ] || {
        echo "src/$room: no CMakeLists.txt" >>"$found"
        continue
    }
    allowed=" $(uses "$room") "
    for used in $allowed; do
        case " $earlier " in
        *" $used "*) ;;
        *) echo "src/$room/CMakeLists.txt: uses $used, which does not stand before it" >>"$found" ;;
        esac
        includes "$room" | grep -q " $used\$" ||
            echo "src/$room/CMakeLists.txt: names $used and includes nothing of it" >>"$found"
    done
    includes "$room" | while read -r where used; do
        case "$allowed" in
        *" $used "*) ;;
        *) echo "$where: $room may not include from $used" ;;
        esac
    done >>"$found"
    shown=$(sed -n "s#^| \`src/$room/\` *| *[^|]* *| *\([^|]*[^| ]\) *|.*#\1#p" DEVELOPERS.md)
    [ "$shown" = "$(uses "$room" | grep . || echo -)" ] ||
        echo "DEVELOPERS.md: src/$room/ is shown with '$shown', uses '$(uses "$room")'" >>"$found"
    earlier="$earlier $room"
done

# reach ROOM: it and all rooms that it may include from, by whatever way.
reach() {
    reached=" $1 "
    waiting=$1
    while [ -n "$waiting" ]; do
        next=
        for room in $waiting; do
            for used in $(uses "$room"); do
                case "$reached" in
                *" $used "*) ;;
                *)
                    reached="$reached$used "
                    next="$next $used"
                    ;;
                esac
            done
        done
        waiting=$next
    done
    echo "$reached"
}

for room in $(reach report/client); do
    case "$room" in
    base | figure | report/client | report/draw | report/html | report/offer | report/type | report/xlsx) ;;
    *) echo "report/client: reaches $room, and the client's papers may not" >>"$found" ;;
    esac
done

# Sources that no room owns.
for folder in $(find src -mindepth 2 -name '*.[ch]' | sed 's|^src/||; s|/[^/]*$||' | sort -u); do
    case " $order " in
    *" $folder "*) ;;
    *) echo "src/$folder: is no room of src/CMakeLists.txt" >>"$found" ;;
    esac
done

cat "$found"
[ ! -s "$found" ]
