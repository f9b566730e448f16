/* SPDX-License-Identifier: MIT */
/* The work knows nothing of it: a clock of its own wakes each second and writes the line.  It takes
 * no signals, which are for the work to ask for (report/file/hold.h). */
#include "command/progress.h"

#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

static bool takes_lines_back(FILE *err) {
    const char *const terminal = getenv("TERM");
    return isatty(fileno(err)) == 1 && terminal != NULL && strcmp(terminal, "dumb") != 0;
}

static int tick(void *argument) {
    struct progress *const p = argument;
    struct timespec next;
    int seconds = 0;
    (void)timespec_get(&next, TIME_UTC);
    (void)mtx_lock(&p->lock);
    while (!p->done) {
        next.tv_sec++;
        int woken = thrd_success;
        while (!p->done && woken == thrd_success) { /* may wake for no reason */
            woken = cnd_timedwait(&p->changed, &p->lock, &next);
        }
        if (!p->done) {
            seconds++;
            (void)fprintf(p->err, "\r\033[Kdoorcost: %s, %d s", p->what, seconds);
            (void)fflush(p->err);
        }
    }
    if (seconds > 0) {
        (void)fputs("\r\033[K", p->err);
        (void)fflush(p->err);
    }
    (void)mtx_unlock(&p->lock);
    return 0;
}

void progress_begin(struct progress *p, FILE *err, const char *what) {
    *p = (struct progress){.err = err, .what = what};
    if (!takes_lines_back(err) || mtx_init(&p->lock, mtx_plain) != thrd_success) {
        return;
    }
    if (cnd_init(&p->changed) != thrd_success) {
        mtx_destroy(&p->lock);
        return;
    }
    sigset_t all;
    sigset_t before;
    (void)sigfillset(&all);
    (void)pthread_sigmask(SIG_SETMASK, &all, &before); /* the clock keeps the mask it begins with */
    p->runs = thrd_create(&p->clock, tick, p) == thrd_success;
    (void)pthread_sigmask(SIG_SETMASK, &before, NULL);
    if (!p->runs) {
        cnd_destroy(&p->changed);
        mtx_destroy(&p->lock);
    }
}

void progress_end(struct progress *p) {
    if (!p->runs) {
        return;
    }
    (void)mtx_lock(&p->lock);
    p->done = true;
    (void)cnd_signal(&p->changed);
    (void)mtx_unlock(&p->lock);
    (void)thrd_join(p->clock, NULL);
    cnd_destroy(&p->changed);
    mtx_destroy(&p->lock);
    p->runs = false;
}
