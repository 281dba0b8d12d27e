#include "desk.h"

#include <cstdlib>
#include <filesystem>
#include <stdexcept>

#include "../../support/schema_check.h"
#include "../../support/yaml_file.h"
#include "base/text.h"
#include "serve/api_json.h"
#include "serve/demo.h"
#include "serve/http/target.h"
#include "serve/order_desk.h"
#include "serve/planning.h"
#include "serve/routes.h"
#include "store/password.h"

namespace serve_test {

using serve::JobState;
using serve::JobView;

const json& contract() {
  static const json kContract = support::yaml_file(std::string(BENCHBELL_SOURCE_DIR) +
                                                   "/api/openapi.yaml");
  return kContract;
}

const json* operation(Method method, const std::string& pattern) {
  const json& paths = contract().at("paths");
  if (!paths.contains(pattern)) return nullptr;
  const std::string name = base::lower(serve::http::method_text(method));
  return paths.at(pattern).contains(name) ? &paths.at(pattern).at(name) : nullptr;
}

std::string Answer::header(const std::string& name) const {
  const std::string* found = serve::http::find_header(headers, name);
  return found == nullptr ? "" : *found;
}

std::string Answer::code() const {
  if (!body.is_object() || !body.contains("problems") || body.at("problems").empty()) return "";
  return body.at("problems").front().at("code");
}

Folder::Folder() {
  path_ = (std::filesystem::temp_directory_path() / "benchbell-XXXXXX").string();
  if (mkdtemp(path_.data()) == nullptr) throw std::runtime_error("no folder for the test");
}
Folder::~Folder() {
  std::error_code ignored;  // what is left lies in the folder for temporary files
  std::filesystem::remove_all(path_, ignored);
}

namespace {

const base::Date kToday = *base::date_in("2026-11-17");

template <class T>
void must(const base::Result<T>& result) {
  if (!result) throw std::runtime_error(result.problems().front().message);
}

std::unique_ptr<store::Repository> opened(const std::string& path) {
  auto store = store::open_sqlite(path);
  must(store);
  return std::move(store).value();
}

}  // namespace

std::unique_ptr<store::Repository> filled_store(Fill fill, const Folder& folder) {
  static const Folder filled;
  const std::string model = filled.file("model-" + std::to_string(static_cast<int>(fill)));
  if (!std::filesystem::exists(model)) {
    const auto store = opened(model);
    if (fill != Fill::kNothing) must(serve::add_shipped_dishes(*store));
    if (fill == Fill::kSchool) must(serve::add_demo_school(*store, kToday));
  }
  const std::string path = folder.file("school.benchbell");
  std::filesystem::copy_file(model, path);
  return opened(path);
}

Desk::Desk(Fill fill)
    : store(filled_store(fill, folder)),
      kept(*store),
      jobs(std::make_unique<serve::Jobs>([this](const JobView& job) {
        serve::tell_job(hub, job);
        const std::lock_guard lock(mutex_);
        news_.push_back(job);
        told_.notify_all();
      })),
      errands(std::make_unique<serve::Jobs>([](const JobView&) {})),
      sign_in_limit({.most = 8, .per_second = 1.0 / 30}),
      context{*store, hub, *jobs, *errands, kept, sign_in_limit} {
  context.open_token = "the token of the open desk";
  context.today = [] { return kToday; };
  context.plan_seconds = 1;
  serve::add_people_routes(router, context);
  serve::add_document_routes(router, context);
  serve::add_week_routes(router, context);
  serve::add_dish_routes(router, context);
  serve::add_class_routes(router, context);
  serve::add_plan_routes(router, context);
  serve::add_change_routes(router, context);
  serve::add_store_routes(router, context);
  serve::add_paper_routes(router, context);
  serve::add_keeping_routes(router, context);
  router.use(serve::guard(context));
}

Desk::~Desk() {
  jobs.reset();
  errands.reset();
}

Answer Desk::send(Method method, const std::string& path, std::string bytes, const Asker* asker,
                  Pairs headers) {
  const auto target = serve::http::target_in(path);
  if (!target) throw std::runtime_error("not an address: " + path);
  serve::http::Request request;
  request.method = method;
  request.path = target->path;
  request.query = target->query;
  request.headers = std::move(headers);
  request.body = std::move(bytes);
  request.remote = "127.0.0.1";
  const Asker who = asker == nullptr ? open() : *asker;
  request.loopback = who.loopback;
  if (!who.loopback) request.remote = "192.0.2.7";
  if (!who.cookie.empty()) request.cookies.push_back({"benchbell", who.cookie});
  if (!who.token.empty()) request.headers.push_back({"X-Benchbell-Token", who.token});
  const auto match = router.match(method, request.path);
  const std::string sent = request.body;
  const Response response = router.answer(std::move(request), match);
  Answer answer;
  answer.status = response.stream ? 200 : response.status;
  answer.text = std::string(response.body.view());
  answer.headers = response.headers;
  answer.content_type = response.stream ? "text/event-stream" : response.content_type;
  if (answer.content_type == "application/json") {
    answer.body = json::parse(answer.text, nullptr, false);
    EXPECT_FALSE(answer.body.is_discarded())
        << path << " gave no JSON: " << answer.text.substr(0, 200);
  }
  if (match.route != nullptr) {
    const json request_body = sent.empty() ? json() : json::parse(sent, nullptr, false);
    check_answer(method, match.route->pattern,
                 sent.empty() || request_body.is_discarded() ? nullptr : &request_body, answer);
  }
  return answer;
}

Answer Desk::ask(Method method, const std::string& path, const json& body, const Asker* asker,
                 Pairs headers) {
  return send(method, path, body.is_null() ? "" : body.dump(), asker, std::move(headers));
}

void Desk::check_answer(Method method, const std::string& pattern, const json* request,
                        const Answer& answer) const {
  const json* said = operation(method, pattern);
  ASSERT_NE(said, nullptr) << pattern << " is not in the contract";
  const std::string what = std::string(serve::http::method_text(method)) + " " + pattern + " " +
                           std::to_string(answer.status);
  if (request != nullptr && answer.status < 300 && said->contains("requestBody")) {
    const json& content = said->at("requestBody").at("content");
    if (content.contains("application/json")) {
      for (const std::string& wrong :
           support::misfits(*request, content.at("application/json").at("schema"), contract()))
        ADD_FAILURE() << what << " took a request that the contract does not allow: " << wrong;
    }
  }
  const json& responses = said->at("responses");
  const std::string status = std::to_string(answer.status);
  // Signing in and rights come before every route and look the same everywhere.
  const json problems = {{"$ref", "#/components/responses/Problems"}};
  const bool guards = answer.status == 401 || answer.status == 403;
  ASSERT_TRUE(responses.contains(status) || guards)
      << what << " is not in the contract: " << answer.text.substr(0, 300);
  const json* is = responses.contains(status) ? &responses.at(status) : &problems;
  if (is->contains("$ref"))
    is = &contract().at(json::json_pointer(is->at("$ref").get<std::string>().substr(1)));
  if (!is->contains("content")) {
    EXPECT_TRUE(answer.text.empty()) << what;
    return;
  }
  const json wanted = is->value("headers", json::object());
  for (const auto& [name, header] : wanted.items())
    EXPECT_NE(answer.header(name), "") << what << " has no " << name;
  const json& content = is->at("content");
  const std::string type = answer.content_type.substr(0, answer.content_type.find(';'));
  ASSERT_TRUE(content.contains(type)) << what << " gave " << answer.content_type;
  if (!content.at(type).contains("schema")) return;
  for (const std::string& wrong :
       support::misfits(answer.body, content.at(type).at("schema"), contract()))
    ADD_FAILURE() << what << " " << wrong;
}

Asker Desk::person(const std::string& name, store::Role role) {
  // The weakest hash that is one would do; the store's own costs a quarter of a second, so it is
  // made once.
  static const std::string hash = store::hash_password(kPassword).value();
  const auto user = store->add_user(name, role, hash);
  must(user);
  context.open = false;
  const auto session = store->start_session(user.value().id, std::chrono::hours(1));
  must(session);
  return {session.value().token, session.value().csrf, true};
}

JobView Desk::wait_for(const std::string& job, const std::function<bool(const JobView&)>& holds) {
  std::unique_lock lock(mutex_);
  std::optional<JobView> found;
  const bool come = told_.wait_for(lock, std::chrono::seconds(120), [&] {
    for (const JobView& each : news_) {
      if (each.id == job && holds(each)) found = each;
    }
    return found.has_value();
  });
  if (!come) throw std::runtime_error("no news of " + job);
  return *found;
}

JobView Desk::ended(const std::string& job) {
  return wait_for(job, [](const JobView& view) {
    return view.state == JobState::kDone || view.state == JobState::kStopped ||
           view.state == JobState::kFailed;
  });
}

JobView Desk::started(const std::string& job) {
  return wait_for(job, [](const JobView& view) { return view.state != JobState::kWaiting; });
}

json Desk::plan(const std::string& lesson, double seconds) {
  const Answer started = post("/api/plan", {{"lesson", lesson}, {"seconds", seconds}});
  EXPECT_EQ(started.status, 202) << started.text;
  const std::string job = started.body.at("job");
  const JobView view = ended(job);
  EXPECT_EQ(view.state, JobState::kDone) << view.says;
  return get("/api/jobs/" + job).body.at("result");
}

std::pair<json, long long> Desk::document(const std::string& kind, const std::string& id) {
  const Answer answer = get("/api/documents/" + kind + "/" + id);
  EXPECT_EQ(answer.status, 200) << answer.text;
  return {answer.body.at("body"), answer.body.at("version").get<long long>()};
}

}  // namespace serve_test
