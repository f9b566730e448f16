#compdef doorcost
# SPDX-License-Identifier: MIT
# Completion of doorcost for zsh. Commands and options are asked of the program itself, so that
# nothing here has to follow them.

# The commands as NAME:WHAT IT DOES.
_doorcost_commands() {
    local -a commands
    commands=(${(f)"$($words[1] help 2>/dev/null |
        sed -n '/^Options/q; s/^  \([a-z][a-z]*\)  *\(.*\)/\1:\2/p')"})
    commands+=('help:list the commands, or tell of one')
    _describe -t commands command commands
}

# The options that the command takes, by their long names.
_doorcost_options() {
    local -a options
    options=(${(f)"$($words[1] help $words[2] 2>/dev/null |
        sed -n 's/^  \(-[A-Za-z], \)\{0,1\}\(--[a-z-]*\)[^ ]*\( [A-Z]*\)\{0,1\}  *\(.*\)/\2:\4/p')"})
    _describe -o -t options option options
}

# What the job calls its options.
_doorcost_choices() {
    local -a names
    local job=${${(M)words:#*.ini}[1]}
    names=(${(f)"$(sed -n 's/^ *\[option  *\(.*[^ ]\) *\].*/\1/p' $job 2>/dev/null)"})
    compadd -- $names
}

_doorcost() {
    if ((CURRENT == 2)); then
        _doorcost_commands
        return
    fi
    if [[ $words[2] == help ]]; then
        _doorcost_commands
        return
    fi
    case $words[CURRENT-1] in
    -o | --output) _files ;;
    --svg) _files -/ ;;
    --option) _doorcost_choices ;;
    *)
        if [[ $words[CURRENT] == -* ]]; then
            _doorcost_options
        else
            _files -g '*.ini'
        fi
        ;;
    esac
}

_doorcost "$@"
