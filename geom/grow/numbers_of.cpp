#include "geom/grow/numbers_of.hpp"

#include <cmath>

#include "geom/shape/overloaded.hpp"

namespace yardwright::grow {

namespace {

struct Gather {
  std::vector<Number>& numbers;

  void operator()(const Field& field, double& member) const { numbers.push_back({&member, field}); }
  void operator()(const Field& field, Angle& member) const { numbers.push_back({&member, field}); }
  void operator()(const Field& field, Bearing& member) const { numbers.push_back({&member, field}); }
  void operator()(const Field& field, SitePoint& member) const {
    numbers.push_back({&member.x, field, true});
    numbers.push_back({&member.y, field, true});
  }
  void operator()(const Field& field, SitePath& member) const {
    for (SitePoint& point : member) (*this)(field, point);
  }
  template <class Member>
  void operator()(const Field&, Member& member) const {
    if constexpr (Fielded<Member>) visit_fields(member, *this);
  }
};

}  // namespace

double Number::value() const {
  return std::visit(
      Overloaded{[](const double* number) { return *number; }, [](const auto* turn) { return turn->as_degrees(); }},
      at);
}

void Number::set(double value) const {
  std::visit(Overloaded{[&](double* number) { *number = value; }, [&](Angle* angle) { *angle = Angle::degrees(value); },
                        [&](Bearing* bearing) { *bearing = Bearing::degrees(value); }},
             at);
}

std::vector<Number> numbers_of(Thing& thing) {
  std::vector<Number> numbers;
  std::visit([&](auto& kind) { visit_fields(kind, Gather{numbers}); }, thing);
  return numbers;
}

double difference(const Number& from, const Number& to) {
  const double ahead = to.value() - from.value();
  return from.is_bearing() ? std::remainder(ahead, 360.0) : ahead;
}

}  // namespace yardwright::grow
