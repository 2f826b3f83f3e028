#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/quantity.h"

namespace jw {

enum class CheckState { Holds, Close, Short, Open };

/// "holds", "close", "short", "open".
std::string_view stateName(CheckState state);

/// That someone has accepted a verdict as it stands.
struct AcceptedVerdict {
  std::string note;
  std::string date;    ///< ISO 8601, as given
  bool stands = true;  ///< false: demand or capacity has moved by more than the band since
};

/// One verdict: demand against capacity.
struct Check {
  std::string_view id;  ///< stable, "drive.life"
  int stage = -1;       ///< index into the transmission, -1 if the check is of no stage
  std::string title;    ///< "Drive life, stage 2"
  double demand = 0;    ///< in the quantity's internal unit; NaN when open
  double capacity = 0;  ///< likewise
  double margin = 0;    ///< capacity / demand - 1; +inf when nothing is demanded
  Quantity quantity = Quantity::Number;
  std::string_view unit;  ///< display unit
  CheckState state = CheckState::Open;
  bool capacityIsResult =
      false;        ///< the design gives the capacity and the requirement is the demand (life)
  double time = 0;  ///< [s] instant of the cycle at which it is tightest, NaN if of none
  std::vector<std::string> missing;         ///< paths of fields that it needs and that are unset
  std::optional<AcceptedVerdict> accepted;  ///< none: nobody has accepted it
};

/// One symbol of a working.
struct WorkingSymbol {
  std::string symbol;  ///< "T_av"; '_' starts a subscript
  std::string label;
  double value = 0;  ///< internal unit
  Quantity quantity = Quantity::Number;
  std::string_view unit;  ///< display unit
  std::string origin;     ///< "typed", "catalogue", "usual value", "from the cycle", "derived"
  std::string path;       ///< the field, when it is one
  /// What it follows from, in symbols that stand before it ("T_av / N"); empty: it is given, or
  /// comes from the arrays of the cycle, which its origin says.
  std::string expression = {};
};

/// How a verdict or a headline figure came about: the results follow from the symbols.
struct Working {
  std::string formula;  ///< "L = L_r · (T_r / T_av)³ · n_r / n_av"
  std::vector<WorkingSymbol> symbols;
  std::vector<WorkingSymbol> results;  ///< demand and capacity of a check, or the one figure
  std::string result;                  ///< "L = 4 830 h: short of 7 000 h by 31 %"
  std::string source;                  ///< standard or textbook with section, or "common practice"
  std::string note;                    ///< assumptions and cautions
  std::string caution = {};  ///< what the verdict must not be taken for, with the standard
};

}  // namespace jw
