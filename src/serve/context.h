// What every route of the API works with, made once when the server starts.
#pragma once

#include <atomic>
#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <vector>

#include "base/clock.h"
#include "serve/http/events.h"
#include "serve/http/rate_limit.h"
#include "serve/jobs.h"
#include "serve/kept.h"
#include "serve/remembered.h"
#include "store/repository.h"

namespace serve {

using kitchen::Node;

/// Who asks. Without a session on this very machine, before anybody may sign in, it is the head.
struct Who {
  std::string id;  ///< empty: nobody is signed in, and nobody needs to be
  std::string name;
  store::Role role = store::Role::kTeacher;
  std::string token;  ///< what writing requests send back
  bool signed_in = false;
};

struct Planned;    // planning.h
struct WeekOrder;  // order_desk.h

/// Which of several things somebody is at, so that nobody else begins it as well.
class Underway {
 public:
  /// False: somebody is at it already.
  bool begin(int what) {
    const std::lock_guard lock(mutex_);
    return what_.insert(what).second;
  }
  void end(int what) {
    const std::lock_guard lock(mutex_);
    what_.erase(what);
  }

 private:
  std::mutex mutex_;
  std::set<int> what_;
};

/// What took long to work out, by the versions it was worked out from. Of one store: never shared
/// between two.
struct Workings {
  Remembered<Planned> plans{100};           ///< by lesson
  Remembered<std::string> plan_texts{200};  ///< LessonPlan as JSON, by lesson and plan
  Remembered<WeekOrder> orders{12};         ///< by week
  Remembered<Node> digests{400};            ///< of a plan, with its lesson's version, by lesson
  Remembered<Node> week_rows{400};          ///< WeekLesson, by lesson
  Remembered<std::vector<store::Ref>> links{4000};  ///< what a lesson uses, by lesson
  Remembered<std::string> week_texts{8};            ///< Week as JSON, by its Monday
  Remembered<std::string> dish_rows{2000};          ///< DishRow as JSON, by dish
  Remembered<std::string> dish_views{200};          ///< DishView as JSON, by dish and variant
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
  Workings workings = {};
  Underway orders_underway = {};          ///< by the days of their Mondays
  std::atomic<std::uint64_t> changes{0};  ///< one more after every write through the API
};

}  // namespace serve
