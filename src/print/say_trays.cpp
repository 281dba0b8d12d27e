#include "print/say_trays.h"

#include <algorithm>

#include "base/text.h"
#include "kitchen/json_tree.h"

namespace print {

using base::say;
using kitchen::Node;
using larder::Pot;
using larder::Tray;
using larder::Trays;
using larder::Weighing;

namespace {

std::string pot_text(const Pot& pot) {
  std::string out = say(pot.name, " ", pot.amount);
  if (!pot.preparation.empty()) out += ", " + pot.preparation;
  return out;
}

std::string together(const std::vector<std::string>& all) {
  std::string out;
  for (const std::string& each : all) out += (out.empty() ? "" : " ") + each;
  return out;
}

std::string total_text(const Weighing& w) {
  if (w.total <= larder::Ratio(0)) return "";
  return larder::amount_text(w.total, w.measure) + (w.summed ? "" : " and what is listed beside");
}

}  // namespace

std::string say_trays(const kitchen::Lesson& lesson, const Trays& trays) {
  std::string out = say(lesson.title, ", ", lesson.date, "\n");
  for (const std::string& warning : trays.warnings) out += "CHECK FIRST: " + warning + "\n";
  const bool any_apart = std::any_of(trays.trays.begin(), trays.trays.end(),
                                     [](const Tray& t) { return t.apart; });
  out += "\nWeigh, each food once\n";
  if (any_apart)
    out +=
        "  Clean scales, scoop and hands to begin with. Pots marked * first, lid on, set apart.\n";
  for (const Weighing& w : trays.weighings) {
    const std::string total = total_text(w);
    out += say(w.clean_first ? "  Wash hands, scoop and scales.\n" : "", "  ", w.name,
               w.cold ? " (fridge)" : "", total.empty() ? "" : ": " + total, "\n");
    for (const Weighing::Portion& p : w.portions) {
      out += say("      ", p.times, " x ", p.amount, ": ");
      std::vector<std::string> places;
      for (const std::string& place : p.places_apart) places.push_back(place + "*");
      places.insert(places.end(), p.places.begin(), p.places.end());
      out += together(places) + "\n";
    }
  }
  out += "\nSet out\n";
  for (const Tray& tray : trays.trays) {
    out += say("  ", tray.where, tray.apart ? "* (covered, apart)" : "", ": ",
               base::joined(tray.dishes), "\n");
    for (const Pot& pot : tray.pots)
      out += say("      ", pot_text(pot), pot.cold ? " (fridge)" : "", "\n");
  }
  return out + "\nAllergies: the school's own records and the labels decide, not this list.\n";
}

std::string tray_cards(const kitchen::Lesson& lesson, const Trays& trays) {
  std::vector<const Tray*> all;
  for (const Tray& tray : trays.trays) all.push_back(&tray);
  std::stable_sort(all.begin(), all.end(), [](const Tray* a, const Tray* b) {
    return std::pair(a->bay, a->place) < std::pair(b->bay, b->place);
  });
  std::string out;
  for (const Tray* tray : all) {
    out += say(out.empty() ? "" : "\n", tray->where, "\n", lesson.title, "\n",
               base::joined(tray->dishes), "\n");
    for (const Pot& pot : tray->pots) out += say("  ", pot_text(pot), "\n");
  }
  return out;
}

std::vector<std::vector<std::string>> weighing_rows(const Trays& trays) {
  std::vector<std::vector<std::string>> rows = {
      {"food", "total", "times", "each", "set apart for", "for", "from the fridge", "clean first"}};
  for (const Weighing& w : trays.weighings) {
    for (const Weighing::Portion& p : w.portions)
      rows.push_back({w.name, total_text(w), std::to_string(p.times), p.amount,
                      together(p.places_apart), together(p.places), w.cold ? "yes" : "",
                      w.clean_first ? "yes" : ""});
  }
  return rows;
}

std::vector<std::vector<std::string>> tray_rows(const Trays& trays) {
  std::vector<std::vector<std::string>> rows = {
      {"place", "dishes", "food", "amount", "preparation", "from the fridge", "apart"}};
  for (const Tray& tray : trays.trays) {
    for (const Pot& pot : tray.pots)
      rows.push_back({tray.where, base::joined(tray.dishes), pot.name, pot.amount, pot.preparation,
                      pot.cold ? "yes" : "", tray.apart ? "yes" : ""});
  }
  return rows;
}

std::string trays_json(const kitchen::Lesson& lesson, const Trays& trays) {
  Node out = Node::object();
  out.set("kind", Node::of("trays"));
  out.set("version", Node::of(1));
  out.set("title", Node::of(lesson.title));
  out.set("date", Node::of(lesson.date));
  Node weigh = Node::list();
  for (const Weighing& w : trays.weighings) {
    Node one = Node::object();
    one.set("food", Node::of(w.food));
    one.set("name", Node::of(w.name));
    one.set("total", Node::of(total_text(w)));
    one.set("cold", Node::of(w.cold));
    one.set("clean_first", Node::of(w.clean_first));
    Node portions = Node::list();
    for (const Weighing::Portion& p : w.portions) {
      Node portion = Node::object();
      portion.set("amount", Node::of(p.amount));
      portion.set("times", Node::of(p.times));
      Node apart = Node::list(), places = Node::list();
      for (const std::string& place : p.places_apart) apart.add(Node::of(place));
      for (const std::string& place : p.places) places.add(Node::of(place));
      portion.set("places_apart", std::move(apart));
      portion.set("places", std::move(places));
      portions.add(std::move(portion));
    }
    one.set("portions", std::move(portions));
    weigh.add(std::move(one));
  }
  Node set = Node::list();
  for (const Tray& tray : trays.trays) {
    Node one = Node::object();
    one.set("where", Node::of(tray.where));
    one.set("apart", Node::of(tray.apart));
    Node dishes = Node::list(), pots = Node::list();
    for (const std::string& dish : tray.dishes) dishes.add(Node::of(dish));
    for (const Pot& pot : tray.pots) {
      Node p = Node::object();
      p.set("name", Node::of(pot.name));
      p.set("amount", Node::of(pot.amount));
      if (!pot.preparation.empty()) p.set("preparation", Node::of(pot.preparation));
      p.set("cold", Node::of(pot.cold));
      pots.add(std::move(p));
    }
    one.set("dishes", std::move(dishes));
    one.set("pots", std::move(pots));
    set.add(std::move(one));
  }
  Node warnings = Node::list();
  for (const std::string& warning : trays.warnings) warnings.add(Node::of(warning));
  out.set("weigh", std::move(weigh));
  out.set("set_out", std::move(set));
  out.set("check_first", std::move(warnings));
  return kitchen::json_text(out);
}

}  // namespace print
