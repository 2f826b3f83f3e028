#include <algorithm>

#include <fmt/format.h>

#include "app/command_line.h"
#include "app/requested_project.h"
#include "app/study_commands.h"
#include "app/tolerance_report.h"

namespace jw {
namespace {

tl::expected<void, InputError> addBand(Project& project, const std::string& text) {
  const auto equals = text.find('=');
  if (equals == std::string::npos) {
    return tl::unexpected(
        InputError{"'" + text + "' names no band", "--band",
                   "write PATH=BAND, e.g. \"motor.torqueConstant=± 5 % normal\""});
  }
  auto done = setBand(project, text.substr(0, equals), text.substr(equals + 1));
  if (!done) done.error().where = "--band " + done.error().where;
  return done;
}

bool everHolds(const Tolerance& result) {
  const auto& margins = result.worst.margin;
  return std::none_of(margins.begin(), margins.end(), [](double margin) { return margin < 0; });
}

}  // namespace

int runTolerance(const ToleranceCommand& request) {
  auto loaded = loadRequested(request.project);
  if (!loaded) return reportBadInput(loaded.error());
  for (const std::string& band : request.bands) {
    if (auto done = addBand(loaded->project, band); !done) return reportBadInput(done.error());
  }
  ToleranceRequest study;
  study.draws = request.draws;
  study.seed = request.seed;
  auto result = tolerance(loaded->project, study);
  if (!result) {
    if (result.error().where == "draws") result.error().where = "--draws";
    return reportBadInput(result.error());
  }
  fmt::print("{}", request.asJson ? toleranceJson(request.project.file, loaded->project, *result)
                                  : toleranceText(*result));
  return everHolds(*result) ? kAllHold : kSomeShort;
}

}  // namespace jw
