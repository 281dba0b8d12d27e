# Run by benchbell_embed(): writes NAME.h and NAME.cpp into OUT. A file becomes an array of bytes, because a string
# literal has a length limit and escapes to get wrong.
string(REPLACE "|" ";" FILES "${FILES}")

file(WRITE ${OUT}/${NAME}.h "#pragma once

#include <span>
#include <string_view>

namespace ${NAMESPACE} {

struct File {
  std::string_view path;
  std::string_view text;
};

std::span<const File> files();

}  // namespace ${NAMESPACE}
")

set(arrays "")
set(rows "")
set(index 0)
foreach(file IN LISTS FILES)
  file(READ ${BASE}/${file} hex HEX)
  string(LENGTH "${hex}" digits)
  math(EXPR size "${digits} / 2")
  string(REGEX REPLACE "(..)" "'\\\\x\\1'," bytes "${hex}")
  string(APPEND arrays "constexpr char kBytes${index}[] = {${bytes}0};\n")
  string(APPEND rows "    {\"${file}\", {kBytes${index}, ${size}}},\n")
  math(EXPR index "${index} + 1")
endforeach()

file(WRITE ${OUT}/${NAME}.cpp "#include \"${NAME}.h\"

namespace ${NAMESPACE} {
namespace {

${arrays}
constexpr File kFiles[] = {
${rows}};

}  // namespace

std::span<const File> files() { return kFiles; }

}  // namespace ${NAMESPACE}
")
