// Field catalogue of the cycle and its moves.
#include <array>

#include "core/model/field_access.h"

namespace jw {
namespace {

using namespace access;

constexpr ChoiceItem kLaws[] = {{"trapezoidal", "trapezoidal speed"},
                                {"jerkLimited", "jerk-limited"},
                                {"polynomial345", "3-4-5 polynomial"},
                                {"polynomial4567", "4-5-6-7 polynomial"},
                                {"sineAcceleration", "sine acceleration"},
                                {"harmonic", "simple harmonic"},
                                {"modifiedTrapezoid", "modified trapezoid"},
                                {"modifiedSine", "modified sine"},
                                {"sinusoid", "steady sinusoid"},
                                {"dwell", "dwell"},
                                {"table", "table"}};

bool travels(const Segment& s) { return s.law != MotionLaw::Dwell && s.law != MotionLaw::Table; }
bool hasDuration(const Segment& s) { return s.law != MotionLaw::Table; }
bool hasRamps(const Segment& s) {
  return s.law == MotionLaw::Trapezoidal || s.law == MotionLaw::JerkLimited;
}
bool hasJerk(const Segment& s) { return s.law == MotionLaw::JerkLimited; }
bool isSinusoid(const Segment& s) { return s.law == MotionLaw::Sinusoid; }
bool isTable(const Segment& s) { return s.law == MotionLaw::Table; }

constexpr Applies kTravels = &appliesTo<Segment, travels>;
constexpr Applies kTimed = &appliesTo<Segment, hasDuration>;
constexpr Applies kRamps = &appliesTo<Segment, hasRamps>;
constexpr Applies kJerk = &appliesTo<Segment, hasJerk>;
constexpr Applies kSinusoid = &appliesTo<Segment, isSinusoid>;
constexpr Applies kTable = &appliesTo<Segment, isTable>;

const auto& segmentFields() {
  static const std::array kFields{
      text<&Segment::name>({"name", "Name", "", "A name of your own for this move."}),
      choice<&Segment::law>({"law", "Motion law", "", "How the move speeds up and slows down."},
                            kLaws),
      number<&Segment::travel>({"travel", "Travel", "\u0394q",
                                "End angle less start angle; the amplitude of a steady sinusoid."},
                               Quantity::Angle, "deg", {-1e7, 1e7}, kTravels),
      number<&Segment::duration>({"duration", "Duration", "t", "Time that the move takes."},
                                 Quantity::Time, "s", {0, 1e9, true}, kTimed),
      number<&Segment::accelShare>(
          {"accelShare", "Share speeding up", "a_1", "Share of the duration spent speeding up."},
          Quantity::Fraction, "1", {0, 1, true}, kRamps),
      number<&Segment::decelShare>(
          {"decelShare", "Share slowing down", "a_2", "Share of the duration spent slowing down."},
          Quantity::Fraction, "1", {0, 1, true}, kRamps),
      number<&Segment::jerkShare>({"jerkShare", "Jerk share", "a_j",
                                   "Share of each speed change spent in each of its jerk phases."},
                                  Quantity::Fraction, "1", {0, 0.5, true}, kJerk),
      number<&Segment::periods>({"periods", "Periods", "n", "Full periods within the duration."},
                                Quantity::Number, "1", {0, 1e6, true}, kSinusoid),
      number<&Segment::smoothing>({"smoothing", "Smoothing window", "t_s",
                                   "Window of the least-squares fit that gives speed and "
                                   "acceleration where the table has none.",
                                   "Savitzky and Golay, Anal. Chem. 36 (1964) 1627; from memory"},
                                  Quantity::Time, "s", {0, 1e6, true}, kTable),
      number<&Segment::payloadMass>(
          {"payloadMass", "Payload in this move", "m", "Not given = the load's payload."},
          Quantity::Mass, "kg", {0, 1e7}),
      number<&Segment::externalTorque>({"externalTorque", "External torque", "T_ext",
                                        "Added to the load's; positive opposes positive motion."},
                                       Quantity::Torque, "N*m", {-1e9, 1e9}),
  };
  return kFields;
}

const auto& cycleFields() {
  static const std::array kFields{
      number<&Cycle::startAngle>({"startAngle", "Start angle", "q_s",
                                  "Joint angle at the start; 0 = link horizontal, positive up."},
                                 Quantity::Angle, "deg", {-1e7, 1e7}),
      integer<&Cycle::samples>(
          {"samples", "Samples", "n", "Samples over the cycle; tables keep every row."}, {5, 1e7}),
  };
  return kFields;
}

}  // namespace

template <>
const StructInfo& structInfo<Segment>() {
  static const StructInfo kInfo{"segments", "Move", segmentFields(), &getAsWritten<Segment>};
  return kInfo;
}

template <>
const StructInfo& structInfo<Cycle>() {
  static const StructInfo kInfo{"cycle", "Cycle", cycleFields(), &getAsWritten<Cycle>};
  return kInfo;
}

}  // namespace jw
