// Time of the periodic temperatures, and of finding them by stepping through hours instead.
#include <array>
#include <chrono>
#include <cmath>

#include <benchmark/benchmark.h>
#include <boost/numeric/odeint.hpp>

#include "core/checks/evaluation.h"
#include "core/studies/heat_charts.h"
#include "core/studies/plot_studies.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

using State = std::array<double, 2>;

/// The example with every sample's loss in the network.
MotorHeat heatOf(int samples) { return *evaluate(exampleProject(samples)).heat; }

void periodicState(benchmark::State& state) {
  const MotorHeat heat = heatOf(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(periodicHeat(heat.network, heat.load));
}

/// The same with the magnet settled, as an evaluation has it.
void settledHeat(benchmark::State& state) {
  const Project project = exampleProject(static_cast<int>(state.range(0)));
  const Evaluation known = evaluate(project);
  for (auto _ : state) {
    benchmark::DoNotOptimize(motorHeat(project, *known.cycle, *known.chain, *known.demand, 80));
  }
}

/// Cycle after cycle from cold, one Runge-Kutta step of the fourth order per sample, until what is
/// left of the first rise is below `accuracy` [K].
State stepThroughHours(const MotorHeat& heat, double accuracy) {
  const HeatNetwork& n = heat.network;
  const HeatLoad& load = heat.load;
  State at{n.ambient, n.ambient};
  boost::numeric::odeint::runge_kutta4<State> stepper;
  for (double before = -1e9; std::abs(at[1] - before) > accuracy;) {
    before = at[1];
    for (Eigen::Index i = 0; i < load.duration.size(); ++i) {
      const double copper = load.copper20[i];
      const double housing = load.housing[i];
      const auto rate = [&](const State& x, State& out, double) {
        const double between = (x[0] - x[1]) / n.windingToHousing;
        out[0] = (copper * (1 + n.copperCoefficient * (x[0] - 20)) - between) / n.windingCapacity;
        out[1] = (housing + between - (x[1] - n.ambient) / n.housingToAmbient) / n.housingCapacity;
      };
      stepper.do_step(rate, at, 0.0, load.duration[i]);
    }
  }
  return at;
}

double secondsOf(const auto& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

void byStepping(benchmark::State& state) {
  const MotorHeat heat = heatOf(static_cast<int>(state.range(0)));
  // The rise left is the last cycle's gain over one less the spectral radius.
  const double accuracy = 1e-6 * (1 - heat.periodic.spectralRadius);
  const PeriodicHeat exact = periodicHeat(heat.network, heat.load);
  State found{};
  double stepping = 0;
  for (auto _ : state) stepping = secondsOf([&] { found = stepThroughHours(heat, accuracy); });
  constexpr int kRuns = 20;
  const double solving = secondsOf([&] {
    for (int k = 0; k < kRuns; ++k) benchmark::DoNotOptimize(periodicHeat(heat.network, heat.load));
  });
  state.counters["off_K"] = std::abs(found[0] - exact.start[0]);
  state.counters["times_slower"] = stepping / (solving / kRuns);
}

void studies(benchmark::State& state) {
  const Project project = exampleProject(static_cast<int>(state.range(0)));
  const Evaluation known = evaluate(project);
  for (auto _ : state) benchmark::DoNotOptimize(plotStudies(project, known));
}

BENCHMARK(periodicState)->Name("heat")->Arg(1000)->Arg(10000)->Unit(benchmark::kMicrosecond);
BENCHMARK(settledHeat)->Name("heat_settled")->Arg(10000)->Unit(benchmark::kMicrosecond);
BENCHMARK(byStepping)
    ->Name("heat_by_stepping")
    ->Arg(10000)
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);
BENCHMARK(studies)->Name("plot_studies")->Arg(1000)->Arg(10000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace jw
