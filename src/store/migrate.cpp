#include "store/migrate.h"

#include <sqlite3.h>

#include <stdexcept>
#include <string>

#include "base/text.h"
#include "store/document.h"
#include "store/json_text.h"
#include "store/stamp.h"
#include "store_migrations.h"

namespace store {
namespace {

void content_mark(sqlite3_context* context, int, sqlite3_value** values) noexcept {
  try {
    const auto* bytes = reinterpret_cast<const char*>(sqlite3_value_text(values[0]));
    const auto size = static_cast<std::size_t>(sqlite3_value_bytes(values[0]));
    const auto canonical = canonical_json(bytes == nullptr ? "" : std::string_view(bytes, size));
    if (!canonical) return sqlite3_result_error(context, "a body is not JSON", -1);
    const std::string mark = fingerprint(canonical.value());
    sqlite3_result_text(context, mark.data(), static_cast<int>(mark.size()), SQLITE_TRANSIENT);
  } catch (const std::exception& fault) {
    sqlite3_result_error(context, fault.what(), -1);
  }
}

// The steps of migrations/, in order; names begin with their number.
void take_step(Database& database, int step) {
  const auto files = migrations::files();
  const auto& file = files[static_cast<std::size_t>(step) - 1];
  if (!file.path.starts_with(std::string(step < 10 ? "000" : "00") + std::to_string(step) + "_")) {
    throw std::logic_error("the steps of the store are not numbered in a row");
  }
  database.run(std::string(file.text));
  database.run(base::say("pragma user_version = ", step));
  if (step == 1) database.run(base::say("pragma application_id = ", kApplicationId));
}

void make_kinds_known(Database& database) {
  for (const KindName& each : kKinds) {
    Statement(database, "insert into kinds (kind) values ($1) on conflict do nothing")
        .bind("$1", each.name)
        .run();
  }
}

}  // namespace

int newest_shape() { return static_cast<int>(migrations::files().size()); }

int shape_of(Database& database) {
  return static_cast<int>(database.number("pragma user_version"));
}

void bring_to_shape(Database& database, int wanted) {
  sqlite3_create_function(database.handle(), "content_mark", 1,
                          SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_DIRECTONLY, nullptr,
                          content_mark, nullptr, nullptr);
  while (shape_of(database) < wanted) {
    Transaction transaction(database, Transaction::For::kWriting);
    // Another program may have taken the step while this one waited.
    const int step = shape_of(database) + 1;
    if (step <= wanted) take_step(database, step);
    transaction.commit();
  }
  const bool known = database.number("select count(*) from kinds") >=
                     static_cast<std::int64_t>(kKinds.size());
  if (known) return;
  Transaction transaction(database, Transaction::For::kWriting);
  make_kinds_known(database);
  transaction.commit();
}

}  // namespace store
