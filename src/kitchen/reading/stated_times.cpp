#include "kitchen/reading/stated_times.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace kitchen {
namespace {

using base::Ratio;
using Tokens = std::vector<LineToken>;

struct NumberWord {
  std::string_view word;
  int value;
};
constexpr std::array<NumberWord, 22> kNumberWords = {{
    {"a", 1},       {"an", 1},     {"one", 1},         {"two", 2},      {"three", 3},
    {"four", 4},    {"five", 5},   {"six", 6},         {"seven", 7},    {"eight", 8},
    {"nine", 9},    {"ten", 10},   {"twelve", 12},     {"fifteen", 15}, {"twenty", 20},
    {"thirty", 30}, {"forty", 40}, {"forty-five", 45}, {"fifty", 50},   {"sixty", 60},
    {"couple", 2},  {"few", 3},
}};

bool word_at(const Tokens& t, std::size_t i, std::string_view word) {
  return i < t.size() && t[i].is(word);
}

// Seconds in one of the unit a word names; 0 = no unit of time.
int time_unit(const Tokens& t, std::size_t i) {
  if (i >= t.size() || t[i].kind != LineToken::Kind::kWord) return 0;
  const std::string& w = t[i].word;
  if (w == "min" || w == "mins" || w == "minute" || w == "minutes" || w == "minuets" || w == "mns")
    return 60;
  if (w == "h" || w == "hr" || w == "hrs" || w == "hour" || w == "hours") return 3600;
  if (w == "s" || w == "sec" || w == "secs" || w == "second" || w == "seconds") return 1;
  return 0;
}

struct Number {
  Ratio value;
  std::size_t end = 0;
};

// "quarter of an", "three quarters of an", "a third of an": so many parts of what follows. Nothing
// where the words are no part of anything ("cut into quarters").
std::optional<Number> part_from(const Tokens& t, std::size_t i) {
  struct Part {
    std::string_view word;
    int of;
  };
  static constexpr std::array<Part, 4> kParts{
      {{"quarter", 4}, {"quarters", 4}, {"third", 3}, {"thirds", 3}}};
  int many = 1;
  if (word_at(t, i, "a") || word_at(t, i, "one")) {
    ++i;
  } else if (word_at(t, i, "two") || word_at(t, i, "three")) {
    many = word_at(t, i, "two") ? 2 : 3;
    ++i;
  }
  if (word_at(t, i, "three-quarters") && word_at(t, i + 1, "of") && word_at(t, i + 2, "an"))
    return Number{Ratio(3, 4), i + 3};
  for (const Part& part : kParts) {
    if (!word_at(t, i, part.word)) continue;
    std::size_t end = i + 1;
    if (word_at(t, end, "of")) ++end;
    if (!word_at(t, end, "an") && !word_at(t, end, "a")) return std::nullopt;
    return Number{Ratio(many, part.of), end + 1};
  }
  return std::nullopt;
}

// "5", "1 1/2", "half an", "a couple of", "twenty", "three quarters of an".
std::optional<Number> number_from(const Tokens& t, std::size_t i) {
  if (i >= t.size()) return std::nullopt;
  if (t[i].number()) {
    Number n{t[i].value, i + 1};
    if (n.end < t.size() && t[n.end].number() && t[n.end].fraction && !t[i].fraction) {
      n.value += t[n.end].value;
      ++n.end;
    }
    return n;
  }
  if (const auto part = part_from(t, i)) return part;
  if (word_at(t, i, "half")) {
    const std::size_t end = word_at(t, i + 1, "an") || word_at(t, i + 1, "a") ? i + 2 : i + 1;
    return Number{Ratio(1, 2), end};
  }
  for (const NumberWord& each : kNumberWords) {
    if (!word_at(t, i, each.word)) continue;
    const bool article = each.word == "a" || each.word == "an";
    if (article && (word_at(t, i + 1, "couple") || word_at(t, i + 1, "few")))
      return number_from(t, i + 1);
    if (article && (word_at(t, i + 1, "further") || word_at(t, i + 1, "good")))
      return number_from(t, i + 2);
    std::size_t end = i + 1;
    if (word_at(t, end, "of")) ++end;
    if (word_at(t, end, "more")) ++end;
    return Number{Ratio(each.value), end};
  }
  return std::nullopt;
}

Seconds seconds_of(const Ratio& amount, int unit) {
  return Seconds((amount * Ratio(unit)).round());
}

// One time that begins at token i: "5", "5 to 7 minutes", "1 hour 30 minutes", "an hour and a
// half".
std::optional<StatedTime> time_from(const Tokens& t, std::size_t i) {
  const auto first = number_from(t, i);
  if (!first) return std::nullopt;
  std::size_t at = first->end;
  if (word_at(t, at, "more") || word_at(t, at, "further") || word_at(t, at, "extra")) ++at;
  int unit = time_unit(t, at);
  // "In a second bowl".
  if (word_at(t, at, "second") && !t[i].number()) return std::nullopt;
  if (unit != 0) ++at;
  Ratio most = first->value;
  const bool to = word_at(t, at, "-") || word_at(t, at, "to") || word_at(t, at, "or");
  if (to) {
    const auto second = number_from(t, at + 1);
    if (second) {
      const int second_unit = time_unit(t, second->end);
      if (second_unit != 0) {
        most = second->value;
        if (unit == 0) {
          unit = second_unit;
        } else {
          most = second->value * Ratio(second_unit) / Ratio(unit);
        }
        at = second->end + 1;
      }
    }
  }
  if (at > first->end && word_at(t, at - 1, "-") && unit == 0) return std::nullopt;
  if (word_at(t, at, "-") && unit == 0) unit = time_unit(t, at + 1);  // "a 5-minute simmer"
  if (unit == 0) return std::nullopt;
  StatedTime out{seconds_of(first->value, unit), seconds_of(most, unit), i, at};
  if (unit == 3600) {
    std::size_t more = at;
    if (word_at(t, more, "and")) ++more;
    if (word_at(t, more, "a") && word_at(t, more + 1, "half")) {
      out.least += Seconds(1800);
      out.most += Seconds(1800);
      out.end = more + 2;
    } else if (word_at(t, more, "a") && word_at(t, more + 1, "quarter")) {
      out.least += Seconds(900);
      out.most += Seconds(900);
      out.end = more + 2;
    } else if (more == at && at < t.size() && t[at].number() && !t[at].fraction &&
               first->value.whole() && time_unit(t, at + 1) == 0 && t[at].value < Ratio(60) &&
               t[at].value > Ratio(4)) {
      // "1hr 20"
      out.least += seconds_of(t[at].value, 60);
      out.most += seconds_of(t[at].value, 60);
      out.end = at + 1;
    } else if (const auto minutes = number_from(t, more);
               minutes && time_unit(t, minutes->end) == 60) {
      out.least += seconds_of(minutes->value, 60);
      out.most += seconds_of(minutes->value, 60);
      out.end = minutes->end + 1;
    }
  }
  if (out.most < out.least) std::swap(out.least, out.most);
  return out;
}

// Words before or behind a time that make it no length of the step itself.
bool beside_the_point(const Tokens& t, const StatedTime& time) {
  if (time.begin > 0) {
    const std::string& before = t[time.begin - 1].word;
    // "Cool for 10 minutes before cutting".
    if (before == "for" && word_at(t, time.end, "before")) return false;
    if (before == "every" || before == "after" || before == "within" || before == "per" ||
        before == "first" || before == "in")
      return before != "in" || word_at(t, time.end, "advance") || word_at(t, time.end, "time");
  }
  return word_at(t, time.end, "before") || word_at(t, time.end, "later") ||
         word_at(t, time.end, "ago");
}

// "each side", "per side", "on both sides".
bool for_each_side(const Tokens& t, std::size_t at) {
  for (std::size_t i = at; i < std::min(at + 4, t.size()); ++i) {
    if (!t[i].is("side") && !t[i].is("sides")) continue;
    return i > 0 && (t[i - 1].is("each") || t[i - 1].is("per") || t[i - 1].is("both") ||
                     t[i - 1].is("either") || t[i - 1].is("a"));
  }
  return false;
}

int tens(double celsius) { return static_cast<int>(std::lround(celsius / 10.0)) * 10; }

// The usual British table; between whole marks only 1/4 and 1/2 exist.
std::optional<int> celsius_of_gas(const Ratio& mark) {
  if (mark == Ratio(1, 4)) return 110;
  if (mark == Ratio(1, 2)) return 120;
  constexpr std::array<int, 9> kMarks = {140, 150, 170, 180, 190, 200, 220, 230, 240};
  if (!mark.whole() || mark < Ratio(1) || mark > Ratio(9)) return std::nullopt;
  return kMarks[static_cast<std::size_t>(mark.numerator() - 1)];
}

// American figures by the table of gas marks where they are in it, else by the formula.
int celsius_of_fahrenheit(int f) {
  constexpr std::array<std::pair<int, int>, 11> kTable = {{{225, 110},
                                                           {250, 120},
                                                           {275, 140},
                                                           {300, 150},
                                                           {325, 170},
                                                           {350, 180},
                                                           {375, 190},
                                                           {400, 200},
                                                           {425, 220},
                                                           {450, 230},
                                                           {475, 240}}};
  for (const auto& [from, to] : kTable) {
    if (from == f) return to;
  }
  return tens((f - 32) / 1.8);
}

bool degree_sign(const Tokens& t, std::size_t i) {
  return i < t.size() && (t[i].text == "°" || t[i].text == "º" || t[i].text == "˚" ||
                          t[i].is("degrees") || t[i].is("deg") || t[i].is("degree"));
}

std::string scale_word(const std::string& word) {
  std::string out;
  for (const char c : word) {
    if (c >= 'a' && c <= 'z') out += c;
  }
  return out;
}

struct Degrees {
  int celsius = 0;
  bool fahrenheit = false, sure = true;
  std::size_t end = 0;
};

std::optional<Degrees> degrees_from(const Tokens& t, std::size_t i) {
  if (!t[i].number() || !t[i].value.whole()) return std::nullopt;
  const auto value = static_cast<int>(t[i].value.numerator());
  std::size_t at = i + 1;
  bool sign = false;
  while (degree_sign(t, at)) {
    sign = true;
    ++at;
  }
  const std::string scale = at < t.size() ? scale_word(t[at].word) : "";
  // The raised "o" of some keyboards folds to a letter.
  const bool raised = at < t.size() && static_cast<unsigned char>(t[at].text.front()) >= 0x80;
  const bool celsius = scale == "c" || scale == "celsius" || scale == "centigrade" ||
                       (raised && scale == "oc");
  const bool fahrenheit = scale == "f" || scale == "fahrenheit" || (raised && scale == "of");
  if (fahrenheit && value >= 150 && value <= 550)
    return Degrees{celsius_of_fahrenheit(value), true, true, at + 1};
  if (celsius && value >= 50 && value <= 260) return Degrees{tens(value), false, true, at + 1};
  if (!sign || value < 100) return std::nullopt;
  if (value <= 260) return Degrees{tens(value), false, false, at};
  if (value <= 550) return Degrees{celsius_of_fahrenheit(value), true, false, at};
  return std::nullopt;
}

bool fan_near(const Tokens& t, std::size_t begin, std::size_t end) {
  if (begin > 0 && t[begin - 1].is("fan")) return true;
  for (std::size_t i = end; i < std::min(end + 2, t.size()); ++i) {
    if (t[i].is("fan") || t[i].is("fan-assisted")) {
      // "180C (fan 160C)": the word belongs to the figure behind it.
      return i + 1 >= t.size() || !t[i + 1].number();
    }
    if (!t[i].is("(") && !t[i].is("in") && !t[i].is("for")) break;
  }
  return false;
}

}  // namespace

std::optional<StatedTime> stated_time(const Tokens& t) {
  std::optional<StatedTime> sum;
  for (std::size_t i = 0; i < t.size(); ++i) {
    if (t[i].is("overnight") && !sum) {
      sum = StatedTime{Seconds(12 * 3600), Seconds(12 * 3600), i, i + 1};
      continue;
    }
    auto time = time_from(t, i);
    if (!time) continue;
    i = time->end - 1;
    if (beside_the_point(t, *time)) continue;
    // "Boil for 12 minutes, with the peas for the last 3": the last minutes are among the twelve.
    const bool among = time->begin > 0 &&
                       (t[time->begin - 1].is("last") || t[time->begin - 1].is("final"));
    if (among && sum) continue;
    if (for_each_side(t, time->end)) {
      time->least *= 2;
      time->most *= 2;
    }
    if (!sum) {
      sum = time;
    } else {
      sum->least += time->least;
      sum->most += time->most;
      sum->end = time->end;
    }
  }
  return sum;
}

std::optional<StatedOven> stated_oven(const Tokens& t) {
  std::optional<StatedOven> conventional, fan, gas, word;
  for (std::size_t i = 0; i < t.size(); ++i) {
    if (const auto degrees = degrees_from(t, i)) {
      StatedOven found{std::clamp(degrees->celsius, 50, 260), OvenKind::kConventional,
                       degrees->sure ? 1.0 : 0.8};
      if (fan_near(t, i, degrees->end)) {
        found.kind = OvenKind::kFan;
        if (!fan) fan = found;
      } else if (!conventional || (degrees->fahrenheit ? false : conventional->confidence < 1)) {
        conventional = found;
      }
      i = degrees->end - 1;
    } else if (t[i].is("gas")) {
      std::size_t at = i + 1;
      if (word_at(t, at, "mark")) ++at;
      if (word_at(t, at, "no") || word_at(t, at, ".")) ++at;
      if (at < t.size() && t[at].number()) {
        if (const auto celsius = celsius_of_gas(t[at].value))
          gas = StatedOven{*celsius, OvenKind::kConventional, 0.95};
      }
    } else if (word_at(t, i + 1, "oven") ||
               (word_at(t, i + 1, "hot") && word_at(t, i + 2, "oven"))) {
      // Words of old cookery books: common practice, no source.
      const std::string& w = t[i].word;
      const int celsius = w == "cool" || w == "slow"         ? 150
                          : w == "moderate" || w == "medium" ? 180
                          : w == "hot"                       ? 220
                                                             : 0;
      if (celsius != 0) word = StatedOven{celsius, OvenKind::kConventional, 0.5};
    }
  }
  return conventional ? conventional : gas ? gas : fan ? fan : word;
}

}  // namespace kitchen
