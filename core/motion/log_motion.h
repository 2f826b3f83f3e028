#pragma once

#include <string>
#include <vector>

#include "core/model/measured_log.h"

namespace jw {

/// Frequencies [Hz] up to which a smoother lets a sine through by more than 1/√2.
struct SmootherBandwidth {
  double position = 0;
  double speed = 0;         ///< of the slope found from the position
  double acceleration = 0;  ///< of the curvature found from the position
};

/// Of a least-squares cubic over `window` [s] of close points: 1.0641, 1.2481 and 0.6874 over the
/// window. From the transform of the kernels of the fit; e.g. (3/8)(3 - 5u²) for the position over
/// |u| <= 1 (own derivation; Savitzky & Golay, Anal. Chem. 36 (1964) 1627, for the fit).
SmootherBandwidth smootherBandwidth(double window);

/// [s] window whose acceleration reaches up to `frequency` [Hz], see smootherBandwidth.
double windowOfBandwidth(double frequency);

/// [s] window to begin with: 8 median steps of the log (9 rows), at least 40 ms; at most the log
/// (common practice, no source).
double firstLogWindow(const MeasuredLog& log);

/// Position, speed and acceleration at every row of a log, and what smoothing did to them. The
/// effect is the difference from the log's own column of the same name.
struct LogMotion {
  std::vector<double> position;  ///< [rad] smoothed if the speed had to be found, else measured
  std::vector<double> speed;     ///< [rad/s] smoothed if the acceleration had to be found from it
  std::vector<double> acceleration;  ///< [rad/s²]
  double window = 0;                 ///< [s] of the smoother, 0 if nothing had to be found
  SmootherBandwidth bandwidth;       ///< [Hz] of the position, speed and acceleration; 0 = measured
  double positionResidual = 0;       ///< [rad] rms of measured - smoothed position
  double positionPeak = 0;           ///< [rad] largest of it
  double speedResidual = 0;          ///< [rad/s] rms of measured - smoothed speed
  double speedPeak = 0;              ///< [rad/s] largest of it
  std::string smoother;              ///< a sentence that names smoother, window and bandwidth
};

/// Supplies the derivatives that a log lacks by local least-squares cubics (smoothByLocalCubic):
/// speed and acceleration from the position, or the acceleration alone from a measured speed. An
/// acceleration that was measured is kept. Needs at least 5 rows and window > 0 [s]. O(n).
LogMotion smoothLog(const MeasuredLog& log, double window);

}  // namespace jw
