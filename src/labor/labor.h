/* SPDX-License-Identifier: MIT */
/* The labor model: machine minutes, person-minutes and money of every operation, shared among the
 * doors.
 *
 * Machine minutes of an operation = set-ups x set-up + sum over doors of count x minutes x passes.
 * Person-minutes = machine minutes x hands, with the allowance for rest and delay.  Money =
 * person-minutes x labor rate / 60, and machine minutes x machine rate / 60. A door's share goes by
 * its run minutes; of what the job calls for as a whole, by doors, lumber or sheet area. Method:
 * docs/method.md, "Labor". */
#ifndef DOORCOST_LABOR_LABOR_H
#define DOORCOST_LABOR_LABOR_H

#include "door/quantity.h"
#include "finish/finish.h"
#include "stock/lumber.h"
#include "stock/sheet.h"

/* What one operation takes of one row, a leaf; none where it does nothing. */
struct operation_share {
    fig count;  /* of the driver */
    fig run;    /* machine minutes without set-up */
    fig person; /* person-minutes, set-ups and allowance included */
    fig cost;   /* money, labor and machine */
};

struct operation_figures {
    int32_t operation;              /* index into rates.operations */
    int32_t charge;                 /* that pays it, as charge_at has it; -1: the doors do */
    struct operation_share *shares; /* one a row */
    fig job_count;                  /* of a driver that the job has as a whole; else none */
    fig run;                        /* machine minutes without set-ups, the job */
    fig setups, setup_minutes;      /* none without a set-up */
    const int64_t *setup_at; /* what each set-up is for, the largest first: nm of thickness, width
                                or length; NULL where it is no length */
    size_t setup_at_count;
    fig machine_minutes;
    fig person_minutes;
    fig labor;   /* money */
    fig machine; /* money; none for handwork */
    fig cost;    /* both */
    bool wide;   /* a leaf is wider than the machine takes: its passes count twice */
};

struct machine_figures {
    int32_t machine; /* index into rates.machines; -1: handwork */
    fig minutes, hours, cost;
};

struct labor {
    struct operation_figures
        *operations; /* those that do something, in the order of the rates file */
    size_t operation_count;
    struct machine_figures *machines;
    size_t machine_count;
    fig *leaf_minutes;              /* person-minutes of a leaf that the doors pay, one a row */
    fig *leaf_bench_minutes;        /* of these, at the bench */
    fig *leaf_cost;                 /* money of a leaf, labor and machine */
    fig person_minutes;             /* the job */
    fig hours;                      /* person-hours */
    fig bench_minutes, bench_hours; /* of these, at the bench: but for operations off it */
    fig door_minutes;               /* person-minutes that the doors pay: all but what charges do */
    fig door_bench_minutes;         /* of these, at the bench */
    fig labor, machine;             /* money that the doors pay */
    fig minutes_a_door;             /* person-minutes by doors and fronts in all */
    fig making;                     /* of these: operations that styles list; none without any */
    fig finishing;                  /* that finishes list; none */
    fig general_minutes;            /* that the shop, the job, a row or a charge names; none */
    fig work_days;                  /* hours at the bench by the shop's hours a day, one person */
    fig dry_hours;                  /* of the slowest batch; none without a finish */
};

/* What the work goes by beside the doors. */
struct labor_inputs {
    const struct lumber_list *lumber;
    const struct sheet_list *sheets;
    const struct finish_list *finish;
};

/* Puts the labor of the job on the tape, the operations in the order of the rates file.  A door
 * that a machine can't take in one pass goes in two where its side is open; one that is wider than
 * that is a warning of calc's problems.  Memory of calc's pool.  false: out of memory. */
bool labor_make(struct labor *labor, const struct calc *calc, const struct labor_inputs *inputs)
    __attribute__((warn_unused_result));

#endif
