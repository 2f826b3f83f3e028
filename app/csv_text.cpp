#include "app/csv_text.h"

#include <cmath>

#include <fmt/format.h>

namespace jw {

std::string csvNumber(double value) {
  if (std::isnan(value)) return {};
  if (std::isinf(value)) return value > 0 ? "inf" : "-inf";
  return fmt::format("{}", value);
}

std::string csvCell(std::string_view text) {
  if (text.find_first_of(",\"\r\n") == text.npos) return std::string(text);
  std::string cell = "\"";
  for (const char c : text) cell += c == '"' ? "\"\"" : std::string(1, c);
  return cell + '"';
}

std::string csvLine(const std::vector<std::string>& cells) {
  std::string line;
  for (const std::string& cell : cells) line += csvCell(cell) + ',';
  if (line.empty()) return "\n";
  line.back() = '\n';
  return line;
}

std::string csvTitle(std::string_view name, std::string_view unit) {
  return unit == "1" ? std::string(name) : fmt::format("{} [{}]", name, unit);
}

}  // namespace jw
