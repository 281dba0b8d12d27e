// The teacher's desk as one thing to start and stop: a store, the planner's jobs, the API and the
// pages.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "base/clock.h"
#include "base/problem.h"
#include "serve/http/server.h"
#include "serve/http/static_files.h"
#include "store/repository.h"

namespace serve {

struct DeskOptions {
  http::ServerOptions http;
  bool demo = false;
  double plan_seconds = 3;
  std::function<base::Date()> today;  ///< by the clock of this machine
  http::LogSink log;
};

class DeskServer {
 public:
  /// `pages`: the files of the user interface; empty = a page that says it was not built.
  DeskServer(store::Repository&, std::vector<http::Asset> pages, DeskOptions);
  ~DeskServer();
  DeskServer(const DeskServer&) = delete;
  DeskServer& operator=(const DeskServer&) = delete;

  /// The port it answers on. Problems: serve.*, and serve.needs_sign_in: beyond this machine only
  /// when somebody can sign in.
  base::Result<int> start();
  /// Finishes the writes in hand. True if nothing had to be cut off.
  bool stop(std::chrono::milliseconds graceful);
  void wait();

  /// All routes, for the test against the contract.
  const std::vector<http::Route>& routes() const;
  /// Plans what has no plan yet, so that the first page of a demo is not empty. Returns at once.
  void plan_unplanned();

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace serve
