// Field catalogue of the cycle and its moves.
#include <vector>

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

constexpr ChoiceItem kAims[] = {{"by", "by an angle"}, {"to", "to an angle"}};
constexpr ChoiceItem kTimings[] = {{"duration", "by its duration"},
                                   {"limits", "as fast as the limits allow"}};
constexpr ChoiceItem kMixUses[] = {
    {"notUsed", "not in the mix"}, {"perHour", "runs per hour"}, {"share", "share of the day"}};

bool travels(const Segment& s) { return s.law != MotionLaw::Dwell && s.law != MotionLaw::Table; }
bool isSinusoid(const Segment& s) { return s.law == MotionLaw::Sinusoid; }
bool canAim(const Segment& s) { return travels(s) && !isSinusoid(s); }
bool goesTo(const Segment& s) { return canAim(s) && s.aim == MoveAim::To; }
bool goesBy(const Segment& s) { return travels(s) && !goesTo(s); }
bool isTable(const Segment& s) { return s.law == MotionLaw::Table; }
bool isLimited(const Segment& s) { return travels(s) && s.timing == MoveTiming::Limits; }
bool hasDuration(const Segment& s) { return !isTable(s) && !isLimited(s); }
bool hasRamps(const Segment& s) {
  return (s.law == MotionLaw::Trapezoidal || s.law == MotionLaw::JerkLimited) && !isLimited(s);
}
bool hasJerk(const Segment& s) { return s.law == MotionLaw::JerkLimited && !isLimited(s); }
bool countsRuns(const Cycle& c) { return c.use == MixUse::PerHour; }
bool sharesDay(const Cycle& c) { return c.use == MixUse::Share; }

constexpr Applies kTravels = &appliesTo<Segment, travels>;
constexpr Applies kCanAim = &appliesTo<Segment, canAim>;
constexpr Applies kGoesTo = &appliesTo<Segment, goesTo>;
constexpr Applies kGoesBy = &appliesTo<Segment, goesBy>;
constexpr Applies kLimited = &appliesTo<Segment, isLimited>;
constexpr Applies kTimed = &appliesTo<Segment, hasDuration>;
constexpr Applies kRamps = &appliesTo<Segment, hasRamps>;
constexpr Applies kJerk = &appliesTo<Segment, hasJerk>;
constexpr Applies kSinusoid = &appliesTo<Segment, isSinusoid>;
constexpr Applies kTable = &appliesTo<Segment, isTable>;
constexpr Applies kCountsRuns = &appliesTo<Cycle, countsRuns>;
constexpr Applies kSharesDay = &appliesTo<Cycle, sharesDay>;

/// Highest that a limit of motion may be, in rad/s, rad/s² or rad/s³.
constexpr Range kLimit{0, 1e12, true};

std::vector<FieldInfo> moveFields() {
  return {
      text<&Segment::name>({"name", "Name", "", "A name of your own for this move."}),
      flag<&Segment::disabled>({"disabled", "Switched off", "", "Left out of the cycle."}),
      text<&Segment::block>(
          {"block", "Block", "", "Neighbouring moves with one block name repeat together."}),
      integer<&Segment::repeats>({"repeats", "Repeats", "n_r",
                                  "Times that it runs; of a block its first move's count holds."},
                                 {1, 100'000}),
      choice<&Segment::law>({"law", "Motion law", "", "How the move speeds up and slows down."},
                            kLaws),
      choice<&Segment::aim>(
          {"aim", "Goes", "", "By an angle from where the joint is, or to an angle."}, kAims,
          kCanAim),
      number<&Segment::travel>({"travel", "Travel", "\u0394q",
                                "End angle less start angle; the amplitude of a steady sinusoid."},
                               Quantity::Angle, "deg", {-1e7, 1e7}, kGoesBy),
      number<&Segment::target>({"target", "Target", "q_e", "Joint angle at the end of the move."},
                               Quantity::Angle, "deg", {-1e7, 1e7}, kGoesTo),
  };
}

std::vector<FieldInfo> timingFields() {
  return {
      choice<&Segment::timing>(
          {"timing", "Timed", "", "By its duration, or as fast as the limits allow."}, kTimings,
          kTravels),
      number<&Segment::duration>({"duration", "Duration", "t", "Time that the move takes."},
                                 Quantity::Time, "s", {0, 1e9, true}, kTimed),
      number<&Segment::speedLimit>(
          {"speedLimit", "Speed limit", "v_max", "Of this move. Not given = the cycle's."},
          Quantity::AngularSpeed, "rpm", kLimit, kLimited),
      number<&Segment::accelerationLimit>({"accelerationLimit", "Acceleration limit", "a_max",
                                           "Of this move. Not given = the cycle's."},
                                          Quantity::AngularAcceleration, "rad/s^2", kLimit,
                                          kLimited),
      number<&Segment::jerkLimit>(
          {"jerkLimit", "Jerk limit", "j_max",
           "Of this move. Not given = the cycle's. No limit where the acceleration jumps."},
          Quantity::AngularJerk, "rad/s^3", kLimit, kLimited),
  };
}

std::vector<FieldInfo> courseFields() {
  return {
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
}

const std::vector<FieldInfo>& segmentFields() {
  static const std::vector<FieldInfo> kFields =
      joined({{"", moveFields()}, {"", timingFields()}, {"", courseFields()}});
  return kFields;
}

std::vector<FieldInfo> courseOfCycleFields() {
  return {
      text<&Cycle::name>({"name", "Name", "", "A name of your own for this cycle."}),
      number<&Cycle::startAngle>({"startAngle", "Start angle", "q_s",
                                  "Joint angle at the start; 0 = link horizontal, positive up."},
                                 Quantity::Angle, "deg", {-1e7, 1e7}),
      integer<&Cycle::samples>(
          {"samples", "Samples", "n", "Samples over the cycle; tables keep every row."}, {5, 1e7}),
  };
}

std::vector<FieldInfo> limitFields() {
  return {
      number<&Cycle::speedLimit>(
          {"speedLimit", "Speed limit", "v_max", "Of the moves timed by limits."},
          Quantity::AngularSpeed, "rpm", kLimit),
      number<&Cycle::accelerationLimit>(
          {"accelerationLimit", "Acceleration limit", "a_max", "Of the moves timed by limits."},
          Quantity::AngularAcceleration, "rad/s^2", kLimit),
      number<&Cycle::jerkLimit>({"jerkLimit", "Jerk limit", "j_max",
                                 "Of the moves timed by limits whose acceleration does not jump."},
                                Quantity::AngularJerk, "rad/s^3", kLimit),
  };
}

std::vector<FieldInfo> mixFields() {
  return {
      choice<&Cycle::use>({"use", "Use", "", "How often it runs within the daily mix."}, kMixUses),
      number<&Cycle::perHour>({"perHour", "Runs per hour", "n_h", "Of the day's time of duty."},
                              Quantity::Number, "1", {0, 1e9, true}, kCountsRuns),
      number<&Cycle::dayShare>(
          {"dayShare", "Share of the day", "s_d", "Of the day's time of duty."}, Quantity::Fraction,
          "%", {0, 100, true}, kSharesDay),
  };
}

const std::vector<FieldInfo>& cycleFields() {
  static const std::vector<FieldInfo> kFields = joined({{"", courseOfCycleFields()},
                                                        {"Limits of its moves", limitFields()},
                                                        {"In the daily mix", mixFields()}});
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
