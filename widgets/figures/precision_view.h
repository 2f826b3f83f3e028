#pragma once

#include "widgets/figures/line_chart.h"
#include "widgets/snapshot.h"

namespace jw {

/// What the precision figure shows, in display units and words.
struct PrecisionView {
  LineChart loop;        ///< twist of the joint against its torque, motor held
  LineChart shares;      ///< what each stage adds to play and compliance
  LineChart efficiency;  ///< of the chain against torque, at several speeds
  LineChart swing;       ///< frequency response of motor and joint
  LineChart toolError;   ///< contributions and both sums
  bool empty() const {
    return loop.empty() && efficiency.empty() && swing.empty() && toolError.empty();
  }
};

/// The view of a snapshot; empty without the studies of a chain.
PrecisionView precisionView(const Snapshot& snapshot);

}  // namespace jw
