# SPDX-License-Identifier: MIT
# The program to use and to install: optimized, without assertions and tests.
#     cmake -C src/cmake/release.cmake -B build
set(CMAKE_GENERATOR Ninja CACHE INTERNAL "")
set(CMAKE_BUILD_TYPE Release CACHE STRING "" FORCE)
set(CMAKE_C_FLAGS_RELEASE "-O3 -DNDEBUG" CACHE STRING "" FORCE)
set(DOORCOST_TESTS OFF CACHE BOOL "" FORCE)
