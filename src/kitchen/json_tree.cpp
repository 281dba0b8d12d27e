#include "kitchen/json_tree.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"

namespace kitchen {

Node Node::of(bool value) {
  Node node = kinded(Kind::kBool);
  node.flag = value;
  return node;
}

Node Node::of(double value) {
  Node node = kinded(Kind::kNumber);
  node.number = value;
  return node;
}

Node Node::of(std::string_view value) {
  Node node = kinded(Kind::kText);
  node.text = value;
  return node;
}

const Node* Node::find(std::string_view key) const {
  const auto at = std::find(keys.begin(), keys.end(), key);
  return at == keys.end() ? nullptr : &items[static_cast<std::size_t>(at - keys.begin())];
}

Node* Node::find(std::string_view key) { return const_cast<Node*>(std::as_const(*this).find(key)); }

Node& Node::set(std::string_view key, Node value) {
  if (Node* old = find(key)) return *old = std::move(value);
  keys.emplace_back(key);
  items.push_back(std::move(value));
  return items.back();
}

Node& Node::add(Node value) {
  items.push_back(std::move(value));
  return items.back();
}

void Node::erase(std::string_view key) {
  const auto at = std::find(keys.begin(), keys.end(), key);
  if (at == keys.end()) return;
  items.erase(items.begin() + (at - keys.begin()));
  keys.erase(at);
}

std::string below(const std::string& pointer, std::string_view key) {
  std::string out = pointer + "/";
  for (const char c : key) {
    if (c == '~')
      out += "~0";
    else if (c == '/')
      out += "~1";
    else
      out += c;
  }
  return out;
}

std::string below(const std::string& pointer, std::size_t index) {
  return pointer + "/" + std::to_string(index);
}

namespace {

void put_text(std::string& out, std::string_view text) {
  constexpr std::string_view kHex = "0123456789abcdef";
  out += '"';
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (c == '\n') {
      out += "\\n";
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

/// Lays a tree out: `wide` puts a value on lines of its own if it does not fit on one.
class Layout {
 public:
  std::string take() { return std::move(out_); }

  void put(const Node& node, std::size_t indent, bool wide) {
    switch (node.kind) {
      case Node::Kind::kNull:
        out_ += "null";
        break;
      case Node::Kind::kBool:
        out_ += node.flag ? "true" : "false";
        break;
      case Node::Kind::kNumber:
        out_ += base::number_text(node.number);
        break;
      case Node::Kind::kText:
        put_text(out_, node.text);
        break;
      case Node::Kind::kList:
        put_many(node, indent, wide, '[', ']');
        break;
      case Node::Kind::kObject:
        put_many(node, indent, wide, '{', '}');
        break;
    }
  }

 private:
  static constexpr std::size_t kLine = 100;
  std::string out_;

  void new_line(std::size_t indent) {
    out_ += '\n';
    out_.append(indent, ' ');
  }

  void put_many(const Node& node, std::size_t indent, bool wide, char open, char close) {
    if (wide && indent > 0 && !node.items.empty()) {
      Layout narrow;
      narrow.put_many(node, 0, false, open, close);
      if (narrow.out_.size() + indent <= kLine) {
        out_ += narrow.out_;
        return;
      }
    }
    const bool lines = wide && !node.items.empty();
    out_ += open;
    for (std::size_t i = 0; i < node.items.size(); ++i) {
      if (i > 0) out_ += lines ? "," : ", ";
      if (lines) new_line(indent + 2);
      if (node.kind == Node::Kind::kObject) {
        put_text(out_, node.keys[i]);
        out_ += ": ";
      }
      put(node.items[i], indent + 2, wide);
    }
    if (lines) new_line(indent);
    out_ += close;
  }
};

}  // namespace

std::string json_text(const Node& node) {
  Layout layout;
  layout.put(node, 0, true);
  return layout.take() + "\n";
}

}  // namespace kitchen
