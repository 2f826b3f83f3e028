#include "core/studies/tolerance_envelope.h"

#include <algorithm>

#include "core/checks/evaluation.h"
#include "core/studies/banded_draw.h"
#include "core/studies/random_points.h"
#include "core/studies/spread.h"

namespace jw {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

constexpr std::size_t kMostDraws = 10'000;
constexpr Index kMostSamples = 240;

/// The upper edge of a closed envelope curve.
struct UpperEdge {
  ArrayXd speed, torque;

  explicit UpperEdge(const EnvelopeCurve& peak) {
    const Index n = (peak.speed.size() - 1) / 2;
    speed = peak.speed.head(n);
    torque = peak.torque.head(n);
  }

  /// [N·m] between the drawn points; 0 beyond the ends.
  double at(double w) const {
    const double* first = speed.data();
    const double* last = first + speed.size();
    if (!(w >= *first) || !(w <= *(last - 1))) return 0;
    const Index i =
        std::clamp<Index>(std::upper_bound(first, last, w) - first, 1, speed.size() - 1);
    const double step = speed[i] - speed[i - 1];
    const double share = step > 0 ? (w - speed[i - 1]) / step : 1;
    return torque[i - 1] + share * (torque[i] - torque[i - 1]);
  }
};

/// What one draw gives.
struct Drawn {
  bool known = false;
  ArrayXd edge;           ///< [N·m] at the speeds of the result
  ArrayXd speed, torque;  ///< of the motor at its samples
};

class EnvelopeTrial {
 public:
  EnvelopeTrial(const Project& project, const Evaluation& base, ToleranceEnvelope& result)
      : project_(project), base_(base), inputs_(bandedInputs(project)), result_(result) {
    constexpr double kBeyond = 1.15;  // of the nominal range of speeds
    result_.speed = kBeyond * UpperEdge(base.envelope->peak).speed;
    const Index n = base.cycle->size();
    const Index step = std::max<Index>(1, n / kMostSamples);
    for (Index i = 0; i < n; i += step) result_.samples.push_back(i);
    if (result_.samples.back() != n - 1) result_.samples.push_back(n - 1);
  }

  void run(const ToleranceEnvelopeRequest& request, const StudyRun& run) {
    const Eigen::ArrayXXd unit = unitPoints(request.draws, inputs_.size(), request.seed);
    std::vector<Drawn> drawn(request.draws);
    forEachPoint(request.draws, run, [&](std::size_t k) {
      BandedDraw draw(project_, inputs_);
      for (std::size_t i = 0; i < inputs_.size(); ++i) {
        const double u = unit(static_cast<Index>(k), static_cast<Index>(i));
        draw.set(i, inputs_[i].nominal, bandValue(inputs_[i].band, inputs_[i].nominal, u));
      }
      drawn[k] = take(evaluate(draw.project(), run.stop));
    });
    result_.stopped = run.stop.stop_requested();
    std::erase_if(drawn, [](const Drawn& one) { return !one.known; });
    result_.draws = drawn.size();
    spread(drawn, &Drawn::edge, result_.low, result_.high);
    spread(drawn, &Drawn::speed, result_.speedLow, result_.speedHigh);
    spread(drawn, &Drawn::torque, result_.torqueLow, result_.torqueHigh);
  }

 private:
  Drawn take(const Evaluation& e) const {
    Drawn one;
    if (e.stopped || !e.envelope || !e.demand) return one;
    one.known = true;
    const UpperEdge edge(e.envelope->peak);
    one.edge = result_.speed.unaryExpr([&](double w) { return edge.at(w); });
    const auto n = static_cast<Index>(result_.samples.size());
    one.speed.resize(n);
    one.torque.resize(n);
    for (Index k = 0; k < n; ++k) {
      const Index at = sampleOf(e, result_.samples[static_cast<std::size_t>(k)]);
      one.speed[k] = e.chain->motorSpeed[at];
      one.torque[k] = e.demand->torque[at];
    }
    return one;
  }

  /// The draw's sample at the same share of its cycle; the same one where the cycle is alike.
  Index sampleOf(const Evaluation& e, Index nominal) const {
    if (e.cycle->size() == base_.cycle->size()) return nominal;
    const double time = base_.cycle->time[nominal] / base_.cycle->period * e.cycle->period;
    const double* first = e.cycle->time.data();
    const Index at = std::lower_bound(first, first + e.cycle->size(), time) - first;
    return std::min(at, e.cycle->size() - 1);
  }

  static void spread(const std::vector<Drawn>& drawn, ArrayXd Drawn::*column, ArrayXd& low,
                     ArrayXd& high) {
    if (drawn.empty()) return;
    const Index n = (drawn.front().*column).size();
    low.resize(n);
    high.resize(n);
    std::vector<double> values(drawn.size());
    for (Index i = 0; i < n; ++i) {
      std::transform(drawn.begin(), drawn.end(), values.begin(),
                     [&](const Drawn& one) { return (one.*column)[i]; });
      const Spread found = spreadOf(values);
      low[i] = found.low;
      high[i] = found.high;
    }
  }

  const Project& project_;
  const Evaluation& base_;
  const std::vector<BandedInput> inputs_;
  ToleranceEnvelope& result_;
};

}  // namespace

tl::expected<ToleranceEnvelope, InputError> toleranceEnvelope(
    const Project& project, const ToleranceEnvelopeRequest& request, const StudyRun& run) {
  if (request.draws < 2 || request.draws > kMostDraws) {
    return tl::unexpected(InputError{"the number of draws is out of range", "draws",
                                     "a whole number from 2 to 10,000"});
  }
  if (bandedFields(project).empty()) {
    return tl::unexpected(InputError{"no input has a band", "", kBandExample});
  }
  const Evaluation base = evaluate(project, run.stop);
  ToleranceEnvelope result;
  result.stopped = base.stopped;
  if (base.stopped) return result;
  if (!base.envelope || !base.demand) {
    return tl::unexpected(InputError{"the envelope and the path are not known yet", "",
                                     "give the inputs that the verdicts still miss"});
  }
  EnvelopeTrial(project, base, result).run(request, run);
  return result;
}

}  // namespace jw
