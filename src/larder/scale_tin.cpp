#include "larder/scale_tin.h"

#include <vector>

#include "base/folding.h"
#include "base/text.h"

namespace larder {
namespace {

using base::say;

const Ratio kPi{355, 113};
const Ratio kInch{254, 100};  // cm, exact: international yard and pound agreement 1959
constexpr const char* kCounts[] = {"one", "two", "three", "four", "five", "six"};

struct TinWords {
  std::optional<TinShape> shape;
  std::vector<Ratio> numbers;
  int count = 1;
  bool inches = false;
  bool clear = true;  ///< every word was understood
};

std::optional<TinShape> shape_named(const std::string& word) {
  if (word == "round" || word == "sandwich" || word == "springform") return TinShape::kRound;
  if (word == "square") return TinShape::kSquare;
  if (word == "rectangle" || word == "rectangular" || word == "loaf" || word == "oblong")
    return TinShape::kRectangle;
  return std::nullopt;
}

// "30x20" and "20cm" as single words.
std::string spaced(std::string_view words) {
  std::string out;
  char before = ' ';
  for (const char c : base::folded(words)) {
    const bool digit = (c >= '0' && c <= '9') || c == '.';
    const bool digit_before = (before >= '0' && before <= '9') || before == '.';
    if (digit != digit_before || c == '"') out += ' ';
    out += c;
    before = c;
  }
  return out;
}

TinWords understood(std::string_view words) {
  TinWords out;
  for (const std::string& word : base::parts(spaced(words), ' ')) {
    if (const auto shape = shape_named(word)) {
      out.shape = shape;
    } else if (const auto number = Ratio::in(word)) {
      if (!out.shape && number->whole() && out.numbers.empty())
        out.count = static_cast<int>(number->numerator());
      else
        out.numbers.push_back(*number);
    } else if (word == "in" || word == "inch" || word == "inches" || word == "\"") {
      out.inches = true;
    } else {
      bool counted = false;
      for (int i = 0; i < 6; ++i) {
        if (word != kCounts[i]) continue;
        out.count = i + 1;
        counted = true;
      }
      const bool filler = word == "x" || word == "by" || word == "cm" || word == "tin" ||
                          word == "tins" || word == "deep" || word == "of";
      out.clear = out.clear && (counted || filler);
    }
  }
  return out;
}

}  // namespace

base::Result<Tin> read_tin(std::string_view words) {
  const TinWords said = understood(words);
  const base::Problem wrong{"scale.tin", "", "",
                            say("The tin ", base::in_quotes(words), " is not understood."),
                            "Say it in cm like \"round 20\", \"two round 18\", \"square 20\", "
                            "\"rectangle 30 x 20\" or, with "
                            "its depth, \"loaf 23 x 13 x 7\"."};
  if (!said.shape || !said.clear || said.count < 1 || said.count > 50) return wrong;
  Tin tin;
  tin.shape = *said.shape;
  tin.count = said.count;
  const std::size_t sides = tin.shape == TinShape::kRectangle ? 2 : 1;
  if (said.numbers.size() < sides || said.numbers.size() > sides + 1) return wrong;
  const auto in_cm = [&](const Ratio& n) { return said.inches ? n * kInch : n; };
  for (const Ratio& n : said.numbers) {
    if (in_cm(n) < Ratio(1) || in_cm(n) > Ratio(100)) return wrong;
  }
  tin.length = in_cm(said.numbers[0]);
  tin.width = sides == 2 ? in_cm(said.numbers[1]) : tin.length;
  if (said.numbers.size() > sides) tin.depth = in_cm(said.numbers[sides]);
  return tin;
}

std::string tin_text(const Tin& tin) {
  const char* shape = tin.shape == TinShape::kRound    ? "round"
                      : tin.shape == TinShape::kSquare ? "square"
                                                       : "rectangular";
  std::string size = base::decimal_text(tin.length);
  if (tin.shape == TinShape::kRectangle) size += " x " + base::decimal_text(tin.width);
  const std::string deep = tin.depth ? say(", ", base::decimal_text(*tin.depth), " cm deep")
                                     : std::string();
  const std::string many = tin.count == 1 ? say("a ", shape, " tin")
                                          : say(tin.count, " ", shape, " tins");
  return say(many, " of ", size, " cm", deep);
}

Ratio area(const Tin& tin) {
  const Ratio each = tin.shape == TinShape::kRound ? kPi * tin.length * tin.length / Ratio(4)
                                                   : tin.length * tin.width;
  return Ratio(tin.count) * each;
}

Ratio tin_factor(const Tin& from, const Tin& to) {
  // Round to round, pi falls out: the ratio is exact.
  const bool both_round = from.shape == TinShape::kRound && to.shape == TinShape::kRound;
  Ratio factor = both_round ? Ratio(to.count) * to.length * to.length /
                                  (Ratio(from.count) * from.length * from.length)
                            : area(to) / area(from);
  if (from.depth && to.depth) factor *= *to.depth / *from.depth;
  return factor;
}

}  // namespace larder
