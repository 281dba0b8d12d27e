// Requests and answers of the API as JSON trees.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/json_tree.h"
#include "serve/http/message.h"
#include "store/document.h"

namespace serve {

using kitchen::Node;

/// The object in a request's body. Problems: request.body, and those of the JSON reader.
base::Result<Node> body_of(const http::Request&);
/// Only these members may stand in it. Problems: request.unknown_member.
base::Problems unknown_members(const Node&, std::initializer_list<std::string_view> known);

/// A member of an object; empty or nothing when it is not there or is something else.
std::string text_in(const Node&, std::string_view key);
std::optional<double> number_in(const Node&, std::string_view key);
bool flag_in(const Node&, std::string_view key);
std::vector<std::string> texts_in(const Node&, std::string_view key);

Node texts(const std::vector<std::string>&);
Node text_or_null(const std::optional<std::string>&);
Node problems_node(const base::Problems&);

/// An answer of 200 or another status.
http::Response answer(const Node&, int status = 200);
/// {"a": ..., "b": ...} from texts that are JSON already.
http::Response answer_raw(const std::vector<std::pair<std::string, std::string>>&,
                          int status = 200);
/// 400, or 404, 409, 503 by the kind of the first problem.
http::Response refuse(const base::Problems&);

Node document_node(const store::Document&, const std::string& changed_by);
/// The version as an ETag: "\"7\"".
std::string etag(std::int64_t version);
/// The version a request saw. Problems: request.no_version (428).
base::Result<std::int64_t> version_seen(const http::Request&);

}  // namespace serve
