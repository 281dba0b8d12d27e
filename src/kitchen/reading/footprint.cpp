#include "kitchen/reading/footprint.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include "base/text.h"
#include "kitchen/json_tree.h"
#include "kitchen/read.h"
#include "kitchen/reading/amounts.h"
#include "kitchen/reading/line_tokens.h"

namespace kitchen {
namespace {

using base::in_quotes;
using base::say;
using Tokens = std::vector<LineToken>;

constexpr std::string_view kHowTo =
    "Write a place and how long, with commas between: \"chop 10 min, one ring 20 min, oven 180 C "
    "25 min, fridge 1 h\".";

// Degrees Celsius of gas marks 1 to 9: common practice, no source.
constexpr std::array<int, 9> kGasMarks = {140, 150, 170, 180, 190, 200, 220, 230, 240};

struct Part {
  std::string words;  // as written
  std::string place;  // "oven", "ring", "mixer", "chop"
  double minutes = 0;
  std::optional<int> celsius;
  bool fan = false;
  int count = 1;
};

std::vector<std::string> parts_of(std::string_view text) {
  std::vector<std::string> out;
  for (const std::string& line :
       base::parts(base::replaced(base::replaced(std::string(text), '\n', ','), ';', ','), ',')) {
    std::string rest = tidied_line(line);
    for (auto at = rest.find(" then "); at != std::string::npos; at = rest.find(" then ")) {
      out.push_back(base::trimmed(rest.substr(0, at)));
      rest = rest.substr(at + 6);
    }
    if (rest.starts_with("then ")) rest = rest.substr(5);
    out.push_back(base::trimmed(rest));
  }
  std::erase(out, "");
  return out;
}

double minutes_in(const LineToken& t) {
  static constexpr std::array<std::string_view, 4> kMinutes = {"min", "mins", "minutes", "minute"};
  static constexpr std::array<std::string_view, 5> kHours = {"h", "hr", "hrs", "hour", "hours"};
  if (std::find(kMinutes.begin(), kMinutes.end(), t.word) != kMinutes.end() || t.is("m")) return 1;
  if (std::find(kHours.begin(), kHours.end(), t.word) != kHours.end()) return 60;
  return 0;
}

class PartReader {
 public:
  explicit PartReader(const std::string& words) : t_(line_tokens(words)) { part_.words = words; }

  Part read() {
    for (std::size_t i = 0; i < t_.size();) i = token(i);
    return part_;
  }

 private:
  Tokens t_;
  Part part_;

  bool at(std::size_t i, std::string_view word) const { return i < t_.size() && t_[i].is(word); }

  std::size_t token(std::size_t i) {
    std::size_t next = 0;
    if (at(i, "gas") || at(i, "mark")) {
      const std::size_t k = at(i + 1, "mark") ? i + 2 : i + 1;
      if (k < t_.size() && t_[k].number()) {
        const auto mark = t_[k].value.round();
        if (mark >= 1 && mark <= 9) part_.celsius = kGasMarks[static_cast<std::size_t>(mark) - 1];
        return k + 1;
      }
    }
    const auto number = number_at(t_, i, next);
    if (!number) {
      word(i);
      return i + 1;
    }
    std::size_t k = next;
    // "25-30 min": the longer one, so that the room is not planned too tight.
    double value = number->value();
    std::size_t after = 0;
    if (at(k, "-") || at(k, "to")) {
      if (const auto most = number_at(t_, k + 1, after)) {
        value = most->value();
        k = after;
      }
    }
    if (k < t_.size() && minutes_in(t_[k]) > 0) {
      part_.minutes += value * minutes_in(t_[k]);
      return k + 1;
    }
    // "°C" is one word here.
    if (k < t_.size() && t_[k].kind == LineToken::Kind::kWord) {
      const std::string& w = t_[k].word;
      const bool celsius = w.ends_with("c") && w.size() <= 3 &&
                           (w.size() == 1 || static_cast<unsigned char>(w[0]) >= 0x80);
      const bool fahrenheit = w.ends_with("f") && w.size() <= 3 &&
                              (w.size() == 1 || static_cast<unsigned char>(w[0]) >= 0x80);
      if (celsius || w == "degrees" || static_cast<unsigned char>(w[0]) == 0xC2) {
        part_.celsius = static_cast<int>(std::lround(value / 10) * 10);
        if (fahrenheit) part_.celsius = static_cast<int>(std::lround((value - 32) / 18) * 10);
        return at(k + 1, "c") ? k + 2 : k + 1;
      }
      if (fahrenheit) {
        part_.celsius = static_cast<int>(std::lround((value - 32) / 18) * 10);
        return k + 1;
      }
    }
    if (value >= 100 && (part_.place == "oven" || part_.place == "grill")) {
      part_.celsius = static_cast<int>(std::lround(value / 10) * 10);
    } else if (value >= 1 && value <= 4) {
      part_.count = static_cast<int>(value);
    }
    return next;
  }

  void word(std::size_t i) {
    const LineToken& t = t_[i];
    if (t.kind != LineToken::Kind::kWord || t.is("for") || t.is("in") || t.is("the") ||
        t.is("at") || t.is("on") || t.is("and") || t.is("c"))
      return;
    if (t.is("fan")) {
      part_.fan = true;
      return;
    }
    static constexpr std::array<std::string_view, 5> kRings = {"ring", "rings", "hob", "burner",
                                                               "burners"};
    std::string place = t.word;
    if (std::find(kRings.begin(), kRings.end(), place) != kRings.end()) place = "ring";
    if (place == "refrigerator") place = "fridge";
    if (part_.place == "ring" || part_.place == "oven" || part_.place == "grill") return;
    if (place == "ring" || place == "oven" || place == "grill") {
      part_.place = place;
    } else {
      part_.place += (part_.place.empty() ? "" : " ") + place;
    }
  }
};

bool hand_work(const std::string& place) {
  static constexpr std::array<std::string_view, 17> kHands = {
      "chop",    "chopping", "hands",    "prep",  "preparation", "mix",
      "mixing",  "knead",    "kneading", "peel",  "peeling",     "shape",
      "shaping", "roll",     "rolling",  "bench", "wash"};
  const std::string first = place.substr(0, place.find(' '));
  return std::find(kHands.begin(), kHands.end(), first) != kHands.end();
}

Node step_of(const Part& part, std::size_t index) {
  Node step = Node::object();
  const std::string number = std::to_string(index + 1);
  step.set("id", Node::of(say("part-", number)));
  step.set("do", Node::of(base::first_letters(part.words, 120)));
  step.set("short", Node::of(base::first_letters(part.place, 12)));
  step.set("minutes", Node::of(part.minutes));
  Node heat = Node::object();
  if (part.place == "oven") {
    step.set("attention", Node::of("leave"));
    heat.set("oven", Node::of(say("tin ", number)));
    heat.set("celsius", Node::of(*part.celsius));
    if (part.fan) heat.set("kind", Node::of("fan"));
  } else if (part.place == "ring") {
    step.set("attention", Node::of("watch"));
    heat.set("ring", Node::of(say("pan ", number)));
    if (part.count > 1) heat.set("rings", Node::of(part.count));
  } else if (part.place == "grill") {
    step.set("attention", Node::of("watch"));
    heat.set("grill", Node::of(say("tray ", number)));
    if (part.celsius) heat.set("celsius", Node::of(*part.celsius));
  } else if (part.place == "fridge" || part.place == "freezer") {
    step.set("attention", Node::of("leave"));
    constexpr int kBox = 2;  // tenths of a shelf, as a put-away dish takes: common practice, no
                             // source
    step.set(part.place + "_tenths", Node::of(kBox));
  } else if (hand_work(part.place)) {
    step.set("attention", Node::of("hands"));
    step.set("hygiene", Node::of("unwashed"));
  } else {
    const bool alone = part.place == "kettle" || part.place == "microwave" ||
                       part.place == "wait" || part.place == "rest";
    step.set("attention", Node::of(alone ? "leave" : "hands"));
    if (part.place != "wait" && part.place != "rest") {
      Node kit = Node::list();
      kit.add(Node::of(base::first_letters(part.place, 60)));
      step.set("kit", std::move(kit));
    }
  }
  if (!heat.items.empty()) step.set("heat", std::move(heat));
  return step;
}

}  // namespace

base::Result<Dish> read_footprint(std::string_view text, const std::string& name, int portions) {
  base::Problems problems;
  const auto wrong = [&](std::string code, std::string message) {
    problems.push_back({std::move(code), "", "", std::move(message), std::string(kHowTo)});
  };
  if (base::not_utf8(text)) {
    wrong("footprint.part", "The text has letters that cannot be read.");
    return problems;
  }
  constexpr std::size_t kMostParts = 60;
  std::vector<std::string> parts = parts_of(text);
  if (parts.empty()) wrong("footprint.empty", "The footprint says nothing.");
  if (parts.size() > kMostParts) {
    wrong("footprint.part", say("The footprint has ", static_cast<long long>(parts.size()),
                                " parts; at most 60 can be read."));
    parts.clear();
  }
  Node method = Node::list();
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Part part = PartReader(parts[i]).read();
    if (part.place.empty()) {
      wrong("footprint.part",
            say(in_quotes(parts[i]),
                " does not say where: oven, ring, grill, fridge, a piece of kit or hands."));
    } else if (part.minutes <= 0) {
      wrong("footprint.minutes", say(in_quotes(parts[i]), " does not say how long."));
    } else if (part.place == "oven" && !part.celsius) {
      wrong("footprint.celsius", say(in_quotes(parts[i]), " does not say how hot the oven is."));
    } else if (part.place == "ring" && part.count > 2) {
      wrong("footprint.part",
            say(in_quotes(parts[i]),
                ": one pan stands on one ring or two; write two parts for more pans."));
    } else {
      method.add(step_of(part, i));
    }
  }
  if (!problems.empty()) return problems;
  Node dish = Node::object();
  dish.set("kind", Node::of("dish"));
  dish.set("version", Node::of(1));
  dish.set("name", Node::of(name));
  dish.set("portions", Node::of(portions));
  dish.set("method", std::move(method));
  return read_dish(json_text(dish), "");
}

}  // namespace kitchen
