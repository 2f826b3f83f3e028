#include "core/physics/grease_table.h"

#include <algorithm>

#include <fmt/format.h>

namespace jw {
namespace {

using Pair = std::pair<double, double>;

constexpr std::string_view kBlank = " \t\r";

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(kBlank);
  if (first == text.npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

tl::unexpected<InputError> refuse(std::string_view entry, std::string_view why) {
  return tl::unexpected(InputError{fmt::format("'{}': {}", entry.substr(0, 60), why), "",
                                   "write pairs of temperature and factor: -20 degC 2.4; 20 degC "
                                   "1"});
}

/// "-20 degC 2.4": the factor is what follows the last blank.
tl::expected<Pair, InputError> readPair(std::string_view entry) {
  const auto blank = entry.find_last_of(kBlank);
  if (blank == entry.npos) return refuse(entry, "a temperature and a factor are needed");
  const auto temperature =
      parseQuantity(trimmed(entry.substr(0, blank)), Quantity::Temperature, "degC");
  if (!temperature) return refuse(entry, temperature.error().what);
  const auto factor = parseQuantity(trimmed(entry.substr(blank)), Quantity::Number, "1");
  if (!factor) return refuse(entry, factor.error().what);
  if (!(factor->value > 0) || factor->value > 1000) {
    return refuse(entry, "the factor has to be above 0 and at most 1000");
  }
  return Pair{temperature->value, factor->value};
}

}  // namespace

double GreaseTable::factorAt(double at) const {
  if (temperature.empty()) return 1;
  const auto upper = std::upper_bound(temperature.begin(), temperature.end(), at);
  if (upper == temperature.begin()) return factor.front();
  if (upper == temperature.end()) return factor.back();
  const auto k = static_cast<std::size_t>(upper - temperature.begin());
  const double share = (at - temperature[k - 1]) / (temperature[k] - temperature[k - 1]);
  return factor[k - 1] + share * (factor[k] - factor[k - 1]);
}

tl::expected<GreaseTable, InputError> readGreaseTable(std::string_view text) {
  std::vector<Pair> pairs;
  while (!text.empty()) {
    const auto end = std::min(text.find_first_of(";\n"), text.size());
    const std::string_view entry = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (entry.empty()) continue;
    const auto pair = readPair(entry);
    if (!pair) return tl::unexpected(pair.error());
    pairs.push_back(*pair);
  }
  std::sort(pairs.begin(), pairs.end());
  GreaseTable table;
  for (const auto& [temperature, factor] : pairs) {
    if (!table.temperature.empty() && table.temperature.back() == temperature) {
      return refuse(fmt::format("{} °C", temperature), "this temperature comes twice");
    }
    table.temperature.push_back(temperature);
    table.factor.push_back(factor);
  }
  return table;
}

}  // namespace jw
