# SPDX-License-Identifier: MIT
target_sources(doorcost_core PRIVATE
)
