#include "store/people.h"

namespace store {

std::string_view name_of(Role role) {
  switch (role) {
    case Role::kTeacher:
      return "teacher";
    case Role::kTechnician:
      return "technician";
    case Role::kHead:
      return "head";
  }
  return "teacher";
}

std::optional<Role> role_named(std::string_view name) {
  for (const Role role : {Role::kTeacher, Role::kTechnician, Role::kHead}) {
    if (name_of(role) == name) return role;
  }
  return std::nullopt;
}

}  // namespace store
