#include "widgets/figures/cycle_view.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/motion/cycle_reading.h"
#include "core/quantity/quantity.h"
#include "core/studies/shown_samples.h"
#include "widgets/figures/finite.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

using Samples = std::vector<Eigen::Index>;

CycleSeries series(const Samples& samples, const QString& name, const Eigen::ArrayXd& values,
                   Quantity quantity, std::string_view unit, const SeriesLook& look,
                   bool rightAxis = false) {
  return {name, QString::fromStdString(prettyUnit(unit)),
          plotValues(picked(values, samples), fromInternal(1, unit, quantity)), look, rightAxis};
}

// Causes that are zero all the time are left out.
void addCause(CycleRow& row, const Samples& samples, const QString& name,
              const Eigen::ArrayXd& values, const SeriesLook& look) {
  if (values.size() > 0 && values.abs().maxCoeff() > 1e-12)
    row.series.push_back(series(samples, name, values, Quantity::Torque, "N*m", look));
}

CycleRow motionRow(const Samples& samples, const SampledCycle& cycle) {
  CycleRow row{"motion", "Motion", "joint", {}};
  row.series.push_back(
      series(samples, "position", cycle.angle, Quantity::Angle, "deg", {&Palette::text}));
  row.series.push_back(series(samples, "speed", cycle.speed, Quantity::AngularSpeed, "rpm",
                              {&Palette::accent, Qt::DashLine}, true));
  return row;
}

CycleRow torqueRow(const Samples& samples, const LoadTorque& load) {
  CycleRow row{"torque", "Joint torque", "joint torque, N·m", {}};
  row.series.push_back(series(samples, "total", load.total, Quantity::Torque, "N*m",
                              {&Palette::text, Qt::SolidLine, 1.9}));
  addCause(row, samples, "gravity", load.gravity, {&Palette::gravity, Qt::DashLine});
  addCause(row, samples, "inertia", load.inertia, {&Palette::inertia, Qt::DotLine, 1.9});
  addCause(row, samples, "friction", load.friction, {&Palette::friction, Qt::DashDotLine});
  addCause(row, samples, "spring", load.spring, {&Palette::spring, Qt::DashDotDotLine});
  addCause(row, samples, "external", load.external, {&Palette::external, Qt::CustomDashLine});
  return row;
}

CycleRow motorRow(const Samples& samples, const MotorConstants* motor, const MotorDemand& demand) {
  CycleRow row{"motor", "Motor", "motor", {}};
  row.series.push_back(
      series(samples, "torque", demand.torque, Quantity::Torque, "N*m", {&Palette::text}));
  const double rms = motor ? motor->rmsFactor() : 1;
  row.series.push_back(series(samples, motor && !motor->direct ? "current (rms)" : "current",
                              demand.current * rms, Quantity::Current, "A",
                              {&Palette::peak, Qt::DashLine}, true));
  return row;
}

CycleRow powerRow(const Samples& samples, const SampledCycle& cycle, const LoadTorque& load,
                  const MotorDemand* demand) {
  CycleRow row{"power", "Power", "power, W", {}};
  const auto add = [&](const QString& name, const Eigen::ArrayXd& power, const SeriesLook& look) {
    row.series.push_back(series(samples, name, power, Quantity::Power, "W", look));
  };
  if (demand) add("from the supply", demand->supplyPower, {&Palette::peak, Qt::DashLine});
  if (demand) add("at the shaft", demand->shaftPower, {&Palette::accent, Qt::DotLine, 1.9});
  add("at the joint", load.total * cycle.speed, {&Palette::text});
  return row;
}

CycleRow lossRow(const Samples& samples, const StageChain& chain, const MotorDemand& demand) {
  CycleRow row{"losses", "Losses", "losses, W", {}};
  row.shownAtFirst = false;
  const auto add = [&](const QString& name, const Eigen::ArrayXd& loss, const SeriesLook& look) {
    row.series.push_back(series(samples, name, loss, Quantity::Power, "W", look));
  };
  add("copper", demand.copperLoss, {&Palette::peak});
  add("no-load", demand.dragLoss, {&Palette::accent, Qt::DashLine});
  add("controller", demand.controllerLoss, {&Palette::inertia, Qt::DotLine, 1.9});
  constexpr std::array kStages{SeriesLook{&Palette::text, Qt::DashDotLine},
                               SeriesLook{&Palette::friction, Qt::DashDotDotLine},
                               SeriesLook{&Palette::gravity, Qt::CustomDashLine}};
  for (std::size_t k = 0; k < chain.stages.size(); ++k)
    add(QStringLiteral("stage %1").arg(k + 1), chain.stages[k].loss, kStages[k % kStages.size()]);
  return row;
}

// Nothing where the voltage stays as it is, e.g. because the source takes power back.
std::optional<CycleRow> busRow(const Samples& samples, const Supply& supply, const SupplyFlow& flow,
                               Eigen::Index count) {
  const Eigen::ArrayXd& voltage = flow.energy.voltage;
  if (voltage.size() != count || !voltage.allFinite()) return std::nullopt;
  if (voltage.maxCoeff() - voltage.minCoeff() < 1e-3 * voltage.maxCoeff()) return std::nullopt;
  CycleRow row{"bus", "Bus", "bus, V", {}, {}, false};
  row.shownAtFirst = false;
  row.series.push_back(
      series(samples, "voltage", voltage, Quantity::Voltage, "V", {&Palette::text}));
  const auto add = [&](const QString& name, double volts, QColor Palette::*hue) {
    if (isSet(volts) && std::isfinite(volts))
      row.levels.push_back({name + u' ' + quantityText(volts, Quantity::Voltage, "V"), volts, hue});
  };
  add("limit", supply.busVoltageMax, &Palette::shortfall);
  add("brake resistor", flow.bus.brakeVoltage, &Palette::accent);
  return row;
}

// The view without its rows.
CycleView emptyView(const Snapshot& snapshot) {
  CycleView view;
  view.stale = snapshot.stale;
  if (!snapshot.evaluation || !snapshot.evaluation->cycle || !snapshot.evaluatedProject)
    return view;
  const SampledCycle& cycle = *snapshot.evaluation->cycle;
  view.time = plotValues(picked(cycle.time, snapshot.shownSamples()));
  view.period = cycle.period;
  view.bands = segmentBands(*snapshot.evaluatedProject, cycle);
  return view;
}

}  // namespace

std::vector<CycleBand> segmentBands(const Project& project, const SampledCycle& cycle) {
  std::vector<CycleBand> bands;
  int last = -1;
  for (Eigen::Index i = 0; i < cycle.size(); ++i) {
    const int index = cycle.segment[i];
    if (index != last) {
      const auto& all = project.cycle.segments;
      const bool known = index >= 0 && index < int(all.size());
      QString name = known ? QString::fromStdString(all[std::size_t(index)].name) : QString();
      if (name.isEmpty()) name = QStringLiteral("segment %1").arg(index + 1);
      bands.push_back({name, cycle.time[i], cycle.time[i]});
      last = index;
    }
    bands.back().to = cycle.time[i];
  }
  return bands;
}

CycleView cycleView(const Snapshot& snapshot) {
  CycleView view = emptyView(snapshot);
  if (view.empty()) return view;
  const Evaluation& e = *snapshot.evaluation;
  const Samples& samples = snapshot.shownSamples();
  view.rows.push_back(motionRow(samples, *e.cycle));
  if (e.load) view.rows.push_back(torqueRow(samples, *e.load));
  if (e.demand) view.rows.push_back(motorRow(samples, e.motor ? &*e.motor : nullptr, *e.demand));
  if (e.load)
    view.rows.push_back(powerRow(samples, *e.cycle, *e.load, e.demand ? &*e.demand : nullptr));
  if (e.chain && e.demand) view.rows.push_back(lossRow(samples, *e.chain, *e.demand));
  if (e.supply)
    if (auto row =
            busRow(samples, snapshot.evaluatedProject->active().supply, *e.supply, e.cycle->size()))
      view.rows.push_back(*row);
  return view;
}

CycleView stripView(const Snapshot& snapshot) {
  CycleView view = emptyView(snapshot);
  if (!view.empty() && snapshot.evaluation->load)
    view.rows.push_back(torqueRow(snapshot.shownSamples(), *snapshot.evaluation->load));
  return view;
}

QStringList firstRows(const CycleView& view) {
  QStringList ids;
  for (const CycleRow& row : view.rows)
    if (row.shownAtFirst) ids << row.id;
  return ids;
}

double seriesAt(const QVector<double>& time, const QVector<double>& values, double at) {
  if (time.isEmpty() || !(at >= time.first() && at <= time.last())) return kUnset;
  const auto after = std::upper_bound(time.begin(), time.end(), at);
  const qsizetype i = qMax<qsizetype>(after - time.begin() - 1, 0);
  if (i + 1 >= time.size()) return values.last();
  const double share = (at - time[i]) / (time[i + 1] - time[i]);
  return values[i] + share * (values[i + 1] - values[i]);
}

}  // namespace jw
