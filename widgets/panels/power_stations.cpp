#include "widgets/panels/power_stations.h"

#include <cmath>

#include "core/model/field_catalogue.h"
#include "core/motion/cycle_reading.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

// A quantity of the cycle, at an instant or over all of it.
class Reading {
 public:
  Reading(const Evaluation& evaluation, double time) : m_cycle(*evaluation.cycle), m_time(time) {}

  QString rms(const Eigen::ArrayXd& values, Quantity quantity, std::string_view unit) const {
    if (!isMean()) return quantityText(valueAt(m_cycle, values, m_time), quantity, unit);
    return quantityText(cycleRms(m_cycle, values), quantity, unit) + QStringLiteral(" rms");
  }
  QString meanAmount(const Eigen::ArrayXd& values, Quantity quantity, std::string_view unit) const {
    if (!isMean()) return quantityText(valueAt(m_cycle, values, m_time), quantity, unit);
    return quantityText(cycleMean(m_cycle, values.abs()), quantity, unit) + QStringLiteral(" mean");
  }
  StationPower power(const PowerStation& station) const {
    return isMean() ? meanPower(m_cycle, station) : powerAt(m_cycle, station, m_time);
  }
  bool isMean() const { return std::isnan(m_time); }

 private:
  const SampledCycle& m_cycle;
  double m_time;
};

QString torqueText(const Reading& reading, const Eigen::ArrayXd& torque) {
  return reading.rms(torque, Quantity::Torque, "N*m");
}

QString speedText(const Reading& reading, const Eigen::ArrayXd& speed) {
  return reading.meanAmount(speed, Quantity::AngularSpeed, "rpm");
}

QString inertiaText(double inertia) {
  if (!isSet(inertia)) return {};
  const std::string_view unit = inertia < 0.01 ? "kg*cm^2" : "kg*m^2";
  return QStringLiteral("J ") + quantityText(inertia, Quantity::Inertia, unit);
}

QString familyLabel(const Stage& stage) {
  const FieldInfo* family = structInfo<Stage>().find("family");
  const auto index = std::size_t(stage.family);
  if (!family || index >= family->choices.size()) return QStringLiteral("Stage");
  const std::string_view label = family->choices[index].label;
  QString text = QString::fromUtf8(label.data(), qsizetype(label.size()));
  return text;
}

StationView supplyView(const Variant& variant) {
  StationView view{"supply", "Supply", {}, {}, {}, {}, {}, {}, false};
  if (isSet(variant.supply.voltage))
    view.first = quantityText(variant.supply.voltage, Quantity::Voltage, "V");
  return view;
}

StationView stageView(const Stage& stage, std::size_t index) {
  StationView view;
  view.path = QStringLiteral("transmission[%1]").arg(index);
  view.title = stageTitle(stage);
  if (isSet(stage.ratio)) view.ratio = numberText(stage.ratio, 5) + QStringLiteral(" : 1");
  view.note = inertiaText(stage.inertia);
  return view;
}

StationView plainView(const QString& path, const QString& title, const QString& note = {}) {
  return {path, title, {}, {}, {}, note, {}, {}, false};
}

std::vector<StationView> namedStations(const Project& project) {
  const Variant& variant = project.active();
  std::vector<StationView> views{
      supplyView(variant), plainView("controller", "Controller"),
      plainView("motor", "Motor",
                inertiaText(variant.motor.rotorInertia + variant.motor.brakeInertia))};
  for (std::size_t k = 0; k < variant.transmission.size(); ++k)
    views.push_back(stageView(variant.transmission[k], k));
  views.push_back(plainView("load", "Joint"));
  return views;
}

void readMotor(std::vector<StationView>& views, const Evaluation& e, const Reading& reading) {
  const double rms = e.motor ? e.motor->rmsFactor() : 1;
  views[1].first = reading.rms(e.demand->current * rms, Quantity::Current, "A");
  if (reading.isMean())
    views[1].second =
        quantityText(e.demand->current.abs().maxCoeff() * rms, Quantity::Current, "A") +
        QStringLiteral(" peak");
  views[2].first = torqueText(reading, e.demand->torque);
  views[2].second = speedText(reading, e.chain->motorSpeed);
}

void readChain(std::vector<StationView>& views, const StageChain& chain, const Reading& reading) {
  for (std::size_t k = 0; k < chain.stages.size() && k + 4 < views.size(); ++k) {
    views[k + 3].first = torqueText(reading, chain.stages[k].outputTorque);
    views[k + 3].second = speedText(reading, chain.stages[k].outputSpeed);
  }
}

void readJoint(StationView& joint, const Evaluation& e, const Reading& reading) {
  joint.first = torqueText(reading, e.load->total);
  joint.second = speedText(reading, e.cycle->speed);
  joint.note = inertiaText(e.load->largestInertia);
}

void readPower(std::vector<StationView>& views, const Evaluation& e, const Reading& reading) {
  const auto flow = powerFlow(*e.cycle, *e.load, *e.chain, *e.demand);
  if (flow.size() != views.size()) return;
  for (std::size_t i = 0; i < flow.size(); ++i) {
    views[i].power = reading.power(flow[i]);
    views[i].powerKnown = std::isfinite(views[i].power.in) && std::isfinite(views[i].power.out);
  }
  views.front().second =
      wattText(views.front().power.out) + (reading.isMean() ? QStringLiteral(" mean") : QString());
}

QString hintOf(const StationView& view) {
  QStringList parts{(view.title + u' ' + view.ratio).trimmed()};
  for (const QString& part : {view.first, view.second, view.note})
    if (!part.isEmpty()) parts << part;
  if (view.powerKnown && view.power.loss > 0)
    parts << QStringLiteral("%1 lost as heat").arg(wattText(view.power.loss));
  if (view.powerKnown && std::abs(view.power.stored) > 0.05)
    parts << QStringLiteral("%1 into turning masses").arg(wattText(view.power.stored));
  return parts.join(QStringLiteral(", "));
}

}  // namespace

QString stageTitle(const Stage& stage) {
  QString title = stage.name.empty() ? familyLabel(stage) : QString::fromStdString(stage.name);
  title[0] = title[0].toUpper();
  return title;
}

std::vector<StationView> stationViews(const Snapshot& snapshot, double time) {
  const Project* project =
      snapshot.evaluatedProject ? snapshot.evaluatedProject.get() : snapshot.project.get();
  if (!project) return {};
  std::vector<StationView> views = namedStations(*project);
  const Evaluation* e = snapshot.evaluation.get();
  if (e && e->cycle && e->cycle->size() > 0) {
    const Reading reading(*e, time);
    if (e->load) readJoint(views.back(), *e, reading);
    if (e->chain) readChain(views, *e->chain, reading);
    if (e->chain && e->demand) readMotor(views, *e, reading);
    if (e->load && e->chain && e->demand) readPower(views, *e, reading);
  }
  for (StationView& view : views) view.hint = hintOf(view);
  return views;
}

double largestPower(const Snapshot& snapshot, const std::vector<StationView>& stations,
                    double time) {
  double largest = 0;
  for (const StationView& view : stations)
    if (view.powerKnown)
      largest = std::max({largest, std::abs(view.power.in), std::abs(view.power.out)});
  const bool overCycle = !std::isnan(time) && snapshot.evaluation && snapshot.evaluation->demand;
  if (!overCycle) return largest;
  return std::max(largest, snapshot.evaluation->demand->supplyPower.abs().maxCoeff());
}

}  // namespace jw
