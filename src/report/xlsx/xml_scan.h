/* SPDX-License-Identifier: MIT */
/* Whether XML is well-formed, for what a workbook is made of, at many times the speed of a parser
 * that hands everything over: no document types, comments, sections of CDATA or
 * instructions, which are bad here, and one declaration alone. What it takes for good every parser
 * does. */
#ifndef DOORCOST_REPORT_XLSX_XML_SCAN_H
#define DOORCOST_REPORT_XLSX_XML_SCAN_H

#include <stdbool.h>
#include <stddef.h>

/* A piece of the text that is looked at; not terminated. */
struct xml_piece {
    const char *at;
    size_t size;
};

struct xml_scan_attribute {
    struct xml_piece name, value; /* the value as it is written, with its references */
};

/* Told of every element that begins. All is borrowed for the call. */
typedef void xml_scan_start(void *to, struct xml_piece name,
                            const struct xml_scan_attribute *attributes, size_t count);

struct xml_scan;

/* A scan that has seen nothing yet; NULL: out of memory. xml_scan_free must be called. */
struct xml_scan *xml_scan_new(xml_scan_start *start, void *to);
/* Frees it; NULL is nothing. */
void xml_scan_free(struct xml_scan *scan);

/* Looks at the next bytes. false: not well-formed, or memory is out. */
bool xml_scan_take(struct xml_scan *scan, const char *bytes, size_t size)
    __attribute__((warn_unused_result));

/* Whether all is closed; nothing may come after. */
bool xml_scan_ended(const struct xml_scan *scan);

/* Whether a piece is this word. */
bool xml_is(struct xml_piece piece, const char *word);

#endif
