#include "widgets/panels/heat_fit_view.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/model/field_catalogue.h"
#include "widgets/figures/finite.h"
#include "widgets/figures/missing_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

struct FittedField {
  const char* path;
  FittedValue HeatFit::*value;
};
constexpr std::array kFields{
    FittedField{"motor.thermalResistanceWinding", &HeatFit::windingToHousing},
    FittedField{"motor.thermalResistanceHousing", &HeatFit::housingToAmbient},
    FittedField{"motor.windingCapacity", &HeatFit::windingCapacity},
    FittedField{"motor.housingCapacity", &HeatFit::housingCapacity},
};

double rounded(double value, int digits) {
  const double scale = std::pow(10, digits - 1 - std::floor(std::log10(std::abs(value))));
  return std::round(value * scale) / scale;
}

const FieldInfo& infoOf(const char* path) {
  const std::string_view text(path);
  return *structInfo<Motor>().find(text.substr(text.find('.') + 1));
}

FittedRow rowOf(const FittedField& field, const FittedValue& fitted) {
  const FieldInfo& info = infoOf(field.path);
  const double value = fromInternal(fitted.value, info.unit, info.quantity);
  const double uncertainty = fromInternal(fitted.uncertainty, info.unit, info.quantity);
  // A last digit that the uncertainty still leaves some meaning.
  const double ratio = std::max(std::abs(value / uncertainty), 1.0);
  const int digits = std::isfinite(ratio) ? std::clamp(int(std::log10(ratio)) + 2, 2, 4) : 4;
  return {QString::fromLatin1(field.path), fieldLabel(Project{}, field.path),
          QStringLiteral("%1 ± %2 %3")
              .arg(numberText(value, digits), numberText(uncertainty, 2),
                   QString::fromStdString(prettyUnit(info.unit)))};
}

// Time axis in a unit that suits the curve's length.
struct TimeScale {
  QVector<double> time;
  ChartAxis axis;
};

TimeScale timeScale(const HeatCurve& curve) {
  const double length = curve.time.maxCoeff() - curve.time[0];
  const std::string_view unit = length < 180 ? "s" : length < 3 * 3600 ? "min" : "h";
  const double factor = fromInternal(1, unit, Quantity::Time);
  const QString text = QString::fromStdString(prettyUnit(unit));
  return {plotValues(curve.time - curve.time[0], factor),
          {QStringLiteral("time, %1").arg(text), text, 0, length * factor}};
}

ChartAxis valueAxis(const QString& title, const QString& unit, double low, double high) {
  const double pad = std::max(0.1 * (high - low), 1e-9);
  return {title, unit, low - pad, high + pad};
}

}  // namespace

std::vector<FittedRow> fittedRows(const HeatFit& fit) {
  std::vector<FittedRow> rows;
  for (const FittedField& field : kFields) rows.push_back(rowOf(field, fit.*field.value));
  return rows;
}

LineChart fittedChart(const HeatCurve& curve, const HeatFit& fit) {
  const TimeScale scale = timeScale(curve);
  LineChart chart;
  chart.title = QStringLiteral("Winding, measured and fitted");
  chart.x = scale.axis;
  chart.y =
      valueAxis("winding, °C", "°C", std::min(curve.winding.minCoeff(), fit.winding.minCoeff()),
                std::max(curve.winding.maxCoeff(), fit.winding.maxCoeff()));
  chart.lines.push_back({"fitted", scale.time, plotValues(fit.winding), {&Palette::peak}});
  chart.lines.push_back(
      {"measured", scale.time, plotValues(curve.winding), {&Palette::text}, true, 0.25});
  return chart;
}

LineChart residualChart(const HeatCurve& curve, const HeatFit& fit) {
  const TimeScale scale = timeScale(curve);
  const double reach = std::max(fit.residual.abs().maxCoeff(), 1e-6);
  LineChart chart;
  chart.title = QStringLiteral("Measured less fitted");
  chart.remark = QStringLiteral("rms %1").arg(
      quantityText(fit.residualRms, Quantity::TemperatureDifference, "K"));
  chart.x = scale.axis;
  chart.y = valueAxis("difference, K", "K", -reach, reach);
  chart.lines.push_back({{}, scale.time, plotValues(fit.residual), {&Palette::accent}, true});
  return chart;
}

Edit fitEdit(const HeatFit& fit) {
  return {QStringLiteral("Use fitted heat values"), {}, [fit](Project& project) {
            tl::expected<void, InputError> done;
            for (const FittedField& field : kFields) {
              const FieldInfo& info = infoOf(field.path);
              const double value = fromInternal((fit.*field.value).value, info.unit, info.quantity);
              const double internal = toInternal(rounded(value, 4), info.unit, info.quantity);
              done = setField(project, field.path, typedForm(internal, info.quantity, info.unit));
              if (!done) return done;
            }
            return done;
          }};
}

}  // namespace jw
