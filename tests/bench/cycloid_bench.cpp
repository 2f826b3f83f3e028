// Time of the contact forces of a cycloidal stage over a turn of its crank.
#include <benchmark/benchmark.h>

#include "core/physics/cycloid_efficiency.h"
#include "core/physics/cycloid_forces.h"
#include "tests/core/physics/cycloid_support.h"

namespace jw {
namespace {

/// Forty ring pins, invented.
CycloidGeometry manyPins() {
  CycloidGeometry g = wholeCycloid();
  g.pins = 40;
  g.pinRadius = 0.003;
  g.eccentricity = 0.0015;
  return g;
}

void forces(benchmark::State& state) {
  const CycloidGeometry g = manyPins();
  const int angles = static_cast<int>(state.range(0));
  for (auto _ : state) benchmark::DoNotOptimize(cycloidForces(g, {}, 300, angles));
}

void efficiency(benchmark::State& state) {
  const CycloidGeometry g = manyPins();
  const int angles = static_cast<int>(state.range(0));
  for (auto _ : state) benchmark::DoNotOptimize(cycloidEfficiency(g, angles));
}

BENCHMARK(forces)->Name("cycloid_forces")->Arg(360)->Unit(benchmark::kMicrosecond);
BENCHMARK(efficiency)->Name("cycloid_efficiency")->Arg(90)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace jw
