# SPDX-License-Identifier: MIT
# docs/formats.md as manual pages: the parts of it that were asked for, in the markup of man(7).
#
#     awk -f man.awk -v name=doorcost-job -v about='...' -v version=0.1.0 -v parts='A|B' formats.md
#
# parts: headings of the second level, in the order of the file. Knows the markup that formats.md
# uses: headings, paragraphs, lists, tables, code, bold, links.

# Letters that mean something to roff. A backslash first, as the others bring their own.
function plain(s) {
    gsub(/\\/, "\\e", s)
    gsub(/-/, "\\-", s)
    return s
}

# Code and bold text in bold, a link by its words.
function inline(s,    out, at, code, closing) {
    gsub(/<br>/, " or ", s)
    gsub(/``/, "", s)
    while (match(s, /\[[^]]*\]\([^)]*\)/)) {
        code = substr(s, RSTART, RLENGTH)
        sub(/^\[/, "", code)
        sub(/\]\(.*/, "", code)
        s = substr(s, 1, RSTART - 1) code substr(s, RSTART + RLENGTH)
    }
    out = ""
    while ((at = match(s, /`[^`]+`|\*\*[^*]+\*\*/)) > 0) {
        closing = substr(s, at, 1) == "`" ? 1 : 2
        code = substr(s, at + closing, RLENGTH - 2 * closing)
        out = out plain(substr(s, 1, at - 1)) "\\fB" plain(code) "\\fR"
        s = substr(s, at + RLENGTH)
    }
    return out plain(s)
}

# A line that begins with a point or an apostrophe would be a command.
function put(s) {
    if (s ~ /^[.']/) {
        s = "\\&" s
    }
    print s
}

# The cells of a row. A bar within code is one of its letters.
function cells(line,    n, i, done, code) {
    done = ""
    while (match(line, /`[^`]*`/)) {
        code = substr(line, RSTART, RLENGTH)
        gsub(/\|/, "\001", code)
        done = done substr(line, 1, RSTART - 1) code
        line = substr(line, RSTART + RLENGTH)
    }
    line = done line
    sub(/^\| */, "", line)
    sub(/ *\| *$/, "", line)
    n = split(line, cell, / *\| */)
    for (i = 1; i <= n; i++) {
        gsub(/\001/, "|", cell[i])
    }
    return n
}

# A row of a table: its first cell, then the others. Of a table of keys or columns the second cell
# says whether it is needed, the third shows it.
function put_row(line,    n, i, first, text) {
    n = cells(line)
    first = inline(cell[1])
    if (head[2] == "Needed") {
        first = first (head[1] == "Key" ? " = " : ": ") inline(cell[3]) (cell[2] == "" ? "" : " (needed)")
    }
    text = ""
    for (i = head[2] == "Needed" ? 4 : 2; i <= n; i++) {
        if (cell[i] != "") {
            text = text (text == "" ? "" : "; ") inline(cell[i])
        }
    }
    print ".TP"
    put(first)
    put(text == "" ? "\\&" : text)
}

# Lines are gathered to paragraphs, as code and links may go over the end of a line.
function flush() {
    if (gathered != "") {
        put(inline(gathered))
    }
    gathered = ""
}

BEGIN {
    count = split(parts, wanted, "|")
    for (i = 1; i <= count; i++) {
        want[wanted[i]] = 1
    }
    print ".\\\" SPDX-License-Identifier: MIT"
    print ".TH " toupper(plain(name)) " 5 \"\" \"doorcost " version "\" \"File formats\""
    print ".SH NAME"
    print plain(name) " \\- " plain(about)
}

/^(#|```|\||$)/ || /^ *([-*]|[0-9]+\.) / {
    flush()
}

/^## / {
    heading = substr($0, 4)
    on = heading in want
    if (on) {
        seen++
        print ".SH " toupper(plain(heading))
    }
    in_table = gap = 0
    opening = 1
    next
}

!on { next }

/^### / {
    print ".SS " inline(substr($0, 5))
    in_table = gap = 0
    opening = 1
    next
}

/^```/ {
    print in_code ? ".EE" : ".PP\n.EX"
    in_code = !in_code
    gap = 0
    next
}

in_code {
    put(plain($0))
    next
}

/^\|/ {
    if (!in_table) {
        in_table = 1
        cells($0)
        head[1] = cell[1]
        head[2] = cell[2]
    } else if ($0 !~ /^\|[-| :]+\|$/) {
        put_row($0)
    }
    opening = 0
    next
}

/^$/ {
    gap = 1
    in_table = 0
    next
}

/^ *([-*]|[0-9]+\.) / {
    item = $0
    sub(/^ *([-*]|[0-9]+\.) +/, "", item)
    print ".IP * 3"
    gathered = item
    gap = opening = 0
    next
}

{
    if (gap && !opening) {
        print ".PP"
    }
    gap = opening = 0
    gathered = gathered (gathered == "" ? "" : " ") $0
}

END {
    flush()
    if (seen != count) {
        print "man.awk: formats.md lacks a part of " parts > "/dev/stderr"
        exit 1
    }
    print ".SH SEE ALSO"
    print ".BR doorcost (1)"
}
