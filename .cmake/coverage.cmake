# cmake -C .cmake/coverage.cmake, with clang++: sanitize, with fuzzers, and counts which lines of the
# core are run. The counts go where LLVM_PROFILE_FILE says, else nowhere.
include(${CMAKE_CURRENT_LIST_DIR}/sanitize.cmake)
set(CMAKE_CXX_FLAGS_INIT
  "${CMAKE_CXX_FLAGS_INIT} -fprofile-instr-generate=/dev/null -fcoverage-mapping -fprofile-list=${CMAKE_CURRENT_LIST_DIR}/coverage.txt"
  CACHE STRING "" FORCE)
set(LODEBOOK_FUZZ ON CACHE BOOL "")
