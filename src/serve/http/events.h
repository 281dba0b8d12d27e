// Server-sent events (WHATWG HTML, "Server-sent events"): news that a page hears as it happens,
// such as "the soup group is at its checkpoint" for every screen of a lesson.
//
//   hub.publish("lesson/17", "state", json_text);          // from any thread
//   return follow(hub, {"lesson/17"}, last_event_id(request));   // in a handler
//
// A page that was away for a moment says the last id it heard and gets what it missed; if that is
// no longer kept (or the program was started anew) it first gets an event named "missed" and should
// load its state again. Nothing here is stored: what must not be lost belongs in the database.
#pragma once

#include <chrono>
#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace serve::http {

struct Request;
struct Response;
class Hub;

/// Said in a Response: keep this connection and tell it what happens on these channels.
struct EventStream {
  Hub* hub = nullptr;  ///< must outlive the server
  std::vector<std::string> channels;
  std::string after;    ///< the last id heard; empty: only what comes from now on
  std::string opening;  ///< frames sent first (event_frame), for instance the state as it is
  std::string key;      ///< whose stream it is (a session's id), for Hub::end
};

/// One event as it goes over the wire. `name` must hold no line end; `data` may. An empty id is
/// left out.
std::string event_frame(std::string_view id, std::string_view name, std::string_view data);

/// One who hears. Calls come from any thread, under the hub's lock: be quick, never call the hub.
class Listener {
 public:
  virtual ~Listener() = default;
  virtual void hear(std::shared_ptr<const std::string> frame) = 0;
  virtual void end() = 0;  ///< nothing more will come: close
};

struct HubOptions {
  std::size_t kept = 64;                 ///< events a channel keeps for those who were away
  std::size_t kept_bytes = 256U << 10U;  ///< and their bytes
  std::size_t most_channels = 1000;  ///< silent channels nobody follows are forgotten beyond that
};

/// Who follows what. Safe to use from any thread.
class Hub {
 public:
  explicit Hub(HubOptions = {});
  Hub(const Hub&) = delete;
  Hub& operator=(const Hub&) = delete;

  /// Tells everybody on the channel; never waits for them. Returns the event's id. Ids rise over
  /// all channels and are new with each start of the program. Throws std::invalid_argument when the
  /// name holds a line end.
  std::string publish(std::string_view channel, std::string_view name, std::string_view data);

  /// The id of the last event of all. To send a state and then every change to it: take this id,
  /// *then* read the state, send it as `opening` with this id as `after`.
  std::string last_id() const;

  /// Ends every stream with that key: the person signed out. Returns how many.
  std::size_t end(std::string_view key);
  /// Ends every stream of a channel and forgets its events: the lesson is over.
  std::size_t end_channel(std::string_view channel);

  std::size_t listeners() const;
  std::size_t listeners(std::string_view channel) const;

  /// For the server. Returns the frames to send first: `opening` and what was missed. After this,
  /// and in that order, come calls of hear().
  std::string join(const std::shared_ptr<Listener>&, const EventStream&);
  void leave(const Listener*);

 private:
  struct Kept {
    std::uint64_t number = 0;
    std::shared_ptr<const std::string> frame;
  };
  struct Channel {
    std::deque<Kept> events;
    std::size_t bytes = 0;
    std::uint64_t forgotten = 0;  ///< number of the newest event no longer kept
    std::uint64_t last = 0;       ///< number of the newest event
    std::set<const Listener*> followers;
  };
  struct Follower {
    std::shared_ptr<Listener> listener;
    std::vector<std::string> channels;
    std::string key;
  };

  using Channels = std::map<std::string, Channel, std::less<>>;

  Channels::iterator add_channel(std::string_view name);
  std::string id_of(std::uint64_t number) const;
  std::optional<std::uint64_t> number_in(std::string_view id) const;
  std::string missed_since(std::string_view after, const std::vector<std::string>& channels) const;
  void drop(const Listener*);
  void make_room();

  HubOptions options_;
  std::string start_;  ///< the same for all ids of one start of the program
  mutable std::mutex mutex_;
  std::uint64_t last_ = 0;
  std::uint64_t forgotten_ = 0;  ///< newest event of any forgotten channel
  Channels channels_;
  std::map<const Listener*, Follower> followers_;
};

/// The header Last-Event-ID, which browsers send when they come back, or `?after=`; empty if there
/// is neither.
std::string last_event_id(const Request&);
/// The answer that keeps the connection.
Response follow(Hub&, std::vector<std::string> channels, std::string after, std::string key = {});

}  // namespace serve::http
