// A desk for tests: a store in a folder of its own, the planner's jobs and every route, without a
// socket. Each answer is held against api/openapi.yaml as it is given.
#pragma once

#include <gtest/gtest.h>

#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "serve/context.h"
#include "serve/http/router.h"

namespace serve_test {

using nlohmann::json;
using serve::http::Method;
using serve::http::Pairs;
using serve::http::Response;

/// api/openapi.yaml, read once.
const json& contract();
/// The operation a route of ours answers for; nothing when it is not in the contract.
const json* operation(Method, const std::string& pattern);

enum class Fill { kNothing, kDishes, kSchool };  ///< the school has the dishes too

/// Who asks and from where. Made by Desk::sign_in(), or plain: nobody, on this machine.
struct Asker {
  std::string cookie;
  std::string token;
  bool loopback = true;
};

struct Answer {
  int status = 0;
  json body;         ///< null when it is not JSON
  std::string text;  ///< as sent
  Pairs headers;
  std::string content_type;
  std::string header(const std::string& name) const;
  std::string code() const;  ///< of its first problem; empty when there is none
};

/// A folder that goes with the test.
class Folder {
 public:
  Folder();
  ~Folder();
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::string file(const std::string& name) const { return path_ + "/" + name; }

 private:
  std::string path_;
};

/// A copy of a filled store, opened. Filling is done once in a program.
std::unique_ptr<store::Repository> filled_store(Fill, const Folder&);

inline constexpr const char* kPassword = "three wooden spoons";

class Desk {
 public:
  explicit Desk(Fill = Fill::kSchool);
  ~Desk();

  /// `path` with its query ("/api/week?from=2026-11-16"); `body` as JSON unless it is null. Fails
  /// the test when the answer, or a request that was taken, is not as the contract says.
  Answer ask(Method, const std::string& path, const json& body = nullptr, const Asker* = nullptr,
             Pairs headers = {});
  Answer get(const std::string& path, const Asker* asker = nullptr) {
    return ask(Method::kGet, path, nullptr, asker);
  }
  Answer post(const std::string& path, const json& body, const Asker* asker = nullptr,
              Pairs headers = {}) {
    return ask(Method::kPost, path, body, asker, std::move(headers));
  }
  Answer put(const std::string& path, const json& body, long long version,
             const Asker* asker = nullptr) {
    return ask(Method::kPut, path, body, asker,
               {{"If-Match", "\"" + std::to_string(version) + "\""}});
  }
  /// Bytes as they are, for what is no JSON.
  Answer send(Method, const std::string& path, std::string bytes, const Asker* = nullptr,
              Pairs headers = {});

  /// Nobody, on this machine: the head as long as the desk is open.
  Asker open() const { return {"", context.open_token, true}; }
  /// Adds a person to the store and signs them in; closes open mode.
  Asker person(const std::string& name, store::Role);

  /// Waits until the job has ended, by its news.
  serve::JobView ended(const std::string& job);
  /// Waits until it works, or has ended.
  serve::JobView started(const std::string& job);
  /// Plans a kept lesson and waits for it. The LessonPlan.
  json plan(const std::string& lesson, double seconds = 1);
  /// The body of a kept document and its version.
  std::pair<json, long long> document(const std::string& kind, const std::string& id);

  Folder folder;
  std::unique_ptr<store::Repository> store;
  serve::http::Hub hub;
  serve::Kept kept;
  std::unique_ptr<serve::Jobs> jobs;     ///< ends before the rest: its work looks at all of it
  std::unique_ptr<serve::Jobs> errands;  ///< likewise
  serve::http::RateLimit sign_in_limit;
  serve::Context context;
  serve::http::Router router;

 private:
  std::mutex mutex_;
  std::condition_variable told_;
  std::vector<serve::JobView> news_;

  serve::JobView wait_for(const std::string& job,
                          const std::function<bool(const serve::JobView&)>&);
  void check_answer(Method, const std::string& pattern, const json* request, const Answer&) const;
};

/// The desk with the demo school, open, on 17 November 2026.
class DeskTest : public testing::Test {
 protected:
  Desk desk;
};

}  // namespace serve_test
