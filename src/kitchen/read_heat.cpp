// Where a step's heat comes from: a ring, an oven or a grill.
#include "kitchen/document.h"
#include "kitchen/field_lists.h"
#include "kitchen/method.h"

namespace kitchen {

using base::say;

namespace {

int tolerance_of(const Fields& h) {
  const int degrees = h.whole("tolerance", 0, 100, 0);
  if (degrees % 10 == 0) return degrees;
  h.reader().add(
      "oven.not_tens", h.where("tolerance"),
      say(h.what(), ": a tolerance of ", degrees, " °C does not reach a mark of the knob."),
      say("Write ", degrees / 10 * 10, " or ", degrees / 10 * 10 + 10, "."));
  return 0;
}

Heat ring_of(const Fields& h) {
  Heat heat;
  heat.vessel = h.text("ring", 40);
  heat.rings = h.whole("rings", 1, 2, 1);
  return heat;
}

Heat oven_of(const Fields& h, Seconds least) {
  Heat heat;
  heat.with = HeatKind::kOven;
  heat.vessel = h.text("oven", 40);
  heat.setting = {celsius_of(h, "celsius", std::nullopt),
                  h.word("kind", kOvenKindWords, std::optional{OvenKind::kConventional})};
  heat.tolerance = tolerance_of(h);
  heat.shelf_twelfths = h.whole("shelf_twelfths", 1, 24, 12);
  heat.shared_tray = h.flag("shared_tray", false);
  heat.door_shut = h.minutes("door_shut_minutes", Seconds{0}, Seconds{0});
  if (heat.door_shut > least) {
    h.reader().add(
        "dish.step.door_shut_too_long", h.where("door_shut_minutes"),
        say(h.what(), " keeps the oven door shut for ", base::minutes_text(heat.door_shut),
            " but bakes only ", base::minutes_text(least), "."),
        "Shorten the time the door is shut.");
  }
  return heat;
}

Heat grill_of(const Fields& h) {
  Heat heat;
  heat.with = HeatKind::kGrill;
  heat.vessel = h.text("grill", 40);
  heat.setting = {celsius_of(h, "celsius", 220), OvenKind::kGrill};
  heat.tolerance = tolerance_of(h);
  return heat;
}

}  // namespace

std::optional<Heat> heat_of(const Fields& step, Seconds least) {
  const Node* node = step.find("heat");
  if (node == nullptr) return std::nullopt;
  const bool ring = node->find("ring") != nullptr;
  const bool oven = node->find("oven") != nullptr;
  const bool grill = node->find("grill") != nullptr;
  const int kinds = int{ring} + int{oven} + int{grill};
  if (node->kind == Node::Kind::kObject && kinds != 1) {
    step.reader().add(
        "dish.step.which_heat", step.where("heat"),
        say(step.what(), kinds > 1 ? " has more than one kind of heat."
                                   : " does not say where its heat comes from."),
        "Write one of { \"ring\": \"large pan\" }, { \"oven\": \"tin\", \"celsius\": 180 } "
        "or { \"grill\": \"tray\" }.");
    return std::nullopt;
  }
  const std::string where = step.where("heat");
  if (oven) return oven_of(Fields(step.reader(), *node, where, step.what(), kOvenFields), least);
  if (grill) return grill_of(Fields(step.reader(), *node, where, step.what(), kGrillFields));
  return ring_of(Fields(step.reader(), *node, where, step.what(), kRingFields));
}

}  // namespace kitchen
