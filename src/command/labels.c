/* SPDX-License-Identifier: MIT */
/* `labels`: labels of parts, or of doors as they are packed, on the sheets that the rates give the
 * sizes of. */
#include "base/text.h"
#include "command/command.h"
#include "command/files.h"
#include "command/progress.h"
#include "command/row_words.h"
#include "command/work.h"
#include "report/labels/label_pdf.h"
#include "report/text/print.h"

/* What a call prints, and on what. */
struct labeling {
    const struct request *request;
    struct work *work;
    struct streams streams;
    struct pool pool;
    const struct label_sheet *sheet;
    struct label_list list;
    int64_t from;
};

/* The sheet for what is labeled; doors take that of parts where they have none. NULL: there is
 * none. */
static const struct label_sheet *find_sheet(const struct rates *rates, enum label_of of) {
    const struct label_sheet *found = NULL;
    for (size_t i = 0; i < rates->label_count; i++) {
        const struct label_sheet *const sheet = &rates->labels[i];
        if (sheet->of == of || (found == NULL && sheet->of == LABEL_OF_PARTS)) {
            found = sheet;
        }
    }
    return found;
}

/* Sets the sheet and the label to begin on. */
static enum status read_sheet(struct labeling *l, enum label_of of) {
    FILE *const err = l->streams.err;
    l->sheet = find_sheet(&l->work->rates, of);
    if (l->sheet == NULL) {
        text_print(err,
                   "doorcost: the rates do not say what sheets of labels there are; add a section "
                   "[labels parts] with columns, rows, width, height and margins to '%s'\n",
                   l->work->rates.path);
        return STATUS_INPUTS;
    }
    l->from = 1;
    return option_whole(l->request->from, "from", 1,
                        l->sheet->columns.amount * l->sheet->rows.amount, &l->from, err)
               ? STATUS_DONE
               : STATUS_USE;
}

static enum status make_list(struct labeling *l, enum label_of of) {
    size_t *rows = NULL;
    size_t count = 0;
    const enum status status =
        row_words_find(l->request, l->work, &l->pool, &rows, &count, l->streams);
    if (status != STATUS_DONE) {
        return status;
    }
    if (!label_list_make(&l->list, &l->pool, &l->work->estimates[0], of, rows, count)) {
        return command_out_of_memory(l->streams);
    }
    if (l->list.wanted > MOST_LABELS) {
        text_print(l->streams.err,
                   "doorcost: these are %lld labels, and one file takes at most %d; name rows "
                   "behind the job file to print some at a time\n",
                   (long long)l->list.wanted, MOST_LABELS);
        return STATUS_USE;
    }
    if (l->list.count == 0) {
        text_print(
            l->streams.err,
            "doorcost: nothing here has parts to label; with --doors each door is labeled\n");
        return STATUS_INPUTS;
    }
    return STATUS_DONE;
}

static enum status tell_tight(struct labeling *l, const struct label *label) {
    const struct door *const door = label->leaf->door;
    char width[32];
    char height[32];
    const enum length_unit unit = l->work->rates.shop.unit;
    text_print(l->streams.err,
               "doorcost: the label of '%s', %s does not hold its words on %s x %s in letters of "
               "%d points; take larger labels in [labels %s], or shorten the names\n",
               problem_quote(&l->work->problems, door->name),
               label->part == NULL ? "packed," : part_full_name(label->part),
               length_show(l->sheet->width.amount, unit, width, sizeof width),
               length_show(l->sheet->height.amount, unit, height, sizeof height), LABEL_SMALLEST,
               l->sheet->name.s);
    return STATUS_INPUTS;
}

static enum status print(struct labeling *l, const struct label_paper *paper) {
    if (l->request->json) {
        return command_json(l->request, l->work, l->streams);
    }
    struct page page = {.out = l->streams.out};
    labels_print(&page, &l->work->estimates[0],
                 (struct labels_told){.doors = l->list.of == LABEL_OF_DOORS,
                                      .count = l->list.count,
                                      .sheets = paper->sheets,
                                      .next = paper->next,
                                      .sheet = l->sheet});
    return page.failed ? command_out_of_memory(l->streams) : command_flush(l->streams);
}

static enum status write_file(struct labeling *l, struct output *file) {
    const struct stop stop = outputs_stop(file);
    const char *lacking = NULL;
    struct label_paper paper;
    struct progress progress;
    progress_begin(&progress, l->streams.err, "writing the labels");
    const enum label_result result =
        label_pdf_write(&l->work->estimates[0], &l->list, l->sheet, (size_t)l->from, file->name,
                        &stop, &paper, &l->pool, &lacking);
    progress_end(&progress);
    if (result == LABEL_FAILED) {
        return files_failed(file, 1, 0, l->streams);
    }
    files_lacking(file, l->work, lacking, l->streams.err);
    const enum status status =
        result == LABEL_TIGHT ? tell_tight(l, paper.tight) : print(l, &paper);
    if (status != STATUS_DONE) {
        outputs_drop(file, 1);
        return status;
    }
    return files_finish(file, 1, l->request, l->streams);
}

static enum status write_labels(struct labeling *l) {
    const enum label_of of = l->request->doors ? LABEL_OF_DOORS : LABEL_OF_PARTS;
    struct output file = {.path = files_target(l->request, l->work, &l->pool,
                                               l->request->doors ? "-packing.pdf" : "-labels.pdf"),
                          .kind = OUTPUT_PDF};
    enum status status = read_sheet(l, of);
    status = status == STATUS_DONE ? make_list(l, of) : status;
    status =
        status == STATUS_DONE ? files_check(&file, 1, l->request, l->work, l->streams) : status;
    status = status == STATUS_DONE ? files_begin(&file, 1, l->request, l->streams) : status;
    return status == STATUS_DONE ? write_file(l, &file) : status;
}

enum status command_labels(const struct request *request, struct work *work,
                           struct streams streams) {
    struct labeling l = {.request = request, .work = work, .streams = streams};
    pool_init(&l.pool);
    const enum status status = write_labels(&l);
    pool_clear(&l.pool);
    return status;
}
