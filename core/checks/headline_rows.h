#pragma once

#include <cmath>
#include <span>
#include <string>
#include <string_view>

#include "core/checks/check_writer.h"

namespace jw {

/// One headline figure: how it is called, how it is found in an evaluation, and
/// how its working shows that. `work` lists the symbols and says by
/// CheckWriter::follows what they give.
struct Headline {
  std::string_view id;
  std::string_view label;
  Quantity quantity;
  std::string_view unit;
  bool (*known)(const Evaluation&);
  double (*value)(const Project&, const Evaluation&);
  std::string_view formula;
  std::string_view source;
  void (*work)(const CheckContext&, CheckWriter&);
};

std::span<const Headline> motionHeadlines();
std::span<const Headline> chainHeadlines();
std::span<const Headline> motorHeadlines();
std::span<const Headline> supplyHeadlines();
std::span<const Headline> jointHeadlines();

/// What the rows of several families share.
namespace headline {

using P = const Project&;
using E = const Evaluation&;
using C = const CheckContext&;
using W = CheckWriter&;

inline bool hasLoad(E e) { return e.load.has_value(); }
inline bool hasStages(E e) { return e.stages.has_value(); }
inline bool hasChain(E e) { return e.chain.has_value(); }
inline bool hasChainAndMotor(E e) { return e.chain && e.motor; }
inline bool hasMotor(E e) { return e.motor.has_value(); }
inline bool hasDemand(E e) { return e.demand.has_value(); }
inline bool hasHeat(E e) { return e.heat.has_value() && !e.heat->periodic.runaway; }
inline bool hasSupply(E e) { return e.supply.has_value(); }
inline bool hasEnvelope(E e) { return e.envelope.has_value(); }

inline double peak(const Eigen::ArrayXd& values) { return values.abs().maxCoeff(); }
inline double mean(const SampledCycle& cycle, const Eigen::ArrayXd& values) {
  return (cycle.weight * values).sum() / cycle.period;
}
inline double rms(const SampledCycle& cycle, const Eigen::ArrayXd& values) {
  return std::sqrt(mean(cycle, values.square()));
}
/// The sample with the largest size.
inline Eigen::Index peakAt(const Eigen::ArrayXd& values) {
  Eigen::Index at = 0;
  values.abs().maxCoeff(&at);
  return at;
}

inline constexpr std::string_view kMeanSquare =
    "Root mean square, \u221a(1/t_c \u222b x\u00b2 dt), move by move; "
    "definition";
inline constexpr std::string_view kMean = "Mean over the cycle, move by move; definition";
inline constexpr std::string_view kEnvelopeSource =
    "Voltage and current limits of the machine (Krause, Wasynczuk and Sudhoff, "
    "Analysis of Electric "
    "Machinery; from memory)";
inline constexpr std::string_view kHeatSource =
    "Two-node thermal network, its periodic state by one affine solve (Hughes "
    "and Drury, Electric "
    "Motors and Drives; from memory)";

/// The values of a cycle by their root mean squares (or means) in each move,
/// and their sum over the cycle as what the figure follows from. Many moves are
/// told in lumps.
void meanSquareByMoves(C context, W w, const Eigen::ArrayXd& values, const Derived& about);
void meanByMoves(C context, W w, const Eigen::ArrayXd& values, const Derived& about);

/// One value from the evaluation, which the figure is.
void plain(W w, double value, const Derived& about);

}  // namespace headline
}  // namespace jw
