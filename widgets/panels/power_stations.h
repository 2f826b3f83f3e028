#pragma once

#include <vector>

#include <QString>

#include "core/physics/power_flow.h"
#include "widgets/snapshot.h"

namespace jw {

/// One station of the power path in words and watts.
struct StationView {
  QString path;    ///< where its inputs are: "motor", "transmission[1]"
  QString title;   ///< "Strain wave", cut when there is no room
  QString ratio;   ///< "100 : 1", never cut; empty if it has none
  QString first;   ///< torque, voltage or current
  QString second;  ///< speed or power
  QString note;    ///< inertia
  QString hint;    ///< everything in a sentence
  StationPower power;
  bool powerKnown = false;
};

/// The stage's name, or its family's: "Strain wave".
QString stageTitle(const Stage& stage);

/// The stations from supply to joint. Values are those at `time` [s], or over the cycle if it is
/// NaN: root mean square of torque and current, mean of the speed's amount and of the power.
/// Without an evaluation the stations still have their names.
std::vector<StationView> stationViews(const Snapshot& snapshot, double time);

/// The largest power [W] that a ribbon of these stations has to show: of the whole cycle with a
/// `time`, else of the means. 0 if nothing is known.
double largestPower(const Snapshot& snapshot, const std::vector<StationView>& stations,
                    double time);

}  // namespace jw
