// One row of bars. The bar a cook is busy with takes the row; what cooks on by itself meanwhile
// shrinks to a foot line and grows back to full height when hands are free.
#include <fmt/format.h>

#include <algorithm>

#include "print/picture_parts.h"
#include "print/say_parts.h"

namespace print {
namespace {

struct Piece {
  Seconds from{0}, to{0};
};

/// What is left of `piece` outside `taken`.
std::vector<Piece> outside(Piece piece, const std::vector<Piece>& taken) {
  std::vector<Piece> left{piece};
  for (const Piece& t : taken) {
    std::vector<Piece> next;
    for (const Piece& p : left) {
      if (t.to <= p.from || p.to <= t.from) {
        next.push_back(p);
        continue;
      }
      if (p.from < t.from) next.push_back({p.from, t.from});
      if (t.to < p.to) next.push_back({t.to, p.to});
    }
    left = std::move(next);
  }
  return left;
}

/// First lane free at `from`; lanes hold the moment they become free. At most `most` lanes, the
/// last one shared.
std::size_t lane_for(std::vector<Seconds>& lanes, Seconds from, Seconds to, std::size_t most) {
  std::size_t lane = 0;
  while (lane < lanes.size() && lanes[lane] > from) ++lane;
  lane = std::min(lane, most - 1);
  if (lane >= lanes.size()) lanes.push_back(to);
  lanes[lane] = std::max(lanes[lane], to);
  return lane;
}

/// A pair may do two things at once: their bars share the height for as long as that lasts.
struct Placed {
  const Task* task;
  std::size_t lane = 0;
  std::size_t lanes = 1;
};

std::vector<Placed> place_busy(const std::vector<const Task*>& busy, std::size_t most) {
  std::vector<Placed> out;
  std::vector<Seconds> lanes;
  Seconds until{0};
  std::size_t first = 0;
  const auto finish = [&] {
    for (std::size_t i = first; i < out.size(); ++i) out[i].lanes = lanes.size();
    first = out.size();
    lanes.clear();
  };
  for (const Task* task : busy) {
    if (task->start >= until) finish();
    out.push_back({task, lane_for(lanes, task->start, task->end, most), 1});
    until = std::max(until, task->end);
  }
  finish();
  return out;
}

constexpr std::size_t kMostLanes = 7;  ///< of a wave, where queues of several things overlap

class Row {
 public:
  Row(Frame& frame, const std::vector<Task>& tasks, double y, double height, bool wave)
      : frame_(frame), y_(y), bar_(height - 8), wave_(wave) {
    for (const Task& task : tasks) {
      (task.kind == TaskKind::kLook && !wave                                  ? looks_
       : task.kind == TaskKind::kLook || keeps_hands_busy(frame.lesson, task) ? busy_
                                                                              : passive_)
          .push_back(&task);
    }
  }

  void draw() {
    for (const Task* task : busy_) taken_.push_back({task->start, task->end});
    std::vector<Seconds> feet;
    for (const Task* task : passive_) draw_passive(*task, feet);
    for (const Placed& placed : place_busy(busy_, wave_ ? kMostLanes : 3)) draw_busy(placed);
    for (const Task* task : looks_) draw_look(*task);
  }

 private:
  void open(const Task& task) {
    std::string words = task_words(frame_.lesson, task);
    if (wave_) words = words.substr(words.find(": ") + 2);  // of everybody, not of the first
    frame_.body.open("bar", words, R"(tabindex="0" role="img")");
  }

  void bar(const Task& task, Piece piece, double y, double h) {
    const double x = frame_.x(piece.from);
    draw_bar(frame_, look(frame_.lesson, task), task.dish, x, y,
             std::max(1.0, frame_.x(piece.to) - x - 0.8), h, tag(frame_.lesson, task.dish),
             brief(frame_.lesson, task));
  }

  void draw_passive(const Task& task, std::vector<Seconds>& feet) {
    const Piece whole{task.start, task.end};
    const std::vector<Piece> full = outside(whole, taken_);
    const std::vector<Piece> foot = outside(whole, full);
    open(task);
    if (!foot.empty()) {
      const auto lane = static_cast<double>(lane_for(feet, task.start, task.end, 2));
      for (const Piece& p : foot) {
        const double x = frame_.x(p.from);
        const char kind = look(frame_.lesson, task) == Look::kWatch ? 'p' : 'o';
        frame_.body.rect(x, y_ + bar_ + 2.2 + lane * 3, frame_.x(p.to) - x, 2.4,
                         kind + frame_.ink(task.dish).substr(1));
      }
    }
    for (const Piece& p : full) {
      bar(task, p, y_ + 1, bar_);
      taken_.push_back(p);
    }
    frame_.body.close();
  }

  void draw_busy(const Placed& placed) {
    const double h = bar_ / static_cast<double>(placed.lanes);
    open(*placed.task);
    bar(*placed.task, {placed.task->start, placed.task->end},
        y_ + 1 + h * static_cast<double>(placed.lane), h - (placed.lanes > 1 ? 0.8 : 0));
    frame_.body.close();
  }

  void draw_look(const Task& task) {
    open(task);
    const double x = frame_.x(task.start);
    const double w = std::max(5.0, frame_.x(task.end) - x - 0.6);
    frame_.body.rect(x, y_, w, bar_ + 2, "plate");
    frame_.body.rect(x, y_, 1.8, bar_ + 2, "solid");
    frame_.body.rect(x + 3.2, y_, 1.8, bar_ + 2, "solid");
    frame_.body.close();
  }

  Frame& frame_;
  double y_, bar_;
  bool wave_;
  std::vector<const Task*> busy_, passive_, looks_;
  std::vector<Piece> taken_;
};

struct Word {
  std::string text;
  bool bold = true;
};

/// The words on a bar: all of them on one line, or on two or three if the bar is tall, or the tag
/// alone, or none.
std::vector<Word> bar_words(const std::string& tag, const std::string& name, double w, double h) {
  const auto fits = [&](const Word& word) { return text_width(word.text, 11, word.bold) <= w; };
  if (h < 9) return {};
  const Word whole{tag.empty() ? name : tag + " " + name};
  if (fits(whole)) return {whole};
  const std::size_t space = std::min(name.find(' '), name.size());
  const Word head{name.substr(0, space), false};
  const Word rest{name.substr(std::min(space + 1, name.size())), false};
  if (h >= 24 && !tag.empty() && fits({tag}) && fits({name, false})) return {{tag}, {name, false}};
  if (h >= 36 && !tag.empty() && fits({tag}) && fits(head) && fits(rest)) {
    return rest.text.empty() ? std::vector<Word>{{tag}, head}
                             : std::vector<Word>{{tag}, head, rest};
  }
  if (tag.empty() && h >= 24 && fits(head) && fits(rest) && !rest.text.empty()) return {head, rest};
  if (!tag.empty()) return fits({tag}) ? std::vector<Word>{{tag}} : std::vector<Word>{};
  return fits(head) ? std::vector<Word>{head} : std::vector<Word>{};
}

}  // namespace

std::size_t lanes_needed(const kitchen::Lesson& lesson, const std::vector<Task>& tasks) {
  std::vector<const Task*> busy;
  for (const Task& task : tasks) {
    if (task.kind == TaskKind::kLook || keeps_hands_busy(lesson, task)) busy.push_back(&task);
  }
  std::size_t most = 1;
  for (const Placed& placed : place_busy(busy, kMostLanes)) most = std::max(most, placed.lanes);
  return most;
}

void draw_row(Frame& frame, const std::vector<Task>& tasks, double y, double height, bool wave) {
  Row(frame, tasks, y, height, wave).draw();
}

void draw_bar(Frame& frame, Look look, int dish, double x, double y, double w, double h,
              const std::string& tag, const std::string& name) {
  const std::string ink = frame.ink(dish).substr(1);
  switch (look) {
    case Look::kHands:
      frame.body.rect(x, y, w, h, "d" + ink);
      break;
    case Look::kWatch:
      frame.body.rect(x, y, w, h, "p" + ink);
      break;
    case Look::kLeave:
      frame.body.rect(x, y + 0.6, w, h - 1.2, "o" + ink);
      break;
    case Look::kClean:
      frame.body.rect(x, y, w, h, "clean");
      break;
    case Look::kGrownUp:
      frame.body.rect(x, y, w, h, "d" + ink);
      if (w > 7) frame.body.rect(x + 2.4, y, 1.8, h, "plate");
      if (w > 12) frame.body.rect(x + 6.4, y, 1.8, h, "plate");
      break;
  }
  const double inset = look == Look::kGrownUp && w > 12 ? 10 : 2.5;
  const std::vector<Word> words = bar_words(tag, name, w - inset - 1, h);
  const bool white = look == Look::kHands || look == Look::kGrownUp;
  double base = y + h / 2 + 4 - 6 * (static_cast<double>(words.size()) - 1);
  for (const Word& word : words) {  // what does not fit is said again on focus
    if (look == Look::kWatch || look == Look::kClean) {
      frame.body.rect(x + inset - 1, base - 9, std::min(text_width(word.text, 11, true), w - inset),
                      std::min(11.5, h), "plate");
    }
    frame.body.text(x + inset, base, word.text,
                    (word.bold ? "s11 b " : "s11 ") + (white ? "w" : "t" + ink));
    base += 12;
  }
}

}  // namespace print
