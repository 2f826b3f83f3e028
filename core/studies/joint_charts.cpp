#include "core/studies/joint_charts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/checks/joint_figures.h"

namespace jw {
namespace {

constexpr int kFrequencies = 600;
constexpr double kTurn = 2 * std::numbers::pi;

double decibels(double share) { return 20 * std::log10(share); }

/// The frequencies with both resonances among them, so that no peak falls between two.
std::vector<double> frequenciesFor(double locked, double free) {
  const double low = locked / 10;
  const double high = 10 * free;
  std::vector<double> frequencies{locked, free};
  for (int k = 0; k < kFrequencies; ++k) {
    frequencies.push_back(low * std::pow(high / low, double(k) / (kFrequencies - 1)));
  }
  std::sort(frequencies.begin(), frequencies.end());
  return frequencies;
}

std::vector<SwingCurve> swingCurves(const Project& project, const Evaluation& evaluation) {
  const double torque = evaluation.load->total.abs().maxCoeff();
  auto masses = twoMass(project, evaluation, torque);
  if (!masses || !(masses->load > 0) || !(masses->motor > 0)) return {};
  std::vector<SwingCurve> curves{swingCurve(*masses)};
  const auto& inertias = evaluation.load->segmentInertia;
  const double smallest = *std::min_element(inertias.begin(), inertias.end());
  if (smallest > 0 && smallest < 0.98 * masses->load) {
    masses->load = smallest;
    curves.push_back(swingCurve(*masses));
  }
  return curves;
}

}  // namespace

SwingCurve swingCurve(TwoMass masses) {
  const double both = masses.motor * masses.load / (masses.motor + masses.load);
  masses.damping = 2 * kAssumedDamping * std::sqrt(masses.stiffness * both);
  SwingCurve curve;
  curve.masses = masses;
  curve.locked = masses.locked() / kTurn;
  curve.free = masses.free() / kTurn;
  curve.frequency = frequenciesFor(curve.locked, curve.free);
  for (const double frequency : curve.frequency) {
    const double w = kTurn * frequency;
    const double rigid = w * (masses.motor + masses.load);
    curve.motor.push_back(decibels(std::abs(masses.motorSpeedPerTorque(w)) * rigid));
    curve.joint.push_back(decibels(std::abs(masses.loadSpeedPerTorque(w)) * rigid));
  }
  return curve;
}

JointCharts jointCharts(const Project& project, const Evaluation& evaluation) {
  JointCharts charts;
  charts.bandwidth = project.requirements.bandwidth;
  charts.reach = reachOf(project);
  charts.toolError = project.requirements.toolError;
  if (!evaluation.load || !evaluation.chain || !evaluation.stages) return charts;
  charts.swing = swingCurves(project, evaluation);
  charts.error = errorBudget(project, evaluation);
  if (charts.error && !std::isfinite(charts.error->worst())) charts.error.reset();
  return charts;
}

}  // namespace jw
