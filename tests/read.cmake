# SPDX-License-Identifier: MIT
# Tests of base/ and read/, and of the catalogue of problems.
