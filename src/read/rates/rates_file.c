/* SPDX-License-Identifier: MIT */
#include "read/rates/rates_file.h"

#include "base/array.h"
#include "base/text.h"
#include "read/file/ini.h"
#include "read/key/currency.h"
#include "read/rates/change.h"
#include "read/rates/picture.h"
#include "read/rates/plausible.h"
#include "read/rates/rack_file.h"
#include "read/rates/rates_keys.h"
#include "read/rates/terms.h"
#include "read/rates/woods.h"

#include <string.h>

const struct section_kind *const rates_sections[] = {
    &section_shop,    &section_lumber,    &section_sheet,     &section_glass,   &section_saw,
    &section_banding, &section_limits,    &section_climate,   &section_markup,  &section_chance,
    &section_door,    &section_operation, &section_machine,   &section_coating, &section_additive,
    &section_spray,   &section_finish,    &section_hardware,  &section_hinges,  &section_consumable,
    &section_labels,  &section_days,      &section_plausible,
};
const size_t rates_section_count = COUNT_OF(rates_sections);

/* A name that two kinds of material share would leave open which is meant. */
static void check_materials(struct reader *reader, const struct rates *rates) {
    static const enum name_kind kinds[] = {NAME_LUMBER, NAME_SHEET, NAME_GLASS};

    for (size_t later = 1; later < COUNT_OF(kinds); later++) {
        for (size_t i = 0; i < name_count(rates, kinds[later]); i++) {
            const char *name = name_at(rates, kinds[later], i);
            struct place place = kinds[later] == NAME_SHEET ? rates->sheets[i].name.place
                                                            : rates->glass[i].name.place;

            for (size_t earlier = 0; earlier < later; earlier++) {
                if (name_find(rates, kinds[earlier], name) >= 0) {
                    problem_add(reader->problems, SEVERITY_ERROR, "material-named-twice", place,
                                "'%s' is the name of a [%s] and of a [%s]; give each material its "
                                "own name",
                                problem_quote(reader->problems, name), name_section(kinds[earlier]),
                                name_section(kinds[later]));
                }
            }
        }
    }
}

bool rates_read_from(struct rates *rates, const char *path, struct place asked,
                     struct rates_instead instead, struct rates_texts *texts,
                     struct problems *problems) {
    struct reader reader = {.pool = &rates->pool,
                            .problems = problems,
                            .path = path,
                            .rates = rates,
                            .numbers = &rates->numbers,
                            .ranged = true,
                            .names_known = true};
    struct ini ini;

    *rates = (struct rates){0};
    *texts = (struct rates_texts){0};
    pool_init(&rates->pool);
    rates->path = pool_text(&rates->pool, path, strlen(path));
    if (instead.ini != NULL) {
        ini = *instead.ini;
    } else if (!ini_read(&ini, path, asked, problems)) {
        return false;
    }
    if (!ini.open) {
        return !pool_failed(&rates->pool);
    }
    texts->ini = ini;
    settings_make(&reader, &ini, &rates->settings); /* as the file has them */
    if (!changes_apply(&ini, instead.changes, problems)) {
        return false;
    }
    reader.unit = unit_before(&ini, "shop");
    reader.money_decimals = currency_decimals(text_before(&ini, "shop", "currency"));
    rates->shop.money_decimals = reader.money_decimals;
    sections_read(&reader, &ini, rates_sections, rates_section_count, rates);
    check_materials(&reader, rates);
    own_check(&reader, rates);
    styles_check(&reader, rates);
    finishes_check(&reader, rates);
    labels_check(&reader, rates);
    plausible_check_rates(&reader, rates);
    larger_check(&reader, rates);
    if (instead.changes == NULL && instead.ini == NULL) { /* what is tried may lose its range */
        together_check(&reader, rates);
    }
    if (!terms_read(&reader, &rates->shop) || !picture_read(&reader, &rates->shop)) {
        return false;
    }
    if (instead.woods != NULL) {
        texts->woods = *instead.woods;
    } else if (!woods_table(&texts->woods, rates->shop.woods.s, rates->shop.woods.place, path,
                            problems)) {
        return false;
    }
    if (instead.rack != NULL) {
        texts->rack = *instead.rack;
    } else if (rates->shop.stock.s != NULL &&
               !rack_table(&texts->rack, rates->shop.stock.s, rates->shop.stock.place, problems)) {
        return false;
    }
    return rack_read(&reader, rates, &texts->rack) && woods_read(&reader, rates, &texts->woods);
}

bool rates_read(struct rates *rates, const char *path, struct problems *problems) {
    struct rates_texts texts;

    return rates_read_from(rates, path, (struct place){0}, (struct rates_instead){0}, &texts,
                           problems);
}

void rates_clear(struct rates *rates) {
    pool_clear(&rates->pool);
    *rates = (struct rates){0};
}
