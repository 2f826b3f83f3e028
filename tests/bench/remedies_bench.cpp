// What runs beside the window after every edit: sensitivities of all margins, and the remedies of
// every short or close verdict of a joint that is short of a dozen.
#include <benchmark/benchmark.h>

#include "core/studies/remedies.h"
#include "core/studies/sensitivity.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

/// The example joint with a lighter motor, a smaller controller and less of a drive.
Project shortProject(int samples) {
  Project project = exampleProject(samples);
  Variant& variant = project.active();
  variant.controller.currentPeak = 8;
  variant.controller.currentContinuous = 2;
  variant.motor.torqueConstant = 0.07;
  variant.motor.brakeTorque = 0.3;
  variant.transmission[1].peakTorque = 60;
  variant.transmission[1].averageTorque = 30;
  variant.transmission[1].ratedLife /= 10;
  return project;
}

void slopes(benchmark::State& state) {
  const Project project = exampleProject(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(sensitivities(project));
}

void remediesOfAll(benchmark::State& state) {
  const Project project = shortProject(static_cast<int>(state.range(0)));
  std::size_t checks = 0;
  for (auto _ : state) checks = remedies(project).checks.size();
  state.counters["verdicts"] = static_cast<double>(checks);
  state.SetLabel("limit 1 s");
}

void remediesOfOne(benchmark::State& state) {
  const Project project = shortProject(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(remedies(project, {"motor.torque", -1, {}}));
  state.SetLabel("limit 1 s");
}

BENCHMARK(slopes)->Name("sensitivities")->Arg(1000)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(remediesOfAll)->Name("remedies")->Arg(1000)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(remediesOfOne)
    ->Name("remedies of one verdict")
    ->Arg(1000)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

}  // namespace
}  // namespace jw
