#!/bin/sh
# SPDX-License-Identifier: MIT
# What neither compiler nor linter sees, of all files in the tree: sh tests/style.sh
# Prints FILE:LINE: what is wrong, and ends non-zero where anything is.  Findings that stand for now
# are listed in tests/style-known, without their line numbers; one that no longer stands is told.
set -u
cd "$(dirname "$0")/.." || exit 2
LC_ALL=C.UTF-8
export LC_ALL

longest_function=60
longest_file=400
longest_test=600 # tables of cases

files=$(mktemp)
found=$(mktemp)
trap 'rm -f "$files" "$found" "$found.now" "$found.known"' EXIT
# Without git (an unpacked archive) all that is not built.
git ls-files >"$files" 2>/dev/null ||
    find . -type f -not -path './build*' -not -path './out/*' -not -path './.git/*' | sed 's|^\./||' >"$files"
of() {
    grep -E "$1" "$files"
}
sources=$(of '^(src|tests)/.*\.[ch]$')
code=$(of '\.(c|h|py|sh|cmake)$|(^|/)CMakeLists\.txt$|^\.ci/')
headers=$(of '^src/.*\.h$')
words=$(of '\.(c|h|py|sh|cmake|md|1|ini|csv|txt)$|^\.ci/' | grep -v '^tests/style\.sh$')
[ -n "$sources" ] || {
    echo "style: no sources found" >&2
    exit 2
}

# Calls that have no bounds, hide errors, or end the program from below.
banned_calls() {
    grep -nE '(^|[^A-Za-z0-9_])(v?sprintf|strcpy|stpcpy|strcat|strtok|ato[ifl]|atoll|gets|v?f?scanf|v?sscanf|alloca|system|popen|tmpnam|mktemp)[ ]?\(' $sources |
        sed 's/^\([^:]*:[0-9]*\):.*/\1: a banned call/'
    grep -nE '(^|[^A-Za-z0-9_])(exit|abort)[ ]?\(' $(echo "$sources" | grep '^src/' | grep -v '^src/main\.c$') |
        sed 's/^\([^:]*:[0-9]*\):.*/\1: only main ends the program/'
}

# Lines between the braces.  A function begins with a line at the margin and ends with a brace alone
# there (clang-format sees to that).
long_functions() {
    awk -v most=$longest_function '
        FNR == 1 { inside = 0 }
        !inside && /^[A-Za-z]/ { begin = FNR; name = $0 }
        !inside && /\{$/ && !/^[#{]/ { inside = 1; open = FNR }
        inside && /^\}/ {
            if ($0 == "}" && FNR - open - 1 > most) {
                sub(/\(.*/, "", name); sub(/.*[ *]/, "", name)
                printf "%s:%d: %s has %d lines, at most %d\n", FILENAME, begin, name, FNR - open - 1, most
            }
            inside = 0
        }' $sources
}

long_files() {
    for file in $(echo "$code" | grep -vE '\.cmake$|CMakeLists'); do
        lines=$(wc -l <"$file")
        case $file in
        tests/*) most=$longest_test ;;
        *) most=$longest_file ;;
        esac
        [ "$lines" -le $most ] || echo "$file: $lines lines, at most $most"
    done
}

license_lines() {
    for file in $code; do
        head -n 2 "$file" | grep -q 'SPDX-License-Identifier: MIT' || echo "$file:1: no SPDX line"
    done
}

# Every prototype of a header needs a comment of its own, right above it.
bare_prototypes() {
    awk '
        FNR == 1 { said = 0; proto = 0; comment = 0 }
        /^$/ { said = 0 }
        /^ *\/\*/ { comment = 1; said = 1 }
        comment { if (/\*\//) comment = 0; next }
        /^#/ || /^typedef/ || /^extern/ { next }
        !proto && /^[A-Za-z].*\(/ && !/^ / { proto = 1; at = FNR; name = $0; sub(/\(.*/, "", name); sub(/.*[ *]/, "", name) }
        proto && /[;{] *(\/\*.*)?$/ {
            if (!said) printf "%s:%d: %s has no comment\n", FILENAME, at, name
            proto = 0
            said = 0
        }' $headers
}

# What a run of a test by hand leaves at the top has been committed before.
stray_files() {
    grep -v / "$files" |
        grep -vxE '\.clang-(format|tidy)|\.gitignore|CMakeLists\.txt|(DEVELOPERS|README)\.md' |
        sed 's/$/:1: a stray file at the top/'
    grep / "$files" | grep -vE '^(src|rates|tests|samples|docs|\.[^/]*)/' | sed 's/$/:1: a stray folder at the top/'
}

# Words: what was left to be done, places of one machine, another spelling than ours, marks of a merge.
stray_words() {
    grep -nE '(^|[^A-Za-z])(TO''DO|FIX''ME|X''XX|HA''CK)([^A-Za-z]|$)' $words | sed 's/^\([^:]*:[0-9]*\):.*/\1: something left to be done/'
    grep -nE '^(<<<<<<<|>>>>>>>|=======$)' $words | sed 's/^\([^:]*:[0-9]*\):.*/\1: a mark of a merge/'
    grep -nE '(^|[^A-Za-z0-9_.])/(home|root|work|Users)/[a-z]' $words | sed 's/^\([^:]*:[0-9]*\):.*/\1: a path of one machine/'
    # What people read: the docs, the samples, and the texts within the code.
    british='(met|lit)res?([^a-z]|$)|colour|greys?([^a-z]|$)|fibre|centre|licence|favourite|behaviour|aluminium|analyse|neighbour|mould'
    grep -niE "$british" $(echo "$words" | grep -E '\.(md|1|ini|csv|txt)$' | grep -vE '^tests/') |
        sed 's/^\([^:]*:[0-9]*\):.*/\1: not US spelling/'
    grep -niE "\"[^\"]*($british)[^\"]*\"" $(echo "$words" | grep -E '^src/.*\.c$' | grep -vE '^src/read/key/unit_suffix\.c$') |
        sed 's/^\([^:]*:[0-9]*\):.*/\1: not US spelling/'
    grep -nP '[ \t]+$' $words | grep -vE '^tests/(cases|problems)/' | sed 's/^\([^:]*:[0-9]*\):.*/\1: blanks at the end/'
}

{
    banned_calls
    long_functions
    long_files
    license_lines
    bare_prototypes
    stray_files
    stray_words
} >"$found"

# The findings without line numbers and counts beside those known.
plain() {
    sed 's/^\([^:]*\):[0-9]*:/\1:/; s/: [0-9]* lines/: lines/; s/has [0-9]* lines/has lines/' | sort
}
plain <"$found" >"$found.now"
grep -v '^#' tests/style-known 2>/dev/null | sort >"$found.known"
news=$(comm -23 "$found.now" "$found.known")
gone=$(comm -13 "$found.now" "$found.known")
[ -z "$news" ] || {
    sort -t: -k1,1 -k2,2n "$found"
    echo "style: findings that are not in tests/style-known:"
    echo "$news"
}
[ -z "$gone" ] || printf 'style: no longer so, take it out of tests/style-known: %s\n' "$gone"
[ -z "$news" ]
