// Weeks as the desk counts them: from Monday to Sunday.
#pragma once

#include "base/clock.h"
#include "base/problem.h"
#include "serve/context.h"
#include "serve/http/message.h"
#include "store/document.h"

namespace serve {

/// The Monday of a day's week (1 January 1970 was a Thursday).
base::Date monday_of(base::Date);
/// The Monday of the week a desk opens at: this one, and from Saturday on the next.
base::Date shown_week(base::Date today);
/// From that Monday to its Sunday.
store::Filter days_of_week(base::Date monday);
/// The Monday of the week a request asks for by `from`, a day in it; left out, the one shown.
/// Problems: week.date.
base::Result<base::Date> week_asked(Context&, const http::Request&);

}  // namespace serve
