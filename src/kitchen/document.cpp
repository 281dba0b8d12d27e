#include "kitchen/document.h"

#include <cmath>

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

constexpr Word<DocumentKind> kKindWords[] = {{"dish", DocumentKind::kDish},
                                             {"room", DocumentKind::kRoom},
                                             {"house_rules", DocumentKind::kHouseRules},
                                             {"lesson", DocumentKind::kLesson}};
constexpr int kVersion = 1;

std::optional<DocumentKind> kind_of(Reader& reader, const Node& node, const std::string& where) {
  const std::vector<std::string> known = spellings(kKindWords);
  if (node.kind != Node::Kind::kObject) {
    reader.add(
        "file.not_a_document", where, "There is no dish, room, house rules or lesson here.",
        "Begin with { \"kind\": \"dish\", \"version\": 1, ... }; docs/files.md shows a whole one.");
    return std::nullopt;
  }
  const Node* kind = node.find("kind");
  if (kind == nullptr || kind->kind != Node::Kind::kText) {
    reader.add("file.no_kind", where, "The file does not say what it is.",
               "Add \"kind\": \"dish\", \"room\", \"house_rules\" or \"lesson\".");
    return std::nullopt;
  }
  if (const auto found = value_of(kKindWords, kind->text)) return found;
  reader.add("file.unknown_kind", below(where, "kind"),
             say("The file says it is a ", in_quotes(kind->text),
                 did_you_mean(kind->text, known).empty() ? "." : did_you_mean(kind->text, known)),
             "The kind is \"dish\", \"room\", \"house_rules\" or \"lesson\".");
  return std::nullopt;
}

}  // namespace

bool check_header(Reader& reader, const Node& node, const std::string& where, DocumentKind wanted) {
  const auto kind = kind_of(reader, node, where);
  if (!kind) return false;
  if (*kind != wanted) {
    const auto words = [](DocumentKind k) {
      return base::replaced(word_for(kKindWords, k), '_', ' ');
    };
    reader.add("file.wrong_kind", below(where, "kind"),
               say("This is a file of the kind ", in_quotes(words(*kind)), ", and ",
                   in_quotes(words(wanted)), " is wanted here."),
               say("Choose a file of the kind ", in_quotes(words(wanted)), "."));
    return false;
  }
  const Node* version = node.find("version");
  if (version == nullptr || version->kind != Node::Kind::kNumber) {
    reader.add("file.no_version", where, "The file does not say the version of its format.",
               "Add \"version\": 1.");
    return false;
  }
  if (version->number != kVersion) {
    reader.add("file.unknown_version", below(where, "version"),
               say("The file has format version ", base::number_text(version->number),
                   "; this program reads version ", kVersion, "."),
               "Use a newer Benchbell, or write the file again with this one.");
    return false;
  }
  return true;
}

std::optional<Node> parse_document(std::string_view text, Reader& reader, DocumentKind wanted) {
  auto node = parse_json(text, reader.file(), reader.problems());
  if (!node || !check_header(reader, *node, "", wanted)) return std::nullopt;
  return node;
}

base::Result<DocumentKind> document_kind(std::string_view text, std::string file_name) {
  base::Problems problems;
  Reader reader(std::move(file_name), problems);
  const auto node = parse_json(text, reader.file(), problems);
  if (!node) return problems;
  const auto kind = kind_of(reader, *node, "");
  if (!kind) return problems;
  return *kind;
}

int celsius_of(const Fields& fields, std::string_view key, std::optional<int> otherwise) {
  if (fields.find(key) == nullptr && !otherwise) fields.missing(key);
  const int celsius = fields.whole(key, 50, 260, otherwise.value_or(180));
  if (celsius % 10 == 0) return celsius;
  fields.reader().add("oven.not_tens", fields.where(key),
                      say(fields.what(), ": ", celsius, " °C is between two marks of the knob."),
                      say("Write ", celsius / 10 * 10, " or ", celsius / 10 * 10 + 10, "."));
  return otherwise.value_or(180);
}

Node minutes_node(Seconds time) { return Node::of(static_cast<double>(time.count()) / 60.0); }

}  // namespace kitchen
