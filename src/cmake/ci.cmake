# SPDX-License-Identifier: MIT
# As dev, and a warning is an error.
#     cmake -C src/cmake/ci.cmake -B build-ci
include(${CMAKE_CURRENT_LIST_DIR}/dev.cmake)
set(DOORCOST_STRICT ON CACHE BOOL "" FORCE)
