#pragma once

namespace jw {

/// The ratio at which a motor of `motorInertia` [kg·m²] speeds up a load of `loadInertia` [kg·m²]
/// with the least torque, or fastest: N = sqrt(J_L / J_m). Lossless, without other torque. Textbook
/// inertia match (Khurmi and Gupta, Theory of Machines, example 3.14; read second-hand). NaN unless
/// both are above 0.
double inertiaMatch(double loadInertia, double motorInertia);

/// The same against a constant `loadTorque` [N·m] on the load while it speeds up at `acceleration`
/// [rad/s²]: N = sqrt((J_L + tau_L / alpha) / J_m), the ratio that makes
/// J_m N alpha + (J_L alpha + tau_L) / N smallest. NaN where what stands under the root is not
/// above 0.
double inertiaMatch(double loadInertia, double motorInertia, double loadTorque,
                    double acceleration);

}  // namespace jw
