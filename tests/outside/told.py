# SPDX-License-Identifier: MIT
"""What the program tells as JSON, for tests that hold it against edited files."""
import contextlib
import json
import os
import shutil
import subprocess
import sys
import tempfile

# Where `compare` has what a job comes to.
MONEY = {"client pays": ("sale", "total"), "before tax": ("sale", "before tax"),
         "to buy": ("purchase", "spent in all")}


def fail(text):
    """Ends the test, with its name before what is wrong."""
    sys.exit(f"{os.path.basename(sys.argv[0])}: {text}")


def run(program, command, job, *more):
    """The estimates that a command tells of."""
    done = subprocess.run([program, command, job, *more, "--json"], capture_output=True, text=True,
                          check=False)
    if done.returncode != 0:
        fail(f"{command} {job} {' '.join(more)}: {done.stderr}")
    return json.loads(done.stdout)["estimates"]


@contextlib.contextmanager
def copied(samples):
    """A folder with copies of `rates` and `samples` of the folder `samples`, to be edited."""
    with tempfile.TemporaryDirectory() as folder:
        for part in ("rates", "samples"):
            shutil.copytree(os.path.join(samples, part), os.path.join(folder, part))
        yield folder
