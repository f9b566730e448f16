# SPDX-License-Identifier: MIT
"""Whether the tests see a wrong formula: changes one operator, constant or term of the computing
stages at a time, builds what it is in, and runs quick tests until one fails. Loops over lists,
room that is asked for and what a function tells of lack of it are left alone.

    nice /usr/bin/python3 tests/mutate.py [--count 100] [--seed 1] [--folder DIR] [--quick]
    nice /usr/bin/python3 tests/mutate.py --only FILE:LINE [--only ...]
    nice /usr/bin/python3 tests/mutate.py --change FILE OLD NEW [--test NAME ...]

The sources are copied to DIR (default build-mutate/) and changed there only. A change that does
not compile is none, and another is drawn for it. Printed are the changes that no test saw, with
file, line and text: each is either the same program in other words, and then is listed with its
reason in tests/mutate-same, or wants a test. --only tries all changes of a line, --change one of
the user's own (OLD as it first stands in FILE), --test runs only that test, --quick leaves out
those that are tried last. Status: 0, no change
survived; 1, some did. Run by hand: some 100 changes take 15 to 30 minutes of one core."""
import argparse
import collections
import json
import os
import random
import re
import shutil
import signal
import subprocess
import sys
import time

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
STAGES = ['door', 'stock', 'finish', 'labor', 'price', 'figure']
JOBS = ['samples/kitchen/kitchen.ini', 'samples/old-house/old-house.ini',
        'samples/metric/tea-kitchen.ini', 'samples/station/station.ini', 'tests/data/opens.ini']
STRUCK = [JOBS[0], JOBS[2]]
CASES = ['kitchen-check', 'metric-check', 'kitchen-buy', 'kitchen-finish', 'metric-finish',
         'compare-five-options', 'warnings', 'metric-quote']
# Tests that are tried last, as they take longest, and tests of single files that need no stage.
SLOW = ['test_problems', 'test_limits', 'cases', 'strike', 'reach', 'test_replay', 'afresh',
        'recompute', 'test_chance_files',
        'sizes', 'price age', 'spare rails', 'ways', 'rack plans']
ALONE = ['test_tape', 'test_ask', 'test_containers', 'test_driver', 'test_weigh', 'test_pick',
         'test_spares']
# Not programs of their own: scripts that are told the program and each of some jobs, and of some
# whether they are told the folder of both before.
BY_JOB = {'afresh': ('afresh.py', JOBS, False), 'recompute': ('recompute.py', JOBS, False),
          'strike': ('strike.py', STRUCK, True),
          'reach': ('reach.py', STRUCK, True), 'sizes': ('sizes.py', JOBS[1:2], True),
          'ways': ('make_or_buy.py', STRUCK, True),
          'price age': ('price_age.py', STRUCK, False),
          'spare rails': ('spare_rails.py', STRUCK, False),
          'rack plans': ('rack_plans.py', ['.'], False)}
SCRIPTS = ['cases', *BY_JOB]
# Tests of a stage that are the likeliest to see a change, until it is known which do.
FIRST = {'door': ['test_quantity', 'test_door', 'test_questions', 'test_questions_hardware',
                  'test_driver', 'test_sizes', 'test_blanks', 'outside_doors', 'outside_movement'],
         'stock': ['test_lumber', 'test_sheet', 'test_by_plan', 'test_rack', 'outside_choices'],
         'finish': ['test_finish', 'test_containers', 'test_together', 'outside_film'],
         'labor': ['test_labor', 'test_price_edges', 'outside_choices', 'test_kinds'],
         'price': ['test_price', 'test_strike', 'test_edited', 'test_rate_givens', 'test_chance_job',
                   'test_ways', 'outside_money'],
         'figure': ['test_tape', 'test_ask', 'test_weigh', 'test_price']}
# What reads otherwise in the copy: rooms are shared libraries there, so that after a change one of
# them is linked and no test.
IN_COPY = {os.path.join('src', 'cmake', 'rooms.cmake'): (br' STATIC ', b' SHARED '),
           os.path.join('src', 'cmake', 'hardening.cmake'):
               (br'(?s).*', b'target_compile_options(doorcost_flags INTERFACE -fPIC)\n')}
# Seconds of a test, and how many times what it takes unchanged where that is more: a change that
# never ends is seen, one on a busy machine is not.
LONGEST, TIMES = 60, 8

# What is found, and what is put for it. The code is formatted, so that operators of two operands
# stand between blanks and pointers do not.
SWAPS = [(' + ', ' - '), (' - ', ' + '), (' * ', ' / '), (' / ', ' * '), (' < ', ' <= '),
         (' <= ', ' < '), (' > ', ' >= '), (' >= ', ' > '), (' == ', ' != '), (' != ', ' == '),
         (' && ', ' || '), (' || ', ' && '), (' += ', ' -= '), (' -= ', ' += '),
         (' % ', ' / '), ('fig_larger(', 'fig_smaller('), ('fig_smaller(', 'fig_larger('),
         ('fig_pick_upto(', 'fig_pick_from('), ('fig_pick_from(', 'fig_pick_upto('),
         ('units->two', 'units->one'), ('units->hundred', 'units->one'),
         ('units->sixty', 'units->one'), ('.set ', '.set == false '), ('.length)', '.width)'),
         ('.width)', '.length)'), ('.width,', '.height,'), ('.height,', '.width,')]
NUMBER = re.compile(r'(?<![\w.\[%"])(\d+)(?![\w."])')
MINUS = re.compile(r'fig_minus\(([^()]*)\)')
# A figure of several between braces, or of a list of terms.
TERMS = re.compile(r'\{\{([^{}()]+, [^{}()]+)\}\}')
# Calls that make one figure of two, and which of their arguments is left where one is dropped.
CALLS = {'fig_plus': 2, 'calc_product': 3, 'calc_percent': 3}
# How long a list of figures is: one less, as one more would read behind it (the sanitizers see).
LIST = re.compile(r'\b(?:(?:fig|calc)_(?:sum|total|pick_upto|pick_from)|sum_shares)\('
                  r'[^;]*?, ([1-9]\d*)\)')
# What goes over a list: without it a test crashes, which would say nothing of the tests.
LOOP = re.compile(r'for \([^;{}]*;[^;{}]*;[^;{}]*\) \{')
EMPTY = re.compile(r'\(struct \w+\)\{0\}|(?<== )\{0\}')  # what is filled right after
# Nothing over or under: figure 1 of every tape is the count one, so that {{{1}}} is the same.
NOTHING = re.compile(r'\(figs\)\{\{\{0\}\}\}')
# What comes of a lack of it, and what is said of a call that no stage makes.
GUARD = re.compile(r'if \((?=[^{}]*(?:== NULL|failed|held|\boutputs\b|\bcount < [A-Z]))[^{}]*\) \{'
                   r'(?=[^{}]*(?:TAPE_MEMORY|memory|return false;))[^{}]*\}'
                   r'|if \((?:[^{}]*!tape_add_word\([^{}]*|tape->seen == NULL)\) \{'
                   r'\s*return \(fig\)\{0\};[\s\0]*\}')
# Whether memory was had, and what is given where it was not.
HELD = re.compile(r'(?:=|return) (?:[\w.>-]+ && )?[\w.>-]+ != NULL(?: && [\w.>-]+ != NULL)*;'
                  r'|\.memory = [\w.>-]+ != NULL|= held \? [^;]*: \(fig\)\{0\};'
                  r'|return \*held \? [^;:]* : 0;|bool failed =\s[^;]*== NULL[^;]*;')
# Room that is asked for: too little of it is seen by the sanitizers alone.
ARRAY = re.compile(r'^ *[\w ]+ \**\w+\[[^\]]*\](?= =|;)', re.M)
ROOM = re.compile(r'[^;{}]*\b(?:calloc|malloc|pool_take|pool_copy|array_grow|qsort)\([^;]*;'
                  r'|const size_t most = [^;]*\bin->[^;]*;')


def code_lines(text):
    """The lines with comments, texts and assertions blanked out, letter for letter."""
    def blank(match):
        return re.sub(r'[^\n]', '\0', match.group(0))
    text = re.sub(r'/\*.*?\*/|//[^\n]*', blank, text, flags=re.S)
    text = re.sub(r'"(?:[^"\\\n]|\\.)*"', blank, text)
    text = re.sub(r'assert\([^;]*;', blank, text)
    for left_alone in [LOOP, ARRAY, EMPTY, NOTHING, GUARD, HELD, ROOM]:
        text = left_alone.sub(blank, text)
    text = re.sub(r'^#[^\n]*(\\\n[^\n]*)*', blank, text, flags=re.M)
    return text


def arguments_of(code, at):
    """Where each argument of the call begins and ends whose opening parenthesis is at `at`, and
    where the call ends."""
    spans, depth, start = [], 0, at + 1
    for i in range(at, len(code)):
        depth += (code[i] in '([{') - (code[i] in ')]}')
        if depth == 0 or (depth == 1 and code[i] == ','):
            spans.append((start, i))
            start = i + 1
        if depth == 0:
            return spans, i + 1
    return spans, len(code)


def changes_of(tree, path):
    """(file, first, behind, new text) of every change of a file."""
    text = read(os.path.join(tree, path)).decode()
    code = code_lines(text)
    found = []
    for old, new in SWAPS:
        at = code.find(old)
        while at >= 0:
            found.append((path, at, at + len(old), new))
            at = code.find(old, at + 1)
    lengths = {match.start(1) for match in LIST.finditer(code)}
    for match in NUMBER.finditer(code):
        step = -1 if match.start(1) in lengths else 1
        found.append((path, *match.span(1), str(int(match.group(1)) + step)))
    for match in MINUS.finditer(code):
        found.append((path, *match.span(), match.group(1)))
    for match in TERMS.finditer(code):
        terms = match.group(1).split(', ')
        for i in range(len(terms)):
            fewer = '{{' + ', '.join(terms[:i] + terms[i + 1:]) + '}}'
            found.append((path, *match.span(), fewer))
    for name, kept in CALLS.items():
        for match in re.finditer(r'\b' + name + r'\(', code):
            spans, end = arguments_of(code, match.end() - 1)
            if len(spans) > kept and '=' not in code[match.start():end]:
                found.append((path, match.start(), end, text[slice(*spans[kept])].strip()))
    return sorted(found)


def all_changes(tree):
    found = []
    for stage in STAGES:
        folder = os.path.join('src', stage)
        for name in sorted(os.listdir(os.path.join(tree, folder))):
            if name.endswith('.c'):
                found += changes_of(tree, os.path.join(folder, name))
    return found


def tests_of(tree):
    """The tests of the stages and those of published values, as tests/unit.cmake has them."""
    text = read(os.path.join(tree, 'tests', 'unit.cmake')).decode()
    names = re.findall(r'^ *doorcost_stage_test\((\w+)\)', text, flags=re.M)
    outside = re.search(r'foreach\(name ([\w ]+)\)\s+add_executable\(outside_', text)
    names += ALONE
    names += ['outside_' + name for name in outside.group(1).split()]
    return [name for name in names if name not in SLOW + ['test_board_plan']] + SLOW


class Bench:
    """A copy of the sources with a build of its own."""

    def __init__(self, folder, tests, quick):
        self.tree = os.path.join(folder, 'tree')
        self.build = os.path.join(folder, 'build')
        self.copy()
        run(['cmake', '-G', 'Ninja', '-S', self.tree, '-B', self.build, '-DCMAKE_BUILD_TYPE=Debug',
             '-DCMAKE_C_FLAGS_DEBUG=-O1', '-DDOORCOST_TESTS=ON',
             '-DCMAKE_LINK_DEPENDS_NO_SHARED=ON'], check=True)
        self.all_tests = [name for name in tests_of(self.tree) if not (quick and name in SLOW)]
        self.tests = tests
        self.ninja([self.target(name) for name in self.all_tests], check=True)
        self.seconds = {}
        self.known = os.path.join(folder, 'seen.json')
        self.seen = self.load_seen()
        for name in tests or self.all_tests:
            start = time.monotonic()
            if not self.passes(name):
                sys.exit('mutate.py: %s fails before anything is changed' % name)
            self.seconds[name] = time.monotonic() - start

    def copy(self):
        """Copies what git knows, and only what differs, so that a second run builds little."""
        listed = run(['git', '-C', ROOT, 'ls-files', '-co', '--exclude-standard'], check=True)
        names = set(listed.stdout.splitlines())
        for folder, _, files in os.walk(self.tree):
            for file in files:
                path = os.path.join(folder, file)
                if os.path.relpath(path, self.tree) not in names:
                    os.remove(path)  # of an earlier copy
        for name in sorted(names):
            source, target = os.path.join(ROOT, name), os.path.join(self.tree, name)
            if not os.path.isfile(source):
                continue
            text = read(source)
            if name in IN_COPY:
                text = re.sub(*IN_COPY[name], text, count=1)
            if not os.path.exists(target) or text != read(target):
                os.makedirs(os.path.dirname(target), exist_ok=True)
                shutil.copy(source, target)  # its mode too
                with open(target, 'wb') as file:
                    file.write(text)

    @staticmethod
    def target(name):
        return 'doorcost' if name in SCRIPTS else name

    def ninja(self, targets, check=False):
        return run(['ninja', '-C', self.build, '-j1'] + targets, check=check).returncode == 0

    def passes(self, name):
        program = os.path.join(self.build, 'doorcost')
        longest = max(LONGEST, TIMES * self.seconds.get(name, LONGEST))
        tests = os.path.join(self.build, 'tests')
        if name in BY_JOB:
            script, jobs, in_tree = BY_JOB[name]
            command = [sys.executable, os.path.join(self.tree, 'tests', 'outside', script), program]
            return all(run(command + ([self.tree, job] if in_tree else
                                      [os.path.join(self.tree, job)]),
                           longest=longest).returncode == 0 for job in jobs)
        if name == 'cases':
            return run(['sh', os.path.join(self.tree, 'tests', 'cases.sh'), program]
                       + CASES, longest=longest).returncode == 0
        return run([os.path.join(tests, name)], folder=tests, longest=longest).returncode == 0

    def seen_by(self, change):
        """The test that sees it; '' none; None where it does not compile."""
        path, first, behind, new = change
        target = os.path.join(self.tree, path)
        text = read(target).decode()
        with open(target, 'w', encoding='utf-8') as file:
            file.write(text[:first] + new + text[behind:])
        try:
            return self.first_failing(path)
        finally:
            with open(target, 'w', encoding='utf-8') as file:
                file.write(text)

    def order(self, path):
        """The likeliest to see a change of that file first, by what they take; the slow last."""
        stage = path.split(os.sep)[1]
        first = FIRST.get(stage, [])

        def worth(name):
            seen = 4 * self.seen[path][name] + self.seen[stage][name] + (name in first)
            return (name in SLOW, -(seen + 0.1) / (self.seconds[name] + 0.05))
        return sorted(self.all_tests, key=worth)

    def load_seen(self):
        """How many changes of a file and of a stage each test has seen, in earlier runs too."""
        seen = collections.defaultdict(collections.Counter)
        if os.path.exists(self.known):
            for where, tests in json.loads(read(self.known)).items():
                seen[where].update(tests)
        return seen

    def note(self, path, name):
        self.seen[path][name] += 1
        self.seen[path.split(os.sep)[1]][name] += 1
        with open(self.known, 'w', encoding='utf-8') as file:
            json.dump(self.seen, file)

    def first_failing(self, path):
        if not self.ninja([os.path.join('src', 'all')]):
            return None
        for name in self.tests or self.order(path):
            if not self.passes(name):
                self.note(path, name)
                return name
        return ''


def read(path):
    with open(path, 'rb') as file:
        return file.read()


def run(command, folder=None, check=False, again=True, longest=LONGEST):
    """What takes too long is ended, with all that it started, and tried once more: the machine may
    have been busy."""
    with subprocess.Popen(command, cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                          encoding='utf-8', errors='replace', start_new_session=True) as process:
        try:
            text, _ = process.communicate(timeout=None if check else longest)
        except subprocess.TimeoutExpired:
            os.killpg(process.pid, signal.SIGKILL)
            process.communicate()
            text = None
    if text is None:
        return run(command, folder, check, False, longest) if again else \
            subprocess.CompletedProcess(command, 124, '', '')
    done = subprocess.CompletedProcess(command, process.returncode, text)
    if check and done.returncode != 0:
        sys.exit('mutate.py: %s\n%s' % (' '.join(command), done.stdout[-4000:]))
    return done


def line_of(tree, change):
    text = read(os.path.join(tree, change[0])).decode()
    return text.count('\n', 0, change[1]) + 1


def words(tree, change):
    """`file:line: old -> new` with the line as it stands."""
    path, first, behind, new = change
    text = read(os.path.join(tree, path)).decode()
    end = text.find('\n', behind)
    line = text[text.rfind('\n', 0, first) + 1:end].strip()
    old = text[first:behind]
    return '%s:%d: `%s` -> `%s` in: %s' % (path, line_of(tree, change), old.strip(),
                                           new.strip(), ' '.join(line.split()))


def known_same():
    """Changes that were judged to be no change: `file: old -> new in: line`."""
    text = read(os.path.join(ROOT, 'tests', 'mutate-same')).decode()
    return {line.split('\t')[0] for line in text.splitlines() if not line.startswith('#')}


def chosen(tree, arguments):
    if arguments.change:
        path, old, new = arguments.change
        at = read(os.path.join(tree, path)).decode().find(old)
        if at < 0:
            sys.exit('mutate.py: %s has no such text' % path)
        return [(path, at, at + len(old), new)]
    found = all_changes(tree)
    if arguments.only:
        return [c for c in found if '%s:%d' % (c[0], line_of(tree, c)) in arguments.only]
    random.Random(arguments.seed).shuffle(found)
    same = known_same()
    return [c for c in found if re.sub(r':\d+: ', ': ', words(tree, c), count=1) not in same]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument('--count', type=int, default=100)
    parser.add_argument('--seed', type=int, default=1)
    parser.add_argument('--test', action='append')
    parser.add_argument('--quick', action='store_true')
    parser.add_argument('--folder', default=os.path.join(ROOT, 'build-mutate'))
    parser.add_argument('--only', action='append', metavar='FILE:LINE')
    parser.add_argument('--change', nargs=3, metavar=('FILE', 'OLD', 'NEW'))
    arguments = parser.parse_args()
    bench = Bench(os.path.abspath(arguments.folder), arguments.test,
                  arguments.quick)
    changes = chosen(bench.tree, arguments)
    tried, survivors = 0, []
    for change in changes:
        if tried == arguments.count:
            break
        start = time.monotonic()
        seen = bench.seen_by(change)
        if seen is None:
            continue
        tried += 1
        print('%3d %-20s %4.1f s  %s' % (tried, seen or 'SURVIVES', time.monotonic() - start,
                                         words(bench.tree, change)), flush=True)
        if seen == '':
            survivors.append(change)
    print('\n%d changes of %d possible, %d seen, %d survive' %
          (tried, len(changes), tried - len(survivors), len(survivors)))
    for change in survivors:
        print(words(bench.tree, change))
    return 1 if survivors else 0


sys.exit(main())
