// All questions asked again and again while a site is edited: remembers what each question read, and asks again only
// those that read something else now. The questions run side by side. One thread asks; any thread may read.
#pragma once

#include <mutex>
#include <optional>
#include <stop_token>

#include "geom/check/check.hpp"

namespace yardwright {

class LiveCheck {
 public:
  explicit LiveCheck(const Catalogs& catalogs) : catalogs_{catalogs} {}

  /// Everything but the mends that take long to find.
  void ask(const Site& site);
  /// Those mends, of the site last asked of. Leaves the rest where it is stopped.
  void seek_mends(std::stop_token stop = {});

  /// As far as they have come.
  Answers answers() const;
  /// How often a question has been asked so far.
  int times_asked(Question question) const { return times_asked_[static_cast<std::size_t>(question)]; }

 private:
  bool reads_anew(Question question, const Site& site);
  void shape_ground(const Site& site);
  void mark_stale(const Site& site);
  void ask_one(Question question, const Site& site);
  template <class Part>
  void publish(Question question, std::shared_ptr<const Part> Answers::*part, Part answer);

  Catalogs catalogs_;  ///< as shipped
  Catalogs in_force_;  ///< with the rule values of the site last asked of
  Site asked_;
  std::optional<Site> surface_read_;
  std::array<std::optional<Site>, every_question.size()> read_;
  std::array<int, every_question.size()> times_asked_{};
  mutable std::mutex answers_lock_;
  Answers answers_;
};

}  // namespace yardwright
