#include "core/studies/load_edits.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/model/field_catalogue.h"
#include "core/physics/load_torque.h"

namespace jw {
namespace {

/// Torque G (cos(phi) cos q - sin(phi) sin q) as the two factors, with their covariance.
struct Gravity {
  double a = 0, b = 0;            ///< [N·m] of cos q and sin q
  double aa = 0, ab = 0, bb = 0;  ///< [N²·m²]
  double size() const { return std::hypot(a, b); }
  double sizeVariance() const {
    return (a * a * aa + 2 * a * b * ab + b * b * bb) / (a * a + b * b);
  }
  double angleVariance() const {
    const double square = a * a + b * b;
    return (b * b * aa - 2 * a * b * ab + a * a * bb) / (square * square);
  }
};

InputError note(std::string what, std::string_view key, std::string remedy) {
  return {std::move(what), fmt::format("load.{}", key), std::move(remedy)};
}

class EditWriter {
 public:
  EditWriter(const LoadFit& fit, const Load& load, KeptInGravity kept)
      : fit_(fit), load_(load), kept_(kept) {}

  LoadEdits write() {
    writeInertia();
    writeGravity();
    writeFriction(LoadTerm::Viscous, "viscousFriction");
    writeFriction(LoadTerm::Coulomb, "coulombFriction");
    if (fit_.has(LoadTerm::Offset)) {
      const FittedValue& offset = fit_[LoadTerm::Offset];
      add("externalTorque", {offset.value + load_.balanceTorque, offset.uncertainty});
    }
    return std::move(out_);
  }

 private:
  void add(std::string_view key, const FittedValue& value) {
    const FieldInfo& info = *structInfo<Load>().find(key);
    LoadEdit edit;
    edit.path = fmt::format("load.{}", key);
    edit.label = info.label;
    edit.before = info.number(&load_);
    edit.after = value.value;
    edit.uncertainty = value.uncertainty;
    const double size = std::abs(value.value) / value.uncertainty;
    const int digits = size > 0 && std::isfinite(size)
                           ? std::clamp(static_cast<int>(std::ceil(std::log10(size))) + 3, 3, 12)
                           : 12;
    edit.text = fmt::format("{:.{}g} {}", fromInternal(value.value, info.unit, info.quantity),
                            digits, info.unit);
    out_.edits.push_back(std::move(edit));
  }

  void writeInertia() {
    if (!fit_.has(LoadTerm::Inertia)) return;
    Load without = load_;
    without.inertia = 0;
    const double payload = loadInertia(without, load_.payloadMass);
    const FittedValue& found = fit_[LoadTerm::Inertia];
    inertia_ = found.value - payload;
    if (inertia_ > 0) return add("inertia", {inertia_, found.uncertainty});
    out_.notes.push_back(
        note(fmt::format("the fitted inertia {} leaves none for the link (payload {})",
                         formatQuantity(found.value, Quantity::Inertia, "kg*m^2"),
                         formatQuantity(payload, Quantity::Inertia, "kg*m^2")),
             "inertia", "check the payload and the signs of the log"));
  }

  /// What was fitted, less the part of payload and listed masses.
  Gravity linkGravity() const {
    Load others = load_;
    others.linkMass = 0;
    const GravityMoment rest =
        gravityMoment(carriedMasses(others, load_.payloadMass), gravityVector(load_));
    const auto cov = [this](LoadTerm x, LoadTerm y) {
      return fit_.covariance(static_cast<Eigen::Index>(x), static_cast<Eigen::Index>(y));
    };
    Gravity g;
    g.a = (fit_.has(LoadTerm::GravityCos) ? fit_[LoadTerm::GravityCos].value : 0) - rest.x;
    g.b = (fit_.has(LoadTerm::GravitySin) ? fit_[LoadTerm::GravitySin].value : 0) + rest.y;
    g.aa = cov(LoadTerm::GravityCos, LoadTerm::GravityCos);
    g.ab = cov(LoadTerm::GravityCos, LoadTerm::GravitySin);
    g.bb = cov(LoadTerm::GravitySin, LoadTerm::GravitySin);
    return g;
  }

  void writeGravity() {
    if (!fit_.has(LoadTerm::GravityCos) && !fit_.has(LoadTerm::GravitySin)) return;
    const Eigen::Vector3d down = gravityVector(load_);
    const double pull = down.head<2>().norm();  // across the axis
    if (pull < 1e-3 * load_.gravity || pull == 0)
      return out_.notes.push_back(note("the axis is vertical: no gravity to be fitted",
                                       load_.mounting == Mounting::Tilt ? "axisTilt" : "downY",
                                       "correct the mounting, or leave gravity out of the fit"));
    const Gravity g = linkGravity();
    const double moment = g.size() / pull;
    if (!(moment > 0)) return writeMoment({0, 0});
    add("linkAngle", {std::atan2(down.x() * g.a + down.y() * g.b, down.x() * g.b - down.y() * g.a),
                      std::sqrt(g.angleVariance())});
    writeMoment({moment, std::sqrt(g.sizeVariance()) / pull});
  }

  /// Shares the moment [kg·m] out to mass and distance.
  void writeMoment(const FittedValue& moment) {
    const bool keepMass = kept_ == KeptInGravity::Mass;
    const double given = keepMass ? load_.linkMass : load_.linkDistance;
    const double other = keepMass ? load_.linkDistance : load_.linkMass;
    if (given > 0) {
      add(keepMass ? "linkDistance" : "linkMass",
          {moment.value / given, moment.uncertainty / given});
    } else if (other > 0) {
      add(keepMass ? "linkMass" : "linkDistance",
          {moment.value / other, moment.uncertainty / other});
    } else if (moment.value > 0) {
      writePointMass(moment);
    }
    noteInertia(moment.value);
  }

  void writePointMass(const FittedValue& moment) {
    const double inertia = inertia_ > 0 ? inertia_ : load_.inertia;
    if (!(inertia > 0))
      return out_.notes.push_back(note("neither mass nor distance of the link is given", "linkMass",
                                       "give one of them: gravity only tells their product"));
    const double distance = inertia / moment.value;
    add("linkMass", {moment.value / distance, 2 * moment.uncertainty / distance});
    add("linkDistance", {distance, distance * moment.uncertainty / moment.value});
    out_.notes.push_back(
        note("gravity only tells mass times distance: taken for a point mass of "
             "the fitted inertia",
             "linkMass", "type the mass if you know it"));
  }

  /// J >= m r² by Steiner's rule: the kept value must leave room.
  void noteInertia(double moment) {
    const auto valueOf = [this](std::string_view path, double before) {
      for (const LoadEdit& edit : out_.edits)
        if (edit.path == path) return edit.after;
      return before;
    };
    const double distance = valueOf("load.linkDistance", load_.linkDistance);
    const double inertia = valueOf("load.inertia", load_.inertia);
    if (!(inertia < 0.999 * moment * distance)) return;
    out_.notes.push_back(
        note(fmt::format("the link's inertia {} is less than mass times squared distance, {}",
                         formatQuantity(inertia, Quantity::Inertia, "kg*m^2"),
                         formatQuantity(moment * distance, Quantity::Inertia, "kg*m^2")),
             "linkDistance", "the kept mass or distance cannot be right"));
  }

  void writeFriction(LoadTerm term, std::string_view key) {
    if (!fit_.has(term)) return;
    const FittedValue& found = fit_[term];
    if (found.value >= 0) return add(key, found);
    if (found.value > -2 * found.uncertainty) return add(key, {0, found.uncertainty});
    out_.notes.push_back(note(fmt::format("the {} comes out negative", nameOf(term)), key,
                              "check the signs of torque and speed"));
  }

  const LoadFit& fit_;
  const Load& load_;
  KeptInGravity kept_;
  LoadEdits out_;
  double inertia_ = kUnset;
};

}  // namespace

LoadEdits loadEdits(const LoadFit& fit, const Load& load, KeptInGravity kept) {
  return EditWriter(fit, load, kept).write();
}

tl::expected<void, InputError> applyLoadEdits(Project& project, const LoadEdits& edits) {
  Project changed = project;
  for (const LoadEdit& edit : edits.edits)
    if (auto set = setField(changed, edit.path, edit.text); !set) return set;
  project.load = std::move(changed.load);
  return {};
}

}  // namespace jw
