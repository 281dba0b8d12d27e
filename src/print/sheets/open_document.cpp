// libzip stays in this file. Names, order and the stored `mimetype` follow ISO/IEC 26300-1:2015 and
// part 3 of it; checked with LibreOffice.
#include "print/sheets/open_document.h"

#include <fmt/format.h>
#include <zip.h>

#include <memory>
#include <numeric>
#include <stdexcept>

#include "print/words.h"

namespace print::sheets {
namespace {

constexpr const char* kMime = "application/vnd.oasis.opendocument.text";
constexpr const char*
    kSpaces = R"( xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0")"
              R"( xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0")"
              R"( xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0")"
              R"( xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0")"
              R"( xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0")"
              R"( xmlns:dc="http://purl.org/dc/elements/1.1/")"
              R"( xmlns:meta="urn:oasis:names:tc:opendocument:xmlns:meta:1.0")"
              R"( office:version="1.3")";
constexpr const char* kXml = R"(<?xml version="1.0" encoding="UTF-8"?>)"
                             "\n";

constexpr double kPageWidth = 27.1;  // cm inside the margins of a wide A4 page

std::string spans(const Words& words) {
  // Words give Pango's markup; of it only the bold and the line end are ever used.
  std::string out;
  const std::string markup = words.markup();
  for (std::size_t i = 0; i < markup.size();) {
    if (markup.compare(i, 3, "<b>") == 0) {
      out += R"(<text:span text:style-name="Strong">)";
      i += 3;
    } else if (markup.compare(i, 4, "</b>") == 0) {
      out += "</text:span>";
      i += 4;
    } else if (markup[i] == '\n') {
      out += "<text:line-break/>";
      ++i;
    } else {
      out += markup[i++];
    }
  }
  return out;
}

std::string styles_xml() {
  return std::string(kXml) + "<office:document-styles" + kSpaces + ">" +
         R"(<office:styles>)"
         R"(<style:default-style style:family="paragraph"><style:text-properties)"
         R"( style:font-name="Noto Sans" fo:font-family="'Noto Sans'" fo:font-size="10pt")"
         R"( fo:language="en" fo:country="GB"/></style:default-style>)"
         R"(<style:style style:name="Standard" style:family="paragraph"><style:paragraph-properties)"
         R"( fo:margin-bottom="0.15cm"/></style:style>)"
         R"(<style:style style:name="Heading_20_1" style:display-name="Heading 1")"
         R"( style:family="paragraph" style:parent-style-name="Standard" style:default-outline-level="1">)"
         R"(<style:text-properties fo:font-size="18pt" fo:font-weight="bold"/></style:style>)"
         R"(<style:style style:name="Heading_20_2" style:display-name="Heading 2")"
         R"( style:family="paragraph" style:parent-style-name="Standard" style:default-outline-level="2">)"
         R"(<style:text-properties fo:font-size="13pt" fo:font-weight="bold"/></style:style>)"
         R"(<style:style style:name="Strong" style:family="text">)"
         R"(<style:text-properties fo:font-weight="bold"/></style:style>)"
         R"(</office:styles><office:automatic-styles>)"
         R"(<style:page-layout style:name="Wide"><style:page-layout-properties)"
         R"( fo:page-width="29.7cm" fo:page-height="21cm" style:print-orientation="landscape")"
         R"( fo:margin="1.3cm"/></style:page-layout></office:automatic-styles>)"
         R"(<office:master-styles><style:master-page style:name="Standard")"
         R"( style:page-layout-name="Wide"/></office:master-styles></office:document-styles>)";
}

std::string manifest_xml() {
  std::string
      out = std::string(kXml) +
            R"(<manifest:manifest xmlns:manifest=)"
            R"("urn:oasis:names:tc:opendocument:xmlns:manifest:1.0" manifest:version="1.3">)";
  out += fmt::format(
      R"(<manifest:file-entry manifest:full-path="/" manifest:version="1.3" manifest:media-type="{}"/>)",
      kMime);
  for (const char* name : {"content.xml", "styles.xml", "meta.xml"})
    out += fmt::format(
        R"(<manifest:file-entry manifest:full-path="{}" manifest:media-type="text/xml"/>)", name);
  return out + "</manifest:manifest>";
}

void add(zip_t* archive, const char* name, const std::string& text, bool stored) {
  zip_source_t* source = zip_source_buffer(archive, text.data(), text.size(), 0);
  const zip_int64_t index = source == nullptr
                                ? -1
                                : zip_file_add(archive, name, source, ZIP_FL_ENC_UTF_8);
  if (index < 0) throw std::logic_error("an OpenDocument part could not be added");
  const auto at = static_cast<zip_uint64_t>(index);
  zip_set_file_compression(archive, at, stored ? ZIP_CM_STORE : ZIP_CM_DEFLATE, 0);
  // One moment for all, the first a package can hold: the same document is the same bytes.
  zip_file_set_dostime(archive, at, 0, 0x21, 0);
}

}  // namespace

void OpenDocument::heading(const Words& words, int level) {
  body_ += fmt::format(
      R"(<text:h text:style-name="Heading_20_{0}" text:outline-level="{0}">{1}</text:h>)", level,
      spans(words));
}

void OpenDocument::paragraph(const Words& words) {
  body_ += R"(<text:p text:style-name="Standard">)" + spans(words) + "</text:p>";
}

void OpenDocument::table(const std::vector<double>& shares,
                         const std::vector<std::vector<Words>>& rows) {
  const int n = ++tables_;
  const double whole = std::accumulate(shares.begin(), shares.end(), 0.0);
  body_ += fmt::format(R"(<table:table table:name="Table{}">)", n);
  for (std::size_t c = 0; c < shares.size(); ++c) {
    styles_ += fmt::format(
        R"(<style:style style:name="T{}.{}" style:family="table-column">)"
        R"(<style:table-column-properties style:column-width="{:.2f}cm"/></style:style>)",
        n, c, kPageWidth * shares[c] / whole);
    body_ += fmt::format(R"(<table:table-column table:style-name="T{}.{}"/>)", n, c);
  }
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (r == 0) body_ += "<table:table-header-rows>";
    body_ += "<table:table-row>";
    for (const Words& cell : rows[r]) {
      body_ += R"(<table:table-cell table:style-name="Cell" office:value-type="string">)";
      body_ += R"(<text:p text:style-name="Standard">)";
      body_ += r == 0 ? R"(<text:span text:style-name="Strong">)" + spans(cell) + "</text:span>"
                      : spans(cell);
      body_ += "</text:p></table:table-cell>";
    }
    body_ += "</table:table-row>";
    if (r == 0) body_ += "</table:table-header-rows>";
  }
  body_ += "</table:table>";
}

std::string OpenDocument::bytes() const {
  const std::string content =
      std::string(kXml) + "<office:document-content" + kSpaces + "><office:automatic-styles>" +
      styles_ +
      R"(<style:style style:name="Cell" style:family="table-cell"><style:table-cell-properties)"
      R"( fo:border="0.5pt solid #000000" fo:padding="0.1cm"/></style:style>)"
      "</office:automatic-styles><office:body><office:text>" +
      body_ + "</office:text></office:body></office:document-content>";
  const std::string meta = std::string(kXml) + "<office:document-meta" + kSpaces +
                           "><office:meta><meta:generator>Benchbell</meta:generator><dc:title>" +
                           escaped(title_) + "</dc:title></office:meta></office:document-meta>";
  const std::string mime = kMime, styles = styles_xml(), manifest = manifest_xml();

  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* memory = zip_source_buffer_create(nullptr, 0, 0, &error);
  if (memory == nullptr) throw std::logic_error("no memory for an OpenDocument");
  zip_source_keep(memory);  // read after the archive is closed
  const std::unique_ptr<zip_source_t, void (*)(zip_source_t*)> owned(memory, zip_source_free);
  zip_t* archive = zip_open_from_source(memory, ZIP_TRUNCATE, &error);
  if (archive == nullptr) throw std::logic_error("an OpenDocument could not be begun");
  add(archive, "mimetype", mime, true);
  add(archive, "content.xml", content, false);
  add(archive, "styles.xml", styles, false);
  add(archive, "meta.xml", meta, false);
  add(archive, "META-INF/manifest.xml", manifest, false);
  if (zip_close(archive) != 0) {
    zip_discard(archive);
    throw std::logic_error("an OpenDocument could not be written");
  }
  std::string out;
  zip_stat_t stat;
  if (zip_source_open(memory) != 0 || zip_source_stat(memory, &stat) != 0)
    throw std::logic_error("an OpenDocument could not be read back");
  out.resize(stat.size);
  if (zip_source_read(memory, out.data(), stat.size) != static_cast<zip_int64_t>(stat.size))
    throw std::logic_error("an OpenDocument could not be read back");
  zip_source_close(memory);
  return out;
}

}  // namespace print::sheets
