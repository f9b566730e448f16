# SPDX-License-Identifier: MIT
# Tests of base/ and read/, and of the catalogue of problems.
doorcost_test(test_problems)
target_sources(test_problems PRIVATE case.c)
