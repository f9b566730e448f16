# SPDX-License-Identifier: MIT
# Tests of the stages from doors to price, of the tape and of the reports.
doorcost_test(test_int128)
doorcost_test(test_chance)
doorcost_test(test_order)
doorcost_test(test_containers)
doorcost_test(test_driver)
doorcost_test(test_weigh)
target_link_libraries(test_weigh PRIVATE m)
doorcost_test(test_tape)
doorcost_test(test_ask)
doorcost_test(test_replay)
doorcost_test(test_grid)
doorcost_test(test_bridge)
doorcost_test(test_measured)
doorcost_test(test_least_squares)
doorcost_test(test_text_width)
doorcost_test(test_csv)
doorcost_test(test_calendar)
doorcost_test(test_manual)

# What neither compiler nor linter sees, links, and includes against the order of the rooms. They look at
# files alone: the sanitizers would find nothing new.
if(NOT DOORCOST_SANITIZE)
    add_test(NAME style COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/style.sh)
    add_test(NAME links COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/links.py)
    add_test(NAME rooms COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/rooms.sh)
    add_test(NAME rooms-fail COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/rooms_fail.sh)
endif()

# What README.md, the tutorial and docs/how-to show is what the program prints.
add_test(NAME examples COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/examples.py $<TARGET_FILE:doorcost>)

# Whole-program cases: folders of tests/cases.
add_test(NAME cases COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/cases.sh $<TARGET_FILE:doorcost>)

# Every figure of every sample made again by another program.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME recompute-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/recompute.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()

# The buying list of every sample adds up, and is on paper what it is to programs.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME order-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/order.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()

# Labels of every sample: one for each piece, on its label, whole.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME labels-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/labels.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()
add_test(NAME labels-odd COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/labels.py
    $<TARGET_FILE:doorcost> odd ${PROJECT_SOURCE_DIR}/samples)

# The sheet to measure on, with and without files.
add_test(NAME visit COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/visit.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples)

# The paper of the cutting plans: every part on it with its number, no small letters, few pages.
foreach(job kitchen/kitchen:8 old-house/old-house:6 metric/tea-kitchen:3 station/station:5)
    string(REGEX REPLACE ":.*" "" path ${job})
    string(REGEX MATCH "([^/]+):(.+)" name ${job})
    add_test(NAME plan-paper-${CMAKE_MATCH_1} COMMAND /usr/bin/python3
        ${CMAKE_CURRENT_SOURCE_DIR}/outside/plan_paper.py $<TARGET_FILE:doorcost>
        ${PROJECT_SOURCE_DIR}/samples/${path}.ini ${CMAKE_MATCH_2})
endforeach()
add_test(NAME plan-paper-odd COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/plan_paper.py
    $<TARGET_FILE:doorcost> odd ${PROJECT_SOURCE_DIR}/samples/kitchen)

# What `explain` tells of figures of every sample can be worked out from its lines.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME explain-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/explain.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
    set_tests_properties(explain-${name} PROPERTIES LABELS slow)
endforeach()

# What takes hundreds of estimates goes over every sample, and under the sanitizers, where each takes
# ten times as long, over the smallest.
set(estimated_jobs ${sample_jobs})
if(DOORCOST_SANITIZE)
    set(estimated_jobs samples/metric/tea-kitchen.ini)
endif()

# What `bridge` tells adds up, and its steps are what edited files come to.
add_test(NAME bridge-random COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/bridge.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} $<IF:$<BOOL:${DOORCOST_SANITIZE}>,6,60>)
set_tests_properties(bridge-random PROPERTIES LABELS slow)

# What `strike` tells of every sample is what an edited list comes to.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME strike-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/strike.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} ${job})
endforeach()

# A sample cut in two, and both bought for together, is what it was as one job.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME together-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/together.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} ${job})
endforeach()

# What `range` tells of every sample is what edited rates come to.
foreach(job ${estimated_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME range-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/range.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} ${job})
    add_test(NAME range-book-${name} COMMAND /usr/bin/python3
        ${CMAKE_CURRENT_SOURCE_DIR}/outside/range_book.py $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()

# What `table` tells of every sample is what edited files come to.
foreach(job ${estimated_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME sizes-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/sizes.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} ${job})
endforeach()
foreach(job ${estimated_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME sizes-book-${name} COMMAND /usr/bin/python3
        ${CMAKE_CURRENT_SOURCE_DIR}/outside/size_book.py $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()
add_test(NAME sizes-book-styles COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/size_book.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples/kitchen/kitchen.ini louvered raised shaker-glass)
# What `reach` tells of every sample comes true in edited files.
foreach(job ${estimated_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME reach-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/reach.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} ${job})
endforeach()

if(NOT DOORCOST_SANITIZE)
    add_test(NAME sizes-option COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/sizes.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} samples/kitchen/kitchen.ini maple)
endif()

# What `ways` tells of every sample is what edited rows come to, and its choice is the best there is.
foreach(job ${estimated_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME ways-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/make_or_buy.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} ${job})
    if(NOT name STREQUAL tea-kitchen)
        set_tests_properties(ways-${name} PROPERTIES LABELS slow)
    endif()
endforeach()

# A shop and a job on the bench, for tests that read and estimate.
add_library(doorcost_support OBJECT support.c questions.c)
target_include_directories(doorcost_support PUBLIC ${CMAKE_CURRENT_SOURCE_DIR})
target_compile_definitions(doorcost_support PRIVATE DOORCOST_SOURCE="${PROJECT_SOURCE_DIR}")
target_link_libraries(doorcost_support PRIVATE doorcost_flags PUBLIC doorcost_core PkgConfig::CMOCKA)

function(doorcost_stage_test name)
    doorcost_test(${name})
    target_link_libraries(${name} PRIVATE doorcost_support)
endfunction()

doorcost_stage_test(test_door)
doorcost_stage_test(test_sizes)
doorcost_stage_test(test_blanks)
doorcost_stage_test(test_sharing)
doorcost_stage_test(test_quantity)
doorcost_stage_test(test_lumber)
doorcost_stage_test(test_sheet)
doorcost_stage_test(test_board_plan)
doorcost_stage_test(test_crosscut_first)
doorcost_stage_test(test_board_rack)
target_sources(test_crosscut_first PRIVATE board_ways.c)
target_sources(test_board_rack PRIVATE board_ways.c)
doorcost_stage_test(test_by_plan)
doorcost_stage_test(test_board_figures)
doorcost_stage_test(test_finish)
doorcost_stage_test(test_labor)
doorcost_stage_test(test_days)
doorcost_stage_test(test_price)
doorcost_stage_test(test_strike)
doorcost_stage_test(test_edited)
doorcost_stage_test(test_rate_givens)
doorcost_stage_test(test_together)
doorcost_stage_test(test_rack)
doorcost_stage_test(test_purchase)
doorcost_stage_test(test_price_edges)
doorcost_stage_test(test_replay_part)
doorcost_stage_test(test_chance_job)
doorcost_stage_test(test_chance_files)
if(NOT DOORCOST_SANITIZE) # thousands of estimates; make_or_buy.py runs the same search
    doorcost_stage_test(test_ways)
endif()
doorcost_stage_test(test_kinds)
doorcost_stage_test(test_shape)
doorcost_stage_test(test_elevation)
doorcost_stage_test(test_image)
doorcost_stage_test(test_opens)
doorcost_stage_test(test_offer)
target_link_libraries(test_offer PRIVATE doorcost_file_bench)
doorcost_stage_test(test_field)
doorcost_stage_test(test_buy_list)
doorcost_stage_test(test_material_words)
doorcost_stage_test(test_cut_list)
doorcost_stage_test(test_shipped)
doorcost_stage_test(test_caution)
target_sources(test_caution PRIVATE case.c)
doorcost_stage_test(test_setting)
doorcost_stage_test(test_rate_number)
doorcost_stage_test(test_range)
target_sources(test_range PRIVATE case.c)
target_link_libraries(test_range PRIVATE doorcost_file_bench)
doorcost_stage_test(test_questions)
doorcost_stage_test(test_usual)
doorcost_stage_test(test_asked)
doorcost_stage_test(test_subjects)
doorcost_stage_test(test_questions_hardware)
doorcost_stage_test(test_limits)
target_sources(test_limits PRIVATE case.c)

# Published values, each with its source beside it in outside/*.csv.
add_library(doorcost_rows OBJECT outside/rows.c outside/ways.c)
target_include_directories(doorcost_rows PUBLIC ${CMAKE_CURRENT_SOURCE_DIR}/outside)
target_compile_definitions(doorcost_rows PRIVATE DOORCOST_SOURCE="${PROJECT_SOURCE_DIR}")
target_link_libraries(doorcost_rows PRIVATE doorcost_flags PUBLIC doorcost_support)

foreach(name board_feet choices doors film conversions money movement currencies chance)
    add_executable(outside_${name} outside/test_${name}.c)
    target_link_libraries(outside_${name}
        PRIVATE doorcost_core doorcost_rows doorcost_support doorcost_flags)
    add_test(NAME outside-${name} COMMAND outside_${name})
endforeach()
add_test(NAME outside-gnu-units COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/conversions.py)

# Label office: tests that wait for another program; the sanitizers leave them out.
# Label slow: others that are not for every day (tests/run.sh quick).
# Lists in workbooks, of other programs and made to cost much.
set(list_book_py /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/list_book.py)
add_test(NAME list-book-same COMMAND ${list_book_py} same $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR})
set_tests_properties(list-book-same PROPERTIES LABELS office)
if(NOT DOORCOST_SANITIZE) # which take memory of their own
    add_test(NAME list-book-bombs COMMAND ${list_book_py} bombs $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR})
endif()

# The workbook of every sample read back and recalculated by other programs.
set(workbook_py /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/workbook.py $<TARGET_FILE:doorcost>)
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME workbook-${name} COMMAND ${workbook_py} check ${PROJECT_SOURCE_DIR}/${job})
    set_tests_properties(workbook-${name} PROPERTIES LABELS office)
endforeach()
add_test(NAME workbook-hostile COMMAND ${workbook_py} hostile)
add_test(NAME workbook-seal COMMAND ${workbook_py} seal)
set_tests_properties(workbook-hostile workbook-seal PROPERTIES LABELS office)

# What the client gets of every sample: nothing hidden in it, sums that hold, the same bytes again.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    foreach(what secrets sums repeat keep)
        add_test(NAME client-${what}-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/client.py
            $<TARGET_FILE:doorcost> ${what} ${PROJECT_SOURCE_DIR}/${job})
        set_tests_properties(client-${what}-${name} PROPERTIES LABELS office)
    endforeach()
    add_test(NAME client-same-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/client_words.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
    set_tests_properties(client-same-${name} PROPERTIES LABELS "office;slow")
endforeach()

foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME client-prices-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/price_list.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
    set_tests_properties(client-prices-${name} PROPERTIES LABELS office)
endforeach()
add_test(NAME client-prices-styles COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/price_list.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples/kitchen/kitchen.ini louvered raised shaker-bought slab open)
set_tests_properties(client-prices-styles PROPERTIES LABELS office)
add_test(NAME client-change COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/change.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR})
set_tests_properties(client-change PROPERTIES LABELS office)

# All PDFs: their tree, title and language; no word over another in jobs out of the ordinary.
set(papers_py /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/papers.py $<TARGET_FILE:doorcost>)
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME papers-tags-${name} COMMAND ${papers_py} tags ${PROJECT_SOURCE_DIR}/${job})
    set_tests_properties(papers-tags-${name} PROPERTIES LABELS office)
endforeach()
add_test(NAME papers-extreme COMMAND ${papers_py} extreme ${PROJECT_SOURCE_DIR}/samples)
set_tests_properties(papers-extreme PROPERTIES TIMEOUT 1800 LABELS "office;slow")

# Pages in a browser.
add_test(NAME page COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/page.py $<TARGET_FILE:doorcost>
    ${PROJECT_SOURCE_DIR} ${PROJECT_SOURCE_DIR}/samples/kitchen/kitchen.ini
    ${PROJECT_SOURCE_DIR}/samples/metric/tea-kitchen.ini)
set_tests_properties(page PROPERTIES TIMEOUT 300 LABELS office)
# For who does not see them or has no mouse; on paper.
add_test(NAME page-access COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/page_access.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples/kitchen/kitchen.ini
    ${PROJECT_SOURCE_DIR}/samples/metric/tea-kitchen.ini)
add_test(NAME page-print COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/page_print.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples/kitchen/kitchen.ini)
set_tests_properties(page-access page-print PROPERTIES TIMEOUT 600 LABELS office)
# In another browser.
add_test(NAME page-firefox COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/page_firefox.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples/kitchen/kitchen.ini
    ${PROJECT_SOURCE_DIR}/samples/metric/tea-kitchen.ini)
set_tests_properties(page-firefox PROPERTIES TIMEOUT 300 SKIP_RETURN_CODE 77 LABELS office)
# Numbers moved there, 200 by chance, against the program.
foreach(job kitchen/kitchen metric/tea-kitchen)
    get_filename_component(name ${job} NAME)
    add_test(NAME page-moves-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/page_moves.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples/${job}.ini 200)
    set_tests_properties(page-moves-${name} PROPERTIES TIMEOUT 300 LABELS office)
endforeach()

# The workbook's cells changed in LibreOffice against the program run on changed files.
set(live_py /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/live.py $<TARGET_FILE:doorcost>)
foreach(name unchanged changes big)
    add_test(NAME live-${name} COMMAND ${live_py} ${name})
    set_tests_properties(live-${name} PROPERTIES TIMEOUT 1800 LABELS office)
endforeach()

# What a terminal gets and a pipe does not.
add_test(NAME terminal COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/terminal.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples)

# Texts of every script, ampersands and digits through every paper.
foreach(what parts footers)
    add_test(NAME texts-${what} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/texts.py
        $<TARGET_FILE:doorcost> ${what})
endforeach()

# The whole quote of every sample made again from its input files alone, in other code.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME afresh-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/afresh.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()
# Prices with days and yearly rises, which no sample has.
set(one_in_each_unit samples/kitchen/kitchen.ini samples/metric/tea-kitchen.ini)
if(DOORCOST_SANITIZE)
    set(one_in_each_unit samples/metric/tea-kitchen.ini)
endif()
foreach(job ${one_in_each_unit})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME afresh-price-age-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/price_age.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()
# Sheets on the rack, which no sample has: whole quotes, and small jobs against all choices.
add_test(NAME rack-plans COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/rack_plans.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR})
# The rack that a job leaves, and the next job that uses it.
add_test(NAME rack-circle COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/rack_circle.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR})
# Spare rails, which no sample asks for.
foreach(job ${one_in_each_unit})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME spare-rails-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/spare_rails.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()
# Every way to open, which no sample has.
add_test(NAME afresh-opens COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/afresh.py
    $<TARGET_FILE:doorcost> ${CMAKE_CURRENT_SOURCE_DIR}/data/opens.ini)

# Links and renames that fail, and files that must have names.
doorcost_test(test_output)
target_link_options(test_output PRIVATE -Wl,--wrap=link,--wrap=rename,--wrap=open)

# Writes of a drawing that fail.
doorcost_test(test_sink)
target_link_options(test_sink PRIVATE -Wl,--wrap=fwrite)

# Workbooks that lack something.
doorcost_test(test_book_proof)
doorcost_test(test_xml_scan)
target_link_libraries(test_xml_scan PRIVATE PkgConfig::EXPAT)
doorcost_test(test_book_texts)

# Workbooks read back by another reader.
add_library(doorcost_xlsx_read OBJECT xlsx_read.c book_bench.c)
target_include_directories(doorcost_xlsx_read PUBLIC ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(doorcost_xlsx_read PRIVATE doorcost_flags PUBLIC doorcost_core PkgConfig::CMOCKA
    PkgConfig::EXPAT)

# Measures what a quote takes, by tests/quote-bench.sh.
add_executable(quote_bench quote_bench.c)
target_link_libraries(quote_bench PRIVATE doorcost_xlsx_read doorcost_flags m)
foreach(name book book_page book_rows formula formula_book)
    doorcost_test(test_${name})
    target_link_libraries(test_${name} PRIVATE doorcost_xlsx_read m)
endforeach()

# JSON read back by another reader.
add_library(doorcost_json_read OBJECT json_read.c json_bench.c)
target_include_directories(doorcost_json_read PUBLIC ${CMAKE_CURRENT_SOURCE_DIR})
target_compile_definitions(doorcost_json_read PRIVATE DOORCOST_SOURCE="${PROJECT_SOURCE_DIR}")
target_link_libraries(doorcost_json_read PRIVATE doorcost_flags PUBLIC doorcost_core PkgConfig::CMOCKA)
foreach(name json json_docs saved)
    doorcost_test(test_${name})
    target_link_libraries(test_${name} PRIVATE doorcost_json_read)
endforeach()
target_sources(test_saved PRIVATE case.c)
target_link_libraries(test_saved PRIVATE PkgConfig::JANSSON)

# Figures and values as papers show them.
doorcost_test(test_show)

# Markup read back by a parser of XML.
add_library(doorcost_markup_read OBJECT markup_read.c case.c)
target_include_directories(doorcost_markup_read PUBLIC ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(doorcost_markup_read PRIVATE doorcost_flags PUBLIC PkgConfig::EXPAT PkgConfig::CMOCKA)
doorcost_test(test_html)
target_link_libraries(test_html PRIVATE doorcost_markup_read doorcost_json_read)
doorcost_stage_test(test_html_drawing)
target_link_libraries(test_html_drawing PRIVATE doorcost_markup_read m)

# Whether rates come nearer to invented shops by what these note: twenty shops.
add_test(NAME learn-circle COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/learn_circle.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} $<IF:$<BOOL:${DOORCOST_SANITIZE}>,2,20> 9)
add_test(NAME learn-fit COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/learn_fit.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR})
set_tests_properties(learn-circle learn-fit PROPERTIES LABELS slow)

# Work by day of every sample, and of two jobs at once over holidays, keeps to the shop.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME days-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/days.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()
add_test(NAME days-two COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/days.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples/kitchen/kitchen.ini
    ${PROJECT_SOURCE_DIR}/samples/old-house/old-house.ini)

# Work by day as a calendar.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    string(REGEX REPLACE "^samples/" "" path ${job})
    add_test(NAME days-calendar-${name} COMMAND /usr/bin/python3
        ${CMAKE_CURRENT_SOURCE_DIR}/outside/days_calendar.py $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} ${path})
endforeach()
# The day that a quote promises by the plan.
add_test(NAME days-ready COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/days_ready.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR})

# The same as a workbook, recalculated.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME days-book-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/days_book.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
    set_tests_properties(days-book-${name} PROPERTIES LABELS office)
endforeach()
add_test(NAME days-book-two COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/days_book.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples/kitchen/kitchen.ini
    ${PROJECT_SOURCE_DIR}/samples/old-house/old-house.ini)
set_tests_properties(days-book-two PROPERTIES LABELS office)

# The same as a chart on paper.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME days-chart-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/days_chart.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()
add_test(NAME days-chart-two COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/days_chart.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/samples/kitchen/kitchen.ini
    ${PROJECT_SOURCE_DIR}/samples/old-house/old-house.ini)
add_test(NAME days-calendar-two COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/days_calendar.py
    $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR} kitchen/kitchen.ini old-house/old-house.ini)

# What `learn` tells of every sample is what its notes come to in fractions.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME learn-${name} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/outside/learn.py
        $<TARGET_FILE:doorcost> ${PROJECT_SOURCE_DIR}/${job})
endforeach()

# Spares against tables.
doorcost_test(test_spares)

# The paper of the cutting plans.
doorcost_test(test_plan_ruler)
target_link_libraries(test_plan_ruler PRIVATE m)
doorcost_stage_test(test_labels)
doorcost_test(test_plan_steps)
target_link_libraries(test_plan_steps PRIVATE doorcost_json_read m)

# New rates from what was noted.
foreach(name proposal hours_fit)
    doorcost_stage_test(test_${name})
    target_sources(test_${name} PRIVATE noted_bench.c)
    target_link_libraries(test_${name} PRIVATE doorcost_file_bench m)
endforeach()

# Work by day, by whose it is.
doorcost_stage_test(test_day_rows)
target_sources(test_day_rows PRIVATE case.c)

# Names, places and days as papers tell them.
doorcost_stage_test(test_told_names)
target_link_libraries(test_told_names PRIVATE m)

# The command line without the program.
doorcost_test(test_options)

# Jobs to be.
doorcost_test(test_draft)
target_sources(test_draft PRIVATE case.c)
target_link_libraries(test_draft PRIVATE doorcost_file_bench)
doorcost_stage_test(test_draft_offers)

# Tables of comma-separated values, read back.
doorcost_stage_test(test_csv_tables)
target_sources(test_csv_tables PRIVATE size_bench.c)
target_link_libraries(test_csv_tables PRIVATE libcsv m)

# Change orders and price lists.
doorcost_stage_test(test_offer_order)
target_sources(test_offer_order PRIVATE size_bench.c)
target_link_libraries(test_offer_order PRIVATE doorcost_file_bench)

# Papers on the terminal, of long names.
doorcost_test(test_text_papers)
target_sources(test_text_papers PRIVATE case.c command_bench.c)
target_link_libraries(test_text_papers PRIVATE doorcost_file_bench)

# The shop's workbook, recalculated here.
doorcost_stage_test(test_shop_book)
target_link_libraries(test_shop_book PRIVATE doorcost_xlsx_read m)

# The client's page and workbook.
doorcost_stage_test(test_client_papers)
target_link_libraries(test_client_papers PRIVATE doorcost_markup_read doorcost_xlsx_read m)

# The page that an estimate is looked into.
doorcost_stage_test(test_page)
target_link_libraries(test_page PRIVATE doorcost_markup_read doorcost_json_read m)
doorcost_stage_test(test_page_tables)
target_link_libraries(test_page_tables PRIVATE doorcost_markup_read)

# Sizes and rows that a call names.
doorcost_test(test_asked_sizes)

# Lists to fill in, as workbooks.
doorcost_stage_test(test_fill_list)
target_link_libraries(test_fill_list PRIVATE doorcost_markup_read doorcost_xlsx_read m)

# Documents of all commands.
doorcost_test(test_json_commands)
target_sources(test_json_commands PRIVATE case.c command_bench.c)
target_link_libraries(test_json_commands PRIVATE doorcost_json_read doorcost_file_bench)

# The sheet to measure on.
doorcost_stage_test(test_visit_words)

# What is said of draws.
doorcost_stage_test(test_chance_words)
