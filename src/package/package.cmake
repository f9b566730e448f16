# SPDX-License-Identifier: MIT
# What an installation holds, and the Debian package: cmake --install build; cd build && cpack
include(GNUInstallDirs)
set(from ${CMAKE_CURRENT_LIST_DIR})
set(root ${CMAKE_CURRENT_LIST_DIR}/../..)

# Manual pages as Debian wants them, packed. Those of the three files are docs/formats.md.
find_program(AWK NAMES awk REQUIRED)
find_program(GZIP NAMES gzip REQUIRED)
set(pages)
function(doorcost_page page depends)
    add_custom_command(OUTPUT ${page}.gz
        COMMAND ${ARGN} > ${page}
        COMMAND ${GZIP} -9nf ${page}
        DEPENDS ${depends} ${from}/man.awk VERBATIM)
    set(pages ${pages} ${CMAKE_CURRENT_BINARY_DIR}/${page}.gz PARENT_SCOPE)
endfunction()
function(doorcost_formats_page name about parts)
    doorcost_page(${name}.5 ${root}/docs/formats.md
        ${AWK} -f ${from}/man.awk -v name=${name} -v about=${about} -v version=${PROJECT_VERSION}
        -v "parts=How things are written|${parts}" ${root}/docs/formats.md)
    set(pages ${pages} PARENT_SCOPE)
endfunction()
doorcost_page(doorcost.1 ${root}/docs/doorcost.1 cat ${root}/docs/doorcost.1)
doorcost_page(doorcost-open.1 ${root}/docs/doorcost-open.1 cat ${root}/docs/doorcost-open.1)
doorcost_formats_page(doorcost-rates "what a shop knows: prices, minutes, materials"
    "The rates file|The terms file|What is on the rack|The table of woods")
doorcost_formats_page(doorcost-job "a job of cabinet doors" "The job file")
doorcost_formats_page(doorcost-list "the openings of a job, a row each" "The door list|Lists in workbooks|Limits")
doorcost_formats_page(doorcost-noted "what was noted of a finished job" "What was noted")
add_custom_target(doorcost_pages ALL DEPENDS ${pages})

install(TARGETS doorcost RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(PROGRAMS ${from}/doorcost-open DESTINATION ${CMAKE_INSTALL_BINDIR})
foreach(page ${pages})
    string(REGEX MATCH "([0-9])\\.gz$" unused ${page})
    install(FILES ${page} DESTINATION ${CMAKE_INSTALL_MANDIR}/man${CMAKE_MATCH_1})
endforeach()
install(DIRECTORY ${root}/rates ${root}/samples DESTINATION ${CMAKE_INSTALL_DATADIR}/doorcost
    FILES_MATCHING PATTERN *.ini PATTERN *.csv PATTERN *.txt PATTERN *.md)
# As they stand here, so that their links to each other hold.
install(FILES ${root}/README.md DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(DIRECTORY ${root}/docs DESTINATION ${CMAKE_INSTALL_DOCDIR} FILES_MATCHING PATTERN *.md)
install(FILES ${root}/docs/LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR} RENAME copyright)
install(FILES ${from}/doorcost.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
install(FILES ${from}/doorcost-job.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages)
install(FILES ${from}/completion.bash RENAME doorcost
    DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions)
install(FILES ${from}/completion.zsh RENAME _doorcost
    DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions)
install(FILES ${from}/completion.fish RENAME doorcost.fish
    DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "the doorcost project <doorcost@example.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY ${PROJECT_DESCRIPTION})
set(CPACK_PACKAGE_DESCRIPTION
    "From a rates file, a job file and a door list to the lumber, sheets, finish and
hardware to buy, the hours at each machine, and a quote: a workbook of live
formulas for the shop, a PDF and a workbook for the client.")
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
    OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION misc)
# Its libraries are found by dpkg-shlibdeps; the typeface of all papers is a file that none of them names.
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS "fonts-liberation")
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "fonts-dejavu-core, shared-mime-info, xdg-utils")
include(CPack)
