# SPDX-License-Identifier: MIT
# Tests and benchmark of the cutting planner.

add_library(doorcost_cut_bench OBJECT cut_file.c strip_check.c)
target_link_libraries(doorcost_cut_bench PRIVATE doorcost_flags PUBLIC doorcost_cut_check doorcost_cut_strip)

add_executable(plan_bench plan_bench.c)
target_link_libraries(plan_bench PRIVATE doorcost_cut_bench doorcost_flags)

add_executable(test_cut_plan test_cut_plan.c)
target_link_libraries(test_cut_plan PRIVATE doorcost_cut_bench doorcost_cut_board doorcost_flags PkgConfig::CMOCKA)
# The test lets allocations fail.
target_link_options(test_cut_plan PRIVATE -Wl,--wrap=malloc,--wrap=calloc,--wrap=realloc)
add_test(NAME cut_plan COMMAND test_cut_plan)

add_executable(test_board_columns test_board_columns.c)
target_link_libraries(test_board_columns PRIVATE doorcost_cut_board doorcost_flags PkgConfig::CMOCKA)
add_test(NAME board_columns COMMAND test_board_columns)

add_executable(test_plan_check test_plan_check.c)
target_link_libraries(test_plan_check PRIVATE doorcost_cut_bench doorcost_flags PkgConfig::CMOCKA)
add_test(NAME plan_check COMMAND test_plan_check)

add_executable(test_plan_ahead test_plan_ahead.c)
target_link_libraries(test_plan_ahead PRIVATE doorcost_cut_ahead doorcost_flags PkgConfig::CMOCKA)
add_test(NAME plan_ahead COMMAND test_plan_ahead)

# What plans are chosen by where they cost the same.
add_executable(test_sheet_tidy test_sheet_tidy.c)
target_link_libraries(test_sheet_tidy PRIVATE doorcost_cut_bench doorcost_flags PkgConfig::CMOCKA)
add_test(NAME sheet_tidy COMMAND test_sheet_tidy)

# Our simplex against GLPK, whose license a test may use and the program not.
doorcost_find_library(glpk glpk.h glpk)
add_executable(test_simplex test_simplex.c)
target_link_libraries(test_simplex PRIVATE doorcost_core doorcost_cut_bench doorcost_flags glpk PkgConfig::CMOCKA)
target_compile_definitions(test_simplex PRIVATE DOORCOST_SOURCE="${PROJECT_SOURCE_DIR}")
target_link_options(test_simplex PRIVATE -Wl,--wrap=cut_lp_new,--wrap=cut_lp_add,--wrap=cut_lp_solve,--wrap=cut_lp_free)
add_test(NAME simplex COMMAND test_simplex)

# One way of each row within a limit, against GLPK as well.
add_executable(test_pick test_pick.c)
target_link_libraries(test_pick PRIVATE doorcost_core doorcost_flags glpk m PkgConfig::CMOCKA)
add_test(NAME pick COMMAND test_pick)

# The sample of instances: every plan is checked, none may lie below a listed bound.
add_test(NAME cut_bench COMMAND plan_bench ${CMAKE_CURRENT_LIST_DIR}/cutting 0.05)
set_tests_properties(cut_bench PROPERTIES LABELS slow)
# The same by the script that measures, with its own optimized build.
add_test(NAME plan-bench-script COMMAND sh ${CMAKE_CURRENT_LIST_DIR}/plan-bench.sh ${CMAKE_CURRENT_LIST_DIR}/cutting 0.01)
set_tests_properties(plan-bench-script PROPERTIES LABELS office)
