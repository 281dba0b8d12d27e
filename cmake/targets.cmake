# What every target of the project has in common, and the ways to make one.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)  # clang-tidy reads it

add_library(benchbell_warnings INTERFACE)
target_compile_features(benchbell_warnings INTERFACE cxx_std_20)
target_compile_options(benchbell_warnings INTERFACE -Wall -Wextra -Wpedantic -Wconversion -Werror)
target_include_directories(benchbell_warnings INTERFACE ${CMAKE_SOURCE_DIR}/src)

# benchbell_library(kitchen SOURCES room.cpp dish.cpp LINKS base PRIVATE_LINKS nlohmann_json::nlohmann_json)
#
# A static library. LINKS are seen by whoever links the library; PRIVATE_LINKS stay inside it. Sources are compiled in
# batches; APART names those with a private name that another has as well.
function(benchbell_library name)
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "SOURCES;APART;LINKS;PRIVATE_LINKS")
  if(arg_UNPARSED_ARGUMENTS)
    message(FATAL_ERROR "benchbell_library(${name}): did not understand ${arg_UNPARSED_ARGUMENTS}")
  endif()
  add_library(${name} STATIC ${arg_SOURCES})
  target_link_libraries(${name} PUBLIC benchbell_warnings ${arg_LINKS} PRIVATE ${arg_PRIVATE_LINKS})
  set_source_files_properties(${arg_APART} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
endfunction()

# `ninja unit_tests` builds what the sanitizer runs need and nothing else.
add_custom_target(unit_tests)
# And the fuzz preset what it needs: the readers, not the planner.
add_custom_target(fuzz_programs)

# benchbell_test(kitchen_test SOURCES room_test.cpp LINKS kitchen [LABEL unit] [SECONDS 900])
#
# A test program with GoogleTest's main and rapidcheck, run by ctest as one test. The label is `unit` (also built
# and run with the sanitizers) or `reference` (checks against outside values; slower, release build only).
# Tests find files of the project through the macro BENCHBELL_SOURCE_DIR.
function(benchbell_test name)
  if(NOT BENCHBELL_TESTS)
    return()
  endif()
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "LABEL;SECONDS" "SOURCES;APART;LINKS")
  if(arg_UNPARSED_ARGUMENTS)
    message(FATAL_ERROR "benchbell_test(${name}): did not understand ${arg_UNPARSED_ARGUMENTS}")
  endif()
  if(NOT arg_LABEL)
    set(arg_LABEL unit)
  endif()
  if(NOT arg_SECONDS)
    set(arg_SECONDS 900)  # a hang, not a slow machine
  endif()
  add_executable(${name} ${arg_SOURCES})
  target_link_libraries(${name} PRIVATE benchbell_warnings ${arg_LINKS} GTest::gmock_main rapidcheck
                                        rapidcheck_gtest)
  set_source_files_properties(${arg_APART} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
  # A test's own code is compiled once and run briefly: made fast to compile, not to run. What it tests is compiled as
  # the preset says. With sanitizers, the test itself is watched for its use of memory; that is half the time of both.
  if(CMAKE_BUILD_TYPE MATCHES "^([Aa][Ss]|[Tt][Ss])[Aa][Nn]$")
    target_compile_options(${name} PRIVATE -O0 -fno-sanitize=undefined)
  else()
    target_compile_options(${name} PRIVATE -O1)
  endif()
  target_compile_definitions(${name} PRIVATE BENCHBELL_SOURCE_DIR="${CMAKE_SOURCE_DIR}")
  add_test(NAME ${name} COMMAND ${name})
  if(arg_LABEL STREQUAL "unit")
    add_dependencies(unit_tests ${name})
  endif()
  set_tests_properties(${name} PROPERTIES LABELS ${arg_LABEL} TIMEOUT ${arg_SECONDS} ENVIRONMENT
    "LSAN_OPTIONS=suppressions=${CMAKE_SOURCE_DIR}/tests/support/not_our_leaks.txt:print_suppressions=0")
endfunction()

# benchbell_bench(plan_bench SOURCES plan_bench.cpp LINKS timeplan)
#
# A program that measures and prints figures; `make bench` runs every one of them from the project's top folder.
function(benchbell_bench name)
  if(NOT BENCHBELL_BENCH)
    return()
  endif()
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "SOURCES;LINKS")
  if(arg_UNPARSED_ARGUMENTS)
    message(FATAL_ERROR "benchbell_bench(${name}): did not understand ${arg_UNPARSED_ARGUMENTS}")
  endif()
  add_executable(${name} ${arg_SOURCES})
  target_link_libraries(${name} PRIVATE benchbell_warnings ${arg_LINKS})
  target_compile_definitions(${name} PRIVATE BENCHBELL_SOURCE_DIR="${CMAKE_SOURCE_DIR}")
  set_target_properties(${name} PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/bench_programs)
endfunction()

# benchbell_fuzz(reader_fuzz SOURCES reader_fuzz.cpp LINKS kitchen)
#
# A libFuzzer program, only in the `fuzz` preset. The libraries it links are instrumented by the same flags.
function(benchbell_fuzz name)
  if(NOT BENCHBELL_FUZZ)
    return()
  endif()
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "SOURCES;LINKS")
  if(arg_UNPARSED_ARGUMENTS)
    message(FATAL_ERROR "benchbell_fuzz(${name}): did not understand ${arg_UNPARSED_ARGUMENTS}")
  endif()
  add_executable(${name} ${arg_SOURCES})
  target_link_libraries(${name} PRIVATE benchbell_warnings ${arg_LINKS})
  target_link_options(${name} PRIVATE -fsanitize=fuzzer)
  add_dependencies(fuzz_programs ${name})
  set_target_properties(${name} PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/fuzz_programs)
endfunction()
