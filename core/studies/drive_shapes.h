#pragma once

#include <functional>
#include <string>
#include <vector>

#include <Eigen/Core>
#include <tl/expected.hpp>

#include "core/model/stage.h"
#include "core/quantity/quantity.h"

namespace jw {

/// A line through points [m] in the plane of a stage, seen from the motor; x right, y up.
using Outline = std::vector<Eigen::Vector2d>;
using Outlines = std::vector<Outline>;

/// What a part does in its stage.
enum class DriveRole { Input, Output, Held, Between };

/// Where a part is: its centre [m] and how far it is turned [rad], counter-clockwise.
struct DrivePose {
  Eigen::Vector2d centre{0, 0};
  double angle = 0;
};

/// How a part moves with the input: its centre on a circle about `pivot`, turning about itself.
/// Rates are angles per angle of the stage's input.
struct DriveMotion {
  Eigen::Vector2d pivot{0, 0};
  double orbitRadius = 0;  ///< [m]
  double orbitStart = 0;   ///< [rad] at input angle 0
  double orbitRate = 0;
  double turnStart = 0;  ///< [rad] at input angle 0
  double turnRate = 0;

  /// The pose at `inputAngle` [rad].
  DrivePose at(double inputAngle) const;
};

/// One part, its outlines about its own centre at angle 0.
struct DriveBody {
  DriveRole role = DriveRole::Between;
  DriveMotion motion;
  Outlines outlines = {};  ///< closed; filled by the odd-even rule, so that an inner one is a hole
  Outlines marks = {};     ///< open lines that let its turning be seen
  bool faint = false;      ///< lies behind: another disc, the far end of helical teeth
  /// Outlines and marks of a part that bends, at an input angle [rad], in place of the above.
  std::function<void(double inputAngle, Outlines& outlines, Outlines& marks)> bent = {};
};

/// What is written at a part or at several alike.
struct DriveLabel {
  std::string name;    ///< "sun"
  std::string detail;  ///< "20 teeth"; may be empty
  DriveRole role = DriveRole::Between;
  double rate = 0;                  ///< its turning per turn of the input
  std::vector<std::size_t> bodies;  ///< any of these is meant
  double direction = 0;             ///< [rad] side of the part at which the label points
  double reach = 0;                 ///< [m] how far from the part's centre it points
  int group = 0;                    ///< which of the drawings side by side
  double pitch = 0;                 ///< [rad] of parts round one axis; it points at the nearest
};

/// Where the drawing lies [m], whatever the input angle.
struct DriveBounds {
  Eigen::Vector2d low{0, 0};
  Eigen::Vector2d high{0, 0};
};

/// A stage as a drawing that turns.
struct DriveShapes {
  std::vector<DriveBody> bodies;  ///< back to front
  std::vector<DriveLabel> labels;
  std::vector<std::string> remarks;  ///< what was assumed or exaggerated
  double ratio = kUnset;             ///< signed, input over output, of what is drawn
  std::string ratioFormula;          ///< "1 + z_r/z_s"; empty for a given ratio
  int groups = 1;                    ///< drawings side by side
  DriveBounds bounds;
};

/// The drawing of `stage` from its own numbers, or every field that it needs and lacks (`path` +
/// field). Teeth are involutes cut by the basic rack of ISO 53 (addendum 1 m, dedendum 1.25 m) with
/// a little play. Where no size is given the proportions are right and a remark says so.
tl::expected<DriveShapes, std::vector<InputError>> driveShapes(const Stage& stage,
                                                               const std::string& path);

}  // namespace jw
