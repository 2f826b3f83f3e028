#pragma once

#include <cstdint>
#include <vector>

#include <Eigen/Core>
#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/quantity/quantity.h"
#include "core/studies/study_run.h"

namespace jw {

struct ToleranceEnvelopeRequest {
  std::size_t draws = 300;  ///< 2 to 10,000
  std::uint64_t seed = 1;
};

/// Where the motor's peak envelope and the load's path lie when the inputs are off by their bands:
/// the probabilistically symmetric 95 % interval at each speed, and at each instant.
struct ToleranceEnvelope {
  std::size_t draws = 0;  ///< done
  Eigen::ArrayXd speed;   ///< [rad/s] rising, along the upper edge of the peak envelope
  Eigen::ArrayXd low;     ///< [N·m] of the highest torque there; 0 beyond the highest speed
  Eigen::ArrayXd high;
  std::vector<Eigen::Index> samples;     ///< of the cycle as it is given
  Eigen::ArrayXd speedLow, speedHigh;    ///< [rad/s] of the motor, one for each of `samples`
  Eigen::ArrayXd torqueLow, torqueHigh;  ///< [N·m] likewise
  bool stopped = false;
};

/// Draws as tolerance() does (JCGM 101:2008; from memory) and evaluates each in full. Draws with no
/// envelope or no path are left out. Fails if no field has a band, if the project as it is has
/// neither envelope nor path, or without draws.
tl::expected<ToleranceEnvelope, InputError> toleranceEnvelope(
    const Project& project, const ToleranceEnvelopeRequest& request, const StudyRun& run = {});

}  // namespace jw
