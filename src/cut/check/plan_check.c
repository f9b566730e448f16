/* SPDX-License-Identifier: MIT */
/* Counts, copies and cost. The checks of geometry are in plan_check_sheet.c. */
#include "cut/check/plan_check.h"

#include "cut/check/plan_check_sheet.h"

#include <stdlib.h>

static const char *const fault_texts[] = {
    [PLAN_GOOD] = "nothing is wrong",
    [PLAN_NO_MEMORY] = "out of memory",
    [PLAN_WRONG_INDEX] = "a stock, item, cut or part does not exist or is used twice",
    [PLAN_WRONG_COUNT] = "an item is cut less or more often than wanted",
    [PLAN_TOO_MANY] = "more of a stock is used than there is",
    [PLAN_OUTSIDE] = "a part lies outside of the trimmed stock",
    [PLAN_OVERLAP] = "two parts overlap",
    [PLAN_NO_KERF] = "there is no room for the blade between two parts",
    [PLAN_NOT_CUTTABLE] = "edge-to-edge cuts cannot free the parts",
    [PLAN_TURNED] = "a part is turned against its grain",
    [PLAN_WRONG_CUT] = "the cuts do not give the parts where they are said to be",
    [PLAN_WRONG_COST] = "the cost is not the sum of prices",
    [PLAN_WRONG_BOUND] = "the bound is not between nothing and the cost",
};

const char *plan_fault_text(enum plan_fault fault) {
    return fault_texts[fault];
}

static struct plan_finding finding(enum plan_fault fault, size_t where) {
    return (struct plan_finding){fault, where};
}

/* Pieces of each item and of each stock that a plan uses. */
struct tally {
    int64_t *items;
    int64_t *stocks;
    int64_t cost;
};

static bool tally_init(struct tally *tally, const struct cut_job *job) {
    tally->items = calloc(job->item_count + 1, sizeof *tally->items);
    tally->stocks = calloc(job->stock_count + 1, sizeof *tally->stocks);
    tally->cost = 0;
    return tally->items != NULL && tally->stocks != NULL;
}

static void tally_clear(struct tally *tally) {
    free(tally->items);
    free(tally->stocks);
}

static struct plan_finding compare_tally(const struct tally *tally, const struct cut_job *job,
                                         int64_t cost, int64_t bound) {
    for (size_t i = 0; i < job->item_count; i++) {
        if (tally->items[i] != job->items[i].demand) {
            return finding(PLAN_WRONG_COUNT, SIZE_MAX);
        }
    }
    for (size_t s = 0; s < job->stock_count; s++) {
        int64_t copies = job->stocks[s].copies;
        if (copies != CUT_UNLIMITED && tally->stocks[s] > copies) {
            return finding(PLAN_TOO_MANY, SIZE_MAX);
        }
    }
    if (tally->cost != cost) {
        return finding(PLAN_WRONG_COST, SIZE_MAX);
    }
    return finding(bound < 0 || bound > cost ? PLAN_WRONG_BOUND : PLAN_GOOD, SIZE_MAX);
}

static enum plan_fault count_sheet(const struct cut_job *job, const struct sheet_plan *plan,
                                   const struct sheet_sheet *sheet, struct tally *tally) {
    if (sheet->stock >= job->stock_count || sheet->part_count < 1 ||
        sheet->first_part > plan->part_count ||
        sheet->part_count > plan->part_count - sheet->first_part || sheet->node_count < 1 ||
        sheet->first_node > plan->node_count ||
        sheet->node_count > plan->node_count - sheet->first_node) {
        return PLAN_WRONG_INDEX;
    }
    for (size_t i = 0; i < sheet->part_count; i++) {
        const struct sheet_part *part = &plan->parts[sheet->first_part + i];
        if (part->item >= job->item_count) {
            return PLAN_WRONG_INDEX;
        }
        if (part->turned && !job->items[part->item].turn) {
            return PLAN_TURNED;
        }
        tally->items[part->item]++;
    }
    tally->stocks[sheet->stock]++;
    tally->cost += job->stocks[sheet->stock].price;
    return PLAN_GOOD;
}

struct plan_finding sheet_plan_check(const struct cut_job *job, const struct sheet_plan *plan) {
    struct tally tally;
    struct plan_finding found = finding(PLAN_NO_MEMORY, SIZE_MAX);
    if (!tally_init(&tally, job)) {
        goto done;
    }
    found = finding(PLAN_GOOD, SIZE_MAX);
    for (size_t s = 0; s < plan->sheet_count && found.fault == PLAN_GOOD; s++) {
        found = finding(count_sheet(job, plan, &plan->sheets[s], &tally), s);
        if (found.fault == PLAN_GOOD) {
            found = finding(plan_check_layout(job, plan, &plan->sheets[s]), s);
        }
    }
    if (found.fault == PLAN_GOOD) {
        found = compare_tally(&tally, job, plan->cost, plan->bound);
    }
done:
    tally_clear(&tally);
    return found;
}
