// The six questions that a yard is asked.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace yardwright {

enum class Question : std::uint8_t { reach, turn, drain, clear, pace, grow };
constexpr std::array<std::string_view, 6> names_of(Question) {
  return {"reach", "turn", "drain", "clear", "pace", "grow"};
}
inline constexpr std::array every_question{Question::reach, Question::turn, Question::drain,
                                           Question::clear, Question::pace, Question::grow};

}  // namespace yardwright
