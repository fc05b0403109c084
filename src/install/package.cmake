# SPDX-License-Identifier: MIT
# cpack: the program with its manual, completions, guide and demonstration logs, as one file: a Debian
# package, or of the static program an archive for any Linux.
set(CPACK_PACKAGE_NAME lodebook)
set(CPACK_PACKAGE_CONTACT ${maintainer})
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "clean, correct and check a field geologist's station log")
set(CPACK_PACKAGE_DESCRIPTION
"lodebook reads the plain-text log that a geologist types up from a field book
of compass readings. It turns bearings into true azimuths, by a stated
declination or a built-in geomagnetic model, holds readings against each
other, finds stations from sights and legs, and writes one row for every
reading as CSV, JSON or GeoJSON, with a report of what is worth a second look.
It sums up planes and lines, and draws them on nets, roses and maps.")
set(CPACK_COMPONENTS_GROUPING ALL_COMPONENTS_IN_ONE)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(linked_in  # and Boost, whose licence asks for nothing in a program
  libcli11-dev libeigen3-dev libfmt-dev libgeographiclib-dev libstdc++6 nlohmann-json3-dev)

if(LODEBOOK_STATIC)
  string(TOLOWER ${CMAKE_SYSTEM_NAME}-${CMAKE_SYSTEM_PROCESSOR} machine)
  configure_file(README.in README @ONLY)
  install(FILES ${CMAKE_CURRENT_BINARY_DIR}/README DESTINATION . COMPONENT archive EXCLUDE_FROM_ALL)
  foreach(library IN LISTS linked_in ITEMS libc6)  # their licences, as Debian has them
    file(REAL_PATH /usr/share/doc/${library}/copyright copyright)
    install(FILES ${copyright} DESTINATION ${doc_dir}/linked-in RENAME ${library}
      COMPONENT archive EXCLUDE_FROM_ALL)
  endforeach()
  set(CPACK_GENERATOR TXZ)
  set(CPACK_STRIP_FILES ON)
  set(CPACK_SYSTEM_NAME ${machine})
  set(CPACK_ARCHIVE_COMPONENT_INSTALL ON)
  set(CPACK_ARCHIVE_FILE_NAME lodebook-${PROJECT_VERSION}-${machine})
  set(CPACK_PACKAGE_FILE_NAME ${CPACK_ARCHIVE_FILE_NAME})
  set(CPACK_COMPONENT_INCLUDE_TOPLEVEL_DIRECTORY ON)
  set(CPACK_PACKAGING_INSTALL_PREFIX /)
  set(CPACK_COMPONENTS_ALL program archive)
else()
  file(READ ${PROJECT_SOURCE_DIR}/LICENSE license)
  string(FIND "${license}" "Permission is hereby" start)
  string(SUBSTRING "${license}" ${start} -1 license)
  string(STRIP "${license}" license)
  string(REPLACE "\n\n" "\n.\n" license "${license}")
  string(REPLACE "\n" "\n " license "${license}")
  configure_file(copyright.in copyright @ONLY)
  set(CPACK_GENERATOR DEB)
  set(CPACK_DEBIAN_PACKAGE_SECTION science)
  set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
  set(CPACK_DEBIAN_PACKAGE_RELEASE ${package_release})
  set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
  set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
  set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
  set(CPACK_DEB_COMPONENT_INSTALL ON)
  set(CPACK_COMPONENTS_ALL program)
  set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
  set(CPACK_PRE_BUILD_SCRIPTS ${CMAKE_CURRENT_SOURCE_DIR}/as_debian_wants.cmake)
  set(CPACK_LODEBOOK_LINKED_IN ${linked_in})
  set(CPACK_LODEBOOK_COPYRIGHT ${CMAKE_CURRENT_BINARY_DIR}/copyright)
  set(CPACK_LODEBOOK_CHANGELOG ${pages_dir}/changelog.Debian)
endif()
include(CPack)
