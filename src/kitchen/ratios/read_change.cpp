// The few sentences in which a change can be said.
#include <algorithm>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/ratios/change.h"

namespace kitchen {
namespace {

using base::say;

bool drop_start(std::string& text, std::string_view start) {
  if (!text.starts_with(start)) return false;
  text.erase(0, start.size());
  return true;
}

void drop_articles(std::string& text) {
  for (const std::string_view article : {"the ", "of ", "some ", "a ", "an "}) {
    while (drop_start(text, article)) {
    }
  }
}

// "60 g apple sauce" -> 60 g and "apple sauce"; no number = not stated.
Quantity take_amount(std::string& text) {
  const auto space = text.find(' ');
  if (space == std::string::npos) return {};
  std::string number = text.substr(0, space), unit;
  std::string rest = text.substr(space + 1);
  const auto letter = number.find_first_not_of("0123456789.");
  if (letter != std::string::npos && letter > 0) {  // "60g"
    unit = number.substr(letter);
    number.erase(letter);
  }
  const auto value = Ratio::in(number);
  if (!value) return {};
  if (unit.empty()) {
    const auto end = rest.find(' ');
    const std::string word = rest.substr(0, end);
    if (unit_named(word) && end != std::string::npos) {
      unit = word;
      rest = rest.substr(end + 1);
    }
  }
  text = rest;
  drop_articles(text);
  if (const auto known = unit_named(unit)) return Quantity::of(*value, *known);
  return Quantity::pieces(*value, "");
}

base::Problem not_understood(std::string_view words) {
  return {
      "change.words", "", "", say("The change ", base::in_quotes(words), " is not understood."),
      "Say it like \"swap butter for oil\", \"leave out the egg\", \"50 g more sugar\", \"double "
      "the salt\" or \"add 30 g cocoa\"."};
}

Change change(ChangeKind kind, std::string what) {
  drop_articles(what);
  Change out;
  out.kind = kind;
  out.what = std::move(what);
  return out;
}

Change times(std::string what, const Ratio& factor) {
  Change out = change(ChangeKind::kTimes, std::move(what));
  out.times = factor;
  return out;
}

std::optional<Change> read_swap(std::string text) {
  for (const std::string_view middle : {" for ", " with ", " by "}) {
    const auto at = text.find(middle);
    if (at == std::string::npos) continue;
    std::string old = text.substr(0, at), fresh = text.substr(at + middle.size());
    drop_articles(old);
    take_amount(old);
    drop_articles(fresh);
    Change out = change(ChangeKind::kSwap, old);
    out.amount = take_amount(fresh);
    out.with = fresh;
    return out;
  }
  return std::nullopt;
}

std::optional<Change> read_by_amount(std::string text) {
  const Quantity amount = take_amount(text);
  if (!amount.stated()) return std::nullopt;
  for (const bool more : {true, false}) {
    if (!drop_start(text, more ? "more " : "less ") && !(!more && drop_start(text, "fewer ")))
      continue;
    Change out = change(ChangeKind::kByAmount, text);
    out.amount = kitchen::times(amount, more ? Ratio(1) : Ratio(-1));
    return out;
  }
  return std::nullopt;
}

}  // namespace

base::Result<Change> read_change(std::string_view words) {
  std::string text = base::folded(words);
  std::optional<Change> out;
  if (drop_start(text, "swap ") || drop_start(text, "replace ")) {
    out = read_swap(text);
  } else if (drop_start(text, "leave out ") || drop_start(text, "without ") ||
             drop_start(text, "no ")) {
    out = change(ChangeKind::kLeaveOut, text);
  } else if (drop_start(text, "more ")) {
    out = times(text, {5, 4});
  } else if (drop_start(text, "less ") || drop_start(text, "fewer ")) {
    out = times(text, {3, 4});
  } else if (drop_start(text, "double ") || drop_start(text, "twice ")) {
    out = times(text, 2);
  } else if (drop_start(text, "halve ") || drop_start(text, "half ")) {
    out = times(text, {1, 2});
  } else if (drop_start(text, "add ")) {
    drop_articles(text);
    const Quantity amount = take_amount(text);
    out = change(ChangeKind::kAdd, text);
    out->amount = amount;
  } else {
    out = read_by_amount(text);
  }
  const bool empty = !out || out->what.empty() ||
                     (out->kind == ChangeKind::kSwap && out->with.empty());
  if (empty) return not_understood(words);
  return *out;
}

}  // namespace kitchen
