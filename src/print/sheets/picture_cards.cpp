#include "print/sheets/picture_cards.h"

#include <algorithm>

#include "base/index.h"
#include "print/sheets/pictograms.h"
#include "print/sheets/told_step.h"
#include "print/words.h"

namespace print::sheets {
namespace {

using base::at;

constexpr int kAcross = 3, kDown = 4;

struct Card {
  Task task;
  int number = 0;
};

void draw_card(Document& d, int page, const Box& box, const kitchen::Lesson& lesson,
               const Card& card, int of) {
  Canvas c = d.on(page);
  const kitchen::Step& step = *step_of(lesson, card.task);
  const Box in = box.inset(8);
  const Block number = d.set(std::to_string(card.number), {20, true});
  c.put(number, in.x, in.y - 6);
  const Block count = d.set("of " + std::to_string(of), {9});
  c.put(count, in.x + number.width + 4, in.y + 4);
  const std::string time = minutes(step.least);
  const Block length = d.set(time, {11, true});
  c.put(length, in.right() - length.width, in.y - 2);

  const double picture = std::min(in.w, in.h - 92);
  draw_pictogram(c, pictogram(lesson, card.task),
                 {in.x + (in.w - picture) / 2, in.y + 20, picture, picture});

  const double top = in.y + 24 + picture;
  Type type{12, true, Align::kCentre};
  const Block few = d.set_in(told(lesson, card.task, Level::kFew), type, in.w, 17, 8);
  c.put(few, in.x, top);
  const Block says = d.set_in(told(lesson, card.task, Level::kPlain), {8.5, false, Align::kCentre},
                              in.w, in.bottom() - 13 - top - few.height, 5.5);
  c.put(says, in.x, top + few.height);
  const Look l = look(lesson, card.task);
  c.pattern(l, {in.x, in.bottom() - 8, 26, 9});
  const Block word = d.set(look_word(l), {kSmall, true});
  c.put(word, in.x + 30, in.bottom() - 9.5);
  const Block dish = d.set(tag(lesson, card.task.dish), {kSmall, true});
  c.put(dish, in.right() - dish.width, in.bottom() - 9.5);
}

void draw_dish(Document& document, const Planned& p, int dish) {
  const kitchen::Lesson& lesson = p.lesson;
  const kitchen::Dish& made = lesson.dishes[at(dish)];
  std::vector<Card> cards;
  for (const int step : kitchen::reading_order(made)) {
    Card card;
    card.task.dish = dish;
    card.task.step = step;
    card.task.end = made.method[at(step)].least;
    card.number = static_cast<int>(cards.size()) + 1;
    cards.push_back(card);
  }
  document.begin_part(kA4, foot_words(p), dish_name(made));
  const int per_page = kAcross * kDown;
  Flow flow = Flow::on_new_page(document);
  draw_head(flow, {made.tag, dish_name(made),
                   "Step by step. Cut along the lines, or keep the page.", "", "", false});
  for (int i = 0; at(i) < cards.size(); ++i) {
    const int slot = i % per_page;
    if (i > 0 && slot == 0) flow.next_page();
    const double wide = flow.width() / kAcross, high = flow.left() / kDown;
    const Box box{flow.x() + slot % kAcross * wide, flow.y() + slot / kAcross * high, wide, high};
    Canvas c = flow.canvas();
    c.dashes(box.x, box.y, box.right(), box.y);
    c.dashes(box.x, box.bottom(), box.right(), box.bottom());
    c.dashes(box.x, box.y, box.x, box.bottom());
    c.dashes(box.right(), box.y, box.right(), box.bottom());
    draw_card(document, flow.page(), box, lesson, cards[at(i)], static_cast<int>(cards.size()));
  }
}

}  // namespace

void draw_picture_cards(Document& document, const Planned& p) {
  for (int d = 0; at(d) < p.lesson.dishes.size(); ++d) {
    const bool made = std::any_of(p.lesson.cooks.begin(), p.lesson.cooks.end(), [&](const auto& c) {
      return std::find(c.dishes.begin(), c.dishes.end(), d) != c.dishes.end();
    });
    if (made && !p.lesson.dishes[at(d)].method.empty()) draw_dish(document, p, d);
  }
}

std::string pdf_of_picture_cards(const Planned& p) {
  Document document(p.lesson.title, p.lesson.date);
  draw_picture_cards(document, p);
  return document.pdf();
}

}  // namespace print::sheets
