/* SPDX-License-Identifier: MIT */
/* What happened, held against the estimate: hours by heading, what was bought and used up, doors
 * made again, and what the job earned.
 *
 * A variance is what was noted less what was estimated, so above 0 costs more. That of goods has
 * two parts which add up: by price, (paid - bought x estimated price), and by amount, (used -
 * estimated use) x estimated price. Method: docs/method.md, "What happened"; the two parts as
 * bookkeeping with standard costs has them. */
#ifndef DOORCOST_LEARN_LEARNED_H
#define DOORCOST_LEARN_LEARNED_H

#include "model/actuals.h"
#include "price/estimate.h"

/* Work that was noted under one heading. Minutes are person-minutes in hundredths. */
struct learned_work {
    const char *name;
    enum actual_about about; /* ACTUAL_OPERATION, ACTUAL_SORT or ACTUAL_ALL */
    int32_t index;
    bool rest;          /* of its operations some are noted by themselves and not in it */
    struct place place; /* of its first row */
    int64_t estimated;  /* minutes of the operations that it holds */
    int64_t noted;      /* minutes */
    int64_t wages;      /* money: estimated for these */
    int64_t more;       /* money: (noted - estimated) at the estimate's own wage a minute */
};

/* Decimals of amounts of goods: as many as a cubic meter has. */
#define GOODS_DECIMALS 6

/* Goods that were noted. Amounts have GOODS_DECIMALS, in the unit that they are bought in. */
struct learned_goods {
    const char *name;
    enum name_kind kind;
    int32_t index;
    enum unit unit;
    struct place place;             /* of its first row */
    int64_t to_buy;                 /* estimated: bought */
    int64_t to_use;                 /* estimated: what the parts take, waste in it */
    int64_t from_rack;              /* estimated: of to_use, what was there; of sheets pieces */
    int64_t held;                   /* of these two, what used is held against */
    int64_t net;                    /* what ends up in the doors; 0: not told apart */
    int64_t cost;                   /* money: estimated for to_buy */
    int64_t bought;                 /* noted */
    int64_t taken, left;            /* noted */
    int64_t used;                   /* taken, or where nothing says so bought, less left */
    int64_t paid;                   /* money */
    int64_t paid_for;               /* of bought, what paid is for */
    int64_t by_price;               /* money; 0 where nothing was paid */
    int64_t by_amount;              /* money */
    int64_t waste, waste_was;       /* measured and as the rates have it, percent in hundredths */
    int64_t transfer, transfer_was; /* transfer efficiency likewise; 0: not told */
    const struct spray *way;        /* of which it is; of the rates */
    const char *waste_lacks;        /* why what was used tells no waste; NULL: it does, or cannot */
    const char *transfer_lacks;     /* no transfer efficiency, likewise. Static. */
    bool has_bought, has_paid, has_taken, has_used, has_waste;
};

struct learned {
    struct learned_work *work;
    size_t work_count;
    struct learned_goods *goods;
    size_t goods_count;
    int64_t unnoted; /* person-minutes, hundredths, of operations that no heading holds */
    int64_t remade;  /* doors made again */
    int64_t doors;   /* of the job */
    bool has_remade;
    int64_t more_work, by_price, by_amount; /* money: sums of the above */
    int64_t income;                         /* money: the price before tax */
    int64_t profit_was, profit;             /* money: as estimated; as it came out */
    uint8_t money_decimals;
};

/* Holds the rows against the estimate, which has its purchase. What the rows say twice, and what is
 * far off, is asked about in problems. Memory of pool. false: out of memory. */
bool learned_make(struct learned *learned, const struct estimate *estimate,
                  const struct actuals *actuals, struct problems *problems, struct pool *pool)
    __attribute__((warn_unused_result));

/* The heading that an operation's hours are noted under; NULL: none. rates: those of the estimate.
 */
const struct learned_work *learned_heading(const struct learned *learned, const struct rates *rates,
                                           int32_t operation);

#endif
