#include "widgets/figures/log_trace.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jw {
namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

}  // namespace

LogTrace::LogTrace(std::shared_ptr<const void> owner, std::span<const double> time,
                   std::span<const double> values)
    : m_owner(std::move(owner)), m_time(time), m_values(values), m_levels(time, values) {}

LogTrace::Rows LogTrace::rowsBetween(double from, double to) const {
  const auto first = std::lower_bound(m_time.begin(), m_time.end(), from);
  const auto last = std::upper_bound(first, m_time.end(), to);
  return {std::size_t(first - m_time.begin()), std::size_t(last - m_time.begin())};
}

bool LogTrace::isDense(double from, double to, int pixels) const {
  const Rows rows = rowsBetween(from, to);
  return rows.last - rows.first > 2 * std::size_t(std::max(pixels, 1));
}

std::vector<QPointF> LogTrace::stroke(double from, double to, int pixels,
                                      double longestStep) const {
  std::vector<QPointF> points;
  if (pixels <= 0 || !(to > from)) return points;
  double before = -std::numeric_limits<double>::infinity();
  const auto add = [&](double x, double value, double reach) {
    const bool broken = std::isnan(value) || x - before > reach;
    if (broken && !points.empty() && !std::isnan(points.back().y())) points.emplace_back(x, kNone);
    if (!std::isnan(value)) points.emplace_back(x, value);
    before = x;
  };
  if (isDense(from, to, pixels)) {
    const double reach = longestStep + 1.5 * (to - from) / pixels;
    for (const PeakColumn& c : m_levels.columns(from, to, std::size_t(pixels))) {
      add(c.x, std::isnan(c.first) ? c.low : c.first, reach);
      points.emplace_back(c.x, c.low);
      points.emplace_back(c.x, c.high);
      points.emplace_back(c.x, std::isnan(c.last) ? c.high : c.last);
    }
    return points;
  }
  const Rows rows = rowsBetween(from, to);
  const std::size_t first = rows.first > 0 ? rows.first - 1 : 0;
  const std::size_t last = std::min(rows.last + 1, m_time.size());
  for (std::size_t i = first; i < last; ++i) add(m_time[i], m_values[i], longestStep);
  return points;
}

PeakLevels::Range LogTrace::range(double from, double to) const {
  const Rows rows = rowsBetween(from, to);
  return m_levels.range(rows.first, rows.last);
}

double LogTrace::at(double time) const {
  if (m_time.empty() || !(time >= m_time.front() && time <= m_time.back())) return kNone;
  const auto after = std::upper_bound(m_time.begin(), m_time.end(), time);
  if (after == m_time.end()) return m_values.back();
  const auto i = std::size_t(after - m_time.begin());
  const double share = (time - m_time[i - 1]) / (m_time[i] - m_time[i - 1]);
  return m_values[i - 1] + share * (m_values[i] - m_values[i - 1]);
}

}  // namespace jw
