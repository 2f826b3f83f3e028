#include "core/physics/willis.h"

#include <cmath>

namespace jw {

std::optional<EpicyclicSpeeds> willisSpeeds(double basicRatio, EpicyclicSpeeds known) {
  const int unset = !isSet(known.first) + !isSet(known.second) + !isSet(known.carrier);
  if (unset != 1) return std::nullopt;
  if (!isSet(known.first)) {
    known.first = known.carrier + basicRatio * (known.second - known.carrier);
  } else if (!isSet(known.second)) {
    known.second = known.carrier + (known.first - known.carrier) / basicRatio;
  } else {
    known.carrier = (known.first - basicRatio * known.second) / (1 - basicRatio);
  }
  const bool settled = std::isfinite(known.first + known.second + known.carrier);
  return settled ? std::optional(known) : std::nullopt;
}

EpicyclicTorques willisTorques(double basicRatio, double basicEfficiency, double firstTorque,
                               const EpicyclicSpeeds& speeds) {
  const double rollingPower = firstTorque * (speeds.first - speeds.carrier);
  const double factor = rollingPower >= 0 ? basicEfficiency : 1 / basicEfficiency;
  const double second = -basicRatio * factor * firstTorque;
  return {firstTorque, second, -(firstTorque + second)};
}

}  // namespace jw
