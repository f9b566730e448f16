/* SPDX-License-Identifier: MIT */
#include "door/driver.h"

/* A panel or slab of lumber. */
static bool is_solid(const struct part *part) {
    return part->material_kind == MATERIAL_LUMBER && part_is_field(part->kind);
}

/* Every driver stands in one of the two switches, so that the compiler names a new one. */
bool driver_is_whole_door(enum driver driver) {
    switch (driver) {
    case DRIVER_DOOR:
    case DRIVER_HINGE:
    case DRIVER_PULL:
    case DRIVER_HARDWARE:
    case DRIVER_EDGE_RUN:
    case DRIVER_DOOR_RUN:
    case DRIVER_AREA:
    case DRIVER_SPRAYED:
    case DRIVER_SPRAYED_PER_COAT:
    case DRIVER_SPRAYED_BETWEEN:
        return true;
    case DRIVER_JOB:
    case DRIVER_PART:
    case DRIVER_STILE:
    case DRIVER_RAIL:
    case DRIVER_PANEL:
    case DRIVER_JOINT:
    case DRIVER_ARCH:
    case DRIVER_FRAME_RUN:
    case DRIVER_SOLID_PANEL:
    case DRIVER_GLUE_LINE:
    case DRIVER_SOLID_AREA:
    case DRIVER_RAISED_RUN:
    case DRIVER_BANDED_RUN:
    case DRIVER_PANE:
    case DRIVER_BAR:
    case DRIVER_BAR_RUN:
    case DRIVER_LUMBER:
    case DRIVER_SHEET:
    case DRIVER_BOARD:
    case DRIVER_CUT:
    case DRIVER_COUNT:
        break;
    }
    return false;
}

bool driver_works_on(enum driver driver, const struct part *part) {
    switch (driver) {
    case DRIVER_STILE:
        return part->kind == PART_STILE || part->kind == PART_MID_STILE;
    case DRIVER_RAIL:
        return part_is_rail(part->kind);
    case DRIVER_JOINT: /* a joint has a stile on one side: its length is cut on the same stops */
    case DRIVER_FRAME_RUN:
        return part_is_frame(part->kind);
    case DRIVER_ARCH:
        return part->kind == PART_TOP_RAIL && part->rise > 0;
    case DRIVER_BAR:
    case DRIVER_BAR_RUN:
        return part->kind == PART_BAR;
    case DRIVER_PANEL:
        return part_is_field(part->kind);
    case DRIVER_LUMBER:
    case DRIVER_BOARD:
        return part->material_kind == MATERIAL_LUMBER;
    case DRIVER_SHEET:
        return part->material_kind == MATERIAL_SHEET;
    case DRIVER_CUT:
        return part->material_kind == MATERIAL_LUMBER || part->material_kind == MATERIAL_SHEET;
    case DRIVER_PANE:
        return part->material_kind == MATERIAL_GLASS;
    case DRIVER_SOLID_PANEL:
    case DRIVER_SOLID_AREA:
        return is_solid(part);
    case DRIVER_GLUE_LINE:
        return is_solid(part) && part->staves > 1;
    case DRIVER_RAISED_RUN:
        return part->raised;
    case DRIVER_BANDED_RUN:
        return part->kind == PART_SLAB && part->material_kind == MATERIAL_SHEET;
    case DRIVER_JOB:
    case DRIVER_PART:
    case DRIVER_DOOR:
    case DRIVER_HINGE:
    case DRIVER_PULL:
    case DRIVER_HARDWARE:
    case DRIVER_EDGE_RUN:
    case DRIVER_DOOR_RUN:
    case DRIVER_AREA:
    case DRIVER_SPRAYED:
    case DRIVER_SPRAYED_PER_COAT:
    case DRIVER_SPRAYED_BETWEEN:
        return true;
    case DRIVER_COUNT:
        break;
    }
    return false;
}
