# `ninja generated` writes the sources that are made while building, for tools that read them without compiling.
add_custom_target(generated)

# benchbell_embed(app_resources NAMESPACE app::resources BASE ${CMAKE_SOURCE_DIR}/demo FILES a.json rooms/b.json)
#
# Puts files into the binary, so that a school copies one file. Makes a static library with a header
# "<name>.h" which declares, in the namespace given,
#
#   struct File { std::string_view path; std::string_view text; };  // `path` is relative to BASE
#   std::span<const File> files();                                  // in order of their paths
#
# The generated code is rebuilt when a file changes.
function(benchbell_embed name)
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "NAMESPACE;BASE" "FILES")
  if(arg_UNPARSED_ARGUMENTS OR NOT arg_NAMESPACE OR NOT arg_BASE OR NOT arg_FILES)
    message(FATAL_ERROR "benchbell_embed(${name}): needs NAMESPACE, BASE and FILES")
  endif()
  set(out ${CMAKE_CURRENT_BINARY_DIR}/embedded/${name})
  list(SORT arg_FILES)
  set(full "")
  foreach(file IN LISTS arg_FILES)
    list(APPEND full ${arg_BASE}/${file})
  endforeach()
  string(REPLACE ";" "|" files "${arg_FILES}")
  add_custom_command(
    OUTPUT ${out}/${name}.h ${out}/${name}.cpp
    COMMAND ${CMAKE_COMMAND} -DNAME=${name} -DNAMESPACE=${arg_NAMESPACE} -DBASE=${arg_BASE} -DOUT=${out}
            "-DFILES=${files}" -P ${CMAKE_SOURCE_DIR}/cmake/write_embedded.cmake
    DEPENDS ${full} ${CMAKE_SOURCE_DIR}/cmake/write_embedded.cmake
    COMMENT "Embedding files for ${name}"
    VERBATIM)
  add_custom_target(${name}_sources DEPENDS ${out}/${name}.h ${out}/${name}.cpp)
  add_dependencies(generated ${name}_sources)
  add_library(${name} STATIC ${out}/${name}.cpp ${out}/${name}.h)
  add_dependencies(${name} ${name}_sources)
  target_compile_features(${name} PUBLIC cxx_std_20)
  target_include_directories(${name} PUBLIC ${out})
endfunction()
