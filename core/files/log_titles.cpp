#include "core/files/log_titles.h"

#include <algorithm>
#include <array>
#include <optional>
#include <stdexcept>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "core/files/table_text.h"

namespace jw {
namespace {

using table_text::quoted;
using table_text::smallLetters;
using table_text::trimmed;

constexpr std::array kRoles{LogRole::Time,         LogRole::Position, LogRole::Speed,
                            LogRole::Acceleration, LogRole::Torque,   LogRole::Current};

struct Word {
  std::string_view text;  ///< in small letters
  LogRole role;
};

/// Of two words in one name the one further up counts: "current position" is a position.
constexpr Word kWords[] = {
    {"acceleration", LogRole::Acceleration},
    {"accel", LogRole::Acceleration},
    {"acc", LogRole::Acceleration},
    {"beschleunigung", LogRole::Acceleration},
    {"velocity", LogRole::Speed},
    {"speed", LogRole::Speed},
    {"vel", LogRole::Speed},
    {"omega", LogRole::Speed},
    {"drehzahl", LogRole::Speed},
    {"geschwindigkeit", LogRole::Speed},
    {"position", LogRole::Position},
    {"pos", LogRole::Position},
    {"angle", LogRole::Position},
    {"theta", LogRole::Position},
    {"phi", LogRole::Position},
    {"winkel", LogRole::Position},
    {"lage", LogRole::Position},
    {"encoder", LogRole::Position},
    {"current", LogRole::Current},
    {"strom", LogRole::Current},
    {"torque", LogRole::Torque},
    {"tau", LogRole::Torque},
    {"moment", LogRole::Torque},
    {"drehmoment", LogRole::Torque},
    {"effort", LogRole::Torque},
    {"trq", LogRole::Torque},
    {"timestamp", LogRole::Time},
    {"time", LogRole::Time},
    {"zeit", LogRole::Time},
    {"seconds", LogRole::Time},
    {"qddot", LogRole::Acceleration},
    {"qdd", LogRole::Acceleration},
    {"ddq", LogRole::Acceleration},
    {"alpha", LogRole::Acceleration},
    {"qdot", LogRole::Speed},
    {"qd", LogRole::Speed},
    {"dq", LogRole::Speed},
    {"q", LogRole::Position},
    {"iq", LogRole::Current},
    {"i", LogRole::Current},
    {"t", LogRole::Time},
    {"w", LogRole::Speed},
    {"v", LogRole::Speed},
    {"a", LogRole::Acceleration},
};

constexpr std::string_view kWanted[] = {
    "des",       "desired", "cmd",      "command", "commanded", "ref",  "target",   "set", "soll",
    "reference", "con",     "setpoint", "err",     "error",     "fric", "friction", "ff",  "limit"};
constexpr std::string_view kMeasured[] = {"meas", "measured", "act", "actual", "ist", "fb"};

/// Spellings that the unit table does not have; in small letters.
constexpr std::pair<std::string_view, std::string_view> kSpellings[] = {
    {"rads", "rad/s"},     {"rad_s", "rad/s"},    {"radps", "rad/s"},   {"dps", "deg/s"},
    {"degs", "deg/s"},     {"deg_s", "deg/s"},    {"degps", "deg/s"},   {"u/min", "rpm"},
    {"1/min", "rpm"},      {"min-1", "rpm"},      {"min^-1", "rpm"},    {"rads2", "rad/s^2"},
    {"rad_s2", "rad/s^2"}, {"radps2", "rad/s^2"}, {"degs2", "deg/s^2"}, {"deg_s2", "deg/s^2"},
    {"degps2", "deg/s^2"}, {"nm", "N*m"},         {"mnm", "mN*m"},      {"n_m", "N*m"},
    {"msec", "ms"},        {"usec", "us"},        {"millis", "ms"},     {"micros", "us"},
    {"arms", "A"},         {"a_rms", "A"},        {"apk", "A"},         {"amps", "A"},
    {"ma", "mA"},          {"degrees", "deg"},    {"radians", "rad"},   {"rpm", "rpm"},
    {"deg", "deg"},        {"rad", "rad"},        {"sec", "s"},         {"secs", "s"},
};

/// Degree signs of Latin-1 files, which are no UTF-8, made those of UTF-8.
std::string withDegreeSigns(std::string_view text) {
  std::string result;
  for (const char c : text) {
    if (c == '\xB0' && !result.ends_with('\xC2')) result += '\xC2';
    result += c;
  }
  return result;
}

bool isAny(std::string_view text, auto& list) {
  return std::find(std::begin(list), std::end(list), text) != std::end(list);
}

bool isCapital(char c) { return c >= 'A' && c <= 'Z'; }
bool isLetter(char c) { return (c >= 'a' && c <= 'z') || isCapital(c) || (c & 0x80) != 0; }

/// The words of a name in small letters: "jointPos_1" gives "joint" and "pos".
std::vector<std::string> wordsOf(std::string_view name) {
  std::vector<std::string> words;
  bool open = false;
  for (std::size_t i = 0; i < name.size(); ++i) {
    const char c = name[i];
    const bool hump = i > 0 && isCapital(c) && isLetter(name[i - 1]) && !isCapital(name[i - 1]);
    if (isLetter(c) && (!open || hump)) words.emplace_back();
    open = isLetter(c);
    if (open) words.back() += c;
  }
  for (std::string& word : words) word = smallLetters(word);
  return words;
}

LogRole roleOfName(std::string_view name) {
  const std::vector<std::string> words = wordsOf(name);
  for (const Word& known : kWords)
    if (std::find(words.begin(), words.end(), known.text) != words.end()) return known.role;
  return LogRole::Unused;
}

int rankOfName(std::string_view name) {
  int rank = 0;
  for (const std::string& word : wordsOf(name))
    rank += isAny(word, kMeasured) ? 1 : isAny(word, kWanted) ? -2 : 0;
  return rank;
}

/// A title taken apart.
struct Parts {
  std::string_view name;
  std::string unit;
  std::string_view strange;
  bool sure = true;  ///< the unit stands in brackets or behind a stroke
};

std::optional<Parts> partAt(std::string_view title, std::size_t at, std::size_t length) {
  if (at == std::string_view::npos || at == 0) return std::nullopt;
  std::string unit = unitIn(title.substr(at + length));
  if (unit.empty()) return std::nullopt;
  return Parts{trimmed(title.substr(0, at)), std::move(unit), {}};
}

/// "pos_deg", "vel_deg_s": the longest ending that is a unit; no single letters but s and A.
std::optional<Parts> partEnding(std::string_view title) {
  for (std::size_t at = 1; at < title.size(); ++at) {
    if (title[at] != '_' && title[at] != ' ') continue;
    const std::string_view ending = title.substr(at + 1);
    if (ending.size() == 1 && ending != "s" && ending != "A") continue;
    if (auto parts = partAt(title, at, 1)) {
      parts->sure = false;
      return parts;
    }
  }
  return std::nullopt;
}

Parts takeApart(std::string_view title) {
  if (const std::size_t open = title.find_first_of("[(");
      open != std::string_view::npos && open > 0 && title[open - 1] != '/') {
    const std::size_t close = std::max(open + 1, std::min(title.find_last_of("])"), title.size()));
    const std::string_view inside = trimmed(title.substr(open + 1, close - open - 1));
    const std::string unit = unitIn(inside);
    return {trimmed(title.substr(0, open)), unit, unit.empty() ? inside : std::string_view{}};
  }
  if (title.size() > 1 && !unitIn(title).empty()) return {{}, unitIn(title), {}};
  for (const std::string_view sign : {"/", " in ", ","})
    if (auto parts = partAt(title, title.find(sign), sign.size())) return *parts;
  if (auto parts = partEnding(title)) return *parts;
  return {title, {}, {}};
}

}  // namespace

Quantity quantityOf(LogRole role) {
  switch (role) {
    case LogRole::Time: return Quantity::Time;
    case LogRole::Position: return Quantity::Angle;
    case LogRole::Speed: return Quantity::AngularSpeed;
    case LogRole::Acceleration: return Quantity::AngularAcceleration;
    case LogRole::Torque: return Quantity::Torque;
    case LogRole::Current: return Quantity::Current;
    case LogRole::Unused: break;
  }
  throw std::logic_error("an unused column measures nothing");
}

std::string_view nameOf(LogRole role) {
  switch (role) {
    case LogRole::Time: return "time";
    case LogRole::Position: return "position";
    case LogRole::Speed: return "speed";
    case LogRole::Acceleration: return "acceleration";
    case LogRole::Torque: return "joint torque";
    case LogRole::Current: return "motor current";
    case LogRole::Unused: break;
  }
  return "not used";
}

LogRole roleOfUnit(std::string_view unit) {
  for (const LogRole role : kRoles)
    if (isUnitOf(unit, quantityOf(role))) return role;
  return LogRole::Unused;
}

std::string unitIn(std::string_view asWritten) {
  const std::string repaired = withDegreeSigns(asWritten);
  std::string_view text = trimmed(repaired);
  while (text.size() > 2 && (text.front() == '[' || text.front() == '(')) {
    text.remove_prefix(1);
    if (text.back() == ']' || text.back() == ')') text.remove_suffix(1);
    text = trimmed(text);
  }
  if (text.empty()) return {};
  if (roleOfUnit(text) != LogRole::Unused) return std::string(text);
  const std::string small = smallLetters(text);
  for (const auto& [spelling, unit] : kSpellings)
    if (small == spelling) return std::string(unit);
  return {};
}

TitleMeaning readTitle(std::string_view title) {
  title = trimmed(title);
  Parts parts = takeApart(title);
  TitleMeaning meaning;
  meaning.role = roleOfName(parts.name);
  const LogRole byUnit = parts.unit.empty() ? LogRole::Unused : roleOfUnit(parts.unit);
  if (!parts.sure && meaning.role != LogRole::Unused && byUnit != meaning.role) parts.unit.clear();
  meaning.rank = rankOfName(parts.name);
  meaning.unit = parts.unit;
  meaning.strangeUnit = parts.strange;
  if (!parts.unit.empty() && byUnit != meaning.role) {
    meaning.role = byUnit;
    meaning.reason = fmt::format("{} is a unit of {}", parts.unit, nameOf(byUnit));
  } else if (meaning.role != LogRole::Unused) {
    meaning.reason = fmt::format("named {}", quoted(title));
  }
  return meaning;
}

}  // namespace jw
