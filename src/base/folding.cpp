#include "base/folding.h"

#include <unicode/normalizer2.h>
#include <unicode/uchar.h>
#include <unicode/ucnv.h>
#include <unicode/unistr.h>

#include <stdexcept>

#include "base/text.h"

namespace base {
namespace {

const icu::Normalizer2& normalizer(bool compatibility) {
  UErrorCode error = U_ZERO_ERROR;
  const icu::Normalizer2* found = compatibility ? icu::Normalizer2::getNFKDInstance(error)
                                                : icu::Normalizer2::getNFDInstance(error);
  if (U_FAILURE(error)) throw std::logic_error("the Unicode tables of the system are missing");
  return *found;
}

bool plain(std::string_view text) {
  for (const char c : text) {
    if (static_cast<unsigned char>(c) >= 0x80) return false;
  }
  return true;
}

bool invisible(UChar32 c) {
  const auto kind = u_charType(c);
  return kind == U_FORMAT_CHAR || kind == U_CONTROL_CHAR || kind == U_NON_SPACING_MARK;
}

// Fractions such as U+00BD would fall apart into "1", U+2044, "2": "1½" would read as 11/2.
bool keeps_form(UChar32 c) { return u_charType(c) == U_OTHER_NUMBER; }

std::string squeezed(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\t' || c == '\n' || c == '\r';
    if (!space) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

}  // namespace

std::string folded(std::string_view text) {
  if (plain(text)) return squeezed(lower(text));
  const icu::UnicodeString whole = icu::UnicodeString::fromUTF8(
      icu::StringPiece(text.data(), static_cast<std::int32_t>(text.size())));
  icu::UnicodeString out;
  for (std::int32_t i = 0; i < whole.length();) {
    const UChar32 c = whole.char32At(i);
    i += U16_LENGTH(c);
    if (keeps_form(c)) {
      out.append(c);
      continue;
    }
    UErrorCode error = U_ZERO_ERROR;
    icu::UnicodeString parts = normalizer(true).normalize(icu::UnicodeString(c), error);
    parts.foldCase();
    for (std::int32_t j = 0; j < parts.length();) {
      const UChar32 part = parts.char32At(j);
      j += U16_LENGTH(part);
      if (part == '\n' || part == '\t' || part == '\r' || u_isUWhiteSpace(part)) {
        out.append(static_cast<UChar32>(' '));
      } else if (part == 0x2019 || part == 0x2018 || part == 0x02BC) {
        out.append(static_cast<UChar32>('\''));
      } else if (!invisible(part)) {
        out.append(part);
      }
    }
  }
  std::string utf8;
  out.toUTF8String(utf8);
  return squeezed(utf8);
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out;
  std::string word;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    const bool part = byte >= 0x80 || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '\'';
    if (part) {
      word += c;
    } else if (!word.empty()) {
      out.push_back(std::move(word));
      word.clear();
    }
  }
  if (!word.empty()) out.push_back(std::move(word));
  return out;
}

std::optional<Decoded> decoded(std::string_view bytes) {
  const auto from = [](const char* name, std::string_view in) -> std::optional<std::string> {
    UErrorCode error = U_ZERO_ERROR;
    UConverter* converter = ucnv_open(name, &error);
    if (U_FAILURE(error)) return std::nullopt;
    // Broken pairs stop the reading; they must not turn into other letters silently.
    ucnv_setToUCallBack(converter, UCNV_TO_U_CALLBACK_STOP, nullptr, nullptr, nullptr, &error);
    const icu::UnicodeString text(in.data(), static_cast<std::int32_t>(in.size()), converter,
                                  error);
    ucnv_close(converter);
    if (U_FAILURE(error)) return std::nullopt;
    std::string out;
    text.toUTF8String(out);
    return out;
  };
  const auto begins = [&](std::string_view mark) { return bytes.starts_with(mark); };
  std::optional<std::string> text;
  Encoding was = Encoding::kUtf8;
  if (begins("\xFF\xFE") || begins("\xFE\xFF")) {
    was = Encoding::kUtf16;
    text = from(begins("\xFF\xFE") ? "UTF-16LE" : "UTF-16BE", bytes.substr(2));
  } else if (begins("\xEF\xBB\xBF") || !not_utf8(bytes)) {
    text = std::string(begins("\xEF\xBB\xBF") ? bytes.substr(3) : bytes);
    if (not_utf8(*text)) text.reset();
  }
  if (!text && was == Encoding::kUtf8) {
    was = Encoding::kWindows1252;
    text = from("windows-1252", bytes);
  }
  if (!text) return std::nullopt;
  Decoded out{{}, was};
  for (std::size_t i = 0; i < text->size(); ++i) {
    const char c = (*text)[i];
    if (c != '\r') {
      out.text += c;
    } else if (i + 1 == text->size() || (*text)[i + 1] != '\n') {
      out.text += '\n';
    }
  }
  return out;
}

}  // namespace base
