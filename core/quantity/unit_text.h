#pragma once

#include <string>
#include <string_view>

#include <tl/expected.hpp>

namespace jw::detail {

struct UnitText {
  std::string canonical;  ///< plain ASCII that UDUNITS reads, e.g. "N*m/A", "kg*cm^2"
  std::string print;      ///< as people print it, e.g. "N·m/A", "kg·cm²"
};

struct UnitTextError {
  std::string unknown;  ///< the word that is no unit; empty if the arrangement is wrong
};

/// Reads unit text as people type it: separators · ⋅ × * . - and blanks, "/" and "per", powers as
/// ^2, ², ⁻¹ or plain digits, both micro and both ohm signs, V/1000rpm as V/krpm. Every word must
/// be in the unit table; that the arrangement makes sense is for UDUNITS to say.
tl::expected<UnitText, UnitTextError> readUnitText(std::string_view text);

}  // namespace jw::detail
