// A school's file in a folder of its own that goes with the test. Names are of the invented school.
#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <memory>
#include <string>

#include "store/repository.h"

namespace store_test {

using namespace store;

inline Act by_hart(std::string what = "Typed in") { return {"hart", std::move(what)}; }

inline Draft dish(const std::string& name, int minutes = 5) {
  return {R"({"kind":"dish","version":1,"name":")" + name + R"(","minutes":)" +
              std::to_string(minutes) + "}",
          {},
          "",
          {}};
}

inline Draft lesson(const std::string& title, const std::string& day, std::vector<Ref> uses = {}) {
  return {R"({"kind":"lesson","version":1,"title":")" + title + R"(","date":")" + day + R"("})",
          std::move(uses),
          "",
          {}};
}

/// A folder of its own, removed at the end.
class Folder {
 public:
  Folder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "benchbell-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no folder for the test");
    path_ = pattern;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::string file(const std::string& name = "school.benchbell") const {
    return (path_ / name).string();
  }
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

inline std::unique_ptr<Repository> open(const std::string& path,
                                        const SqliteOptions& options = {}) {
  auto opened = open_sqlite(path, options);
  if (!opened) {
    ADD_FAILURE() << opened.problems()[0].code << ": " << opened.problems()[0].message;
    throw std::runtime_error("the file of the test does not open");
  }
  return std::move(opened).value();
}

/// A school that is open, with a clock the test sets.
class SchoolTest : public testing::Test {
 protected:
  Folder folder;
  // 2026-11-17T09:05:00Z: 20,774 days and 32,700 seconds since 1970.
  std::int64_t now = 1794906300;
  std::unique_ptr<Repository> school = again();

  SqliteOptions options() {
    SqliteOptions out;
    out.clock = [this] { return now; };
    return out;
  }
  std::unique_ptr<Repository> again() { return open(folder.file(), options()); }

  /// A document that must come to be.
  Document kept(Kind kind, const Draft& draft) {
    auto made = school->create(kind, {}, draft, by_hart());
    if (!made) {
      ADD_FAILURE() << made.problems()[0].code << ": " << made.problems()[0].message;
      return {};
    }
    return made.value();
  }
};

/// The document of a change that must not be a clash or a problem.
inline Document done(const base::Result<Changed>& changed) {
  if (!changed) {
    ADD_FAILURE() << changed.problems()[0].code << ": " << changed.problems()[0].message;
    return {};
  }
  if (const auto* document = std::get_if<Document>(&changed.value())) return *document;
  ADD_FAILURE() << "a clash";
  return {};
}

template <class T>
std::string code(const base::Result<T>& result) {
  return result ? "" : result.problems()[0].code;
}

}  // namespace store_test
