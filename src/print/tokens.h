// Colours and type of everything drawn: a well-run kitchen on paper. One list, so that contrast can
// be computed.
#pragma once

#include <array>
#include <string_view>
#include <vector>

namespace print::token {

inline constexpr std::string_view kPaper = "#FBF8F1";
inline constexpr std::string_view kCard = "#FFFFFF";
inline constexpr std::string_view kBand = "#F1EBDD";      ///< fixed windows, quiet fill
inline constexpr std::string_view kBandDeep = "#E6DDC9";  ///< after the bell
inline constexpr std::string_view kCount = "#C9BFA5";     ///< hills of rings and sinks
inline constexpr std::string_view kInk = "#1D2330";
inline constexpr std::string_view kSoft = "#545B6B";  ///< secondary text; never on kBandDeep
inline constexpr std::string_view kRule = "#D9D2C3";  ///< lines without meaning
inline constexpr std::string_view kEdge = "#857B67";  ///< lines with meaning
inline constexpr std::string_view kLeaf = "#2B6A4B";
inline constexpr std::string_view kEmber = "#B3370F";
inline constexpr std::string_view kOven = "#F6E6D8";  ///< inside an oven's hill

/// White text on each; told apart by lightness first. The two-letter tag stands on the bar as well.
inline constexpr std::array<std::string_view, 8> kDish{"#9C5700", "#2B7490", "#27513A", "#4B2E66",
                                                       "#654199", "#07362F", "#370502", "#240344"};

inline constexpr std::string_view kHead = "Lexend,system-ui,'Noto Sans','DejaVu Sans',sans-serif";
inline constexpr std::string_view
    kText = "'Atkinson Hyperlegible Next','Noto Sans','DejaVu Sans',system-ui,sans-serif";

/// A colour on its ground and the least contrast it needs by WCAG 2.2: 4.5 for text, 3 for large
/// text and marks.
struct Pair {
  std::string_view what, ink, ground;
  double least;
};
/// Every pair that occurs in the picture and the page.
std::vector<Pair> pairs();
/// (L1 + 0.05) / (L2 + 0.05) of WCAG 2.2, relative luminance as defined there. Takes "#RRGGBB".
double contrast(std::string_view a, std::string_view b);

}  // namespace print::token
