# SPDX-License-Identifier: MIT
# Completion of doorcost for fish. Commands and options are asked of the program itself, so that
# nothing here has to follow them.

# The commands, each with what it does.
function __doorcost_commands
    set -l words (commandline -opc)
    $words[1] help 2>/dev/null |
        sed -n '/^Options/q; s/^  \([a-z][a-z]*\)  *\(.*\)/\1\t\2/p'
    printf 'help\tlist the commands, or tell of one\n'
end

# The options of the command that stands on the line, each with what it does.
function __doorcost_options
    set -l words (commandline -opc)
    set -q words[2]
    and $words[1] help $words[2] 2>/dev/null |
        sed -n 's/^  \(-[A-Za-z], \)\{0,1\}\(--[a-z-]*\)[^ ]*\( [A-Z]*\)\{0,1\}  *\(.*\)/\2\t\4/p'
end

# What the job calls its options.
function __doorcost_choices
    for word in (commandline -opc)
        string match -q '*.ini' -- $word
        and sed -n 's/^ *\[option  *\(.*[^ ]\) *\].*/\1/p' $word 2>/dev/null
    end
end

function __doorcost_first
    test (count (commandline -opc)) -eq 1
end

function __doorcost_helps
    set -l words (commandline -opc)
    test (count $words) -eq 2 -a "$words[2]" = help
end

# Whether the word before takes a value of its own.
function __doorcost_after
    set -l words (commandline -opc)
    contains -- $words[-1] $argv
end

complete -c doorcost -f
complete -c doorcost -n '__doorcost_first; or __doorcost_helps' -a '(__doorcost_commands)'
complete -c doorcost -n '__doorcost_after -o --output' -F
complete -c doorcost -n '__doorcost_after --svg' -a '(__fish_complete_directories)'
complete -c doorcost -n '__doorcost_after --option' -a '(__doorcost_choices)'
complete -c doorcost -n 'not __doorcost_first; and not __doorcost_helps; and not __doorcost_after -o --output --svg --option; and string match -q -- "-*" (commandline -ct)' -a '(__doorcost_options)'
complete -c doorcost -n 'not __doorcost_first; and not __doorcost_helps; and not __doorcost_after -o --output --svg --option; and not string match -q -- "-*" (commandline -ct)' -k -a '(__fish_complete_suffix .ini)'
