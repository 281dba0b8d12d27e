// An answer as bytes: the headers that every answer has, compression, the status line.
#pragma once

#include <string>
#include <string_view>

#include "serve/http/message.h"

namespace serve::http {

/// Texts of 1,000 bytes and more that were not compressed yet are, if the browser takes gzip.
void compress(bool takes_gzip, Response&);

/// Status line and headers without the blank line that ends them (end_of_head). `secure`: over TLS;
/// `now` in seconds since 1970.
/// Throws std::invalid_argument for a header with a line end or another control character in it,
/// and for a name that is no token: such an answer could be read as two.
std::string head_of(const Response&, bool secure, long long now);

/// What the state of the connection adds, and the blank line. HTTP/1.0 must be told that it is
/// kept.
std::string_view end_of_head(bool keep, bool http10);

/// "Not Found" for 404.
std::string_view reason(int status);

/// gzip (RFC 1952), or nothing when zlib has no memory left.
std::string gzipped(std::string_view);

}  // namespace serve::http
