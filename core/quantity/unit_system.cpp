#include "core/quantity/unit_system.h"

#include <cmath>
#include <functional>
#include <limits>
#include <mutex>
#include <optional>
#include <shared_mutex>
#include <stdexcept>
#include <unordered_map>
#include <vector>

#include <udunits2.h>

#include "core/quantity/text_scan.h"
#include "core/quantity/unit_table.h"

namespace jw::detail {
namespace {

constexpr std::size_t kMostCachedUnits = 4096;
constexpr double kMostWholeDivisor = 1e15;
constexpr double kMostWholeFactor = 1e9;

struct FreeUnit {
  void operator()(ut_unit* unit) const { ut_free(unit); }
};
using OwnedUnit = std::unique_ptr<ut_unit, FreeUnit>;

struct FreeSystem {
  void operator()(ut_system* system) const { ut_free_system(system); }
};

/// A UDUNITS system holding nothing but the rows of the unit table. Not thread safe.
class UnitSystem {
 public:
  UnitSystem() {
    ut_set_error_message_handler(ut_ignore);
    system_.reset(ut_new_system());
    for (const auto& row : unitRows()) add(row);
  }

  std::optional<UnitMeaning> parse(const std::string& canonical) const {
    const OwnedUnit unit(ut_parse(system_.get(), canonical.c_str(), UT_ASCII));
    if (!unit) return std::nullopt;
    Parts parts{this, {}, 1.0, 0.0};
    static const ut_visitor visitor = {visitBasic, visitProduct, visitGalilean, nullptr, nullptr};
    if (ut_accept_visitor(unit.get(), &visitor, &parts) != UT_SUCCESS) return std::nullopt;
    if (!std::isnormal(parts.scale)) return std::nullopt;
    return meaning(parts);
  }

 private:
  struct Parts {
    const UnitSystem* system;
    Dimension dimension;
    double scale;
    double offset;
  };

  static ut_status visitBasic(const ut_unit* unit, void* arg) {
    auto& parts = *static_cast<Parts*>(arg);
    parts.dimension.at(parts.system->baseIndex(unit)) = 1;
    return UT_SUCCESS;
  }

  static ut_status visitProduct(const ut_unit*, int count, const ut_unit* const* units,
                                const int* powers, void* arg) {
    auto& parts = *static_cast<Parts*>(arg);
    for (int i = 0; i < count; ++i) {
      parts.dimension.at(parts.system->baseIndex(units[i])) = powers[i];
    }
    return UT_SUCCESS;
  }

  static ut_status visitGalilean(const ut_unit*, double scale, const ut_unit* underlying,
                                 double offset, void* arg) {
    auto& parts = *static_cast<Parts*>(arg);
    parts.scale = scale;
    parts.offset = offset;
    static const ut_visitor visitor = {visitBasic, visitProduct, nullptr, nullptr, nullptr};
    return ut_accept_visitor(underlying, &visitor, arg);
  }

  static UnitMeaning meaning(const Parts& parts) {
    UnitMeaning result;
    result.dimension = parts.dimension;
    result.zero = -parts.offset;
    result.factor = parts.scale;
    if (isWhole(1.0 / parts.scale, kMostWholeDivisor)) {
      result.factor = 1.0;
      result.divisor = std::round(1.0 / parts.scale);
      return result;
    }
    for (double divisor = 1.0; divisor <= kMostWholeFactor; divisor *= 10.0) {
      if (!isWhole(parts.scale * divisor, kMostWholeFactor)) continue;
      result.factor = std::round(parts.scale * divisor);
      result.divisor = divisor;
      break;
    }
    return result;
  }

  /// Whole but for the last-bit errors of products such as 1000·0.01·0.01.
  static bool isWhole(double value, double most) {
    const double whole = std::round(value);
    const double slack = 4.0 * std::numeric_limits<double>::epsilon();
    return whole >= 1.0 && whole <= most && std::abs(whole - value) < slack * value;
  }

  void add(const UnitRow& row) {
    OwnedUnit unit(row.of.empty() ? ut_new_base_unit(system_.get()) : derive(row));
    map(std::string(row.symbol), unit.get());
    for (const char prefix : row.prefixes) {
      const OwnedUnit scaled(ut_scale(prefixFactor(prefix), unit.get()));
      map(prefix + std::string(row.symbol), scaled.get());
    }
    if (row.of.empty()) bases_.push_back(std::move(unit));
  }

  ut_unit* derive(const UnitRow& row) const {
    const OwnedUnit of(ut_parse(system_.get(), std::string(row.of).c_str(), UT_ASCII));
    if (!of) throw std::logic_error("unit table: cannot read " + std::string(row.of));
    const OwnedUnit scaled(ut_scale(row.factor, of.get()));
    return ut_offset(scaled.get(), -row.zero);
  }

  static void map(const std::string& symbol, const ut_unit* unit) {
    if (unit == nullptr || ut_map_symbol_to_unit(symbol.c_str(), UT_ASCII, unit) != UT_SUCCESS) {
      throw std::logic_error("unit table: cannot add " + symbol);
    }
  }

  std::size_t baseIndex(const ut_unit* unit) const {
    std::size_t index = 0;
    while (index < bases_.size() && ut_compare(bases_[index].get(), unit) != 0) ++index;
    return index;
  }

  std::unique_ptr<ut_system, FreeSystem> system_;
  std::vector<OwnedUnit> bases_;
};

struct TextHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view text) const {
    return std::hash<std::string_view>()(text);
  }
};

/// Meanings by the text as typed. UDUNITS' parser is not reentrant: one lock guards both.
class MeaningCache {
 public:
  tl::expected<SharedMeaning, UnitTextError> get(std::string_view unit) {
    if (auto known = find(unit)) return known;
    auto text = readUnitText(unit);
    if (!text) return tl::unexpected(text.error());
    const std::unique_lock lock(mutex_);
    auto meaning = system_.parse(text->canonical);
    if (!meaning) return tl::unexpected(UnitTextError{});
    meaning->single = text->canonical.find_first_of("*/^1") == std::string::npos;
    meaning->text = std::move(*text);
    auto shared = std::make_shared<const UnitMeaning>(std::move(*meaning));
    if (meanings_.size() < kMostCachedUnits) meanings_.emplace(unit, shared);
    return shared;
  }

 private:
  SharedMeaning find(std::string_view unit) const {
    const std::shared_lock lock(mutex_);
    const auto found = meanings_.find(unit);
    return found == meanings_.end() ? nullptr : found->second;
  }

  mutable std::shared_mutex mutex_;
  UnitSystem system_;
  std::unordered_map<std::string, SharedMeaning, TextHash, std::equal_to<>> meanings_;
};

}  // namespace

tl::expected<SharedMeaning, UnitTextError> meaningOf(std::string_view unit) {
  static MeaningCache cache;
  return cache.get(unit);
}

}  // namespace jw::detail
