#!/bin/sh
# SPDX-License-Identifier: MIT
# What src/cmake/hardening.cmake asks for is in the program that was built:
#     sh tests/hardening.sh PROGRAM OBJECT COMMANDS HARDENING...
# OBJECT is one of ours, COMMANDS the compile commands; HARDENING of fortify, clash, cf as far as they were asked for.
set -u
program=$1 object=$2 commands=$3
shift 3
failed=0
# want NAME COMMAND... : what the command prints must hold the pattern in $pattern.
want() {
    name=$1
    shift
    "$@" 2>&1 | grep -qE -e "$pattern" || {
        echo "hardening: no $name in $program"
        failed=1
    }
}

command -v readelf >/dev/null || {
    echo "hardening: no readelf"
    exit 1
}
pattern='Type: +DYN' want "position-independent code" readelf -hW "$program"
pattern='FLAGS_1.* PIE' want "mark of a position-independent program" readelf -dW "$program"
pattern='GNU_RELRO' want "relocations made read-only" readelf -lW "$program"
pattern='FLAGS_1.* NOW' want "binding at the start" readelf -dW "$program"
pattern='GNU_STACK.* RW ' want "stack without code" readelf -lW "$program"
pattern='__stack_chk_fail' want "stack protector" readelf -sW --dyn-syms "$program"
for kind in "$@"; do
    case $kind in
    fortify) pattern='__[a-z]*printf_chk' want "checked calls" readelf -sW --dyn-syms "$program" ;;
    # It leaves no mark that can be told from other code, so the compiler's own line is asked.
    clash) pattern='-fstack-clash-protection' want "protection of the stack's end" \
        grep -F 'main.c' "$commands" ;;
    # The linker drops the mark where start-up code of the system lacks it: an object of ours shows it.
    cf) pattern='IBT, SHSTK' want "checked jumps" readelf -nW "$object" ;;
    *)
        echo "hardening: unknown '$kind'"
        failed=1
        ;;
    esac
done
exit $failed
