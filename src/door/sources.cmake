# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    door/door.c
    door/frame.c
    door/leaf.c
    door/material.c
    door/movement.c
    door/part.c
    door/quantity.c
    door/question.c
    door/surface.c
)
