#include <algorithm>

#include "kitchen/change_over.h"
#include "kitchen/document.h"
#include "kitchen/field_lists.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

std::string named(std::string_view noun, const Node& node) {
  const Node* name = node.find("name");
  return name != nullptr && name->kind == Node::Kind::kText
             ? say("The ", noun, " ", in_quotes(name->text))
             : say("A ", noun);
}

class RoomReader {
 public:
  RoomReader(Reader& outer, const Node& node, const std::string& where)
      : reader_(outer.file(), outer.problems()),
        f_(reader_, node, where, named("room", node), kRoomFields) {}

  std::optional<Room> read() {
    if (!f_.is_object()) return std::nullopt;
    room_.name = f_.text("name", 60);
    bays();
    room_.hand_basins = f_.whole("hand_basins", 0, 50, 1);
    room_.hands_at_sinks = f_.flag("hands_at_sinks", true);
    if (room_.hand_basins == 0 && !room_.hands_at_sinks) {
      reader_.add("room.nowhere_for_hands", f_.where("hand_basins"),
                  say(f_.what(), " has no hand basin, and hands may not be washed at the sinks."),
                  "Give it a hand basin, or allow the sinks.");
    }
    room_.table_positions = f_.whole("table_positions", 1, 100, 6);
    room_.fridge_tenths = f_.whole("fridge_tenths", 0, 1000, 40);
    room_.freezer_tenths = f_.whole("freezer_tenths", 0, 1000, 10);
    kit();
    change_over();
    seen_together();
    if (!reader_.clean()) return std::nullopt;
    return std::move(room_);
  }

 private:
  Reader reader_;
  Fields f_;
  Room room_;
  struct PlaceAsWritten {
    Place place;
    std::vector<Entry> cookers;  // resolved once all bays are read
    std::string where;
  };
  std::vector<PlaceAsWritten> places_;

  template <class T>
  void refuse_twin(const std::vector<T>& all, const std::string& name, std::string_view nouns,
                   const char* code, const std::string& where) {
    const auto count = std::count_if(all.begin(), all.end(),
                                     [&](const T& each) { return each.name == name; });
    if (count > 0 && !name.empty())
      reader_.add(code, where, say("Two ", nouns, " are called ", in_quotes(name), "."),
                  "Give one of them another name.");
  }

  void bays() {
    if (f_.find("bays") == nullptr) f_.missing("bays");
    for (const Entry& entry : f_.list("bays", 50)) bay(entry);
    if (reader_.clean() && places_.empty()) {
      reader_.add("room.no_places", f_.where("bays"), say(f_.what(), " has no place to cook at."),
                  "List places in at least one bay.");
    }
    for (const PlaceAsWritten& written : places_) reach(written);
  }

  void bay(const Entry& entry) {
    const Fields b(reader_, *entry.node, entry.where, named("bay", *entry.node), kBayFields);
    if (!b.is_object()) return;
    const int index = static_cast<int>(room_.bays.size());
    const std::string name = b.text("name", 30);
    refuse_twin(room_.bays, name, "bays", "room.bay_twice", b.where("name"));
    room_.bays.push_back({name, b.whole("sinks", 1, 50, 1)});
    const int first_cooker = static_cast<int>(room_.cookers.size());
    for (const Entry& each : b.list("cookers", 50)) cooker(each, index);
    const int cookers = static_cast<int>(room_.cookers.size()) - first_cooker;
    const std::vector<Entry> places = b.list("places", 100);
    for (std::size_t i = 0; i < places.size(); ++i)
      place(b, places[i], index,
            spread(static_cast<int>(i), static_cast<int>(places.size()), first_cooker, cookers));
  }

  /// The cookers of place `i` of `places` when nothing is said: every cooker is somebody's own.
  static std::vector<int> spread(int i, int places, int first, int cookers) {
    std::vector<int> out;
    const int from = i * cookers / places;
    const int to = std::max(from + 1, (i + 1) * cookers / places);
    for (int k = from; k < std::min(to, cookers); ++k) {
      out.push_back(first + k);
      if (places >= cookers) break;
    }
    return out;
  }

  void cooker(const Entry& entry, int bay) {
    const Fields c(reader_, *entry.node, entry.where, named("cooker", *entry.node), kCookerFields);
    if (!c.is_object()) return;
    Cooker cooker;
    cooker.name = c.text("name", 30);
    cooker.bay = bay;
    cooker.rings = c.whole("rings", 0, 12, 4);
    cooker.shelves = c.whole("shelves", 0, 12, 2);
    const GrillKind usual = cooker.shelves > 0 ? GrillKind::kInOven : GrillKind::kNone;
    cooker.grill = c.word("grill", kGrillWords, std::optional{usual});
    cooker.grill_places = c.whole("grill_places", 1, 12, 1);
    cooker.fan = c.flag("fan", cooker.shelves > 0);
    cooker.gas = c.word("gas", kGasWords, std::optional{Gas::kNone});
    if (cooker.shelves == 0 && (cooker.grill == GrillKind::kInOven || cooker.fan)) {
      reader_.add("room.cooker.no_oven", c.where("shelves"),
                  say(c.what(), " has no oven shelf, yet ",
                      cooker.fan ? "a fan" : "a grill in the oven", "."),
                  "Give it shelves, or take the fan or grill out.");
    }
    refuse_twin(room_.cookers, cooker.name, "cookers", "room.cooker_twice", c.where("name"));
    room_.cookers.push_back(std::move(cooker));
  }

  void place(const Fields& bay, const Entry& entry, int index, std::vector<int> usual) {
    PlaceAsWritten written;
    written.where = entry.where;
    written.place.bay = index;
    written.place.cookers = std::move(usual);
    if (entry.node->kind == Node::Kind::kText) {
      written.place.name = entry.node->text;
      if (base::blank(written.place.name) || base::letters(written.place.name) > 30) {
        reader_.add("field.blank", entry.where,
                    say(bay.what(), " has a place without a short name."),
                    "Give the place a name of 1 to 30 letters.");
      }
    } else {
      const Fields p(reader_, *entry.node, entry.where, named("place", *entry.node), kPlaceFields);
      if (!p.is_object()) return;
      written.place.name = p.text("name", 30);
      if (p.find("cookers") != nullptr) {
        written.place.cookers.clear();
        for (const Entry& cooker : p.list("cookers", 50)) {
          if (p.is_text(cooker)) written.cookers.push_back(cooker);
        }
      }
    }
    const bool again = std::any_of(places_.begin(), places_.end(), [&](const PlaceAsWritten& p) {
      return p.place.name == written.place.name;
    });
    if (again)
      reader_.add("room.place_twice", entry.where,
                  say("Two places are called ", in_quotes(written.place.name), "."),
                  "Give one of them another name.");
    places_.push_back(std::move(written));
  }

  void reach(const PlaceAsWritten& written) {
    Place place = written.place;
    std::vector<std::string> names;
    for (const Cooker& cooker : room_.cookers) names.push_back(cooker.name);
    for (const Entry& entry : written.cookers) {
      const auto at = std::find(names.begin(), names.end(), entry.node->text);
      const int index = static_cast<int>(at - names.begin());
      if (at == names.end()) {
        const std::string near = did_you_mean(entry.node->text, names);
        reader_.add("room.unknown_cooker", entry.where,
                    say("The place ", in_quotes(place.name), " reaches the cooker ",
                        in_quotes(entry.node->text), ", which the room does not have",
                        near.empty() ? "." : near),
                    "Write the name of a cooker of this room.");
      } else if (std::find(place.cookers.begin(), place.cookers.end(), index) ==
                 place.cookers.end()) {
        place.cookers.push_back(index);
      }
    }
    if (place.cookers.empty() && reader_.clean()) {
      reader_.add("room.place_without_cooker", written.where,
                  say("The place ", in_quotes(place.name), " has no cooker within reach."),
                  "Name one in its cookers, also of another bay, or give the bay a cooker.");
    }
    room_.places.push_back(std::move(place));
  }

  void kit() {
    for (const Entry& entry : f_.list("kit", 300)) {
      const Node* item = entry.node->find("item");
      const bool known = item != nullptr && item->kind == Node::Kind::kText;
      const Fields k(reader_, *entry.node, entry.where,
                     known ? say("The kit ", in_quotes(item->text)) : "A piece of kit", kKitFields);
      if (!k.is_object()) continue;
      Kit kit{k.text("item", 60), k.whole("count", 1, 1000, 1), k.flag("washed_between", false),
              k.minutes("full_clean_minutes", Seconds{0}, base::minutes(6))};
      if (find_kit(room_, kit.item) != nullptr) {
        reader_.add("room.kit_twice", k.where("item"),
                    say("The room lists ", in_quotes(kit.item), " twice."),
                    "List it once with the whole count.");
      }
      room_.kit.push_back(std::move(kit));
    }
  }

  void change_over() {
    const Node* node = f_.find("change_over");
    if (node == nullptr) return;
    const Fields c(reader_, *node, f_.where("change_over"), "The ovens' change-over",
                   kChangeOverFields);
    ChangeOver& rates = room_.change_over;
    const ChangeOver usual;
    rates.cold_to_180 = c.minutes("cold_to_180_minutes", Seconds{1}, usual.cold_to_180);
    rates.cold_more_per_10 = c.minutes("cold_more_per_10_minutes", Seconds{0},
                                       usual.cold_more_per_10);
    rates.heat_per_10 = c.minutes("heat_per_10_minutes", Seconds{0}, usual.heat_per_10);
    rates.cool_degrees_per_minute = c.whole("cool_degrees_per_minute", 1, 250,
                                            usual.cool_degrees_per_minute);
    if (!reader_.clean()) return;
    const auto detour = quicker_detour(rates);
    if (!detour) return;
    const auto words = [](const std::optional<OvenSetting>& s) {
      return s ? say(s->celsius, " °C") : std::string("cold");
    };
    reader_.add("room.change_over.quicker_detour", c.where(),
                say("From ", words(detour->from), " to ", words(detour->to), " an oven would take ",
                    base::minutes_text(detour->straight), ", but by way of ", words(detour->over),
                    " only ", base::minutes_text(detour->around), "."),
                "Heating from cold and from warm must fit together: let each 10 °C take at least "
                "as long from warm as from cold.");
  }

  void seen_together() {
    for (const Entry& entry : f_.list("seen_together", 50)) {
      if (entry.node->kind != Node::Kind::kList) {
        f_.wrong_kind("seen_together", entry.where, "lists of bay names");
        continue;
      }
      std::vector<int> bays;
      for (std::size_t i = 0; i < entry.node->items.size(); ++i) {
        const Node& name = entry.node->items[i];
        const auto at = std::find_if(room_.bays.begin(), room_.bays.end(), [&](const Bay& b) {
          return name.kind == Node::Kind::kText && b.name == name.text;
        });
        if (at == room_.bays.end()) {
          reader_.add("room.unknown_bay", below(entry.where, i),
                      say("The room has no bay ", in_quotes(name.text), " to be seen."),
                      "Write the name of a bay of this room.");
        } else {
          bays.push_back(static_cast<int>(at - room_.bays.begin()));
        }
      }
      room_.seen_together.push_back(std::move(bays));
    }
    if (room_.seen_together.empty()) return;
    for (std::size_t b = 0; b < room_.bays.size(); ++b) {
      const bool seen = std::any_of(
          room_.seen_together.begin(), room_.seen_together.end(), [&](const std::vector<int>& set) {
            return std::find(set.begin(), set.end(), static_cast<int>(b)) != set.end();
          });
      if (!seen && reader_.clean()) {
        reader_.add("room.bay_unseen", f_.where("seen_together"),
                    say("Nobody could see the bay ", in_quotes(room_.bays[b].name),
                        " from any standing point."),
                    "Add the bay to one of the lists.");
      }
    }
  }
};

}  // namespace

std::optional<Room> room_of(Reader& reader, const Node& node, const std::string& where) {
  return RoomReader(reader, node, where).read();
}

base::Result<Room> read_room(std::string_view text, std::string file_name) {
  base::Problems problems;
  Reader reader(std::move(file_name), problems);
  if (const auto node = parse_document(text, reader, DocumentKind::kRoom)) {
    if (auto room = room_of(reader, *node, "")) return std::move(*room);
  }
  return problems;
}

}  // namespace kitchen
