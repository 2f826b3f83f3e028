#include "app/requested_project.h"

#include <chrono>
#include <cstdio>

#include <fmt/format.h>

#include "app/command_line.h"
#include "core/model/field_catalogue.h"

namespace jw {
namespace {

tl::expected<void, InputError> change(Project& project, const std::string& setting) {
  const auto equals = setting.find('=');
  if (equals == std::string::npos) {
    return tl::unexpected(InputError{"'" + setting + "' sets nothing", "--set",
                                     "write PATH=VALUE, e.g. transmission[0].ratio=50"});
  }
  auto done = setField(project, setting.substr(0, equals), setting.substr(equals + 1));
  if (!done) done.error().where = "--set " + done.error().where;
  return done;
}

}  // namespace

tl::expected<LoadedProject, InputError> loadRequested(const ProjectRequest& request) {
  auto loaded = loadProjectFile(QString::fromLocal8Bit(request.file.c_str()));
  if (!loaded) return loaded;
  for (const std::string& setting : request.settings) {
    if (auto done = change(loaded->project, setting); !done) return tl::unexpected(done.error());
  }
  return loaded;
}

int reportBadInput(const InputError& error) {
  fmt::print(stderr, "jointwright: {}\n", describe(error));
  return kBadInput;
}

Snapshot evaluateNow(Project project) {
  const auto start = std::chrono::steady_clock::now();
  Snapshot snapshot;
  snapshot.project = std::make_shared<const Project>(std::move(project));
  snapshot.evaluation = std::make_shared<const Evaluation>(evaluate(*snapshot.project));
  snapshot.evaluatedProject = snapshot.project;
  snapshot.studies =
      std::make_shared<const PlotStudies>(plotStudies(*snapshot.project, *snapshot.evaluation));
  snapshot.revision = 1;
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
  snapshot.evaluationSeconds = taken.count();
  return snapshot;
}

}  // namespace jw
