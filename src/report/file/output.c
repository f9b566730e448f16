/* SPDX-License-Identifier: MIT */
#define _GNU_SOURCE /* renameat2, O_TMPFILE. NOLINT(bugprone-reserved-identifier,cert-*) */
#include "report/file/output.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* How the name of a file goes on that is made beside its path, and where the system shows the open
 * files of the program that asks; NAME_ROOM: for either, and for the end. */
#define BESIDE    ".XXXXXX"
#define OWN_FILES "/proc/self/fd/"
#define NAME_ROOM (sizeof OWN_FILES + 12)

/* Whether the folder is there that a file of that path goes into. */
static enum output_result has_folder(const char *path) {
    const char *const slash = strrchr(path, '/');
    char *const folder = strdup(path);
    if (folder == NULL) {
        return OUTPUT_MEMORY;
    }
    folder[slash == NULL ? 0 : slash - path + 1] = '\0';
    const bool there = slash == NULL || access(folder, F_OK) == 0;
    free(folder);
    return there ? OUTPUT_OK : OUTPUT_NO_FOLDER;
}

/* Whether what stands at path may be replaced. `about`: of what stands there, *stood: something
 * does.
 */
static enum output_result judge(const char *path, enum output_kind kind, struct stat *about,
                                bool *stood) {
    *stood = stat(path, about) == 0;
    const size_t size = strlen(path);
    if ((*stood && S_ISDIR(about->st_mode)) || (size > 0 && path[size - 1] == '/')) {
        return OUTPUT_FOLDER;
    }
    if (!*stood) {
        return errno != ENOENT ? OUTPUT_CANNOT_WRITE : has_folder(path);
    }
    if (!S_ISREG(about->st_mode)) {
        return OUTPUT_NOT_PLAIN;
    }
    FILE *const file = fopen(path, "rb");
    if (file == NULL) {
        return OUTPUT_UNREADABLE;
    }
    const bool ours = about->st_size == 0 || (seal_has(kind) && seal_is_whole(file, kind));
    (void)fclose(file);
    if (!ours) {
        return seal_has(kind) ? OUTPUT_NOT_OURS : OUTPUT_SEALLESS;
    }
    /* for root every file is writable: the mode says what its owner meant */
    const bool writable = (about->st_mode & 0222) != 0 && access(path, W_OK) == 0;
    return writable ? OUTPUT_OK : OUTPUT_READ_ONLY;
}

bool output_is_ours(const char *path, enum output_kind kind) {
    struct stat about;
    bool stood;
    return judge(path, kind, &about, &stood) == OUTPUT_OK;
}

/* --- beginning --- */

/* As the file that it replaces, or as a new file of this user: it was made for the owner alone. */
static void set_mode(const struct output *output, int file) {
    const mode_t mask = umask(0);
    (void)umask(mask);
    (void)fchmod(file, output->stood ? output->about.st_mode & 0777 : 0666 & ~mask);
}

/* An empty file with a name of its own beside the path; its handle, or -1: errno tells. */
static int make_named(char *name, const char *path, size_t size) {
    (void)snprintf(name, size, "%s" BESIDE, path);
    return mkstemp(name);
}

/* A file in the folder of the path that has no name yet; its handle, or -1: disks that can't. */
static int make_nameless(char *name, const char *path, size_t size) {
    const char *const slash = strrchr(path, '/');
    const int folder = slash == NULL ? 1 : (int)(slash - path) + 1;
    (void)snprintf(name, size, "%.*s", folder, slash == NULL ? "." : path);
    const int file = open(name, O_TMPFILE | O_RDWR | O_CLOEXEC, 0600);
    (void)snprintf(name, size, OWN_FILES "%d", file);
    if (file >= 0 && access(name, R_OK | W_OK) != 0) {
        (void)close(file);
        return -1;
    }
    return file;
}

/* An empty file for the output, in the folder of its path. Without a name, where the disk can: then
 * nothing is left of it even when the program is killed. */
static enum output_result make_beside(struct output *output) {
    const size_t size = strlen(output->path) + NAME_ROOM;
    output->name = malloc(size);
    if (output->name == NULL) {
        return OUTPUT_MEMORY;
    }
    int file = make_nameless(output->name, output->path, size);
    output->nameless = file >= 0;
    if (!output->nameless) {
        file = make_named(output->name, output->path, size);
    }
    if (file < 0) {
        free(output->name);
        output->name = NULL;
        return OUTPUT_CANNOT_WRITE;
    }
    set_mode(output, file);
    output->handle = file; /* keeps alive what has no name */
    return output->nameless || close(file) == 0 ? OUTPUT_OK : OUTPUT_CANNOT_WRITE;
}

/* Gives a file without a name one beside the path, to be renamed from; false: errno tells. */
static bool give_name(struct output *output) {
    char from[sizeof OWN_FILES + 12];
    if (!output->nameless) {
        return true;
    }
    (void)snprintf(from, sizeof from, OWN_FILES "%d", output->handle);
    do {
        /* a name that is free; where another takes it in between, the next */
        const int taken = make_named(output->name, output->path, strlen(output->path) + NAME_ROOM);
        if (taken < 0) {
            return false;
        }
        (void)close(taken);
        (void)unlink(output->name);
        output->nameless = linkat(AT_FDCWD, from, AT_FDCWD, output->name, AT_SYMLINK_FOLLOW) != 0;
    } while (output->nameless && errno == EEXIST);
    return !output->nameless && close(output->handle) == 0;
}

enum output_result outputs_free(struct output *outputs, size_t count, bool force, size_t *at) {
    for (*at = 0; *at < count; (*at)++) {
        struct output *const output = &outputs[*at];
        const enum output_result found =
            judge(output->path, output->kind, &output->about, &output->stood);
        if (output->fresh && output->stood) {
            return found == OUTPUT_FOLDER ? found : OUTPUT_STANDS;
        }
        const bool forced = force && (found == OUTPUT_NOT_OURS || found == OUTPUT_SEALLESS ||
                                      found == OUTPUT_UNREADABLE || found == OUTPUT_READ_ONLY);
        output->forced = force;
        if (found != OUTPUT_OK && !forced) {
            return found;
        }
    }
    return OUTPUT_OK;
}

enum output_result outputs_begin(struct output *outputs, size_t count, bool force, size_t *at) {
    const enum output_result found = outputs_free(outputs, count, force, at);
    if (found != OUTPUT_OK) {
        return found;
    }
    if (count > 0) {
        hold_begin(&outputs[0].hold);
    }
    for (*at = 0; *at < count; (*at)++) {
        const enum output_result made = make_beside(&outputs[*at]);
        if (made != OUTPUT_OK) {
            return made;
        }
    }
    return OUTPUT_OK;
}

/* --- finishing --- */

/* Whether at the path stands what stood there when the run began. */
static bool is_as_it_was(const struct output *output) {
    struct stat now;
    if (stat(output->path, &now) != 0) {
        return true; /* taken away, or never there: nothing is lost */
    }
    return output->stood && now.st_dev == output->about.st_dev &&
           now.st_ino == output->about.st_ino && now.st_size == output->about.st_size &&
           now.st_mtim.tv_sec == output->about.st_mtim.tv_sec &&
           now.st_mtim.tv_nsec == output->about.st_mtim.tv_nsec;
}

/* Copies a file to a new one of its own mode; false: errno tells. */
static bool copy_file(const char *from, const char *to, mode_t mode) {
    char bytes[1 << 14];
    FILE *const in = fopen(from, "rb");
    const int handle = in == NULL ? -1 : open(to, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    FILE *const out = handle < 0 ? NULL : fdopen(handle, "wb");
    bool done = out != NULL;
    for (size_t got = 1; done && got > 0;) {
        got = fread(bytes, 1, sizeof bytes, in);
        done = fwrite(bytes, 1, got, out) == got && ferror(in) == 0;
    }
    done = done && fflush(out) == 0 && fchmod(handle, mode & 0777) == 0 && fsync(handle) == 0;
    const int error = errno;
    if (out != NULL) {
        done = fclose(out) == 0 && done;
    } else if (handle >= 0) {
        (void)close(handle);
    }
    if (in != NULL) {
        (void)fclose(in);
    }
    if (!done && handle >= 0) {
        (void)unlink(to);
    }
    errno = error;
    return done;
}

/* A second name for what stands at the path, to go back to; a copy where the disk knows no second
 * names. Where nothing stands there is none. */
static enum output_result keep(struct output *output) {
    static const char ending[] = ".old";
    const size_t size = strlen(output->name) + sizeof ending;
    char *const kept = malloc(size);
    if (kept == NULL) {
        return OUTPUT_MEMORY;
    }
    (void)snprintf(kept, size, "%s%s", output->name, ending);
    if (link(output->path, kept) == 0 ||
        (errno != ENOENT && copy_file(output->path, kept, output->about.st_mode))) {
        output->kept = kept;
        return OUTPUT_OK;
    }
    free(kept);
    return errno == ENOENT ? OUTPUT_OK : OUTPUT_CANNOT_WRITE;
}

/* Takes back the first `count` renames. */
static void go_back(const struct output *outputs, size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (outputs[i].kept != NULL) {
            (void)rename(outputs[i].kept, outputs[i].path);
        } else {
            (void)unlink(outputs[i].path);
        }
    }
}

static void forget(struct output *outputs, size_t count, bool with_work) {
    for (size_t i = 0; i < count; i++) {
        if (outputs[i].kept != NULL) {
            (void)unlink(outputs[i].kept);
        }
        if (outputs[i].nameless) {
            (void)close(outputs[i].handle);
            outputs[i].nameless = false;
        } else if (with_work && outputs[i].name != NULL) {
            (void)unlink(outputs[i].name);
        }
        free(outputs[i].kept);
        free(outputs[i].name);
        outputs[i].kept = NULL;
        outputs[i].name = NULL;
    }
    if (count > 0) {
        hold_end(&outputs[0].hold);
    }
}

bool outputs_stopped(const struct output *outputs) {
    return hold_asked(&outputs[0].hold);
}

static bool stop_is_asked(const void *outputs) {
    return outputs_stopped(outputs);
}

struct stop outputs_stop(const struct output *outputs) {
    return (struct stop){.asked = stop_is_asked, .of = outputs};
}

static bool stopped(const struct output *outputs, size_t count) {
    return count > 0 && outputs_stopped(outputs);
}

/* Gives the file its name: over what stands there, or, of a fresh one, only where nothing does. */
static bool put_in_place(const struct output *output) {
    if (!output->fresh) {
        return rename(output->name, output->path) == 0;
    }
    if (link(output->name, output->path) == 0) {
        (void)unlink(output->name);
        return true;
    }
    /* a disk that knows no second names */
    return errno != EEXIST &&
           renameat2(AT_FDCWD, output->name, AT_FDCWD, output->path, RENAME_NOREPLACE) == 0;
}

enum output_result outputs_finish(struct output *outputs, size_t count, size_t *at) {
    for (*at = 0; *at < count; (*at)++) {
        if (stopped(outputs, count)) {
            return OUTPUT_STOPPED; /* the files may be empty then */
        }
        if (!seal_set(outputs[*at].name, outputs[*at].kind)) {
            return OUTPUT_CANNOT_WRITE;
        }
        if (!outputs[*at].forced && !is_as_it_was(&outputs[*at])) {
            return OUTPUT_CHANGED;
        }
        if (!give_name(&outputs[*at])) {
            return OUTPUT_CANNOT_WRITE;
        }
        const enum output_result kept = count > 1 ? keep(&outputs[*at]) : OUTPUT_OK;
        if (kept != OUTPUT_OK) {
            return kept;
        }
    }
    *at = 0;
    if (stopped(outputs, count)) {
        return OUTPUT_STOPPED;
    }
    for (; *at < count; (*at)++) {
        if (!put_in_place(&outputs[*at])) {
            const int error = errno;
            go_back(outputs, *at);
            errno = error;
            return error == EEXIST ? OUTPUT_STANDS : OUTPUT_CANNOT_WRITE;
        }
    }
    forget(outputs, count, false);
    return OUTPUT_OK;
}

void outputs_drop(struct output *outputs, size_t count) {
    const int error = errno;
    forget(outputs, count, true);
    errno = error;
}
