#pragma once

#include <string>
#include <vector>

#include <QString>

#include "core/studies/tolerance.h"
#include "core/studies/tolerance_envelope.h"
#include "widgets/figures/envelope_view.h"
#include "widgets/figures/line_chart.h"

namespace jw {

/// One verdict under tolerances; the first row is that of all together.
struct ChanceRow {
  QString title;
  std::string id;  ///< empty for all checks
  int stage = -1;
  double nominal = kUnset;
  double low = kUnset, median = kUnset, high = kUnset;  ///< margins; 2.5 %, half, 97.5 % lie below
  Proportion holds;
  double linearHolds = kUnset;
  std::size_t open = 0;  ///< draws in which it could not be told
};

/// What the draws say of the verdicts, the least certain first.
struct ToleranceView {
  std::vector<ChanceRow> rows;
  QString head;   ///< "10 000 draws, seed 1, of 6 inputs with a band"
  QString notes;  ///< values that were held at the end of their range; empty if none
  bool empty() const { return rows.empty(); }
};

ToleranceView toleranceView(const Tolerance& tolerance);

/// The margin of `id` and `stage`; that of all checks for an empty or unknown id.
const MarginSpread& marginOf(const Tolerance& tolerance, const std::string& id, int stage);

/// How a margin spreads over the draws, and the normal curve of the linear propagation beside it.
LineChart distributionChart(const Tolerance& tolerance, const MarginSpread& margin);

/// One input's part in a margin.
struct TornadoRow {
  QString label;
  QString band;            ///< "3.4 kg ± 0.34 kg, uniform"
  double correlation = 0;  ///< of ranks, -1 to 1
  double share = 0;        ///< change of the margin over one standard uncertainty
};

/// What a margin depends on, the strongest first.
struct TornadoView {
  QString title;
  std::vector<TornadoRow> rows;
  double linearDeviation = kUnset;  ///< of the margin, sum of squares of the shares
  double drawnDeviation = kUnset;
};

TornadoView tornadoView(const Tolerance& tolerance, const MarginSpread& margin);

/// The snapshot's draws, or such as are made on the spot: 1,000 with seed 1. Null if no input has a
/// band.
std::shared_ptr<const Tolerance> toleranceOf(const Snapshot& snapshot);
std::shared_ptr<const ToleranceEnvelope> toleranceEnvelopeOf(const Snapshot& snapshot);

/// Envelope and path at the motor with their bands.
EnvelopeView bandedEnvelopeView(const Snapshot& snapshot, const ToleranceEnvelope& bands);

}  // namespace jw
