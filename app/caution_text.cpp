#include "app/caution_text.h"

#include <algorithm>

#include "core/checks/cautions.h"

namespace jw {
namespace {

constexpr std::size_t kColumns = 100;
constexpr std::string_view kIndent = "  ";

/// The blank at or before `room` to break at; none between a standard's publisher and its number.
std::size_t breakPlace(std::string_view text, std::size_t room) {
  std::size_t blank = text.rfind(' ', room);
  while (text.substr(0, blank).ends_with("ISO") || text.substr(0, blank).ends_with("IEC")) {
    blank = text.rfind(' ', blank - 1);
  }
  return blank;
}

/// Cautions are plain ASCII: a byte is a column.
std::string wrapped(std::string_view text) {
  std::string all;
  std::size_t room = kColumns;
  while (text.size() > room) {
    const std::size_t blank = breakPlace(text, room);
    all += std::string(text.substr(0, blank)) + "\n" + std::string(kIndent);
    text.remove_prefix(blank + 1);
    room = kColumns - kIndent.size();
  }
  return all + std::string(text) + "\n";
}

}  // namespace

std::vector<std::string_view> cautionsBeside(const std::vector<std::string_view>& checks) {
  std::vector<std::string_view> cautions;
  for (const std::string_view caution : kCautions) {
    const bool matters = std::any_of(checks.begin(), checks.end(), [&](std::string_view check) {
      return cautionOf(check) == caution;
    });
    if (matters) cautions.push_back(caution);
  }
  return cautions;
}

std::string cautionText(const std::vector<std::string_view>& checks) {
  std::string text = "\n" + std::string(kCaution) + "\n";
  for (const std::string_view caution : cautionsBeside(checks)) text += wrapped(caution);
  return text;
}

}  // namespace jw
