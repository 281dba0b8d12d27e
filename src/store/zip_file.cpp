#include "store/zip_file.h"

#include <zip.h>

#include <algorithm>
#include <cstdint>
#include <memory>
#include <optional>

#include "base/text.h"
#include "store/document.h"
#include "store/exchange.h"

namespace store {

using base::Problem;
using base::say;

namespace {

constexpr zip_uint16_t kFirstDay = (1U << 5U) | 1U;   // 1 January 1980 as MS-DOS wrote dates
constexpr zip_uint32_t kPlainFile = 0100644U << 16U;  // as Unix has it: a file, readable by all

struct Discard {
  void operator()(zip_t* archive) const { zip_discard(archive); }
  void operator()(zip_source_t* source) const { zip_source_free(source); }
  void operator()(zip_file_t* file) const { zip_fclose(file); }
};
using Archive = std::unique_ptr<zip_t, Discard>;
using Source = std::unique_ptr<zip_source_t, Discard>;
using Opened = std::unique_ptr<zip_file_t, Discard>;

Problem not_written() {
  return {"zip.not_written", "", "", "The zip could not be made.",
          "Close other programs on this machine and try again."};
}

Problem not_a_zip() {
  return {"zip.not_a_zip", "", "", "This is not a zip file, or only a part of one.",
          "Choose a zip that Benchbell wrote, and fetch it again if it came over the network."};
}

Problem bomb(std::size_t most) {
  return {"zip.bomb", "", "",
          say("What is packed in this zip is larger than ", most >> 20U,
              " MB, more than a school's documents ever are."),
          "Choose a zip that Benchbell wrote. If this is one, take it in by parts."};
}

Problem unreadable(const std::string& name) {
  return {"zip.unreadable", "", "",
          say("The part ", base::in_quotes(name), " of the zip is damaged."),
          "Fetch the zip again from where it came from."};
}

/// One entry into the archive. False if it could not be done.
bool add(zip_t* archive, const ZipEntry& entry) {
  zip_source_t* text = zip_source_buffer(archive, entry.text.data(), entry.text.size(), 0);
  if (text == nullptr) return false;
  const zip_int64_t index = zip_file_add(archive, entry.name.c_str(), text, ZIP_FL_ENC_UTF_8);
  if (index < 0) {
    zip_source_free(text);  // not taken over
    return false;
  }
  const auto place = static_cast<zip_uint64_t>(index);
  return zip_file_set_dostime(archive, place, 0, kFirstDay, 0) == 0 &&
         zip_set_file_compression(archive, place, ZIP_CM_DEFLATE, 9) == 0 &&
         zip_file_set_external_attributes(archive, place, 0, ZIP_OPSYS_UNIX, kPlainFile) == 0;
}

std::optional<std::string> all_bytes(zip_source_t* source) {
  zip_stat_t stat;
  zip_stat_init(&stat);
  if (zip_source_stat(source, &stat) != 0 || (stat.valid & ZIP_STAT_SIZE) == 0) return std::nullopt;
  if (zip_source_open(source) != 0) return std::nullopt;
  std::string bytes(stat.size, '\0');
  const zip_int64_t got = zip_source_read(source, bytes.data(), bytes.size());
  zip_source_close(source);
  if (got < 0 || static_cast<zip_uint64_t>(got) != stat.size) return std::nullopt;
  return bytes;
}

bool passed_over(std::string_view name) {
  return name.ends_with('/') || name.starts_with("__MACOSX/") || name == ".DS_Store" ||
         name.ends_with("/.DS_Store");
}

/// What a zip says of its own size; an honest one that is too large is refused before any work.
bool claims_too_much(zip_t* archive, zip_uint64_t count) {
  std::uint64_t all = 0;
  for (zip_uint64_t i = 0; i < count; ++i) {
    zip_stat_t stat;
    zip_stat_init(&stat);
    if (zip_stat_index(archive, i, 0, &stat) != 0 || (stat.valid & ZIP_STAT_SIZE) == 0) continue;
    if (stat.size > kLargestUnpacked - all) return true;
    all += stat.size;
  }
  return false;
}

/// But that is only a claim: never more than `most` bytes are unpacked.
base::Result<std::string> unpacked(zip_t* archive, zip_uint64_t index, const std::string& name,
                                   std::size_t most) {
  const Opened file(zip_fopen_index(archive, index, 0));
  if (!file) return unreadable(name);
  std::string text;
  std::string part(64U << 10U, '\0');
  while (true) {
    const zip_int64_t got = zip_fread(file.get(), part.data(), part.size());
    if (got < 0) return unreadable(name);  // also a wrong checksum
    if (got == 0) return text;
    text.append(part, 0, static_cast<std::size_t>(got));
    if (text.size() > most) return bomb(most);
  }
}

}  // namespace

base::Result<std::string> write_zip(const std::vector<ZipEntry>& entries) {
  zip_error_t error;
  zip_error_init(&error);
  const Source memory(zip_source_buffer_create(nullptr, 0, 0, &error));
  if (!memory) return not_written();
  zip_source_keep(memory.get());  // the archive has a share of it, and so have we
  Archive archive(zip_open_from_source(memory.get(), ZIP_TRUNCATE, &error));
  if (!archive) {
    zip_source_free(memory.get());
    return not_written();
  }
  for (const ZipEntry& entry : entries) {
    if (!add(archive.get(), entry)) return not_written();
  }
  if (zip_close(archive.get()) != 0) return not_written();
  static_cast<void>(archive.release());  // closing has freed it
  auto bytes = all_bytes(memory.get());
  if (!bytes) return not_written();
  return *std::move(bytes);
}

base::Result<std::vector<ZipEntry>> read_zip(std::string_view bytes) {
  if (bytes.size() > kLargestZip) {
    return Problem{"zip.too_big", "", "",
                   say("The zip is larger than ", kLargestZip >> 20U, " MB."),
                   "Choose a zip that Benchbell wrote. If this is one, take it in by parts."};
  }
  if (bytes.empty()) return not_a_zip();  // the library takes nothing for a zip of nothing
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* memory = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
  if (memory == nullptr) return not_a_zip();
  const Archive archive(zip_open_from_source(memory, ZIP_RDONLY, &error));
  if (!archive) {
    zip_source_free(memory);
    return not_a_zip();
  }
  const zip_int64_t count = zip_get_num_entries(archive.get(), 0);
  if (count > static_cast<zip_int64_t>(kMostEntries)) {
    return Problem{
        "zip.too_many", "", "",
        say("The zip holds ", count, " files; at most ", kMostEntries, " can be taken in at once."),
        "Take it in by parts."};
  }
  if (claims_too_much(archive.get(), static_cast<zip_uint64_t>(count)))
    return bomb(kLargestUnpacked);
  std::vector<ZipEntry> entries;
  std::size_t left = kLargestUnpacked;
  for (zip_int64_t i = 0; i < count; ++i) {
    const auto index = static_cast<zip_uint64_t>(i);
    zip_stat_t stat;
    zip_stat_init(&stat);
    if (zip_stat_index(archive.get(), index, 0, &stat) != 0 || (stat.valid & ZIP_STAT_NAME) == 0) {
      return not_a_zip();
    }
    const std::string name = stat.name;
    if (passed_over(name)) continue;
    if ((stat.valid & ZIP_STAT_ENCRYPTION_METHOD) != 0 && stat.encryption_method != ZIP_EM_NONE) {
      return Problem{"zip.encrypted", "", "", "The zip is locked with a password.",
                     "Unpack it with its password first, and pack the files again without one."};
    }
    auto text = unpacked(archive.get(), index, name, std::min(left, kLargestBody));
    if (!text) return text.problems();
    left -= text.value().size();
    entries.push_back({name, std::move(text).value()});
  }
  return entries;
}

}  // namespace store
