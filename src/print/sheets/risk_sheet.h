// The risk sheet in five steps: hazards found in the steps of the lesson, who might be harmed, what
// is done about it (to edit and sign), who does it by when, and when it is looked at again. A first
// draft for the teacher's own judgement: the employer's and local rules come first.
#pragma once

#include "print/sheets/signs.h"

namespace print::sheets {

struct RiskLine {
  std::string hazard;              ///< "Hot oil"
  std::vector<std::string> where;  ///< "Fry rolls (spring rolls)"
  std::string harm;                ///< who might be harmed and how
  std::string controls;            ///< what is usually done: common practice, to be edited
  friend bool operator==(const RiskLine&, const RiskLine&) = default;
};
/// Only hazards some step of the lesson has, and those of every practical lesson, worst first.
std::vector<RiskLine> risks(const kitchen::Lesson&);

void draw_risk_sheet(Document&, const kitchen::Lesson&);
std::string pdf_of_risk_sheet(const kitchen::Lesson&);
/// The same to edit: an OpenDocument text (ISO/IEC 26300), `mimetype` first and stored.
std::string odt_of_risk_sheet(const kitchen::Lesson&);

}  // namespace print::sheets
