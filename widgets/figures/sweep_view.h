#pragma once

#include "core/studies/field_sweep.h"
#include "widgets/figures/margin_chart.h"

namespace jw {

/// What the picture of one input shows.
struct SweepView {
  std::shared_ptr<const FieldSweep> sweep;  ///< for readings
  std::vector<double> x;                    ///< its values in the axis' unit
  LineChart margins;
  LineChart quantity;  ///< one headline figure over the same values; empty if not chosen

  bool empty() const { return margins.empty(); }
};

/// The curves of a sweep; `quantity` is the id of a headline figure.
SweepView sweepView(std::shared_ptr<const FieldSweep> sweep, const Project& project,
                    const std::string& quantity);

/// Value and margins at a place of the picture of the margins.
QString sweepReading(const SweepView& view, double x, double margin);

/// Title of an axis: "payload mass, kg".
QString axisTitle(const Project& project, const SweepAxis& axis);

/// Values of an axis in its display unit.
std::vector<double> shownValues(const SweepAxis& axis);

/// "5.2 kg" of a value in the display unit.
QString axisText(const SweepAxis& axis, double shown);

/// The headline figure that is drawn when none was chosen.
inline constexpr const char* kUsualQuantity = "motor.temperature_winding_peak";

}  // namespace jw
