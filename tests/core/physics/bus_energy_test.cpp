// The bus capacitor and its resistor: charge identities and the balance of energy.
#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "core/physics/bus_energy.h"

namespace jw {
namespace {

using Eigen::ArrayXd;

ArrayXd list(std::initializer_list<double> values) {
  ArrayXd all(static_cast<Eigen::Index>(values.size()));
  std::copy(values.begin(), values.end(), all.begin());
  return all;
}

BusModel bare(double voltage, double capacitance) {
  BusModel bus;
  bus.voltage = voltage;
  bus.capacitance = capacitance;
  return bus;
}

BusModel braked(double voltage, double capacitance, double switching, double resistance) {
  BusModel bus = bare(voltage, capacitance);
  bus.brakeVoltage = switching;
  bus.brakeResistance = resistance;
  return bus;
}

// J. Bird, Electrical Circuit Theory and Technology, ch. 6 ex. 15 (p. 68), read second-hand: 3 uF
// at 400 V hold 0.24 J, released in 10 us with 24 kW. From (all but) nothing to 400 V here.
TEST(BusEnergy, PublishedCapacitorAtFourHundredVolts) {
  const BusEnergy energy = followBus(bare(1e-6, 3e-6), list({-24e3, 24e3}), list({1e-5, 1e-5}));
  EXPECT_NEAR(energy.regenerated, 0.24, 1e-12);
  EXPECT_NEAR(energy.voltagePeak, 400, 1e-6);
}

// The same, ex. 16: 12 uF that hold 4 J stand at 816.5 V.
TEST(BusEnergy, PublishedCapacitorHoldingFourJoules) {
  const BusEnergy energy = followBus(bare(1e-6, 12e-6), list({-4, 4}), list({1, 1}));
  EXPECT_NEAR(energy.voltagePeak, 816.5, 0.05);
}

// E = C (V1² - V0²) / 2, own arithmetic: 470 uF from 50 to 60 V take 0.2585 J; a rotor of
// 0.01 kg·m² stopped from 3000 rpm gives 493.480 J, which lifts 18.151 mF from 325 to 400 V.
TEST(BusEnergy, ChargeIdentities) {
  EXPECT_NEAR(followBus(bare(50, 470e-6), list({-0.2585, 1}), list({1, 1})).voltagePeak, 60, 1e-9);
  const double rotor = 0.01 / 2 * std::pow(100 * std::acos(-1.0), 2);
  EXPECT_NEAR(rotor, 493.480, 5e-4);
  const BusEnergy energy = followBus(bare(325, 18.151e-3), list({-rotor, rotor}), list({1, 1}));
  EXPECT_NEAR(energy.voltagePeak, 400, 1e-3);
  EXPECT_NEAR(energy.drawn, 0, 1e-9);
  EXPECT_TRUE(energy.settles);
}

// By hand: 100 W for 1 s come back, 60 J fit between 10 and 20 V of 0.4 F, the rest goes through
// the resistor: 40 J of 100 J, held at 20 V; then 150 J are asked, 60 of them from the bus.
TEST(BusEnergy, ResistorHoldsTheSwitchingVoltage) {
  const BusEnergy energy = followBus(braked(10, 0.4, 20, 2), list({-100, 150}), list({1, 1}));
  EXPECT_NEAR(energy.braked, 40, 1e-12);
  EXPECT_NEAR(energy.drawn, 90, 1e-12);
  EXPECT_NEAR(energy.voltagePeak, 20, 1e-12);
  EXPECT_NEAR(energy.brakePowerPeak, 100, 1e-12);  // of the 200 W that 20 V drive through 2 ohm
  EXPECT_NEAR(energy.brakePowerMean, 20, 1e-12);
  EXPECT_TRUE(energy.settles);
  ASSERT_EQ(energy.voltage.size(), 3);
  EXPECT_NEAR(energy.voltage[0], 10, 1e-12);
  EXPECT_NEAR(energy.voltage[1], 20, 1e-12);
}

TEST(BusEnergy, WeakResistorLetsTheVoltageRise) {
  const BusEnergy strong = followBus(braked(10, 0.4, 20, 2), list({-100, 0}), list({1, 9}));
  const BusEnergy weak = followBus(braked(10, 0.4, 20, 40), list({-100, 0}), list({1, 9}));
  EXPECT_NEAR(strong.voltagePeak, 20, 1e-9);
  EXPECT_GT(weak.voltagePeak, 20);
  // At a standing surplus of P the resistor settles it: V² = P R.
  const BusEnergy standing = followBus(braked(10, 0.4, 20, 40), list({-40, -40}), list({1, 1}));
  EXPECT_NEAR(standing.voltagePeak, 40, 1e-6);
}

/// Own brute force: V²' = 2/C (-P - V²/R while on) in very small steps, cycle after cycle.
double peakByBruteForce(const BusModel& bus, const ArrayXd& power, const ArrayXd& duration) {
  constexpr double kStep = 2e-6;
  const double rest = bus.voltage * bus.voltage;
  const double switching = bus.brakeVoltage * bus.brakeVoltage;
  double square = rest;
  double peak = 0;
  for (int cycle = 0; cycle < 40; ++cycle) {
    peak = square;
    for (Eigen::Index i = 0; i < power.size(); ++i) {
      const auto steps = static_cast<int>(std::lround(duration[i] / kStep));
      for (int k = 0; k < steps; ++k) {
        const double burnt = square >= switching ? square / bus.brakeResistance : 0;
        square = std::max(rest, square - 2 * kStep / bus.capacitance * (power[i] + burnt));
        peak = std::max(peak, square);
      }
    }
  }
  return std::sqrt(peak);
}

TEST(BusEnergy, OverweakResistorPeakByBruteForce) {
  const ArrayXd power = list({-100, 60, -300, 20, 0, -40});
  const ArrayXd duration = list({0.05, 0.02, 0.03, 0.05, 0.01, 0.04});
  for (const double resistance : {5.0, 20.0, 80.0, 400.0}) {
    const BusModel bus = braked(48, 2e-3, 60, resistance);
    const BusEnergy energy = followBus(bus, power, duration);
    EXPECT_TRUE(energy.settles) << resistance;
    const double brute = peakByBruteForce(bus, power, duration);
    EXPECT_NEAR(energy.voltagePeak, brute, 1e-3 * brute) << resistance;
    EXPECT_LE(energy.brakePowerPeak, brute * brute / resistance * (1 + 2e-3));
    const double back = -(power.min(0.0) * duration).sum();
    EXPECT_NEAR(energy.drawn - energy.braked, (power * duration).sum(), 1e-8 * back);
  }
}

// By hand: R C/2 = 0.5 s, 100 W into 100 ohm end at 100 V. From the switching level of 60 V:
// V² = 1e4 - 6400 exp(-2 t), after 0.5 s 7645.57 V²; the resistor takes 100 W x 0.5 s less what
// the capacitor gains, C/2 (7645.57 - 3600).
TEST(BusEnergy, OverweakResistorRisesExponentially) {
  const double c = 0.01;
  const double fill = c / 2 * (60 * 60 - 48 * 48);  // 6.48 J from 48 to 60 V
  const BusEnergy energy =
      followBus(braked(48, c, 60, 100), list({-100, 1000}), list({fill / 100 + 0.5, 1}));
  const double square = 1e4 - 6400 * std::exp(-1);
  EXPECT_NEAR(energy.voltagePeak, std::sqrt(square), 1e-9);
  EXPECT_NEAR(energy.brakePowerPeak, square / 100, 1e-9);
}

// A surplus of 1 W through 1 Mohm: V² = P R takes weeks to come and is the answer all the same.
TEST(BusEnergy, VeryWeakResistorIsSolvedNotWaitedFor) {
  const BusEnergy energy = followBus(braked(48, 1, 60, 1e6), list({-3, 1}), list({1, 1}));
  EXPECT_TRUE(energy.settles);
  EXPECT_NEAR(energy.voltagePeak, 1000, 1);
}

// 48 V behind 0.5 ohm: 1000 W for 2 s at V = 24 + sqrt(576 - 500) V; 8 J of its own loss and more
// hand numbers from i = P/V. Back: 100 W lift the bus to 24 + sqrt(626) V.
TEST(BusEnergy, SourceGivesItsOwnLossToo) {
  BusModel bus = bare(48, 0);
  bus.takesBack = true;
  bus.sourceVoltage = 48;
  bus.sourceResistance = 0.5;
  const BusEnergy energy = followBus(bus, list({1000, -100}), list({2, 3}));
  const double out = 1000 / (24 + std::sqrt(76.0));
  const double in = 100 / (24 + std::sqrt(626.0));
  EXPECT_NEAR(energy.drawn, 2 * 48 * out, 1e-9);
  EXPECT_NEAR(energy.drawn, 2000 + 2 * 0.5 * out * out, 1e-9);
  EXPECT_NEAR(energy.returned, 300 - 3 * 0.5 * in * in, 1e-9);
  EXPECT_NEAR(energy.sourceLoss, 2 * 0.5 * out * out + 3 * 0.5 * in * in, 1e-9);
  EXPECT_NEAR(energy.voltagePeak, 48 + 0.5 * in, 1e-9);
}

// A surplus too small to reach the resistor within a few cycles reaches it in the end.
TEST(BusEnergy, SmallSurplusGathersUntilTheResistorTakesIt) {
  const BusEnergy energy = followBus(braked(48, 1, 60, 10), list({-3, 2}), list({1, 1}));
  EXPECT_TRUE(energy.settles);
  EXPECT_NEAR(energy.voltagePeak, 60, 1e-9);
  EXPECT_NEAR(energy.braked, 1, 1e-9);
  EXPECT_NEAR(energy.drawn, 0, 1e-9);
}

TEST(BusEnergy, NoOutletClimbs) {
  const BusEnergy energy = followBus(bare(48, 1e-3), list({-3, 2}), list({1, 1}));
  EXPECT_FALSE(energy.settles);
  EXPECT_TRUE(std::isinf(energy.voltagePeak));
  const BusEnergy none = followBus(bare(48, 0), list({-3, 4}), list({1, 1}));
  EXPECT_TRUE(std::isinf(none.voltagePeak));  // nowhere to put it even for a moment
}

TEST(BusEnergy, BatteryTakesAllBack) {
  BusModel bus = braked(48, 0, 60, 10);
  bus.takesBack = true;
  const BusEnergy energy = followBus(bus, list({-100, 30, -5}), list({2, 1, 4}));
  EXPECT_EQ(energy.returned, 220);
  EXPECT_EQ(energy.drawn, 30);
  EXPECT_EQ(energy.braked, 0);
  EXPECT_EQ(energy.voltagePeak, 48);
}

// Over a settled cycle, drawn - returned - braked is the net of all steps, whatever they are.
TEST(BusEnergy, BalancesOverRandomCycles) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> unit(0, 1);
  int settled = 0;
  for (int k = 0; k < 300; ++k) {
    BusModel bus = bare(24 + 100 * unit(random), std::pow(10.0, -4 + 4 * unit(random)));
    bus.takesBack = k % 5 == 0;
    if (k % 2 == 0) {
      bus.brakeVoltage = bus.voltage * (1.05 + unit(random));
      bus.brakeResistance = 1 + 20 * unit(random);
    }
    ArrayXd power(40), duration(40);
    for (int i = 0; i < 40; ++i) {
      power[i] = 400 * (unit(random) - 0.4);
      duration[i] = i % 9 == 0 ? 0 : 0.1 * unit(random);
    }
    const BusEnergy energy = followBus(bus, power, duration);
    if (!energy.settles) continue;
    ++settled;
    const double net = (power * duration).sum();
    const double back = -(power.min(0.0) * duration).sum();
    EXPECT_NEAR(energy.drawn - energy.returned - energy.braked, net, 1e-7 * (1 + back)) << k;
    EXPECT_NEAR(energy.regenerated, back, 1e-9 * (1 + back));
    EXPECT_GE(energy.voltage.minCoeff(), bus.voltage * (1 - 1e-12));
    EXPECT_LE(energy.voltage.maxCoeff(), energy.voltagePeak);
  }
  EXPECT_GT(settled, 200);
}

// V = V_0 - R I with P = V I, put in again.
TEST(SaggedVoltage, SolvesItsOwnEquation) {
  for (const double power : {0.0, 10.0, 400.0, 1100.0, -300.0}) {
    const double v = saggedVoltage(48, 0.5, power);
    EXPECT_NEAR(48 - 0.5 * power / v, v, 1e-12 * v) << power;
    EXPECT_GE(v, 24);
  }
  EXPECT_NEAR(saggedVoltage(48, 0.5, 48 * 48 / 4 / 0.5), 24, 1e-9);  // the most it can give
  EXPECT_TRUE(std::isnan(saggedVoltage(48, 0.5, 1153)));
  EXPECT_EQ(saggedVoltage(48, 0, 1e6), 48);
}

}  // namespace
}  // namespace jw
