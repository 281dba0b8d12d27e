// Requests and answers of the API as JSON trees.
#pragma once

#include <cstdint>
#include <initializer_list>
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

/// What a member of a request may be.
enum class Shape : std::uint8_t {
  kText,
  kNumber,
  kWhole,  ///< a number without a fraction, below a thousand million
  kFlag,
  kObject,
  kList,
  kTexts,  ///< a list of texts
};
struct Member {
  std::string_view key;
  Shape shape = Shape::kText;
  bool needed = false;
};
/// Only these members may stand in it, each of its kind; those needed must.
/// Problems: request.unknown_member, request.wrong_kind, request.missing_member; all at once.
base::Problems misshapen(const Node&, std::initializer_list<Member> known);
/// The same for the object at a member, whose name begins the places of the problems.
base::Problems misshapen(const Node&, std::initializer_list<Member> known,
                         const std::string& below);

/// A member of an object; empty or nothing when it is not there or is something else.
std::string text_in(const Node&, std::string_view key);
std::optional<double> number_in(const Node&, std::string_view key);
/// A whole number of at most nine digits.
std::optional<int> whole_in(const Node&, std::string_view key);
bool flag_in(const Node&, std::string_view key);
std::vector<std::string> texts_in(const Node&, std::string_view key);

Node texts(const std::vector<std::string>&);
Node text_or_null(const std::optional<std::string>&);
Node problems_node(const base::Problems&);

/// JSON on one line: for browsers, where kitchen::json_text() is for people.
std::string json_line(const Node&);

/// An answer of 200 or another status.
http::Response answer(const Node&, int status = 200);
/// {"a": ..., "b": ...} from texts that are JSON already.
std::string json_object(const std::vector<std::pair<std::string, std::string>>&);
http::Response answer_raw(const std::vector<std::pair<std::string, std::string>>&,
                          int status = 200);
/// 400, or 404, 409, 503 by the kind of the first problem.
http::Response refuse(const base::Problems&);
/// The same of something new: what keeps it from being made is a fault in what was sent, so 400
/// stands for 404 and 409.
http::Response refuse_new(const base::Problems&);

Node document_node(const store::Document&, const std::string& changed_by);
/// The version as an ETag: "\"7\"".
std::string etag(std::int64_t version);
/// A version as text says it, from 1; nothing for anything else.
std::optional<std::int64_t> version_in(std::string_view);
/// The version a request saw. Problems: request.no_version (428).
base::Result<std::int64_t> version_seen(const http::Request&);

}  // namespace serve
