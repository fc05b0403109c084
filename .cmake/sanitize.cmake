# cmake -C .cmake/sanitize.cmake: address and undefined behaviour, no recovery.
# g++ 12 warns of <regex> inside Catch2 here; clang does not know that warning.
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O1 -g1" CACHE STRING "")
set(CMAKE_CXX_FLAGS_INIT
  "-Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wshadow -Werror -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer -Wno-maybe-uninitialized -Wno-unknown-warning-option"
  CACHE STRING "")
