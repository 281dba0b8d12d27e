// A desk with a school of some years in it: 1,200 pupils in 50 classes, 500 dishes, 3,000 lessons,
// plans for the week. How long does each page wait for its data, and how much does one core of the
// server carry? Invented data. Targets: 99 in 100 answers within 50 ms, for each page alone and at
// 300 requests a second of reading and writing.
#include <sched.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <functional>
#include <string>

#include "base/text.h"
#include "full_school.h"
#include "load.h"
#include "serve/api_json.h"
#include "serve/context.h"
#include "serve/desk_server.h"
#include "serve/http/target.h"
#include "serve/order_desk.h"
#include "serve/planning.h"
#include "serve/routes.h"

namespace {

using Clock = std::chrono::steady_clock;
namespace fs = std::filesystem;
using serve_bench::FullSchool;

const base::Date kToday = *base::date_in("2026-11-17");

double ms_since(Clock::time_point begin) {
  return std::chrono::duration<double, std::milli>(Clock::now() - begin).count();
}

/// The routes without a socket.
class Desk {
 public:
  explicit Desk(store::Repository& store)
      : kept_(store),
        jobs_([](const serve::JobView&) {}),
        errands_([](const serve::JobView&) {}),
        limit_({}),
        context{store, hub_, jobs_, errands_, kept_, limit_} {
    context.today = [] { return kToday; };
    serve::add_document_routes(router_, context);
    serve::add_week_routes(router_, context);
    serve::add_dish_routes(router_, context);
    serve::add_plan_routes(router_, context);
    serve::add_change_routes(router_, context);
    serve::add_store_routes(router_, context);
    router_.use(serve::guard(context));
  }

  std::size_t get(const std::string& path) {
    const auto target = serve::http::target_in(path);
    serve::http::Request request;
    request.path = target->path;
    request.query = target->query;
    request.loopback = true;
    const auto response = router_.answer(request);
    if (response.status != 200) {
      std::printf("%s gave %d: %.*s\n", path.c_str(), response.status, 300,
                  std::string(response.body.view()).c_str());
      std::exit(1);
    }
    return response.body.view().size();
  }

 private:
  serve::http::Hub hub_;
  serve::Kept kept_;
  serve::Jobs jobs_;
  serve::Jobs errands_;
  serve::http::RateLimit limit_;
  serve::http::Router router_;

 public:
  serve::Context context;
};

void measure(Desk& desk, const char* what, int times, const std::function<std::string(int)>& path) {
  const auto first = Clock::now();
  const std::size_t bytes = desk.get(path(0));
  const double cold = ms_since(first);
  std::vector<double> took;
  for (int i = 0; i < times; ++i) {
    const auto begin = Clock::now();
    desk.get(path(i));
    took.push_back(ms_since(begin));
  }
  std::sort(took.begin(), took.end());
  std::printf(
      "%-36s first %8.2f ms   half within %7.3f ms   99 in 100 within %7.3f ms   %7.1f KB\n", what,
      cold, took[took.size() / 2], took[took.size() * 99 / 100], static_cast<double>(bytes) / 1024);
}

/// Plans one lesson of each kind and gives the plan to all lessons of the week made from the same
/// one.
void plan_week(Desk& desk, const FullSchool& school) {
  std::vector<std::string> plans(10);
  for (const std::string& id : school.lessons) {
    const std::size_t kind = std::stoul(id.substr(7)) % plans.size();
    if (!plans[kind].empty()) {
      const auto lesson = school.store->get(store::Kind::kLesson, id);
      const auto made = school.store->create(
          store::Kind::kPlan, id, {plans[kind], {}, lesson.value()->title, lesson.value()->day},
          {});
      if (!made) std::printf("%s\n", made.problems().front().message.c_str());
      continue;
    }
    serve::PlanWish wish;
    wish.seconds = 0.5;
    const auto planned = serve::plan_kept(desk.context, id, wish, nullptr, "");
    if (!planned) {
      std::printf("%s: %s\n", id.c_str(), planned.problems().front().message.c_str());
      continue;
    }
    plans[kind] = school.store->get(store::Kind::kPlan, id).value()->body;
  }
}

void pages(Desk& desk, const FullSchool& school) {
  const auto dish = [&](int i) {
    return school.dishes[static_cast<std::size_t>(i) * 7 % school.dishes.size()];
  };
  const auto lesson = [&](int i) {
    return school.lessons[static_cast<std::size_t>(i) % school.lessons.size()];
  };
  measure(desk, "this week", 200, [](int) { return std::string("/api/week"); });
  measure(desk, "another week", 60, [](int i) {
    return "/api/week?from=" + base::date_text(base::Date{kToday.days - 7 * (1 + i % 30)});
  });
  measure(desk, "all dishes", 200, [](int) { return std::string("/api/dishes"); });
  measure(desk, "a dish, seldom the same", 300,
          [&](int i) { return "/api/dishes/" + dish(i) + "/view"; });
  measure(desk, "a dish again", 300, [&](int) { return "/api/dishes/" + dish(0) + "/view"; });
  measure(desk, "list of all lessons", 60,
          [](int) { return std::string("/api/documents/lesson"); });
  measure(desk, "lessons of a month", 200,
          [](int) { return std::string("/api/documents/lesson?from=2026-11-01&to=2026-11-30"); });
  measure(desk, "a lesson's document", 300,
          [&](int i) { return "/api/documents/lesson/" + lesson(i); });
  measure(desk, "a lesson's plan", 300,
          [&](int i) { return "/api/lessons/" + lesson(i) + "/plan"; });
  measure(desk, "a lesson's allergens", 100,
          [&](int i) { return "/api/lessons/" + lesson(i) + "/allergens"; });
  measure(desk, "the week's order", 50, [](int) { return std::string("/api/stores/order"); });
  measure(desk, "this week, with its order", 200, [](int) { return std::string("/api/week"); });
}

void stay_on_core(int core) {
  cpu_set_t set;
  CPU_ZERO(&set);
  CPU_SET(core, &set);
  if (sched_setaffinity(0, sizeof set, &set) != 0) std::printf("(the core could not be chosen)\n");
}

void tell(const char* what, const serve_bench::LoadResult& result) {
  std::printf(
      "%-36s %6.0f a second   half within %6.2f ms   99 in 100 within %6.2f ms   worst %6.1f ms   "
      "%ld clashes, %ld faults\n",
      what, result.per_second, result.p50, result.p99, result.worst, result.clashes, result.faults);
}

/// A child asks from the other core; `port` comes through a pipe once the server answers.
void load(store::Repository& store, const FullSchool& school,
          const std::function<pid_t(serve_bench::Load)>& ask) {
  serve::DeskOptions options;
  options.today = [] { return kToday; };
  serve::DeskServer desk(store, {}, options);
  const auto port = desk.start();
  if (!port) {
    std::printf("%s\n", port.problems().front().message.c_str());
    return;
  }
  serve_bench::Load wish;
  wish.port = port.value();
  for (int i = 0; i < 20; ++i) {
    const auto n = static_cast<std::size_t>(i);
    wish.reads.push_back(
        i % 4 == 0   ? "/api/week"
        : i % 4 == 1 ? "/api/dishes/" + school.dishes[n * 13 % school.dishes.size()] + "/view"
        : i % 4 == 2 ? "/api/lessons/" + school.lessons[n % school.lessons.size()] + "/plan"
        : i == 3     ? std::string("/api/dishes")
                     : "/api/documents/lesson/" + school.lessons[n * 3 % school.lessons.size()]);
  }
  for (int i = 0; i < 12; ++i) {
    const auto n = static_cast<std::size_t>(i);
    wish.writes.push_back(
        i % 4 == 3 ? "/api/documents/dish/" + school.dishes[n * 31 % school.dishes.size()]
                   : "/api/documents/lesson/" + school.lessons[n * 5 % school.lessons.size()]);
  }
  const pid_t child = ask(wish);
  int status = 0;
  waitpid(child, &status, 0);
  desk.stop(std::chrono::seconds(5));
}

}  // namespace

int main() {
  const fs::path folder = fs::temp_directory_path() / "benchbell-serve-bench";
  fs::remove_all(folder);
  fs::create_directory(folder);
  // The child is made before there is any thread.
  int pipe_ends[2];
  if (pipe(pipe_ends) != 0) return 1;
  const pid_t child = fork();
  if (child == 0) {
    ::close(pipe_ends[1]);
    std::string text;
    char byte = 0;
    while (read(pipe_ends[0], &byte, 1) == 1) text += byte;
    if (text.empty()) _exit(1);
    stay_on_core(1);
    serve_bench::Load wish;
    for (const std::string& line : base::parts(text, '\n')) {
      if (line.starts_with("port ")) wish.port = std::stoi(line.substr(5));
      if (line.starts_with("read ")) wish.reads.push_back(line.substr(5));
      if (line.starts_with("write ")) wish.writes.push_back(line.substr(6));
    }
    serve_bench::Load warm = wish;
    warm.seconds = 2;
    run_load(warm);
    wish.connections = 16;
    wish.seconds = 8;
    wish.per_second = 300;
    tell("reading and writing, 300 a second", run_load(wish));
    wish.per_second = 0;
    wish.connections = 8;
    tell("as fast as eight pages can ask", run_load(wish));
    wish.writes.clear();
    tell("the same, reading only", run_load(wish));
    std::fflush(stdout);
    _exit(0);
  }
  ::close(pipe_ends[0]);
  stay_on_core(0);
  const auto begin = Clock::now();
  FullSchool school = serve_bench::full_school((folder / "school.benchbell").string(), kToday);
  std::printf("%-36s %8.0f ms, %zu lessons this week\n", "fill the school", ms_since(begin),
              school.lessons.size());
  {
    Desk desk(*school.store);
    plan_week(desk, school);
    pages(desk, school);
  }
  std::fflush(stdout);
  load(*school.store, school, [&](const serve_bench::Load& wish) {
    std::string text = "port " + std::to_string(wish.port) + "\n";
    for (const std::string& path : wish.reads) text += "read " + path + "\n";
    for (const std::string& path : wish.writes) text += "write " + path + "\n";
    if (write(pipe_ends[1], text.data(), text.size()) < 0) std::printf("(the pipe broke)\n");
    ::close(pipe_ends[1]);
    return child;
  });
  school.store.reset();
  fs::remove_all(folder);
  return 0;
}
