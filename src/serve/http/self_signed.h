// A certificate that the program makes for itself, so that a school without its own can use TLS in
// the building. Browsers warn once for it: nobody has vouched. Compare the fingerprint on both
// screens.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/problem.h"
#include "serve/http/server.h"

namespace serve::http {

struct SelfSigned {
  TlsFiles files;
  std::string fingerprint;  ///< SHA-256, "AB:CD:...", as browsers show it
  bool made_now = false;    ///< false: the one made before is used
};

/// The certificate in `folder` (made if missing), key P-256, good for 825 days. The one made before
/// is used again while it is good for 30 more days, covers every name and its key fits; else a new
/// one takes its place. The key can be read by its owner only. `names`: host names and addresses,
/// at least one; `now` in seconds since 1970.
/// Errors: serve.certificate.names, serve.certificate.folder, serve.certificate.make.
base::Result<SelfSigned> self_signed(const std::filesystem::path& folder,
                                     const std::vector<std::string>& names, long long now);

/// localhost, this machine's name (also with ".local") and the addresses of its network cards.
std::vector<std::string> names_of_this_machine();

}  // namespace serve::http
