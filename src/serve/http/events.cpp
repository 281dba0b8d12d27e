#include "serve/http/events.h"

#include <algorithm>
#include <charconv>
#include <random>
#include <stdexcept>
#include <utility>

#include "serve/http/message.h"

namespace serve::http {
namespace {

std::string new_start() {
  constexpr std::string_view kLetters = "0123456789abcdefghijkmnpqrstuvwxyz";
  std::random_device luck;
  std::string out;
  for (int i = 0; i < 8; ++i) out += kLetters[luck() % kLetters.size()];
  return out;
}

}  // namespace

std::string event_frame(std::string_view id, std::string_view name, std::string_view data) {
  if (name.find_first_of("\r\n") != std::string_view::npos ||
      id.find_first_of("\r\n") != std::string_view::npos)
    throw std::invalid_argument("an event's name or id holds a line end");
  std::string out;
  if (!id.empty()) out.append("id: ").append(id).append("\n");
  if (!name.empty()) out.append("event: ").append(name).append("\n");
  // Each line of the data is a field of its own; "\r\n", "\r" and "\n" all end a line.
  for (std::size_t at = 0;;) {
    const auto end = std::min(data.find_first_of("\r\n", at), data.size());
    out.append("data: ").append(data.substr(at, end - at)).append("\n");
    if (end == data.size()) break;
    at = end + (data.substr(end, 2) == "\r\n" ? 2 : 1);
  }
  return out += '\n';
}

Hub::Hub(HubOptions options) : options_(options), start_(new_start()) {}

std::string Hub::id_of(std::uint64_t number) const { return start_ + '-' + std::to_string(number); }

std::optional<std::uint64_t> Hub::number_in(std::string_view id) const {
  if (!id.starts_with(start_) || id.size() < start_.size() + 2 || id[start_.size()] != '-')
    return std::nullopt;
  id.remove_prefix(start_.size() + 1);
  std::uint64_t number = 0;
  const auto [end, fault] = std::from_chars(id.data(), id.data() + id.size(), number);
  if (fault != std::errc() || end != id.data() + id.size() || number > last_) return std::nullopt;
  return number;
}

std::string Hub::publish(std::string_view channel, std::string_view name, std::string_view data) {
  const std::lock_guard lock(mutex_);
  std::string id = id_of(last_ + 1);
  auto frame = std::make_shared<const std::string>(event_frame(id, name, data));
  auto found = channels_.find(channel);
  if (found == channels_.end()) found = add_channel(channel);
  Channel& to = found->second;
  to.last = ++last_;
  to.bytes += frame->size();
  to.events.push_back({last_, frame});
  while (!to.events.empty() &&
         (to.events.size() > options_.kept || to.bytes > options_.kept_bytes)) {
    to.forgotten = to.events.front().number;
    to.bytes -= to.events.front().frame->size();
    to.events.pop_front();
  }
  for (const Listener* each : to.followers) followers_.at(each).listener->hear(frame);
  return id;
}

std::string Hub::last_id() const {
  const std::lock_guard lock(mutex_);
  return id_of(last_);
}

Hub::Channels::iterator Hub::add_channel(std::string_view name) {
  make_room();
  Channel made;
  // A channel that was forgotten earlier must not look as if it had never had events.
  made.forgotten = made.last = forgotten_;
  return channels_.emplace(std::string(name), std::move(made)).first;
}

/// Forgets the channel that was silent longest, of those nobody follows.
void Hub::make_room() {
  if (channels_.size() < options_.most_channels) return;
  auto oldest = channels_.end();
  for (auto it = channels_.begin(); it != channels_.end(); ++it)
    if (it->second.followers.empty() &&
        (oldest == channels_.end() || it->second.last < oldest->second.last))
      oldest = it;
  if (oldest == channels_.end()) return;
  forgotten_ = std::max(forgotten_, oldest->second.last);
  channels_.erase(oldest);
}

std::string Hub::missed_since(std::string_view after,
                              const std::vector<std::string>& channels) const {
  if (after.empty()) return {};
  const auto known = number_in(after);
  std::vector<const Kept*> missed;
  bool gap = !known;
  for (const std::string& name : channels) {
    if (gap) break;
    const auto found = channels_.find(name);
    if (found == channels_.end()) {
      gap = *known < forgotten_;  // it may have been forgotten whole
      continue;
    }
    gap = *known < found->second.forgotten;
    for (const Kept& kept : found->second.events)
      if (kept.number > *known) missed.push_back(&kept);
  }
  // With a gap the page starts afresh from its own reading, so that half a history helps nobody.
  // The id says from where: the next return then counts from here.
  if (gap) return event_frame(id_of(last_), "missed", "");
  std::sort(missed.begin(), missed.end(),
            [](const Kept* a, const Kept* b) { return a->number < b->number; });
  std::string out;
  for (const Kept* kept : missed) out += *kept->frame;
  return out;
}

std::string Hub::join(const std::shared_ptr<Listener>& listener, const EventStream& stream) {
  const std::lock_guard lock(mutex_);
  std::vector<std::string> names = stream.channels;
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  std::string first = stream.opening + missed_since(stream.after, names);
  for (const std::string& name : names) {
    auto found = channels_.find(name);
    if (found == channels_.end()) found = add_channel(name);
    found->second.followers.insert(listener.get());
  }
  followers_[listener.get()] = {listener, std::move(names), stream.key};
  return first;
}

void Hub::drop(const Listener* listener) {
  const auto found = followers_.find(listener);
  if (found == followers_.end()) return;
  for (const std::string& name : found->second.channels) {
    const auto channel = channels_.find(name);
    if (channel == channels_.end()) continue;
    channel->second.followers.erase(listener);
    if (channel->second.followers.empty() && channel->second.events.empty()) {
      forgotten_ = std::max(forgotten_, channel->second.last);
      channels_.erase(channel);
    }
  }
  followers_.erase(found);
}

void Hub::leave(const Listener* listener) {
  const std::lock_guard lock(mutex_);
  drop(listener);
}

std::size_t Hub::end(std::string_view key) {
  const std::lock_guard lock(mutex_);
  std::vector<std::shared_ptr<Listener>> ended;
  for (const auto& [listener, follower] : followers_)
    if (follower.key == key) ended.push_back(follower.listener);
  for (const auto& each : ended) {
    drop(each.get());
    each->end();
  }
  return ended.size();
}

std::size_t Hub::end_channel(std::string_view channel) {
  const std::lock_guard lock(mutex_);
  const auto found = channels_.find(channel);
  if (found == channels_.end()) return 0;
  std::vector<std::shared_ptr<Listener>> ended;
  for (const Listener* each : found->second.followers)
    ended.push_back(followers_.at(each).listener);
  forgotten_ = std::max(forgotten_, found->second.last);
  found->second.events.clear();
  found->second.bytes = 0;
  if (ended.empty()) channels_.erase(found);
  for (const auto& each : ended) {
    drop(each.get());
    each->end();
  }
  return ended.size();
}

std::size_t Hub::listeners() const {
  const std::lock_guard lock(mutex_);
  return followers_.size();
}

std::size_t Hub::listeners(std::string_view channel) const {
  const std::lock_guard lock(mutex_);
  const auto found = channels_.find(channel);
  return found == channels_.end() ? 0 : found->second.followers.size();
}

std::string last_event_id(const Request& request) {
  if (const std::string* header = request.header("Last-Event-ID")) return *header;
  const std::string* asked = request.asked("after");
  return asked == nullptr ? std::string() : *asked;
}

Response follow(Hub& hub, std::vector<std::string> channels, std::string after, std::string key) {
  Response out;
  EventStream stream;
  stream.hub = &hub;
  stream.channels = std::move(channels);
  stream.after = std::move(after);
  stream.key = std::move(key);
  out.stream = std::move(stream);
  return out;
}

}  // namespace serve::http
