/* SPDX-License-Identifier: MIT */
/* Minutes, set-ups, allowance, hands and their shares. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>
#include <string.h>

/* One operation `work` on the plain style; on slabs. */
#define WORK    "door plain|operations = work"
#define SLABBED "door slab|operations = work", "make|style = slab"
#define DRUM                                                                                       \
    "operation work|machine = sander\nper = door\nminutes = 1.5\npasses = 2\n"                     \
    "capacity = 16 in, one side open"
#define HUNDRED "operation work|per = job\nminutes = 100"

static const struct bench_case minute_cases[] = {
    {"18 in over a 16 in drum, two passes of 1.5 min: 6 min",
     {WORK, DRUM},
     "D1,18,30\n",
     {SHARE(0, count, "1"), SHARE(0, run, "6 min"), OPERATION(0, machine_minutes, "6 min")}},
    {"12 in: 3 min", {WORK, DRUM}, "D1,12,30\n", {SHARE(0, run, "3")}},
    {"just 16 in: 3 min", {WORK, DRUM}, "D1,16,30\n", {SHARE(0, run, "3")}},
    {"a 64th over", {WORK, DRUM}, "D1,16 1/64,30\n", {SHARE(0, run, "6")}},
    {"by what goes through: the panel that does not is wider",
     {WORK, "operation work|per = stile\nminutes = 1.5\npasses = 2\n"
            "capacity = 10 in, one side open"},
     "D1,18,30\n",
     {SHARE(0, run, "6")}}, /* 2 x 1.5 x 2 */
    {"a wide low door goes in the other way", {WORK, DRUM}, "D1,30,12\n", {SHARE(0, run, "3")}},
    {"12 doors: minutes of one, then times the count",
     {WORK, "operation work|per = ft of frame\nminutes = 0.10\nsetup = 6 min per material"},
     "id,count,width,height\nD1,12,18,30\n",
     {SHARE(0, run, "0.74"), OPERATION(0, run, "8.88"), OPERATION(0, setups, "1"),
      OPERATION(0, machine_minutes, "14.88")}},
    {"60 in of frame, 16 ft/min, 4 passes, two pieces of 0.15 min a pass, 12 doors: 29.4 min",
     {WORK, "operation work|per = ft of frame\nfeed = 16 ft per min\npasses = 4\n"
            "handling = 0.15 min per stile"},
     "id,count,width,height\nD1,12,13 3/4,20\n",
     {SHARE(0, count, "5 ft"), SHARE(0, run, "2.45 min"), OPERATION(0, run, "29.4 min")}},
    {"24 stiles of 30 in by the piece: 4 x (2.5 / 16 + 0.15) = 1.225 min each",
     {WORK, "operation work|per = stile\nminutes = 0.30625\npasses = 4"},
     "id,count,width,height\nD1,12,18,30\n",
     {SHARE(0, run, "2.45"), OPERATION(0, run, "29.4")}},
    {"three passes for the whole job, two at once",
     {"shop|operations = work",
      "operation work|per = job\nminutes = 100\npasses = 3\ntogether = 2"},
     "id,count,width,height\nD1,12,18,30\n",
     {OPERATION(0, run, "150")}},
    {"handling by part: only the parts that go through",
     {WORK, "operation work|per = rail\nminutes = 1\nhandling = 0.50 min per part"},
     "D1,18,30\n",
     {SHARE(0, count, "2"), SHARE(0, run, "3")}},
    {"handling by part of a run of frame: not the panel",
     {WORK, "operation work|per = ft of frame\nfeed = 10 ft per min\n"
            "handling = 0.50 min per part"},
     "D1,18,30\n",
     {SHARE(0, run, "2.74")}}, /* 0.74 + 4 x 0.50 */
    {"eight at once: 60 in of frame at 16 ft/min are an eighth, each piece is handled",
     {WORK, "operation work|per = ft of frame\nfeed = 1 ft per min\ntogether = 8\n"
            "handling = 0.20 min per stile"},
     "D1,13 3/4,20\n",
     {SHARE(0, count, "5"), SHARE(0, run, "1.03")}}, /* 5 / 8 = 0.63, 2 x 0.20 */
    {"ten at once by minutes",
     {WORK, "operation work|per = part\nminutes = 2\ntogether = 10\npasses = 3"},
     "D1,18,30\n",
     {SHARE(0, run, "3")}}, /* 5 x 2 x 3 / 10 */
    {"by wood: a fifth more in poplar",
     {WORK, "operation work|per = stile\nminutes = 1\nby wood = yes", "lumber poplar|work = 120 %"},
     "D1,18,30\n",
     {SHARE(0, run, "2.4")}},
    {"not by wood: as ever",
     {WORK, "operation work|per = stile\nminutes = 1", "lumber poplar|work = 120 %"},
     "D1,18,30\n",
     {SHARE(0, run, "2")}},
    {"by wood that says nothing of it",
     {WORK, "operation work|per = stile\nminutes = 1\nby wood = yes"},
     "D1,18,30\n",
     {SHARE(0, run, "2")}},
    {"by wood goes by the parts that are worked on, not by the panel",
     {"door solid|operations = work", "make|style = solid\npanel = thick-poplar",
      "operation work|per = rail\nminutes = 1\nby wood = yes", "lumber thick-poplar|work = 150 %"},
     "D1,18,30\n",
     {SHARE(0, run, "2")}},
    {"and by the panel where that is worked on",
     {"door solid|operations = work", "make|style = solid\npanel = thick-poplar",
      "operation work|per = solid panel\nminutes = 1\nby wood = yes",
      "lumber thick-poplar|work = 150 %"},
     "D1,18,30\n",
     {SHARE(0, run, "1.5")}},
    {"handling alone",
     {WORK, "operation work|per = door\nhandling = 0.50 min per panel"},
     "D1,18,30\n",
     {SHARE(0, run, "0.5")}},

    /* the allowance */
    {"none",
     {WORK, HUNDRED},
     "D1,18,30\n",
     {OPERATION(0, machine_minutes, "100"), OPERATION(0, person_minutes, "100"),
      OPERATION(0, labor, "100"), OPERATION(0, machine, NULL)}},
    {"15 % added: x 1.15",
     {WORK, HUNDRED, "shop|allowance = 15 % added"},
     "D1,18,30\n",
     {OPERATION(0, person_minutes, "115"), OPERATION(0, labor, "115")}},
    {"15 % of shift: / 0.85",
     {WORK, HUNDRED, "shop|allowance = 15 % of shift"},
     "D1,18,30\n",
     {OPERATION(0, person_minutes, "117.65"), OPERATION(0, labor, "117.65")}},

    /* hands, rates, days */
    {"two hands double the person, not the machine",
     {WORK, HUNDRED "\nhands = 2\nmachine = sander"},
     "D1,18,30\n",
     {OPERATION(0, machine_minutes, "100 min"), OPERATION(0, person_minutes, "200 min"),
      OPERATION(0, labor, "200"), OPERATION(0, machine, "10"), OPERATION(0, cost, "210"),
      MACHINE(0, minutes, "100 min"), MACHINE(0, hours, "1.67 h"), MACHINE(0, cost, "10")}},
    {"the allowance is the person's, not the machine's",
     {WORK, HUNDRED "\nhands = 2\nmachine = sander", "shop|allowance = 15 % added"},
     "D1,18,30\n",
     {OPERATION(0, machine_minutes, "100"), OPERATION(0, person_minutes, "230"),
      OPERATION(0, machine, "10")}},
    {"a rate of its own",
     {WORK, HUNDRED "\nlabor rate = 42.00 per hour"},
     "D1,18,30\n",
     {OPERATION(0, labor, "70")}},
    {"hours and days",
     {WORK, HUNDRED},
     "id,count,width,height\nD1,4,18,30\n",
     {LABOR(person_minutes, "100 min"), LABOR(hours, "1.67 h"), LABOR(work_days, "0.21 days"),
      LABOR(minutes_a_door, "25 min")}},
    {"16.67 person-minutes at 38.00 an hour: 10.56; 14.88 at 2.00: 0.50",
     {WORK,
      "operation work|machine = sander\nper = ft of frame\nminutes = 0.10\n"
      "setup = 6 min per material",
      "shop|labor rate = 38.00 per hour\nallowance = 12 % added",
      "machine sander|rate = 2.00 per hour"},
     "id,count,width,height\nD1,12,18,30\n",
     {OPERATION(0, person_minutes, "16.67"), OPERATION(0, labor, "10.56"),
      OPERATION(0, machine, "0.50")}},
    {"work off the bench is no hour at it, and fills no day",
     {"door plain|operations = work, look", HUNDRED,
      "operation look|per = job\nminutes = 320\noff the bench = yes", "shop|hours per day = 2"},
     "id,count,width,height\nD1,4,18,30\n",
     {LABOR(person_minutes, "420"), LABOR(hours, "7"), LABOR(bench_minutes, "100"),
      LABOR(bench_hours, "1.67"), LABOR(work_days, "0.84")}},
    {"handwork and a machine apart",
     {"door plain|operations = work, look",
      "operation work|per = door\nminutes = 3\n"
      "machine = sander",
      "operation look|per = door\nminutes = 2"},
     "D1,18,30\n",
     {MACHINE(0, minutes, "2"), MACHINE(0, cost, "0"), MACHINE(1, minutes, "3"),
      MACHINE(1, cost, "0.3")}},

    /* shares */
    {"set-ups are shared by run minutes",
     {WORK, "operation work|per = stile\nminutes = 1\nsetup = 9 min per job"},
     "id,style,count,width,height\nD1,plain,2,18,30\nD2,plain,1,18,36\nD3,slab,1,18,30\n",
     {OPERATION(0, run, "6"), OPERATION(0, person_minutes, "15"), SHARE(0, person, "5"),
      SHARE(1, person, "5"), SHARE(2, person, NULL), SHARE(0, cost, "5"), SHARE(2, cost, NULL)}},
    {"an operation of no listed style does nothing",
     {WORK, HUNDRED},
     "id,style,width,height\nD3,slab,18,30\n",
     {OPERATION(0, run, NULL), LABOR(person_minutes, "0")}},
    {"the shop's own operation works on all",
     {"shop|operations = work", "operation work|per = job\nminutes = 100"},
     "id,style,count,width,height\nD1,plain,3,18,30\nD3,slab,1,18,30\n",
     {SHARE(0, person, "25"), SHARE(1, person, "25")}},
};

/* A profiled door with a mid rail, two coats, two hinges; two of them. */
#define EVERY                                                                                      \
    "door profiled|operations = work", "make|style = profiled\nfinish = painted\nhinge = hinge",   \
        "finish painted|coats = paint x 2"
#define PER(driver) ("operation work|per = " driver "\nminutes = 1")
#define PAIR        "id,count,mid rails,width,height\nD1,2,1,18,30\n"

static const struct bench_case driver_cases[] = {
    {"job", {EVERY, PER("job")}, PAIR, {OPERATION(0, job_count, "1"), OPERATION(0, run, "1")}},
    {"door", {EVERY, PER("door")}, PAIR, {SHARE(0, count, "1"), OPERATION(0, run, "2")}},
    {"part", {EVERY, PER("part")}, PAIR, {SHARE(0, count, "7"), OPERATION(0, run, "14")}},
    {"stile", {EVERY, PER("stile")}, PAIR, {SHARE(0, count, "2"), OPERATION(0, run, "4")}},
    {"rail", {EVERY, PER("rail")}, PAIR, {SHARE(0, count, "3"), OPERATION(0, run, "6")}},
    {"panel", {EVERY, PER("panel")}, PAIR, {SHARE(0, count, "2"), OPERATION(0, run, "4")}},
    {"joint", {EVERY, PER("joint")}, PAIR, {SHARE(0, count, "6"), OPERATION(0, run, "12")}},
    {"bar, on both faces",
     {"door glazed|bar width = 5/8\nbar thickness = 1/4\nbars on = both\noperations = work",
      "make|style = glazed", PER("bar")},
     "id,width,height,bars\nD1,18,30,2 x 3\n",
     {SHARE(0, count, "6")}},
    {"ft of bar",
     {"door glazed|bar width = 5/8\nbar thickness = 1/4\noperations = work", "make|style = glazed",
      PER("ft of bar")},
     "id,width,height,bars\nD1,18,30,2 x 3\n",
     {SHARE(0, count, "4.375")}},
    {"arch: one over each opening of the top row",
     {EVERY, PER("arch")},
     "id,width,height,mid stiles,mid rails,arch\nD1,18,30,1,1,2\n",
     {SHARE(0, count, "2"), OPERATION(0, run, "2")}},
    {"a straight rail has no arch", {EVERY, PER("arch")}, PAIR, {OPERATION(0, run, NULL)}},
    {"hinge", {EVERY, PER("hinge")}, PAIR, {SHARE(0, count, "2"), OPERATION(0, run, "4")}},
    {"pull: as many as the row says",
     {EVERY, PER("pull"), "make|pull = pull"},
     "id,count,width,height,pulls\nD1,2,18,30,3\nD2,1,18,30,0\n",
     {SHARE(0, count, "3"), SHARE(1, count, NULL), OPERATION(0, run, "6")}},
    {"piece of hardware: of one for the pair each leaf has half",
     {EVERY, PER("piece of hardware"), "make|hardware = 2 pull, 1 hinge per opening\nhinge = none"},
     "id,count,leaves,width,height\nD1,3,2,18,30\n",
     {SHARE(0, count, "2.5"), OPERATION(0, run, "15")}},
    {"ft of frame: (2 x 30 + 3 x 14 1/4) / 12",
     {EVERY, PER("ft of frame")},
     PAIR,
     {SHARE(0, count, "8.5625"), SHARE(0, run, "8.56"), OPERATION(0, run, "17.12")}},
    {"ft of edge",
     {EVERY, PER("ft of edge")},
     PAIR,
     {SHARE(0, count, "8"), OPERATION(0, run, "16")}},
    {"ft of door: the longer side",
     {EVERY, PER("ft of door")},
     PAIR,
     {SHARE(0, count, "2.5"), OPERATION(0, run, "5")}},
    {"ft of door that is wider than high",
     {EVERY, PER("ft of door")},
     "D1,36,18\n",
     {SHARE(0, count, "3")}},
    {"sqft", {EVERY, PER("sqft")}, PAIR, {SHARE(0, count, "3.75"), OPERATION(0, run, "7.5")}},
    {"sqft sprayed",
     {EVERY, PER("sqft sprayed")},
     PAIR,
     {SHARE(0, count, "8.349"), SHARE(0, run, "8.35"), OPERATION(0, run, "16.7")}},
    {"sqft sprayed per coat",
     {EVERY, PER("sqft sprayed per coat")},
     PAIR,
     {SHARE(0, count, "16.698"), OPERATION(0, run, "33.4")}},
    {"sqft sprayed between coats: once between two",
     {EVERY, PER("sqft sprayed between coats")},
     PAIR,
     {SHARE(0, count, "8.349"), OPERATION(0, run, "16.7")}},
    {"one coat has nothing between",
     {EVERY, "finish painted|coats = paint x 1", PER("sqft sprayed between coats")},
     PAIR,
     {OPERATION(0, run, NULL)}},
    {"bf: what is bought, 3.2114 up to 4",
     {EVERY, PER("bf")},
     PAIR,
     {OPERATION(0, job_count, "4"), OPERATION(0, run, "4"), SHARE(0, person, "2")}},
    {"sheet: what is bought", {EVERY, PER("sheet")}, PAIR, {OPERATION(0, job_count, "1")}},
    {"no hinges, nothing to bore",
     {EVERY, PER("hinge"), "make|hinge = none"},
     PAIR,
     {OPERATION(0, run, NULL)}},
    {"a slab has no joints",
     {"door slab|operations = work", "make|style = slab", PER("joint")},
     "S1,18,30\n",
     {OPERATION(0, run, NULL)}},
    {"a slab is a panel",
     {"door slab|operations = work", "make|style = slab", PER("panel")},
     "S1,18,30\n",
     {SHARE(0, count, "1")}},
    {"a mid stile is a stile",
     {WORK, PER("stile")},
     "id,mid stiles,width,height\nD1,1,18,30\n",
     {SHARE(0, count, "3")}},
};

#define SET(driver, per) ("operation work|per = " driver "\nminutes = 1\nsetup = 10 min per " per)
/* 18 x 30 and 18 x 36: lengths 30, 36, 14 1/4 and panels of 26 1/8, 32 1/8; widths 2 1/4, 14 1/8 */
#define TWO_HIGH "D1,18,30\nD2,18,36\n"

static const struct bench_case setup_cases[] = {
    {"per job",
     {WORK, SET("part", "job")},
     TWO_HIGH,
     {OPERATION(0, setups, "1"), OPERATION(0, setup_minutes, "10")}},
    {"per material", {WORK, SET("part", "material")}, TWO_HIGH, {OPERATION(0, setups, "2")}},
    {"per material of frames",
     {WORK, SET("ft of frame", "material")},
     "id,frame,width,height\nD1,poplar,18,30\nD2,thick-poplar,18,30\nD3,poplar,18,36\n",
     {OPERATION(0, setups, "2")}},
    {"per material of slabs: a sheet and a lumber are two, each the first of its kind",
     {"door slab|operations = work", "make|style = slab", SET("door", "material")},
     "id,slab,width,height\nD1,ply,18,30\nD2,poplar,18,30\nD3,ply,18,36\n",
     {OPERATION(0, setups, "2")}},
    {"per thickness", {WORK, SET("part", "thickness")}, TWO_HIGH, {OPERATION(0, setups, "2")}},
    {"per thickness of stiles",
     {WORK, SET("stile", "thickness")},
     TWO_HIGH,
     {OPERATION(0, setups, "1")}},
    {"per width", {WORK, SET("part", "width")}, TWO_HIGH, {OPERATION(0, setups, "2")}},
    {"per width of rails",
     {WORK, SET("rail", "width"), "door plain|bottom rail = 3"},
     TWO_HIGH,
     {OPERATION(0, setups, "2")}},
    {"per length",
     {WORK, SET("part", "length")},
     TWO_HIGH,
     {OPERATION(0, setups, "5"), OPERATION(0, setup_minutes, "50")}},
    {"per length of stiles", {WORK, SET("stile", "length")}, TWO_HIGH, {OPERATION(0, setups, "2")}},
    {"per length of rails", {WORK, SET("rail", "length")}, TWO_HIGH, {OPERATION(0, setups, "1")}},
    {"per length of frame parts",
     {WORK, SET("ft of frame", "length")},
     TWO_HIGH,
     {OPERATION(0, setups, "3")}},
    {"per length of jointed parts: stiles meet rails there, 30, 36 and 14 1/4",
     {WORK, SET("joint", "length")},
     TWO_HIGH,
     {OPERATION(0, setups, "3")}},
    {"a door worked on whole has one thickness, whatever its panel has",
     {WORK, SET("door", "thickness")},
     TWO_HIGH,
     {OPERATION(0, setups, "1")}},
    {"by area likewise", {WORK, SET("sqft", "thickness")}, TWO_HIGH, {OPERATION(0, setups, "1")}},
    {"by edge likewise",
     {WORK, SET("ft of edge", "thickness")},
     TWO_HIGH,
     {OPERATION(0, setups, "1")}},
    {"by hinge likewise; a front without hinges calls for nothing",
     {WORK, SET("hinge", "thickness"), "make|hinge = hinge",
      "door slab|operations = work\n"
      "thickness = 1 in"},
     "id,style,use,width,height\nD1,plain,door,18,30\nF1,slab,drawer front,18,6\n",
     {OPERATION(0, setups, "1")}},
    {"doors of two thicknesses",
     {WORK, SET("door", "thickness"), "door tenoned|operations = work\nthickness = 1 in"},
     "id,style,width,height\nD1,plain,18,30\nD2,tenoned,18,30\nD3,plain,18,36\n",
     {OPERATION(0, setups, "2")}},
    {"doors by their own width: 18 and 20",
     {WORK, SET("door", "width")},
     "D1,18,30\nD2,20,30\nD3,18,36\n",
     {OPERATION(0, setups, "2")}},
    {"doors by their own height: 30 and 36",
     {WORK, SET("door", "length")},
     "D1,18,30\nD2,20,30\nD3,18,36\n",
     {OPERATION(0, setups, "2")}},
    {"doors by their frame's lumber",
     {WORK, SET("door", "material")},
     "id,frame,width,height\nD1,poplar,18,30\nD2,thick-poplar,18,30\nD3,poplar,18,36\n",
     {OPERATION(0, setups, "2")}},
    {"per length of panels", {WORK, SET("panel", "length")}, TWO_HIGH, {OPERATION(0, setups, "2")}},
    /* the second lumber and the second sheet of the shop, and two sheets */
    {"per material of whole doors, a slab of lumber and one of a sheet",
     {SLABBED, SET("door", "material")},
     "id,width,height,slab\nD1,18,30,thick-poplar\nD2,18,30,board\n",
     {OPERATION(0, setups, "2")}},
    {"per material of whole doors, slabs of two sheets",
     {SLABBED, SET("door", "material")},
     "id,width,height,slab\nD1,18,30,ply\nD2,18,30,board\nD3,12,30,ply\n",
     {OPERATION(0, setups, "2")}},
    {"doors that are bought in by their own width",
     {WORK, SET("door", "width"), "door plain|bought in = 40.00 per door"},
     "D1,18,30\nD2,20,30\n",
     {OPERATION(0, setups, "2")}},
    {"of which no material is known",
     {WORK, SET("door", "material"), "door plain|bought in = 40.00 per door"},
     "D1,18,30\nD2,20,30\n",
     {OPERATION(0, setups, "0")}},
    {"per style", {WORK, SET("door", "style")}, TWO_HIGH, {OPERATION(0, setups, "1")}},
    {"per style of two",
     {WORK, "door tenoned|operations = work", SET("door", "style")},
     "id,style,width,height\nD1,plain,18,30\nD2,tenoned,18,30\nD3,plain,18,36\n",
     {OPERATION(0, setups, "2")}},
    {"rows without the operation call for nothing",
     {WORK, SET("stile", "length")},
     "id,style,width,height\nD1,plain,18,30\nD2,tenoned,18,36\n",
     {OPERATION(0, setups, "1")}},
    {"per coat: three in one color",
     {"finish painted|coats = paint x 2, top x 1\noperations = work", "make|finish = painted",
      "coating top|spread by = wet film\nwet film = 4 mil\nsizes = 1 gal at 90.00",
      SET("job", "coat")},
     TWO_HIGH,
     {OPERATION(0, setups, "3")}},
    {"per coat: two colors of a product that is not tinted: mixed once",
     {"finish painted|coats = paint x 2\noperations = work", "make|finish = painted",
      SET("job", "coat")},
     "id,color,width,height\nD1,white,18,30\nD2,green,18,30\nD3,white,18,36\n",
     {OPERATION(0, setups, "2")}},
    {"per coat: a primer once, its tinted coats by color",
     {"finish painted|coats = paint x 2, top x 1\noperations = work", "make|finish = painted",
      "coating top|spread by = wet film\nwet film = 4 mil\nsizes = 1 gal at 90.00\ntinted = yes",
      SET("job", "coat")},
     "id,color,width,height\nD1,white,18,30\nD2,green,18,30\nD3,white,18,36\n",
     {OPERATION(0, setups, "4")}},
    {"per coat: two colors",
     {"finish painted|coats = paint x 2\noperations = work", "make|finish = painted",
      "coating paint|tinted = yes", SET("job", "coat")},
     "id,color,width,height\nD1,white,18,30\nD2,green,18,30\nD3,white,18,36\n",
     {OPERATION(0, setups, "4")}},
    {"per color",
     {"finish painted|coats = paint x 2\noperations = work", "make|finish = painted",
      "coating paint|tinted = yes", SET("job", "color")},
     "id,color,width,height\nD1,white,18,30\nD2,green,18,30\nD3,white,18,36\n",
     {OPERATION(0, setups, "2")}},
    {"per coat: three colors that no row names",
     {"finish painted|coats = paint x 2\ncolors = 3\noperations = work", "make|finish = painted",
      "coating paint|tinted = yes", SET("job", "coat")},
     TWO_HIGH,
     {OPERATION(0, setups, "6")}},
    {"per color: three that no row names",
     {"finish painted|coats = paint x 2\ncolors = 3\noperations = work", "make|finish = painted",
      SET("job", "color")},
     TWO_HIGH,
     {OPERATION(0, setups, "3")}},
    {"per color: a row that names its color is of that alone",
     {"finish painted|coats = paint x 2\ncolors = 3\noperations = work", "make|finish = painted",
      "coating paint|tinted = yes", SET("job", "color")},
     "id,color,width,height\nD1,white,18,30\nD2,white,18,36\n",
     {OPERATION(0, setups, "1")}},
};

static const struct bench_case mm_cases[] = {
    {"feed in meters",
     {WORK, "operation work|per = m of frame\nfeed = 4 m per min"},
     "D1,443.5,670\n",
     {SHARE(0, count, "2.027"), SHARE(0, run, "0.51")}},
    {"m of door", {WORK, PER("m of door")}, "D1,443.5,670\n", {SHARE(0, count, "0.67")}},
    {"square meters",
     {WORK, PER("m2")},
     "D1,500,800\n",
     {SHARE(0, count, "0.4"), SHARE(0, run, "0.4")}},
    {"capacity in mm",
     {WORK, "operation work|per = door\nminutes = 1\ncapacity = 400, one side open"},
     "D1,443.5,670\n",
     {SHARE(0, run, "2")}},
};

static void test_minutes(void **state) {
    (void)state;
    bench_run(minute_cases, COUNT(minute_cases), BENCH_INCH);
}

static void test_drivers(void **state) {
    (void)state;
    bench_run(driver_cases, COUNT(driver_cases), BENCH_INCH);
}

static void test_setups(void **state) {
    (void)state;
    bench_run(setup_cases, COUNT(setup_cases), BENCH_INCH);
}

/* What each set-up is for, the largest first; other ways of setting up are for no length. */
static void test_set_up_for(void **state) {
    (void)state;
    static const struct {
        const char *per;
        int64_t at[6]; /* in 64ths, 0 behind the last */
    } said[] = {{SET("part", "job"), {0}},
                {SET("part", "material"), {0}},
                {SET("part", "thickness"), {48, 16}},
                {SET("part", "width"), {904, 144}},
                {SET("part", "length"), {2304, 2056, 1920, 1672, 912}}};
    int wrong = 0;
    for (size_t i = 0; i < COUNT(said); i++) {
        struct bench bench;
        bench_open(&bench, said[i].per, BENCH_INCH, (const char *[]){WORK, said[i].per, NULL},
                   TWO_HIGH);
        bench_sound(&bench);
        const struct operation_figures *const o = &bench.estimate.labor.operations[0];
        size_t count = 0;
        while (said[i].at[count] > 0) {
            count++;
        }
        if (o->setup_at_count != count) {
            bench_wrong(&bench, "set up for %zu lengths, not %zu", o->setup_at_count, count);
        }
        for (size_t k = 0; k < count && k < o->setup_at_count; k++) {
            if (o->setup_at[k] != said[i].at[k] * NM_PER_64TH) {
                bench_wrong(&bench, "set-up %zu is for %lld nm", k, (long long)o->setup_at[k]);
            }
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

static void test_mm(void **state) {
    (void)state;
    bench_run(mm_cases, COUNT(mm_cases), BENCH_MM);
}

/* A door that no pass can take is warned of; one that a second pass takes is not. */
static void test_too_wide(void **state) {
    (void)state;
    static const struct {
        const char *name, *capacity, *doors;
        bool warned;
    } cases[] = {
        {"32 in, one side open", "operation work|capacity = 16 in, one side open", "D1,32,40\n",
         false},
        {"32 1/64 in, one side open", "operation work|capacity = 16 in, one side open",
         "D1,32 1/64,40\n", true},
        {"16 in, closed", "operation work|capacity = 16 in", "D1,16,40\n", false},
        {"16 1/64 in, closed", "operation work|capacity = 16 in", "D1,16 1/64,40\n", true},
        {"rails are not 16 in wide", "operation work|per = rail\ncapacity = 16 in", "D1,18,40\n",
         false},
        {"a panel is", "operation work|per = panel\ncapacity = 16 in", "D1,30,40\n", true},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        const char *const edits[BENCH_MOST_EDITS] = {WORK, "operation work|per = door\nminutes = 1",
                                                     cases[i].capacity};
        bench_open(&bench, cases[i].name, BENCH_INCH, edits, cases[i].doors);
        bench_sound(&bench);
        if (bench_has(&bench, "too-wide-for-machine") != cases[i].warned) {
            bench_wrong(&bench, cases[i].warned ? "not warned of" : "warned of");
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Every figure of an operation is in minutes or money, those that only others are made of too. */
static void test_units(void **state) {
    (void)state;
    static const struct {
        const char *label;
        enum unit unit;
    } units[] = {
        {"feeding", UNIT_MIN},
        {"handling", UNIT_MIN},
        {"run minutes", UNIT_MIN},
        {"run minutes, the job", UNIT_MIN},
        {"person-minutes", UNIT_MIN},
        {"person-minutes, share", UNIT_MIN},
        {"person-minutes, a door", UNIT_MIN},
        {"operation cost, share", UNIT_MONEY},
        {"labor and machine, a door", UNIT_MONEY},
    };
    const char *const edits[BENCH_MOST_EDITS] = {
        WORK,
        "operation work|per = ft of frame\nfeed = 10 ft per min\nhandling = 0.5 min per part"};
    struct bench bench;
    size_t seen = 0;
    bench_open(&bench, "units", BENCH_INCH, edits, "D1,18,40\nD2,16,30\n");
    bench_sound(&bench);
    const struct tape *const tape = &bench.estimate.tape;
    for (size_t i = 0; i < COUNT(units); i++) {
        bool found = false;
        for (uint32_t id = 1; id < tape->count; id++) {
            if (strcmp(tape_label(tape, (fig){id}), units[i].label) == 0) {
                found = true;
                if (tape_unit(tape, (fig){id}) != units[i].unit) {
                    bench_wrong(&bench, "'%s' is in %s", units[i].label,
                                unit_name(tape_unit(tape, (fig){id})));
                }
            }
        }
        seen += found ? 1 : 0;
    }
    assert_int_equal(bench_close(&bench), 0);
    assert_int_equal(seen, COUNT(units));
}

/* A sum is made where there are two times to add, not of one. */
static void test_one_time(void **state) {
    (void)state;
    static const char *const works[] = {
        "operation work|per = ft of frame\nfeed = 10 ft per min",
        "operation work|per = part\nminutes = 2",
        "operation work|per = part\nhandling = 0.5 min per part",
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(works); i++) {
        const char *const edits[BENCH_MOST_EDITS] = {WORK, works[i]};
        struct bench bench;
        bench_open(&bench, works[i], BENCH_INCH, edits, "D1,18,40\n");
        const struct tape *const tape = &bench.estimate.tape;
        for (uint32_t id = 1; id < tape->count; id++) {
            if (strcmp(tape_label(tape, (fig){id}), "run minutes") == 0) {
                bench_wrong(&bench, "one time is added to nothing");
            }
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_minutes), cmocka_unit_test(test_drivers),
        cmocka_unit_test(test_setups),  cmocka_unit_test(test_set_up_for),
        cmocka_unit_test(test_mm),      cmocka_unit_test(test_too_wide),
        cmocka_unit_test(test_units),   cmocka_unit_test(test_one_time),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
