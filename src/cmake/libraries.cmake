# SPDX-License-Identifier: MIT
# The libraries, each as an imported target; all are Debian packages named in tests/packages.

find_package(PkgConfig REQUIRED)
pkg_check_modules(XLSXWRITER REQUIRED IMPORTED_TARGET xlsxwriter)
pkg_check_modules(LIBZIP REQUIRED IMPORTED_TARGET libzip)
pkg_check_modules(LIBXML2 REQUIRED IMPORTED_TARGET libxml-2.0)
pkg_check_modules(JANSSON REQUIRED IMPORTED_TARGET jansson)
pkg_check_modules(ZLIB REQUIRED IMPORTED_TARGET zlib)
pkg_check_modules(PANGOCAIRO REQUIRED IMPORTED_TARGET pangocairo cairo-pdf cairo-svg)

# iniparser and libcsv ship no pkg-config file.
function(doorcost_find_library target header library)
    find_path(${target}_INCLUDE ${header} PATH_SUFFIXES iniparser REQUIRED)
    find_library(${target}_LIBRARY ${library} REQUIRED)
    add_library(${target} UNKNOWN IMPORTED GLOBAL)
    set_target_properties(${target} PROPERTIES
        IMPORTED_LOCATION "${${target}_LIBRARY}"
        INTERFACE_INCLUDE_DIRECTORIES "${${target}_INCLUDE}")
endfunction()
doorcost_find_library(iniparser iniparser.h iniparser)
doorcost_find_library(libcsv csv.h csv)
