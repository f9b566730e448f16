/* SPDX-License-Identifier: MIT */
#include "command/options.h"

#include "base/pool.h"
#include "base/problem.h"
#include "base/text.h"
#include "command/command.h"

#include <getopt.h>
#include <string.h>

#define EVERY ((1u << COMMAND_COUNT) - 1)
#define JOBS  (EVERY & ~(1u << PLACE_MEASURE | 1u << PLACE_NEW)) /* that estimate one */
#define WRITES                                                                                     \
    (1u << PLACE_QUOTE | 1u << PLACE_BUY | 1u << PLACE_PLAN | 1u << PLACE_DRAW |                   \
     1u << PLACE_RANGE | 1u << PLACE_TABLE | 1u << PLACE_BRIDGE | 1u << PLACE_SHOW |               \
     1u << PLACE_LABELS | 1u << PLACE_DAYS | 1u << PLACE_MEASURE)

#define AT(field) offsetof(struct request, field)

static const struct option_row rows[] = {
    {"output", "FILE",
     "write to FILE; else it stands beside the job file, with its name and .xlsx (draw: "
     "-doors.pdf, labels: -labels.pdf, or -packing.pdf with --doors, show: .html, measure: "
     "-measure.pdf; buy, plan, days, learn, range, bridge, table: nothing is written)",
     AT(output), WRITES | 1u << PLACE_LEARN, 'o', false},
    {"all", NULL, "print all of the quote: each door, what it costs, hours, cautions", AT(all),
     1u << PLACE_QUOTE, '\0', false},
    {"force", NULL,
     "overwrite a file even where this program did not write it, or where somebody edited it",
     AT(force), WRITES, '\0', false},
    {"option", "NAME", "work on [option NAME] of the job in place of the job as listed", AT(option),
     JOBS & ~(1u << PLACE_COMPARE), '\0', false},
    {"effort", "COUNT",
     "units of work that the planner may spend on a material, in millions (1000 takes about a "
     "second); the same count gives the same "
     "plan everywhere",
     AT(effort),
     1u << PLACE_QUOTE | 1u << PLACE_BUY | 1u << PLACE_PLAN | 1u << PLACE_EXPLAIN |
         1u << PLACE_STRIKE | 1u << PLACE_RANGE | 1u << PLACE_BRIDGE | 1u << PLACE_TABLE |
         1u << PLACE_WAYS | 1u << PLACE_REACH | 1u << PLACE_SHOW,
     '\0', false},
    {"widths", "LIST", "widths as measured, with commas between; else by those of the job",
     AT(widths), 1u << PLACE_TABLE, '\0', false},
    {"heights", "LIST", "heights likewise", AT(heights), 1u << PLACE_TABLE, '\0', false},
    {"counts", "LIST", "how many are ordered, with commas between; else 1,2,5,10,50", AT(counts),
     1u << PLACE_TABLE, '\0', false},
    {"client", NULL,
     "table: a price list that a client may see, without cost, which -o writes as .pdf or .xlsx; "
     "show: a second page, -client.html, with the offer alone",
     AT(client), 1u << PLACE_TABLE | 1u << PLACE_SHOW, '\0', false},
    {"hours", "COUNT",
     "hours at the bench that there are: choose the ways that keep the job within", AT(hours),
     1u << PLACE_WAYS, '\0', false},
    {"begin", "DATE",
     "work begins on that day, as in --begin 2026-03-09; else on the day that 'ready' of the job "
     "plans from, that the client took the job, or that of its quote",
     AT(begin), 1u << PLACE_DAYS, '\0', false},
    {"total", "AMOUNT", "what the client is to pay, with tax", AT(total), 1u << PLACE_REACH, '\0',
     false},
    {"depth", "COUNT", "how far down lines go, from 0 to 99; else 2", AT(depth),
     1u << PLACE_EXPLAIN, '\0', false},
    {"set", "CHANGE",
     "range: tell what a change of a rate comes to, as in --set \"lumber poplar.price = 4.60 per "
     "bf\", as often as need be; new: what the job says, as in --set \"number = 0042\" or --set "
     "\"make.style = slab\", or with --rates what these say, as often as need be",
     AT(set), 1u << PLACE_RANGE | 1u << PLACE_NEW, '\0', true},
    {"by", "PERCENT", "move every rate by so many percent, as in --by 10%, in place of its range",
     AT(by), 1u << PLACE_RANGE, '\0', false},
    {"draws", "COUNT", "draw so many times from the ranges, from 100 to 100000; else 10000",
     AT(draws), 1u << PLACE_RANGE, '\0', false},
    {"seed", "NUMBER", "draw other random numbers; the same seed draws the same; else 1", AT(seed),
     1u << PLACE_RANGE, '\0', false},
    {"confidence", "SHARE",
     "tell the contingency for so much confidence, as in --confidence 90%; else that of the rates, "
     "or 80 %",
     AT(confidence), 1u << PLACE_RANGE, '\0', false},
    {"rack", "FILE",
     "write what is on the rack when the job is done to FILE, a new one whose name ends in .csv: "
     "less what the job took, more what it leaves",
     AT(rack), 1u << PLACE_LEARN, '\0', false},
    {"svg", "FOLDER", "draw each page of the plan as FOLDER/plan-01.svg and on", AT(svg),
     1u << PLACE_PLAN, '\0', false},
    {"doors", NULL, "label each door for packing, in place of its parts", AT(doors),
     1u << PLACE_LABELS, '\0', false},
    {"unit", "UNIT",
     "in (inches) or mm (millimeters); else as the file says, or in; measure: of the sheet; new: "
     "of "
     "the list of --list, or the rates of --rates",
     AT(unit), 1u << PLACE_MEASURE | 1u << PLACE_NEW, '\0', false},
    {"list", "FILE",
     "write a list of doors to fill in, .xlsx or .csv: by the rates of the folder, or by the job "
     "or "
     "rates of --from; with a job file behind 'new', that job names it",
     AT(list), 1u << PLACE_NEW, '\0', false},
    {"rates", "FILE",
     "write rates of your own: those of --from, of the folder, or that ship, with what --set "
     "gives; "
     "at a terminal it asks for the numbers that must be your own",
     AT(rates), 1u << PLACE_NEW, '\0', false},
    {"from", "WHAT",
     "labels: begin on that label of the first sheet, a number counted along its rows; else on the "
     "first. new: go on from that job file; with --rates make them of that file; with --list fit "
     "it "
     "to that job or those rates",
     AT(from), 1u << PLACE_LABELS | 1u << PLACE_NEW, '\0', false},
    {"no-prices", NULL, "write the order for suppliers, without what the shop pays", AT(no_prices),
     1u << PLACE_BUY, '\0', false},
    {"json", NULL, "print the result as JSON (docs/json.md)", AT(json), JOBS, '\0', false},
    {"no-color", NULL, "no colors in messages, on a terminal either", AT(no_color), EVERY, '\0',
     false},
    {"help", NULL, "print this and end", AT(help), EVERY, 'h', false},
    {"version", NULL, "print name and version and end", AT(version), EVERY, 'V', false},
};

#define ROWS (sizeof rows / sizeof *rows)
/* In the place of a command: as --help of the one behind it. */
#define HELP_WORD "help"
_Static_assert(ROWS <= 32, "which were given is told by the bits of an unsigned");
/* What getopt_long returns for row i: beyond any letter. */
#define FIRST_VALUE 1000

const struct option_row *option_rows(size_t *count) {
    *count = ROWS;
    return rows;
}

/* --- wrong use --- */

static bool unknown_option(const char *given, FILE *err) {
    const char *names[ROWS];
    for (size_t i = 0; i < ROWS; i++) {
        names[i] = rows[i].name;
    }
    char name[64] = "";
    const size_t dashes = strspn(given, "-");
    const size_t size = strcspn(given, "=");
    if (size > dashes + 1 && size < sizeof name) { /* more than a letter */
        memcpy(name, given + dashes, size - dashes);
    }
    const char *near = name[0] == '\0' ? NULL : text_nearest(name, names, ROWS);
    for (size_t i = 0; i < ROWS && near == NULL && name[0] != '\0'; i++) {
        near = strncmp(names[i], name, strlen(name)) == 0 ? names[i] : NULL;
    }
    struct problems quoting;
    problems_init(&quoting);
    text_print(err, "doorcost: unknown option '%s'; ", problem_quote(&quoting, given));
    if (near != NULL) {
        text_print(err, "did you mean '--%s'?\n", near);
    } else {
        text_print(err, "'doorcost help' lists them\n");
    }
    problems_clear(&quoting);
    return false;
}

static bool unknown_command(const char *given, FILE *err) {
    const char *names[COMMAND_COUNT + 1];
    size_t count;
    const struct command *const commands = command_rows(&count);
    for (size_t i = 0; i < count; i++) {
        names[i] = commands[i].name;
    }
    names[count] = HELP_WORD;
    const char *const near = text_nearest(given, names, count + 1);
    struct problems quoting;
    problems_init(&quoting);
    const char *const shown = problem_quote(&quoting, given);
    const char *const ending = strrchr(given, '.');
    if (ending != NULL && strcmp(ending, ".ini") == 0) {
        text_print(err, "doorcost: no command; name one before the job, as in: doorcost check %s\n",
                   shown);
        problems_clear(&quoting);
        return false;
    }
    text_print(err, "doorcost: unknown command '%s'; ", shown);
    if (near != NULL) {
        text_print(err, "did you mean '%s'?\n", near);
    } else {
        text_print(err, "'doorcost help' lists them\n");
    }
    problems_clear(&quoting);
    return false;
}

/* An option that the command does not take. */
static bool wrong_command(const struct option_row *row, const struct command *command, FILE *err) {
    size_t count;
    const struct command *const commands = command_rows(&count);
    const char *names = "";
    struct pool pool;
    pool_init(&pool);
    for (size_t i = 0; i < count; i++) {
        if ((row->commands & 1u << i) != 0) {
            names =
                pool_words(&pool, "%s%s%s", names, names[0] == '\0' ? "" : ", ", commands[i].name);
        }
    }
    text_print(err, "doorcost: '%s' takes no option '--%s'; it is for %s\n", command->name,
               row->name, names);
    pool_clear(&pool);
    return false;
}

/* --- reading --- */

static void fill_tables(struct option *options, char *letters) {
    *letters++ = ':'; /* tells a missing argument from an unknown option */
    for (size_t i = 0; i < ROWS; i++) {
        options[i] = (struct option){
            .name = rows[i].name,
            .has_arg = rows[i].argument == NULL ? no_argument : required_argument,
            .val = FIRST_VALUE + (int)i,
        };
        if (rows[i].letter != '\0') {
            *letters++ = rows[i].letter;
            if (rows[i].argument != NULL) {
                *letters++ = ':';
            }
        }
    }
    options[ROWS] = (struct option){0};
    *letters = '\0';
}

static const struct option_row *row_of(int value) {
    for (size_t i = 0; i < ROWS; i++) {
        if (value == FIRST_VALUE + (int)i || (rows[i].letter != '\0' && value == rows[i].letter)) {
            return &rows[i];
        }
    }
    return NULL;
}

/* getopt takes any start of a name that fits one option alone; we take whole names only. */
static bool is_whole(const struct option_row *row, const char *word) {
    const size_t size = strlen(row->name);
    return strncmp(word, "--", 2) != 0 || (strncmp(word + 2, row->name, size) == 0 &&
                                           (word[2 + size] == '\0' || word[2 + size] == '='));
}

/* false: it was given too often, which is said. */
static bool set_option(struct request *request, const struct option_row *row, const char *argument,
                       FILE *err) {
    char *const place = (char *)request + row->offset;
    if (row->often) {
        struct option_texts *const all = (struct option_texts *)(void *)place;
        if (all->count == MOST_OPTION_TEXTS) {
            text_print(err, "doorcost: option '--%s' is given more than %d times\n", row->name,
                       MOST_OPTION_TEXTS);
            return false;
        }
        all->texts[all->count++] = argument;
    } else if (row->argument == NULL) {
        const bool yes = true;
        memcpy(place, &yes, sizeof yes);
    } else {
        memcpy(place, &argument, sizeof argument);
    }
    return true;
}

/* value: what getopt_long returned; word: the word of the line that it was about. */
static bool take_option(struct request *request, int value, const char *word, unsigned *given,
                        FILE *err) {
    const struct option_row *const row = row_of(value == ':' || value == '?' ? optopt : value);
    if (optarg != NULL && row != NULL && optarg[0] == '=' && strncmp(word, "--", 2) != 0) {
        text_print(err, "doorcost: '%s' has a '='; write '-%c%s%s'\n", word, row->letter,
                   optarg[1] == '\0' ? "" : " ", optarg + 1);
        return false;
    }
    const bool empty = optarg != NULL && optarg[0] == '\0';
    if ((value == ':' || empty) && row != NULL && is_whole(row, word)) {
        text_print(err, "doorcost: option '%s' lacks its %s\n", word, row->argument);
        return false;
    }
    if (value == '?' && row != NULL && row->argument == NULL && is_whole(row, word)) {
        text_print(err, "doorcost: option '--%s' takes no value\n", row->name);
        return false;
    }
    if (value == '?' || value == ':' || row == NULL || !is_whole(row, word)) {
        return unknown_option(word, err);
    }
    const unsigned bit = 1u << (row - rows);
    if ((*given & bit) != 0 && row->argument != NULL && !row->often) {
        text_print(err, "doorcost: option '--%s' is given twice; only one of them could count\n",
                   row->name);
        return false;
    }
    *given |= bit;
    return set_option(request, row, optarg, err);
}

static bool take_words(struct request *request, int argc, char **argv, FILE *err) {
    while (optind < argc && strcmp(argv[optind], HELP_WORD) == 0) {
        request->help = true;
        optind++;
    }
    if (optind < argc) {
        request->command = command_find(argv[optind]);
        if (request->command == NULL) {
            return unknown_command(argv[optind], err);
        }
        optind++;
    }
    if (optind < argc) {
        request->job = argv[optind++];
    }
    if (request->command != NULL && request->command->words != NULL) {
        request->words = (const char *const *)argv + optind;
        request->word_count = (size_t)(argc - optind);
        return true;
    }
    if (optind < argc) {
        text_print(err, "doorcost: '%s' is one word too many; expected one job file\n",
                   argv[optind]);
        return false;
    }
    return true;
}

static bool fits_command(const struct request *request, unsigned given, FILE *err) {
    if (request->command == NULL) {
        return true;
    }
    size_t count;
    const unsigned bit = 1u << (request->command - command_rows(&count));
    for (size_t i = 0; i < ROWS; i++) {
        if ((given & 1u << i) != 0 && (rows[i].commands & bit) == 0) {
            return wrong_command(&rows[i], request->command, err);
        }
    }
    return true;
}

bool options_read(struct request *request, int argc, char **argv, FILE *err) {
    struct option options[ROWS + 1];
    char letters[2 * ROWS + 2];
    unsigned given = 0;
    *request = (struct request){0};
    fill_tables(options, letters);
    opterr = 0;
    optind = 0; /* anew, though the last call may have ended within a word: getopt(3), notes */
    for (;;) {
        optarg = NULL;
        const int value = getopt_long(argc, argv, letters, options, NULL);
        if (value == -1) {
            break;
        }
        const bool apart = optarg != NULL && optind >= 2 && optarg == argv[optind - 1];
        /* of `-json` the letter j is unknown, and the word is not yet passed */
        const bool within = value == '?' && optind < argc && argv[optind][0] == '-' &&
                            argv[optind][1] != '-' && strchr(argv[optind] + 1, optopt) != NULL;
        const char *const word = within ? argv[optind] : argv[optind - (apart ? 2 : 1)];
        if (!take_option(request, value, word, &given, err)) {
            return false;
        }
    }
    return take_words(request, argc, argv, err) && fits_command(request, given, err);
}

bool option_whole(const char *text, const char *name, int64_t low, int64_t high, int64_t *value,
                  FILE *err) {
    uint8_t decimals;
    int64_t number;
    if (text == NULL) {
        return true;
    }
    if (!text_decimal(text, strlen(text), &number, &decimals) || decimals > 0 || number < low ||
        number > high) {
        text_print(err, "doorcost: --%s takes a whole number from %lld to %lld\n", name,
                   (long long)low, (long long)high);
        return false;
    }
    *value = number;
    return true;
}

bool option_percent(const char *text, int64_t *percent, uint8_t *decimals) {
    const char *const sign = strchr(text, '%');
    const char *const end = text_trim_end(text, sign == NULL ? text + strlen(text) : sign);
    int64_t hundred = 100;
    if ((sign != NULL && sign[1] != '\0') ||
        !text_decimal(text, (size_t)(end - text), percent, decimals) || *decimals > 4) {
        return false;
    }
    for (uint8_t d = 0; d < *decimals; d++) {
        hundred *= 10;
    }
    return *percent > 0 && *percent <= hundred;
}
