// The technician's papers: the tray list (weigh by food, set out by place) and the order.
#pragma once

#include "larder/trays.h"
#include "print/larder_view.h"
#include "print/sheets/signs.h"

namespace print::sheets {

void draw_tray_list(Document&, const kitchen::Lesson&, const larder::Trays&);
std::string pdf_of_tray_list(const kitchen::Lesson&, const larder::Trays&);

void draw_order(Document&, const OrderView&);
std::string pdf_of_order(const OrderView&);

}  // namespace print::sheets
