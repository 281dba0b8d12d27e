# Debian's coinor-libcbc-dev ships pkg-config files that name the command line solver's library too, and headers that do
# not pass our warnings. Defines Cbc::cbc: the library only, its headers as a system's.
find_path(Cbc_INCLUDE_DIR CbcModel.hpp PATH_SUFFIXES coin coin-or)
set(Cbc_LIBRARIES "")
foreach(part Cbc Cgl OsiClp Osi Clp CoinUtils)
  find_library(Cbc_${part}_LIBRARY ${part})
  list(APPEND Cbc_LIBRARIES ${Cbc_${part}_LIBRARY})
  mark_as_advanced(Cbc_${part}_LIBRARY)
endforeach()

include(FindPackageHandleStandardArgs)
find_package_handle_standard_args(Cbc REQUIRED_VARS Cbc_INCLUDE_DIR Cbc_Cbc_LIBRARY Cbc_Cgl_LIBRARY Cbc_OsiClp_LIBRARY
                                                    Cbc_Osi_LIBRARY Cbc_Clp_LIBRARY Cbc_CoinUtils_LIBRARY)
mark_as_advanced(Cbc_INCLUDE_DIR)

if(Cbc_FOUND AND NOT TARGET Cbc::cbc)
  add_library(Cbc::cbc INTERFACE IMPORTED)
  target_include_directories(Cbc::cbc SYSTEM INTERFACE ${Cbc_INCLUDE_DIR})
  target_link_libraries(Cbc::cbc INTERFACE ${Cbc_LIBRARIES})
endif()
