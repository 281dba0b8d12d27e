# Debian's libgecode-dev ships neither a CMake file nor a pkg-config file. Defines Gecode::gecode.
find_path(Gecode_INCLUDE_DIR gecode/int.hh)
set(Gecode_LIBRARIES "")
foreach(part minimodel search int kernel support)
  find_library(Gecode_${part}_LIBRARY gecode${part})
  list(APPEND Gecode_LIBRARIES ${Gecode_${part}_LIBRARY})
  mark_as_advanced(Gecode_${part}_LIBRARY)
endforeach()
# Debian builds all variable kinds, and the search library refers to them.
foreach(part set float)
  find_library(Gecode_${part}_LIBRARY gecode${part})
  list(APPEND Gecode_LIBRARIES ${Gecode_${part}_LIBRARY})
  mark_as_advanced(Gecode_${part}_LIBRARY)
endforeach()

include(FindPackageHandleStandardArgs)
find_package_handle_standard_args(Gecode REQUIRED_VARS Gecode_INCLUDE_DIR Gecode_int_LIBRARY Gecode_search_LIBRARY)
mark_as_advanced(Gecode_INCLUDE_DIR)

if(Gecode_FOUND AND NOT TARGET Gecode::gecode)
  add_library(Gecode::gecode INTERFACE IMPORTED)
  target_include_directories(Gecode::gecode SYSTEM INTERFACE ${Gecode_INCLUDE_DIR})
  target_link_libraries(Gecode::gecode INTERFACE ${Gecode_LIBRARIES})
endif()
