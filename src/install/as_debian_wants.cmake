# SPDX-License-Identifier: MIT
# What differs in a package of Debian from an installation by hand (Debian policy 10.1, 12.1, 12.5,
# 12.7): run by cpack on the tree before it is packed.
file(GLOB usr ${CPACK_TEMPORARY_DIRECTORY}/*/usr)
execute_process(COMMAND strip --remove-section=.comment --remove-section=.note ${usr}/bin/lodebook
  COMMAND_ERROR_IS_FATAL ANY)
set(doc ${usr}/share/doc/lodebook)

# The licence stands in `copyright`, and those of what is linked in beside it, as Debian has them.
file(REMOVE ${doc}/LICENSE)
file(COPY ${CPACK_LODEBOOK_COPYRIGHT} DESTINATION ${doc})
file(MAKE_DIRECTORY ${doc}/linked-in)
foreach(library IN LISTS CPACK_LODEBOOK_LINKED_IN)
  file(COPY_FILE /usr/share/doc/${library}/copyright ${doc}/linked-in/${library})
endforeach()

file(COPY ${CPACK_LODEBOOK_CHANGELOG} DESTINATION ${doc})
file(COPY_FILE ${doc}/docs/CHANGELOG.md ${doc}/changelog)
file(GLOB manuals ${usr}/share/man/man*/*)
execute_process(COMMAND gzip -9n ${doc}/changelog ${doc}/changelog.Debian ${manuals}
  COMMAND_ERROR_IS_FATAL ANY)

# Where zsh looks on Debian.
file(RENAME ${usr}/share/zsh/site-functions ${usr}/share/zsh/vendor-completions)
