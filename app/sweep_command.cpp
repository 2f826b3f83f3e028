#include <algorithm>
#include <optional>

#include <fmt/format.h>

#include "app/command_line.h"
#include "app/requested_project.h"
#include "app/study_commands.h"
#include "app/sweep_report.h"
#include "app/whole_number.h"

namespace jw {
namespace {

/// "path=range" in two.
struct Over {
  std::string path, range;
};

tl::expected<Over, InputError> splitOver(const std::string& text) {
  const auto equals = text.find('=');
  if (equals != std::string::npos) return Over{text.substr(0, equals), text.substr(equals + 1)};
  return tl::unexpected(
      InputError{"'" + text + "' names no range", "--over",
                 "write PATH=FROM..TO:STEP, e.g. transmission[0].ratio=40..160:1"});
}

bool anyHolds(const std::vector<DesignPoint>& points) {
  return std::any_of(points.begin(), points.end(), [](const auto& p) { return p.holds(); });
}

int report(const std::string& text, bool holds) {
  fmt::print("{}", text);
  return holds ? kAllHold : kSomeShort;
}

int badOver(InputError error) {
  error.where = "--over " + error.where;
  return reportBadInput(error);
}

/// The stage that a path of a ratio names; -1 for "ratio", the whole chain; nothing for others.
std::optional<int> sweptStage(const Project& project, const std::string& path) {
  if (path == "ratio") return -1;
  const bool ofStage = path.starts_with("transmission[") && path.ends_with("].ratio");
  if (!ofStage || !findField(project, path)) return std::nullopt;
  return std::stoi(path.substr(13));
}

int sweepRatio(const Project& project, const Over& over, int stage, bool asCsv) {
  const FieldInfo& info = *structInfo<Stage>().find("ratio");
  auto ratios = readSweepRange(info, over.range);
  if (!ratios) {
    ratios.error().where = over.path;
    return badOver(ratios.error());
  }
  const auto sweep = ratioSweep(project, {stage, std::move(*ratios), false});
  if (!sweep) return badOver(sweep.error());
  return report(asCsv ? sweepCsv(*sweep) : sweepText(*sweep), anyHolds(sweep->points));
}

int sweepField(const Project& project, const Over& over, bool asCsv) {
  const auto axis = readSweepAxis(project, over.path, over.range);
  if (!axis) return badOver(axis.error());
  const FieldSweep sweep = fieldSweep(project, *axis);
  return report(asCsv ? sweepCsv(sweep) : sweepText(sweep), anyHolds(sweep.points));
}

int sweepTwo(const Project& project, const Over& first, const Over& second, bool asCsv) {
  const auto across = readSweepAxis(project, first.path, first.range);
  if (!across) return badOver(across.error());
  const auto up = readSweepAxis(project, second.path, second.range);
  if (!up) return badOver(up.error());
  if (across->path == up->path) {
    return badOver({"both ranges are of one field", up->path, "name two fields"});
  }
  if (const auto pairs = across->value.size() * up->value.size(); pairs > kMostSweepPoints) {
    return badOver({fmt::format("{} pairs of values are too many", countText(pairs)), up->path,
                    fmt::format("at most {}: take wider steps", countText(kMostSweepPoints))});
  }
  const FieldMap map = fieldMap(project, *across, *up);
  return report(asCsv ? mapCsv(map) : mapText(map), (map.worst >= 0).any());
}

}  // namespace

int runSweep(const SweepRequest& request) {
  const auto loaded = loadRequested(request.project);
  if (!loaded) return reportBadInput(loaded.error());
  std::vector<Over> over;
  for (const std::string& text : request.over) {
    auto one = splitOver(text);
    if (!one) return reportBadInput(one.error());
    over.push_back(std::move(*one));
  }
  if (over.size() == 2) return sweepTwo(loaded->project, over[0], over[1], request.asCsv);
  const std::optional<int> stage = sweptStage(loaded->project, over[0].path);
  return stage ? sweepRatio(loaded->project, over[0], *stage, request.asCsv)
               : sweepField(loaded->project, over[0], request.asCsv);
}

}  // namespace jw
