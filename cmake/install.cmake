# What is installed, in two components: `program` with its examples and docs, `development` with the library, the
# headers and the CMake package. Shown by tests/consumer and tests/package.sh.
include(CMakePackageConfigHelpers)

install(TARGETS arrisline RUNTIME COMPONENT program)
install(DIRECTORY examples/ DESTINATION ${CMAKE_INSTALL_DOCDIR}/examples COMPONENT program
  FILES_MATCHING PATTERN "*.profile" PATTERN "*.kit" PATTERN "*.job")
install(DIRECTORY docs/ DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program
  FILES_MATCHING PATTERN "*.md" PATTERN "*.svg" PATTERN "*.png")
install(FILES README.md DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program)

install(TARGETS arrisline_lib EXPORT arrislineTargets ARCHIVE COMPONENT development)
install(DIRECTORY include/arrisline DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT development
  FILES_MATCHING PATTERN "*.h")
set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/arrisline)
install(EXPORT arrislineTargets NAMESPACE arrisline:: DESTINATION ${package_folder} COMPONENT development)
configure_package_config_file(cmake/arrislineConfig.cmake.in arrislineConfig.cmake INSTALL_DESTINATION ${package_folder})
# Until 1.0 a second figure may change what a caller sees.
write_basic_package_version_file(arrislineConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/arrislineConfig.cmake ${CMAKE_CURRENT_BINARY_DIR}/arrislineConfigVersion.cmake
  DESTINATION ${package_folder} COMPONENT development)
