// The letter home: what is cooked when, what to bring, what may be swapped, and a slip to send
// back. As a page, and as plain text to paste into whatever the school sends messages with. It asks
// every family the same.
#pragma once

#include <optional>

#include "larder/bring_list.h"
#include "print/sheets/signs.h"

namespace print::sheets {

struct Letter {
  const kitchen::Lesson& lesson;
  std::vector<larder::BringList> bring;  ///< one a dish; empty = the school supplies everything
  std::string reply_by;                  ///< "Fri 13 Nov"; empty = a line to fill in
};

void draw_letter(Document&, const Letter&);
std::string pdf_of_letter(const Letter&);
/// Plain text, no line wider than it must be: messages wrap on their own.
std::string text_of_letter(const Letter&);

}  // namespace print::sheets
