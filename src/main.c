/* SPDX-License-Identifier: MIT */
/* doorcost: what cabinet-door jobs cost. */
#include "command/command.h"

#include <locale.h>
#include <stdio.h>

int main(int argc, char **argv) {
    /* Only the characters: numbers are written with a point everywhere. */
    (void)setlocale(LC_CTYPE, "");
    /* By lines: unbuffered, each character of a message would be a call of its own. */
    (void)setvbuf(stderr, NULL, _IOLBF, BUFSIZ);
    const struct streams streams = {.out = stdout, .err = stderr, .in = stdin};
    return (int)command_main(argc, argv, streams);
}
