// Reading one object of a file field by field: every fault is noted with its place, none stops the
// reading.
//
// Fields step(reader, node, "/method/3", "The step 'bake'", kStepFields) refuses fields it does not
// know, naming the nearest; step.minutes("minutes", ...) reads one. Wrong fields give their
// default, so reading goes on; the caller asks Reader::clean() at the end and only then trusts what
// it has.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "base/text.h"
#include "base/time.h"
#include "kitchen/json_tree.h"
#include "kitchen/words.h"

namespace kitchen {

using base::Seconds;

inline constexpr Seconds kLongest = base::minutes(1440);  ///< of any length of time in a file
inline constexpr std::size_t kMostProblems = 200;  ///< a broken file need not be told line by line

/// Collects what is wrong with one file.
class Reader {
 public:
  Reader(std::string file, base::Problems& problems)
      : file_(std::move(file)), problems_(problems), before_(problems.size()) {}

  const std::string& file() const { return file_; }
  base::Problems& problems() { return problems_; }
  bool clean() const { return problems_.size() == before_; }
  void add(std::string code, std::string where, std::string message, std::string remedy);

 private:
  std::string file_;
  base::Problems& problems_;
  std::size_t before_;
};

/// One entry of a list, with its place.
struct Entry {
  const Node* node;
  std::string where;
};

/// The place of a child: below its parent, unless it was merged in from elsewhere.
std::string place_of(const Node& child, std::string usual);

class Fields {
 public:
  /// `what` begins a sentence: "The step 'bake'".
  Fields(Reader&, const Node&, std::string where, std::string what,
         std::span<const std::string_view> known);

  bool is_object() const { return node_.kind == Node::Kind::kObject; }
  const Node* find(std::string_view key) const;
  std::string where(std::string_view key) const;
  const std::string& where() const { return where_; }
  const std::string& what() const { return what_; }
  Reader& reader() const { return reader_; }

  /// A name or sentence: not blank, no control characters, at most `most` letters. No default: it
  /// must be there.
  std::string text(std::string_view key, std::size_t most = 120) const;
  std::string text_or(std::string_view key, std::string otherwise, std::size_t most = 120) const;
  /// An id: small letters, digits, hyphens.
  std::string id(std::string_view key) const;
  bool flag(std::string_view key, bool otherwise) const;
  double number(std::string_view key, double least, double most, double otherwise) const;
  int whole(std::string_view key, int least, int most, std::optional<int> otherwise) const;
  /// Minutes of the file as seconds; `least` to a day.
  Seconds minutes(std::string_view key, Seconds least, std::optional<Seconds> otherwise) const;
  std::vector<Entry> list(std::string_view key, std::size_t most = 500) const;
  std::vector<std::string> texts(std::string_view key) const;

  template <class T, std::size_t N>
  T word(std::string_view key, const Word<T> (&words)[N], std::optional<T> otherwise) const {
    const auto text = word_text(key, otherwise.has_value());
    if (!text) return otherwise.value_or(T{});
    if (const auto found = value_of(words, *text)) return *found;
    unknown_word(key, where(key), *text, spellings(words));
    return otherwise.value_or(T{});
  }

  template <class T, std::size_t N>
  std::vector<T> words(std::string_view key, const Word<T> (&words)[N]) const {
    std::vector<T> out;
    for (const Entry& entry : list(key)) {
      if (!is_text(entry)) continue;
      if (const auto found = value_of(words, entry.node->text))
        out.push_back(*found);
      else
        unknown_word(key, entry.where, entry.node->text, spellings(words));
    }
    return out;
  }

  void missing(std::string_view key) const;
  void wrong_kind(std::string_view key, const std::string& where, std::string_view wanted) const;
  bool is_text(const Entry&) const;  ///< refuses an entry that is not a text
  /// Seconds of a number of minutes that stands somewhere; refused outside [least, a day].
  std::optional<Seconds> minutes_of(const Node&, std::string_view key, const std::string& where,
                                    Seconds least) const;
  void unknown_word(std::string_view key, const std::string& where, const std::string& word,
                    std::vector<std::string> known) const;

 private:
  Reader& reader_;
  const Node& node_;
  std::string where_;
  std::string what_;

  std::optional<std::string> word_text(std::string_view key, bool optional) const;
  bool sound_text(std::string_view key, const std::string& where, const std::string& text,
                  std::size_t most) const;
};

bool is_id(std::string_view);
/// "; did you mean 'x'?" for sentences; empty when nothing is near.
std::string did_you_mean(std::string_view word, const std::vector<std::string>& known);
/// The same, or a full stop: the end of "There is no cook 'Aisa'".
std::string or_did_you_mean(std::string_view word, const std::vector<std::string>& known);

}  // namespace kitchen
