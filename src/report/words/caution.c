/* SPDX-License-Identifier: MIT */
#include "report/words/caution.h"

#include "report/words/caution_facts.h"

#define SHOP   CAUTION_SHOP
#define PLAN   CAUTION_PLAN
#define FINISH CAUTION_FINISH
#define BUY    CAUTION_BUY
#define QUOTE  CAUTION_QUOTE
#define CLIENT CAUTION_CLIENT

#define CUTS       CUTTING_MACHINES
#define KIND(kind) machine_used, MACHINE_BIT(kind)

const struct caution cautions[] = {
    {"estimate", "always", "Sizes and minutes are estimates: measure again before the first cut.",
     always, 0, SHOP},
    {"machines", "a machine that cuts is used",
     "Guards on; power off before a blade or cutter is touched; each machine's manual comes first.",
     machine_used, CUTS, SHOP | PLAN},
    {"miter saw", "it is used",
     "Miter saw: hold-downs, hands 6 in (150 mm) off, blade at rest for short ends.",
     KIND(MACHINE_MITER_SAW), SHOP | PLAN},
    {"table saw", "it is used", "Table saw: spreader and hood on, push stick, nothing freehand.",
     KIND(MACHINE_TABLE_SAW), SHOP | PLAN},
    {"band saw", "it is used", "Band saw: guard down to the stock, push stick.",
     KIND(MACHINE_BAND_SAW), SHOP | PLAN},
    {"jointer", "it is used",
     "Jointer: guard over the cutterhead, push blocks, nothing shorter than its manual allows.",
     KIND(MACHINE_JOINTER), SHOP},
    {"planer", "it is used",
     "Planer: nothing shorter than its manual allows; stand aside of the feed.",
     KIND(MACHINE_PLANER), SHOP},
    {"shaper", "it is used",
     "Shaper: cage or like guard round the cutterhead, fence closed up, jig or power feed.",
     KIND(MACHINE_SHAPER), SHOP},
    {"router", "it is used",
     "Router: feed against the turn of the cutter, large ones slow, jig for rail ends.",
     KIND(MACHINE_ROUTER), SHOP},
    {"mortiser", "it is used", "Mortiser: part clamped, chips cleared with the bit at rest.",
     KIND(MACHINE_MORTISER), SHOP},
    {"boring machine", "it is used",
     "Boring machine: part clamped or fenced; no gloves, sleeves or hair near the spindle.",
     KIND(MACHINE_BORING), SHOP},
    {"sander", "it is used", "Sander: fingers away from where it draws the work in.",
     KIND(MACHINE_SANDER), SHOP},
    {"clamps", "they are used",
     "Clamps: fingers out of the joint; glued panels stand so that none can fall.",
     KIND(MACHINE_CLAMPS), SHOP},
    {"kind not told", "a machine without `kind` is used",
     "The rates do not tell the kind of some machines: their manuals have the cautions.",
     machine_untold, 0, SHOP},
    {"side by side", "an operation at a machine has `together` over 1",
     "Parts side by side: of one thickness, only where the manual allows it, held so that none can "
     "tip or be thrown.",
     worked_together, 0, SHOP},
    {"wide doors", "a leaf is wider than the machine's `capacity`",
     "Wide doors: only where the machine's open end allows it, never over its stated capacity.",
     wider_than_machine, 0, SHOP},
    {"short parts", "a part is under 12 in (305 mm) long, and a machine that cuts is used",
     "Parts under 12 in (305 mm): jig, push stick or push block, or a longer blank.", short_parts,
     CUTS, SHOP | PLAN},
    {"noise", "a machine that cuts, or a sander, is used",
     "Saws, planers, routers and sanders pass 85 dB(A): hearing protection.", machine_used,
     CUTS | MACHINE_BIT(MACHINE_SANDER), SHOP | PLAN},
    {"dust", "a part of wood or of a sheet is made",
     "Wood dust harms lungs and can explode: collect it at the source, mask for the rest, no "
     "blowing down.",
     parts_made, 0, SHOP | PLAN},
    {"lifting", "a sheet or a leaf weighs over 51 lb (23 kg)",
     "Too heavy for one: two people or a cart, gloves.", heavy, 0, SHOP | PLAN | BUY},
    {"tall doors", "a leaf is over 60 in (1524 mm) high",
     "Tall doors tip while they stand unhung: chocks, two people.", tall, 0, SHOP},
    {"glass", "there is a pane", "Panes: gloves and eye protection at their edges.", panes, 0,
     SHOP},
    {"lead", "a glass with `lead` is used",
     "Lead round old panes: no dry sanding, gloves, hands washed; its waste by local rule.",
     lead_panes, 0, SHOP},
    {"panels", "sheets are bought",
     "Panels give off formaldehyde: ask for the label that local rules want (US: TSCA Title VI).",
     sheets_bought, 0, BUY},
    {"spraying", "a coat is sprayed",
     "Spray only in a ventilated booth away from flame and sparks, with the respirator the data "
     "sheet names. Follow local fire and air rules.",
     sprayed, 0, FINISH},
    {"spray booth", "it is used",
     "Spray booth: fan on until the film has flashed off, nothing in it that sparks.",
     KIND(MACHINE_SPRAY_BOOTH), FINISH},
    {"data sheet", "a coat has a reducer or a catalyst",
     "Film, reducer, catalyst and pot life: the product's data sheet rules.", mixed, 0, FINISH},
    {"flammable", "a product has `hazards` flammable",
     "Flammable: metal grounded, no spark until the film is dry, stored as the fire code says.",
     hazard_used, HAZARD_FLAMMABLE, FINISH | BUY},
    {"waterborne", "a product has `hazards` waterborne",
     "Waterborne: overspray still hurts the lungs, the dry residue still burns.", hazard_used,
     HAZARD_WATERBORNE, FINISH},
    {"isocyanate", "a product has `hazards` isocyanate",
     "Isocyanate sensitizes through lungs and skin, for good, and no smell warns: supplied air, "
     "gloves and suit by the data sheet; nobody else in rooms that its air reaches; health checks.",
     hazard_used, HAZARD_ISOCYANATE, FINISH | BUY},
    {"acid catalyst", "a product has `hazards` acid",
     "Acid: gloves, eye protection, no iron or aluminum vessels, the ratio kept exactly; leftover "
     "mix may heat.",
     hazard_used, HAZARD_ACID, FINISH},
    {"formaldehyde", "a product has `hazards` formaldehyde",
     "Formaldehyde leaves the film while it cures: exhaust on, exposure within local limits.",
     hazard_used, HAZARD_FORMALDEHYDE, FINISH},
    {"rags",
     "a product has `hazards` drying oil, or is put on by hand and its hazards are not told",
     "Rags with drying oil catch fire by themselves: flat in one layer until hard, or under water "
     "in a lidded metal can; never in a pile.",
     rags, HAZARD_DRYING_OIL, FINISH},
    {"pressure", "a coat's `[spray]` has `pressure = yes`",
     "Pot under pressure: within what its plate says, relieved before it is opened, never a gun at "
     "skin: injected paint is for a surgeon at once.",
     under_pressure, 0, FINISH},
    {"hazards not told", "a product without `hazards` is used",
     "The rates do not tell the hazards of some products: their data sheets do.", hazard_untold, 0,
     FINISH},
    {"waste", "mixes leave losses or washings",
     "Leftover mix, washings and filters are hazardous waste in many places: out of the building "
     "at the day's end, handed in by local rule.",
     thrown_away, 0, FINISH},
    {"tax", "the sale has a tax or a certificate",
     "Tax follows the settings given: check it with your local authority.", taxed, 0, QUOTE},
    {"deposit", "the sale has a deposit or stages",
     "Some places cap deposits and what is paid before the work is done.", paid_ahead, 0, QUOTE},
    {"card fee", "the sale has a card fee",
     "A fee for paying by card is banned in places and capped in others; it has to be told "
     "beforehand.",
     paid_by_card, 0, QUOTE},
    {"offer", "a quote says until when it is valid",
     "A signed quote that says how long it is valid may bind the shop for that time.", held_until,
     0, QUOTE},
    {"hanging", "an operation does hanging",
     "Hanging doors may need a contractor's license: ask the local board.", hung, 0, QUOTE},
    {"safety glazing", "there is a pane",
     "Glass in doors may have to be safety glazing: ask the local code.", panes, 0, CLIENT},
    {"cabinets", "a leaf is over 60 in (1524 mm) high",
     "A tall door can pull over a cabinet that is not fixed: fix the cabinet to the wall first.",
     tall, 0, CLIENT},
    {"lead panes", "a glass with `lead` is used",
     "Old panes are held in lead: wash your hands after touching it, keep small children away.",
     lead_panes, 0, CLIENT},
};
const size_t caution_count = sizeof cautions / sizeof *cautions;

/* The text, and what it is about; NULL: out of memory. */
static const char *text_of(const struct caution *caution, struct caution_facts *f,
                           struct pool *pool) {
    const char *const about = joined_take(&f->about, pool);
    if (about == NULL || about[0] == '\0') {
        return about == NULL ? NULL : caution->text;
    }
    return f->named <= MOST_NAMED ? pool_format(pool, "%s Here: %s.", caution->text, about)
                                  : pool_format(pool, "%s Here: %s and %zu more.", caution->text,
                                                about, f->named - MOST_NAMED);
}

struct caution_list cautions_needed(const struct estimate *e, unsigned papers, struct pool *pool) {
    struct caution_list list = {.texts = pool_take(pool, caution_count, sizeof *list.texts)};
    for (size_t i = 0; list.texts != NULL && i < caution_count; i++) {
        struct caution_facts facts = {.e = e};
        if ((cautions[i].papers & papers) == 0 || !cautions[i].needed(&facts, &cautions[i])) {
            continue;
        }
        const char *const text = text_of(&cautions[i], &facts, pool);
        if (text == NULL) {
            return (struct caution_list){0};
        }
        list.texts[list.count++] = text;
    }
    return list;
}
