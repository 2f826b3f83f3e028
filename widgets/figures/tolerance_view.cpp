#include "widgets/figures/tolerance_view.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "widgets/figures/finite.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

ChanceRow rowOf(const MarginSpread& margin) {
  ChanceRow row;
  row.title = QString::fromStdString(margin.title);
  row.id = std::string(margin.id);
  row.stage = margin.stage;
  row.nominal = margin.nominal;
  row.low = margin.drawn.low;
  row.median = margin.drawn.median;
  row.high = margin.drawn.high;
  row.holds = margin.holds;
  row.linearHolds = margin.linearHolds;
  row.open = margin.open;
  return row;
}

/// Smaller = less certain. Margins that are open come last.
std::pair<double, double> certainty(const ChanceRow& row) {
  constexpr double kLast = std::numeric_limits<double>::infinity();
  if (std::isnan(row.holds.share)) return {kLast, kLast};
  return {row.holds.share, std::isnan(row.low) ? kLast : row.low};
}

QString notesOf(const Tolerance& tolerance) {
  QStringList notes;
  for (const BandedInput& input : tolerance.inputs) {
    if (input.outOfRange == 0) continue;
    notes << QStringLiteral("%1 of %2: held at the end of what the field allows")
                 .arg(QString::fromStdString(input.label).toLower())
                 .arg(QStringLiteral("%1 draws").arg(fixedNumber(double(input.outOfRange), 0)));
  }
  const auto open = std::count_if(tolerance.checks.begin(), tolerance.checks.end(),
                                  [](const MarginSpread& one) { return one.drawn.count == 0; });
  if (open > 0)
    notes << (open == 1 ? QStringLiteral("1 verdict is open and not counted")
                        : QStringLiteral("%1 verdicts are open and not counted").arg(open));
  return notes.join(QStringLiteral("; "));
}

QString bandTextOf(const BandedInput& input) {
  const double half = input.band.halfWidth(input.nominal);
  const Quantity width =
      input.quantity == Quantity::Temperature ? Quantity::TemperatureDifference : input.quantity;
  const std::string_view unit = input.quantity == Quantity::Temperature ? "K" : input.unit;
  return QStringLiteral("%1 ± %2, %3")
      .arg(quantityText(input.nominal, input.quantity, input.unit),
           quantityText(half, width, unit, 2),
           QString::fromUtf8(bandShapeName(input.band.shape).data()));
}

/// The draws that are finite, in per cent.
std::vector<double> finitePercents(const MarginSpread& margin) {
  std::vector<double> values;
  for (const double one : margin.margin)
    if (std::isfinite(one)) values.push_back(100 * one);
  std::sort(values.begin(), values.end());
  return values;
}

/// Bins of equal width between the ends, twice the cube root of the draws (Rice; from memory).
struct Bins {
  double from = 0, width = 1;
  std::vector<double> share;  ///< [%] of the draws

  explicit Bins(const std::vector<double>& sorted) {
    const auto n = double(sorted.size());
    const auto count = std::size_t(std::clamp(std::ceil(2 * std::cbrt(n)), 5.0, 60.0));
    from = sorted.front();
    width = (sorted.back() - from) / double(count);
    share.resize(count);
    for (const double v : sorted) {
      const auto at = width > 0 ? std::size_t((v - from) / width) : 0;
      share[std::min(at, count - 1)] += 100 / n;
    }
  }
};

ChartLine barsOf(const Bins& bins) {
  ChartLine line;
  line.name = QStringLiteral("draws");
  line.look = {&Palette::accent, Qt::SolidLine, 1.6};
  line.nameFrom = 0.3;
  for (std::size_t k = 0; k < bins.share.size(); ++k) {
    const double left = bins.from + double(k) * bins.width;
    line.x << left << left + bins.width;
    line.y << bins.share[k] << bins.share[k];
  }
  line.x.prepend(bins.from);
  line.y.prepend(0);
  line.x << bins.from + double(bins.share.size()) * bins.width;
  line.y << 0;
  return line;
}

/// The normal curve of the linear propagation, as shares of bins of this width.
ChartLine normalCurve(const MarginSpread& margin, double width, double low, double high) {
  ChartLine line;
  line.name = QStringLiteral("linear");
  line.look = {&Palette::friction, Qt::DashLine, 1.5};
  line.nameFrom = 0.62;
  const double mean = 100 * margin.nominal;
  const double deviation = 100 * margin.linearDeviation;
  if (!std::isfinite(mean) || !(deviation > 0)) return line;
  constexpr int kPoints = 161;
  for (int k = 0; k < kPoints; ++k) {
    const double x = low + (high - low) * k / (kPoints - 1);
    const double z = (x - mean) / deviation;
    line.x << x;
    line.y << 100 * width * std::exp(-z * z / 2) / (deviation * std::sqrt(2 * std::numbers::pi));
  }
  return line;
}

QString chanceText(const MarginSpread& margin) {
  if (std::isnan(margin.holds.share)) return QStringLiteral("open in every draw");
  return QStringLiteral("holds in %1 % of the draws (95 %: %2 to %3 %)")
      .arg(numberText(100 * margin.holds.share, 4), numberText(100 * margin.holds.low, 4),
           numberText(100 * margin.holds.high, 4));
}

/// The closed curve of an upper edge and its mirror image, over the speeds that any
/// draw reaches.
PlaneCurve closedCurve(const ToleranceEnvelope& bands, const Eigen::ArrayXd& torque) {
  const double rpm = fromInternal(1, "rpm", Quantity::AngularSpeed);
  PlaneCurve curve;
  for (const double side : {1.0, -1.0}) {
    for (Eigen::Index i = 0; i < bands.speed.size(); ++i) {
      if (!(bands.high[i] > 0)) continue;  // no draw gets there
      curve.speed << side * rpm * bands.speed[i];
      curve.torque << side * torque[i];
    }
  }
  if (curve.speed.isEmpty()) return curve;
  curve.speed << curve.speed.front();
  curve.torque << curve.torque.front();
  return curve;
}

}  // namespace

ToleranceView toleranceView(const Tolerance& tolerance) {
  ToleranceView view;
  if (tolerance.draws == 0) return view;
  for (const MarginSpread& check : tolerance.checks) view.rows.push_back(rowOf(check));
  std::stable_sort(view.rows.begin(), view.rows.end(), [](const ChanceRow& a, const ChanceRow& b) {
    return certainty(a) < certainty(b);
  });
  view.rows.insert(view.rows.begin(), rowOf(tolerance.worst));
  view.head = QStringLiteral("%1 draws, seed %2, of %3 with a band")
                  .arg(fixedNumber(double(tolerance.draws), 0))
                  .arg(tolerance.seed)
                  .arg(tolerance.inputs.size() == 1
                           ? QStringLiteral("one input")
                           : QStringLiteral("%1 inputs").arg(tolerance.inputs.size()));
  view.notes = notesOf(tolerance);
  return view;
}

const MarginSpread& marginOf(const Tolerance& tolerance, const std::string& id, int stage) {
  for (const MarginSpread& one : tolerance.checks)
    if (one.id == id && one.stage == stage) return one;
  return tolerance.worst;
}

LineChart distributionChart(const Tolerance& tolerance, const MarginSpread& margin) {
  LineChart chart;
  chart.title = QString::fromStdString(margin.title);
  chart.remark = chanceText(margin);
  const std::vector<double> values = finitePercents(margin);
  if (values.empty() || tolerance.draws == 0) return chart;
  const Bins bins(values);
  const double spread = std::max(values.back() - values.front(), 1e-6);
  const double low =
      std::min(values.front(), 0.0 < values.front() - 2 * spread ? values.front() : 0.0);
  const double high =
      std::max(values.back(), 0.0 > values.back() + 2 * spread ? values.back() : 0.0);
  const double room = 0.06 * std::max(high - low, 1e-6);
  chart.x = {QStringLiteral("margin, %"), QStringLiteral("%"), low - room, high + room};
  chart.lines.push_back(barsOf(bins));
  const auto normal = normalCurve(margin, bins.width, low - room, high + room);
  double top = *std::max_element(bins.share.begin(), bins.share.end());
  if (!normal.x.isEmpty()) {
    top = std::max(top, *std::max_element(normal.y.begin(), normal.y.end()));
    chart.lines.push_back(normal);
  }
  chart.y = {QStringLiteral("share of the draws, %"), QStringLiteral("%"), 0, 1.15 * top};
  chart.bands.push_back({chart.lines[0].x, QVector<double>(chart.lines[0].x.size(), 0),
                         chart.lines[0].y, &Palette::accent});
  if (0 >= chart.x.low && 0 <= chart.x.high) {
    ChartLine limit;
    limit.name = QStringLiteral("holds from here");
    limit.look = {&Palette::shortfall, Qt::DotLine, 1.4};
    limit.x = {0, 0};
    limit.y = {0, chart.y.high};
    limit.nameFrom = 1;
    chart.lines.push_back(limit);
  }
  return chart;
}

TornadoView tornadoView(const Tolerance& tolerance, const MarginSpread& margin) {
  TornadoView view;
  view.title = QString::fromStdString(margin.title);
  view.linearDeviation = margin.linearDeviation;
  view.drawnDeviation = margin.drawn.deviation;
  if (tolerance.draws == 0) return view;
  for (std::size_t i = 0; i < tolerance.inputs.size(); ++i) {
    const BandedInput& input = tolerance.inputs[i];
    const QString label = QString::fromStdString(input.label);
    view.rows.push_back({label, bandTextOf(input),
                         i < margin.correlation.size() ? margin.correlation[i] : 0,
                         i < margin.share.size() ? margin.share[i] : 0});
  }
  std::stable_sort(view.rows.begin(), view.rows.end(),
                   [](const TornadoRow& a, const TornadoRow& b) {
                     return std::abs(a.correlation) > std::abs(b.correlation);
                   });
  return view;
}

std::shared_ptr<const Tolerance> toleranceOf(const Snapshot& snapshot) {
  constexpr std::size_t kDraws = 1'000;
  if (snapshot.tolerance || !snapshot.evaluatedProject) return snapshot.tolerance;
  ToleranceRequest request;
  request.draws = kDraws;
  auto drawn = tolerance(*snapshot.evaluatedProject, request);
  return drawn ? std::make_shared<const Tolerance>(*std::move(drawn)) : nullptr;
}

std::shared_ptr<const ToleranceEnvelope> toleranceEnvelopeOf(const Snapshot& snapshot) {
  if (snapshot.toleranceEnvelope || !snapshot.evaluatedProject) return snapshot.toleranceEnvelope;
  auto drawn = toleranceEnvelope(*snapshot.evaluatedProject, {});
  return drawn ? std::make_shared<const ToleranceEnvelope>(*std::move(drawn)) : nullptr;
}

EnvelopeView bandedEnvelopeView(const Snapshot& snapshot, const ToleranceEnvelope& bands) {
  const double rpm = fromInternal(1, "rpm", Quantity::AngularSpeed);
  EnvelopeView view = envelopeView(snapshot, AxesAt::Motor, {false, false});
  view.lasting = {};
  view.rms.reset();
  if (bands.draws == 0) return view;
  view.weakest = closedCurve(bands, bands.low);
  view.strongest = closedCurve(bands, bands.high);
  view.weakestName = QStringLiteral("97.5 % of the draws reach this");
  view.strongestName = QStringLiteral("2.5 % reach this");
  for (Eigen::Index k = 0; k < bands.speedLow.size(); ++k)
    view.reach.push_back({rpm * bands.speedLow[k], rpm * bands.speedHigh[k], bands.torqueLow[k],
                          bands.torqueHigh[k]});
  return view;
}

}  // namespace jw
