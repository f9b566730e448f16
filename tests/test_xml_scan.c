/* SPDX-License-Identifier: MIT */
/* What the scan takes for well-formed, a parser (expat, of Debian) does too, whatever piece is lost
 * or comes in between; and both count the same elements. */
#include "report/xlsx/xml_scan.h"

#include "cmocka_all.h"

#include <expat.h>
#include <string.h>

/* All that a workbook's parts have. */
static const char sample[] =
    "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n"
    "<sheet xmlns=\"urn:a\" xmlns:r=\"urn:b\"><dim ref='A1:B2'/><rows>"
    "<row r=\"1\" ht=\"12.75\"><c r=\"A1\" s=\"3\" t=\"s\"><v>0</v></c>"
    "<c r=\"B1\" "
    "s=\"4\"><f>IF(A1&lt;=2,\"a\",Doors!B2&amp;\"\xC3\xA4\xE6\x9C\xA8\")</f><v>1.5</v></c></row>"
    "<row r=\"2\"><c r=\"A2\"><is><t xml:space=\"preserve\"> a &#xA;&gt; "
    "</t></is></c></row></rows >"
    "<r:mark text=\"5 &quot; x &apos;\" /></sheet>\n";

static void count_start(void *to, struct xml_piece name,
                        const struct xml_scan_attribute *attributes, size_t count) {
    (void)attributes;
    *(size_t *)to += xml_is(name, "c") ? 1 + count : 1;
}

static void expat_start(void *to, const XML_Char *name, const XML_Char **attributes) {
    size_t count = 0;
    while (attributes[2 * count] != NULL) {
        count++;
    }
    *(size_t *)to += strcmp(name, "c") == 0 ? 1 + count : 1;
}

static bool scans(const char *bytes, size_t size, size_t piece, size_t *elements) {
    *elements = 0;
    struct xml_scan *const scan = xml_scan_new(count_start, elements);
    assert_non_null(scan);
    bool good = true;
    for (size_t at = 0; good && at < size; at += piece) {
        good = xml_scan_take(scan, bytes + at, size - at < piece ? size - at : piece);
    }
    good = good && xml_scan_ended(scan);
    xml_scan_free(scan);
    return good;
}

static bool parses(const char *bytes, size_t size, size_t *elements) {
    *elements = 0;
    XML_Parser parser = XML_ParserCreate(NULL);
    assert_non_null(parser);
    XML_SetUserData(parser, elements);
    XML_SetStartElementHandler(parser, expat_start);
    const bool good = XML_Parse(parser, bytes, (int)size, 1) == XML_STATUS_OK;
    XML_ParserFree(parser);
    return good;
}

/* Fails where the scan is the milder of the two. Returns whether it takes the bytes. */
static bool held_against_parser(const char *bytes, size_t size) {
    size_t seen;
    size_t wanted;
    const bool good = scans(bytes, size, size + 1, &seen);
    if (good && (!parses(bytes, size, &wanted) || seen != wanted)) {
        fail_msg("taken for good: %.*s", (int)size, bytes);
    }
    return good;
}

/* In pieces of any size the answer is the same. */
static void test_whole(void **state) {
    (void)state;
    size_t seen;
    size_t wanted;
    assert_true(parses(sample, sizeof sample - 1, &wanted));
    for (size_t piece = 1; piece <= sizeof sample; piece++) {
        assert_true(scans(sample, sizeof sample - 1, piece, &seen));
        assert_int_equal(seen, wanted);
    }
    for (size_t size = 0; size + 2 < sizeof sample; size++) { /* but for the last line end */
        assert_false(scans(sample, size, 7, &seen));
    }
}

/* Whatever run of bytes is lost. */
static void test_lost(void **state) {
    (void)state;
    char bytes[sizeof sample];
    size_t good = 0;
    for (size_t at = 0; at + 1 < sizeof sample; at++) {
        for (size_t lost = 1; at + lost < sizeof sample; lost++) {
            memcpy(bytes, sample, at);
            memcpy(bytes + at, sample + at + lost, sizeof sample - 1 - at - lost);
            good += held_against_parser(bytes, sizeof sample - 1 - lost) ? 1 : 0;
        }
    }
    const size_t size = sizeof sample;
    assert_in_range(good, 100, size * size / 20); /* words, elements, digits */
}

/* Whatever byte stands in the place of another. */
static void test_changed(void **state) {
    (void)state;
    char bytes[sizeof sample];
    size_t good = 0;
    for (size_t at = 0; at + 1 < sizeof sample; at++) {
        for (unsigned byte = 0; byte < 256; byte++) {
            memcpy(bytes, sample, sizeof sample);
            bytes[at] = (char)byte;
            good += held_against_parser(bytes, sizeof sample - 1) ? 1 : 0;
        }
    }
    assert_in_range(good, 1000, sizeof sample * 256 / 2);
}

/* What lacks its end, has one too many, or says something twice. */
static void test_bad(void **state) {
    (void)state;
    static const char *const texts[] = {
        "",
        "a",
        "<a>",
        "</a>",
        "<a/><b/>",
        "<a></b>",
        "<a></a></a>",
        "<ab></b>",
        "<a b></a>",
        "<a b=c/>",
        "<a b='c\"/>",
        "<a b='<'/>",
        "<a b='1' b='2'/>",
        "<a b='1'c='2'/>",
        "<a>&b;</a>",
        "<a>&</a>",
        "<a>&#;</a>",
        "<a>&#x;</a>",
        "<a>&#1b;</a>",
        "<a>\x01</a>",
        "<a>\xC3</a>",
        "<1/>",
        "< a/>",
        "<a / >",
        "<a/ >",
        "x<a/>",
        "<a/>x",
        "<a><?xml version='1.0'?></a>",
    };
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        size_t seen;
        if (scans(texts[i], strlen(texts[i]), 3, &seen)) {
            fail_msg("taken for good: %s", texts[i]);
        }
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_whole),
        cmocka_unit_test(test_lost),
        cmocka_unit_test(test_changed),
        cmocka_unit_test(test_bad),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
