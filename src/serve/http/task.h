// How this server waits: errors of the network are everyday values here, never exceptions.
//
//   Fault fault;
//   const auto n = co_await stream.async_read_some(place, quietly(fault));
//
// g++ 12 destroys twice what is made of braces or as a capturing lambda inside a co_await
// expression (docs/decisions/0014-http.md): name it before.
#pragma once

#include <utility>  // awaitable.hpp of 1.74 needs it and forgets it

#include <boost/asio/awaitable.hpp>
#include <boost/asio/redirect_error.hpp>
#include <boost/asio/use_awaitable.hpp>
#include <boost/system/error_code.hpp>

namespace serve::http {

template <class T>
using Task = boost::asio::awaitable<T>;
using Fault = boost::system::error_code;

inline auto quietly(Fault& fault) {
  return boost::asio::redirect_error(boost::asio::use_awaitable, fault);
}

}  // namespace serve::http
