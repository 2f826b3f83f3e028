#include "core/robot/robot_edits.h"

#include <algorithm>
#include <string>

#include <fmt/format.h>

#include "core/model/field_catalogue.h"
#include "core/physics/load_torque.h"

namespace jw {
namespace {

using Done = tl::expected<void, InputError>;

/// Types values into a project; the first error sticks.
class Typist {
 public:
  explicit Typist(Project& project) : project_(project) {}

  /// `value` in `unit`, to nine digits; empties the field if it is unset.
  void type(const std::string& path, double value, std::string_view unit) {
    text(path, isSet(value) ? fmt::format("{:.9g} {}", value, unit) : std::string());
  }
  void text(const std::string& path, const std::string& value) {
    if (done_) done_ = setField(project_, path, value);
  }
  Done done() const { return done_; }

 private:
  Project& project_;
  Done done_;
};

void typeMasses(Project& project, const JointLoad& carried, Typist& typist) {
  project.load.masses.assign(carried.bodies.size(), LoadMass{});
  for (std::size_t k = 0; k < carried.bodies.size(); ++k) {
    const CarriedBody& body = carried.bodies[k];
    const std::string path = fmt::format("load.masses[{}].", k);
    typist.text(path + "name", body.link);
    typist.type(path + "mass", body.mass, "kg");
    typist.type(path + "x", body.centre.x(), "m");
    typist.type(path + "y", body.centre.y(), "m");
    typist.type(path + "z", body.centre.z(), "m");
    typist.type(path + "inertia", std::max(0.0, body.inertia), "kg*m^2");
  }
  typist.type("load.inertia", kUnset, "kg*m^2");
  typist.type("load.linkMass", 0, "kg");
  typist.type("load.linkDistance", 0, "m");
}

void typeMounting(const JointLoad& carried, Typist& typist) {
  typist.text("load.mounting", "direction");
  typist.type("load.downX", carried.down.x(), "");
  typist.type("load.downY", carried.down.y(), "");
  typist.type("load.downZ", carried.down.z(), "");
}

void typeJoint(const RobotJoint& joint, Typist& typist) {
  typist.type("load.stopLow", joint.low, "rad");
  typist.type("load.stopHigh", joint.high, "rad");
  typist.type("requirements.travelMin", joint.low, "rad");
  typist.type("requirements.travelMax", joint.high, "rad");
  if (isSet(joint.speedLimit)) typist.type("cycle.speedLimit", joint.speedLimit, "rad/s");
  if (joint.coulombFriction > 0) {
    typist.type("load.coulombFriction", joint.coulombFriction, "N*m");
  }
  if (joint.viscousFriction > 0) {
    typist.type("load.viscousFriction", joint.viscousFriction, "N*m*s/rad");
  }
}

std::vector<double> listOf(const Eigen::ArrayXd& values) {
  return {values.data(), values.data() + values.size()};
}

}  // namespace

std::optional<InputError> choiceError(const RobotChoice& choice) {
  const RobotJoint& joint = choice.robot->joints.at(choice.joint);
  const std::string where = fmt::format("joint '{}', line {}", joint.name, joint.line);
  if (joint.kind != RobotJointKind::Turning) {
    return InputError{"this joint does not turn", where, "choose one that does"};
  }
  if (!carriedLoad(*choice.robot, choice.joint, choice.pose, choice.down).bodies.empty()) {
    return std::nullopt;
  }
  std::string links;
  const std::vector<bool> carried = carriedLinks(*choice.robot, choice.joint);
  for (std::size_t k = 0; k < carried.size(); ++k) {
    const RobotLink& link = choice.robot->links[k];
    if (!carried[k]) continue;
    links += fmt::format("{}'{}' (line {})", links.empty() ? "" : ", ", link.name, link.line);
  }
  return InputError{fmt::format("nothing beyond this joint has a mass: {}", links.substr(0, 300)),
                    where, "add <inertial> with mass and inertia to the links"};
}

tl::expected<void, InputError> applyRobotLoad(Project& project, const RobotChoice& choice) {
  if (auto error = choiceError(choice)) return tl::unexpected(*error);
  Project changed = project;
  const JointLoad carried = carriedLoad(*choice.robot, choice.joint, choice.pose, choice.down);
  Typist typist(changed);
  typeMasses(changed, carried, typist);
  typeMounting(carried, typist);
  typeJoint(choice.robot->joints[choice.joint], typist);
  if (typist.done()) project = std::move(changed);
  return typist.done();
}

tl::expected<void, InputError> applyRobotMotion(Project& project, const RobotChoice& choice,
                                                const JointTrajectory& trajectory) {
  Project changed = project;
  if (auto done = applyRobotLoad(changed, choice); !done) return done;
  if (trajectory.time.size() > kMostTablePoints) {
    return tl::unexpected(
        InputError{fmt::format("the trajectory has {} rows", trajectory.time.size()), "",
                   fmt::format("at most {} fit into a table", kMostTablePoints)});
  }
  const JointLoad carried = carriedLoad(*choice.robot, choice.joint, choice.pose, choice.down);
  const RobotMotion motion = motionOf(*choice.robot, trajectory);
  const double gravity = project.load.gravity;
  const Eigen::ArrayXd torque =
      inverseDynamics(*choice.robot, choice.joint, motion, gravity * choice.down.normalized());
  const GravityMoment weight = gravityMoment(carried.sum, gravity * carried.down);
  const Eigen::ArrayXd& angle = motion.place[choice.joint];
  const Eigen::ArrayXd own = carried.sum.inertia * motion.acceleration[choice.joint] +
                             weight.x * angle.cos() - weight.y * angle.sin();
  Segment segment;
  segment.name = "trajectory";
  segment.law = MotionLaw::Table;
  segment.table = {
      listOf(Eigen::Map<const Eigen::ArrayXd>(trajectory.time.data(),
                                              static_cast<Eigen::Index>(trajectory.time.size())) -
             trajectory.time.front()),
      listOf(angle - angle[0]), listOf(motion.speed[choice.joint]),
      listOf(motion.acceleration[choice.joint]), listOf(torque - own)};
  changed.cycle.segments = {segment};
  Typist typist(changed);
  typist.type("cycle.startAngle", angle[0], "rad");
  if (typist.done()) project = std::move(changed);
  return typist.done();
}

}  // namespace jw
