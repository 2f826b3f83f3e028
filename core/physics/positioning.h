#pragma once

namespace jw {

/// What keeps the joint from where the motor's encoder says it is: half widths at the joint [rad].
struct ErrorBudget {
  double play = 0;          ///< half of the backlash
  double hysteresis = 0;    ///< half of the loop's width
  double windUp = 0;        ///< elastic twist under the load
  double transmission = 0;  ///< half of the transmission error, peak to peak
  double encoder = 0;       ///< one step

  /// [rad] all at their worst at once.
  double worst() const;
  /// [rad] root of the sum of squares, for contributions that are independent (JCGM 100:2008, 5.1).
  double rootSumSquare() const;
};

/// [rad] one step of an encoder with `steps` a turn behind a ratio; 0 steps = none, NaN.
double encoderStep(int steps, double ratio);

}  // namespace jw
