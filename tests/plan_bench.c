/* SPDX-License-Identifier: MIT */
/* Solves every instance of a folder through the planners, has the checker look at each plan, and
 * sums up: plan_bench FOLDER [SECONDS [PREFIX]]. Run by plan-bench.sh. Status 0: all plans good;
 * 1: one is not, lies below a listed bound or above its bar; 2: something could not be read. */
#include "cut_file.h"
#include "strip_check.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define PATH_BYTES 1024
/* Bars are for plans of at least this effort: 0.05 seconds. */
#define BAR_EFFORT (CUT_EFFORT_SECOND / 20)

/* One instance solved. */
struct result {
    char name[64];
    int rotation; /* -1: 1-D */
    int64_t value, bound;
    double seconds;
    const struct cut_known *known;
};

struct bench {
    const char *folder, *prefix;
    int64_t effort;
    struct cut_known_list known;
    size_t count, room;
    struct result *results;
    bool bad;
};

static double now(void) {
    struct timespec time;
    (void)clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return (double)time.tv_sec + 1e-9 * (double)time.tv_nsec;
}

static enum plan_fault solve_strips(const struct cut_job *job, int64_t effort,
                                    struct result *result, enum cut_status *status) {
    struct strip_plan *plan = NULL;
    enum plan_fault fault = PLAN_GOOD;
    *status = strip_plan_make(job, effort, &plan);
    if (*status == CUT_DONE) {
        fault = strip_check(job, plan);
        result->value = plan->cost;
        result->bound = plan->bound;
    }
    strip_plan_free(plan);
    return fault;
}

static enum plan_fault solve_sheets(const struct cut_job *job, int64_t effort,
                                    struct result *result, enum cut_status *status) {
    struct sheet_plan *plan = NULL;
    enum plan_fault fault = PLAN_GOOD;
    *status = sheet_plan_make(job, (struct offcut_rule){0}, effort, &plan);
    if (*status == CUT_DONE) {
        fault = sheet_plan_check(job, plan).fault;
        result->value = plan->cost;
        result->bound = plan->bound;
    }
    sheet_plan_free(plan);
    return fault;
}

/* Says what is wrong with a result, if anything. */
static void judge(struct bench *bench, const struct result *result, enum cut_status status,
                  enum plan_fault fault) {
    const struct cut_known *known = result->known;
    const char *wrong = NULL;
    if (status != CUT_DONE) {
        wrong = "no plan";
    } else if (fault != PLAN_GOOD) {
        wrong = plan_fault_text(fault);
    } else if (known != NULL && result->value < known->lower_bound) {
        wrong = "the plan lies below the listed bound";
    } else if (known != NULL && result->bound > known->best_known) {
        wrong = "the bound lies above the best known plan";
    } else if (known != NULL && bench->effort >= BAR_EFFORT && known->bar > 0 &&
               result->value > known->bar) {
        wrong = "the plan lies above its bar";
    } else if (known != NULL && bench->effort >= BAR_EFFORT && result->bound < known->bound_bar) {
        wrong = "the bound lies below its bar";
    }
    if (wrong != NULL) {
        (void)fprintf(stderr, "%s: %s\n", result->name, wrong);
        bench->bad = true;
    }
}

/* Room for one more result, with its name; NULL: out of memory. */
static struct result *next_result(struct bench *bench, const char *name, int rotation) {
    if (bench->count == bench->room) {
        size_t room = 2 * bench->room + 64;
        struct result *results = realloc(bench->results, room * sizeof *results);
        if (results == NULL) {
            return NULL;
        }
        bench->results = results;
        bench->room = room;
    }
    struct result *result = &bench->results[bench->count];
    *result = (struct result){.rotation = rotation};
    (void)snprintf(result->name, sizeof result->name, "%.*s", (int)strcspn(name, "."), name);
    result->known = cut_known_find(&bench->known, result->name, rotation);
    return result;
}

static bool run_one(struct bench *bench, const char *name, int rotation) {
    char path[PATH_BYTES];
    struct cut_file file;
    int line = 0;
    bool flat = rotation < 0;
    struct result *result = next_result(bench, name, rotation);
    (void)snprintf(path, sizeof path, "%s/%s/%s", bench->folder, flat ? "1d" : "2d", name);
    if (result == NULL || !cut_file_read(&file, path, flat, rotation == 1, &line)) {
        (void)fprintf(stderr, "%s:%d: cannot be read as an instance\n", path, line);
        return false;
    }
    enum cut_status status = CUT_DONE;
    double start = now();
    enum plan_fault fault = flat ? solve_strips(&file.job, bench->effort, result, &status)
                                 : solve_sheets(&file.job, bench->effort, result, &status);
    result->seconds = now() - start;
    judge(bench, result, status, fault);
    (void)printf("%s,%s,%lld,%lld,%.3f\n", result->name, flat ? "" : (rotation ? "1" : "0"),
                 (long long)result->value, (long long)result->bound, result->seconds);
    (void)fflush(stdout);
    bench->count++;
    cut_file_clear(&file);
    return true;
}

static int is_instance(const struct dirent *entry) {
    size_t length = strlen(entry->d_name);
    return length > 4 && strcmp(entry->d_name + length - 4, ".txt") == 0;
}

/* All instances of 1d or 2d, in the order of their names. */
static bool run_folder(struct bench *bench, bool flat) {
    char path[PATH_BYTES];
    struct dirent **names = NULL;
    bool ok = true;
    (void)snprintf(path, sizeof path, "%s/%s", bench->folder, flat ? "1d" : "2d");
    int count = scandir(path, &names, is_instance, alphasort);
    for (int i = 0; i < count; i++) {
        bool wanted = strncmp(names[i]->d_name, bench->prefix, strlen(bench->prefix)) == 0;
        for (int rotation = flat ? -1 : 0; ok && wanted && rotation <= (flat ? -1 : 1);
             rotation++) {
            ok = run_one(bench, names[i]->d_name, rotation);
        }
        free(names[i]);
    }
    free(names);
    return ok;
}

struct summary {
    int64_t runs, value, bound, met, listed, known, under, equal, over;
    double seconds, slowest, gap;
};

static void add_up(struct summary *sum, const struct result *result) {
    sum->runs++;
    sum->value += result->value;
    sum->bound += result->bound;
    sum->met += result->value == result->bound;
    sum->seconds += result->seconds;
    sum->slowest = result->seconds > sum->slowest ? result->seconds : sum->slowest;
    sum->gap +=
        result->bound > 0 ? (double)(result->value - result->bound) / (double)result->bound : 0.0;
    if (result->known != NULL) {
        sum->listed++;
        sum->known += result->known->best_known;
        sum->under += result->value < result->known->best_known;
        sum->equal += result->value == result->known->best_known;
        sum->over += result->value > result->known->best_known;
    }
}

static bool same_set(const struct result *a, const struct result *b) {
    size_t length = strcspn(a->name, "_");
    return a->rotation == b->rotation && length == strcspn(b->name, "_") &&
           strncmp(a->name, b->name, length) == 0;
}

/* One line a set and rotation; sets are what stands before the first underscore. */
static void print_sets(const struct bench *bench) {
    (void)printf("\nset,rotation,instances,value,bound,proven,mean gap %%,listed,best known,under,"
                 "equal,over,seconds,slowest\n");
    for (size_t i = 0; i < bench->count; i++) {
        const struct result *first = &bench->results[i];
        bool seen = false;
        for (size_t j = 0; j < i && !seen; j++) {
            seen = same_set(&bench->results[j], first);
        }
        struct summary sum = {0};
        for (size_t j = i; j < bench->count && !seen; j++) {
            if (same_set(&bench->results[j], first)) {
                add_up(&sum, &bench->results[j]);
            }
        }
        if (!seen) {
            (void)printf("%.*s,%s,%lld,%lld,%lld,%lld,%.3f,%lld,%lld,%lld,%lld,%lld,%.1f,%.2f\n",
                         (int)strcspn(first->name, "_"), first->name,
                         first->rotation < 0 ? "" : (first->rotation ? "1" : "0"),
                         (long long)sum.runs, (long long)sum.value, (long long)sum.bound,
                         (long long)sum.met, 100.0 * sum.gap / (double)sum.runs,
                         (long long)sum.listed, (long long)sum.known, (long long)sum.under,
                         (long long)sum.equal, (long long)sum.over, sum.seconds, sum.slowest);
        }
    }
}

int main(int argc, char **argv) {
    if (argc < 2 || argc > 4) {
        (void)fprintf(stderr, "usage: plan_bench FOLDER [SECONDS [PREFIX]]\n");
        return 2;
    }
    double seconds = argc > 2 ? strtod(argv[2], NULL) : 1.0;
    struct bench bench = {.folder = argv[1],
                          .prefix = argc > 3 ? argv[3] : "",
                          .effort = (int64_t)(seconds * (double)CUT_EFFORT_SECOND)};
    bool ok = cut_known_read(&bench.known, bench.folder);
    (void)printf("instance,rotation,value,bound,seconds\n");
    ok = ok && run_folder(&bench, true) && run_folder(&bench, false) && bench.count > 0;
    if (ok) {
        print_sets(&bench);
    } else {
        (void)fprintf(stderr, "plan_bench: %s: not all could be read\n", bench.folder);
    }
    cut_known_clear(&bench.known);
    free(bench.results);
    if (!ok || fflush(stdout) != 0) {
        return 2;
    }
    return bench.bad ? 1 : 0;
}
