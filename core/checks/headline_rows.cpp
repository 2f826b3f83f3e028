// What the workings of headline figures share.
#include "core/checks/headline_rows.h"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

namespace jw::headline {
namespace {

constexpr int kMostShown = 8;  // moves with a line of their own

/// Integral of a value over the time of one move, or over all moves that are
/// lumped together.
struct MovePart {
  std::string title;
  double time = 0;
  double integral = 0;
};

std::string titleOf(const Project& project, int segment) {
  const auto& name = project.cycle.segments[static_cast<std::size_t>(segment)].name;
  return name.empty() ? fmt::format("move {}", segment + 1) : name;
}

std::vector<MovePart> partsOf(C context, const Eigen::ArrayXd& values) {
  const SampledCycle& cycle = *context.result.cycle;
  std::vector<MovePart> parts;
  std::vector<int> place(context.project.cycle.segments.size(), -1);
  for (Eigen::Index i = 0; i < cycle.size(); ++i) {
    int& at = place[static_cast<std::size_t>(cycle.segment[i])];
    if (at < 0) {
      at = std::min(static_cast<int>(parts.size()), kMostShown - 1);
      if (at == static_cast<int>(parts.size())) {
        parts.push_back({titleOf(context.project, cycle.segment[i]), 0, 0});
      } else {
        parts.back().title = "the other moves";
      }
    }
    MovePart& part = parts[static_cast<std::size_t>(at)];
    part.time += cycle.weight[i];
    part.integral += cycle.weight[i] * values[i];
  }
  return parts;
}

void byMoves(C context, W w, const Eigen::ArrayXd& values, const Derived& about, bool square) {
  if (!w.explains()) return;
  std::string sum, times;
  int k = 0;
  for (const MovePart& part : partsOf(context, values)) {
    if (!(part.time > 0)) continue;
    const std::string n = std::to_string(++k);
    const std::string symbol = fmt::format("{}{}", about.symbol, n);
    const std::string label = fmt::format("{} in {}", about.label, part.title);
    const double mean = part.integral / part.time;
    w.value(part.time, {"t_" + n, "Time of " + part.title, Quantity::Time, "s", "from the cycle"});
    w.value(square ? std::sqrt(std::max(0.0, mean)) : mean,
            {symbol, label, about.quantity, about.unit, "from the cycle"});
    sum += fmt::format("{}t_{} · {}{}", k > 1 ? " + " : "", n, symbol, square ? "²" : "");
    times += fmt::format("{}t_{}", k > 1 ? " + " : "", n);
  }
  const std::string quotient = fmt::format("({}) / ({})", sum, times);
  w.follows(square ? "\u221a(" + quotient + ")" : quotient);
}

}  // namespace

void meanSquareByMoves(C context, W w, const Eigen::ArrayXd& values, const Derived& about) {
  byMoves(context, w, values.square(), about, true);
}

void meanByMoves(C context, W w, const Eigen::ArrayXd& values, const Derived& about) {
  byMoves(context, w, values, about, false);
}

void plain(W w, double value, const Derived& about) {
  w.value(value, about);
  w.follows(about.symbol);
}

}  // namespace jw::headline
