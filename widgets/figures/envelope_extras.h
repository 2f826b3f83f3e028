#pragma once

#include "widgets/figures/envelope_view.h"

namespace jw {

/// From the motor's SI values to the shaft and units that are shown.
struct EnvelopeScale {
  double speed;   ///< rpm per rad/s
  double torque;  ///< N·m per N·m
};

PlaneCurve curveOf(const EnvelopeCurve& curve, const EnvelopeScale& scale);

/// Band, intermittent curve and lines of equal efficiency, as far as asked for and known.
void addExtras(EnvelopeView& view, const Project& project, const PlotStudies& studies,
               const EnvelopeExtras& extras, const EnvelopeScale& scale);

}  // namespace jw
