// Commands that print text.
#include <algorithm>
#include <cstdio>

#include <fmt/format.h>

#include "app/check_report.h"
#include "app/command_line.h"
#include "app/commands.h"
#include "app/fields_report.h"
#include "app/requested_project.h"
#include "core/checks/acceptance_check.h"

namespace jw {
namespace {

bool counts(const Check& check, bool strict) {
  if (check.state == CheckState::Short) return strict || !standsAccepted(check);
  return strict && check.state == CheckState::Open;
}

}  // namespace

int runCheck(const CheckRequest& request) {
  auto loaded = loadRequested(request.project);
  if (!loaded) return reportBadInput(loaded.error());
  CheckReport report{
      request.project.file, std::move(loaded->project), {}, std::move(loaded->notes)};
  report.evaluation = evaluate(report.project);
  fmt::print("{}", request.asJson ? checkJson(report) : checkTable(report));
  const bool anyShort =
      std::any_of(report.evaluation.checks.begin(), report.evaluation.checks.end(),
                  [&](const Check& c) { return counts(c, request.strict); });
  return anyShort ? kSomeShort : kAllHold;
}

int runFields(bool asJson) {
  fmt::print("{}", asJson ? fieldsJson() : fieldsTable());
  return kAllHold;
}

}  // namespace jw
