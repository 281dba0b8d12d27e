#include "serve/desk_server.h"

#include <sodium.h>

#include <optional>

#include "base/text.h"
#include "serve/planning.h"
#include "serve/routes.h"

namespace serve {
namespace {

std::string random_word() {
  unsigned char bytes[24];
  randombytes_buf(bytes, sizeof bytes);
  char text[sodium_base64_ENCODED_LEN(sizeof bytes, sodium_base64_VARIANT_URLSAFE_NO_PADDING)];
  sodium_bin2base64(text, sizeof text, bytes, sizeof bytes,
                    sodium_base64_VARIANT_URLSAFE_NO_PADDING);
  return text;
}

bool loopback(const std::string& address) {
  return address == "127.0.0.1" || address == "::1" || address == "localhost";
}

constexpr const char* kNoPages =
    "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>Benchbell</title>"
    "<body><h1>The pages are not in this program</h1><p>It was built without them. "
    "<code>make</code> builds them when Node.js is there. The command line does all that the pages "
    "do: "
    "<code>benchbell --help</code>.</p></body></html>";

}  // namespace

struct DeskServer::Inside {
  store::Repository& store;
  DeskOptions options;
  http::Hub hub;
  Kept kept;
  std::unique_ptr<Jobs> jobs;     // ends before all that its work looks at
  std::unique_ptr<Jobs> errands;  // likewise
  http::RateLimit sign_in_limit;
  Context context;
  http::StaticFiles pages;
  http::Router router;
  std::vector<http::Route> listed;
  std::optional<http::Server> server;

  Inside(store::Repository& kept_store, std::vector<http::Asset> files, DeskOptions wanted)
      : store(kept_store),
        options(std::move(wanted)),
        kept(store),
        jobs(std::make_unique<Jobs>([this](const JobView& job) { tell_job(hub, job); })),
        errands(std::make_unique<Jobs>([](const JobView&) {})),
        sign_in_limit({.most = 8, .per_second = 1.0 / 30}),
        context{store, hub, *jobs, *errands, kept, sign_in_limit},
        pages(std::move(files)) {
    context.demo = options.demo;
    context.today = options.today;
    context.plan_seconds = options.plan_seconds;
    context.open_token = random_word();
    const auto users = store.users();
    context.open = !users || users.value().empty();
    add_people_routes(router, context);
    add_document_routes(router, context);
    add_week_routes(router, context);
    add_dish_routes(router, context);
    add_class_routes(router, context);
    add_plan_routes(router, context);
    add_change_routes(router, context);
    add_store_routes(router, context);
    add_paper_routes(router, context);
    add_keeping_routes(router, context);
    listed = router.routes();
    const auto page = [this](const http::Request& request) { return this->page(request); };
    router.add({.method = http::Method::kGet, .pattern = "/", .needs = "", .handler = page});
    router.add({.method = http::Method::kGet, .pattern = "/{path*}", .needs = "", .handler = page});
    router.use(guard(context));
  }

  ~Inside() {
    server.reset();
    jobs.reset();
    errands.reset();
  }
  Inside(const Inside&) = delete;
  Inside& operator=(const Inside&) = delete;

  // A page's address that is no file is the program's to show: "/lessons/9k-dhal" loaded anew.
  http::Response page(const http::Request& request) {
    if (request.path.starts_with("/api/")) return http::not_found();
    if (pages.find(request.path) != nullptr) return pages.answer(request, request.path);
    if (pages.find("/index.html") == nullptr) return http::html(200, kNoPages);
    const bool file = request.path.rfind('.') != std::string::npos &&
                      request.path.rfind('.') > request.path.rfind('/');
    return file ? http::not_found() : pages.answer(request, "/index.html");
  }
};

DeskServer::DeskServer(store::Repository& store, std::vector<http::Asset> pages,
                       DeskOptions options)
    : inside_(std::make_unique<Inside>(store, std::move(pages), std::move(options))) {}

DeskServer::~DeskServer() = default;

base::Result<int> DeskServer::start() {
  if (!loopback(inside_->options.http.address) && inside_->context.open)
    return base::Problem{
        "serve.needs_sign_in", "", "",
        "Other machines could read everything: nobody has to sign in yet.",
        "Open it on this machine first, add the head of department under Setup, then "
        "start it for the school."};
  inside_->server.emplace(inside_->options.http, inside_->router, inside_->options.log);
  return inside_->server->start();
}

bool DeskServer::stop(std::chrono::milliseconds graceful) {
  return !inside_->server || inside_->server->stop(graceful);
}

void DeskServer::wait() {
  if (inside_->server) inside_->server->wait();
}

const std::vector<http::Route>& DeskServer::routes() const { return inside_->listed; }

void DeskServer::plan_unplanned() {
  const auto lessons = inside_->store.list(store::Kind::kLesson);
  if (!lessons) return;  // the page says so when it asks
  for (const store::Summary& lesson : lessons.value()) {
    const auto plan = inside_->store.get(store::Kind::kPlan, lesson.id);
    if (!plan || plan.value()) continue;
    Context& context = inside_->context;
    PlanWish wish;
    wish.seconds = context.plan_seconds;
    inside_->jobs->start(
        "", lesson.id,
        [&context, id = lesson.id, wish](JobDesk& desk) {
          return plan_kept(context, id, wish, &desk, "");
        },
        Jobs::Turn::kUnasked);
  }
}

}  // namespace serve
