// How long a measured log of a million rows takes from text to fitted load, and the memory.
#include <sys/resource.h>

#include <cmath>
#include <string>

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include "core/checks/evaluation.h"
#include "core/files/measured_log.h"
#include "core/motion/closed_cycle.h"
#include "core/studies/load_fit.h"
#include "core/studies/peak_levels.h"
#include "tests/core/checks/example_project.h"

namespace jw {
namespace {

constexpr int kRows = 1'000'000;

/// 1000 s of a joint, three columns, some 40 MB.
std::string longText() {
  std::string text = "time [s];position [deg];torque [N*m]\n";
  for (int i = 0; i < kRows; ++i) {
    const double t = i * 1e-3;
    text += fmt::format("{:.6f};{:.10f};{:.10f}\n", t, 50 * std::sin(0.9 * t) + 1e-3 * (i % 7),
                        30 * std::cos(std::sin(t)) + 3 * std::cos(0.9 * t));
  }
  return text;
}

const std::string& text() {
  static const std::string kText = longText();
  return kText;
}

LogSource source() { return {text(), "log.csv", 0}; }

const MeasuredLog& log() {
  static const MeasuredLog kLog = readLog(source(), guessColumns(source()).value()).value();
  return kLog;
}

const LogMotion& motion() {
  static const LogMotion kMotion = smoothLog(log(), 0.05);
  return kMotion;
}

/// Guess and read; the counters give the text and the largest memory so far.
void readMeasuredLog(benchmark::State& state) {
  text();
  for (auto _ : state) benchmark::DoNotOptimize(readLog(source(), guessColumns(source()).value()));
  rusage use{};
  getrusage(RUSAGE_SELF, &use);
  state.counters["text_MB"] = static_cast<double>(text().size()) / 1e6;
  state.counters["peak_MB"] = static_cast<double>(use.ru_maxrss) / 1e3;
}
BENCHMARK(readMeasuredLog)->Unit(benchmark::kMillisecond);

void guessLogColumns(benchmark::State& state) {
  text();
  for (auto _ : state) benchmark::DoNotOptimize(guessColumns(source()));
}
BENCHMARK(guessLogColumns)->Unit(benchmark::kMillisecond);

void smoothMeasuredLog(benchmark::State& state) {
  log();
  for (auto _ : state)
    benchmark::DoNotOptimize(smoothLog(log(), 1e-3 * static_cast<double>(state.range(0))));
}
BENCHMARK(smoothMeasuredLog)->Arg(10)->Arg(1000)->Unit(benchmark::kMillisecond);

void fitMeasuredLog(benchmark::State& state) {
  const LogMotion& m = motion();
  const LoadFitData data = loadFitData(m, log().torque, 0, log().rows() - 1);
  for (auto _ : state) benchmark::DoNotOptimize(fitLoad(data));
}
BENCHMARK(fitMeasuredLog)->Unit(benchmark::kMillisecond);

void closeMeasuredLog(benchmark::State& state) {
  motion();
  for (auto _ : state)
    benchmark::DoNotOptimize(closeIntoCycle(log(), motion(), 0, log().time.back()));
}
BENCHMARK(closeMeasuredLog)->Unit(benchmark::kMillisecond);

/// One frame of 2000 pixels over all rows.
void drawMeasuredLog(benchmark::State& state) {
  const PeakLevels levels(log().time, log().position);
  for (auto _ : state) benchmark::DoNotOptimize(levels.columns(0, log().time.back(), 2000));
}
BENCHMARK(drawMeasuredLog)->Unit(benchmark::kMillisecond);

Project measuredProject() {
  Project project = exampleProject(1000);
  const ClosedCycle closed = closeIntoCycle(log(), motion(), 0, log().time.back()).value();
  project.cycle.startAngle = closed.startAngle;
  project.cycle.segments = {closed.segment};
  return project;
}

/// Every row of the log is a sample.
void sampleMeasuredLog(benchmark::State& state) {
  const Project project = measuredProject();
  Eigen::Index samples = 0;
  for (auto _ : state) samples = sampleCycle(project.cycle)->size();
  state.counters["samples"] = static_cast<double>(samples);
}
BENCHMARK(sampleMeasuredLog)->Unit(benchmark::kMillisecond);

void evaluateMeasuredLog(benchmark::State& state) {
  const Project project = measuredProject();
  for (auto _ : state) benchmark::DoNotOptimize(evaluate(project));
  rusage use{};
  getrusage(RUSAGE_SELF, &use);
  state.counters["peak_MB"] = static_cast<double>(use.ru_maxrss) / 1e3;
}
BENCHMARK(evaluateMeasuredLog)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace jw
