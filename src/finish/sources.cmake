# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    finish/coat.c
    finish/containers.c
    finish/finish.c
)
