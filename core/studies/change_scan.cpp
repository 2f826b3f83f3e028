#include "core/studies/change_scan.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include <boost/math/tools/toms748_solve.hpp>

namespace jw {
namespace {

constexpr std::array kSizes{0.01, 0.03, 0.1, 0.25, 0.5, 0.75, 0.9, 1.0, 2.0, 4.0, 9.0};

/// Changes by rising size, each cut off at the range; an end of the range comes once.
std::vector<std::vector<double>> levels(const ChangeRange& range) {
  std::vector<std::vector<double>> all;
  double up = 0, down = 0;
  for (const double size : kSizes) {
    std::vector<double> level;
    const double high = std::min(size, range.high), low = std::max(-size, range.low);
    if (high > up) level.push_back(up = high);
    if (low < down) level.push_back(down = low);
    if (!level.empty()) all.push_back(std::move(level));
  }
  return all;
}

/// Where one margin stands while the scan goes on.
struct Trace {
  ScannedMargin found;
  double lastUp = 0, lastDown = 0;                  ///< outermost changes that fall short
  std::vector<std::pair<double, double>> brackets;  ///< short, reached
  bool open = true;                                 ///< still looked for
  bool overUp = false, overDown = false;            ///< further out the margin is not known
};

class Scan {
 public:
  Scan(const ChangedJoint& joint, const DesignPoint& base, const std::vector<WantedMargin>& wanted,
       double target, const std::stop_token& stop)
      : joint_(joint), base_(base), wanted_(wanted), target_(target), stop_(stop) {
    traces_.resize(wanted.size());
  }

  std::vector<ScannedMargin> run(const ChangeRange& range) {
    const auto all = levels(range);
    if (!all.empty() && isSaturated()) probeEnds(all);
    for (const std::vector<double>& level : all) {
      for (const double change : level) look(change);
      if (stop_.stop_requested() || !anyOpen()) break;
    }
    return closed();
  }

 private:
  std::vector<ScannedMargin> closed() {
    std::vector<ScannedMargin> all;
    for (std::size_t k = 0; k < traces_.size(); ++k) {
      for (const auto& bracket : traces_[k].brackets) closeIn(k, bracket);
      all.push_back(traces_[k].found);
    }
    return all;
  }

  /// Margins at -1 stand for demands without bound; they move only once the demand has one.
  bool isSaturated() const {
    return std::any_of(wanted_.begin(), wanted_.end(), [&](const WantedMargin& one) {
      return base_.marginOf(one.id, one.stage) <= -1;
    });
  }

  void probeEnds(const std::vector<std::vector<double>>& levels) {
    for (const double end : {highest(levels), lowest(levels)}) {
      for (std::size_t k = 0; k < traces_.size() && end != 0; ++k) {
        const double before = base_.marginOf(wanted_[k].id, wanted_[k].stage);
        if (stop_.stop_requested()) return;
        if (before <= -1 && marginAt(k, end) > before) traces_[k].found.matters = true;
      }
    }
  }

  static double highest(const std::vector<std::vector<double>>& levels) {
    double end = 0;
    for (const auto& level : levels) end = std::max(end, level.front());
    return end;
  }

  static double lowest(const std::vector<std::vector<double>>& levels) {
    double end = 0;
    for (const auto& level : levels) end = std::min(end, level.back());
    return end;
  }

  const DesignPoint& at(double change) {
    const auto known = points_.find(change);
    return known != points_.end() ? known->second
                                  : points_.emplace(change, joint_(change)).first->second;
  }

  double marginAt(std::size_t k, double change) {
    return at(change).marginOf(wanted_[k].id, wanted_[k].stage);
  }

  void look(double change) {
    for (std::size_t k = 0; k < traces_.size() && !stop_.stop_requested(); ++k) {
      Trace& trace = traces_[k];
      bool& over = change > 0 ? trace.overUp : trace.overDown;
      if (!trace.open || over) continue;
      const double margin = marginAt(k, change);
      over = !isSet(margin);
      const double edge = over ? edgeBefore(k, change) : change;
      if (edge != 0) note(k, edge, marginAt(k, edge));
    }
  }

  /// The outermost change at which the margin is still known, to a thousandth; 0 if there is none.
  double edgeBefore(std::size_t k, double unknown) {
    double known = unknown > 0 ? traces_[k].lastUp : traces_[k].lastDown;
    for (int step = 0; step < 10 && !stop_.stop_requested(); ++step) {
      const double middle = (known + unknown) / 2;
      (isSet(marginAt(k, middle)) ? known : unknown) = middle;
    }
    return known;
  }

  void note(std::size_t k, double change, double margin) {
    Trace& trace = traces_[k];
    const double before = base_.marginOf(wanted_[k].id, wanted_[k].stage);
    constexpr double kRounding = 1e-9;
    if (!(std::abs(margin - before) <= kRounding)) trace.found.matters = true;
    if (isSet(margin) && !(margin <= trace.found.best)) {
      trace.found.best = margin;
      trace.found.bestAt = change;
    }
    double& last = change > 0 ? trace.lastUp : trace.lastDown;
    if (margin >= target_) {
      trace.brackets.emplace_back(last, change);
    } else {
      last = change;
    }
  }

  /// Settles which margins are looked for further out: not those that 1 % does not move.
  bool anyOpen() {
    bool any = false;
    for (Trace& trace : traces_) {
      trace.open = trace.open && trace.brackets.empty() && trace.found.matters;
      any = any || trace.open;
    }
    return any;
  }

  void closeIn(std::size_t k, const std::pair<double, double>& bracket) {
    double safe = bracket.second;
    const auto lacking = [&](double change) {
      const double margin = stop_.stop_requested() ? target_ : marginAt(k, change);
      if (margin >= target_ && std::abs(change) < std::abs(safe)) safe = change;
      constexpr double kMost = 10;  // steeper ends only slow the search
      return isSet(margin) ? std::min(margin, kMost) - target_ : -1 - target_;
    };
    const auto near = [](double a, double b) {
      return std::abs(a - b) <= 1e-9 * std::min(std::abs(a), std::abs(b)) + 1e-13;
    };
    const double lacks = bracket.first == 0 ? lackingNow(k) : lacking(bracket.first);
    const double reached = lacking(bracket.second);
    const bool rising = bracket.first < bracket.second;
    std::uintmax_t iterations = 60;
    if (reached > 0 && lacks < 0) {
      boost::math::tools::toms748_solve(
          lacking, rising ? bracket.first : bracket.second, rising ? bracket.second : bracket.first,
          rising ? lacks : reached, rising ? reached : lacks, near, iterations);
    }
    std::optional<double>& smallest = traces_[k].found.smallest;
    if (!smallest || std::abs(safe) < std::abs(*smallest)) smallest = safe;
  }

  double lackingNow(std::size_t k) const {
    return base_.marginOf(wanted_[k].id, wanted_[k].stage) - target_;
  }

  const ChangedJoint& joint_;
  const DesignPoint& base_;
  const std::vector<WantedMargin>& wanted_;
  const double target_;
  const std::stop_token& stop_;
  std::map<double, DesignPoint> points_;
  std::vector<Trace> traces_;
};

}  // namespace

std::vector<ScannedMargin> scanChange(const ChangedJoint& joint, const ChangeRange& range,
                                      const DesignPoint& base,
                                      const std::vector<WantedMargin>& wanted, double target,
                                      const std::stop_token& stop) {
  return Scan(joint, base, wanted, target, stop).run(range);
}

}  // namespace jw
