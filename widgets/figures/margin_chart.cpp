#include "widgets/figures/margin_chart.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/theme/number_text.h"

namespace jw {
namespace {

const std::array<SeriesLook, 6> kLooks{{{&Palette::accent, Qt::SolidLine, 2},
                                        {&Palette::peak, Qt::SolidLine, 2},
                                        {&Palette::inertia, Qt::SolidLine, 2},
                                        {&Palette::friction, Qt::DashLine, 2},
                                        {&Palette::continuous, Qt::DashLine, 2},
                                        {&Palette::text, Qt::DashDotLine, 2}}};
constexpr SeriesLook kMutedLook{&Palette::zeroLine, Qt::SolidLine, 1.05};

/// Which column the check at `at` of a point's margins is; the number of columns for none.
std::size_t columnAt(const MarginCurves& curves, const DesignPoint& design, int at) {
  if (at < 0) return curves.checks.size();
  const PointMargin& worst = design.margins[std::size_t(at)];
  const auto found =
      std::find_if(curves.checks.begin(), curves.checks.end(),
                   [&](const MarginColumn& column) { return worst.is(column.id, column.stage); });
  return std::size_t(found - curves.checks.begin());
}

/// Which column a point's smallest margin is.
std::size_t worstColumn(const MarginCurves& curves, std::size_t point) {
  return columnAt(curves, curves.points[point], curves.points[point].worstAt);
}

/// Share of the range at which the check is the smallest margin, on the mean.
double worstShare(const MarginCurves& curves, std::size_t column) {
  double sum = 0, count = 0;
  for (std::size_t k = 0; k < curves.points.size(); ++k) {
    if (worstColumn(curves, k) != column) continue;
    sum += double(k);
    count += 1;
  }
  return count > 0 ? sum / count / double(curves.points.size()) : 0.5;
}

ChartLine curveOf(const MarginCurves& curves, std::size_t column) {
  ChartLine line;
  const std::vector<double>& margin = curves.checks[column].margin;
  for (std::size_t k = 0; k < margin.size(); ++k) {
    line.x << curves.x[k];
    line.y << 100 * margin[k];
  }
  cutCurve(line.x, line.y, kLeastMargin, kMostMargin);
  return line;
}

bool isSeen(const ChartLine& line) {
  return std::any_of(line.y.begin(), line.y.end(), [](double y) { return std::isfinite(y); });
}

std::size_t nearestPoint(const std::vector<double>& xs, double x) {
  const auto above = std::lower_bound(xs.begin(), xs.end(), x);
  if (above == xs.begin()) return 0;
  if (above == xs.end()) return xs.size() - 1;
  const auto at = std::size_t(above - xs.begin());
  return xs[at] - x < x - xs[at - 1] ? at : at - 1;
}

}  // namespace

QString checkLabel(const std::string& title) {
  QString text = QString::fromStdString(title);
  if (text.size() > 1 && text[1].isLower()) text[0] = text[0].toLower();
  return text;
}

void cutCurve(QVector<double>& x, QVector<double>& y, double low, double high) {
  QVector<double> newX, newY;
  const auto inside = [&](double v) { return v >= low && v <= high; };
  for (qsizetype k = 0; k < y.size(); ++k) {
    const bool joined = k > 0 && std::isfinite(y[k - 1]) && std::isfinite(y[k]);
    if (joined && inside(y[k - 1]) != inside(y[k])) {
      const double outside = inside(y[k]) ? y[k - 1] : y[k];
      const double edge = outside > high ? high : low;
      newX << x[k - 1] + (x[k] - x[k - 1]) * (edge - y[k - 1]) / (y[k] - y[k - 1]);
      newY << edge;
    }
    newX << x[k];
    newY << (inside(y[k]) ? y[k] : std::nan(""));
  }
  x = newX;
  y = newY;
}

std::vector<std::size_t> limitingChecks(const MarginCurves& curves, std::size_t most) {
  std::vector<std::size_t> count(curves.checks.size() + 1, 0);
  for (std::size_t k = 0; k < curves.points.size(); ++k) ++count[worstColumn(curves, k)];
  std::vector<std::size_t> order;
  for (std::size_t c = 0; c < curves.checks.size(); ++c)
    if (count[c] > 0) order.push_back(c);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return count[a] > count[b]; });
  if (order.size() > most) order.resize(most);
  return order;
}

LineChart marginChart(const MarginCurves& curves, double targetMargin) {
  LineChart chart;
  const std::vector<std::size_t> limiting = limitingChecks(curves);
  const auto isLimiting = [&](std::size_t c) {
    return std::find(limiting.begin(), limiting.end(), c) != limiting.end();
  };
  for (std::size_t c = 0; c < curves.checks.size(); ++c) {
    if (isLimiting(c)) continue;
    ChartLine line = curveOf(curves, c);
    line.look = kMutedLook;
    line.faint = true;
    if (isSeen(line)) chart.lines.push_back(std::move(line));
  }
  for (std::size_t k = 0; k < limiting.size(); ++k) {
    ChartLine line = curveOf(curves, limiting[k]);
    line.look = kLooks[k % kLooks.size()];
    line.name = checkLabel(curves.checks[limiting[k]].title);
    line.nameFrom = worstShare(curves, limiting[k]);
    if (isSeen(line)) chart.lines.push_back(std::move(line));
  }
  chart.y = {QStringLiteral("margin, %"), QStringLiteral("%"), kLeastMargin, kMostMargin};
  for (int at = int(kLeastMargin); at <= int(kMostMargin); at += 50)
    chart.y.ticks.emplace_back(at, at > 0 ? u'+' + numberText(at) : numberText(at));
  if (targetMargin > 0)
    chart.levels.push_back({QStringLiteral("target +%1 %").arg(numberText(100 * targetMargin)),
                            100 * targetMargin, &Palette::muted});
  return chart;
}

QString marginReading(const MarginCurves& curves, double x, double margin) {
  if (curves.x.empty() || !(x >= curves.x.front() && x <= curves.x.back())) return {};
  const std::size_t at = nearestPoint(curves.x, x);
  const std::size_t open = columnAt(curves, curves.points[at], curves.points[at].openAt);
  if (open < curves.checks.size())
    return checkLabel(curves.checks[open].title) + QStringLiteral(" cannot be evaluated");
  const std::size_t worst = worstColumn(curves, at);
  if (worst == curves.checks.size()) return QStringLiteral("no margin is known");
  std::size_t near = worst;
  double best = std::abs(100 * curves.points[at].worst - margin);
  for (std::size_t c = 0; c < curves.checks.size(); ++c) {
    const double away = std::abs(100 * curves.checks[c].margin[at] - margin);
    if (!(away < best)) continue;
    best = away;
    near = c;
  }
  const auto said = [&](std::size_t c) {
    return checkLabel(curves.checks[c].title) + u' ' + marginText(curves.checks[c].margin[at]);
  };
  const QString smallest = QStringLiteral("smallest: ") + said(worst);
  return near == worst ? smallest : said(near) + QStringLiteral("  ·  ") + smallest;
}

}  // namespace jw
