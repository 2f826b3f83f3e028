#include "widgets/figures/envelope_view.h"

#include <cmath>

#include "core/motion/cycle_reading.h"
#include "core/studies/shown_samples.h"
#include "widgets/figures/envelope_extras.h"
#include "widgets/figures/finite.h"
#include "widgets/figures/missing_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

EnvelopeScale scaleOf(const Evaluation& evaluation, AxesAt axesAt) {
  const double rpm = fromInternal(1, "rpm", Quantity::AngularSpeed);
  if (axesAt == AxesAt::Motor || !evaluation.chain) return {rpm, 1};
  return {rpm / evaluation.chain->ratio, evaluation.chain->ratio};
}

PathSegment segmentOf(const Project& project, int index) {
  PathSegment segment;
  segment.index = index;
  const auto& all = project.cycle.segments;
  if (index >= 0 && index < int(all.size()))
    segment.name = QString::fromStdString(all[std::size_t(index)].name);
  if (segment.name.isEmpty()) segment.name = QStringLiteral("segment %1").arg(index + 1);
  return segment;
}

void tellMovesFromDwells(std::vector<PathSegment>& path) {
  int moves = 0;
  for (PathSegment& segment : path) {
    segment.dwell = std::all_of(segment.points.speed.begin(), segment.points.speed.end(),
                                [](double v) { return std::abs(v) < 1e-9; });
    segment.move = moves;
    if (!segment.dwell) ++moves;
  }
}

void splitBySegment(EnvelopeView& view, const Project& project, const SampledCycle& cycle,
                    const std::vector<Eigen::Index>& samples) {
  for (qsizetype i = 0; i < view.time.size(); ++i) {
    const int index = cycle.segment[samples.empty() ? i : samples[std::size_t(i)]];
    if (view.path.empty() || view.path.back().index != index)
      view.path.push_back(segmentOf(project, index));
    view.path.back().points.speed << view.track.speed[i];
    view.path.back().points.torque << view.track.torque[i];
    view.segmentOf << index;
  }
  tellMovesFromDwells(view.path);
}

QString pointText(const QPointF& p) {
  return QStringLiteral("%1 N·m at %2 rpm").arg(numberText(p.y()), numberText(p.x(), 4));
}

void addPath(EnvelopeView& view, const Project& project, const Evaluation& e,
             const EnvelopeScale& scale, const std::vector<Eigen::Index>& samples) {
  view.time = plotValues(picked(e.cycle->time, samples));
  view.track = {plotValues(picked(e.chain->motorSpeed, samples), scale.speed),
                plotValues(picked(e.demand->torque, samples), scale.torque)};
  splitBySegment(view, project, *e.cycle, samples);
  const QPointF rms(std::abs(e.demand->speedRms * scale.speed),
                    std::abs(e.demand->torqueRms * scale.torque));
  if (std::isfinite(rms.x()) && std::isfinite(rms.y()))
    view.rms = {rms, QStringLiteral("rms %1 N·m").arg(numberText(rms.y()))};
}

void addTightest(EnvelopeView& view, const Evaluation& e, const EnvelopeScale& scale) {
  const TightestPoint& tightest = *e.tightest;
  if (tightest.sample < 0 || view.track.speed.isEmpty()) return;
  const QPointF at(e.chain->motorSpeed[tightest.sample] * scale.speed,
                   e.demand->torque[tightest.sample] * scale.torque);
  const QString margin = fixedNumber(100 * (tightest.factor - 1), 0);
  view.tightest = {at, QStringLiteral("tightest: %1, margin %2 %").arg(pointText(at), margin)};
}

void addEnvelope(EnvelopeView& view, const Project& project, const TorqueEnvelope& envelope,
                 const EnvelopeScale& scale) {
  view.peak = curveOf(envelope.peak, scale);
  view.lasting = curveOf(envelope.lasting, scale);
  view.peakName = QStringLiteral("peak, %1")
                      .arg(quantityText(project.active().supply.voltage, Quantity::Voltage, "V"));
  view.lastingName = QStringLiteral("continuous, %1")
                         .arg(quantityText(project.requirements.ambient, Quantity::Temperature));
}

void addTitles(EnvelopeView& view, AxesAt axesAt) {
  const bool joint = axesAt == AxesAt::Joint && view.jointPossible;
  const QString note =
      joint ? QStringLiteral(" (referred to the joint, without losses)") : QString();
  view.speedTitle =
      (joint ? QStringLiteral("joint speed, rpm") : QStringLiteral("motor speed, rpm")) + note;
  view.torqueTitle =
      joint ? QStringLiteral("joint torque, N·m") : QStringLiteral("motor torque, N·m");
}

}  // namespace

EnvelopeView envelopeView(const Snapshot& snapshot, AxesAt axesAt, const EnvelopeExtras& extras) {
  EnvelopeView view;
  view.stale = snapshot.stale;
  view.missing = missingLinks(snapshot);
  if (snapshot.evaluation && snapshot.evaluatedProject) {
    const Evaluation& e = *snapshot.evaluation;
    view.jointPossible = e.chain.has_value();
    const EnvelopeScale scale = scaleOf(e, axesAt);
    if (e.envelope) addEnvelope(view, *snapshot.evaluatedProject, *e.envelope, scale);
    if (e.cycle && e.chain && e.demand)
      addPath(view, *snapshot.evaluatedProject, e, scale, snapshot.shownSamples());
    if (e.tightest) addTightest(view, e, scale);
    if (e.envelope && snapshot.studies)
      addExtras(view, *snapshot.evaluatedProject, *snapshot.studies, extras, scale);
  }
  addTitles(view, axesAt);
  return view;
}

double curveTorqueAt(const PlaneCurve& curve, double speed, bool upper) {
  double best = kUnset;
  for (qsizetype i = 1; i < curve.speed.size(); ++i) {
    const double a = curve.speed[i - 1];
    const double b = curve.speed[i];
    if (!((a <= speed && speed <= b) || (b <= speed && speed <= a))) continue;
    const double share = a == b ? 0 : (speed - a) / (b - a);
    const double torque = curve.torque[i - 1] + share * (curve.torque[i] - curve.torque[i - 1]);
    if (std::isnan(best) || (upper ? torque > best : torque < best)) best = torque;
  }
  return best;
}

}  // namespace jw
