// Inside the reader: one document's tree to its value. Each returns nothing only after noting a
// Problem.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/fields.h"
#include "kitchen/lesson.h"
#include "kitchen/read.h"

namespace kitchen {

/// Parses a file and checks kind and version.
std::optional<Node> parse_document(std::string_view text, Reader&, DocumentKind wanted);
/// Checks "kind" and "version" of a document that stands in a file or inside a lesson.
bool check_header(Reader&, const Node&, const std::string& where, DocumentKind wanted);

std::optional<std::vector<Dish>> dishes_of(Reader&, const Node&, const std::string& where);
std::optional<Room> room_of(Reader&, const Node&, const std::string& where);
std::optional<HouseRules> house_rules_of(Reader&, const Node&, const std::string& where);

/// A knob position and its tolerance as written beside an oven step or an oven set at opening.
int celsius_of(const Fields&, std::string_view key, std::optional<int> otherwise);

Node node_of(const Dish&);
Node node_of(const Room&);
Node node_of(const HouseRules&);
Node minutes_node(Seconds);

}  // namespace kitchen
