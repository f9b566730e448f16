/* SPDX-License-Identifier: MIT */
#include "command_bench.h"

#include "cmocka_all.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define COPY ((size_t)300)

/* A program may write into its arguments: each is a copy. */
static void put_word(char **argv, char (*copies)[COPY], int *argc, const char *word) {
    assert_true(*argc <= CALL_WORDS && strlen(word) < COPY);
    (void)snprintf(copies[*argc], COPY, "%s", word);
    argv[*argc] = copies[*argc];
    ++*argc;
}

struct called command_bench_call(const char *const *words, const char *more) {
    char copies[CALL_WORDS + 1][COPY];
    char *argv[CALL_WORDS + 2] = {0};
    int argc = 0;
    struct called called = {0};
    char *said = NULL;
    size_t said_size;
    put_word(argv, copies, &argc, "doorcost");
    for (size_t i = 0; words[i] != NULL; i++) {
        put_word(argv, copies, &argc, words[i]);
    }
    if (more != NULL) {
        put_word(argv, copies, &argc, more);
    }
    FILE *const out = open_memstream(&called.out, &called.size);
    FILE *const err = open_memstream(&said, &said_size);
    assert_true(out != NULL && err != NULL);
    called.status = command_main(argc, argv, (struct streams){.out = out, .err = err});
    assert_int_equal(fclose(out), 0);
    assert_int_equal(fclose(err), 0);
    if (called.status != STATUS_DONE) {
        print_error("%s: status %d\n%s", words[0], (int)called.status, said);
    }
    free(said);
    return called;
}
