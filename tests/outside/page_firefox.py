#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Pages of `doorcost show` in Firefox: page_firefox.py PROGRAM JOB ...

Firefox without a window, driven over a socket of this machine by the protocol that it has for that
(Marionette: a length, a colon, JSON).  Each page and that for the client load without a message on
the console and without asking for anything, nothing runs over the edge at two widths, all parts are
laid out, the total is that of the quote, and with another labor rate that of `range --set`.  Where
there is no Firefox the test is left out (status 77).
"""
import json
import pathlib
import shutil
import socket
import subprocess
import sys
import tempfile
import time
from decimal import Decimal

LEFT_OUT = 77
SECONDS = 90  # that the start, or an answer, may take
RATE = "41"
PREFERENCES = """
user_pref("marionette.port", 0);
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("toolkit.telemetry.reportingpolicy.firstRun", false);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("app.update.enabled", false);
user_pref("network.connectivity-service.enabled", false);
user_pref("network.captive-portal-service.enabled", false);
user_pref("browser.startup.homepage", "about:blank");
"""

# What the page says of itself.
LOOK = """
const root = document.documentElement;
const laid = [...document.querySelectorAll("main > section")].every((s) => getComputedStyle(s).contentVisibility === "visible");
const total = document.querySelector("#bar button.f");
return { wide: root.scrollWidth, room: root.clientWidth, laid, total: total && total.textContent,
         asked: performance.getEntriesByType("resource").length };
"""
MOVE = """
const label = [...document.querySelectorAll("#rates label")].find((l) => l.textContent === "labor rate");
const box = document.getElementById(label.htmlFor);
box.value = arguments[0];
box.dispatchEvent(new Event("change"));
return { total: document.querySelector("#bar button.f").textContent, state: document.getElementById("state").textContent };
"""
# What the console has of the page.
MESSAGES = """
return Services.console.getMessageArray()
    .filter((m) => m instanceof Ci.nsIScriptError && m.sourceName.includes(arguments[0]))
    .map((m) => m.errorMessage);
"""


class Firefox:
    def __init__(self, folder):
        (folder / "user.js").write_text(PREFERENCES)
        self.process = subprocess.Popen(
            ["firefox-esr", "--headless", "--no-remote", "--marionette", "--remote-allow-system-access",
             "--profile", folder, "about:blank"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        self.count, self.buffer = 0, b""
        port, until = folder / "MarionetteActivePort", time.monotonic() + SECONDS
        while not (port.exists() and port.read_text().strip()):
            if time.monotonic() > until or self.process.poll() is not None:
                raise RuntimeError("Firefox does not start")
            time.sleep(0.1)
        self.socket = socket.create_connection(("127.0.0.1", int(port.read_text())), timeout=SECONDS)
        self.message()
        self.call("WebDriver:NewSession", pageLoadStrategy="normal")

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.socket.close()
        self.process.terminate()
        self.process.wait()

    def message(self):
        while b":" not in self.buffer:
            self.take()
        size, self.buffer = self.buffer.split(b":", 1)
        while len(self.buffer) < int(size):
            self.take()
        text, self.buffer = self.buffer[:int(size)], self.buffer[int(size):]
        return json.loads(text)

    def take(self):
        part = self.socket.recv(1 << 16)
        if not part:
            raise RuntimeError("Firefox went away")
        self.buffer += part

    def call(self, name, **params):
        self.count += 1
        text = json.dumps([0, self.count, name, params]).encode()
        self.socket.sendall(str(len(text)).encode() + b":" + text)
        _, number, error, result = self.message()
        if error is not None or number != self.count:
            raise RuntimeError(f"{name}: {error}")
        return result

    def ask(self, script, *words):
        return self.call("WebDriver:ExecuteScript", script=script, args=words)["value"]

    def told(self, page):
        """What the console has of a page."""
        self.call("Marionette:SetContext", value="chrome")
        found = self.ask(MESSAGES, page.name)
        self.call("Marionette:SetContext", value="content")
        return found

    def open(self, page):
        """Opens it and waits until all of it is laid out."""
        self.call("WebDriver:Navigate", url=page.as_uri())
        until = time.monotonic() + 10
        while not self.ask(LOOK)["laid"] and time.monotonic() < until:
            time.sleep(0.05)


def look(firefox, page):
    faults = []
    for width in (500, 1200):
        firefox.call("WebDriver:SetWindowRect", width=width, height=900)
        firefox.open(page)
        seen = firefox.ask(LOOK)
        if seen["wide"] > seen["room"]:
            faults.append(f"{page.name} at {width}: {seen['wide']} wide")
        if not seen["laid"] or seen["asked"]:
            faults.append(f"{page.name} at {width}: laid out {seen['laid']}, asked for {seen['asked']} things")
    return faults + [f"{page.name}: {words}" for words in firefox.told(page)]


def ask(*words):
    done = subprocess.run(words, check=True, capture_output=True, text=True)
    return json.loads(done.stdout)["estimates"][0]["range"]


def totals(firefox, page, doorcost, job):
    """The total as the page has it, and with another rate, against the program."""
    told = ask(doorcost, "range", job, "--set", f"labor rate = {RATE} per hour", "--json")
    stands = told["as it stands"]["client pays"]
    more = told["rates"][0]["high"]["adds"]["client pays"]
    wanted = str(Decimal(stands) + Decimal(more))
    before = firefox.ask(LOOK)["total"]
    after = firefox.ask(MOVE, RATE)
    if before != stands or after["total"] != wanted or wanted not in after["state"]:
        return [f"{page.name}: total {before}, then {after}; by the program {stands}, then {wanted}"]
    return []


def main():
    doorcost, *jobs = sys.argv[1:]
    if shutil.which("firefox-esr") is None:
        print("no firefox-esr here: left out")
        return LEFT_OUT
    faults = []
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile, \
            tempfile.TemporaryDirectory() as folder, Firefox(pathlib.Path(profile)) as firefox:
        for job in jobs:
            page = pathlib.Path(folder) / (pathlib.Path(job).stem + ".html")
            subprocess.run([doorcost, "show", job, "-o", page, "--client"], check=True, capture_output=True)
            faults += look(firefox, page.with_stem(page.stem + "-client")) + look(firefox, page)
            faults += totals(firefox, page, doorcost, job)
            faults += [f"{page.name}: {words}" for words in firefox.told(page)]
    for fault in faults:
        print(fault)
    print(f"{2 * len(jobs)} pages in Firefox, {len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
