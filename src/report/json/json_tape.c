/* SPDX-License-Identifier: MIT */
/* The tape: every figure with what it was made from, so that anybody can make it again. */
#include "report/json/json_parts.h"
#include "report/words/show.h"

#include <inttypes.h>
#include <stdio.h>

/* How the operands of an operation are told: as lists under these keys. `stride`: operands go round
 * among the keys; a key in `minus` holds those below the line or subtracted. */
enum form { FORM_NOTHING, FORM_SIGNED, FORM_PAIRS, FORM_TWO, FORM_TABLE, FORM_LIST };

static const struct {
    enum form form;
    const char *first, *second;
} forms[OP_COUNT] = {
    [OP_GIVEN] = {FORM_NOTHING, NULL, NULL},
    [OP_SUM] = {FORM_SIGNED, "plus", "minus"},
    [OP_TOTAL] = {FORM_PAIRS, "counts", "each"},
    [OP_RATIO] = {FORM_SIGNED, "over", "under"},
    [OP_LARGER] = {FORM_LIST, "of", NULL},
    [OP_SMALLER] = {FORM_LIST, "of", NULL},
    [OP_UP] = {FORM_TWO, "of", "step"},
    [OP_PICK_UPTO] = {FORM_TABLE, "limits", "values"},
    [OP_PICK_FROM] = {FORM_TABLE, "limits", "values"},
    [OP_CHOSEN] = {FORM_LIST, "operands", NULL},
};

static void put_operands(struct json_maker *maker, json_t *object, fig f, enum figure_op op) {
    const struct tape *const tape = &maker->e->tape;
    const enum form form = forms[op].form;
    const size_t start = form == FORM_TABLE ? 1 : 0;
    json_t *const first = json_array();
    json_t *const second = json_array();
    for (size_t i = start; i < tape_operands(tape, f); i++) {
        const struct operand o = tape_operand(tape, f, i);
        const bool other =
            form == FORM_SIGNED ? o.minus : form != FORM_LIST && (i - start) % 2 == 1;
        json_add(maker, other ? second : first, json_integer(o.f.id));
    }
    if (form == FORM_TABLE) {
        json_put_count(maker, object, "by", tape_operand(tape, f, 0).f.id);
    }
    json_put(maker, object, forms[op].first, first);
    if (forms[op].second == NULL) {
        json_decref(second);
    } else {
        json_put(maker, object, forms[op].second, second);
    }
}

static void put_origin(struct json_maker *maker, json_t *object, fig f,
                       const struct problems *problems) {
    const struct origin origin = tape_origin(&maker->e->tape, f);
    json_t *const from = json_object();
    const struct shown learned = show_learned(maker->e, f);
    if (origin.source != NULL) {
        json_put_text(maker, from, "source", origin.source);
    } else {
        json_put_text(maker, from, "file", problems_file_name(problems, origin.place.file));
        json_put_count(maker, from, "line", origin.place.line);
        if (origin.worked) {
            json_put(maker, from, "worked out", json_boolean(true));
        }
        if (*learned.text != '\0') {
            json_put_text(maker, from, "learned", learned.text);
        }
    }
    json_put(maker, object, "origin", from);
}

static json_t *figure_object(struct json_maker *maker, fig f, const struct problems *problems) {
    const struct tape *const tape = &maker->e->tape;
    const enum figure_op op = tape_op(tape, f);
    char value[32];
    json_t *const object = json_object();
    (void)snprintf(value, sizeof value, "%" PRId64, tape_amount(tape, f));
    json_put_count(maker, object, "id", f.id);
    json_put_text(maker, object, "label", tape_label(tape, f));
    json_put_text(maker, object, "subject", tape_subject_name(tape, f));
    json_put_text(maker, object, "unit", unit_name(tape_unit(tape, f)));
    json_put_count(maker, object, "decimals", tape_decimals(tape, f));
    json_put_text(maker, object, "value", value);
    json_put_text(maker, object, "shown", show_exact(maker->e, f).text);
    json_put_text(maker, object, "op", figure_op_name(op));
    if (op == OP_GIVEN) {
        put_origin(maker, object, f, problems);
        return object;
    }
    if (op == OP_CHOSEN) {
        uint32_t output = 0;
        json_put_text(maker, object, "chooser", tape_chooser(tape, f, &output)->name);
        json_put_count(maker, object, "output", output);
    }
    put_operands(maker, object, f, op);
    return object;
}

void json_tape(struct json_maker *maker, const struct problems *problems) {
    json_open(&maker->stream, "tape", '{');
    json_open(&maker->stream, "figures", '[');
    for (uint32_t id = 1; id < maker->e->tape.count; id++) {
        json_send(&maker->stream, NULL, figure_object(maker, (fig){id}, problems));
    }
    json_close(&maker->stream, ']');
    json_close(&maker->stream, '}');
}
