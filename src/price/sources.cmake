# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
    price/build_up.c
    price/cost.c
    price/estimate.c
    price/purchase.c
    price/sale.c
)
