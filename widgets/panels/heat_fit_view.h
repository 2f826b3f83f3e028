#pragma once

#include <vector>

#include <QString>

#include "core/studies/heat_fit.h"
#include "widgets/edit.h"
#include "widgets/figures/line_chart.h"

namespace jw {

/// One fitted value in words.
struct FittedRow {
  QString path;   ///< the field that it can be set to: "motor.windingCapacity"
  QString label;  ///< "Winding to housing"
  QString value;  ///< "0.90 ± 0.02 K/W"
};

/// The four values of a fit, in the order of the network.
std::vector<FittedRow> fittedRows(const HeatFit& fit);

/// Measured winding temperature as dots, the fitted one as a line.
LineChart fittedChart(const HeatCurve& curve, const HeatFit& fit);
/// Measured less fitted, with the rms of it.
LineChart residualChart(const HeatCurve& curve, const HeatFit& fit);

/// Sets the motor's two resistances and two capacities to the fitted ones, to four digits.
Edit fitEdit(const HeatFit& fit);

}  // namespace jw
