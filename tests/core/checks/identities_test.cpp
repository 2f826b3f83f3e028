// Identities that hold for every project, whatever its numbers: power balance, symmetry, units,
// order.
#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/checks/evaluation.h"
#include "core/model/field_catalogue.h"
#include "core/motion/cycle_reading.h"
#include "core/physics/external_torque.h"
#include "core/physics/power_flow.h"
#include "tests/core/checks/every_project.h"

namespace jw {
namespace {

using Eigen::ArrayXd;

struct Identities : testing::Test {
  const std::vector<NamedProject> all = everyProject();
};

bool sameBits(double a, double b) {
  return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

bool sameBits(const ArrayXd& a, const ArrayXd& b) {
  if (a.size() != b.size()) return false;
  for (Eigen::Index i = 0; i < a.size(); ++i) {
    if (!sameBits(a[i], b[i])) return false;
  }
  return true;
}

void expectSameBits(const Evaluation& a, const Evaluation& b) {
  ASSERT_EQ(a.checks.size(), b.checks.size());
  for (std::size_t k = 0; k < a.checks.size(); ++k) {
    EXPECT_EQ(a.checks[k].title, b.checks[k].title);
    EXPECT_EQ(a.checks[k].state, b.checks[k].state);
    EXPECT_EQ(a.checks[k].missing, b.checks[k].missing);
    EXPECT_TRUE(sameBits(a.checks[k].demand, b.checks[k].demand)) << a.checks[k].title;
    EXPECT_TRUE(sameBits(a.checks[k].capacity, b.checks[k].capacity)) << a.checks[k].title;
    EXPECT_TRUE(sameBits(a.checks[k].margin, b.checks[k].margin)) << a.checks[k].title;
  }
  ASSERT_EQ(a.quantities.size(), b.quantities.size());
  for (std::size_t k = 0; k < a.quantities.size(); ++k) {
    EXPECT_TRUE(sameBits(a.quantities[k].value, b.quantities[k].value)) << a.quantities[k].id;
  }
  EXPECT_TRUE(sameBits(a.demand->torque, b.demand->torque));
  EXPECT_TRUE(sameBits(a.demand->supplyPower, b.demand->supplyPower));
  EXPECT_TRUE(sameBits(a.envelope->peak.torque, b.envelope->peak.torque));
}

TEST_F(Identities, EverySampleIsThere) { EXPECT_GT(all.size(), sampleFiles().size()); }

TEST_F(Identities, EvaluatingTwiceGivesTheSameBits) {
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    expectSameBits(evaluate(one.project), evaluate(one.project));
  }
}

TEST_F(Identities, ReopenedFileEvaluatesToTheSameBits) {
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    auto again = readProject(writeProject(one.project), "again");
    ASSERT_TRUE(again.has_value()) << describe(again.error());
    again->project.activeVariant = one.project.activeVariant;
    expectSameBits(evaluate(one.project), evaluate(again->project));
  }
}

/// Inertia [kg·m²] times acceleration times speed of every turning mass of the actuator: the power
/// that goes into kinetic energy, joined up here from the model alone. The speeds are the chain's,
/// which creep where rollers do.
ArrayXd kineticPower(const Project& project, const Evaluation& e) {
  const Variant& variant = project.active();
  ArrayXd power = ArrayXd::Zero(e.cycle->size());
  ArrayXd acceleration = e.cycle->acceleration;
  for (std::size_t k = variant.transmission.size(); k-- > 0;) {
    const Stage& stage = variant.transmission[k];
    const StageLoad& load = e.chain->stages[k];
    power += stage.outputInertia * acceleration * load.outputSpeed;
    acceleration *= load.ratio;
    power += stage.inertia * acceleration * load.inputSpeed;
  }
  const double own = variant.motor.rotorInertia + variant.motor.brakeInertia;
  return power + own * acceleration * e.chain->motorSpeed;
}

bool creeps(const Evaluation& e) {
  return std::any_of(e.stages->begin(), e.stages->end(),
                     [](const StageData& stage) { return stage.creepAtSlip > 0; });
}

ArrayXd lossOf(const Evaluation& e) {
  ArrayXd loss = e.demand->copperLoss + e.demand->dragLoss + e.demand->controllerLoss;
  for (const StageLoad& stage : e.chain->stages) loss += stage.loss;
  return loss;
}

// First law at every instant: supply = load + losses + kinetic energy.
TEST_F(Identities, PowerBalancesAtEveryInstant) {
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    const Evaluation e = evaluate(one.project);
    const ArrayXd joint = e.load->total * e.cycle->speed;
    const ArrayXd rest = e.demand->supplyPower - joint - lossOf(e) - kineticPower(one.project, e);
    EXPECT_LT(rest.abs().maxCoeff(), 1e-9 * e.demand->supplyPower.abs().maxCoeff());
  }
}

// Over a closed cycle the kinetic energy comes back. Tables are integrated by trapezoids and may be
// differentiated by a smoother, so they close less exactly; the acceleration that comes with a
// change of creep is not counted.
TEST_F(Identities, PowerBalancesOverTheCycle) {
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    const Evaluation e = evaluate(one.project);
    const bool tabled =
        std::any_of(one.project.cycle.segments.begin(), one.project.cycle.segments.end(),
                    [](const Segment& segment) { return segment.law == MotionLaw::Table; });
    const double supply = cycleMean(*e.cycle, e.demand->supplyPower);
    const double joint = quantityValue(e, "joint.power_mean");
    const double scale = cycleMean(*e.cycle, e.demand->supplyPower.abs());
    const double closes = tabled ? 1e-2 : creeps(e) ? 1e-5 : 1e-9;
    EXPECT_NEAR(supply, joint + cycleMean(*e.cycle, lossOf(e)), closes * scale);
  }
}

// What the source gives, less what it takes back and brake and source resistance burn, is what the
// controller draws. The bus is followed in steps of mean power, so it closes as trapezoids do.
TEST_F(Identities, BusBalancesOverTheCycle) {
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    const Evaluation e = evaluate(one.project);
    if (!e.supply || !e.supply->energy.settles) continue;
    const ArrayXd& t = e.supply->duration;
    const ArrayXd& power = e.demand->supplyPower;
    const double steps = ((power.head(t.size()) + power.tail(t.size())) / 2 * t).sum();
    const double scale = cycleMean(*e.cycle, power.abs());
    const double lost = e.supply->energy.braked + e.supply->energy.sourceLoss;
    const double balance = quantityValue(e, "supply.power_mean") - lost / e.cycle->period;
    EXPECT_NEAR(balance, steps / e.cycle->period, 1e-7 * scale);
    EXPECT_NEAR(balance, cycleMean(*e.cycle, power), 1e-3 * scale);
  }
}

TEST_F(Identities, PowerFlowClosesFromSupplyToJoint) {
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    const Evaluation e = evaluate(one.project);
    const std::vector<PowerStation> flow = powerFlow(*e.cycle, *e.load, *e.chain, *e.demand);
    ArrayXd stored = ArrayXd::Zero(e.cycle->size());
    for (std::size_t k = 0; k < flow.size(); ++k) {
      EXPECT_TRUE(k == 0 || (flow[k].in == flow[k - 1].out).all());
      stored += flow[k].stored;
    }
    EXPECT_LT((stored - kineticPower(one.project, e)).abs().maxCoeff(),
              1e-9 * e.demand->supplyPower.abs().maxCoeff());
  }
}

TEST_F(Identities, NothingGainsPower) {
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    const Evaluation e = evaluate(one.project);
    for (const StageLoad& stage : e.chain->stages) EXPECT_GE(stage.loss.minCoeff(), -1e-12);
    EXPECT_GE(e.demand->copperLoss.minCoeff(), 0);
    EXPECT_GE(e.demand->dragLoss.minCoeff(), 0);
    EXPECT_GE(e.demand->controllerLoss.minCoeff(), 0);
  }
}

/// The check with this title, if the project has it.
const Check* named(const Evaluation& e, const std::string& title) {
  for (const Check& check : e.checks) {
    if (check.title == title) return &check;
  }
  return nullptr;
}

void expectNear(const Evaluation& a, const Evaluation& b, double tolerance) {
  for (const Check& check : a.checks) {
    const Check* other = named(b, check.title);
    ASSERT_NE(other, nullptr) << check.title;
    const auto near = [&](double x, double y) {
      return x == y || (std::isnan(x) && std::isnan(y)) ||
             std::abs(x - y) <= tolerance * std::abs(x);
    };
    EXPECT_TRUE(near(check.demand, other->demand))
        << check.title << " " << check.demand << " " << other->demand;
    EXPECT_TRUE(near(check.capacity, other->capacity))
        << check.title << " " << check.capacity << " " << other->capacity;
  }
}

TEST_F(Identities, LosslessStageOfRatioOneIsTransparent) {
  Stage nothing;
  nothing.ratio = 1;
  nothing.efficiency = 1;
  nothing.family = StageFamily::Coupling;
  nothing.backlash = nothing.mass = nothing.length = nothing.diameter = 0;
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    Project longer = one.project;
    auto& stages = longer.active().transmission;
    // Where no stiffness is given at all the joint counts as not known, not as rigid.
    const bool known = stages.empty() || std::any_of(stages.begin(), stages.end(), [](auto& stage) {
                         return isSet(stage.stiffness.first);
                       });
    nothing.stiffness.first = known ? 1e40 : kUnset;
    stages.push_back(nothing);
    const Evaluation a = evaluate(one.project);
    const Evaluation b = evaluate(longer);
    EXPECT_TRUE(sameBits(a.demand->torque, b.demand->torque));
    EXPECT_TRUE(sameBits(a.chain->motorSpeed, b.chain->motorSpeed));
    expectNear(a, b, 0);
  }
}

std::string negated(const std::string& table, ExternalOver over) {
  Load load;
  load.externalTable = table;
  load.externalOver = over;
  const PointTable points = *externalTable(load);
  std::string text;
  for (std::size_t k = 0; k < points.x.size(); ++k)
    text += fmt::format("{:.17g} s {:.17g} N*m;", points.x[k], -points.y[k]);
  return text;
}

Load mirrored(Load load) {
  // cos(q + phi) = -cos(-q + pi - phi): the masses move to the other side.
  for (double* angle :
       {&load.linkAngle, &load.payloadAngle, &load.extensionArmAngle, &load.extensionPostAngle}) {
    *angle = std::numbers::pi - *angle;
  }
  for (LoadMass& body : load.masses) body.x = -body.x;
  for (double* value : {&load.downX, &load.springAngle, &load.balanceTorque, &load.externalTorque,
                        &load.stopLow, &load.stopHigh}) {
    *value = -*value;
  }
  std::swap(load.stopLow, load.stopHigh);
  load.externalTable = negated(load.externalTable, load.externalOver);
  return load;
}

void mirror(Cycle& cycle) {
  cycle.startAngle = -cycle.startAngle;
  for (Segment& segment : cycle.segments) {
    segment.travel = -segment.travel;
    segment.target = -segment.target;
    segment.externalTorque = -segment.externalTorque;
    for (auto* column : {&segment.table.angle, &segment.table.speed, &segment.table.acceleration,
                         &segment.table.torque}) {
      for (double& value : column->own()) value = -value;
    }
  }
}

/// The same job seen from behind: every angle turned around.
Project mirrored(Project project) {
  mirror(project.cycle);
  for (Cycle& cycle : project.otherCycles) mirror(cycle);
  project.load = mirrored(project.load);
  Requirements& wanted = project.requirements;
  std::swap(wanted.travelMin, wanted.travelMax);
  wanted.travelMin = -wanted.travelMin;
  wanted.travelMax = -wanted.travelMax;
  return project;
}

TEST_F(Identities, MirroredJobMirrorsTheTorque) {
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    const Evaluation a = evaluate(one.project);
    const Evaluation b = evaluate(mirrored(one.project));
    const double scale = a.demand->torque.abs().maxCoeff();
    EXPECT_LT((a.demand->torque + b.demand->torque).abs().maxCoeff(), 1e-10 * scale);
    EXPECT_LT((a.demand->supplyPower - b.demand->supplyPower).abs().maxCoeff(),
              1e-10 * a.demand->supplyPower.abs().maxCoeff());
    expectNear(a, b, 1e-9);
  }
}

/// Every number typed anew in one of its other units.
Project retyped(const Project& project, std::size_t turn) {
  Project other = project;
  for (const FieldRef& field : allFields(project)) {
    const FieldInfo& info = *field.info;
    if (info.kind != FieldKind::Number || !isSet(field.number())) continue;
    const auto& units = quantityInfo(info.quantity).units;
    std::string_view unit = units[turn % units.size()];
    if (unit == "1") unit = info.unit;  // a bare number is in the field's own unit
    const std::string text = fmt::format(
        "{:.17g} {}", fromInternal(field.number(), unit, info.quantity), unit == "1" ? "" : unit);
    const auto done = setField(other, field.path, text);
    EXPECT_TRUE(done.has_value()) << text << ": " << (done ? "" : describe(done.error()));
  }
  return other;
}

TEST_F(Identities, UnitsChangeNothing) {
  for (const NamedProject& one : all) {
    SCOPED_TRACE(one.name);
    const Evaluation plain = evaluate(one.project);
    for (std::size_t turn = 0; turn < 4; ++turn) {
      expectNear(plain, evaluate(retyped(one.project, turn)), 1e-12);
    }
  }
}

// Nobody's torque gets smaller with a heavier payload, unless a counterbalance is tuned to it.
TEST_F(Identities, HeavierPayloadNeverHelpsTorque) {
  for (const NamedProject& one : all) {
    const Load& load = one.project.load;
    if (load.springStiffness != 0 || load.balanceTorque != 0 || load.extensionRate != 0) continue;
    SCOPED_TRACE(one.name);
    Evaluation lighter = evaluate(one.project);
    for (const double factor : {1.1, 1.5, 2.0, 5.0}) {
      Project heavier = one.project;
      heavier.load.payloadMass *= factor;
      for (Segment& segment : heavier.cycle.segments) segment.payloadMass *= factor;
      for (Cycle& cycle : heavier.otherCycles)
        for (Segment& segment : cycle.segments) segment.payloadMass *= factor;
      Evaluation next = evaluate(heavier);
      for (const Check& check : next.checks) {
        const bool torque = check.id == "motor.torque" || check.id == "motor.continuous" ||
                            check.id == "drive.torque_peak" || check.id == "drive.torque_average" ||
                            check.id == "joint.holding" || check.id.starts_with("controller.");
        if (!torque) continue;
        const double before = named(lighter, check.title)->margin;
        if (std::isnan(before) && std::isnan(check.margin)) continue;  // open both times
        EXPECT_LE(check.margin, before + 1e-12 * std::abs(before))
            << check.title << " x " << factor;
      }
      lighter = std::move(next);
    }
  }
}

}  // namespace
}  // namespace jw
