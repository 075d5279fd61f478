# cpack -G DEB makes two packages of the two components of install.cmake. Shown by tests/package.sh.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME arrisline)
set(CPACK_PACKAGE_VENDOR "arrisline makers")
set(CPACK_PACKAGE_CONTACT "arrisline makers <arrisline@example.org>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_COMPONENTS_ALL program development)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
# Whatever the umask of who builds it.
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)

set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME arrisline)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION misc)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION "For furniture makers who stick mouldings with hollow and round planes:
arrisline reads a profile and the planes on the shelf from two short text
files, and prints which plane comes first, where its gauge lines are struck,
how far down it goes, and what the next plane rides on. It draws each cut on
a sheet, and plans a whole piece of furniture from blanks to mitred lengths.")

set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libarrisline-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
string(CONCAT CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS "pkg-config, libpolyclipping-dev, coinor-libcbc-dev, zlib1g-dev, "
  "libtbb-dev, libcairo2-dev, libexpat1-dev")
set(CPACK_COMPONENT_DEVELOPMENT_DESCRIPTION "The library beneath arrisline, with its headers and a CMake package: readers
of profiles, kits and jobs, the planner, the replay that judges its plans, and
the sheets.")

# What the policy asks of each package: who may copy it, and what has changed.
if(GZIP)
  set(changelog ${CMAKE_CURRENT_BINARY_DIR}/changelog.gz)
  add_custom_command(OUTPUT ${changelog} DEPENDS .packaging/debian/changelog VERBATIM
    COMMAND sh -c "\"$1\" -9nc \"$2\" > \"$3\"" gzip ${GZIP} ${PROJECT_SOURCE_DIR}/.packaging/debian/changelog ${changelog})
  add_custom_target(arrisline_changelog ALL DEPENDS ${changelog})
  foreach(component_package IN ITEMS program:arrisline development:libarrisline-dev)
    string(REPLACE ":" ";" pair ${component_package})
    list(GET pair 0 component)
    list(GET pair 1 package)
    install(FILES .packaging/debian/copyright ${changelog} DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/doc/${package}
      COMPONENT ${component})
  endforeach()
endif()
include(CPack)
