#!/bin/sh
# SPDX-License-Identifier: MIT
# tests/rooms.sh must see an include against the order, a stale name, a circle and a room unshown.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
copy=$(mktemp -d)
trap 'rm -rf "$copy"' EXIT

fresh() {
    rm -rf "$copy/src"
    cp -r "$here/../src" "$copy/src"
    cp "$here/../DEVELOPERS.md" "$copy/DEVELOPERS.md"
}
# fails WHAT: the check must find something, and name WHAT.
fails() {
    if sh "$here/rooms.sh" "$copy" >"$copy/said"; then
        echo "rooms.sh did not see: $1" >&2
        exit 1
    fi
    grep -q "$1" "$copy/said" || {
        echo "rooms.sh said, without '$1':" >&2
        cat "$copy/said" >&2
        exit 1
    }
}

fresh
sh "$here/rooms.sh" "$copy"
echo '#include "report/words/show.h"' >>"$copy/src/door/door.c"
fails 'door may not include from report/words'

fresh
sed -i 's/USES /USES report\/words /' "$copy/src/door/CMakeLists.txt"
fails 'uses report/words, which does not stand before it'

fresh
sed -i 's/USES /USES cut\/strip /' "$copy/src/stock/CMakeLists.txt"
fails 'names cut/strip and includes nothing of it'

fresh
sed -i '/^| `src\/labor\/`/d' "$copy/DEVELOPERS.md"
fails "DEVELOPERS.md: src/labor/"

# A way to the costs, two rooms on.
fresh
sed -i 's/USES /USES price /' "$copy/src/report/offer/CMakeLists.txt"
echo '#include "price/estimate.h"' >>"$copy/src/report/offer/offer.h"
sed -i '/^| `src\/report\/offer\/`/s/base figure/price base figure/' "$copy/DEVELOPERS.md"
fails 'report/client: reaches price'
grep -q 'report/client: reaches stock' "$copy/said"

fresh
mkdir "$copy/src/attic"
cp "$copy/src/base/date.h" "$copy/src/attic/"
fails 'src/attic: is no room'
