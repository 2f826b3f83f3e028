#include "core/studies/involute_outline.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

#include "core/studies/drive_outlines.h"

namespace jw::drive {
namespace {

using std::numbers::pi;

double involute(double angle) { return std::tan(angle) - angle; }

double baseRadius(const ToothForm& f) { return f.pitchRadius() * std::cos(f.pressureAngle); }

double thickness(const ToothForm& f) { return f.module * (pi / 2 - f.play); }

// inv a_r - inv a: what a flank has turned aside from the pitch circle up to radius r >= r_b.
double turnedAside(const ToothForm& f, double r) {
  return involute(std::acos(std::min(baseRadius(f) / r, 1.0))) - involute(f.pressureAngle);
}

// Depth to which the rack cuts; a rack of large pressure angle comes to a point before.
double cutDepth(const ToothForm& f) {
  const double half = (pi * f.module - thickness(f)) / 2;
  return std::min(f.dedendum * f.module, 0.98 * half / std::tan(f.pressureAngle));
}

// Half the angle of the gap at radius r of an external gear.
double gapHalfAngle(const ToothForm& f, double r) {
  const double rp = f.pitchRadius();
  const double depth = cutDepth(f);
  const double corner =
      (pi * f.module - thickness(f)) / 2 - depth * std::tan(f.pressureAngle);  // half rack tip
  const double root = rp - depth;
  const double u = std::sqrt(std::max(r * r - root * root, 0.0));
  double gap = std::atan2(u, root) - (u - corner) / rp;
  if (r >= baseRadius(f))
    gap = std::max(gap, pi / f.teeth - thickness(f) / (2 * rp) + turnedAside(f, r));
  return std::min(gap, pi / f.teeth);
}

// Tip radius, less where the tooth would come to a point before it.
double tipRadius(const ToothForm& f) {
  double tip = f.pitchRadius() + f.addendum * f.module;
  const double least = 0.05 * f.module;  // half thickness left
  for (int i = 0; i < 40 && (pi / f.teeth - gapHalfAngle(f, tip)) * tip < least; ++i)
    tip -= 0.05 * f.module;
  return std::max(tip, f.pitchRadius());
}

// Half the angle of the gap at radius r of an internal gear.
double internalGapHalfAngle(const ToothForm& f, double r) {
  const double gap = pi * f.module - thickness(f);
  return std::clamp(gap / (2 * f.pitchRadius()) - turnedAside(f, r), 0.0, pi / f.teeth);
}

// Shares of the tooth height at which a flank is taken, closer at the root and with few teeth.
const std::vector<double>& heights(double teeth) {
  static const std::vector<double> kFine{0, .05, .14, .28, .46, .64, .82, 1};
  static const std::vector<double> kMedium{0, .12, .35, .66, 1};
  static const std::vector<double> kCoarse{0, .25, 1};
  return teeth <= 45 ? kFine : teeth <= 140 ? kMedium : kCoarse;
}

// Goes once round: up one side of each tooth from radius `foot` to `tip`, down the other.
Outline aroundTeeth(double teeth, double foot, double tip,
                    const std::function<double(double)>& halfTooth) {
  Outline points;
  std::vector<std::pair<double, double>> flank;  // radius, half angle of the tooth
  for (const double share : heights(teeth)) {
    const double r = foot + share * (tip - foot);
    flank.emplace_back(r, halfTooth(r));
  }
  const int number = int(std::lround(teeth));
  points.reserve(flank.size() * 2 * number + 2 * number);
  for (int i = 0; i < number; ++i) {
    const double middle = 2 * pi * i / number;
    points.push_back(polar(foot, middle - pi / number));
    for (const auto& [r, half] : flank) points.push_back(polar(r, middle - half));
    points.push_back(polar(tip, middle));
    for (auto side = flank.rbegin(); side != flank.rend(); ++side)
      points.push_back(polar(side->first, middle + side->second));
  }
  return points;
}

}  // namespace

Outline externalTeeth(const ToothForm& form) {
  return aroundTeeth(form.teeth, externalRootRadius(form), tipRadius(form), [&](double r) {
    return std::max(pi / form.teeth - gapHalfAngle(form, r), 0.0);
  });
}

Outline internalTeeth(const ToothForm& form) {
  const double tip =
      std::max(form.pitchRadius() - form.addendum * form.module, 1.0001 * baseRadius(form));
  return aroundTeeth(form.teeth, internalRootRadius(form), tip,
                     [&](double r) { return pi / form.teeth - internalGapHalfAngle(form, r); });
}

double internalRootRadius(const ToothForm& form) {
  return form.pitchRadius() + form.dedendum * form.module;
}

double externalRootRadius(const ToothForm& form) { return form.pitchRadius() - cutDepth(form); }

DriveBody gearBody(const ToothForm& form, DriveRole role, const DriveMotion& motion,
                   double boreShare) {
  const double root = externalRootRadius(form);
  const double bore = boreShare * root;
  DriveBody body{.role = role, .motion = motion};
  body.outlines = {externalTeeth(form), circle(bore)};
  body.marks = {spoke(bore, 0.94 * root)};
  return body;
}

}  // namespace jw::drive
