// The allergy sheet: for the adults who need it and nobody else. Marked confidential on every page.
// Cooks without a need do not appear.
#pragma once

#include "print/say_allergens.h"
#include "print/sheets/signs.h"

namespace print::sheets {

void draw_allergy_sheet(Document&, const AllergenLesson&);
std::string pdf_of_allergy_sheet(const AllergenLesson&);

}  // namespace print::sheets
