/* SPDX-License-Identifier: MIT */
/* Files put in place together: what stood there before is there again whenever one fails. */
#define _GNU_SOURCE /* O_TMPFILE. NOLINT(bugprone-reserved-identifier,cert-*) */
#include "report/file/output.h"

#include "cmocka_all.h"

#include <errno.h>
#include <fcntl.h>
#include <glob.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

/* The linker sends the program's own calls here (see tests/unit.cmake). */
// NOLINTBEGIN(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp)
int __real_link(const char *from, const char *to);
int __real_rename(const char *from, const char *to);
int __real_open(const char *path, int flags, mode_t mode);
int __wrap_link(const char *from, const char *to);
int __wrap_rename(const char *from, const char *to);
int __wrap_open(const char *path, int flags, mode_t mode);

static int link_error;   /* of every link; 0: none */
static int rename_fails; /* the call that fails; 0: none */
static int renames;
static bool names_all; /* a disk that can't make a file without a name */

int __wrap_open(const char *path, int flags, mode_t mode) {
    if (names_all && (flags & O_TMPFILE) == O_TMPFILE) {
        errno = EOPNOTSUPP;
        return -1;
    }
    return __real_open(path, flags, mode);
}

int __wrap_link(const char *from, const char *to) {
    if (link_error != 0) {
        errno = link_error;
        return -1;
    }
    return __real_link(from, to);
}

int __wrap_rename(const char *from, const char *to) {
    renames++;
    if (renames == rename_fails) {
        errno = EIO;
        return -1;
    }
    return __real_rename(from, to);
}
// NOLINTEND(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp)

static const char *const paths[] = {"output-1.pdf", "output-2.pdf", "output-3.pdf"};
enum { FILES = 3 };

static void put(const char *path, const char *text) {
    FILE *const file = fopen(path, "wb");
    assert_non_null(file);
    assert_true(fputs(text, file) >= 0);
    assert_int_equal(fclose(file), 0);
}

static void holds(const char *path, const char *text) {
    char found[80] = "";
    FILE *const file = fopen(path, "rb");
    assert_non_null(file);
    assert_non_null(fgets(found, sizeof found, file));
    assert_int_equal(fclose(file), 0);
    assert_string_equal(found, text);
}

static mode_t mode_of(const char *path) {
    struct stat about;
    assert_int_equal(stat(path, &about), 0);
    return about.st_mode & 0777;
}

static void start(struct output *files) {
    link_error = 0;
    rename_fails = 0;
    renames = 0;
    for (size_t i = 0; i < FILES; i++) {
        (void)unlink(paths[i]);
        files[i] = (struct output){.path = paths[i], .kind = OUTPUT_PDF};
    }
}

/* Writes `text` to all of the files. */
static enum output_result write_all(struct output *files, const char *text, bool force) {
    size_t at;
    enum output_result result = outputs_begin(files, FILES, force, &at);
    for (size_t i = 0; result == OUTPUT_OK && i < FILES; i++) {
        put(files[i].name, text);
    }
    if (result == OUTPUT_OK) {
        result = outputs_finish(files, FILES, &at);
    }
    outputs_drop(files, FILES);
    return result;
}

#define OLD "the old bytes, long enough for a seal\n"
#define NEW "the new bytes, long enough for a seal\n"

static void test_no_second_names(void **state) {
    (void)state;
    const int errors[] = {0, EPERM, EOPNOTSUPP, EMLINK};
    for (size_t e = 0; e < sizeof errors / sizeof *errors; e++) {
        for (int fails = 1; fails <= FILES; fails++) {
            struct output files[FILES];
            start(files);
            assert_int_equal(write_all(files, OLD, false), OUTPUT_OK);
            link_error = errors[e];
            renames = 0;
            rename_fails = fails;
            assert_int_equal(write_all(files, NEW, false), OUTPUT_CANNOT_WRITE);
            for (size_t i = 0; i < FILES; i++) {
                holds(paths[i], OLD);
            }
            rename_fails = 0;
            assert_int_equal(write_all(files, NEW, false), OUTPUT_OK);
            holds(paths[0], NEW);
        }
    }
}

static size_t count_beside(void) {
    glob_t found;
    const int result = glob("output-*.pdf.*", 0, NULL, &found);
    const size_t count = result == 0 ? found.gl_pathc : 0;
    assert_true(result == 0 || result == GLOB_NOMATCH);
    globfree(&found);
    return count;
}

/* Where the disk can make files without names (this one is asked), a run that is killed before it
 * ends leaves nothing, as nothing of it is named. */
static void test_names_beside(void **state) {
    (void)state;
    struct output files[FILES];
    size_t at;
    const int nameless = __wrap_open(".", O_TMPFILE | O_RDWR, 0600);
    start(files);
    assert_int_equal(outputs_begin(files, FILES, false, &at), OUTPUT_OK);
    for (size_t i = 0; i < FILES; i++) {
        put(files[i].name, NEW);
    }
    assert_int_equal(count_beside(), nameless >= 0 ? 0 : FILES);
    assert_int_equal(outputs_finish(files, FILES, &at), OUTPUT_OK);
    outputs_drop(files, FILES);
    assert_int_equal(count_beside(), 0);
    holds(paths[FILES - 1], NEW);
    if (nameless >= 0) {
        assert_int_equal(close(nameless), 0);
    }
}

static void test_modes(void **state) {
    (void)state;
    struct output files[FILES];
    start(files);
    assert_int_equal(write_all(files, OLD, false), OUTPUT_OK);
    assert_int_equal(chmod(paths[1], 0600), 0);
    assert_int_equal(write_all(files, NEW, false), OUTPUT_OK);
    assert_int_equal(mode_of(paths[1]), 0600);
    assert_int_equal(chmod(paths[1], 0444), 0);
    assert_int_equal(write_all(files, OLD, false), OUTPUT_READ_ONLY);
    holds(paths[0], NEW);
    assert_int_equal(write_all(files, OLD, true), OUTPUT_OK);
    assert_int_equal(mode_of(paths[1]), 0444);
    holds(paths[1], OLD);
}

static void test_no_file(void **state) {
    (void)state;
    struct output files[FILES];
    start(files);
    assert_int_equal(mkfifo(paths[2], 0600), 0);
    assert_int_equal(write_all(files, NEW, false), OUTPUT_NOT_PLAIN);
    assert_int_equal(write_all(files, NEW, true), OUTPUT_NOT_PLAIN);
    assert_int_equal(access(paths[0], F_OK), -1);
    (void)unlink(paths[2]);
    files[2].path = "/dev/null";
    assert_int_equal(write_all(files, NEW, true), OUTPUT_NOT_PLAIN);
}

static void test_changed_meanwhile(void **state) {
    (void)state;
    for (int force = 0; force < 2; force++) {
        struct output files[FILES];
        size_t at;
        start(files);
        assert_int_equal(write_all(files, OLD, false), OUTPUT_OK);
        assert_int_equal(outputs_begin(files, FILES, force, &at), OUTPUT_OK);
        for (size_t i = 0; i < FILES; i++) {
            put(files[i].name, NEW);
        }
        put(paths[2], "an edit\n");
        assert_int_equal(outputs_finish(files, FILES, &at), force ? OUTPUT_OK : OUTPUT_CHANGED);
        outputs_drop(files, FILES);
        holds(paths[0], force ? NEW : OLD);
        holds(paths[2], force ? NEW : "an edit\n");
    }
}

/* Fresh files stand where nothing did, on disks without second names too; what stands at one of
 * their paths, from the start or by the end, stays, and no other file is there. */
static void test_fresh(void **state) {
    (void)state;
    const int errors[] = {0, EPERM, EOPNOTSUPP};
    for (size_t e = 0; e < sizeof errors / sizeof *errors; e++) {
        for (int stands = 0; stands < 3; stands++) {
            struct output files[FILES];
            size_t at;
            start(files);
            link_error = errors[e];
            for (size_t i = 0; i < FILES; i++) {
                files[i].fresh = true;
                files[i].kind = OUTPUT_TEXT;
            }
            if (stands == 1) {
                put(paths[1], "");
            }
            const enum output_result begun = outputs_begin(files, FILES, stands == 1, &at);
            assert_int_equal(begun, stands == 1 ? OUTPUT_STANDS : OUTPUT_OK);
            for (size_t i = 0; begun == OUTPUT_OK && i < FILES; i++) {
                put(files[i].name, NEW);
            }
            if (stands == 2) {
                put(paths[1], "an edit\n");
            }
            if (begun == OUTPUT_OK) {
                assert_int_equal(outputs_finish(files, FILES, &at),
                                 stands == 2 ? OUTPUT_CHANGED : OUTPUT_OK);
            }
            outputs_drop(files, FILES);
            assert_int_equal(access(paths[0], F_OK), stands == 0 ? 0 : -1);
            if (stands == 2) {
                holds(paths[1], "an edit\n");
            } else if (stands != 1) {
                holds(paths[2], NEW);
            }
        }
    }
}

/* A name that comes to stand there at the last moment: no file of that name is one yet when it is
 * looked for, as a link to nowhere. */
static void test_fresh_late(void **state) {
    (void)state;
    const int errors[] = {0, EPERM};
    for (size_t e = 0; e < sizeof errors / sizeof *errors; e++) {
        struct output files[FILES];
        start(files);
        link_error = errors[e];
        for (size_t i = 0; i < FILES; i++) {
            files[i].fresh = true;
            files[i].kind = OUTPUT_TEXT;
        }
        assert_int_equal(symlink("nowhere", paths[2]), 0);
        assert_int_equal(write_all(files, NEW, false), OUTPUT_STANDS);
        assert_int_equal(access(paths[0], F_OK), -1);
        assert_int_equal(access("nowhere", F_OK), -1);
        assert_int_equal(unlink(paths[2]), 0);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_fresh),           cmocka_unit_test(test_fresh_late),
        cmocka_unit_test(test_no_second_names), cmocka_unit_test(test_modes),
        cmocka_unit_test(test_no_file),         cmocka_unit_test(test_changed_meanwhile),
        cmocka_unit_test(test_names_beside),
    };
    const int failed = cmocka_run_group_tests_name("any disk", tests, NULL, NULL);
    names_all = true;
    return failed + cmocka_run_group_tests_name("all files have names", tests, NULL, NULL);
}
