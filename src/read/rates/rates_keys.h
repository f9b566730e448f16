/* SPDX-License-Identifier: MIT */
/* The sections of the rates file: a struct section_kind each, by subject in files of their own. */
#ifndef DOORCOST_READ_RATES_RATES_KEYS_H
#define DOORCOST_READ_RATES_RATES_KEYS_H

#include "read/key/key.h"

/* rates_shop.c */
extern const struct section_kind section_shop;
/* own.c: after all sections are read. */
void own_check(struct reader *reader, const struct rates *rates);
/* rates_hardware.c */
extern const struct section_kind section_hinges, section_hardware, section_consumable;
/* rates_stock.c */
extern const struct section_kind section_lumber, section_sheet, section_glass, section_saw;
/* rates_banding.c */
extern const struct section_kind section_banding;
/* rates_door.c */
extern const struct section_kind section_door;
/* What styles say of each other, after all of them are read. */
void styles_check(struct reader *reader, const struct rates *rates);
/* rates_rules.c */
extern const struct section_kind section_limits, section_climate, section_markup;
/* rates_chance.c */
extern const struct section_kind section_chance;
/* What `together` names must be of ranges, after all sections are read. */
void together_check(struct reader *reader, const struct rates *rates);
/* rates_labels.c */
extern const struct section_kind section_labels;
/* Whether the labels of each sheet lie on its paper; after all sections are read. */
void labels_check(struct reader *reader, const struct rates *rates);
/* rates_labor.c */
extern const struct section_kind section_operation, section_machine;
/* rates_finish.c */
extern const struct section_kind section_additive, section_coating, section_spray, section_finish;
/* What finishes say of each other, after all of them are read. */
void finishes_check(struct reader *reader, const struct rates *rates);
/* rates_days.c */
extern const struct section_kind section_days;
/* plausible_keys.c: its keys are in the order of enum usual */
extern const struct section_kind section_plausible;

/* All of them, in the order of docs/formats.md. */
extern const struct section_kind *const rates_sections[];
extern const size_t rates_section_count;

/* Forms and choices that more than one table needs. */
extern const struct unit_form forms_per_hour[], forms_per_area[], forms_lumber_price[],
    forms_hardware_price[];
extern const struct spelling choices_grain[], choices_paper_size[];

#endif
