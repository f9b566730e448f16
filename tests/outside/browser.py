# SPDX-License-Identifier: MIT
"""Chromium, driven over its pipes by the open DevTools protocol: no network, no library."""
import json
import os
import select
import subprocess
import tempfile
import time

SECONDS = 60  # that an answer may take


class Browser:
    """A page of its own; console, requests and errors are kept in `heard`."""

    def __init__(self):
        self.profile = tempfile.TemporaryDirectory(ignore_cleanup_errors=True)
        to_read, self.to = os.pipe()
        self.back, from_write = os.pipe()

        def hand_over():
            os.dup2(to_read, 103)  # beyond what is open, so that neither is written over
            os.dup2(from_write, 104)
            os.dup2(103, 3)
            os.dup2(104, 4)

        self.process = subprocess.Popen(
            ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage",
             "--no-first-run", "--disable-background-networking", "--disable-component-update",
             "--remote-debugging-pipe", f"--user-data-dir={self.profile.name}", "about:blank"],
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, preexec_fn=hand_over,
            close_fds=False)
        os.close(to_read)
        os.close(from_write)
        self.buffer = b""
        self.count = 0
        self.heard = []
        self.session = None
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self.call(domain + ".enable")

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.process.terminate()
        self.process.wait()
        os.close(self.to)
        os.close(self.back)
        self.profile.cleanup()

    def message(self):
        until = time.monotonic() + SECONDS
        while b"\0" not in self.buffer:
            ready, _, _ = select.select([self.back], [], [], max(0, until - time.monotonic()))
            part = os.read(self.back, 1 << 20) if ready else b""
            if not part:
                raise RuntimeError("the browser does not answer")
            self.buffer += part
        line, self.buffer = self.buffer.split(b"\0", 1)
        return json.loads(line)

    def note(self, message):
        """Keeps what a page that is in order never says."""
        method, params = message.get("method"), message.get("params", {})
        if method == "Runtime.exceptionThrown":
            details = params["exceptionDetails"]
            self.heard.append("error: " + details.get("exception", {}).get("description", details["text"]))
        elif method == "Runtime.consoleAPICalled":
            self.heard.append("console: " + " ".join(str(a.get("value")) for a in params["args"]))
        elif method == "Log.entryAdded":
            self.heard.append("console: " + params["entry"]["text"])
        elif method == "Network.requestWillBeSent":
            url = params["request"]["url"]
            if not url.startswith("data:") and params.get("type") != "Document":
                self.heard.append("request: " + url)

    def call(self, method, **params):
        self.count += 1
        message = {"id": self.count, "method": method, "params": params}
        if self.session is not None:
            message["sessionId"] = self.session
        os.write(self.to, json.dumps(message).encode() + b"\0")
        while True:
            answer = self.message()
            if answer.get("id") == self.count:
                if "error" in answer:
                    raise RuntimeError(f"{method}: {answer['error']['message']}")
                return answer["result"]
            self.note(answer)

    def wait(self, method):
        while True:
            message = self.message()
            self.note(message)
            if message.get("method") == method:
                return

    def width(self, pixels, height=900):
        self.call("Emulation.setDeviceMetricsOverride", width=pixels, height=height,
                  deviceScaleFactor=1, mobile=pixels < 700)

    def open(self, path):
        self.call("Page.navigate", url="file://" + os.fspath(path))
        self.wait("Page.loadEventFired")

    KEYS = {"Tab": 9, "Enter": 13, "Escape": 27, " ": 32}  # as the standard of UI events counts them

    def press(self, key, shift=False):
        """A key of the keyboard down and up; any other than KEYS is typed as it is."""
        if key not in self.KEYS:
            self.call("Input.insertText", text=key)
            return
        text = {"Enter": "\r", " ": " "}.get(key)
        more = {"key": key, "code": "Space" if key == " " else key, "windowsVirtualKeyCode": self.KEYS[key],
                "modifiers": 8 if shift else 0}
        self.call("Input.dispatchKeyEvent", type="keyDown" if text else "rawKeyDown", **more,
                  **({"text": text} if text else {}))
        self.call("Input.dispatchKeyEvent", type="keyUp", **more)

    def ask(self, expression):
        """The value of an expression in the page, of a promise what it comes to."""
        answer = self.call("Runtime.evaluate", expression=expression, returnByValue=True,
                           awaitPromise=True)
        if "exceptionDetails" in answer:
            details = answer["exceptionDetails"]
            raise RuntimeError(details.get("exception", {}).get("description", details["text"]))
        return answer["result"].get("value")
