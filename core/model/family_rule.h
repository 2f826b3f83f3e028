#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/model/stage.h"
#include "core/quantity/quantity.h"

namespace jw {

/// How reducers of one family grow with their torque: proportions of a whole series, not of a
/// product. All defaults are invented; their size is common practice, no source. A mass is in
/// proportion to the torque (a volume of material stressed alike), lengths to its cube root, input
/// inertia to m d², stiffness to the torque, the allowed input speed to one over its cube root
/// (surface speed alike).
struct FamilyRule {
  StageFamily family = StageFamily::GivenRatio;
  double ratioLow = 3;           ///< least and
  double ratioHigh = 100;        ///< largest ratio of one reducer
  double torquePerMass = 20;     ///< [N·m/kg] rated
  double peakFactor = 2;         ///< repeated peak over rated torque
  double momentaryFactor = 4;    ///< momentary over rated torque
  double efficiencyLow = 0.95;   ///< overall at rated torque, at the least ratio
  double efficiencyHigh = 0.9;   ///< at the largest; between them by the ratio's logarithm
  double dragShare = 0.02;       ///< no-load torque at the input over rated torque there
  double backlash = 1e-3;        ///< [rad] whole play at the output
  double hysteresis = 0;         ///< [rad]
  double windUp = 1e-3;          ///< [rad] at rated torque
  double transmissionError = 0;  ///< [rad] peak to peak
  double ratedSpeed = 200;       ///< [rad/s] at the input, of the size of 50 N·m
  double speedFactor = 2;        ///< highest over rated input speed
  double life = 3.6e7;           ///< [s] at rated torque and speed
  double lifeExponent = 3;
  double inertiaShare = 0.03;  ///< input inertia over m d² / 8
  double density = 4000;       ///< [kg/m³] of the whole reducer, hollows included
  double slenderness = 0.8;    ///< length over diameter
};

/// The rules of planetary, cycloidal, strain wave, traction and parallel-shaft reducers and belts.
const std::vector<FamilyRule>& defaultFamilyRules();

/// The rule of a family, or null.
const FamilyRule* ruleOf(std::span<const FamilyRule> rules, StageFamily family);

/// "planetary", as files and command line name it.
std::string_view familyKey(StageFamily family);

/// A reducer of `ratedTorque` [N·m] at the output and of `ratio` by the rule.
Stage reducerByRule(const FamilyRule& rule, double ratio, double ratedTorque);

/// One number of a rule, for tables and forms.
struct RuleField {
  std::string_view key;    ///< "torquePerMass"
  std::string_view label;  ///< "Rated torque per mass"
  Quantity quantity;
  std::string_view unit;  ///< of tables
  double FamilyRule::*value;
  double low = 0;  ///< smallest value allowed
};

std::span<const RuleField> ruleFields();

/// What a person adds to the scaling rules in words or numbers of their own: a price, a noise, a
/// lubrication. Stands in the rules' file as a column titled "own:price [EUR]".
struct OwnColumn {
  std::string title;  ///< "price [EUR]"
  std::vector<std::pair<StageFamily, std::string>> cells;

  /// What is said of a family; empty if nothing.
  std::string_view of(StageFamily family) const;
};

/// Lubrication and noise as each family commonly has them (common practice, no source).
std::vector<OwnColumn> defaultOwnColumns();

}  // namespace jw
