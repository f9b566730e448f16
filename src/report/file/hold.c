/* SPDX-License-Identifier: MIT */
#include "report/file/hold.h"

#include <stddef.h>

static const int asking[] = {SIGHUP, SIGINT, SIGTERM};
#define ASKING (sizeof asking / sizeof *asking)

void hold_begin(struct hold *hold) {
    sigset_t set;
    if (hold->held) {
        return;
    }
    (void)sigemptyset(&set);
    for (size_t i = 0; i < ASKING; i++) {
        (void)sigaddset(&set, asking[i]);
    }
    hold->held = sigprocmask(SIG_BLOCK, &set, &hold->before) == 0;
}

/* A signal that is ignored may be pending all the same while it is held. */
static bool ends_us(int signal) {
    struct sigaction action;
    return sigaction(signal, NULL, &action) == 0 && action.sa_handler != SIG_IGN;
}

bool hold_asked(const struct hold *hold) {
    sigset_t waiting;
    if (!hold->held || sigpending(&waiting) != 0) {
        return false;
    }
    for (size_t i = 0; i < ASKING; i++) {
        if (sigismember(&waiting, asking[i]) == 1 && ends_us(asking[i])) {
            return true;
        }
    }
    return false;
}

void hold_end(struct hold *hold) {
    if (hold->held) {
        hold->held = false;
        (void)sigprocmask(SIG_SETMASK, &hold->before, NULL);
    }
}
