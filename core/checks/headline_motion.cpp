// Headline figures of the joint's motion and torque.
#include <array>
#include <cmath>
#include <span>
#include <string>

#include <fmt/format.h>

#include "core/checks/headline_rows.h"

namespace jw {
namespace {

using namespace headline;

/// One sample of the cycle, of which the size is the figure.
void peakOf(C, W w, const Eigen::ArrayXd& values, Derived about) {
  const Eigen::Index at = peakAt(values);
  const std::string there = w.cycleOrigin(at);
  about.origin = there;
  w.value(values[at], about);
  w.follows("|" + std::string(about.symbol) + "|");
}

void torquePeak(C context, W w) {
  const LoadTorque& load = *context.result.load;
  const Eigen::Index at = peakAt(load.total);
  const std::string there = w.cycleOrigin(at);
  const auto part = [&](double value, std::string_view symbol, std::string_view label) {
    w.value(value, {symbol, label, Quantity::Torque, "N*m", there});
  };
  part(load.inertia[at], "T_i", "Inertia");
  part(load.gravity[at], "T_g", "Gravity");
  part(load.friction[at], "T_f", "Friction");
  part(load.spring[at], "T_s", "Counterbalance");
  part(load.external[at], "T_e", "External torque");
  w.follows("|T_i + T_g + T_f + T_s + T_e|");
}

void powerPeak(C context, W w) {
  Eigen::Index at = 0;
  (context.result.load->total * context.result.cycle->speed).maxCoeff(&at);
  const std::string there = w.cycleOrigin(at);
  w.value(context.result.load->total[at],
          {"T", "Joint torque there", Quantity::Torque, "N*m", there});
  w.value(context.result.cycle->speed[at],
          {"\u03c9", "Joint speed there", Quantity::AngularSpeed, "rpm", there});
  w.follows("T · \u03c9");
}

/// The inertia of each move that runs, with its own payload.
void loadInertiaOf(C context, W w) {
  if (!w.explains()) return;
  const auto& inertia = context.result.load->segmentInertia;
  std::string all;
  std::size_t shown = 0;
  for (std::size_t k = 0; k < inertia.size() && shown < 8; ++k) {
    const bool largest = inertia[k] == context.result.load->largestInertia;
    if (!largest && context.project.cycle.segments[k].disabled) continue;
    if (!largest && shown == 7) continue;  // room for the one that counts
    const std::string symbol = fmt::format("J_{}", k + 1);
    w.value(inertia[k], {symbol, fmt::format("With the payload of move {}", k + 1),
                         Quantity::Inertia, "kg*m^2"});
    all += (shown > 0 ? ", " : "") + symbol;
    ++shown;
  }
  w.follows("max(" + all + ")");
}

void period(C context, W w) {
  if (!w.explains()) return;
  std::string sum;
  const SampledCycle& cycle = *context.result.cycle;
  constexpr std::size_t kShown = 8;
  for (std::size_t k = 0; k < std::min(kShown, cycle.runs.size()); ++k) {
    const bool last = k + 1 == kShown || k + 1 == cycle.runs.size();
    const double end = last ? cycle.period : cycle.time[cycle.runs[k + 1].first];
    const std::string symbol = fmt::format("t_{}", k + 1);
    const bool rest = last && cycle.runs.size() > kShown;
    w.value(end - cycle.time[cycle.runs[k].first],
            {symbol, rest ? "Time of the other moves" : fmt::format("Time of move {}", k + 1),
             Quantity::Time, "s", "from the cycle"});
    sum += (k > 0 ? " + " : "") + symbol;
  }
  w.follows(sum);
}

constexpr Headline kRows[] = {
    {"joint.torque_peak", "Peak joint torque", Quantity::Torque, "N*m", hasLoad,
     [](P, E e) { return peak(e.load->total); },
     "T = largest |T_i + T_g + T_f + T_s + T_e| of the cycle",
     "Newton and Euler about a fixed axis; textbook mechanics", &torquePeak},
    {"joint.torque_rms", "Joint torque, root mean square", Quantity::Torque, "N*m", hasLoad,
     [](P, E e) { return rms(*e.cycle, e.load->total); }, "T_rms = \u221a(\u2211 t_k T_k² / t_c)",
     kMeanSquare,
     [](C c, W w) {
       meanSquareByMoves(c, w, c.result.load->total,
                         {"T_", "Joint torque, rms,", Quantity::Torque, "N*m"});
     }},
    {"joint.speed_peak", "Peak joint speed", Quantity::AngularSpeed, "rpm", hasLoad,
     [](P, E e) { return peak(e.cycle->speed); }, "\u03c9 = largest |q\u2019| of the cycle",
     "Definition",
     [](C c, W w) {
       peakOf(c, w, c.result.cycle->speed,
              {"\u03c9", "Joint speed", Quantity::AngularSpeed, "rpm"});
     }},
    {"joint.acceleration_peak", "Peak joint acceleration", Quantity::AngularAcceleration, "rad/s^2",
     hasLoad, [](P, E e) { return peak(e.cycle->acceleration); },
     "\u03b1 = largest |q\u2019\u2019| of the cycle", "Definition",
     [](C c, W w) {
       peakOf(c, w, c.result.cycle->acceleration,
              {"\u03b1", "Joint acceleration", Quantity::AngularAcceleration, "rad/s^2"});
     }},
    {"joint.power_peak", "Peak power to the load", Quantity::Power, "W", hasLoad,
     [](P, E e) { return (e.load->total * e.cycle->speed).maxCoeff(); },
     "P = largest T \u03c9 of the cycle", "Definition of power", &powerPeak},
    {"joint.power_mean", "Mean power to the load", Quantity::Power, "W", hasLoad,
     [](P, E e) { return mean(*e.cycle, e.load->total * e.cycle->speed); },
     "P = \u2211 t_k P_k / t_c", kMean,
     [](C c, W w) {
       meanByMoves(c, w, c.result.load->total * c.result.cycle->speed,
                   {"P_", "Mean power to the load", Quantity::Power, "W"});
     }},
    {"joint.inertia", "Largest load inertia", Quantity::Inertia, "kg*m^2", hasLoad,
     [](P, E e) { return e.load->largestInertia; },
     "J_L = largest of the moves, each with its payload", "Parallel axis theorem (Steiner)",
     &loadInertiaOf},
    {"cycle.period", "Cycle time", Quantity::Time, "s", hasLoad,
     [](P, E e) { return e.cycle->period; }, "t_c = \u2211 t_k", "Definition", &period},
};

}  // namespace

std::span<const Headline> motionHeadlines() { return kRows; }

}  // namespace jw
