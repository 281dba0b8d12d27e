// The one place that includes the JSON library: its event parser feeds our tree, and its complaints
// become sentences.
#include <cmath>
#include <unordered_set>

#include <nlohmann/json.hpp>

#include "base/text.h"
#include "kitchen/json_tree.h"

namespace kitchen {
namespace {

using base::say;

struct LineAndLetter {
  std::size_t line = 1;
  std::size_t column = 1;
};

LineAndLetter place_of(std::string_view text, std::size_t offset) {
  LineAndLetter place;
  for (std::size_t i = 0; i < offset && i < text.size(); ++i) {
    if (text[i] == '\n') {
      ++place.line;
      place.column = 1;
    } else if ((static_cast<unsigned char>(text[i]) & 0xC0U) != 0x80U) {
      ++place.column;
    }
  }
  return place;
}

std::string whole_letter(std::string_view text, std::size_t offset) {
  while (offset > 0 && (static_cast<unsigned char>(text[offset]) & 0xC0U) == 0x80U) --offset;
  return base::first_letters(text.substr(offset), 1);
}

/// The opening quotation mark of the text that is open just before `offset`, or nothing.
std::optional<std::size_t> open_text(std::string_view text, std::size_t offset) {
  std::optional<std::size_t> opened;
  for (std::size_t i = 0; i < offset; ++i) {
    if (opened && text[i] == '\\') {
      ++i;
    } else if (text[i] == '"') {
      opened = opened ? std::nullopt : std::optional{i};
    } else if (text[i] == '\n') {
      opened.reset();
    }
  }
  return opened;
}

/// The parser stops at the end of a whole text in the wrong place; what is meant is where it
/// begins.
std::size_t start_of_text(std::string_view text, std::size_t offset) {
  if (offset >= text.size() || text[offset] != '"') return offset;
  return open_text(text, offset).value_or(offset);
}

struct Fault {
  std::string what;
  std::string remedy;
};

/// What a person most likely did, from the sign the parser stopped at and the last sign before it.
Fault fault_at(std::string_view text, std::size_t offset) {
  if (offset >= text.size()) {
    return {"the file stops in the middle",
            "Add what is missing at the end: a closing bracket } or ], or a quotation mark."};
  }
  const std::string here = whole_letter(text, offset);
  if (open_text(text, offset)) {
    if (static_cast<unsigned char>(text[offset]) < 0x20) {
      return {"a text is not closed before the line ends",
              "Put a quotation mark \" where the text ends, all on one line."};
    }
    return {say("a text holds a backslash followed by ", base::in_quotes(here)),
            "Write / for paths, or \\\\ for one backslash."};
  }
  const auto before_at = offset == 0 ? std::string_view::npos
                                     : text.find_last_not_of(" \t\r\n", offset - 1);
  const char before = before_at == std::string_view::npos ? ' ' : text[before_at];
  if (here == "“" || here == "”" || here == "„" || here == "'" || here == "‘" || here == "’") {
    return {say("the quotation mark ", here, " stands there"),
            "Use the plain quotation mark \" around names and texts."};
  }
  if (here == "/" || here == "#")
    return {"there is a remark", "Take remarks out: a file holds no remarks."};
  if ((here == "}" || here == "]") && before == ',') {
    return {say("there is a comma just before the closing ", here), "Take that comma out."};
  }
  const bool ended = before == '"' || before == '}' || before == ']' ||
                     (before >= '0' && before <= '9');
  if (ended && (here == "\"" || here == "{" || here == "[")) {
    return {
        say("a comma or a colon is missing before ", here),
        "Put a colon between a name and its value, and a comma between one entry and the next."};
  }
  if (here == "}" || here == "]") {
    return {
        say("the closing ", here, " comes too early or does not fit the bracket that was opened"),
        "Check that every { has its } and every [ its ]."};
  }
  if (here == "=" || here == ";")
    return {say("the sign ", here, " stands there"),
            "Use a colon : after a name and a comma , between entries."};
  return {say(base::in_quotes(here), " does not fit there"),
          "Texts and names stand in quotation marks \"...\"; numbers are written with a point; "
          "entries are parted by commas."};
}

/// Takes the parser's events, builds the tree, stops at the first fault of the text.
class TreeBuilder final : public nlohmann::json_sax<nlohmann::json> {
 public:
  TreeBuilder(std::string_view text, const std::string& file, base::Problems& problems)
      : text_(text), file_(file), problems_(problems) {}

  Node take() { return std::move(root_); }

  bool null() override { return put(Node{}); }
  bool boolean(bool value) override { return put(Node::of(value)); }
  bool number_integer(number_integer_t value) override {
    return put(Node::of(static_cast<double>(value)));
  }
  bool number_unsigned(number_unsigned_t value) override {
    return put(Node::of(static_cast<double>(value)));
  }
  bool number_float(number_float_t value, const string_t&) override { return put(Node::of(value)); }
  bool string(string_t& value) override { return put(Node::of(value)); }
  bool binary(binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(Node::object()); }
  bool start_array(std::size_t) override { return open(Node::list()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    Frame& frame = open_.back();
    frame.repeated = !frame.seen.insert(name).second;
    if (frame.repeated && problems_.size() < 100) {
      problems_.push_back(
          {"file.key_twice", file_, below(pointer(), name),
           say("The entry ", base::in_quotes(name), " stands twice in the same place."),
           "Keep one of the two."});
    }
    frame.key = std::move(name);
    return true;
  }

  bool parse_error(std::size_t position, const std::string& token,
                   const nlohmann::json::exception& fault) override {
    if (fault.id == 406) {
      return refuse("file.number_too_big",
                    say("The number ", base::in_quotes(token), " is too big."),
                    "Write a number of ordinary size.");
    }
    const std::size_t offset = start_of_text(text_, position == 0 ? 0 : position - 1);
    const LineAndLetter place = place_of(text_, offset);
    const Fault found = fault_at(text_, offset);
    return refuse("file.syntax",
                  say("Line ", place.line, ", column ", place.column, ": ", found.what, "."),
                  found.remedy);
  }

 private:
  struct Frame {
    Node node;
    std::string key;
    bool repeated = false;
    std::unordered_set<std::string> seen;
  };

  std::string_view text_;
  const std::string& file_;
  base::Problems& problems_;
  Node root_;
  std::vector<Frame> open_;
  std::size_t values_ = 0;

  bool refuse(const char* code, std::string message, std::string remedy) {
    problems_.push_back({code, file_, pointer(), std::move(message), std::move(remedy)});
    return false;
  }

  std::string pointer() const {
    std::string out;
    for (std::size_t i = 0; i + 1 < open_.size(); ++i) out = step(out, open_[i]);
    return out;
  }

  static std::string step(const std::string& out, const Frame& frame) {
    return frame.node.kind == Node::Kind::kList ? below(out, frame.node.items.size())
                                                : below(out, frame.key);
  }

  bool count() {
    if (++values_ <= kMostValues) return true;
    return refuse("file.too_many_values", say("The file holds more than ", kMostValues, " values."),
                  "Leave out what is not needed; a lesson has a few thousand.");
  }

  bool put(Node node) {
    if (!count()) return false;
    if (open_.empty()) {
      root_ = std::move(node);
      return true;
    }
    Frame& frame = open_.back();
    if (frame.node.kind == Node::Kind::kList)
      frame.node.add(std::move(node));
    else if (!frame.repeated) {
      frame.node.keys.push_back(frame.key);
      frame.node.items.push_back(std::move(node));
    }
    return true;
  }

  bool open(Node node) {
    if (static_cast<int>(open_.size()) >= kDeepestNesting) {
      return refuse("file.too_deep",
                    say("Brackets are nested more than ", kDeepestNesting, " deep."),
                    "Check the brackets; a dish needs five.");
    }
    open_.push_back({std::move(node), {}, false, {}});
    return true;
  }

  bool close() {
    Node done = std::move(open_.back().node);
    open_.pop_back();
    return put(std::move(done));
  }
};

}  // namespace

std::optional<Node> parse_json(std::string_view text, const std::string& file,
                               base::Problems& problems) {
  const auto refuse = [&](const char* code, std::string message, std::string remedy) {
    problems.push_back({code, file, "", std::move(message), std::move(remedy)});
    return std::nullopt;
  };
  if (text.size() > kLargestFile) {
    return refuse("file.too_big", say("The file is larger than ", kLargestFile >> 20U, " MB."),
                  "Choose a dish, room, house rules or lesson file.");
  }
  if (const auto bad = base::not_utf8(text)) {
    return refuse(
        "file.not_utf8",
        say("The file is not plain UTF-8 text: byte ", *bad, " (counted from 0) does not belong."),
        "Save the file again with the encoding UTF-8.");
  }
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    return refuse(
        "file.empty", "The file is empty.",
        "Begin with { \"kind\": \"dish\", \"version\": 1, ... }; docs/files.md shows a whole one.");
  }
  const std::size_t before = problems.size();
  TreeBuilder builder(text, file, problems);
  const bool whole = nlohmann::json::sax_parse(text, &builder);
  if (!whole || problems.size() > before) return std::nullopt;
  return builder.take();
}

}  // namespace kitchen
