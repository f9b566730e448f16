# SPDX-License-Identifier: MIT
# Completion of doorcost for bash. Commands and options are asked of the program itself, so that
# nothing here has to follow them.

# The names of options that a command takes.
_doorcost_options() {
    "$1" help "$2" 2>/dev/null | sed -n 's/^  \(-[A-Za-z], \)\{0,1\}\(--[a-z-]*\).*/\2/p'
}

# The commands.
_doorcost_commands() {
    "$1" help 2>/dev/null | sed -n '/^Options/q; s/^  \([a-z][a-z]*\)  .*/\1/p'
    echo help
}

# Files of that name and folders, each a line.
_doorcost_files() {
    compgen -f -X "!*.$1" -- "$2"
    compgen -d -S / -- "$2"
}

# The rest of the line that may stand behind "--option": what the job calls its options.
_doorcost_choices() {
    sed -n 's/^ *\[option  *\(.*[^ ]\) *\].*/\1/p' "$1" 2>/dev/null
}

_doorcost() {
    local program=${COMP_WORDS[0]} word=${COMP_WORDS[COMP_CWORD]}
    local before=${COMP_WORDS[COMP_CWORD - 1]} command=${COMP_WORDS[1]} job= each
    local IFS=$'\n'
    COMPREPLY=()
    for each in "${COMP_WORDS[@]:2}"; do
        case $each in *.ini)
            job=$each
            break
            ;;
        esac
    done
    if [ "$COMP_CWORD" -eq 1 ]; then
        COMPREPLY=($(compgen -W "$(_doorcost_commands "$program")" -- "$word"))
        return
    fi
    if [ "$command" = help ]; then
        COMPREPLY=($(compgen -W "$(_doorcost_commands "$program")" -- "$word"))
        return
    fi
    case $before in
    -o | --output) COMPREPLY=($(compgen -f -- "$word")) ;;
    --svg) COMPREPLY=($(compgen -d -- "$word")) ;;
    --option) COMPREPLY=($(compgen -W "$(_doorcost_choices "$job")" -- "$word")) ;;
    *)
        case $word in
        -*) COMPREPLY=($(compgen -W "$(_doorcost_options "$program" "$command")" -- "$word")) ;;
        *) COMPREPLY=($(_doorcost_files ini "$word")) ;;
        esac
        ;;
    esac
}

complete -o nospace -o filenames -F _doorcost doorcost
