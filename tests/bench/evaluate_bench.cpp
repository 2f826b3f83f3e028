// Time of one evaluation and of its parts; the number after the slash is the wanted samples.
#include <benchmark/benchmark.h>

#include "core/checks/evaluation.h"
#include "core/physics/load_torque.h"
#include "core/physics/power_flow.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

Project projectOf(const benchmark::State& state) {
  return exampleProject(static_cast<int>(state.range(0)));
}

void evaluateAll(benchmark::State& state) {
  const Project project = projectOf(state);
  for (auto _ : state) benchmark::DoNotOptimize(evaluate(project));
}

/// A weakened field and a q axis of three times the inductance: no closed form.
void evaluateSalient(benchmark::State& state) {
  Project project = projectOf(state);
  project.active().controller.fieldWeakening = true;
  project.active().motor.inductanceQ = 3 * project.active().motor.inductance;
  for (auto _ : state) benchmark::DoNotOptimize(evaluate(project));
}

/// The same at half the bus voltage, so that most of the cycle runs weakened.
void evaluateWeakened(benchmark::State& state) {
  Project project = projectOf(state);
  project.active().controller.fieldWeakening = true;
  project.active().motor.inductanceQ = 3 * project.active().motor.inductance;
  project.active().supply.voltage = 24;
  for (auto _ : state) benchmark::DoNotOptimize(evaluate(project));
}

/// The same on a bus that sags by a tenth at the highest power.
void evaluateSagging(benchmark::State& state) {
  Project project = projectOf(state);
  project.active().controller.fieldWeakening = true;
  project.active().motor.inductanceQ = 3 * project.active().motor.inductance;
  project.active().supply.voltage = 24;
  project.active().supply.sourceResistance = 0.2;
  for (auto _ : state) benchmark::DoNotOptimize(evaluate(project));
}

void sample(benchmark::State& state) {
  const Project project = projectOf(state);
  for (auto _ : state) benchmark::DoNotOptimize(sampleCycle(project.cycle));
}

void load(benchmark::State& state) {
  const Project project = projectOf(state);
  const SampledCycle cycle = *sampleCycle(project.cycle);
  for (auto _ : state) benchmark::DoNotOptimize(loadTorque(cycle, project.cycle, project.load));
}

void chain(benchmark::State& state) {
  const Project project = projectOf(state);
  const Evaluation known = evaluate(project);
  for (auto _ : state) {
    benchmark::DoNotOptimize(reflectThroughChain(project.active().transmission, *known.cycle,
                                                 known.load->total, known.load->largestInertia));
  }
}

void demand(benchmark::State& state) {
  const Project project = projectOf(state);
  const Evaluation known = evaluate(project);
  const Variant& variant = project.active();
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        motorDemand(*known.cycle, *known.chain, variant.motor, *known.motor, variant.controller));
  }
}

void envelope(benchmark::State& state) {
  const Project project = exampleProject();
  const Evaluation known = evaluate(project);
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        torqueEnvelope(project.active(), *known.motor, known.envelope->continuous));
  }
}

void flow(benchmark::State& state) {
  const Project project = projectOf(state);
  const Evaluation known = evaluate(project);
  for (auto _ : state) {
    benchmark::DoNotOptimize(powerFlow(*known.cycle, *known.load, *known.chain, *known.demand));
  }
}

BENCHMARK(evaluateAll)->Name("evaluate")->Arg(1000)->Arg(10000)->Unit(benchmark::kMicrosecond);
BENCHMARK(evaluateSalient)
    ->Name("evaluate_salient")
    ->Arg(1000)
    ->Arg(10000)
    ->Unit(benchmark::kMicrosecond);
BENCHMARK(evaluateWeakened)
    ->Name("evaluate_weakened")
    ->Arg(1000)
    ->Arg(10000)
    ->Unit(benchmark::kMicrosecond);
BENCHMARK(evaluateSagging)
    ->Name("evaluate_sagging")
    ->Arg(1000)
    ->Arg(10000)
    ->Unit(benchmark::kMicrosecond);
BENCHMARK(sample)->Arg(1000)->Arg(10000)->Unit(benchmark::kMicrosecond);
BENCHMARK(load)->Arg(1000)->Arg(10000)->Unit(benchmark::kMicrosecond);
BENCHMARK(chain)->Arg(1000)->Arg(10000)->Unit(benchmark::kMicrosecond);
BENCHMARK(demand)->Arg(1000)->Arg(10000)->Unit(benchmark::kMicrosecond);
BENCHMARK(envelope)->Unit(benchmark::kMicrosecond);
BENCHMARK(flow)->Arg(1000)->Arg(10000)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace jw
