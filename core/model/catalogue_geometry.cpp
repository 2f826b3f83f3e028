// Field catalogue of what a stage is built of, family by family.
#include <vector>

#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;
using Fields = std::vector<FieldInfo>;

constexpr ChoiceItem kCycloidHeld[] = {{"pins", "ring pins"}, {"outputPins", "output pins"}};
constexpr ChoiceItem kStrainWaveHeld[] = {{"circularSpline", "circular spline"},
                                          {"flexspline", "flexspline"}};

constexpr Range kTeeth{3, 10000};
constexpr Range kLengthMm{0, 1e5, true};
constexpr Range kCoefficient{0, 2};

template <StageFamily Family>
bool isOf(const Stage& s) {
  return s.family == Family;
}
bool hasSecondSet(const Stage& s) {
  return s.family == StageFamily::Planetary && s.planetary.sets >= 2;
}
bool hasThirdSet(const Stage& s) {
  return s.family == StageFamily::Planetary && s.planetary.sets >= 3;
}
bool isToothed(const Stage& s) {
  return s.family == StageFamily::Planetary || s.family == StageFamily::ParallelShaft;
}
bool rolls(const Stage& s) {
  return isToothed(s) || s.family == StageFamily::Cycloidal || s.family == StageFamily::Traction;
}

constexpr Applies kPlanetary = &appliesTo<Stage, isOf<StageFamily::Planetary>>;
constexpr Applies kSecondSet = &appliesTo<Stage, hasSecondSet>;
constexpr Applies kThirdSet = &appliesTo<Stage, hasThirdSet>;
constexpr Applies kGearPair = &appliesTo<Stage, isOf<StageFamily::ParallelShaft>>;
constexpr Applies kToothed = &appliesTo<Stage, isToothed>;
constexpr Applies kCycloidal = &appliesTo<Stage, isOf<StageFamily::Cycloidal>>;
constexpr Applies kStrainWave = &appliesTo<Stage, isOf<StageFamily::StrainWave>>;
constexpr Applies kTraction = &appliesTo<Stage, isOf<StageFamily::Traction>>;
constexpr Applies kBelt = &appliesTo<Stage, isOf<StageFamily::Belt>>;
constexpr Applies kRolls = &appliesTo<Stage, rolls>;

struct SetWords {
  Words sun, ring, planets;
};

template <PlanetSet PlanetaryGeometry::*Set>
void addSet(Fields& fields, const SetWords& words, Applies applies) {
  fields.push_back(
      integer<&Stage::planetary, Set, &PlanetSet::sunTeeth>(words.sun, kTeeth, applies));
  fields.push_back(
      integer<&Stage::planetary, Set, &PlanetSet::ringTeeth>(words.ring, kTeeth, applies));
  fields.push_back(
      integer<&Stage::planetary, Set, &PlanetSet::planets>(words.planets, {1, 20}, applies));
}

Fields planetaryFields() {
  Fields fields{integer<&Stage::planetary, &PlanetaryGeometry::sets>(
      {"planetSets", "Planet sets", "n_s", "Sets of sun, planets and held ring in a row."}, {1, 3},
      kPlanetary)};
  addSet<&PlanetaryGeometry::first>(
      fields,
      {{"sunTeeth", "Sun teeth", "z_s", "The motor's side. Ratio 1 + z_r/z_s."},
       {"ringTeeth", "Ring teeth", "z_r", "The ring is held; planets have (z_r \u2212 z_s)/2."},
       {"planets", "Planets", "n_p", "Evenly spread where (z_s + z_r)/n_p is whole."}},
      kPlanetary);
  addSet<&PlanetaryGeometry::second>(
      fields,
      {{"sunTeeth2", "Sun teeth, second set", "z_s2", "On the first set's carrier."},
       {"ringTeeth2", "Ring teeth, second set", "z_r2", "Held."},
       {"planets2", "Planets, second set", "n_p2", "Evenly spread."}},
      kSecondSet);
  addSet<&PlanetaryGeometry::third>(
      fields,
      {{"sunTeeth3", "Sun teeth, third set", "z_s3", "On the second set's carrier."},
       {"ringTeeth3", "Ring teeth, third set", "z_r3", "Held."},
       {"planets3", "Planets, third set", "n_p3", "Evenly spread."}},
      kThirdSet);
  fields.push_back(number<&Stage::planetary, &PlanetaryGeometry::loadSharing>(
      {"loadSharing", "Load sharing factor", "K_\u03b3",
       "Largest planet load over the mean. Not given = 1, shared evenly.",
       "symbol as in ISO 6336-1, from memory"},
      Quantity::Number, "1", {1, 5}, kPlanetary));
  return fields;
}

Fields toothFields() {
  return {
      integer<&Stage::gearPair, &GearPairGeometry::pinionTeeth>(
          {"pinionTeeth", "Gear teeth, motor side", "z_1", "Ratio z_2/z_1, turning reversed."},
          kTeeth, kGearPair),
      integer<&Stage::gearPair, &GearPairGeometry::gearTeeth>(
          {"gearTeeth", "Gear teeth, joint side", "z_2", "Ratio z_2/z_1, turning reversed."},
          kTeeth, kGearPair),
      number<&Stage::gearPair, &GearPairGeometry::helixAngle>(
          {"helixAngle", "Helix angle", "\u03b2", "0 = spur."}, Quantity::Angle, "deg", {-45, 45},
          kGearPair),
      number<&Stage::toothing, &Toothing::module>(
          {"module", "Module", "m_n", "Normal module of the teeth; for size, drawing, pressure."},
          Quantity::Length, "mm", {0, 100, true}, kToothed),
      number<&Stage::toothing, &Toothing::faceWidth>(
          {"faceWidth", "Face width", "b_w", "Common width of the teeth."}, Quantity::Length, "mm",
          kLengthMm, kToothed),
      number<&Stage::toothing, &Toothing::pressureAngle>(
          {"pressureAngle", "Pressure angle", "\u03b1_n", "Not given = 20\u00b0.", "ISO 53"},
          Quantity::Angle, "deg", {5, 45}, kToothed),
      number<&Stage::toothing, &Toothing::meshEfficiency>(
          {"meshEfficiency", "Efficiency of one mesh", "\u03b7_m",
           "Of two gears in mesh on fixed axes; about 0.99. Gives the stage's efficiency where "
           "that is not given.",
           "common practice, no source"},
          Quantity::Fraction, "1", {0.5, 1}, kToothed),
  };
}

Fields cycloidFields() {
  using C = CycloidGeometry;
  constexpr auto kCycloid = &Stage::cycloid;
  return {
      choice<kCycloid, &C::held>({"cycloidHeld", "Pins held", "",
                                  "Ring pins: the discs drive the output, reversed. Output pins: "
                                  "the pin ring is the output."},
                                 kCycloidHeld, kCycloidal),
      integer<kCycloid, &C::pins>(
          {"pins", "Ring pins", "z_p", "Pins or rollers on the pin circle."}, {3, 1000},
          kCycloidal),
      integer<kCycloid, &C::lobes>(
          {"lobes", "Lobes", "z_l", "Of a disc. Not given = one less than the pins."}, {2, 1000},
          kCycloidal),
      number<kCycloid, &C::eccentricity>(
          {"eccentricity", "Eccentricity", "e", "Of the discs; below pin circle radius over pins."},
          Quantity::Length, "mm", kLengthMm, kCycloidal),
      number<kCycloid, &C::pinCircleRadius>(
          {"pinCircleRadius", "Pin circle radius", "R", "Radius of the circle of pin centres."},
          Quantity::Length, "mm", kLengthMm, kCycloidal),
      number<kCycloid, &C::pinRadius>({"pinRadius", "Pin radius", "r_p", "Of pin or roller."},
                                      Quantity::Length, "mm", kLengthMm, kCycloidal),
      integer<kCycloid, &C::outputPins>(
          {"outputPins", "Output pins", "n_o", "Pins through the holes of the discs."}, {2, 100},
          kCycloidal),
      number<kCycloid, &C::outputPinCircleRadius>(
          {"outputPinCircleRadius", "Output pin circle radius", "R_o", "Of the pin centres."},
          Quantity::Length, "mm", kLengthMm, kCycloidal),
      number<kCycloid, &C::outputPinRadius>(
          {"outputPinRadius", "Output pin radius", "r_o", "Its hole has this plus e."},
          Quantity::Length, "mm", kLengthMm, kCycloidal),
      integer<kCycloid, &C::discs>({"discs", "Discs", "n_d",
                                    "Evenly spread about the axis; two or more balance. Not given "
                                    "= 2."},
                                   {1, 3}, kCycloidal),
      number<kCycloid, &C::discWidth>({"discWidth", "Disc width", "b_d", "Of each disc."},
                                      Quantity::Length, "mm", kLengthMm, kCycloidal),
      number<kCycloid, &C::pinFriction>(
          {"pinFriction", "Friction at ring pins", "\u03bc_p",
           "Coefficient between disc and pin; small with rollers. Gives the efficiency where that "
           "is not given."},
          Quantity::Number, "1", kCoefficient, kCycloidal),
      number<kCycloid, &C::outputPinFriction>({"outputPinFriction", "Friction at output pins",
                                               "\u03bc_o", "Coefficient between hole and pin."},
                                              Quantity::Number, "1", kCoefficient, kCycloidal),
      number<kCycloid, &C::bearingFriction>(
          {"bearingFriction", "Friction of the eccentric bearing", "\u03bc_b",
           "Coefficient at the bearing's radius; about 0.002 for rollers.",
           "common practice, no source"},
          Quantity::Number, "1", kCoefficient, kCycloidal),
      number<kCycloid, &C::bearingRadius>(
          {"bearingRadius", "Eccentric bearing radius", "r_b", "Of the rolling elements' circle."},
          Quantity::Length, "mm", kLengthMm, kCycloidal),
  };
}

Fields strainWaveFields() {
  return {
      choice<&Stage::strainWave, &StrainWaveGeometry::held>(
          {"strainWaveHeld", "Spline held", "",
           "Circular spline: the flexspline is the output, reversed. Flexspline: the circular "
           "spline is."},
          kStrainWaveHeld, kStrainWave),
      integer<&Stage::strainWave, &StrainWaveGeometry::flexTeeth>(
          {"flexTeeth", "Flexspline teeth", "z_f",
           "Ratio z_f/(z_c \u2212 z_f) with the circular spline held."},
          kTeeth, kStrainWave),
      integer<&Stage::strainWave, &StrainWaveGeometry::circularTeeth>(
          {"circularTeeth", "Circular spline teeth", "z_c",
           "Ratio z_c/(z_c \u2212 z_f) with the flexspline held."},
          kTeeth, kStrainWave),
  };
}

Fields tractionFields() {
  using T = TractionGeometry;
  constexpr auto kRollers = &Stage::traction;
  return {
      number<kRollers, &T::sunDiameter>(
          {"sunDiameter", "Sun roller diameter", "d_s", "Ratio 1 + d_r/d_s with the ring held."},
          Quantity::Length, "mm", kLengthMm, kTraction),
      number<kRollers, &T::ringDiameter>(
          {"ringDiameter", "Ring diameter", "d_r", "Of the rolling surface; held."},
          Quantity::Length, "mm", kLengthMm, kTraction),
      integer<kRollers, &T::rollers>(
          {"rollers", "Rollers", "n_r", "Between sun and ring, on the carrier."}, {1, 50},
          kTraction),
      number<kRollers, &T::rollerWidth>(
          {"rollerWidth", "Contact length", "l_c", "Of the line contact."}, Quantity::Length, "mm",
          kLengthMm, kTraction),
      number<kRollers, &T::contactForce>(
          {"contactForce", "Contact force", "F_N", "Pressing each roller on the sun."},
          Quantity::Force, "N", {0, 1e9, true}, kTraction),
      number<kRollers, &T::tractionCoefficient>(
          {"tractionCoefficient", "Traction coefficient", "\u03bc_t",
           "Largest drive over normal force; at \u03bc_t F_N it slips."},
          Quantity::Number, "1", {0, 2, true}, kTraction),
      number<kRollers, &T::creepAtLimit>({"creepAtLimit", "Creep at the limit", "s_c",
                                          "Share of speed lost just below slip; proportional to "
                                          "load under it."},
                                         Quantity::Fraction, "%", {0, 50}, kTraction),
      number<kRollers, &T::contactRating>(
          {"contactRating", "Contact rating", "C_c",
           "Force of one contact for a million passes at 90 % reliability.",
           "as for roller bearings, ISO 281"},
          Quantity::Force, "kN", {0, 1e6, true}, kTraction),
  };
}

Fields beltFields() {
  using B = BeltGeometry;
  constexpr auto kPulleys = &Stage::belt;
  return {
      integer<kPulleys, &B::motorPulleyTeeth>(
          {"motorPulleyTeeth", "Pulley teeth, motor side", "z_1", "Ratio z_2/z_1."}, kTeeth, kBelt),
      integer<kPulleys, &B::jointPulleyTeeth>(
          {"jointPulleyTeeth", "Pulley teeth, joint side", "z_2", "Ratio z_2/z_1."}, kTeeth, kBelt),
      number<kPulleys, &B::pitch>(
          {"pitch", "Belt pitch", "p_b", "From tooth to tooth.", "ISO 5296, ISO 13050"},
          Quantity::Length, "mm", kLengthMm, kBelt),
      number<kPulleys, &B::centreDistance>(
          {"centreDistance", "Centre distance", "a", "Between the pulleys' axes."},
          Quantity::Length, "mm", kLengthMm, kBelt),
      number<kPulleys, &B::spanPretension>(
          {"spanPretension", "Pretension", "F_0", "In each span at rest."}, Quantity::Force, "N",
          {0, 1e9}, kBelt),
      number<kPulleys, &B::specificStiffness>(
          {"specificStiffness", "Belt stiffness", "c_b",
           "Force of the whole width per unit of strain; a span has c_b over its length."},
          Quantity::Force, "kN", {0, 1e9, true}, kBelt),
      number<kPulleys, &B::teethInMeshMin>(
          {"teethInMeshMin", "Least teeth in mesh", "z_m",
           "Wanted on the smaller pulley. Not given = 6.", "common practice, no source"},
          Quantity::Number, "1", {1, 1000}, kBelt),
  };
}

Fields contactFields() {
  return {
      number<&Stage::contact, &ContactMaterial::elasticModulus>(
          {"elasticModulus", "Modulus of elasticity", "E", "Of both bodies. Not given = 206 GPa.",
           "steel; common practice, no source"},
          Quantity::Pressure, "GPa", {0, 1e4, true}, kRolls),
      number<&Stage::contact, &ContactMaterial::poissonRatio>(
          {"poissonRatio", "Poisson's ratio", "\u03bd", "Of both bodies. Not given = 0.3.",
           "steel; common practice, no source"},
          Quantity::Number, "1", {0, 0.49}, kRolls),
      number<&Stage::contact, &ContactMaterial::allowedPressure>(
          {"allowedPressure", "Contact pressure allowed", "p_a",
           "Largest Hertz pressure that the surfaces bear."},
          Quantity::Pressure, "MPa", {0, 1e5, true}, kRolls),
  };
}

}  // namespace

namespace catalogue {

std::vector<FieldInfo> geometryFields() {
  return joined({{"Planet sets", planetaryFields()},
                 {"Teeth", toothFields()},
                 {"Discs and pins", cycloidFields()},
                 {"Splines", strainWaveFields()},
                 {"Rollers", tractionFields()},
                 {"Pulleys and belt", beltFields()},
                 {"Surfaces in contact", contactFields()}});
}

}  // namespace catalogue
}  // namespace jw
