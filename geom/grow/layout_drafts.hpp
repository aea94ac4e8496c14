// Layouts worth trying: bins put one by one on the ground that is theirs, and layouts that were good with something of them
// changed. Drafts keep the allowed regions (allowed_region.hpp), the distances between new bins and the least price of each;
// what the yard's questions say of them is only known once they are tried (layout_trial.hpp). docs/methods/grow.md
#pragma once

#include <functional>
#include <stop_token>

#include "geom/grow/dice.hpp"
#include "geom/grow/layout.hpp"
#include "geom/shape/outline.hpp"

namespace yardwright::grow {

/// Where a bin of a size can stand, legs as they are in one choice of heights.
struct SizeGround {
  Region region;
  std::vector<SitePoint> places;  ///< of a lattice, within it
};

class LayoutDrafts {
 public:
  /// Finds the ground of every size under every choice of leg heights; `told` hears how much of that is done, 0 to 1.
  explicit LayoutDrafts(const GrowthTask& task, const std::stop_token& stop = {},
                        const std::function<void(double)>& told = {});

  /// Every choice of leg heights, as it is first.
  const std::vector<std::vector<double>>& leg_choices() const { return leg_choices_; }
  const SizeGround& ground(std::size_t choice, std::size_t size) const { return grounds_[choice][size]; }
  bool has_ground() const;
  double stored_m3(std::size_t size) const { return stored_m3_[size]; }
  /// Of the bin and its foundation alone.
  double least_cost(std::size_t size) const { return least_cost_[size]; }
  /// Without an end in what is wanted or what may be spent: not fewer than one bin of every size under every choice.
  std::size_t plain_count() const { return leg_choices_.size() * task_.brief.bins.size(); }

  /// One size alone under one choice, as near to a leg as they can stand: number below plain_count().
  Layout plain(std::size_t number, Dice& dice) const;
  /// Thrown: a choice, sizes and places.
  Layout thrown(Dice& dice) const;
  /// Of one that holds: moved, taken away, added, made larger or smaller, filled anew, or under other legs.
  Layout varied(const Layout& layout, Dice& dice) const;

 private:
  struct Taste;
  void find_ground(const std::stop_token& stop, const std::function<void(double)>& told);
  std::size_t choice_of(const Layout& layout) const;
  bool fits(std::size_t choice, const std::vector<Stand>& stands, const Stand& next) const;
  bool is_apart(const std::vector<Stand>& stands, const Stand& next, double apart_m) const;
  double stored_m3(const std::vector<Stand>& stands) const;
  double least_cost(std::size_t choice, const std::vector<Stand>& stands) const;
  double to_leg_m(SitePoint at) const;
  std::optional<SitePoint> candidate(std::size_t choice, const std::vector<Stand>& stands, std::size_t size,
                                     Dice& dice) const;
  std::optional<Stand> placed(std::size_t choice, const std::vector<Stand>& stands, const Taste& taste,
                              Dice& dice) const;
  void fill(std::size_t choice, std::vector<Stand>& stands, const Taste& taste, Dice& dice) const;
  Taste taste_of(Dice& dice) const;
  std::size_t thrown_choice(Dice& dice) const;
  void keep_what_fits(std::size_t choice, std::vector<Stand>& stands) const;
  void move_one(std::size_t choice, std::vector<Stand>& stands, Dice& dice) const;
  void resize_one(std::size_t choice, std::vector<Stand>& stands, Dice& dice) const;

  const GrowthTask& task_;
  std::vector<std::vector<double>> leg_choices_;
  std::vector<double> leg_cost_;                  ///< of the height gained, by choice
  std::vector<std::vector<SizeGround>> grounds_;  ///< by choice, by size
  std::vector<std::vector<Region>> conflicts_;    ///< where a size's middle may not lie from another's at the origin
  std::vector<double> stored_m3_, least_cost_;
  std::vector<Disc> stood_;  ///< bins of the yard as it is
};

/// How many choices of leg heights a brief gives a yard; more than `most_leg_choices` are refused.
std::size_t leg_choice_count(const GrowthTask& task);
inline constexpr std::size_t most_leg_choices = 64;

}  // namespace yardwright::grow
