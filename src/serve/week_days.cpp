#include "serve/week_days.h"

#include "base/text.h"

namespace serve {

base::Date monday_of(base::Date day) { return base::Date{day.days - ((day.days + 3) % 7 + 7) % 7}; }

base::Date shown_week(base::Date today) { return monday_of(base::Date{today.days + 2}); }

store::Filter days_of_week(base::Date monday) {
  store::Filter filter;
  filter.from = base::date_text(monday);
  filter.to = base::date_text(base::Date{monday.days + 6});
  return filter;
}

base::Result<base::Date> week_asked(Context& context, const http::Request& request) {
  const std::string* from = request.asked("from");
  if (from == nullptr) return shown_week(context.today());
  if (const auto date = base::date_in(*from)) return monday_of(*date);
  return base::Problem{"week.date", "", "", base::say(base::in_quotes(*from), " is not a date."),
                       "Write year, month and day: 2026-11-17."};
}

}  // namespace serve
