/* SPDX-License-Identifier: MIT */
/* Looks at a page of `doorcost show` from within, as its readers do: what runs over the edge, what
   has no name for who does not see it, what is too pale, what is not said as it is figured. */

window.look = (function () {

const faults = [];
function check(right, words) {
    if (!right && faults.length < 60) {
        faults.push(words);
    }
}

function about(e) {
    return "<" + e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + "> '" + e.textContent.trim().slice(0, 40) + "'";
}

function isSeen(e) {
    return e.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true });
}

/* --- layout --- */

/* What may be wider than its frame because it can be moved within it. */
function moves(e, view) {
    for (; e !== null; e = e.parentElement) {
        const flow = view.getComputedStyle(e).overflowX;
        if (flow === "auto" || flow === "hidden") {
            return true;
        }
    }
    return false;
}

function layout(doc, view, width, name) {
    const root = doc.documentElement;
    check(root.scrollWidth <= width, name + ": " + root.scrollWidth + " wide at " + width);
    for (const e of doc.body.querySelectorAll("*")) {
        const box = e.getBoundingClientRect();
        if (box.width > 0 && box.right > width + 1 && isSeen(e) && !moves(e, view)) {
            check(false, name + " at " + width + ": runs over the edge: " + about(e));
        }
    }
}

/* On a wide page like tables have like columns, and the words of drawings in a row begin on one line. */
function lines(doc, width, name) {
    if (width < 1000) {
        return;
    }
    const edges = (table) => [...table.tHead.rows[0].cells].map((c) => Math.round(c.getBoundingClientRect().left)).join();
    const cut = [...doc.querySelectorAll("#cut table")].map(edges);
    check(new Set(cut).size <= 1, name + ": columns of what is cut begin at " + cut.join(" and "));
    const rows = new Map();
    for (const figure of doc.querySelectorAll(".looks figure")) {
        const row = Math.round(figure.getBoundingClientRect().bottom);
        const begins = Math.round(figure.querySelector("figcaption").getBoundingClientRect().top);
        check((rows.get(row) || begins) === begins, name + ": words beside each other begin at " + begins + " and " + rows.get(row));
        rows.set(row, begins);
    }
}

/* --- names, headings, places (WCAG 2.2: 1.1.1, 1.3.1, 2.4.1, 2.4.2, 2.4.6, 3.1.1, 4.1.2) --- */

function nameOf(e, doc) {
    const by = e.getAttribute("aria-labelledby");
    const label = e.labels !== undefined && e.labels !== null && e.labels.length > 0 ? e.labels[0].textContent : "";
    return (by === null ? "" : (doc.getElementById(by) || { textContent: "" }).textContent) ||
        e.getAttribute("aria-label") || label || e.textContent || e.getAttribute("alt") || "";
}

function names(doc, name) {
    for (const e of doc.querySelectorAll("button, a, input, select, textarea, output, [role=img], [role=button], section, nav, table, dialog")) {
        const words = e.tagName === "TABLE" ? (e.caption || { textContent: "" }).textContent : nameOf(e, doc);
        check(words.trim() !== "" || e.tagName === "DIALOG", name + ": has no name: " + e.outerHTML.slice(0, 90));
    }
    for (const e of doc.querySelectorAll("img")) {
        check(e.alt !== "", name + ": a picture without words");
    }
    for (const e of doc.querySelectorAll("svg")) {
        check(e.getAttribute("role") === "img", name + ": a drawing that is no picture to a screen reader");
    }
    for (const e of doc.querySelectorAll("td[data-l]")) {
        check(e.closest("table").tHead !== null, name + ": a table without heads");
    }
}

function structure(doc, name) {
    const ids = new Set();
    let level = 0;
    check(doc.documentElement.lang !== "" && doc.title !== "", name + ": no language or no title");
    check(doc.querySelectorAll("main").length === 1 && doc.querySelectorAll("h1").length === 1, name + ": main and h1 once each");
    for (const e of doc.querySelectorAll("[id]")) {
        check(!ids.has(e.id), name + ": id '" + e.id + "' twice");
        ids.add(e.id);
    }
    for (const e of doc.querySelectorAll("[aria-labelledby]")) {
        check(ids.has(e.getAttribute("aria-labelledby")), name + ": named by what is not there: " + about(e));
    }
    for (const e of doc.querySelectorAll("a[href^='#']")) {
        check(ids.has(e.getAttribute("href").slice(1)), name + ": leads nowhere: " + about(e));
    }
    for (const e of doc.querySelectorAll("h1, h2, h3, h4")) {
        const now = Number(e.tagName[1]);
        check(now <= level + 1 || e.closest("dialog") !== null, name + ": a heading too deep: " + about(e));
        level = e.closest("dialog") === null ? now : level;
    }
}

/* --- contrast: WCAG 2.2, 1.4.3, with the formula of its "relative luminance" --- */

function luminance(color) {
    const [r, g, b] = color.match(/[\d.]+/g).slice(0, 3).map((c) => {
        const part = Number(c) / 255;
        return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function ground(e, view) {
    for (; e !== null; e = e.parentElement) {
        const color = view.getComputedStyle(e).backgroundColor;
        if (!/, 0\)$|transparent/.test(color)) {
            return color;
        }
    }
    return "rgb(255, 255, 255)";
}

function contrast(doc, view, name) {
    const walker = doc.createTreeWalker(doc.body, NodeFilter.SHOW_TEXT);
    const seen = new Map();
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
        const e = node.parentElement;
        if (node.data.trim() === "" || e.closest("script, svg") !== null || !isSeen(e)) {
            continue;
        }
        const pair = view.getComputedStyle(e).color + " on " + ground(e, view);
        if (!seen.has(pair)) {
            seen.set(pair, e);
        }
    }
    for (const [pair, e] of seen) {
        const [x, y] = pair.split(" on ").map(luminance);
        const ratio = (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
        check(ratio >= 4.5, name + ": contrast " + ratio.toFixed(2) + ", " + pair + ": " + about(e));
    }
}

/* --- what the shop's page does --- */

function marksOf(button) {
    return { less: button.dataset.less !== undefined, short: button.dataset.short !== undefined };
}

/* Each number as it was written against itself as the page would say it. */
function figures(doc, name) {
    for (const b of doc.querySelectorAll("button.f[data-f]")) {
        if (b.dataset.as === undefined) {
            const said = shown(Number(b.dataset.f), marksOf(b));
            check(said === b.textContent, name + ": figure " + b.dataset.f + " is written " + b.textContent + ", said " + said);
        }
    }
    for (let id = 1; id < tape.figures.length; id++) {
        check(makingOf(id).length >= 2, name + ": figure " + id + " is not told");
    }
}

/* The tape made again with nothing changed, each figure by its operation. */
function again(name) {
    for (let id = 1; id < tape.figures.length; id++) {
        const f = tape.makeAgain(id);
        check(f === null || (f.value === tape.made[id].value && f.decimals === tape.made[id].decimals),
            name + ": figure " + id + " made again is " + (f && f.value));
    }
}

function opens(doc, view, name) {
    const total = doc.querySelector("#bar button.f");
    const dialog = doc.getElementById("how");
    total.focus();
    total.click();
    check(dialog.open && dialog.querySelector("h2") === doc.activeElement, name + ": the total does not open");
    dialog.querySelector("ul.made button.f").click();
    check(dialog.querySelectorAll("button")[0].hidden === false, name + ": no way back");
    contrast(doc, view, name + ", how");
    dialog.close();
    check(doc.activeElement === total, name + ": the way back to the number is lost");
}

/* What a page looks like at the width that it has. how: whether what it does is tried too. */
function look(name, width, how) {
    const timing = performance.getEntriesByType("navigation")[0];
    faults.length = 0;
    layout(document, window, width, name);
    lines(document, width, name);
    structure(document, name);
    names(document, name);
    contrast(document, window, name);
    if (how) {
        figures(document, name);
        again(name);
        opens(document, window, name);
    }
    return { faults, milliseconds: Math.round(timing.loadEventEnd - timing.responseEnd) };
}

return look;
})();
