# SPDX-License-Identifier: MIT
# Tests of the stages from doors to price, of the tape and of the reports.
