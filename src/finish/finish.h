/* SPDX-License-Identifier: MIT */
/* The finish of a job: from sprayed area to coating, reducer and catalyst, and the containers to
 * buy.
 *
 * A batch is all that is sprayed in one finish and one color.  Each of its coats needs film, loses
 * some of it on the way, and leaves a fixed loss in pot and hose for every mix.  What all batches
 * need of a product is bought together (a tinted product by color).  Method: docs/method.md,
 * "Finish". */
#ifndef DOORCOST_FINISH_FINISH_H
#define DOORCOST_FINISH_FINISH_H

#include "door/quantity.h"
#include "finish/containers.h"

/* One product to buy: a coating (by color where it is tinted), a reducer or a catalyst. */
struct product {
    const char *name;
    const char *color; /* NULL: not tinted */
    const char *title; /* both: `topcoat, lamp white` */
    int32_t coating;   /* index into rates.coatings, or -1 */
    int32_t additive;  /* index into rates.additives, or -1 */
    const struct steps *sizes;
    uint32_t subject;                 /* of the tape */
    fig used;                         /* volume that the coats and the cleaning take */
    fig reserve, touch_up;            /* volume bought beyond it; none: none is asked for */
    fig need;                         /* volume: used, reserve and touch-up */
    fig from_rack;                    /* volume of it that is on the rack; none: nothing is there */
    fig to_buy;                       /* volume: need less that */
    fig need_high, need_low;          /* the same at the highest and the lowest transfer efficiency;
                                         none where the rates give it no range */
    fig counts[MOST_CONTAINER_SIZES]; /* containers of each size */
    fig volumes[MOST_CONTAINER_SIZES], prices[MOST_CONTAINER_SIZES];
    size_t size_count;
    fig bought;    /* volume */
    fig left_over; /* volume */
    fig left_low;  /* volume: bought - need_low, below 0 where the containers would not hold it */
    fig cost;      /* money for what is bought */
    fig charged;   /* money that the job pays */
};

/* One line of a finish for one batch. */
struct coat_figures {
    int32_t coating;
    const struct spray *way;   /* how it is put on; of the rates */
    fig times;                 /* coats */
    fig film;                  /* wet, mil or um; none where the file gives only a coverage */
    fig dry_film;              /* of all these coats, mil or um; none without film or solids */
    fig theoretical;           /* volume, one coat, nothing lost */
    fig sprayed;               /* volume of mix that leaves the gun, all coats */
    fig all_sprayed, all_area; /* the same of all colors of the finish, and their area, where they
                                  are mixed together; else none */
    fig mixes;                 /* count */
    fig mix;                   /* volume mixed, with the fixed loss of each mix */
    fig coating_volume, reducer, catalyst; /* parts of the mix */
    fig cleaning;                          /* volume of what all mixes are washed off with; none */
    size_t product, reducer_product, catalyst_product, cleaning_product; /* into products; SIZE_MAX:
                                                                            none */
    fig cost; /* money charged for this line */
};

struct batch {
    int32_t finish;    /* index into rates.finishes */
    uint32_t subject;  /* of the tape */
    const char *color; /* NULL: none named */
    struct coat_figures *coats;
    size_t coat_count;
    size_t first_row, row_count; /* among the rows of the list */
    bool several;                /* its finish has other colors too */
    fig area;                    /* sprayed, of the job */
    fig dry_film;                /* of the whole finish */
    fig dry_hours;               /* drying, all coats one after another */
    fig cost;                    /* money charged for the batch */
};

struct finish_list {
    struct batch *batches;
    size_t batch_count;
    struct product *products;
    size_t product_count;
    size_t *batch_of; /* the batch of each row, SIZE_MAX: left bare */
    size_t *rows;     /* those that are not, a batch after another */
};

/* The least need, at 4 decimals as needs are kept, for which the same containers are chosen of the
 * same sizes at the same prices; 0 where all is on the rack. The most is what is bought. */
int64_t product_holds_from(const struct tape *tape, const struct product *product);

/* Puts the finish of the job on the tape: batches in the order of their first rows, products in the
 * order in which the coats ask for them. Memory of calc's pool. false: out of memory. */
bool finish_make(struct finish_list *list, const struct calc *calc)
    __attribute__((warn_unused_result));

#endif
