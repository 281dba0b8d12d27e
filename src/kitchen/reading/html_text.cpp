#include "kitchen/reading/html_text.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/text.h"

namespace kitchen {
namespace {

bool alpha(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

std::size_t find_small(std::string_view text, std::string_view small, std::size_t from) {
  for (std::size_t i = from; i + small.size() <= text.size(); ++i) {
    if (base::lower(text.substr(i, small.size())) == small) return i;
    // Tags are far apart: jump to the next opening.
    const auto next = text.find('<', i + 1);
    if (next == std::string_view::npos) return next;
    i = next - 1;
  }
  return std::string_view::npos;
}

void append_letter(std::string& out, unsigned code) {
  if (code == 0 || code > 0x10FFFF || (code >= 0xD800 && code < 0xE000)) return;
  const auto byte = [&](unsigned value) { out += static_cast<char>(value); };
  if (code < 0x80) {
    byte(code);
  } else if (code < 0x800) {
    byte(0xC0U | (code >> 6U));
    byte(0x80U | (code & 0x3FU));
  } else if (code < 0x10000) {
    byte(0xE0U | (code >> 12U));
    byte(0x80U | ((code >> 6U) & 0x3FU));
    byte(0x80U | (code & 0x3FU));
  } else {
    byte(0xF0U | (code >> 18U));
    byte(0x80U | ((code >> 12U) & 0x3FU));
    byte(0x80U | ((code >> 6U) & 0x3FU));
    byte(0x80U | (code & 0x3FU));
  }
}

// The named character references of HTML that dishes use.
constexpr std::array<std::pair<std::string_view, unsigned>, 24> kNamed = {{
    {"amp", '&'},       {"lt", '<'},        {"gt", '>'},       {"quot", '"'},    {"apos", '\''},
    {"nbsp", 0xA0},     {"frac12", 0xBD},   {"frac14", 0xBC},  {"frac34", 0xBE}, {"frac13", 0x2153},
    {"frac23", 0x2154}, {"frac18", 0x215B}, {"deg", 0xB0},     {"eacute", 0xE9}, {"egrave", 0xE8},
    {"ecirc", 0xEA},    {"icirc", 0xEE},    {"ntilde", 0xF1},  {"uuml", 0xFC},   {"ccedil", 0xE7},
    {"rsquo", 0x2019},  {"lsquo", 0x2018},  {"ndash", 0x2013}, {"times", 0xD7},
}};

// The letter of a reference at `i` ("&amp;"), and where it ends; or nothing read.
std::size_t reference(std::string_view text, std::size_t i, std::string& out) {
  const auto end = text.find(';', i);
  if (end == std::string_view::npos || end - i > 10 || end - i < 3) return i;
  const std::string_view name = text.substr(i + 1, end - i - 1);
  if (name[0] == '#') {
    const bool hex = name.size() > 2 && (name[1] == 'x' || name[1] == 'X');
    unsigned code = 0;
    for (const char c : name.substr(hex ? 2 : 1)) {
      unsigned digit = 0;
      if (c >= '0' && c <= '9')
        digit = static_cast<unsigned>(c - '0');
      else if (hex && c >= 'a' && c <= 'f')
        digit = static_cast<unsigned>(c - 'a') + 10;
      else if (hex && c >= 'A' && c <= 'F')
        digit = static_cast<unsigned>(c - 'A') + 10;
      else
        return i;
      code = code * (hex ? 16 : 10) + digit;
    }
    append_letter(out, code);
    return end + 1;
  }
  for (const auto& [word, code] : kNamed) {
    if (word != name) continue;
    append_letter(out, code);
    return end + 1;
  }
  return i;
}

bool ends_line(std::string_view tag) {
  static constexpr std::array<std::string_view, 10> kTags = {"p",  "br", "li", "div", "ol",
                                                             "ul", "tr", "h2", "h3",  "h4"};
  if (!tag.empty() && tag[0] == '/') tag.remove_prefix(1);
  std::size_t length = 0;
  while (length < tag.size() && (alpha(tag[length]) || (tag[length] >= '0' && tag[length] <= '9')))
    ++length;
  const std::string name = base::lower(tag.substr(0, length));
  return std::find(kTags.begin(), kTags.end(), name) != kTags.end();
}

}  // namespace

std::vector<std::string_view> json_ld_scripts(std::string_view page) {
  std::vector<std::string_view> out;
  std::size_t at = 0;
  for (;;) {
    const std::size_t open = find_small(page, "<script", at);
    if (open == std::string_view::npos) return out;
    const std::size_t body = page.find('>', open);
    if (body == std::string_view::npos) return out;
    const std::size_t end = find_small(page, "</script", body);
    if (end == std::string_view::npos) return out;
    if (base::lower(page.substr(open, body - open)).find("ld+json") != std::string::npos)
      out.push_back(page.substr(body + 1, end - body - 1));
    at = end + 1;
  }
}

std::string text_of_html(std::string_view html) {
  std::string out;
  for (std::size_t i = 0; i < html.size();) {
    const char c = html[i];
    if (c == '<' && i + 1 < html.size() &&
        (alpha(html[i + 1]) || html[i + 1] == '/' || html[i + 1] == '!')) {
      const auto end = html.find('>', i);
      if (end != std::string_view::npos) {
        if (ends_line(html.substr(i + 1, end - i - 1))) out += '\n';
        i = end + 1;
        continue;
      }
    }
    if (c == '&') {
      const std::size_t end = reference(html, i, out);
      if (end > i) {
        i = end;
        continue;
      }
    }
    out += c;
    ++i;
  }
  return base::trimmed(out);
}

}  // namespace kitchen
