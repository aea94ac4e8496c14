// One function object of several lambdas, for std::visit with a case a kind.
#pragma once

namespace yardwright {

template <class... Cases>
struct Overloaded : Cases... {
  using Cases::operator()...;
};
template <class... Cases>
Overloaded(Cases...) -> Overloaded<Cases...>;

}  // namespace yardwright
