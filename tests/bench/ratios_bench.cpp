// The list of ratios that can be built, planet sets being the slowest family.
#include <benchmark/benchmark.h>

#include "core/studies/realizable_ratios.h"

namespace jw {
namespace {

void realizable(benchmark::State& state, StageFamily family) {
  for (auto _ : state) {
    benchmark::DoNotOptimize(realizableRatios(family, static_cast<double>(state.range(0)), {}, 12));
  }
  state.SetLabel("limit 20 ms for all families");
}

BENCHMARK_CAPTURE(realizable, planetary, StageFamily::Planetary)
    ->Arg(50)
    ->Arg(700)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(realizable, rollers, StageFamily::Traction)
    ->Arg(5)
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace jw
