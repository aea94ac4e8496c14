// A file that was copied beside a yard which has not been saved with it yet: it goes again with the last holder, unless
// it is kept. A killed program leaves it, as it leaves the autosave that names it.
#pragma once

#include <filesystem>

namespace yardwright::session {

class BroughtCopy {
 public:
  explicit BroughtCopy(std::filesystem::path file) : file_{std::move(file)} {}
  ~BroughtCopy() {
    std::error_code none;
    if (!is_kept_) std::filesystem::remove(file_, none);
  }
  BroughtCopy(const BroughtCopy&) = delete;
  BroughtCopy& operator=(const BroughtCopy&) = delete;

  const std::filesystem::path& file() const { return file_; }
  void keep() { is_kept_ = true; }

 private:
  std::filesystem::path file_;
  bool is_kept_ = false;
};

}  // namespace yardwright::session
