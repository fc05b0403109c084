# SPDX-License-Identifier: MIT
# Every step is fatal. The scratch folder is emptied first, so that nothing old can pass for new.
file(REMOVE_RECURSE ${scratch})

execute_process(COMMAND_ERROR_IS_FATAL ANY COMMAND ${CMAKE_COMMAND}
  --install ${build} --config ${config} --component orientation --prefix ${scratch}/prefix)

# Headers of this room only, and none that includes anything but this room and the standard library.
file(GLOB_RECURSE headers RELATIVE ${scratch}/prefix ${scratch}/prefix/include/*)
if(NOT headers)
  message(FATAL_ERROR "no header was installed")
endif()
foreach(header IN LISTS headers)
  if(NOT header MATCHES "^include/lodebook/orientation/[a-z_]+\\.hpp$")
    message(FATAL_ERROR "a header that is not of the room: ${header}")
  endif()
  file(STRINGS ${scratch}/prefix/${header} foreign REGEX "#include")
  list(FILTER foreign EXCLUDE REGEX "^#include <(lodebook/orientation/[a-z_]+\\.hpp|[a-z_]+)>$")
  if(foreign)
    message(FATAL_ERROR "${header} leaks ${foreign}")
  endif()
endforeach()

execute_process(COMMAND_ERROR_IS_FATAL ANY COMMAND ${CMAKE_COMMAND}
  -S ${project} -B ${scratch}/build -G ${generator}
  -D CMAKE_PREFIX_PATH=${scratch}/prefix
  -D CMAKE_BUILD_TYPE=${config}
  -D CMAKE_CXX_COMPILER=${compiler}
  -D CMAKE_CXX_FLAGS=${flags}
  -D CMAKE_EXE_LINKER_FLAGS=${linker_flags}
  -D CMAKE_DISABLE_FIND_PACKAGE_Eigen3=ON
  -D lodebook_version=${version})
execute_process(COMMAND_ERROR_IS_FATAL ANY COMMAND ${CMAKE_COMMAND}
  --build ${scratch}/build --config ${config})
execute_process(COMMAND_ERROR_IS_FATAL ANY COMMAND ${CMAKE_CTEST_COMMAND}
  --test-dir ${scratch}/build --build-config ${config} --output-on-failure --no-tests=error)
