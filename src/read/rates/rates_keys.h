/* SPDX-License-Identifier: MIT */
/* The sections of the rates file, one row of tables each, by subject in files of their own. */
#ifndef DOORCOST_READ_RATES_RATES_KEYS_H
#define DOORCOST_READ_RATES_RATES_KEYS_H

#include "read/key/key.h"

/* rates_shop.c */
extern const struct section_kind section_shop, section_hinges, section_hardware, section_consumable;
/* rates_stock.c */
extern const struct section_kind section_lumber, section_sheet, section_glass, section_saw,
    section_banding;
/* rates_door.c */
extern const struct section_kind section_door;
/* rates_rules.c */
extern const struct section_kind section_limits, section_climate, section_markup;
/* rates_labor.c */
extern const struct section_kind section_operation, section_machine;
/* rates_finish.c */
extern const struct section_kind section_additive, section_coating, section_spray, section_finish;

/* All of them, in the order of docs/formats.md. */
extern const struct section_kind *const rates_sections[];
extern const size_t rates_section_count;

/* Forms and choices that more than one table needs. */
extern const struct form forms_money[], forms_per_hour[], forms_percent[], forms_density[],
    forms_area[], forms_per_run[], forms_per_area[], forms_waste[], forms_hours[], forms_minutes[];
extern const struct spelling choices_yes_no[], choices_unit[];

#define COUNT_OF(rows) (sizeof(rows) / sizeof((rows)[0]))

/* Both ends in nm; in whole inches. */
#define RANGE(low_nm, high_nm)      (&(const struct length_range){(low_nm), (high_nm)})
#define INCHES(low_inch, high_inch) RANGE((low_inch)*NM_PER_INCH, (high_inch)*NM_PER_INCH)

#endif
