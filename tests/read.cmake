# SPDX-License-Identifier: MIT
# Tests of base/ and read/, and of the catalog of problems.
foreach(name length text pool index problem record outside_units)
    doorcost_test(test_${name})
endforeach()

# These read files; case.c prepares them.
foreach(name problems rates job door_list formats memory random terms)
    doorcost_test(test_${name})
    target_sources(test_${name} PRIVATE case.c)
endforeach()

# Every allocation of the program itself passes through the test.
target_link_options(test_memory PRIVATE
    -Wl,--wrap=malloc,--wrap=calloc,--wrap=realloc,--wrap=free,--wrap=iniparser_load)

# Files and keys of their own bytes.
add_library(doorcost_file_bench OBJECT file_bench.c)
target_include_directories(doorcost_file_bench PUBLIC ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(doorcost_file_bench PRIVATE doorcost_flags PUBLIC doorcost_core PkgConfig::CMOCKA)
foreach(name source ini ini_edit table key list list_book)
    doorcost_test(test_${name})
    target_link_libraries(test_${name} PRIVATE doorcost_file_bench)
endforeach()
