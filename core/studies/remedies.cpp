#include "core/studies/remedies.h"

#include <algorithm>
#include <cmath>

#include "core/studies/remedy_search.h"

namespace jw {
namespace {

bool isWanted(const Check& check, const RemedyRequest& request) {
  if (check.state != CheckState::Short && check.state != CheckState::Close) return false;
  return request.check.empty() || (check.id == request.check && check.stage == request.stage);
}

std::vector<WantedMargin> wantedMargins(const Evaluation& base, const RemedyRequest& request) {
  std::vector<WantedMargin> wanted;
  for (const Check& check : base.checks) {
    if (isWanted(check, request)) wanted.push_back({check.id, check.stage});
  }
  return wanted;
}

/// One thing that may be changed by itself.
struct Task {
  std::optional<StudyInput> input;
  int stage = -1;  ///< whose parts, without an input
};

std::vector<Task> tasksOf(const Project& project) {
  std::vector<Task> tasks;
  for (StudyInput& input : studyInputs(project)) {
    if (input.role != InputRole::Given) tasks.push_back({std::move(input), -1});
  }
  const int stages = static_cast<int>(project.active().transmission.size());
  for (int stage = 0; stage < stages; ++stage) {
    if (hasParts(project, stage)) tasks.push_back({std::nullopt, stage});
  }
  return tasks;
}

CheckRemedies headOf(const Evaluation& base, const WantedMargin& wanted) {
  CheckRemedies head;
  for (const Check& check : base.checks) {
    if (check.id != wanted.id || check.stage != wanted.stage) continue;
    head = {check.id, check.stage, check.title, check.margin, check.state, {}, {}};
  }
  return head;
}

void sortBySize(CheckRemedies& one) {
  std::stable_sort(one.remedies.begin(), one.remedies.end(), [](const auto& a, const auto& b) {
    return a.role != b.role ? a.role < b.role : std::abs(a.change) < std::abs(b.change);
  });
  std::stable_sort(one.cannot.begin(), one.cannot.end(), [](const auto& a, const auto& b) {
    if (a.role != b.role) return a.role < b.role;
    return isSet(a.margin) && !(a.margin <= b.margin);
  });
}

/// Puts what was found under the verdicts that it is for.
void add(std::vector<RemedyFinding>& findings, std::vector<CheckRemedies>& checks) {
  for (std::size_t k = 0; k < findings.size(); ++k) {
    if (findings[k].remedy) checks[k].remedies.push_back(std::move(*findings[k].remedy));
    if (findings[k].none) checks[k].cannot.push_back(std::move(*findings[k].none));
  }
}

}  // namespace

const CheckRemedies* Remedies::of(std::string_view id, int stage) const {
  const auto found = std::find_if(checks.begin(), checks.end(), [&](const CheckRemedies& one) {
    return one.id == id && one.stage == stage;
  });
  return found == checks.end() ? nullptr : &*found;
}

Remedies remedies(const Project& project, const RemedyRequest& request, const StudyRun& run) {
  Remedies result;
  result.target = project.requirements.targetMargin;
  const Evaluation base = evaluate(project, run.stop);
  const DesignPoint basePoint = designPoint(base);
  const std::vector<WantedMargin> wanted = wantedMargins(base, request);
  for (const WantedMargin& one : wanted) result.checks.push_back(headOf(base, one));
  if (wanted.empty()) return result;
  const RemedyCase about{project, base, basePoint, wanted, result.target, run.stop};
  const std::vector<Task> tasks = tasksOf(project);
  std::vector<std::vector<RemedyFinding>> found(tasks.size());
  forEachPoint(tasks.size(), run, [&](std::size_t k) {
    const Task& task = tasks[k];
    found[k] = task.input ? changeField(about, *task.input) : changeParts(about, task.stage);
  });
  found.push_back(changeMotor(about, request.motors, {run.stop, {}, run.threads}));
  result.stopped = run.stop.stop_requested();
  if (result.stopped) return result;
  for (auto& findings : found) add(findings, result.checks);
  for (CheckRemedies& one : result.checks) sortBySize(one);
  return result;
}

tl::expected<void, InputError> applyRemedy(Project& project, const Remedy& remedy) {
  if (remedy.motor) {
    project.active().motor = fittedMotor(*remedy.motor, project.active().motor);
  }
  for (const FieldEdit& edit : remedy.edits) {
    if (const auto done = setField(project, edit.path, edit.text); !done) return done;
  }
  return {};
}

}  // namespace jw
