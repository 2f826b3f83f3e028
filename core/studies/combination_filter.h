#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/studies/design_points.h"

namespace jw {

/// Figures of the actuator that are no part of an evaluation. NaN where a part's is not given.
struct Properties {
  double mass = kUnset;      ///< [kg] motor and stages
  double length = kUnset;    ///< [m] motor and stages behind one another
  double diameter = kUnset;  ///< [m] the largest
};

Properties propertiesOf(const Variant& variant);

/// One figure by which combinations are filtered, sorted or weighed against one another: a headline
/// figure ("motor.temperature_winding_peak"), "mass", "length", "diameter", "loss", "margin" (the
/// smallest), "open" (verdicts that the present design can tell and this one cannot), or "margin drive.life" (the smallest of that check).
struct DesignFigure {
  std::string name;
  Quantity quantity = Quantity::Number;
  std::string_view unit;

  double of(const DesignPoint& point, const Properties& properties) const;

  std::string check;  ///< of a margin
  int headline = -1;  ///< place among the headline figures
};

/// The figure of that name; the error names the nearest known one.
tl::expected<DesignFigure, InputError> findFigure(std::string_view name);

/// How people call it: "mass", "margin of motor speed", "Peak joint torque".
std::string figureLabel(const DesignFigure& figure);

/// Whether more of it is better, as of a margin; of all other figures less is.
inline bool moreIsBetter(const DesignFigure& figure) { return figure.name.starts_with("margin"); }

/// Every name that findFigure knows.
std::vector<std::string> figureList();

/// A bound on one figure. What is not known does not pass.
struct CombinationFilter {
  DesignFigure figure;
  bool atMost = true;
  double bound = 0;  ///< [internal unit]

  bool passes(const DesignPoint& point, const Properties& properties) const;
};

/// Reads "mass<=4 kg", "margin drive.life>=20 %", "motor.temperature_winding_peak<=110 degC".
tl::expected<CombinationFilter, InputError> readFilter(std::string_view text);

}  // namespace jw
