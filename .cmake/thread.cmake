# cmake -C .cmake/thread.cmake: races between threads, for the program with --jobs.
set(LODEBOOK_LINK_IN OFF CACHE BOOL "")  # the sanitizers have the libraries' own
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O1 -g1" CACHE STRING "")
set(CMAKE_CXX_FLAGS_INIT "-fsanitize=thread" CACHE STRING "")
# clang's library of the sanitizer has the operators that src/cli/large_pages.cpp replaces; the
# program's come first, and end in the sanitizer's own malloc.
set(CMAKE_EXE_LINKER_FLAGS_INIT "-Wl,--allow-multiple-definition" CACHE STRING "")
