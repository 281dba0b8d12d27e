// Tray lists on paper: weighing by food, setting out by place, and the card on each tray. The card
// says the same words on every tray; what stands apart is on the technician's lists only.
#pragma once

#include <string>
#include <vector>

#include "kitchen/lesson.h"
#include "larder/trays.h"

namespace print {

/// For the technician: by food, then by place.
std::string say_trays(const kitchen::Lesson&, const larder::Trays&);
/// The cards, in the room's order, one a tray: place, dishes, what lies on it. Pupils see these.
std::string tray_cards(const kitchen::Lesson&, const larder::Trays&);
/// Tables, the first row the headings: by food and by place.
std::vector<std::vector<std::string>> weighing_rows(const larder::Trays&);
std::vector<std::vector<std::string>> tray_rows(const larder::Trays&);
std::string trays_json(const kitchen::Lesson&, const larder::Trays&);

}  // namespace print
