#include "core/studies/coarse_cycle.h"

#include <algorithm>

namespace jw {
namespace {

std::vector<double> picked(const std::vector<double>& values, const std::vector<std::size_t>& at) {
  std::vector<double> few;
  if (values.empty()) return few;
  for (const std::size_t k : at) few.push_back(values[k]);
  return few;
}

MotionTable thinned(const MotionTable& table, std::size_t points) {
  const std::size_t n = table.time.size();
  std::vector<std::size_t> at;
  for (std::size_t k = 0; k < points; ++k) at.push_back(k * (n - 1) / (points - 1));
  for (const SharedColumn* values : {&table.speed, &table.acceleration, &table.torque}) {
    if (values->empty()) continue;
    const auto [low, high] = std::minmax_element(values->begin(), values->end());
    at.push_back(static_cast<std::size_t>(low - values->begin()));
    at.push_back(static_cast<std::size_t>(high - values->begin()));
  }
  std::sort(at.begin(), at.end());
  at.erase(std::unique(at.begin(), at.end()), at.end());
  return {picked(table.time, at), picked(table.angle, at), picked(table.speed, at),
          picked(table.acceleration, at), picked(table.torque, at)};
}

void thin(Cycle& cycle, int samples) {
  cycle.samples = std::min(cycle.samples, samples);
  const auto points = static_cast<std::size_t>(std::max(samples, 8));
  for (Segment& segment : cycle.segments) {
    if (segment.table.time.size() > 2 * points) segment.table = thinned(segment.table, points);
  }
}

}  // namespace

Project withCoarseCycle(const Project& project, int samples) {
  Project coarse = project;
  thin(coarse.cycle, samples);
  for (Cycle& cycle : coarse.otherCycles) thin(cycle, samples);
  return coarse;
}

}  // namespace jw
