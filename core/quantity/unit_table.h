#pragma once

#include <span>
#include <string>
#include <string_view>

namespace jw::detail {

/// One unit as this program understands it.
struct UnitRow {
  std::string_view symbol;     ///< plain ASCII name, the one given to UDUNITS
  std::string_view print;      ///< as people print it
  std::string_view spellings;  ///< further spellings, separated by blanks
  std::string_view prefixes;   ///< SI prefixes that apply to `symbol`; u is micro
  double factor;               ///< one of this unit is `factor` of `of`
  std::string_view of;         ///< an expression in earlier rows; empty for a base unit
  double zero = 0.0;           ///< reading of this scale where the scale of `of` reads zero
};

/// All units, each defined by rows before it.
std::span<const UnitRow> unitRows();

/// Factor of an SI prefix letter, e.g. 'k' -> 1000.
double prefixFactor(char prefix);

struct KnownUnit {
  std::string symbol;  ///< the name UDUNITS knows, prefix included
  std::string print;   ///< as people print it, prefix included
};

/// The unit spelt `spelling` (micro as u, Ω as ohm), or nullptr.
const KnownUnit* findUnit(std::string_view spelling);

}  // namespace jw::detail
