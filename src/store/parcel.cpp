#include "store/parcel.h"

#include "base/text.h"
#include "store/contents.h"
#include "store/exchange.h"
#include "store/zip_file.h"

namespace store {

using base::Problem;
using base::Problems;
using base::say;

namespace {

constexpr std::size_t kMostProblems = 100;

std::optional<Problem> wrong_name(const std::string& name) {
  const auto problem = [&name](const char* code, std::string message, std::string remedy) {
    return Problem{code, base::not_utf8(name) ? "" : name, "", std::move(message),
                   std::move(remedy)};
  };
  const bool trick = base::not_utf8(name) || name.find('\\') != std::string::npos ||
                     name.find("..") != std::string::npos || name.starts_with('/') ||
                     name.find(':') != std::string::npos;
  if (trick) {
    return problem("zip.path", "A file in the zip has a name that points out of the zip.",
                   "Do not use this zip; ask whoever gave it to you for one made by Benchbell.");
  }
  const auto slash = name.find('/');
  if (slash == std::string::npos || !kind_named(name.substr(0, slash))) {
    std::vector<std::string> folders;
    for (const KindName& each : kKinds) folders.emplace_back(each.name);
    return problem(
        "zip.kind",
        say("The file ", base::in_quotes(name), " lies in no folder that Benchbell knows."),
        say("Take it out of the zip, or put it into one of the folders ",
            base::joined(folders, "or"), "."));
  }
  const std::string file = name.substr(slash + 1);
  if (!file.ends_with(".json") || !good_id(file.substr(0, file.size() - 5))) {
    return problem("zip.name",
                   say("The file ", base::in_quotes(name), " has a name that cannot be kept."),
                   "Name it with small letters, digits and hyphens, like dish/fruit-scones.json.");
  }
  return std::nullopt;
}

/// Drafts by their names, without what contents.json says.
Problems take_in(std::vector<ZipEntry>& entries, Parcel& parcel, std::string& contents) {
  Problems problems;
  bool listed = false;
  for (ZipEntry& entry : entries) {
    if (problems.size() >= kMostProblems) break;
    bool again = false;
    if (entry.name == kContentsName) {
      again = std::exchange(listed, true);
      contents = std::move(entry.text);
    } else if (auto problem = wrong_name(entry.name)) {
      problems.push_back(*std::move(problem));
    } else {
      const auto ref = ref_in(entry.name.substr(0, entry.name.size() - 5));
      Draft draft;
      draft.body = std::move(entry.text);
      again = !parcel.drafts.emplace(ref.value(), std::move(draft)).second;
    }
    if (again) {
      problems.push_back({"zip.twice", entry.name, "",
                          say("The file ", base::in_quotes(entry.name), " is in the zip twice."),
                          "Take one of the two out of the zip."});
    }
  }
  parcel.has_contents = listed;
  return problems;
}

Problems apply_contents(const std::string& text, Parcel& parcel) {
  auto contents = read_contents(text);
  if (!contents) return contents.problems();
  Problems problems;
  for (const Listed& row : contents.value()) {
    const auto draft = parcel.drafts.find(row.ref);
    if (draft == parcel.drafts.end()) {
      problems.push_back({"zip.contents", std::string(kContentsName), "",
                          say("The list in the zip names ", base::in_quotes(ref_text(row.ref)),
                              ", but that file is not in it."),
                          "Fetch the zip again; a part of it is missing."});
      if (problems.size() >= kMostProblems) break;
      continue;
    }
    draft->second.title = row.title;
    draft->second.day = row.day;
    draft->second.links = row.links;
  }
  return problems;
}

}  // namespace

base::Result<Parcel> open_parcel(std::string_view zip) {
  auto read = read_zip(zip);
  if (!read) return read.problems();
  std::vector<ZipEntry> entries = std::move(read).value();
  Parcel parcel;
  std::string contents;
  Problems problems = take_in(entries, parcel, contents);
  if (problems.empty() && parcel.has_contents) problems = apply_contents(contents, parcel);
  for (const auto& [ref, draft] : parcel.drafts) {
    if (problems.size() >= kMostProblems) break;
    auto ready = read_draft(ref.kind, draft);
    if (ready) {
      parcel.ready.emplace(ref, std::move(ready).value());
      continue;
    }
    for (Problem problem : ready.problems()) {
      problem.file = ref_text(ref) + ".json";
      problems.push_back(std::move(problem));
    }
  }
  if (problems.empty() && parcel.drafts.empty()) {
    problems.push_back({"zip.empty", "", "", "There is no document in this zip.",
                        "Choose a zip that Benchbell wrote."});
  }
  if (!problems.empty()) return problems;
  return parcel;
}

}  // namespace store
