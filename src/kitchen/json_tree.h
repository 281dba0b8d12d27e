// A JSON document as a small tree, and its text. Parsing here is strict and safe for files from
// anywhere: size, depth and number of values are limited before anything is built, keys may not
// repeat, the text must be UTF-8.
//
// Everything that goes wrong is a Problem with line and column in words, never a parser's message.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/problem.h"

namespace kitchen {

inline constexpr std::size_t kLargestFile = 4U << 20U;  ///< bytes; a whole lesson with thirty
                                                        ///< dishes is a tenth of it
inline constexpr int kDeepestNesting = 64;
inline constexpr std::size_t kMostValues = 200'000;

struct Node {
  enum class Kind : std::int8_t { kNull, kBool, kNumber, kText, kList, kObject };
  Kind kind = Kind::kNull;
  bool flag = false;
  double number = 0;
  std::string text;
  std::vector<std::string> keys;  ///< objects: names, in the order of the file; same length as
                                  ///< `items`
  std::vector<Node> items;        ///< lists and objects
  std::string origin;  ///< pointer to where it stands, if not below its parent (merged variants)

  static Node of(bool);
  static Node of(double);
  static Node of(int value) { return of(static_cast<double>(value)); }
  static Node of(std::string_view);
  static Node of(const char* value) { return of(std::string_view(value)); }
  static Node of(const std::string& value) { return of(std::string_view(value)); }
  static Node list() { return kinded(Kind::kList); }
  static Node object() { return kinded(Kind::kObject); }

  const Node* find(std::string_view key) const;
  Node* find(std::string_view key);
  /// Adds or replaces a member of an object.
  Node& set(std::string_view key, Node value);
  /// Adds to a list.
  Node& add(Node value);
  void erase(std::string_view key);

 private:
  static Node kinded(Kind kind) {
    Node node;
    node.kind = kind;
    return node;
  }
};

/// The document, or nothing and at least one more Problem.
/// Errors: file.empty, file.too_big, file.not_utf8, file.syntax, file.too_deep, file.too_many_values, file.key_twice,
/// file.number_too_big.
std::optional<Node> parse_json(std::string_view text, const std::string& file, base::Problems&);

/// Canonical text: two spaces, members in the order set, what fits on a line of 100 stays on it;
/// ends with a newline.
std::string json_text(const Node&);

/// One more part of an RFC 6901 pointer.
std::string below(const std::string& pointer, std::string_view key);
std::string below(const std::string& pointer, std::size_t index);

}  // namespace kitchen
