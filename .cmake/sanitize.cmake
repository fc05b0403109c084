# cmake -C .cmake/sanitize.cmake: strict; address and undefined behaviour, no recovery.
# g++ 12 warns of <regex> inside Catch2 here; clang does not know that warning. Not
# position-independent, or a program relocates all that the sanitizers know of its code at each start.
include(${CMAKE_CURRENT_LIST_DIR}/strict.cmake)
set(LODEBOOK_LINK_IN OFF CACHE BOOL "")  # the sanitizers have the libraries' own
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O1 -g1" CACHE STRING "")
set(CMAKE_CXX_FLAGS_INIT
  "${CMAKE_CXX_FLAGS_INIT} -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer -fno-pie -Wno-shadow -Wno-maybe-uninitialized -Wno-unknown-warning-option"
  CACHE STRING "" FORCE)
set(CMAKE_EXE_LINKER_FLAGS_INIT "-no-pie" CACHE STRING "")
set(CMAKE_EXPORT_COMPILE_COMMANDS ON CACHE BOOL "")  # for clang-tidy
