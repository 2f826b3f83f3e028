#pragma once

#include <optional>

#include "core/model/stage_geometry.h"
#include "core/physics/geometry_condition.h"

namespace jw {

// Rollers on a carrier (output) between a sun roller (input) and a held ring, pressed together and
// driving by traction. What is not given yields nothing.

/// Ratio without creep, 1 + d_r/d_s. The output turns with the input.
std::optional<double> tractionRatio(const TractionGeometry& geometry);

/// Diameter [m] of a roller, (d_r - d_s)/2; nothing unless the ring is the larger.
std::optional<double> rollerDiameter(const TractionGeometry& geometry);

/// Torques [N·m] at which the rollers slip on the sun.
struct SlipTorque {
  double input = 0;   ///< n mu F_N d_s/2
  double output = 0;  ///< that times the ratio; creep takes speed, not torque
};

std::optional<SlipTorque> slipTorque(const TractionGeometry& geometry);

/// Share of the output speed lost to creep for an output torque [N·m], signs aside: proportional to
/// it up to creepAtLimit at the slip torque, beyond which all is lost (1). Linear law: common
/// practice, no source.
std::optional<double> creepAt(const TractionGeometry& geometry, double outputTorque);

/// Efficiency left by creep, 1 - creep, whichever side drives.
std::optional<double> creepEfficiency(const TractionGeometry& geometry, double outputTorque);

/// Hertz pressures [Pa]; the sun's is the larger.
struct TractionPressure {
  double sun = 0;
  double ring = 0;
};

/// Pressures of roller on sun, 1/R = 2/d_s + 2/d_p, and on ring, 1/R = 2/d_p - 2/d_r, both with
/// the contact force on the contact length.
std::optional<TractionPressure> tractionPressure(const TractionGeometry& geometry,
                                                 const ContactMaterial& material);

/// Load changes of a place on a surface in one turn of the sun seen from the housing.
struct ContactPasses {
  double sun = 0;     ///< n rollers in each turn against the carrier: n (1 - 1/i)
  double roller = 0;  ///< sun and ring in each turn on its axle: 2 (1 - 1/i) d_s/d_p
  double most() const { return sun > roller ? sun : roller; }
};

std::optional<ContactPasses> contactPasses(const TractionGeometry& geometry);

/// Life [s] at 90 % reliability of the surface with the most load changes, as of a roller bearing,
/// (C/F_N)^(10/3) million of them (ISO 281, carried over to a contact), for a mean size of the
/// input speed [rad/s]. Nothing at rest.
std::optional<double> tractionLife(const TractionGeometry& geometry, double meanInputSpeed);

/// Ring larger than sun, neighbouring rollers clear, and where it is given, the allowed pressure.
/// Slip is a matter of torque, see slipTorque.
GeometryConditions tractionConditions(const TractionGeometry& geometry,
                                      const ContactMaterial& material);

}  // namespace jw
