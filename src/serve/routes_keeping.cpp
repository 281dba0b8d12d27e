// Copies of everything: out as a zip, in from one, and a backup beside the file.
#include "base/text.h"
#include "serve/api_json.h"
#include "serve/routes.h"
#include "store/exchange.h"

namespace serve {
namespace {

Node report(const store::ImportPreview& preview, bool done) {
  Node node = Node::object();
  node.set("done", Node::of(done));
  Node fresh = Node::list(), same = Node::list(), differs = Node::list();
  for (const store::Arriving& each : preview.documents) {
    const std::string title = base::say(store::words_of(each.kind), " ",
                                        base::in_quotes(each.title));
    switch (each.arrival) {
      case store::Arrival::kNew:
        fresh.add(Node::of(title));
        break;
      case store::Arrival::kSame:
      case store::Arrival::kTwin:
        same.add(Node::of(title));
        break;
      case store::Arrival::kDiffers:
        differs.add(Node::of(title));
        break;
    }
  }
  node.set("new", std::move(fresh));
  node.set("same", std::move(same));
  node.set("differs", std::move(differs));
  node.set("refused", Node::list());
  return node;
}

Response take_in(Context& context, const Request& request) {
  const auto preview = store::preview_import(context.store, request.body);
  if (!preview) return refuse(preview.problems());
  const std::string* sure = request.asked("sure");
  if (sure == nullptr || *sure != "true") return answer(report(preview.value(), false));
  store::ImportChoice choice;
  choice.take_theirs = true;
  choice.mark = preview.value().mark;
  const auto done = store::import_zip(context.store, request.body, choice,
                                      {who(request).id, "Brought in from a copy"});
  if (!done) return refuse(done.problems());
  tell_changed(context, "all", "", 0, "");
  return answer(report(preview.value(), true));
}

}  // namespace

void add_keeping_routes(http::Router& router, Context& context) {
  router.add({.method = Method::kGet,
              .pattern = "/api/copy",
              .needs = "head",
              .handler = [&context](const Request&) {
                auto zip = store::export_zip(context.store);
                if (!zip) return refuse(zip.problems());
                return http::download("application/zip", "benchbell-copy.zip",
                                      std::move(zip).value());
              }});
  router.add({.method = Method::kPost,
              .pattern = "/api/copy",
              .needs = "head",
              .handler = [&context](const Request& r) { return take_in(context, r); },
              .body_limit = store::kLargestZip});
  router.add({.method = Method::kPost,
              .pattern = "/api/backup",
              .needs = "head",
              .handler = [&context](const Request&) {
                const auto made = context.store.back_up(10);
                if (!made) return refuse(made.problems());
                Node node = Node::object();
                node.set("name",
                         Node::of(made.value().path.substr(made.value().path.rfind('/') + 1)));
                node.set("at", Node::of(made.value().made_at));
                return answer(node, 201);
              }});
}

}  // namespace serve
