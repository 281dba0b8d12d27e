// The parts of say(), each written on a Paper in the order they stand here. Not for use outside
// print/.
#pragma once

#include "print/equipment.h"
#include "print/facts.h"
#include "print/paper.h"

namespace print {

/// "It fits: 6 min spare. Two waves."
std::string verdict_words(const kitchen::Lesson&, const Answer&);
/// "One wave misses the bell by 9 min, two fit."; empty without waves.
std::string trials_words(const Answer&);
/// "9K, soup and scones. Tue 17 Nov, 10:50, bell 12:30. 12 cooks ..."
std::string lesson_words(const kitchen::Lesson&);
/// "bay A, also B1 B2": whole bays by name, else places; "the whole room" when everybody is in the
/// wave.
std::string where_words(const kitchen::Lesson&, const Wave&);
/// "Wave 1: bay A, also B1 B2. 6 cooks"
std::string wave_words(const kitchen::Lesson&, const Wave&);
/// What a line of the plan says after its clock times, attention and calls included.
std::string doing_words(const kitchen::Lesson&, const Doing&);
/// Caution at the end of everything printed.
std::string caution_words();

/// The figures behind the plan, by name. The only words in which the engine may be heard.
std::vector<std::pair<std::string, std::string>> detail_lines(const kitchen::Lesson&,
                                                              const Answer&);
/// The start times that are one cook's alone: "10:54 apron on; 11:18 LS look".
std::string own_times(const kitchen::Lesson&, const Wave&, int cook);
/// "11:53 to 12:08 200 °C fan, 1 tray; then ..."
std::string times_words(const kitchen::Lesson&, const OvenUse&);
/// "A1 CS, A2+B1 LS"
std::string tray_words(const kitchen::Lesson&, const Batch&);
/// "6 of 6 at most, 11:06 to 11:09."
std::string most_words(const kitchen::Lesson&, const Usage&, int there);
/// An adult's moments in order: clock times and what to do, the leader's with the oven knobs among
/// them.
std::vector<std::pair<std::string, std::string>> adult_lines(const kitchen::Lesson&, const Plan&,
                                                             int adult);
/// Kit in use: "scales" and how many at most, in which turn.
std::vector<std::pair<std::string, std::string>> kit_lines(const kitchen::Lesson&, const Plan&);

/// A plan in which every cook has a timeline of their own.
bool own_timelines(const kitchen::Lesson&, const Answer&);

void say_verdict(Paper&, const kitchen::Lesson&, const Answer&);
void say_chance(Paper&, const kitchen::Lesson&, const Answer&);
void say_wave(Paper&, const kitchen::Lesson&, const Answer&, const Wave&);
void say_last_safe_starts(Paper&, const kitchen::Lesson&, const Answer&);
void say_by_place(Paper&, const kitchen::Lesson&, const Plan&);
void say_own_lists(Paper&, const kitchen::Lesson&, const Plan&);
void say_adults(Paper&, const kitchen::Lesson&, const Plan&);
void say_equipment(Paper&, const kitchen::Lesson&, const Plan&);
void say_details(Paper&, const kitchen::Lesson&, const Answer&);

}  // namespace print
