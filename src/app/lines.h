// Lines as they come from a descriptor, one at a time.
#pragma once

#include <atomic>
#include <cstddef>
#include <string>
#include <vector>

namespace arrisline {

class LineReader {
 public:
  enum class Got { line, too_long, end, failed, left_off };

  /// Lines of at most `most` bytes, their ends not counted.
  LineReader(int descriptor, std::size_t most, const std::atomic<bool>& leave_off)
      : descriptor_(descriptor), most_(most), leave_off_(leave_off), chunk_(kChunk) {}

  /// The next line without its end; the last one needs none. Of one that is too long nothing is kept, and the
  /// next call goes on behind it. Where it failed errno says why. Returns soon after `leave_off` is set, even
  /// where nothing more comes.
  Got next(std::string& line);

 private:
  static constexpr std::size_t kChunk = std::size_t{1} << 16;

  int descriptor_;
  std::size_t most_;
  const std::atomic<bool>& leave_off_;
  std::vector<char> chunk_;
  std::size_t at_ = 0;    // of chunk_, where the next line begins
  std::size_t held_ = 0;  // bytes of chunk_ that are read
  bool ended_ = false;
};

}  // namespace arrisline
