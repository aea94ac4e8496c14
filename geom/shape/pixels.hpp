// The pixels of a picture, shared and never changed, so that copying a picture costs nothing.
#pragma once

#include <cassert>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace yardwright {

class Pixels {
 public:
  Pixels() = default;
  /// 0xAABBGGRR each, row by row from the top, alpha not multiplied in.
  Pixels(int width_px, int height_px, std::vector<std::uint32_t> colours)
      : width_px_{width_px},
        height_px_{height_px},
        colours_{std::make_shared<const std::vector<std::uint32_t>>(std::move(colours))} {
    assert(width_px > 0 && height_px > 0);
    assert(colours_->size() == static_cast<std::size_t>(width_px) * static_cast<std::size_t>(height_px));
  }

  int width_px() const { return width_px_; }
  int height_px() const { return height_px_; }
  bool empty() const { return colours_ == nullptr; }
  std::span<const std::uint32_t> colours() const {
    return empty() ? std::span<const std::uint32_t>{} : std::span{*colours_};
  }
  std::uint32_t at(int column, int row) const {
    return (*colours_)[static_cast<std::size_t>(row) * static_cast<std::size_t>(width_px_) +
                       static_cast<std::size_t>(column)];
  }

 private:
  int width_px_ = 0, height_px_ = 0;
  std::shared_ptr<const std::vector<std::uint32_t>> colours_;
};

}  // namespace yardwright
