# cmake -C .cmake/strict.cmake: every warning is an error.
set(CMAKE_CXX_FLAGS_INIT
  "-Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wshadow -Werror" CACHE STRING "")
