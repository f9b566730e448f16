# SPDX-License-Identifier: MIT
# Tests of the stages from doors to price, of the tape and of the reports.
doorcost_test(test_containers)
doorcost_test(test_tape)
doorcost_test(test_replay)
doorcost_test(test_grid)
doorcost_test(test_manual)

