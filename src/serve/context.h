// What every route of the API works with, made once when the server starts.
#pragma once

#include <atomic>
#include <functional>
#include <memory>
#include <string>

#include "base/clock.h"
#include "serve/http/events.h"
#include "serve/http/rate_limit.h"
#include "serve/jobs.h"
#include "serve/kept.h"
#include "store/repository.h"

namespace serve {

/// Who asks. Without a session on this very machine, before anybody may sign in, it is the head.
struct Who {
  std::string id;  ///< empty: nobody is signed in, and nobody needs to be
  std::string name;
  store::Role role = store::Role::kTeacher;
  std::string token;  ///< what writing requests send back
  bool signed_in = false;
};

struct Context {
  store::Repository& store;
  http::Hub& hub;
  Jobs& jobs;     ///< plans
  Jobs& errands;  ///< what a page can wait for without a plan waiting behind it
  Kept& kept;
  http::RateLimit& sign_in_limit;
  bool demo = false;
  std::string open_token = {};             ///< of writing requests while nobody has to sign in
  std::function<base::Date()> today = {};  ///< by the clock of this machine
  std::atomic<bool> open{true};            ///< no person may sign in yet
  double plan_seconds = 3;                 ///< for a plan unless it asks for more
};

}  // namespace serve
