#include <algorithm>
#include <set>

#include "base/text.h"
#include "store/contents.h"
#include "store/document_rows.h"
#include "store/exchange.h"
#include "store/json_text.h"
#include "store/parcel.h"
#include "store/stamp.h"

namespace store {

using base::Problem;
using base::Problems;
using base::Result;
using base::say;

std::string_view name_of(Arrival arrival) {
  switch (arrival) {
    case Arrival::kNew:
      return "new";
    case Arrival::kSame:
      return "same";
    case Arrival::kTwin:
      return "twin";
    case Arrival::kDiffers:
      return "differs";
  }
  return "new";
}

namespace {

bool same_content(const Document& ours, const ReadyDraft& theirs, bool links_known) {
  const auto canonical = canonical_json(ours.body);
  return canonical && canonical.value() == theirs.canonical && ours.title == theirs.title &&
         ours.day == theirs.day &&
         (!links_known || links_text(ours.links) == links_text(theirs.links));
}

Result<Arriving> compared(Reader& reader, const Ref& ref, const ReadyDraft& theirs,
                          bool links_known) {
  Arriving out{ref.kind, ref.id, theirs.title, Arrival::kNew, "", "", 0};
  auto found = reader.get(ref.kind, ref.id);
  if (!found) return found.problems();
  if (found.value()) {
    const Document& ours = *found.value();
    out.our_version = ours.version;
    if (!ours.deleted) {
      out.our_title = ours.title;
      out.arrival = same_content(ours, theirs, links_known) ? Arrival::kSame : Arrival::kDiffers;
      return out;
    }
  }
  auto twins = reader.same_as(ref.kind, theirs.body);
  if (!twins) return twins.problems();
  if (!twins.value().empty()) {
    out.arrival = Arrival::kTwin;
    out.like = twins.value().front().id;
  }
  return out;
}

/// Links must lead to what comes with the zip or stands here.
Problems loose_links(Reader& reader, const Parcel& parcel) {
  Problems problems;
  for (const auto& [ref, draft] : parcel.drafts) {
    for (const Ref& link : draft.links) {
      if (parcel.drafts.contains(link)) continue;
      auto found = reader.get(link.kind, link.id);
      if (!found) return found.problems();
      if (found.value() && !found.value()->deleted) continue;
      problems.push_back(
          {"zip.link", ref_text(ref) + ".json", "",
           say(base::in_quotes(parcel.ready.at(ref).title), " uses the ", words_of(link.kind), " ",
               base::in_quotes(link.id), ", which is neither in the zip nor here."),
           say("Take in that ", words_of(link.kind), " first.")});
    }
  }
  return problems;
}

std::string mark_of(std::string_view zip, const std::vector<Arriving>& documents) {
  std::string all = fingerprint(zip);
  for (const Arriving& each : documents) {
    all += say("\n", name_of(each.kind), "/", each.id, " ", name_of(each.arrival), " ", each.like,
               " ", each.our_version);
  }
  return fingerprint(all);
}

Result<ImportPreview> preview(Reader& reader, const Parcel& parcel, std::string_view zip) {
  if (auto loose = loose_links(reader, parcel); !loose.empty()) return loose;
  std::set<Ref> used;
  for (const auto& [ref, draft] : parcel.drafts)
    used.insert(draft.links.begin(), draft.links.end());
  ImportPreview out;
  for (const auto& [ref, ready] : parcel.ready) {
    auto one = compared(reader, ref, ready, parcel.has_contents);
    if (!one) return one.problems();
    Arriving arriving = std::move(one).value();
    // Texts of others in the zip name it, so it must come under its own name.
    if (arriving.arrival == Arrival::kTwin && used.contains(ref)) arriving.arrival = Arrival::kNew;
    out.fresh += arriving.arrival == Arrival::kNew ? 1 : 0;
    out.same += arriving.arrival == Arrival::kSame ? 1 : 0;
    out.twins += arriving.arrival == Arrival::kTwin ? 1 : 0;
    out.differing += arriving.arrival == Arrival::kDiffers ? 1 : 0;
    out.documents.push_back(std::move(arriving));
  }
  out.mark = mark_of(zip, out.documents);
  return out;
}

/// Writes what was chosen. A document is written after those it uses; where they use each other in
/// a circle, the link that closes it is added at the end.
class Carrier {
 public:
  Carrier(Writer& writer, const Parcel& parcel, const Act& act)
      : writer_(writer), parcel_(parcel), act_(act) {}

  void take(const Arriving& arriving) {
    wanted_.emplace(Ref{arriving.kind, arriving.id}, arriving);
  }

  Result<Imported> carry() {
    for (const auto& [ref, arriving] : wanted_) {
      if (!carry_one(ref)) return problems_;
    }
    for (const Ref& ref : unfinished_) {
      if (!put(ref, parcel_.drafts.at(ref))) return problems_;
    }
    return Imported{created_, replaced_, 0};
  }

 private:
  Writer& writer_;
  const Parcel& parcel_;
  const Act& act_;
  std::map<Ref, Arriving> wanted_;
  std::set<Ref> begun_;
  std::map<Ref, std::int64_t> written_;  // the version each has now
  std::vector<Ref> unfinished_;
  Problems problems_;
  std::size_t created_ = 0;
  std::size_t replaced_ = 0;

  bool carry_one(const Ref& ref) {
    // Not recursive: a chain of links in a zip from anywhere may be as long as the zip.
    std::vector<Ref> way{ref};
    while (!way.empty()) {
      const Ref at = way.back();
      if (written_.contains(at)) {
        way.pop_back();
        continue;
      }
      const bool first = begun_.insert(at).second;
      if (first) {
        for (const Ref& link : parcel_.drafts.at(at).links) {
          if (wanted_.contains(link) && !begun_.contains(link)) way.push_back(link);
        }
        continue;
      }
      way.pop_back();
      if (!put(at, without_unwritten(at))) return false;
    }
    return true;
  }

  Draft without_unwritten(const Ref& ref) {
    Draft draft = parcel_.drafts.at(ref);
    const auto missing = [&](const Ref& link) {
      const auto other = wanted_.find(link);
      return link != ref && other != wanted_.end() && !written_.contains(link) &&
             other->second.arrival != Arrival::kDiffers;
    };
    if (std::erase_if(draft.links, missing) > 0) unfinished_.push_back(ref);
    return draft;
  }

  bool put(const Ref& ref, Draft draft) {
    const Arriving& arriving = wanted_.at(ref);
    const auto before = written_.find(ref);
    if (before == written_.end() && arriving.arrival != Arrival::kDiffers) {
      auto made = writer_.create(ref.kind, ref.id, draft, act_);
      if (!made) return refuse(made.problems());
      written_[ref] = made.value().version;
      ++created_;
      return true;
    }
    if (!parcel_.has_contents) {  // nothing is known of links: ours stay
      auto ours = writer_.get(ref.kind, ref.id);
      if (!ours) return refuse(ours.problems());
      if (ours.value()) draft.links = ours.value()->links;
    }
    const bool again = before != written_.end();
    auto done = writer_.replace(ref.kind, ref.id, again ? before->second : arriving.our_version,
                                draft, act_);
    if (!done) return refuse(done.problems());
    const auto* document = std::get_if<Document>(&done.value());
    if (document == nullptr) {
      return refuse({{"store.import_stale", "", "", "Something here changed meanwhile.",
                      "Look at what the zip would do once more, then take it in."}});
    }
    written_[ref] = document->version;
    if (!again) ++replaced_;
    return true;
  }

  bool refuse(const Problems& problems) {
    problems_ = problems;
    return false;
  }
};

bool chosen(const Arriving& arriving, const ImportChoice& choice) {
  const bool except = std::find(choice.except.begin(), choice.except.end(),
                                Ref{arriving.kind, arriving.id}) != choice.except.end();
  switch (arriving.arrival) {
    case Arrival::kNew:
      return true;
    case Arrival::kSame:
      return false;
    case Arrival::kTwin:
      return choice.take_twins != except;
    case Arrival::kDiffers:
      return choice.take_theirs != except;
  }
  return false;
}

}  // namespace

Result<ImportPreview> preview_import(Reader& reader, std::string_view zip) {
  const auto parcel = open_parcel(zip);
  if (!parcel) return parcel.problems();
  return preview(reader, parcel.value(), zip);
}

Result<Imported> import_zip(Repository& repository, std::string_view zip,
                            const ImportChoice& choice, const Act& act) {
  const auto parcel = open_parcel(zip);
  if (!parcel) return parcel.problems();
  Imported done;
  const auto outcome = repository.transact([&](Writer& writer) -> Result<Outcome> {
    auto seen = preview(writer, parcel.value(), zip);
    if (!seen) return seen.problems();
    if (choice.mark && *choice.mark != seen.value().mark) {
      return Problem{"store.import_stale", "", "",
                     "Something here changed since you looked at what the zip would do.",
                     "Look at it once more, then take it in."};
    }
    Carrier carrier(writer, parcel.value(), act);
    std::size_t left = 0;
    for (const Arriving& each : seen.value().documents) {
      if (chosen(each, choice)) {
        carrier.take(each);
      } else {
        ++left;
      }
    }
    auto carried = carrier.carry();
    if (!carried) return carried.problems();
    done = carried.value();
    done.left = left;
    return Outcome::kKeep;
  });
  if (!outcome) return outcome.problems();
  return done;
}

}  // namespace store
