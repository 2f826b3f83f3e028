// How long sampling a cycle and reading motion points take.
#include <cmath>
#include <string>

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include "core/files/motion_table.h"
#include "core/motion/sampled_cycle.h"

namespace jw {
namespace {

/// Four moves there and back by one law, 10 000 samples.
void sampleMoves(benchmark::State& state) {
  Cycle cycle;
  cycle.samples = 10'000;
  for (const double travel : {1.0, -1.0, 1.0, -1.0}) {
    Segment segment;
    segment.law = static_cast<MotionLaw>(state.range(0));
    segment.travel = travel;
    segment.duration = 0.5;
    cycle.segments.push_back(segment);
  }
  for (auto _ : state) benchmark::DoNotOptimize(sampleCycle(cycle));
}
BENCHMARK(sampleMoves)
    ->DenseRange(0, static_cast<int>(MotionLaw::Dwell))
    ->Unit(benchmark::kMicrosecond);

/// A table of angles that has to be smoothed.
void sampleTable(benchmark::State& state) {
  Segment segment;
  segment.law = MotionLaw::Table;
  const auto rows = static_cast<int>(state.range(0));
  for (int i = 0; i < rows; ++i) {
    segment.table.time.push_back(i * 1e-3);
    segment.table.angle.push_back(std::sin(i * 1e-2));
  }
  Cycle cycle;
  cycle.segments.push_back(segment);
  for (auto _ : state) benchmark::DoNotOptimize(sampleCycle(cycle));
}
BENCHMARK(sampleTable)->Arg(1000)->Arg(1'000'000)->Unit(benchmark::kMillisecond);

void readTable(benchmark::State& state) {
  std::string csv = "time [s];angle [deg];speed [deg/s]\n";
  for (int i = 0; i < 1'000'000; ++i)
    csv +=
        fmt::format("{:.3f};{:.12g};{:.12g}\n", i * 1e-3, std::sin(i * 1e-3), std::cos(i * 1e-3));
  for (auto _ : state) benchmark::DoNotOptimize(readMotionTable(csv, "log.csv"));
}
BENCHMARK(readTable)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace jw
