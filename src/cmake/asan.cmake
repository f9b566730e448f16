# SPDX-License-Identifier: MIT
# Unoptimized, with assertions and the address and undefined-behavior sanitizers.
#     cmake -C src/cmake/asan.cmake -B build-asan
include(${CMAKE_CURRENT_LIST_DIR}/ci.cmake)
set(CMAKE_BUILD_TYPE Debug CACHE STRING "" FORCE)
set(CMAKE_C_FLAGS_DEBUG "-O0 -g" CACHE STRING "" FORCE)
set(DOORCOST_SANITIZE ON CACHE BOOL "" FORCE)
