// The only file of the store that includes the JSON library. Its event parser feeds a small tree of
// our own, because the library's own lets a repeated member pass and forgets the order.
#include "store/json_text.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "base/text.h"
#include "store/document.h"

namespace store {
namespace {

struct Value {
  enum class Kind : std::uint8_t { kPlain, kNumber, kText, kList, kObject };
  Kind kind = Kind::kPlain;
  std::string text;  ///< null, true, false as written; a number as we write it; a text's letters
  double number = 0;
  std::vector<std::string> names;  ///< of an object's members
  std::vector<Value> items;
};

/// ECMAScript's Number::toString, as RFC 8785 section 3.2.2.3 asks: shortest digits that read back
/// as the same double, exponents only from 1e21 up and 1e-7 down.
std::string ecma_number(double value) {
  if (value == 0) return "0";  // also minus zero
  std::array<char, 40> buffer{};
  const auto done = std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::abs(value),
                                  std::chars_format::scientific);
  const std::string_view written(buffer.data(), static_cast<std::size_t>(done.ptr - buffer.data()));
  const auto e = written.find('e');
  std::string digits;
  for (const char c : written.substr(0, e)) {
    if (c != '.') digits += c;
  }
  const std::string_view power = written.substr(e + 1 + (written[e + 1] == '+' ? 1 : 0));
  int exponent = 0;
  std::from_chars(power.data(), power.data() + power.size(), exponent);
  const int count = static_cast<int>(digits.size());
  const int point = exponent + 1;  // how many digits stand before the point
  std::string out;
  if (point > 21 || point <= -6) {
    out = digits.substr(0, 1);
    if (count > 1) out += "." + digits.substr(1);
    out += (exponent < 0 ? "e-" : "e+") + std::to_string(std::abs(exponent));
  } else if (point <= 0) {
    out = "0." + std::string(static_cast<std::size_t>(-point), '0') + digits;
  } else if (count <= point) {
    out = digits + std::string(static_cast<std::size_t>(point - count), '0');
  } else {
    out = digits.substr(0, static_cast<std::size_t>(point)) + "." +
          digits.substr(static_cast<std::size_t>(point));
  }
  return value < 0 ? "-" + out : out;
}

/// RFC 8785 section 3.2.2.2: short escapes where there are any, \u00xx for other control signs,
/// everything else as it is.
void put_text(std::string& out, std::string_view text) {
  constexpr std::string_view kHex = "0123456789abcdef";
  constexpr std::string_view kSigns = "\b\t\n\f\r\"\\";
  constexpr std::string_view kLetters = "btnfr\"\\";
  out += '"';
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (const auto at = kSigns.find(c); at != std::string_view::npos) {
      out += '\\';
      out += kLetters[at];
    } else if (byte < 0x20) {
      out += "\\u00";
      out += kHex[byte >> 4U];
      out += kHex[byte & 15U];
    } else {
      out += c;
    }
  }
  out += '"';
}

/// RFC 8785 section 3.2.3 sorts by UTF-16 units. That is the order of code points but for one
/// range: letters beyond U+FFFF begin with a surrogate (D800 to DFFF) and so come before U+E000 to
/// U+FFFF. In UTF-8 the first start with F0 or more, the second with EE or EF.
bool utf16_less(std::string_view a, std::string_view b) {
  const auto [x, y] = std::mismatch(a.begin(), a.end(), b.begin(), b.end());
  if (x == a.end() || y == b.end()) return x == a.end() && y != b.end();
  const auto p = static_cast<unsigned char>(*x);
  const auto q = static_cast<unsigned char>(*y);
  if (p >= 0xEE && q >= 0xEE && (p >= 0xF0) != (q >= 0xF0)) return p >= 0xF0;
  return p < q;
}

enum class Layout : std::uint8_t { kCompact, kCanonical, kTidy };

void put(std::string& out, const Value& value, Layout layout, std::size_t indent);

void put_many(std::string& out, const Value& value, Layout layout, std::size_t indent) {
  const bool object = value.kind == Value::Kind::kObject;
  std::vector<std::size_t> order(value.items.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  if (object && layout == Layout::kCanonical) {
    std::sort(order.begin(), order.end(), [&value](std::size_t a, std::size_t b) {
      return utf16_less(value.names[a], value.names[b]);
    });
  }
  const auto new_line = [&](std::size_t spaces) {
    if (layout != Layout::kTidy || value.items.empty()) return;
    out += '\n';
    out.append(spaces, ' ');
  };
  out += object ? '{' : '[';
  for (std::size_t i = 0; i < order.size(); ++i) {
    if (i > 0) out += ',';
    new_line(indent + 2);
    if (object) {
      put_text(out, value.names[order[i]]);
      out += layout == Layout::kTidy ? ": " : ":";
    }
    put(out, value.items[order[i]], layout, indent + 2);
  }
  new_line(indent);
  out += object ? '}' : ']';
}

void put(std::string& out, const Value& value, Layout layout, std::size_t indent) {
  switch (value.kind) {
    case Value::Kind::kPlain:
      out += value.text;
      break;
    case Value::Kind::kNumber:
      out += layout == Layout::kCanonical ? ecma_number(value.number) : value.text;
      break;
    case Value::Kind::kText:
      put_text(out, value.text);
      break;
    case Value::Kind::kList:
    case Value::Kind::kObject:
      put_many(out, value, layout, indent);
      break;
  }
}

std::string written(const Value& value, Layout layout) {
  std::string out;
  put(out, value, layout, 0);
  if (layout == Layout::kTidy) out += '\n';
  return out;
}

base::Problem no_json(std::string message) {
  return {"store.body", "", "", std::move(message),
          "If you typed this in by hand, check brackets, commas and quotation marks; otherwise "
          "send it again."};
}

class TreeBuilder final : public nlohmann::json_sax<nlohmann::json> {
 public:
  explicit TreeBuilder(std::string_view text) : text_(text) {}

  Value take() { return std::move(root_); }
  const std::string& fault() const { return fault_; }

  bool null() override { return put_plain("null"); }
  bool boolean(bool value) override { return put_plain(value ? "true" : "false"); }
  bool number_integer(number_integer_t value) override {
    return put_number(std::to_string(value), static_cast<double>(value));
  }
  bool number_unsigned(number_unsigned_t value) override {
    return put_number(std::to_string(value), static_cast<double>(value));
  }
  bool number_float(number_float_t value, const string_t&) override {
    return put_number(ecma_number(value), value);
  }
  bool string(string_t& value) override {
    Value made;
    made.kind = Value::Kind::kText;
    made.text = std::move(value);
    return add(std::move(made));
  }
  bool binary(binary_t&) override { return refuse("It holds bytes that are not text."); }
  bool start_object(std::size_t) override { return open(Value::Kind::kObject); }
  bool start_array(std::size_t) override { return open(Value::Kind::kList); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    if (!open_.back().seen.insert(name).second) {
      return refuse(
          base::say("The entry ", base::in_quotes(name), " stands twice in the same place."));
    }
    open_.back().value.names.push_back(std::move(name));
    return true;
  }

  bool parse_error(std::size_t position, const std::string&,
                   const nlohmann::json::exception& fault) override {
    if (fault.id == 406) return refuse("It holds a number that is too big.");
    const std::string_view before = text_.substr(0, position == 0 ? 0 : position - 1);
    const auto line = std::count(before.begin(), before.end(), '\n') + 1;
    const auto column = before.size() - (before.rfind('\n') + 1) + 1;  // npos + 1 is 0
    return refuse(base::say("It is not JSON in line ", line, ", column ", column, "."));
  }

 private:
  struct Frame {
    Value value;
    std::set<std::string> seen;
  };
  std::string_view text_;
  Value root_;
  std::vector<Frame> open_;
  std::string fault_;

  bool refuse(std::string why) {
    fault_ = std::move(why);
    return false;
  }
  bool put_plain(const char* text) {
    Value made;
    made.text = text;
    return add(std::move(made));
  }
  bool put_number(std::string text, double number) {
    Value made;
    made.kind = Value::Kind::kNumber;
    made.text = std::move(text);
    made.number = number;
    return add(std::move(made));
  }
  bool add(Value value) {
    if (open_.empty())
      root_ = std::move(value);
    else
      open_.back().value.items.push_back(std::move(value));
    return true;
  }
  bool open(Value::Kind kind) {
    if (static_cast<int>(open_.size()) >= kDeepestJson) {
      return refuse(base::say("Brackets are nested more than ", kDeepestJson, " deep."));
    }
    open_.emplace_back();
    open_.back().value.kind = kind;
    return true;
  }
  bool close() {
    Value done = std::move(open_.back().value);
    open_.pop_back();
    return add(std::move(done));
  }
};

base::Problem too_big() {
  return {
      "store.body_too_big", "", "",
      base::say("This is larger than ", kLargestBody >> 20U, " MB, more than one document may be."),
      "Split it, or leave out what is not needed."};
}

base::Result<Value> parse(std::string_view text) {
  if (text.size() > kLargestBody) return too_big();
  if (const auto bad = base::not_utf8(text)) {
    return no_json(base::say("It is not plain UTF-8 text: byte ", *bad, " does not belong."));
  }
  TreeBuilder builder(text);
  if (!nlohmann::json::sax_parse(text, &builder)) return no_json(builder.fault());
  return builder.take();
}

}  // namespace

base::Result<JsonBody> read_body(std::string_view text) {
  auto parsed = parse(text);
  if (!parsed) return parsed.problems();
  const Value& value = parsed.value();
  if (value.kind != Value::Kind::kObject) {
    return no_json("A document is one object in curly brackets, and this is not.");
  }
  JsonBody body;
  body.compact = written(value, Layout::kCompact);
  if (body.compact.size() > kLargestBody) return too_big();  // 1e20 is longer written out
  body.canonical = written(value, Layout::kCanonical);
  for (std::size_t i = 0; i < value.items.size(); ++i) {
    if (value.items[i].kind == Value::Kind::kText) {
      body.texts.emplace(value.names[i], value.items[i].text);
    }
  }
  return body;
}

base::Result<std::string> canonical_json(std::string_view text) {
  auto parsed = parse(text);
  if (!parsed) return parsed.problems();
  return written(parsed.value(), Layout::kCanonical);
}

base::Result<std::string> tidy_json(std::string_view text) {
  auto parsed = parse(text);
  if (!parsed) return parsed.problems();
  return written(parsed.value(), Layout::kTidy);
}

}  // namespace store
