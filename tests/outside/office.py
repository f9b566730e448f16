# SPDX-License-Identifier: MIT
"""One office for a whole test: opens workbooks, changes cells, recalculates, reads all cells back.

It runs without a window, with a profile of its own in a folder that is thrown away, listens on a
pipe of its own, and keeps on load the values that a workbook has stored.
"""
import os
import subprocess
import tempfile
import time

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

PROFILE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry"
 xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>1</value></prop></item>
</oor:items>
"""
ERRORS = 4  # of com.sun.star.sheet.FormulaResult


def option(name, value):
    made = PropertyValue()
    made.Name, made.Value = name, value
    return made


class Office:
    def __enter__(self):
        self.folder = tempfile.TemporaryDirectory(prefix="doorcost-office-")
        user = os.path.join(self.folder.name, "user")
        os.makedirs(user)
        with open(os.path.join(user, "registrymodifications.xcu"), "w", encoding="utf-8") as out:
            out.write(PROFILE)
        pipe = f"doorcost-{os.getpid()}"
        self.process = subprocess.Popen(
            ["soffice", f"-env:UserInstallation=file://{self.folder.name}", "--headless",
             "--norestore", "--nologo", f"--accept=pipe,name={pipe};urp;"],
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        context = uno.getComponentContext()
        resolver = context.ServiceManager.createInstanceWithContext(
            "com.sun.star.bridge.UnoUrlResolver", context)
        end = time.monotonic() + 120
        while True:
            try:
                there = resolver.resolve(
                    f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
                break
            except NoConnectException:
                if time.monotonic() > end or self.process.poll() is not None:
                    self.__exit__()
                    raise
                time.sleep(0.1)
        self.desktop = there.ServiceManager.createInstanceWithContext(
            "com.sun.star.frame.Desktop", there)
        return self

    def __exit__(self, *_):
        try:
            self.desktop.terminate()
            self.process.wait(30)
        except Exception:  # whatever it says, it must be gone
            pass
        if self.process.poll() is None:
            self.process.terminate()
            try:
                self.process.wait(10)
            except subprocess.TimeoutExpired:
                self.process.kill()
                self.process.wait()
        self.folder.cleanup()

    def open(self, path):
        return Workbook(self.desktop.loadComponentFromURL(
            "file://" + str(path), "_blank", 0, (option("Hidden", True),)))


class Workbook:
    """An open workbook; rows and columns count from 0."""

    def __init__(self, document):
        self.document = document
        self.sheets = {sheet.Name: sheet for sheet in document.Sheets}
        self.areas = {}
        for name, sheet in self.sheets.items():
            cursor = sheet.createCursor()
            cursor.gotoEndOfUsedArea(False)
            last = cursor.RangeAddress
            self.areas[name] = sheet.getCellRangeByPosition(0, 0, last.EndColumn, last.EndRow)

    def recalculate(self):
        self.document.calculateAll()

    def set(self, sheet, row, column, value):
        self.sheets[sheet].getCellByPosition(column, row).Value = value

    def value(self, sheet, row, column):
        return self.sheets[sheet].getCellByPosition(column, row).Value

    def rows(self):
        """{sheet: rows of cells}: a number, a text, or '' of each cell."""
        return {name: area.getDataArray() for name, area in self.areas.items()}

    def errors(self):
        """The cells whose formula gives an error."""
        found = []
        for name, sheet in self.sheets.items():
            found += [f"{name}!{r.StartColumn},{r.StartRow}"
                      for r in sheet.queryFormulaCells(ERRORS).RangeAddresses]
        return found

    def save_as(self, path, kind):
        self.document.storeToURL("file://" + str(path), (option("FilterName", kind),))

    def close(self):
        self.document.close(True)
