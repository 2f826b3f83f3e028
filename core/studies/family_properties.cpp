#include "core/studies/family_properties.h"

#include <algorithm>
#include <cmath>

namespace jw {
namespace {

using C = FamilyChoice;
using Q = Quantity;

constexpr FamilyProperty kProperties[] = {
    {"ratio", "Capacity", "Ratio", Q::Ratio, "1", 0, [](const C& c) { return c.stage.ratio; }},
    {"ratedTorque", "Capacity", "Rated torque", Q::Torque, "N*m", 1,
     [](const C& c) { return c.stage.ratedTorque; }},
    {"peakTorque", "Capacity", "Repeated peak torque", Q::Torque, "N*m", 1,
     [](const C& c) { return c.stage.peakTorque; }},
    {"speed", "Capacity", "Speed limit at the output", Q::AngularSpeed, "rpm", 1,
     [](const C& c) { return c.stage.peakSpeed / c.stage.ratio; }},
    {"backlash", "Motion quality", "Play at the joint", Q::Angle, "arcmin", -1,
     [](const C& c) { return c.backlash; }},
    {"transmissionError", "Motion quality", "Transmission error", Q::Angle, "arcmin", -1,
     [](const C& c) { return c.stage.transmissionError; }},
    {"stiffness", "Motion quality", "Stiffness at the joint", Q::TorsionalStiffness, "N*m/arcmin",
     1, [](const C& c) { return c.stiffness; }},
    {"backdriving", "Motion quality", "Torque that drives back", Q::Torque, "N*m", 0,
     [](const C& c) { return c.backdriving; }},
    {"efficiency", "Efficiency", "Efficiency at the cycle", Q::Fraction, "%", 1,
     [](const C& c) { return c.efficiency; }},
    {"loss", "Efficiency", "Mean heat of the stage", Q::Power, "W", -1,
     [](const C& c) { return c.stageLoss; }},
    {"winding", "Efficiency", "Winding, peak", Q::Temperature, "degC", -1,
     [](const C& c) { return c.windingPeak; }},
    {"life", "Durability", "Life at the cycle", Q::Time, "h", 1, [](const C& c) { return c.life; }},
    {"torquePerMass", "Size and mass", "Rated torque of 1 kg", Q::Torque, "N*m", 1,
     [](const C& c) { return c.torquePerMass; }},
    {"mass", "Size and mass", "Mass", Q::Mass, "kg", -1, [](const C& c) { return c.stage.mass; }},
    {"length", "Size and mass", "Length", Q::Length, "mm", -1,
     [](const C& c) { return c.stage.length; }},
    {"diameter", "Size and mass", "Diameter", Q::Length, "mm", -1,
     [](const C& c) { return c.stage.diameter; }},
    {"inertia", "Size and mass", "Input inertia, at the output", Q::Inertia, "kg*m^2", -1,
     [](const C& c) { return c.stage.inertia * c.stage.ratio * c.stage.ratio; }},
};

}  // namespace

std::span<const FamilyProperty> familyProperties() { return kProperties; }

const FamilyProperty* findFamilyProperty(std::string_view key) {
  for (const FamilyProperty& property : kProperties) {
    if (property.key == key) return &property;
  }
  return nullptr;
}

std::vector<double> sharesOfBest(const std::vector<double>& values, int better) {
  std::vector<double> shares(values.size(), kUnset);
  double low = kUnset;
  double high = kUnset;
  for (const double value : values) {
    if (!std::isfinite(value)) continue;
    if (!(low <= value)) low = value;
    if (!(high >= value)) high = value;
  }
  for (std::size_t k = 0; k < values.size() && better != 0; ++k) {
    if (!std::isfinite(values[k])) continue;
    const double rising = high > low ? (values[k] - low) / (high - low) : 1;
    shares[k] = better > 0 || high <= low ? rising : 1 - rising;
  }
  return shares;
}

}  // namespace jw
