// benchbell serve: the teacher's desk in a browser.
#include <signal.h>
#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <thread>

#include "app/commands.h"
#include "app/files.h"
#include "base/text.h"
#include "serve/demo.h"
#include "serve/desk_server.h"
#include "serve/http/self_signed.h"
#include "serve/pages.h"

namespace app {
namespace {

namespace fs = std::filesystem;

/// Where a person's programs keep what belongs to them (XDG base directories).
fs::path data_folder() {
  if (const char* own = std::getenv("XDG_DATA_HOME"); own != nullptr && *own == '/')
    return fs::path(own) / "benchbell";
  const char* home = std::getenv("HOME");
  return fs::path(home == nullptr ? "." : home) / ".local" / "share" / "benchbell";
}

base::Date today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  ::localtime_r(&now, &local);
  using namespace std::chrono;
  const sys_days day = year{local.tm_year + 1900} / month(static_cast<unsigned>(local.tm_mon + 1)) /
                       std::chrono::day(static_cast<unsigned>(local.tm_mday));
  return base::Date{static_cast<int>(day.time_since_epoch().count())};
}

/// A folder that is gone when the program ends.
class ThrowAway {
 public:
  ThrowAway() {
    std::string name = (fs::temp_directory_path() / "benchbell-demo-XXXXXX").string();
    if (::mkdtemp(name.data()) != nullptr) path_ = name;
  }
  ~ThrowAway() {
    std::error_code ignored;  // what the system's own clean-up does as well
    if (!path_.empty()) fs::remove_all(path_, ignored);
  }
  ThrowAway(const ThrowAway&) = delete;
  ThrowAway& operator=(const ThrowAway&) = delete;
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

base::Result<std::unique_ptr<store::Repository>> open(const fs::path& file) {
  std::error_code error;
  if (file.has_parent_path()) fs::create_directories(file.parent_path(), error);
  if (error)
    return base::Problem{"serve.folder", file.parent_path().string(), "",
                         "This folder cannot be made.", "Name a file you may write with --file."};
  return store::open_sqlite(file.string());
}

/// One copy a day of use, beside the file; the last fourteen stay.
void back_up_for_today(store::Repository& store) {
  const auto backups = store.backups();
  const std::string day = base::date_text(today());
  if (backups && !backups.value().empty() && backups.value().front().made_at.starts_with(day))
    return;
  const auto made = store.back_up(14);
  if (!made) tell(made.problems());  // worth knowing, no reason not to work
}

}  // namespace

int serve(const ServeAsked& asked) {
  // Ctrl-C and the system's goodbye are waited for below, by one thread; none of the others may
  // take them.
  sigset_t signals;
  ::sigemptyset(&signals);
  ::sigaddset(&signals, SIGINT);
  ::sigaddset(&signals, SIGTERM);
  ::pthread_sigmask(SIG_BLOCK, &signals, nullptr);

  const std::unique_ptr<ThrowAway> throw_away = asked.demo ? std::make_unique<ThrowAway>()
                                                           : nullptr;
  const fs::path file = asked.demo           ? throw_away->path() / "demo.benchbell"
                        : asked.file.empty() ? data_folder() / "school.benchbell"
                                             : fs::path(asked.file);
  const auto opened = open(file);
  if (!opened) return tell(opened.problems());
  store::Repository& store = *opened.value();
  const auto filled = store.setting("filled");
  if (!filled) return tell(filled.problems());
  if (!filled.value()) {
    const auto shipped = serve::add_shipped_dishes(store);
    if (!shipped) return tell(shipped.problems());
    if (asked.demo) {
      const auto school = serve::add_demo_school(store, today());
      if (!school) return tell(school.problems());
    }
    const auto noted = store.set_setting("filled", "yes");
    if (!noted) return tell(noted.problems());
  }

  serve::DeskOptions options;
  options.http.address = asked.address;
  options.http.port = asked.port;
  options.http.workers = 4;
  options.demo = asked.demo;
  options.today = today;
  if (asked.log)
    options.log = [](std::string_view line) {
      std::fprintf(stderr, "%.*s\n", static_cast<int>(line.size()), line.data());
    };
  options.http.fault = [](std::string_view incident, std::string_view pattern,
                          std::string_view what) {
    std::fprintf(stderr, "Fault %.*s in %.*s: %.*s\n", static_cast<int>(incident.size()),
                 incident.data(), static_cast<int>(pattern.size()), pattern.data(),
                 static_cast<int>(what.size()), what.data());
  };
  const bool beyond = asked.address != "127.0.0.1" && asked.address != "::1" &&
                      asked.address != "localhost";
  std::string fingerprint;
  if (!asked.certificate.empty()) {
    options.http.tls = serve::http::TlsFiles{asked.certificate, asked.key};
  } else if (beyond) {
    const auto own = serve::http::self_signed(file.parent_path(),
                                              serve::http::names_of_this_machine(),
                                              static_cast<long long>(std::time(nullptr)));
    if (!own) return tell(own.problems());
    options.http.tls = own.value().files;
    fingerprint = own.value().fingerprint;
  }
  const bool secure = options.http.tls.has_value();

  serve::DeskServer server(store, serve::pages(), std::move(options));
  const auto port = server.start();
  if (!port) return tell(port.problems());
  std::printf("Benchbell is at %s://%s:%d\n", secure ? "https" : "http",
              beyond ? "this-machine" : "localhost", port.value());
  if (!fingerprint.empty())
    std::printf(
        "Its certificate is its own: compare the fingerprint the browser shows with\n  %s\n",
        fingerprint.c_str());
  if (asked.demo)
    std::printf("This is the demo school; what you change is gone when it stops.\n");
  else
    std::printf("Everything is kept in %s\n", file.string().c_str());
  std::printf("Stop it with Ctrl-C.\n");
  std::fflush(stdout);
  // Both go on while the first pages are answered.
  if (asked.demo)
    server.plan_unplanned();
  else
    back_up_for_today(store);

  int caught = 0;
  ::sigwait(&signals, &caught);
  std::printf("Finishing what is in hand.\n");
  server.stop(std::chrono::seconds(10));
  return kFits;
}

}  // namespace app
