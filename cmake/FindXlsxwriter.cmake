# Debian's libxlsxwriter-dev ships no CMake file. Defines Xlsxwriter::xlsxwriter.
find_path(Xlsxwriter_INCLUDE_DIR xlsxwriter.h)
find_library(Xlsxwriter_LIBRARY xlsxwriter)
mark_as_advanced(Xlsxwriter_INCLUDE_DIR Xlsxwriter_LIBRARY)

include(FindPackageHandleStandardArgs)
find_package_handle_standard_args(Xlsxwriter REQUIRED_VARS Xlsxwriter_LIBRARY Xlsxwriter_INCLUDE_DIR)

if(Xlsxwriter_FOUND AND NOT TARGET Xlsxwriter::xlsxwriter)
  add_library(Xlsxwriter::xlsxwriter INTERFACE IMPORTED)
  target_include_directories(Xlsxwriter::xlsxwriter SYSTEM INTERFACE ${Xlsxwriter_INCLUDE_DIR})
  target_link_libraries(Xlsxwriter::xlsxwriter INTERFACE ${Xlsxwriter_LIBRARY})
endif()
