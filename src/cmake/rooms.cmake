# SPDX-License-Identifier: MIT
# A room is a folder of src and a library of its own. It names the rooms whose headers it may include:
#     doorcost_room(door USES base figure model LIBRARIES ... SOURCES door.c ...)
# tests/rooms.sh holds every include against these lines, and DEVELOPERS.md shows the graph that they make.
function(doorcost_room name)
    cmake_parse_arguments(ROOM "" "" "USES;LIBRARIES;SOURCES" ${ARGN})
    string(REPLACE "/" "_" target doorcost_${name})
    add_library(${target} STATIC ${ROOM_SOURCES})
    target_include_directories(${target} PUBLIC ${PROJECT_SOURCE_DIR}/src)
    target_link_libraries(${target} PRIVATE doorcost_flags PUBLIC ${ROOM_LIBRARIES})
    foreach(used ${ROOM_USES})
        string(REPLACE "/" "_" used doorcost_${used})
        target_link_libraries(${target} PUBLIC ${used})
    endforeach()
endfunction()
