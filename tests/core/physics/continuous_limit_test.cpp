// Lasting torque from steady heat, against the formula written out by hand.
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "core/physics/torque_envelope.h"

namespace jw {
namespace {

/// Requirements at an ambient [°C].
Requirements at(double ambient) {
  Requirements wanted;
  wanted.ambient = ambient;
  return wanted;
}

Motor exampleMotor() {
  Motor motor;
  motor.torqueConstant = 0.11;  // per ampere rms
  motor.resistance = 0.4;       // line to line
  motor.dragTorque = 0.02;
  motor.dragDamping = 4e-5;
  motor.windingTemperatureMax = 155;
  return motor;
}

MotorConstants referenceOf(const Motor& motor) { return convertMotor(motor)->constants; }

TorqueEnvelope envelopeOf(const Motor& motor, double ambient, double voltage = 300) {
  const auto limit = continuousLimit(motor, referenceOf(motor), at(ambient));
  EXPECT_TRUE(limit.has_value());
  Variant variant;
  variant.motor = motor;
  variant.supply.voltage = voltage;
  return *torqueEnvelope(variant, referenceOf(motor), *limit);
}

// Own arithmetic: R_12 = 1.2, R_2 = 2.5 K/W, 155 °C in 40 °C. At standstill P_Cu = 115/3.7 =
// 31.081 W. Phase resistance 0.2 (1 + 0.00393 * 135) = 0.30611 ohm, so I = sqrt(P/(3 R)) =
// 5.81766 A rms. Housing 40 + 31.081 * 2.5 = 117.703 °C; K_t = 0.11 (1 - 0.0012 * 97.703) =
// 0.097103.
TEST(ContinuousLimit, FromThermalResistances) {
  Motor motor = exampleMotor();
  motor.thermalResistanceWinding = 1.2;
  motor.thermalResistanceHousing = 2.5;
  const ContinuousLimit limit = *continuousLimit(motor, referenceOf(motor), at(40));
  EXPECT_NEAR(limit.current(0) / std::numbers::sqrt2, 5.81766, 5e-6);
  EXPECT_NEAR(limit.machine.torquePerRmsAmp(), 0.097103, 5e-7);
  EXPECT_NEAR(envelopeOf(motor, 40).continuousTorque(0), 5.81766 * 0.097103, 5e-6);
}

// At 200 rad/s the drag 0.02 + 4e-5 * 200 = 0.028 N·m heats the housing with 5.6 W: P_Cu =
// (115 - 5.6 * 2.5)/3.7 = 27.297 W, I = 5.45206 A rms, and the shaft gives the drag less.
TEST(ContinuousLimit, DragHeatsTheHousing) {
  Motor motor = exampleMotor();
  motor.thermalResistanceWinding = 1.2;
  motor.thermalResistanceHousing = 2.5;
  const double current = std::sqrt((115 - 5.6 * 2.5) / 3.7 / 3 / (0.2 * (1 + 0.00393 * 135)));
  EXPECT_NEAR(current, 5.45206, 5e-6);
  EXPECT_NEAR(envelopeOf(motor, 40).continuousTorque(200), current * 0.097103 - 0.028, 5e-6);
  // Braking, the drag helps.
  EXPECT_NEAR(envelopeOf(motor, 40).continuousTorque(-200), current * 0.097103 + 0.028, 5e-6);
}

TEST(ContinuousLimit, RatingIsReachedAtItsOwnAmbient) {
  Motor motor = exampleMotor();
  motor.continuousTorque = 0.8;
  for (const double ambient : {25.0, 40.0}) {
    motor.ratingAmbient = ambient;
    EXPECT_NEAR(envelopeOf(motor, ambient).continuousTorque(0), 0.8, 1e-12);
  }
}

// Heat grows with the square of the torque: half the rise leaves 1/sqrt(2) of the torque.
TEST(ContinuousLimit, HotterAmbientLeavesLessTorque) {
  Motor motor = exampleMotor();
  motor.continuousTorque = 0.8;
  motor.ratingAmbient = 40;
  const double halfRise = 155 - (155 - 40) / 2.0;
  EXPECT_NEAR(envelopeOf(motor, halfRise).continuousTorque(0), 0.8 / std::numbers::sqrt2, 1e-12);
}

TEST(ContinuousLimit, DragAloneCanBeTooHot) {
  Motor motor = exampleMotor();
  motor.thermalResistanceWinding = 1.2;
  motor.thermalResistanceHousing = 2.5;
  // 4e-5 w² + 0.02 w > 46 W from w = 851.2 rad/s on.
  EXPECT_GT(continuousLimit(motor, referenceOf(motor), at(40))->current(851), 0);
  EXPECT_EQ(continuousLimit(motor, referenceOf(motor), at(40))->current(852), 0);
}

TEST(ContinuousLimit, ControllerAndVoltageLimitToo) {
  Motor motor = exampleMotor();
  motor.thermalResistanceWinding = 1.2;
  motor.thermalResistanceHousing = 2.5;
  Variant variant;
  variant.motor = motor;
  variant.supply.voltage = 300;
  variant.controller.currentContinuous = 3;
  const ContinuousLimit limit = *continuousLimit(motor, referenceOf(motor), at(40));
  const TorqueEnvelope envelope = *torqueEnvelope(variant, referenceOf(motor), limit);
  EXPECT_NEAR(envelope.continuousTorque(0), 3 * 0.097103, 5e-6);
  const double fast = 0.999 * envelope.noLoadSpeed;
  EXPECT_LE(envelope.continuousTorque(fast), envelope.limits.highestTorque(fast));
  EXPECT_GE(envelope.continuousTorque(fast), 0);
}

TEST(ContinuousLimit, SaysWhatIsMissing) {
  Motor motor = exampleMotor();
  EXPECT_EQ(continuousLimit(motor, referenceOf(motor), at(40)).error().where, "motor.continuousTorque");
  motor.thermalResistanceWinding = 1;
  EXPECT_EQ(continuousLimit(motor, referenceOf(motor), at(40)).error().where, "motor.continuousTorque");
  motor.thermalResistanceHousing = 1;
  EXPECT_TRUE(continuousLimit(motor, referenceOf(motor), at(40)).has_value());
  EXPECT_EQ(continuousLimit(motor, referenceOf(motor), at(155)).error().where,
            "motor.windingTemperatureMax");
}

}  // namespace
}  // namespace jw
