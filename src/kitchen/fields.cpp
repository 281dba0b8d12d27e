#include "kitchen/fields.h"

#include <algorithm>
#include <cmath>

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

std::string spoken(std::string_view key) { return base::replaced(key, '_', ' '); }

}  // namespace

void Reader::add(std::string code, std::string where, std::string message, std::string remedy) {
  if (problems_.size() > kMostProblems) return;
  if (problems_.size() == kMostProblems) {
    problems_.push_back(
        {"file.too_many_problems", file_, "",
         say("There are more than ", kMostProblems, " faults; the rest are not listed."),
         "Mend these first, then read the file again."});
    return;
  }
  problems_.push_back(
      {std::move(code), file_, std::move(where), std::move(message), std::move(remedy)});
}

std::string place_of(const Node& child, std::string usual) {
  return child.origin.empty() ? std::move(usual) : child.origin;
}

bool is_id(std::string_view text) {
  const auto plain = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); };
  return !text.empty() && text.size() <= 40 && plain(text.front()) && plain(text.back()) &&
         std::all_of(text.begin(), text.end(), [&](char c) { return plain(c) || c == '-'; });
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& known) {
  const auto near = base::nearest(word, known);
  return near ? say("; did you mean ", in_quotes(*near), "?") : "";
}

std::string or_did_you_mean(std::string_view word, const std::vector<std::string>& known) {
  const std::string near = did_you_mean(word, known);
  return near.empty() ? "." : near;
}

Fields::Fields(Reader& reader, const Node& node, std::string where, std::string what,
               std::span<const std::string_view> known)
    : reader_(reader),
      node_(node),
      where_(place_of(node, std::move(where))),
      what_(std::move(what)) {
  if (!is_object()) {
    reader_.add("field.wrong_kind", where_,
                say(what_, " must be written as { ... } with named entries."),
                "See docs/files.md for a whole example.");
    return;
  }
  const std::vector<std::string> names(known.begin(), known.end());
  for (std::size_t i = 0; i < node_.keys.size(); ++i) {
    const std::string& key = node_.keys[i];
    if (std::find(known.begin(), known.end(), key) != known.end()) continue;
    const auto near = base::nearest(key, names);
    std::vector<std::string> shown;
    for (const std::string& name : names) shown.push_back(in_quotes(name));
    reader_.add("field.unknown", place_of(node_.items[i], below(where_, key)),
                say(what_, " has an entry ", in_quotes(key), " that is not known."),
                near ? say("Write ", in_quotes(*near), " if that is meant, or take it out.")
                     : say("Take it out. Known are ", base::joined(shown), "."));
  }
}

const Node* Fields::find(std::string_view key) const {
  return is_object() ? node_.find(key) : nullptr;
}

std::string Fields::where(std::string_view key) const {
  const Node* node = find(key);
  return node == nullptr ? below(where_, key) : place_of(*node, below(where_, key));
}

void Fields::missing(std::string_view key) const {
  if (!is_object()) return;  // already refused as a whole
  reader_.add("field.missing", where_, say(what_, " has no ", spoken(key), "."),
              say("Add \"", key, "\"."));
}

void Fields::wrong_kind(std::string_view key, const std::string& where,
                        std::string_view wanted) const {
  reader_.add("field.wrong_kind", where, say(what_, ": ", spoken(key), " must be ", wanted, "."),
              say("Write ", wanted, " there."));
}

bool Fields::sound_text(std::string_view key, const std::string& where, const std::string& text,
                        std::size_t most) const {
  if (base::blank(text)) {
    reader_.add("field.blank", where, say(what_, ": ", spoken(key), " is empty."),
                "Write something there, or take the entry out.");
    return false;
  }
  if (std::any_of(text.begin(), text.end(),
                  [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; })) {
    reader_.add("field.control_character", where,
                say(what_, ": ", spoken(key),
                    " holds a line break or another sign that cannot be printed."),
                "Write it on one line.");
    return false;
  }
  if (base::letters(text) > most) {
    reader_.add("field.too_long", where,
                say(what_, ": ", spoken(key), " has ", base::letters(text),
                    " letters; there is room for ", most, "."),
                "Make it shorter.");
    return false;
  }
  return true;
}

std::string Fields::text(std::string_view key, std::size_t most) const {
  if (find(key) == nullptr) {
    missing(key);
    return {};
  }
  return text_or(key, {}, most);
}

std::string Fields::text_or(std::string_view key, std::string otherwise, std::size_t most) const {
  const Node* node = find(key);
  if (node == nullptr) return otherwise;
  if (node->kind != Node::Kind::kText) {
    wrong_kind(key, where(key), "a text in quotation marks");
    return otherwise;
  }
  return sound_text(key, where(key), node->text, most) ? node->text : otherwise;
}

std::string Fields::id(std::string_view key) const {
  std::string out = text(key, 40);
  if (!out.empty() && !is_id(out)) {
    reader_.add("field.not_an_id", where(key),
                say(what_, ": ", in_quotes(out), " cannot be an ", spoken(key), "."),
                "Use small letters a to z, digits and hyphens, as in 'dice-onion'.");
    return {};
  }
  return out;
}

bool Fields::flag(std::string_view key, bool otherwise) const {
  const Node* node = find(key);
  if (node == nullptr) return otherwise;
  if (node->kind == Node::Kind::kBool) return node->flag;
  wrong_kind(key, where(key), "true or false");
  return otherwise;
}

double Fields::number(std::string_view key, double least, double most, double otherwise) const {
  const Node* node = find(key);
  if (node == nullptr) return otherwise;
  if (node->kind != Node::Kind::kNumber) {
    wrong_kind(key, where(key), "a number without quotation marks");
    return otherwise;
  }
  if (node->number >= least && node->number <= most) return node->number;
  reader_.add("field.out_of_range", where(key),
              say(what_, ": ", spoken(key), " is ", base::number_text(node->number),
                  ", and must lie between ", base::number_text(least), " and ",
                  base::number_text(most), "."),
              say("Write a number between ", base::number_text(least), " and ",
                  base::number_text(most), "."));
  return otherwise;
}

int Fields::whole(std::string_view key, int least, int most, std::optional<int> otherwise) const {
  if (find(key) == nullptr && !otherwise) missing(key);
  const double value = number(key, least, most, otherwise.value_or(least));
  if (value == std::floor(value)) return static_cast<int>(value);
  reader_.add("field.not_whole", where(key),
              say(what_, ": ", spoken(key), " is ", base::number_text(value),
                  ", and must be a whole number."),
              say("Write ", base::number_text(std::round(value)), " or another whole number."));
  return otherwise.value_or(least);
}

std::optional<Seconds> Fields::minutes_of(const Node& node, std::string_view key,
                                          const std::string& where, Seconds least) const {
  if (node.kind != Node::Kind::kNumber) {
    wrong_kind(key, where, "a number of minutes without quotation marks");
    return std::nullopt;
  }
  const double seconds = std::round(node.number * 60.0);
  if (seconds >= static_cast<double>(least.count()) &&
      seconds <= static_cast<double>(kLongest.count())) {
    return Seconds{static_cast<Seconds::rep>(seconds)};
  }
  const std::string bound = least.count() > 0 ? "more than 0" : "0 or more";
  reader_.add(
      "field.minutes_out_of_range", where,
      say(what_, ": ", spoken(key), " is ", base::number_text(node.number), ", and must be ", bound,
          " and at most ", base::minutes_text(kLongest), " (a day)."),
      "Write the minutes it really takes.");
  return std::nullopt;
}

Seconds Fields::minutes(std::string_view key, Seconds least,
                        std::optional<Seconds> otherwise) const {
  const Node* node = find(key);
  if (node == nullptr) {
    if (!otherwise) missing(key);
    return otherwise.value_or(least);
  }
  return minutes_of(*node, key, where(key), least).value_or(otherwise.value_or(least));
}

std::vector<Entry> Fields::list(std::string_view key, std::size_t most) const {
  const Node* node = find(key);
  if (node == nullptr) return {};
  if (node->kind != Node::Kind::kList) {
    wrong_kind(key, where(key), "a list [ ... ]");
    return {};
  }
  std::vector<Entry> out;
  if (node->items.size() > most) {
    reader_.add("field.too_many", where(key),
                say(what_, ": ", spoken(key), " has ", node->items.size(),
                    " entries; there is room for ", most, "."),
                "Leave out what is not needed.");
    return out;
  }
  for (std::size_t i = 0; i < node->items.size(); ++i)
    out.push_back({&node->items[i], place_of(node->items[i], below(where(key), i))});
  return out;
}

std::vector<std::string> Fields::texts(std::string_view key) const {
  std::vector<std::string> out;
  for (const Entry& entry : list(key)) {
    if (is_text(entry) && sound_text(key, entry.where, entry.node->text, 120))
      out.push_back(entry.node->text);
  }
  return out;
}

bool Fields::is_text(const Entry& entry) const {
  if (entry.node->kind == Node::Kind::kText) return true;
  reader_.add("field.wrong_kind", entry.where,
              say(what_, " has something other than a text in a list of texts."),
              "Write a text in quotation marks there.");
  return false;
}

std::optional<std::string> Fields::word_text(std::string_view key, bool optional) const {
  const Node* node = find(key);
  if (node == nullptr) {
    if (!optional) missing(key);
    return std::nullopt;
  }
  if (node->kind == Node::Kind::kText) return node->text;
  wrong_kind(key, where(key), "a word in quotation marks");
  return std::nullopt;
}

void Fields::unknown_word(std::string_view key, const std::string& where, const std::string& word,
                          std::vector<std::string> known) const {
  const std::string near = did_you_mean(word, known);
  for (std::string& each : known) each = in_quotes(each);
  reader_.add("field.unknown_word", where,
              say(what_, ": ", spoken(key), " is ", in_quotes(word),
                  ", which is not a word known here", near.empty() ? "." : near),
              say("Write ", base::joined(known, "or"), "."));
}

}  // namespace kitchen
