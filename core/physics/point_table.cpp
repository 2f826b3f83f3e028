#include "core/physics/point_table.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fast_float/fast_float.h>
#include <fmt/format.h>

namespace jw {
namespace {

using Pair = std::pair<double, double>;
using Read = tl::expected<double, InputError>;

constexpr std::string_view kBlank = " \t\r";

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(kBlank);
  if (first == text.npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

/// Reads the pairs of one kind of table.
class PairReader {
 public:
  explicit PairReader(const PointTableKind& kind)
      : kind_(kind),
        xUnit_(toInternal(1, kind.x.unit, kind.x.quantity)),
        yUnit_(toInternal(1, kind.y.unit, kind.y.quantity)) {}

  tl::unexpected<InputError> refuse(std::string_view entry, std::string_view why) const {
    return tl::unexpected(InputError{
        fmt::format("'{}': {}", entry.substr(0, 60), why), "",
        fmt::format("write pairs of {} and {}: {}", kind_.x.noun, kind_.y.noun, kind_.example)});
  }

  /// "-20 degC 2.4": parted at the first blank that leaves two readable halves.
  tl::expected<Pair, InputError> read(std::string_view entry) const {
    Pair pair;
    if (readBare(entry, pair)) return inRange(entry, pair);
    InputError last{fmt::format("a {} and a {} are needed", kind_.x.noun, kind_.y.noun), "", ""};
    for (auto at = entry.find_first_of(kBlank); at != entry.npos;
         at = entry.find_first_of(kBlank, entry.find_first_not_of(kBlank, at))) {
      const Read x = readOne(entry.substr(0, at), kind_.x);
      const Read y = readOne(entry.substr(at), kind_.y);
      if (x && y) return inRange(entry, {*x, *y});
      if (x || y) last = x ? y.error() : x.error();
    }
    return refuse(entry, last.what);
  }

 private:
  static Read readOne(std::string_view text, const PointColumn& column) {
    return parseQuantity(trimmed(text), column.quantity, column.unit)
        .map([](const ParsedQuantity& parsed) { return parsed.value; });
  }

  /// "0.25 12.5", as long tables have them: no unit to look up.
  bool readBare(std::string_view entry, Pair& pair) const {
    if (kind_.x.quantity == Quantity::Temperature) return false;  // its zero lies elsewhere
    const char* const end = entry.data() + entry.size();
    const auto x = fast_float::from_chars(entry.data(), end, pair.first);
    if (x.ec != std::errc() || x.ptr == end || kBlank.find(*x.ptr) == kBlank.npos) return false;
    const std::string_view rest = trimmed({x.ptr, static_cast<std::size_t>(end - x.ptr)});
    const auto y = fast_float::from_chars(rest.data(), rest.data() + rest.size(), pair.second);
    pair.first *= xUnit_;
    pair.second *= yUnit_;
    return y.ec == std::errc() && y.ptr == rest.data() + rest.size() && std::isfinite(pair.first) &&
           std::isfinite(pair.second);
  }

  tl::expected<Pair, InputError> inRange(std::string_view entry, const Pair& pair) const {
    for (const auto& [column, value] : {std::pair(&kind_.x, pair.first), {&kind_.y, pair.second}}) {
      if (value > column->low && value <= column->high) continue;
      return refuse(entry, fmt::format("the {} has to be above {} and at most {}", column->noun,
                                       column->low, column->high));
    }
    return pair;
  }

  const PointTableKind& kind_;
  double xUnit_;
  double yUnit_;
};

}  // namespace

double PointTable::valueAt(double at) const {
  const auto upper = std::upper_bound(x.begin(), x.end(), at);
  if (upper == x.begin()) return y.front();
  if (upper == x.end()) return y.back();
  const auto k = static_cast<std::size_t>(upper - x.begin());
  const double share = (at - x[k - 1]) / (x[k] - x[k - 1]);
  return y[k - 1] + share * (y[k] - y[k - 1]);
}

tl::expected<PointTable, InputError> readPointTable(std::string_view text,
                                                    const PointTableKind& kind) {
  PointTable table;
  if (trimmed(text).empty()) return table;
  const PairReader reader(kind);
  std::vector<Pair> pairs;
  while (!text.empty()) {
    const auto end = std::min(text.find_first_of(";\n"), text.size());
    const std::string_view entry = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (entry.empty()) continue;
    const auto pair = reader.read(entry);
    if (!pair) return tl::unexpected(pair.error());
    pairs.push_back(*pair);
  }
  std::sort(pairs.begin(), pairs.end());
  for (const auto& [x, y] : pairs) {
    if (!table.empty() && table.x.back() == x) {
      return reader.refuse(formatQuantity(x, kind.x.quantity, kind.x.unit),
                           fmt::format("this {} comes twice", kind.x.noun));
    }
    table.x.push_back(x);
    table.y.push_back(y);
  }
  return table;
}

}  // namespace jw
