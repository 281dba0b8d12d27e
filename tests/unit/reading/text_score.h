// How much of a text is read as a person reads it: one share for each attribute.
//
// Beside NN.txt stands NN.expected.json: ingredients with least, most, unit, piece and food (and
// what else would do); steps with minutes, attention, place, hygiene, hazards, equipment, uses and
// waits_for. Where a person could write down either of two things the share says what is asked.
#pragma once

#include <array>
#include <filesystem>
#include <iosfwd>
#include <string>
#include <string_view>

namespace tests {

struct Share {
  int right = 0, all = 0;
  void add(bool good) {
    right += good ? 1 : 0;
    ++all;
  }
  double percent() const { return all == 0 ? 0 : 100.0 * right / all; }
};

/// `minutes` to `hazards` in this order are the firm attributes; equipment asks for all that a
/// person names, `uses` and `waits` for exactly the same. Of two orders those waits count that no
/// other wait implies.
constexpr std::array<std::string_view, 8> kAttributes = {"minutes", "attention", "place", "hygiene",
                                                         "hazards", "equipment", "uses",  "waits"};
constexpr std::size_t kFirmAttributes = 5;

struct TextScore {
  int texts = 0;
  Share names;     ///< one within the other, whatever the capitals
  Share portions;  ///< of the texts that say them
  Share ingredients;
  int extra = 0;  ///< lines read as an ingredient that are none, or not this one
  std::array<Share, kAttributes.size()> attributes;

  Share firm() const { return sum(kFirmAttributes); }
  Share all() const { return sum(kAttributes.size()); }

 private:
  Share sum(std::size_t many) const;
};

/// Reads every text of the folder and judges it; each error is told on `errors` if there is one.
TextScore score_of(const std::filesystem::path& folder, std::ostream* errors = nullptr);

/// Reads the lines of a JSON list of ingredients (as in expected.json), ten at a time in a list of
/// their own, and judges these.
Share score_of_lines(const std::filesystem::path& file, std::ostream* errors = nullptr);

/// One line for each share.
void print_score(std::ostream&, std::string_view name, const TextScore&);

}  // namespace tests
