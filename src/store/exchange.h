// Everything a school has typed in, as one zip of its documents: to keep, to move house, to give a
// colleague a dish. People, passwords, sessions, settings and history are never in it.
//
// Inside: contents.json (titles, days and links) and a file a document, "dish/fruit-scones.json".
// A zip made by hand needs no contents.json. A zip is first looked at (new, same, differs), then
// taken in all or nothing. Not a backup: that is Repository::back_up.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "store/repository.h"

namespace store {

inline constexpr std::size_t kLargestZip = 64U << 20U;        ///< bytes, packed
inline constexpr std::size_t kLargestUnpacked = 256U << 20U;  ///< bytes, all entries together
inline constexpr std::size_t kMostEntries = 20'000;

/// The zip's bytes. The same documents give the same bytes: fixed dates, sorted entries, one layout
/// of JSON with its members in the order they were written.
/// kinds: only these; empty: all. A link out of what is exported is left out.
base::Result<std::string> export_zip(Repository&, const std::vector<Kind>& kinds = {});

enum class Arrival : std::uint8_t {
  kNew,      ///< not here yet, or removed here
  kSame,     ///< here already, with the same content
  kTwin,     ///< not here under this id, but the same content is, under `like`
  kDiffers,  ///< here with other content
};
std::string_view name_of(Arrival);  ///< "new", "same", "twin", "differs"

struct Arriving {
  Kind kind = Kind::kDish;
  std::string id;
  std::string title;
  Arrival arrival = Arrival::kNew;
  std::string like;              ///< kTwin: the id of the one that is here
  std::string our_title;         ///< kDiffers: what ours is called
  std::int64_t our_version = 0;  ///< 0: there is none
};

struct ImportPreview {
  std::vector<Arriving> documents;  ///< in order of kind and id
  std::size_t fresh = 0, same = 0, twins = 0, differing = 0;
  std::string mark;  ///< stands for the zip and the state it was compared with
};

/// What the import would do. Writes nothing.
/// Errors: zip.not_a_zip, zip.empty, zip.too_big, zip.too_many, zip.bomb, zip.path, zip.kind, zip.name, zip.twice, zip.unreadable,
///         zip.contents, zip.link, zip.encrypted and, for each document, those of Writer::create;
///         all at once.
base::Result<ImportPreview> preview_import(Reader&, std::string_view zip);

struct ImportChoice {
  bool take_theirs = false;  ///< documents that differ: theirs becomes our next version; else ours
                             ///< stays
  bool take_twins = false;   ///< twins are made a second time; else left out, links go to ours
  std::vector<Ref> except;   ///< the opposite for these (of those that differ or are twins)
  std::optional<std::string> mark;  ///< of the preview a person saw; store.import_stale if it is no
                                    ///< longer so
};

struct Imported {
  std::size_t created = 0, replaced = 0, left = 0;
};

/// All of it or nothing. Errors: as preview_import, and store.import_stale.
base::Result<Imported> import_zip(Repository&, std::string_view zip, const ImportChoice&,
                                  const Act&);

}  // namespace store
