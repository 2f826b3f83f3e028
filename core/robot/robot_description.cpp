#include "core/robot/robot_description.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include <console_bridge/console.h>
#include <fmt/format.h>
#include <urdf_parser/urdf_parser.h>
#include <Eigen/Eigenvalues>

#include "core/robot/description_check.h"

namespace jw {
namespace {

/// Keeps what the library has to say off the console while it lives.
class Messages : public console_bridge::OutputHandler {
 public:
  Messages() { console_bridge::useOutputHandler(this); }
  ~Messages() override { console_bridge::restorePreviousOutputHandler(); }
  Messages(const Messages&) = delete;
  Messages& operator=(const Messages&) = delete;

  void log(const std::string& text, console_bridge::LogLevel level, const char*, int) override {
    if (level < console_bridge::CONSOLE_BRIDGE_LOG_ERROR) return;
    if (!all_.empty()) all_ += "; ";
    all_ += text;
  }
  const std::string& all() const { return all_; }

 private:
  std::string all_;
};

Eigen::Vector3d toEigen(const urdf::Vector3& v) { return {v.x, v.y, v.z}; }

Eigen::Isometry3d toEigen(const urdf::Pose& pose) {
  const urdf::Rotation& r = pose.rotation;
  Eigen::Isometry3d frame = Eigen::Isometry3d::Identity();
  frame.linear() = Eigen::Quaterniond(r.w, r.x, r.y, r.z).toRotationMatrix();
  frame.translation() = toEigen(pose.position);
  return frame;
}

RobotJointKind kindOf(const urdf::Joint& joint) {
  switch (joint.type) {
    case urdf::Joint::REVOLUTE:
    case urdf::Joint::CONTINUOUS: return RobotJointKind::Turning;
    case urdf::Joint::PRISMATIC: return RobotJointKind::Sliding;
    default: return RobotJointKind::Fixed;
  }
}

/// Turns the library's model into plain links and joints.
class Converter {
 public:
  Converter(const urdf::ModelInterface& model, const DescriptionLines& lines, std::string fileName)
      : model_(model), lines_(lines), file_(std::move(fileName)) {}

  tl::expected<RobotDescription, InputError> convert() {
    out_.name = model_.getName();
    add(*model_.getRoot());
    for (const auto& [index, master] : followers_) setMaster(index, master);
    if (error_) return tl::unexpected(*error_);
    return std::move(out_);
  }

 private:
  std::string place(const char* kind, const std::string& name, std::size_t line) const {
    return fmt::format("{}, line {} ({} '{}')", file_, line, kind, name);
  }

  void fail(InputError error) {
    if (!error_) error_ = std::move(error);
  }

  std::size_t add(const urdf::Link& link) {
    const std::size_t index = out_.links.size();
    out_.links.push_back(converted(link));
    for (const auto& joint : link.child_joints) {
      const auto child = model_.getLink(joint->child_link_name);
      const std::size_t at = out_.joints.size();
      out_.joints.push_back(converted(*joint));
      out_.joints[at].parent = index;
      const std::size_t childIndex = add(*child);
      out_.joints[at].child = childIndex;
    }
    return index;
  }

  RobotLink converted(const urdf::Link& link) {
    RobotLink result;
    result.name = link.name;
    const auto line = lines_.links.find(link.name);
    if (line != lines_.links.end()) result.line = line->second;
    const std::string where = place("link", link.name, result.line);
    if (!link.inertial && link.parent_joint == nullptr) return result;  // the base stands still
    if (!link.inertial) {
      out_.notes.push_back({"this link has no <inertial>: it counts as massless", where,
                            "add its mass and inertia if it has any"});
      return result;
    }
    const urdf::Inertial& given = *link.inertial;
    const Eigen::Isometry3d origin = toEigen(given.origin);
    Eigen::Matrix3d own;
    own << given.ixx, given.ixy, given.ixz, given.ixy, given.iyy, given.iyz, given.ixz, given.iyz,
        given.izz;
    result.hasInertial = true;
    result.mass = given.mass;
    result.centre = origin.translation();
    result.inertia = origin.linear() * own * origin.linear().transpose();
    checkBody(result, where);
    return result;
  }

  void checkBody(const RobotLink& link, const std::string& where) {
    if (!std::isfinite(link.mass) || !link.centre.allFinite() || !link.inertia.allFinite()) {
      return fail({"mass, centre or inertia is no finite number", where, "correct <inertial>"});
    }
    if (link.mass < 0) return fail({"the mass is negative", where, "correct <mass>"});
    const Eigen::Vector3d own =
        Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d>(link.inertia).eigenvalues();
    const double slack = 1e-3 * own[2] + 1e-12;
    if (link.mass > 0 && (own[0] < -slack || own[0] + own[1] < own[2] - slack)) {
      out_.notes.push_back(
          {"no real body has this inertia: one principal value exceeds the sum of "
           "the others",
           where, "check <inertia>, in kg·m² about the centre of mass"});
    }
  }

  RobotJoint converted(const urdf::Joint& joint) {
    RobotJoint result;
    result.name = joint.name;
    const auto line = lines_.joints.find(joint.name);
    if (line != lines_.joints.end()) result.line = line->second;
    const std::string where = place("joint", joint.name, result.line);
    result.kind = kindOf(joint);
    if (joint.type == urdf::Joint::FLOATING || joint.type == urdf::Joint::PLANAR) {
      out_.notes.push_back({"this joint neither turns nor slides along one line: taken as fixed",
                            where, "pose it in the description"});
    }
    result.origin = toEigen(joint.parent_to_joint_origin_transform);
    if (!result.origin.matrix().allFinite()) {
      fail({"the origin is no finite number", where, "correct <origin>"});
    }
    if (result.moves()) fillMotion(joint, result, where);
    return result;
  }

  void fillMotion(const urdf::Joint& joint, RobotJoint& result, const std::string& where) {
    const Eigen::Vector3d axis = toEigen(joint.axis);
    if (!(axis.norm() > 0) || !axis.allFinite()) {
      fail({"the axis has no length", where, "give a direction, such as xyz=\"0 0 1\""});
    }
    result.axis = axis.normalized();
    if (joint.limits) {
      result.speedLimit = joint.limits->velocity > 0 ? joint.limits->velocity : kUnset;
      const bool bounded = joint.type != urdf::Joint::CONTINUOUS;
      if (bounded) result.low = joint.limits->lower, result.high = joint.limits->upper;
      if (bounded && !(result.low <= result.high)) {
        fail({"the lower limit lies above the upper one", where, "exchange them"});
      }
    }
    if (joint.dynamics) {
      result.viscousFriction = std::max(0.0, joint.dynamics->damping);
      result.coulombFriction = std::max(0.0, joint.dynamics->friction);
    }
    if (!joint.mimic) return;
    result.factor = joint.mimic->multiplier, result.offset = joint.mimic->offset;
    followers_.emplace_back(out_.joints.size(), joint.mimic->joint_name);
  }

  void setMaster(std::size_t index, const std::string& master) {
    RobotJoint& joint = out_.joints[index];
    for (std::size_t k = 0; k < out_.joints.size(); ++k) {
      if (out_.joints[k].name == master && k != index && out_.joints[k].isFree()) {
        joint.follows = static_cast<int>(k);
        return;
      }
    }
    fail({fmt::format("it follows the joint '{}', which is none that moves freely", master),
          place("joint", joint.name, joint.line), "correct <mimic>"});
  }

  const urdf::ModelInterface& model_;
  const DescriptionLines& lines_;
  std::string file_;
  RobotDescription out_;
  std::vector<std::pair<std::size_t, std::string>> followers_;
  std::optional<InputError> error_;
};

}  // namespace

std::vector<double> RobotDescription::restPose() const {
  std::vector<double> pose;
  for (const RobotJoint& joint : joints) {
    pose.push_back(isSet(joint.low) ? std::clamp(0.0, joint.low, joint.high) : 0.0);
  }
  return pose;
}

tl::expected<RobotDescription, InputError> readRobotDescription(std::string_view text,
                                                                std::string_view fileName) {
  const std::string file(fileName);
  DescriptionLines lines;
  if (auto error = descriptionError(std::string(text), file, lines)) return tl::unexpected(*error);
  urdf::ModelInterfaceSharedPtr model;
  Messages messages;
  std::string reason;
  try {
    model = urdf::parseURDF(std::string(text));
  } catch (const std::exception& problem) {
    reason = problem.what();
  }
  if (!model || !model->getRoot()) {
    if (!messages.all().empty()) reason = messages.all();
    return tl::unexpected(InputError{
        fmt::format("this robot description cannot be read: {}",
                    reason.empty() ? "it does not hang together" : reason.substr(0, 300)),
        file, "correct it and open it again"});
  }
  auto robot = Converter(*model, lines, file).convert();
  if (robot && !messages.all().empty()) {
    robot->notes.push_back({messages.all().substr(0, 300), file, "this part was passed over"});
  }
  return robot;
}

}  // namespace jw
