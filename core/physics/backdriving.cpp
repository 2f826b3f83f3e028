#include "core/physics/backdriving.h"

#include <algorithm>
#include <limits>

#include "core/model/unset.h"

namespace jw {

double startingTorqueAtMotor(const std::vector<StageData>& stages) {
  double torque = 0;
  double gain = 1;
  for (const StageData& data : stages) {
    torque += data.starting() / gain;
    gain *= data.stage.ratio * data.efficiency.driving;
  }
  return torque;
}

double backdrivingTorqueAtJoint(const std::vector<StageData>& stages, double motorDrag) {
  double torque = motorDrag;
  for (const StageData& data : stages) {
    if (data.efficiency.selfLocking()) return std::numeric_limits<double>::infinity();
    const double gain = data.stage.ratio / data.efficiency.backdriving;
    const double own =
        isSet(data.stage.backdrivingTorque) ? data.stage.backdrivingTorque : data.starting() * gain;
    torque = torque * gain + own;
  }
  return torque;
}

}  // namespace jw
