# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    command/buy.c
    command/check.c
    command/command.c
    command/compare.c
    command/draw.c
    command/files.c
    command/finish.c
    command/help.c
    command/options.c
    command/plan.c
    command/quote.c
    command/work.c
)
