# SPDX-License-Identifier: MIT
# What makes an overrun end the program rather than go on: the inputs come from other people's spreadsheets.
# tests/hardening.sh looks for each in what was built.
include(CheckCCompilerFlag)

# PIE and not PIC for our libraries too: they end in programs, where a call within a file may be inlined.
target_compile_options(doorcost_flags INTERFACE -fPIE -fstack-protector-strong)
# These two are of some processors only.
check_c_compiler_flag(-fstack-clash-protection DOORCOST_HAS_STACK_CLASH)
check_c_compiler_flag(-fcf-protection=full DOORCOST_HAS_CF_PROTECTION)
if(DOORCOST_HAS_STACK_CLASH)
    target_compile_options(doorcost_flags INTERFACE -fstack-clash-protection)
endif()
if(DOORCOST_HAS_CF_PROTECTION)
    target_compile_options(doorcost_flags INTERFACE -fcf-protection=full)
endif()
target_link_options(doorcost_flags INTERFACE -pie -Wl,-z,relro -Wl,-z,now -Wl,-z,noexecstack)

# The C library's checked calls need an optimizer, and the address sanitizer has its own.
set(DOORCOST_FORTIFIED OFF)
string(TOUPPER "${CMAKE_BUILD_TYPE}" type)
if("${CMAKE_C_FLAGS} ${CMAKE_C_FLAGS_${type}}" MATCHES "-O[123s]" AND NOT DOORCOST_SANITIZE)
    set(DOORCOST_FORTIFIED ON)
    # Undefined first: some compilers bring a level of their own.
    target_compile_options(doorcost_flags INTERFACE -U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2)
endif()
