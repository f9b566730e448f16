/* SPDX-License-Identifier: MIT */
/* Strips and boards are numbered anew from stacks of free numbers: what is undone in reverse gets
 * the numbers that it had. */
#include "cut/board/board_state.h"

#include <stdlib.h>
#include <string.h>

/* --- rooms --- */

/* Whether whatever fits room b fits a, which costs no more; of equals the first stays. */
static bool is_beaten(const struct board_room *b, const struct board_room *a) {
    const bool equal = a->price == b->price && a->along == b->along && a->across == b->across;
    return a != b && a->price <= b->price && a->along >= b->along && a->across >= b->across &&
           (!equal || a < b);
}

static void add_room(struct board_state *s, const struct board_room *room) {
    uint32_t at = s->room_count++;
    for (;
         at > 0 && (s->rooms[at - 1].price > room->price ||
                    (s->rooms[at - 1].price == room->price && s->rooms[at - 1].area > room->area));
         at--) {
        s->rooms[at] = s->rooms[at - 1];
    }
    s->rooms[at] = *room;
}

static void list_rooms(struct board_state *s) {
    struct board_room all[CUT_STOCKS_MAX];
    size_t count = 0;
    for (size_t i = 0; i < s->job->stock_count; i++) {
        const struct cut_stock *const stock = &s->job->stocks[i];
        struct board_room room = {.along = board_usable_length(s->job, i) + s->job->kerf,
                                  .across = board_usable_width(s->job, i) + s->job->kerf,
                                  .price = stock->price,
                                  .stock = i};
        room.area = (double)room.along * (double)room.across;
        if (room.along > s->job->kerf && room.across > s->job->kerf) {
            const double price = (double)room.price / room.area;
            const bool least = s->area_price <= 0 || price < s->area_price;
            s->area_price = price > 0 && least ? price : s->area_price;
            all[count++] = room;
        }
    }
    for (size_t a = 0; a < count; a++) {
        bool beaten = false;
        for (size_t b = 0; b < count && !beaten; b++) {
            beaten = is_beaten(&all[a], &all[b]);
        }
        if (!beaten) {
            add_room(s, &all[a]);
        }
    }
}

uint32_t board_state_room(const struct board_state *s, int64_t along, int64_t across) {
    for (uint32_t r = 0; r < s->room_count; r++) {
        if (s->rooms[r].along >= along && s->rooms[r].across >= across) {
            return r;
        }
    }
    return BOARD_NONE;
}

static double spread_of(const struct board_state *s, const struct loose_board *board) {
    const double whole = s->rooms[board->room].area;
    const double spare = whole - board->area;
    return s->area_price * spare * spare / whole;
}

static void give_room(struct board_state *s, struct loose_board *board, uint32_t room) {
    s->cost -= board->room == BOARD_NONE ? 0 : s->rooms[board->room].price;
    s->cost += room == BOARD_NONE ? 0 : s->rooms[room].price;
    board->room = room;
}

/* --- parts in and out --- */

static uint32_t new_board(struct board_state *s) {
    const uint32_t number = s->free_boards[--s->free_board_count];
    s->boards[number] = (struct loose_board){
        .head = BOARD_NONE, .room = BOARD_NONE, .place = (uint32_t)s->live_count};
    s->live[s->live_count++] = number;
    return number;
}

static uint32_t new_strip(struct board_state *s, int64_t width, uint32_t board) {
    const uint32_t number = s->free_strips[--s->free_strip_count];
    struct loose_board *const b = &s->boards[board];
    s->strips[number] = (struct loose_strip){
        .width = width, .board = board, .head = BOARD_NONE, .next = b->head, .prev = BOARD_NONE};
    if (b->head != BOARD_NONE) {
        s->strips[b->head].prev = number;
    }
    b->head = number;
    b->across += width;
    return number;
}

static void put(struct board_state *s, uint32_t part, uint32_t strip, uint32_t room) {
    struct loose_part *const p = &s->parts[part];
    struct loose_strip *const t = &s->strips[strip];
    struct loose_board *const b = &s->boards[t->board];
    s->spread -= b->room == BOARD_NONE ? 0 : spread_of(s, b);
    p->strip = strip;
    p->next = t->head;
    p->prev = BOARD_NONE;
    if (t->head != BOARD_NONE) {
        s->parts[t->head].prev = part;
    }
    t->head = part;
    t->used += p->length;
    b->area += (double)p->length * (double)p->width;
    give_room(s, b, room);
    s->spread += spread_of(s, b);
}

static void drop_strip(struct board_state *s, uint32_t strip) {
    const struct loose_strip *const t = &s->strips[strip];
    struct loose_board *const b = &s->boards[t->board];
    b->across -= t->width;
    if (t->next != BOARD_NONE) {
        s->strips[t->next].prev = t->prev;
    }
    if (t->prev != BOARD_NONE) {
        s->strips[t->prev].next = t->next;
    } else {
        b->head = t->next;
    }
    s->free_strips[s->free_strip_count++] = strip;
}

static void drop_board(struct board_state *s, uint32_t board) {
    const uint32_t place = s->boards[board].place;
    const uint32_t last = s->live[--s->live_count];
    give_room(s, &s->boards[board], BOARD_NONE);
    s->live[place] = last;
    s->boards[last].place = place;
    s->free_boards[s->free_board_count++] = board;
}

static int64_t longest(const struct board_state *s, const struct loose_board *board) {
    int64_t most = 0;
    for (uint32_t t = board->head; t != BOARD_NONE; t = s->strips[t].next) {
        most = s->strips[t].used > most ? s->strips[t].used : most;
    }
    return most;
}

/* room: what the board has then; BOARD_NONE: the cheapest. */
static void take(struct board_state *s, uint32_t part, uint32_t room) {
    struct loose_part *const p = &s->parts[part];
    const uint32_t strip = p->strip;
    struct loose_strip *const t = &s->strips[strip];
    const uint32_t board = t->board;
    struct loose_board *const b = &s->boards[board];
    s->spread -= spread_of(s, b);
    if (p->next != BOARD_NONE) {
        s->parts[p->next].prev = p->prev;
    }
    if (p->prev != BOARD_NONE) {
        s->parts[p->prev].next = p->next;
    } else {
        t->head = p->next;
    }
    t->used -= p->length;
    p->strip = BOARD_NONE;
    b->area -= (double)p->length * (double)p->width;
    if (t->head == BOARD_NONE) {
        drop_strip(s, strip);
    }
    if (b->head == BOARD_NONE) {
        drop_board(s, board);
        return;
    }
    give_room(s, b, room != BOARD_NONE ? room : board_state_room(s, longest(s, b), b->across));
    s->spread += spread_of(s, b);
}

static bool note(struct board_state *s, struct board_note added) {
    bool failed = false;
    s->notes = array_grow(s->notes, &s->note_room, s->note_count + 1, sizeof *s->notes, &failed);
    if (!failed) {
        s->notes[s->note_count++] = added;
    }
    return !failed;
}

bool board_state_take(struct board_state *s, uint32_t part) {
    const uint32_t strip = s->parts[part].strip;
    const uint32_t board = s->strips[strip].board;
    if (!note(s, (struct board_note){false, part, strip, board, s->boards[board].room})) {
        return false;
    }
    take(s, part, BOARD_NONE);
    return true;
}

bool board_state_put(struct board_state *s, uint32_t part, uint32_t strip, uint32_t board,
                     uint32_t room) {
    const uint32_t on = board == BOARD_NONE ? new_board(s) : board;
    const uint32_t in = strip == BOARD_NONE ? new_strip(s, s->parts[part].width, on) : strip;
    const bool held = note(s, (struct board_note){true, part, in, on, s->boards[on].room});
    put(s, part, in, room);
    return held;
}

void board_state_undo(struct board_state *s) {
    while (s->note_count > 0) {
        const struct board_note *const n = &s->notes[--s->note_count];
        if (n->put) {
            take(s, n->part, n->room);
            continue;
        }
        if (s->strips[n->strip].head == BOARD_NONE) {
            if (s->boards[n->board].room == BOARD_NONE) {
                (void)new_board(s);
            }
            (void)new_strip(s, s->parts[n->part].width, n->board);
        }
        put(s, n->part, n->strip, n->room);
    }
}

void board_state_settle(struct board_state *s) {
    s->note_count = 0;
}

/* --- from a plan and to one --- */

static bool take_arrays(struct board_state *s, const struct board_plan *plan) {
    const size_t n = s->part_count = plan->piece_count;
    s->parts = pool_take(&s->pool, n, sizeof *s->parts);
    s->strips = pool_take(&s->pool, n, sizeof *s->strips);
    s->boards = pool_take(&s->pool, n, sizeof *s->boards);
    s->free_strips = pool_take(&s->pool, n, sizeof *s->free_strips);
    s->free_boards = pool_take(&s->pool, n, sizeof *s->free_boards);
    s->live = pool_take(&s->pool, n, sizeof *s->live);
    if (pool_failed(&s->pool)) {
        return false;
    }
    for (size_t i = 0; i < n; i++) {
        s->free_strips[i] = s->free_boards[i] = (uint32_t)(n - 1 - i);
        s->strips[i].head = s->boards[i].room = BOARD_NONE;
    }
    s->free_strip_count = s->free_board_count = n;
    return true;
}

/* The room of a stock; of one that is not listed the cheapest in its place. */
static uint32_t room_of(const struct board_state *s, size_t stock) {
    for (uint32_t r = 0; r < s->room_count; r++) {
        if (s->rooms[r].stock == stock) {
            return r;
        }
    }
    return board_state_room(s, board_usable_length(s->job, stock) + s->job->kerf,
                            board_usable_width(s->job, stock) + s->job->kerf);
}

bool board_state_open(struct board_state *s, const struct board_job *job,
                      const struct board_plan *plan) {
    s->job = job;
    pool_init(&s->pool);
    list_rooms(s);
    if (!take_arrays(s, plan)) {
        return false;
    }
    for (size_t b = 0; b < plan->board_count; b++) {
        const struct board_use *const use = &plan->boards[b];
        const uint32_t room = room_of(s, use->stock);
        const uint32_t board = new_board(s);
        /* from the last on, as what is put in last becomes the head */
        for (size_t i = use->first + use->count; i-- > use->first;) {
            const struct board_strip *const from = &plan->strips[i];
            const uint32_t strip = new_strip(s, from->width + job->kerf, board);
            for (size_t p = from->first; p < from->first + from->count; p++) {
                s->parts[p] =
                    (struct loose_part){.length = job->items[plan->pieces[p]].length + job->kerf,
                                        .width = from->width + job->kerf,
                                        .item = plan->pieces[p]};
                put(s, (uint32_t)p, strip, room);
            }
        }
    }
    return true;
}

void board_state_close(struct board_state *s) {
    pool_clear(&s->pool);
    free(s->notes);
}

/* Adds a piece to the strip written last; pieces stand in the order of the items. */
static void write_piece(struct board_plan *plan, struct board_strip *strip, size_t item) {
    size_t at = plan->piece_count++;
    for (; at > strip->first && plan->pieces[at - 1] > item; at--) {
        plan->pieces[at] = plan->pieces[at - 1];
    }
    plan->pieces[at] = item;
    strip->count++;
}

struct board_plan *board_state_write(const struct board_state *s, int64_t bound) {
    struct board_plan *const plan = board_plan_new(s->job);
    for (size_t i = 0; plan != NULL && i < s->live_count; i++) {
        const struct loose_board *const b = &s->boards[s->live[i]];
        struct board_use *const use = &plan->boards[plan->board_count++];
        *use = (struct board_use){.stock = s->rooms[b->room].stock, .first = plan->strip_count};
        for (uint32_t t = b->head; t != BOARD_NONE; t = s->strips[t].next) {
            struct board_strip *const strip = &plan->strips[plan->strip_count++];
            *strip = (struct board_strip){.width = s->strips[t].width - s->job->kerf,
                                          .first = plan->piece_count};
            for (uint32_t p = s->strips[t].head; p != BOARD_NONE; p = s->parts[p].next) {
                write_piece(plan, strip, s->parts[p].item);
            }
        }
        use->count = plan->strip_count - use->first;
        plan->cost += s->rooms[b->room].price;
        plan->bound = bound;
    }
    return plan;
}
