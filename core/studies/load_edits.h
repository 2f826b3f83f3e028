#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/studies/load_fit.h"

namespace jw {

/// Which of the link's mass and distance stays as it is; their product is what was measured.
enum class KeptInGravity { Mass, Distance };

/// One field of the load as a fit would have it.
struct LoadEdit {
  std::string path;        ///< "load.inertia"
  std::string_view label;  ///< "Link inertia"
  double before = kUnset;  ///< internal unit
  double after = kUnset;   ///< internal unit
  double uncertainty = 0;  ///< standard uncertainty of `after`, internal unit
  std::string text;        ///< `after` for setField, rounded to a hundredth of the uncertainty
};

struct LoadEdits {
  std::vector<LoadEdit> edits;
  std::vector<InputError> notes;  ///< what of the fit cannot become a field, and why
};

/// The fields of `load` that make its model the fitted one. The payload, spring and balance torque
/// of `load` are kept and taken off: the link's inertia is the fitted one less the payload's
/// J_p + m r², its moment m r at phi comes from A = G cos(phi), B = -G sin(phi) with
/// G = g cos(tilt) m r less the payload's, and the external torque is the offset plus the balance
/// torque. Where neither mass nor distance is given, the link becomes the point mass of the same
/// moment and inertia. Terms that were not fitted change nothing. Friction below 0 becomes 0 if the
/// uncertainty allows it, else it is left with a note.
LoadEdits loadEdits(const LoadFit& fit, const Load& load, KeptInGravity kept = KeptInGravity::Mass);

/// Sets all of the fields, or none.
tl::expected<void, InputError> applyLoadEdits(Project& project, const LoadEdits& edits);

}  // namespace jw
