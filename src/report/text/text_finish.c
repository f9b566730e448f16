/* SPDX-License-Identifier: MIT */
/* What finish to buy, and the chain of numbers that leads there: area, film, losses, mix, parts,
 * containers. */
#include "report/text/print.h"
#include "report/text/reason.h"
#include "report/words/show.h"

static const struct grid_column chain_columns[] = {
    {NULL, GRID_LEFT, true}, {NULL, GRID_LEFT, false}, {NULL, GRID_RIGHT, false}};

static const char *part_words(const struct choice *of) {
    return of->choice == PART_OF_MIX ? "of the mix" : "of the coating";
}

/* What the file says of a coating and its spraying, in a sentence. */
static void say_coating(struct page *page, const struct estimate *e,
                        const struct coat_figures *coat) {
    const struct coating *const c = &e->rates->coatings[coat->coating];
    const struct spray *const s = coat->way;
    const bool practical = c->spread_by.choice == SPREAD_BY_PRACTICAL;
    struct pool pool;
    pool_init(&pool);
    const char *text = pool_format(&pool, "%s coat%s", show(e, coat->times).text,
                                   tape_scaled(&e->tape, coat->times, 0) == 1 ? "" : "s");
    const struct {
        bool told;
        const char *before;
        struct shown value;
        const char *after;
    } facts[] = {
        {!fig_none(coat->film), " of ", show_unit(e, coat->film), " wet"},
        {c->spread_by.choice != SPREAD_BY_FILM, ", ", show_value(&c->coverage, e->job->unit),
         practical ? " in practice, losses in it" : " in theory"},
        {!practical, s->by_hand ? "; of what is put on by hand " : "; of what is sprayed ",
         show_value(&s->transfer, e->job->unit), " lands on the parts"},
        {!practical && s->other_loss.set, ", another ", show_value(&s->other_loss, e->job->unit),
         " is lost"},
        {s->fixed_loss.set, "; each mix leaves ", show_value(&s->fixed_loss, e->job->unit),
         " in pot and hose"},
        {s->cleaning.set, "; each mix takes ", show_value(&s->cleaning, e->job->unit),
         " to wash up"},
        {s->mix_size.set, ", mixed at once at most ", show_value(&s->mix_size, e->job->unit), ""},
        {c->reducer.set, "; reducer ", show_value(&c->reducer, e->job->unit), ""},
        {c->reducer.set, " ", {""}, part_words(&c->reducer_of)},
        {c->catalyst.set, "; catalyst ", show_value(&c->catalyst, e->job->unit), ""},
        {c->catalyst.set, " ", {""}, part_words(&c->catalyst_of)},
        {c->solids.set, "; solids ", show_value(&c->solids, e->job->unit), " by volume"},
        {c->pot_life.set, "; a mix keeps ", show_value(&c->pot_life, e->job->unit), ""},
        {c->reserve.set, "; reserve ", show_value(&c->reserve, e->job->unit), ""},
        {c->touch_up.set, "; for touch-up ", show_value(&c->touch_up, e->job->unit), " a color"},
        {c->dry.set, "; a coat dries ", show_value(&c->dry, e->job->unit), ""},
    };
    for (size_t i = 0; i < sizeof facts / sizeof *facts && text != NULL; i++) {
        if (facts[i].told) {
            text = pool_format(&pool, "%s%s%s%s", text, facts[i].before, facts[i].value.text,
                               facts[i].after);
        }
    }
    page->failed = page->failed || text == NULL;
    if (text != NULL) {
        const char *const first = pool_format(&pool, "  %s:", c->name.s);
        say_wrapped(page, first == NULL ? "" : first, 4, " %s", text);
    }
    pool_clear(&pool);
}

static void print_coat(struct page *page, const struct estimate *e, const struct batch *batch,
                       const struct coat_figures *coat) {
    const fig ends[] = {coat->theoretical,    coat->sprayed,  coat->all_sprayed, coat->all_area,
                        coat->mixes,          coat->mix,      coat->reducer,     coat->catalyst,
                        coat->coating_volume, coat->cleaning, coat->dry_film};
    struct grid grid;
    say(page, "%s", "");
    say_coating(page, e, coat);
    grid_init(&grid, chain_columns, 3, 4);
    reason_chain(&grid, &e->tape, batch->area, ends, sizeof ends / sizeof *ends);
    grid_print(&grid, page);
    grid_clear(&grid);
}

static void print_batch(struct page *page, const struct estimate *e, const struct batch *batch) {
    const struct finish *const finish = &e->rates->finishes[batch->finish];
    const bool put_out = batch->coat_count == 0;
    const char *const color = show_batch_color(e, batch);
    say(page, "%s", "");
    say_wrapped(page, finish->name.s, 2, put_out ? "%s%s: %s, put out%s" : "%s%s: %s to spray%s",
                color[0] == '\0' ? "" : ", ", color, show_unit(e, batch->area).text,
                finish->faces.choice == FACES_FRONT ? " (fronts and edges)" : "");
    for (size_t i = 0; i < batch->coat_count; i++) {
        print_coat(page, e, batch, &batch->coats[i]);
    }
    if (put_out) {
        return;
    }
    say(page, "%s", "");
    if (!fig_none(batch->dry_film)) {
        say(page, "  dry film, all coats: %s", show_unit(e, batch->dry_film).text);
    }
    if (!fig_none(batch->dry_hours)) {
        say(page, "  drying, one coat after another: %s", show_unit(e, batch->dry_hours).text);
    }
}

/* `2 x 1 gal, 1 x 1 qt`: the largest first, as the file has them. */
static const char *containers(const struct estimate *e, const struct product *p,
                              struct pool *pool) {
    const char *text = "";
    for (size_t i = p->size_count; i-- > 0 && text != NULL;) {
        if (tape_amount(&e->tape, p->counts[i]) > 0) {
            text = pool_format(pool, "%s%s%s x %s", text, text[0] == '\0' ? "" : ", ",
                               show(e, p->counts[i]).text, p->sizes->s[i].words);
        }
    }
    return text == NULL || text[0] == '\0' ? "none" : text;
}

/* `2.2500 for the coats, 0.1125 in reserve`; empty where all is for the coats. */
static void put_need(struct grid *grid, const struct estimate *e, const struct product *p) {
    const bool reserve = !fig_none(p->reserve);
    const bool touch_up = !fig_none(p->touch_up);
    if (reserve || touch_up) {
        grid_heading(grid, "    %s for the coats%s%s%s%s%s%s", show(e, p->used).text,
                     reserve ? ", " : "", reserve ? show(e, p->reserve).text : "",
                     reserve ? " in reserve" : "", touch_up ? ", " : "",
                     touch_up ? show(e, p->touch_up).text : "", touch_up ? " for touch-up" : "");
    }
}

static void put_product(struct grid *grid, const struct estimate *e, const struct product *p) {
    grid_put(grid, "%s", p->title);
    grid_put(grid, "%s", show(e, p->need).text);
    grid_put(grid, "%s", containers(e, p, &grid->pool));
    grid_put(grid, "%s", show(e, p->left_over).text);
    grid_put(grid, "%s", show_money(e, p->cost).text);
    grid_put(grid, "%s", show_money(e, p->charged).text);
    put_need(grid, e, p);
    if (!fig_none(p->from_rack)) {
        grid_heading(grid, "    %s of it from the rack, %s to buy", show(e, p->from_rack).text,
                     show(e, p->to_buy).text);
    }
}

void products_print(struct page *page, const struct estimate *e) {
    const bool liters = e->units.volume == UNIT_L;
    const struct grid_column columns[] = {
        {liters ? "volumes in L" : "volumes in gal", GRID_LEFT, true},
        {"needed", GRID_RIGHT, false},
        {"containers", GRID_LEFT, false},
        {"left over", GRID_RIGHT, false},
        {"cost", GRID_RIGHT, false},
        {"charged", GRID_RIGHT, false}};
    struct grid grid;
    grid_init(&grid, columns, 6, 2);
    for (size_t i = 0; i < e->finish.product_count; i++) {
        put_product(&grid, e, &e->finish.products[i]);
    }
    grid_print(&grid, page);
    grid_clear(&grid);
}

/* The needs at both ends of the transfer efficiencies, and whether what is bought holds them. */
static void print_transfer(struct page *page, const struct estimate *e) {
    static const struct grid_column columns[] = {{"lands on the doors:", GRID_LEFT, true},
                                                 {"most", GRID_RIGHT, false},
                                                 {"likely", GRID_RIGHT, false},
                                                 {"least", GRID_RIGHT, false},
                                                 {"to buy", GRID_RIGHT, false},
                                                 {"at the least", GRID_LEFT, false}};
    struct grid grid;
    bool any = false;
    grid_init(&grid, columns, 6, 2);
    for (size_t i = 0; i < e->finish.product_count; i++) {
        const struct product *const p = &e->finish.products[i];
        if (fig_none(p->need_low)) {
            continue;
        }
        const int64_t left = tape_scaled(&e->tape, p->left_low, 4);
        any = true;
        grid_put(&grid, "%s", p->title);
        grid_put(&grid, "%s", show(e, p->need_high).text);
        grid_put(&grid, "%s", show(e, p->need).text);
        grid_put(&grid, "%s", show(e, p->need_low).text);
        grid_put(&grid, "%s", show(e, p->bought).text);
        grid_put(&grid, left < 0 ? "%s short" : "enough", show_number(-left, 4).text);
    }
    if (any) {
        say(page, "%s", "");
        say_wrapped(page, "", 0,
                    "Needed at both ends of the transfer efficiency, and whether what is bought "
                    "holds it");
        grid_print(&grid, page);
    }
    grid_clear(&grid);
}

void finish_print(struct page *page, const struct estimate *e) {
    head_print(page, "Finish to buy, and why", e);
    if (e->finish.batch_count == 0) {
        say(page, "%s", "");
        say(page, "Nothing is sprayed: every row's finish is 'none'.");
        return;
    }
    for (size_t i = 0; i < e->finish.batch_count; i++) {
        print_batch(page, e, &e->finish.batches[i]);
    }
    say(page, "%s", "");
    say(page, "To buy: the cheapest set of containers that holds the need");
    products_print(page, e);
    print_transfer(page, e);
    cautions_print(page, e, CAUTION_FINISH);
}
