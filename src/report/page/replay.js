/* SPDX-License-Identifier: MIT */
/* The tape made again: the ten operations of figures, in whole numbers, as the program has them.
   A figure is a whole number at so many decimals; each operation is rounded once, half away from
   zero. A choice is not made again: where what it was made from has changed, it and all that rests
   on it says `run again`. */

const OP = { GIVEN: 0, SUM: 1, TOTAL: 2, RATIO: 3, LARGER: 4, SMALLER: 5, UP: 6, PICK_UPTO: 7, PICK_FROM: 8, CHOSEN: 9 };
const AT = { OP: 0, UNIT: 1, DECIMALS: 2, LABEL: 3, SUBJECT: 4, VALUE: 5, REST: 6 }; /* of a figure, unpacked */
const LIMIT = 1000000000000n;

const powers = [];
function power(n) {
    while (powers.length <= n) {
        powers.push(powers.length === 0 ? 1n : powers[powers.length - 1] * 10n);
    }
    return powers[n];
}

/* over / under, half away from zero; under is not 0. */
function rounded(over, under) {
    if (under < 0n) {
        over = -over;
        under = -under;
    }
    const size = over < 0n ? -over : over;
    const whole = size / under;
    const rest = size - whole * under;
    const up = rest >= under - rest ? whole + 1n : whole;
    return over < 0n ? -up : up;
}

/* A value at decimals `from` as one at `to`. */
function rescaled(value, from, to) {
    return to >= from ? value * power(to - from) : rounded(value, power(from - to));
}

function compared(a, b) {
    const most = Math.max(a.decimals, b.decimals);
    const x = rescaled(a.value, a.decimals, most);
    const y = rescaled(b.value, b.decimals, most);
    return x < y ? -1 : x > y ? 1 : 0;
}

/* What a figure is made of: { id, minus } each. */
function operandsOf(figure, id) {
    if (figure[AT.OP] === OP.GIVEN) {
        return [];
    }
    const first = figure[AT.OP] === OP.CHOSEN ? AT.REST + 2 : AT.REST;
    return figure.slice(first).map((n) => ({ id: id - Math.abs(n), minus: n < 0 }));
}

/* As many decimals as what is summed, compared or picked from has, so that nothing of it is lost. */
function decimalsOf(op, own, of) {
    let from = of.length;
    let step = 1;
    if (op === OP.SUM || op === OP.LARGER || op === OP.SMALLER) {
        from = 0;
    } else if (op === OP.UP) {
        from = 1;
    } else if (op === OP.PICK_UPTO || op === OP.PICK_FROM) {
        from = step = 2;
    }
    let most = own;
    for (let i = from; i < of.length; i += step) {
        most = Math.max(most, of[i].decimals);
    }
    return most;
}

/* The row of a table that is picked: 0 the first. */
function pickedRow(op, by, of) {
    const rows = (of.length - 1) / 2;
    let row = op === OP.PICK_UPTO ? rows - 1 : 0;
    for (let i = 0; i < rows; i++) {
        const side = compared(by, of[1 + 2 * i]);
        if (op === OP.PICK_UPTO && side <= 0) {
            return i;
        }
        if (op === OP.PICK_FROM && side >= 0) {
            row = i;
        }
    }
    return row;
}

/* What comes of operands (value, decimals, minus) at those decimals; null: a division by nothing. */
const operations = {
    [OP.SUM]: (of, decimals) =>
        of.reduce((all, f) => {
            const term = rescaled(f.value, f.decimals, decimals);
            return f.minus ? all - term : all + term;
        }, 0n),
    [OP.TOTAL]: (of, decimals) => {
        let most = decimals;
        for (let i = 0; i + 1 < of.length; i += 2) {
            most = Math.max(most, of[i].decimals + of[i + 1].decimals);
        }
        let all = 0n;
        for (let i = 0; i + 1 < of.length; i += 2) {
            all += of[i].value * of[i + 1].value * power(most - of[i].decimals - of[i + 1].decimals);
        }
        return rescaled(all, most, decimals);
    },
    [OP.RATIO]: (of, decimals) => {
        let over = 1n;
        let under = 1n;
        let by = decimals;
        for (const f of of) {
            if (f.minus) {
                under *= f.value;
                by += f.decimals;
            } else {
                over *= f.value;
                by -= f.decimals;
            }
        }
        if (under === 0n) {
            return over === 0n ? 0n : null;
        }
        return by > 0 ? rounded(over * power(by), under) : rounded(over, under * power(-by));
    },
    [OP.LARGER]: (of, decimals) => {
        const f = compared(of[0], of[1]) >= 0 ? of[0] : of[1];
        return rescaled(f.value, f.decimals, decimals);
    },
    [OP.SMALLER]: (of, decimals) => {
        const f = compared(of[0], of[1]) <= 0 ? of[0] : of[1];
        return rescaled(f.value, f.decimals, decimals);
    },
    [OP.UP]: (of, decimals) => {
        const [a, step] = of;
        if (step.value <= 0n) {
            return null;
        }
        const most = Math.max(a.decimals, step.decimals);
        const x = rescaled(a.value, a.decimals, most);
        const y = rescaled(step.value, step.decimals, most);
        const steps = x / y + (x > 0n && x % y !== 0n ? 1n : 0n);
        return rescaled(steps * step.value, step.decimals, decimals);
    },
    [OP.PICK_UPTO]: (of, decimals) => {
        const f = of[2 + 2 * pickedRow(OP.PICK_UPTO, of[0], of)];
        return rescaled(f.value, f.decimals, decimals);
    },
    [OP.PICK_FROM]: (of, decimals) => {
        const f = of[2 + 2 * pickedRow(OP.PICK_FROM, of[0], of)];
        return rescaled(f.value, f.decimals, decimals);
    },
};

/* The figures of a page: now[id] has value, decimals, and again: a reason why its value can't be
   told here. */
function Tape(data) {
    const figures = data.figures.map((f) => f === 0 ? 0 : [...data.kinds[f[0]], ...f.slice(1)]);
    const made = figures.map((f) => f === 0 ? null : { value: BigInt(f[AT.VALUE]), decimals: f[AT.DECIMALS], again: "" });
    const operands = figures.map((f, id) => f === 0 ? [] : operandsOf(f, id));
    const now = made.slice();

    function same(a, b) {
        return a === b || (a.again === b.again && compared(a, b) === 0);
    }

    /* Whether a choice stays what it was: of containers, while sizes and prices are as they were and
       the need stays between the least that has the same set and what is bought. */
    function holds(id) {
        const [need, ...rest] = operands[id];
        const bounds = data.holds[need.id];
        const four = (n) => ({ value: BigInt(n), decimals: 4 });
        return bounds !== undefined && rest.every((o) => same(now[o.id], made[o.id])) && now[need.id].again === "" &&
            compared(now[need.id], four(bounds[0])) >= 0 && compared(now[need.id], four(bounds[1])) <= 0;
    }

    function make(id) {
        const figure = figures[id];
        const op = figure[AT.OP];
        const of = operands[id].map((o) => ({ value: now[o.id].value, decimals: now[o.id].decimals, minus: o.minus }));
        const spoiled = operands[id].find((o) => now[o.id].again !== "");
        if (op === OP.CHOSEN && holds(id)) {
            return made[id];
        }
        if (op === OP.CHOSEN || spoiled) {
            return { value: made[id].value, decimals: made[id].decimals, again: spoiled ? now[spoiled.id].again : "run again" };
        }
        const decimals = decimalsOf(op, figure[AT.DECIMALS], of);
        const value = operations[op](of, decimals);
        if (value === null || value >= LIMIT || value <= -LIMIT) {
            return { value: made[id].value, decimals: made[id].decimals, again: value === null ? "divides by nothing" : "too large" };
        }
        return { value, decimals, again: "" };
    }

    return {
        figures, made, now, operands,
        /* Makes again what rests on the changes: a map of givens to { value, decimals }. */
        run(changes) {
            for (let id = 1; id < figures.length; id++) {
                const change = changes.get(id);
                if (change !== undefined) {
                    now[id] = { value: change.value, decimals: change.decimals, again: "" };
                } else if (operands[id].some((o) => !same(now[o.id], made[o.id]))) {
                    now[id] = make(id);
                } else {
                    now[id] = made[id];
                }
            }
        },
        /* A figure by its operation from what is there now; null: given or chosen. */
        makeAgain: (id) => figures[id][AT.OP] === OP.GIVEN || figures[id][AT.OP] === OP.CHOSEN ? null : make(id),
        changed: (id) => !same(now[id], made[id]),
    };
}
