# SPDX-License-Identifier: MIT
# A file as a text of the program: `doorcost_embed(NAME FILE HEADER)` makes NAME.c in the build folder, which
# defines `const char NAME[]` as HEADER declares it. FILE is plain ASCII.
# As a script (-P) it makes that file.
if(CMAKE_SCRIPT_MODE_FILE)
    file(READ ${FROM} bytes HEX)
    # pair by pair: a pattern over all of a long file is too deep for its matcher
    string(REGEX REPLACE "[0-7]." "" others "${bytes}")
    if(NOT others STREQUAL "")
        message(FATAL_ERROR "${FROM} is not plain ASCII")
    endif()
    string(REGEX REPLACE "(..)" "0x\\1," bytes "${bytes}")
    string(REGEX REPLACE "(0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,)" "\\1\n"
        bytes "${bytes}")
    file(WRITE ${TO} "#include \"${HEADER}\"\n\nconst char ${NAME}[] = {\n${bytes}0};\n")
    return()
endif()

set(DOORCOST_EMBED_SCRIPT ${CMAKE_CURRENT_LIST_FILE})

function(doorcost_embed name from header)
    set(to ${CMAKE_CURRENT_BINARY_DIR}/${name}.c)
    add_custom_command(OUTPUT ${to}
        COMMAND ${CMAKE_COMMAND} -DFROM=${CMAKE_CURRENT_SOURCE_DIR}/${from} -DTO=${to} -DNAME=${name}
            -DHEADER=${header} -P ${DOORCOST_EMBED_SCRIPT}
        DEPENDS ${from} ${DOORCOST_EMBED_SCRIPT}
        COMMENT "Embedding ${from}" VERBATIM)
endfunction()
