"""A headless Chromium driven over WebDriver, with nothing but the standard library.

Debian packages: chromium, chromium-driver.
"""

import base64
import json
import os
import re
import shutil
import subprocess
import tempfile
import time
import urllib.error
import urllib.request

ELEMENT = "element-6066-11e4-a52e-4f735466cecf"  # the W3C's name of a reference to an element
KEYS = {"ArrowLeft": "\ue012", "ArrowRight": "\ue014", "Home": "\ue011", "End": "\ue010", "Tab": "\ue004",
        "Enter": "\ue007"}


class Browser:
    """One browser with a profile of its own in a new folder, both gone with close()."""

    def __init__(self):
        for program in ("chromium", "chromedriver"):
            if shutil.which(program) is None:
                raise SystemExit(f"{program} is missing: install the Debian packages chromium and chromium-driver")
        self.home = tempfile.mkdtemp(prefix="arrisline-browser-")
        surroundings = dict(os.environ, HOME=self.home, XDG_CONFIG_HOME=self.home, XDG_CACHE_HOME=self.home)
        self.driver = subprocess.Popen(["chromedriver", "--port=0"], stdout=subprocess.PIPE,
                                       stderr=subprocess.DEVNULL, text=True, env=surroundings)
        self.session = None
        try:
            self.begin()
        except BaseException:
            self.close()
            raise

    def begin(self):
        port = None
        for line in self.driver.stdout:
            started = re.search(r"started successfully on port (\d+)", line)
            if started:
                port = started.group(1)
                break
        if port is None:
            raise SystemExit("chromedriver did not start")
        self.base = f"http://127.0.0.1:{port}"
        switches = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
                    "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
                    f"--user-data-dir={self.home}/profile"]
        wanted = {"browserName": "chrome", "goog:chromeOptions": {"binary": shutil.which("chromium"), "args": switches},
                  "goog:loggingPrefs": {"browser": "ALL", "performance": "ALL"}}
        self.session = self.call("POST", "/session", {"capabilities": {"alwaysMatch": wanted}})["sessionId"]

    def close(self):
        try:
            if self.session is not None:
                self.do("DELETE", "")
        finally:
            self.driver.terminate()
            self.driver.wait()
            shutil.rmtree(self.home, ignore_errors=True)

    def call(self, method, path, body=None):
        data = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self.base + path, data, {"Content-Type": "application/json"}, method=method)
        try:
            # No proxy: this is the machine's own.
            with urllib.request.build_opener(urllib.request.ProxyHandler({})).open(request, timeout=120) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as error:
            raise RuntimeError(f"{method} {path}: {json.load(error)['value']['message']}") from None

    def do(self, method, path, body=None):
        return self.call(method, f"/session/{self.session}{path}", body)

    def devtools(self, command, **parameters):
        return self.do("POST", "/goog/cdp/execute", {"cmd": command, "params": parameters})

    def open(self, path):
        # By way of an empty page, so that an address that differs only after "#" is loaded anew.
        for address in ("about:blank", path if ":" in path else f"file://{path}"):
            self.do("POST", "/url", {"url": address})

    def ask(self, script, *arguments):
        """What the body of a function in the page returns."""
        return self.do("POST", "/execute/sync", {"script": script, "args": list(arguments)})

    def window(self, width, height, touch=False):
        self.devtools("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1,
                      mobile=touch)
        self.devtools("Emulation.setTouchEmulationEnabled", enabled=touch)

    def prefer(self, **features):
        """prefer(color_scheme="dark")"""
        self.devtools("Emulation.setEmulatedMedia", features=[
            {"name": "prefers-" + name.replace("_", "-"), "value": value} for name, value in features.items()])

    def scripts(self, allowed):
        self.devtools("Emulation.setScriptExecutionDisabled", value=not allowed)

    def key(self, name):
        self.do("POST", "/actions", {"actions": [{"type": "key", "id": "keys", "actions": [
            {"type": "keyDown", "value": KEYS[name]}, {"type": "keyUp", "value": KEYS[name]}]}]})

    def swipe(self, start, end):
        self.do("POST", "/actions", {"actions": [
            {"type": "pointer", "id": "finger", "parameters": {"pointerType": "touch"}, "actions": [
                {"type": "pointerMove", "duration": 0, "x": start[0], "y": start[1]},
                {"type": "pointerDown", "button": 0},
                {"type": "pointerMove", "duration": 80, "x": (start[0] + end[0]) // 2, "y": (start[1] + end[1]) // 2},
                {"type": "pointerMove", "duration": 80, "x": end[0], "y": end[1]},
                {"type": "pointerUp", "button": 0}]}]})
        self.do("DELETE", "/actions")

    def click(self, selector):
        element = self.do("POST", "/element", {"using": "css selector", "value": selector})[ELEMENT]
        self.do("POST", f"/element/{element}/click", {})

    def log(self, kind):
        """What was logged since the last time: of "browser" the console, of "performance" the network."""
        return self.do("POST", "/se/log", {"type": kind})

    def requests(self):
        told = [json.loads(entry["message"])["message"] for entry in self.log("performance")]
        return [message["params"]["request"]["url"] for message in told
                if message["method"] == "Network.requestWillBeSent"]

    def screenshot(self, path):
        time.sleep(0.3)  # a picture that fades in
        with open(path, "wb") as file:
            file.write(base64.b64decode(self.do("GET", "/screenshot")))

    def print_to(self, path):
        paper = {"page": {"width": 21.0, "height": 29.7}}
        with open(path, "wb") as file:
            file.write(base64.b64decode(self.do("POST", "/print", paper)))
