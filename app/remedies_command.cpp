#include <algorithm>

#include <fmt/format.h>

#include "app/catalogue_file.h"
#include "app/command_line.h"
#include "app/remedies_report.h"
#include "app/study_commands.h"
#include "core/files/catalogue_table.h"

namespace jw {
namespace {

tl::expected<void, InputError> knownCheck(const Evaluation& evaluation, const std::string& id) {
  const auto& checks = evaluation.checks;
  const bool known = id.empty() || std::any_of(checks.begin(), checks.end(),
                                               [&](const Check& c) { return c.id == id; });
  if (known) return {};
  return tl::unexpected(InputError{"this joint has no verdict '" + id + "'", "--check",
                                   "take an id of 'jointwright check --json'"});
}

}  // namespace

int runRemedies(const RemediesCommand& request) {
  const auto loaded = loadRequested(request.project);
  if (!loaded) return reportBadInput(loaded.error());
  const Project& project = loaded->project;
  const Evaluation evaluation = evaluate(project);
  if (const auto known = knownCheck(evaluation, request.check); !known) {
    return reportBadInput(known.error());
  }
  RemedyRequest study;
  if (!request.motors.empty()) {
    auto motors = readCatalogueFile<MotorEntry>(request.motors, "", readMotorCatalogue);
    if (!motors) return reportBadInput(motors.error());
    study.motors = std::move(*motors);
  }
  const Sensitivities slopes = sensitivities(project);
  const Remedies found = remedies(project, study);
  const RemediesReport report{request.project.file, project, evaluation, slopes, found,
                              request.check};
  fmt::print("{}", request.asJson ? remediesJson(report) : remediesText(report));
  const bool anyShort =
      std::any_of(evaluation.checks.begin(), evaluation.checks.end(),
                  [](const Check& check) { return check.state == CheckState::Short; });
  return anyShort ? kSomeShort : kAllHold;
}

}  // namespace jw
