#include "print/tokens.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

namespace print::token {
namespace {

double channel(std::string_view colour, std::size_t from) {
  const int value = std::stoi(std::string(colour.substr(from, 2)), nullptr, 16);
  const double c = value / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(std::string_view colour) {
  if (colour.size() != 7 || colour[0] != '#') throw std::logic_error("a colour is #RRGGBB");
  return 0.2126 * channel(colour, 1) + 0.7152 * channel(colour, 3) + 0.0722 * channel(colour, 5);
}

}  // namespace

double contrast(std::string_view a, std::string_view b) {
  const double la = luminance(a);
  const double lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

std::vector<Pair> pairs() {
  std::vector<Pair> out{
      {"text on the page", kInk, kPaper, 4.5},
      {"text on a sheet", kInk, kCard, 4.5},
      {"text in a window", kInk, kBand, 4.5},
      {"text after the bell", kInk, kBandDeep, 4.5},
      {"text on an oven's hill", kInk, kOven, 4.5},
      {"text on a count", kInk, kCount, 4.5},
      {"quiet text on the page", kSoft, kPaper, 4.5},
      {"quiet text on a sheet", kSoft, kCard, 4.5},
      {"quiet text in a window", kSoft, kBand, 4.5},
      {"verdict that fits", kLeaf, kPaper, 4.5},
      {"verdict that does not fit", kEmber, kPaper, 4.5},
      {"a diamond after the bell", kEmber, kBandDeep, 3},
      {"full, on a sheet", kEmber, kCard, 4.5},
      {"full, in a window", kEmber, kBand, 4.5},
      {"full, on an oven's hill", kEmber, kOven, 3},
      {"an edge on a sheet", kEdge, kCard, 3},
      {"an edge in a window", kEdge, kBand, 3},
  };
  for (const std::string_view dish : kDish) {
    out.push_back({"white words on a dish", kCard, dish, 4.5});
    out.push_back({"a dish's words on a sheet", dish, kCard, 4.5});
    out.push_back({"a dish's outline in a window", dish, kBand, 3});
    out.push_back({"a tray on an oven's hill", dish, kOven, 3});
  }
  return out;
}

}  // namespace print::token
