/* SPDX-License-Identifier: MIT */
/* What the page does: a number opens to how it was made, boxes are remembered, plans are shown
   large. */

const data = JSON.parse(document.getElementById("data").textContent);
const tape = Tape(data);

/* --- words --- */

/* 410 at 2 decimals: 4.10. */
function plain(value, decimals) {
    const digits = (value < 0n ? -value : value).toString().padStart(decimals + 1, "0");
    const whole = digits.slice(0, digits.length - decimals);
    return (value < 0n ? "-" : "") + whole + (decimals > 0 ? "." + digits.slice(-decimals) : "");
}

function withoutNoughts(text) {
    return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

function unitOf(id) {
    return data.texts[tape.figures[id][AT.UNIT]];
}

function isMoney(id) {
    return tape.figures[id][AT.UNIT] === data.moneyUnit;
}

/* A figure as its papers show it. */
function shown(id, marks) {
    const f = tape.now[id];
    if (f.again !== "") {
        return f.again;
    }
    const short = isMoney(id) && f.decimals < data.money;
    const value = short ? rescaled(f.value, f.decimals, data.money) : f.value;
    const text = plain(marks.less ? -value : value, short ? data.money : f.decimals);
    return marks.short && !isMoney(id) ? withoutNoughts(text) : text;
}

function nameOf(id) {
    const subject = data.texts[tape.figures[id][AT.SUBJECT]];
    return data.texts[tape.figures[id][AT.LABEL]] + (subject === "" ? "" : ", " + subject);
}

function valueWords(id) {
    const unit = unitOf(id);
    const length = unit === "in" || unit === "mm";
    return shown(id, { short: length }) + (unit === "" || tape.now[id].again !== "" ? "" : " " + unit);
}

/* Whether a given was worked out from what stands at its place, as the width of a door from its opening. */
function isWorkedOut(figure) {
    return figure[AT.REST + 2] === -1;
}

/* Where a given comes from. */
function originWords(figure) {
    const rest = figure.slice(AT.REST);
    if (rest.length === 0) {
        return "read off the drawing of the door";
    }
    if (rest.length === 1) {
        return "source: " + data.texts[rest[0]];
    }
    const setting = isWorkedOut(figure) ? "" : data.texts[rest[2]];
    const spot = rest.length > 3 ? data.texts[rest[3]] : "line " + rest[1];
    return "from " + data.texts[rest[0]] + ", " + spot + (setting === "" ? "" : ": " + setting);
}

/* --- how a figure was made --- */

function element(tag, words, name) {
    const e = document.createElement(tag);
    if (words !== undefined) {
        e.textContent = words;
    }
    if (name !== undefined) {
        e.className = name;
    }
    return e;
}

function figureButton(id) {
    const b = element("button", valueWords(id), "f");
    b.type = "button";
    b.dataset.open = id;
    return b;
}

/* A line of what a figure was made from. */
function operandLine(sign, ids, taken) {
    const line = element("li", undefined, taken ? "taken" : "");
    const words = element("span");
    line.append(element("span", sign, "sign"), words);
    ids.forEach((id, i) => {
        if (i > 0) {
            words.append(" \u00d7 ");
        }
        words.append(figureButton(id), " " + nameOf(id));
        if (tape.figures[id][AT.OP] === OP.GIVEN) {
            words.append(element("span", originWords(tape.figures[id]), "from"));
        }
    });
    return line;
}

const sentences = {
    [OP.SUM]: "A sum:",
    [OP.TOTAL]: "How many times how much, all added up:",
    [OP.RATIO]: "A product or quotient:",
    [OP.LARGER]: "The larger of:",
    [OP.SMALLER]: "The smaller of:",
    [OP.UP]: "Up to a multiple:",
    [OP.PICK_UPTO]: "From a table, the value beside the first limit that is not less; past the last, the last:",
    [OP.PICK_FROM]: "From a table, the value beside the last limit that is not more; below the first, the first:",
};

function operandLines(id) {
    const op = tape.figures[id][AT.OP];
    const of = tape.operands[id];
    const lines = [];
    if (op === OP.TOTAL) {
        for (let i = 0; i + 1 < of.length; i += 2) {
            lines.push(operandLine(i === 0 ? "" : "+", [of[i].id, of[i + 1].id]));
        }
    } else if (op === OP.PICK_UPTO || op === OP.PICK_FROM) {
        const row = pickedRow(op, tape.now[of[0].id], of.map((o) => tape.now[o.id]));
        lines.push(operandLine("by", [of[0].id]));
        for (let i = 1; i + 1 < of.length; i += 2) {
            const line = operandLine(i === 1 + 2 * row ? "\u2192" : "", [of[i + 1].id], i === 1 + 2 * row);
            line.lastChild.prepend(valueWords(of[i].id) + ": ");
            lines.push(line);
        }
    } else {
        of.forEach((o, i) => {
            const signs = op === OP.RATIO ? ["\u00d7", "\u00f7"] : op === OP.SUM ? ["+", "\u2212"] : op === OP.UP ? ["to", "to"] : ["", ""];
            lines.push(operandLine(o.minus ? signs[1] : i === 0 ? "" : signs[0], [o.id]));
        });
    }
    return lines;
}

function makingOf(id) {
    const figure = tape.figures[id];
    const parts = [element("p", valueWords(id), "value")];
    if (tape.changed(id) && tape.now[id].again === "") {
        const was = plain(tape.made[id].value, tape.made[id].decimals);
        parts.push(element("p", "Changed; as the program made it: " + was, "note"));
    }
    if (figure[AT.OP] === OP.GIVEN) {
        const [before, after] = isWorkedOut(figure) ? ["Worked out ", ", its style and how it fits."] : ["Given, ", "."];
        parts.push(element("p", before + originWords(figure) + after));
        return parts;
    }
    if (figure[AT.OP] === OP.CHOSEN) {
        const words = "Chosen by '" + data.texts[figure[AT.REST]] + "', its result " + (figure[AT.REST + 1] + 1) +
            ", from these values. It is not made again here: run again after a change of one of them.";
        parts.push(element("p", words));
    } else {
        parts.push(element("p", sentences[figure[AT.OP]]));
    }
    const list = element("ul", undefined, "made");
    list.append(...operandLines(id));
    parts.push(list);
    return parts;
}

const how = (function () {
    const dialog = element("dialog");
    const title = element("h2");
    const body = element("div", undefined, "body");
    const back = element("button", "Back", "plain");
    const close = element("button", "Close", "plain");
    const head = element("div", undefined, "head");
    const tools = element("div", undefined, "tools");
    let trail = [];

    title.id = "how-title";
    title.tabIndex = -1;
    dialog.id = "how";
    dialog.setAttribute("aria-labelledby", title.id);
    back.type = close.type = "button";
    tools.append(back, close);
    head.append(title, tools);
    dialog.append(head, body);
    document.body.append(dialog);

    function fill() {
        const id = trail[trail.length - 1];
        title.textContent = nameOf(id);
        body.replaceChildren(...makingOf(id));
        back.hidden = trail.length < 2;
        dialog.scrollTop = 0;
        title.focus();
    }
    back.addEventListener("click", () => {
        trail.pop();
        fill();
    });
    close.addEventListener("click", () => dialog.close());
    dialog.addEventListener("click", (event) => {
        if (event.target === dialog) {
            dialog.close();
        }
    });
    return {
        open(id, further) {
            trail = further ? trail.concat(id) : [id];
            if (!dialog.open) {
                dialog.showModal();
            }
            fill();
        },
    };
})();

document.addEventListener("click", (event) => {
    const button = event.target.closest("button.f");
    if (button !== null) {
        const further = button.dataset.open !== undefined;
        how.open(Number(further ? button.dataset.open : button.dataset.f), further);
    }
});

/* --- boxes --- */

/* A browser may refuse to keep anything: then boxes work and are forgotten. */
const store = {
    key: "doorcost ticks: " + data.job,
    read() {
        try {
            return new Set(JSON.parse(localStorage.getItem(this.key)) || []);
        } catch (error) {
            return new Set();
        }
    },
    write(ticks) {
        try {
            localStorage.setItem(this.key, JSON.stringify([...ticks]));
        } catch (error) {
            /* nothing is lost but the ticks */
        }
    },
};

(function () {
    const boxes = document.querySelectorAll("input[data-tick]");
    const ticks = store.read();
    boxes.forEach((box) => {
        box.checked = ticks.has(box.dataset.tick);
        box.addEventListener("change", () => {
            const kept = store.read();
            if (box.checked) {
                kept.add(box.dataset.tick);
            } else {
                kept.delete(box.dataset.tick);
            }
            store.write(kept);
        });
    });
})();

/* --- plans --- */

document.querySelectorAll("div.plan").forEach((frame) => {
    const words = frame.parentElement.querySelector("figcaption").textContent;
    function turn() {
        const large = frame.classList.toggle("large");
        frame.parentElement.classList.toggle("large", large);
        frame.setAttribute("aria-pressed", String(large));
    }
    frame.tabIndex = 0;
    frame.setAttribute("role", "button");
    frame.setAttribute("aria-pressed", "false");
    frame.setAttribute("aria-label", "Show large: " + words);
    frame.addEventListener("click", turn);
    frame.addEventListener("keydown", (event) => {
        if (event.key === "Enter" || event.key === " ") {
            event.preventDefault();
            turn();
        }
    });
});

/* --- tables --- */

/* What is laid out as blocks on a phone is still read aloud as a table. */
(function () {
    const roles = { TABLE: "table", THEAD: "rowgroup", TBODY: "rowgroup", TR: "row", TD: "cell" };
    document.querySelectorAll("table, thead, tbody, tr, td, th").forEach((e) => {
        const head = e.scope === "col" ? "columnheader" : e.tagName === "TH" ? "rowheader" : "cell";
        e.setAttribute("role", roles[e.tagName] || head);
    });
})();

/* --- what is not in sight --- */

/* Laid out part by part once the page is shown: what is left to the browser (page.css) is not there
   for who has it read aloud. */
addEventListener("load", function layOutAll() {
    const soon = window.requestIdleCallback || ((next) => setTimeout(next, 30));
    const parts = [...document.querySelectorAll("main > section")];
    function next() {
        const part = parts.shift();
        if (part !== undefined) {
            part.style.contentVisibility = "visible";
            soon(next);
        }
    }
    soon(next);
});

/* What has the focus is not scrolled below the line that stays in sight, however high that is. */
new ResizeObserver(([bar]) => {
    document.documentElement.style.scrollPaddingTop = Math.ceil(bar.borderBoxSize[0].blockSize) + 8 + "px";
}).observe(document.getElementById("bar"));
