// How likely a plan is to end by the bell, in words and as twenty marks. The only place in print/
// that reads timeplan::Chance.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "print/facts.h"

namespace print {

struct Likely {
  std::string word;               ///< "comfortable", "tight", "unlikely"
  std::string about;              ///< "about 8 in 10"
  std::string whole;              ///< "Tight: in about 8 in 10 lessons all are washed up in time."
  std::vector<std::string> says;  ///< further sentences: what decides, what a late start costs
  std::vector<Seconds> marks;     ///< twenty finishes of the last cook, each 5 lessons in 100,
                                  ///< earliest first
  int runs = 0;                   ///< lessons played
  double share = 0, least = 0, most = 0;  ///< of runs in which the whole room ends by the bell; 95
                                          ///< % interval
  std::vector<std::pair<std::string, std::string>> details;  ///< for --details: "runs", "2000 ..."
};

/// Nothing when there is no chance to speak of.
std::optional<Likely> likely(const kitchen::Lesson&, const Answer&);

}  // namespace print
