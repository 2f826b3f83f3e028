#include "core/studies/tolerance.h"

#include <algorithm>
#include <atomic>
#include <cmath>

#include <fmt/format.h>
#include <boost/math/distributions/normal.hpp>

#include "core/studies/banded_draw.h"
#include "core/studies/random_points.h"

namespace jw {
namespace {

constexpr std::size_t kBatch = 50;  // draws for which a worker copies the project once

/// The study at work.
class Trial {
 public:
  Trial(const Project& project, const ToleranceRequest& request)
      : project_(project), request_(request), base_(evaluate(project)) {
    result_.inputs = bandedInputs(project);
    result_.seed = request.seed;
    unit_ = unitPoints(request.draws, result_.inputs.size(), request.seed);
    values_.resize(unit_.rows(), unit_.cols());
    held_.resize(unit_.rows(), unit_.cols());
    points_.resize(request.draws);
  }

  Tolerance run(const StudyRun& run) {
    stop_ = run.stop;
    propagate(run);
    std::size_t next = std::min<std::size_t>(request_.draws, 500);
    StudyRun inner = run;
    for (std::size_t from = 0; from < request_.draws && !run.stop.stop_requested();) {
      inner.progress = shifted(run, from);
      drawRange(from, next, inner);
      if (run.stop.stop_requested()) break;
      from = next;
      next = std::min(request_.draws, 2 * next);
      result_.draws = from;
      summarize();
      if (request_.partial) request_.partial(result_);
    }
    result_.stopped = run.stop.stop_requested();
    return std::move(result_);
  }

 private:
  /// Progress of a part as that of the whole.
  std::function<void(const StudyProgress&)> shifted(const StudyRun& run, std::size_t from) const {
    if (!run.progress) return {};
    return [&run, from, all = request_.draws](const StudyProgress& part) {
      StudyProgress whole{std::min(all, from + part.done * kBatch), all, kUnset};
      const auto partLeft = static_cast<double>((part.total - part.done) * kBatch);
      if (partLeft > 0) {
        whole.secondsLeft = part.secondsLeft * static_cast<double>(all - whole.done) / partLeft;
      }
      run.progress(whole);
    };
  }

  void drawRange(std::size_t from, std::size_t to, const StudyRun& run) {
    const std::size_t batches = (to - from + kBatch - 1) / kBatch;
    forEachPoint(batches, run, [&](std::size_t batch) {
      BandedDraw draw(project_, result_.inputs);
      const std::size_t first = from + batch * kBatch;
      for (std::size_t k = first; k < std::min(to, first + kBatch); ++k) {
        if (run.stop.stop_requested()) return;
        drawOne(draw, k);
      }
    });
  }

  void drawOne(BandedDraw& draw, std::size_t k) {
    const auto row = static_cast<Eigen::Index>(k);
    for (std::size_t i = 0; i < result_.inputs.size(); ++i) {
      const BandedInput& input = result_.inputs[i];
      const auto column = static_cast<Eigen::Index>(i);
      const double value = bandValue(input.band, input.nominal, unit_(row, column));
      values_(row, column) = value;
      held_(row, column) = !draw.set(i, input.nominal, value);
    }
    points_[k] = designPoint(evaluate(draw.project(), stop_));
    points_[k].quantities = {};
  }

  void propagate(const StudyRun& run) {
    const std::size_t n = result_.inputs.size();
    sides_.resize(2 * n);
    StudyRun quiet{run.stop, {}, run.threads};
    forEachPoint(2 * n, quiet, [&](std::size_t k) {
      BandedDraw draw(project_, result_.inputs);
      const BandedInput& input = result_.inputs[k / 2];
      const double side = k % 2 == 0 ? input.deviation : -input.deviation;
      draw.set(k / 2, input.nominal, input.nominal + side);
      sides_[k] = designPoint(evaluate(draw.project(), stop_));
    });
  }

  void summarize() {
    const std::vector<DesignPoint> done(points_.begin(),
                                        points_.begin() + static_cast<long>(result_.draws));
    result_.checks.clear();
    countOutOfRange();
    const std::vector<std::vector<double>> ranks = inputRanks();
    const DesignPoint nominal = designPoint(base_);
    for (MarginColumn& column : marginColumns(done, base_)) {
      MarginSpread spread;
      spread.id = column.id;
      spread.stage = column.stage;
      spread.title = std::move(column.title);
      spread.margin = std::move(column.margin);
      const auto pick = [&](const DesignPoint& point) { return marginIn(point, spread); };
      fill(spread, nominal, ranks, pick);
      result_.checks.push_back(std::move(spread));
    }
    MarginSpread& worst = result_.worst = {};
    worst.title = "All checks";
    for (const DesignPoint& point : done) worst.margin.push_back(point.worst);
    fill(worst, nominal, ranks, [](const DesignPoint& point) { return point.worst; });
    for (const MarginSpread& check : result_.checks) {
      if (check.linearHolds < worst.linearHolds) worst.linearHolds = check.linearHolds;
    }
  }

  void countOutOfRange() {
    const auto rows = static_cast<Eigen::Index>(result_.draws);
    for (std::size_t i = 0; i < result_.inputs.size(); ++i) {
      const auto column = static_cast<Eigen::Index>(i);
      result_.inputs[i].outOfRange = static_cast<std::size_t>(held_.col(column).head(rows).count());
    }
  }

  std::vector<std::vector<double>> inputRanks() const {
    std::vector<std::vector<double>> ranks;
    for (Eigen::Index i = 0; i < values_.cols(); ++i) {
      const double* first = values_.col(i).data();
      ranks.push_back(ranksOf({first, first + result_.draws}));
    }
    return ranks;
  }

  static double marginIn(const DesignPoint& point, const MarginSpread& check) {
    for (const PointMargin& one : point.margins) {
      if (one.is(check.id, check.stage)) return one.margin;
    }
    return kUnset;
  }

  template <class Pick>
  void fill(MarginSpread& spread, const DesignPoint& nominal,
            const std::vector<std::vector<double>>& ranks, const Pick& pick) const {
    spread.nominal = pick(nominal);
    spread.drawn = spreadOf(spread.margin);
    const auto hits = std::count_if(spread.margin.begin(), spread.margin.end(),
                                    [](double margin) { return margin >= 0; });
    spread.holds = proportionOf(static_cast<std::size_t>(hits), spread.drawn.count);
    spread.open = spread.margin.size() - spread.drawn.count;
    const std::vector<double> own = ranksOf(spread.margin);
    for (const auto& rank : ranks) {
      spread.correlation.push_back(spread.open == 0 ? correlationOfRanks(rank, own)
                                                    : rankCorrelation(rank, spread.margin));
    }
    for (std::size_t i = 0; i < result_.inputs.size(); ++i) {
      const double change = (pick(sides_[2 * i]) - pick(sides_[2 * i + 1])) / 2;
      spread.share.push_back(std::isfinite(spread.nominal) ? change : 0);
    }
    linearize(spread);
  }

  static void linearize(MarginSpread& spread) {
    double squares = 0;
    for (const double share : spread.share) squares += share * share;
    if (!std::isfinite(spread.nominal) || !std::isfinite(squares)) return;
    spread.linearDeviation = std::sqrt(squares);
    spread.linearHolds = spread.nominal >= 0 ? 1 : 0;
    if (spread.linearDeviation > 0) {
      spread.linearHolds =
          boost::math::cdf(boost::math::normal(), spread.nominal / spread.linearDeviation);
    }
  }

  const Project& project_;
  const ToleranceRequest& request_;
  const Evaluation base_;
  std::stop_token stop_;
  Tolerance result_;
  Eigen::ArrayXXd unit_, values_;
  Eigen::Array<bool, Eigen::Dynamic, Eigen::Dynamic> held_;  ///< at the end of the allowed range
  std::vector<DesignPoint> points_, sides_;
};

}  // namespace

tl::expected<Tolerance, InputError> tolerance(const Project& project,
                                              const ToleranceRequest& request,
                                              const StudyRun& run) {
  if (request.draws < 2 || request.draws > kMostDraws) {
    return tl::unexpected(InputError{"the number of draws is out of range", "draws",
                                     fmt::format("a whole number from 2 to {}", kMostDraws)});
  }
  if (bandedFields(project).empty()) {
    return tl::unexpected(InputError{"no input has a band", "", kBandExample});
  }
  return Trial(project, request).run(run);
}

}  // namespace jw
