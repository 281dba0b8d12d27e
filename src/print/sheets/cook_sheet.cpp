#include "print/sheets/cook_sheet.h"

#include <algorithm>
#include <map>

#include "base/index.h"
#include "base/text.h"
#include "kitchen/raw_tasting.h"
#include "kitchen/words.h"
#include "print/sheets/room_sheets.h"
#include "print/words.h"

namespace print::sheets {
namespace {

using base::at;

bool attends(const kitchen::Lesson& lesson, const Task& window, int cook) {
  const std::vector<int> there = audience(lesson, lesson.windows[at(window.window)]);
  return std::find(there.begin(), there.end(), cook) != there.end();
}

std::vector<const Task*> tasks_of(const Planned& p, int cook) {
  std::vector<const Task*> out;
  for (const Task& task : p.answer.plan->tasks) {
    const bool mine = task.kind == TaskKind::kWindow ? attends(p.lesson, task, cook)
                                                     : task.cook == cook;
    if (mine) out.push_back(&task);
  }
  return out;
}

/// In the pan, the oven, under the bowl: what goes on without hands.
bool by_itself(const kitchen::Lesson& lesson, const Task& task) {
  return task.kind == TaskKind::kStep && !keeps_hands_busy(lesson, task);
}

/// Sizes of one try at fitting the sheet on a page.
struct Sizes {
  double time = 15, says = 10.5, small = 8.5, row = 36;
};
constexpr Sizes kTries[] = {{19, 12, 9, 42},     {17, 11.5, 9, 36}, {16, 11, 9, 30},
                            {15, 10.5, 8.5, 26}, {14, 10, 8.5, 22}, {13, 9.5, 8.5, 20},
                            {12, 9, 8.5, 17},    {11, 8.5, 8, 15}};

class Sheet {
 public:
  Sheet(Document& d, const Planned& p, int cook, Level level, const Sizes& sizes)
      : d_(d), p_(p), cook_(cook), level_(level), z_(sizes), flow_(begin(d, p, cook)) {}

  void draw() {
    const kitchen::Cook& who = p_.lesson.cooks[at(cook_)];
    std::vector<std::string> dishes;
    for (const int dish : who.dishes)
      dishes.push_back((who.dishes.size() > 1 ? tag(p_.lesson, dish) + " " : "") +
                       dish_name(p_.lesson.dishes[at(dish)]));
    draw_head(flow_, {place(), dishes.empty() ? "Time plan" : joined(dishes, ", "),
                      who.name + " · " + under_title(p_.lesson), "the bell",
                      kitchen::clock(p_.lesson, p_.lesson.bell), true});
    tasks_ = tasks_of(p_, cook_);
    lanes();
    columns();
    heads();
    for (const Task* task : tasks_) row(*task);
    pans();
    boxes();
    flow_.gap(4);
    draw_key(flow_);
  }

 private:
  static Flow begin(Document& d, const Planned& p, int cook) {
    const kitchen::Cook& who = p.lesson.cooks[at(cook)];
    d.begin_part(kA4, foot_words(p), p.lesson.room.places[at(who.place)].name + " " + who.name);
    return Flow::on_new_page(d);
  }

  std::string place() const {
    return p_.lesson.room.places[at(p_.lesson.cooks[at(cook_)].place)].name;
  }

  /// A track for everything that goes on by itself at the same time.
  void lanes() {
    std::vector<Seconds> free;
    for (const Task* task : tasks_) {
      if (!by_itself(p_.lesson, *task)) continue;
      std::size_t lane = 0;
      while (lane < free.size() && free[lane] > task->start) ++lane;
      if (lane == free.size()) free.push_back(Seconds{0});
      free[lane] = task->end;
      lane_[task] = static_cast<int>(lane);
    }
    lanes_ = static_cast<int>(free.size());
  }

  void columns() {
    const double x = flow_.x();
    you_ = x + z_.time * 3.15;
    pans_ = you_ + kBar + 8;
    do_ = pans_ + std::max(1, lanes_) * (kBar + 4) + 6;
    tick_ = x + flow_.width() - 15;
    look_ = do_ + (tick_ - do_) * (z_.row < 25 ? 0.66 : 0.6);
  }

  void heads() {
    Canvas c = flow_.canvas();
    const auto put = [&](const char* text, double x) {
      c.put(d_.set(text, {kSmall, true}), x, flow_.y());
    };
    put("Start", flow_.x());
    put("You", you_ - 1);
    if (lanes_ > 0) put("Pans", pans_ - 1);
    put("Do", do_);
    put("Look out for", look_);
    flow_.gap(12);
    c.line(flow_.x(), flow_.y(), flow_.x() + flow_.width(), flow_.y(), 1);
  }

  std::string small_words(const Task& task) const {
    std::string out = minutes(task.end - task.start);
    out += ", " + (task.kind == TaskKind::kWindow ? "hands off" : look_word(look(p_.lesson, task)));
    const std::string name = tag(p_.lesson, task.dish);
    if (p_.lesson.cooks[at(cook_)].dishes.size() > 1 && !name.empty()) out = name + ": " + out;
    return out;
  }

  // Whether a step of this cook that needs heat ends after the task has begun.
  bool still_hot(const Task& task) const {
    const auto& all = p_.answer.plan->tasks;
    return std::any_of(all.begin(), all.end(), [&](const Task& other) {
      const kitchen::Step* step = other.cook == cook_ ? step_of(p_.lesson, other) : nullptr;
      return step != nullptr && step->heat && other.end > task.start;
    });
  }

  void row(const Task& task) {
    const double says_size = level_ == Level::kFew ? z_.says * 1.3 : z_.says;
    const Block time = d_.set(kitchen::clock(p_.lesson, task.start), {z_.time, true});
    // On a full sheet the minutes go on behind the words instead of under them.
    const bool behind = z_.row < 25;
    Words words_said = bold(told(p_.lesson, task, level_));
    if (behind) words_said.add(" " + small_words(task));
    const Block says = d_.set(words_said, {says_size}, look_ - do_ - 8);
    const Block under = d_.set(behind ? "" : small_words(task), {z_.small}, look_ - do_ - 8);
    const Block out = d_.set(look_out(p_.lesson, task, still_hot(task)), {z_.says * 0.93},
                             tick_ - look_ - 8);
    const double words = says.height + under.height;
    const double height = std::max({z_.row, words + 4, out.height + 4, time.height});
    const int before = flow_.page();
    flow_.need(height);
    if (flow_.page() != before) heads();
    Canvas c = flow_.canvas();
    const double y = flow_.y();
    c.put(time, flow_.x(), y + (height - time.height) / 2);
    c.put(says, do_, y + (height - words) / 2);
    c.put(under, do_, y + (height - words) / 2 + says.height);
    c.put(out, look_, y + (height - out.height) / 2);
    const double box = std::min(14.0, height - 4);
    draw_tick_box(c, tick_, y + (height - box) / 2, box);
    if (!by_itself(p_.lesson, task)) {
      const Look l = task.kind == TaskKind::kWindow ? Look::kLeave : look(p_.lesson, task);
      c.pattern(l, {you_, y + 1.5, kBar, height - 3});
    }
    rows_.push_back({task.start, flow_.page(), y, height});
    flow_.gap(height);
    c.line(flow_.x(), flow_.y(), flow_.x() + flow_.width(), flow_.y(), 0.4, 0.4);
  }

  struct Placed {
    Seconds start{0};
    int page = 0;
    double y = 0, height = 0;
  };

  /// Where a moment lies between the rows: page and height.
  std::pair<int, double> where(Seconds when) const {
    for (std::size_t i = rows_.size(); i-- > 0;) {
      const Placed& r = rows_[i];
      if (r.start > when) continue;
      if (r.start == when) {
        std::size_t first = i;  // the first of several that begin together
        while (first > 0 && rows_[first - 1].start == when) --first;
        return {rows_[first].page, rows_[first].y};
      }
      const Seconds next = i + 1 < rows_.size() ? rows_[i + 1].start : r.start + base::minutes(5);
      const double share = std::min(1.0, static_cast<double>((when - r.start).count()) /
                                             static_cast<double>((next - r.start).count()));
      return {r.page, r.y + r.height * share};
    }
    return rows_.empty() ? std::pair{flow_.page(), flow_.y()}
                         : std::pair{rows_.front().page, rows_.front().y};
  }

  void pans() {
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
      const Task& task = *tasks_[i];
      if (!by_itself(p_.lesson, task)) continue;
      const double x = pans_ + lane_.at(&task) * (kBar + 4);
      const Placed& from = rows_[i];
      auto [page, bottom] = where(task.end);
      if (page == from.page) {
        bar(task, page, x, from.y + 1.5, std::max(bottom, from.y + from.height) - 1.5);
        continue;
      }
      double last = from.y + from.height, first = 1e9;
      for (const Placed& r : rows_) {
        if (r.page == from.page) last = std::max(last, r.y + r.height);
        if (r.page == page) first = std::min(first, r.y);
      }
      bar(task, from.page, x, from.y + 1.5, last);
      if (bottom > first) bar(task, page, x, first, bottom);
    }
  }

  void bar(const Task& task, int page, double x, double top, double bottom) {
    Canvas c = d_.on(page);
    const Look l = look(p_.lesson, task);
    c.pattern(l, {x, top, kBar, bottom - top});
    const kitchen::Step* step = step_of(p_.lesson, task);
    std::string name = step != nullptr && step->heat ? step->heat->vessel : "";
    if (step != nullptr && step->heat && step->heat->with == kitchen::HeatKind::kOven)
      name = "oven";
    const Type type{8, true};
    for (const std::string& text :
         {name.empty() ? brief(p_.lesson, task) + ": " + look_word(l) : name + ": " + look_word(l),
          look_word(l)}) {
      const Block words = d_.set(text, type);
      if (words.width + 6 > bottom - top) continue;
      const double middle = (top + bottom) / 2;
      c.fill({x + 1.5, middle - words.width / 2 - 2, kBar - 3, words.width + 4}, 1);
      c.put_upwards(words, x + (kBar - words.height) / 2, middle + words.width / 2);
      return;
    }
  }

  void boxes() {
    const kitchen::Cook& who = p_.lesson.cooks[at(cook_)];
    const bool cooked = std::any_of(who.dishes.begin(), who.dishes.end(), [&](int dish) {
      return wants_probe(p_.lesson.dishes[at(dish)]);
    });
    const double gap = 14, width = (flow_.width() - 2 * gap) / 3;
    flow_.gap(8);
    flow_.need(box_height(width));
    const double top = flow_.y();
    double bottom = top;
    const auto box = [&](int n, const char* title) {
      Flow f(d_, flow_.page(), {flow_.x() + n * (width + gap), top, width, flow_.left()});
      f.canvas().line(f.x(), top, f.x() + width, top, 1.5);
      f.gap(2);
      f.paragraph(bold(title), {9.5});
      return f;
    };
    if (cooked) {
      Flow f = box(0, "Probe before serving");
      f.paragraph("Middle of the food: 75 °C, or your school's own figure.", {9});
      f.gap(9);
      Canvas c = f.canvas();
      const Block reading = d_.set("Reading", {9}), at_time = d_.set("°C at", {9});
      c.put(reading, f.x(), f.y());
      const double line = (width - reading.width - at_time.width - 14) / 2;
      c.line(f.x() + reading.width + 4, f.y() + 10, f.x() + reading.width + 4 + line, f.y() + 10);
      c.put(at_time, f.x() + reading.width + 7 + line, f.y());
      c.line(f.x() + width - line, f.y() + 10, f.x() + width, f.y() + 10);
      bottom = std::max(bottom, f.y() + 14);
    } else {
      Flow f = box(0, "How did it go?");
      for (int i = 0; i < 2; ++i) {
        f.gap(16);
        f.canvas().line(f.x(), f.y(), f.x() + width, f.y());
      }
      bottom = std::max(bottom, f.y() + 2);
    }
    {
      Flow f = box(1, who.dishes.size() > 1 ? "In these dishes" : "In this dish");
      for (const int dish : who.dishes) {
        Words words;
        if (who.dishes.size() > 1) words.bold(tag(p_.lesson, dish) + " ");
        f.paragraph(words.also(dish_allergens(p_.lesson.dishes[at(dish)])), {9});
      }
      if (no_tasting(who)) f.paragraph(bold(kNoTasting), {9});
      f.paragraph("Labels decide. Wash hands before touching another cook's food.", {9});
      bottom = std::max(bottom, f.y());
    }
    {
      Flow f = box(2, "Stuck, cut or burnt?");
      f.paragraph(
          "Hand up, stay at your place. Burn: cool running water at once, 20 min, and "
          "tell your teacher.",
          {9});
      bottom = std::max(bottom, f.y());
    }
    flow_.gap(bottom - top);
  }

  bool no_tasting(const kitchen::Cook& who) const {
    return p_.lesson.rules.no_raw_tasting &&
           std::any_of(who.dishes.begin(), who.dishes.end(), [&](int dish) {
             return !kitchen::raw_in(p_.lesson.dishes[at(dish)]).empty();
           });
  }

  double box_height(double width) const {
    double most = 72;
    double sum = 34;
    for (const int dish : p_.lesson.cooks[at(cook_)].dishes)
      sum += d_.set(dish_allergens(p_.lesson.dishes[at(dish)]), {9}, width - 12).height + 3;
    if (no_tasting(p_.lesson.cooks[at(cook_)]))
      sum += d_.set(bold(kNoTasting), {9}, width - 12).height + 3;
    return std::max(most, sum + 8) + 20;
  }

  static constexpr double kBar = 13;
  static constexpr const char* kNoTasting = "Raw mix: do not taste, do not lick.";

  Document& d_;
  const Planned& p_;
  int cook_;
  Level level_;
  Sizes z_;
  Flow flow_;
  std::vector<const Task*> tasks_;
  std::map<const Task*, int> lane_;
  int lanes_ = 0;
  double you_ = 0, pans_ = 0, do_ = 0, look_ = 0, tick_ = 0;
  std::vector<Placed> rows_;
};

Level level_of(const CookSheets& asked, int cook) {
  for (const auto& [who, level] : asked.levels) {
    if (who == cook) return level;
  }
  return asked.level;
}

}  // namespace

Words dish_allergens(const kitchen::Dish& dish) {
  std::map<kitchen::Allergen, std::vector<std::string>> found;
  std::vector<std::string> unread;
  for (const kitchen::Ingredient& ingredient : dish.ingredients) {
    if (!ingredient.label_read) {
      unread.push_back(ingredient.name);
      continue;
    }
    for (const kitchen::Allergen a : ingredient.contains) found[a].push_back(ingredient.name);
  }
  Words out;
  for (const auto& [allergen, names] : found) {
    std::string word(kitchen::word(allergen));
    std::transform(word.begin(), word.end(), word.begin(), [](char c) {
      return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    });
    if (!out.empty()) out.add("; ");
    out.bold(word).add(" (" + joined(names, ", ") + ")");
  }
  if (found.empty() && unread.empty()) return "None of the fourteen is listed; labels decide.";
  if (!found.empty()) out.add(".");
  if (!unread.empty())
    out.add(out.empty() ? "" : " ").bold("Read the label").add(" of " + listed(unread) + ".");
  return out;
}

void draw_cook_sheets(Document& document, const Planned& p, const CookSheets& asked) {
  if (!p.answer.plan) return;
  std::vector<int> cooks = asked.cooks;
  if (cooks.empty()) {
    for (int c = 0; at(c) < p.lesson.cooks.size(); ++c) cooks.push_back(c);
    std::stable_sort(cooks.begin(), cooks.end(), [&](int a, int b) {
      return p.lesson.cooks[at(a)].place < p.lesson.cooks[at(b)].place;
    });
  }
  // As few pages as can be, then as large as that allows. Cooks of one class mostly need the same
  // size, so the last one's is tried first.
  std::size_t from = 0;
  for (const int cook : cooks) {
    const Level level = level_of(asked, cook);
    const auto pages = [&](std::size_t size) {
      Document scratch("", "");
      Sheet(scratch, p, cook, level, kTries[size]).draw();
      return scratch.pages();
    };
    const int least = from + 1 < std::size(kTries) ? pages(std::size(kTries) - 1) : pages(from);
    while (from > 0 && pages(from - 1) <= least) --from;
    while (from + 1 < std::size(kTries) && pages(from) > least) ++from;
    Sheet(document, p, cook, level, kTries[from]).draw();
  }
}

std::string pdf_of_cook_sheets(const Planned& p, const CookSheets& asked) {
  Document document(p.lesson.title, p.lesson.date);
  draw_cook_sheets(document, p, asked);
  return document.pdf();
}

}  // namespace print::sheets
