// Combinations a second of the screening, for a cycle of 10,000 samples. With JW_SCREENING_OUT set
// to a file name the problem is written there for tests/bench/peer_numpy.py, which computes the
// same verdict another way.
#include <cstdio>
#include <cstdlib>
#include <memory>

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include "core/studies/combination_screen.h"
#include "core/studies/invented_catalogue.h"
#include "core/studies/ratio_sweep.h"
#include "core/studies/tolerance.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

/// Motors of the bundled size behind a belt of `ratios` ratios and a strain wave gear.
SearchSpace spaceOf(std::size_t ratios) {
  SearchSpace space;
  space.motors = inventedMotors();
  space.reducers = {exampleProject().active().transmission[1]};
  space.reducerStage = 1;
  space.beltStage = 0;
  for (std::size_t k = 0; k < ratios; ++k) {
    space.beltRatios.push_back(0.5 + 3 * static_cast<double>(k) / static_cast<double>(ratios));
  }
  return space;
}

void writeArray(std::FILE* file, const char* name, const Eigen::ArrayXd& values) {
  fmt::print(file, "\"{}\": [", name);
  for (Eigen::Index i = 0; i < values.size(); ++i) {
    fmt::print(file, "{}{}", i == 0 ? "" : ",", values[i]);
  }
  fmt::print(file, "],\n");
}

void writeMotors(std::FILE* file, const std::vector<MotorScreen>& motors) {
  fmt::print(file, "\"motors\": [\n");
  for (std::size_t k = 0; k < motors.size(); ++k) {
    const MotorScreen& m = motors[k];
    const ContinuousLimit& c = *m.continuous;
    const MotorConstants& machine = m.envelope->machine;
    fmt::print(file, "{}[{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{}]",
               k == 0 ? "" : ",\n", m.inertia, m.inertiaRatioMax, m.speedMax, m.torquePerAmp,
               m.dragTorque, m.dragDamping, m.currentSquareMax, m.currentPeakMax,
               c.machine.torquePerAmp, c.machine.copperLoss(1), c.machine.dragTorque,
               c.machine.dragDamping, c.housing, c.winding, c.rise, m.envelope->voltage,
               machine.resistance, machine.emfPerSpeed, machine.polePairs * machine.inductanceQ);
  }
  fmt::print(file, "],\n");
}

std::size_t survivorsOf(const std::vector<ScreenedChain>& chains,
                        const std::vector<MotorScreen>& motors) {
  std::size_t survivors = 0;
  for (const ScreenedChain& chain : chains) {
    for (const MotorScreen& motor : motors) {
      survivors += rejectedBy(*chain.chain, motor) == Rejection::None ? 1 : 0;
    }
  }
  return survivors;
}

/// The cycle behind the belt, the belt and the motors, as JSON.
void writeProblem(const char* name, const Project& project, const SearchSpace& space) {
  const Evaluation e = evaluate(withStageRatio(project, 0, 1));
  const CombinationScreen screen(project, space);
  const StageData& belt = e.stages->front();
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(name, "w"), &std::fclose);
  if (!file) return;
  fmt::print(file.get(), "{{\n");
  writeArray(file.get(), "weight", e.cycle->weight / e.cycle->period);
  writeArray(file.get(), "torque", e.chain->stages[0].outputTorque);
  writeArray(file.get(), "speed", e.chain->stages[0].outputSpeed);
  writeArray(file.get(), "acceleration", e.chain->motorAcceleration / e.chain->stages[0].ratio);
  writeMotors(file.get(), screen.motors());
  fmt::print(file.get(), "\"ratios\": [");
  for (std::size_t k = 0; k < space.beltRatios.size(); ++k) {
    fmt::print(file.get(), "{}{}", k == 0 ? "" : ",", space.beltRatios[k]);
  }
  fmt::print(file.get(),
             "],\n\"driving\": {}, \"backdriving\": {}, \"inertia\": {}, \"behind\": {},\n",
             belt.efficiency.driving, belt.efficiency.backdriving, belt.stage.inertia,
             e.chain->inertiaAtMotor - belt.stage.inertia);
  fmt::print(file.get(), "\"survivors\": {}\n}}\n", survivorsOf(screen.chains(0), screen.motors()));
}

/// Screening alone, once all is prepared: the rate that a search runs at.
void screenCombinations(benchmark::State& state) {
  const Project project = exampleProject(static_cast<int>(state.range(0)));
  const SearchSpace space = spaceOf(64);
  const CombinationScreen screen(project, space);
  const auto chains = screen.chains(0);
  if (const char* out = std::getenv("JW_SCREENING_OUT")) writeProblem(out, project, space);
  std::size_t survivors = 0;
  for (auto _ : state) {
    survivors = survivorsOf(chains, screen.motors());
    benchmark::DoNotOptimize(survivors);
  }
  state.counters["survivors"] = static_cast<double>(survivors);
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(space.size()));
  state.SetLabel("at least 5,000,000 a second");
}

/// The same with the preparation of motors and chains; the number is of combinations.
void screenSpace(benchmark::State& state) {
  const Project project = exampleProject(static_cast<int>(state.range(1)));
  SearchSpace space = spaceOf(1);
  const auto ratios = static_cast<std::size_t>(state.range(0)) / space.motors.size();
  space = spaceOf(std::max<std::size_t>(1, ratios));
  if (state.range(0) < 272) space.motors.resize(static_cast<std::size_t>(state.range(0)));
  StudyRun one;
  one.threads = 1;
  for (auto _ : state) {
    const CombinationScreen screen(project, space, one);
    benchmark::DoNotOptimize(screen.verdicts(0));
  }
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(space.size()));
}

std::vector<double> ratios(int count) {
  std::vector<double> all;
  for (int k = 0; k < count; ++k) all.push_back(40 + 120.0 * k / count);
  return all;
}

void sweepRatios(benchmark::State& state) {
  const Project project = exampleProject();
  const RatioSweepRequest request{1, ratios(200), state.range(0) != 0};
  for (auto _ : state) benchmark::DoNotOptimize(ratioSweep(project, request));
  state.SetLabel(request.preview ? "limit 16 ms" : "limit 150 ms");
}

void drawTolerance(benchmark::State& state) {
  Project project = exampleProject();
  for (const char* path : {"motor.torqueConstant", "load.payloadMass", "motor.resistance",
                           "transmission[1].efficiency", "load.coulombFriction"}) {
    if (!setBand(project, path, "± 10 %")) state.SkipWithError("no such field");
  }
  ToleranceRequest request;
  request.draws = static_cast<std::size_t>(state.range(0));
  for (auto _ : state) benchmark::DoNotOptimize(tolerance(project, request));
  state.SetLabel("limit 6 s for 10,000 draws");
}

BENCHMARK(screenCombinations)->Name("screening")->Arg(1000)->Arg(10000)->Arg(100000);
BENCHMARK(screenSpace)
    ->Name("screening_space")
    ->ArgsProduct({{100, 1000, 10000, 100000, 1000000, 10000000}, {10000}})
    ->MeasureProcessCPUTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK(screenSpace)
    ->Name("screening_samples")
    ->ArgsProduct({{100000}, {100, 1000, 10000, 100000, 1000000, 10000000}})
    ->MeasureProcessCPUTime()
    ->Unit(benchmark::kMillisecond)
    ->Iterations(1);
BENCHMARK(sweepRatios)
    ->Name("ratio_sweep")
    ->Arg(0)
    ->Arg(1)
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK(drawTolerance)
    ->Name("tolerance")
    ->Arg(10000)
    ->Iterations(1)
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kSecond);

}  // namespace
}  // namespace jw
