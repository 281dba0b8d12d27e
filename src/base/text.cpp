#include "base/text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <numeric>

namespace base {

std::string number_text(double value) {
  std::array<char, 40> buffer{};
  const auto done = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
  return {buffer.data(), done.ptr};
}

std::optional<double> number_in(std::string_view text) {
  double value = 0;
  const auto done = std::from_chars(text.data(), text.data() + text.size(), value);
  if (done.ec != std::errc{} || done.ptr != text.data() + text.size()) return std::nullopt;
  return value;
}

std::string minutes_number(Seconds time) {
  return number_text(static_cast<double>(time.count()) / 60.0);
}

std::string minutes_text(Seconds time) {
  const auto tenths = (time.count() * 10 + (time.count() < 0 ? -30 : 30)) / 60;  // no false
                                                                                 // precision in a
                                                                                 // sentence
  return number_text(static_cast<double>(tenths) / 10.0) + " min";
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t kMost = 60;
  std::string shown = first_letters(text, kMost);
  const bool cut = shown.size() < text.size();
  for (char& c : shown) {
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
  }
  return say("'", shown, cut ? "…'" : "'");
}

std::string joined(const std::vector<std::string>& parts, std::string_view last) {
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) out += i + 1 == parts.size() ? say(" ", last, " ") : ", ";
    out += parts[i];
  }
  return out;
}

std::string counted(long long n, std::string_view one, std::string_view many) {
  return say(n, " ", n == 1 ? one : many);
}

namespace {

bool starts_letter(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

}  // namespace

std::size_t letters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_letter));
}

std::string first_letters(std::string_view text, std::size_t most) {
  std::size_t seen = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (starts_letter(text[i]) && ++seen > most) return std::string(text.substr(0, i));
  }
  return std::string(text);
}

std::optional<std::size_t> not_utf8(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  for (std::size_t i = 0; i < text.size();) {
    const unsigned lead = byte(i);
    std::size_t more = 0;
    if (lead < 0x80) {
      ++i;
      continue;
    }
    if (lead >= 0xC2 && lead <= 0xDF)
      more = 1;
    else if (lead >= 0xE0 && lead <= 0xEF)
      more = 2;
    else if (lead >= 0xF0 && lead <= 0xF4)
      more = 3;
    else
      return i;
    if (i + more >= text.size()) return i;
    for (std::size_t k = 1; k <= more; ++k) {
      if (byte(i + k) < 0x80 || byte(i + k) > 0xBF) return i;
    }
    const unsigned next = byte(i + 1);
    if ((lead == 0xE0 && next < 0xA0) || (lead == 0xED && next > 0x9F) ||
        (lead == 0xF0 && next < 0x90) || (lead == 0xF4 && next > 0x8F)) {
      return i;
    }
    i += more + 1;
  }
  return std::nullopt;
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

bool one_of(std::string_view word, std::initializer_list<std::string_view> all) {
  return std::find(all.begin(), all.end(), word) != all.end();
}

bool blank(std::string_view text) { return text.find_first_not_of(' ') == std::string_view::npos; }

std::string trimmed(std::string_view text) {
  constexpr std::string_view kSpaces = " \t\n\r";
  const auto first = text.find_first_not_of(kSpaces);
  if (first == std::string_view::npos) return "";
  return std::string(text.substr(first, text.find_last_not_of(kSpaces) - first + 1));
}

std::vector<std::string> parts(std::string_view text, char separator) {
  std::vector<std::string> out;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(separator, at), text.size());
    std::string part = trimmed(text.substr(at, end - at));
    if (!part.empty()) out.push_back(std::move(part));
    at = end + 1;
  }
  return out;
}

std::string replaced(std::string_view text, char from, char to) {
  std::string out(text);
  std::replace(out.begin(), out.end(), from, to);
  return out;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  constexpr std::size_t kMost = 64;
  a = a.substr(0, kMost);
  b = b.substr(0, kMost);
  std::vector<std::size_t> before(b.size() + 1);
  std::vector<std::size_t> above(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(above.begin(), above.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({change, above[j] + 1, row[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    std::swap(before, above);
    std::swap(above, row);
  }
  return above[b.size()];
}

std::optional<std::string> nearest(std::string_view word, const std::vector<std::string>& known) {
  const std::string wanted = lower(word);
  std::optional<std::string> best;
  std::size_t least = std::max<std::size_t>(2, word.size() / 3) + 1;
  for (const std::string& candidate : known) {
    const std::string plain = lower(candidate);
    std::size_t distance = edit_distance(wanted, plain);
    // "proving" for "prove in fridge" and "minute" for "least_minutes": a long common beginning is
    // near enough.
    const bool begins = wanted.size() >= 4 && plain.size() > wanted.size() &&
                        plain.starts_with(wanted);
    if (begins) distance = std::min<std::size_t>(distance, 2);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

}  // namespace base
