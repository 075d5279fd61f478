# What is installed, in two components: `program` with its examples and docs, `development` with the library, the
# headers and the CMake package. Shown by tests/consumer and tests/package.sh.
include(CMakePackageConfigHelpers)

install(TARGETS arrisline RUNTIME COMPONENT program)
install(DIRECTORY examples/ DESTINATION ${CMAKE_INSTALL_DOCDIR}/examples COMPONENT program
  FILES_MATCHING PATTERN "*.profile" PATTERN "*.kit" PATTERN "*.job" PATTERN "*.vim" PATTERN "*.tmLanguage.json")
install(DIRECTORY docs/ DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program
  FILES_MATCHING PATTERN "*.md" PATTERN "*.svg" PATTERN "*.png")
install(FILES README.md DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program)

# What the shells offer, as the program itself prints it. Of zsh and fish the folders that their Debian packages look in.
set(scripts ${CMAKE_CURRENT_BINARY_DIR}/completions)
foreach(script IN ITEMS bash:arrisline zsh:_arrisline fish:arrisline.fish)
  string(REPLACE ":" ";" script ${script})
  list(GET script 0 shell)
  list(GET script 1 name)
  add_custom_command(OUTPUT ${scripts}/${shell}/${name} DEPENDS arrisline VERBATIM
    COMMAND ${CMAKE_COMMAND} -E make_directory ${scripts}/${shell}
    COMMAND sh -c "\"$1\" completions $2 > \"$3\"" print $<TARGET_FILE:arrisline> ${shell} ${scripts}/${shell}/${name})
  list(APPEND made_scripts ${scripts}/${shell}/${name})
endforeach()
add_custom_target(arrisline_completions ALL DEPENDS ${made_scripts})
install(FILES ${scripts}/bash/arrisline DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/bash-completion/completions
  COMPONENT program)
install(FILES ${scripts}/zsh/_arrisline DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/zsh/vendor-completions COMPONENT program)
install(FILES ${scripts}/fish/arrisline.fish DESTINATION ${CMAKE_INSTALL_DATAROOTDIR}/fish/vendor_completions.d
  COMPONENT program)

# Manual pages, from the help texts and the table of words; without Python they are left out.
find_package(Python3 QUIET COMPONENTS Interpreter)
find_program(GZIP gzip)
if(Python3_FOUND AND GZIP)
  set(pages ${CMAKE_CURRENT_BINARY_DIR}/man)
  set(man_sources .packaging/man/make.py .packaging/man/files.txt .packaging/debian/changelog)
  add_custom_command(OUTPUT ${pages}/arrisline.1.gz ${pages}/arrisline-files.5.gz DEPENDS arrisline ${man_sources} VERBATIM
    COMMAND Python3::Interpreter ${PROJECT_SOURCE_DIR}/.packaging/man/make.py $<TARGET_FILE:arrisline>
      ${PROJECT_SOURCE_DIR}/.packaging/debian/changelog ${pages}
    COMMAND ${GZIP} -9nfk ${pages}/arrisline.1 ${pages}/arrisline-files.5)
  add_custom_target(arrisline_man ALL DEPENDS ${pages}/arrisline.1.gz ${pages}/arrisline-files.5.gz)
  install(FILES ${pages}/arrisline.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
  install(FILES ${pages}/arrisline-files.5.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man5 COMPONENT program)
else()
  message(STATUS "No manual pages: they are made with python3 and gzip")
endif()

install(TARGETS arrisline_lib EXPORT arrislineTargets ARCHIVE COMPONENT development)
install(DIRECTORY include/arrisline DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT development
  FILES_MATCHING PATTERN "*.h")
set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/arrisline)
install(EXPORT arrislineTargets NAMESPACE arrisline:: DESTINATION ${package_folder} COMPONENT development)
configure_package_config_file(.packaging/cmake/arrislineConfig.cmake.in arrislineConfig.cmake INSTALL_DESTINATION ${package_folder})
# Until 1.0 a second figure may change what a caller sees.
write_basic_package_version_file(arrislineConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/arrislineConfig.cmake ${CMAKE_CURRENT_BINARY_DIR}/arrislineConfigVersion.cmake
  DESTINATION ${package_folder} COMPONENT development)
