/* SPDX-License-Identifier: MIT */
/* Numbers of the rates and of the job moved: a number that is typed goes into its givens, the tape is made again, and every
   number on the page that rests on it follows. */

/* Of a text as a file takes it: digits, one point, no more decimals than the rate may have; null:
   it is none. */
function readNumber(text, most) {
    const match = /^(\d{1,9})(?:\.(\d*))?$/.exec(text.trim());
    if (match === null || (match[2] || "").length > most) {
        return null;
    }
    const decimals = (match[2] || "").length;
    return { value: BigInt(match[1] + (match[2] || "")), decimals };
}

const moving = (function () {
    const boxes = [...document.querySelectorAll(".rate input")];
    const buttons = [...document.querySelectorAll("button.f[data-f]")];
    const bars = [...document.querySelectorAll("[data-bar]")];
    const state = document.getElementById("state");
    const list = document.getElementById("changes");
    /* what the page leaves out; 0: it needs another run */
    const rates = data.rates.map((r) => r === 0 ? null : { least: 0, none: false, before: "", unit: "", behind: "", ...r });
    const rateOf = (box) => rates[Number(box.id.slice(1))];
    const asRead = boxes.map((box) => box.value);
    let moved = []; /* { box, rate, number } */

    /* What a box says: undefined where it is as read, null where it is no number. */
    function numberOf(box, i) {
        const rate = rateOf(box);
        const number = readNumber(box.value, rate.decimals);
        const whole = (n) => ({ value: BigInt(n), decimals: 0 });
        if (number === null || (number.value === 0n && !rate.none) || compared(number, whole(rate.least)) < 0 ||
            (rate.most !== undefined && compared(number, whole(rate.most)) > 0)) {
            return null;
        }
        return compared(number, readNumber(asRead[i], 9)) === 0 ? undefined : number;
    }

    /* Deposit and stages are parts of one total. */
    function paidTooMuch(numbers) {
        const four = (i) => {
            const number = numbers[i] || readNumber(asRead[i], 9);
            return rescaled(number.value, number.decimals, 4);
        };
        const parts = boxes.map((box, i) => rateOf(box).payment ? four(i) : 0n);
        return parts.reduce((sum, part) => sum + part, 0n) > 1000000n;
    }

    function showFigures() {
        for (const b of buttons) {
            const id = Number(b.dataset.f);
            const again = tape.now[id].again !== "";
            const changed = tape.changed(id);
            if (b.classList.contains("moved") || changed) {
                b.classList.toggle("moved", changed);
                b.classList.toggle("again", again);
                if (b.dataset.as === undefined) {
                    b.textContent = shown(id, { less: b.dataset.less !== undefined, short: b.dataset.short !== undefined });
                }
            }
        }
    }

    function realOf(id) {
        const f = tape.now[id];
        return f.again === "" ? Number(f.value) / 10 ** f.decimals : 0;
    }

    /* As long, against the longest of its table, as the figure. */
    function showBars() {
        for (const bar of bars) {
            const others = [...bar.closest("table").querySelectorAll("[data-bar]")];
            const most = Math.max(...others.map((b) => realOf(Number(b.dataset.bar))));
            const part = most > 0 ? realOf(Number(bar.dataset.bar)) / most * 100 : 0;
            bar.style.width = Math.max(0, part).toFixed(1) + "%";
        }
    }

    function totalWords() {
        const now = tape.now[data.total];
        const was = tape.made[data.total];
        if (now.again !== "") {
            return "the total can't be told here: run again";
        }
        const decimals = Math.max(now.decimals, was.decimals);
        const more = rescaled(now.value, now.decimals, decimals) - rescaled(was.value, was.decimals, decimals);
        return "total " + shown(data.total, {}) + (more === 0n ? " as it was" : ", " + (more > 0n ? "+" : "") + plain(more, decimals));
    }

    function showState(wrong) {
        const count = moved.length;
        const again = tape.now.some((f) => f !== null && f.again !== "");
        const plans = tape.figures.some((f, id) => f !== 0 && f[AT.OP] === OP.CHOSEN && tape.now[id].again !== "" &&
            ["boards", "sheets"].includes(data.texts[f[AT.REST]]));
        let words = count === 0 ? "as the program made it" : (count === 1 ? "1 number changed: " : count + " numbers changed: ") + totalWords();
        if (again && tape.now[data.total].again === "") {
            words += "; some figures have to be run again";
        }
        state.textContent = wrong !== "" ? wrong : words;
        document.querySelectorAll(".fixed").forEach((e) => {
            e.dataset.made = e.dataset.made === undefined ? e.textContent : e.dataset.made;
            e.textContent = count > 0 ? "run again" : e.dataset.made;
        });
        document.querySelectorAll(".again-plan").forEach((e) => {
            e.hidden = !plans;
        });
    }

    /* A line a change, as it would stand in the file. */
    function showChanges() {
        const lines = element("ul");
        for (const { rate, box, i } of moved) {
            const words = "[" + rate.section + "] " + rate.key + " = " + rate.before + box.value.trim() + rate.unit + rate.behind;
            const line = element("li", words + " ");
            const undo = element("button", "as read", "plain");
            undo.type = "button";
            undo.setAttribute("aria-label", "as read: " + rate.section + ", " + rate.key);
            undo.addEventListener("click", () => {
                box.value = asRead[i];
                follow();
                box.focus();
            });
            line.append(undo);
            lines.append(line);
        }
        list.hidden = moved.length === 0;
        list.replaceChildren(element("p", "Changed here; to keep it, write it into its file and run again:"), lines);
    }

    function wantedWords(rate) {
        const least = rate.least === 0 && !rate.none ? "above 0" : rate.least;
        const range = rate.most !== undefined ? least + " to " + rate.most : least + (least === "above 0" ? "" : " or more");
        return "[" + rate.section + "] " + rate.key + ": expected a number, " + range + ", with at most " + rate.decimals + " decimals";
    }

    function follow() {
        const changes = new Map();
        const numbers = boxes.map(numberOf);
        const over = paidTooMuch(numbers);
        let wrong = "";
        moved = [];
        boxes.forEach((box, i) => {
            const rate = rateOf(box);
            const refused = over && rate.payment && numbers[i] !== undefined;
            const number = refused ? null : numbers[i];
            box.setAttribute("aria-invalid", String(number === null));
            if (number === null) {
                wrong = refused ? "deposit and stages: more than 100 % of the total" : wantedWords(rate);
            }
            if (number) {
                moved.push({ rate, box, i });
                rate.givens.forEach((id) => changes.set(id, number));
            }
            box.closest("tr").classList.toggle("moved", number !== undefined);
        });
        tape.run(changes);
        showFigures();
        showBars();
        showChanges();
        showState(wrong);
    }

    let waiting = 0;
    boxes.forEach((box) => {
        box.inputMode = "decimal";
        box.addEventListener("input", () => {
            clearTimeout(waiting);
            waiting = setTimeout(follow, 150);
        });
        box.addEventListener("change", follow);
    });
    return { boxes, follow, rateOf };
})();

/* A browser may fill boxes with what stood there before the page was loaded anew. */
if (moving.boxes.some((box) => box.value !== box.defaultValue)) {
    moving.boxes.forEach((box) => {
        box.value = box.defaultValue;
    });
}
