#pragma once

#include <optional>

#include "core/model/stage_geometry.h"
#include "core/physics/geometry_condition.h"
#include "core/physics/stage_data.h"

namespace jw {

// Two wheels with outside teeth on parallel shafts. The output turns against the input. What is
// not given yields nothing. Geometry after ISO 21771 without profile shift, from memory.

/// Ratio z_2/z_1.
std::optional<double> gearPairRatio(const GearPairGeometry& pair);

/// Efficiencies both ways: that of the mesh, whichever side drives.
std::optional<StageEfficiency> gearPairEfficiency(const Toothing& toothing);

/// Sizes of the pair.
struct GearPairSizes {
  double transverseModule = 0;         ///< [m] m_n/cos beta
  double transversePressureAngle = 0;  ///< [rad] tan a_t = tan a_n/cos beta
  double pinionDiameter = 0;           ///< [m] pitch circle, motor side
  double gearDiameter = 0;             ///< [m] pitch circle, joint side
  double pinionTipDiameter = 0;        ///< [m] pitch diameter + 2 m_n
  double gearTipDiameter = 0;          ///< [m]
  double centreDistance = 0;           ///< [m] m_n (z_1 + z_2)/(2 cos beta)
};

std::optional<GearPairSizes> gearPairSizes(const GearPairGeometry& pair, const Toothing& toothing);

/// Forces [N] on a tooth at the pitch point, none of them negative but `axial`, which has the sign
/// of torque times helix angle.
struct ToothForces {
  double tangential = 0;  ///< 2 T/d
  double radial = 0;      ///< tangential tan a_n/cos beta, pushes the wheels apart
  double axial = 0;       ///< tangential tan beta
};

/// Forces for a torque [N·m] on the motor side's wheel.
std::optional<ToothForces> gearPairForces(const GearPairGeometry& pair, const Toothing& toothing,
                                          double inputTorque);

/// No undercut, and with module, width and allowed pressure given, the flanks' pressure for an
/// output torque [N·m] (may be unset), through the mesh efficiency where that is given.
GeometryConditions gearPairConditions(const GearPairGeometry& pair, const Toothing& toothing,
                                      const ContactMaterial& material, double outputTorque);

/// Inertias [kg·m²] of the wheels, each about its own shaft, as full steel wheels of pitch diameter
/// and face width; hubs and shafts are not counted.
struct GearPairInertia {
  double input = 0;
  double output = 0;
  double atInput = 0;  ///< both: input + output (z_1/z_2)²
};

std::optional<GearPairInertia> gearPairInertia(const GearPairGeometry& pair,
                                               const Toothing& toothing);

}  // namespace jw
