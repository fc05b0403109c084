# SPDX-License-Identifier: MIT
# Fails unless the snippet builds, and is refused by the type rules when MISUSE is defined.
set(compile ${compiler} -std=c++20 -fsyntax-only -Wno-unused -I ${include})

execute_process(COMMAND ${compile} ${snippet} RESULT_VARIABLE status ERROR_VARIABLE complaint)
if(NOT status EQUAL 0)
  message(FATAL_ERROR "the control does not build:\n${complaint}")
endif()

execute_process(COMMAND ${compile} -D MISUSE ${snippet} RESULT_VARIABLE status ERROR_VARIABLE complaint)
if(status EQUAL 0)
  message(FATAL_ERROR "the misuse builds")
endif()
# A misspelt name or a missing bracket is refused as well, and would prove nothing.
if(NOT complaint MATCHES "error:" OR complaint MATCHES
    "not declared|undeclared|no member|not a member|expected|No such file|not found")
  message(FATAL_ERROR "the misuse is refused for another reason than its types:\n${complaint}")
endif()
