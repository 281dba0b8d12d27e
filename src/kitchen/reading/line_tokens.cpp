#include "kitchen/reading/line_tokens.h"

#include <array>
#include <optional>

#include "base/folding.h"
#include "base/text.h"

namespace kitchen {
namespace {

using base::Ratio;

struct Letter {
  char32_t code = 0;
  std::size_t bytes = 1;
};

Letter letter_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
  };
  const unsigned first = byte(at);
  if (first < 0x80) return {first, 1};
  if (first < 0xE0) return {((first & 0x1FU) << 6U) | (byte(at + 1) & 0x3FU), 2};
  if (first < 0xF0) {
    return {((first & 0x0FU) << 12U) | ((byte(at + 1) & 0x3FU) << 6U) | (byte(at + 2) & 0x3FU), 3};
  }
  return {((first & 0x07U) << 18U) | ((byte(at + 1) & 0x3FU) << 12U) |
              ((byte(at + 2) & 0x3FU) << 6U) | (byte(at + 3) & 0x3FU),
          4};
}

struct Vulgar {
  char32_t code;
  std::string_view text;
};
constexpr std::array<Vulgar, 18> kVulgar = {{
    {0xBC, "1/4"},
    {0xBD, "1/2"},
    {0xBE, "3/4"},
    {0x2150, "1/7"},
    {0x2151, "1/9"},
    {0x2152, "1/10"},
    {0x2153, "1/3"},
    {0x2154, "2/3"},
    {0x2155, "1/5"},
    {0x2156, "2/5"},
    {0x2157, "3/5"},
    {0x2158, "4/5"},
    {0x2159, "1/6"},
    {0x215A, "5/6"},
    {0x215B, "1/8"},
    {0x215C, "3/8"},
    {0x215D, "5/8"},
    {0x215E, "7/8"},
}};

bool digit(char c) { return c >= '0' && c <= '9'; }
bool letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

bool space_mark(char32_t c) {
  return c == '\t' || c == '\n' || c == '\r' || c == 0xA0 || (c >= 0x2000 && c <= 0x200A) ||
         c == 0x202F || c == 0x205F || c == 0x3000;
}
bool unseen(char32_t c) {
  return c < 0x20 || c == 0x7F || (c >= 0x80 && c < 0xA0) || c == 0xAD ||
         (c >= 0x200B && c <= 0x200F) || (c >= 0x202A && c <= 0x202E) ||
         (c >= 0x2060 && c <= 0x206F) || (c >= 0xFE00 && c <= 0xFE0F) || c == 0xFEFF;
}
bool picture(char32_t c) {
  return (c >= 0x2190 && c <= 0x2BFF) || (c >= 0x1F000 && c <= 0x1FAFF) || c == 0x2022 ||
         c == 0x2023 || c == 0x2043 || c == 0x204C || c == 0xB7 || c == 0xAE || c == 0xA9 ||
         c == 0x2122 || (c >= 0xE0000 && c <= 0xE007F);
}

// What is written instead of the letter; nothing = the letter itself.
std::optional<std::string> instead(char32_t c, const std::string& so_far) {
  for (const Vulgar& each : kVulgar) {
    if (each.code != c) continue;
    const bool after_digit = !so_far.empty() && digit(so_far.back());
    std::string text(after_digit ? " " : "");
    text += each.text;
    return text;
  }
  if (space_mark(c)) return " ";
  if (unseen(c)) return "";
  if (c >= 0x660 && c <= 0x669) return std::string(1, static_cast<char>('0' + (c - 0x660)));
  if (c >= 0x6F0 && c <= 0x6F9) return std::string(1, static_cast<char>('0' + (c - 0x6F0)));
  if (c >= 0x2010 && c <= 0x2013) return "-";
  if (c == 0x2014 || c == 0x2015) return " - ";
  if (c == 0x2212) return "-";
  if (c == 0x2044 || c == 0x2215) return "/";
  if (c == 0xD7 || c == 0x2715 || c == 0x2716) return "x";
  if (c == 0x2018 || c == 0x2019 || c == 0x2BC || c == 0x60 || c == 0xB4) return "'";
  if (c == 0x201C || c == 0x201D) return "\"";
  if (c == 0x2026) return "...";
  if (picture(c)) return " ";
  return std::nullopt;
}

Ratio power_of_ten(std::size_t places) {
  std::int64_t power = 1;
  for (std::size_t i = 0; i < places; ++i) power *= 10;
  return Ratio(power);
}

std::int64_t whole(std::string_view digits) {
  std::int64_t value = 0;
  for (const char c : digits) value = value * 10 + (c - '0');
  return value;
}

class Lexer {
 public:
  explicit Lexer(std::string_view line) : line_(line) {}

  std::vector<LineToken> tokens() {
    while (at_ < line_.size()) {
      if (line_[at_] == ' ') {
        spaced_ = true;
        ++at_;
      } else if (digit(line_[at_]) || (line_[at_] == '.' && digit_at(at_ + 1) && !after_word())) {
        number();
      } else if (letter(line_[at_])) {
        word();
      } else if (const std::size_t end = leader_end(); end > at_) {
        spaced_ = true;
        push(LineToken::Kind::kSign, end).word.assign(1, '-');
        spaced_ = true;
      } else {
        push(LineToken::Kind::kSign, at_ + 1);
      }
    }
    return std::move(out_);
  }

 private:
  std::string_view line_;
  std::size_t at_ = 0;
  bool spaced_ = false;
  std::vector<LineToken> out_;

  // Dots or lines that lead the eye from the food to its amount: "Flour ........ 200 g".
  std::size_t leader_end() const {
    constexpr std::size_t kFewest = 4;
    const char mark = line_[at_];
    if (mark != '.' && mark != '_' && mark != '-') return at_;
    std::size_t end = at_, marks = 0;
    while (end < line_.size() && (line_[end] == mark || line_[end] == ' ')) {
      if (line_[end] == mark) ++marks;
      ++end;
    }
    if (marks < kFewest) return at_;
    while (line_[end - 1] == ' ') --end;
    return end;
  }

  bool digit_at(std::size_t i) const { return i < line_.size() && digit(line_[i]); }
  bool after_word() const { return at_ > 0 && line_[at_ - 1] != ' '; }

  std::size_t digits_from(std::size_t i) const {
    while (digit_at(i)) ++i;
    return i;
  }

  LineToken& push(LineToken::Kind kind, std::size_t end) {
    LineToken token;
    token.kind = kind;
    token.text = std::string(line_.substr(at_, end - at_));
    token.word = kind == LineToken::Kind::kWord ? base::folded(token.text) : token.text;
    token.spaced = spaced_;
    token.begin = at_;
    token.end = end;
    out_.push_back(std::move(token));
    at_ = end;
    spaced_ = false;
    return out_.back();
  }

  void number() {
    constexpr std::size_t kMostDigits = 9;
    std::size_t end = digits_from(at_);
    if (end - at_ > kMostDigits) {
      push(LineToken::Kind::kSign, end);
      return;
    }
    Ratio value(whole(line_.substr(at_, end - at_)));
    bool bar = false;
    if (end < line_.size() && (line_[end] == '.' || line_[end] == ',') && digit_at(end + 1)) {
      const std::size_t tail = digits_from(end + 1);
      const std::size_t places = tail - end - 1;
      // "1,000 g" is a thousand; "1,5 dl" can only be one and a half.
      if (line_[end] == ',' && places == 3 && end > at_ && !(value == Ratio(0))) {
        value = value * Ratio(1000) + Ratio(whole(line_.substr(end + 1, 3)));
        end = tail;
      } else if (places <= 6 && (line_[end] == '.' || places <= 2)) {
        value += Ratio(whole(line_.substr(end + 1, places))) / power_of_ten(places);
        end = tail;
      }
    } else if (const auto below = denominator(end)) {
      value = value / Ratio(below->first);
      end = below->second;
      bar = true;
    }
    // ".12345678": a point and more figures than anybody weighs. The point alone, so that the line
    // goes on.
    if (end == at_) {
      push(LineToken::Kind::kSign, at_ + 1);
      return;
    }
    LineToken& token = push(LineToken::Kind::kNumber, end);
    token.value = value;
    token.fraction = bar;
  }

  // "/4", "/ 4": what stands below a fraction bar, and where it ends.
  std::optional<std::pair<std::int64_t, std::size_t>> denominator(std::size_t i) const {
    if (i >= line_.size() || line_[i] != '/' || !digit_at(i + 1)) return std::nullopt;
    const std::size_t end = digits_from(i + 1);
    if (end - i > 3) return std::nullopt;
    const std::int64_t below = whole(line_.substr(i + 1, end - i - 1));
    if (below < 2 || below > 16) return std::nullopt;
    return std::pair{below, end};
  }

  void word() {
    std::size_t end = at_;
    while (end < line_.size()) {
      const char c = line_[end];
      const bool joins = (c == '-' || c == '\'') && end + 1 < line_.size() &&
                         letter(line_[end + 1]);
      const bool ends_with_mark = c == '\'' && end > at_;
      if (!letter(c) && !joins && !ends_with_mark) break;
      ++end;
    }
    push(LineToken::Kind::kWord, end);
  }
};

}  // namespace

bool at(const std::vector<LineToken>& tokens, std::size_t i, std::string_view word) {
  return i < tokens.size() && tokens[i].is(word);
}

std::string tidied_line(std::string_view line) {
  std::string out;
  for (std::size_t i = 0; i < line.size();) {
    const Letter each = letter_at(line, i);
    const std::string_view bytes = line.substr(i, each.bytes);
    i += each.bytes;
    if (each.code >= 0x20 && each.code < 0x7F && each.code != '`') {
      out += static_cast<char>(each.code);
    } else if (const auto other = instead(each.code, out)) {
      out += *other;
    } else {
      out += bytes;
    }
  }
  std::string squeezed;
  for (const char c : out) {
    if (c != ' ' || (!squeezed.empty() && squeezed.back() != ' ')) squeezed += c;
  }
  while (!squeezed.empty() && squeezed.back() == ' ') squeezed.pop_back();
  return squeezed;
}

std::vector<LineToken> line_tokens(std::string_view tidied) { return Lexer(tidied).tokens(); }

std::string trimmed_marks(std::string_view text) {
  constexpr std::string_view kMarks = " ,;:-*|.~=";
  const auto first = text.find_first_not_of(kMarks);
  if (first == std::string_view::npos) return "";
  return std::string(text.substr(first, text.find_last_not_of(kMarks) - first + 1));
}

std::string words_between(std::string_view tidied, const std::vector<LineToken>& tokens,
                          std::size_t from, std::size_t to) {
  if (from >= to || from >= tokens.size()) return "";
  return trimmed_marks(tidied.substr(tokens[from].begin, tokens[to - 1].end - tokens[from].begin));
}

}  // namespace kitchen
