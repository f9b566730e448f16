# SPDX-License-Identifier: MIT
# For every day: optimized, with debug symbols and assertions, and the tests.
#     cmake -C src/cmake/dev.cmake -B build-dev
# FORCE, here and in the other variants: a folder configured before becomes what its file says.
set(CMAKE_GENERATOR Ninja CACHE INTERNAL "")
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "" FORCE)
# Without the NDEBUG that CMake puts here.
set(CMAKE_C_FLAGS_RELWITHDEBINFO "-O2 -g" CACHE STRING "" FORCE)
set(DOORCOST_TESTS ON CACHE BOOL "" FORCE)
