#include "core/motion/sampled_cycle.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "core/motion/joins.h"
#include "core/motion/motion_laws.h"
#include "core/motion/resolved_moves.h"
#include "core/motion/segment_input.h"
#include "core/motion/table_motion.h"

namespace jw {
namespace {

/// One move ready to be sampled.
struct PlannedMove {
  const Segment* segment = nullptr;
  int index = 0;                        ///< of the segment
  double travel = 0;                    ///< [rad] what the normalised position is multiplied with
  double start = 0;                     ///< [s]
  double duration = 0;                  ///< [s]
  std::vector<SmoothPiece> pieces;      ///< empty for a table
  std::vector<Eigen::Index> intervals;  ///< of each piece, even

  Eigen::Index samples() const {
    if (pieces.empty()) return static_cast<Eigen::Index>(segment->table.time.size());
    Eigen::Index sum = 0;
    for (const Eigen::Index n : intervals) sum += n + 1;
    return sum;
  }
};

std::vector<PlannedMove> planMoves(const Cycle& cycle, const ResolvedCycle& resolved) {
  std::vector<PlannedMove> plan(resolved.moves.size());
  double time = 0;
  for (std::size_t i = 0; i < plan.size(); ++i) {
    const ResolvedMove& move = resolved.moves[i];
    const double travel = move.shape.law == MotionLaw::Dwell ? 0 : move.shape.travel;
    plan[i] = {&cycle.segments[move.origin],
               static_cast<int>(move.origin),
               travel,
               time,
               move.duration,
               motionPieces(move.shape),
               {}};
    time += move.duration;
  }
  return plan;
}

/// More than this is refused: it would fill the memory of a common computer.
constexpr Eigen::Index kMostSamplesInAll = 30'000'000;

bool stands(const PlannedMove& planned) { return planned.segment->law == MotionLaw::Dwell; }

/// Nothing changes in a dwell but the time: it gets few intervals, however long it is.
Eigen::Index dwellIntervals(int samples) {
  return std::clamp<Eigen::Index>(2 * (samples / 64), 2, 32);
}

/// An even number of intervals for each piece: of moves in proportion to their duration.
void planIntervals(std::vector<PlannedMove>& plan, int samples) {
  double moving = 0;
  for (const PlannedMove& planned : plan) moving += stands(planned) ? 0 : planned.duration;
  for (PlannedMove& planned : plan) {
    for (const SmoothPiece& piece : planned.pieces) {
      const double share = planned.duration * (piece.end - piece.begin) / moving;
      const auto wanted =
          stands(planned) ? dwellIntervals(samples)
                          : 2 * static_cast<Eigen::Index>(std::lround((samples * share - 1) / 2));
      planned.intervals.push_back(std::max(wanted, piece.minIntervals));
    }
  }
}

InputError tooManySamples(Eigen::Index count) {
  return {
      fmt::format("the segments need {} samples together", count), "cycle.segments",
      fmt::format("stay below {}: fewer periods, or tables with fewer rows", kMostSamplesInAll)};
}

SampledCycle emptySamples(Eigen::Index count) {
  SampledCycle s;
  for (auto* column : {&s.time, &s.angle, &s.speed, &s.acceleration, &s.weight})
    column->resize(count);
  s.segment.resize(count);
  return s;
}

/// Simpson weights of an even number of equal steps [s].
void fillSimpson(Eigen::Ref<Eigen::ArrayXd> weight, double step) {
  const Eigen::Index n = weight.size() - 1;
  for (Eigen::Index k = 0; k < n; k += 2) {
    weight[k] = 2 * step / 3;
    weight[k + 1] = 4 * step / 3;
  }
  weight[0] = weight[n] = step / 3;
}

/// Speeds below this share of the mean speed are rounding: the joint rests. Friction must not take
/// its sign from them.
constexpr double kRestSpeed = 1e-12;

/// Fills the cycle one segment after the other.
class Sampler {
 public:
  Sampler(SampledCycle& out, double startAngle) : out_(out), angle_(startAngle) {}

  void add(const PlannedMove& planned) {
    out_.runs.push_back({planned.index, next_});
    out_.segment.segment(next_, planned.samples()) = planned.index;
    planned.pieces.empty() ? addTable(planned) : addPieces(planned);
  }

 private:
  void addPieces(const PlannedMove& planned) {
    for (std::size_t k = 0; k < planned.pieces.size(); ++k)
      addPiece(planned, planned.pieces[k], planned.intervals[k] + 1);
    const SmoothPiece& last = planned.pieces.back();
    angle_ += planned.travel * stateAt(last, last.end).position;
  }

  void addPiece(const PlannedMove& planned, const SmoothPiece& piece, Eigen::Index n) {
    auto angle = out_.angle.segment(next_, n);
    auto speed = out_.speed.segment(next_, n);
    auto acceleration = out_.acceleration.segment(next_, n);
    samplePiece(piece, {angle, speed, acceleration});
    const double mean = planned.travel / planned.duration;
    angle = angle_ + planned.travel * angle;
    const double rest = kRestSpeed * std::max(1.0, piece.frequency);
    speed = (speed.abs() < rest).select(0, mean * speed);
    acceleration *= mean / planned.duration;
    const double begin = planned.start + piece.begin * planned.duration;
    const double end = planned.start + piece.end * planned.duration;
    out_.time.segment(next_, n) = Eigen::ArrayXd::LinSpaced(n, begin, end);
    fillSimpson(out_.weight.segment(next_, n),
                planned.duration * (piece.end - piece.begin) / static_cast<double>(n - 1));
    next_ += n;
  }

  void addTable(const PlannedMove& planned) {
    const MotionTable& table = planned.segment->table;
    const TableMotion motion = tableMotion(table, planned.segment->smoothing);
    const auto n = static_cast<Eigen::Index>(table.time.size());
    const auto column = [n](const std::vector<double>& values) {
      return Eigen::Map<const Eigen::ArrayXd>(values.data(), n);
    };
    const auto time = column(table.time);
    out_.time.segment(next_, n) = planned.start + time;
    out_.angle.segment(next_, n) = angle_ + column(table.angle);
    out_.speed.segment(next_, n) = column(motion.speed);
    out_.acceleration.segment(next_, n) = column(motion.acceleration);
    auto weight = out_.weight.segment(next_, n);
    const Eigen::ArrayXd half = (time.tail(n - 1) - time.head(n - 1)) / 2;
    weight.head(n - 1) = half;
    weight[n - 1] = 0;
    weight.tail(n - 1) += half;
    angle_ += table.angle.back();
    next_ += n;
  }

  SampledCycle& out_;
  double angle_;  ///< [rad] at the start of the move
  Eigen::Index next_ = 0;
};

std::optional<InputError> overflowError(const SampledCycle& sampled, const Cycle& cycle) {
  const bool finite =
      sampled.angle.allFinite() && sampled.speed.allFinite() && sampled.acceleration.allFinite();
  if (finite) return std::nullopt;
  Eigen::Index bad = 0;
  while (std::isfinite(sampled.angle[bad]) && std::isfinite(sampled.speed[bad]) &&
         std::isfinite(sampled.acceleration[bad]))
    ++bad;
  const auto index = static_cast<std::size_t>(sampled.segment[bad]);
  return InputError{fmt::format("{}: the speed or acceleration is too large to compute",
                                segmentTitle(cycle.segments[index], index)),
                    segmentPath(index), "give it more time or less travel"};
}

}  // namespace

tl::expected<SampledCycle, InputError> sampleCycle(const Cycle& cycle) {
  if (auto error = cycleInputError(cycle)) return tl::unexpected(*error);
  auto resolved = resolveMoves(cycle);
  if (!resolved) return tl::unexpected(resolved.error());
  std::vector<PlannedMove> plan = planMoves(cycle, *resolved);
  planIntervals(plan, cycle.samples);
  Eigen::Index count = 0;
  for (const PlannedMove& planned : plan) count += planned.samples();
  if (count > kMostSamplesInAll) return tl::unexpected(tooManySamples(count));
  SampledCycle sampled = emptySamples(count);
  sampled.period = plan.back().start + plan.back().duration;
  sampled.runs.reserve(plan.size());
  Sampler sampler(sampled, cycle.startAngle);
  for (const PlannedMove& planned : plan) sampler.add(planned);
  if (auto error = overflowError(sampled, cycle)) return tl::unexpected(*error);
  sampled.warnings = std::move(resolved->warnings);
  for (InputError& warning : joinWarnings(sampled, cycle))
    sampled.warnings.push_back(std::move(warning));
  return sampled;
}

}  // namespace jw
