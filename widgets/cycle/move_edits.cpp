#include "widgets/cycle/move_edits.h"

#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>

#include "core/motion/segment_input.h"
#include "widgets/cycle/field_table_model.h"
#include "widgets/inputs/field_text.h"
#include "widgets/inputs/new_items.h"

namespace jw::moves {
namespace {

using Result = tl::expected<void, InputError>;
using Segments = std::vector<Segment>;

std::size_t at(int row) { return static_cast<std::size_t>(row); }

Result noSuchMove(const Project& project) {
  return tl::unexpected(InputError{"there is no such move", "cycle.segments",
                                   fmt::format("there are {}", project.cycle.segments.size())});
}

bool areRows(const Segments& moves, const std::vector<int>& rows) {
  return !rows.empty() && std::all_of(rows.begin(), rows.end(),
                                      [&](int row) { return row >= 0 && at(row) < moves.size(); });
}

template <class Change>
Edit changing(const QString& verb, std::vector<int> rows, Change change) {
  std::sort(rows.begin(), rows.end());
  const QString which = rows.size() == 1 ? QString("move %1").arg(rows.front() + 1)
                                         : QString("%1 moves").arg(rows.size());
  return {verb + ' ' + which, {}, [rows, change](Project& project) -> Result {
            if (!areRows(project.cycle.segments, rows)) return noSuchMove(project);
            change(project.cycle.segments, rows);
            return {};
          }};
}

bool allIn(const Project& project, const std::vector<int>& rows, bool (*is)(const Segment&)) {
  return std::all_of(rows.begin(), rows.end(),
                     [&](int row) { return is(project.cycle.segments[at(row)]); });
}

/// "A", or the next letter that no block has.
std::string freeName(const Segments& moves) {
  std::set<std::string> taken;
  for (const Segment& move : moves) taken.insert(move.block);
  for (char letter = 'A'; letter <= 'Z'; ++letter) {
    if (!taken.contains(std::string(1, letter))) return std::string(1, letter);
  }
  int number = 27;
  while (taken.contains(std::to_string(number))) ++number;
  return std::to_string(number);
}

FieldRef fieldAt(const Project& project, int row, std::string_view key) {
  return fieldOf(project.cycle.segments[at(row)], segmentPath(at(row)), key);
}

struct Setting {
  std::string path;
  std::string text;
};

Edit setting(const QString& description, const QString& gesture, std::vector<Setting> settings) {
  return {description, gesture, [settings](Project& project) -> Result {
            for (const Setting& one : settings) {
              if (auto done = setField(project, one.path, one.text); !done) return done;
            }
            return {};
          }};
}

/// The unit that the field's text names, else the catalogue's.
std::string unitOf(const FieldRef& field) {
  const auto parsed = parseQuantity(fieldText(field), field.info->quantity, field.info->unit);
  const bool own = parsed && !parsed->unit.empty();
  return own ? parsed->unit : std::string(field.info->unit);
}

/// A value that follows from others as text: near enough for every join, without rounding's tail.
std::string filled(const FieldRef& field, double value) {
  const std::string unit = unitOf(field);
  return fmt::format("{:.10g} {}", fromInternal(value, unit, field.info->quantity), unit);
}

/// 1, 2 or 5 times a power of ten, not below `step`.
double niceStep(double step) {
  const double power = std::pow(10.0, std::floor(std::log10(step)));
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (factor * power >= step * (1 - 1e-9)) return factor * power;
  }
  return 10 * power;
}

}  // namespace

Edit add(int row, MotionLaw law) {
  return {QStringLiteral("Add a move"), {}, [row, law](Project& project) -> Result {
            Segments& moves = project.cycle.segments;
            const auto place = std::clamp<std::ptrdiff_t>(row + 1, 0, std::ssize(moves));
            moves.insert(moves.begin() + place, newSegment(law));
            return {};
          }};
}

Edit duplicate(const std::vector<int>& rows) {
  return changing("Duplicate", rows, [](Segments& moves, const std::vector<int>& sorted) {
    Segments copies;
    for (const int row : sorted) copies.push_back(moves[at(row)]);
    moves.insert(moves.begin() + sorted.back() + 1, copies.begin(), copies.end());
  });
}

Edit remove(const std::vector<int>& rows) {
  return changing("Delete", rows, [](Segments& moves, const std::vector<int>& sorted) {
    for (auto row = sorted.rbegin(); row != sorted.rend(); ++row) moves.erase(moves.begin() + *row);
  });
}

Edit shift(const std::vector<int>& rows, int by) {
  return changing("Reorder", rows, [by](Segments& moves, std::vector<int> sorted) {
    if (by > 0) std::reverse(sorted.begin(), sorted.end());
    if (sorted.front() + by < 0 || at(sorted.front() + by) >= moves.size()) return;
    for (const int row : sorted) std::swap(moves[at(row)], moves[at(row + by)]);
  });
}

Edit switchOff(const Project& project, const std::vector<int>& rows) {
  const bool off = !allIn(project, rows, [](const Segment& s) { return s.disabled; });
  return changing(off ? "Switch off" : "Switch on", rows,
                  [off](Segments& moves, const std::vector<int>& sorted) {
                    for (const int row : sorted) moves[at(row)].disabled = off;
                  });
}

Edit block(const Project& project, const std::vector<int>& rows) {
  const bool out = allIn(project, rows, [](const Segment& s) { return !s.block.empty(); });
  return changing(out ? "Take out of its block:" : "Make a block of", rows,
                  [out](Segments& moves, const std::vector<int>& sorted) {
                    const std::string name = out ? std::string() : freeName(moves);
                    for (const int row : sorted) moves[at(row)].block = name;
                  });
}

Edit flipAim(const MovesView& view, int row) {
  const Project& project = *view.project;
  const Segment& move = project.cycle.segments[at(row)];
  const bool to = move.aim == MoveAim::By;
  std::vector<Setting> settings{{fieldAt(project, row, "aim").path, to ? "to" : "by"}};
  const ShownRun* run = view.firstRun(row);
  if (run != nullptr && !view.stale) {
    const FieldRef field = fieldAt(project, row, to ? "target" : "travel");
    const double value = to ? run->endAngle : run->endAngle - run->startAngle;
    settings.push_back({field.path, filled(field, value)});
  }
  return setting(QString("Change the aim of move %1").arg(row + 1), {}, std::move(settings));
}

Edit flipTiming(const MovesView& view, int row) {
  const Project& project = *view.project;
  const Segment& move = project.cycle.segments[at(row)];
  const bool limits = move.timing == MoveTiming::Duration;
  std::vector<Setting> settings{
      {fieldAt(project, row, "timing").path, limits ? "limits" : "duration"}};
  const ShownRun* run = view.firstRun(row);
  if (!limits && run != nullptr && !view.stale && !isSet(move.duration)) {
    const FieldRef field = fieldAt(project, row, "duration");
    settings.push_back({field.path, filled(field, run->to - run->from)});
  }
  return setting(QString("Change the timing of move %1").arg(row + 1), {}, std::move(settings));
}

bool canChangeAngle(const Segment& s) {
  return s.law != MotionLaw::Dwell && s.law != MotionLaw::Table && s.law != MotionLaw::Sinusoid;
}

bool canChangeTime(const Segment& s) {
  return s.law == MotionLaw::Dwell ||
         (s.law != MotionLaw::Table && s.timing == MoveTiming::Duration);
}

Edit dragAngle(const Grip& grip, double change, bool keepRest) {
  const Segments& moves = grip.project->cycle.segments;
  const Segment& move = moves[at(grip.row)];
  const FieldRef field =
      fieldAt(*grip.project, grip.row, move.aim == MoveAim::To ? "target" : "travel");
  const QString text = draggedText(field, field.number() + change, grip.angleStep);
  std::vector<Setting> settings{{field.path, text.toStdString()}};
  const std::size_t next = at(grip.row) + 1;
  const bool gives = keepRest && next < moves.size() && canChangeAngle(moves[next]) &&
                     moves[next].aim == MoveAim::By && !moves[next].disabled;
  const auto moved = readField(*field.info, text.toStdString());
  if (gives && moved) {
    const FieldRef rest = fieldAt(*grip.project, grip.row + 1, "travel");
    const double made = rest.number() - (*moved - field.number());
    settings.push_back({rest.path, filled(rest, made)});
  }
  return setting(QString("Drag the end of move %1").arg(grip.row + 1), grip.gesture,
                 std::move(settings));
}

Edit dragTime(const Grip& grip, double change) {
  const FieldRef field = fieldAt(*grip.project, grip.row, "duration");
  const double least = niceStep(grip.timeStep);
  const double value = std::max(field.number() + change, least);
  return setting(QString("Drag the end of move %1").arg(grip.row + 1), grip.gesture,
                 {{field.path, draggedText(field, value, grip.timeStep).toStdString()}});
}

QString draggedText(const FieldRef& field, double value, double step) {
  const std::string unit = unitOf(field);
  const double size = std::abs(fromInternal(1, unit, field.info->quantity));
  const double nice = niceStep(step * size);
  const double rounded = std::round(value * size / nice) * nice;
  const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(nice) - 1e-9)), 0, 12);
  return QString::fromStdString(fmt::format("{:.{}f} {}", rounded + 0.0, decimals, unit));
}

}  // namespace jw::moves
