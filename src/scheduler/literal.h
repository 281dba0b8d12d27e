// Bound literals of the constraint core. Every integer variable x has two sides: 2i stands for x,
// 2i + 1 for -x. A literal (side, value) says [side >= value]; its negation is [side ^ 1 >= 1 -
// value], so no literal is ever created or looked up. A Boolean is a variable 0..1.
#pragma once

namespace scheduler {

/// [side >= value].
struct Literal {
  int side = 0;
  int value = 0;
  friend bool operator==(const Literal&, const Literal&) = default;
};

/// The literal that is true exactly when `literal` is false.
inline Literal operator!(Literal literal) { return {literal.side ^ 1, 1 - literal.value}; }

/// [variable >= value].
inline Literal at_least(int variable, int value) { return {2 * variable, value}; }

/// [variable <= value].
inline Literal at_most(int variable, int value) { return {2 * variable + 1, -value}; }

}  // namespace scheduler
