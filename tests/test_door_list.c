/* SPDX-License-Identifier: MIT */
/* The door list as spreadsheets save it. */
#include "base/array.h"
#include "case.h"
#include "cmocka_all.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

#include "door/leaf.h"
#include "model/job.h"
#include "read/job/job_keys.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define BASE DOORCOST_SOURCE "/tests/problems/base"

struct inputs {
    struct problems problems;
    struct job job;
    struct rates rates;
};

static void read_list(struct inputs *in, const char *bytes, size_t size) {
    assert_true(case_save("list-case/doors.csv", bytes, size));
    problems_init(&in->problems);
    assert_true(job_read(&in->job, &in->rates, "list-case/job.ini", &in->problems));
    problems_sort(&in->problems);
}

static void clear(struct inputs *in) {
    job_clear(&in->job);
    rates_clear(&in->rates);
    problems_clear(&in->problems);
}

/* One list; what its first row then says, or its first problem. */
static const struct list {
    const char *name, *text;
    size_t rows;
    const char *id;   /* NULL: no problem */
    uint32_t line;    /* of the problem */
    const char *note; /* of the first row */
} lists[] = {
    {"plain", "id,width,height,note\nD01,15 1/2,30,left\n", 1, NULL, 0, "left"},
    {"no line end at the end", "id,width,height,note\nD01,15 1/2,30,left", 1, NULL, 0, "left"},
    {"CRLF", "id,width,height,note\r\nD01,15 1/2,30,left\r\n", 1, NULL, 0, "left"},
    {"CR", "id,width,height,note\rD01,15 1/2,30,left\r", 1, NULL, 0, "left"},
    {"byte order mark", "\xEF\xBB\xBFid,width,height,note\nD01,15 1/2,30,left\n", 1, NULL, 0,
     "left"},
    /* as shops head their lists; common practice, no source */
    {"a list as shops have it",
     "Door No.,Location,Qty.,W (in),H (in),Type,Hinge,Notes\nD01,Pantry,2,15 "
     "1/2,30,Door,LH,vented\n"
     "8,Pantry,1,15 1/2,6,drawer,,\n",
     2, NULL, 0, "vented"},
    {"short names", "#,How Many,W,H,NOTES\nD01,1,15 1/2,30,left\n", 1, NULL, 0, "left"},
    {"underscores and colons",
     "id:,hinge_side,Width:,Height:,note:\nD01,Left Hand,15 1/2,30,left\n", 1, NULL, 0, "left"},
    {"inch marks in names", "id,width \",height \",note\nD01,15 1/2,30,left\n", 1, NULL, 0, "left"},
    {"millimeters by the heading", "id,Width (mm),Height in mm,note\nD01,394,762,left\n", 1, NULL,
     0, "left"},
    {"centimeters", "id,Width (cm),height\nD01,39.4,30\n", 1, "unknown-column", 1, NULL},
    {"other inch marks", "id,width '',height \xE2\x80\x9D,note\nD01,15 1/2,30,left\n", 1, NULL, 0,
     "left"},
    {"line ends in names",
     "Mill Lane,,\nnote,\"Opening\nwidth\",\"Opening\nheight\",\"Hinge\nside\",qty,id\n"
     "left,15 1/2,30,left,1,D01\n",
     1, NULL, 0, "left"},
    {"of openings here and of doors there", "id,opening width,door height\nD01,15 1/2,30\n", 1,
     "measure-differs", 1, NULL},
    {"two groups of sizes", ",Opening,Door\nid,width,height\nD01,15 1/2,30\n", 1, "measure-differs",
     1, NULL},
    {"a title of names over the heading",
     "Name,The mill,Color,White,Style,\nid,width,height,,,\nD01,15 1/2,30,,,\n", 1, NULL, 0, NULL},
    {"a name over two lines with nothing below",
     "id,,,Shelf,note\n,width,height,,\nD01,15 1/2,30,,left\n", 1, NULL, 0, "left"},
    {"a name over two lines with something below",
     "id,,,Shelf,note\n,width,height,,\nD01,15 1/2,30,4,left\n", 1, "unknown-column", 1, NULL},
    {"a unit behind what has none", "id,count (in),width,height\nD01,1,15 1/2,30\n", 1,
     "unknown-column", 1, NULL},
    {"both of openings", "id,opening width,opening height,note\nD01,15 1/2,30,left\n", 1, NULL, 0,
     "left"},
    {"of doors where measure says so",
     "id,door width,door height,note,measure\nD01,15 1/2,30,left,door\n", 1, NULL, 0, "left"},
    {"of doors where it does not", "id,door width,height\nD01,15 1/2,30\n", 1, "measure-differs", 1,
     NULL},
    {"of openings where it does not", "id,opening width,height,measure\nD01,15 1/2,30,door\n", 1,
     "measure-differs", 1, NULL},
    {"a group that says what sizes are of",
     "Mill Lane,,,\n,Door Size,,\nid,width,height,note\nD01,15 1/2,30,left\n", 1, "measure-differs",
     2, NULL},
    {"a group of another column", "Door Size,,,\nid,width,height,note\nD01,15 1/2,30,left\n", 1,
     NULL, 0, "left"},
    {"a name above a column without one",
     "Mill Lane,hing side,,\nid,,width,height\nD01,left,15 1/2,30\n", 1, "unknown-column", 1, NULL},
    {"a title above one with nothing in it",
     "Mill Lane,,,4 May\nid,width,height,\nD01,15 1/2,30,\n", 1, NULL, 0, NULL},
    {"a title wider than the rows",
     "Mill Lane,,,,4 May\nid,width,height,note,,\nD01,15 1/2,30,left\n", 1, NULL, 0, "left"},
    {"two names of a column", "id,qty,pcs,width,height\nD01,1,1,15 1/2,30\n", 1, "duplicate-column",
     1, NULL},
    {"sizes in one column", "id,size,width,height\nD01,15x30,15 1/2,30\n", 1, "unknown-column", 1,
     NULL},
    {"what a type is not", "id,type,width,height\nD01,shaker,15 1/2,30\n", 1, "unknown-column", 1,
     NULL},
    {"hinges by count", "id,hinges,width,height,note\nD01,3,15 1/2,30,left\n", 1, NULL, 0, "left"},
    {"hinges by side", "id,hinges,width,height,note\nD01,r,15 1/2,30,left\n", 1, NULL, 0, "left"},
    {"a side under another column",
     "id,leaves,hinge,width,height\nD01,1,left,15 1/2,30\nD02,1,"
     "cup-hinge,15 1/2,30\n",
     2, "unknown-name", 2, NULL},
    {"a use under style, and a column of uses",
     "id,style,width,height,use\nD01,drawer front,15 1/2,30,\n", 1, "unknown-name", 2, NULL},
    {"nothing but uses under style", "id,style,width,height,note\nD01,drawer front,15 1/2,6,left\n",
     1, NULL, 0, "left"},
    {"a name with no heading below it", "Smith,,,4 May\nid,width,height,note\nD01,15 1/2,30,left\n",
     1, NULL, 0, "left"},
    {"a title with a name in it",
     "Location,Mill Lane,Notes,\nid,width,height,note\nD01,15 1/2,30,left\n", 1, NULL, 0, "left"},
    {"semicolons", "id;width;height;note\nD01;15 1/2;30;left, right\n", 1, NULL, 0, "left, right"},
    {"tabs", "id\twidth\theight\tnote\nD01\t15 1/2\t30\tleft\n", 1, NULL, 0, "left"},
    {"tabs, empty cells", "id\tuse\twidth\theight\tnote\nD01\t\t15 1/2\t30\tleft\n", 1, NULL, 0,
     "left"},
    {"quotes", "id,width,height,note\n\"D01\",\"15 1/2\",\"30\",\"left, \"\"right\"\"\"\n", 1, NULL,
     0, "left, \"right\""},
    {"inch marks", "id,width,height,note\nD01,15 1/2\",\"30\"\"\",4\" off\n", 1, NULL, 0,
     "4\" off"},
    {"blanks around", "id, width , height,note\nD01 , 15 1/2 , \"30\" , left \n", 1, NULL, 0,
     "left"},
    {"columns in another order", "note,Height,WIDTH,id\nleft,30,15 1/2,D01\n", 1, NULL, 0, "left"},
    {"empty rows", "\nid,width,height,note\n\n,,,\nD01,15 1/2,30,left\n\n", 1, NULL, 0, "left"},
    {"cells behind the last column", "id,width,height,note,,\nD01,15 1/2,30,left,,\n", 1, NULL, 0,
     "left"},
    {"a column of the user's own", "id,,width,height,note\nD01,mine,15 1/2,30,left\n", 1, NULL, 0,
     "left"},
    {"a line end in a cell", "id,width,height,note\nD01,15 1/2,30,\"two\nlines\"\n", 1, NULL, 0,
     "two lines"},
    {"rows behind a line end in a cell",
     "id,width,height,note\nD01,15 1/2,30,\"two\r\nlines\"\r\nD02,15 1/2,30,\r\n", 2, NULL, 0,
     "two lines"},
    {"open quote", "id,note,width,height\nD01,\"left,15 1/2,30\nD02,,15 1/2,30\n", 1, "open-quote",
     2, NULL},
    {"open quote in the last row", "id,width,height,note\nD01,15 1/2,30,\"left\n", 0, "open-quote",
     2, NULL},
    {"stray quote", "id,width,height,note\nD01,\"15\" 1/2,30,\nD02,12,30,\n", 1, "stray-quote", 2,
     NULL},
    {"decimal comma", "id;width;height\nD01;394,5 mm;30\n", 1, "comma-in-number", 2, NULL},
    {"few cells", "id,width,height,note\nD01,15 1/2,30\n", 0, "too-few-cells", 2, NULL},
    {"many cells", "id,width,height,note\nD01,15 1/2,30,left,right\n", 0, "too-many-cells", 2,
     NULL},
    {"line number behind a line end in a cell",
     "id,width,height,note\nD01,12,30,\"a\nb\"\nD02,x,30,\n", 2, "not-a-length", 4, NULL},
    {"no rows", "id,width,height,note\n", 0, "empty-table", 1, NULL},
    {"nothing", "", 0, "empty-table", 0, NULL},
    {"no width", "id,height\nD01,30\n", 1, "missing-column", 1, NULL},
    {"date", "id,width,height\nD01,1/2/2026,30\n", 1, "length-is-date", 2, NULL},
    {"date as a number", "id,width,height\nD01,44928,30\n", 1, "length-is-date", 2, NULL},
    {"too wide", "id,width,height\nD01,121,30\n", 1, "size-absurd", 2, NULL},
    {"as wide as may be", "id,width,height,note\nD01,120,120,a\n", 1, NULL, 0, "a"},
    {"too small", "id,width,height\nD01,7/8,30\n", 1, "size-absurd", 2, NULL},
    {"negative", "id,width,height\nD01,-12,30\n", 1, "size-absurd", 2, NULL},
    {"count of none", "id,count,width,height\nD01,0,12,30\n", 1, "out-of-range", 2, NULL},
    {"count too large", "id,count,width,height\nD01,10000,12,30\n", 1, "out-of-range", 2, NULL},
    {"three leaves", "id,leaves,width,height\nD01,3,40,30\n", 1, "opens-and-leaves", 2, NULL},
    {"five leaves", "id,leaves,width,height\nD01,5,40,30\n", 1, "out-of-range", 2, NULL},
    {"four leaves hinged", "id,leaves,width,height\nD01,4,60,30\n", 1, "opens-and-leaves", 2, NULL},
    {"a bi-fold of one leaf", "id,opens,leaves,width,height,fold hinge\nD01,bi-fold,1,30,30,none\n",
     1, "opens-and-leaves", 2, NULL},
    {"a bi-fold of three", "id,opens,leaves,width,height,fold hinge\nD01,bi-fold,3,30,30,none\n", 1,
     "opens-and-leaves", 2, NULL},
    {"a bi-fold of two",
     "id,opens,leaves,width,height,note,fold hinge\nD01,bi-fold,2,30,30,a,none\n", 1, NULL, 0, "a"},
    {"a bi-fold at both sides",
     "id,opens,hinge side,width,height,note,fold hinge\nD01,bi-fold,pair,60,30,a,none\n", 1, NULL,
     0, "a"},
    {"a bi-fold of two at both sides",
     "id,opens,leaves,hinge side,width,height,fold hinge\nD01,bi-fold,2,pair,60,30,none\n", 1,
     "pair-of-one", 2, NULL},
    {"a narrow bi-fold is no narrow pair",
     "id,opens,width,height,note,fold hinge\nD01,bi-fold,15,30,a,none\n", 1, NULL, 0, "a"},
    {"a pie cut",
     "id,opens,width,second width,height,measure,note,fold hinge\nD01,pie "
     "cut,11,12,30,door,a,none\n",
     1, NULL, 0, "a"},
    {"a pie cut of one leaf",
     "id,opens,leaves,width,second width,height,measure,fold hinge\nD01,pie "
     "cut,1,11,12,30,door,none\n",
     1, "opens-and-leaves", 2, NULL},
    {"a pie cut at both sides",
     "id,opens,hinge side,width,second width,height,measure,fold hinge\nD01,pie "
     "cut,pair,11,12,30,door,none\n",
     1, "opens-and-side", 2, NULL},
    {"a pie cut without its second width",
     "id,opens,width,height,measure,fold hinge\nD01,pie cut,11,30,door,none\n", 1, "second-width",
     2, NULL},
    {"a second width without a pie cut", "id,width,second width,height\nD01,11,12,30\n", 1,
     "second-width", 2, NULL},
    {"a second width that is none",
     "id,opens,width,second width,height,measure,fold hinge\nD01,pie cut,11,x,30,door,none\n", 1,
     "not-a-length", 2, NULL},
    {"a second leaf too narrow for its frame",
     "id,opens,width,second width,height,measure,fold hinge\nD01,pie cut,11,4,30,door,none\n", 1,
     "door-too-small", 2, NULL},
    {"a pie cut without a corner",
     "id,opens,width,second width,height,fold hinge\nD01,pie cut,11,12,30,none\n", 1, "no-corner",
     2, NULL},
    {"a corner",
     "id,opens,width,second width,height,corner,note,fold hinge\nD01,pie cut,11,12,30,7/8,a,none\n",
     1, NULL, 0, "a"},
    {"a drawer front that folds", "id,use,opens,width,height\nD01,drawer front,bi-fold,30,8\n", 1,
     "opens-and-use", 2, NULL},
    {"an end panel that lifts up", "id,use,opens,width,height\nD01,end panel,lift up,30,30\n", 1,
     "opens-and-use", 2, NULL},
    {"a false front that folds", "id,use,opens,width,height\nD01,false front,bi-fold,30,8\n", 1,
     "opens-and-use", 2, NULL},
    {"a false front that tilts out",
     "id,use,opens,width,height,note\nD01,false front,tilt out,30,8,a\n", 1, NULL, 0, "a"},
    {"lifted up and hung left", "id,opens,hinge side,width,height\nD01,lift up,left,30,20\n", 1,
     "opens-and-side", 2, NULL},
    {"a way to open with a hyphen", "id,opens,width,height,note\nD01,lift-up,24,12,a\n", 1, NULL, 0,
     "a"},
    {"a bi-fold with a blank", "id,opens,width,height,note,fold hinge\nD01,bi fold,30,30,a,none\n",
     1, NULL, 0, "a"},
    {"a way to open that is none", "id,opens,width,height\nD01,slides,30,20\n", 1, "unknown-word",
     2, NULL},
    {"wide door, leaves not said", "id,width,height\nD01,24,12\n", 1, "door-wide", 2, NULL},
    {"a door a little wider than high", "id,width,height,note\nD01,16.5,15.75,a\n", 1, NULL, 0,
     "a"},
    {"wide front", "id,use,width,height,note\nD01,drawer front,24,8,a\n", 1, NULL, 0, "a"},
    {"wide flap", "id,opens,width,height,note\nD01,lift up,24,12,a\n", 1, NULL, 0, "a"},
    {"wide pair", "id,hinge side,width,height,note\nD01,pair,40,30,a\n", 1, NULL, 0, "a"},
    {"narrow pair", "id,hinge side,width,height\nD01,pair,15 3/4,30\n", 1, "pair-narrow", 2, NULL},
    {"id twice", "id,width,height\nD01,12,30\nD02,12,30\nd01,12,30\n", 3, "duplicate-id", 4, NULL},
    {"both fits", "id,width,height,overlay,reveal\nD01,12,30,1/2,1/8\n", 1, "both-given", 2, NULL},
    {"overlay for reveal", "id,width,height,reveal,note\nD01,12,30,1/8,a\n", 1, NULL, 0, "a"},
    {"sheet as frame", "id,width,height,frame\nD01,12,30,maple-ply\n", 1, "wrong-material", 2,
     NULL},
    {"lumber as panel of a sheet", "id,width,height,panel\nD01,12,30,poplar\n", 1, "wrong-material",
     2, NULL},
    {"unknown hinge", "id,width,height,hinge\nD01,12,30,cup hing\n", 1, "unknown-name", 2, NULL},
    {"no hinge", "id,width,height,hinge,note\nD01,12,30,none,a\n", 1, NULL, 0, "a"},
    {"hardware of a row", "id,width,height,hardware,note\nD01,12,30,2 cup-hinge,a\n", 1, NULL, 0,
     "a"},
    {"hardware without a number", "id,width,height,hardware,note\nD01,12,30,cup-hinge,a\n", 1, NULL,
     0, "a"},
    {"unknown hardware", "id,width,height,hardware\nD01,12,30,2 cup hing\n", 1, "unknown-name", 2,
     NULL},
    {"no pieces of hardware", "id,width,height,hardware\nD01,12,30,0 cup-hinge\n", 1,
     "out-of-range", 2, NULL},
    {"part of a piece of hardware", "id,width,height,hardware\nD01,12,30,1.5 cup-hinge\n", 1,
     "not-whole", 2, NULL},
    {"21 pieces of hardware", "id,width,height,hardware\nD01,12,30,21 cup-hinge\n", 1,
     "out-of-range", 2, NULL},
    {"hardware listed twice",
     "id,width,height,hardware\nD01,12,30,\"cup-hinge, 2 cup-hinge per opening\"\n", 1,
     "listed-twice", 2, NULL},
    {"a number alone is no hardware", "id,width,height,hardware\nD01,12,30,2\n", 1, "unknown-name",
     2, NULL},
    {"11 hinges", "id,width,height,hinges\nD01,12,30,11\n", 1, "out-of-range", 2, NULL},
    {"no hinges", "id,width,height,hinges\nD01,12,30,0\n", 1, "out-of-range", 2, NULL},
    {"places of hinges", "id,width,height,hinges at,note\nD01,12,30,3 | 27,a\n", 1, NULL, 0, "a"},
    {"11 places of hinges",
     "id,width,height,hinges at\nD01,12,60,1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11\n", 1,
     "too-many", 2, NULL},
    {"places of other hinges", "id,width,height,hinges,hinges at\nD01,12,30,3,3 | 27\n", 1,
     "hinges-and-places", 2, NULL},
    {"a row that shows how",
     "id,width,height,note\nexample,15,30,\"shows how, is not read\"\nD01,12,30,a\n", 1, NULL, 0,
     "a"},
    {"one without a note", "id,width,height\nexample,15,30\nD01,12,30\n", 1, NULL, 0, NULL},
    {"one that was written over", "id,width,height,note\nexample,12,30,beside the sink\n", 1,
     "example-row", 2, NULL},
    {"frame too large", "id,width,height,overlay\nD01,4 1/2,30,0\n", 1, "door-too-small", 2, NULL},
    {"mid stiles too wide", "id,width,height,mid stiles\nD01,8,30,2\n", 1, "door-too-small", 2,
     NULL},
};

static void check_list(const struct list *list) {
    struct inputs in;
    const char *id;

    read_list(&in, list->text, strlen(list->text));
    id = in.problems.count == 0 ? NULL : in.problems.list[0].id;
    if ((id == NULL) != (list->id == NULL) ||
        (id != NULL &&
         (strcmp(id, list->id) != 0 || in.problems.list[0].place.line != list->line)) ||
        in.job.row_count != list->rows) {
        problems_print(&in.problems, stderr, false);
        fail_msg("%s: %zu rows, %s", list->name, in.job.row_count, id == NULL ? "good" : id);
    }
    if (list->note != NULL) {
        assert_string_equal(in.job.rows[0].note.s, list->note);
        assert_string_equal(in.job.rows[0].id.s, "D01");
    }
    clear(&in);
}

static void test_lists(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(lists); i++) {
        check_list(&lists[i]);
    }
}

/* A list as a shop has it says what the same list says in the names of columns. */
static void test_as_shops(void **state) {
    static const char *const texts[] = {
        "id,room,use,count,width,height,hinge side,frame,note,remark\n"
        "7,Pantry,door,2,15 1/2,394 mm,left,poplar,vented,tall\n"
        "8,Pantry,drawer front,1,15 1/2,152.4 mm,,hard-maple,,\n",
        "Doors of the mill,,,,,,,,,\n"
        ",,,,Opening,,,,,\n"
        "Door No.,Location,Type,Qty.,Width (in),Height (mm),Hand,FRAME,NOTES,Comments\n"
        "7,Pantry,Door,2,15 1/2,394,LH,poplar,vented,tall\n"
        "8,Pantry,Drawer,1,15 1/2,152.4,,Hard_Maple,,\n",
        "#,Place,What,Pieces,Size,,Hinged,Frame,Notes,Remarks\n"
        ",,,,W,H mm,,,,\n"
        "7,Pantry,doors,2,15 1/2,394,left-hand,poplar,vented,tall\n"
        "8,Pantry,drawers,1,15 1/2,152.4,,hard maple,,\n",
        "No,Cabinet,Room,Qty,W,H (mm),Type,L/R,frame,Remark\n"
        "7,vented,Pantry,2,15 1/2,394,Door,L,poplar,tall\n"
        "8,,Pantry,1,15 1/2,152.4,Drawer,,hard maple,\n",
        "No,Where,Cabinet,Qty,W,H (mm),Type,L/R,frame,Remark\n"
        "7,Pantry,vented,2,15 1/2,394,Door,L,poplar,tall\n"
        "8,Pantry,,1,15 1/2,152.4,Drawer,,hard maple,\n"};
    (void)state;
    for (size_t i = 0; i < COUNT_OF(texts); i++) {
        struct inputs in;
        read_list(&in, texts[i], strlen(texts[i]));
        for (size_t p = 0; p < in.problems.count; p++) {
            if (in.problems.list[p].severity == SEVERITY_ERROR) {
                fail_msg("list %zu: %s", i, in.problems.list[p].text);
            }
        }
        assert_int_equal(in.job.row_count, 2);
        const struct row *const door = &in.job.rows[0];
        const struct row *const front = &in.job.rows[1];
        assert_string_equal(door->id.s, "7");
        assert_string_equal(door->room.s, "Pantry");
        assert_int_equal(door->use.choice, USE_DOOR);
        assert_int_equal(front->use.choice, USE_DRAWER_FRONT);
        assert_int_equal(door->count.amount, 2);
        assert_int_equal(door->width.amount, 31 * NM_PER_INCH / 2);
        assert_int_equal(door->height.amount, 394 * NM_PER_MM);
        assert_int_equal(front->height.amount, 6 * NM_PER_INCH);
        assert_int_equal(door->hinge_side.choice, HINGE_SIDE_LEFT);
        assert_string_equal(door->note.s, "vented");
        assert_string_equal(door->remark.s, "tall");
        assert_string_equal(front->make->whole.frame.name.s, "hard-maple");
        clear(&in);
    }
}

/* What is said of a list; common practice, no source. */
static void test_words(void **state) {
    static const struct {
        const char *text, *words, *lacks;
    } lists_told[] = {
        /* what stands there in another unit does not lack */
        {"id,W (cm),H (cm)\nD01,39.4,76.2\n", "column 'W (cm)' is not taken", "lacks"},
        /* of what a name is not known, the line of the job is one that the job can have */
        {"id,width,height,Shelf #2\nD01,15,30,4\n", "by 'own columns = \"Shelf #2\"' in", NULL},
        {"id,width,height,\"Shelf, old\"\nD01,15,30,4\n", "or take the name away", "own columns"},
        {"id,W \xC3\x97 H\nD01,15x30\n", "write 'width' and 'height'", "not known"},
        /* a word that several columns take is of none */
        {"id,width,height,style\nD01,15,30,cup-hinge\n", "is not in the rates; ", "write it under"},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(lists_told); i++) {
        struct inputs in;
        bool said = false;
        read_list(&in, lists_told[i].text, strlen(lists_told[i].text));
        for (size_t p = 0; p < in.problems.count; p++) {
            const char *const text = in.problems.list[p].text;
            said = said || strstr(text, lists_told[i].words) != NULL;
            if (lists_told[i].lacks != NULL && strstr(text, lists_told[i].lacks) != NULL) {
                fail_msg("%s: %s", lists_told[i].text, text);
            }
        }
        if (!said) {
            problems_print(&in.problems, stderr, false);
            fail_msg("%s lacks: %s", lists_told[i].text, lists_told[i].words);
        }
        clear(&in);
    }
}

static void test_values(void **state) {
    static const char text[] =
        "id,room,use,count,width,height,leaves,mid rails,mid stiles,rows,hinge side,extra charge\n"
        "D01,galley,false front,3,15 1/2\",30,,,2,10 | 11 3/4 | 4,left,15.00 arched top\n"
        "D02,,,,394 mm,30,,,,,pair,7\n";
    struct inputs in;
    const struct row *row;

    (void)state;
    read_list(&in, text, strlen(text));
    row = &in.job.rows[0];
    assert_string_equal(row->room.s, "galley");
    assert_int_equal(row->use.choice, USE_FALSE_FRONT);
    assert_int_equal(row->count.amount, 3);
    assert_int_equal(row->width.amount, 31 * NM_PER_INCH / 2);
    assert_int_equal(row->width.place.line, 2);
    assert_int_equal(row->width.place.column, 26);
    assert_int_equal(row->width.place.width, 7);
    assert_int_equal(row->leaves.amount, 1);
    assert_false(row->leaves.set);
    assert_int_equal(row->mid_stiles.amount, 2);
    assert_int_equal(row->heights.count, 3);
    assert_int_equal(row->heights.v[1].amount, 47 * NM_PER_INCH / 4);
    assert_int_equal(row->mid_rails.amount, 2); /* from the rows */
    assert_int_equal(row->extra_charge.amount, 1500);
    assert_string_equal(row->extra_words.s, "arched top");
    row = &in.job.rows[1];
    assert_int_equal(row->use.choice, USE_DOOR);
    assert_int_equal(row->count.amount, 1);
    assert_int_equal(row->count.unit, UNIT_COUNT);
    assert_int_equal(row->width.amount, 394 * NM_PER_MM);
    assert_int_equal(row->leaves.amount, 2); /* a pair has two */
    assert_int_equal(row->extra_charge.amount, 7);
    assert_null(row->extra_words.s);
    assert_null(row->room.s);
    clear(&in);
}

static void test_leaf(void **state) {
    static const char text[] = "id,width,height,leaves,measure,overlay,overlay left,reveal,gap\n"
                               "D01,15 1/2,30,1,,1/2,,,\n"
                               "D02,33,30,2,,1/2,0,,1/8\n"
                               "D03,15 1/2,30,1,,,,1/8,\n"
                               "D04,15 1/2,30,2,door,1/2,,,\n";
    static const struct leaf leaves[] = {
        {33 * NM_PER_INCH / 2, 31 * NM_PER_INCH},
        {267 * NM_PER_INCH / 16, 31 * NM_PER_INCH}, /* (33 + 1/2 - 1/8) / 2 */
        {61 * NM_PER_INCH / 4, 119 * NM_PER_INCH / 4},
        {31 * NM_PER_INCH / 2, 30 * NM_PER_INCH},
    };
    struct inputs in;

    (void)state;
    read_list(&in, text, strlen(text));
    assert_int_equal(in.job.row_count, COUNT(leaves));
    for (size_t i = 0; i < COUNT(leaves); i++) {
        const struct leaf leaf = leaf_size(&in.job.rows[i], &in.job.rows[i].make->whole, LEAF_HUNG,
                                           (struct size_step){LENGTH_INCH, NM_PER_64TH});

        assert_int_equal(leaf.width, leaves[i].width);
        assert_int_equal(leaf.height, leaves[i].height);
    }
    clear(&in);
}

/* Long lists are read, and checked for ids given twice, in time that grows as they do. */
static void test_long_list(void **state) {
    const size_t rows = 20000;
    size_t room = 40 * (rows + 1);
    char *text = malloc(room);
    struct inputs in;
    size_t size;

    (void)state;
    assert_non_null(text);
    size = (size_t)snprintf(text, room, "id,width,height\n");
    for (size_t i = 0; i < rows; i++) {
        size += (size_t)snprintf(text + size, room - size, "D%zu,15 1/2,30\n", i % (rows - 1));
    }
    read_list(&in, text, size);
    assert_int_equal(in.job.row_count, rows);
    assert_int_equal(in.problems.count, 1);
    assert_string_equal(in.problems.list[0].id, "duplicate-id");
    clear(&in);
    free(text);
}

static int prepare(void **state) {
    (void)state;
    return case_prepare(BASE, NULL, "list-case") ? 0 : 1;
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_lists),  cmocka_unit_test(test_as_shops),
        cmocka_unit_test(test_values), cmocka_unit_test(test_leaf),
        cmocka_unit_test(test_words),  cmocka_unit_test(test_long_list),
    };

    return cmocka_run_group_tests(tests, prepare, NULL);
}
