/* SPDX-License-Identifier: MIT */
/* Ruin and recreate (Schrimpf and others 2000) of single parts: a step takes some off a few boards
 * and puts each back where it costs least, a board becoming larger where need be. It is kept when
 * the plan is no worse than it was some steps ago (late acceptance: Burke, Bykov 2017). Worse is:
 * dearer, or with free room spread over more boards. Hundreds of times as fast as a dive for a
 * handful of boards, and blind where all of them have to change at once. */
#include "cut/board/board_search.h"

#include "cut/board/board_state.h"
#include "cut/common/cut_model.h"
#include "cut/common/cut_random.h"

#include <string.h>

/* The numbers here were found by trying them (docs/cutting.md); none is critical. */

#define LATE_STEPS ((size_t)100) /* that late acceptance looks back */

enum {
    WINDOW = 24,   /* boards that a step looks at */
    MOST_OUT = 400 /* parts that a step takes out at most */
};

/* More work than this betters next to nothing. */
#define MOST_WORK (CUT_EFFORT_SECOND / 100)

/* What the square of a board's free share is worth, in boards. */
#define SPREAD_WORTH 0.2

/* A place for a part is passed over so often, in half of the steps. */
#define BLINK 0.05

struct search {
    struct board_state s;
    struct cut_random random;
    uint32_t window[WINDOW]; /* boards; the first ones are drawn, those that are new follow */
    size_t window_count;
    uint32_t out[MOST_OUT]; /* parts */
    double key[MOST_OUT];   /* by which they are put back, the highest first */
    size_t out_count;
    double open_worth, strip_worth; /* of free area, in prices of the cheapest: beside the strips,
                                       and at the ends of strips */
    double blink;
    int64_t spent;
    double late[LATE_STEPS];
};

/* A place for a part: strip or board BOARD_NONE: a new one. */
struct place {
    double price; /* what it costs, with what becomes of free room */
    uint32_t strip, board, room;
};

static bool is_board(const struct search *f, uint32_t board) {
    return f->s.boards[board].room != BOARD_NONE;
}

/* --- out --- */

static bool take_part(struct search *f, uint32_t part) {
    f->out[f->out_count++] = part;
    return board_state_take(&f->s, part);
}

static bool take_strip(struct search *f, uint32_t strip) {
    bool held = true;
    for (uint32_t p = f->s.strips[strip].head;
         held && p != BOARD_NONE && f->out_count < MOST_OUT;) {
        const uint32_t next = f->s.parts[p].next;
        held = take_part(f, p);
        p = next;
    }
    return held;
}

static bool take_board(struct search *f, uint32_t board) {
    bool held = true;
    for (uint32_t t = f->s.boards[board].head;
         held && t != BOARD_NONE && f->out_count < MOST_OUT;) {
        const uint32_t next = f->s.strips[t].next;
        held = take_strip(f, t);
        t = next;
    }
    return held;
}

static uint32_t any_strip(struct search *f, uint32_t board) {
    size_t count = 0;
    uint32_t drawn = BOARD_NONE;
    for (uint32_t t = f->s.boards[board].head; t != BOARD_NONE; t = f->s.strips[t].next) {
        drawn = cut_random_below(&f->random, ++count) == 0 ? t : drawn;
    }
    return drawn;
}

static uint32_t any_part(struct search *f, uint32_t strip) {
    size_t count = 0;
    uint32_t drawn = BOARD_NONE;
    for (uint32_t p = f->s.strips[strip].head; p != BOARD_NONE; p = f->s.parts[p].next) {
        drawn = cut_random_below(&f->random, ++count) == 0 ? p : drawn;
    }
    return drawn;
}

/* A strip each of some boards of the window from `first` on. */
static bool take_strips(struct search *f, size_t count, size_t first) {
    bool held = true;
    for (size_t i = 0; held && i < count && first < f->window_count; i++) {
        const uint32_t board =
            f->window[first + cut_random_below(&f->random, f->window_count - first)];
        held =
            !is_board(f, board) || f->out_count == MOST_OUT || take_strip(f, any_strip(f, board));
    }
    return held;
}

/* Single parts of the first four boards. */
static bool take_parts(struct search *f, size_t count) {
    bool held = true;
    const size_t boards = f->window_count < 4 ? f->window_count : 4;
    for (size_t i = 0; held && i < count; i++) {
        const uint32_t board = f->window[cut_random_below(&f->random, boards)];
        held = !is_board(f, board) || take_part(f, any_part(f, any_strip(f, board)));
    }
    return held;
}

static bool ruin(struct search *f) {
    const size_t way = cut_random_below(&f->random, 10);
    if (way < 4) {
        return take_strips(f, 1 + cut_random_below(&f->random, 4), 0);
    }
    if (way < 7) {
        return take_board(f, f->window[0]) && take_strips(f, cut_random_below(&f->random, 4), 1);
    }
    return take_parts(f, 1 + cut_random_below(&f->random, 8));
}

/* --- in --- */

/* What the free room of a board is worth with strips so wide in all and parts of so much area. */
static double free_worth(const struct search *f, uint32_t room, int64_t across, double area) {
    const struct board_room *const r = &f->s.rooms[room];
    const double strips = (double)across * (double)r->along - area;
    return f->s.area_price * (f->open_worth * (r->area - (double)across * (double)r->along) +
                              f->strip_worth * strips);
}

static void offer(struct search *f, struct place *best, struct place place) {
    if (place.price < best->price && (f->blink <= 0 || cut_random_share(&f->random) >= f->blink)) {
        *best = place;
    }
}

/* Price of a board's new room, with what becomes of its free room. */
static double more_of(const struct search *f, const struct loose_board *board, uint32_t room,
                      int64_t across, double area) {
    return (double)(f->s.rooms[room].price - f->s.rooms[board->room].price) +
           free_worth(f, board->room, board->across, board->area) -
           free_worth(f, room, across, area);
}

/* At the end of a strip; of those that are as good the one that it fills best. */
static void look_at_strips(struct search *f, const struct loose_part *part, uint32_t board,
                           struct place *best) {
    const struct board_state *const s = &f->s;
    const struct loose_board *const b = &s->boards[board];
    const double area = b->area + (double)part->length * (double)part->width;
    for (uint32_t t = b->head; t != BOARD_NONE; t = s->strips[t].next) {
        f->spent += 4;
        if (s->strips[t].width != part->width) {
            continue;
        }
        const int64_t used = s->strips[t].used + part->length;
        const int64_t over = s->rooms[b->room].along - used;
        const uint32_t room = over >= 0 ? b->room : board_state_room(s, used, b->across);
        if (room != BOARD_NONE) {
            const double loose = over > 0 ? 1e-3 * (double)over * (double)part->width : 0;
            const double price = more_of(f, b, room, b->across, area) + s->area_price * loose;
            offer(f, best, (struct place){price, t, board, room});
        }
    }
}

/* As a new strip of a board. */
static void look_at_board(struct search *f, const struct loose_part *part, uint32_t board,
                          struct place *best) {
    const struct board_state *const s = &f->s;
    const struct loose_board *const b = &s->boards[board];
    const int64_t across = b->across + part->width;
    int64_t along = part->length;
    for (uint32_t t = b->head; t != BOARD_NONE; t = s->strips[t].next) {
        along = s->strips[t].used > along ? s->strips[t].used : along;
    }
    const struct board_room *const own = &s->rooms[b->room];
    const uint32_t room =
        across <= own->across && along <= own->along ? b->room : board_state_room(s, along, across);
    f->spent += 20;
    if (room != BOARD_NONE) {
        const double area = b->area + (double)part->length * (double)part->width;
        offer(f, best, (struct place){more_of(f, b, room, across, area), BOARD_NONE, board, room});
    }
}

/* On a new board. */
static void look_at_rooms(struct search *f, const struct loose_part *part, struct place *best) {
    const double area = (double)part->length * (double)part->width;
    for (uint32_t r = 0; r < f->s.room_count; r++) {
        const struct board_room *const room = &f->s.rooms[r];
        if (room->along >= part->length && room->across >= part->width) {
            const double price = (double)room->price - free_worth(f, r, part->width, area);
            if (price < best->price) {
                *best = (struct place){price, BOARD_NONE, BOARD_NONE, r};
            }
        }
    }
    f->spent += 4 * (int64_t)f->s.room_count;
}

static bool put_back(struct search *f, uint32_t part) {
    const struct loose_part *const p = &f->s.parts[part];
    struct place best = {1e300, BOARD_NONE, BOARD_NONE, BOARD_NONE};
    for (size_t i = 0; i < f->window_count; i++) {
        if (is_board(f, f->window[i])) {
            look_at_strips(f, p, f->window[i], &best);
            look_at_board(f, p, f->window[i], &best);
        }
    }
    look_at_rooms(f, p, &best);
    const bool held = board_state_put(&f->s, part, best.strip, best.board, best.room);
    if (best.board == BOARD_NONE && f->window_count < WINDOW) {
        f->window[f->window_count++] = f->s.live[f->s.live_count - 1];
    }
    return held;
}

/* --- a step --- */

static void draw_window(struct search *f) {
    struct board_state *const s = &f->s;
    f->window_count = s->live_count < WINDOW ? s->live_count : WINDOW;
    for (size_t i = 0; i < f->window_count; i++) {
        const size_t other = i + cut_random_below(&f->random, s->live_count - i);
        const uint32_t drawn = s->live[other];
        s->live[other] = s->live[i];
        s->live[i] = drawn;
        s->boards[s->live[other]].place = (uint32_t)other;
        s->boards[drawn].place = (uint32_t)i;
        f->window[i] = drawn;
    }
}

/* By area, length, mostly width, or chance; and some chance. */
static void arrange(struct search *f) {
    const size_t way = cut_random_below(&f->random, 4);
    const double noise = cut_random_below(&f->random, 2) == 0 ? 0.1 : 0.5;
    for (size_t i = 0; i < f->out_count; i++) {
        const uint32_t part = f->out[i];
        const double length = (double)f->s.parts[part].length;
        const double width = (double)f->s.parts[part].width;
        const double ways[] = {length * width, length, width * width * length, 1};
        const double key = ways[way] * (1 + noise * cut_random_share(&f->random));
        size_t at = i;
        for (; at > 0 && f->key[at - 1] < key; at--) {
            f->key[at] = f->key[at - 1];
            f->out[at] = f->out[at - 1];
        }
        f->key[at] = key;
        f->out[at] = part;
    }
    f->spent += 50 * (int64_t)f->out_count + (int64_t)(f->out_count * f->out_count / 2);
}

static bool one_step(struct search *f) {
    f->open_worth = 0.8 + 0.25 * cut_random_share(&f->random);
    f->strip_worth = f->open_worth * (0.3 + 0.7 * cut_random_share(&f->random));
    f->blink = cut_random_below(&f->random, 2) == 0 ? 0 : BLINK;
    f->out_count = 0;
    f->spent += 600;
    draw_window(f);
    bool held = ruin(f);
    arrange(f);
    for (size_t i = 0; held && i < f->out_count; i++) {
        held = put_back(f, f->out[i]);
    }
    return held;
}

/* Lower is better. */
static double worth_of(const struct board_state *s) {
    return (double)s->cost - SPREAD_WORTH * s->spread;
}

static bool walk(struct search *f, int64_t effort, struct board_plan **plan) {
    double now = worth_of(&f->s);
    bool held = true;
    for (size_t i = 0; i < LATE_STEPS; i++) {
        f->late[i] = now;
    }
    for (size_t step = 0; held && f->spent < effort && (*plan)->cost > (*plan)->bound; step++) {
        double *const late = &f->late[step % LATE_STEPS];
        held = one_step(f);
        if (!held) {
            break;
        }
        const double worth = worth_of(&f->s);
        if (worth > now && worth > *late) {
            board_state_undo(&f->s);
            *late = now;
            continue;
        }
        board_state_settle(&f->s);
        *late = now = worth;
        if (f->s.cost < (*plan)->cost) {
            struct board_plan *const next = board_state_write(&f->s, (*plan)->bound);
            cut_spend(&f->spent, 20 * (int64_t)f->s.part_count);
            held = next != NULL;
            if (held) {
                board_plan_free(*plan);
                *plan = next;
            }
        }
    }
    return held;
}

bool board_search(const struct board_job *job, int64_t effort, struct board_plan **plan) {
    struct search f = {.random = {.state = 3}};
    if ((*plan)->cost <= (*plan)->bound) {
        return true;
    }
    bool held = board_state_open(&f.s, job, *plan);
    board_state_settle(&f.s);
    held = held && walk(&f, effort < MOST_WORK ? effort : MOST_WORK, plan);
    board_state_close(&f.s);
    return held;
}
