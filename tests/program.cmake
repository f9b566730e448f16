# SPDX-License-Identifier: MIT
# Tests of the program as it was built.
set(kinds "")
if(DOORCOST_FORTIFIED)
    list(APPEND kinds fortify)
endif()
if(DOORCOST_HAS_STACK_CLASH)
    list(APPEND kinds clash)
endif()
if(DOORCOST_HAS_CF_PROTECTION)
    list(APPEND kinds cf)
endif()
add_test(NAME hardening COMMAND sh ${CMAKE_CURRENT_LIST_DIR}/hardening.sh $<TARGET_FILE:doorcost>
    $<TARGET_OBJECTS:doorcost> ${CMAKE_BINARY_DIR}/compile_commands.json ${kinds})

# Each signal at moments of every command that writes files.
add_test(NAME signals COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/signals.py $<TARGET_FILE:doorcost>
    ${PROJECT_SOURCE_DIR} $<IF:$<BOOL:${DOORCOST_SANITIZE}>,1.0,0.2>)
set_tests_properties(signals PROPERTIES PROCESSORS 2)

# Files to begin with, by options and at a terminal.
foreach(part script from rates own shops signals terminal)
    add_test(NAME new-${part} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/new.py $<TARGET_FILE:doorcost>
        ${PROJECT_SOURCE_DIR} ${part})
endforeach()

# A list to fill in, filled in by other programs and read again.
add_test(NAME new-list COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/outside/list_filled.py $<TARGET_FILE:doorcost>
    ${PROJECT_SOURCE_DIR})
set_tests_properties(new-list PROPERTIES LABELS office)

# Seconds and memory of long lists. The sanitizers' own memory would be measured with them.
if(NOT DOORCOST_SANITIZE)
    add_test(NAME growth COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/growth.py $<TARGET_FILE:doorcost>
        ${PROJECT_SOURCE_DIR})
    set_tests_properties(growth PROPERTIES LABELS slow)
endif()

# The rates and jobs that ship ask nothing but what a job has accepted.
foreach(job ${sample_jobs})
    get_filename_component(name ${job} NAME_WE)
    add_test(NAME quiet-${name} COMMAND doorcost check ${PROJECT_SOURCE_DIR}/${job})
    set_tests_properties(quiet-${name} PROPERTIES PASS_REGULAR_EXPRESSION "no errors, no warnings")
endforeach()

# What is installed, used as it lies there: manual pages, desktop, three shells, the package.
foreach(part use pages desktop bash zsh fish deb)
    add_test(NAME installed-${part} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/installed.py ${part}
        ${CMAKE_BINARY_DIR} ${PROJECT_SOURCE_DIR})
    set_tests_properties(installed-${part} PROPERTIES LABELS office)
endforeach()
